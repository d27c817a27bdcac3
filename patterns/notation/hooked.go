package notation

import "whorl/patterns/stitch"

// moveSort is a movement of the hook.
type moveSort uint8

const (
	yarnOver moveSort = iota
	insert            // in a place
	link              // through a bar of the stitch before
	pullUp            // a loop
	through           // loops
	complete          // as a stitch of the trade
	chains
	passes // over the stitch behind
	made   // a whole stitch, before the first movement
)

// move is one movement of the hook.
type move struct {
	sort  moveSort
	n     int     // of yarns over, of chains, of loops drawn through; 0 for all of them
	place []Place // of an insertion, nil where none is named
	post  Loop
	kind  stitch.Kind
	skip  *Skip
	on    bool // drawn on through a loop, without a yarn over
	item  *Stitches
}

// ParseHook reads a stitch that is told by what the hook does: "yo, insert hook in next st 2
// rows below, pull up a long loop, [yo and draw through 2 loops] twice". It counts the loops
// on the hook. It is false for words that do not come to one stitch, closed to one loop.
func ParseHook(lines []Line, v *Vocabulary, sizes []string) ([]Item, bool) {
	toks, _ := scan(lines)
	if len(toks) > maxTokens {
		return nil, false
	}
	p := newParser(toks[:len(toks)-1], v, sizes)
	p.defining = true
	for j := range p.toks {
		p.i = j
		p.holds = p.holds || p.toks[j].is("last") && p.toks[min(j+1, len(p.toks)-1)].is("loop", "lp", "loops", "lps") || p.holding()
	}
	p.i = 0
	moves, ok := p.moves(len(p.toks) - 1)
	if !ok {
		return nil, false
	}
	return hooked(moves, p.from(0))
}

