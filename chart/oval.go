package chart

import (
	"math"

	"github.com/tdewolff/canvas"

	"whorl/chart/ring"
	"whorl/chart/scene"
	"whorl/patterns/fabric"
	"whorl/patterns/stitch"
	"whorl/symbols"
)

// oval is a piece worked round both sides of a chain: it lies on a stadium about that
// chain, whose straight sides are as long as the chain.
type oval struct {
	long   float64 // of the chain between its first and last stitch worked into, mm of fabric
	side   float64 // the angle of each straight side
	begin  int     // the chain in the end where rounds begin
	missed int     // the chain beside it that a first leg of missed chains stands on; -1 for none
	far    int     // that in the other end
	across int     // chains between them, and one
	loose  bool    // an irregular round has been laid
}

// leastOval is the fewest chains that make an oval.
const leastOval = 3

// findOval finds the chain that a first round is worked round; nil where it is worked
// into one side only.
func (w *work) findOval() *oval {
	first := w.courses[1]
	o := &oval{begin: -1, missed: first.missedChain()}
	under := false
	for _, i := range first.rising() {
		s := &first.round.Stitches[i]
		if s.Role == fabric.Join || s.Role == fabric.Travel || !first.takesRoom(i) {
			continue
		}
		if len(s.On) != 1 || s.On[0].At.Round != 0 || s.On[0].Into == stitch.Ring {
			return nil
		}
		at := s.On[0].At.Stitch
		if at == o.missed {
			continue
		}
		if o.begin < 0 {
			o.begin, o.far = at, at
		}
		if abs(at-o.begin) > abs(o.far-o.begin) {
			o.far = at
		}
		under = under || s.On[0].Into == stitch.Underside
	}
	o.across = abs(o.far - o.begin)
	if !under || o.across < leastOval-1 {
		return nil
	}
	width, n := 0.0, 0.0
	for i := range first.round.Stitches {
		if first.takesRoom(i) {
			width += first.form.Widths[i]
			n++
		}
	}
	o.long = float64(o.across) * width / n
	around := math.Max(first.form.Circumference-2*o.long, 0.2*first.form.Circumference)
	o.side = ring.Turn * o.long / (2*o.long + around)
	return o
}

// missedChain is the chain that the chains missed at the beginning of a first round stand
// on as its first leg, where the stitches beside them are several in one chain: it
// belongs to the end that they go round. It is -1 for none.
func (c *course) missedChain() int {
	uses := map[int]int{}
	start, next := -1, -1
	for _, i := range c.rising() {
		s := &c.round.Stitches[i]
		if !c.takesRoom(i) || len(s.On) == 0 {
			continue
		}
		at := s.On[0].At.Stitch
		uses[at]++
		switch {
		case start < 0 && s.Role == fabric.Start:
			start = at
		case start >= 0 && next < 0:
			next = at
		}
	}
	if start >= 0 && next >= 0 && uses[start] == 1 && uses[next] > 1 && abs(start-next) == 1 {
		return start
	}
	return -1
}

// along is how far from the end where rounds begin a chain is.
func (o *oval) along(at int) int {
	if at == o.missed {
		return 0
	}
	return abs(at - o.begin)
}

