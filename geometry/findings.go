package geometry

import (
	"math"
	"slices"

	"whorl/patterns/fabric"
)

// Trait is what the fabric does over a run of rounds.
type Trait uint8

const (
	// Flat rounds grow as fast as they are tall, Domed ones slower; a Tube
	// neither grows nor closes.
	Flat Trait = iota
	Domed
	Tube
	// Closing rounds close in slower than they are tall, as a dome does;
	// ClosingFlat ones as fast.
	Closing
	ClosingFlat
	// Ruffled rounds grow and Gathered ones close faster than they are tall,
	// so that their edge is slack.
	Ruffled
	Gathered
	// Stretched rounds are shorter than where they lie.
	Stretched
)

// The bounds between the traits.
const (
	// A meridian that leans by at least this, as a sine, is called flat, and
	// one that leans by no more than upright a tube (64° and 12°; common
	// practice, no source).
	flatLean, upright = 0.85, 0.2
	// slackness is how slack an edge is before it is called a ruffle or gather,
	// and drawn how stretched before it is felt. Teaching sources call 10 to 12
	// dc a round flat, and 15 to 18 tr, so that one increase in eight too many
	// is none.
	slackness, drawn = 0.13, 0.1
	// faster is the flatness beyond which a round is too long or short to lie
	// flat, and taut the share of its height by which its radius then changes.
	faster, taut = 1.02, 0.98
	// fuller is the flatness from which a round in a ruffle is one that makes
	// it, and is not only drawn along.
	fuller = 1.13
)

// Phase is a run of rounds with one trait.
type Phase struct {
	Trait
	From, To int // indices into the part's rounds, both included
}

// Finding is something that a designer should know of a run of rounds.
type Finding struct {
	Phase
	// Strain is the largest share by which an edge is slack (Ruffled,
	// Gathered) or stretched (Stretched), above 0.
	Strain float64
	// First and Last are the rounds that are slack with them: those below a
	// gather, those above a ruffle.
	First, Last int
	// Least and Most are how many stitches a round that is changed gains (or
	// loses), counted in stitches of its own width; Mean is what the rounds
	// gain on average, those between that are not changed too; and Even is how
	// many each would gain (or lose) to lie flat.
	Least, Most int
	Mean        float64
	Even        int
	// Alike is set when no round has another number of stitches and chains than
	// the one below, so that it is unlike stitches that draw the fabric in or out.
	Alike bool
	// Fits is how many stitches would fit the round that is stretched most
	// where it lies.
	Fits int
}

// Phases is the shape of a part, round by round from where it begins to settle:
// every round that is worked round is in one phase. A phase of a single round
// between two others, which is but the bend between them, is added to the one
// before; a single round at the beginning, whose lean hangs on a stitch or two,
// to the one after.
func Phases(part *fabric.Part, rounds []RoundForm) []Phase {
	return phases(part, rounds, strained(part, rounds))
}

func phases(part *fabric.Part, rounds []RoundForm, found []Finding) []Phase {
	var l []Phase
	for i := range rounds {
		if !shaped(part, rounds, i) {
			continue
		}
		t := traitOf(&rounds[i])
		for _, f := range found {
			if f.Trait != Stretched && f.From <= i && i <= f.To {
				t = f.Trait
			}
		}
		if n := len(l); n > 0 && l[n-1].Trait == t {
			l[n-1].To = i
			continue
		}
		l = append(l, Phase{t, i, i})
	}
	out := l[:0]
	for i, p := range l {
		n := len(out)
		bend := p.From == p.To && i+1 < len(l) && p.Trait < Ruffled
		switch {
		case n > 0 && (bend || out[n-1].Trait == p.Trait):
			out[n-1].To = p.To
		case bend:
			l[i+1].From = p.From
		default:
			out = append(out, p)
		}
	}
	return wandering(out, rounds)
}

// within is how much wider or narrower than those of a tube a round beside it may be,
// as a share, to be one of them.
const within = 0.02

// wandering adds to a tube what lies beside it and is neither wider nor narrower than
// its rounds are: rounds of several stitches in turn are so by themselves, and those
// at its ends lean for want of a round beyond them.
func wandering(l []Phase, rounds []RoundForm) []Phase {
	alike := func(p, tube Phase) bool {
		if tube.Trait != Tube || p.Trait != Domed && p.Trait != Closing {
			return false
		}
		low, high := math.Inf(1), 0.0
		for i := tube.From; i <= tube.To; i++ {
			low, high = math.Min(low, rounds[i].R), math.Max(high, rounds[i].R)
		}
		for i := p.From; i <= p.To; i++ {
			if rounds[i].R < (1-within)*low || rounds[i].R > (1+within)*high {
				return false
			}
		}
		return true
	}
	var out []Phase
	for i, p := range l {
		n := len(out)
		switch {
		case n > 0 && out[n-1].Trait == Tube && (p.Trait == Tube || alike(p, out[n-1])):
			out[n-1].To = p.To
		case i+1 < len(l) && alike(p, l[i+1]):
			l[i+1].From = p.From
		default:
			out = append(out, p)
		}
	}
	return out
}

// traitOf is the trait of a round by how its settled meridian leans.
func traitOf(f *RoundForm) Trait {
	switch lean := math.Sin(f.Angle); {
	case lean >= flatLean:
		return Flat
	case lean > upright:
		return Domed
	case lean >= -upright:
		return Tube
	case lean > -flatLean:
		return Closing
	}
	return ClosingFlat
}

// shaped reports whether round i is part of a settled surface: worked round,
// and not the ring or chain that it begins with.
func shaped(part *fabric.Part, rounds []RoundForm, i int) bool {
	r := part.Rounds[i]
	return !r.Row && rounds[i].Circumference > 0 && !(i == 0 && isFoundation(r))
}

