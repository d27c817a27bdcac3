package notation

import (
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
	if s.none(st.N) || s.none(st.Times) || len(st.Places) == 1 && s.none(st.Places[0].N) {
		return ""
	}
	if text := s.asItComes(st); text != "" {
		return text
	}
	what, places := st.What, st.Places
	s.falls = what.Kind.Shape == stitch.Together || what.Shaping < 0
	if s.Long && what.Name == "" && what.Loop.Set && loopNames[what.Loop.Into] != "" && what.Loop.Into != stitch.Top && what.Loop.Into != stitch.FrontPost && what.Loop.Into != stitch.BackPost && len(places) > 0 {
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
		n := s.Num(st.N)
		if strings.HasPrefix(n, "-") && len(places) == 0 && what.Kind.Shape == stitch.Plain && what.Shaping == 0 && what.Name == "" && !st.Times.Set() && len(st.But) == 0 {
			return s.what(&what) + " in next " + n + " sts" // "- (4, 2) sc" would be a count behind a dash
		}
		name = n + " " + name
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
