package chart

import (
	"math"
	"testing"

	"whorl/chart/ring"
	"whorl/patterns/fabric"
	"whorl/patterns/stitch"
)

// leaf is rows turned about a chain of nine, of which each leaves the last two stitches
// of the one before.
func leaf() *fabric.Fabric {
	c := flatPiece(9)
	c.row()
	put := func(in stitch.Into, at, n int) {
		for range n {
			c.put(fabric.Stitch{Kind: sc, Counts: true, On: []fabric.Place{{Into: in, At: fabric.Ref{Stitch: at}}}})
		}
	}
	for at := 8; at > 0; at-- {
		put(stitch.Top, at, 1)
	}
	put(stitch.Top, 0, 3)
	for at := 1; at < 9; at++ {
		put(stitch.Underside, at, 1)
	}
	c.row().start(1).st(sc, 9).inc(sc, sc, sc).st(sc, 7)
	c.row().start(1).st(sc, 8).inc(sc, sc, sc).st(sc, 8)
	return c.fabric()
}

// Rows worked both sides of a chain lie on a hairpin about it and do not fill its
// sides; those worked into one side only lie straight.
func TestHairpin(t *testing.T) {
	for _, left := range []bool{false, true} {
		f := leaf()
		form := measure(t, f)
		w, err := newWork(f, form, Options{LeftHanded: left}, fabric.InRows)
		if err != nil {
			t.Fatal(err)
		}
		w.rows, w.flat = true, true
		for _, c := range w.courses {
			c.open = true
		}
		if !w.hairpin() || w.flat {
			t.Fatal("no hairpin")
		}
		w.layRows()
		w.fit(w.reachHairpin)
		if s, ok := w.shape.(ring.Hairpin); !ok || s.Mirrored != left || s.Long <= 0 {
			t.Fatalf("they lie on %+v", w.shape)
		}
		for k, c := range w.courses[1:] {
			above, below := 0, 0
			for _, i := range c.order {
				switch top := w.top(c, i); {
				case top.Y < w.centre.Y-0.3*w.unit:
					above++
				case top.Y > w.centre.Y+0.3*w.unit:
					below++
				}
			}
			if above+below < 18 || math.Abs(float64(above-below)) > 2 {
				t.Errorf("row %d has %d stitches on one side and %d on the other", k+1, above, below)
			}
			if c.reversed != (k%2 == 1) {
				t.Errorf("row %d: reversed is %v", k+1, c.reversed)
			}
		}
		c, err := Rows(f, form, Options{Title: "Leaf", LeftHanded: left})
		if err != nil {
			t.Fatal(err)
		}
		if r := Audit(c.Scene); !r.Clean() {
			t.Errorf("%v %v %v", r.Overlaps, r.Texts, r.Astray)
		}
		want := "Right side shown, right-side rows read counterclockwise, wrong-side rows clockwise"
		if left {
			want = "Right side shown, right-side rows read clockwise, wrong-side rows counterclockwise"
		}
		if c.Reading != want {
			t.Errorf("reading: %s", c.Reading)
		}
	}
	f := ribbing(4)
	w, err := newWork(f, measure(t, f), Options{}, fabric.InRows)
	if err != nil {
		t.Fatal(err)
	}
	if w.hairpin() {
		t.Error("rows in one side of a chain lie on a hairpin")
	}
}
