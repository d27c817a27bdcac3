package typeface

import (
	"math"
	"os"
	"strings"
	"sync"
	"testing"
	"unicode/utf8"
)

// The letters that measurements and names in patterns need.
func TestCovers(t *testing.T) {
	const needed = "½¼¾″×–éßñ" + "′°·—…‘’“”•±→←↑↓⅓⅔⅛⅜⅝⅞²äöüåøæçèÄÖÜ€£"
	if m := Missing(needed); len(m) > 0 {
		t.Errorf("no letter for %q", string(m))
	}
	for _, f := range []struct{ bold, italic bool }{{true, false}, {false, true}, {true, true}} {
		for _, r := range needed {
			if pick(f.bold, f.italic).GlyphIndex(r) == 0 {
				t.Errorf("bold %v, italic %v has no letter for %q", f.bold, f.italic, r)
			}
		}
	}
	if got := string(Missing("ab日c🧶日")); got != "日🧶" {
		t.Errorf("missing are %q", got)
	}
}

// The letters are as wide as Helvetica's in the Adobe Core 14 font metrics
// (AFM files), which substitutes in readers' machines share: value from memory.
func TestWidthsAreHelveticas(t *testing.T) {
	for _, c := range []struct {
		letter       string
		bold, italic bool
		width        float64 // thousandths of the size
	}{
		{"A", false, false, 667}, {"a", false, false, 556}, {"0", false, false, 556}, {"W", false, false, 944},
		{"i", false, false, 222}, {"m", false, false, 833}, {"–", false, false, 556}, {"½", false, false, 834},
		{"A", true, false, 722}, {"a", true, false, 556}, {"i", true, false, 278}, {"m", true, false, 889},
		{"a", false, true, 556}, {"m", false, true, 833}, {"A", true, true, 722},
	} {
		if got := Width(c.letter, 1000, c.bold, c.italic); math.Abs(got-c.width) > 1 {
			t.Errorf("%s (bold %v, italic %v) is %.1f wide, not %g", c.letter, c.bold, c.italic, got, c.width)
		}
	}
}

func TestWidth(t *testing.T) {
	if a, b := Width("Rnd 12", 3, false, false), Width("Rnd 12", 6, false, false); math.Abs(2*a-b) > 1e-9 {
		t.Errorf("at twice the size the width goes from %g to %g", a, b)
	}
	if w, loose := Width("AV", 10, false, false), Width("A", 10, false, false)+Width("V", 10, false, false); w >= loose {
		t.Errorf("AV is not kerned: %g of %g", w, loose)
	}
	for _, s := range []string{"", "\n", "  "} {
		if w := Width(s, 3, false, false); w != 0 {
			t.Errorf("%q is %g wide", s, w)
		}
	}
	if Width("abc", 0, false, false) != 0 || !Outline("abc", 0, false, false).Empty() {
		t.Error("text of no size has some")
	}
}

// Outlines stand on the baseline, y down, and are as tall as the metrics say.
func TestOutline(t *testing.T) {
	const size = 10
	near := func(what string, got, want float64) {
		t.Helper()
		if math.Abs(got-want) > 0.02*size {
			t.Errorf("%s is %.3f, not %.3f", what, got, want)
		}
	}
	h := Outline("H", size, false, false).Bounds()
	near("the foot of H", h.Y1, 0)
	near("the top of H", h.Y0, -CapHeight(size))
	x := Outline("x", size, false, false).Bounds()
	near("the top of x", x.Y0, -XHeight(size))
	word := Outline("Hxgp WH", size, true, false).Bounds()
	// An H stands clear of the letters beside it by less than a tenth of its size.
	if end := Width("Hxgp WH", size, true, false); word.X1 > end || word.X1 < end-0.1*size {
		t.Errorf("a word as wide as %.3f ends at %.3f", end, word.X1)
	}
	if word.Y1 <= 0 || word.Y1 > Descent(size) || -word.Y0 > Ascent(size) {
		t.Errorf("a word from %g to %g is not between ascent %g and descent %g", word.Y0, word.Y1, Ascent(size), Descent(size))
	}
	// An outline is of the text that is set.
	if !Outline("a\n b\x00", size, false, false).Equals(Outline("a b", size, false, false)) {
		t.Error("the outline is not of the cleaned text")
	}
}

// Pages may be drawn at the same time.
func TestTogether(t *testing.T) {
	want := Width("Estuary Cap", 3, true, false)
	var group sync.WaitGroup
	for range 8 {
		group.Go(func() {
			for range 20 {
				if got := Width("Estuary Cap", 3, true, false); got != want {
					t.Errorf("%g is not %g", got, want)
				}
				Outline("Estuary Cap", 3, false, true)
			}
		})
	}
	group.Wait()
}

func TestClean(t *testing.T) {
	for s, want := range map[string]string{
		"":                       "",
		"plain text":             "plain text",
		" two  spaces\tand\n ":   "two spaces and",
		"a\x00b\x1b\x7f\u0085c":  "ab c",
		"a\xffb\ufffdc":          "a?b?c",
		"\ufffe\U0001ffff\ufdd0": "",
		"no\u00a0break":          "no\u00a0break",
		"½ ″ é 日 🧶":              "½ ″ é 日 🧶",
	} {
		if got := Clean(s); got != want {
			t.Errorf("%q is set as %q, not %q", s, got, want)
		}
	}
}

func FuzzClean(f *testing.F) {
	for _, s := range []string{"", "a  b", "\xff", "\ufffe", "\u2028x"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		c := Clean(s)
		if !utf8.ValidString(c) || strings.ContainsAny(c, "\t\n\r\x00") || strings.Contains(c, "  ") || strings.TrimSpace(c) == "" && strings.Trim(c, " ") != c {
			t.Errorf("%q became %q", s, c)
		}
		if Clean(c) != c {
			t.Errorf("%q became %q, which became %q", s, c, Clean(c))
		}
	})
}

// The licence of the letters goes with them.
func TestLicence(t *testing.T) {
	b, err := os.ReadFile("LICENSE-liberation")
	if err != nil || !strings.Contains(string(b), "SIL OPEN FONT LICENSE Version 1.1") {
		t.Errorf("the licence is not there: %v", err)
	}
}

func BenchmarkWidth(b *testing.B) {
	for b.Loop() {
		Width("Rnd 12, stitch 14", 3, false, false)
	}
}
