package symbols

import (
	"github.com/tdewolff/canvas"

	"whorl/patterns/stitch"
)

// feet draws what tells where a stitch is worked: an arc for one loop, opening
// up for the front and down for the back, as the near and far loop of a stitch
// look from above; a foundation's own chain; a spike's point. For a post stitch
// it moves the foot of the leg up to leave room for the hook, which bulges to
// the right for the front and to the left for the back.
func (s *sketch) feet(k stitch.Kind, in stitch.Into) {
	for i, b := range s.base {
		if i > 0 && b == s.base[i-1] {
			s.foot[i] = s.foot[i-1]
			continue
		}
		switch in {
		case stitch.FrontLoop:
			s.loop(i, true)
		case stitch.BackLoop:
			s.loop(i, false)
		case stitch.FrontPost:
			s.lift(i, 1)
		case stitch.BackPost:
			s.lift(i, -1)
		}
		if k.Manner&stitch.Foundation != 0 {
			half := min(chainLong/2*s.unit, s.footRoom())
			thick := half * chainRatio
			s.oval(b.Sub(s.rise[i].Mul(thick)), across(s.rise[i]).Mul(half), thick)
		}
		if k.Manner&stitch.Spike != 0 {
			s.point(b)
		}
	}
}

// loop draws the arc for one loop about base i: a bowl that the leg stands in,
// or an arch that it comes through.
func (s *sketch) loop(i int, front bool) {
	b, rise := s.base[i], s.rise[i]
	half, deep := min(0.26*s.unit, s.footRoom()), s.loopDepth()
	over := across(rise).Mul(half)
	ends, bend := b.Add(rise.Mul(deep)), b.Sub(rise.Mul(deep))
	if !front {
		ends, bend = b, b.Add(rise.Mul(2*deep))
	}
	s.stroke(curve{ends.Sub(over), bend, ends.Add(over)})
}

// loopDepth is the height of a loop's arc.
func (s *sketch) loopDepth() float64 { return min(0.16*s.unit, 0.2*s.reach()+s.line/2) }

// lift raises foot i above its base by the height of a hook.
func (s *sketch) lift(i int, hand float64) {
	way := canvas.Point{Y: s.crest}.Sub(s.base[i])
	if tall := min(0.56*s.unit, 0.42*way.Length()); tall > s.line {
		// A hook under a leg that leans far stands up, clear of the bar below; one that
		// others may share, straight up.
		up := way.Norm(1).Add(s.rise[i])
		if s.shared {
			tall, up = min(tall, 0.34*s.unit), s.rise[i]
		}
		s.foot[i] = s.base[i].Add(up.Norm(tall)).Add(across(s.rise[i]).Mul(hair * s.again))
		s.hand = hand
	}
}

// Stitches round one post lie on one hook, hair mm beside one another; the hook of each
// is wider or narrower by a share.
const hair, hookStep = 0.02, 0.03

// raise draws the leg that stands on base i, with its hook where it has one that
// no other leg has drawn.
func (s *sketch) raise(i int, leg curve) {
	b, foot := s.base[i], s.foot[i]
	if b == foot || s.hooked[i] {
		s.stroke(leg)
		return
	}
	for j := range s.base {
		s.hooked[j] = s.hooked[j] || s.base[j] == b
	}
	tall := foot.Sub(b)
	out := across(tall.Norm(1)).Mul(s.hand * min(0.46*tall.Length(), s.footRoom()) * (1 + hookStep*s.hand*s.again))
	if dip := out.Dot(s.rise[i]); dip < 0 {
		out = out.Sub(s.rise[i].Mul(dip)) // no lower than the place, where a bar may lie
	}
	onto := leg.way(0)
	if s.shared {
		onto = s.rise[i]
	}
	side := b.Add(out).Add(tall.Mul(0.3)) // where the hook is widest
	s.stroke(
		curve{b, b.Add(out.Mul(0.6)), side.Sub(tall.Mul(0.17)), side},
		curve{side, side.Add(tall.Mul(0.32)), foot.Sub(onto.Mul(0.36 * tall.Length())), foot},
		leg)
}

// point draws the head of an arrow down onto a base: the stitch reaches through
// the fabric there.
func (s *sketch) point(b canvas.Point) {
	way := canvas.Point{Y: s.crest}.Sub(b)
	long := min(0.24*s.unit, 0.25*way.Length())
	up := way.Norm(0.85 * long)
	over := across(way.Norm(1)).Mul(min(0.53*long, s.halfRoom()))
	x, y := s.page(b)
	s.d.MoveTo(s.page(b.Add(up).Sub(over)))
	s.d.LineTo(x, y)
	s.d.LineTo(s.page(b.Add(up).Add(over)))
}
