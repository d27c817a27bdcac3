package geometry

import (
	"errors"
	"testing"

	"whorl/patterns/fabric"
	"whorl/patterns/stitch"
)

// fans is a tube: sc in each of 72 chains, then five rounds of 12 repeats of a
// sc and a fan of 5 dc, then a round of sc.
func fans(group string) *fabric.Fabric {
	b := rounds().ring(72).even(sc, stitch.Top, 72)
	for range 5 {
		r := b.next()
		below := len(b.part.Rounds) - 2
		for k := range 12 {
			add(r, 1, fabric.Stitch{Kind: sc, Counts: true, On: []fabric.Place{on(stitch.Top, below, 6*k)}})
			add(r, 5, fabric.Stitch{Kind: dc, Counts: true, On: []fabric.Place{on(stitch.Top, below, 6*k+3)}})
			r.Repeats = append(r.Repeats, fabric.Span{From: 6 * k, To: 6*k + 6})
			r.Groups = append(r.Groups, fabric.Group{Span: fabric.Span{From: 6*k + 1, To: 6*k + 6}, Name: group})
		}
	}
	b.even(sc, stitch.Top, 72)
	return &fabric.Fabric{Parts: []*fabric.Part{b.part}}
}

// A gauge of 6 repeats and 5 rounds in 20 cm makes 12 repeats 40 cm round and
// five rounds 20 cm tall, however the repeat is named. Rounds of sc keep the
// size that was measured of them, or else follow.
func TestFitted(t *testing.T) {
	f := fans("fan")
	for _, name := range []string{"fan repeats", "fans", "Fan", "repeats", "pattern repeats", "repeats in shell pattern"} {
		over := Reading{Count: 6, Pattern: name, Rows: 5, Over: 200}
		alone := gauge(t, over)
		both := gauge(t, Reading{Count: 16, Kind: sc, Rows: 18, Over: 100}, over)
		for _, c := range []struct {
			g              *Gauge
			scRound, scRow float64 // the first round: circumference, height
		}{
			// By itself every stitch is 400/72 mm wide; sc is sc 6 to dc 12 tall.
			{alone, 400, 0},
			{both, 72 * 100 / 16.0, 100 / 18.0},
		} {
			g, err := c.g.Fitted([]*fabric.Fabric{f})
			if err != nil {
				t.Fatal(name, err)
			}
			form, err := Measure(f, g)
			if err != nil {
				t.Fatal(err)
			}
			l := form.Parts[0].Rounds
			for i := 2; i <= 6; i++ {
				near(t, name+": round of repeats", l[i].Circumference, 400, 1e-6)
			}
			near(t, name+": five rounds", l[6].Level-l[1].Level, 200, 4)
			near(t, name+": round of sc", l[1].Circumference, c.scRound, 1e-6)
			if c.scRow > 0 {
				near(t, name+": height of sc", l[1].Height, c.scRow, 1e-6)
			}
		}
	}
	for _, name := range []string{"xyz", "shells"} {
		_, err := gauge(t, Reading{Count: 6, Pattern: name, Over: 200}).Fitted([]*fabric.Fabric{f, nil})
		var bad *PatternError
		if !errors.As(err, &bad) || bad.Pattern != name {
			t.Errorf("%s: %v", name, err)
		}
	}
	if _, err := gauge(t, Reading{Count: 60, Pattern: "fans", Over: 40}).Fitted([]*fabric.Fabric{f}); err == nil {
		t.Error("fans of a sixtieth of a millimetre are taken")
	}
}

// Rounds that only pull in or flare, as those of narrower or wider stitches do,
// are not said to have decreases or increases.
func TestNoChangesWhereNoneAreWorked(t *testing.T) {
	f := fans("fan")
	g, err := gauge(t, Reading{Count: 16, Kind: sc, Rows: 18, Over: 100}, Reading{Count: 6, Pattern: "fans", Rows: 5, Over: 155}).Fitted([]*fabric.Fabric{f})
	if err != nil {
		t.Fatal(err)
	}
	form, err := Measure(f, g)
	if err != nil {
		t.Fatal(err)
	}
	l := Findings(f.Parts[0], form.Parts[0].Rounds)
	if len(l) == 0 {
		t.Error("nothing is found")
	}
	for _, f := range l {
		if !f.Alike || f.Trait < Ruffled {
			t.Errorf("%+v", f)
		}
	}
}

// A group with "st" in its name is known by any spelling of it.
func TestPatternName(t *testing.T) {
	own, _ := patternName("v st")
	for _, words := range []string{"v-sts", "V-st", "V st repeats", "v-stitches", "repeats of V-st"} {
		if name, _ := patternName(words); name != own {
			t.Errorf("%q is %q, not %q", words, name, own)
		}
	}
}

// "18 sts and 5 rounds = 20 cm over fan stitch": stitches of its rounds, of which
// there are 72, come to 20/18 cm each.
func TestFittedToStitches(t *testing.T) {
	f := []*fabric.Fabric{fans("fan")}
	has := func(pattern string, k stitch.Kind) bool { return Reading{Pattern: pattern, Kind: k}.Has(f) }
	if !has("fan stitch", stitch.Kind{}) || !has("main pattern", stitch.Kind{}) || has("waffle stitch", stitch.Kind{}) ||
		!has("waffle stitch", dc) || has("waffle stitch", tr) {
		t.Error("the wrong stitch patterns are found")
	}
	g, err := gauge(t, Reading{Count: 18, Pattern: "fan stitch", Stitches: true, Rows: 5, Over: 200}).Fitted(f)
	if err != nil {
		t.Fatal(err)
	}
	form, err := Measure(f[0], g)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "round of fans", form.Parts[0].Rounds[3].Circumference, 800, 1e-6)
}
