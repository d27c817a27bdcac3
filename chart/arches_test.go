package chart

import (
	"math"
	"testing"

	"whorl/chart/ring"
	"whorl/patterns/fabric"
)

// disc is 96 stitches about a ring, in eight rounds, to begin an edge on.
func disc() *cloth {
	c := newCloth("Doily").magic()
	for r := 1; r <= 8; r++ {
		c.rnd().rep(12, func(int) {
			if r > 1 {
				c.st(dc, r-2).inc(dc, dc)
			} else {
				c.st(dc, 1)
			}
		})
	}
	return c
}

// laid lays a fabric out, with nothing wrong on the page, and tells which legs lean.
func laid(t *testing.T, f *fabric.Fabric) (*work, []string) {
	t.Helper()
	w, err := newWork(f, measure(t, f), Options{Title: "Doily"}, fabric.InRounds)
	if err != nil {
		t.Fatal(err)
	}
	w.turn()
	c, _ := w.draw()
	r := Audit(c.Scene)
	if !r.Clean() {
		t.Errorf("overlaps %v, texts %v", r.Overlaps, r.Texts)
	}
	return w, r.Leaning
}

// tall is how tall a stitch is drawn, in single crochets.
func (w *work) tall(c *course, i int) float64 {
	feet, _ := w.feet(c, i)
	return w.top(c, i).Sub(feet[0]).Length() / w.unit
}

// An edge of loops with many stitches in each needs no more room than the loops do, so
// that the legs that hold it are no longer than others of their kind.
func TestLoopsArch(t *testing.T) {
	c := disc()
	c.rnd().rep(48, func(int) { c.st(sc, 1).ch(5).skip(1) })
	c.rnd().rep(48, func(i int) { c.sp(i, sc, sc, sc, sc, sc, sc, sc) })
	w, leaning := laid(t, c.fabric())
	if len(leaning) > 0 {
		t.Error(leaning)
	}
	for _, c := range w.courses[9:] {
		for i := range c.round.Stitches {
			if s := &c.round.Stitches[i]; len(s.On) == 1 && w.tall(c, i) > 2.2 {
				t.Fatalf("%s, stitch %d is as tall as %.1f single crochets", c.label(), i+1, w.tall(c, i))
			}
		}
	}
}

// Single crochets along a loop follow it, where it rises from a low stitch to a high one:
// all are about as tall.
func TestAlongALoop(t *testing.T) {
	c := disc()
	c.rnd().rep(24, func(int) { c.st(sc, 1).ch(5).skip(1).st(dc, 1).ch(5).skip(1) })
	c.rnd().rep(48, func(i int) { c.sp(i, sc, sc, sc, sc, sc, sc) })
	w, _ := laid(t, c.fabric())
	last := w.courses[10]
	for i := 0; i < len(last.round.Stitches); i += 6 {
		low, high := math.Inf(1), 0.0
		for j := i; j < i+6; j++ {
			low, high = math.Min(low, w.tall(last, j)), math.Max(high, w.tall(last, j))
		}
		if high > 1.5*low {
			t.Fatalf("stitches of one loop are as tall as %.1f to %.1f single crochets", low, high)
		}
	}
}

// Loops arch over what is close below them, and do not part what they hang from; they
// stay as they are where there is room, and within a shell.
func TestLoopsPartNothing(t *testing.T) {
	for _, test := range []struct {
		name            string
		between         float64 // the stitches that a loop of four hangs from, in stitches
		a, b            int     // their places
		chains, narrows float64
	}{
		{"room enough", 5, 1, 2, 4, 1},
		{"some room", 4, 1, 2, 4, 0.75},
		{"none", 1, 1, 2, 4, archShare},
		{"in one place", 1, 1, 1, 4, 1},
		{"short", 1, 1, 2, 2, 1},
	} {
		items := []ring.Item{{Width: 1, Place: test.a}}
		for range int(test.chains) {
			items = append(items, ring.Item{Width: 1, Free: true})
		}
		items = append(items, ring.Item{Width: 1, Base: test.between, Place: test.b})
		archAround(items, 1, archShare)
		if got := items[1].Width; math.Abs(got-test.narrows) > 1e-9 {
			t.Errorf("%s: chains are %.2f of their width, not %.2f", test.name, got, test.narrows)
		}
	}
}
