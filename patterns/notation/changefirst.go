package notation

import "whorl/patterns/fault"

// changedFirst reads a change in front of the rounds that it is made in: "ch 2, working in back
// loops only, rep Row 2", "using hdc instead of dc, work as for Row 4".
func (b *block) changedFirst() (bool, *fault.Fault) {
	p := b.p
	start, faults, work := p.i, len(p.faults), p.work
	no := func() (bool, *fault.Fault) {
		p.i, p.faults, p.work = start, p.faults[:faults], work
		return false, nil
	}
	readers := []func() *Change{p.changeLoop, p.loopAlone}
	if p.tok().is("working", "work", "using", "with", "making", "in", "replacing", "substituting", "swapping", "changing") {
		readers = append(readers, p.changeUnit)
	}
	var c *Change
	for _, read := range readers {
		p.i = start
		if c = read(); c != nil {
			break
		}
	}
	if c == nil {
		return no()
	}
	p.eatAll("this", "time")
	c.Span, c.Text = p.from(start), p.words(start)
	if !p.eatKind(tComma) && !p.eatKind(tColon) {
		p.eatKind(tStop)
	}
	p.eat("then")
	if !p.eat("rep", "repeat") && !p.tok().is("work", "as") {
		return no()
	}
	it, f := p.refer()
	ref, ok := it.(*Ref)
	if f != nil || !ok || ref.Change != nil || ref.Onward || ref.Piece != "" || ref.Along != nil {
		return no()
	}
	ref.Change = c
	p.work = true
	b.add(ref)
	b.apart()
	return true, nil
}

// loopAlone reads "BLO", "(BLO)", the loop that all of a round is worked in, said without a verb.
func (p *parser) loopAlone() *Change {
	open := p.eatKind(tOpen)
	if into, ok := p.loopWords(); ok && (!open || p.eatKind(tClose)) {
		return &Change{Loop: Loop{Set: true, Into: into}}
	}
	return nil
}

// changeAhead reports whether a change of the rounds that have been named comes next: "work Row
// 2 in BLO".
func (p *parser) changeAhead() bool {
	start, faults, work := p.i, len(p.faults), p.work
	defer func() { p.i, p.faults, p.work = start, p.faults[:faults], work }()
	p.eatKind(tComma)
	c := p.change()
	return c != nil && (c.Loop.Set || c.Old != nil)
}
