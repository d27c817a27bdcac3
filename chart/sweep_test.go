package chart

import (
	"fmt"
	"runtime/debug"
	"testing"

	"whorl/patterns/fabric"
	"whorl/patterns/stitch"
)

// TestMain lets the memory grow further before it is cleaned up: every chart leaves much
// behind and the next needs none of it.
func TestMain(m *testing.M) {
	debug.SetGCPercent(400)
	m.Run()
}

// closing is a brim-up body of plain stitches closed by decrease rounds.
func closing(k stitch.Kind, sectors, each, plain int, start int) *fabric.Fabric {
	c := newCloth("Crown").chainRing(sectors * each)
	c.rnd().start(start).st(k, sectors*each).join()
	for i := 0; i < plain; i++ {
		c.rnd().start(start).st(k, sectors*each).join()
	}
	for n := each; n > 1; n-- {
		c.rnd().start(start).rep(sectors, func(int) { c.st(k, n-2).tog(stitch.Tog(k.Base, 2)) }).join()
	}
	return c.fabric()
}

// TestSweep audits many plain shapes: nothing may touch, whatever the counts.
func TestSweep(t *testing.T) {
	var all []sample
	add := func(name string, f *fabric.Fabric) {
		for _, cross := range []bool{false, true} {
			all = append(all, sample{fmt.Sprint(name, " cross ", cross), f, Options{Title: name, Cross: cross}})
		}
	}
	for n := 1; n <= 13; n += 2 {
		add(fmt.Sprint("sc circle of ", n), flat(sc, 6, n, n%3 > 0))
		add(fmt.Sprint("hdc circle of ", n), flat(hdc, 8, n, n%3 > 0))
		if n < 10 {
			add(fmt.Sprint("dc circle of ", n), flat(dc, 12, n, n%3 > 0))
			add(fmt.Sprint("counting circle of ", n), flatCounting(12, n))
			add(fmt.Sprint("mesh of ", n), mesh(12+n, 2+n/2))
		}
	}
	for _, up := range []int{6, 9, 12} {
		add(fmt.Sprint("sc hat ", up), capped(sc, 6, up, 6))
		add(fmt.Sprint("hdc hat ", up), capped(hdc, 8, up, up/2))
		add(fmt.Sprint("dc hat ", up), capped(dc, 12, up/2, up/2))
	}
	for each := 3; each <= 9; each += 2 {
		add(fmt.Sprint("sc crown ", each), closing(sc, 8, each, 3, 1))
		add(fmt.Sprint("hdc crown ", each), closing(hdc, 9, each, 2, 2))
		add(fmt.Sprint("dc crown ", each), closing(dc, 7, each, 1, 3))
	}
	for _, s := range all {
		c := draw(t, s)
		r := Audit(c.Scene)
		if c.Smallest < smallestSymbol || len(c.Findings) > 0 {
			t.Logf("%s: %v", s.name, c.Findings)
		}
		if c.Smallest < smallestSymbol {
			continue
		}
		for _, o := range r.Overlaps {
			t.Errorf("%s (%d stitches): overlap of %v, %d in all", s.name, r.Stitches, o, len(r.Overlaps))
			break
		}
		if len(r.Texts)+len(r.Astray)+len(r.Fans) > 0 || r.Turn > 0.1 {
			t.Errorf("%s: texts %v, legs %v, fans %v, turn %.2f", s.name, r.Texts, r.Astray, r.Fans, r.Turn)
		}
	}
}
