package geometry

import (
	"fmt"
	"math"
	"math/rand"
	"strings"
	"testing"

	"whorl/patterns/fabric"
	"whorl/patterns/stitch"
)

// Increases a round that keep a circle flat: sc 6, hdc 8, dc 12, tr 16 (agreed
// by six published teaching sources). With the default ratios, and at gauges as
// measured on ordinary swatches (plausible, invented).
func TestFlatCircles(t *testing.T) {
	for _, c := range []struct {
		kind stitch.Kind
		k    int
		read Reading
	}{
		{sc, 6, Reading{Count: 16, Rows: 17, Over: 100}},
		{hdc, 8, Reading{Count: 15, Rows: 12, Over: 100}},
		{dc, 12, Reading{Count: 14, Rows: 7.5, Over: 100}},
		{tr, 16, Reading{Count: 14, Rows: 5.5, Over: 100}},
	} {
		c.read.Kind = c.kind
		for name, g := range map[string]*Gauge{"default": gauge(t), "gauge": gauge(t, c.read)} {
			t.Run(fmt.Sprint(c.kind.Name(stitch.US), " ", name), func(t *testing.T) {
				b := rounds().ring(0).inRing(c.kind, c.k)
				for n := 2; n <= 8; n++ {
					b.even(c.kind, stitch.Top, n*c.k)
				}
				for i, f := range b.measured(t, g) {
					if i == 0 {
						continue
					}
					near(t, fmt.Sprint("flatness of round ", i), f.Flatness, 1, 0.06)
					near(t, fmt.Sprint("strain of round ", i), f.Strain, 0, 0.03)
					near(t, fmt.Sprint("level of round ", i), f.Level, float64(i)*g.Height(c.kind, stitch.Top), 1e-9)
				}
			})
		}
	}
}

func TestTube(t *testing.T) {
	// 60 chains joined, then rounds of 60 hdc; 6.25 mm a stitch.
	g := gauge(t, Reading{Count: 16, Kind: hdc, Rows: 11, Over: 100})
	b := rounds().ring(60)
	for range 5 {
		b.even(hdc, stitch.Top, 60)
	}
	for i, f := range b.measured(t, g) {
		near(t, "circumference", f.Circumference, 375, 1e-9)
		near(t, "flatness", f.Flatness, 0, 1e-12)
		near(t, "settled height", f.Z, float64(i)*100/11, 1e-9)
		near(t, "settled radius", f.R, 375/(2*math.Pi), 1e-9)
		near(t, "angle", f.Angle, 0, 1e-9)
	}
}

// The three ways to begin in the centre: a ring of chains leaves a hole only
// when it has more chains than close up.
func TestCentres(t *testing.T) {
	g := gauge(t)
	magic := rounds().ring(0).inRing(dc, 12).measured(t, g)
	near(t, "flatness in a magic ring", magic[1].Flatness, 1, 1e-9)
	small := rounds().ring(3).inRing(dc, 12).measured(t, g)
	near(t, "flatness in a ring of 3 chains", small[1].Flatness, 1, 1e-9)
	large := rounds().ring(8).inRing(dc, 24).measured(t, g)
	near(t, "hole in a ring of 8 chains", large[0].Circumference, 5*0.85*5, 1e-9)
	if large[1].Flatness >= 2 || large[1].R <= large[0].R {
		t.Errorf("the hole does not count: %+v", large[1])
	}
	// Ch 2, 6 sc in 2nd ch from hook.
	b := rounds().chain(2)
	add(b.next(), 6, fabric.Stitch{Kind: sc, Counts: true, On: []fabric.Place{on(stitch.Top, 0, 0)}})
	near(t, "flatness in the second chain", b.measured(t, g)[1].Flatness, 1, 1e-9)
	// An oval: both sides of a chain of 10, 3 in each end.
	b = rounds().chain(10)
	r := b.next()
	for j := range 10 {
		add(r, 1+2*(j/9), fabric.Stitch{Kind: sc, Counts: true, On: []fabric.Place{on(stitch.Top, 0, j)}})
	}
	for j := 8; j >= 0; j-- {
		add(r, 1+(8-j)/8, fabric.Stitch{Kind: sc, Counts: true, On: []fabric.Place{on(stitch.Underside, 0, j)}})
	}
	oval := b.measured(t, g)
	near(t, "growth of the oval", oval[1].Circumference-2*oval[0].Circumference, 5*2, 1e-9)
}

