package main

import (
	"fmt"
	"io"
	"os"

	"whorl/geometry"
	"whorl/patterns"
	"whorl/patterns/fabric"
	"whorl/patterns/fault"
	"whorl/patterns/working"
)

// job is one pattern on its way: written, worked and measured.
type job struct {
	pattern *patterns.Pattern
	gauge   *geometry.Gauge
	fabrics []*fabric.Fabric
	// forms are the measured fabrics, nil for one that could not be measured.
	forms  []*geometry.Form
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
	swatches := working.Swatches(j.pattern)
	readings := make([]geometry.Reading, len(swatches))
	for i, s := range swatches {
		readings[i] = geometry.Reading{Count: s.Count, Kind: s.Kind, In: s.Into, Rows: s.Rows, Over: s.Over}
		if !s.Kind.Is() {
			readings[i].Pattern = s.Of
		}
	}
	if j.gauge, err = geometry.NewGauge(readings); err != nil {
		bad, ok := err.(*geometry.ReadingError)
		if !ok {
			return nil, err
		}
		s := swatches[bad.Index]
		j.faults = fault.List{j.pattern.Fault(s.Pos, 1, "gauge", bad.Message, bad.Help)}
		return j, nil
	}
	for _, m := range j.pattern.Measures {
		if err := j.gauge.Override(m.Name, m.Value); err != nil {
			j.faults = append(j.faults, j.pattern.Fault(m.Pos, len([]rune(m.Name)), "measure", err.Error(),
				"whorl check --defaults lists the figures that can be changed."))
		}
	}
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
	j.work(swatches)
	j.empty()
	j.fit()
	return j, nil
}

// work works and measures the pattern.
func (j *job) work(swatches []working.Swatch) {
	j.fabrics, j.faults = working.Work(j.pattern, j.gauge)
	if len(j.gauge.Patterns()) > 0 && !j.wrong() {
		if !j.fitGauge(swatches) {
			return
		}
		// What is worked to a length is so at the gauge as it was measured.
		j.fabrics, j.faults = working.Work(j.pattern, j.gauge)
	}
	for _, f := range j.fabrics {
		form, err := geometry.Measure(f, j.gauge)
		if err != nil {
			j.faults = append(j.faults, j.pattern.Fault(fault.Pos{}, 0, "measure", err.Error(), ""))
		}
		j.forms = append(j.forms, form)
	}
}

// fitGauge fits the gauge to the lines that were counted over stitch patterns;
// false with a fault where one cannot be used.
func (j *job) fitGauge(swatches []working.Swatch) bool {
	g, err := j.gauge.Fitted(j.fabrics)
	if err == nil {
		j.gauge = g
		return true
	}
	pos := fault.Pos{}
	if bad, ok := err.(*geometry.PatternError); ok {
		for _, s := range swatches {
			if !s.Kind.Is() && s.Of == bad.Pattern {
				pos = s.Pos
			}
		}
	}
	j.faults = append(j.faults, j.pattern.Fault(pos, 1, "gauge", err.Error(),
		"Name a stitch, as in 16 hdc = 10 cm, or a group or the repeat of the pattern, as in 6 fan repeats and 8 rounds = 10 cm."))
	j.fabrics = nil
	return false
}

// empty finds the parts without any rounds.
func (j *job) empty() {
	if len(j.fabrics) == 0 || j.wrong() {
		return
	}
	for k, part := range j.fabrics[0].Parts {
		rounds := 0
		for _, r := range part.Rounds {
			if r.Number > 0 && !r.Carried {
				rounds++
			}
		}
		if rounds > 0 || k >= len(j.pattern.Parts) {
			continue
		}
		p := j.pattern.Parts[k]
		name := "the pattern"
		if p.Name != "" {
			name = p.Name
		}
		j.faults = append(j.faults, j.pattern.Fault(p.Pos, 1, "no-rounds", name+" has no rounds",
			"Write them below one another, as: Rnd 1: 8 hdc in ring. (8 hdc)"))
	}
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
