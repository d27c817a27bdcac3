package notation

// inBands reads "8 rows in A, 8 rows in B", "for 8 rows with A, then 8 rows with B", "2 rows A, 4
// rows B", "in A for 8 rows, in B for 4 rows" behind the rounds that are repeated, from token start
// on: so many more of them in each yarn, one band behind the other.
func (b *block) inBands(r *Ref, start int) bool {
	p := b.p
	end := p.i
	type band struct {
		yarn *Colour
		rows *Until
	}
	var bands []band
	behind := start
	for p.i = start; ; behind = p.i {
		for p.eatKind(tComma) || p.eatKind(tDash) || p.eatKind(tColon) || p.eatKind(tSemi) || p.eat("and", "then", "followed", "by", "next") {
		}
		yarn := p.bandYarn()
		for p.eat("for", "work", "working", "another", "a", "further") {
		}
		rows := p.i
		n, ok := p.num()
		more := p.eat("more", "further", "additional")
		if _, round := roundWord(p.tok()); !ok || !round || p.tok().is("r") || p.at(1).kind == tNumber {
			break
		}
		p.i++
		more = p.eat("more") || more
		u := &Until{Span: p.from(rows), Rows: n, More: true}
		if yarn == nil {
			if yarn = p.bandYarn(); yarn == nil {
				break
			}
		}
		bands = append(bands, band{yarn, u})
	}
	if p.i = behind; len(bands) < 2 || r.Times.Set() || r.End.Set || !p.ended() && !p.tok().first {
		p.i = end
		return false
	}
	p.work = true
	for _, in := range bands {
		again := *r
		again.Kept, again.Span = false, in.rows.Span
		b.add(in.yarn)
		b.add(&again)
		b.add(in.rows)
	}
	return true
}

// bandYarn reads "in A", "with MC", "using colour B", or the yarn alone.
func (p *parser) bandYarn() *Colour {
	start := p.i
	p.eat("in", "with", "using", "of")
	if name, ok := p.yarn(); ok {
		return &Colour{p.from(start), name}
	}
	p.i = start
	return nil
}