// A shell beside single crochets is not a whole dc deep everywhere, and what
// follows stands on it.
func TestLevels(t *testing.T) {
	g := gauge(t, Reading{Count: 20, Kind: sc, Over: 100})
	scH, dcH := g.Height(sc, stitch.Top), g.Height(dc, stitch.Top)
	b := rounds().ring(0).inRing(sc, 12)
	r := b.next()
	for j := range 4 { // *sk 1, 3 dc in next, sc in next
		add(r, 3, fabric.Stitch{Kind: dc, Counts: true, On: []fabric.Place{on(stitch.Top, 1, 3*j+1)}})
		add(r, 1, fabric.Stitch{Kind: sc, Counts: true, On: []fabric.Place{on(stitch.Top, 1, 3*j+2)}})
	}
	r = b.next()
	dec := stitch.Tog(stitch.Single, 2)
	add(r, 1, fabric.Stitch{Kind: dec, Counts: true, On: []fabric.Place{on(stitch.Top, 2, 2), on(stitch.Top, 2, 3)}})
	spike := sc
	spike.Manner = stitch.Spike
	add(r, 1, fabric.Stitch{Kind: spike, Counts: true, On: []fabric.Place{on(stitch.Top, 1, 4)}})
	add(r, 1, fabric.Stitch{Kind: dc, Counts: true, On: []fabric.Place{on(stitch.FrontPost, 2, 5)}})
	add(r, 1, fabric.Stitch{Kind: sl, Role: fabric.Join, On: []fabric.Place{on(stitch.Top, 3, 0)}})
	f := b.measured(t, g)
	near(t, "level of the shells", f[2].Level, scH+(3*dcH+scH)/4, 1e-9)
	near(t, "sc2tog between a dc and an sc", f[3].Tops[0], scH+(dcH+scH)/2+scH, 1e-9)
	near(t, "spike", f[3].Tops[1], f[2].Level+scH, 1e-9)
	near(t, "FPdc", f[3].Tops[2], scH+dcH+0.7*dcH, 1e-9)
	near(t, "join", f[3].Tops[3], f[3].Tops[0], 1e-9)
	near(t, "width of the join", f[3].Widths[3], 0, 0)
	near(t, "circumference", f[3].Circumference, 15, 1e-9)
}

// Loops on both sides of a stitch that stands higher than its neighbours are alike, and so
// is what stands in them.
func TestLoopsOnBothSides(t *testing.T) {
	b := rounds().ring(0).inRing(sc, 6)
	low, high := on(stitch.Top, 1, 0), on(stitch.Top, 2, 0)
	r := b.next()
	add(r, 1, fabric.Stitch{Kind: tr, Counts: true, On: []fabric.Place{low}})
	add(r, 5, fabric.Stitch{Kind: sc, Counts: true, On: []fabric.Place{on(stitch.Top, 1, 3)}})
	r = b.next()
	r.Closing = fabric.Joined
	add(r, 1, fabric.Stitch{Kind: sc, Counts: true, On: []fabric.Place{high}})
	add(r, 3, fabric.Stitch{Kind: ch})
	add(r, 1, fabric.Stitch{Kind: sc, Counts: true, On: []fabric.Place{on(stitch.Top, 2, 3)}})
	add(r, 3, fabric.Stitch{Kind: ch})
	r = b.next()
	for _, from := range []int{1, 5} {
		space := fabric.Place{Into: stitch.Space, At: fabric.Ref{Round: 3, Stitch: from}, Last: fabric.Ref{Round: 3, Stitch: from + 2}}
		add(r, 1, fabric.Stitch{Kind: sc, Counts: true, On: []fabric.Place{space}})
	}
	f := b.measured(t, gauge(t))
	near(t, "sc in the loop after", f[4].Tops[0], f[4].Tops[1], 1e-9)
}

