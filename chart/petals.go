package chart

import (
	"math"

	"whorl/chart/ring"
	"whorl/patterns/fabric"
	"whorl/patterns/stitch"
	"whorl/symbols"
)

// A petalSide is the chains by which a petal begins or ends: from a slip stitch up to the
// height of the stitches in the same place, or down from it. They stand beside these
// legs as a beginning chain does, and do not lie along the round.
type petalSide struct {
	chains     []int
	slip, tall int
	down       bool
}

const (
	mostSide  = 1.5  // chains, to the height of the stitch beside them in units
	sideWide  = 0.8  // of the room of the stitch beside them, that they take
	dotAside  = 0.45 // units, from the place of a petal to the dots on both sides of it
	sideFoot  = 0.35 // units, from the foot of the leg to the first chain
	sideAside = 0.65 // units, from the leg to the middle of the chains
	sidePitch = 1.5  // units, from chain to chain at most
)

// findPetals finds the sides of the petals of a round about a centre.
func (w *work) findPetals(c *course) {
	c.petals = nil
	if w.rows || w.flat || w.oval != nil || w.border != nil || c.open || c.hub {
		return
	}
	s := c.round.Stitches
	n := len(s)
	for i := 0; i < n; i++ {
		if !c.isLoop(i) || i > 0 && c.isLoop(i-1) {
			continue
		}
		k := petalSide{}
		for j := i; j < n && c.isLoop(j); j++ {
			k.chains = append(k.chains, j)
		}
		before, after := (i+n-1)%n, (i+len(k.chains))%n
		k.slip, k.tall = before, after
		if k.down = s[before].Kind.Base != stitch.Slip; k.down {
			k.slip, k.tall = after, before
		}
		a, b := &s[k.slip], &s[k.tall]
		if a.Role != fabric.Worked || b.Role != fabric.Worked || a.Kind.Base != stitch.Slip || len(a.On) != 1 || len(b.On) != 1 ||
			w.key(a.On[0]) != w.key(b.On[0]) || float64(len(k.chains)) > mostSide*symbols.Height(b.Kind) || symbols.Height(b.Kind) < 1.5 {
			continue
		}
		c.petals = append(c.petals, k)
	}
}

// narrowPetals leaves the sides of petals the room of one leg.
func (c *course) narrowPetals(items []ring.Item) {
	for _, k := range c.petals {
		for _, i := range k.chains {
			if r := c.rank[i]; r >= 0 {
				items[r].Width = sideWide * c.form.Widths[k.tall] / float64(len(k.chains))
			}
		}
	}
}

// standUp sets the chains at the sides of petals, and the dots from which they go up.
func (w *work) standUp(c *course) {
	for _, k := range c.petals {
		if c.tilt == nil {
			c.tilt = map[int]float64{}
		}
		if c.pitch == nil {
			c.pitch = map[int]float64{}
		}
		out := 1.0 // along the rising angles, or against them
		if k.down == c.reversed {
			out = -1
		}
		tall, slip := c.round.Stitches[k.tall].On[0], c.round.Stitches[k.slip].On[0]
		if a, ok := w.footAngle(c, k.slip, slip); ok {
			c.theta[k.slip] = above(a+out*dotAside*w.unit/c.radius[k.slip], c.theta[k.slip]-math.Pi)
		}
		// The leg, from the foot out; the chains go up beside it.
		foot := w.footRadius(c, k.tall, tall)
		at, ok := w.footAngle(c, k.tall, tall)
		low := sideFoot * w.unit
		if !ok { // about a ring, where petals leave one another room
			at = c.theta[k.tall]
			low = math.Max(low, (sideAside+0.5)*w.unit/math.Abs(math.Remainder(c.theta[k.slip]-at, ring.Turn))-foot)
		}
		top := math.Remainder(c.theta[k.tall]-at, ring.Turn)
		rise, across := c.radius[k.tall]*math.Cos(top)-foot, c.radius[k.tall]*math.Sin(top)
		long := math.Hypot(rise, across)
		lean := math.Atan2(across, rise)
		pitch := math.Min(sidePitch*w.unit, (long-low)/float64(len(k.chains)))
		turn := -ring.Turn / 4
		if k.down {
			turn = -turn
		}
		for j, i := range k.chains {
			if k.down {
				j = len(k.chains) - 1 - j
			}
			s, co := math.Sincos(lean)
			up, aside := low+(float64(j)+0.5)*pitch, out*sideAside*w.unit
			c.setAt(i, at, foot+up*co-aside*s, up*s+aside*co, turn+lean)
			c.theta[i] = above(c.theta[i], c.theta[k.tall]-math.Pi)
			c.pitch[i] = pitch
		}
	}
}

// petalTop is the stitch whose top is that of a petal at a chain in its side; for others
// the stitch itself.
func (c *course) petalTop(i int) int {
	for _, k := range c.petals {
		if k.chains[0] <= i && i <= k.chains[len(k.chains)-1] {
			return k.tall
		}
	}
	return i
}
