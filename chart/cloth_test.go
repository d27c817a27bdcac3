package chart

import (
	"fmt"
	"testing"

	"whorl/geometry"
	"whorl/patterns/fabric"
	"whorl/patterns/stitch"
)

// cloth builds fabrics for the tests: a hook with a cursor on the round below.
type cloth struct {
	part  *fabric.Part
	cur   *fabric.Round
	next  int            // the next place
	below []fabric.Place // places of the round below in the order worked over
	last  fabric.Place   // place worked into last
	turn  bool           // the next round is turned
}

func newCloth(name string) *cloth {
	return &cloth{part: &fabric.Part{Name: name, From: -1}}
}

// magic begins in a magic ring, chains in a joined chain.
func (c *cloth) magic() *cloth {
	c.part.Rounds = append(c.part.Rounds, &fabric.Round{Label: "Ring", Ring: true, Closing: fabric.Joined})
	c.below = nil
	return c
}

func (c *cloth) chainRing(n int) *cloth {
	r := &fabric.Round{Label: "Foundation", Ring: true, Closing: fabric.Joined}
	for i := 0; i < n; i++ {
		r.Stitches = append(r.Stitches, fabric.Stitch{Kind: stitch.Of(stitch.Chain)})
	}
	c.part.Rounds = append(c.part.Rounds, r)
	return c
}

func (c *cloth) index() int { return len(c.part.Rounds) - 1 }

// rnd begins a round.
func (c *cloth) rnd() *cloth {
	c.below = nil
	if c.index() >= 0 {
		prev := c.part.Rounds[c.index()]
		for i := range prev.Stitches {
			s := &prev.Stitches[i]
			if s.Counts || prev.Number == 0 && s.IsChain() {
				c.below = append(c.below, fabric.Place{At: fabric.Ref{Round: c.index(), Stitch: i}})
			}
		}
		if prev.Reversed != c.turn { // worked back
			for i, j := 0, len(c.below)-1; i < j; i, j = i+1, j-1 {
				c.below[i], c.below[j] = c.below[j], c.below[i]
			}
		}
	}
	n := 1
	if k := c.index(); k >= 0 {
		n = c.part.Rounds[k].Number + 1
	}
	c.cur = &fabric.Round{Label: fmt.Sprintf("Rnd %d", n), Number: n, Closing: fabric.Spiral, Reversed: c.turn, Wrong: c.turn}
	c.part.Rounds = append(c.part.Rounds, c.cur)
	c.next = 0
	return c
}

func (c *cloth) edge(part, rows, perRow int) *cloth {
	c.rnd()
	c.below = nil
	for i := 0; i < rows; i++ {
		for k := 0; k < perRow; k++ {
			c.below = append(c.below, fabric.Place{Into: stitch.RowEnd, Part: part, At: fabric.Ref{Round: i + 1}})
		}
	}
	c.cur.Edge = rows
	c.part.From = part
	return c
}

func (c *cloth) put(s fabric.Stitch) int {
	c.cur.Stitches = append(c.cur.Stitches, s)
	if len(s.On) > 0 {
		c.last = s.On[len(s.On)-1]
	}
	return len(c.cur.Stitches) - 1
}

func (c *cloth) take() fabric.Place {
	if len(c.below) == 0 {
		return fabric.Place{Into: stitch.Ring, At: fabric.Ref{Round: 0, Stitch: -1}}
	}
	p := c.below[c.next%len(c.below)]
	c.next++
	return p
}

// start chains n; with a kind it counts as that and takes the first place.
func (c *cloth) start(n int, as ...stitch.Kind) *cloth {
	s := fabric.Stitch{Kind: stitch.Of(stitch.Chain), Role: fabric.Start, Chains: n}
	if len(as) > 0 {
		s.Counts, s.As = true, as[0]
		s.On = []fabric.Place{c.take()}
	} else if len(c.below) > 0 {
		s.On = []fabric.Place{c.below[0]}
	}
	c.put(s)
	return c
}

