package notation

import (
	"strings"

	"whorl/patterns/stitch"
)

// changeGrowth reads what comes of the repeated words: "increasing 6 tr on every row",
// "decreasing 1 st at each end", "working six more trebles on each row", "each row having
// 6 sts more than the last".
func (p *parser) changeGrowth() *Change {
	each, fewer, told, moved := false, false, false, false
	for leads := true; leads; {
		// What grows and when may stand before the number.
		switch {
		case p.everyTime():
			each = true
		case p.eat("you", "you'll", "will", "there", "the", "your", "to", "and", "now", "again", "by", "up"):
		case p.eat("number", "total"):
			p.eat("of")
			p.eat("st", "sts", "stitches")
		case p.eat("stitch", "st") && p.eat("count", "counts", "total"):
		case p.rowThat():
		default:
			leads = false
		}
	}
	switch {
	case p.eat("increasing", "increase", "increases", "inc", "growing", "grows", "grow", "adding", "add", "adds", "gaining", "gain", "gains"):
		told = true
	case p.eat("decreasing", "decrease", "decreases", "dec", "losing", "lose", "loses", "shrinking", "shrinks"):
		told, fewer = true, true
	case p.eat("working", "work", "making", "make", "makes", "having", "have", "has", "with", "being", "are", "is", "be"):
	}
	p.eat("by")
	at := p.i
	n, ok := p.num()
	if !ok && p.eat("a", "an") {
		n, ok = One(p.from(at)), true
	}
	if !ok {
		n = One(p.from(at))
	}
	moreOrFewer := func() {
		if p.eat("more", "extra", "additional", "further") {
			moved = true
		} else if p.eat("fewer", "less") {
			moved, fewer = true, true
		}
	}
	moreOrFewer()
	w, is := p.what()
	if is && (w.Name != "" || w.Kind.Shape != stitch.Plain) || p.tok().is("group", "groups", "shell", "shells", "cluster", "clusters", "repeat", "repeats") {
		return nil // "2 more shells": of how many stitches they do not say
	}
	if ok {
		p.eat("st", "sts", "stitch", "stitches")
	}
	moreOrFewer()
	p.eat("are", "is")
	if p.eat("increased", "added", "gained") {
		told = true
	} else if p.eat("decreased", "lost") {
		told, fewer = true, true
	}
	ends, every := false, 1
	for {
		switch {
		case p.everyTime():
			each = true
		case every == 1 && p.everyOtherTime():
			each, every = true, 2
		case moved && p.thanBefore():
			each = true
		case p.eat("at", "on", "in", "to") && p.eat("each", "both", "either"):
			if ends = p.eat("end", "ends", "side", "sides", "edge", "edges"); !ends {
				return nil
			}
			if at := p.i; p.eat("of") {
				if p.i = at; p.shapedRows(new(Num), &every) {
					continue
				}
				p.i = at + 1
				p.eat("the", "each", "every")
				if !p.eat("row", "rnd", "round", "rows", "rounds", "centre", "center", "spine", "point", "work", "piece") || p.at(-1).is("centre", "center") {
					p.target()
				}
			}
		default:
			if !told && !(ok && moved) || !ends && !(ok && each) {
				return nil
			}
			values := append([]int(nil), n.Values...)
			for i := range values {
				if ends {
					values[i] *= 2
				}
				if fewer {
					values[i] = -values[i]
				}
			}
			n.Values = values
			return &Change{Grows: n, Of: w.Kind, Every: every}
		}
	}
}

// everyOtherTime reads "on every alternate round", "every 2nd row".
func (p *parser) everyOtherTime() bool {
	start := p.i
	p.eat("on", "in")
	if p.eat("each", "every") && p.alternate() && p.eat("rnd", "round", "row") {
		return true
	}
	p.i = start
	return false
}

// inTheEnd passes over "; at the end of Rnd 4 there are 9 sc", "; you will finish with 276 dc"
// behind how much rows grow: a count that is stated with the rounds, or comes of them.
func (p *parser) inTheEnd() {
	if p.tok().kind == tSemi && p.at(1).is("at", "by", "in", "you", "you'll", "there", "this", "that", "giving", "making", "so", "ending", "finishing") {
		for k := p.tok().kind; k != tStop && k != tEnd && k != tClose && !p.tok().first; k = p.tok().kind {
			if k == tOpen {
				close := p.matching(p.i)
				if close < 0 || p.at(-1).kind != tNumber {
					return
				}
				p.i = close // of the other sizes
			}
			p.i++
		}
	}
}

// rowThat reads "each row" before what it has more of: "each row has 6 sts more than the
// last", "the row growing by 6 tr each time".
func (p *parser) rowThat() bool {
	start := p.i
	p.eat("each", "every", "all")
	p.eat("the", "these", "of")
	if _, round := roundWord(p.tok()); round && !p.tok().is("r") && (strings.HasPrefix(p.at(1).text, "ha") || strings.HasPrefix(p.at(1).text, "gr") || p.at(1).is("will", "increases", "increasing", "gains", "gaining")) {
		p.i++
		return true
	}
	p.i = start
	return false
}

// thanBefore reads "than the one before", "than on the previous row".
func (p *parser) thanBefore() bool {
	start := p.i
	if p.eat("than") {
		for p.eat("in", "on", "the", "that", "of", "one", "each") {
		}
		if p.eat("before", "last", "previous", "preceding", "below") {
			p.eat("it", "one")
			if _, round := roundWord(p.tok()); round {
				p.i++
			}
			return true
		}
	}
	p.i = start
	return false
}

// growthSaid reads a sentence behind rounds that are worked again which says how many more
// stitches each of them has: "The number of sts increases by 6 on every row".
func (b *block) growthSaid() bool {
	p := b.p
	start := p.i
	for i := len(b.items) - 1; i >= 0; i-- {
		switch it := b.items[i].(type) {
		case *Until, *Note:
			continue
		case *Ref:
			if it.Change == nil && !it.Onward && it.Piece == "" && it.Along == nil {
				if c := p.changeGrowth(); c != nil && (p.tok().kind == tStop || p.tok().kind == tSemi || p.tok().kind == tEnd || p.tok().kind == tClose || p.tok().first) {
					c.Span, c.Text = p.from(start), uncapital(p.words(start))
					p.inTheEnd()
					it.Change = c
					return true
				}
			}
		}
		break
	}
	p.i = start
	return false
}
