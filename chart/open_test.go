package chart

import (
	"testing"

	"whorl/patterns/fabric"
)

// Rounds are parted for their numbers at the seam alone: elsewhere their stitches stay as
// far from one another as they were.
func TestPartedAtSeamOnly(t *testing.T) {
	f := flat(dc, 12, 6, true)
	w, err := newWork(f, measure(t, f), Options{}, fabric.InRounds)
	if err != nil {
		t.Fatal(err)
	}
	_, _ = w.draw()
	before := make([][]float64, len(w.courses))
	for k, c := range w.courses {
		before[k] = gaps(c)
	}
	if !w.open(w.courses[4:6], 1) {
		t.Fatal("no room is to be had")
	}
	_, _ = w.draw()
	for k, c := range w.courses[4:6] {
		now := gaps(c)
		n := len(now)
		if was := before[4+k][n-1]; now[n-1] < 1.2*was {
			t.Errorf("%s: the gap at the seam is %.4f and was %.4f", c.label(), now[n-1], was)
		}
		for i := n / 6; i < n-n/6; i++ {
			if was := before[4+k][i]; now[i] > 1.03*was || now[i] < 0.9*was {
				t.Errorf("%s: the gap after stitch %d is %.4f and was %.4f", c.label(), i, now[i], was)
			}
		}
	}
}

// gaps are those between the stitches of a round, the last over its seam.
func gaps(c *course) (l []float64) {
	for k, i := range c.order {
		next, turn := c.order[(k+1)%len(c.order)], 0.0
		if k == len(c.order)-1 {
			turn = c.wind(c.order[0])
		}
		l = append(l, c.theta[next]+turn-c.theta[i])
	}
	return l
}
