package notation

import (
	"strconv"
	"strings"

	"whorl/patterns/stitch"
)

// loopNames are the loops and posts in words.
var loopNames = map[stitch.Into]string{
	stitch.FrontLoop: "front loop", stitch.BackLoop: "back loop", stitch.ThirdLoop: "3rd loop", stitch.BackBump: "back bump",
	stitch.FrontPost: "front post", stitch.BackPost: "back post", stitch.Top: "both loop",
}

// kind is the name of a stitch, with the loop or post it is worked into.
func (s Style) kind(k stitch.Kind, l Loop) string {
	in := stitch.Top
	if l.Set {
		in = l.Into
	}
	crossed := k.Manner&stitch.Crossed != 0
	k.Manner &^= stitch.Crossed
	name := k.NameInto(in, s.Terms)
	if s.Long {
		name = k.LongName(s.Terms)
		switch in {
		case stitch.FrontPost, stitch.BackPost:
			name = loopNames[in] + " " + name
		case stitch.FrontLoop, stitch.BackLoop:
			name = loopNames[in] + " only " + name
		}
	}
	if k.Shape == stitch.Together && in >= stitch.FrontPost && in <= stitch.BackPost && !s.Long {
		name = k.NameInto(in, s.Terms)
	}
	if crossed {
		name = "crossed " + name
	}
	return name
}

// several is the name of several stitches: written out it has a plural, shortened
// it is its own.
func (s Style) several(name string, k stitch.Kind) string {
	if s.Long && k.Shape != stitch.Together {
		return Plural(name)
	}
	return name
}

// what is the name of what is made.
func (s Style) what(w *What) string {
	name := ""
	switch {
	case w.Name != "":
		name = w.Name
		if own, ok := s.Names[name]; ok {
			name = own
		}
		if w.Beg {
			name = "beg " + name
		}
		if w.Loop.Set {
			name = s.kind(stitch.Kind{}, w.Loop) + name
		}
		return name
	case w.Shaping > 0 && w.Kind.Is():
		name = s.kind(w.Kind, Loop{}) + " inc"
	case w.Shaping > 0:
		name = "inc"
	case w.Shaping < 0 && w.Kind.Manner&stitch.Invisible != 0:
		name = "inv dec"
	case w.Shaping < 0:
		name = "dec"
	default:
		return s.kind(w.Kind, w.Loop)
	}
	if w.Loop.Set {
		name = map[stitch.Into]string{stitch.FrontLoop: "FLO ", stitch.BackLoop: "BLO "}[w.Loop.Into] + name
	}
	return name
}

func (s Style) stitches(st *Stitches) string {
	if s.none(st.N) || s.none(st.Times) {
		return ""
	}
	if text := s.asItComes(st); text != "" {
		return text
	}
	what, places := st.What, st.Places
	if s.Long && what.Name == "" && what.Loop.Set && (what.Loop.Into == stitch.BackLoop || what.Loop.Into == stitch.FrontLoop) && len(places) > 0 {
		// "single crochet in back loop only of each stitch"
		places = append([]Place(nil), places...)
		for i := range places {
			places[i].Into = what.Loop.Into
		}
		what.Loop = Loop{}
	}
	if len(places) == 1 && places[0].Target.Sort == RowEnds && !places[0].Every && !places[0].N.Set() && st.N.Set() && st.N.For(max(s.Size, 0)) > 3 {
		// so many in all, not in each row end
		spread := places[0]
		spread.Evenly = true
		places = []Place{spread}
	}
	name := s.what(&what)
	if st.N.Set() && !s.one(st.N) {
		if what.Name == "" && what.Shaping == 0 {
			name = s.several(name, what.Kind)
		}
		name = s.Num(st.N) + " " + name
	}
	text := name
	if len(places) > 0 {
		around := s.Posts[what.Name] && what.Name != "" || what.Loop.Set && (what.Loop.Into == stitch.FrontPost || what.Loop.Into == stitch.BackPost) && what.Kind.Shape == stitch.Plain
		text += " " + s.places(places, around)
	}
	if st.Times.Set() {
		text += " " + s.times(st.Times)
	}
	for _, but := range st.But {
		text += ", working " + s.item(but)
	}
	return text
}

