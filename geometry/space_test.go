package geometry

import (
	"math"
	"reflect"
	"slices"
	"testing"
)

// even reports whether gaps round a circle are spread evenly by definition:
// largest less smallest at most 1, and a mirror image of themselves about some
// axis; and, beyond it, whether every run of neighbours is as long as any other
// of as many, within 1.
func isEven(t *testing.T, what string, gaps []int) {
	t.Helper()
	n := len(gaps)
	if lo, hi := slices.Min(gaps), slices.Max(gaps); hi-lo > 1 {
		t.Errorf("%s: gaps %v from %d to %d", what, gaps, lo, hi)
	}
	symmetric := false
	for axis := 0; axis < n && !symmetric; axis++ {
		symmetric = true
		for i := 0; i < n && symmetric; i++ {
			symmetric = gaps[i] == gaps[(axis-i+n)%n]
		}
	}
	if !symmetric {
		t.Errorf("%s: gaps %v have no axis", what, gaps)
	}
	for k := 2; k < n; k++ {
		lo, hi := 1<<30, 0
		sum := 0
		for i := 0; i < n+k; i++ {
			sum += gaps[i%n]
			if i >= k {
				sum -= gaps[i-k]
			}
			if i >= k-1 {
				lo, hi = min(lo, sum), max(hi, sum)
			}
		}
		if hi-lo > 1 {
			t.Errorf("%s: gaps %v are lumpy: %d of them are from %d to %d", what, gaps, k, lo, hi)
			return
		}
	}
}

func TestEvenExhaustively(t *testing.T) {
	for m := 1; m <= 120; m++ {
		for n := 1; n <= m; n++ {
			for _, c := range []Change{Increase, Decrease} {
				s, err := Even(n, m, c)
				if n*c.Takes > m {
					if err == nil {
						t.Fatalf("%d changes of %d fit in %d", n, c.Takes, m)
					}
					continue
				}
				if err != nil {
					t.Fatal(err)
				}
				if len(s.Before) != n || s.Places() != m || s.Leaves() != m+n*(c.Makes-c.Takes) || s.After != 0 {
					t.Fatalf("%d in %d: %+v", n, m, s)
				}
				isEven(t, "even", s.Before)
				// Seen from the join the two sides are alike, to one place.
				h := s.Centred()
				if h.Places() != m || h.Before[0]-h.After < 0 || h.Before[0]-h.After > 1 {
					t.Fatalf("%d in %d centred: %+v", n, m, h)
				}
				for i := 1; i < n; i++ {
					if h.Before[i] != h.Before[n-i] {
						t.Fatalf("%d in %d centred: %v is not symmetric", n, m, h.Before)
					}
				}
			}
		}
	}
}

func TestStackedAndStaggered(t *testing.T) {
	for m := 12; m <= 120; m++ {
		for n := 2; n <= m/6; n++ {
			for _, c := range []Change{Increase, Decrease} {
				below, err := Even(n, m, c)
				if err != nil {
					t.Fatal(err)
				}
				here, err := Even(n, below.Leaves(), c)
				if err != nil {
					t.Fatal(err)
				}
				offset := func(s Spacing) float64 { // worst, in gaps
					worst := 0.0
					for _, x := range s.taken() {
						p := slices.Clone(below.made())
						slices.Sort(p)
						worst = math.Max(worst, apart(p, x)*float64(n))
					}
					return worst
				}
				// One and a half places either way is as near as whole
				// stitches of unequal gaps can be.
				near := 1.5 * float64(n) / float64(here.Places())
				stacked, staggered := here.Stacked(below), here.Staggered(below)
				if stacked.Places() != here.Places() || staggered.Places() != here.Places() {
					t.Fatal("places are lost in turning")
				}
				if o := offset(stacked); o > near+1e-9 {
					t.Errorf("%d in %d stacked: %.2f of a gap off", n, m, o)
				}
				if o := offset(staggered); o < 0.5-2*near {
					t.Errorf("%d in %d staggered: only %.2f of a gap off", n, m, o)
				}
			}
		}
	}
	// The usual crown, "*sc in next 5 sts, sc2tog" of 42: stacked below it
	// goes on as "*sc in next 4 sts, sc2tog".
	below, _ := Even(6, 42, Decrease)
	here, _ := Even(6, 36, Decrease)
	if s := here.Stacked(below); !reflect.DeepEqual(s.Before, []int{4, 4, 4, 4, 4, 4}) || s.After != 0 {
		t.Errorf("stacked: %+v", s)
	}
	if s := here.Staggered(below); s.Before[0] != 2 || s.After != 2 {
		t.Errorf("staggered: %+v", s)
	}
	none, _ := Even(0, 36, Decrease)
	if s := here.Stacked(none); !reflect.DeepEqual(s, here) {
		t.Errorf("stacked on nothing: %+v", s)
	}
}

