package working

import (
	"whorl/patterns/fabric"
	"whorl/patterns/fault"
	"whorl/patterns/notation"
	"whorl/patterns/stitch"
)

// straightOf is the round that "work 6 rows without shaping" works again and again: the last one
// where it has one stitch in each already, else the last one without its shaping; or, where a
// kind of stitch is named that the last is not of, the latest plain one of that kind. It is nil
// where there are several kinds of stitches in turn, which are a pattern.
func (p *partWork) straightOf(ref *notation.Ref) []*notation.Round {
	n := len(p.part.Rounds)
	if len(p.latest) == 0 || n < 2 {
		return nil
	}
	last, ok := oneKind(p.part.Rounds[n-1])
	if ref.Of.Is() && (!ok || last.kind != ref.Of) {
		return p.plainOf(ref.Of, ref.Span)
	}
	if !ok || !ref.Of.Is() && p.takesTurns() {
		return nil
	}
	text := p.latest[len(p.latest)-1]
	if p.plain(n-1) && !onChain(text.Items) && !ofOtherKind(text.Items, last.kind) {
		return []*notation.Round{text}
	}
	head := text.Items
	for i := len(p.latest) - 1; i > 0; i-- {
		if at := n - len(p.latest) + i; at > 0 && p.plain(at) && !onChain(p.latest[i].Items) {
			if k, ok := oneKind(p.part.Rounds[at]); ok && k == last {
				head = p.latest[i].Items
				break
			}
		}
	}
	return []*notation.Round{evenRound(text, head, last, ref.Span)}
}

// plainOf is the latest round that has one stitch of a kind in each, nil for none.
func (p *partWork) plainOf(kind stitch.Kind, at notation.Span) []*notation.Round {
	n := len(p.part.Rounds)
	for i := len(p.latest) - 1; i >= 0; i-- {
		k := n - len(p.latest) + i
		if k < 1 || !p.plain(k) || onChain(p.latest[i].Items) {
			continue
		}
		if k, ok := oneKind(p.part.Rounds[k]); ok && k.kind == kind {
			text := p.latest[i]
			return []*notation.Round{evenRound(text, text.Items, k, at)}
		}
	}
	return nil
}

// manner is the kind of all the stitches of a round, and how they go in.
type manner struct {
	kind stitch.Kind
	into stitch.Into
}

// oneKind is the kind that all the stitches of a round are of, taken together or not.
func oneKind(r *fabric.Round) (m manner, ok bool) {
	for i := range r.Stitches {
		st := &r.Stitches[i]
		if st.IsChain() {
			return m, false
		}
		if !st.Counts {
			continue
		}
		k := st.Counted()
		if k.Shape == stitch.Together {
			k.Shape, k.Legs = 0, 0
		}
		one := manner{k, into(st)}
		switch one.into {
		case stitch.FrontLoop, stitch.BackLoop, stitch.FrontPost, stitch.BackPost:
		default:
			one.into = stitch.Top // a ring, a space, a chain
		}
		if st.Role == fabric.Start {
			one.into = m.into // it goes in where the hook was
			if !ok {
				m.kind = k
				continue
			}
		}
		if st.Counts && (ok && one != m || m.kind.Is() && one.kind != m.kind) {
			return m, false
		}
		m, ok = one, true
	}
	return m, ok && m.kind == stitch.Of(m.kind.Base) && m.into != stitch.FrontPost && m.into != stitch.BackPost
}

// plain reports whether a round of the piece has one stitch in each of the round below.
func (p *partWork) plain(at int) bool {
	r := p.part.Rounds[at]
	if r.Count() != p.part.Rounds[at-1].Count() && p.part.Rounds[at-1].Number > 0 {
		return false
	}
	on := map[fabric.Ref]bool{}
	for i := range r.Stitches {
		st := &r.Stitches[i]
		if !st.Counts || st.Role == fabric.Start {
			continue
		}
		if len(st.On) != 1 || st.Counted().Shape != 0 || on[st.On[0].At] || st.On[0].At.Round != at-1 {
			return false
		}
		on[st.On[0].At] = true
	}
	return len(on) > 0
}

