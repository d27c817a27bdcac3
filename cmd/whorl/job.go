package main

import (
	"fmt"
	"io"
	"os"
	"slices"

	"whorl/chart"
	"whorl/geometry"
	"whorl/patterns"
	"whorl/patterns/fabric"
	"whorl/patterns/fault"
	"whorl/patterns/stitch"
	"whorl/patterns/working"
)

// job is one pattern on its way: written, worked and measured.
type job struct {
	pattern *patterns.Pattern
	terms   stitch.Terms // that its pictures and words are in
	gauge   *geometry.Gauge
	// swatches are the lines of gauge; notes say what is wrong in those that are
	// not used.
	swatches []working.Swatch
	notes    fault.List
	unknown  map[int]error // the lines of gauge, by number, that count what is not known
	worked   *working.Working
	fabrics  []*fabric.Fabric // what was worked
	// forms are the measured fabrics, nil for one that could not be measured.
	forms []*geometry.Form
	// own are the designer's own symbols, by the names of their stitches.
	own    map[string]chart.OwnSymbol
	faults fault.List
}

// load reads a pattern from a file, or from standard input when it is named
// "-", works it and measures it. A pattern with faults gives a job all the
// same; the error is for files that cannot be read at all.
func load(file string, in io.Reader) (*job, error) {
	data, name, err := readAll(file, in)
	if err != nil {
		return nil, err
	}
	j := &job{}
	j.pattern, err = patterns.Read(name, data)
	if err != nil {
		if l, ok := err.(fault.List); ok {
			j.faults = l
			return j, nil
		}
		return nil, err
	}
	j.terms = j.pattern.Terms
	if j.own, j.faults = ownSymbols(j.pattern); len(j.faults) > 0 {
		return j, nil
	}
	j.swatches = working.Swatches(j.pattern)
	j.measureBy(nil)
	if len(j.faults) > 0 {
		return j, nil
	}
	for _, y := range j.pattern.Yarns {
		if y.Swatch != nil && j.gauge.Assumed() && len(j.gauge.Patterns()) == 0 {
			j.faults = append(j.faults, j.pattern.Fault(y.Swatch.Pos, 1, "yarn", "a swatch was weighed, but there is no gauge to measure the piece with",
				"Give the gauge, as in gauge: 16 hdc and 11 rounds = 10 cm."))
			return j, nil
		}
	}
	j.work()
	j.empty()
	j.fit()
	return j, nil
}

// work works and measures the pattern.
func (j *job) work() {
	j.workBy()
	if j.wrong() {
		j.refit()
	} else {
		switch changed := j.fitGauge(); {
		case j.wrong():
			j.fabrics = nil
			return
		case changed:
			// What is worked to a length is so at the gauge as it was measured.
			j.workBy()
		}
	}
	for _, f := range j.fabrics {
		form, err := geometry.Measure(f, j.gauge)
		if err != nil {
			j.faults = append(j.faults, j.pattern.Fault(fault.Pos{}, 0, "measure", err.Error(), ""))
		}
		j.forms = append(j.forms, form)
	}
	if !j.wrong() {
		j.holdSamples()
	}
	j.faults = append(j.notes, j.faults...)
	j.faults.Sort()
}

// refit works a pattern with faults again at the gauge as it fits what was worked: how many rows a length
// takes may be all that is wrong. Where it is not, all stays as it was.
func (j *job) refit() {
	was := *j
	was.swatches = slices.Clone(j.swatches)
	j.faults = nil
	if j.fitGauge() && !j.wrong() {
		if j.workBy(); !j.wrong() {
			return
		}
	}
	*j = was
}

// workBy works the pattern with the gauge as it is.
func (j *job) workBy() {
	j.worked = working.New(j.pattern, j.gauge)
	j.fabrics, j.faults = j.worked.Fabrics, j.worked.Faults
}

// empty finds the parts without any rounds.
func (j *job) empty() {
	if len(j.fabrics) == 0 || j.wrong() {
		return
	}
	for k, p := range j.pattern.Parts {
		if !j.roundless(k) || j.edgingOnly(k) {
			continue
		}
		name := "the pattern"
		if p.Name != "" {
			name = p.Name
		}
		j.faults = append(j.faults, j.pattern.Fault(p.Pos, 1, "no-rounds", name+" has no rounds",
			"Write them below one another, as: Rnd 1: 8 hdc in ring. (8 hdc)"))
	}
}

// roundless reports whether a part has been worked without a round of its own.
func (j *job) roundless(part int) bool {
	if len(j.fabrics) == 0 || part >= len(j.fabrics[0].Parts) {
		return false
	}
	return !slices.ContainsFunc(j.fabrics[0].Parts[part].Rounds, func(r *fabric.Round) bool { return r.Number > 0 && !r.Carried })
}

// edgingOnly reports whether a part has an edging that is told without a number of stitches, and has been
// warned of.
func (j *job) edgingOnly(part int) bool {
	from, to := j.pattern.Parts[part].Pos.Line, 0
	if part+1 < len(j.pattern.Parts) {
		to = j.pattern.Parts[part+1].Pos.Line
	}
	return slices.ContainsFunc(j.faults, func(f *fault.Fault) bool {
		return f.Code == "uncounted" && f.Pos.Line > from && (to == 0 || f.Pos.Line < to)
	})
}

// wrong reports whether the pattern has faults that are not mere warnings.
func (j *job) wrong() bool { return len(j.errors("")) > 0 }

// unworkable reports whether the pattern has faults that keep it from being
// worked: that a size does not fit its head does not.
func (j *job) unworkable() bool { return len(j.errors(codeFit)) > 0 }

// errors are the faults that are not mere warnings, but for those of a code.
func (j *job) errors(but string) (l fault.List) {
	for _, f := range j.faults {
		if f.Severity == fault.Error && f.Code != but {
			l = append(l, f)
		}
	}
	return l
}

// readAll reads a file, or standard input for "-".
func readAll(file string, in io.Reader) (data []byte, name string, err error) {
	if file == "-" {
		data, err = io.ReadAll(io.LimitReader(in, patterns.MaxBytes+1))
		return data, "standard input", err
	}
	info, err := os.Stat(file)
	if err == nil && info.IsDir() {
		return nil, file, fmt.Errorf("%s is a folder, not a pattern file", file)
	}
	f, err := os.Open(file)
	if err != nil {
		return nil, file, plainError(err)
	}
	defer f.Close()
	data, err = io.ReadAll(io.LimitReader(f, patterns.MaxBytes+1))
	return data, file, plainError(err)
}
