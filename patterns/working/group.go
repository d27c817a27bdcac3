package working

import (
	"cmp"
	"fmt"
	"maps"
	"slices"

	"whorl/patterns/fabric"
	"whorl/patterns/notation"
	"whorl/patterns/stitch"
)

// placedGroup works a bracketed group in one place, or in each of several.
func (w *roundWork) placedGroup(g *notation.Group) *halt {
	if w.c.below == nil && !w.c.ring && !w.begun && intoMagic(g.Place) {
		// "(dc, ch 1) 8 times in magic ring" makes the ring on the way.
		if h := w.magicHere(g.Span); h != nil {
			return h
		}
	}
	if h := w.seal(g.Span); h != nil {
		return h
	}
	if h := w.anywhere(&g.Place[0]); h != nil {
		return h
	}
	if h := w.eitherWay(g); h != nil {
		return h
	}
	times := 1
	if g.Times.Set() {
		times = g.Times.For(w.size)
	}
	for t := 0; t < times; t++ {
		for i := range g.Place {
			if h := w.eachPlace(&g.Place[i], func(on []fabric.Place) *halt { return w.groupIn(g.Items, "", on) }); h != nil {
				return h
			}
		}
	}
	return nil
}

// eachPlace resolves a place that may be several, and works in each.
func (w *roundWork) eachPlace(p *notation.Place, work func([]fabric.Place) *halt) *halt {
	p = w.upToLeft(w.spacesInAll(p))
	if ofEach(p) {
		return w.eachOf(p, work)
	}
	count := 1
	if p.N.Set() {
		count = p.N.For(w.size)
	}
	if p.Pick != notation.Each {
		for i := 0; i < count; i++ {
			on, h := w.one(p, i, count)
			if h != nil {
				return h
			}
			if h := work(on); h != nil {
				return h
			}
		}
		return nil
	}
	leave := 0
	if p.Extent.Sort == notation.ToLast {
		leave = p.Extent.N.For(w.size)
	}
	targets := append([]notation.Target{p.Target}, p.Also...)
	if on, _ := w.standsIn(p, targets); on != nil {
		if h := work(on); h != nil {
			return h
		}
	}
	for n := 0; ; n++ {
		at, run := w.nearest(targets)
		if leave > 0 && w.left(&p.Extent, leave+1) <= leave || p.Extent.Sort == notation.ToPlace && w.atPlace(&p.Extent, p.Target.Sort == notation.ChainSpace) {
			return nil
		}
		if at < 0 {
			if n == 0 {
				return w.outOf(p, 1)
			}
			return nil
		}
		if h := work(w.takeEach(targets, at, run, p, true)); h != nil {
			return h
		}
	}
}

// groupIn works instructions in one place, as a group.
func (w *roundWork) groupIn(items []notation.Item, name string, on []fabric.Place) *halt {
	outer, outerGroup := w.inGroup, w.group
	from := len(w.r.Stitches)
	w.r.Groups = append(w.r.Groups, fabric.Group{Span: fabric.Span{From: from, To: from}, Name: name})
	index := len(w.r.Groups)
	w.group = index
	w.inGroup = on
	if on != nil {
		w.same = on
	}
	w.nestGroup++
	h := w.exec(items)
	w.nestGroup--
	w.inGroup, w.group = outer, outerGroup
	if h != nil {
		return h
	}
	w.r.Groups[index-1].To = len(w.r.Stitches)
	return nil
}

// definition is one of the designer's own stitches.
type definition struct {
	name  string
	items []notation.Item
	// needsPlace is set when its words leave it to the place it is worked in
	// where it goes.
	needsPlace bool
	// alias is the stitch that the name is another word for: "dec: sc2tog". Nil
	// when the words say more.
	alias *notation.What
	// single is set when it makes one stitch.
	single bool
	// gathers is set when the hook takes up several places in turn, by a name that says no
	// more: worked in one place, it is a cluster.
	gathers bool
	// makes are the stitches of a group that goes into one place, nil for anything
	// else.
	makes []stitch.Kind
	// chained is set when it begins with the chain that begins a round.
	chained bool
	// sequence is set when it is worked over several places in turn.
	sequence bool
}

// makesStitch reports whether the words of a definition make a stitch or chains.
func makesStitch(items []notation.Item) bool {
	for _, it := range items {
		switch it := it.(type) {
		case *notation.Stitches, *notation.Chain:
			return true
		case *notation.Group:
			if makesStitch(it.Items) {
				return true
			}
		case *notation.Repeat:
			if makesStitch(it.Items) {
				return true
			}
		}
	}
	return false
}

