package main

import (
	"fmt"
	"math"
	"strings"

	"whorl/geometry"
	"whorl/patterns"
	"whorl/patterns/fabric"
	"whorl/patterns/fault"
	"whorl/patterns/stitch"
	"whorl/patterns/working"
)

// agree is how far a piece that was measured may differ from what it comes to by
// the stitches that were counted, as a share, before it is warned of.
const agree = 0.10

const gaugeForms = "Write what was counted or measured, as 16 hdc and 11 rounds = 10 cm, or Rnds 1-6 = 11 cm across."

const gaugeNouns = "Name a stitch, as in 16 hdc = 10 cm, or a group or the repeat of the pattern, as in 6 fan repeats and 8 rounds = 10 cm."

// note warns of a line of gauge.
func (j *job) note(s *working.Swatch, message, help string) {
	f := j.pattern.Fault(s.Pos, s.Length, "gauge", message, help)
	f.Severity = fault.Warning
	j.notes = append(j.notes, f)
}

// refuse makes a line of gauge a fault.
func (j *job) refuse(s *working.Swatch, message, help string) {
	j.faults = append(j.faults, j.pattern.Fault(s.Pos, 1, "gauge", message, help))
}

// measureBy makes the gauge of the lines that count stitches or rounds, with the
// file's own measures. Worked are the fabrics, nil before they have been: only
// they tell which stitch patterns are repeats of this one. It reports whether
// there are such lines.
func (j *job) measureBy(worked []*fabric.Fabric) (counted bool) {
	j.notes = nil
	readings, of := j.readings(worked)
	var err error
	if j.gauge, err = geometry.NewGauge(readings); err != nil {
		if bad, ok := err.(*geometry.ReadingError); ok {
			j.refuse(of[bad.Index], bad.Message, bad.Help)
		} else {
			j.faults = append(j.faults, j.pattern.Fault(fault.Pos{}, 0, "gauge", err.Error(), ""))
		}
		return true
	}
	for _, m := range j.pattern.Measures {
		if err := j.gauge.Override(m.Name, m.Value); err != nil {
			j.faults = append(j.faults, j.pattern.Fault(m.Pos, len([]rune(m.Name)), "measure", err.Error(),
				"whorl check --defaults lists the figures that can be changed."))
		}
	}
	return len(readings) > 0
}

// sized is what a line of gauge gives the size of.
type sized struct {
	kind   stitch.Kind
	into   stitch.Into
	height bool // rather than width
}

// readings are the lines of gauge that count stitches or rounds and can be used,
// each with its swatch. Those in a stitch pattern that is neither a stitch nor a
// repeat come last: they stand for the rounds of their stitch if no other line
// does.
func (j *job) readings(worked []*fabric.Fabric) (l []geometry.Reading, of []*working.Swatch) {
	by := map[sized]int{}
	// takes is what a swatch gives the size of, and the line that has done so.
	takes := func(s *working.Swatch) (what []sized, line int) {
		if s.Count > 0 {
			what = append(what, sized{s.Kind, s.Into, false})
		}
		if s.Rows > 0 {
			what = append(what, sized{s.Kind, s.Into, true})
		}
		for _, w := range what {
			line = max(line, by[w])
		}
		return what, line
	}
	use := func(s *working.Swatch, r geometry.Reading) {
		l, of = append(l, r), append(of, s)
	}
	stitches := func(s *working.Swatch) {
		what, _ := takes(s)
		for _, w := range what {
			by[w] = s.Line
		}
		use(s, geometry.Reading{Count: s.Count, Kind: s.Kind, In: s.Into, Rows: s.Rows, Over: s.Over})
		if s.Mixed != nil {
			use(s, geometry.Reading{Pattern: s.Of, Stitches: true, Rows: s.Rows, Over: s.Over, Lines: s.Mixed})
		}
	}
	var tied, loose []*working.Swatch
	var unknown []int
	for i := range j.swatches {
		switch s := &j.swatches[i]; {
		case s.Sample != nil || s.Over == 0:
		case s.Instead > 0:
			j.note(s, fmt.Sprintf("this line of gauge is not used: line %d is for the same stitch", s.Instead), "Keep the one that was measured on the swatch as it is worn.")
		case s.Loose && s.Tied:
			tied = append(tied, s)
		case s.Loose:
			loose = append(loose, s)
		case s.Kind.Is():
			stitches(s)
		case j.unknown[i] != nil:
			unknown = append(unknown, i)
		default:
			use(s, geometry.Reading{Count: s.Count, Pattern: s.Of, Rows: s.Rows, Over: s.Over})
		}
	}
	for _, s := range append(tied, loose...) {
		what, line := takes(s)
		r := geometry.Reading{Count: s.Count, Pattern: s.In, Stitches: true, Chains: working.PlainSts(s.Counted), Rows: s.Rows, Over: s.Over}
		if line == 0 && !r.Has(worked) {
			r.Kind = s.Kind
		}
		switch {
		case r.Has(worked):
			if r.Kind.Is() {
				for _, w := range what {
					by[w] = s.Line
				}
			}
			use(s, r)
		case line > 0:
			j.note(s, fmt.Sprintf("this line of gauge is not used: %q is neither a stitch that is known nor a repeat of this pattern, and line %d gives the size of %s",
				s.In, line, s.Kind.Name(j.pattern.Terms)), "Name the stitch that its rounds are made of, or give the part or the rounds its name.")
		default:
			stitches(s)
		}
	}
	for _, i := range unknown {
		// What was counted is not known; the rounds may still tell how high they are.
		s := &j.swatches[i]
		rows := *s
		rows.Count, rows.Kind = 0, s.Main
		what := "this line of gauge is not used: "
		if _, line := takes(&rows); line == 0 && s.Rows > 0 && s.Main.Is() {
			stitches(&rows)
			what = "of this line of gauge only the rounds are used: "
		}
		j.note(s, what+j.unknown[i].Error(), gaugeNouns)
	}
	for i := range j.swatches {
		s := &j.swatches[i]
		if s.Over == 0 && (len(l) == 0 && !j.sampled() || strings.ContainsAny(s.Words, "0123456789")) {
			j.note(s, "this line of gauge gives no size", gaugeForms+" Sizes follow from the other lines, or from whorl check --defaults.")
		}
	}
	return l, of
}

