package chart

import (
	"fmt"
	"slices"
	"testing"

	"github.com/tdewolff/canvas"

	"whorl/chart/scene"
	"whorl/patterns/fabric"
	"whorl/patterns/stitch"
)

func TestAudit(t *testing.T) {
	for _, s := range samples() {
		t.Run(s.name, func(t *testing.T) {
			c := draw(t, s)
			r := Audit(c.Scene)
			few := func(what string, n int, at func(i int) any) {
				for i := 0; i < n && i < 8; i++ {
					t.Errorf("%s: %v", what, at(i))
				}
				if n > 8 {
					t.Errorf("%s: %d in all", what, n)
				}
			}
			if c.Smallest < smallestSymbol {
				// Too small to be printed, which the chart says.
				r.Overlaps = nil
			}
			few("overlap", len(r.Overlaps), func(i int) any { return r.Overlaps[i] })
			few("text", len(r.Texts), func(i int) any { return r.Texts[i] })
			few("leg", len(r.Astray), func(i int) any { return r.Astray[i] })
			few("fan", len(r.Fans), func(i int) any { return r.Fans[i] })
			if r.Turn > 0.1 {
				t.Errorf("repeats differ by %.2f°", r.Turn)
			}
		})
	}
}

// The audit must see what is wrong.
func TestAuditSees(t *testing.T) {
	fresh := func() *scene.Scene { return draw(t, sample{"", flat(hdc, 8, 4, true), Options{Title: "Circle"}}).Scene }
	if r := Audit(fresh()); len(r.Overlaps)+len(r.Texts)+len(r.Astray) > 0 || r.Turn > 0.1 || r.Stitches < 80 {
		t.Fatalf("a good chart: %+v", r)
	}
	s := fresh()
	p := find(&s.Root, "r3s5").Nodes[0].(*scene.Path)
	far := pointsOf(find(&s.Root, "r3s9"), "top")[0]
	p.D = p.D.Copy()
	p.D.LineTo(far.X, far.Y)
	if r := Audit(s); len(r.Overlaps) == 0 {
		t.Errorf("a stroke across others: %+v", r)
	}
	s = fresh()
	p = find(&s.Root, "r3s5").Nodes[0].(*scene.Path)
	p.D = p.D.Copy().Translate(0.1, 0.1)
	if r := Audit(s); len(r.Astray) == 0 {
		t.Errorf("a leg off its place: %+v", r)
	}
	s = fresh()
	set(find(&s.Root, "r3s5"), "base", canvas.Point{X: 105, Y: 140})
	if r := Audit(s); len(r.Astray) == 0 {
		t.Error("a place that is nobody's was not seen")
	}
	s = fresh()
	set(find(&s.Root, "r3s5"), "top", canvas.Point{X: 120, Y: 160})
	if r := Audit(s); r.Turn < 0.1 {
		t.Error("an uneven repeat was not seen")
	}
	s = fresh()
	if r := Audit(s); len(r.Leaning) > 0 {
		t.Errorf("a good chart leans: %v", r.Leaning)
	}
	set(find(&s.Root, "r3s5"), "base", pointsOf(find(&s.Root, "r3s12"), "base")[0])
	if r := Audit(s); len(r.Leaning) == 0 {
		t.Error("a leg that leans was not seen")
	}
	s = draw(t, sample{"", shells(), Options{Title: "Shells"}}).Scene
	if r := Audit(s); len(r.Fans) > 0 {
		t.Errorf("a good chart has uneven fans: %v", r.Fans)
	}
	group := func(r, i int) *scene.Group { return find(&s.Root, fmt.Sprintf("r%ds%d", r, i)) }
	for r, i := 1, 2; ; i++ { // the second stitch of the first fan of three or more
		a, b, c := group(r, i-1), group(r, i), group(r, i+1)
		if c == nil {
			if r++; r > 9 {
				t.Fatal("no fan")
			}
			i = 1
			continue
		}
		foot := pointsOf(b, "base")
		if len(foot) == 1 && slices.Equal(pointsOf(a, "base"), foot) && slices.Equal(pointsOf(c, "base"), foot) {
			set(b, "top", pointsOf(b, "top")[0].Interpolate(pointsOf(a, "top")[0], 0.4))
			break
		}
	}
	if r := Audit(s); len(r.Fans) == 0 {
		t.Error("an uneven fan was not seen")
	}
	s = fresh()
	at := pointsOf(find(&s.Root, "r3s5"), "top")[0]
	find(&s.Root, "direction").Add(&scene.Path{D: canvas.Circle(1).Translate(at.X, at.Y)})
	if r := Audit(s); len(r.Overlaps) == 0 {
		t.Error("a sign over a stitch was not seen")
	}
	s = fresh()
	s.Root.Add(&scene.Text{X: 95, Y: 141, Size: 4, Colour: ink, String: "across"}, &scene.Text{X: 1, Y: 20, Size: 4, Colour: ink, String: "off"})
	if r := Audit(s); len(r.Texts) < 2 {
		t.Errorf("texts over symbols and edge: %v", r.Texts)
	}
}

