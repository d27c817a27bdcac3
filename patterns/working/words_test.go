package working

import (
	"fmt"
	"os"
	"path/filepath"
	"runtime/debug"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"whorl/patterns"
	"whorl/patterns/fault"
	"whorl/patterns/stitch"
)

// reread makes a pattern of printed words.
func reread(p *patterns.Pattern, w *Words, t stitch.Terms, size int) *patterns.Pattern {
	q := *p
	q.Terms, q.Stitches, q.Parts = t, nil, nil
	q.Notes, q.NoteWords = w.Notes, text(w.Notes)
	if size >= 0 {
		q.Sizes = []string{p.Sizes[size]}
	}
	for _, s := range w.Stitches {
		q.Stitches = append(q.Stitches, patterns.Definition{Name: s.Name, Words: text(s.Words)})
	}
	for _, part := range w.Parts {
		q.Parts = append(q.Parts, patterns.Part{Name: part.Name, From: part.From, Rows: part.Rows, Text: text(strings.Join(part.Lines, "\n"))})
	}
	return &q
}

func wrong(l fault.List) bool {
	for _, f := range l {
		if f.Severity == fault.Error {
			return true
		}
	}
	return false
}

// printed checks that a pattern printed in every way is read as the same
// fabric; "" when it is.
func printed(p *patterns.Pattern) string {
	worked := New(p, rule{})
	if wrong(worked.Faults) {
		return "" // TestCases has what is wrong with it
	}
	same := worked.Script(p.Terms, -1, false).Parts
	read := map[string]bool{} // the same words of the same sizes are read once
	for _, terms := range []stitch.Terms{stitch.US, stitch.UK} {
		for size := -1; size < len(p.Sizes); size++ {
			for _, long := range []bool{false, true} {
				w := worked.Script(terms, size, long)
				q := reread(p, w, terms, size)
				if key := fmt.Sprint(terms, q.Sizes, w); read[key] {
					continue
				} else {
					read[key] = true
				}
				again := New(q, rule{})
				want := worked.Fabrics
				if size >= 0 {
					want = want[size : size+1]
				}
				what := fmt.Sprintf("%s terms, size %d, long %v", terms, size, long)
				if wrong(again.Faults) {
					return what + ": " + again.Faults[0].Error()
				}
				if d := difference(want, again.Fabrics); d != "" {
					var l []string
					for _, part := range w.Parts {
						l = append(l, part.Lines...)
					}
					return what + ": " + d + "\n" + strings.Join(l, "\n")
				}
				if terms != p.Terms && size < 0 && !long {
					for i, part := range again.Script(p.Terms, -1, false).Parts {
						if a, b := strings.Join(same[i].Lines, "\n"), strings.Join(part.Lines, "\n"); a != b {
							return "there and back again: " + cmp.Diff(a, b)
						}
					}
				}
			}
		}
	}
	return ""
}

// TestMain lets the memory grow further before it is cleaned up: every test leaves much
// behind and holds little.
func TestMain(m *testing.M) {
	debug.SetGCPercent(400)
	m.Run()
}

// eachPrinted runs a test on every pattern file whose words are printed back.
func eachPrinted(t *testing.T, test func(t *testing.T, p *patterns.Pattern)) {
	for _, glob := range []string{"../examples/*.yaml", "../../testdata/patterns/*.yaml", "../../testdata/patterns/more/*.yaml",
		"../../testdata/patterns/published/*.yaml", "../../testdata/patterns/words/*.yaml"} {
		files, _ := filepath.Glob(glob)
		for _, file := range files {
			t.Run(filepath.Base(file), func(t *testing.T) {
				t.Parallel()
				data, err := os.ReadFile(file)
				if err != nil {
					t.Fatal(err)
				}
				p, err := patterns.Read(file, data)
				if err != nil {
					t.Fatal(err)
				}
				test(t, p)
			})
		}
	}
}

// Every pattern printed in words, in the same terms or the other, for all sizes
// or one, with short or long names, is read as the same fabric.
func TestWordsGiveTheSameFabric(t *testing.T) {
	eachPrinted(t, func(t *testing.T, p *patterns.Pattern) {
		if _, faults := Work(p, rule{}); wrong(faults) {
			t.Fatal(faults)
		}
		if d := printed(p); d != "" {
			t.Error(d)
		}
	})
}

// So is every case of the written language that has no faults.
func TestCasesInWords(t *testing.T) {
	files, _ := filepath.Glob("../../testdata/notation/*.txt")
	for _, file := range files {
		for _, c := range readCases(t, file) {
			src, _ := c.pattern()
			p, err := patterns.Read("case", []byte(src))
			if err != nil {
				continue
			}
			if d := printed(p); d != "" {
				t.Errorf("%s:%d: %s\n%s", filepath.Base(file), c.line, strings.Join(c.words, "\n"), d)
			}
		}
	}
}
