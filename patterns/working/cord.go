package working

import (
	"fmt"

	"whorl/patterns/fault"
	"whorl/patterns/notation"
	"whorl/patterns/stitch"
)

// cord reports whether work behind the last round is a loop or a cord that hangs from it
// and no round: "ch 12, sl st in same st" to hang it up by, "ch 10, sl st in 2nd ch from
// hook and in next 8 ch, sl st in join", "ch 14, sl st in same st, turn, 18 sc in ch-14
// loop". The second result is what is wrong with it.
func (p *partWork) cord(items []notation.Item) (bool, *halt) {
	chains, left := 0, 0
	closed := false // it is a loop
	var wrong *halt
	for _, it := range items {
		switch it := it.(type) {
		case *notation.Chain:
			chains += it.N.For(p.size)
			left = chains
		case *notation.Note, *notation.FastenOff, *notation.Marker, *notation.Colour, *notation.Turn, *notation.Counts, *notation.Join:
		case *notation.Stitches:
			if chains == 0 || it.Times.Set() || len(it.Places) == 0 {
				return false, nil
			}
			for i := range it.Places {
				switch pl := &it.Places[i]; {
				case pl.Target.Sort == notation.FromHook:
					if left -= pl.Nth; left < 0 && wrong == nil {
						wrong = tooShort(pl.Span, chains)
					}
				case pl.Target.Sort == notation.ChainStitch && pl.Pick == notation.Each:
					left = 0
				case pl.Target.Sort == notation.ChainStitch && pl.Pick == notation.Next:
					n := 1
					if pl.N.Set() {
						n = pl.N.For(p.size)
					}
					if left -= n; left < 0 && wrong == nil {
						wrong = tooShort(pl.Span, chains)
					}
				case it.What.Kind == stitch.Of(stitch.Slip) && !pl.N.Set() && (pl.Pick == notation.Same || pl.Pick == notation.First || pl.Target.Sort == notation.JoinPlace):
					closed = true
				case closed && it.N.Set() && pl.Of == nil && (pl.Target.Sort == notation.ChainSpace && (pl.Target.Chains == 0 || pl.Target.Chains == chains) || pl.Target.Sort == notation.Ring):
				default:
					return false, nil
				}
			}
		default:
			return false, nil
		}
	}
	return chains > 0, wrong
}

// coversLoop reports whether the last words of a part cover a loop that hangs from the
// last round, whose stitches are none of a round: "ch 14, sl st in same st, 18 sc in loop".
func (p *partWork) coversLoop(r *notation.Round) bool {
	rounds := p.texts[p.index].Rounds
	if len(p.latest) == 0 || len(r.Label.Numbers) > 0 || r.Label.Next.Set() || rounds[len(rounds)-1] != r {
		return false
	}
	cord, wrong := p.cord(r.Items)
	return cord && wrong == nil
}

func tooShort(at notation.Span, chains int) *halt {
	return stopAt(at, "runs-out", fmt.Sprintf("the %s of this cord run out", plural(chains, "chain")), "Let the chains and the stitches back along them agree.")
}

// hang tells of a loop or a cord behind the last round, which is not worked. A loop of chains alone
// leaves nothing to be checked.
func (p *partWork) hang() {
	_, wrong := p.cord(p.carry)
	if wrong != nil {
		p.add(p.fault(wrong.at, wrong.code, wrong.message, wrong.help), true)
		return
	}
	if plainLoop(p.carry) {
		return
	}
	f := p.fault(p.carry[0].Where(), "not-worked", "this hangs from the last round and is no round", "It is kept as it stands and not worked.")
	f.Severity = fault.Warning
	p.add(f, false)
}

// plainLoop reports whether what hangs is chains, closed with a slip stitch, and nothing else: "ch 12,
// sl st in same st".
func plainLoop(items []notation.Item) bool {
	chains, slips := 0, 0
	for _, it := range items {
		switch it := it.(type) {
		case *notation.Chain:
			chains++
		case *notation.Stitches:
			if slips++; it.What.Kind != stitch.Of(stitch.Slip) || it.Places[0].Target.Sort == notation.FromHook {
				return false
			}
		case *notation.Turn, *notation.Counts:
			return false
		}
	}
	return chains == 1 && slips == 1
}

// byLength refuses a chain that is told by its length where something stands on it, or on what
// it leads to: how many chains it has is not known. As a cord behind what has been worked it is advice.
func (p *partWork) byLength(r *notation.Round) bool {
	worked, cut := len(p.latest) > 0 || p.part.From >= 0, false
	for i, it := range r.Items {
		if _, ok := it.(*notation.FastenOff); ok {
			cut = true
		}
		n, ok := it.(*notation.Note)
		if !ok || !n.ByLength {
			worked = worked || needsPlaces(r.Items[i:i+1])
			continue
		}
		inRound := (len(r.Label.Numbers) > 0 || r.Label.Next.Set()) && !cut && n.Line == r.Line
		stands := inRound || !worked || needsPlaces(r.Items[i+1:])
		for _, later := range p.texts[p.index].Rounds {
			stands = stands || later.Line > r.Line && (len(later.Label.Numbers) > 0 || later.Label.Next.Set())
		}
		if stands {
			p.add(p.fault(n.Span, "chain-length", "how many chains this is cannot be worked out from its length", "Give their number, for example: Ch 60."), true)
			return true
		}
	}
	return false
}