func TestEvenRefuses(t *testing.T) {
	for _, c := range []struct{ n, m, takes int }{
		{-1, 10, 1}, {1, 0, 1}, {1, -5, 1}, {11, 10, 1}, {6, 10, 2}, {1, 10, 0}, {1, 10, -1},
		{1, math.MaxInt, 1}, {math.MaxInt, 10, math.MaxInt},
	} {
		if s, err := Even(c.n, c.m, Change{Takes: c.takes, Makes: 1}); err == nil {
			t.Errorf("%v: %+v", c, s)
		}
	}
	if s, err := Even(0, 10, Increase); err != nil || s.Places() != 10 || s.Leaves() != 10 {
		t.Errorf("no changes: %+v, %v", s, err)
	}
	if s, err := Even(1, 1, Increase); err != nil || s.Before[0] != 0 {
		t.Errorf("one in one: %+v, %v", s, err)
	}
	for _, c := range [][2]int{{0, 5}, {-1, 5}, {3, -1}, {math.MaxInt, 1}} {
		if s := Shares(c[0], c[1]); s != nil {
			t.Errorf("Shares(%v) = %v", c, s)
		}
	}
}

func TestBlocks(t *testing.T) {
	for _, c := range []struct {
		runs []int
		want []Block
	}{
		{nil, nil},
		{[]int{5}, []Block{{1, []int{5}}}},
		{[]int{5, 6}, []Block{{1, []int{5, 6}}}},
		{[]int{5, 5, 5, 5}, []Block{{4, []int{5}}}},
		{[]int{5, 6, 5, 6, 5}, []Block{{2, []int{5, 6}}, {1, []int{5}}}},
		{[]int{4, 5, 5, 5, 4}, []Block{{1, []int{4}}, {3, []int{5}}, {1, []int{4}}}},
		{[]int{3, 1, 2, 1, 2}, []Block{{1, []int{3}}, {2, []int{1, 2}}}},
	} {
		got := Blocks(c.runs)
		if !reflect.DeepEqual(got, c.want) {
			t.Errorf("Blocks(%v) = %v, want %v", c.runs, got, c.want)
		}
	}
	for n := 1; n <= 60; n++ { // nothing is lost
		runs := Shares(n, 137)
		var back []int
		for _, b := range Blocks(runs) {
			for range b.Times {
				back = append(back, b.Runs...)
			}
		}
		if !slices.Equal(back, runs) {
			t.Errorf("Blocks(%v) says %v", runs, back)
		}
	}
}

// Picked up evenly, half on each side of a halfway marker: common practice, no
// source.
func TestAlongRows(t *testing.T) {
	for rows := 1; rows <= 120; rows++ {
		for n := 1; n <= 150; n++ {
			p, err := AlongRows(n, rows)
			if err != nil {
				t.Fatal(err)
			}
			isEven(t, "pick-up", p.Each)
			sum, half := 0, 0
			for i, e := range p.Each {
				sum += e
				if i < rows/2 {
					half += e
				}
			}
			if sum != n || p.Rows*n != p.Stitches*rows {
				t.Fatalf("%d along %d: %+v", n, rows, p)
			}
			if rows%2 == 0 && (half != p.Markers[1].Stitches || half != (n+1)/2) {
				t.Errorf("%d along %d: %d before the middle, marker %+v", n, rows, half, p.Markers[1])
			}
			if p.Markers[1].Rows != float64(rows)/2 {
				t.Errorf("%d along %d: marker %+v", n, rows, p.Markers[1])
			}
		}
	}
	p, _ := AlongRows(72, 96)
	if p.Stitches != 3 || p.Rows != 4 || p.Markers[0] != (Marker{24, 18}) {
		t.Errorf("72 along 96: %+v", p)
	}
	for _, bad := range [][2]int{{0, 5}, {5, 0}, {-1, 5}, {5, -1}, {math.MaxInt, 5}, {5, math.MaxInt}} {
		if _, err := AlongRows(bad[0], bad[1]); err == nil {
			t.Errorf("AlongRows%v gave no error", bad)
		}
	}
}
