package chart

import (
	"bytes"
	"strconv"
	"testing"

	"github.com/tdewolff/canvas"

	"whorl/chart/output"
	"whorl/chart/scene"
	"whorl/chart/typeface"
	"whorl/geometry"
	"whorl/patterns/fabric"
	"whorl/patterns/stitch"
)

// numbersOf are the texts of the signs' group, with those that have a leader.
func numbersOf(c *Chart) map[string]float64 {
	sizes := map[string]float64{}
	var visit func(g *scene.Group)
	visit = func(g *scene.Group) {
		for _, n := range g.Nodes {
			switch n := n.(type) {
			case *scene.Group:
				visit(n)
			case *scene.Text:
				sizes[n.String] = n.Size
			}
		}
	}
	visit(find(&c.Scene.Root, "signs"))
	return sizes
}

// What an earlier layout has raised and evened out is not left in the next.
func TestDrawnAgain(t *testing.T) {
	f := interlocking(8, 5)
	var drawn [2]bytes.Buffer
	for i := range drawn {
		w, err := newWork(f, measure(t, f), Options{}, fabric.InRounds)
		if err != nil {
			t.Fatal(err)
		}
		for _, c := range w.courses {
			c.level, c.raised = float64(i), float64(i)
		}
		c, _ := w.draw()
		if err := output.SVG(&drawn[i], c.Scene); err != nil {
			t.Fatal(err)
		}
	}
	if drawn[0].String() != drawn[1].String() {
		t.Error("the second layout is another")
	}
}

// laceCap is V-stitches and shells closed to a crown; one of the shells lies about the seam.
func laceCap() *fabric.Fabric {
	c := newCloth("Cap").chainRing(60)
	shell := []stitch.Kind{dc, dc, dc, dc, dc}
	for range 6 {
		c.rnd().start(1).st(sc, 60).join()
	}
	c.rnd().start(1).rep(20, func(int) { c.inc(dc, chains(1), dc).skip(2) }).join()
	for range 3 {
		c.rnd().start(1).rep(20, func(i int) { c.sp(i, dc, chains(1), dc) }).join()
	}
	c.rnd().start(1).rep(10, func(i int) { c.sp(2*i, sc).sp(2*i+1, shell...) }).join()
	c.rnd().start(3, dc).same(dc).same(dc)
	c.rep(9, func(int) { c.skip(2).st(sc, 1).skip(2).inc(shell...) }).skip(2).st(sc, 1).skip(2).inc(dc, dc).join()
	c.rnd().start(1).rep(10, func(int) { c.st(sc, 1).skip(2).inc(shell...).skip(2) }).join()
	c.rnd().start(1).st(sc, 60).join()
	for plain := 2; plain >= 0; plain-- {
		c.rnd().start(1).rep(10, func(int) { c.st(sc, plain).tog(stitch.Tog(stitch.Single, 2)) }).join()
	}
	return c.fabric()
}

// Every round has its number, in whatever layout, no smaller than can be read and
// with nothing through it: by its beginning, past the stitches beside a wedge, or in
// white to which a line leads.
func TestEveryRoundHasItsNumber(t *testing.T) {
	for name, f := range map[string]*fabric.Fabric{"circle": flat(hdc, 8, 12, true), "hat": capped(sc, 6, 16, 12), "tall": capped(sc, 6, 10, 22), "shells": shells(),
		"closing": closing(hdc, 6, 10, 4, 1), "interlocking": interlocking(8, 5), "lace cap": laceCap()} {
		for layout, draw := range map[string]func(*fabric.Fabric, *geometry.Form, Options) (*Chart, error){"round": Round, "wedge": Wedge} {
			c, err := draw(f, measure(t, f), Options{})
			if err != nil {
				t.Fatal(err)
			}
			sizes := numbersOf(c)
			for _, r := range f.Parts[0].Rounds {
				if r.Number == 0 {
					continue
				}
				if size := sizes[strconv.Itoa(r.Number)]; typeface.CapHeight(size) < 1.79 {
					t.Errorf("%s, %s: the number of %s is %.2f mm tall", name, layout, r.Label, typeface.CapHeight(size))
				}
			}
			if r := Audit(c.Scene); !r.Clean() {
				t.Errorf("%s, %s: %v %v", name, layout, r.Overlaps, r.Texts)
			}
		}
	}
}

// A leader does not jump over the outline of a dot that lies in its way.
func TestLeaderGoesThroughNothing(t *testing.T) {
	for across := 0.4; across < 1.6; across += 0.01 {
		dot := segments(&scene.Path{D: canvas.Circle(across/2).Translate(20+leaderDot+across/2+0.1, 20)}, scene.Ink{}, 0, nil)
		f := &finder{grid: newGrid(dot)}
		best := leader{cost: leaderLong}
		f.ray(canvas.Point{X: 20, Y: 20}, canvas.Point{X: 1}, 0, 2, 2, box{0, 0, 60, 60}, &best)
		if best.cost < leaderLong {
			t.Errorf("a leader to %.1f, %.1f crosses a dot %.1f mm wide", best.to.X, best.to.Y, across)
		}
	}
}