// moves reads movements up to token end.
func (p *parser) moves(end int) (l []move, ok bool) {
	star := -1
	for p.i < end {
		start := p.i
		switch t := p.tok(); {
		case t.kind == tStar:
			p.i++
			star = len(l)
		case t.kind == tOpen:
			close := p.matching(p.i)
			if close < 0 || close >= end {
				return nil, false
			}
			p.i++
			inner, ok := p.moves(close)
			p.i = close + 1
			n, more, times := p.times()
			if !times && ok {
				if over := p.overSeveral(inner, len(l)); over > 0 {
					for range over {
						l = append(l, inner...)
					}
					continue // "(yo, insert hook in next st, yo, pull up a loop) over next 7 sts"
				}
			}
			if !times {
				if ok && hasInsertion(inner) {
					return nil, false
				}
				if ok && len(inner) > 0 {
					l = append(l, inner...) // "(yo and draw through 2 loops)"
				}
				continue // "(7 loops on hook)"
			}
			if !ok || len(inner) == 0 || len(n.Values) != 1 || n.Values[0]+len(l) > MaxLegs {
				return nil, false
			}
			if more {
				n.Values = []int{n.Values[0] + 1}
			}
			if pl := p.places(false); pl != nil && !allIn(inner, pl, n.Values[0]) {
				return nil, false
			}
			for range n.Values[0] {
				l = append(l, inner...)
			}
		case t.is("rep", "repeat") && star >= 0:
			p.i++
			p.eat("from")
			p.eatKind(tStar)
			n, _, times := p.times()
			if !times || len(n.Values) != 1 || n.Values[0] > MaxLegs {
				return nil, false
			}
			inner := append([]move(nil), l[star:]...)
			if pl := p.places(false); pl != nil && !allIn(inner, pl, n.Values[0]+1) {
				return nil, false
			}
			for range n.Values[0] {
				l = append(l, inner...)
			}
			star = -1
		case p.yarnOver():
			n := 1
			if times, _, ok := p.times(); ok && len(times.Values) == 1 {
				n = times.Values[0]
			}
			l = append(l, move{sort: yarnOver, n: n})
		case p.eat("insert", "inserting", "reinsert", "put", "place", "push"):
			m, ok := p.insertion()
			if !ok {
				return nil, false
			}
			l = append(l, m)
		case p.eat("pull", "draw", "pulling", "drawing", "bring", "pick"):
			m, ok := p.drawn()
			if !ok {
				return nil, false
			}
			if m[0].sort == pullUp && (len(l) == 0 || l[len(l)-1].sort != insert && (len(l) < 2 || l[len(l)-1].sort != yarnOver || l[len(l)-2].sort != insert)) {
				// "pull up a loop in each of next 2 sts"
				if pl := p.places(false); len(pl) == 1 {
					n := max(1, pl[0].N.For(0))
					if pl[0].N = (Num{}); n > MaxLegs {
						return nil, false
					}
					for range n {
						l = append(l, move{sort: insert, place: pl}, m[0])
					}
					break
				}
			}
			l = append(l, m...)
		case p.eat("complete", "completing", "finish", "finishing") || t.is("work", "make") && p.at(1).is("as") && p.eat(t.text):
			l = append(l, move{sort: complete, kind: p.completed()})
		case p.holding():
		case t.is("through", "thru") && len(l) > 0 && l[len(l)-1].sort == yarnOver:
			m, ok := p.drawn() // "yrh and through all 6 loops"
			if !ok {
				return nil, false
			}
			l = append(l, m...)
		case t.is("counts", "count", "this") && p.saidCounts():
		case t.is("skip", "sk", "miss", "skipping", "missing", "leave", "leaving"):
			it, _ := p.skip()
			s, ok := it.(*Skip)
			if !ok {
				if s = p.behindOwn(start); s == nil {
					return nil, false
				}
			}
			l = append(l, move{sort: passes, skip: s})
		default:
			if c, ok := p.chain().(*Chain); ok {
				l = append(l, move{sort: chains, n: c.N.For(0)})
				break
			}
			it, ok := p.stitches()
			s, _ := it.(*Stitches)
			switch {
			case !ok:
				p.i = start + 1
			case len(l) == 0 && s.What.Kind.Shape != stitch.Plain && p.onlyNamed(s):
			case p.holds:
				held, ok := heldLegs(s)
				if !ok {
					return nil, false
				}
				l = append(l, held...)
			case len(l) == 0 && p.onlyNamed(s):
			case len(l) == 0 || l[len(l)-1].sort == made:
				l = append(l, move{sort: made, item: s})
			default:
				return nil, false
			}
		}
	}
	return l, true
}

// onlyNamed reports whether a stitch before the movements is the name of what they make:
// "front post dc - yo, insert hook …".
func (p *parser) onlyNamed(s *Stitches) bool {
	if s.N.Set() || len(s.Places) > 0 {
		return false
	}
	switch p.tok().kind {
	case tDash, tColon, tSemi, tHyphen:
		return true
	case tComma:
		return s.What.Loop.Set || s.What.Kind.Shape != stitch.Plain || s.What.Kind.Manner != 0
	}
	return false
}

// saidCounts passes over "counts as a 3-dc cl" behind movements, which says nothing of them.
func (p *parser) saidCounts() bool {
	it, f := p.counts()
	_, ok := it.(*Counts)
	return ok && f == nil
}

// holding passes over "leaving last loop of each on hook", "until 1 loop of each remains".
func (p *parser) holding() bool {
	start := p.i
	if p.eat("leaving", "leave", "keeping", "keep", "holding", "hold", "retaining", "with", "until") {
		p.eat("back")
		p.eat("the")
		last := p.eat("last", "final")
		if (p.eat("one") || p.tok().kind == tNumber && p.tok().value == 1 && p.eatKind(tNumber) || last) && p.eat("loop", "lp", "loops", "lps") {
			for p.tok().is("of", "each", "every", "st", "stitch", "one", "on", "the", "your", "hook", "back", "tr", "dc", "remains", "remain", "is", "are", "left", "only") {
				p.i++
			}
			return true
		}
	}
	p.i = start
	return false
}

