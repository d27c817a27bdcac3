package chart

import (
	"testing"
)

// A thumb opening stays open where its few chains pass over it, and closes by and by.
func TestThumbOpening(t *testing.T) {
	c := newCloth("Hand").chainRing(42)
	c.rnd().rep(42, func(int) { c.st(hdc, 1) })
	for range 5 {
		c.rnd().st(hdc, 42)
	}
	c.rnd().st(hdc, 17).ch(2).skip(8).st(hdc, 17)
	c.rnd().st(hdc, 17).sp(0, hdc, hdc).st(hdc, 17)
	for range 4 {
		c.rnd().st(hdc, 36)
	}
	s := draw(t, sample{"", c.fabric(), Options{Title: "Hand"}}).Scene
	if r := Audit(s); len(r.Leaning) > 0 || !r.Clean() {
		t.Errorf("leaning %v, overlaps %v", r.Leaning, r.Overlaps)
	}
	wide := func(a, b string) float64 {
		return pointsOf(find(&s.Root, b), "top")[0].Sub(pointsOf(find(&s.Root, a), "top")[0]).Length()
	}
	if open, first := wide("r6s18", "r6s25"), wide("r7s17", "r7s18"); first < 0.8*open {
		t.Errorf("the opening is %.1f mm wide, what lies over it %.1f", open, first)
	}
}
