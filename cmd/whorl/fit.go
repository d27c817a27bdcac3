package main

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"whorl/geometry"
	"whorl/patterns/fault"
)

// codeFit is the code of a size that comes out otherwise than was asked.
const codeFit = "fit"

// fitting holds a size against the head it is made for; false when there is
// nothing to hold.
func (j *job) fitting(i int) (geometry.Fitting, bool) {
	p := j.pattern
	if j.forms[i] == nil || i >= len(p.Head) {
		return geometry.Fitting{}, false
	}
	done, err := geometry.Finish(j.fabrics[i], j.forms[i])
	if err != nil {
		return geometry.Fitting{}, false
	}
	ease := 0.0
	if i < len(p.Ease) {
		ease = p.Ease[i].MM
	}
	return done.Against(p.Head[i].MM, ease)
}

// fit finds the sizes that come out otherwise than was asked.
func (j *job) fit() {
	p := j.pattern
	if len(p.Ease) == 0 || j.gauge.Assumed() || j.wrong() {
		return // nothing was asked, or nothing measured
	}
	for i, f := range j.fabrics {
		fit, ok := j.fitting(i)
		if !ok || !fit.Strays() {
			continue
		}
		more := "more"
		if fit.Off < 0 {
			more = "less"
		}
		size := "the piece"
		if f.Size != "" {
			size = "size " + f.Size
		}
		show := func(mm float64) string { return edgeLength(mm, p.Head[i].Unit) }
		bad := p.Fault(p.HeadPos, len("head"), codeFit, fmt.Sprintf("%s comes to %s round, %s %s than a head of %s with an ease of %s",
			size, show(fit.Head+fit.Asked+fit.Off), show(math.Abs(fit.Off)), more, show(fit.Head), show(fit.Asked)), j.wouldDo(i, fit))
		if bad.Size = f.Size; !fit.Misfits() {
			bad.Severity = fault.Warning // a slouch or a loose fit may be meant
		}
		j.faults = append(j.faults, bad)
	}
}

// wouldDo names the counts that would come near what was asked.
func (j *job) wouldDo(i int, fit geometry.Fitting) string {
	f := j.fabrics[i]
	best, width, multiple := 0, 0.0, 1
	for k, part := range f.Parts {
		n, w, m, ok := geometry.Body(part, j.forms[i].Parts[k].Rounds)
		if ok && float64(n)*w > float64(best)*width {
			best, width, multiple = n, w, m
		}
	}
	if best == 0 {
		return ""
	}
	s, err := geometry.Size(geometry.Ask{Head: fit.Head, Ease: fit.Asked, Width: width, Height: width, Multiple: multiple})
	if err != nil {
		return ""
	}
	if fit.Off < 0 && s.Above.Count <= best || fit.Off > 0 && s.Below.Count >= best {
		// The widest round is not what sets the size: a band picked up along its
		// rows, an edging. No count of it would mend that.
		return "Change the rows of the band that it is worked on, or the ease, if it is meant so."
	}
	counts := fmt.Sprint(s.Above.Count)
	if s.Below.Count > 0 && s.Below.Count != s.Above.Count {
		counts = fmt.Sprintf("%d or %d", s.Below.Count, s.Above.Count)
	}
	help := fmt.Sprintf("The widest round has %s. Nearest counts that would do: %s", stitches(best), counts)
	if multiple > 1 {
		help += fmt.Sprintf(" (a multiple of %d)", multiple)
	}
	return help + ". Or change the ease, if it is meant so."
}

// fitLine says the finished measurements of a size, and how they fit.
func (j *job) fitLine(i int) string {
	if j.forms[i] == nil {
		return ""
	}
	done, err := geometry.Finish(j.fabrics[i], j.forms[i])
	if err != nil || done.Widest <= 0 {
		return ""
	}
	show := j.shown(i)
	var b strings.Builder
	edge := "edge %s"
	if i < len(j.pattern.Head) {
		edge = "brim %s relaxed"
	}
	fmt.Fprintf(&b, "Finished: %s round", show(done.Widest))
	if show(done.Brim) != show(done.Widest) {
		fmt.Fprintf(&b, ", "+edge, show(done.Brim))
	}
	if done.Hole > 0 && done.Hole < done.Widest/2 { // or else it is a tube
		fmt.Fprintf(&b, ", %s left to draw closed", show(done.Hole))
	}
	fmt.Fprintf(&b, ".\n  Depth %s", show(done.Depth))
	if cuff := done.Strip(j.fabrics[i]); cuff > 0 {
		fmt.Fprintf(&b, ", %s with half of the brim turned up", show(done.TurnedUp(cuff/2)))
	}
	fit, ok := j.fitting(i)
	if !ok {
		return b.String() + "."
	}
	fmt.Fprintf(&b, "; by the rule of thumb %s.\n  Head %s: ease %s", show(fit.Rule), show(fit.Head), show(fit.Ease))
	if len(j.pattern.Ease) > 0 {
		fmt.Fprintf(&b, " (%s asked)", show(fit.Asked))
	}
	switch less := fit.Head - fit.Brim; {
	case fit.Brim <= 0, show(less) == show(-fit.Ease): // none, or that is said
	case less > 0:
		fmt.Fprintf(&b, "; the brim is %s smaller than the head", show(less))
	default:
		fmt.Fprintf(&b, "; the brim is %s larger than the head", show(-less))
	}
	return b.String() + "."
}

// pieceLine says the finished measurements of one piece of a size.
func (j *job) pieceLine(i, part int) string {
	if j.forms[i] == nil {
		return ""
	}
	done, err := geometry.Finish(j.fabrics[i], j.forms[i])
	if err != nil {
		return ""
	}
	show := j.shown(i)
	switch p := done.Pieces[part]; {
	case p.Rows && p.Length > 0:
		return fmt.Sprintf("Measures %s wide, %s in the direction of work.", show(p.Width), show(p.Length))
	case p.Rows || p.Widest <= 0 || len(done.Pieces) == 1:
		return "" // nothing, or what is said of the whole
	default:
		return fmt.Sprintf("Measures %s round, %s laid flat; %s deep along the fabric.", show(p.Widest), show(p.FlatWidth), show(p.Depth))
	}
}

// stitches is a number of stitches in words.
func stitches(n int) string {
	if n == 1 {
		return "1 stitch"
	}
	return fmt.Sprintf("%d stitches", n)
}

// shown shows lengths of a size in the unit that its head is given in.
func (j *job) shown(i int) func(mm float64) string {
	unit := "cm"
	if i < len(j.pattern.Head) {
		unit = j.pattern.Head[i].Unit
	}
	return func(mm float64) string { return edgeLength(mm, unit) }
}

// edgeLength is a length in a unit of the pattern: "51.5 cm", "20.25 in".
func edgeLength(mm float64, unit string) string {
	if edgeUnit(unit) == "in" {
		return decimal(mm/25.4, 2) + " in"
	}
	return decimal(mm/10, 1) + " cm"
}

// edgeUnit is the unit of the answers to a question in that unit.
func edgeUnit(unit string) string {
	if unit == "in" {
		return "in"
	}
	return "cm"
}

// decimal is v with so many decimals, and a minus sign rather than a hyphen.
func decimal(v float64, places int) string {
	t := strconv.FormatFloat(math.Abs(v), 'f', places, 64)
	if v < 0 && strings.Trim(t, "0.") != "" {
		return "−" + t
	}
	return t
}
