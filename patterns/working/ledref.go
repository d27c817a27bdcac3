package working

import (
	"fmt"

	"whorl/patterns/notation"
	"whorl/patterns/stitch"
)

// leadsIn reports whether an instruction only brings the work to where a round that is
// told by another begins: "sl st across to next corner sp and work as for Rnd 4", "join
// B in any ch-2 sp, rep Rnd 3".
func leadsIn(it notation.Item) bool {
	switch it := it.(type) {
	case *notation.Join, *notation.Turn, *notation.Chain, *notation.Note, *notation.Marker, *notation.Counts, *notation.Colour, *notation.FastenOff:
		return true
	case *notation.Stitches:
		return it.What.Kind == stitch.Of(stitch.Slip)
	}
	return false
}

// leadOf is what stands before the reference of a round, nil where none of it is worked.
func leadOf(r *notation.Round) []notation.Item {
	works := false
	for i, it := range r.Items {
		switch it.(type) {
		case *notation.Ref:
			if !works {
				return nil
			}
			return r.Items[:i]
		case *notation.Join, *notation.Turn, *notation.Chain, *notation.Stitches:
			works = true
		}
	}
	return nil
}

// led is the words of other rounds with their beginnings replaced by what a round that
// refers to them begins with.
func led(r *notation.Round, of []*notation.Round) []*notation.Round {
	lead := leadOf(r)
	if lead == nil {
		return of
	}
	moved, chain := false, false
	for _, it := range lead {
		switch it.(type) {
		case *notation.Join, *notation.Stitches:
			moved = true
		case *notation.Chain:
			chain = true
		}
	}
	out := make([]*notation.Round, len(of))
	for i, o := range of {
		rest := o.Items
		for len(rest) > 0 && leadsIn(rest[0]) {
			if _, ok := rest[0].(*notation.Stitches); ok && !moved {
				break
			}
			if _, ok := rest[0].(*notation.Counts); ok && !chain {
				break
			}
			if _, ok := rest[0].(*notation.Chain); ok && !chain {
				break
			}
			rest = rest[1:]
		}
		text := *o
		text.Items = append(append([]notation.Item(nil), lead...), rest...)
		out[i] = &text
	}
	return out
}

// besides refuses work that stands behind a reference to other rounds: the words leave
// open what of those rounds it takes the place of. It reports whether there is any.
func (p *partWork) besides(r *notation.Round, ref *notation.Ref) bool {
	behind := false
	for _, it := range r.Items {
		switch it.(type) {
		case *notation.Ref:
			behind = behind || it == notation.Item(ref)
		case *notation.FastenOff:
			if behind && p.sideAfter(r) != nil {
				return false // what follows is of the second side
			}
		case *notation.Stitches, *notation.Group, *notation.Repeat, *notation.Skip:
			if s, ok := it.(*notation.Stitches); ok && s.What.Kind == stitch.Of(stitch.Slip) {
				continue // to even out the edge
			}
			if behind && it.Where().Line == ref.Line {
				p.add(p.fault(it.Where(), "vague", fmt.Sprintf("the words do not say what of the repeated round this takes the place of in %s", plainLabel(r.Label.Text)),
					"Write the round out."), true)
				return true
			}
		}
	}
	return false
}
