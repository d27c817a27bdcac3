package chart

import (
	"whorl/geometry"
	"whorl/patterns/fabric"
)

const (
	// A ball's last round is at most this part of its widest.
	closedEnd = 0.5
	// On the way to the widest round and from there none is narrower than this part
	// of one nearer the end that it is on the side of.
	bulges = 0.85
)

// Halves divides a chart of a whole part that begins in a centre and closes in again, as
// a ball does, at its widest round: on one disc its closing rounds would lie far out,
// where there is the most room, with the fewest stitches. The first half is drawn from
// the beginning outwards and the second inwards to the end. It is false for any other
// part, and where a range of rounds is asked for.
func Halves(f *fabric.Fabric, form *geometry.Form, o Options) (beginning, closing Options, ok bool) {
	w, err := newWork(f, form, o, fabric.InRounds)
	if err != nil || o.From > 0 || o.To > 0 || !w.isHub(w.courses[0]) || len(w.courses) < 2*leastCrown {
		return o, o, false
	}
	rounds := w.courses[1:]
	long := func(k int) float64 { return rounds[k].form.Circumference }
	widest := 0.0
	for k := range rounds {
		widest = max(widest, long(k))
	}
	from, to := -1, 0 // the widest rounds
	for k := range rounds {
		if long(k) > 0.99*widest {
			if from < 0 {
				from = k
			}
			to = k
		}
	}
	last := len(rounds) - 1
	if long(last) > closedEnd*widest || last-to < leastCrown || from < 1 {
		return o, o, false
	}
	for k := range rounds {
		switch {
		case k > 0 && k <= from && long(k) < bulges*long(k-1), k > to && long(k) > long(k-1)/bulges:
			return o, o, false // more than one ball
		}
	}
	beginning, closing = o, o
	beginning.From, beginning.To = rounds[0].round.Number, rounds[(from+to)/2].round.Number
	closing.From, closing.To = beginning.To+1, rounds[last].round.Number
	return beginning, closing, true
}
