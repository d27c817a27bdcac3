package chart

import (
	"fmt"
	"strconv"
	"strings"
	"unicode"

	"whorl/patterns/fabric"
	"whorl/patterns/stitch"
)

// label is the round's name, as the designer wrote it.
func (c *course) label() string {
	if c.round.Label != "" {
		return c.round.Label
	}
	return "Rnd " + strconv.Itoa(c.round.Number)
}

// title is what stitch i is and what it is worked into, in words. A plain stitch
// in the next stitch goes without saying.
func (d *roundArtist) title(i int) string {
	s := &d.c.round.Stitches[i]
	in := stitch.Top
	if len(s.On) > 0 {
		in = s.On[0].Into
	}
	t := s.Kind.NameInto(in, d.o.Terms)
	if own := d.o.own(s); own != nil {
		t = own.Name
	}
	if s.Counts {
		t = "stitch " + strconv.Itoa(d.counted) + ": " + t
	}
	switch s.Role {
	case fabric.FirstHalf:
		t += ", completed at the join"
	case fabric.LastHalf:
		t += ", completes the first stitch"
	}
	if where := d.where(i); where != "" {
		t += " " + where
	}
	return t
}

// where says in words what stitch i is worked into; "" for a chain, and for the
// next stitch.
func (d *roundArtist) where(i int) string {
	on := d.c.round.Stitches[i].On
	switch {
	case len(on) == 0:
		return ""
	case len(on) > 1:
		return fmt.Sprintf("over the next %d %s", len(on), places(on))
	}
	same := false
	for j := i - 1; j >= 0; j-- {
		if prev := d.c.round.Stitches[j].On; len(prev) > 0 {
			same = d.key(prev[len(prev)-1]) == d.key(on[0])
			break
		}
	}
	which := "next"
	if same {
		which = "same"
	}
	switch p := on[0]; p.Into {
	case stitch.Ring:
		return "in ring"
	case stitch.RowEnd:
		return "in " + which + " row end"
	case stitch.Between:
		return "between two stitches"
	case stitch.FrontPost, stitch.BackPost:
		return "around " + which + " stitch"
	case stitch.Space:
		return "in " + which + " " + d.spaceName(p)
	}
	if same {
		return "in same stitch"
	}
	return ""
}

// places is a plural for what several legs stand on.
func places(on []fabric.Place) string {
	for _, p := range on {
		if p.Into != on[0].Into {
			return "places"
		}
	}
	switch on[0].Into {
	case stitch.Space:
		return "spaces"
	case stitch.RowEnd:
		return "row ends"
	}
	return "stitches"
}

// spaceName is the name of a chain space: "ch-2 sp".
func (w *work) spaceName(p fabric.Place) string {
	n := p.Last.Stitch - p.At.Stitch + 1
	if c := w.at(p.At); n <= 0 && c != nil {
		n += len(c.round.Stitches)
	}
	return "ch-" + strconv.Itoa(n) + " sp"
}

// subtitle says what the chart shows, and how it is read.
func (w *work) subtitle() string {
	return strings.Join(append(w.caption(), w.reading()...), " · ")
}

// caption says what the chart shows.
func (w *work) caption() (s []string) {
	for _, t := range []string{w.part.Name, w.sized(), w.span() + w.rest(), w.portion()} {
		if t != "" {
			s = append(s, t)
		}
	}
	return s
}

// sized names the size, "" where there is one only.
func (w *work) sized() string {
	if w.size == "" {
		return ""
	}
	return "size " + w.size
}

// rest says how many rows there are where the rest goes on as those that are drawn; "" where
// all are drawn or rows were named.
func (w *work) rest() string {
	if w.goesOn == 0 {
		return ""
	}
	return fmt.Sprintf(" of %d", w.goesOn)
}

// reading says which side the chart shows, and how it is read.
func (w *work) reading() (s []string) {
	add := func(t string) { s = append(s, t) }
	if w.panel && !w.turned() {
		add("right side shown, read " + w.side(w.courses[w.lo]))
		return s
	}
	if w.flat || w.rows {
		add("right side shown")
		for _, c := range w.courses[w.lo : w.last+1] {
			if c.round.Number > 0 && w.leftwards(c.reversed) != w.o.LeftHanded {
				add("right-side " + w.noun() + "s read " + w.side(c))
				break
			}
		}
		for _, c := range w.courses[w.lo : w.last+1] {
			if c.round.Number > 0 && w.leftwards(c.reversed) == w.o.LeftHanded {
				add("wrong-side " + w.noun() + "s " + w.side(c))
				break
			}
		}
		return s
	}
	back := w.backwards()
	read := "right side shown, read " + w.direction(back)
	for _, c := range w.drawn() {
		if c.reversed != back {
			return append(s, read+", turned rounds "+w.direction(!back))
		}
	}
	return append(s, read)
}

