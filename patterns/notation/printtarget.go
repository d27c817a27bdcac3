package notation

import (
	"strconv"
	"strings"

	"whorl/patterns/stitch"
)

// target is the thing that is worked into.
func (s Style) target(t *Target, many bool) string {
	plural := func(one string) string {
		if many {
			return one + "s"
		}
		return one
	}
	if t.Seam != NoSeam {
		plain := *t
		plain.Seam = NoSeam
		switch words := s.target(&plain, many); {
		case t.Seam == BeforeSeam:
			return words + " before the seam"
		case t.Seam == AfterSeam:
			return words + " after the seam"
		case t.Sort == AnyStitch:
			return words + " beside the seam"
		default:
			return "joined " + words
		}
	}
	switch t.Sort {
	case SeamPlace:
		return plural("seam")
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
		if t.Lone {
			name = "lone " + name
		}
		if t.Name == Foot {
			name += " between points"
		}
		return name
	case OfName:
		if t.Name == "" {
			if t.Chains > 0 && !t.Kind.Is() {
				return "group of " + strconv.Itoa(t.Chains)
			}
			if t.Chains > 0 {
				if !t.Kind.Is() {
					return "group of " + strconv.Itoa(t.Chains)
				}
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
		case t.Name == Block:
			return plural("block")
		case t.Name == EdgeLoop:
			return plural("turning ch sp")
		case t.Name == Corner && t.Chains == 0:
			return plural("corner sp")
		case t.Chains == 0:
			return plural(spaceWord(t.Text))
		case t.AtCorner:
			return "corner " + plural(s.Space(t.Chains))
		}
		return plural(s.Space(t.Chains))
	case ChainStitch, FromHook:
		if t.Name == ChainEdge {
			return plural("foundation ch")
		}
		if t.Name == Tip {
			return "ch at the tip"
		}
		return plural("ch")
	case StartChain:
		if s.short && t.ByNumber() {
			return "ch-" + strconv.Itoa(t.Chains)
		}
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
		return plural("row end")
	case CornerStitch:
		if t.Name == Middle {
			if t.Kind.Is() {
				return s.middleWord() + " " + s.kind(t.Kind, t.Loop)
			}
			return s.middleWord() + " st"
		}
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
		s.short = true
		if s.falls && e.Remain() {
			return "until " + s.Num(e.N) + " " + s.target(&e.Target, !s.one(e.N)) + " remain"
		}
		if s.one(e.N) {
			return "to last " + s.target(&e.Target, false)
		}
		return "to last " + s.Num(e.N) + " " + s.target(&e.Target, true)
	case ToPlace:
		if e.N.Set() {
			which := "next "
			if e.Target.Name == Middle {
				which = ""
			}
			return "to last " + s.before(e.N) + which + s.target(&e.Target, false)
		}
		if e.Target.ByNumber() {
			return "to ch-" + strconv.Itoa(e.Target.Chains)
		}
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

// before is "2 sts before", "st before".
func (s Style) before(n Num) string {
	if s.one(n) {
		return "st before "
	}
	return s.Num(n) + " sts before "
}
