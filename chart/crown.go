package chart

import (
	"whorl/geometry"
	"whorl/patterns/fabric"
)

// leastCrown is how many rounds a crown has at least.
const leastCrown = 3

// Small reports whether symbols of the chart would print too small to read.
func (c *Chart) Small() bool { return c.Smallest > 0 && c.Smallest < c.least }

// Legible reports whether the symbols of the chart print large enough and far enough
// from one another to be read.
func (c *Chart) Legible() bool { return !c.Small() && !c.crowded }

// Crown narrows options for a round chart that cannot be read to as many of its rounds,
// from the centre outwards, as can. It is false where hardly
// any do.
func Crown(f *fabric.Fabric, form *geometry.Form, o Options) (Options, bool) {
	w, err := newWork(f, form, o, fabric.InRounds)
	if err != nil {
		return o, false
	}
	w.turn()
	first, last := w.courses[w.first].round.Number, w.courses[w.last].round.Number
	narrowed := func(n int) Options {
		part := o
		if w.closesIn() {
			part.From, part.To = last-n+1, last
		} else {
			part.From, part.To = first, first+n-1
		}
		return part
	}
	fits := func(n int) bool {
		c, err := Round(f, form, narrowed(n))
		return err == nil && c.Legible()
	}
	// The more rounds, the smaller: halving finds the most that fit.
	low, high := leastCrown-1, last-first+1
	for high-low > 1 {
		if mid := (low + high) / 2; fits(mid) {
			low = mid
		} else {
			high = mid
		}
	}
	return narrowed(low), low >= leastCrown
}