// capital is a sentence with its first letter large.
func capital(s string) string {
	r := []rune(s)
	if len(r) > 0 {
		r[0] = unicode.ToUpper(r[0])
	}
	return string(r)
}

// span names the rounds that are drawn.
func (w *work) span() string {
	from := w.first
	for from < w.last && (w.courses[from].hub || w.courses[from].round.Number == 0) {
		from++
	}
	a, b := w.courses[from].round.Number, w.courses[w.last].round.Number
	what := w.noun()
	if a == b {
		return what + " " + strconv.Itoa(a)
	}
	return fmt.Sprintf("%ss %d–%d", what, a, b)
}

// noun is what the chart's courses are called.
func (w *work) noun() string {
	if w.rows {
		return "row"
	}
	return "round"
}

// side is the side of the page that a row runs to, or its way about a chain.
func (w *work) side(c *course) string {
	switch {
	case w.oval != nil && w.rows:
		return w.direction(!w.leftwards(c.reversed) != w.o.LeftHanded)
	case w.leftwards(c.reversed):
		return "to the left"
	}
	return "to the right"
}

// reads says which side a row is and which way it is read.
func (w *work) reads(c *course) string {
	side := ", wrong side"
	if w.leftwards(c.reversed) != w.o.LeftHanded {
		side = ", right side"
	}
	return side + ", read " + w.side(c)
}

// direction is which way the rounds run, or those that are turned.
func (w *work) direction(back bool) string {
	switch {
	case w.o.LeftHanded != back:
		return "clockwise"
	case w.o.Terms == stitch.UK:
		return "anticlockwise"
	}
	return "counterclockwise"
}

// backwards reports whether the first drawn round runs the other way.
func (w *work) backwards() bool {
	l := w.drawn()
	return len(l) > 0 && l[0].reversed
}

// turned reports whether some drawn rounds run the other way.
func (w *work) turned() bool {
	for _, c := range w.drawn() {
		if c.reversed {
			return true
		}
	}
	return false
}

// name is the picture's title for those who cannot see it.
func (w *work) name() string {
	t := "Crochet chart"
	if w.o.Title != "" {
		t = w.o.Title + ": chart"
	}
	t += " of " + w.part.Name + ", " + w.span()
	if p := w.portion(); p != "" {
		t += ", " + p
	}
	return t
}

// describe tells the chart in words: in a sentence, then round by round.
func (w *work) describe() string {
	var b strings.Builder
	b.WriteString(w.alt())
	if w.portion() != "" {
		b.WriteString(" The whole rounds have:")
	}
	for k := w.lo; k <= w.last; {
		text := w.tally(w.courses[k])
		end := k
		for end < w.last && w.tally(w.courses[end+1]) == text {
			end++
		}
		label := w.courses[k].label()
		if end > k {
			label += " to " + w.courses[end].label()
		}
		fmt.Fprintf(&b, " %s: %s.", label, text)
		k = end + 1
	}
	return b.String()
}

// tally is the stitches of a round by kind, in the order of their first
// appearance.
func (w *work) tally(c *course) string {
	var order []string
	count := map[string]int{}
	add := func(name string) {
		if count[name] == 0 {
			order = append(order, name)
		}
		count[name]++
	}
	eachMade(c.round, func(k stitch.Kind, in stitch.Into) { add(k.NameInto(in, w.o.Terms)) })
	for i, name := range order {
		order[i] = strconv.Itoa(count[name]) + " " + name
	}
	if len(order) == 0 {
		return "no stitches"
	}
	return strings.Join(order, ", ")
}

// eachMade goes through what a round is made of, in order: the stitches that count,
// with the loop or post they go into as a chart shows it, and the chains.
func eachMade(r *fabric.Round, made func(k stitch.Kind, in stitch.Into)) {
	for i := range r.Stitches {
		s := &r.Stitches[i]
		switch {
		case s.Counts:
			in := stitch.Top
			if len(s.On) > 0 && s.Role != fabric.Start {
				in = shown(s.On[0].Into, r)
			}
			made(s.Counted(), in)
		case s.IsChain():
			made(s.Kind, stitch.Top)
		}
	}
}