// asItComes is "FPdc around each FPdc, dc in each dc around": what is made
// depends on what comes. It is "" for other stitches.
func (s Style) asItComes(st *Stitches) string {
	if len(st.But) == 0 || !eachKind(st) {
		return ""
	}
	first := *st
	first.But = nil
	all := []*Stitches{&first}
	for _, but := range st.But {
		o, ok := but.(*Stitches)
		if !ok || !eachKind(o) {
			return ""
		}
		all = append(all, o)
	}
	extent := st.Places[0].Extent
	parts := make([]string, len(all))
	for i, o := range all {
		each := *o
		each.Places = append([]Place(nil), o.Places...)
		if each.Places[0].Extent = (Extent{}); i == len(all)-1 {
			each.Places[0].Extent = extent
		}
		parts[i] = s.item(&each)
	}
	return strings.Join(parts, ", ")
}

// places are the places with their prepositions.
func (s Style) places(l []Place, around bool) string {
	parts := make([]string, len(l))
	for i := range l {
		parts[i] = s.placed(&l[i], around)
	}
	return strings.Join(parts, " and ")
}

func (s Style) placed(p *Place, around bool) string {
	core := s.place(p)
	switch {
	case p.Pick == Each && p.Extent.Sort != NoExtent && p.Target.Sort == AnyStitch && p.Target.Text == "" && p.Into == stitch.Top:
		if p.Evenly {
			return "evenly " + core
		}
		return core // "around"
	case p.Target.Sort == RowEnds && p.Target.Name != "":
		if p.Evenly {
			return "evenly along " + s.edge(p.Target.Name)
		}
		return "along " + s.edge(p.Target.Name)
	case p.Evenly && p.Target.Sort == RowEnds:
		return "evenly around row ends"
	case p.Target.Sort == RowEnds && p.N.Set():
		if s.one(p.N) {
			return "for every row"
		}
		return "for every " + s.Num(p.N) + " rows"
	case p.Target.Sort == RowEnds && p.Rows.Set():
		return "in end of each of " + s.Num(p.Rows) + " rows"
	case p.Target.Sort == RowEnds:
		return "in each row end"
	case around, p.Over && (p.Into == stitch.FrontPost || p.Into == stitch.BackPost):
		return "around " + core
	case p.To:
		return "to " + core
	case p.Over:
		return "over " + core
	}
	return "in " + core
}

// place is the place itself, without its preposition.
func (s Style) place(p *Place) string {
	var b strings.Builder
	if p.Both {
		b.WriteString("both loops of ")
	} else if p.Into == stitch.FrontLoop || p.Into == stitch.BackLoop {
		b.WriteString(loopNames[p.Into] + " only of ")
	} else if p.Into == stitch.Underside {
		b.WriteString("underside of ")
	} else if n := loopNames[p.Into]; p.Into != stitch.Top && n != "" {
		b.WriteString(n + " of ")
	}
	b.WriteString(s.pick(p))
	switch {
	case p.Of != nil && p.Of.Target.Sort == StartChain:
		b.WriteString(" of " + s.target(&p.Of.Target, false))
	case p.Of != nil && p.Pick != Same:
		b.WriteString(" of " + s.place(p.Of))
	}
	if p.OnTop {
		b.WriteString(" of last row")
	}
	if p.AfterSpace {
		b.WriteString(" that follows a ch sp")
	}
	switch {
	case p.JustBelow:
		b.WriteString(" below")
	case p.Below == 1:
		b.WriteString(" 1 " + strings.ToLower(s.Word()) + " below")
	case p.Below > 1:
		b.WriteString(" " + strconv.Itoa(p.Below) + " " + strings.ToLower(s.Word()) + "s below")
	case p.Below < 0:
		b.WriteString(" of " + s.Word() + " " + strconv.Itoa(-p.Below))
	}
	if p.Extent.Sort != NoExtent && !(p.Target.Sort == AnyStitch && p.Target.Text == "") {
		b.WriteString(" " + s.extent(&p.Extent))
	} else if p.Extent.Sort != NoExtent && p.Into != stitch.Top {
		b.WriteString(" " + s.extent(&p.Extent))
	}
	return b.String()
}