// st works n stitches, one in each next place.
func (c *cloth) st(k stitch.Kind, n int) *cloth {
	for i := 0; i < n; i++ {
		c.put(fabric.Stitch{Kind: k, Counts: true, On: []fabric.Place{c.take()}})
	}
	return c
}

// into works a stitch in one place in a manner of its own.
func (c *cloth) into(k stitch.Kind, in stitch.Into, n int) *cloth {
	for i := 0; i < n; i++ {
		p := c.take()
		p.Into = in
		c.put(fabric.Stitch{Kind: k, Counts: true, On: []fabric.Place{p}})
	}
	return c
}

// inc works several stitches in the next place.
func (c *cloth) inc(ks ...stitch.Kind) *cloth {
	p := c.take()
	for _, k := range ks {
		if k.Base == stitch.Chain {
			c.ch(k.Legs)
			continue
		}
		c.put(fabric.Stitch{Kind: k, Counts: true, On: []fabric.Place{p}})
	}
	return c
}

// same works another stitch in the place of the last.
func (c *cloth) same(k stitch.Kind) *cloth {
	c.put(fabric.Stitch{Kind: k, Counts: true, On: []fabric.Place{c.last}})
	return c
}

func (c *cloth) tog(k stitch.Kind) *cloth {
	s := fabric.Stitch{Kind: k, Counts: true}
	for i := 0; i < k.Legs; i++ {
		s.On = append(s.On, c.take())
	}
	c.put(s)
	return c
}

func (c *cloth) skip(n int) *cloth { c.next += n; return c }

// ch chains n as a space.
func (c *cloth) ch(n int) *cloth {
	from := len(c.cur.Stitches)
	for i := 0; i < n; i++ {
		c.put(fabric.Stitch{Kind: stitch.Of(stitch.Chain)})
	}
	c.cur.Spaces = append(c.cur.Spaces, fabric.Span{From: from, To: from + n})
	return c
}

// sp works stitches in space k of the round below.
func (c *cloth) sp(k int, ks ...stitch.Kind) *cloth {
	i := c.index() - 1
	spaces := c.part.Rounds[i].Spaces
	sp := spaces[k%len(spaces)]
	p := fabric.Place{Into: stitch.Space, At: fabric.Ref{Round: i, Stitch: sp.From}, Last: fabric.Ref{Round: i, Stitch: sp.To - 1}}
	for _, k := range ks {
		if k.Base == stitch.Chain {
			c.ch(k.Legs)
			continue
		}
		c.put(fabric.Stitch{Kind: k, Counts: true, On: []fabric.Place{p}})
	}
	return c
}

func (c *cloth) join() *cloth {
	for i := range c.cur.Stitches {
		if s := &c.cur.Stitches[i]; s.Counts {
			c.cur.Closing = fabric.Joined
			c.put(fabric.Stitch{Kind: stitch.Of(stitch.Slip), Role: fabric.Join,
				On: []fabric.Place{{At: fabric.Ref{Round: c.index(), Stitch: i}}}})
			break
		}
	}
	return c
}

// rep works f n times as the round's repeat.
func (c *cloth) rep(n int, f func(i int)) *cloth {
	for i := 0; i < n; i++ {
		from := len(c.cur.Stitches)
		f(i)
		c.cur.Repeats = append(c.cur.Repeats, fabric.Span{From: from, To: len(c.cur.Stitches)})
	}
	return c
}

func (c *cloth) fabric() *fabric.Fabric {
	return &fabric.Fabric{Size: "Adult", Parts: []*fabric.Part{c.part}}
}

var (
	sc  = stitch.Of(stitch.Single)
	hdc = stitch.Of(stitch.Half)
	dc  = stitch.Of(stitch.Double)
	tr  = stitch.Of(stitch.Treble)
	sl  = stitch.Of(stitch.Slip)
)

func chains(n int) stitch.Kind { return stitch.Kind{Base: stitch.Chain, Legs: n} }

