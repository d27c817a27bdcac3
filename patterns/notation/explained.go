package notation

import "whorl/patterns/stitch"

// explained takes the bracket at the end of a definition away that only says in other words what
// stands before it: "invisible dec over next 2 sts (sc2tog through front loops)", "3-dc cluster in
// next st (dc3tog in same st)". A decrease or a cluster that does not say which stitch it is made of
// is one of those in the bracket.
func explained(items []Item) []Item {
	if len(items) == 0 {
		return items
	}
	s, ok := items[0].(*Stitches)
	if !ok || s.Times.Set() || s.N.Set() && (len(s.N.Values) != 1 || s.N.Values[0] != 1) || len(s.But) > 0 || legsOf(s.What) < 2 {
		return items
	}
	at := -1
	for i, it := range items[1:] {
		switch it.(type) {
		case *Note:
			continue
		case *Group:
			if at < 0 {
				at = i + 1
				continue
			}
		}
		return items
	}
	if at < 0 {
		return items
	}
	g := items[at].(*Group)
	if g.Times.Set() || len(g.Place) > 1 || len(g.Place) == 1 && g.Place[0].Pick != Same && len(s.Places) > 0 {
		return items
	}
	var same *Stitches
	loop := s.What.Loop
	for _, it := range g.Items {
		switch it := it.(type) {
		case *Note:
			continue
		case *InLoops:
			if !loop.Set && it.Round == 0 {
				loop = Loop{Set: true, Into: it.Into}
			}
			continue
		case *Stitches:
			if same == nil && !it.N.Set() && !it.Times.Set() && len(it.But) == 0 && legsOf(it.What) == legsOf(s.What) &&
				(!s.What.Kind.Is() || !it.What.Kind.Is() || s.What.Kind.Base == it.What.Kind.Base) {
				same = it
				continue
			}
		}
		return items
	}
	if same == nil {
		return items
	}
	one := *s
	if !one.What.Kind.Is() && same.What.Kind.Is() {
		manner := one.What.Kind.Manner
		one.What.Kind, one.What.Shaping = same.What.Kind, 0
		one.What.Kind.Manner |= manner
	}
	if same.What.Loop.Set && !loop.Set {
		loop = same.What.Loop
	}
	if one.What.Kind.Manner&stitch.Invisible == 0 {
		one.What.Loop = loop // an invisible one is in the front loops
	}
	if len(one.Places) == 0 {
		if one.Places = same.Places; len(g.Place) == 1 && g.Place[0].Pick != Same {
			one.Places = g.Place
		}
	}
	rest := append([]Item{&one}, items[1:at]...)
	return append(rest, items[at+1:]...)
}

// inItsLoops gives the stitch that a definition is the loops that are told of behind it, "sc2tog through
// front loops", "sc in FLO": they are those of this stitch.
func inItsLoops(items []Item) []Item {
	if len(items) < 2 {
		return items
	}
	s, ok := items[0].(*Stitches)
	if !ok || len(s.Places) > 0 || len(s.But) > 0 || s.Times.Set() || s.What.Loop.Set || s.What.Name != "" {
		return items
	}
	in, ok := items[1].(*InLoops)
	if !ok || in.Round != 0 {
		return items
	}
	for _, it := range items[2:] {
		if _, note := it.(*Note); !note {
			return items
		}
	}
	one := *s
	if one.What.Kind.Manner&stitch.Invisible == 0 {
		one.What.Loop = Loop{Set: true, Into: in.Into}
	}
	return append([]Item{&one}, items[2:]...)
}

// legsOf is how many stitches are worked together as one, 0 for any other.
func legsOf(w What) int {
	switch {
	case w.Name != "":
		return 0
	case w.Shaping < 0:
		return 2
	case w.Kind.Shape == stitch.Plain:
		return 0
	}
	return w.Kind.Legs
}
