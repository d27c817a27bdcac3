package working

import (
	"fmt"
	"math"
	"slices"

	"whorl/patterns/fabric"
	"whorl/patterns/fault"
	"whorl/patterns/notation"
	"whorl/patterns/stitch"
)

// untilRows is how many more rows it takes until there are as many, or until the
// piece measures as much, as the words say: with the last of them it comes
// nearest to the length.
func (p *partWork) untilRows(r *notation.Round, ref *notation.Ref) (int, bool) {
	u := untilIn(r)
	if u == nil {
		p.add(p.fault(r.Span, "no-end", fmt.Sprintf("%s does not say when to stop", r.Label.Text),
			"Write, for example: until piece measures 38 cm, or give the last row's number."), true)
		return 0, false
	}
	done, have := 0, 0.0
	for _, round := range p.part.Rounds {
		if round.Number > 0 && !round.Carried {
			done++
			have += p.heightOf(round)
		}
	}
	switch n := u.Rows.For(p.size); {
	case u.Repeats:
		if ref == nil || ref.Onward {
			p.add(p.fault(u.Span, "no-end", "the words do not name the rounds that are repeated so often", "Write, for example: Rep Rows 2 and 3 five more times."), true)
			return 0, false
		}
		return n * len(p.referred(ref)), !p.broken
	case u.More:
		return n, true
	case u.Numbered:
		if u.UpTo && p.toldNext(r, n) {
			n--
		}
		if len(u.Rows.Values) == 1 && n <= p.number && n > 0 {
			p.add(p.fault(u.Span, "round-number", fmt.Sprintf("the piece has come to round %d already", p.number), "Give the number of the last of the rounds that are still to come."), false)
		}
		return max(n-p.number, 0), true
	}
	if n := u.Rows.For(p.size); n > 0 && len(u.Length) > 0 && (u.InAll && n < done || !u.InAll && p.stillToCome(r, ref, u, n, done, have)) {
		if !u.InAll {
			return n, true
		}
		p.add(p.fault(u.Span, "row-count", fmt.Sprintf("the piece has %d rows already, more than the %d in all", done, n),
			fmt.Sprintf("Say how many are still to come: %d more rows.", n)), true)
		return 0, false
	}
	if u.Rows.Set() {
		return max(u.Rows.For(p.size)-done, 0), true
	}
	if u.Open {
		// How often is not known: once, so that what follows can be worked.
		p.openEnded = true
		if ref == nil || ref.Onward {
			return 1, true
		}
		return len(p.referred(ref)), !p.broken
	}
	if u.Stitches.Set() {
		return p.untilStitches(r, ref, u)
	}
	n, ok, f := p.lengthTakes(r, ref, u, have)
	if f != nil {
		p.add(f, true)
	}
	return n, ok
}

// lengthTakes is how many more rows, each as high as its stitches, a length takes of a piece of the height
// that it has.
func (p *partWork) lengthTakes(r *notation.Round, ref *notation.Ref, u *notation.Until, have float64) (int, bool, *fault.Fault) {
	if u.Added {
		have = 0
	}
	if u.Whole {
		have += p.heightBefore()
	}
	words := []*notation.Round{r}
	if ref != nil {
		if words = p.referred(ref); len(words) == 0 {
			if ref.Onward && !p.broken {
				p.openPattern(r, ref)
				return 0, false, nil
			}
			return 0, !p.broken, nil
		}
	}
	length := u.Length[min(p.size, len(u.Length)-1)]
	n := 0
	for ; ; n++ {
		h := p.nextHeight(words[n%len(words)])
		if !(have+h/2 <= length) {
			return n, true, nil
		}
		if have += h; n >= maxRounds || !(h > 0) {
			return 0, false, p.fault(u.Span, "too-large", fmt.Sprintf("%s would take more than %d rows", r.Label.Text, maxRounds), "Check the length and the gauge.")
		}
	}
}

// stillToCome reports whether the rows that a length comes to, "(about 6 rounds)", are those still to come and
// not all that the piece then has: there are more already, or by the gauge it takes about so many, which those
// that would be left of them are far from.
func (p *partWork) stillToCome(r *notation.Round, ref *notation.Ref, u *notation.Until, n, done int, have float64) bool {
	if n < done || ref != nil && len(p.referred(ref)) == 0 {
		return n < done
	}
	takes, ok, _ := p.lengthTakes(r, ref, u, have)
	off := func(rows int) float64 { return math.Abs(float64(rows - takes)) }
	return ok && off(n) <= float64(n)/4 && off(n-done) > float64(n)/4 && off(n) < off(n-done)
}

// toldNext reports whether the words behind r are those of the round with a number.
func (p *partWork) toldNext(r *notation.Round, number int) bool {
	rounds := p.texts[p.index].Rounds
	for i := slices.Index(rounds, r) + 1; i > 0 && i < len(rounds); i++ {
		if l := rounds[i].Label.Numbers; len(l) > 0 {
			return l[0].From.For(p.size) == number
		}
	}
	return false
}