// flat is a flat circle: k increases a round for n rounds.
func flat(kind stitch.Kind, k, n int, joined bool) *fabric.Fabric {
	c := newCloth("Circle").magic()
	for r := 1; r <= n; r++ {
		c.rnd()
		if joined {
			c.start(max(1, kind.Chains()-1))
		}
		if r == 1 {
			c.st(kind, k)
		} else {
			c.rep(k, func(int) { c.st(kind, r-2).inc(kind, kind) })
		}
		if joined {
			c.join()
		}
	}
	return c.fabric()
}

// flatCounting is a flat circle of dc whose ch 3 counts.
func flatCounting(k, n int) *fabric.Fabric {
	c := newCloth("Crown").magic()
	for r := 1; r <= n; r++ {
		c.rnd().start(3, dc)
		if r == 1 {
			c.st(dc, k-1)
		} else {
			c.same(dc)
			c.rep(k-1, func(int) { c.st(dc, r-2).inc(dc, dc) })
			c.st(dc, r-2)
		}
		c.join()
	}
	return c.fabric()
}

// cap is a crown-down hat: a flat crown and straight sides.
func capped(kind stitch.Kind, k, up, sides int) *fabric.Fabric {
	c := newCloth("Hat").magic()
	for r := 1; r <= up+sides; r++ {
		c.rnd().start(max(1, kind.Chains()-1))
		switch {
		case r == 1:
			c.st(kind, k)
		case r <= up:
			c.rep(k, func(int) { c.st(kind, r-2).inc(kind, kind) })
		default:
			c.st(kind, k*up)
		}
		c.join()
	}
	return c.fabric()
}

// shells is a brim-up body on row ends: sc, shells of 5 dc and dc5tog by turns,
// a round of chain spaces, and a crown closed by decreases.
func shells() *fabric.Fabric {
	c := newCloth("Body")
	c.edge(0, 72, 1).start(1).st(sc, 72).join()
	tog := stitch.Tog(stitch.Double, 5)
	for k := 0; k < 2; k++ {
		c.rnd().start(1).rep(12, func(int) { c.st(sc, 1).skip(2).inc(dc, dc, dc, dc, dc).skip(2) }).join()
		c.rnd().start(3)
		// sc on the middle of each shell, dc5tog over two dc, the sc and two dc.
		c.skip(3)
		c.rep(12, func(int) { c.st(sc, 1).ch(2).tog(tog).ch(2) })
		c.join()
		c.rnd().start(1)
		i := 0
		c.rep(12, func(int) {
			c.st(sc, 1).sp(i, sc, sc)
			i++
			c.st(sc, 1).sp(i, sc, sc)
			i++
		})
		c.join()
	}
	n := 72
	for _, left := range []int{63, 54, 45, 36, 27, 18, 9} {
		each := n/9 - 2
		c.rnd().start(2).rep(9, func(int) { c.st(hdc, each).tog(stitch.Tog(stitch.Half, 2)) }).join()
		n = left
	}
	f := c.fabric()
	c.part.From = -1
	return f
}

// gather closes 72 stitches to 9 in four rounds.
func gather() *fabric.Fabric {
	c := newCloth("Crown")
	c.chainRing(72)
	c.rnd().start(1).st(sc, 72).join()
	for _, k := range []int{4, 4, 4, 2} {
		n := c.part.Rounds[c.index()].Count()
		c.rnd().start(3)
		switch k {
		case 2:
			c.rep(n/2, func(int) { c.tog(stitch.Tog(stitch.Double, 2)) })
		default:
			c.rep(n/k, func(int) { c.st(dc, k-2).tog(stitch.Tog(stitch.Double, 2)) })
		}
		c.join()
	}
	return c.fabric()
}

// mesh is dc and ch-1 spaces round a ring of chains.
func mesh(n, rounds int) *fabric.Fabric {
	c := newCloth("Mesh").chainRing(6)
	c.rnd().start(3, dc)
	c.part.Rounds[1].Stitches[0].On = []fabric.Place{{Into: stitch.Ring, At: fabric.Ref{Stitch: -1}}}
	for i := 1; i < n; i++ {
		c.put(fabric.Stitch{Kind: dc, Counts: true, On: []fabric.Place{{Into: stitch.Ring, At: fabric.Ref{Stitch: -1}}}})
	}
	c.join()
	for r := 1; r < rounds; r++ {
		c.rnd().start(3, dc).ch(r)
		c.rep(n-1, func(int) { c.st(dc, 1).ch(r) })
		c.join()
	}
	return c.fabric()
}