// newDefinition looks at how a definition goes.
func newDefinition(name string, items []notation.Item) *definition {
	if s, ok := items[0].(*notation.Stitches); ok && len(items) == 1 && s.What.Kind.Shape == stitch.Together && len(s.Places) == 1 {
		if p := &s.Places[0]; p.Over && !p.N.Set() && p.Of == nil && p.Target.Sort == notation.AnyStitch {
			over := *s // "dc5tog over the sts named": where the name is used
			over.Places = nil
			items = []notation.Item{&over}
		}
	}
	d := &definition{name: name, items: items}
	first := true
	for _, it := range items {
		var places []notation.Place
		switch it := it.(type) {
		case *notation.Stitches:
			places = it.Places
		case *notation.Group:
			places = it.Place
		case *notation.Skip:
			d.sequence = true
			first = false
			continue
		default:
			continue
		}
		if !first && len(places) > 0 && places[0].Pick == notation.Next || len(places) > 0 && places[0].N.For(0) > 1 {
			d.sequence = true
		}
		if s, ok := it.(*notation.Stitches); ok && s.What.Kind.Shape == stitch.Picot && len(places) == 0 {
			continue // takes no place
		}
		if first {
			d.needsPlace = len(places) == 0 || places[0].Pick == notation.Same ||
				places[0].Pick == notation.Next && places[0].N.For(0) <= 1
			first = false
		}
	}
	inner := items
	if g, ok := items[0].(*notation.Group); ok {
		inner = g.Items
	}
	_, d.chained = inner[0].(*notation.Chain)
	if !d.sequence {
		d.makes = plainKinds(inner)
	}
	if s, ok := items[0].(*notation.Stitches); ok && len(items) == 1 {
		d.single = !s.N.Set() && !s.Times.Set() && s.What.Shaping <= 0 && len(s.Places) <= 1
	}
	if s, ok := items[0].(*notation.Stitches); ok && len(items) == 1 && len(s.Places) == 0 && !s.N.Set() && !s.Times.Set() && len(s.But) == 0 {
		d.alias = &s.What
	}
	return d
}

// is reports whether it is one stitch of the kind, in its loop or around its post.
func (d *definition) is(k stitch.Kind, in stitch.Into) bool {
	if d == nil || len(d.items) != 1 {
		return false
	}
	s, ok := d.items[0].(*notation.Stitches)
	return ok && len(s.Places) == 0 && !s.N.Set() && s.What.Kind == k && s.What.Loop.Into == in
}

// aroundPost reports whether it is one stitch around a post.
func (d *definition) aroundPost() bool {
	if d == nil {
		return false
	}
	for _, it := range d.items[1:] {
		if _, advice := it.(*notation.Note); !advice {
			return false
		}
	}
	s, ok := d.items[0].(*notation.Stitches)
	if !ok || s.N.For(0) > 1 || s.Times.Set() || s.What.Kind.Shape != stitch.Plain || len(s.Places) > 1 {
		return false
	}
	in := s.What.Loop.Into
	if len(s.Places) == 1 && !s.What.Loop.Set {
		in = s.Places[0].Into
	}
	return in == stitch.FrontPost || in == stitch.BackPost
}

// onePost is aroundPost of a stitch that says as well that what is behind it is skipped.
func (d *definition) onePost() bool {
	if d == nil || len(d.items) == 0 {
		return false
	}
	first := *d
	first.items = slices.DeleteFunc(slices.Clone(d.items), func(it notation.Item) bool {
		s, skip := it.(*notation.Skip)
		return skip && s.Behind
	})
	return len(first.items) > 0 && first.aroundPost()
}

// saysPost reports whether the words name a stitch by the side of the post that it goes round.
func saysPost(items []notation.Item) bool {
	return slices.ContainsFunc(items, func(it notation.Item) bool {
		switch it := it.(type) {
		case *notation.Stitches:
			return it.What.Loop.Set && (it.What.Loop.Into == stitch.FrontPost || it.What.Loop.Into == stitch.BackPost)
		case *notation.Group:
			return saysPost(it.Items)
		case *notation.Repeat:
			return saysPost(it.Items)
		}
		return false
	})
}

// inSpace reports whether it names the space that it goes into: "5 dc in next ch-3 sp".
func (d *definition) inSpace() bool {
	places := placesOf(d.items[0])
	return len(places) == 1 && places[0].Pick == notation.Next && places[0].Target.Sort == notation.ChainSpace && places[0].Of == nil
}

// inSame reports whether it is a beginning of its own, whose first stitch goes where the
// yarn was joined: "ch 2, 2-dc cluster in same sp".
func (d *definition) inSame() bool {
	for _, it := range d.items {
		switch it := it.(type) {
		case *notation.Chain, *notation.Counts, *notation.Note:
			continue
		case *notation.Stitches:
			return d.items[0] != notation.Item(it) && len(it.Places) == 1 && it.Places[0].Pick == notation.Same
		}
		break
	}
	return false
}

// definition is the definition of what is made, nil when it is not one of the
// designer's own.
func (w *partWork) definition(what *notation.What) *definition {
	name := what.Name
	switch {
	case name != "":
	case what.Shaping > 0 && !what.Kind.Is() && what.Kind.Manner == 0:
		name = "inc"
	case what.Shaping < 0 && !what.Kind.Is() && what.Kind.Manner == 0:
		name = "dec"
	default:
		return nil
	}
	if name == w.alias && w.alias != "" {
		return nil
	}
	if what.Beg {
		for _, beg := range slices.Sorted(maps.Keys(w.definitions)) {
			if begOf(beg, name) {
				return w.definitions[beg]
			}
		}
	}
	return w.definitions[name]
}

