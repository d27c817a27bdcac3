package notation

// dropBareCloses takes away the closing brackets that nothing opened behind the numbers of
// rounds: "Row 2) Ch 1, …", "repeat rows 2) to 3)". Behind a label such a bracket stands for
// the colon.
func dropBareCloses(toks []token) []token {
	open := 0
	out := toks[:0:0]
	for i := range toks {
		t := &toks[i]
		switch {
		case t.kind == tOpen:
			open++
		case t.kind == tClose && open > 0:
			open--
		case t.kind == tClose && !t.spaced && i > 0 && toks[i-1].kind == tNumber:
			if at := numbersFrom(toks, i-1); at >= 0 && toks[at].first {
				colon := *t
				colon.kind, colon.text = tColon, ":"
				out = append(out, colon)
				continue
			} else if at >= 0 {
				continue
			}
		}
		out = append(out, *t)
	}
	return out
}

// numbersFrom is the word for a round before the numbers that end with token i: 0 for
// "rows 2) to 3". It is -1 where there is none.
func numbersFrom(toks []token, i int) int {
	for ; i >= 0; i-- {
		t := &toks[i]
		if _, ok := roundWord(t); ok {
			return i
		}
		switch t.kind {
		case tNumber, tClose, tComma, tHyphen, tDash:
		default:
			if !t.is("to", "and", "through", "thru") {
				return -1
			}
		}
		if t.first {
			return -1
		}
	}
	return -1
}
