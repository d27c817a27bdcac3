package chart

import (
	"math"
	"strings"
	"testing"
)

// panelOf is a panel of a brim-up tube that is closed by a crown.
func panelOf(t *testing.T, o Options) *Chart {
	t.Helper()
	f := closing(hdc, 9, 6, 6, 2)
	c, err := Panel(f, measure(t, f), o)
	if err != nil {
		t.Fatal(err)
	}
	if err := c.Scene.Check(); err != nil {
		t.Fatal(err)
	}
	return c
}

// The rounds of a tube lie flat, one above another, and run to the left, or to the
// right for left-handers; the repeat is in a bracket.
func TestPanel(t *testing.T) {
	for _, left := range []bool{false, true} {
		for repeats := 1; repeats <= 3; repeats++ {
			c := panelOf(t, Options{Title: "Tube", To: 6, Repeats: repeats, LeftHanded: left})
			if r := Audit(c.Scene); !r.Clean() {
				t.Errorf("overlaps %v, texts %v, legs %v", r.Overlaps, r.Texts, r.Astray)
			}
			above := math.Inf(1)
			for _, round := range []string{"1", "2", "3", "4", "5", "6"} {
				ps := tops(find(&c.Scene.Root, "rnd"+round), nil)
				if len(ps) != 6*repeats {
					t.Fatalf("round %s has %d stitches in %d repeats", round, len(ps), repeats)
				}
				for k, p := range ps {
					if math.Abs(p[1]-ps[0][1]) > 0.02 || p[1] >= above {
						t.Fatalf("round %s does not lie flat above the last: %v", round, ps)
					}
					if k > 0 && (p[0] < ps[k-1][0]) == left {
						t.Fatalf("round %s runs the wrong way: %v", round, ps)
					}
				}
				above = ps[0][1]
			}
			if find(&c.Scene.Root, "bracket") == nil {
				t.Error("no bracket")
			}
		}
	}
}

// Rounds that do not lie flat, or have nothing in common, are refused.
func TestPanelRefuses(t *testing.T) {
	f := flat(hdc, 8, 6, true)
	if _, err := Panel(f, measure(t, f), Options{}); err == nil || !strings.Contains(err.Error(), "too unlike") {
		t.Errorf("a flat circle: %v", err)
	}
	f = closing(hdc, 9, 6, 6, 2)
	if _, err := Panel(f, measure(t, f), Options{To: 6, Repeats: 40}); err == nil || !strings.Contains(err.Error(), "40 repeats") {
		t.Errorf("forty repeats of nine: %v", err)
	}
}
