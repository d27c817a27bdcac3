package chart

import (
	"math"
	"slices"
	"testing"

	"whorl/chart/ring"
	"whorl/patterns/fabric"
	"whorl/patterns/stitch"
)

// roundChain is a round worked both sides of a chain of so many: two in the one end, three in
// the other.
func roundChain(n int) *cloth {
	c := newCloth("Oval")
	base := &fabric.Round{Label: "Foundation"}
	for range n {
		base.Stitches = append(base.Stitches, fabric.Stitch{Kind: stitch.Of(stitch.Chain)})
	}
	c.part.Rounds = append(c.part.Rounds, base)
	c.rnd()
	put := func(in stitch.Into, at, n int) {
		for range n {
			c.put(fabric.Stitch{Kind: sc, Counts: true, On: []fabric.Place{{Into: in, At: fabric.Ref{Stitch: at}}}})
		}
	}
	for at := n - 2; at > 0; at-- {
		put(stitch.Top, at, 1)
	}
	put(stitch.Top, 0, 3)
	for at := 1; at < n-2; at++ {
		put(stitch.Underside, at, 1)
	}
	put(stitch.Underside, n-2, 2)
	return c
}

// bothSides is three rounds worked both sides of a chain of eight.
func bothSides() *fabric.Fabric {
	c := roundChain(8)
	c.rnd().inc(sc, sc).st(sc, 5).inc(sc, sc).inc(sc, sc).inc(sc, sc).st(sc, 5).inc(sc, sc).inc(sc, sc)
	c.rnd().st(sc, 22)
	return c.fabric()
}

// A handle of chains on the side of an oval lies over the stitches that it passes.
func TestOvalHandles(t *testing.T) {
	c := roundChain(31)
	for range 10 {
		c.rnd().rep(31, func(int) { c.st(sc, 1).st(dc, 1) })
		c.rnd().st(sc, 62)
	}
	c.rnd().st(sc, 7).skip(16).ch(20).st(sc, 15).skip(16).ch(20).st(sc, 8)
	f := c.fabric()
	if r := Audit(draw(t, sample{"handles", f, Options{Title: "Oval"}}).Scene); len(r.Overlaps) > 0 {
		t.Error(r.Overlaps)
	}
	w, err := newWork(f, measure(t, f), Options{}, fabric.InRounds)
	if err != nil {
		t.Fatal(err)
	}
	w.draw()
	last, below := w.courses[22], w.courses[21]
	for _, i := range last.order {
		for _, j := range below.order {
			chain, top := w.top(last, i), w.top(below, j)
			if over := math.Abs(top.Y-w.centre.Y) - math.Abs(chain.Y-w.centre.Y); last.isLoop(i) && math.Abs(chain.X-top.X) < clearSide*w.unit && (chain.Y > w.centre.Y) == (top.Y > w.centre.Y) && over > 0 {
				t.Errorf("chain %d lies %.2f units under stitch %d", i, over/w.unit, j)
			}
		}
	}
}

// Rounds worked both sides of a chain lie on a stadium, along whose sides stitches stand
// square; a chain worked into on one side only does not make one.
func TestOval(t *testing.T) {
	f := bothSides()
	w, err := newWork(f, measure(t, f), Options{}, fabric.InRounds)
	if err != nil {
		t.Fatal(err)
	}
	w.draw()
	s, ok := w.shape.(ring.Stadium)
	if !ok {
		t.Fatalf("it lies on %T", w.shape)
	}
	if s.Long <= 0 || s.Side <= 0 || s.Side >= ring.Turn/2 {
		t.Errorf("a stadium %.1f mm long, with sides of %.2f", s.Long, s.Side)
	}
	c := w.courses[1]
	square := 0
	for i := range c.round.Stitches {
		st := &c.round.Stitches[i]
		if c.rank[i] < 0 || len(st.On) != 1 || st.Kind.Base != stitch.Single {
			continue
		}
		foot, _ := w.foot(c, i, st.On[0])
		if lean := math.Abs(w.top(c, i).X - foot.X); lean < 0.1*w.unit {
			square++
		}
	}
	if square < 2*(w.oval.across-1) {
		t.Errorf("%d stitches stand square to the chain, of %d along its sides", square, 2*(w.oval.across-1))
	}
	if r := Audit(draw(t, sample{"oval", f, Options{Title: "Oval"}}).Scene); !r.Clean() {
		t.Errorf("%v %v %v", r.Overlaps, r.Texts, r.Astray)
	}
}

