package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math"
	"strings"
	"testing"

	"whorl/chart"
	"whorl/chart/output"
)

// circle is a flat circle of n rounds, each with k increases, as it is written
// in books.
func circle(name string, k, n int) string {
	var b strings.Builder
	fmt.Fprintf(&b, "title: Circle of %s\nparts:\n  - name: Circle\n    worked: rounds\n    text: |\n", name)
	fmt.Fprintf(&b, "      Rnd 1: Make a magic ring, ch 1 (does not count as a st here and throughout), %d %s in ring; join with sl st in first %s. (%d)\n", k, name, name, k)
	for r := 2; r <= n; r++ {
		switch r {
		case 2:
			fmt.Fprintf(&b, "      Rnd 2: Ch 1, 2 %s in each st around; join. (%d)\n", name, 2*k)
		case 3:
			fmt.Fprintf(&b, "      Rnd 3: Ch 1, *%s in next st, 2 %s in next st; rep from * around; join. (%d)\n", name, name, 3*k)
		default:
			fmt.Fprintf(&b, "      Rnd %d: Ch 1, *%s in next %d sts, 2 %s in next st; rep from * around; join. (%d)\n", r, name, r-2, name, r*k)
		}
	}
	return b.String()
}

// Increases a round that keep a circle flat: sc 6, hdc 8, dc 12, tr 16 (agreed
// by six published teaching sources); the counts of the sc circle, 6, 12, 18,
// 24, 30, 36, 42, 48, are printed in them. The circles must have those counts
// and lie flat to 6 %.
func TestFlatCircles(t *testing.T) {
	for _, c := range []struct {
		name string
		k    int
	}{{"sc", 6}, {"hdc", 8}, {"dc", 12}, {"tr", 16}} {
		status, out, errs := whorl(t, circle(c.name, c.k, 8), "check", "--json", "-")
		if status != statusDone {
			t.Fatal(errs)
		}
		var r report
		if err := json.Unmarshal([]byte(out), &r); err != nil {
			t.Fatal(err)
		}
		n := 0
		for _, round := range r.Sizes[0].Parts[0].Rounds {
			if round.Number == 0 {
				continue
			}
			n++
			if want := c.k * round.Number; round.Stitches != want || round.Kinds[c.name] != want {
				t.Errorf("%s, %s: %d stitches, not %d", c.name, round.Label, round.Stitches, want)
			}
			if math.Abs(round.Flatness-1) > 0.06 {
				t.Errorf("%s, %s: flatness %.3f", c.name, round.Label, round.Flatness)
			}
		}
		if n != 8 {
			t.Errorf("%s: %d rounds", c.name, n)
		}
	}
}

// Circles of about 1,000 and 10,000 half doubles: the way from words to fabric
// and form, and from there to an SVG. Time a stitch should not grow.
func BenchmarkStitches(b *testing.B) {
	for _, n := range []int{15, 49} {
		words := circle("hdc", 8, n)
		stitches := float64(4 * n * (n + 1))
		b.Run(fmt.Sprintf("work/%.0f", stitches), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if j, err := load("-", strings.NewReader(words)); err != nil || j.wrong() {
					b.Fatal(err)
				}
			}
			b.ReportMetric(stitches*float64(b.N)/b.Elapsed().Seconds(), "stitches/s")
		})
		b.Run(fmt.Sprintf("draw/%.0f", stitches), func(b *testing.B) {
			j, err := load("-", strings.NewReader(words))
			if err != nil {
				b.Fatal(err)
			}
			b.ReportAllocs()
			for b.Loop() {
				c, err := chart.Round(j.fabrics[0], j.forms[0], chart.Options{Title: j.pattern.Title})
				if err != nil {
					b.Fatal(err)
				}
				var svg bytes.Buffer
				if err := output.SVG(&svg, c.Scene); err != nil {
					b.Fatal(err)
				}
			}
			b.ReportMetric(stitches*float64(b.N)/b.Elapsed().Seconds(), "stitches/s")
		})
	}
}
