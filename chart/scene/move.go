package scene

import "github.com/tdewolff/canvas"

// Moved is a copy of the group moved by dx to the right and dy down, in
// millimetres, with a prefix to the ID of everything in it: pictures that are
// moved with prefixes of their own can stand on one page.
func (g *Group) Moved(dx, dy float64, prefix string) *Group {
	m := mover{dx, dy, prefix, map[*Shape]*Shape{}}
	return m.group(g)
}

type mover struct {
	dx, dy float64
	prefix string
	shapes map[*Shape]*Shape
}

func (m *mover) group(g *Group) *Group {
	c := &Group{ID: m.id(g.ID), Title: g.Title, Style: g.Style}
	for _, a := range g.Data {
		b := Attr{Name: a.Name, Value: a.Value}
		for _, p := range a.Points {
			b.Points = append(b.Points, canvas.Point{X: p.X + m.dx, Y: p.Y + m.dy})
		}
		c.Data = append(c.Data, b)
	}
	for _, n := range g.Nodes {
		c.Nodes = append(c.Nodes, m.node(n))
	}
	return c
}

func (m *mover) node(n Node) Node {
	switch n := n.(type) {
	case *Group:
		return m.group(n)
	case *Path:
		p := *n
		if n.D != nil {
			p.D = n.D.Copy().Translate(m.dx, m.dy)
		}
		return &p
	case *Use:
		u := *n
		u.X, u.Y, u.Shape = n.X+m.dx, n.Y+m.dy, m.shape(n.Shape)
		return &u
	case *Text:
		t := *n
		t.X, t.Y = n.X+m.dx, n.Y+m.dy
		return &t
	}
	return n
}

func (m *mover) shape(s *Shape) *Shape {
	if s == nil {
		return nil
	}
	if m.shapes[s] == nil {
		c := *s
		c.ID = m.id(s.ID)
		m.shapes[s] = &c
	}
	return m.shapes[s]
}

func (m *mover) id(s string) string {
	if s == "" {
		return ""
	}
	return m.prefix + s
}
