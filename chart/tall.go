package chart

import (
	"math"

	"github.com/tdewolff/canvas"

	"whorl/chart/scene"
	"whorl/patterns/fabric"
	"whorl/patterns/stitch"
	"whorl/symbols"
)

// A round may be closed with a tall stitch in place of the last chains of its last
// loop. It stands on the first stitch of the round and leans back over where those
// chains would be; its top is the middle of the loop, where the next round begins.

// completer is the stitch that completes a space of the course at its join, -1 when it
// is none of those or not completed so.
func (c *course) completer(p fabric.Place) int {
	if k := c.round.Completed; k == 0 || k > len(c.round.Spaces) || c.round.Spaces[k-1].From != p.At.Stitch {
		return -1
	}
	for i := range c.round.Stitches {
		if s := &c.round.Stitches[i]; s.Role == fabric.Join && c.rank[i] >= 0 {
			return i
		}
	}
	return -1
}

// joinRoom is the room that the top of a tall join has, and what its leg takes after
// it, in the fabric: it stands for as many chains as it is tall.
func (c *course) joinRoom(i int) (top, after float64) {
	chain := c.form.Widths[c.round.Spaces[c.round.Completed-1].From]
	return chain, chain * float64(max(c.round.Stitches[i].Kind.Chains()-1, 0))
}

// joinRadius is how far out the top of a tall join is: as far as the round's loops are.
func (c *course) joinRadius(up float64) float64 {
	best := math.Inf(-1)
	for i := range c.round.Stitches {
		if s := &c.round.Stitches[i]; s.IsChain() && c.rank[i] >= 0 {
			best = math.Max(best, c.radius[i]*up)
		}
	}
	return best * up
}

// overJoin raises the chains of a round on a ring that lie on the leg of the tall join of
// the round below.
func (w *work) overJoin(c *course, raised map[int]bool) {
	if c.index <= w.lo || !w.ringed() {
		return
	}
	d, up := w.courses[c.index-1], w.up()
	for j := range d.round.Stitches {
		s := &d.round.Stitches[j]
		if s.Role != fabric.Join || d.rank[j] < 0 || len(s.On) == 0 {
			continue
		}
		end, ok := w.footAngle(d, j, s.On[0])
		if !ok {
			return
		}
		end = above(end, d.theta[j]-math.Pi)
		top, foot := d.radius[j]*up, w.footRadius(d, j, s.On[0])*up
		for _, i := range c.order {
			share := (above(c.theta[i], d.theta[j]-math.Pi) - d.theta[j]) / (end - d.theta[j])
			if !c.isLoop(i) || !(share > 0 && share < 1) {
				continue
			}
			if least := top + (foot-top)*share + clearChain*w.unit; c.radius[i]*up < least {
				c.radius[i] = least * up
				raised[i] = true
			}
		}
	}
}

// tallJoin draws the stitch that closes a round and completes its last space.
func (d *roundArtist) tallJoin(grp *scene.Group, i int) *scene.Group {
	s := &d.c.round.Stitches[i]
	an := d.anchors(i)
	an.Width = min(an.Width, d.unit)
	along := d.onLoop(i)
	if len(along) > 0 && len(an.Base) == 1 && an.Top != an.Base[0] {
		an.Width *= 0.45
		an.Rise = []canvas.Point{an.Top.Sub(an.Base[0]).Norm(1)} // straight, as those on it stand
	}
	d.paint(grp, symbols.Draw(s.Kind, stitch.Top, an, d.pen))
	grp.Title += " with " + s.Kind.Name(d.o.Terms)
	grp.Data = []scene.Attr{{Name: "kind", Value: s.Kind.Name(d.o.Terms)}, {Name: "top", Points: append([]canvas.Point{an.Top}, along...)}, {Name: "base", Points: an.Base}}
	return grp
}

// onLoop are the places along the loop that the tall join i completes.
func (d *roundArtist) onLoop(i int) []canvas.Point {
	k := d.c.round.Completed
	if k == 0 || k > len(d.c.round.Spaces) {
		return nil
	}
	return d.strung[d.key(fabric.Place{Into: stitch.Space, At: fabric.Ref{Round: d.c.index, Stitch: d.c.round.Spaces[k-1].From}})]
}
