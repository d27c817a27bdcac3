package chart

import (
	"strings"
	"testing"

	"whorl/chart/scene"
	"whorl/patterns/fabric"
	"whorl/patterns/stitch"
)

// interlocking is rounds of shells that stand between those of the round below.
func interlocking(repeats, rounds int) *fabric.Fabric {
	c := newCloth("Shells").chainRing(6 * repeats)
	c.rnd().start(1).st(sc, 6*repeats).join()
	for i := range rounds {
		c.rnd().start(1)
		c.rep(repeats, func(int) {
			if i%2 == 0 {
				c.st(sc, 1).skip(2).inc(dc, dc, dc, dc, dc).skip(2)
			} else {
				c.inc(dc, dc, dc, dc, dc).skip(2).st(sc, 1).skip(2)
			}
		})
		c.join()
	}
	return c.fabric()
}

// Shells that stand low between others open above them, and a round that has none to
// pass is left as the levels have it.
func TestShellsOpenAboveOthers(t *testing.T) {
	f := interlocking(8, 5)
	c := draw(t, sample{"interlocking", f, Options{Title: "Shells"}})
	if r := Audit(c.Scene); !r.Clean() {
		t.Errorf("%v %v %v", r.Overlaps, r.Texts, r.Astray)
	}
	w, err := newWork(f, measure(t, f), Options{}, fabric.InRounds)
	if err != nil {
		t.Fatal(err)
	}
	w.draw()
	levelled := 0
	for _, d := range w.courses {
		if d.level > 0 {
			levelled++
		}
	}
	if levelled == 0 || w.courses[0].level > 0 {
		t.Errorf("%d rounds were evened out", levelled)
	}
}

// crossed is cables of two over two front posts with two back posts between.
func crossed() *fabric.Fabric {
	c := newCloth("Cables").chainRing(48)
	c.rnd().st(dc, 48).join()
	c.rnd().rep(8, func(int) {
		c.skip(2).into(stitch.Of(stitch.Treble), stitch.FrontPost, 2)
		c.skip(-4).into(stitch.Of(stitch.Treble), stitch.FrontPost, 2)
		c.skip(2).into(dc, stitch.BackPost, 2)
	}).join()
	return c.fabric()
}

// A cable's line behind is broken, and a break where nothing crosses is a fault.
func TestBrokenLines(t *testing.T) {
	c := draw(t, sample{"cables", crossed(), Options{Title: "Cables"}})
	var broken, plain *scene.Group
	var look func(g *scene.Group)
	look = func(g *scene.Group) {
		switch {
		case datum(g, "behind") != "":
			broken = g
		case plain == nil && datum(g, "stitch") != "":
			plain = g
		}
		for _, n := range g.Nodes {
			if sub, ok := n.(*scene.Group); ok {
				look(sub)
			}
		}
	}
	look(&c.Scene.Root)
	if broken == nil || plain == nil {
		t.Fatal("no line is broken")
	}
	if r := Audit(c.Scene); !r.Clean() {
		t.Errorf("%v %v %v", r.Overlaps, r.Texts, r.Astray)
	}
	plain.Data = append(plain.Data, scene.Attr{Name: "behind", Value: broken.ID})
	if r := Audit(c.Scene); len(r.Astray) != 1 || !strings.Contains(r.Astray[0], "does not cross") {
		t.Errorf("a break without a crossing: %v", r.Astray)
	}
}

// Which of two crossed stitches is behind.
func TestGoesBehind(t *testing.T) {
	post := func(in stitch.Into, behind bool) *fabric.Stitch {
		return &fabric.Stitch{On: []fabric.Place{{Into: in}}, Behind: behind}
	}
	for _, c := range []struct {
		name        string
		first, then *fabric.Stitch
		behind      bool
	}{
		{"in front unless something says otherwise", post(stitch.FrontPost, false), post(stitch.FrontPost, false), false},
		{"by the words", post(stitch.FrontPost, false), post(stitch.FrontPost, true), true},
		{"a back post", post(stitch.FrontPost, false), post(stitch.BackPost, false), true},
	} {
		if got := goesBehind(c.first, c.then); got != c.behind {
			t.Errorf("%s: behind %v", c.name, got)
		}
	}
}

// A ball is drawn as two halves, a disc and a bag are not.
func TestHalves(t *testing.T) {
	ball := newCloth("Ball").magic()
	ball.rnd().inc(sc, sc, sc, sc, sc, sc)
	for n := 1; n < 5; n++ {
		ball.rnd().rep(6, func(int) { ball.st(sc, n-1).inc(sc, sc) })
	}
	for range 4 {
		ball.rnd().st(sc, 30)
	}
	for n := 4; n > 0; n-- {
		ball.rnd().rep(6, func(int) { ball.st(sc, n-1).tog(stitch.Tog(stitch.Single, 2)) })
	}
	f := ball.fabric()
	l := Halves(f, measure(t, f), Options{})
	if len(l) != 2 {
		t.Fatalf("%d halves", len(l))
	}
	a, b := l[0], l[1]
	if a.From != 1 || b.From != a.To+1 || b.To != 13 || a.To < 5 || a.To > 9 {
		t.Errorf("halves %d–%d and %d–%d", a.From, a.To, b.From, b.To)
	}
	if Halves(f, measure(t, f), Options{From: 2}) != nil {
		t.Error("a range of rounds is asked for, and divided")
	}
	for _, g := range []*fabric.Fabric{flat(sc, 6, 8, true), capped(sc, 6, 5, 6)} {
		if Halves(g, measure(t, g), Options{}) != nil {
			t.Errorf("%s is divided", g.Parts[0].Name)
		}
	}
	w, err := newWork(f, measure(t, f), b, fabric.InRounds)
	if err != nil {
		t.Fatal(err)
	}
	w.draw()
	if !w.inwards {
		t.Error("the closing half is not drawn inwards")
	}
	// A head is worked on to a body.
	for n := range 4 {
		ball.rnd().rep(6, func(int) { ball.st(sc, n).inc(sc, sc) })
	}
	for range 3 {
		ball.rnd().st(sc, 30)
	}
	for n := 4; n > 0; n-- {
		ball.rnd().rep(6, func(int) { ball.st(sc, n-1).tog(stitch.Tog(stitch.Single, 2)) })
	}
	toy := ball.fabric()
	l = Halves(toy, measure(t, toy), Options{})
	if len(l) != 4 {
		t.Fatalf("%d halves of two balls", len(l))
	}
	for k, o := range l {
		w, err := newWork(toy, measure(t, toy), o, fabric.InRounds)
		if err != nil {
			t.Fatal(err)
		}
		w.draw()
		if w.inwards != (k%2 > 0) {
			t.Errorf("half %d, rounds %d to %d: inwards is %v", k+1, o.From, o.To, w.inwards)
		}
	}
	if l[1].To != 13 || l[2].From != 14 {
		t.Errorf("the head ends with round %d, the body begins with %d", l[1].To, l[2].From)
	}
}
