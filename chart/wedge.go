package chart

import (
	"fmt"
	"math"

	"github.com/tdewolff/canvas"

	"whorl/chart/ring"
	"whorl/geometry"
	"whorl/patterns/fabric"
	"whorl/patterns/stitch"
)

// Wedge is the chart of one or more repeats of a part worked in the round, cut
// from the layout of the whole, with what lies beside them in grey. A part
// without repeats is drawn whole, which the chart says.
func Wedge(f *fabric.Fabric, form *geometry.Form, o Options) (*Chart, error) {
	w, err := newWork(f, form, o, fabric.InRounds)
	if err != nil {
		return nil, err
	}
	w.turn()
	w.closeFans(w.reachRound)
	switch repeats := w.cutRepeats(o.Repeats); {
	case repeats:
		w.leaders = true
		w.findZigzag(w.reachWedge)
		p := w.fit(w.reachWedge)
		c, _ := p.finish()
		return c, nil
	case w.fold < 2:
		c, err := Round(f, form, o)
		if err == nil {
			c.Findings = append(c.Findings, "these rounds have no repeat in common, so the whole is drawn: choose fewer rounds with rounds:")
		}
		return c, err
	}
	return Round(f, form, o)
}

// cutRepeats leaves as many of the repeats that the drawn rounds have in common, at
// least one. It is false where that is all or there are none.
func (w *work) cutRepeats(repeats int) bool {
	fold, widest := 0, 0
	for _, c := range w.courses[w.first : w.last+1] {
		if !c.hub {
			fold = gcd(fold, w.likeness(c))
			widest = max(widest, len(c.order))
		}
	}
	// Where rounds repeat stitch by stitch, a few of them are the repeat.
	for f := fold - 1; f > 1 && widest/fold < leastRepeat; f-- {
		if fold%f == 0 {
			fold = f
		}
	}
	if w.border != nil {
		fold = 1 // it shows whole edges or nothing
	}
	w.fold, w.window = fold, max(repeats, 1)
	if fold < 2 || w.window >= fold {
		return false
	}
	for _, c := range w.courses {
		c.cutOut(fold, w.window)
	}
	w.keepPlaces()
	return true
}

// likeness is how many times the kinds of a course's stitches, and which of them stand in
// one place, come to the same again in a turn.
func (w *work) likeness(c *course) int {
	n := len(c.order)
	again := make([]bool, n) // in the place of the one before, of which ring and edge have none
	for k, i := range c.order {
		a, b := c.round.Stitches[i].On, c.round.Stitches[c.order[(k+n-1)%n]].On
		if len(a) == 1 && len(b) == 1 && a[0].Into != stitch.Ring && a[0].Into != stitch.RowEnd {
			again[k] = w.key(a[0]) == w.key(b[0])
		}
	}
	for f := n; f > 1; f-- {
		if n%f != 0 {
			continue
		}
		alike := true
		for k := 0; k < n && alike; k++ {
			a, b := c.order[k], c.order[(k+n/f)%n]
			alike = c.round.Stitches[a].Counted() == c.round.Stitches[b].Counted() && again[k] == again[(k+n/f)%n]
		}
		if alike {
			return f
		}
	}
	return 1
}

// cut says what is drawn of a stitch in a chart of a part of the round.
type cut uint8

const (
	whole cut = iota
	beside
	left // out
)

const (
	leastRepeat = 4 // stitches of the widest round in a repeat
	mostBeside  = 5 // stitches to each side of what is shown
)

// cutOut leaves the first repeats of a course, and half a repeat to each side of
// them in grey.
func (c *course) cutOut(fold, repeats int) {
	n := len(c.order)
	if n == 0 || n%fold != 0 {
		return
	}
	c.cuts = make([]cut, len(c.round.Stitches))
	each := n / fold
	side := min((each+1)/2, mostBeside)
	for k, i := range c.order {
		switch {
		case k < repeats*each:
		case k < repeats*each+side || k >= n-side:
			c.cuts[i] = beside
		default:
			c.cuts[i] = left
		}
	}
	for i := range c.round.Stitches { // what lies between takes after its neighbours
		if c.rank[i] >= 0 {
			continue
		}
		switch c.round.Stitches[i].Role {
		case fabric.Worked:
			before, after := c.neighbours(i)
			c.cuts[i] = max(c.cuts[before], c.cuts[after])
		case fabric.LastHalf:
			c.cuts[i] = whole
		}
	}
	if isFoundation(c.round) {
		return // its chains are worked into one by one
	}
	for _, sp := range c.round.Spaces { // any other run of chains is one
		all := left
		c.run(sp, func(i int) { all = min(all, c.cuts[i]) })
		c.run(sp, func(i int) { c.cuts[i] = all })
	}
}