// A chain hangs between its neighbours in a slight arch, over the join too, and
// stitches in its space stand on the mean of it.
func TestChainSpaces(t *testing.T) {
	g := gauge(t)
	b := rounds().ring(0).inRing(sc, 6)
	r := b.next()
	r.Closing = fabric.Joined
	add(r, 1, fabric.Stitch{Kind: ch, Role: fabric.Start, Chains: 3, Counts: true, As: dc, On: []fabric.Place{on(stitch.Top, 1, 0)}})
	add(r, 3, fabric.Stitch{Kind: ch})
	add(r, 1, fabric.Stitch{Kind: dc, Counts: true, On: []fabric.Place{on(stitch.Top, 1, 3)}})
	add(r, 3, fabric.Stitch{Kind: ch})
	add(r, 1, fabric.Stitch{Kind: sl, Role: fabric.Join, On: []fabric.Place{on(stitch.Top, 2, 0)}})
	space := fabric.Place{Into: stitch.Space, At: fabric.Ref{Round: 2, Stitch: 5}, Last: fabric.Ref{Round: 2, Stitch: 7}}
	add(b.next(), 1, fabric.Stitch{Kind: sc, Counts: true, On: []fabric.Place{space}})
	f := b.measured(t, g)
	tops := f[2].Tops
	near(t, "start chain", tops[0], tops[4], 1e-9)
	near(t, "arch over the join", tops[6], tops[2], 1e-9)
	for _, j := range []int{1, 2, 3} {
		if tops[j] <= tops[0] || tops[j] > tops[0]+5 {
			t.Errorf("chain %d at %.2f, its neighbours at %.2f", j, tops[j], tops[0])
		}
	}
	if tops[2] <= tops[1] {
		t.Error("the run of chains does not rise in the middle")
	}
	near(t, "sc in the space", f[3].Tops[0], (tops[5]+tops[6]+tops[7])/3+g.Height(sc, stitch.Top), 1e-9)
	near(t, "circumference", f[2].Circumference, 5*2+6*0.85*5, 1e-9)
}

// A run of chains no longer than what it passes over, as the handle of a basket, hangs
// level; a longer one rises in its middle.
func TestChainsWithoutSlack(t *testing.T) {
	for chains, rises := range map[int]bool{6: true, 8: false, 10: false, 16: true} { // of few something is made
		b := rounds().ring(0).inRing(sc, 30)
		r := b.next()
		add(r, 1, fabric.Stitch{Kind: sc, Counts: true, On: []fabric.Place{on(stitch.Top, 1, 0)}})
		add(r, chains, fabric.Stitch{Kind: ch})
		for j := 11; j < 30; j++ {
			add(r, 1, fabric.Stitch{Kind: sc, Counts: true, On: []fabric.Place{on(stitch.Top, 1, j)}})
		}
		tops := b.measured(t, gauge(t))[2].Tops
		if over := tops[1+chains/2] - tops[0]; (over > 1e-9) != rises {
			t.Errorf("%d chains over 10 sc are %.2f mm above their ends", chains, over)
		}
	}
}

// A decrease begun at the start of a round and completed at the join is one
// stitch, in level and in width.
func TestSplitAtTheJoin(t *testing.T) {
	g := gauge(t)
	b := rounds().ring(0).inRing(dc, 12)
	r := b.next()
	whole := stitch.Tog(stitch.Double, 5)
	add(r, 1, fabric.Stitch{Kind: stitch.Tog(stitch.Double, 3), Role: fabric.FirstHalf, As: whole, Counts: true,
		On: []fabric.Place{on(stitch.Top, 1, 0), on(stitch.Top, 1, 1), on(stitch.Top, 1, 2)}})
	add(r, 1, fabric.Stitch{Kind: dc, Counts: true, On: []fabric.Place{on(stitch.Top, 1, 5)}})
	add(r, 1, fabric.Stitch{Kind: stitch.Tog(stitch.Double, 2), Role: fabric.LastHalf,
		On: []fabric.Place{on(stitch.Top, 1, 10), on(stitch.Top, 1, 11)}})
	f := b.measured(t, g)[2]
	near(t, "first half", f.Widths[0], 2.5, 1e-9)
	near(t, "last half", f.Widths[2], 2.5, 1e-9)
	near(t, "tops", f.Tops[0], f.Tops[2], 0)
	near(t, "tops and the dc", f.Tops[0], f.Tops[1], 1e-9)
}

