package chart

import (
	"strings"
	"testing"

	"whorl/geometry"
	"whorl/patterns/fabric"
	"whorl/patterns/stitch"
)

// A border round what is no crochet stands on its edge, as long as the first round.
func TestEdgeOfCloth(t *testing.T) {
	for _, draw := range []func(*fabric.Fabric, *geometry.Form, Options) (*Chart, error){Round, Wedge} {
		c := newCloth("Edging").magic()
		c.part.Rounds[0].About = "napkin"
		c.rnd().start(1)
		for range 96 {
			c.put(fabric.Stitch{Kind: sc, Counts: true, On: []fabric.Place{{Into: stitch.Ring, At: fabric.Ref{Stitch: -1}, Last: fabric.Ref{Stitch: -1}}}})
		}
		c.join().rnd().start(1).rep(24, func(int) { c.st(sc, 4) }).join()
		f := c.fabric()
		chart, err := draw(f, measure(t, f), Options{})
		if err != nil {
			t.Fatal(err)
		}
		key := strings.Join(keyOf(&chart.Scene.Root), "|")
		if find(&chart.Scene.Root, "ring") != nil || find(&chart.Scene.Root, "below") == nil || !strings.Contains(key, "pale line") {
			t.Errorf("no edge: %s", key)
		}
		if r := Audit(chart.Scene); !r.Clean() {
			t.Errorf("%v %v", r.Overlaps, r.Astray)
		}
	}
}
