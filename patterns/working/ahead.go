package working

import (
	"slices"

	"whorl/patterns/fabric"
	"whorl/patterns/notation"
	"whorl/patterns/stitch"
)

// countFor is the count of round r out of "(7, 8)" after Rnds 2-3; nil when
// the label's count is not of that sort.
func (p *partWork) countFor(label *notation.Round, number int, r *fabric.Round) *notation.Stated {
	if n := len(label.Stated); n > 1 && label.Stated[1].Then && len(label.Label.Numbers) > 0 {
		first := number - label.Label.Numbers[0].From.For(p.size)
		if len(label.Label.Numbers) == 2 {
			first = 0 // "Rows 3 and 4"
			if number == label.Label.Numbers[1].From.For(p.size) {
				first = 1
			}
		}
		if first >= 0 && first < n {
			return label.Stated[first]
		}
	}
	if len(label.Stated) != 1 || len(label.Label.Numbers) == 0 {
		return nil
	}
	s, sizes := label.Stated[0], len(p.p.Sizes)
	var rounds []int
	for _, l := range label.Label.Numbers {
		if len(s.Counts) == sizes && (len(l.To.Values) > 1 || len(l.From.Values) > 1 || sizes > 1 && len(label.Label.Numbers) > 1) {
			return nil // a count for each size
		}
		for n := l.From.For(p.size); n <= l.To.For(p.size) && len(rounds) <= len(s.Counts); n++ {
			rounds = append(rounds, n)
		}
	}
	at := slices.Index(rounds, number)
	if len(rounds) < 2 || len(s.Counts) != len(rounds) || at < 0 {
		return nil
	}
	last := s.Counts[len(s.Counts)-1].Target
	for i := range s.Counts[:len(s.Counts)-1] {
		if t := &s.Counts[i].Target; t.Text != "" && !(t.Sort == last.Sort && t.Kind == last.Kind && t.Loop == last.Loop && t.Name == last.Name && t.Chains == last.Chains) {
			return nil // "(12 sc, 3 ch-2 sps)"; but "(12 sc, 24 sc)" are of two rounds
		}
	}
	c := s.Counts[at]
	if below := len(p.part.Rounds) - 1; len(s.Counts) == sizes && (below < 0 || r.Count() == p.part.Rounds[below].Count() || r.Count() != c.N.For(p.size)) {
		return nil // as many sizes as rounds, which have no counts of their own where they do not change
	}
	c.Target = last // "(48, 60 dc)"
	return &notation.Stated{Span: s.Span, Counts: []notation.StatedCount{c}}
}

// bySize makes one count, with a number for each size, of "(50, 60, 65)", as many bare
// numbers as there are sizes; and as many more of "(35, 38, 41 sc and 35, 38, 41 ch-1 sps)".
// A count behind them may be that of all sizes: "(24, 30 hdc and 6 ch)". A round for some of the sizes
// only has as many numbers as these.
func (p *partWork) bySize(label *notation.Round) []*notation.Stated {
	list, only := label.Stated, label.Label.Only
	sizes := len(p.p.Sizes)
	if len(only) > 1 && len(list) == 1 && len(list[0].Counts) < sizes {
		sizes = len(only)
	}
	if len(list) != 1 || sizes < 2 || len(list[0].Counts) < sizes || totalOfRest(list[0].Counts) {
		return list
	}
	s := *list[0]
	several := len(s.Counts) > sizes
	var all []notation.StatedCount
	for from := 0; from < len(s.Counts); {
		if c := s.Counts[from]; from > 0 && c.Target.Text != "" {
			all = append(all, c)
			from++
			continue
		}
		one := notation.StatedCount{N: notation.Num{Span: s.Span}}
		if from+sizes > len(s.Counts) {
			return list
		}
		for i := from; i < from+sizes; i++ {
			c := &s.Counts[i]
			last := i == from+sizes-1
			if len(c.N.Values) != 1 || c.Target.Text != "" && !last || several && last && c.Target.Text == "" {
				return list
			}
			one.N.Values, one.Target, one.At = append(one.N.Values, c.N.Values[0]), c.Target, c.At
		}
		if sizes < len(p.p.Sizes) {
			one.N.Values = p.among(one.N.Values, only)
		}
		all = append(all, one)
		from += sizes
	}
	s.Counts = all
	return []*notation.Stated{&s}
}

// among are the numbers of some of the sizes, in the order of all, with none for the others.
func (p *partWork) among(values []int, only []string) []int {
	all := make([]int, len(p.p.Sizes))
	k := 0
	for i, s := range p.p.Sizes {
		if slices.Contains(only, s) && k < len(values) {
			all[i] = values[k]
			k++
		}
	}
	return all
}

// totalOfRest reports whether the first of several counts is the sum of the others, which say
// what there is of each: "(36, 30 hdc and 6 ch)".
func totalOfRest(l []notation.StatedCount) bool {
	sum := 0
	for i := 1; i < len(l); i++ {
		sum += l[i].N.For(0)
	}
	return len(l) > 2 && l[0].Target.Text == "" && l[0].N.For(0) == sum
}

