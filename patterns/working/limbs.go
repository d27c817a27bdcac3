package working

import (
	"fmt"
	"strings"

	"whorl/patterns/fabric"
	"whorl/patterns/notation"
	"whorl/patterns/stitch"
)

// joining is how a part goes over several pieces made before it, and the chains between
// them: two legs that become one body. They are laid one behind the other in the round that
// it goes on from, in the order in which the words come to them.
type joining struct {
	words  map[notation.Item]notation.Item // what is worked for an instruction, nil for nothing
	visits []*visit
}

// visit is a stretch of the first round on one of the pieces, or along the chains.
type visit struct {
	piece string // "first leg", "" for the chains
	at    notation.Span
	first notation.Item // the instruction that begins it, as it is worked
	items []notation.Item
	from  int // the first of its stitches, and how many
	n     int
}

// name is what a visit goes over in messages.
func (v *visit) name() string {
	if v.piece == "" {
		return "the chain between the pieces"
	}
	return "the " + v.piece
}

// joinLimbs begins the part on several pieces. It reports whether its words name any.
func (p *partWork) joinLimbs() bool {
	var items []notation.Item
	var rounds []*notation.Round
	for _, r := range p.texts[p.index].Rounds {
		items, rounds = append(items, r.Items...), append(rounds, r)
		if len(r.Label.Numbers) > 0 || len(rounds) == 4 {
			break
		}
	}
	if p.index == 0 || p.source.Rows || !namesLimb(items) {
		return false
	}
	j := &joining{words: map[notation.Item]notation.Item{}}
	if h := p.layLimbs(j, items); h != nil {
		p.add(p.fault(h.at, h.code, h.message, h.help), true)
		return true
	}
	p.joining = j
	return true
}

// namesLimb reports whether stitches go into one of several pieces.
func namesLimb(items []notation.Item) bool {
	for _, it := range items {
		if s, ok := it.(*notation.Stitches); ok && len(s.Places) == 1 && s.Places[0].Limb != "" {
			return true
		}
	}
	return false
}

// layLimbs finds where the words go, and lays that out.
func (p *partWork) layLimbs(j *joining, items []notation.Item) *halt {
	var chain *notation.Chain // between the pieces
	inRound := false          // it is made by the round itself, on the way
	along := false            // the words have gone on to the other side of the chain
	chains := 0               // how often they go along it
	for _, it := range items {
		if s, ok := it.(*notation.Stitches); ok && alongBridge(s) {
			chains++
		} else if _, ok := it.(*notation.OtherSide); ok {
			chains++
		}
	}
	enter := func(piece string, it notation.Item) *visit {
		v := &visit{piece: piece, at: it.Where()}
		j.visits = append(j.visits, v)
		return v
	}
	last := func() *visit {
		if len(j.visits) == 0 {
			return nil
		}
		return j.visits[len(j.visits)-1]
	}
	for i, it := range items {
		switch it := it.(type) {
		case *notation.Chain:
			hooks := attaches(items[i+1:])
			switch {
			case last() != nil && chain == nil && chains < 2 && !hooks, len(j.visits) == 0 && chains == 0 && !hooks:
				inRound = last() != nil // it is no more than chains of this round
				continue
			case chain != nil:
				return stopAt(it.Span, "pieces", "there is a second chain between the pieces", "Make one chain from one piece to the other, and work along both its sides.")
			}
			chain = it
			j.words[it] = nil
		case *notation.OtherSide:
			j.words[it] = nil
			along = true
		case *notation.Stitches:
			piece, named := "", false
			if len(it.Places) == 1 && it.Places[0].Limb != "" {
				piece, named = it.Places[0].Limb, true
			} else if along || alongBridge(it) {
				named = true
			}
			v := last()
			if v == nil || named && (v.piece != piece || along) {
				if !named {
					return stopAt(it.Span, "pieces", "the words do not say on which of the pieces the round begins", "Name it: sc in next 12 sts of second leg.")
				}
				v = enter(piece, it)
			}
			along = false
			v.items = append(v.items, it)
		case *notation.Repeat, *notation.Group, *notation.Skip:
			if v := last(); v != nil {
				v.items = append(v.items, it)
			}
		}
	}
	if chain != nil && chains == 0 {
		return stopAt(chain.Span, "pieces", "the chain from one piece to the other is not worked along",
			"Say it, for example: sc in each of the 3 ch, and after the second piece: sc along the other side of the ch.")
	}
	if chain == nil && chains > 0 && !inRound {
		return stopAt(items[0].Where(), "pieces", "there is no chain from one piece to the other to work along", "Make it first: ch 3, join to first leg with a sc.")
	}
	return p.layVisits(j, chain, inRound)
}