// pick is which of the targets is meant.
func (s Style) pick(p *Place) string {
	many := p.N.Set() && !s.one(p.N)
	t := s.target(&p.Target, many)
	switch p.Pick {
	case Each:
		if p.Target.Sort == AnyStitch && p.Target.Text == "" && p.Extent.Sort != NoExtent {
			if p.Into != stitch.Top {
				return "each st"
			}
			return s.extent(&p.Extent)
		}
		text := "each " + t
		if p.N.Set() {
			text = "each of " + s.Num(p.N) + " " + t
		}
		for i := range p.Also {
			text += " and " + s.target(&p.Also[i], false)
		}
		return text
	case Same:
		if p.Target.Sort == JoinPlace {
			return "same st as join"
		}
		return "same " + t
	case First:
		if p.Target.Sort == StartChain || p.Target.Sort == OfName && strings.HasPrefix(t, "beg ") {
			return "top of " + t
		}
		return "first " + t
	case Last:
		switch {
		case p.Every && many:
			return "each of last " + s.Num(p.N) + " " + t
		case p.N.Set() && many:
			return "last " + s.Num(p.N) + " " + t
		}
		return "last " + t
	case Nth:
		if p.Target.Sort == FromHook {
			return ordinal(p.Nth) + " ch from hook"
		}
		return ordinal(p.Nth) + " " + t
	case Only:
		if p.Target.Name == Magic {
			return "magic ring"
		}
		return "ring"
	case Centre:
		if s.Terms == stitch.UK {
			return "centre " + t
		}
		return "center " + t
	case Skipped:
		switch {
		case many:
			return "each of " + s.Num(p.N) + " " + s.skipped() + " " + t
		case p.Every:
			return "each " + s.skipped() + " " + t
		case p.Nth > 1:
			return ordinal(p.Nth) + " " + s.skipped() + " " + t
		case p.Nth == 1:
			return "first " + s.skipped() + " " + t
		}
		return s.skipped() + " " + t
	case Any:
		return "any " + t
	case Made:
		return "last " + t + " made"
	}
	switch {
	case p.Target.Sort == Gap && (p.Target.Name == Here || p.Target.At > 0):
		return t
	case p.Target.Sort == Gap && p.Target.Name == "" && !p.N.Set() && p.Bare:
		return "sp between 2 " + s.sides(&p.Target)
	case p.Target.Sort == Gap && p.Target.Name == "" && !p.N.Set():
		return "sp between next 2 " + s.sides(&p.Target)
	case p.Bare && !p.N.Set() || p.Target.Name == Middle:
		return t
	case p.Every && p.N.Set():
		for i := range p.Also {
			t += " and " + s.target(&p.Also[i], true)
		}
		return "each of next " + s.Num(p.N) + " " + t
	case p.Nth == 1 && p.N.Set():
		return "first " + s.Num(p.N) + " " + t
	case many:
		for i := range p.Also {
			t += " and " + s.target(&p.Also[i], true)
		}
		return "next " + s.Num(p.N) + " " + t
	}
	return "next " + t
}

