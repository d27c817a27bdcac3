package symbols

import (
	"math"

	"github.com/tdewolff/canvas"
)

// Proportions of the artwork, in units (the height of a single crochet) unless
// they say otherwise.
const (
	clearance = 0.09 // from the top down to the middle of the bar
	air       = 0.2  // millimetres of white between a bar and the next foot
	room      = 0.44 // of the width, that a symbol may take to each side
	barHalf   = 0.31
	farthest  = 1e5 // millimetres: what lies outside is not on any paper
)

// sketch is a symbol being drawn. It works in a frame of its own: the origin at
// the top, y along Up and x to the right of it on the page, so that artwork is
// written upright. Points are turned to the page as they are put in the path.
type sketch struct {
	top, right, up    canvas.Point   // the frame, on the page
	base, rise        []canvas.Point // in the frame; as many rises as bases
	foot              []canvas.Point // where the legs begin: base, or above its hook
	unit, width, line float64
	footWidth         float64
	crest             float64 // y of the bar
	cross, shared     bool
	crossed           bool
	side              float64 // of a half's bar: -1, 1; 0 is a whole one
	hand              float64 // of a hook: 1 bulges to the right, -1 to the left
	hooked            []bool  // bases whose hook is drawn
	again             float64 // stitches before it on the same hook
	d, solid          *canvas.Path
}

// newSketch is an empty sketch, or false when the anchors cannot be drawn. A
// stitch without bases stands tall units below its top.
func newSketch(a Anchors, pen Pen, tall float64) (*sketch, bool) {
	s := &sketch{top: a.Top, unit: a.Unit, width: a.Width, line: pen.Line, cross: pen.Cross,
		shared: a.Shared, crossed: a.Crossed, again: float64(a.Again), d: &canvas.Path{}, solid: &canvas.Path{}}
	if !onPaper(a.Top) || !onPaper(a.Base...) {
		return nil, false
	}
	s.up = upright(a)
	s.right = s.up.Rot90CCW() // clockwise on the page, where y is down
	for i, b := range a.Base {
		s.base = append(s.base, s.frame(b.Sub(a.Top)))
		rise := canvas.Point{Y: 1}
		if i < len(a.Rise) && onPaper(a.Rise[i]) && a.Rise[i].Length() > 0.5 {
			rise = s.frame(a.Rise[i].Norm(1))
		}
		s.rise = append(s.rise, rise)
	}
	if !sized(s.unit) && tall > 0 {
		s.unit = s.reach() / tall
	}
	if !sized(s.unit) {
		return nil, false
	}
	if !sized(s.width) {
		s.width = s.unit
	}
	if !sized(s.line) {
		s.line = 0.08 * s.unit
	}
	if len(s.base) == 0 {
		s.base = []canvas.Point{{Y: -tall * s.unit}}
		s.rise = []canvas.Point{{Y: 1}}
	}
	s.footWidth = s.width
	if sized(a.FootWidth) {
		s.footWidth = min(s.width, a.FootWidth)
	}
	s.foot = append(s.foot, s.base...)
	s.hooked = make([]bool, len(s.base))
	s.crest = -min(s.clear(), 0.25*s.reach())
	return s, true
}

// clear is the distance from a top down to the middle of the bar below it.
func (s *sketch) clear() float64 { return max(clearance*s.unit, s.line+air) }

// upright is the anchors' Up as a unit vector or, where it is missing, the
// perpendicular of Along that leads away from the bases.
func upright(a Anchors) canvas.Point {
	if onPaper(a.Up) && a.Up.Length() > 1e-6 {
		return a.Up.Norm(1)
	}
	if !onPaper(a.Along) || a.Along.Length() < 1e-6 {
		return canvas.Point{Y: -1}
	}
	up := a.Along.Norm(1).Rot90CW()
	if len(a.Base) > 0 && up.Dot(a.Top.Sub(a.Base[0])) < 0 || len(a.Base) == 0 && up.Y > 0 {
		return up.Neg()
	}
	return up
}

func onPaper(ps ...canvas.Point) bool {
	for _, p := range ps {
		if !(math.Abs(p.X) < farthest && math.Abs(p.Y) < farthest) {
			return false
		}
	}
	return true
}

func sized(x float64) bool { return x > 1e-3 && x < farthest }

// reach is the distance from the top to the farthest base.
func (s *sketch) reach() float64 {
	far := 0.0
	for _, b := range s.base {
		far = max(far, b.Length())
	}
	return far
}

// frame turns a vector on the page into the frame; page puts a point of the
// frame on the page, to a thousandth of a millimetre.
func (s *sketch) frame(v canvas.Point) canvas.Point {
	return canvas.Point{X: v.Dot(s.right), Y: v.Dot(s.up)}
}

func (s *sketch) page(p canvas.Point) (x, y float64) {
	q := s.top.Add(s.right.Mul(p.X)).Add(s.up.Mul(p.Y))
	return thousandth(q.X), thousandth(q.Y)
}

// thousandth rounds to 1/1000, and leaves no negative zero.
func thousandth(x float64) float64 { return math.Round(x*1000)/1000 + 0 }

// halfRoom is how far a stroke may reach to each side of the spine.
func (s *sketch) halfRoom() float64 { return max(room*s.width-s.line/2, 0) }

// footRoom is how far a mark at a base may reach to each side of it.
func (s *sketch) footRoom() float64 { return max(room*s.footWidth-s.line/2, 0) }

// stroke draws curves that follow one another as one stroke.
func (s *sketch) stroke(cs ...curve) {
	x, y := s.page(cs[0][0])
	s.d.MoveTo(x, y)
	for _, c := range cs {
		s.follow(s.d, c)
	}
}

func (s *sketch) follow(d *canvas.Path, c curve) {
	x, y := s.page(c[len(c)-1])
	switch len(c) {
	case 2:
		d.LineTo(x, y)
	case 3:
		x1, y1 := s.page(c[1])
		d.QuadTo(x1, y1, x, y)
	case 4:
		x1, y1 := s.page(c[1])
		x2, y2 := s.page(c[2])
		d.CubeTo(x1, y1, x2, y2, x, y)
	}
}

// oval draws an ellipse as a stroke that begins at centre − axis; half is half
// its thickness.
func (s *sketch) oval(centre, axis canvas.Point, half float64) {
	a, b := oval(centre, axis, half)
	s.stroke(a, b)
	s.d.Close()
}

// dot fills a circle.
func (s *sketch) dot(centre canvas.Point, radius float64) {
	a, b := oval(centre, canvas.Point{X: radius}, radius)
	x, y := s.page(a[0])
	s.solid.MoveTo(x, y)
	s.follow(s.solid, a)
	s.follow(s.solid, b)
	s.solid.Close()
}

func (s *sketch) finish() Drawing {
	var d Drawing
	if !s.d.Empty() {
		d.Strokes = s.d
	}
	if !s.solid.Empty() {
		d.Solid = s.solid
	}
	return d
}
