package shaping

import (
	"fmt"
	"math"
	"strings"

	"whorl/geometry"
	"whorl/patterns/fabric"
)

// Shape is the shape of a part in one line, as "Flat to Rnd 9, then a tube to
// Rnd 22."; "" for a part worked in rows.
func Shape(part *fabric.Part, form *geometry.PartForm) string {
	if part == nil || form == nil || len(form.Rounds) != len(part.Rounds) {
		return ""
	}
	var l []string
	for _, p := range geometry.Phases(part, form.Rounds) {
		word := phaseWords[p.Trait]
		if p.Trait == geometry.Flat && !flatThrough(form.Rounds[p.From:p.To+1]) {
			word = "nearly flat"
		}
		l = append(l, word+" to "+part.Rounds[p.To].Label)
	}
	if len(l) == 0 {
		return ""
	}
	s := strings.Join(l, ", then ") + "."
	return strings.ToUpper(s[:1]) + s[1:]
}

// flatThrough reports whether rounds called flat are so to the eye: the profile
// of one that grows by 3 % too little already stands up by a quarter of its
// radius.
func flatThrough(rounds []geometry.RoundForm) bool {
	sum := 0.0
	for i := range rounds {
		sum += math.Sin(rounds[i].Angle)
	}
	return sum >= 0.97*float64(len(rounds))
}

var phaseWords = map[geometry.Trait]string{
	geometry.Flat: "flat", geometry.Domed: "domed", geometry.Tube: "a tube", geometry.Closing: "closing as a dome",
	geometry.ClosingFlat: "closing flat", geometry.Ruffled: "ruffled", geometry.Gathered: "gathered",
}

// Codes are short names of the traits, for machines.
var Codes = map[geometry.Trait]string{
	geometry.Flat: "flat", geometry.Domed: "dome", geometry.Tube: "tube", geometry.Closing: "closing-dome",
	geometry.ClosingFlat: "closing-flat", geometry.Ruffled: "ruffle", geometry.Gathered: "gather", geometry.Stretched: "stretch",
}

// Sentence says a finding, with what would change it.
func Sentence(part *fabric.Part, f geometry.Finding) string {
	rounds, one := span(part, f.From, f.To), f.From == f.To
	verb := func(single, several string) string {
		if one {
			return single
		}
		return several
	}
	percent := math.Round(100 * f.Strain)
	switch f.Trait {
	case geometry.Ruffled:
		if f.Alike {
			return fmt.Sprintf("%s %s (slack %.0f %%): %s stitches are wider than those below by as much as %s, where %d lie flat.",
				rounds, verb("ruffles", "ruffle"), percent, verb("its", "their"), changes(f, "increase", one), f.Even)
		}
		s := fmt.Sprintf("%s %s: %s where %d lie flat (slack %.0f %%).", rounds, verb("ruffles", "ruffle"),
			changes(f, "increase", one), f.Even, percent)
		if f.Last > f.To {
			s += fmt.Sprintf(" The fullness reaches %s.", part.Rounds[f.Last].Label)
		}
		return s + fmt.Sprintf(" With %d %s %s would lie flat.", f.Even, aRound("increases", one), verb("it", "they"))
	case geometry.Gathered:
		if f.Alike {
			return fmt.Sprintf("%s %s (slack %.0f %%): %s stitches are narrower than those below by as much as %s, where %d close flat.",
				rounds, verb("gathers", "gather"), percent, verb("its", "their"), changes(f, "decrease", one), f.Even)
		}
		return fmt.Sprintf("%s %s faster than %s stitches are tall: the fabric gathers there (slack %.0f %%). "+
			"%s where %d close flat; with fewer than %d %s the crown keeps its dome.",
			rounds, verb("closes", "close"), verb("its", "their"), percent,
			capital(changes(f, "decrease", one)), f.Even, f.Even, aRound("decreases", one))
	case geometry.Stretched:
		return fmt.Sprintf("%s stretched by %.0f %%: %s%d stitches would fit.", rounds+verb(" is", " are"), percent,
			verb("", "at its most, where "), f.Fits)
	case geometry.Domed:
		return fmt.Sprintf("%s dome: %s where %d lie flat.", rounds, onAverage(f, "increase"), f.Even)
	case geometry.Closing:
		return fmt.Sprintf("%s close as a dome: %s where %d close flat.", rounds, onAverage(f, "decrease"), f.Even)
	}
	return fmt.Sprintf("%s: %s.", rounds, phaseWords[f.Trait])
}

// changes is "8 increases a round" or "9 to 18 decreases a round".
func changes(f geometry.Finding, what string, one bool) string {
	n := fmt.Sprint(f.Most)
	if f.Least < f.Most {
		n = fmt.Sprintf("%d to %d", f.Least, f.Most)
	}
	if f.Most != 1 {
		what += "s"
	}
	return n + " " + aRound(what, one)
}

// onAverage is "4 increases a round", or "3.5 increases a round on average"
// when the rounds are not alike.
func onAverage(f geometry.Finding, what string) string {
	if f.Least == f.Most && math.Abs(f.Mean-float64(f.Most)) < 0.05 {
		return changes(f, what, false)
	}
	n := strings.TrimSuffix(fmt.Sprintf("%.1f", f.Mean), ".0")
	return n + " " + what + "s a round on average"
}

func aRound(what string, one bool) string {
	if one {
		return what
	}
	return what + " a round"
}

// span is "Rnd 5" or "Rnds 10–12".
func span(part *fabric.Part, from, to int) string {
	a, b := part.Rounds[from].Label, part.Rounds[to].Label
	if a == b {
		return a
	}
	name, number, ok := strings.Cut(a, " ")
	name2, number2, ok2 := strings.Cut(b, " ")
	if !ok || !ok2 || name != name2 || strings.Contains(number, " ") {
		return a + " to " + b
	}
	return name + "s " + number + "–" + number2
}

func capital(s string) string {
	if s == "" {
		return s
	}
	return strings.ToUpper(s[:1]) + s[1:]
}

// Findings are the findings of a part in words; none when there is nothing to
// say, or when the part has not been measured.
func Findings(part *fabric.Part, form *geometry.PartForm) []string {
	if part == nil || form == nil || len(form.Rounds) != len(part.Rounds) {
		return nil
	}
	var l []string
	for _, f := range geometry.Findings(part, form.Rounds) {
		l = append(l, Sentence(part, f))
	}
	return l
}