// layVisits makes the round that the pieces and the chains between them are together.
func (p *partWork) layVisits(j *joining, chain *notation.Chain, inRound bool) *halt {
	r := &fabric.Round{Label: "the pieces", Carried: true, Closing: fabric.Spiral}
	used := map[string]int{} // stitches of a piece that are in it already
	from := map[string]int{} // the part that a piece is
	sides := 0
	for k, v := range j.visits {
		v.from = len(r.Stitches)
		if v.piece == "" {
			if sides++; sides > 2 || chain == nil {
				return stopAt(v.at, "pieces", "there is no side of a chain left to work along here", "A chain between two pieces has two sides.")
			}
			v.n = chain.N.For(p.size)
			for range v.n {
				r.Stitches = append(r.Stitches, fabric.Stitch{Kind: stitch.Of(stitch.Chain), Counts: true, Line: chain.Line, Column: chain.Column})
			}
		} else {
			on := p.limbNamed(v.piece)
			if on < 0 || len(p.f.Parts[on].Rounds) == 0 {
				return stopAt(v.at, "pieces", fmt.Sprintf("no piece before this one is a %s", v.piece), "Name it as its part is named.")
			}
			base := p.f.Parts[on].Rounds[len(p.f.Parts[on].Rounds)-1]
			if from[v.piece] = on; len(j.visits) == 1 || p.part.From < 0 {
				p.part.From = on
			}
			r.Number, r.Colour, r.Line = max(r.Number, base.Number), base.LastColour(), base.Line
			all := base.Count()
			if v.n = all - used[v.piece]; j.again(k) {
				n, ok := p.takes(v.items)
				if !ok {
					return stopAt(v.at, "pieces", fmt.Sprintf("the words come to the %s twice, and do not say how many of its stitches are worked the first time", v.piece),
						"Give the number: sc in next 6 sts of first leg.")
				}
				v.n = min(n, v.n)
			}
			at := 0
			for i := range base.Stitches {
				if st := base.Stitches[i]; st.Counts {
					if at++; at > used[v.piece] && at <= used[v.piece]+v.n {
						st.On, st.Group, st.Marked = nil, 0, false
						r.Stitches = append(r.Stitches, st)
					}
				}
			}
			used[v.piece] += v.n
		}
		if h := p.onVisit(j, v, sides == 2); h != nil {
			return h
		}
	}
	for _, v := range j.visits {
		if _, noun, ok := strings.Cut(v.piece, " "); ok {
			r.Label = "the " + strings.ReplaceAll(noun+"s", "foots", "feet")
		}
	}
	p.part.Rounds = append(p.part.Rounds, r)
	p.number, p.turned = r.Number, false
	return nil
}

// again reports whether the piece of visit k is come to later once more.
func (j *joining) again(k int) bool {
	for _, v := range j.visits[k+1:] {
		if v.piece == j.visits[k].piece {
			return true
		}
	}
	return false
}

// onVisit makes the instructions of a visit those of so many stitches of the round that
// the pieces are together.
func (p *partWork) onVisit(j *joining, v *visit, under bool) *halt {
	done := 0
	for _, it := range v.items {
		s, ok := it.(*notation.Stitches)
		if !ok || len(s.Places) > 0 && s.Places[0].Limb == "" && v.piece != "" {
			n, ok := p.takes([]notation.Item{it})
			if done += n; !ok {
				done = v.n
			}
			if v.first == nil {
				v.first = it
			}
			continue
		}
		if len(s.Places) == 1 && s.Places[0].Limb != "" && s.What.Kind == stitch.Of(stitch.Slip) {
			j.words[s] = nil // it only joins the piece; the round begins in the same stitch
			continue
		}
		of := *s
		pl := notation.Place{Span: s.Span, Pick: notation.Next, Target: notation.Target{Sort: notation.AnyStitch}, Every: true}
		if len(s.Places) == 1 {
			was := &s.Places[0]
			pl.Span, pl.Into = was.Span, was.Into
			switch {
			case was.N.Set():
				pl.N = was.N
			case was.Pick != notation.Each && was.Target.Sort != notation.RowEnds && !(v.piece == "" && s.N.Set()):
				pl.N = notation.One(s.Span)
			}
		}
		if !pl.N.Set() && s.N.Set() {
			pl.N, of.N = s.N, notation.Num{}
		}
		if !pl.N.Set() {
			pl.N = notation.Num{Span: s.Span, Values: []int{max(v.n-done, 0)}}
		}
		if v.piece == "" && under {
			pl.Into = stitch.Underside
		}
		done += pl.N.For(p.size)
		if n := pl.N.For(p.size); n > maxRound {
			return stopAt(s.Span, "too-large", "too many stitches", "Check the number.")
		} else if n == 0 {
			j.words[s] = nil
			continue
		}
		of.Places = []notation.Place{pl}
		if j.words[s] = &of; v.first == nil {
			v.first = &of
		}
	}
	return nil
}

