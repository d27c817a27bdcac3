package chart

import (
	"math"

	"github.com/tdewolff/canvas"

	"whorl/chart/ring"
)

// Rows worked along both sides of a chain lie about it as a hairpin: along one side,
// round its far end and back along the other.

// hairpin makes the rows lie about a chain that the first of them is worked round; false
// where it is worked into one side only.
func (w *work) hairpin() bool {
	if len(w.courses) < 2 || !isLoose(w.courses[0].round) {
		return false
	}
	first := w.courses[1]
	was := first.reversed
	first.reversed = false
	if w.oval = w.findOval(); w.oval == nil {
		first.reversed = was
		return false
	}
	for i, c := range w.courses[2:] {
		c.reversed = w.courses[i+1].reversed != w.comesBack(c)
	}
	w.courses[0].loose = true
	w.flat = false
	return true
}

// end is how long the half circle is, in mm of the fabric along the rows.
func (o *oval) end(w *work) float64 {
	return math.Max(w.courses[1].form.Circumference-2*o.long, 0.2*o.long)
}

// layChain lays the places of the chain along the rows.
func (w *work) layChain() {
	o := w.oval
	end := o.end(w)
	far := false
	first := w.courses[1]
	for _, i := range first.rising() {
		s := &first.round.Stitches[i]
		if !first.takesRoom(i) || len(s.On) != 1 {
			continue
		}
		n := abs(s.On[0].At.Stitch - o.begin)
		share := o.long * float64(n) / float64(o.across)
		at := share
		switch {
		case n == o.across:
			at = o.long + end/2
			far = true
		case far:
			at = 2*o.long + end - share
		}
		w.edge[w.key(s.On[0])] = at
	}
	w.courses[0].settle(w)
}

// onHairpin lays a row: its stitches over their places, those round the end of the chain
// as far apart as fills it.
func (w *work) onHairpin(c *course, items []ring.Item) {
	o := w.oval
	end := o.end(w)
	around, in := 0.0, make([]bool, len(items))
	for k := range items {
		at := items[k].Base - o.long
		in[k] = at > 1e-6 && at < end-1e-6
		if items[k].Free && k > 0 {
			in[k] = in[k-1]
		}
		if in[k] {
			around += items[k].Width
		}
	}
	for k := range items {
		if in[k] {
			items[k].Width *= end / around
		}
	}
	for k, x := range ring.Along(items, 1, ring.Stiffness) {
		c.theta[c.order[k]] = x
	}
	c.fold = 1
	gap := c.form.Circumference / float64(len(items))
	c.laySmall(4 * edgeRoom * gap)
	w.layTravel(c)
	w.layTurning(c, edgeRoom*gap)
}

// reachHairpin finds how far out every stitch is and sets the hairpin on the page, its
// open end on the side where rows begin.
func (w *work) reachHairpin(p *page) {
	w.reachWithin(p.width/2-margin-besideRows/2, (p.bottom-p.top)/2-underRows)
	w.place(canvas.Point{})
	low, high := w.extentOf()
	w.place(canvas.Point{X: hundredth(p.width / 2), Y: hundredth(p.top + underRows - low.Y)})
	p.centre = w.centre
	p.bottom = hundredth(math.Min(p.bottom, w.centre.Y+high.Y+underRows))
}

// hairpinShape is what such rows lie on.
func (w *work) hairpinShape() ring.Hairpin {
	return ring.Hairpin{Long: w.ovalLong(), Side: w.oval.long, End: w.oval.end(w), Mirrored: !w.leftwards(false)}
}

// fitHairpin gives the layers of rows about a chain the lengths and least radii that
// whole turns of their half circles have.
func (w *work) fitHairpin(layers []ring.Layer, rows []*course) {
	for i := range layers {
		layers[i].Length = 2 * math.Max(layers[i].Length-2*w.oval.long, 0)
	}
	for i, c := range rows {
		n := 0
		for _, j := range c.order {
			if at := c.theta[j] - w.oval.long; at > 0 && at < w.oval.end(w) {
				n++
			}
		}
		layers[len(layers)-len(rows)+i].Least = float64(n) * leastPitch / math.Pi
	}
	layers[0].Least = 0
}
