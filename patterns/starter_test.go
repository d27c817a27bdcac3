package patterns_test

import (
	"testing"

	"whorl/patterns"
	"whorl/patterns/notation"
)

// TestStarterWords checks that the words of the starting file are in the
// language that is read.
func TestStarterWords(t *testing.T) {
	p, err := patterns.Read("starter.yaml", patterns.Starter())
	if err != nil {
		t.Fatal(err)
	}
	for _, part := range p.Parts {
		var lines []notation.Line
		for i, l := range part.Text.Lines {
			at := part.Text.Pos(i, 0)
			lines = append(lines, notation.Line{Text: l, Line: at.Line, Column: at.Column})
		}
		text, faults := notation.Parse(lines, notation.NewVocabulary(p.Terms, nil), p.Sizes)
		for _, f := range faults {
			t.Error(f)
		}
		if len(text.Rounds) != len(lines) {
			t.Errorf("%d rounds on %d lines", len(text.Rounds), len(lines))
		}
	}
}