// run calls f for every stitch of a span, which may go on over the join.
func (c *course) run(sp fabric.Span, f func(i int)) {
	n := len(c.round.Stitches)
	for i := sp.From; i != sp.To && i < sp.From+n; i++ {
		f(i % n)
	}
}

// keepPlaces draws in grey whatever a drawn stitch stands on.
func (w *work) keepPlaces() {
	keep := func(r fabric.Ref) {
		if c := w.at(r); c != nil && c.cuts != nil {
			c.cuts[r.Stitch] = min(c.cuts[r.Stitch], beside)
			if isFoundation(c.round) {
				return
			}
			for _, sp := range c.round.Spaces {
				in := false
				c.run(sp, func(i int) { in = in || i == r.Stitch })
				if in {
					c.run(sp, func(i int) { c.cuts[i] = min(c.cuts[i], beside) })
				}
			}
		}
	}
	for _, c := range w.courses[w.first : w.last+1] {
		for i := range c.round.Stitches {
			if c.cutOf(i) != whole {
				continue
			}
			for _, p := range c.round.Stitches[i].On {
				keep(p.At)
			}
		}
	}
}

func (c *course) cutOf(i int) cut {
	if c.cuts == nil {
		return whole
	}
	return c.cuts[i]
}

// middleAngle is the middle of what is cut out, and half its width with what lies
// beside it.
func (w *work) middleAngle() (mid, half float64) {
	n := 0.0
	for _, c := range w.courses[w.first : w.last+1] {
		if k := len(c.order) / w.fold * w.window; c.cuts != nil && k > 0 {
			m := (c.theta[c.order[0]] + c.theta[c.order[k-1]]) / 2
			if n > 0 {
				m = above(m, mid/n-math.Pi) // rounds begin on different turns
			}
			mid += m
			n++
		}
	}
	if n > 0 {
		mid /= n
	}
	if w.corners.sides > 0 { // a side lies level, or a corner upright
		half := ring.Turn / float64(2*w.corners.sides)
		mid = w.cornerAt + half*math.Round((mid-w.cornerAt)/half)
	}
	for _, c := range w.courses[w.first : w.last+1] {
		for _, i := range c.order {
			if c.cutOf(i) != left {
				half = math.Max(half, math.Abs(math.Remainder(c.theta[i]-mid, ring.Turn)))
			}
		}
	}
	return mid, math.Min(half, math.Pi)
}

// besideWedge is the room left at the sides for the arrow and for ends of
// symbols, mm.
const besideWedge = 6

// reachWedge finds the radius of every stitch and sets the wedge upright on the
// page, its point down.
func (w *work) reachWedge(p *page) {
	mid, half := w.middleAngle()
	wide, tall := p.width-2*margin-2*besideWedge, p.bottom-p.top
	radius := math.Min(wide/2, tall/(1-math.Cos(half)))
	if half < math.Pi/2 {
		radius = math.Min(wide/2/math.Sin(half), tall)
	}
	w.upright = math.Pi/2 - mid
	w.reach(radius)
	w.openEvenly()
	w.place(canvas.Point{})
	low, high := w.extentOf()
	const air = 6 // above: for the arrow
	w.place(canvas.Point{X: hundredth(p.width/2 - (low.X+high.X)/2), Y: hundredth(p.top + air - low.Y)})
	p.centre = w.centre
	p.bottom = hundredth(math.Min(p.bottom, w.centre.Y+high.Y+underRows))
}

// portion says how much of the round is drawn; "" for all of it.
func (w *work) portion() string {
	switch {
	case w.window == 0:
		return ""
	case w.window == 1:
		return fmt.Sprintf("1 of %d repeats", w.fold)
	}
	return fmt.Sprintf("%d of %d repeats", w.window, w.fold)
}