// Loops-only rows close up as ribbing; loops-only rounds do not.
func TestRibbing(t *testing.T) {
	g := gauge(t, Reading{Count: 16, Kind: sc, Rows: 20, Over: 100})
	strip := rows().chain(10)
	tube := rounds().ring(10)
	for range 10 {
		strip.even(sc, stitch.BackLoop, 10)
		tube.even(sc, stitch.BackLoop, 10)
	}
	f := strip.measured(t, g)
	near(t, "length of the strip", f[10].Level, 10*5*0.85, 1e-9)
	near(t, "width of the strip", f[10].Circumference, 62.5, 1e-9)
	if f[10].Radius != 0 || f[10].R != 0 || f[10].Flatness != 0 {
		t.Errorf("a row has the figures of a round: %+v", f[10])
	}
	near(t, "length of the tube", tube.measured(t, g)[10].Level, 50, 1e-9)
}

// Picked up along row ends a part starts afresh at level 0.
func TestPickedUp(t *testing.T) {
	strip := rows().chain(8)
	for range 60 {
		strip.even(sc, stitch.BackLoop, 8)
	}
	body := rounds()
	body.part.From = 0
	r := body.next()
	r.Edge = 60
	for j := range 60 {
		add(r, 1, fabric.Stitch{Kind: hdc, Counts: true,
			On: []fabric.Place{{Into: stitch.RowEnd, Part: 0, At: fabric.Ref{Round: j + 1}}}})
	}
	body.even(hdc, stitch.Top, 68)
	form, err := Measure(&fabric.Fabric{Parts: []*fabric.Part{strip.part, body.part}}, nil)
	if err != nil {
		t.Fatal(err)
	}
	f := form.Parts[1].Rounds
	near(t, "flatness of the pick-up", f[0].Flatness, 0, 0)
	near(t, "flatness of the next", f[1].Flatness, 1, 1e-9)
	near(t, "level", f[0].Level, 5*8/(2*math.Pi), 1e-9)
}

// The round at polar angle θ of a sphere has 2πR sin θ / w stitches (M. Martinez
// and A. Taylor Lipnicki, "Automating crochet patterns for surfaces of
// revolution", Bridges 2023). Whole stitches leave up to half a stitch too many
// or too few in a round, so that the meridian zigzags; evened out, the ball
// stands within 2.5 % of its height. In a small one the rounds at the poles are
// so few stitches long that the rounding is of the size of the round itself.
// With exact lengths it is right to 0.5 %: see TestExactShapes.
func TestSphere(t *testing.T) {
	g := gauge(t, Reading{Count: 20, Kind: sc, Over: 100})
	w, h := g.Width(sc, stitch.Top), g.Height(sc, stitch.Top)
	for _, n := range []int{24, 48, 96, 192, 384} { // rounds from pole to pole
		radius := float64(n) * h / math.Pi
		b := rounds().ring(0)
		for i := 1; i < n; i++ {
			count := int(math.Round(2 * math.Pi * radius * math.Sin(math.Pi*float64(i)/float64(n)) / w))
			if i == 1 {
				b.inRing(sc, count)
			} else {
				b.even(sc, stitch.Top, count)
			}
		}
		f := b.measured(t, g)
		worst := 0.0
		for i := 1; i < n; i++ {
			theta := math.Pi * float64(i) / float64(n)
			near(t, fmt.Sprint("radius of round ", i), f[i].R, radius*math.Sin(theta), 0.5*w/(2*math.Pi)+0.001*radius)
			worst = math.Max(worst, math.Abs(f[i].Z-radius*(1-math.Cos(theta)))/(2*radius))
		}
		t.Logf("%d rounds: height off by %.2f %% of the diameter", n, 100*worst)
		if most := map[bool]float64{true: 0.055, false: 0.025}[n < 48]; worst > most {
			t.Errorf("%d rounds: height off by %.2f %% of the diameter", n, 100*worst)
		}
	}
}

