package chart

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"whorl/patterns/stitch"
)

// mostKinds is how many kinds of stitches an alternative text names.
const mostKinds = 5

// alt is the chart in one sentence, to stand in its place: what it is of, how
// many rounds are worked which way, of how many stitches and of which.
func (w *work) alt() string {
	text := "Round chart"
	switch {
	case w.panel:
		text = "Chart, laid flat,"
	case w.rows:
		text = "Row chart"
	case w.window > 0:
		text = "Wedge chart"
	}
	if p := w.portion(); p != "" {
		text += " of " + p
	}
	text += w.of() + ": " + w.extent() + " " + w.way()
	if w.corners.sides > 0 {
		text += fmt.Sprintf(", with %d corners", w.corners.sides)
	}
	text += w.stitchesInWords()
	text += "; right side shown"
	if !w.flat && !w.rows {
		text += ", read " + w.direction(w.backwards())
	}
	return text + "."
}

// of names what is drawn: " of the Body, Estuary Hat, size Adult".
func (w *work) of() string {
	return Of(w.part.Name, w.o.Title, w.size)
}

// Of says what a picture is of, for its alternative text: " of the Body,
// Estuary Hat, size Adult". Any of the three may be "".
func Of(part, title, size string) string {
	text := ""
	part, _, _ = strings.Cut(part, "(") // how many are made
	part = strings.TrimSpace(part)
	if the, rest, ok := strings.Cut(part, " "); ok && strings.EqualFold(the, "the") {
		part = rest
	}
	switch {
	case part != "" && title != "":
		text = " of the " + part + ", " + title
	case part != "":
		text = " of the " + part
	case title != "":
		text = " of " + title
	}
	if size != "" {
		text += ", size " + size
	}
	return text
}

// drawn are the rounds that are drawn and have a number.
func (w *work) drawn() (l []*course) {
	for _, c := range w.courses[w.first : w.last+1] {
		if c.round.Number > 0 && !c.round.Carried {
			l = append(l, c)
		}
	}
	return l
}

// extent says which rounds are drawn: "17 rounds", "rounds 11 to 17 of 17".
func (w *work) extent() string {
	l := w.drawn()
	if len(l) == 0 {
		return "the beginning"
	}
	from, to := l[0].round.Number, l[len(l)-1].round.Number
	low, high := from, to
	for _, r := range w.part.Rounds {
		if r.Number > 0 && !r.Carried {
			low, high = min(low, r.Number), max(high, r.Number)
		}
	}
	switch {
	case from == to:
		return fmt.Sprintf("%s %d of %d", w.noun(), from, high)
	case from == low && to == high:
		return fmt.Sprintf("%d %ss", len(l), w.noun())
	}
	return fmt.Sprintf("%ss %d to %d of %d", w.noun(), from, to, high)
}

// way is the direction of work.
func (w *work) way() string {
	switch {
	case w.flat:
		return "worked from the bottom up"
	case w.inwards:
		return "worked from the edge inwards to the centre"
	}
	return "worked outwards"
}

// stitchesInWords says how many stitches the drawn rounds have, and of which
// kinds: ", from 12 to 96 half double crochet".
func (w *work) stitchesInWords() string {
	var counts []int
	of := map[string]int{}
	var kinds []string
	add := func(name string) {
		if of[name] == 0 {
			kinds = append(kinds, name)
		}
		of[name]++
	}
	for _, c := range w.drawn() {
		counts = append(counts, c.round.Count())
		eachMade(c.round, func(k stitch.Kind, in stitch.Into) {
			if k == stitch.Of(stitch.Chain) {
				add("chains")
			} else {
				add(k.LongNameInto(in, w.o.Terms))
			}
		})
	}
	if len(kinds) == 0 {
		return ""
	}
	terms := " (" + w.o.Terms.String() + " terms)"
	slices.SortStableFunc(kinds, func(a, b string) int { return of[b] - of[a] })
	if len(kinds) == 1 && kinds[0] != "chains" {
		return ", " + span(counts, kinds[0]) + terms
	}
	if more := len(kinds) - mostKinds; more > 1 {
		kinds = append(kinds[:mostKinds], strconv.Itoa(more)+" more")
	}
	text := ", "
	if slices.Max(counts) > 0 {
		text += span(counts, "stitches") + ", "
	}
	if n := len(kinds) - 1; n > 0 {
		kinds = []string{strings.Join(kinds[:n], ", ") + " and " + kinds[n]}
	}
	return text + "in " + kinds[0] + terms
}

// span says how the counts of the rounds run, in stitches of a name.
func span(counts []int, of string) string {
	first, last := counts[0], counts[len(counts)-1]
	low, high := slices.Min(counts), slices.Max(counts)
	rises, falls := slices.IsSorted(counts), slices.IsSortedFunc(counts, func(a, b int) int { return b - a })
	switch {
	case low == high && len(counts) > 1:
		return fmt.Sprintf("%d %s each", first, of)
	case low == high:
		return fmt.Sprintf("%d %s", first, of)
	case rises || falls:
		return fmt.Sprintf("from %d to %d %s", first, last, of)
	case first == last:
		return fmt.Sprintf("between %d and %d %s", low, high, of)
	}
	return fmt.Sprintf("beginning with %d %s and ending with %d", first, of, last)
}