// alongBridge reports whether stitches go along the chain between two pieces: "3 sc along
// ch", "sc in each of the 3 ch", "sc along other side of ch".
func alongBridge(s *notation.Stitches) bool {
	if len(s.Places) != 1 || s.Places[0].Limb != "" {
		return false
	}
	t := &s.Places[0].Target
	return t.Sort == notation.ChainStitch || t.Sort == notation.StartChain && s.What.Kind.Base != stitch.Slip || t.Sort == notation.ChainSpace && t.Name == "" || t.Sort == notation.RowEnds && t.Name == notation.ChainEdge
}

// attaches reports whether another piece is joined next.
func attaches(items []notation.Item) bool {
	for _, it := range items {
		switch it := it.(type) {
		case *notation.Stitches:
			return len(it.Places) == 1 && it.Places[0].Limb != "" && it.Places[0].Pick == notation.Next && !it.Places[0].N.Set()
		case *notation.Note, *notation.Colour:
		default:
			return false
		}
	}
	return false
}

// takes is how many places instructions go over. It is false for those whose number
// depends on how many there are.
func (p *partWork) takes(items []notation.Item) (n int, ok bool) {
	for _, it := range items {
		switch it := it.(type) {
		case *notation.Stitches:
			of := *it
			times := 1
			if it.Times.Set() {
				times, of.Times = it.Times.For(p.size), notation.Num{}
			}
			k, run := p.plainRun(&of)
			legs := max(it.What.Kind.Legs, 2)
			switch {
			case it.What.Kind == stitch.Of(stitch.Slip) && len(it.Places) == 1 && it.Places[0].Limb != "":
				k = 0
			case run:
			case it.What.Shaping < 0 || it.What.Kind.Shape == stitch.Together:
				k = legs * max(1, it.N.For(p.size))
			case it.What.Shaping > 0 && len(it.Places) == 0:
				k = max(1, it.N.For(p.size))
			case len(it.Places) == 1 && (it.Places[0].Pick == notation.Next):
				k = max(1, it.Places[0].N.For(p.size))
			default:
				return 0, false
			}
			n += k * times
		case *notation.Repeat:
			k, ok := p.takes(it.Items)
			if !ok || !it.Times.Set() || it.Extent.Sort != notation.NoExtent || len(it.Ending) > 0 {
				return 0, false
			}
			times := it.Times.For(p.size)
			if it.More {
				times++
			}
			n += k * times
		default:
			return 0, false
		}
	}
	return n, true
}

// limbNamed is the part before this one that is the piece of a name: one called so, or
// the one that all of them are, made as often: "Legs (make 2)". It is -1 for none.
func (p *partWork) limbNamed(name string) int {
	if k := p.pieceNamed(name); k >= 0 && !strings.HasPrefix(name, "other ") {
		return k
	}
	_, noun, _ := strings.Cut(name, " ")
	latest := -1
	for k := p.index - 1; k >= 0; k-- {
		words := strings.Fields(strings.ToLower(p.p.Parts[k].Called()))
		if len(words) == 0 {
			continue
		}
		if strings.TrimSuffix(words[len(words)-1], "s") == noun || strings.TrimSuffix(words[0], "s") == noun {
			if latest < 0 {
				latest = k
			}
		}
	}
	if latest < 0 && p.source.From != "" {
		latest, _ = p.p.Base(p.index, p.source.From)
	}
	return latest
}

// instead are the instructions as they are worked on the pieces laid together.
func (j *joining) instead(items []notation.Item) (l []notation.Item) {
	for _, it := range items {
		if is, ok := j.words[it]; !ok {
			l = append(l, it)
		} else if is != nil {
			l = append(l, is)
		}
	}
	return l
}

// ontoNext sees that all of a piece has been worked before the round goes on to the next.
func (w *roundWork) ontoNext(it notation.Item) *halt {
	if w.joining == nil || w.c == nil || w.c.index != 0 || w.nest > 0 {
		return nil
	}
	for k, v := range w.joining.visits {
		if v.first != it || k == 0 {
			continue
		}
		before := w.joining.visits[k-1]
		if worked := w.pos - before.from; worked != before.n {
			return stopAt(it.Where(), "pieces", fmt.Sprintf("%s has %s, and %s works %d of them before it goes on to %s", before.name(), plural(before.n, "stitch"), w.r.Label, worked, v.name()),
				"Check the number of stitches that are worked on each piece.")
		}
	}
	return nil
}
