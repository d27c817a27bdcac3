package working

import (
	"fmt"
	"regexp"
	"slices"
	"strings"

	"whorl/patterns"
	"whorl/patterns/fabric"
	"whorl/patterns/notation"
	"whorl/patterns/stitch"
)

// standOn finds what the part is worked on: the row ends or the last round of
// another part.
func (p *partWork) standOn() {
	if p.joinLimbs() {
		return
	}
	from := strings.ToLower(p.source.From)
	if from == "" {
		p.goOn()
		return
	}
	slit := p.roundsOpening()
	on, rest := p.p.Base(p.index, from)
	if on < 0 && patterns.Slit(from) {
		// The slit of the latest part that has one.
		for on = p.index - 1; on > 0 && len(openings(p.f.Parts[on])) == 0; on-- {
		}
	} else if on < 0 {
		on = p.index - 1
	}
	if on < 0 {
		pos := p.source.FromPos
		p.add(p.p.Fault(pos, len([]rune(p.source.From)), "from", fmt.Sprintf("%q is not a part that comes before this one", p.source.From),
			"Name the part as it is named above, for example: from: Brim row ends."), true)
		return
	}
	if p.alongChain(rest) && p.continueFromChain(on) {
		return
	}
	p.part.From = on
	base := p.f.Parts[on]
	if !p.source.Rows && allEdges(rest) {
		rest = ""
	}
	if (strings.Contains(rest, "end") || strings.Contains(rest, "side") || strings.Contains(rest, "edge") && base.Worked == fabric.InRows) &&
		!(base.Worked == fabric.InRows && (!p.source.Rows && p.goesRound() || p.threeEdges())) {
		if p.namesUnworked() && p.continueFromRest(on) {
			return
		}
		if p.alongEnds(on); p.edge == 0 {
			p.add(p.p.Fault(p.source.FromPos, len([]rune(p.source.From)), "from",
				fmt.Sprintf("%s has no rows to pick up along", p.p.Parts[on].Name), "Row ends are the sides of a piece worked in rows."), true)
		}
		return
	}
	if slit != nil || patterns.Slit(rest) {
		at := notation.Span{Pos: p.source.FromPos, Length: len([]rune(p.source.From))}
		if slit != nil {
			at = slit.Span
		}
		p.continueFromOpening(on, at)
		return
	}
	if !p.source.Rows && (p.namesUnworked() && oneOpening(openings(base)) || p.slitByChain(base)) {
		p.continueFromOpening(on, p.texts[p.index].Rounds[0].Span)
		return
	}
	if from := p.goneOnFrom(on); from >= 0 {
		p.continueFromOpening(from, p.texts[p.index].Rounds[0].Span)
		return
	}
	if p.namesUnworked() && p.namesRowEnds() && p.continueFromRest(p.rowsOn(on)) {
		return // "in each of the 6 unworked sts of toe"
	}
	if p.roundFlaps(on) || p.continueFromRound(on, rest, notation.Span{Pos: p.source.FromPos, Length: len([]rune(p.source.From))}) {
		return
	}
	p.continueFrom(on)
}

// alongEnds begins the part along the ends of the rows of another.
func (p *partWork) alongEnds(on int) {
	p.part.From = on
	for i, r := range p.f.Parts[on].Rounds {
		if r.Row && r.Number > 0 {
			p.edgeRows = append(p.edgeRows, i)
		}
	}
	p.edge, p.edgePart = len(p.edgeRows), on
}

// goesAlongEnds reports whether the first round of a part that does not say what it is worked
// from goes along the row ends of a part before it, and nowhere else.
func (p *partWork) goesAlongEnds(on int) bool {
	if base := p.f.Parts[on]; base.Worked != fabric.InRows || len(base.Rounds) == 0 || p.goesRound() {
		return false
	}
	said := p.saysEnds()
	for _, r := range p.texts[p.index].Rounds {
		if !needsPlaces(r.Items) || onlyPlaces(r.Items) {
			continue
		}
		along, other := false, false
		for _, it := range r.Items {
			switch it := it.(type) {
			case *notation.Stitches:
				other = other || len(it.Places) != 1 && it.What.Kind != stitch.Of(stitch.Slip)
			case *notation.In, *notation.OtherSide:
				other = true
			}
		}
		walkPlaces(r.Items, func(pl *notation.Place) {
			switch {
			case pl.Target.Sort == notation.RowEnds || said && (pl.Evenly || oneByOne(pl, true)):
				along = true
			case pl.Pick != notation.Same && pl.Target.Sort != notation.JoinPlace:
				other = true
			}
		})
		if other {
			return false
		}
		return along
	}
	return false
}

