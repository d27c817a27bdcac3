package shaping

import (
	"fmt"
	"math/rand"
	"testing"

	"whorl/geometry"
	"whorl/patterns/fabric"
	"whorl/patterns/stitch"
)

// Whatever fabric can be measured, drawing its shape ends in an error or in a
// page that passes the scene's own check.
func TestGarbage(t *testing.T) {
	rnd := rand.New(rand.NewSource(5))
	any := func(lo, hi int) int { return lo + rnd.Intn(hi-lo) }
	drawn := 0
	for trial := range 20000 {
		f := &fabric.Fabric{}
		for range any(1, 3) {
			p := &fabric.Part{From: any(-1, 2), Worked: fabric.Way(any(0, 5) / 4), Name: "P"}
			for i := range any(1, 7) {
				r := &fabric.Round{Label: fmt.Sprint("Rnd ", i), Number: i, Row: any(0, 12) == 0, Ring: any(0, 3) == 0,
					Reversed: any(0, 5) == 0, Closing: fabric.Closing(any(0, 3))}
				for range any(0, 14) {
					s := fabric.Stitch{Role: fabric.Role(any(0, 8) % 6), Chains: any(0, 5), Counts: any(0, 4) > 0}
					s.Kind = stitch.Kind{Base: stitch.Base(any(1, 9)), Shape: stitch.Shape(any(0, 8)), Manner: stitch.Manner(any(0, 64)), Legs: any(-1, 6)}
					if any(0, 2) == 0 {
						s.Kind = stitch.Of(stitch.Double)
					}
					for range any(0, 4) {
						at := fabric.Ref{Round: any(max(i-2, 0), i+1), Stitch: any(-1, 12)}
						place := fabric.Place{Into: stitch.Into(any(0, 11)), Part: any(0, 2), At: at, Last: fabric.Ref{Round: at.Round, Stitch: any(0, 12)}}
						if any(0, 3) > 0 {
							place = fabric.Place{At: fabric.Ref{Round: max(i-1, 0)}}
						}
						if i > 0 {
							s.On = append(s.On, place)
						}
					}
					r.Stitches = append(r.Stitches, s)
				}
				p.Rounds = append(p.Rounds, r)
			}
			f.Parts = append(f.Parts, p)
		}
		form, err := geometry.Measure(f, nil)
		if err != nil {
			continue
		}
		for part := range f.Parts {
			Findings(f.Parts[part], form.Parts[part])
			o := Options{Part: part, Head: float64(any(0, 2) * 500)}
			s, err := Sheet(f, form, o)
			if err != nil {
				continue
			}
			v, err := Form(f, form, o)
			if err != nil {
				t.Fatal(trial, err)
			}
			if err := s.Check(); err != nil {
				t.Fatal(trial, err)
			}
			if err := v.Check(); err != nil {
				t.Fatal(trial, err)
			}
			drawn++
		}
	}
	if drawn < 300 {
		t.Errorf("only %d were drawn", drawn)
	}
}
