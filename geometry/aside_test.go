package geometry

import (
	"testing"

	"whorl/patterns/fabric"
	"whorl/patterns/stitch"
)

// A row is a list of the stitches of the row below that its own stand on, in the order of
// working; rows are worked to and fro, and the first is a right-side row, to the left.
func TestAside(t *testing.T) {
	const ten = "0123456789"
	for name, c := range map[string]struct {
		rows []string
		want []float64 // of the last rows, in stitches to the right
	}{
		"straight":                      {[]string{"9876543210", "9876543210", "9876543210"}, []float64{0, 0}},
		"turned before the end":         {[]string{"9876543210", "9876543210", "987654"}, []float64{0, 2}},
		"and worked back":               {[]string{"9876543210", "9876543210", "987654", "543210"}, []float64{2, 2}},
		"turned before the end, wrong":  {[]string{"9876543210", "987654"}, []float64{0, -2}},
		"the end left at the beginning": {[]string{"9876543210", "543210"}, []float64{0, 2}},
		"grows at its end":              {[]string{"9876543210", "98765432100"}, []float64{0, 0.5}},
		"grows at both ends":            {[]string{"9876543210", "998765432100"}, []float64{0, 0}},
		"grows in the middle":           {[]string{"9876543210", "987655443210"}, []float64{0, 0}},
	} {
		b := rows().chain(len(ten))
		for i, s := range c.rows {
			r := b.next()
			r.Wrong, r.Reversed = i%2 == 1, i%2 == 1
			for _, d := range s {
				add(r, 1, fabric.Stitch{Kind: sc, Counts: true, On: []fabric.Place{on(stitch.Top, i, int(d-'0'))}})
			}
		}
		got := b.measured(t, nil)
		w := got[1].Circumference / 10
		for k, want := range c.want {
			near(t, name, got[len(got)-len(c.want)+k].Aside/w, want, 0.01)
		}
	}
}