// fastens reports whether the instructions only end the yarn.
func fastens(items []notation.Item) bool {
	for _, it := range items {
		switch it.(type) {
		case *notation.FastenOff, *notation.MagicRing:
			return true
		}
	}
	return false
}

// namesStart reports whether a place in the words is the chain that begins the
// round below. "Each st" leaves it out then.
func namesStart(items []notation.Item) bool {
	for _, it := range items {
		places := placesOf(it)
		switch it := it.(type) {
		case *notation.Group:
			if namesStart(it.Items) {
				return true
			}
		case *notation.Repeat:
			if namesStart(it.Items) || namesStart(it.Ending) {
				return true
			}
		}
		for i := range places {
			pl := &places[i]
			if pl.Pick != notation.Same && ofStart(pl) {
				return true
			}
		}
	}
	return false
}

// ofStart reports whether a place is the chain that the round below begins with, or one of its chains: "top of
// turning ch", "3rd ch of ch-3", "2nd of 2 missed ch".
func ofStart(p *notation.Place) bool {
	return p.Target.Sort == notation.StartChain || p.Of != nil && p.Of.Target.Sort == notation.StartChain ||
		p.Pick == notation.Skipped && p.Nth > 0 && p.Target.Sort == notation.ChainStitch
}

// leading is what a chain and the stitch after it at the beginning of a round
// are said to count as together, nil when nothing is said.
func (w *roundWork) leading(items []notation.Item) (c *notation.Counts, leg bool) {
	for i, it := range items {
		switch it := it.(type) {
		case *notation.Note, *notation.MagicRing, *notation.In, *notation.InLoops, *notation.Join:
		case *notation.Stitches:
			if it.What.Kind.Base != stitch.Slip {
				return w.leadingOwn(it, items[i+1:]), false
			}
		case *notation.Group:
			if first, ok := it.Items[0].(*notation.Stitches); ok && first.What.Name != "" {
				// "(beg cl, ch 3, cl) in same sp"
				return w.leadingOwn(first, append(it.Items[1:len(it.Items):len(it.Items)], items[i+1:]...)), false
			}
			if c, ok := it.Items[0].(*notation.Chain); ok && c.Counts == nil {
				return w.chainInGroup(it, it.Items[1:], items[i+1:]), false
			}
			return nil, false
		case *notation.Chain:
			if i+1 < len(items) {
				if c, ok := items[i+1].(*notation.Counts); ok && c.Half {
					return w.legOf(c, items[i+2:])
				}
			}
			if i+1 < len(items) && it.Counts == nil {
				if g, ok := items[i+1].(*notation.Group); ok {
					return w.chainInGroup(g, g.Items, items[i+2:]), false
				}
			}
			if whole := w.chainLeg(it, items[i+1:]); whole.Is() {
				return &notation.Counts{Span: it.Span, As: whole}, true
			}
			if i+1 < len(items) {
				if sk, ok := items[i+1].(*notation.Skip); ok && sk.Place != nil && (sk.Place.Target.Sort == notation.JoinPlace || skipsFirst(sk) && saidBehind(items[i+2:])) {
					i++ // "2 ch, miss st at base of ch, 1 tr in next st (counts as tr2tog)"
				}
			}
			if i+2 >= len(items) {
				return nil, false
			}
			s, ok := items[i+1].(*notation.Stitches)
			c, said := items[i+2].(*notation.Counts)
			if ok && (!said || !c.Not && c.As == (stitch.Kind{}) && c.Name == "") {
				if whole := w.wholeOf(s, false, items[i+2:]); whole != nil {
					return whole, false
				}
				whole := w.wholeOver(s, items[i+2:])
				return whole, whole != nil
			}
			if !ok {
				return nil, false
			}
			return w.wholeSaid(s, c, items[i+3:])
		default:
			return nil, false
		}
	}
	return nil, false
}

// skipsFirst reports whether the first stitch alone is passed over, which a chain stands on.
func skipsFirst(sk *notation.Skip) bool {
	return sk.Place.Pick == notation.First && !sk.Place.N.Set() && !sk.N.Set() && sk.And == nil
}

// saidBehind reports whether it is said of a stitch what it counts as, with the chain before it.
func saidBehind(items []notation.Item) bool {
	if len(items) < 2 {
		return false
	}
	_, stitches := items[0].(*notation.Stitches)
	_, said := items[1].(*notation.Counts)
	return stitches && said
}

