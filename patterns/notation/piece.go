package notation

import "strings"

// pieceName reads what one of several pieces is called: "the first ear flap", "previous
// flap". It is "" for other words.
func (p *parser) pieceName() string {
	start := p.i
	p.eat("the")
	if p.eat("end", "edge", "last") && !(p.eat("st", "stitch", "edge") && p.eat("of") || p.eat("of")) {
		p.i = start
		return ""
	}
	p.eat("the")
	at := p.i
	if !p.eat("first", "second", "previous", "other", "left", "right", "last") && !p.eatKind(tOrdinal) {
		p.i = start
		return ""
	}
	p.eatKind(tHyphen)
	noun := p.i
	for n := 0; n < 3 && p.tok().kind == tWord && !p.tok().first && !p.ended() && !p.tok().is("for", "with", "join", "rejoin", "work", "free", "unworked"); n++ {
		if _, round := roundWord(p.tok()); round || p.stitchy(p.i, p.i+1) || p.tok().is("seam", "half", "side", "time") {
			break
		}
		if p.i++; p.tok().kind == tHyphen && p.at(1).kind == tWord {
			p.i++
		}
	}
	if p.i == noun {
		p.i = start
		return ""
	}
	return strings.ToLower(p.words(at))
}

// afterPiece reads "after the first flap", "from first ear flap" behind stitches that are
// passed over: where they are counted from.
func (p *parser) afterPiece() string {
	start := p.i
	if p.eatAll("to", "the", "left", "of") || p.eat("after", "from", "past", "beyond") {
		if name := p.pieceName(); name != "" && !p.tok().is("with") {
			return name
		}
	}
	p.i = start
	return ""
}

// fromPiece reads "From the first ear flap, " before stitches that are passed over.
func (p *parser) fromPiece() string {
	start := p.i
	if p.eat("from", "after", "starting", "beginning", "counting") {
		p.eat("at", "from")
		if name := p.pieceName(); name != "" && p.eatKind(tComma) && p.tok().is("sk", "skip", "miss", "leave", "count") {
			return name
		}
	}
	p.i = start
	return ""
}

// onPiece passes over "of the hat", "along the last round": on what the stitches are that
// are passed over.
func (p *parser) onPiece() {
	start := p.i
	if p.eat("of", "on", "along", "around", "round") {
		p.eat("the", "your")
		p.eat("main", "lower", "bottom", "last", "final")
		if (p.eat("hat", "bonnet", "beanie", "cap", "body", "crown", "brim", "piece") && (p.eat("edge") || true) || p.eat("edge", "rnd", "round")) &&
			(p.ended() || p.tok().is(unworkedWords...) || p.tok().is("for", "at", "as", "across", "to", "after", "from", "past", "forming")) {
			return
		}
	}
	p.i = start
}

// forWhat passes over "for the front", "for front of hat": what stitches are left for.
func (p *parser) forWhat() {
	start := p.i
	if p.eat("for", "at", "as", "across", "along", "forming") || p.eat("to") && p.eat("form", "make", "be", "become") {
		p.eat("the", "your")
		p.eat("centre", "center")
		if p.eat("front", "back", "face", "forehead", "neck", "nape", "brow") {
			at := p.i
			if p.eat("of") {
				p.eat("the", "your")
				if p.tok().kind == tWord && !p.tok().first && !p.stitchy(p.i, p.i+1) {
					p.i++
					return
				}
				p.i = at
			}
			return
		}
	}
	p.i = start
}

// asPiece reads "as for first flap": the piece whose rows are worked again. The words up
// to "for" have been read.
func (p *parser) asPiece(start int) *Ref {
	at := p.i
	p.eat("the")
	name := p.i
	for n := 0; n < 4 && p.tok().kind == tWord && !p.tok().first && !p.ended(); n++ {
		if n > 0 && p.tok().is("from", "starting", "beginning", "omitting", "to", "through", "until", "up", "till") {
			break
		}
		if _, round := roundWord(p.tok()); round || p.tok().is("last", "previous", "prev") && (p.at(1).kind == tNumber || roundNext(p.at(1))) ||
			p.tok().is("edging", "border", "before") {
			p.i = at
			return nil
		}
		if p.i++; p.tok().kind == tHyphen && p.at(1).kind == tWord {
			p.i++
		}
	}
	r := &Ref{Piece: strings.ToLower(p.words(name))}
	rows, ok := p.fromRow()
	if p.i == name || !ok || !p.ended() {
		p.i = at
		return nil
	}
	r.Rounds, r.Span = rows, p.from(start)
	return r
}