// lace is loops of chains, sc in each, and shells in spaces.
func lace() *fabric.Fabric {
	c := newCloth("Doily").magic()
	c.rnd().start(1).st(sc, 8).join()
	c.rnd().start(1).rep(8, func(int) { c.st(sc, 1).ch(3) }).join()
	c.rnd().start(1).rep(8, func(i int) { c.sp(i, dc, dc, chains(2), dc, dc) }).join()
	c.rnd().start(1).rep(8, func(i int) { c.sp(i, sc).ch(5) }).join()
	c.rnd().start(1).rep(8, func(i int) { c.sp(i, tr, tr, tr, chains(1), tr, tr, tr) }).join()
	c.rnd().start(1).rep(8, func(i int) { c.skip(1).st(sc, 1).ch(3).sp(i, sc).ch(3).skip(2).st(sc, 1).ch(4).skip(1) }).join()
	return c.fabric()
}

// split has a dc5tog that is begun at the start of a round and completed at the
// join, between shells.
func split() *fabric.Fabric {
	c := newCloth("Body")
	c.chainRing(36)
	c.rnd().start(1).st(sc, 36).join()
	c.rnd().start(1).rep(6, func(int) { c.st(sc, 1).skip(2).inc(dc, dc, dc, dc, dc).skip(2) }).join()
	tog := stitch.Tog(stitch.Double, 5)
	c.rnd().start(2)
	first := fabric.Stitch{Kind: stitch.Tog(stitch.Double, 2), Role: fabric.FirstHalf, Counts: true, As: tog}
	c.take() // the sc: the ch 2 stands there
	first.On = []fabric.Place{c.take(), c.take()}
	c.put(first)
	c.ch(2).st(sc, 1).ch(2)
	c.rep(5, func(int) { c.tog(tog).ch(2).st(sc, 1).ch(2) })
	c.put(fabric.Stitch{Kind: stitch.Tog(stitch.Double, 2), Role: fabric.LastHalf, On: []fabric.Place{c.take(), c.take()}})
	c.join()
	c.rnd().start(1)
	i := 0
	c.rep(6, func(int) { c.st(sc, 1).sp(i, sc, sc).st(sc, 1).sp(i+1, sc, sc); i += 2 }).join()
	return c.fabric()
}

// turned is a cap whose rounds are turned, in one loop.
func turned() *fabric.Fabric {
	c := newCloth("Cap").magic()
	for r := 1; r <= 7; r++ {
		c.rnd().start(1)
		if r == 1 {
			c.st(sc, 6)
		} else {
			c.rep(6, func(int) { c.into(sc, stitch.BackLoop, r-2).inc(sc, sc) })
		}
		c.join()
		c.turn = !c.turn
	}
	return c.fabric()
}

// cables is post stitches, bobbles and other bundles on a tube.
func cables() *fabric.Fabric {
	c := newCloth("Cuff").chainRing(48)
	c.rnd().start(3, dc).st(dc, 47).join()
	for r := 0; r < 4; r++ {
		c.rnd().start(2)
		c.rep(12, func(int) {
			c.into(dc, stitch.FrontPost, 2).into(dc, stitch.BackPost, 2)
		}).join()
	}
	pop := stitch.Kind{Base: stitch.Double, Shape: stitch.Popcorn, Legs: 5}
	bob := stitch.Kind{Base: stitch.Double, Shape: stitch.Bobble, Legs: 5}
	puff := stitch.Kind{Base: stitch.Half, Shape: stitch.Puff, Legs: 3}
	cl := stitch.Kind{Base: stitch.Double, Shape: stitch.Cluster, Legs: 3}
	c.rnd().start(1).rep(12, func(int) { c.st(pop, 1).st(sc, 1).st(cl, 1).st(hdc, 1) }).join()
	c.rnd().start(1).rep(12, func(int) { c.st(sc, 1).st(bob, 1).st(sc, 1).st(puff, 1) }).join()
	return c.fabric()
}

