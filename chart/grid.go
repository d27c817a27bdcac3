package chart

import "math"

// grid finds segments by place, in time that does not grow with the page.
type grid struct {
	x0, y0     float64 // mm, the corner of the first cell
	side       float64 // of a cell, mm
	cols, rows int
	cells      [][]int32
	all        []segment
}

// cellLargest is the side of a cell where there is room, mm. Where there are more strokes
// than such cells, as in a chart of hundreds of rows on one page, cells are smaller.
const cellLargest = 2

// newGrid lies over all the segments, wherever they stand; those added later fall into the
// cells at its edge where they lie outside.
func newGrid(all []segment) *grid {
	g := &grid{all: all}
	var over box
	for i := range all {
		if b := all[i].bounds(); i == 0 {
			over = b
		} else {
			over = box{min(over.x0, b.x0), min(over.y0, b.y0), max(over.x1, b.x1), max(over.y1, b.y1)}
		}
	}
	wide, high := over.x1-over.x0, over.y1-over.y0
	g.x0, g.y0 = over.x0, over.y0
	g.side = cellLargest
	if n := float64(len(all)); n*cellLargest*cellLargest > wide*high {
		g.side = max(math.Sqrt(wide*high/n), (wide+high)/n)
	}
	if g.side == 0 { // one dot, or none
		g.side = cellLargest
	}
	count := func(x float64) int { return min(max(int(x/g.side)+1, 1), 1<<12) }
	g.cols, g.rows = count(wide), count(high)
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

// beyond reports whether two strokes' middles lie farther apart than so much, seen along the page or up it.
func (s *segment) beyond(t *segment, reach float64) bool {
	return min(s.a.X, s.b.X)-max(t.a.X, t.b.X) > reach || min(t.a.X, t.b.X)-max(s.a.X, s.b.X) > reach ||
		min(s.a.Y, s.b.Y)-max(t.a.Y, t.b.Y) > reach || min(t.a.Y, t.b.Y)-max(s.a.Y, s.b.Y) > reach
}

// cellRange is the columns and rows of cells from the first to the last.
type cellRange struct{ x0, x1, y0, y1 int }

// touched are the cells that a box touches.
func (g *grid) touched(b box) cellRange {
	cell := func(x float64, n int) int { return min(max(int(math.Floor(x/g.side)), 0), n-1) }
	return cellRange{cell(b.x0-g.x0, g.cols), cell(b.x1-g.x0, g.cols), cell(b.y0-g.y0, g.rows), cell(b.y1-g.y0, g.rows)}
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