func TestMeasureRefusesGarbage(t *testing.T) {
	g := gauge(t)
	ok := fabric.Stitch{Kind: sc, Counts: true}
	for name, s := range map[string]fabric.Stitch{
		"no kind":          {},
		"unknown kind":     {Kind: stitch.Kind{Base: 200}},
		"unknown as":       {Kind: ch, Role: fabric.Start, Counts: true, As: stitch.Kind{Base: 99}},
		"later round":      {Kind: sc, On: []fabric.Place{on(stitch.Top, 7, 0)}},
		"negative round":   {Kind: sc, On: []fabric.Place{on(stitch.Top, -1, 0)}},
		"far stitch":       {Kind: sc, On: []fabric.Place{on(stitch.Top, 1, 60)}},
		"negative stitch":  {Kind: sc, On: []fabric.Place{on(stitch.Between, 1, -1)}},
		"itself":           {Kind: sc, On: []fabric.Place{on(stitch.Top, 2, 1)}},
		"unknown place":    {Kind: sc, On: []fabric.Place{on(stitch.Into(99), 1, 0)}},
		"far part":         {Kind: sc, On: []fabric.Place{{Into: stitch.RowEnd, Part: 5}}},
		"negative part":    {Kind: sc, On: []fabric.Place{{Into: stitch.RowEnd, Part: -1}}},
		"space over rnds":  {Kind: sc, On: []fabric.Place{{Into: stitch.Space, At: fabric.Ref{Round: 1}}}},
		"space beyond end": {Kind: sc, On: []fabric.Place{{Into: stitch.Space, At: fabric.Ref{Round: 1}, Last: fabric.Ref{Round: 1, Stitch: 9}}}},
	} {
		b := rounds().ring(0).inRing(sc, 6)
		r := b.next()
		r.Stitches = []fabric.Stitch{ok, s, ok}
		_, err := Measure(&fabric.Fabric{Parts: []*fabric.Part{b.part}}, g)
		if err == nil || !strings.Contains(err.Error(), "Rnd 2, stitch 2") {
			t.Errorf("%s: %v", name, err)
		}
	}
	for name, f := range map[string]*fabric.Fabric{
		"nil":       nil,
		"nil part":  {Parts: []*fabric.Part{nil}},
		"nil round": {Parts: []*fabric.Part{{Rounds: []*fabric.Round{nil}}}},
	} {
		if _, err := Measure(f, g); err == nil {
			t.Errorf("%s: no error", name)
		}
	}
}

