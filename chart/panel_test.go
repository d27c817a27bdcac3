package chart

import (
	"math"
	"strings"
	"testing"

	"github.com/tdewolff/canvas"

	"whorl/chart/scene"
	"whorl/patterns/fabric"
	"whorl/patterns/stitch"
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

// No cable is parted at the edge of what lies beside the repeat in grey: as much lies there as
// parts none.
func TestPanelPartsNoCable(t *testing.T) {
	c := newCloth("Body").chainRing(60)
	c.rnd().start(3, dc).st(dc, 59).join()
	c.rnd().start(2)
	for range 6 {
		c.into(dc, stitch.BackPost, 2).into(dc, stitch.FrontPost, 6).into(dc, stitch.BackPost, 2)
	}
	c.join()
	c.rnd().start(2)
	for range 6 {
		c.into(dc, stitch.BackPost, 2).skip(3).into(dc, stitch.FrontPost, 3)
		c.next -= 6
		c.into(dc, stitch.FrontPost, 3).skip(3).into(dc, stitch.BackPost, 2)
	}
	c.join()
	f := c.fabric()
	chart, err := Panel(f, measure(t, f), Options{})
	if err != nil {
		t.Fatal(err)
	}
	a := newAuditor()
	a.walk(&chart.Scene.Root, scene.Plain)
	places := map[canvas.Point]bool{}
	for _, s := range a.subjects {
		for _, p := range s.tops {
			places[p] = true
		}
	}
	grey := 0
	for _, s := range a.subjects {
		if !s.beside {
			continue
		}
		grey++
		for _, p := range s.bases {
			if !places[p] {
				t.Errorf("%s, in grey, stands on nothing", s.name)
			}
		}
	}
	if grey == 0 {
		t.Error("nothing lies beside the repeat")
	}
}

// tall is a tube of so many rounds of 12 groups, higher than it is wide as a panel.
func tall(rounds int) *fabric.Fabric {
	c := newCloth("Body").chainRing(48)
	for range rounds {
		c.rnd().start(1)
		for range 12 {
			c.st(sc, 1).inc(dc, dc).skip(1).st(sc, 1)
		}
		c.join()
	}
	return c.fabric()
}

// The numbers of a panel stand outside what lies beside the repeat.
func TestPanelNumbersOutside(t *testing.T) {
	f := tall(6)
	c, err := Panel(f, measure(t, f), Options{})
	if err != nil {
		t.Fatal(err)
	}
	right := 0.0
	a := newAuditor()
	a.walk(&c.Scene.Root, scene.Plain)
	for _, s := range a.subjects {
		for _, p := range s.tops {
			if s.row != "" {
				right = math.Max(right, p.X)
			}
		}
	}
	numbers := 0
	for _, text := range a.texts {
		if len(text.String) == 1 && strings.Contains("123456", text.String) {
			numbers++
			if text.X < right {
				t.Errorf("number %s is at %.1f mm, stitches go to %.1f", text.String, text.X, right)
			}
		}
	}
	if numbers != 6 {
		t.Errorf("%d numbers", numbers)
	}
}

// A panel as high as its page leaves the lines at the foot their room.
func TestTallPanelClearsFoot(t *testing.T) {
	f := tall(24)
	c, err := Panel(f, measure(t, f), Options{Title: "Cowl", Credit: "Design: Nell Ashgrove", Special: []Definition{{Name: "pair", Words: "2 dc in next st"}}})
	if err != nil {
		t.Fatal(err)
	}
	a := newAuditor()
	a.walk(&c.Scene.Root, scene.Plain)
	at := map[string]float64{}
	for _, text := range a.texts {
		at[text.String] = text.Y
	}
	if gap := at["Design: Nell Ashgrove"] - at["pair"]; at["pair"] == 0 || gap < 5 {
		t.Errorf("the credit is %.1f mm under the key", gap)
	}
}
