package chart

import (
	"math"
	"slices"

	"github.com/tdewolff/canvas"

	"whorl/chart/scene"
	"whorl/chart/typeface"
)

// segment is a straight piece of a stroke on the page. Its owner is a number
// for the stitch that it belongs to.
type segment struct {
	a, b  canvas.Point
	owner int32
	half  float32 // half the width of the stroke, mm
}

// flatten cuts a path into straight segments, curves into six.
func flatten(d *canvas.Path, m canvas.Matrix, emit func(a, b canvas.Point)) {
	data := d.Data()
	var start, at canvas.Point
	point := func(i int) canvas.Point { return m.Dot(canvas.Point{X: data[i], Y: data[i+1]}) }
	for i := 0; i < len(data); {
		switch data[i] {
		case canvas.MoveToCmd:
			at = point(i + 1)
			start = at
			i += 4
		case canvas.LineToCmd:
			p := point(i + 1)
			emit(at, p)
			at = p
			i += 4
		case canvas.CloseCmd:
			emit(at, start)
			at = start
			i += 4
		case canvas.QuadToCmd:
			c, p := point(i+1), point(i+3)
			curve(at, at.Interpolate(c, 2./3), p.Interpolate(c, 2./3), p, emit)
			at = p
			i += 6
		case canvas.CubeToCmd:
			p := point(i + 5)
			curve(at, point(i+1), point(i+3), p, emit)
			at = p
			i += 8
		default: // an arc of a circle
			arc := &canvas.Path{}
			arc.MoveTo(data[i-3], data[i-2])
			arc.ArcTo(data[i+1], data[i+2], data[i+3]*180/math.Pi, data[i+4] == 1 || data[i+4] == 3, data[i+4] >= 2, data[i+5], data[i+6])
			flatten(arc.Flatten(0.02), m, emit)
			at = point(i + 5)
			i += 8
		}
	}
}

// curve cuts a cubic into six straight pieces.
func curve(a, b, c, d canvas.Point, emit func(p, q canvas.Point)) {
	prev := a
	for i := range pieces {
		s := &pieces[i]
		p := canvas.Point{X: a.X*s[0] + b.X*s[1] + c.X*s[2] + d.X*s[3], Y: a.Y*s[0] + b.Y*s[1] + c.Y*s[2] + d.Y*s[3]}
		emit(prev, p)
		prev = p
	}
}

// pieces are how much of each of its four points is in a cubic at the ends of its pieces.
var pieces = func() (all [6][4]float64) {
	for k := range all {
		t := float64(k+1) / float64(len(all))
		u := 1 - t
		all[k] = [4]float64{u * u * u, 3 * u * u * t, 3 * u * t * t, t * t * t}
	}
	return all
}()

// segments are the strokes of one node, with everything under it.
func segments(n scene.Node, k scene.Ink, owner int32, out []segment) []segment {
	emit := func(half float64) func(a, b canvas.Point) {
		return func(a, b canvas.Point) { out = append(out, segment{a, b, owner, float32(half)}) }
	}
	switch n := n.(type) {
	case *scene.Group:
		k = k.With(n.Style)
		for _, c := range n.Nodes {
			out = segments(c, k, owner, out)
		}
	case *scene.Path:
		if n.D == nil {
			return out
		}
		k = k.With(n.Style)
		half := 0.0
		if k.Strokes() {
			half = k.Line / 2
		}
		out = slices.Grow(out, n.D.Len()*len(pieces))
		flatten(n.D, canvas.Identity, emit(half))
	case *scene.Use:
		half := k.Line / 2
		if n.Shape.Solid {
			half = 0
		}
		flatten(n.Shape.D, canvas.Identity.Translate(n.X, n.Y).Rotate(n.Angle), emit(half))
	}
	return out
}

// apart is the distance between two segments and the middle of where they are
// nearest.
func apart(p, q segment) (float64, canvas.Point) {
	if at, ok := crossing(p, q); ok {
		return 0, at
	}
	best, at := math.Inf(1), canvas.Point{}
	try := func(x canvas.Point, s segment) {
		y := nearest(x, s)
		v := x.Sub(y)
		if d := v.Dot(v); d < best {
			best, at = d, x.Interpolate(y, 0.5)
		}
	}
	try(p.a, q)
	try(p.b, q)
	try(q.a, p)
	try(q.b, p)
	return math.Sqrt(best), at
}

func crossing(p, q segment) (canvas.Point, bool) {
	r, s := p.b.Sub(p.a), q.b.Sub(q.a)
	den := r.PerpDot(s)
	if math.Abs(den) < 1e-12 {
		return canvas.Point{}, false
	}
	w := q.a.Sub(p.a)
	t, u := w.PerpDot(s)/den, w.PerpDot(r)/den
	if t < 0 || t > 1 || u < 0 || u > 1 {
		return canvas.Point{}, false
	}
	return p.a.Add(r.Mul(t)), true
}

// nearest is the point of a segment nearest to x.
func nearest(x canvas.Point, s segment) canvas.Point {
	d := s.b.Sub(s.a)
	if l := d.Dot(d); l > 0 {
		return s.a.Add(d.Mul(max(0, min(1, x.Sub(s.a).Dot(d)/l))))
	}
	return s.a
}

// box is an upright rectangle on the page.
type box struct{ x0, y0, x1, y1 float64 }

func (b box) grown(d float64) box { return box{b.x0 - d, b.y0 - d, b.x1 + d, b.y1 + d} }

func (b box) meets(c box) bool { return b.x0 < c.x1 && c.x0 < b.x1 && b.y0 < c.y1 && c.y0 < b.y1 }

// textBox is the room a text takes, from the top of its capitals to its
// baseline, below it when it has letters that reach there.
func textBox(t *scene.Text) box {
	w := typeface.Width(t.String, t.Size, t.Bold, t.Italic)
	x := t.X
	switch t.Align {
	case scene.Centre:
		x -= w / 2
	case scene.Right:
		x -= w
	}
	return box{x, t.Y - typeface.CapHeight(t.Size), x + w, t.Y}
}

// cuts reports whether a segment passes through the box.
func (b box) cuts(s *segment) bool {
	if max(s.a.X, s.b.X) < b.x0 || min(s.a.X, s.b.X) > b.x1 || max(s.a.Y, s.b.Y) < b.y0 || min(s.a.Y, s.b.Y) > b.y1 {
		return false
	}
	// Beside them only the line of the segment itself can keep the two apart: the middle of
	// the box is then farther from it than the box reaches across it.
	d := s.b.Sub(s.a)
	wide, high := (b.x1-b.x0)/2, (b.y1-b.y0)/2
	off := d.X*(b.y0+high-s.a.Y) - d.Y*(b.x0+wide-s.a.X)
	return math.Abs(off) <= wide*math.Abs(d.Y)+high*math.Abs(d.X)
}
