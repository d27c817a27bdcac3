package chart

import "math"

// grid finds segments by place, in time that does not grow with the page.
type grid struct {
	cols, rows int
	cells      [][]int32
	all        []segment
}

// cellSize is the side of a cell, mm.
const cellSize = 2

func newGrid(width, height float64, all []segment) *grid {
	g := &grid{all: all, cols: int(width/cellSize) + 3, rows: int(height/cellSize) + 3}
	// First how many each cell takes, then they, all in one piece of memory.
	size := make([]int, g.cols*g.rows)
	total := 0
	for i := range all {
		c := g.touched(all[i].bounds())
		for y := c.y0; y <= c.y1; y++ {
			for x := c.x0; x <= c.x1; x++ {
				size[y*g.cols+x]++
				total++
			}
		}
	}
	memory := make([]int32, total)
	g.cells = make([][]int32, len(size))
	for i, n := range size {
		g.cells[i], memory = memory[:0:n], memory[n:]
	}
	for i := range all {
		c := g.touched(all[i].bounds())
		for y := c.y0; y <= c.y1; y++ {
			for x := c.x0; x <= c.x1; x++ {
				at := &g.cells[y*g.cols+x]
				*at = append(*at, int32(i))
			}
		}
	}
	return g
}

// add takes in one more segment.
func (g *grid) add(s segment) {
	i := int32(len(g.all))
	g.all = append(g.all[:i:i], s)
	c := g.touched(s.bounds())
	for y := c.y0; y <= c.y1; y++ {
		for x := c.x0; x <= c.x1; x++ {
			at := &g.cells[y*g.cols+x]
			*at = append(*at, i)
		}
	}
}

// bounds is the box about a stroke, its width included.
func (s *segment) bounds() box {
	return box{min(s.a.X, s.b.X), min(s.a.Y, s.b.Y), max(s.a.X, s.b.X), max(s.a.Y, s.b.Y)}.grown(float64(s.half))
}

// cellRange is the columns and rows of cells from the first to the last.
type cellRange struct{ x0, x1, y0, y1 int }

// touched are the cells that a box touches.
func (g *grid) touched(b box) cellRange {
	clamp := func(x float64, n int) int { return min(max(int(math.Floor(x/cellSize))+1, 0), n-1) }
	return cellRange{clamp(b.x0, g.cols), clamp(b.x1, g.cols), clamp(b.y0, g.rows), clamp(b.y1, g.rows)}
}

// clear reports whether nothing is drawn within the box.
func (g *grid) clear(b box) bool {
	c := g.touched(b)
	for y := c.y0; y <= c.y1; y++ {
		for x := c.x0; x <= c.x1; x++ {
			for _, i := range g.cells[y*g.cols+x] {
				if s := &g.all[i]; b.grown(float64(s.half)).cuts(s) {
					return false
				}
			}
		}
	}
	return true
}