// inRowsBefore is the latest part in rows, behind which a band up its edge may be told after sleeves
// in rounds; else the part before.
func (p *partWork) inRowsBefore() int {
	for on := p.index - 1; on > 0 && p.source.Rows; on-- {
		if base := p.f.Parts[on]; base.Worked == fabric.InRows {
			return on
		} else if len(base.Rounds) == 0 || !strings.HasPrefix(base.Rounds[0].Label, slitLabel) {
			break
		}
	}
	return p.index - 1
}

// rowEndWords is how row ends are called where the work is told to go on along them.
var rowEndWords = regexp.MustCompile(`(?i)\b(row ends?|ends? of (the |each |every )?rows?|row edges?|sides? of (the |each |every )?rows?)\b`)

// saysEnds reports whether what is told in passing between the part before and the first
// round of this one speaks of row ends: "Turn to work along row ends."
func (p *partWork) saysEnds() bool {
	var notes []notation.Item
	if p.index > 0 && p.texts[p.index-1] != nil {
		if before := p.texts[p.index-1].Rounds; len(before) > 0 {
			notes = append(notes, before[len(before)-1].Items...)
		}
	}
	for _, r := range p.texts[p.index].Rounds {
		if notes = append(notes, r.Items...); needsPlaces(r.Items) && !onlyPlaces(r.Items) {
			break
		}
	}
	return slices.ContainsFunc(notes, func(it notation.Item) bool {
		n, ok := it.(*notation.Note)
		return ok && rowEndWords.MatchString(n.Text)
	})
}

// roundsOpening is the first round when its words go round a slit in another
// part, else nil.
func (p *partWork) roundsOpening() *notation.Round {
	if l := p.texts[p.index].Rounds; len(l) > 0 && l[0].Opening {
		return l[0]
	}
	return nil
}

// goOn lets a part that says nothing of where it begins go on from the one
// before, unless its own words make a beginning.
func (p *partWork) goOn() {
	if p.index == 0 || p.beginsAfresh() {
		return
	}
	if r := p.roundsOpening(); r != nil {
		p.continueFromOpening(p.withSlits(), r.Span)
		return
	}
	if p.alongChain("") && p.continueFromChain(p.index-1) {
		return
	}
	if on := p.inRowsBefore(); p.goesAlongEnds(on) {
		p.alongEnds(on)
		return
	}
	if before := p.f.Parts[p.index-1]; !p.source.Rows && (p.namesUnworked() && oneOpening(openings(before)) || p.slitByChain(before)) {
		p.continueFromOpening(p.index-1, p.texts[p.index].Rounds[0].Span) // "in the first of the 10 skipped stitches"
		return
	}
	if p.f.Parts[p.index-1].Worked == fabric.InRows && p.namesUnworked() && (p.source.Rows || p.namesRowEnds()) && p.continueFromRest(p.index-1) {
		return // "along the row ends of the first side, in each of the 12 unworked sts at the nape"
	}
	if on := p.withSlits(); on < p.index-1 && !p.source.Rows && (p.namesUnworked() && oneOpening(openings(p.f.Parts[on])) || p.slitByChain(p.f.Parts[on])) {
		p.continueFromOpening(on, p.texts[p.index].Rounds[0].Span) // a sleeve, told behind a band
		return
	}
	if before := p.f.Parts[p.index-1]; onSome(before) && p.roundFlaps(before.From) {
		return
	}
	if on := p.besideOthers(); on >= 0 {
		p.continueFrom(on)
		return
	}
	p.continueFrom(p.index - 1)
}

