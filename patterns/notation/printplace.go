package notation

import (
	"strconv"
	"strings"

	"whorl/patterns/stitch"
)

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
		if t := &p.Extent.Target; p.Evenly && p.Extent.Sort == ToPlace && t.Sort == ChainSpace && t.Name == Corner {
			return "evenly across to next corner"
		}
		if p.Evenly {
			return "evenly " + core
		}
		return core // "around"
	case p.Target.Sort == RowEnds && p.Target.Name == OneEnd:
		return "in " + core
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
		return "in end of each of " + s.Num(p.Rows) + " " + s.rowsOf(p) + "rows"
	case p.Target.Sort == RowEnds && p.Target.Kind.Is():
		return "in end of each " + s.rowsOf(p) + "row"
	case p.Target.Sort == RowEnds:
		return "in each row end"
	case around, p.Target.Name == Band && p.Target.Sort == Ring, p.Over && (p.Into == stitch.FrontPost || p.Into == stitch.BackPost):
		return "around " + core
	case p.To:
		return "to " + core
	case p.Over:
		return "over " + core
	}
	return "in " + core
}

// rowsOf is "dc " before rows that are told by the stitches they are of, else "".
func (s Style) rowsOf(p *Place) string {
	if !p.Target.Kind.Is() {
		return ""
	}
	return s.kind(p.Target.Kind, Loop{}) + " "
}

// place is the place itself, without its preposition.
func (s Style) place(p *Place) string {
	var b strings.Builder
	if p.Both {
		b.WriteString("both loops of ")
	} else if p.Into == stitch.FrontLoop || p.Into == stitch.BackLoop {
		if p.Free {
			b.WriteString("free ")
		}
		b.WriteString(loopNames[p.Into] + " only of ")
	} else if p.Into == stitch.Underside {
		b.WriteString("underside of ")
	} else if n := loopNames[p.Into]; p.Into != stitch.Top && n != "" {
		b.WriteString(n + " of ")
	}
	b.WriteString(s.pick(p))
	switch {
	case p.Of != nil && p.Of.Target.Sort == StartChain:
		s.short = p.Nth == 1 || p.Pick == Last // "first ch of ch-6" across a slit
		b.WriteString(" of " + s.target(&p.Of.Target, false))
	case p.Of != nil && p.Pick != Same:
		b.WriteString(" of " + s.place(p.Of))
	}
	if p.Limb != "" {
		b.WriteString(" of " + p.Limb)
	}
	if p.OnTop {
		b.WriteString(" of last row")
	}
	if p.Figure != "" {
		b.WriteString(" of " + p.Figure)
	}
	if p.AfterSpace {
		b.WriteString(" that follows a ch sp")
	}
	if p.InSpace {
		b.WriteString(" worked into a ch sp")
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
		if p.Target.InAll() {
			text = "each of the " + strconv.Itoa(p.Target.Chains) + " ch sps"
		} else if p.N.Set() {
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
		if p.Bare && p.Target.ByNumber() {
			return "ch-" + strconv.Itoa(p.Target.Chains) // or the space of it
		}
		if p.Target.Sort == StartChain || p.Target.Sort == OfName && strings.HasPrefix(t, "beg ") {
			return "top of " + t
		}
		return "first " + t
	case Last:
		if p.Target.OutermostSide() != "" {
			return t // "sp before first V-st"
		}
		switch {
		case p.Every && many:
			return "each of last " + s.Num(p.N) + " " + t
		case p.N.Set() && many:
			return "last " + s.Num(p.N) + " " + t
		}
		return "last " + t
	case Nth:
		if n := p.N.For(0); p.Target.Sort == FromHook && p.N.Set() {
			var l []string
			for i := range n {
				l = append(l, ordinal(p.Nth+i))
			}
			return strings.Join(l[:n-1], ", ") + " and " + l[n-1] + " ch from hook"
		}
		if p.Target.Sort == FromHook {
			return ordinal(p.Nth) + " ch from hook"
		}
		return ordinal(p.Nth) + " " + t
	case Only:
		if p.Target.Name == Magic {
			return "magic ring"
		}
		if p.Target.Name == Band {
			return "the " + p.Target.Text
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
