package symbols

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"

	"github.com/tdewolff/canvas"

	"whorl/patterns/stitch"
)

// Own is a designer's own symbol: lines drawn in a small box with two anchors in it,
// where the stitch stands and where its top is.
type Own struct {
	strokes [][]curve // in the frame of the anchors: y from 0 at the foot to 1 at the top, x to the right in the same units
}

const (
	mostStrokes = 400  // curves of an own symbol
	footSlack   = 0.02 // of the height, that a line may end off the foot
)

// NewOwn reads path data as SVG has it (lines, curves and arcs; x to the right, y
// down) in a box so wide and tall, in any unit. A line must begin, end or turn at the
// foot. The error says what is wrong and, where that is in the path, at which
// character, from 0.
func NewOwn(path string, width, height float64, foot, top canvas.Point) (*Own, error) {
	if err := pathLetters(path); err != nil {
		return nil, err
	}
	d, err := canvas.ParseSVGPath(path)
	if err != nil {
		return nil, pathError(err)
	}
	if d.Empty() {
		return nil, &PathError{Message: "the path draws nothing"}
	}
	for _, x := range d.Data() {
		if !(math.Abs(x) <= farthest) {
			return nil, &PathError{Message: "the path leaves its box"}
		}
	}
	spine := top.Sub(foot)
	tall := spine.Length()
	if !(tall > 0) {
		return nil, &PathError{Message: "the top is where the foot is"}
	}
	up := spine.Norm(1)
	right := canvas.Point{X: -up.Y, Y: up.X}
	frame := func(p canvas.Point) canvas.Point {
		v := p.Sub(foot)
		return canvas.Point{X: v.Dot(right) / tall, Y: v.Dot(up) / tall}
	}
	o := &Own{}
	n, stands := 0, false
	slack := 0.01 * math.Max(width, height)
	for s := d.ReplaceArcs().Scanner(); s.Scan(); {
		e := s.End()
		if !(e.X >= -slack && e.Y >= -slack && e.X <= width+slack && e.Y <= height+slack) {
			return nil, &PathError{Message: fmt.Sprintf("the path leaves its box at %.3g %.3g", e.X, e.Y)}
		}
		stands = stands || e.Sub(foot).Length() <= footSlack*tall
		var c curve
		switch s.Cmd() {
		case canvas.MoveToCmd:
			o.strokes = append(o.strokes, nil)
			continue
		case canvas.LineToCmd, canvas.CloseCmd:
			a, b := frame(s.Start()), frame(e)
			c = curve{a, a.Interpolate(b, 1./3), a.Interpolate(b, 2./3), b}
		case canvas.QuadToCmd:
			a, m, b := frame(s.Start()), frame(s.CP1()), frame(e)
			c = curve{a, a.Interpolate(m, 2./3), b.Interpolate(m, 2./3), b}
		case canvas.CubeToCmd:
			c = curve{frame(s.Start()), frame(s.CP1()), frame(s.CP2()), frame(e)}
		}
		if n++; n > mostStrokes {
			return nil, &PathError{Message: fmt.Sprintf("the path has more than %d strokes", mostStrokes)}
		}
		last := &o.strokes[len(o.strokes)-1]
		*last = append(*last, c)
	}
	if !stands {
		return nil, &PathError{Message: fmt.Sprintf("no line of the path comes to its foot at %.3g %.3g", foot.X, foot.Y)}
	}
	return o, nil
}

// PathError says what is wrong with the path of a designer's own symbol.
type PathError struct {
	Message string
	// At is the character of the path that is wrong, from 0, where InPath is set.
	At     int
	InPath bool
}

func (e *PathError) Error() string { return e.Message }

// pathLetters refuses what is no letter of path data and no number, and a path that
// does not begin by moving to a place.
func pathLetters(path string) error {
	if !strings.HasPrefix(path, "M") && !strings.HasPrefix(path, "m") {
		return &PathError{Message: "the path does not begin with M and a place", InPath: true}
	}
	if bad := regexp.MustCompile(`[^MmLlHhVvCcSsQqTtAaZz0-9eE+\-.,\s]`).FindStringIndex(path); bad != nil {
		return &PathError{Message: fmt.Sprintf("%q has no meaning in a path", string([]rune(path[bad[0]:])[:1])), At: bad[0], InPath: true}
	}
	return nil
}

var placed = regexp.MustCompile(`^bad path: (.*?)(?: at position (\d+))?$`)

// pathError is the fault of a path that the graphics library cannot read.
func pathError(err error) error {
	m := placed.FindStringSubmatch(err.Error())
	if m == nil {
		return &PathError{Message: "the path cannot be read: " + err.Error()}
	}
	e := &PathError{Message: "the path cannot be read: " + m[1]}
	if at, err := strconv.Atoi(m[2]); err == nil {
		e.At, e.InPath = max(at-1, 0), true
	}
	return e
}

// Draw draws the symbol of a stitch of a kind, worked into a part of the fabric,
// between its anchors: the line from foot to top follows the leg that the kind would
// have, and what lies beside it keeps its size, or less where the room is less. The
// weight of its lines is the pen's.
func (o *Own) Draw(k stitch.Kind, in stitch.Into, a Anchors, pen Pen) Drawing {
	s, ok := newSketch(a, pen, Height(k))
	if !ok || s.reach() < s.line {
		return Drawing{}
	}
	s.feet(k, in)
	leg := s.leg(s.foot[0])
	if s.foot[0] != s.base[0] {
		s.raise(0, curve{s.foot[0], s.foot[0].Add(leg.way(0).Mul(0.01))})
	}
	tall := max(Height(k), 1) * s.unit
	widest := 1e-9
	for _, stroke := range o.strokes {
		for _, c := range stroke {
			for _, p := range c {
				widest = max(widest, math.Abs(p.X))
			}
		}
	}
	scale := min(tall, s.halfRoom()/widest)
	onLeg := func(p canvas.Point) canvas.Point {
		t := min(max(p.Y, 0), 1)
		at, way := leg.at(t), leg.way(t)
		return at.Add(way.Mul((p.Y - t) * scale)).Add(across(way).Mul(p.X * scale))
	}
	for _, stroke := range o.strokes {
		for i, c := range stroke {
			for _, part := range halves(c) {
				bent := make(curve, len(part))
				for j, p := range part {
					bent[j] = onLeg(p)
				}
				if i == 0 && part[0] == c[0] {
					s.d.MoveTo(s.page(bent[0]))
				}
				s.follow(s.d, bent)
			}
		}
	}
	return s.finish()
}

// halves are the two halves of a cubic, so that what follows a bent leg bends with
// it.
func halves(c curve) [2]curve {
	ab, bc, cd := c[0].Interpolate(c[1], 0.5), c[1].Interpolate(c[2], 0.5), c[2].Interpolate(c[3], 0.5)
	abc, bcd := ab.Interpolate(bc, 0.5), bc.Interpolate(cd, 0.5)
	mid := abc.Interpolate(bcd, 0.5)
	return [2]curve{{c[0], ab, abc, mid}, {mid, bcd, cd, c[3]}}
}