// runDefinition works one of the designer's own stitches, in the places given
// or (nil) wherever its words say.
func (w *roundWork) runDefinition(d *definition, s *notation.Stitches, on []fabric.Place) *halt {
	if w.nestGroup >= maxNested {
		return stopAt(s.Span, "nesting", fmt.Sprintf("%s is defined by stitches that are defined by others, more than %d deep", d.name, maxNested),
			"Define it by plain stitches.")
	}
	if saysPost(d.items) {
		on = slices.Clone(on)
		for i := range on {
			if on[i].Into == stitch.FrontPost {
				on[i].Into = stitch.Top // "around next dc of Rnd 1": the stitch says from which side
			}
		}
	}
	outer, own := w.given, w.own
	if d.single {
		w.own = cmp.Or(own, d.name)
	}
	w.given = on
	in := on
	if d.sequence {
		in = nil
	}
	loop := w.loop
	if s.What.Loop.Set {
		w.loop = s.What.Loop.Into
	}
	items := d.items
	if g, ok := items[0].(*notation.Group); ok && len(items) == 1 && on != nil {
		// The brackets and the name are one group.
		items = g.Items
		w.given = nil
	}
	outside := w.nestGroup == 0 || w.within == nil
	if outside {
		w.within = s
	}
	h := w.groupIn(items, d.name, in)
	if outside {
		w.within = nil
		if h != nil && h != stopHere && h.code != "nesting" {
			// What goes wrong inside is shown where the stitch is used.
			h.at = s.Span
		}
	}
	w.loop = loop
	w.given, w.own = outer, own
	return h
}

// split is a group begun at the start of a round and completed at its join.
type split struct {
	as          stitch.Kind
	chainLeg    bool // the chain at the start is one of its legs
	first, last *notation.Stitches
}

// findSplit finds a group split at the join: a round that begins with a chain
// and a decrease, ends with a decrease of the same height before the join, and
// says that the two are one, or works the whole elsewhere in the round.
func findSplit(items []notation.Item) *split {
	var first, last *notation.Stitches
	var said stitch.Kind
	chain := false
	stage := 0
	for _, it := range items {
		switch it := it.(type) {
		case *notation.Chain:
			if stage == 0 {
				chain, stage = true, 1
			}
		case *notation.Stitches:
			if stage <= 1 {
				first, stage = it, 2
			} else {
				last = it
			}
		case *notation.Group, *notation.Skip:
			if stage <= 1 {
				return nil
			}
			last = nil
		case *notation.Repeat:
			if stage <= 1 {
				return nil
			}
			last = nil
			for _, e := range it.Ending {
				if s, ok := e.(*notation.Stitches); ok {
					last = s
				}
			}
		case *notation.Counts:
			if it.Half && it.As.Is() {
				said = it.As
			}
		case *notation.Join:
			if it.Splits != nil {
				said = it.Splits.As
			}
		}
	}
	tog := func(s *notation.Stitches) bool {
		return s != nil && s.What.Kind.Shape == stitch.Together && !s.Times.Set() &&
			(!s.N.Set() || len(s.N.Values) == 1 && s.N.Values[0] == 1)
	}
	if !tog(first) || !tog(last) || first == last || first.What.Kind.Base != last.What.Kind.Base {
		return nil
	}
	legs := first.What.Kind.Legs + last.What.Kind.Legs
	s := &split{first: first, last: last}
	fits := func(k stitch.Kind) bool {
		if k.Shape != stitch.Together || k.Base != first.What.Kind.Base {
			return false
		}
		s.as = k
		s.chainLeg = chain && k.Legs == legs+1
		return k.Legs == legs || s.chainLeg
	}
	if said.Is() {
		if fits(said) {
			return s
		}
		return nil
	}
	for _, k := range togsIn(items) {
		if fits(k) {
			return s
		}
	}
	return nil
}

// togsIn are the kinds of decrease in the instructions, in order.
func togsIn(items []notation.Item) []stitch.Kind {
	var l []stitch.Kind
	for _, k := range bundlesIn(items) {
		if k.Shape == stitch.Together {
			l = append(l, k)
		}
	}
	return l
}

// bundlesIn are the kinds of several legs in the instructions, in order.
func bundlesIn(items []notation.Item) []stitch.Kind {
	var l []stitch.Kind
	for _, it := range items {
		switch it := it.(type) {
		case *notation.Stitches:
			if it.What.Kind.Legs > 1 {
				l = append(l, it.What.Kind)
			}
		case *notation.Group:
			l = append(l, bundlesIn(it.Items)...)
		case *notation.Repeat:
			l = append(l, bundlesIn(it.Items)...)
		}
	}
	return l
}
