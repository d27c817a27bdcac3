package working

import (
	"whorl/patterns/fabric"
	"whorl/patterns/notation"
	"whorl/patterns/stitch"
)

// slipsMove reports whether slip stitches at the beginning of the round only move to where
// it begins: "sl st to next ch-2 sp, ch 3". Those of a repeat that makes other stitches are
// its own, as are those that the round is joined to, that follow a chain in the stitch at
// its base, or that go on in a spiral without a chain to begin anew.
func (w *roundWork) slipsMove(items []notation.Item) bool {
	if !hasMore(items) {
		return false
	}
	if joinedToSlip(items) {
		return false
	}
	spiral := w.c.below != nil && !w.c.below.Ring && w.c.below.Closing != fabric.Joined
	chained, slipped := false, false
	for i, it := range items {
		switch it := it.(type) {
		case *notation.Note, *notation.Colour, *notation.Marker, *notation.Counts, *notation.Turn:
		case *notation.Join:
			if it.With.Kind.Base <= stitch.Slip && repeatsLoop(it.Place, items[i+1:]) {
				return false
			}
		case *notation.Chain:
			if slipped {
				last, ok := items[i-1].(*notation.Stitches)
				return !ok || len(last.Places) != 1 || !repeatsLoop(&last.Places[0], items[i:])
			}
			chained = true
		case *notation.Repeat:
			if beginsSlipping(it.Items) {
				if hasMore(it.Items) {
					return false
				}
				slipped = true
				continue
			}
			return !(slipped && spiral)
		case *notation.Stitches:
			if slips(it.What.Kind) {
				if chained && !slipped && i+1 < len(items) && len(it.Places) == 1 && (it.Places[0].Pick == notation.Same || it.Places[0].Pick == notation.First) {
					_, chain := items[i+1].(*notation.Chain)
					return chain
				}
				slipped = true
				continue
			}
			return !(slipped && spiral && len(it.Places) > 0 && (it.Places[0].Pick == notation.Next || it.Places[0].Pick == notation.Each))
		default:
			return true
		}
	}
	return true
}

// repeatsLoop reports whether a slip stitch in a place, with the rest of the round behind it, is the
// first of those that a repeat makes: "sl st in next st, ch 3, *sl st in next st, ch 3; rep from *
// around".
func repeatsLoop(pl *notation.Place, rest []notation.Item) bool {
	if len(rest) == 0 || pl == nil {
		return false
	}
	chain, ok := rest[0].(*notation.Chain)
	for rest = rest[1:]; len(rest) > 0; rest = rest[1:] {
		if _, skip := rest[0].(*notation.Skip); !skip {
			break
		}
	}
	if !ok || chain.Counts != nil || len(rest) == 0 {
		return false
	}
	r, ok := rest[0].(*notation.Repeat)
	if !ok || len(r.Items) < 2 {
		return false
	}
	s, ok := r.Items[0].(*notation.Stitches)
	again, chains := r.Items[1].(*notation.Chain)
	if !ok || !chains || !slips(s.What.Kind) || len(s.Places) != 1 || again.N.For(0) != chain.N.For(0) {
		return false
	}
	next := &s.Places[0]
	return next.Pick == notation.Next && next.Target.Sort == pl.Target.Sort && next.N.For(0) <= 1 && pl.N.For(0) <= 1 &&
		(pl.Pick == notation.Next || pl.Pick == notation.First || pl.Pick == notation.Any)
}

// joinedToSlip reports whether the round is "joined with sl st in first sl st", so that it
// begins with one.
func joinedToSlip(items []notation.Item) bool {
	for _, it := range items {
		if j, ok := it.(*notation.Join); ok && j.Place != nil && j.Place.Pick == notation.First && j.Place.Target.Sort == notation.OfKind && slips(j.Place.Target.Kind) {
			return true
		}
	}
	return false
}

// beginsAsSlip reports whether what joins at the beginning of the round, "sl st in first
// st", is the slip stitch that the round is joined to, since none follows it.
func (w *roundWork) beginsAsSlip(j *notation.Join, rest []notation.Item) bool {
	if j.Place == nil || j.With.Kind.Base > stitch.Slip {
		return false
	}
	if j.Yarn == "" && repeatsLoop(j.Place, rest) {
		return true
	}
	if !joinedToSlip(rest) || beginsSlipping(rest) {
		return false
	}
	for _, it := range rest {
		switch it.(type) {
		case *notation.Stitches, *notation.Group:
			return true
		case *notation.Chain, *notation.Repeat:
			return false
		}
	}
	return false
}

// slipBeginsRow reports whether "sl st in first st" at the beginning of a row is the first of its stitches:
// behind the turning chain, or where others follow it without a chain.
func (w *roundWork) slipBeginsRow(j *notation.Join, rest []notation.Item) bool {
	if !w.r.Row || w.begun || w.foundation != nil || j.Yarn != "" || j.Place == nil || j.Place.Pick != notation.First || j.Place.Target.Sort == notation.ChainSpace ||
		j.With.Kind.Base > stitch.Slip || w.c.edge > 0 {
		return false
	}
	for _, it := range rest {
		switch it := it.(type) {
		case *notation.Note, *notation.Colour, *notation.Marker, *notation.Skip:
		case *notation.Stitches:
			return true
		case *notation.Group, *notation.Repeat:
			return true
		case *notation.Chain:
			return w.started && it.Counts == nil
		default:
			return false
		}
	}
	return false
}

// standsAsSlip reports whether the slip stitch that a yarn is joined with is the first
// stitch of a round of slip stitches and chains, which is joined to it: "join C with a sl st
// in any sc, ch 3, *sl st in next sc, ch 3; rep from * around, sl st to first sl st".
func (w *roundWork) standsAsSlip(j *notation.Join, rest []notation.Item) bool {
	if again := repeatsLoop(j.Place, rest); j.With.Kind.Base > stitch.Slip || !again && (j.With.Kind != stitch.Of(stitch.Slip) || !joinedToSlip(rest)) || w.moves {
		return false
	}
	same := false
	walkPlaces(rest, func(pl *notation.Place) { same = same || pl.Pick == notation.Same })
	return !same
}

func slips(k stitch.Kind) bool { return k == stitch.Of(stitch.Slip) }

// beginsSlipping reports whether the first stitch of the instructions is a slip stitch.
func beginsSlipping(items []notation.Item) bool {
	for _, it := range items {
		switch it := it.(type) {
		case *notation.Note, *notation.Colour, *notation.Marker:
		case *notation.Stitches:
			return slips(it.What.Kind)
		case *notation.Repeat:
			return beginsSlipping(it.Items)
		default:
			return false
		}
	}
	return false
}

// hasMore reports whether the instructions make anything but slip stitches.
func hasMore(items []notation.Item) bool {
	for begun := false; len(items) > 0 && !begun; {
		switch items[0].(type) {
		case *notation.Chain:
			begun = true // "Ch 1, sl st in each st around"
		case *notation.Join, *notation.Note, *notation.Colour:
		default:
			begun = true
			continue
		}
		items = items[1:]
	}
	for _, it := range items {
		switch it := it.(type) {
		case *notation.Stitches:
			if it.What.Kind.Base != stitch.Slip {
				return true
			}
		case *notation.Chain:
			return true
		case *notation.Group:
			if hasMore(it.Items) {
				return true
			}
		case *notation.Repeat:
			if hasMore(it.Items) {
				return true
			}
		}
	}
	return false
}
