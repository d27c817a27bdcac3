package notation

import "whorl/patterns/fault"

// shapedOn reads rows that go on being shaped as the last one: "Decrease in this manner at each end
// of the next 3 rows", "Continue to inc 1 st at each end of every row until there are 31 sts". What is
// shaped without the row before to show how, or in some rows only, is a fault.
func (b *block) shapedOn() (bool, *fault.Fault) {
	p := b.p
	start, faults := p.i, len(p.faults)
	no := func() (bool, *fault.Fault) { p.i, p.faults = start, p.faults[:faults]; return false, nil }
	p.eat("now", "then")
	kept := p.eat("continue", "cont", "keep", "carry")
	p.eat("on", "to")
	fewer := p.eat("dec", "decrease", "decreasing")
	if !fewer && !p.eat("inc", "increase", "increasing") {
		return no()
	}
	at := p.i
	n, ok := p.num()
	if !ok {
		p.eat("a", "an")
		n = One(p.from(at))
	}
	p.eat("more")
	p.eat("st", "sts", "stitch", "stitches")
	said := p.i // "dec 1 st"
	ends, way, rows, every := false, false, Num{}, 1
	var u *Until
	for {
		from := p.i
		p.eatKind(tComma)
		switch {
		case p.eat("thus", "likewise") || p.likeThis():
			way = true
		case !ends && p.eachEnd():
			ends = true
			said = p.i
		case p.wayOn():
			way = true
		case u == nil && !rows.Set() && p.shapedRows(&rows, &every):
		case u == nil:
			it, f := p.until()
			if f != nil || it == nil {
				p.i = from
				break
			}
			u = it.(*Until)
		}
		if p.i == from || p.i == from+1 && p.at(-1).kind == tComma {
			p.i = from
			break
		}
	}
	if !ends || !p.ended() && !p.tok().first {
		return no()
	}
	words := p.toks[at-1].raw
	for _, t := range p.toks[at:said] {
		words += " " + t.raw
	}
	switch {
	case every > 1 && (!way && !kept || rows.Set()):
		return false, fail(p.from(start), "vague", "\""+words+"\" in some of the rows leaves those between to the reader",
			"Write the rows out once and name those that are repeated: Rep Rows 3 and 4 five times more.")
	case !way && !kept:
		return false, fail(p.from(start), "vague", "\""+words+"\" leaves the stitches to the reader",
			"Write the row out: Ch 1, sc2tog, sc in each st to last 2 sts, sc2tog.")
	case u == nil && !rows.Set():
		return no()
	}
	grows := Num{Span: n.Span}
	for _, v := range n.Values {
		if fewer {
			v = -v
		}
		grows.Values = append(grows.Values, 2*v)
	}
	verb := "increasing "
	if fewer {
		verb = "decreasing "
	}
	text := "1 st"
	if !onlyOne(n) {
		text = Style{Size: -1}.Num(n) + " sts"
	}
	last := One(p.from(start))
	last.Values[0] = every
	text += " at each end"
	if every == 2 {
		text += " of every alternate row"
	} else if every > 2 {
		text += " of every " + ordinal(every) + " row"
	}
	r := &Ref{Span: p.from(start), Last: last, Times: rows,
		Change: &Change{Span: p.from(start), Text: verb + text, Grows: grows, Every: every}}
	p.work = true
	b.add(r)
	if u != nil {
		b.add(u)
	}
	return true, nil
}

// eachEnd reads "at each end", "at both ends", "at beg and end".
func (p *parser) eachEnd() bool {
	start := p.i
	if p.eat("at", "on") {
		if p.eat("each", "both", "either") && p.eat("end", "ends", "side", "sides", "edge", "edges") {
			return true
		}
		p.i = start + 1
		p.eat("the")
		if p.eat("beg", "beginning", "start") && p.eat("and") {
			p.eat("at", "the")
			if p.eat("end") {
				return true
			}
		}
	}
	p.i = start
	return false
}

// shapedRows reads "of the next 3 rows", "on every row", "of next and every foll alt row": how many
// rows are shaped, where that is said, and every which of them is.
func (p *parser) shapedRows(rows *Num, every *int) bool {
	start := p.i
	if !p.eat("of", "on", "in", "over", "for") {
		return false
	}
	p.eat("the")
	for {
		if n, ok := p.num(); ok {
			*rows = n
			continue
		}
		n := ordinalOf(p.tok())
		if p.tok().kind == tOrdinal {
			n = p.tok().value
		}
		if n > 1 && n < 100 {
			p.i++
			*every = n
			continue
		}
		if p.eat("alt", "alternate", "other") {
			*every = 2
			continue
		}
		if p.eat("next", "every", "each", "foll", "following", "and", "on") {
			continue
		}
		if _, round := roundWord(p.tok()); round && !p.tok().is("r") {
			next := p.at(-1).is("next", "foll", "following")
			p.i++
			if next && !rows.Set() {
				*rows = One(p.from(start))
			}
			if p.eat("and") {
				p.eat("on")
				p.eat("the")
				continue // "of next row and foll 3 rows"
			}
			return true
		}
		p.i, *rows = start, Num{}
		return false
	}
}