// The chains missed at the beginning of an oval are a leg of the end that the stitches in the
// chain beside them go round, and no chain of its sides.
func TestOvalMissedChains(t *testing.T) {
	c := newCloth("Mat")
	base := &fabric.Round{Label: "Foundation"}
	for range 13 {
		base.Stitches = append(base.Stitches, fabric.Stitch{Kind: stitch.Of(stitch.Chain)})
	}
	c.part.Rounds = append(c.part.Rounds, base)
	c.rnd()
	put := func(in stitch.Into, at, n int) {
		for range n {
			c.put(fabric.Stitch{Kind: dc, Counts: true, On: []fabric.Place{{Into: in, At: fabric.Ref{Stitch: at}}}})
		}
	}
	c.put(fabric.Stitch{Kind: stitch.Of(stitch.Chain), Role: fabric.Start, Chains: 3, As: dc, Counts: true,
		On: []fabric.Place{{Into: stitch.Top, At: fabric.Ref{Stitch: 10}}}})
	put(stitch.Top, 9, 5)
	for at := 8; at > 0; at-- {
		put(stitch.Top, at, 1)
	}
	put(stitch.Top, 0, 6)
	for at := 1; at < 9; at++ {
		put(stitch.Underside, at, 1)
	}
	c.join()
	f := c.fabric()
	w, err := newWork(f, measure(t, f), Options{}, fabric.InRounds)
	if err != nil {
		t.Fatal(err)
	}
	w.draw()
	first := w.courses[1]
	for k := range 8 { // the sides are as the ends: even, and square to the chain
		over, under := w.top(first, 6+k), w.top(first, 27-k)
		if off := math.Abs(over.X - under.X); off > 0.1*w.unit {
			t.Errorf("stitches %d and %d in one chain are %.2f units apart along it", 6+k, 27-k, off/w.unit)
		}
	}
	if r := Audit(draw(t, sample{"mat", f, Options{Title: "Mat"}}).Scene); len(r.Overlaps)+len(r.Astray)+len(r.Fans) > 0 {
		t.Errorf("%v %v %v", r.Overlaps, r.Astray, r.Fans)
	}
}

// growing is a flat oval of so many rounds whose increases lie one over another, at the
// far sides of the groups that they are worked in.
func growing(rounds int) *fabric.Fabric {
	f := bothSides()
	c := &cloth{part: f.Parts[0]}
	c.part.Rounds = c.part.Rounds[:3]
	for r := 2; r <= rounds; r++ {
		group := func() { c.st(sc, r-1).inc(sc, sc) }
		c.rnd()
		group()
		c.st(sc, 5)
		for range 3 {
			group()
		}
		c.st(sc, 5)
		group()
		group()
	}
	return f
}

// However the increases lie, the stitches on the sides stand in straight columns and those
// about the ends go on evenly from them.
func TestOvalEnds(t *testing.T) {
	f := growing(9)
	w, err := newWork(f, measure(t, f), Options{}, fabric.InRounds)
	if err != nil {
		t.Fatal(err)
	}
	w.draw()
	for _, c := range w.courses[2:] {
		sides, wide, close := 0, 0.0, math.Inf(1)
		for k, i := range c.order {
			at := w.shape.At(c.theta[i], c.radius[i])
			foot, _ := w.foot(c, i, c.round.Stitches[i].On[0])
			if math.Abs(at.OutX) < 1e-6 && math.Abs(w.top(c, i).X-foot.X) < 0.05*w.unit {
				sides++
			}
			next := c.order[(k+1)%len(c.order)]
			q := w.shape.At(c.theta[next], c.radius[next])
			gap := math.Hypot(q.X-at.X, q.Y-at.Y)
			wide, close = math.Max(wide, gap), math.Min(close, gap)
		}
		if sides < 10 {
			t.Errorf("%s: %d of 10 stitches of the sides stand straight", c.label(), sides)
		}
		if c.index > 3 && wide > 2.2*close {
			t.Errorf("%s: stitches from %.1f to %.1f mm apart", c.label(), close, wide)
		}
	}
	if r := Audit(draw(t, sample{"oval", f, Options{Title: "Oval"}}).Scene); !r.Clean() {
		t.Errorf("%v %v %v", r.Overlaps, r.Texts, r.Astray)
	}
}

// Handles about the ends of an oval, of which one ends its round, and what fills them leave
// the stitches beside them where they stand.
func TestHandlesAboutOvalEnds(t *testing.T) {
	c := roundChain(8)
	for r := range 4 { // 16 to 40 stitches
		c.rnd()
		for k, times := range []int{1, 3, 2} {
			for range times {
				c.st(sc, r).inc(sc, sc)
			}
			if k < 2 {
				c.st(sc, 5)
			}
		}
	}
	n := len(c.cur.Stitches)
	for range 6 {
		c.rnd().st(sc, n)
	}
	const side = 12 // stitches before each handle
	c.rnd().st(sc, side).skip(8).ch(8).st(sc, side).skip(8).ch(8)
	ten := slices.Repeat([]stitch.Kind{sc}, 10)
	c.rnd().st(sc, side).sp(0, ten...).st(sc, side).sp(1, ten...)
	f := c.fabric()
	if r := Audit(draw(t, sample{"basket", f, Options{Title: "Basket"}}).Scene); len(r.Overlaps)+len(r.Leaning) > 0 {
		t.Errorf("overlaps %v, leaning %v", r.Overlaps, r.Leaning)
	}
}
