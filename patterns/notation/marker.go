package notation

import "whorl/patterns/fault"

// marker reads "place marker in last st made", "pm", "place a marker in 3rd st and
// move it up each rnd".
func (p *parser) marker() (Item, *fault.Fault) {
	start := p.i
	switch {
	case p.eat("pm"):
	case p.tok().is("use", "using") && (p.at(2).is("marker", "pin") || p.at(3).is("marker", "pin")) && p.at(1).is("a", "the"):
		// "use a stitch marker to mark the first st of each round"
		for !p.ended() {
			p.i++
		}
		return &Note{Span: p.from(start), Text: p.words(start)}, nil
	case p.tok().is("place", "placing", "move", "moving", "put", "remove", "removing") &&
		(p.at(1).is("marker", "markers", "pm", "m") || p.at(2).is("marker", "markers")):
	default:
		return nil, nil
	}
	m := &Marker{}
	if !p.toks[start].is("remove", "removing") {
		p.i = start
		for p.tok().is("place", "placing", "move", "moving", "put", "a", "the") {
			p.i++
		}
		p.eat("st", "stitch")
		p.eat("marker", "markers", "pm", "m")
		p.marked(m)
	}
	for p.tok().kind != tEnd && p.tok().kind != tStop && p.tok().kind != tComma && p.tok().kind != tSemi &&
		p.tok().kind != tClose {
		m.Up = m.Up || p.tok().is("up") || p.tok().is("each", "every") && p.at(1).is("rnd", "round", "row")
		if p.tok().kind == tOpen && p.work {
			if close := p.matching(p.i); close > 0 {
				at := p.i
				p.i++
				s := p.statedUpTo(close)
				if p.i = at; s != nil {
					break
				}
				p.i = close
			}
		}
		p.i++
	}
	p.i = p.dashedCount(start, p.i)
	m.Span, m.Text = p.from(start), p.words(start)
	return m, nil
}

// marked reads the stitch that a marker is put in: "in 3rd st", "in st just made"; or
// nothing, which is the stitch just made.
func (p *parser) marked(m *Marker) {
	if !p.eat("in", "on", "into", "at", "through", "to") {
		m.Made = !p.tok().is("for", "between", "around", "before", "after", "up")
		return
	}
	p.eat("the", "this", "that", "same")
	first := p.tok().is("first")
	n, nth := p.ordinal()
	last := !nth && p.eat("last")
	_, stitch := p.what()
	stitch = p.eat("st", "stitch", "sts") || stitch && (first || last || !nth)
	switch {
	case p.tok().is("of") && p.at(1).is("next", "previous", "prev", "last"):
	case nth && stitch:
		m.Stitch = n
	case !nth && stitch && p.tok().kind != tNumber:
		m.Made = true
	}
}
