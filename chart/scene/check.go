package scene

import (
	"fmt"
	"math"
	"regexp"

	"github.com/tdewolff/canvas"
)

// Check says what is wrong with a scene that cannot be written: a length that
// is no finite number, a page without a size, two different things under one
// ID, a Data name that is no attribute's name. Every output checks first, so
// what it writes is whole.
func (s *Scene) Check() error {
	if !(s.Width > 0 && s.Height > 0 && s.Width < 1e5 && s.Height < 1e5) {
		return fmt.Errorf("a picture of %g × %g mm cannot be drawn: both sides must be above 0 and below 100 m", s.Width, s.Height)
	}
	c := checker{ids: map[string]bool{}, shapes: map[string]*Shape{}}
	c.group(&s.Root)
	return c.err
}

type checker struct {
	ids    map[string]bool
	shapes map[string]*Shape
	err    error
}

func (c *checker) fail(format string, a ...any) {
	if c.err == nil {
		c.err = fmt.Errorf(format, a...)
	}
}

var (
	dataName = regexp.MustCompile(`^[a-z][a-z0-9-]*$`)
	idName   = regexp.MustCompile(`^[A-Za-z_][A-Za-z0-9_.-]*$`)
)

func (c *checker) group(g *Group) {
	if g.ID != "" {
		if !idName.MatchString(g.ID) {
			c.fail("%q cannot be the ID of a group: use a letter, then letters, figures, - and _", g.ID)
		}
		if c.ids[g.ID] || c.shapes[g.ID] != nil {
			c.fail("two things in the picture have the ID %q", g.ID)
		}
		c.ids[g.ID] = true
	}
	for i, a := range g.Data {
		if !dataName.MatchString(a.Name) {
			c.fail("%q in group %q cannot be the name of a datum: use small letters, figures and -", a.Name, g.ID)
		}
		for _, b := range g.Data[:i] {
			if a.Name == b.Name {
				c.fail("group %q has the datum %q twice", g.ID, a.Name)
			}
		}
		for _, p := range a.Points {
			c.numbers("the datum "+a.Name, p.X, p.Y)
		}
	}
	c.style(g.Style)
	for _, n := range g.Nodes {
		switch n := n.(type) {
		case *Group:
			c.group(n)
		case *Path:
			c.style(n.Style)
			c.path(n.D)
		case *Use:
			c.numbers("a repeated shape", n.X, n.Y, n.Angle)
			c.shape(n.Shape)
		case *Text:
			c.numbers("the text "+n.String, n.X, n.Y, n.Angle, n.Size)
			if n.Size < 0 {
				c.fail("the text %q has the size %g mm", n.String, n.Size)
			}
		default:
			c.fail("group %q holds nothing that can be drawn (%T)", g.ID, n)
		}
	}
}

func (c *checker) shape(s *Shape) {
	if s == nil {
		c.fail("a repeated shape is missing")
		return
	}
	if was := c.shapes[s.ID]; was == s || was != nil && was.Same(s) {
		return
	}
	if !idName.MatchString(s.ID) {
		c.fail("%q cannot be the ID of a shape: use a letter, then letters, figures, - and _", s.ID)
	}
	if c.ids[s.ID] || c.shapes[s.ID] != nil {
		c.fail("two things in the picture have the ID %q", s.ID)
	}
	c.shapes[s.ID] = s
	c.path(s.D)
}

func (c *checker) style(s Style) {
	if s.Line != nil {
		c.numbers("the width of a line", *s.Line)
		if *s.Line < 0 {
			c.fail("a line is %g mm wide", *s.Line)
		}
	}
	if len(s.Dash) == 0 {
		return
	}
	c.numbers("a dash", s.Dash...)
	sum := 0.0
	for _, d := range s.Dash {
		if d < 0 {
			c.fail("a dash is %g mm long", d)
		}
		sum += d
	}
	if sum <= 0 {
		c.fail("the dashes %v have no length", s.Dash)
	}
}

func (c *checker) path(p *canvas.Path) {
	if p != nil {
		c.numbers("a path", p.Data()...)
	}
}

func (c *checker) numbers(what string, v ...float64) {
	for _, x := range v {
		if math.IsNaN(x) || math.Abs(x) > 1e6 {
			c.fail("%s has a coordinate that cannot be drawn (%g)", what, x)
			return
		}
	}
}