// layOval lays the places of the chain: those along it on the sides, and what is worked
// into its two ends about them.
func (w *work) layOval() {
	o := w.oval
	end := ring.Turn/2 - o.side
	type use struct {
		key, along int
		back       bool
	}
	var uses []use
	first := w.courses[1]
	back := false
	for _, i := range first.rising() {
		s := &first.round.Stitches[i]
		if first.takesRoom(i) && len(s.On) == 1 {
			along := o.along(s.On[0].At.Stitch)
			uses = append(uses, use{w.key(s.On[0]), along, back})
			back = back || along == o.across
		}
	}
	head, tail, far := 0, 0, 0
	for _, u := range uses {
		switch {
		case u.along == o.across:
			far++
		case u.along == 0 && u.back:
			tail++
		case u.along == 0:
			head++
		}
	}
	sum, n := map[int]float64{}, map[int]float64{}
	h, t, f := 0, 0, 0
	for _, u := range uses {
		var a float64
		share := float64(u.along) / float64(o.across)
		switch {
		case u.along == o.across:
			a = end/2 + o.side + end*(float64(f)+0.5)/float64(far)
			f++
		case u.along == 0 && u.back:
			a = ring.Turn - end/2 + end*(float64(t)+0.5)/float64(head+tail)
			t++
		case u.along == 0:
			a = -end/2 + end*(float64(tail+h)+0.5)/float64(head+tail)
			h++
		case u.back:
			a = end/2 + end + o.side*(2-share)
		default:
			a = end/2 + o.side*share
		}
		sum[u.key] += a
		n[u.key]++
	}
	for k := range sum {
		w.edge[k] = sum[k] / n[k]
	}
}

// ovalLong is the length of the chain on paper, mm; 0 for what is no oval.
func (w *work) ovalLong() float64 {
	if w.oval == nil || w.radii == nil {
		return 0
	}
	return w.oval.long * w.radii.Scale
}

// fitOval takes the straight sides out of what rounds need of a radius.
func (w *work) fitOval(layers []ring.Layer, rounds []*course) {
	switch {
	case w.oval == nil:
		return
	case w.rows:
		w.fitHairpin(layers, rounds)
		return
	}
	for i := range layers {
		layers[i].Length = math.Max(layers[i].Length-2*w.oval.long, 0)
	}
	for i, c := range rounds {
		l := &layers[len(layers)-len(rounds)+i]
		l.Least = math.Max(float64(len(c.order)-2*w.oval.across)*leastPitch/ring.Turn, 0)
	}
	if w.ground {
		layers[0].Least = 0
	}
}

// stackOval lays the rounds of an oval as far out as keeps its ends within so much of
// the centre, its sides within the fit.
func (w *work) stackOval(fit *ring.Fit, wide, tall float64) {
	within := fit.Outer
	low, high := within/10, within
	for range 30 {
		fit.Outer = (low + high) / 2
		fit.Hole = ovalHole * w.radii.Scale * tall
		w.radii = ring.Stack(w.layers(), *fit)
		if w.radii.Of(w.layerAt(w.last))+w.ovalLong()/2 > wide {
			high = fit.Outer
		} else {
			low = fit.Outer
		}
	}
}

// chainLine draws the chain of an oval, once, between the places on its two sides.
func (a *artist) chainLine(places []footing) *scene.Group {
	line := a.pen.Line
	g := &scene.Group{ID: a.unique("rnd0"), Title: "Foundation chain", Style: scene.Style{Stroke: a.second(), Line: &line}}
	g.Data = []scene.Attr{{Name: "round", Value: "0"}, {Name: "kind", Value: "ch"}, {Name: "top", Points: points(places)}}
	step := a.ovalLong() / float64(a.oval.across)
	mirrored := a.o.LeftHanded
	if a.rows {
		mirrored = !a.leftwards(false)
	}
	for k := range a.oval.across + 1 {
		x := a.ovalLong()/2 - float64(k)*step
		switch k { // what is worked round the ends keeps clear of them
		case 0:
			x -= min(0.15*a.unit, step/4)
		case a.oval.across:
			x += min(0.15*a.unit, step/4)
		}
		if mirrored {
			x = -x
		}
		at := canvas.Point{X: hundredth(a.centre.X + x), Y: a.centre.Y}
		an := symbols.Anchors{Top: at, Unit: a.unit, Width: min(step, 0.6*a.unit), Along: canvas.Point{X: -1}, Up: canvas.Point{Y: -1}}
		art := symbols.Draw(stitch.Of(stitch.Chain), stitch.Top, an, a.pen)
		if art.Mark != nil {
			art.Mark.At = at
		}
		a.paint(g, art, a.second())
	}
	return g
}