// leadingOwn is what one of the designer's own stitches at the beginning of a
// round counts as, when it is a chain and a cluster: what the words say of it,
// or, for a "beg cl", what a "cl" is.
func (w *roundWork) leadingOwn(s *notation.Stitches, rest []notation.Item) *notation.Counts {
	d := w.definition(&s.What)
	if d == nil {
		return nil
	}
	items := d.items
	if g, ok := items[0].(*notation.Group); ok {
		items = g.Items
	}
	if len(items) < 2 {
		return nil
	}
	_, chain := items[0].(*notation.Chain)
	cluster, ok := items[1].(*notation.Stitches)
	if !chain || !ok || cluster.What.Kind.Legs < 2 {
		return nil
	}
	if len(rest) > 0 {
		if c, ok := rest[0].(*notation.Counts); ok && !c.Not && c.As.Legs > 1 {
			return c
		}
	}
	if name := begun(w.definitions, d.name); name != "" {
		if whole := w.definitions[name]; len(whole.items) > 0 {
			if o, ok := whole.items[0].(*notation.Stitches); ok && len(whole.items) == 1 && o.What.Kind.Legs > 1 {
				return &notation.Counts{Span: s.Span, As: o.What.Kind}
			}
		}
		return nil
	}
	if len(items) == 2 && namedBeg(d.name) {
		// "beg pc", of a popcorn that needs no telling
		whole := cluster.What.Kind
		for _, o := range bundlesIn(rest) {
			if o.Base == whole.Base && o.Legs == whole.Legs+1 {
				whole = o
				break
			}
		}
		return &notation.Counts{Span: s.Span, As: whole}
	}
	return nil
}

// onNamedRound lays out another round than the one below when everything goes
// into that: "working behind petals, BPsc around next dc of Rnd 1".
func (w *roundWork) onNamedRound() {
	n, ok := namedRound(w.items, 0)
	if m := joinedOn(w.items); m > 0 && !namesOther(w.items, m) {
		n, ok = m, true
	}
	if !ok || n == 0 || w.c.below == nil || w.c.below.Number == n {
		return
	}
	for i, r := range w.part.Rounds {
		if r.Number == n && !r.Carried {
			w.c = layCourse(r, i, w.r.Reversed != r.Reversed)
			if in, free := namesFree(w.items); free {
				w.onFree(&notation.InLoops{Into: in})
			}
		}
	}
}

// joinedOn is the number of the round that a yarn is joined on before anything is made,
// 0 when none is named: "join C in BLO of any sc of Rnd 1".
func joinedOn(items []notation.Item) int {
	for _, it := range items {
		switch it := it.(type) {
		case *notation.Note, *notation.Colour, *notation.FastenOff, *notation.InLoops, *notation.Turn, *notation.Marker:
		case *notation.Join:
			if it.Yarn == "" || it.Place == nil || it.Place.Below >= 0 {
				return 0
			}
			return -it.Place.Below
		default:
			return 0
		}
	}
	return 0
}

// namesOther reports whether a place in the instructions names another round than
// number n.
func namesOther(items []notation.Item, n int) bool {
	for _, it := range items {
		var places []notation.Place
		switch it := it.(type) {
		case *notation.Stitches:
			places = it.Places
		case *notation.Group:
			if places = it.Place; namesOther(it.Items, n) {
				return true
			}
		case *notation.Repeat:
			if namesOther(it.Items, n) || namesOther(it.Ending, n) {
				return true
			}
		case *notation.InLoops:
			if it.Round != 0 && it.Round != n {
				return true
			}
		}
		for i := range places {
			if places[i].Below != 0 && places[i].Below != -n {
				return true
			}
		}
	}
	return false
}

// namedRound is the number of the one round that all places in the
// instructions name; ok is false when some name none or another.
func namedRound(items []notation.Item, n int) (int, bool) {
	for _, it := range items {
		var places []notation.Place
		switch it := it.(type) {
		case *notation.Stitches:
			if places = it.Places; len(places) == 0 {
				return 0, false
			}
		case *notation.Group:
			places = it.Place
		case *notation.Repeat:
			m, ok := namedRound(it.Items, n)
			if !ok {
				return 0, false
			}
			n = m
		case *notation.Skip:
			return 0, false
		}
		for i := range places {
			if places[i].Pick == notation.Same {
				continue
			}
			if m := -places[i].Below; m <= 0 || n != 0 && m != n {
				return 0, false
			} else {
				n = m
			}
		}
	}
	return n, true
}

// begins reports whether the instructions begin with a chain.
func begins(items []notation.Item) bool {
	for _, it := range items {
		switch it.(type) {
		case *notation.Chain:
			return true
		case *notation.Note, *notation.Turn, *notation.InLoops:
		default:
			return false
		}
	}
	return false
}

// intoRing reports whether the instructions go into the ring.
func intoRing(items []notation.Item) bool {
	for _, it := range items {
		places := placesOf(it)
		switch it := it.(type) {
		case *notation.Group:
			if intoRing(it.Items) {
				return true
			}
		case *notation.Repeat:
			if intoRing(it.Items) {
				return true
			}
		case *notation.In:
			return true
		}
		for _, pl := range places {
			if pl.Target.Sort == notation.Ring {
				return true
			}
		}
	}
	return false
}

// placesOf are the places of stitches or of a group; none of anything else.
func placesOf(it notation.Item) []notation.Place {
	switch it := it.(type) {
	case *notation.Stitches:
		return it.Places
	case *notation.Group:
		return it.Place
	}
	return nil
}
