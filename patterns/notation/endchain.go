package notation

// lastAndChain reads ", 1 ch", "and ending with 1 ch" behind "working last dc in last 1-ch space", where the
// stitch of the repeat goes into such a space before chains and what is passed over: that stitch and these
// chains are all there is of the last repeat.
func (p *parser) lastAndChain(r *Repeat, s *Stitches) bool {
	start := p.i
	at := -1
	for i, it := range r.Items {
		switch it := it.(type) {
		case *Stitches:
			if at >= 0 || it.What != s.What || len(it.Places) != 1 || it.Places[0].Target.Sort != ChainSpace {
				return false
			}
			at = i
		case *Chain, *Skip:
		default:
			return false
		}
	}
	if at < 0 || at == len(r.Items)-1 || s.Places[0].Target.Sort != ChainSpace || s.Places[0].Pick != Last {
		return false
	}
	behind, chains := r.Items[at+1].(*Chain)
	for p.eatKind(tComma) || p.eat("and", "then", "but") {
	}
	if p.eat("ending", "end", "finishing", "finish") {
		p.eat("with", "by", "in")
		p.eat("working", "a")
	}
	ch, ok := p.chain().(*Chain)
	if !ok || !chains || !sameNum(ch.N, behind.N) || !p.ended() && !p.tok().is("join", "sl", "slip", "ss") {
		p.i = start
		return false
	}
	of := r.Items[at].(*Stitches)
	r.Ending = append(append([]Item(nil), r.Items[:at]...), &Stitches{Span: s.Span, N: of.N, What: s.What, Places: s.Places}, ch)
	return true
}
