package geometry

import (
	"fmt"
	"testing"

	"whorl/patterns/fabric"
	"whorl/patterns/stitch"
)

// Kinds used throughout the tests.
var (
	ch  = stitch.Of(stitch.Chain)
	sl  = stitch.Of(stitch.Slip)
	sc  = stitch.Of(stitch.Single)
	hdc = stitch.Of(stitch.Half)
	dc  = stitch.Of(stitch.Double)
	tr  = stitch.Of(stitch.Treble)
)

// builder works a part stitch by stitch.
type builder struct{ part *fabric.Part }

func rounds() *builder {
	return &builder{&fabric.Part{Name: "Body", Worked: fabric.InRounds, From: -1}}
}
func rows() *builder { return &builder{&fabric.Part{Name: "Brim", Worked: fabric.InRows, From: -1}} }

// next begins a round or row.
func (b *builder) next() *fabric.Round {
	n := len(b.part.Rounds)
	r := &fabric.Round{Label: fmt.Sprint("Rnd ", n), Number: n, Closing: fabric.Spiral}
	if b.part.Worked == fabric.InRows {
		r.Label, r.Row, r.Closing = fmt.Sprint("Row ", n), true, fabric.Open
	}
	b.part.Rounds = append(b.part.Rounds, r)
	return r
}

// ring is a magic ring (n = 0) or a ring of n chains; chain is a starting chain.
func (b *builder) ring(n int) *builder {
	r := b.next()
	r.Ring, r.Closing = true, fabric.Joined
	add(r, n, fabric.Stitch{Kind: ch})
	return b
}

func (b *builder) chain(n int) *builder {
	r := b.next()
	r.Closing = fabric.Open
	add(r, n, fabric.Stitch{Kind: ch})
	return b
}

// inRing works n stitches into the ring.
func (b *builder) inRing(k stitch.Kind, n int) *builder {
	add(b.next(), n, fabric.Stitch{Kind: k, Counts: true,
		On: []fabric.Place{{Into: stitch.Ring, At: fabric.Ref{Round: 0, Stitch: -1}}}})
	return b
}

// even works n stitches spread evenly over the round below.
func (b *builder) even(k stitch.Kind, in stitch.Into, n int) *builder {
	r := b.next()
	below := len(b.part.Rounds) - 2
	m := len(b.part.Rounds[below].Stitches)
	for j := range n {
		add(r, 1, fabric.Stitch{Kind: k, Counts: true, On: []fabric.Place{on(in, below, j*m/n)}})
	}
	return b
}

func add(r *fabric.Round, n int, s fabric.Stitch) {
	for range n {
		r.Stitches = append(r.Stitches, s)
	}
}

func on(in stitch.Into, round, st int) fabric.Place {
	return fabric.Place{Into: in, At: fabric.Ref{Round: round, Stitch: st}}
}

// measured is the part's form at a gauge.
func (b *builder) measured(t testing.TB, g *Gauge) []RoundForm {
	t.Helper()
	form, err := Measure(&fabric.Fabric{Parts: []*fabric.Part{b.part}}, g)
	if err != nil {
		t.Fatal(err)
	}
	return form.Parts[0].Rounds
}

func gauge(t testing.TB, r ...Reading) *Gauge {
	t.Helper()
	g, err := NewGauge(r)
	if err != nil {
		t.Fatal(err)
	}
	return g
}

func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if d := got - want; !(d <= tolerance && d >= -tolerance) {
		t.Errorf("%s is %.4f, want %.4f ± %.4f", what, got, want, tolerance)
	}
}
