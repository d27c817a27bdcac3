package working

import "whorl/patterns/notation"

// inPattern is the rounds that "continue in pattern" works on in turn where none of those
// before shapes the piece: the latest ones where they have come twice already, the second row
// where only the first on the starting chain came before it. It is nil where the rounds before
// do not show which they are.
func (p *partWork) inPattern(ref *notation.Ref) []*notation.Round {
	n := len(p.latest)
	if ref.Step.Set() || ref.Every || p.shaping() {
		return nil
	}
	for k := 1; 2*k <= n; k++ {
		twice := true
		for i := n - k; i < n; i++ {
			twice = twice && p.latest[i] == p.latest[i-k]
		}
		if twice {
			return p.latest[n-k:]
		}
	}
	if base := len(p.part.Rounds) - n; n == 2 && base == 1 && p.part.Rounds[0].Number == 0 && !p.part.Rounds[0].Ring && p.part.Rounds[2].Row {
		return p.latest[1:]
	}
	return nil
}

// shaping reports whether the two latest rounds have other numbers of stitches, so that
// rounds that are left out would be missed by what follows.
func (p *partWork) shaping() bool {
	n := len(p.part.Rounds)
	return n < 2 || p.part.Rounds[n-1].Number > 1 && p.part.Rounds[n-1].Count() != p.part.Rounds[n-2].Count()
}

// openPattern refuses rounds that go on in a pattern that is not shown. What follows them is
// worked, where the piece is not being shaped and its words do not hang on their number.
func (p *partWork) openPattern(r *notation.Round, ref *notation.Ref) {
	u := untilIn(r)
	shaping := p.shaping()
	if u != nil && u.Open && !shaping {
		p.openEnded = true // refused where the length is left open
		return
	}
	p.openEnded = p.openEnded || !shaping
	p.add(p.vagueOnward(ref), shaping)
}
