package chart

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"whorl/patterns/fabric"
	"whorl/patterns/stitch"
)

// flatPiece begins a piece in rows on a chain of n, turned after every row.
func flatPiece(n int) *cloth {
	c := newCloth("Scarf")
	c.part.Worked = fabric.InRows
	r := &fabric.Round{Label: "Foundation", Row: true}
	for range n {
		r.Stitches = append(r.Stitches, fabric.Stitch{Kind: stitch.Of(stitch.Chain)})
	}
	r.Spaces = []fabric.Span{{From: 0, To: n}}
	c.part.Rounds = append(c.part.Rounds, r)
	return c
}

// row begins a row; the first is worked back along the chain.
func (c *cloth) row() *cloth {
	first := c.index() == 0
	c.turn = !first && !c.part.Rounds[c.index()].Reversed
	c.rnd()
	c.cur.Row = true
	if first {
		for i, j := 0, len(c.below)-1; i < j; i, j = i+1, j-1 {
			c.below[i], c.below[j] = c.below[j], c.below[i]
		}
	}
	return c
}

// ribbing is sc in back loops, ten wide.
func ribbing(rows int) *fabric.Fabric {
	c := flatPiece(10)
	for r := range rows {
		in := stitch.BackLoop
		if r == 0 {
			in = stitch.Top
		}
		c.row().start(1).into(sc, in, 10)
	}
	return c.fabric()
}

// ripple is increases over increases and decreases over decreases.
func ripple(kind stitch.Kind, rows int) *fabric.Fabric {
	c := flatPiece(37)
	for range rows {
		c.row().start(kind.Chains()).inc(kind, kind).st(kind, 4).tog(stitch.Tog(kind.Base, 3)).st(kind, 4)
		for range 2 {
			c.inc(kind, kind, kind).st(kind, 4).tog(stitch.Tog(kind.Base, 3)).st(kind, 4)
		}
		c.inc(kind, kind)
	}
	return c.fabric()
}

// netting is filet mesh: dc and ch-1 spaces, with solid blocks.
func netting(rows int) *fabric.Fabric {
	c := flatPiece(21)
	for range rows {
		c.row().start(3, dc)
		for k := range 10 {
			if k%3 == 1 {
				c.st(dc, 1)
			} else {
				c.ch(1).skip(1)
			}
			c.st(dc, 1)
		}
		// Spaces are worked over as stitches.
		c.cur.Spaces = nil
		for i := range c.cur.Stitches {
			if c.cur.Stitches[i].IsChain() {
				c.cur.Stitches[i].Counts = true
				c.cur.Spaces = append(c.cur.Spaces, fabric.Span{From: i, To: i + 1})
			}
		}
	}
	return c.fabric()
}

func rowsChart(t *testing.T, f *fabric.Fabric, o Options) *Chart {
	t.Helper()
	c, err := Rows(f, measure(t, f), o)
	if err != nil {
		t.Fatal(err)
	}
	if err := c.Scene.Check(); err != nil {
		t.Fatal(err)
	}
	return c
}

func TestRowsAreClean(t *testing.T) {
	for name, f := range map[string]*fabric.Fabric{
		"ribbing": ribbing(6), "sc ripple": ripple(sc, 5), "dc ripple": ripple(dc, 6), "netting": netting(7),
	} {
		for _, o := range []Options{{Title: name}, {Title: name, LeftHanded: true}, {Title: name, From: 2, To: 4, Paper: Letter}} {
			c := rowsChart(t, f, o)
			if r := Audit(c.Scene); !r.Clean() {
				t.Errorf("%s: overlaps %v, texts %v, legs %v", name, r.Overlaps, r.Texts, r.Astray)
			}
			if len(c.Findings) > 0 {
				t.Errorf("%s: %v", name, c.Findings)
			}
		}
	}
}

// topsOf are the tops of a row's counted stitches in the order of working.
func topsOf(c *Chart, row string) (ps [][2]float64) {
	return tops(find(&c.Scene.Root, "row"+row), nil)
}

// Right-side rows read right to left, wrong-side rows left to right; for
// left-handers the other way (common practice: sources in sources.md on reading
// charts).
func TestRowDirections(t *testing.T) {
	for _, left := range []bool{false, true} {
		c := rowsChart(t, ribbing(4), Options{LeftHanded: left})
		for _, row := range []string{"1", "2", "3", "4"} {
			ps := topsOf(c, row)
			if len(ps) != 10 {
				t.Fatalf("row %s has %d stitches", row, len(ps))
			}
			leftwards := ps[9][0] < ps[0][0]
			if want := (row == "1" || row == "3") != left; leftwards != want {
				t.Errorf("row %s runs to the left: %v (left-handed: %v)", row, leftwards, left)
			}
		}
		// The foundation lies under all.
		if y := topsOf(c, "1")[0][1]; y <= topsOf(c, "2")[0][1] {
			t.Error("row 2 is not above row 1")
		}
	}
}

