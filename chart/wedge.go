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
	share := w.besideShare()
	for _, c := range w.courses {
		c.cutOut(fold, w.window, c.besides(fold, share))
	}
	w.keepPlaces()
	return true
}

// likeness is how many times the kinds of a course's stitches, where they go in, which of them
// stand in one place and where some cross others come to the same again in a turn.
func (w *work) likeness(c *course) int {
	type look struct {
		kind          stitch.Kind
		in            stitch.Into
		again, across bool // in the place of the one before, of which ring and edge have none; where some cross
	}
	n := len(c.order)
	looks := make([]look, n)
	for k, i := range c.order {
		looks[k].kind = c.round.Stitches[i].Counted()
		a, b := c.round.Stitches[i].On, c.round.Stitches[c.order[(k+n-1)%n]].On
		if len(a) != 1 || a[0].Into == stitch.Ring || a[0].Into == stitch.RowEnd {
			continue
		}
		if in := a[0].Into; in == stitch.FrontPost || in == stitch.BackPost {
			looks[k].in = in
		}
		if len(b) == 1 {
			looks[k].again = w.key(a[0]) == w.key(b[0])
			looks[k].across = c.crossed(w, k)
		}
	}
	for f := n; f > 1; f-- {
		if n%f != 0 {
			continue
		}
		alike := true
		for k := 0; k < n && alike; k++ {
			alike = looks[k] == looks[(k+n/f)%n]
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

// besides is how many stitches of a course lie to each side of what is shown: half a repeat
// of it or, where that is not 0, a share of one.
func (c *course) besides(fold int, share float64) int {
	each := len(c.order) / fold
	if share > 0 {
		return int(math.Round(share * float64(each)))
	}
	return min((each+1)/2, mostBeside)
}

// besideShare is how much of a repeat lies to each side of what is shown so that no stitches
// that cross are parted; 0 where as many as there are by themselves part none.
func (w *work) besideShare() float64 {
	for _, c := range w.courses[w.first : w.last+1] {
		n := len(c.order)
		if n == 0 || n%w.fold != 0 {
			continue
		}
		each, usual := n/w.fold, c.besides(w.fold, 0)
		parts := func(side int) bool {
			return c.crossed(w, w.window*each+side) || c.crossed(w, n-side)
		}
		if !parts(usual) {
			continue
		}
		for side := 1; side < each; side++ {
			if nearer := usual - side; nearer > 0 && !parts(nearer) {
				return float64(nearer) / float64(each)
			}
			if farther := usual + side; farther < min(each, n-w.window*each-usual) && !parts(farther) {
				return float64(farther) / float64(each)
			}
		}
	}
	return 0
}

// crossed reports whether stitches before the k-th of a course cross others from it on: their
// places in the round below are in the other order.
func (c *course) crossed(w *work, k int) bool {
	n := len(c.order)
	most := min(cableMost, (n-1)/2)
	half := 0 // of the round below: what is farther apart lies over the join
	if c.index > 0 {
		half = len(w.courses[c.index-1].order) / 2
	}
	stand := func(k int) (int, bool) {
		on := c.round.Stitches[c.order[(k%n+n)%n]].On
		if len(on) != 1 || on[0].At.Round != c.index-1 || w.at(on[0].At) == nil {
			return 0, false
		}
		rank := w.at(on[0].At).rank[on[0].At.Stitch]
		return rank, rank >= 0
	}
	for a := k - most; a < k; a++ {
		low, ok := stand(a)
		for b := k; ok && b <= a+most; b++ {
			if high, also := stand(b); also && high < low && low-high < half {
				return true
			}
		}
	}
	return false
}

// cutOut leaves the first repeats of a course, and so many stitches to each side of them in
// grey.
func (c *course) cutOut(fold, repeats, side int) {
	n := len(c.order)
	if n == 0 || n%fold != 0 {
		return
	}
	c.cuts = make([]cut, len(c.round.Stitches))
	each := n / fold
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
