package chart

import (
	"math"
	"slices"
	"strings"

	"github.com/tdewolff/canvas"

	"whorl/chart/scene"
	"whorl/patterns/fabric"
	"whorl/patterns/stitch"
)

// Stitches that are worked across one another, as in a cable, cross on the chart as
// they do in the fabric: the line of the one behind is broken where that of the one
// in front passes.

const (
	crossingAir = 0.3 // white to each side of the stitch in front, mm
	leastPiece  = 2   // of a broken line that is left, in widths of the line
	cableMost   = 8   // stitches from the first of a cable to its last
)

// breakBehind breaks the lines of the stitches of the round that pass behind others
// of it.
func (d *roundArtist) breakBehind() {
	stitches := d.c.round.Stitches
	whole := map[int][]segment{} // strokes before any is broken
	strokes := func(i int) []segment {
		if _, ok := whole[i]; !ok {
			k := scene.Plain
			k.Stroke, k.Line = ink, d.pen.Line
			whole[i] = segments(d.groups[i], k, 0, nil)
		}
		return whole[i]
	}
	type pair struct{ front, back int }
	var pairs []pair
	for j := range stitches {
		for i := max(0, j-cableMost); i < j; i++ {
			if d.groups[i] == nil || d.groups[j] == nil || !d.crosses(i, j) {
				continue
			}
			p := pair{front: j, back: i}
			if goesBehind(&stitches[i], &stitches[j]) {
				p = pair{front: i, back: j}
			}
			strokes(i)
			strokes(j)
			pairs = append(pairs, p)
		}
	}
	behind := make([][]string, len(stitches)) // what each is behind
	for _, p := range pairs {
		if d.breakLine(d.groups[p.back], strokes(p.front)) {
			behind[p.back] = append(behind[p.back], d.groups[p.front].ID)
		}
	}
	for i, names := range behind {
		if len(names) > 0 {
			d.groups[i].Data = append(d.groups[i].Data, scene.Attr{Name: "behind", Value: strings.Join(names, " ")})
		}
	}
}

// goesBehind reports whether a stitch worked after another, across it, lies behind it.
func goesBehind(first, then *fabric.Stitch) bool {
	return then.Behind || then.On[0].Into == stitch.BackPost && first.On[0].Into != stitch.BackPost
}

// isCrossed reports whether stitch i is worked across another.
func (d *roundArtist) isCrossed(i int) bool {
	for j := max(0, i-cableMost); j <= min(i+cableMost, len(d.c.round.Stitches)-1); j++ {
		if j != i && d.crosses(i, j) {
			return true
		}
	}
	return false
}

// nearestFoot is the foot, among those of stitch i and of the stitches that it is worked
// across, that is nearest to the seam: the first in the order of places, or the last.
func (d *roundArtist) nearestFoot(i int, last bool) canvas.Point {
	c := d.c
	best, at := i, math.Inf(1)
	for j := max(0, i-cableMost); j <= min(i+cableMost, len(c.round.Stitches)-1); j++ {
		if j != i && !d.crosses(i, j) {
			continue
		}
		s := d.stand(j)
		a := s.angle
		if last != c.reversed {
			a = -a
		}
		if s.known && (a < at-1e-9 || j == i && a < at+1e-9) {
			best, at = j, a
		}
	}
	feet, _ := d.feet(c, best)
	if last {
		return feet[len(feet)-1]
	}
	return feet[0]
}

// crosses reports whether two stitches are worked across one another: their places are
// in the other order than their tops.
func (d *roundArtist) crosses(i, j int) bool {
	c := d.c
	if c.rank[i] < 0 || c.rank[j] < 0 || len(c.round.Stitches[i].On) == 0 || len(c.round.Stitches[j].On) == 0 {
		return false
	}
	a, b := d.stand(i), d.stand(j)
	return a.known && b.known && (c.theta[j]-c.theta[i])*(b.angle-a.angle) < 0 && math.Abs(b.angle-a.angle) > 1e-6
}

// stand is the angle that a stitch stands at, known only where its places have one.
type stand struct {
	angle        float64
	known, asked bool
}

// stand is the angle of stitch i's places, within half a turn of its own; kept, for
// every stitch is held against those around it.
func (d *roundArtist) stand(i int) stand {
	if d.stands == nil {
		d.stands = make([]stand, len(d.c.round.Stitches))
	}
	s := &d.stands[i]
	if !s.asked {
		s.angle, s.known = d.stance(d.c, i, d.c.theta[i]-math.Pi)
		s.asked = true
	}
	return *s
}

// breakLine takes out of a group's strokes what lies under the strokes in front. It is
// false where nothing does.
func (d *roundArtist) breakLine(g *scene.Group, front []segment) bool {
	broken := false
	for _, n := range g.Nodes {
		p, ok := n.(*scene.Path)
		if !ok || p.Style.Fill != nil {
			continue
		}
		left := &canvas.Path{}
		for _, stroke := range p.D.Split() {
			cuts := d.hidden(stroke, front)
			if len(cuts) == 0 {
				left = left.Append(stroke)
				continue
			}
			broken = true
			hide := cuts[0] == 0
			if hide {
				cuts = cuts[1:]
			}
			for _, piece := range stroke.SplitAt(cuts...) {
				if !hide && piece.Length() > leastPiece*d.pen.Line {
					left = left.Append(piece)
				}
				hide = !hide
			}
		}
		p.D = left
	}
	return broken
}

// hidden is where along a stroke what is in front hides it: the lengths at which it
// goes under and comes out by turns. It comes out at its end.
func (d *roundArtist) hidden(stroke *canvas.Path, front []segment) (cuts []float64) {
	const step = 0.05 // mm
	under, at := false, 0.0
	covered := func(p canvas.Point) bool {
		for i := range front {
			s := &front[i]
			if reach := s.bounds().grown(d.pen.Line/2 + crossingAir + 1e-6); p.X < reach.x0 || p.X > reach.x1 || p.Y < reach.y0 || p.Y > reach.y1 {
				continue
			}
			if nearest(p, *s).Sub(p).Length() < float64(s.half)+d.pen.Line/2+crossingAir {
				return true
			}
		}
		return false
	}
	flatten(stroke, canvas.Identity, func(a, b canvas.Point) {
		long := b.Sub(a).Length()
		for k := 0.0; k <= long; k += step {
			if c := covered(a.Interpolate(b, k/math.Max(long, step))); c != under {
				cuts = append(cuts, at+k)
				under = c
			}
		}
		at += long
	})
	if whole := stroke.Length(); len(cuts) > 0 && at > 0 { // chords are shorter than the curve
		for k := range cuts {
			cuts[k] *= whole / at
		}
	}
	return slices.Clip(cuts)
}
