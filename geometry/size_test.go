package geometry

import (
	"fmt"
	"math"
	"testing"
)

const inch = 25.4

// Crown circle diameter: 22 in → 7.0 in (ohewe 2009, crediting the Crochet
// Guild of America); 23 in → 7.32 in, 13.5 in → 4.3 in (hookthatyarn 2016).
// Depth: 23 in → 9.2 in, 13.5 in → 5.4 in, 22 in → 8.8 in (hookthatyarn 2016;
// thecountrywillows).
func TestRulesOfThumb(t *testing.T) {
	for _, c := range []struct{ head, crown, half, depth float64 }{
		{22, 7.0, 0.05, 8.8}, {23, 7.32, 0.005, 9.2}, {13.5, 4.3, 0.05, 5.4},
	} {
		near(t, fmt.Sprint("crown for ", c.head), CrownDiameter(c.head*inch)/inch, c.crown, c.half)
		near(t, fmt.Sprint("depth for ", c.head), HatDepth(c.head*inch)/inch, c.depth, 1e-9)
	}
}

// A shell multiple of 6 at four heads, against arithmetic by hand: 14 sts and
// 8 rounds = 10 cm, made 1 in smaller than the head (thecountrywillows; common
// practice). Width 100/14 = 7.142857 mm, a repeat 42.857 mm.
func TestSizeByHand(t *testing.T) {
	for _, c := range []struct {
		head         float64 // in
		below, above int
		nearest      int
		circumf      float64 // in, of the nearest
	}{
		{14, 42, 48, 48, 13.4983},   // 13 in = 330.2 mm = 46.228 sts
		{18, 60, 66, 60, 16.8729},   // 17 in = 431.8 mm = 60.452 sts
		{20, 66, 72, 66, 18.5602},   // 19 in = 482.6 mm = 67.564 sts
		{22.5, 72, 78, 78, 21.9348}, // 21.5 in = 546.1 mm = 76.454 sts
	} {
		s, err := Size(Ask{Head: c.head * inch, Ease: -inch, Width: 100.0 / 14, Height: 12.5, Multiple: 6})
		if err != nil {
			t.Fatal(err)
		}
		if s.Below.Count != c.below || s.Above.Count != c.above || s.Nearest.Count != c.nearest {
			t.Errorf("%v in: %d, %d, nearest %d", c.head, s.Below.Count, s.Above.Count, s.Nearest.Count)
		}
		near(t, "circumference", s.Nearest.Circumference/inch, c.circumf, 1e-4)
		near(t, "ease", s.Nearest.Ease/inch, c.circumf-c.head, 1e-4)
		near(t, "crown", s.CrownDiameter/inch, c.circumf/math.Pi, 1e-4)
	}
	// 22.5 in: depth 228.6 mm, crown radius 88.67 mm: 7.09 rounds of 12.5 mm,
	// and 139.93 mm are left: 11.19 rounds.
	s, _ := Size(Ask{Head: 22.5 * inch, Ease: -inch, Width: 100.0 / 14, Height: 12.5, Multiple: 6})
	if s.CrownRounds != 7 || s.EvenRounds != 11 {
		t.Errorf("%d rounds of crown, %d even", s.CrownRounds, s.EvenRounds)
	}
}

func TestSizeCounts(t *testing.T) {
	// Against a search of all counts.
	for _, multiple := range []int{1, 2, 6, 11} {
		for plus := -13; plus <= 13; plus++ {
			for head := 3.25; head < 400; head += 7.25 { // exact in binary
				s, err := Size(Ask{Head: head, Width: 5, Height: 5, Multiple: multiple, Plus: plus})
				if err != nil {
					t.Fatal(err)
				}
				below, above := 0, 0
				for m := 1; above == 0; m++ {
					n := multiple*m + plus
					if n < 1 {
						continue
					}
					if float64(n)*5 <= head {
						below = n
					} else {
						above = n
					}
					if float64(n)*5 == head {
						above = n
					}
				}
				if s.Below.Count != below || s.Above.Count != above {
					t.Errorf("%d a + %d at %v mm: %d and %d, want %d and %d", multiple, plus, head,
						s.Below.Count, s.Above.Count, below, above)
				}
			}
		}
	}
	s, err := Size(Ask{Head: 300, Width: 5, Height: 5, Multiple: 6})
	if err != nil || s.Below != s.Above || s.Nearest.Count != 60 || s.Nearest.Ease != 0 {
		t.Errorf("60 stitches exactly: %+v, %v", s, err)
	}
}

func TestSizeRefuses(t *testing.T) {
	good := Ask{Head: 560, Ease: -25, Width: 6, Height: 8, Multiple: 6}
	if _, err := Size(good); err != nil {
		t.Fatal(err)
	}
	for _, x := range []float64{0, -1, math.NaN(), math.Inf(1), math.Inf(-1), 1e9} {
		for name, set := range map[string]func(*Ask){
			"head": func(a *Ask) { a.Head = x }, "width": func(a *Ask) { a.Width = x },
			"height": func(a *Ask) { a.Height = x },
			"ease":   func(a *Ask) { a.Ease = x*1e3 - 600 }, "depth": func(a *Ask) { a.Depth = x - 1e-9 },
			"multiple": func(a *Ask) { a.Multiple = int(math.Max(-5, math.Min(0, x))) },
		} {
			a := good
			set(&a)
			if s, err := Size(a); err == nil {
				t.Errorf("%s %v: %+v", name, x, s)
			}
		}
	}
}