// heldLegs are the movements of stitches whose last loops are held on the hook: "1 tr in each
// of next 3 sts, leaving last loop of each on hook".
func heldLegs(s *Stitches) (l []move, ok bool) {
	yos := int(s.What.Kind.Base) - int(stitch.Single)
	if base := s.What.Kind.Base; base >= stitch.Double {
		yos-- // a hdc has as many yarns over as a dc
	} else if base != stitch.Single {
		return nil, false
	}
	n := max(1, s.N.For(0))
	m := move{sort: insert, post: s.What.Loop}
	if s.What.Kind.Shape != stitch.Plain || s.Times.Set() || len(s.Places) > 1 {
		return nil, false
	}
	if len(s.Places) == 1 {
		pl := s.Places[0]
		if count := pl.N.For(0); count > 1 {
			if n > 1 && n != count {
				return nil, false
			}
			n = count
		} else if n > 1 && pl.Pick == Next {
			pl.Bare = true // all of them in it
		}
		if pl.N = (Num{}); pl.Pick == Each {
			return nil, false
		}
		m.place = []Place{pl}
	}
	if n > MaxLegs {
		return nil, false
	}
	for range n {
		if yos > 0 {
			l = append(l, move{sort: yarnOver, n: yos})
		}
		l = append(l, m, move{sort: pullUp})
		for range yos {
			l = append(l, move{sort: yarnOver, n: 1}, move{sort: through, n: 2})
		}
	}
	return l, true
}

// behindOwn reads "the st behind the spike" where the name of the stitch is that of the one
// that is told.
func (p *parser) behindOwn(start int) *Skip {
	p.i = start + 1
	p.eat("the", "a", "next")
	t, ok := p.target()
	if !ok || !p.eat("behind", "underneath") && !(p.eat("in") && p.eat("back") && p.eat("of")) {
		p.i = start
		return nil
	}
	p.i = p.sentenceEnd()
	return &Skip{Span: p.from(start), N: One(p.from(start)), Target: t, Behind: true}
}

// yarnOver reads "yo", "yarn over hook", "wrap the yarn round the hook".
func (p *parser) yarnOver() bool {
	start := p.i
	switch {
	case p.eat("yo", "yoh", "yrh", "yos", "yfwd"):
		return true
	case p.eat("wrap", "wind"):
		p.eat("the")
	}
	if p.eat("yarn") && p.eat("over", "round", "around") {
		p.eat("the", "your")
		p.eat("hook")
		return true
	}
	p.i = start
	return false
}

// insertion goes on after "insert": "hook from front to back around the post of next st".
func (p *parser) insertion() (move, bool) {
	m := move{sort: insert}
	p.eat("your", "the")
	p.eat("hook")
	if p.linkBar() {
		return move{sort: link}, true
	}
	p.eat("again", "through")
	side := ""
	for p.tok().is("from", "front", "back", "right", "left", "to", "and", "the", "behind", "then", "again", "under") && !p.at(1).is("loop", "lp", "loops") {
		if side == "" && p.tok().is("front", "back") {
			side = p.tok().text
		}
		p.i++
	}
	p.eatKind(tComma)
	at := p.i
	if m.place = p.places(false); m.place == nil {
		if p.i = at; p.tok().is("in", "into", "around", "round", "through", "under") {
			return m, false
		}
		return m, true
	}
	end := p.i
	for p.tok().is("from", "front", "back", "right", "left", "to", "and", "the") {
		if side == "" && p.tok().is("front", "back") {
			side = p.tok().text
		}
		p.i++ // "around post of next st from front to back"
	}
	for j := at; j < end; j++ {
		if p.toks[j].is("post", "posts", "stem", "stems") {
			m.post = Loop{Set: true, Into: m.place[0].Into}
			switch {
			case side == "back":
				m.post.Into = stitch.BackPost
			case side == "front" || m.post.Into != stitch.BackPost:
				m.post.Into = stitch.FrontPost
			}
		}
	}
	return m, true
}

