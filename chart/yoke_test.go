package chart

import (
	"testing"

	"whorl/patterns/fabric"
)

// poncho is a piece on a ring of chains that grows at four corners, with sides of so many
// chains, and a shell in every eighth stitch of its edging.
func poncho(sides [4]int, rounds int) *fabric.Fabric {
	all := 4
	for _, n := range sides {
		all += n
	}
	c := newCloth("Poncho").chainRing(all)
	last, each := 0, 1 // stitches after the last corner, and to each side of one
	for r := range rounds {
		c.rnd()
		for k := range sides {
			c.st(dc, sides[k])
			if r == 0 {
				c.inc(dc, chains(2), dc)
			} else {
				c.sp(k, dc, dc, chains(2), dc, dc)
			}
		}
		c.st(dc, last).join()
		if r > 0 {
			each = 2
		}
		for k := range sides {
			sides[k] += 2 * each
		}
		sides[0] -= each
		last += each
	}
	c.rnd()
	for k := range sides {
		c.st(sc, sides[k]).sp(k, sc, sc, sc)
	}
	c.st(sc, last).join()
	c.rnd().rep(len(c.below)/8, func(int) { c.st(sc, 1).skip(3).inc(dc, dc, dc, dc, dc, dc, dc).skip(3) }).join()
	return c.fabric()
}

// What begins on a ring of chains and grows at corners has straight sides, where they are as
// long as one another; shells of its edging open evenly about the corners.
func TestPonchoIsSquare(t *testing.T) {
	for _, c := range []struct {
		sides [4]int
		want  int
	}{
		{[4]int{15, 15, 15, 15}, 4},
		{[4]int{15, 17, 15, 17}, 4},
		{[4]int{20, 6, 20, 6}, 0},
	} {
		f := poncho(c.sides, 8)
		w, err := newWork(f, measure(t, f), Options{}, fabric.InRounds)
		if err != nil {
			t.Fatal(err)
		}
		w.turn()
		if w.corners.sides != c.want {
			t.Errorf("%v chains: %d corners, want %d", c.sides, w.corners.sides, c.want)
		}
		if c.want == 0 {
			continue
		}
		chart, err := Round(f, measure(t, f), Options{})
		if err != nil {
			t.Fatal(err)
		}
		if r := Audit(chart.Scene); !r.Clean() || len(r.Fans) > 0 {
			t.Errorf("%v chains: %v %v", c.sides, r.Overlaps, r.Fans)
		}
	}
}