// takesTurns reports whether rounds of the last one's kind and of another one take turns, or
// have come once each, so that none is the one to go on with.
func (p *partWork) takesTurns() bool {
	n := len(p.part.Rounds)
	last, _ := oneKind(p.part.Rounds[n-1])
	i, run := n-1, 0
	for ; i >= 0 && p.part.Rounds[i].Number > 0 && !p.part.Rounds[i].Carried; i-- {
		if k, ok := oneKind(p.part.Rounds[i]); !ok || k != last {
			break
		}
		run++
	}
	other := 0
	for ; i >= 0 && p.part.Rounds[i].Number > 0 && !p.part.Rounds[i].Carried; i-- {
		if k, ok := oneKind(p.part.Rounds[i]); ok && k == last {
			return other <= run
		}
		other++
	}
	return other > 0 && other == run && run < 3
}

// ofOtherKind reports whether words name stitches of another kind to go into, so that they cannot be
// worked on their own stitches: "1 tr into each dc to end".
func ofOtherKind(items []notation.Item, kind stitch.Kind) bool {
	for _, it := range items {
		switch it := it.(type) {
		case *notation.Repeat:
			if ofOtherKind(it.Items, kind) {
				return true
			}
		case *notation.Stitches:
			for i := range it.Places {
				if t := &it.Places[i].Target; t.Sort == notation.OfKind && t.Kind.Is() && t.Kind != kind {
					return true
				}
			}
		}
	}
	return false
}

// onChain reports whether a round's words are of the starting chain.
func onChain(items []notation.Item) bool {
	for _, it := range items {
		switch it := it.(type) {
		case *notation.MagicRing, *notation.FormRing:
			return true
		case *notation.Stitches:
			for i := range it.Places {
				switch t := it.Places[i].Target; {
				case t.Sort == notation.FromHook, t.Sort == notation.Ring, t.Sort == notation.ChainStitch, t.Sort == notation.RowEnds:
					return true
				}
			}
		}
	}
	return false
}

// evenRound is a round with one stitch in each, which begins as head does and ends as text.
func evenRound(text *notation.Round, head []notation.Item, m manner, at notation.Span) *notation.Round {
	even := *text
	even.Items, even.Stated, even.Label = nil, nil, notation.Label{Row: text.Label.Row, Text: text.Label.Text}
	if onChain(head) {
		head = nil
	}
beginning:
	for _, it := range head {
		switch it := it.(type) {
		case *notation.Chain:
			even.Items = append(even.Items, it)
		case *notation.Counts:
			even.Items = append(even.Items, it)
		case *notation.Skip:
			if len(even.Items) > 0 && it.Place != nil && it.And == nil {
				first := *it
				place := *it.Place
				if place.Target.Sort == notation.OfKind { // whatever it is of now
					place.Target = notation.Target{Text: "st"}
				}
				first.Place, first.Target = &place, place.Target
				even.Items = append(even.Items, &first)
			}
		case *notation.Note, *notation.Colour, *notation.Marker, *notation.Join:
		case *notation.Stitches:
			if it.What.Kind.Base == stitch.Slip {
				continue
			}
			break beginning
		default:
			break beginning
		}
	}
	what := notation.What{Kind: m.kind}
	if m.into != stitch.Top {
		what.Loop = notation.Loop{Set: true, Into: m.into}
	}
	even.Items = append(even.Items, &notation.Stitches{Span: at, What: what, Places: []notation.Place{{Span: at, Pick: notation.Each,
		Target: notation.Target{Text: "st"}, Extent: notation.Extent{Sort: notation.ToEnd}}}})
	tail := len(text.Items)
	for tail > 0 && endsRound(text.Items[tail-1]) {
		tail--
	}
	for _, it := range text.Items[tail:] {
		switch it.(type) {
		case *notation.Join, *notation.Turn, *notation.Chain, *notation.NoJoin:
			even.Items = append(even.Items, it)
		}
	}
	return &even
}

// endsRound reports whether an instruction stands behind the stitches of a round.
func endsRound(it notation.Item) bool {
	switch it.(type) {
	case *notation.Stitches, *notation.Group, *notation.Repeat, *notation.Skip:
		return false
	}
	return true
}

// notStraight is the fault of rounds that go on without shaping where those before show no one
// stitch that they are of.
func (p *partWork) notStraight(ref *notation.Ref) *fault.Fault {
	kind := stitch.Of(stitch.Single)
	if ref.Of.Is() {
		kind = ref.Of
	}
	st := kind.Name(p.p.Terms)
	return p.fault(ref.Span, "vague", "the rounds before do not show which stitches these are of, so they cannot be counted",
		"Write what is worked: "+capital(st)+" in each st; or name those that they repeat: Rep Rnd 3.")
}