// untilStitches is how many more rows of those repeated it takes until one has as
// many stitches as the words say, when each goes on to make or take as many as it
// did when it was worked last.
func (p *partWork) untilStitches(r *notation.Round, ref *notation.Ref, u *notation.Until) (int, bool) {
	bad := func(message, help string) (int, bool) {
		p.add(p.fault(u.Span, "no-end", message, help), true)
		return 0, false
	}
	if ref == nil {
		return bad(fmt.Sprintf("%s does not name the rounds that are repeated", plainLabel(r.Label.Text)), "Write, for example: Rep Rows 2 and 3 until 4 sts remain.")
	}
	words := p.referred(ref)
	if len(words) == 0 || len(p.part.Rounds) == 0 {
		return 0, !p.broken
	}
	more := make([]int, len(words)) // stitches that each adds
	for i, of := range words {
		for k := len(p.latest) - 1; k >= 0; k-- {
			if at := len(p.part.Rounds) - len(p.latest) + k; p.latest[k] == of && at > 0 {
				more[i] = p.part.Rounds[at].Count() - p.part.Rounds[at-1].Count()
				break
			}
		}
	}
	want := u.Stitches.For(p.size)
	have := p.part.Rounds[len(p.part.Rounds)-1].Count()
	from := have
	for n := 0; n < maxRounds; n++ {
		if have == want {
			return n, true
		}
		next := have + more[n%len(more)]
		if next < 1 || (have-want)*(next-want) < 0 {
			return bad(fmt.Sprintf("the repeats come from %s to %d and then %d, never to %d", plural(from, "stitch"), have, max(next, 0), want),
				"Check the number, or how many stitches the rounds take away.")
		}
		have = next
	}
	return bad(fmt.Sprintf("the rounds that are repeated never come to %s", plural(want, "stitch")), "Check the number, or name the rounds that shape the piece.")
}

// keepsCount reports whether the rounds that come behind n of those repeated, up to the end
// of the repeat, made no stitch more or less when they were worked last: "until 4 sts remain,
// ending with Row 6".
func (p *partWork) keepsCount(of []*notation.Round, n int) bool {
	for ; n%len(of) != 0; n++ {
		for k := len(p.latest) - 1; k >= 0; k-- {
			if at := len(p.part.Rounds) - len(p.latest) + k; p.latest[k] == of[n%len(of)] && at > 0 {
				if p.part.Rounds[at].Count() != p.part.Rounds[at-1].Count() {
					return false
				}
				break
			}
		}
	}
	return true
}

// heightOf is how high a round is in millimetres: as high as its stitches are on
// the mean, or as its chains where it has no others.
func (p *partWork) heightOf(r *fabric.Round) float64 {
	sum, n := 0.0, 0
	for i := range r.Stitches {
		if st := &r.Stitches[i]; st.Counts {
			sum, n = sum+p.ruler.Height(st.Counted(), into(st)), n+1
		}
	}
	if n == 0 {
		return p.ruler.Height(stitch.Of(stitch.Chain), stitch.Top)
	}
	return sum / float64(n) * p.ruler.Taller(r.Line)
}

// into is the loop or post that a stitch goes into.
func into(st *fabric.Stitch) stitch.Into {
	if len(st.On) == 0 {
		return stitch.Top
	}
	return st.On[0].Into
}

// nextHeight is how high the next round from some words will be: as high as the
// last that was worked from them, or as the last round that there is.
func (p *partWork) nextHeight(words *notation.Round) float64 {
	for i := len(p.latest) - 1; i >= 0; i-- {
		if at := len(p.part.Rounds) - len(p.latest) + i; p.latest[i] == words && at >= 0 {
			return p.heightOf(p.part.Rounds[at])
		}
	}
	if n := len(p.part.Rounds); n > 0 && p.part.Rounds[n-1].Number > 0 {
		return p.heightOf(p.part.Rounds[n-1])
	}
	return p.ruler.Height(stitch.Of(stitch.Single), stitch.Top)
}

// heightBefore is how much the parts measure that this one goes on from: their
// rounds, or the depth of a band that it is picked up along.
func (p *partWork) heightBefore() float64 {
	sum := 0.0
	part, edge := p.part, p.edge > 0
	for part.From >= 0 {
		part = p.f.Parts[part.From]
		if edge {
			// A band worked sideways is as deep as its rows are long.
			for i := len(part.Rounds) - 1; i >= 0; i-- {
				if r := part.Rounds[i]; r.Number > 0 {
					for k := range r.Stitches {
						if st := &r.Stitches[k]; st.Counts {
							sum += p.ruler.Width(st.Counted(), into(st))
						}
					}
					break
				}
			}
			return sum
		}
		for _, r := range part.Rounds {
			if r.Number > 0 && !r.Carried {
				sum += p.heightOf(r)
			}
		}
	}
	return sum
}
