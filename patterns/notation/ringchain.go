package notation

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