// seamFan is a round of shells that begins and ends in the middle of one.
func seamFan() *fabric.Fabric {
	c := newCloth("Shells").chainRing(48)
	c.rnd().start(1).st(sc, 48).join()
	c.rnd().start(1)
	c.rep(8, func(int) { c.st(sc, 1).skip(2).inc(dc, dc, dc, dc, dc).skip(2) }).join()
	c.rnd().start(3, dc)
	first := c.last
	c.same(dc).same(dc)
	for i := range 8 {
		c.skip(2).st(sc, 1).skip(2)
		if i < 7 {
			c.inc(dc, dc, dc, dc, dc)
		}
	}
	for range 2 {
		c.put(fabric.Stitch{Kind: dc, Counts: true, On: []fabric.Place{first}})
	}
	return c.join().fabric()
}

// A fan in which a round begins and ends is measured as one, like the others of its round,
// and what else stands by the seam by itself.
func TestAuditFanAtTheSeam(t *testing.T) {
	s := draw(t, sample{"", seamFan(), Options{Title: "Shells"}}).Scene
	if r := Audit(s); len(r.Leaning) > 0 {
		t.Errorf("a fan at the seam leans: %v", r.Leaning)
	}
	last := find(&s.Root, "r3s47")
	for i, d := range last.Data {
		if d.Name == "base" {
			last.Data[i].Points = pointsOf(find(&s.Root, "r3s40"), "base")
		}
	}
	if r := Audit(s); len(r.Leaning) == 0 {
		t.Error("a leg at the seam that leans was not seen")
	}
}

// A leg of a decrease that lies along its round is measured, however upright the decrease
// is as a whole.
func TestAuditFlatLegs(t *testing.T) {
	c := newCloth("Crown").magic()
	c.rnd().st(sc, 12)
	c.rnd().rep(12, func(int) { c.inc(sc, sc) })
	c.rnd().rep(12, func(int) { c.tog(stitch.Tog(stitch.Single, 2)) })
	s := draw(t, sample{"", c.fabric(), Options{Title: "Crown"}}).Scene
	dec := find(&s.Root, "r3s5")
	base := pointsOf(dec, "base")
	if r := Audit(s); len(base) != 2 || len(r.Flat) > 0 {
		t.Errorf("a good decrease on %v lies flat: %v", base, r.Flat)
	}
	top := pointsOf(dec, "top")[0]
	foot := base[0].Interpolate(base[1], 0.5)
	set(dec, "top", foot.Interpolate(top, 0.4))
	if r := Audit(s); len(r.Flat) != 2 || len(r.Leaning) > 0 {
		t.Errorf("legs that lie flat were not seen: %v, leaning %v", r.Flat, r.Leaning)
	}
}

// A decrease that is begun at the start of a round and completed at the join is measured as
// the one stitch that it is.
func TestAuditSplitDecrease(t *testing.T) {
	s := draw(t, sample{"", split(), Options{Title: "Body"}}).Scene
	if r := Audit(s); len(r.Flat) > 0 || len(r.Leaning) > 0 {
		t.Errorf("half a decrease was measured: flat %v, leaning %v", r.Flat, r.Leaning)
	}
	for _, part := range [...]string{"r3start", "r3x1"} {
		set(find(&s.Root, part), "top", canvas.Point{})
	}
	if r := Audit(s); len(r.Flat)+len(r.Leaning) == 0 {
		t.Error("half a decrease that nothing completes was not seen")
	}
}

// set moves what the data of a group name to one point.
func set(g *scene.Group, name string, p canvas.Point) {
	for i := range g.Data {
		if g.Data[i].Name == name {
			g.Data[i].Points = []canvas.Point{p}
		}
	}
}

// find is the group with an ID, or nil.
func find(g *scene.Group, id string) *scene.Group {
	if g.ID == id {
		return g
	}
	for _, n := range g.Nodes {
		if c, ok := n.(*scene.Group); ok {
			if f := find(c, id); f != nil {
				return f
			}
		}
	}
	return nil
}
