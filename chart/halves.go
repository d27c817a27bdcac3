package chart

import (
	"whorl/geometry"
	"whorl/patterns/fabric"
	"whorl/patterns/stitch"
)

const (
	// A ball's last round is at most this part of its widest.
	closedEnd = 0.5
	// A round narrower than this part of one before it, or that much wider, has begun to
	// close in, or to open again.
	bulges = 0.85
	// mostBalls is how many balls a piece has at most, one worked on to the other.
	mostBalls = 3
)

// Halves divides a chart of a whole part that begins in a centre and closes in again, as
// a ball does, at its widest round: on one disc its closing rounds would lie far out,
// where there is the most room, with the fewest stitches. The first half is drawn from
// the beginning outwards and the second inwards to the end. Where it opens again, as a
// head does into a body, the next ball has halves of its own. It is nil for any other
// part, and where a range of rounds is asked for.
func Halves(f *fabric.Fabric, form *geometry.Form, o Options) (halves []Options) {
	w, err := newWork(f, form, o, fabric.InRounds)
	if err != nil || o.From > 0 || o.To > 0 || !w.isHub(w.courses[0]) || len(w.courses) < 2*leastCrown {
		return nil
	}
	rounds := w.courses[1:]
	ends := turns(rounds)
	last := len(rounds) - 1
	if n := len(ends); n == 0 || n > 2*mostBalls || n%2 > 0 || ends[0] < 1 || last-ends[n-2] < leastCrown ||
		rounds[last].form.Circumference > closedEnd*rounds[ends[n-2]].form.Circumference {
		return nil
	}
	from := 0
	for k, end := range ends {
		if end < from || k%2 > 0 && rounds[end].isLace() {
			return nil
		}
		half := o
		half.From, half.To, half.closing = rounds[from].round.Number, rounds[end].round.Number, k%2 > 0
		halves = append(halves, half)
		from = end + 1
	}
	return halves
}

// isLace reports whether a round has loops and is worked into those of the round below, as
// the last of a doily that closes over the tips of its pineapples: it lies flat all the same.
func (c *course) isLace() bool {
	for i := range c.round.Stitches {
		for _, p := range c.round.Stitches[i].On {
			if p.Into == stitch.Space && p.At.Round < c.index {
				return len(c.round.Spaces) > 0
			}
		}
	}
	return false
}

// turns are the last rounds of the runs that widen and narrow by turns: the middle of
// the widest rounds, and the last of the narrowest.
func turns(rounds []*course) (l []int) {
	best, first, to := rounds[0].form.Circumference, 0, 0 // the widest, or narrowest, of the run
	narrows := false
	for k, c := range rounds {
		long := c.form.Circumference
		switch {
		case !narrows && long < bulges*best:
			l = append(l, (first+to)/2)
			best, to, narrows = long, k, true
		case narrows && long > best/bulges:
			l = append(l, to)
			best, first, to, narrows = long, k, k, false
		case !narrows && long > best/0.99:
			best, first, to = long, k, k
		case !narrows && long > 0.99*best:
			to = k
		case narrows && long <= best:
			best, to = long, k
		}
	}
	if narrows {
		l = append(l, len(rounds)-1)
	}
	return l
}
