package main

import (
	"cmp"
	"slices"

	"whorl/patterns"
	"whorl/patterns/fabric"
)

// roundsIn are the first and the last round that a picture shows in size i; 0 where
// the file names none. The numbers in the file are those of the size that it draws
// (see [middleSize]); another size whose rounds are numbered otherwise shows those
// worked from the same lines of the words.
func (j *job) roundsIn(p patterns.Picture, i int) (from, to int) {
	names := p.Sizes
	if len(names) == 0 {
		names = j.pattern.Sizes
	}
	of := slices.Index(j.pattern.Sizes, middleSize(names))
	if p.From <= 0 && p.To <= 0 || of < 0 || of == i {
		return p.From, p.To
	}
	k := partIndex(j.fabrics[i], p.Part)
	own, other := j.fabrics[of].Parts[k], j.fabrics[i].Parts[k]
	from, to = p.From, p.To
	if r := numbered(own, p.From); r != nil {
		from = counterpart(own, r, other, false)
	}
	if r := numbered(own, p.To); r != nil {
		to = counterpart(own, r, other, true)
	}
	if from > to { // none of them is worked in this size
		return p.From, p.To
	}
	return from, to
}

// numbered is the round of a part with a number, nil for none.
func numbered(p *fabric.Part, n int) *fabric.Round {
	for _, r := range p.Rounds {
		if r.Number == n && n > 0 && !r.Carried {
			return r
		}
	}
	return nil
}

// counterpart is the number of the round of another size that is worked as r is in its
// own: the first of a line stays the first and the last the last, one between them
// counts from the first. Of a line that the other size does not work it is the last
// round before or, unless that is asked for, the first after.
func counterpart(own *fabric.Part, r *fabric.Round, other *fabric.Part, before bool) int {
	here, there := ofLine(own, r.Line), ofLine(other, r.Line)
	if at := slices.Index(here, r.Number); len(there) > 0 {
		if at == len(here)-1 && (before || at > 0) {
			return there[len(there)-1]
		}
		return there[min(at, len(there)-1)]
	}
	lines := linesInTurn(own)
	at := slices.Index(lines, r.Line)
	if before {
		for _, line := range slices.Backward(lines[:at]) {
			if there := ofLine(other, line); len(there) > 0 {
				return there[len(there)-1]
			}
		}
		return 0
	}
	for _, line := range lines[at:] {
		if there := ofLine(other, line); len(there) > 0 {
			return there[0]
		}
	}
	return cmp.Or(r.Number, 1)
}

// ofLine are the numbers of the rounds that are worked from a line.
func ofLine(p *fabric.Part, line int) (l []int) {
	for _, r := range p.Rounds {
		if r.Line == line && r.Number > 0 && !r.Carried {
			l = append(l, r.Number)
		}
	}
	return l
}

// linesInTurn are the lines that the rounds of a part are worked from, each where it
// comes first.
func linesInTurn(p *fabric.Part) (l []int) {
	for _, r := range p.Rounds {
		if r.Number > 0 && !r.Carried && !slices.Contains(l, r.Line) {
			l = append(l, r.Line)
		}
	}
	return l
}