// namesRowEnds reports whether the first round of the part that makes anything goes along row
// ends.
func (p *partWork) namesRowEnds() bool {
	for _, r := range p.texts[p.index].Rounds {
		ends := false
		walkPlaces(r.Items, func(pl *notation.Place) { ends = ends || pl.Target.Sort == notation.RowEnds && pl.Target.Name == "" })
		if ends || makes(r.Items) && !onlyPlaces(r.Items) {
			return ends
		}
	}
	return false
}

// beginsAfresh reports whether the first words of the part make a ring, a
// starting chain or foundation stitches.
func (p *partWork) beginsAfresh() bool {
	rounds := p.texts[p.index].Rounds
	for len(rounds) > 0 && len(rounds[0].Label.Numbers) == 0 && (!makes(rounds[0].Items) || onlyPlaces(rounds[0].Items)) {
		rounds = rounds[1:] // a heading, "With B:", or "Join yarn at underarm, ch 1."
	}
	if len(rounds) == 0 {
		return true
	}
	for i, it := range rounds[0].Items {
		switch it := it.(type) {
		case *notation.Ref:
			return p.asAfresh(it)
		case *notation.MagicRing, *notation.FormRing:
			return true
		case *notation.Chain:
			if len(rounds[0].Label.Numbers) == 0 {
				return !p.saysEnds() // "Ch 1, rotate to work along the ends of the rows."
			}
			// "Rnd 1: Ch 2, 6 sc in 2nd ch from hook"
			for _, next := range rounds[0].Items[i+1:] {
				if s, ok := next.(*notation.Stitches); ok && len(s.Places) > 0 {
					return s.Places[0].Target.Sort == notation.FromHook || intoRing([]notation.Item{s})
				}
			}
		case *notation.Stitches:
			if it.What.Kind.Manner&stitch.Foundation != 0 {
				return true
			}
			return intoRing(rounds[0].Items[i : i+1])
		case *notation.In, *notation.Group, *notation.Repeat:
			return intoRing(rounds[0].Items[i : i+1])
		}
	}
	return false
}

// asAfresh reports whether the rounds of another piece are worked that make a beginning.
func (p *partWork) asAfresh(ref *notation.Ref) bool {
	k := -1
	if ref.Piece != "" {
		k = p.pieceNamed(ref.Piece)
	}
	if k < 0 || p.texts[k] == nil {
		return false
	}
	as := *p
	as.index = k
	return as.beginsAfresh()
}

// makes reports whether instructions make a chain, a ring or stitches.
func makes(items []notation.Item) bool {
	for _, it := range items {
		switch it.(type) {
		case *notation.Note, *notation.Colour, *notation.Marker, *notation.Counts, *notation.Turn, *notation.NoJoin, *notation.FastenOff:
		default:
			return true
		}
	}
	return false
}

// continueFrom begins the part on the last round of another.
func (p *partWork) continueFrom(on int) {
	if p.assemble(on) {
		return
	}
	base := p.f.Parts[on]
	if len(base.Rounds) == 0 {
		return
	}
	last := p.standOnRound(on, base.Rounds[len(base.Rounds)-1])
	if base.Worked == fabric.InRows && p.threeEdges() {
		p.roundFlat(base, on, last)
	} else if base.Worked == fabric.InRows && !p.source.Rows {
		p.turned = p.turnedEnds[on]
		p.roundFlat(base, on, last)
	}
}

// standOnRound begins the part on a round of part number on, which it takes along.
func (p *partWork) standOnRound(on int, r *fabric.Round) *fabric.Round {
	p.part.From = on
	last := *r
	last.Carried = true
	last.Repeats = nil
	last.Ring = false
	last.Stitches = append([]fabric.Stitch(nil), last.Stitches...)
	for i := range last.Stitches {
		last.Stitches[i].On = nil
	}
	p.part.Rounds = append(p.part.Rounds, &last)
	p.number = last.Number
	p.turned = false
	return &last
}

// allEdges reports whether words behind the name of a part are all of its edges: "Cloth, all four edges",
// "all the way round the blanket".
func allEdges(rest string) bool {
	return (strings.Contains(rest, "edge") || strings.Contains(rest, "side") || strings.Contains(rest, "way")) &&
		(strings.Contains(rest, "all ") || strings.Contains(rest, "four ") || strings.Contains(rest, "every "))
}