// sampled reports whether a piece was measured.
func (j *job) sampled() bool {
	for i := range j.swatches {
		if j.swatches[i].Sample != nil {
			return true
		}
	}
	return false
}

// fitGauge fits the gauge to what was worked: to the lines that were counted over
// stitch patterns or, where nothing was counted, to the first piece that was
// measured. It reports whether the gauge has changed; a line that cannot be used
// is a fault.
func (j *job) fitGauge() (changed bool) {
	for i := range j.swatches {
		s := &j.swatches[i]
		was, mixed := s.Kind, len(s.Mixed)
		s.Settle(j.fabrics)
		changed = changed || s.Kind != was || len(s.Mixed) != mixed
	}
	counted := j.measureBy(j.fabrics)
	if j.wrong() {
		return false
	}
	for len(j.gauge.Patterns()) > 0 {
		g, err := j.gauge.Fitted(j.fabrics)
		if err == nil {
			j.gauge = g
			return true
		}
		if !j.unfit(err) {
			return false
		}
		if counted = j.measureBy(j.fabrics); j.wrong() {
			return false
		}
		changed = true
	}
	for i := range j.swatches {
		s := &j.swatches[i]
		if s.Sample == nil || counted {
			continue
		}
		size, err := sampleOf(s.Sample).Size(j.fabrics, j.gauge)
		if err != nil {
			continue // said by holdSamples
		}
		g, err := j.gauge.Times(s.Over / size)
		if err != nil {
			j.refuse(s, err.Error(), "Check the length and its unit.")
			return false
		}
		j.gauge = g
		return true
	}
	return changed
}

// unfit notes that what a line of gauge counts is neither a stitch nor a repeat of the
// pattern, so that the line is not used. What else is wrong with it is a fault.
func (j *job) unfit(err error) bool {
	bad, ok := err.(*geometry.PatternError)
	if ok {
		for i := range j.swatches {
			if s := &j.swatches[i]; !s.Kind.Is() && s.Sample == nil && s.Of == bad.Pattern && j.unknown[i] == nil {
				if j.unknown == nil {
					j.unknown = map[int]error{}
				}
				j.unknown[i] = err
				return true
			}
		}
	}
	at := &working.Swatch{}
	for i := range j.swatches {
		if s := &j.swatches[i]; s.Loose && ok && s.In == bad.Pattern {
			at = s
		}
	}
	j.refuse(at, err.Error(), gaugeNouns)
	return false
}

// holdSamples holds the pieces that were measured against what they come to.
func (j *job) holdSamples() {
	for i := range j.swatches {
		s := &j.swatches[i]
		if s.Sample == nil {
			continue
		}
		size, err := sampleOf(s.Sample).Size(j.fabrics, j.gauge)
		if err != nil {
			j.note(s, "this line of gauge is not used: "+err.Error(), gaugeForms)
			continue
		}
		unit := "cm"
		if strings.HasSuffix(length(s.Over), "in") {
			unit = "in"
		}
		if off := size/s.Over - 1; math.Abs(off) > agree {
			more := "more"
			if off < 0 {
				more = "less"
			}
			j.note(s, fmt.Sprintf("by the other lines of gauge this comes to %s, %s %% %s than was measured", edgeLength(size, unit), decimal(100*math.Abs(off), 0), more),
				"The lines that count stitches are used before pieces, and of pieces the first. Measure again, or leave one out.")
		}
		if s.Sample.Way == patterns.Unsaid && s.Sample.To == 0 && j.cornered() {
			j.note(s, "this line of gauge does not say which way the motif was measured; it is taken to be from flat side to flat side",
				"Write from flat side to flat side, along each side or corner to corner behind the length.")
		}
	}
}

// cornered reports whether a part is a motif with corners that is no square.
func (j *job) cornered() bool {
	for _, p := range j.fabrics[0].Parts {
		if k := geometry.Corners(p); k > 0 && k != 4 {
			return true
		}
	}
	return false
}

var sampleWays = map[patterns.Way]geometry.SampleWay{patterns.Across: geometry.Across, patterns.Side: geometry.Side,
	patterns.Corner: geometry.Corner, patterns.Around: geometry.Around, patterns.High: geometry.High}

func sampleOf(s *patterns.Sample) geometry.Sample {
	return geometry.Sample{Name: s.Name, From: s.From, To: s.To, Rows: s.Rows, Way: sampleWays[s.Way]}
}
