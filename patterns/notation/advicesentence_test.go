package notation

import (
	"testing"

	"whorl/patterns/stitch"
)

// Advice is put into the other terms sentence by sentence: one that speaks of both
// keeps its names, and one that says which are used says the others.
func TestAdviceSentences(t *testing.T) {
	s := Style{Terms: stitch.US, From: stitch.UK, Size: -1, Sizes: 1}
	for was, want := range map[string]string{
		"UK terms are used throughout. 3ch counts as 1tr.":   "US terms are used throughout. 3ch counts as 1dc.",
		"UK tr is US dc. Work 2 tr in each.":                 "UK tr is US dc. Work 2 dc in each.",
		"Use a 4.5 mm hook for the tr rounds. Miss next st.": "Use a 4.5 mm hook for the dc rounds. Skip next st.",
	} {
		if got := s.Advice(was); got != want {
			t.Errorf("%s\n got %s\nwant %s", was, got, want)
		}
	}
}
