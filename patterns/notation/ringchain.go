package notation

import "whorl/patterns/stitch"

// chainAtRing moves the chain that a ring is told with, "Make a magic ring, ch 1.", to the round
// behind it, which it is the beginning of.
func (t *Text) chainAtRing() {
	if len(t.Rounds) < 2 || t.Rounds[0].Label.Text != "" || len(t.Rounds[1].Label.Numbers) == 0 || t.Rounds[1].Label.Row {
		return
	}
	ring, first := t.Rounds[0], t.Rounds[1]
	at := len(ring.Items)
	chains := 0
	for ; at > 0; at-- {
		_, chain := ring.Items[at-1].(*Chain)
		if chain {
			chains++
		} else if _, counts := ring.Items[at-1].(*Counts); !counts {
			break
		}
	}
	if at == 0 || chains != 1 || first.beginsWithChain() {
		return
	}
	switch it := ring.Items[at-1].(type) {
	case *MagicRing, *FormRing:
	case *Join:
		if it.Yarn != "" {
			return
		}
	default:
		return
	}
	for _, it := range ring.Items[:at-1] {
		switch it.(type) {
		case *Chain, *Note, *Colour, *Join, *Counts:
		default:
			return
		}
	}
	first.Items = append(append([]Item(nil), ring.Items[at:]...), first.Items...)
	ring.Items = ring.Items[:at:at]
}

// beginsWithChain reports whether the first that a round works is a chain.
func (r *Round) beginsWithChain() bool {
	for _, it := range r.Items {
		switch it.(type) {
		case *Note, *Colour, *Turn, *Marker:
		case *Chain:
			return true
		default:
			return false
		}
	}
	return true // nothing
}

// untoldRing makes "Rnd 1: 6 sc in ring." a magic ring where these are the first words of all and no
// ring has been told: there is nothing else that they could mean. A chain before them begins the
// round where it is of 1 or is said to count.
func (t *Text) untoldRing() {
	if len(t.Rounds) == 0 {
		return
	}
	l := &t.Rounds[0].Label
	if l.Row || l.Bare || len(l.Numbers) != 1 || l.highest() != 1 {
		return
	}
	items := t.Rounds[0].Items
	if len(items) > 0 {
		if c, ok := items[0].(*Chain); ok && (c.Counts != nil || onlyOne(c.N)) {
			items = items[1:]
		}
	}
	if len(items) == 0 {
		return
	}
	s, ok := items[0].(*Stitches)
	if ok && len(s.Places) == 1 && s.Places[0].Target.Sort == Ring && s.Places[0].Target.Name == "" && s.What.Kind.Base != stitch.Slip {
		s.Places[0].Target.Name = Magic
	}
}
