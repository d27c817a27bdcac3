package symbols

import (
	"fmt"
	"math"
	"sync"

	"github.com/tdewolff/canvas"

	"whorl/patterns/stitch"
)

const (
	chainLong  = 0.62 // units: the oval's length
	chainRatio = 0.52 // its thickness to its length
	slipHalf   = 0.14 // units: the radius of a slip stitch's dot
	markStep   = 0.04 // millimetres: marks come in sizes of this step
)

// chain is the oval of a chain, lying along the round just below its top.
func (s *sketch) chain() Drawing {
	long := min(chainLong*s.unit, 2*s.halfRoom())
	m := mark("c", long, func(long float64) *canvas.Path {
		return about(canvas.Point{X: long / 2}, long/2*chainRatio)
	})
	m.At = s.onPage(canvas.Point{Y: -s.clear() - long/2*chainRatio})
	m.Angle = s.turned()
	return Drawing{Mark: m}
}

// slip is the dot of a slip stitch, midway between its base and its top or, as
// it has hardly any height, as low as the bar below its base lets it lie.
func (s *sketch) slip(in stitch.Into) Drawing {
	m, radius := s.slipMark()
	low := radius + s.line + air - s.clear()
	switch in {
	case stitch.FrontLoop:
		low = radius + s.line/2 + air/2
	case stitch.BackLoop:
		low = radius + s.line/2 + air/2 + s.loopDepth()
	}
	at := s.base[0].Mul(0.5)
	at.Y = max(at.Y, s.base[0].Y+low)
	m.At = s.onPage(at)
	s.feet(stitch.Of(stitch.Slip), in)
	d := s.finish()
	d.Mark = m
	return d
}

// Join is the dot of the slip stitch that joins a round, its middle on the top.
func Join(a Anchors, pen Pen) Drawing {
	s, ok := newSketch(a, pen, heights[stitch.Slip])
	if !ok {
		return Drawing{}
	}
	m, _ := s.slipMark()
	m.At = s.onPage(canvas.Point{})
	return Drawing{Mark: m}
}

func (s *sketch) slipMark() (*Mark, float64) {
	wide := 2 * min(slipHalf*s.unit, room*s.width)
	m := mark("s", wide, func(wide float64) *canvas.Path {
		return about(canvas.Point{X: wide / 2}, wide/2)
	})
	m.Solid = true
	m.Angle = 0
	return m, wide / 2
}

// Start is a beginning chain: n ovals end to end from the base to just below the
// top, the first beginning at the base. It is nothing for n < 1.
func Start(n int, a Anchors, pen Pen) Drawing {
	s, ok := newSketch(a, pen, float64(max(n, 1))*2/3)
	if !ok || n < 1 || s.reach() < s.line {
		return Drawing{}
	}
	leg := s.leg(s.base[0])
	if a.Stem > 0 {
		var stem curve
		stem, leg = leg.split(min(a.Stem, 0.9))
		bare, _ := stem.split(0.9)
		s.stroke(bare)
	}
	// Ends of ovals are as far apart as the widths of two strokes.
	tall := leg[0].Sub(leg[len(leg)-1]).Length()
	step := (tall + 2*s.line) / float64(n)
	long := min(max(step-2*s.line, 0.3*step), 1.1*chainLong*s.unit)
	half := min(long/2*chainRatio, chainLong/2*chainRatio*s.unit, s.halfRoom())
	for i := range n {
		from, to := leg.at(float64(i)*step/tall), leg.at(min((float64(i)*step+long)/tall, 1))
		s.oval(from.Interpolate(to, 0.5), to.Sub(from).Mul(0.5), half)
	}
	return s.finish()
}

// Ring is what the first round is worked into, about a centre: a circle for a
// magic ring (chains < 1), or that many chains end to end. Stitches stand on its
// outside, at the radius.
func Ring(centre canvas.Point, radius float64, chains int, unit float64, pen Pen) Drawing {
	s, ok := newSketch(Anchors{Top: centre, Up: canvas.Point{Y: -1}, Unit: unit}, pen, 1)
	if !ok || !sized(radius) {
		return Drawing{}
	}
	if chains < 1 {
		s.circle(radius)
		return s.finish()
	}
	// The ovals' outer sides lie on the radius; their ends keep apart.
	turn := 2 * math.Pi / float64(chains)
	long := min(chainLong*s.unit, 2*radius*math.Sin(min(turn, math.Pi)/2)/(1+chainRatio*turn/4)-2*s.line)
	if long < s.line {
		s.circle(radius)
		return s.finish()
	}
	thick := long / 2 * chainRatio
	for i := range chains {
		out := canvas.Point{Y: 1}.Rot(turn*float64(i), canvas.Origin)
		s.oval(out.Mul(radius-thick), across(out).Mul(long/2), thick)
	}
	return s.finish()
}

// circle draws a circle about the top in four quarters, true to 0.03 %.
func (s *sketch) circle(radius float64) {
	const k = 0.5522847498307936 // 4/3·(√2 − 1)
	var quarters []curve
	for i := range 4 {
		out := canvas.Point{Y: radius}.Rot(float64(i)*math.Pi/2, canvas.Origin)
		next := out.Rot90CCW()
		quarters = append(quarters, curve{out, out.Add(next.Mul(k)), next.Add(out.Mul(k)), next})
	}
	s.stroke(quarters...)
	s.d.Close()
}

// marks holds the paths of marks by name, so that equal ones are one.
var marks sync.Map

// mark is the shape of a name that is about as large as size, made when it is
// first asked for.
func mark(name string, size float64, shape func(size float64) *canvas.Path) *Mark {
	steps := math.Max(math.Floor(size/markStep+1e-6), 1)
	name = fmt.Sprintf("%s%d", name, int(math.Round(steps*markStep*100)))
	path, ok := marks.Load(name)
	if !ok {
		path, _ = marks.LoadOrStore(name, shape(steps*markStep))
	}
	return &Mark{Name: name, Path: path.(*canvas.Path)}
}

// about is an oval about the origin, on the page.
func about(axis canvas.Point, half float64) *canvas.Path {
	s := sketch{right: canvas.Point{X: 1}, up: canvas.Point{Y: -1}, d: &canvas.Path{}}
	s.oval(canvas.Origin, axis, half)
	return s.d
}

// onPage is a point of the frame on the page; turned is the frame's turn there
// in degrees clockwise, within (−90, 90], as an oval looks the same both ways.
func (s *sketch) onPage(p canvas.Point) canvas.Point {
	x, y := s.page(p)
	return canvas.Point{X: x, Y: y}
}

func (s *sketch) turned() float64 {
	deg := math.Atan2(s.right.Y, s.right.X) * 180 / math.Pi
	switch {
	case deg > 90:
		deg -= 180
	case deg <= -90:
		deg += 180
	}
	return math.Round(deg*10) / 10 // an oval's ends are within 0.002 mm
}