// drawn goes on after "draw": "up a long loop", "through 2 loops", "through the stitch and
// first loop on hook".
func (p *parser) drawn() ([]move, bool) {
	up := move{sort: pullUp}
	n, thru, loops := -1, false, false
	for ; p.tok().kind == tWord || p.tok().kind == tNumber; p.i++ {
		t := p.tok()
		switch {
		case t.is("dropped"):
			return nil, false
		case p.i > 0 && t.is("yo", "yrh", "yoh", "insert", "draw", "pull", "skip", "complete"), t.is("in", "into", "around") && !thru:
			goto end
		case t.is("through", "thru"):
			thru = true
		case t.is("loop", "loops", "lp", "lps", "l"):
			loops = true
		case t.kind == tNumber && thru && t.frac == 0:
			n = max(n, 0) + t.value
			if p.at(-1).is("all") {
				n = 0
			}
		case t.is("and") && !(thru && p.at(1).is("first", "one", "1")):
			goto end
		case !thru:
		case numberWords[t.text] > 1:
			n = numberWords[t.text]
		case t.is("both"):
			n = 2
		case t.is("all", "rest", "remaining", "rem"):
			n = 0
		case t.is("st", "sts", "stitch", "stitches"):
			n = -1 // "through both sts"
		case t.is("first", "one") && p.at(1).is("loop", "lp", "of"):
			n = 1
		}
	}
end:
	switch {
	case !thru:
		return []move{up}, true
	case n < 0 && !loops, n < 0 && !p.at(-1).is("hook"):
		return []move{up}, true // "yo, pull through"
	case n == 1 && p.stFirst():
		return []move{up, {sort: through, n: 1, on: true}}, true
	}
	return []move{{sort: through, n: max(n, 0)}}, true
}

// stFirst reports whether the loop has been drawn through the stitch before it was drawn
// through a loop on the hook: "draw through st and first loop".
func (p *parser) stFirst() bool {
	for j := p.i - 1; j > 0 && p.toks[j].kind == tWord && !p.toks[j].is("through", "thru"); j-- {
		if p.toks[j].is("st", "stitch") {
			return true
		}
	}
	return false
}

// completed goes on after "complete": "as for a dc", "the stitch as a regular sc".
func (p *parser) completed() stitch.Kind {
	for p.eat("as", "for", "a", "an", "the", "your", "st", "stitch", "like", "normal", "regular", "usual", "in", "usual", "way", "it") {
	}
	w, ok := p.what()
	for p.eat("as", "usual", "normal", "normally", "in", "the", "way") {
	}
	if !ok {
		return stitch.Kind{}
	}
	return w.Kind
}

func hasInsertion(l []move) bool {
	for i := range l {
		if l[i].sort == insert || l[i].sort == pullUp {
			return true
		}
	}
	return false
}

// allIn gives the insertions of movements that are done so many times the place that is named
// behind them all: "(yo, insert hook, pull up a loop) 3 times in same st". It is false for
// places that they do not come to.
func allIn(l []move, pl []Place, times int) bool {
	if len(pl) != 1 {
		return false
	}
	over := pl[0].N.For(0) > 1
	if over && (pl[0].N.For(0) != times || len(pl[0].N.Values) > 1) {
		return false
	}
	for i := range l {
		if l[i].sort != insert {
			continue
		}
		one := pl[0]
		if one.N = (Num{}); over {
			one.Pick, one.Bare = Next, false
		} else if one.Pick == Next && one.Below == 0 {
			one.Pick = Same
		}
		l[i].place = []Place{one}
	}
	return true
}

// overSeveral reads "over next 7 sts" behind movements that go into one place: how often they are
// done, with as many before them; 0 for other words.
func (p *parser) overSeveral(inner []move, before int) int {
	start := p.i
	insertions := 0
	for i := range inner {
		if m := &inner[i]; m.sort == insert {
			insertions++
			if len(m.place) > 1 || len(m.place) == 1 && (m.place[0].Pick != Next || m.place[0].N.Set()) {
				return 0
			}
		}
	}
	if pl := p.places(false); insertions == 1 && len(pl) == 1 && pl[0].Over && len(pl[0].N.Values) == 1 {
		if n := pl[0].N.Values[0]; n > 1 && n+before <= MaxLegs && allIn(inner, pl, n) {
			return n
		}
	}
	p.i = start
	return 0
}