// Odd but possible fabrics have figures, and every figure is a number.
func TestMeasureOddities(t *testing.T) {
	one := rounds().ring(0).inRing(sc, 1).even(sc, stitch.Top, 1)
	joinsOnly := rounds().ring(0).inRing(sc, 6)
	add(joinsOnly.next(), 2, fabric.Stitch{Kind: sl, Role: fabric.Travel, On: []fabric.Place{on(stitch.Top, 1, 0)}})
	chainsOnly := rounds().ring(0).inRing(sc, 6)
	add(chainsOnly.next(), 5, fabric.Stitch{Kind: ch})
	deep := rounds().ring(0).inRing(tr, 16)
	add(deep.even(sc, stitch.Top, 16).next(), 16, fabric.Stitch{Kind: sl, Counts: true, On: []fabric.Place{on(stitch.Top, 1, 0)}})
	noOn := rounds()
	add(noOn.next(), 20, fabric.Stitch{Kind: dc, Counts: true})
	legs := rounds().ring(0).inRing(sc, 6)
	add(legs.next(), 3, fabric.Stitch{Kind: stitch.Kind{Base: stitch.Chain, Shape: stitch.Picot, Legs: -5}})
	for name, b := range map[string]*builder{
		"one stitch": one, "joins only": joinsOnly, "chains only": chainsOnly, "sinking": deep, "on nothing": noOn,
		"ring only": rounds().ring(0), "chain only": rounds().ring(40), "row chain": rows().chain(10),
		"empty": rounds(), "one empty round": {&fabric.Part{Rounds: []*fabric.Round{{}}}}, "picots": legs,
		"gather": rounds().ring(200).even(sc, stitch.Top, 1), "flare": rounds().ring(3).even(sl, stitch.Top, 2000),
	} {
		for i, f := range b.measured(t, nil) {
			v := []float64{f.Circumference, f.Radius, f.Height, f.Level, f.Flatness, f.R, f.Z, f.Strain, f.Angle}
			for _, x := range append(append(v, f.Tops...), f.Widths...) {
				if math.IsNaN(x) || math.IsInf(x, 0) {
					t.Errorf("%s, round %d: %v", name, i, v)
					break
				}
			}
		}
	}
}

// Whatever a fabric holds, measuring it ends in an error or in numbers.
func TestMeasureGarbage(t *testing.T) {
	rnd := rand.New(rand.NewSource(3))
	any := func(lo, hi int) int { return lo + rnd.Intn(hi-lo) }
	ref := func() fabric.Ref { return fabric.Ref{Round: any(-1, 5), Stitch: any(-1, 8)} }
	measured := 0
	for trial := range 30000 {
		wild := trial%2 == 0 // half of them only strange, so that they get through
		f := &fabric.Fabric{}
		for range any(1, 3) {
			p := &fabric.Part{From: any(-2, 3), Worked: fabric.Way(any(0, 3))}
			for i := range any(0, 5) {
				r := &fabric.Round{Row: any(0, 3) == 0, Ring: any(0, 2) == 0, Closing: fabric.Closing(any(0, 4))}
				for range any(0, 7) {
					s := fabric.Stitch{Role: fabric.Role(any(0, 6)), Chains: any(-1, 9), Counts: any(0, 3) > 0}
					s.Kind = stitch.Kind{Base: stitch.Base(any(1, 9)), Shape: stitch.Shape(any(0, 8)), Manner: stitch.Manner(any(0, 64)), Legs: any(-2, 7)}
					if any(0, 4) == 0 {
						s.As = dc
					}
					for range any(0, 4) {
						p := fabric.Place{Into: stitch.Into(any(0, 11)), At: fabric.Ref{Round: i - 1}}
						if wild {
							p = fabric.Place{Into: stitch.Into(any(0, 12)), Part: any(-1, 3), At: ref(), Last: ref()}
						}
						p.Last = p.At
						if i > 0 || wild {
							s.On = append(s.On, p)
						}
					}
					r.Stitches = append(r.Stitches, s)
				}
				p.Rounds = append(p.Rounds, r)
			}
			f.Parts = append(f.Parts, p)
		}
		form, err := Measure(f, nil)
		if err != nil {
			continue
		}
		measured++
		z, err := Finish(f, form)
		if err != nil {
			t.Fatal(err)
		}
		all := []float64{z.Brim, z.Widest, z.FlatWidth, z.Depth, z.Hole}
		for _, p := range form.Parts {
			for _, r := range p.Rounds {
				all = append(all, r.Circumference, r.Radius, r.Height, r.Level, r.Flatness, r.R, r.Z, r.Strain, r.Angle)
				all = append(append(all, r.Tops...), r.Widths...)
			}
		}
		for _, x := range all {
			if math.IsNaN(x) || math.IsInf(x, 0) {
				t.Fatalf("trial %d: %v", trial, all)
			}
		}
	}
	if measured < 5000 {
		t.Errorf("only %d of the fabrics could be measured", measured)
	}
}
