package geometry

import (
	"fmt"
	"math"
	"testing"

	"whorl/patterns/stitch"
)

// A piece that is increased in every second round, by as much as would keep a
// disc flat in one, is a cone whose radius grows by half its slant: half-angle
// asin ½ (exact shape). Every third and every fourth round likewise.
func TestIncreasesNotInEveryRound(t *testing.T) {
	const s, n = 5.0, 48
	for every, tolerance := range map[int]float64{2: 0.003, 3: 0.01, 4: 0.025} {
		var lengths, slants []float64
		for i := range n {
			lengths = append(lengths, 2*math.Pi*(20+s*float64((i+1)/every)))
			slants = append(slants, s)
		}
		_, z, err := Settle(lengths, slants, 20)
		if err != nil {
			t.Fatal(err)
		}
		want := n * s * math.Sqrt(1-1/float64(every*every))
		near(t, fmt.Sprint("height, increased every ", every, " rounds"), z[n-1]/want, 1, tolerance)
	}
}

// The edge of a flat crown is sharp, and stays so.
func TestEvenLeavesTheEdgeOfACrown(t *testing.T) {
	slants := make([]float64, 10)
	for i := range slants {
		slants[i] = 4
	}
	growths := []float64{4, 4, 4, 4, 2, 0, 0, -1, -3, -4}
	was := append([]float64(nil), growths...)
	even(growths, slants, make([]float64, 10))
	for i := range growths {
		near(t, fmt.Sprint("growth ", i), growths[i], was[i], 0)
	}
}

func TestEvenKeepsTheRadius(t *testing.T) {
	growths, slants := []float64{3, -2, 0, 5, 1, 1, 0, 4}, []float64{4, 5, 0.1, 6, 2, 9, 4, 4}
	before, after := 0.0, 0.0
	for _, g := range growths {
		before += g
	}
	even(growths, slants, make([]float64, 8))
	for _, g := range growths {
		after += g
	}
	near(t, "the last radius", after, before, 1e-12)
}

// The lean of the rounds is that of the meridian, too.
func TestAngle(t *testing.T) {
	g := gauge(t, Reading{Count: 20, Kind: sc, Over: 100})
	b := rounds().ring(0).inRing(sc, 6)
	for n := 2; n <= 12; n++ {
		b.even(sc, stitch.Top, 6*((n+1)/2))
	}
	f := b.measured(t, g)
	for i := 4; i < 10; i++ {
		near(t, fmt.Sprint("lean of round ", i), f[i].Angle, math.Asin(0.5), 0.04)
	}
}