// Findings is what a designer should know of a part: where it ruffles, gathers,
// is stretched or domes, in the order of the rounds. It is empty for a part
// that lies flat, stands as a tube or is worked in rows.
func Findings(part *fabric.Part, rounds []RoundForm) []Finding {
	found := strained(part, rounds)
	for _, p := range phases(part, rounds, found) {
		if p.Trait != Domed && p.Trait != Closing || p.From == p.To || alike(part, p) {
			continue
		}
		f := Finding{Phase: p, First: p.From, Last: p.To}
		f.count(part, rounds)
		if f.Most > 0 && f.Mean < float64(f.Even)-0.5 {
			found = append(found, f)
		}
	}
	slices.SortStableFunc(found, func(a, b Finding) int { return a.From - b.From })
	return found
}

// alike reports whether no round of a phase has another number of stitches and
// chains than the one below.
func alike(part *fabric.Part, p Phase) bool {
	for i := p.From; i <= p.To; i++ {
		if i == 0 || Places(part.Rounds[i]) != Places(part.Rounds[i-1]) {
			return false
		}
	}
	return true
}

// Places is the number of stitches and chains along a round.
func Places(r *fabric.Round) int {
	n := r.Count()
	for i := range r.Stitches {
		if s := &r.Stitches[i]; s.IsChain() && !s.Counts {
			n++
		}
	}
	return n
}

// strained finds the ruffles, the gathers and what is stretched.
func strained(part *fabric.Part, rounds []RoundForm) []Finding {
	var found []Finding
	free := Slacks(part, rounds)
	for _, way := range []Trait{Ruffled, Gathered} {
		for i := 0; i < len(rounds); i++ {
			if pulls(part, rounds, i) != way {
				continue
			}
			from, to, on := -1, i, false
			for ; i < len(rounds) && pulls(part, rounds, i) == way; i++ {
				if flatness := rounds[i].Flatness; flatness > fuller || flatness < -faster {
					if from < 0 {
						from = i
					}
					to = i
					on = on || i > 0 && shaped(part, rounds, i-1)
				}
			}
			if !on {
				continue // none, or a full ring, which opens
			}
			f := Finding{Phase: Phase{way, from, to}}
			f.slack(part, rounds, free)
			if f.Strain >= slackness {
				f.count(part, rounds)
				found = append(found, f)
			}
		}
	}
	for i := 0; i < len(rounds); i++ {
		f := Finding{Phase: Phase{Stretched, i, i}, First: i}
		for ; i < len(rounds) && shaped(part, rounds, i) && rounds[i].Strain >= drawn; i++ {
			f.To = i
			if v := rounds[i].Strain; v > f.Strain {
				f.Strain, f.Fits = v, int(math.Round(float64(part.Rounds[i].Count())*(1+v)))
			}
		}
		if f.Strain > 0 {
			f.Last = f.To
			f.count(part, rounds)
			found = append(found, f)
		}
	}
	return found
}

// pulls tells whether round i grows or closes as fast as its height lets it:
// Ruffled, Gathered, or Tube for neither.
func pulls(part *fabric.Part, rounds []RoundForm, i int) Trait {
	if !shaped(part, rounds, i) {
		return Tube
	}
	below := 0.0
	if i > 0 {
		below = rounds[i-1].R
		if part.Rounds[i-1].Row {
			return Tube
		}
	}
	f := &rounds[i]
	switch d := f.R - below; {
	case f.Height <= 0:
	case d >= taut*f.Height:
		return Ruffled
	case d <= -taut*f.Height:
		return Gathered
	}
	return Tube
}

// slack measures how slack the rounds are, and how far that reaches.
func (f *Finding) slack(part *fabric.Part, rounds []RoundForm, free []float64) {
	const shows = 0.01
	f.First, f.Last = f.From, f.To
	if f.Trait == Gathered {
		for f.First > 0 && shaped(part, rounds, f.First-1) && slack(rounds, free, f.First-1) > shows {
			f.First--
		}
	} else {
		for f.Last+1 < len(rounds) && shaped(part, rounds, f.Last+1) && slack(rounds, free, f.Last+1) > shows {
			f.Last++
		}
	}
	// The edge that is closed in upon is the slackest in a gather.
	from := f.From
	if f.Trait == Gathered && f.First < from {
		from--
	}
	for i := from; i <= f.To; i++ {
		f.Strain = math.Max(f.Strain, slack(rounds, free, i))
	}
}

// count counts what the rounds gain or lose. Rounds between them that do
// neither are left out.
func (f *Finding) count(part *fabric.Part, rounds []RoundForm) {
	even, sum, n, all := 0.0, 0.0, 0, 0
	f.Alike = alike(part, f.Phase)
	for i := f.From; i <= f.To; i++ {
		r := &rounds[i]
		stitches := Places(part.Rounds[i])
		if stitches == 0 || r.Circumference == 0 {
			continue
		}
		width := r.Circumference / float64(stitches)
		below := 0.0
		if i > 0 {
			below = rounds[i-1].Circumference
		}
		all++
		sum += math.Abs(r.Circumference-below) / width
		change := int(math.Round(math.Abs(r.Circumference-below) / width))
		if change == 0 {
			continue
		}
		if n == 0 || change < f.Least {
			f.Least = change
		}
		f.Most = max(f.Most, change)
		even += 2 * math.Pi * r.Height / width
		n++
	}
	if n > 0 {
		f.Mean = sum / float64(all)
		f.Even = int(math.Round(even / float64(n)))
	}
}