// One loop is the other from the wrong side.
func TestRowsFlipLoops(t *testing.T) {
	got := kinds(&rowsChart(t, ribbing(4), Options{}).Scene.Root, map[string]int{})
	if got["FLO sc"] != 20 || got["BLO sc"] != 10 {
		t.Errorf("drawn %v; rows 2 and 4 are wrong-side rows", got)
	}
}

// A long piece is drawn as far as shows its repeat, unless rows are named.
func TestRowsShowTheRepeat(t *testing.T) {
	f := ribbing(40)
	if c := rowsChart(t, f, Options{}); find(&c.Scene.Root, "row4") == nil || find(&c.Scene.Root, "row8") != nil {
		t.Error("not the first rows only")
	}
	if c := rowsChart(t, f, Options{From: 1, To: 12}); find(&c.Scene.Root, "row12") == nil {
		t.Error("rows 1 to 12 are not drawn")
	}
}

// More is drawn of a ripple, so that its waves are read, and the caption says of how many
// rows; one that is short is drawn whole.
func TestRippleGoesOn(t *testing.T) {
	c := rowsChart(t, ripple(dc, 40), Options{})
	if find(&c.Scene.Root, "row8") == nil || find(&c.Scene.Root, "row9") != nil {
		t.Error("not the first eight rows of 40")
	}
	if !strings.Contains(c.Caption, "rows 1–8 of 40") {
		t.Error(c.Caption)
	}
	if c := rowsChart(t, ripple(dc, 8), Options{}); find(&c.Scene.Root, "row8") == nil || strings.Contains(c.Caption, " of ") {
		t.Error(c.Caption)
	}
	if c := rowsChart(t, ripple(dc, 40), Options{To: 3}); strings.Contains(c.Caption, " of ") {
		t.Error(c.Caption)
	}
}

// A ripple lies in waves: the foundation too.
func TestRipple(t *testing.T) {
	ps := topsOf(rowsChart(t, ripple(dc, 6), Options{}), "4")
	low, high := math.Inf(1), math.Inf(-1)
	for _, p := range ps {
		low, high = math.Min(low, p[1]), math.Max(high, p[1])
	}
	if high-low < 3 {
		t.Errorf("a ripple %.1f mm deep", high-low)
	}
	straight := topsOf(rowsChart(t, ribbing(6), Options{}), "4")
	for _, p := range straight {
		if p[1] != straight[0][1] {
			t.Error("a straight row is not straight")
			break
		}
	}
}

// Rows of which some are only a part of the longest do not lie in waves, however their
// stitches lean.
func TestNoWaveInParts(t *testing.T) {
	w := rowsLaid(t, ripple(dc, 6))
	if !w.ripples() {
		t.Fatal("a ripple lies in no waves")
	}
	c := w.courses[4] // worked on a part
	for i := range c.theta {
		c.theta[i] = c.theta[0] + (c.theta[i]-c.theta[0])*0.6
	}
	if w.ripples() {
		t.Error("rows that are not whole lie in waves")
	}
}

func TestRowsRefusals(t *testing.T) {
	f := ribbing(4)
	if _, err := Round(f, measure(t, f), Options{}); err == nil || !strings.Contains(err.Error(), "rows") {
		t.Errorf("a piece in rows as a round chart: %v", err)
	}
	f = flat(sc, 6, 3, true)
	if _, err := Rows(f, measure(t, f), Options{}); err == nil || !strings.Contains(err.Error(), "round") {
		t.Errorf("a round piece in rows: %v", err)
	}
}

// Rows of 1,000 and 10,000 stitches: the time of a stitch should not grow.
func BenchmarkRows(b *testing.B) {
	for _, n := range []int{50, 500} {
		f := ribbing(n)
		form := measure(b, f)
		stitches := 0
		for _, r := range f.Parts[0].Rounds {
			stitches += len(r.Stitches)
		}
		b.Run(strconv.Itoa(stitches), func(b *testing.B) {
			for b.Loop() {
				if _, err := Rows(f, form, Options{From: 1, To: n}); err != nil {
					b.Fatal(err)
				}
			}
			b.ReportMetric(float64(stitches)*float64(b.N)/b.Elapsed().Seconds(), "stitches/s")
		})
	}
}
