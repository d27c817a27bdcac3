package geometry

import (
	"fmt"
	"testing"

	"whorl/patterns/fabric"
	"whorl/patterns/stitch"
)

// tubeOf is a tube of so many rounds of 100 hdc.
func tubeOf(n int) *fabric.Fabric {
	p := rounds().ring(100)
	for range n {
		p.even(hdc, stitch.Top, 100)
	}
	return &fabric.Fabric{Parts: []*fabric.Part{p.part}}
}

// Measuring takes its memory in one piece: no allocations a round.
func TestMeasureAllocatesOnce(t *testing.T) {
	allocations := func(n int) float64 {
		f := tubeOf(n)
		return testing.AllocsPerRun(5, func() {
			if _, err := Measure(f, nil); err != nil {
				t.Fatal(err)
			}
		})
	}
	if a, b := allocations(20), allocations(400); b > a {
		t.Errorf("%v allocations for 20 rounds, %v for 400", a, b)
	}
}

// 200 rounds of 100 stitches, and twice and four times as many rounds.
func BenchmarkMeasure(b *testing.B) {
	for _, n := range []int{200, 400, 800} {
		f := tubeOf(n)
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := Measure(f, nil); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
