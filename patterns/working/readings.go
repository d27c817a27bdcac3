package working

import (
	"math/bits"

	"whorl/patterns/fabric"
)

// reading is how words that leave something open are read.
type reading struct {
	// otherwise is the numbers of chains, as a set of bits, that count at the
	// beginning of a round the other way than the rule of the trade has it.
	otherwise uint64
	noSplit   bool // no group is split at the join
	// anyKind lets the names of stitches in words that are worked again stand for
	// whatever stitches they come to.
	anyKind bool
	asMany  asMany
	// inTurn lets the first stitches of lists without brackets go into the next ones, one in each.
	inTurn bool
	outline
}

// partReadings works a part. Where the words do not say whether the chains at
// the beginnings of rounds count, all readings are worked, and the one that
// agrees with the counts is taken.
func (w *work) partReadings(f *fabric.Fabric, k, size int) *partWork {
	best := w.workPart(f, k, size, reading{})
	if len(best.faults) == 0 {
		w.came(k, best)
		return best
	}
	first := best
	splits := []bool{false}
	if first.mayNotSplit {
		splits = append(splits, true)
	}
	turns := []bool{false}
	if first.mayTurn {
		turns = append(turns, true)
	}
	for _, inTurn := range turns {
		if len(best.faults) == 0 || best.eitherList {
			break // all of a list in one place is what the trade means where both come out
		}
		for _, noSplit := range splits {
			// Every subset of the numbers of chains that nothing is said of.
			for set := first.unsaid; ; set = (set - 1) & first.unsaid {
				if r := (reading{otherwise: set, noSplit: noSplit, inTurn: inTurn}); r != (reading{}) && bits.OnesCount64(first.unsaid) <= 4 {
					if p := w.workPart(f, k, size, r); p.betterThan(best) && !p.passesMore(first) {
						best = p
					}
				}
				if set == 0 {
					break
				}
			}
		}
	}
	if best.assembles {
		best = w.outlines(f, k, size, best)
	}
	if best.outOfKind {
		r := best.reading
		r.anyKind = true
		if p := w.workPart(f, k, size, r); len(p.faults) == 0 {
			best = p
		}
	}
	if p := w.borneOut(f, k, size, best); p != nil {
		best = p
	}
	if len(best.faults) == 0 {
		w.came(k, best)
	} else if r, ok := w.clean[k]; ok && r != best.reading {
		return w.workPart(f, k, size, r) // as the sizes before have been read
	}
	return best
}

// came keeps the reading in which a part has come out.
func (w *work) came(k int, p *partWork) {
	if _, ok := w.clean[k]; !ok {
		w.clean[k] = p.reading
	}
}

// betterThan reports whether the part came out better than another working of
// the same words: with its first fault later, to its end, or further, or with fewer
// faults.
func (p *partWork) betterThan(q *partWork) bool {
	switch {
	case p.firstWrong != q.firstWrong:
		return p.firstWrong < 0 || q.firstWrong >= 0 && p.firstWrong > q.firstWrong
	case p.broken != q.broken:
		return q.broken
	case p.broken && len(p.part.Rounds) != len(q.part.Rounds):
		return len(p.part.Rounds) > len(q.part.Rounds)
	}
	return len(p.faults) < len(q.faults)
}

// passesMore reports whether a working comes out only by passing over, without a word, what another of the same
// words works, in a round that no count bears out: up to the first that was wrong.
func (p *partWork) passesMore(q *partWork) bool {
	for i := 0; i <= q.firstWrong; i++ {
		if n, ok := q.over[i]; ok && p.over[i] > n {
			return true
		}
	}
	return false
}

// passedAmong is how many stitches have been passed over without a word behind the first that has been worked into.
func (w *roundWork) passedAmong() (n int) {
	begun := false
	for i := range w.c.spots {
		switch s := &w.c.spots[i]; {
		case s.use == worked:
			begun = true
		case s.use == passed && s.counts && begun:
			n++
		}
	}
	return n
}