// fromRow reads "from Row 2 to the end", "starting with Row 2", ", Rows 2 to 12" behind the
// name of a piece: which of its rows are meant. They are none where nothing is said.
func (p *parser) fromRow() (l []Range, ok bool) {
	start := p.i
	if r, ok := p.throughRow(); ok {
		return []Range{r}, true
	}
	comma := p.eatKind(tComma)
	said := p.eat("from", "starting", "beginning")
	if said {
		p.eat("from", "with", "at", "on")
	}
	p.eat("the")
	if _, round := roundWord(p.tok()); !round || !said && !comma {
		p.i = start
		return nil, !said
	}
	p.i++
	from, ok := p.num()
	if !ok {
		return nil, false
	}
	r := Range{From: from, To: from, ToEnd: said}
	if p.eat("to", "through", "until", "till") || p.eatKind(tHyphen) || p.eatKind(tDash) {
		p.eat("the")
		if p.eat("end", "finish", "last") {
			p.eat("row", "rnd", "round")
			r.ToEnd = true
			return []Range{r}, true
		}
		if _, round := roundWord(p.tok()); round {
			p.i++
		}
		if r.To, ok = p.num(); !ok {
			return nil, false
		}
		r.ToEnd = false
	}
	p.eat("onwards", "onward", "on", "inclusive")
	return []Range{r}, true
}

func roundNext(t *token) bool { _, round := roundWord(t); return round }

// pieceHead takes "First flap:" at the beginning of a line, or "Second flap" on one of its
// own, as a heading.
func (p *parser) pieceHead(b *block) bool {
	start := p.i
	if !p.tok().first || p.tok().is("the") || p.pieceName() == "" || p.tok().kind != tColon && !p.tok().first && p.tok().kind != tStop {
		p.i = start
		return false
	}
	return p.heading(b, start, p.i)
}

// flap reads "the first ear flap", "flap", "2nd earflap".
func (p *parser) flap() bool {
	start := p.i
	p.eat("the", "this", "that", "each")
	if !p.eat("first", "second", "other", "left", "right", "same", "next") {
		p.eatKind(tOrdinal)
	}
	p.eat("ear")
	p.eatKind(tHyphen)
	if p.eat("flap", "earflap") {
		return true
	}
	p.i = start
	return false
}

// flapSide reads "side of the flap", "edge of first ear flap", "flap edge" behind "down
// the", "up the other": the ends of its rows.
func (p *parser) flapSide() bool {
	start := p.i
	p.eat("side", "inner", "outer", "front", "back", "straight", "slanted", "sloped", "shaped")
	p.eat("edge", "side")
	if p.i > start && p.eat("of", "on") && p.flap() {
		return true
	}
	p.i = start
	if p.flap() && p.eat("side", "edge") {
		return true
	}
	p.i = start
	return false
}

// onFlap passes over where on a hat with flaps stitches are that have been named: "at the
// bottom", "along the bottom of the flap", "across the front".
func (p *parser) onFlap(pl *Place) bool {
	start := p.i
	if pl.Target.Sort != AnyStitch && pl.Target.Sort != OfKind || !pl.N.Set() || pl.Pick != Next && pl.Pick != Last && pl.Pick != First {
		return false
	}
	if p.eat("at", "along", "across", "on", "of", "over") {
		p.eat("the", "its")
		if p.eat("bottom", "tip", "front", "back", "forehead", "nape", "lower", "end") {
			p.eat("edge", "end")
			if at := p.i; p.eat("of") {
				if !p.flap() {
					p.i = at
					p.eat("of")
					p.eat("the")
					if !p.eat("hat", "bonnet", "cap", "head") {
						p.i = start
						return false
					}
				}
			}
			if p.ended() {
				return true
			}
		}
	}
	p.i = start
	return false
}

// partName reads the name that a designer gives a part, in capitals to the end of its sentence, behind the
// rounds of it that are worked again: "Rnds 1-3 of Coaster", "Rows 2-9 of the Left Front".
func (p *parser) partName() string {
	start := p.i
	p.eat("the")
	at := p.i
	for n := 0; n < 4 && p.tok().kind == tWord && !p.tok().first && capital(p.tok().raw) && !p.tok().is("pattern", "chart", "row", "rows", "round", "rounds", "rnd", "rnds"); n++ {
		if p.i++; p.tok().kind == tHyphen && p.at(1).kind == tWord {
			p.i++
		}
	}
	if k := p.tok().kind; p.i == at || k != tStop && k != tEnd && k != tOpen && k != tClose && !p.tok().first {
		p.i = start
		return "" // what is changed in them stands behind a comma
	}
	return strings.ToLower(p.words(at))
}
