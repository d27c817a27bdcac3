package fabric

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"whorl/patterns/stitch"
)

func TestChanges(t *testing.T) {
	at := func(in stitch.Into, n int) Place { return Place{Into: in, At: Ref{Stitch: n}} }
	st := func(on ...Place) Stitch { return Stitch{Kind: stitch.Of(stitch.Single), On: on, Counts: true} }
	tog := func(on ...Place) Stitch {
		return Stitch{Kind: stitch.Tog(stitch.Single, len(on)), On: on, Counts: true}
	}
	top := func(n int) Place { return at(stitch.Top, n) }
	loose := st(top(0))
	loose.Counts = false
	for name, c := range map[string]struct {
		round []Stitch
		want  []Change
	}{
		"plain":            {[]Stitch{st(top(0)), st(top(1))}, nil},
		"two in one":       {[]Stitch{st(top(0)), st(top(0)), st(top(1))}, []Change{{[]int{0, 1}, 1}}},
		"three, then two":  {[]Stitch{st(top(0)), st(top(0)), st(top(0)), st(top(1)), st(top(1))}, []Change{{[]int{0, 1, 2}, 2}, {[]int{3, 4}, 1}}},
		"either loop":      {[]Stitch{st(at(stitch.FrontLoop, 0)), st(at(stitch.BackLoop, 0))}, []Change{{[]int{0, 1}, 1}}},
		"space":            {[]Stitch{st(at(stitch.Space, 0)), st(at(stitch.Space, 0))}, nil},
		"ring":             {[]Stitch{st(at(stitch.Ring, -1)), st(at(stitch.Ring, -1))}, nil},
		"not counted":      {[]Stitch{loose, st(top(0))}, nil},
		"together":         {[]Stitch{st(top(0)), tog(top(1), top(2), top(3))}, []Change{{[]int{1}, -2}}},
		"together, in one": {[]Stitch{tog(top(1), top(1))}, nil},
		"both":             {[]Stitch{tog(top(0), top(1)), st(top(2)), st(top(2))}, []Change{{[]int{0}, -1}, {[]int{1, 2}, 1}}},
		"over the join": {[]Stitch{{Role: FirstHalf, As: stitch.Tog(stitch.Double, 5), Counts: true, On: []Place{top(0), top(1), top(2)}}},
			[]Change{{[]int{0}, -4}}},
	} {
		r := Round{Stitches: c.round}
		if d := cmp.Diff(c.want, r.Changes()); d != "" {
			t.Errorf("%s: %s", name, d)
		}
	}
}