// inChain is a circle worked in the second chain from the hook, in a spiral.
func inChain() *fabric.Fabric {
	c := newCloth("Ball")
	c.part.Rounds = append(c.part.Rounds, &fabric.Round{Label: "Foundation", Stitches: []fabric.Stitch{{Kind: stitch.Of(stitch.Chain)}, {Kind: stitch.Of(stitch.Chain)}}})
	c.rnd()
	p := fabric.Place{At: fabric.Ref{}}
	for i := 0; i < 6; i++ {
		c.put(fabric.Stitch{Kind: sc, Counts: true, On: []fabric.Place{p}})
	}
	for r := 2; r <= 6; r++ {
		c.rnd().rep(6, func(int) { c.st(sc, r-2).inc(sc, sc) })
	}
	for r := 0; r < 4; r++ {
		c.rnd().st(sc, 36)
	}
	for r := 5; r >= 1; r-- {
		c.rnd().rep(6, func(int) { c.st(sc, r-1).tog(stitch.Tog(stitch.Single, 2)) })
	}
	return c.fabric()
}

type sample struct {
	name string
	f    *fabric.Fabric
	o    Options
}

// samples are fabrics of every sort that a pattern may give.
func samples() []sample {
	t := func(s string) Options {
		return Options{Title: s, Credit: "Design: Saltpan Studio"}
	}
	ranged := func(o Options, from, to int) Options { o.From, o.To = from, to; return o }
	cross, left, uk := t("Crossed circle"), t("Left-handed circle"), t("UK circle on Letter")
	cross.Cross = true
	left.LeftHanded = true
	uk.Terms, uk.Paper = stitch.UK, Letter
	return []sample{
		{"sc", flat(sc, 6, 8, true), t("Flat circle in single crochet")},
		{"sc-spiral", flat(sc, 6, 12, false), t("Spiral circle")},
		{"sc-cross", flat(sc, 6, 10, true), cross},
		{"hdc", flat(hdc, 8, 8, true), t("Flat circle in half double crochet")},
		{"hdc-left", flat(hdc, 8, 5, true), left},
		{"dc", flat(dc, 12, 8, true), t("Flat circle in double crochet")},
		{"dc-counting", flatCounting(12, 6), uk},
		{"tr", flat(tr, 16, 3, true), t("Flat circle in treble crochet")},
		{"one-round", flat(dc, 12, 1, true), t("One round")},
		{"hat", capped(hdc, 8, 7, 8), t("Estuary Cap")},
		{"hat-range", capped(hdc, 8, 7, 8), ranged(t("Estuary Cap"), 9, 14)},
		{"hat-30", capped(sc, 6, 16, 14), t("A hat of ninety-six stitches and thirty rounds with a title that is far too long to stand in one line of a page")},
		{"hat-60", capped(sc, 6, 16, 44), t("Sixty rounds")},
		{"shells", shells(), t("Marram Hat")},
		{"shells-range", shells(), ranged(t("Marram Hat"), 3, 6)},
		{"gather", gather(), t("Gathered crown")},
		{"mesh", mesh(16, 5), t("Mesh")},
		{"lace", lace(), t("Doily")},
		{"split", split(), t("Split at the join")},
		{"turned", turned(), t("Turned rounds")},
		{"cables", cables(), t("Cables and bobbles")},
		{"ball", inChain(), t("Ball")},
	}
}

func measure(t testing.TB, f *fabric.Fabric) *geometry.Form {
	t.Helper()
	// A part picked up on row ends belongs to a fabric with that other part;
	// the tests have only the one.
	form, err := geometry.Measure(f, nil)
	if err != nil {
		t.Fatal(err)
	}
	return form
}

func draw(t testing.TB, s sample) *Chart {
	t.Helper()
	c, err := Round(s.f, measure(t, s.f), s.o)
	if err != nil {
		t.Fatalf("%s: %v", s.name, err)
	}
	return c
}