// target is the thing that is worked into.
func (s Style) target(t *Target, many bool) string {
	plural := func(one string) string {
		if many {
			return one + "s"
		}
		return one
	}
	switch t.Sort {
	case AnyStitch:
		if strings.Contains(" "+strings.ToLower(t.Text)+" ", " or ") {
			return plural("st") + " or sp"
		}
	case OfKind:
		name := s.kind(t.Kind, t.Loop)
		if t.Name == Post {
			if name = "post st"; t.Loop.Set {
				name = loopNames[t.Loop.Into] + " st"
			}
			if many {
				name += "s"
			}
			return name
		}
		if many {
			name = s.several(name, t.Kind)
		}
		return name
	case OfName:
		if t.Name == "" {
			if t.Chains > 0 {
				return strconv.Itoa(t.Chains) + "-" + t.Kind.Name(s.Terms) + " group"
			}
			return "group"
		}
		name := t.Name
		if own, ok := s.Names[name]; ok {
			name = own
		}
		if many {
			return Plural(name)
		}
		return name
	case OfShape:
		switch t.Kind.Shape {
		case stitch.Puff:
			return plural("puff st")
		case stitch.Popcorn:
			return plural("popcorn")
		case stitch.Bobble:
			return plural("bobble")
		case stitch.Picot:
			return plural("picot")
		}
		return plural("cluster")
	case ChainSpace:
		switch {
		case t.Name == Middle:
			plain := *t
			plain.Name = ""
			return s.middleWord() + " " + s.target(&plain, many)
		case t.Name == Corner && t.Chains == 0:
			return plural("corner sp")
		case t.Chains == 0:
			return plural(spaceWord(t.Text))
		}
		return plural(s.Space(t.Chains))
	case ChainStitch, FromHook:
		if t.Name == ChainEdge {
			return plural("foundation ch")
		}
		return plural("ch")
	case StartChain:
		name := "beg ch"
		if s.Row {
			name = "turning ch"
		}
		if t.Chains == 0 {
			return name
		}
		return name + "-" + strconv.Itoa(t.Chains)
	case Ring:
		return "ring"
	case RowEnds:
		return "row end"
	case CornerStitch:
		if t.Kind.Is() {
			return "corner " + s.kind(t.Kind, t.Loop)
		}
		return plural("corner st")
	case Gap:
		return s.gap(t, many)
	}
	return plural("st")
}

// extent is "around", "across", "to last 2 sts".
func (s Style) extent(e *Extent) string {
	switch e.Sort {
	case ToLast:
		if s.one(e.N) {
			return "to last " + s.target(&e.Target, false)
		}
		return "to last " + s.Num(e.N) + " " + s.target(&e.Target, true)
	case ToPlace:
		if e.Target.Sort == StartChain || e.Target.Name == Middle {
			return "to " + s.target(&e.Target, false)
		}
		return "to next " + s.target(&e.Target, false)
	case ToMarker:
		return "to marker"
	}
	if e.Target.Sort == RowEnds {
		return "along " + s.edge(e.Target.Name)
	}
	if s.Row {
		return "across"
	}
	return "around"
}

// edge is what an edge of a flat piece is called.
func (s Style) edge(name string) string {
	if name == ChainEdge {
		return "underside of foundation ch"
	}
	return "top edge"
}

// Space is a space of so many chains: ch-2 sp.
func (s Style) Space(chains int) string { return "ch-" + strconv.Itoa(chains) + " sp" }

// spaceWord is what a space without a number of chains is called: a "loop" may
// be the ring, and "same sp" needs no more.
func spaceWord(text string) string {
	switch w := strings.TrimSuffix(strings.ToLower(text), "s"); w {
	case "loop", "sp":
		return w
	case "lp":
		return "loop"
	case "space":
		return "sp"
	}
	return "ch sp"
}

// Plural is the plural of a name: shells, V-sts, bushes.
func Plural(name string) string {
	if strings.HasSuffix(name, "ch") || strings.HasSuffix(name, "sh") || strings.HasSuffix(name, "s") {
		return name + "es"
	}
	if stem, ok := strings.CutSuffix(name, "y"); ok {
		return stem + "ies"
	}
	return name + "s"
}

func ordinal(n int) string {
	suffix := "th"
	switch {
	case n%100 >= 11 && n%100 <= 13:
	case n%10 == 1:
		suffix = "st"
	case n%10 == 2:
		suffix = "nd"
	case n%10 == 3:
		suffix = "rd"
	}
	return strconv.Itoa(n) + suffix
}

// skipped is the word for places passed over: "missed" in UK terms.
func (s Style) skipped() string {
	if s.Terms == stitch.UK {
		return "missed"
	}
	return "skipped"
}
