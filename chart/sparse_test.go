package chart

import (
	"math"
	"testing"

	"whorl/patterns/fabric"
	"whorl/patterns/stitch"
)

var tog2 = stitch.Kind{Base: stitch.Single, Shape: stitch.Together, Legs: 2}

// limb is the arm of a toy: few stitches for many rounds, of which one is decreased or
// increased far out.
func limb(change func(*cloth)) *fabric.Fabric {
	c := newCloth("Arm").magic()
	c.rnd().st(sc, 8)
	for range 8 {
		c.rnd().st(sc, 8)
	}
	c.rnd()
	change(c)
	for range 3 {
		c.rnd()
		for c.next < len(c.part.Rounds[c.index()-1].Stitches) {
			c.st(sc, 1)
		}
	}
	return c.fabric()
}

// A decrease or an increase in a round of few stitches far out does not throw the others
// over, and the spokes beside it bend towards it from rounds before or after.
func TestFewStitchesFarOut(t *testing.T) {
	for name, f := range map[string]*fabric.Fabric{
		"decrease": limb(func(c *cloth) { c.tog(tog2).st(sc, 6) }),
		"increase": limb(func(c *cloth) { c.inc(sc, sc).st(sc, 7) }),
		"two":      limb(func(c *cloth) { c.tog(tog2).st(sc, 2).tog(tog2).st(sc, 2) }),
	} {
		w, err := newWork(f, measure(t, f), Options{}, fabric.InRounds)
		if err != nil {
			t.Fatal(err)
		}
		w.draw()
		worst := 0.0
		for _, c := range w.courses[2:] {
			for _, i := range c.order {
				feet, _ := w.feet(c, i)
				_, up := w.frame(c, c.theta[i], c.radius[i])
				for _, foot := range feet {
					leg := w.top(c, i).Sub(foot)
					worst = math.Max(worst, math.Acos(leg.Dot(up)/leg.Length())*180/math.Pi)
				}
			}
		}
		if worst > 45 {
			t.Errorf("%s: a leg leans %.0f°", name, worst)
		}
	}
}
