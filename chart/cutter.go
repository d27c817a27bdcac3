package chart

import (
	"math"
	"slices"

	"github.com/tdewolff/canvas"

	"whorl/chart/scene"
)

// cutter takes what lies within a window of a picture and moves it onto a page.
type cutter struct {
	win     box
	dx, dy  float64
	overlap float64 // what is larger may be cut
}

// node is what the window shows of a node; nil where that is nothing. Stitches and signs
// are shown whole or not at all, lines that go on are cut.
func (c cutter) node(n scene.Node, k scene.Ink) scene.Node {
	b, ok := boundsOf(n, k)
	if !ok || !b.meets(c.win) {
		return nil
	}
	inside := c.win.holds(b)
	switch n := n.(type) {
	case *scene.Group:
		if (datum(n, "kind") != "" || isSign(n)) && !inside && b.x1-b.x0 <= c.overlap && b.y1-b.y0 <= c.overlap {
			return nil
		}
		g := *n
		g.Data = nil
		for _, d := range n.Data {
			if d.Name == "repeats" && !inside {
				continue // not all of them are here
			}
			if d.Points != nil {
				d.Points = slices.Clone(d.Points)
				for i := range d.Points {
					d.Points[i] = c.move(d.Points[i])
				}
			}
			g.Data = append(g.Data, d)
		}
		g.Nodes = nil
		for _, child := range n.Nodes {
			if made := c.node(child, k.With(n.Style)); made != nil {
				g.Nodes = append(g.Nodes, made)
			}
		}
		if len(g.Nodes) == 0 {
			return nil
		}
		return &g
	case *scene.Path:
		d := n.D.Copy()
		switch {
		case inside:
		case k.With(n.Style).Fill.Opaque:
			d = d.And(canvas.Rectangle(c.win.x1-c.win.x0, c.win.y1-c.win.y0).Translate(c.win.x0, c.win.y0))
		default:
			if !d.Flat() {
				d = d.Flatten(0.01) // clipping knows straight lines only
			}
			whole := d
			d = &canvas.Path{}
			for _, line := range whole.Split() { // together they would be joined where they leave the window
				d = d.Append(line.Clip(c.win.x0, c.win.y0, c.win.x1, c.win.y1))
			}
		}
		if d.Empty() {
			return nil
		}
		return &scene.Path{Style: n.Style, D: d.Translate(c.dx, c.dy)}
	case *scene.Use:
		if !inside {
			return nil
		}
		u := *n
		u.X, u.Y = hundredth(u.X+c.dx), hundredth(u.Y+c.dy)
		return &u
	case *scene.Text:
		if !inside {
			return nil
		}
		t := *n
		t.X, t.Y = hundredth(t.X+c.dx), hundredth(t.Y+c.dy)
		return &t
	}
	return nil
}

// isSign reports whether a group is one sign, as a number with its arrow is.
func isSign(g *scene.Group) bool {
	return !slices.ContainsFunc(g.Nodes, func(n scene.Node) bool {
		_, group := n.(*scene.Group)
		return group
	})
}

func (c cutter) move(p canvas.Point) canvas.Point {
	return canvas.Point{X: hundredth(p.X + c.dx), Y: hundredth(p.Y + c.dy)}
}

// bases makes stitches whose places are not all on the page stand beside what is
// shown, as those beside a wedge do.
func bases(root *scene.Group) {
	places := map[canvas.Point]bool{}
	walkGroups(root, func(g *scene.Group) {
		for _, p := range append(slices.Clone(pointsOf(g, "top")), pointsOf(g, "between")...) {
			places[p] = true
		}
	})
	walkGroups(root, func(g *scene.Group) {
		for i, d := range g.Data {
			if d.Name == "base" && slices.ContainsFunc(d.Points, func(p canvas.Point) bool { return !places[p] }) {
				g.Data[i].Name = "foot"
			}
		}
	})
}

func walkGroups(g *scene.Group, f func(*scene.Group)) {
	f(g)
	for _, n := range g.Nodes {
		if child, ok := n.(*scene.Group); ok {
			walkGroups(child, f)
		}
	}
}

// largestStitch is the longest side of the room of any stitch but a run of chains,
// no longer than the overlap of two pages may be.
func largestStitch(nodes []scene.Node) (most float64) {
	for _, n := range nodes {
		g, ok := n.(*scene.Group)
		if !ok {
			continue
		}
		walkGroups(g, func(g *scene.Group) {
			if datum(g, "kind") == "" {
				return
			}
			if b, ok := boundsOf(g, scene.Plain); ok {
				if side := math.Max(b.x1-b.x0, b.y1-b.y0); side <= mostOverlap {
					most = math.Max(most, side)
				}
			}
		})
	}
	return most
}

// boundsOf is the room that a node's strokes and texts take; false when it draws
// nothing.
func boundsOf(n scene.Node, k scene.Ink) (b box, ok bool) {
	for _, s := range segments(n, k, 0, nil) {
		h := float64(s.half)
		b, ok = b.joined(box{math.Min(s.a.X, s.b.X) - h, math.Min(s.a.Y, s.b.Y) - h, math.Max(s.a.X, s.b.X) + h, math.Max(s.a.Y, s.b.Y) + h}, !ok), true
	}
	switch n := n.(type) {
	case *scene.Text:
		t := textBox(n)
		t.y1 += drop(n.String) * n.Size
		return t, true
	case *scene.Group:
		for _, child := range n.Nodes {
			switch child.(type) {
			case *scene.Group, *scene.Text:
				if c, has := boundsOf(child, k); has {
					b, ok = b.joined(c, !ok), true
				}
			}
		}
	}
	return b, ok
}

// joined is the box that holds both, or the other alone where there is none yet.
func (b box) joined(c box, first bool) box {
	if first {
		return c
	}
	return box{math.Min(b.x0, c.x0), math.Min(b.y0, c.y0), math.Max(b.x1, c.x1), math.Max(b.y1, c.y1)}
}

// holds reports whether another box lies within this one.
func (b box) holds(c box) bool {
	return b.x0 <= c.x0+1e-9 && b.y0 <= c.y0+1e-9 && c.x1 <= b.x1+1e-9 && c.y1 <= b.y1+1e-9
}
