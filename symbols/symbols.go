// Package symbols is the artwork: every stitch drawn as strokes between where
// it stands and where its top is, after the meanings that the trade's charts
// agree on. A symbol is computed from its anchors, never a scaled picture, so
// the weight of its lines does not change with its height or lean. It knows
// nothing of rounds, charts or files.
//
// A leg is a stroke that begins exactly at its base. Bars and ovals lie across
// Up, a little below the top, so that the foot of the next stitch stands clear
// of them and stacked stitches read one by one. Slashes, hooks and loops keep
// their hand on the page whatever way the work runs: they turn with Up and not
// with Along.
//
// Anchors that cannot be drawn (not finite, or a leg of no length) give an
// empty Drawing; a missing width or unit is taken from the anchors at hand.
package symbols

import (
	"github.com/tdewolff/canvas"

	"whorl/patterns/stitch"
)

// Anchors are the points that a symbol reaches, in millimetres with y down.
type Anchors struct {
	// Base is where each leg stands, in working order. A chain has none.
	Base []canvas.Point
	// Top is the middle of the top of the stitch, where later stitches stand.
	Top canvas.Point
	// Along is the unit vector along the round at the top, in the direction
	// of working; Up is the unit vector away from the round below at the top.
	Along, Up canvas.Point
	// Rise is Up as it is at each base. It turns the marks at the foot, so
	// that stitches sharing a place share its mark. Where it is missing Up
	// is taken.
	Rise []canvas.Point
	// Width is the room along the round, and Unit the height on paper of one
	// single crochet: the scale that bars, slashes and ovals are drawn to.
	Width, Unit float64
	// FootWidth is the room along the round at the bases, for the marks there,
	// where it is less than Width; 0 where it is not.
	FootWidth float64
	// Shared says that other stitches stand in the same place, so that the
	// strokes draw together towards the foot and wide arms must be shorter.
	// A leg that leans is taken as shared anyway.
	Shared bool
	// Crossed says that other stitches cross the leg, so that its slashes are
	// drawn near its top, clear of them.
	Crossed bool
	// Again is how many others go round the same post before it, whose hook it lies on:
	// positive where they are to its left, negative where they are to its right.
	Again int
	// Stem is the share of a beginning chain's height that is a bare stem, from
	// its base up, where its ovals would have no room.
	Stem float64
}

// Drawing is a finished symbol: Strokes are drawn with the pen, Solid is
// filled. Either may be nil. Mark is set instead when the symbol is one of the
// rigid shapes that repeat (a chain's oval, a slip stitch's dot); a slip stitch
// in one loop has its arc in Strokes as well.
type Drawing struct {
	Strokes *canvas.Path
	Solid   *canvas.Path
	Mark    *Mark
}

// Empty reports whether there is nothing to draw.
func (d Drawing) Empty() bool {
	return d.Mark == nil && (d.Strokes == nil || d.Strokes.Empty()) && (d.Solid == nil || d.Solid.Empty())
}

// Mark is a rigid shape at a point.
type Mark struct {
	// Name tells the shape and its size in hundredths of a millimetre,
	// "c248" or "s112". Marks of one name have one Path.
	Name string
	// Path is about the origin, along the x axis. It is shared: copy it
	// before changing it.
	Path  *canvas.Path
	Solid bool
	At    canvas.Point
	Angle float64 // degrees clockwise
}

// Pen says how the artwork is drawn.
type Pen struct {
	Line  float64 // width of a stroke, millimetres
	Cross bool    // sc as × rather than +
}

// Draw is the symbol of a kind of stitch, worked into a part of the fabric.
//
// Plain stitches take one base, a Together one for each leg; the bundled
// shapes take one base for all legs or one for each. With no base at all the
// stitch stands its own [Height] below its top, as in a key. One loop or a post
// is marked at the foot; a space, ring, row end or other place needs no mark,
// as the leg is seen to stand in it. Crossed stitches are drawn like any other:
// two that lean over one another.
func Draw(k stitch.Kind, in stitch.Into, a Anchors, pen Pen) Drawing {
	if !k.Is() {
		return Drawing{}
	}
	s, ok := newSketch(a, pen, Height(k))
	if !ok {
		return Drawing{}
	}
	if k.Manner&stitch.Invisible != 0 && in == stitch.Top {
		in = stitch.FrontLoop
	}
	switch {
	case k.Shape == stitch.Picot:
		return s.picot(k.Legs)
	case k.Base == stitch.Chain:
		return s.chain()
	case k.Base == stitch.Slip:
		return s.slip(in)
	case s.reach() < s.line:
		return Drawing{}
	}
	s.manner(k.Manner)
	s.feet(k, in)
	switch k.Shape {
	case stitch.Together:
		s.together(k)
	case stitch.Cluster, stitch.Puff, stitch.Bobble, stitch.Popcorn:
		s.bundle(k)
	default:
		s.plain(k, in)
	}
	return s.finish()
}

// Half is the first or the last half of a Together that is begun at the start
// of a round and finished at its join. Its legs, one for each base, meet at the
// top like those of the whole, under that half of the bar which lies to its own
// side: the first half's reaches along the round, the last half's back.
func Half(k stitch.Kind, in stitch.Into, a Anchors, first bool, pen Pen) Drawing {
	s, ok := newSketch(a, pen, Height(k))
	if !ok || !k.Is() || s.reach() < s.line {
		return Drawing{}
	}
	s.side = 1
	if s.right.Dot(a.Along) < 0 {
		s.side = -1
	}
	if !first {
		s.side = -s.side
	}
	k.Shape, k.Legs = stitch.Together, len(s.base)
	s.manner(k.Manner)
	s.feet(k, in)
	s.together(k)
	return s.finish()
}

// heights are the plain stitches' heights in single crochets that the
// flat-circle rule implies: 6, 8, 12 and 16 increases a round for sc, hdc, dc
// and tr (agreeing in six published teaching sources), carried on in the same
// steps for the taller ones. Chain and slip stitch: the depth of their marks.
var heights = [...]float64{
	stitch.Chain: 0.5, stitch.Slip: 0.3, stitch.Single: 1, stitch.Half: 8. / 6, stitch.Double: 2,
	stitch.Treble: 16. / 6, stitch.DoubleTreble: 20. / 6, stitch.TripleTreble: 4,
}

// Height is the height, in single crochets, at which a kind's symbol looks its
// best: what a key draws it at. It is 0 for no stitch.
func Height(k stitch.Kind) float64 {
	if !k.Is() || int(k.Base) >= len(heights) {
		return 0
	}
	h := heights[k.Base]
	switch {
	case k.Shape == stitch.Picot:
		return 1.1
	case k.Shape == stitch.Puff:
		h = max(h, heights[stitch.Double])
	}
	if k.Manner&stitch.Extended != 0 {
		h += 0.4
	}
	if k.Manner&stitch.Spike != 0 {
		h += 0.8
	}
	return h
}
