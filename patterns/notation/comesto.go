package notation

// comesTo reads what a length comes to at the designer's own gauge, behind it: "(144 rows)", " - 14 rounds
// more", ", about 6 times more", ". [42 rows worked]". Any other bracket that stands at once behind the
// length tells it in other units, and is passed over.
func (p *parser) comesTo(u *Until) {
	start := p.i
	open := p.tok().kind == tOpen
	stop := p.eatKind(tStop)
	if close := p.matching(p.i); p.tok().kind == tOpen && close > 0 && !(stop && p.tok().first) {
		p.i++
		if !p.rowsWorked(u) || p.i != close {
			u.Rows, u.More, u.InAll, u.Repeats = Num{}, false, false, false
			if p.i = start; !open {
				return
			}
		}
		p.i = close + 1
		return
	}
	if k := p.tok().kind; stop || p.tok().first || k != tComma && k != tDash && k != tHyphen && k != tEqual && k != tColon {
		p.i = start
		return
	}
	if p.i++; !p.rowsWorked(u) || !p.ended() && !p.tok().first && p.tok().kind != tComma {
		u.Rows, u.More, u.InAll, u.Repeats = Num{}, false, false, false
		p.i = start
	}
}

// rowsWorked reads "144 rows", "about 20 more rounds", "you should have 42 rows in all", "6 times more".
func (p *parser) rowsWorked(u *Until) bool {
	p.eatKind(tEqual)
	p.eat("or", "for", "so", "work", "working", "i.e", "this", "that", "which")
	if p.eat("is", "will", "should", "makes", "that's", "takes") {
		p.eat("be", "take")
	}
	if p.eat("you", "there", "it") {
		p.eat("should", "will", "would", "'ll")
		p.eat("have", "need", "be", "takes", "take", "are")
		p.eat("worked", "made", "completed")
	}
	if p.eat("i", "mine") {
		p.eat("worked", "did", "took", "made")
	}
	about := func() {
		p.eat("about", "approximately", "roughly", "around", "approx", "circa")
		p.eatKind(tStop)
	}
	about()
	if p.eat("a"); p.eat("total") {
		u.InAll = true
		p.eat("of")
	} else if p.eat("another", "further") {
		u.More = true
	}
	about()
	n, ok := p.num()
	if !ok {
		return false
	}
	u.More = p.eat("more", "further", "additional", "extra") || u.More
	if _, round := roundWord(p.tok()); round && !p.tok().is("r") {
		p.i++
	} else if u.Repeats = p.eat("times", "time", "repeats", "reps"); !u.Repeats {
		return false
	}
	u.Rows = n
	if p.eat("more", "further") {
		u.More = true
	}
	for {
		switch at := p.i; {
		case p.eat("total", "altogether", "overall", "all"):
			if u.Repeats {
				return false // the first of them has been worked, or has not
			}
			u.More, u.InAll = false, true
		case p.eat("in", "so", "far", "worked", "made", "done", "complete", "completed"):
		case p.eat("from") && (p.eat("the") || true) && p.eat("beg", "beginning", "start"):
			u.More, u.InAll = false, true
		case p.eatAll("for", "me"):
		default:
			p.i = at
			u.More = u.More || u.Repeats
			return true
		}
	}
}
