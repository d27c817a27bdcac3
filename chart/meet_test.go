package chart

import (
	"testing"

	"whorl/patterns/stitch"
)

// The columns of a tube that are worked together far out on the disc run side by side until
// they meet, and their legs stand up.
func TestColumnsMeet(t *testing.T) {
	c := newCloth("Tube").magic()
	c.rnd().st(sc, 6)
	c.rnd().rep(6, func(int) { c.inc(sc, sc) })
	for n := 1; n < 4; n++ {
		c.rnd().rep(6, func(int) { c.st(sc, n).inc(sc, sc) })
	}
	for range 4 {
		c.rnd().st(sc, 30)
	}
	c.rnd().rep(6, func(int) { c.st(sc, 3).tog(stitch.Tog(stitch.Single, 2)) })
	c.rnd().st(sc, 24)
	s := draw(t, sample{"", c.fabric(), Options{Title: "Tube"}}).Scene
	r := Audit(s)
	if len(r.Flat)+len(r.Leaning) > 0 || !r.Clean() {
		t.Errorf("legs flat %v, leaning %v; repeats differ by %.2f°", r.Flat, r.Leaning, r.Turn)
	}
	// In the round below no two columns that meet are farther apart than those that do not.
	top := func(id string) float64 {
		p := pointsOf(find(&s.Root, id), "top")[0]
		return p.Sub(pointsOf(find(&s.Root, "r8s4"), "top")[0]).Length()
	}
	if meeting, beside := top("r8s5"), top("r8s3"); meeting > 0.8*beside {
		t.Errorf("columns that meet are %.1f mm apart, others %.1f", meeting, beside)
	}
}

// In the half of a ball that closes in, columns come together on the way to where they are
// worked together; its rounds do not turn about its middle for that.
func TestClosingHalfComesTogether(t *testing.T) {
	c := newCloth("Lemon").magic()
	c.rnd().st(sc, 6)
	for n := range 4 {
		c.rnd().rep(6, func(int) { c.st(sc, n).inc(sc, sc) })
	}
	for range 6 {
		c.rnd().st(sc, 30)
	}
	together := func(n int) { c.rnd().rep(6, func(int) { c.st(sc, n).tog(stitch.Tog(stitch.Single, 2)) }) }
	together(3)
	together(2)
	c.rnd().st(sc, 18)
	together(1)
	together(0)
	c.rnd().st(sc, 6)
	f := c.fabric()
	l := Halves(f, measure(t, f), Options{Title: "Lemon"})
	if len(l) != 2 {
		t.Fatalf("%d halves", len(l))
	}
	r := Audit(draw(t, sample{"", f, l[1]}).Scene)
	if len(r.Flat)+len(r.Leaning) > 0 || !r.Clean() {
		t.Errorf("legs flat %v, leaning %v", r.Flat, r.Leaning)
	}
}
