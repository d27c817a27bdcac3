package notation

import (
	"strconv"
	"strings"

	"whorl/patterns/stitch"
)

// gap is the place between two stitches, named by what stands on both sides.
func (s Style) gap(t *Target, many bool) string {
	sp := "sp between "
	if many {
		sp = "sps between "
	}
	if side := t.OutermostSide(); side != "" || t.GroupSide() != "" {
		return s.besideGroup(t, t.sideOfGroup())
	}
	switch {
	case t.Name == Here && t.Beside():
		return "sp before next st"
	case t.Name == Here:
		return sp + "last st and next st"
	case t.At == 1:
		return sp + "first and 2nd " + s.side(t)
	case t.At > 1:
		return sp + ordinal(t.At) + " and " + ordinal(t.At+1) + " " + s.side(t)
	case t.Name == Pair:
		return sp + "the 2 " + s.sides(t) + " of next pair"
	case t.Name == Groups && t.Chains > 0:
		return sp + strconv.Itoa(t.Chains) + "-" + s.side(t) + " groups"
	case t.Name == Groups:
		return sp + "groups"
	case t.Name != "":
		name := t.Name
		if own, ok := s.Names[name]; ok {
			name = own
		}
		return sp + Plural(name)
	}
	return sp + s.sides(t)
}

// Beside reports whether a gap is the one before the next stitch, "sp before next dc".
func (t *Target) Beside() bool {
	return t.Sort == Gap && strings.Contains(strings.ReplaceAll(strings.ToLower(t.Text), " the ", " "), "before next")
}

// GroupSide is "before" or "after" of a gap beside one group, "sp before next 3-dc group", "" for any other.
func (t *Target) GroupSide() string {
	if t.Sort != Gap || t.Name == "" || t.Name == Here || t.Name == Pair {
		return ""
	}
	side, _, _ := strings.Cut(t.sideOfGroup(), " ")
	return side
}

// sideOfGroup is that with the word that says of which.
func (t *Target) sideOfGroup() string {
	text := " " + strings.ReplaceAll(strings.ReplaceAll(strings.ToLower(t.Text), " the ", " "), "following ", "next ")
	for _, side := range []string{"before first", "after last", "before next", "after next", "after this"} {
		if strings.Contains(text, side) {
			return side
		}
	}
	return ""
}

// OutermostSide is "before first" or "after last" of a gap beside the outermost of several groups,
// "" for any other.
func (t *Target) OutermostSide() string {
	if side := t.sideOfGroup(); t.Sort == Gap && (side == "before first" || side == "after last") {
		return side
	}
	return ""
}

// besideGroup is such a gap in words.
func (s Style) besideGroup(t *Target, side string) string {
	name := t.Name
	if name == Groups && t.Chains > 0 {
		name = strconv.Itoa(t.Chains) + "-" + s.side(t) + " group"
	} else if name == Groups {
		name = "group"
	} else if own, ok := s.Names[name]; ok {
		name = own
	}
	return "sp " + side + " " + name
}

// side is the stitch on either side of a gap, sides are both.
func (s Style) side(t *Target) string {
	switch {
	case t.Kind == stitch.Kind{}:
		return "st"
	case t.Kind.Base == stitch.None:
		return "cluster"
	}
	return s.kind(t.Kind, t.Loop)
}

func (s Style) sides(t *Target) string {
	name := s.side(t)
	if s.Long || name == "st" || name == "cluster" {
		return Plural(name)
	}
	return name
}

// middleWord is how the terms spell centre.
func (s Style) middleWord() string {
	if s.Terms == stitch.UK {
		return "centre"
	}
	return "center"
}
