package main

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"

	"whorl/geometry"
	"whorl/patterns"
	"whorl/patterns/stitch"
	"whorl/patterns/working"
)

// readGauge reads the gauge as a pattern file would.
func (s *sizing) readGauge() error {
	line, err := patterns.ParseGauge(s.gauge)
	if err != nil {
		return fmt.Errorf("--gauge: %w", err)
	}
	p := &patterns.Pattern{Gauge: []patterns.Gauge{line}}
	if p.Terms, err = termsNamed(s.terms, p.Terms); err != nil {
		return err
	}
	w := working.Swatches(p)[0]
	if w.Loose {
		w.Kind = stitch.Kind{} // there are no rounds to tell which stitch it is of
	}
	g, err := geometry.NewGauge([]geometry.Reading{{Count: w.Count, Kind: w.Kind, In: w.Into, Rows: w.Rows, Over: w.Over, Pattern: w.Of}})
	if err != nil {
		return fmt.Errorf("--gauge: %w", err)
	}
	s.counted = line.Of
	s.width = line.Over / line.Count
	switch {
	case line.Rows > 0:
		s.height = line.Over / line.Rows
	case w.Kind.Is():
		s.height = g.Height(w.Kind, w.Into)
	default:
		return fmt.Errorf("--gauge: a gauge over %s needs the rounds too: 6 %s and 8 rounds = 10 cm", line.Of, line.Of)
	}
	s.unit = "cm"
	if strings.HasSuffix(length(line.Over), "in") {
		s.unit = "in"
	}
	return nil
}

var multiples = regexp.MustCompile(`^(?:mult(?:iple)?\.? of )?([0-9]{1,6})(?:(\+|-|−|plus)([0-9]{1,6}))?$`)

// readMultiple reads "6", "6+1" or "multiple of 6 plus 1".
func (s *sizing) readMultiple() error {
	written := strings.ToLower(strings.TrimSpace(s.multiple))
	m := multiples.FindStringSubmatch(written)
	if m == nil {
		m = multiples.FindStringSubmatch(strings.NewReplacer(" plus ", "plus", " + ", "+", " - ", "-", " − ", "-").Replace(written))
	}
	if m == nil {
		return fmt.Errorf("--multiple %q is not one: write 6, or 6+1 for a multiple of 6 plus 1", s.multiple)
	}
	s.times, _ = strconv.Atoi(m[1])
	s.plus, _ = strconv.Atoi(m[3])
	if m[2] == "-" || m[2] == "−" {
		s.plus = -s.plus
	}
	return nil
}

// readHeads reads lengths, or names with commas or brackets between them.
func (s *sizing) readHeads() error {
	l, err := patterns.ParseLengths(s.head)
	if err == nil {
		for _, h := range l {
			s.asked = append(s.asked, ask{head: h.MM})
		}
		s.unit = edgeUnit(l[0].Unit)
		return nil
	}
	if strings.ContainsAny(s.head, "0123456789") && !namesAHead(s.head) {
		return fmt.Errorf("--head: %w", err)
	}
	for _, name := range headList(s.head) {
		h, ok := geometry.HeadNamed(name)
		if !ok {
			return fmt.Errorf("there is no head size %q; give its circumference, or one of these:\n%s", name, strings.TrimRight(headNames(), "\n"))
		}
		s.asked = append(s.asked, ask{name: h.Name, head: h.Circumference})
	}
	if len(s.asked) == 0 {
		return fmt.Errorf("--head names no size: see whorl size --help")
	}
	return nil
}

func headList(written string) []string {
	return strings.FieldsFunc(written, func(r rune) bool { return strings.ContainsRune(",;()/", r) })
}

func namesAHead(written string) bool {
	for _, name := range headList(written) {
		if _, ok := geometry.HeadNamed(name); ok {
			return true
		}
	}
	return false
}

// perHead reads one length for all heads or one for each, 0 for none.
func (s *sizing) perHead(what, written string) ([]float64, error) {
	each := make([]float64, len(s.asked))
	if written == "" {
		return each, nil
	}
	l, err := patterns.ParseLengths(written)
	if err != nil {
		return nil, fmt.Errorf("--%s: %w", what, err)
	}
	if len(l) != 1 && len(l) != len(each) {
		return nil, fmt.Errorf("--%s has %d lengths for %d heads", what, len(l), len(each))
	}
	for i := range each {
		each[i] = l[i%len(l)].MM
	}
	return each, nil
}

// headNames lists the heads that have a name, by where they are from.
func headNames() string {
	var b strings.Builder
	source := ""
	for _, h := range geometry.Heads() {
		if h.Source != source {
			source = h.Source
			fmt.Fprintf(&b, "  (%s)\n", source)
		}
		fmt.Fprintf(&b, "    %-13s %s cm, %s in\n", h.Name, decimal(h.Circumference/10, 1), decimal(h.Circumference/25.4, 1))
	}
	return b.String()
}
