package working

import (
	"fmt"
	"slices"

	"whorl/patterns/fault"
	"whorl/patterns/notation"
)

// seriesFrom is what the numbers of a series such as "Dec Rnd 1", "Dec Rnd 2"
// have to be raised by when they begin anew after the rounds before.
func (p *partWork) seriesFrom(l *notation.Label) int {
	if l.Series == "" {
		p.series = ""
		return 0
	}
	if l.Series != p.series {
		p.series, p.seriesBase = l.Series, 0
		first := l.Numbers[0].From.For(p.size)
		if len(p.latest) > 0 && (first == 1 || first > 1 && first <= p.seriesOthers[l.Series]+1) {
			p.seriesBase = p.number - (first - 1) // the first of them may be for other sizes
		}
	}
	return p.seriesBase
}

// numberFits reports a round whose number is not the next.
func (p *partWork) numberFits(r *notation.Round, at notation.Span, n int, list bool) bool {
	p.workLater()
	first := len(p.latest) == 0
	want := p.number + 1
	extra := p.extraFrom
	if p.extraFrom = 0; extra > 0 && n == extra && n <= p.number {
		p.number = n - 1 // behind rounds that have no numbers in some sizes
		return true
	}
	if n == 2 && want == 1 && r.Label.Row && len(p.part.Rounds) == 1 && p.part.From < 0 && p.part.Rounds[0].Number == 0 && p.part.Rounds[0].Count() > 0 {
		p.number = 1 // "Fsc 20." and then Row 2: the foundation is the first
		return true
	}
	if n <= p.number && p.sideNumber(r, n) {
		p.number = n - 1
		return true
	}
	if open := p.openEnded; n == want || open && n > want || n > want && n <= p.others+1 || first && (n <= p.others+1 || p.part.From < 0 || p.edge > 0) || list {
		p.number, p.openEnded = n-1, false
		return true
	}
	word := "Rnd"
	if r.Label.Row {
		word = "Row"
	}
	var f *fault.Fault
	if n <= p.number {
		f = p.fault(at, "round-number", fmt.Sprintf("%s %d comes twice", word, n),
			fmt.Sprintf("The next would be %s %d.", word, want))
	} else {
		missing := fmt.Sprintf("%s %d is missing", word, want)
		if n-1 > want {
			missing = fmt.Sprintf("%ss %d-%d are missing", word, want, n-1)
		}
		f = p.fault(at, "round-number", fmt.Sprintf("%s before %s", missing, plainLabel(r.Label.Text)),
			fmt.Sprintf("The next would be %s %d.", word, want))
	}
	f.Round = fmt.Sprintf("%s %d", word, n)
	p.add(f, false)
	p.number = n - 1
	return true
}

// othersOf is the highest number of the rounds of part k that are for other sizes only, or that come
// behind where this size left it: "Baby size: proceed to Body." The part that goes on from it goes on
// from that number.
func (p *partWork) othersOf(k int) (highest int) {
	left := false
	for _, r := range p.texts[k].Rounds {
		mine := len(r.Label.Only) == 0 || slices.Contains(r.Label.Only, p.p.Sizes[p.size])
		left = left || mine && len(r.Label.Only) > 0 && r.Label.SkipToPart != ""
		for _, rg := range r.Label.Numbers {
			if (left || !mine) && r.Label.Series == "" {
				highest = max(highest, rg.To.For(p.size))
			}
		}
	}
	return highest
}

// unnumbered reports whether rounds that are repeated without a label have no numbers of their
// own: they are for some of the sizes only, or more in one than in another, so that the rounds
// behind them go on from the number before; or the words say so.
func unnumbered(r *notation.Round, sizes int) bool {
	if len(r.Label.Numbers) > 0 {
		return false
	}
	if n := len(r.Label.Only); n > 0 && n < sizes {
		return true
	}
	for _, it := range r.Items {
		var n []int
		switch it := it.(type) {
		case *notation.Until:
			if n = it.Rows.Values; it.Apart {
				return true
			}
		case *notation.Ref:
			if n = it.Times.Values; it.Apart {
				return true
			}
		}
		if len(n) > 1 && slices.Min(n) != slices.Max(n) {
			return true
		}
	}
	return false
}

// withoutNumbers says of rounds that are printed for one size only that they have no numbers, which
// shows in their words when they are printed for all.
func withoutNumbers(items []notation.Item) []notation.Item {
	for i := len(items) - 1; i >= 0; i-- {
		l := append([]notation.Item(nil), items...)
		switch it := items[i].(type) {
		case *notation.Until:
			u := *it
			u.Apart, l[i] = true, &u
			return l
		case *notation.Ref:
			ref := *it
			ref.Apart, l[i] = true, &ref
			return l
		}
	}
	return items
}
