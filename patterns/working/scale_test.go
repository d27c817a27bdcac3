package working

import (
	"fmt"
	"strings"
	"testing"

	"whorl/patterns"
	"whorl/patterns/fabric"
)

// scaled is a piece with a repeat of every sort, each worked n times.
func scaled(n int) string {
	return fmt.Sprintf(`Rnd 1: %d sc in magic ring; join with sl st in first sc.
Rnd 2: Ch 1, [sk 2 sts, 5 dc in next st, sk 2 sts, sc in next st] %d times; join. (%d dc, %d sc)
Rnd 3: Ch 1, *dc5tog over next 5 sts, ch 2, sc in next st, ch 2; rep from * around; join. (%d dc5tog)
Rnd 4: Ch 1, *sc in next st, 2 sc in next ch-2 sp, sc in next st, 2 sc in next ch-2 sp; rep from * %d more times; join. (%d)
Rnd 5: Ch 3 (counts as dc), dc in next 5 sts, *dc in next 6 sts; rep from * around; join. (%d)`,
		6*n, n, 5*n, n, n, n-1, 6*n, 6*n)
}

func work1(t testing.TB, words string) *fabric.Part {
	p := &patterns.Pattern{File: "scaled", Sizes: []string{""}, Parts: []patterns.Part{{Name: "P", Text: text(words)}}}
	fabrics, faults := Work(p, rule{})
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	return fabrics[0].Parts[0]
}

// Scaling every repeat count scales the fabric: each round of the piece worked
// n times over has n times the stitches, chains and spaces of the piece itself,
// and each repeat is like the first.
func TestScaling(t *testing.T) {
	one := work1(t, scaled(2))
	for _, n := range []int{3, 5, 20, 100} {
		many := work1(t, scaled(2*n))
		if len(many.Rounds) != len(one.Rounds) {
			t.Fatalf("%d rounds, not %d", len(many.Rounds), len(one.Rounds))
		}
		for i, a := range one.Rounds {
			b := many.Rounds[i]
			if b.Count() != n*a.Count() || b.Chains() != n*a.Chains() || len(b.Spaces) != n*len(a.Spaces) {
				t.Errorf("%s, %d times: %d stitches, %d chains, %d spaces for %d, %d, %d", a.Label, n, b.Count(), b.Chains(), len(b.Spaces),
					a.Count(), a.Chains(), len(a.Spaces))
			}
			for k := 1; k < len(b.Repeats); k++ {
				if first, this := repeatOf(b, 0), repeatOf(b, k); first != this {
					t.Fatalf("%s: repeat %d is %s, the first %s", b.Label, k+1, this, first)
				}
			}
		}
		checkPlaces(t, many)
	}
}

func repeatOf(r *fabric.Round, k int) string {
	var b strings.Builder
	for _, st := range r.Stitches[r.Repeats[k].From:r.Repeats[k].To] {
		fmt.Fprintf(&b, "%v %d ", st.Kind, len(st.On))
	}
	return b.String()
}

// Reading and working about 1,000 and 10,000 stitches in four sizes. Time and
// allocations a stitch should not grow.
func BenchmarkFourSizes(b *testing.B) {
	for _, n := range []int{42, 417} {
		words := scaled(n)
		b.Run(fmt.Sprint(24*n), func(b *testing.B) {
			p := &patterns.Pattern{File: "scaled", Sizes: []string{"S", "M", "L", "XL"}, Parts: []patterns.Part{{Name: "P", Text: text(words)}}}
			b.ReportAllocs()
			for b.Loop() {
				if _, faults := Work(p, rule{}); len(faults) > 0 {
					b.Fatal(faults)
				}
			}
			b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/float64(4*24*n), "ns/stitch")
		})
	}
}
