package chart

import (
	"math"

	"github.com/tdewolff/canvas"

	"whorl/chart/ring"
	"whorl/patterns/fabric"
	"whorl/patterns/stitch"
	"whorl/symbols"
)

// layout is where everything lies on the page.
type layout struct {
	shape  ring.Shape
	centre canvas.Point
	radii  *ring.Radii
	lo     int  // the first round that lies on a layer of its own
	ground bool // there is a layer under it for what it stands on
	unit   float64
	outer  float64 // radius that everything keeps within, mm
}

// Least room on paper, mm, and the largest height of a single crochet.
const (
	leastPitch = 1.9  // mean room of a stitch along its round
	leastSplit = 1.3  // between any two tops
	leastFeet  = 0.85 // between feet in a ring
	leastRise  = 1.6  // from round to round
	leastHole  = 2.2  // radius of the centre
	ovalHole   = 0.3  // units, from the middle of the chain in an oval to the places on it
	largest    = 7.5
	pointStep  = 0.6 // of what points stand out by, that their rounds are drawn in by at a time
)

// How far a slip stitch rises over its place, in units.
const leastSlip, mostSlip = 0.2, 0.6

// Where on the page rounds begin, in radians anticlockwise from the right: at
// the right, where a number of two figures stands along a stitch and not across
// its neighbours; or, where rounds are too low for that, at the foot of the
// chart, where numbers stand one under another.
const (
	atRight = 0.0
	atFoot  = -math.Pi / 2
)

// startAngle is where the layout's angle 0 stands on the page, so that the line
// of the rounds' beginnings, which mostly winds a little, lies about the seam's
// place.
func (w *work) startAngle() float64 {
	if w.window > 0 {
		return w.upright
	}
	low, high := math.Inf(1), math.Inf(-1)
	for _, c := range w.courses[w.first : w.last+1] {
		if len(c.order) > 0 {
			low, high = math.Min(low, c.seam), math.Max(high, c.seam)
		}
	}
	if high < low || high-low > math.Pi {
		return w.seamAt
	}
	return w.seamAt - (low+high)/2
}

// reach finds the radius of every stitch, so that all lie within a circle of
// the given radius on paper.
func (w *work) reach(within float64) {
	w.reachWithin(within, within)
	w.openEvenly()
}

// reachWithin finds the radius of every stitch, so that all lie within so much of the
// centre to each side, and up and down, on paper.
func (w *work) reachWithin(wide, high float64) {
	w.radii = nil
	for _, c := range w.courses {
		c.level, c.raised, c.rise, c.legs = 0, 0, 0, 0 // of an earlier layout
	}
	var extent float64
	w.shape, extent = w.outline()
	wide, high = wide/extent, high/extent
	within := math.Min(wide, high)
	w.lo = w.first
	if c := w.courses[w.first]; c.ground() && w.last > w.first {
		w.lo++
	}
	w.ground = !(w.lo == 0 && isFoundation(w.courses[0].round))
	w.inwards = !w.rows && w.closesIn()
	tall := w.singleHeight()
	longer := max(w.longer, 1)
	tall /= longer
	fit := ring.Fit{Hole: leastHole, Outer: within - 0.8, MaxScale: w.o.enlarged(largest) / tall, Loose: w.ghostly()}
	w.radii = ring.Stack(w.layers(), fit)
	if w.oval != nil {
		w.stackOval(&fit, wide-0.8, tall)
	}
	most, tries, step := fit.Outer, 6, 1.0
	if len(w.points) > 0 {
		tries, step = 12, pointStep // they stand out by what their round is enlarged by, and more
	}
	for try := 0; try < 24; try++ {
		w.unit = math.Max(w.radii.Scale*tall, 0.1)
		w.shape, _ = w.outline()
		w.outer = 0
		w.radiateAll()
		// Single stitches may stand out beyond the mean of their round.
		long := w.ovalLong() / 2
		over := math.Max(w.outer+long-wide, w.outer-high) + 0.8
		rises := try < 8 && (w.overArches() || w.overToes() || w.overFlat())
		if rises {
			tries = 16
		}
		switch {
		case over < 0.05 && !rises && (step == 1 || over > -1 || try >= tries):
			return
		case try < tries && fit.Outer-step*over > within/4:
			fit.Outer = math.Min(fit.Outer-step*over, most)
			w.radii = ring.Stack(w.layers(), fit)
		default:
			w.radii.Shrink(math.Min((wide-0.8)/(w.outer+long), (high-0.8)/w.outer))
		}
	}
}

// ghostly reports whether what the first round stands on is an edge that is not drawn.
func (w *work) ghostly() bool {
	below := w.courses[max(w.lo-1, 0)]
	return w.ground && !w.inwards && !below.hub && !below.loose
}

// closesIn reports whether the chart is laid inwards: the part does not begin
// in a centre, and it ends narrower than it begins; or it is a tube, and the
// part that goes on from it closes in; or what is drawn of it closes in to its end.
func (w *work) closesIn() bool {
	switch {
	case w.o.closing:
		return true
	case w.courses[0].hub:
		last := len(w.courses) - 1
		return w.first > 1 && w.last == last && w.courses[last].form.Circumference < closedEnd*w.courses[w.first].form.Circumference
	}
	return w.narrows(w.o.Part, len(w.forms))
}

// narrows reports whether a part, or one that goes on from it as wide as it is,
// ends narrower than it begins. It looks at no more than so many parts.
func (w *work) narrows(part, most int) bool {
	rounds := w.forms[part].Rounds
	if most == 0 || len(rounds) == 0 {
		return false
	}
	begin, end := rounds[0].Radius, rounds[len(rounds)-1].Radius
	switch {
	case end < 0.97*begin:
		return true
	case end > 1.03*begin:
		return false
	}
	for i, p := range w.fabric.Parts {
		if p.From == part && i != part && len(p.Rounds) > 0 && p.Rounds[0].Carried && w.narrows(i, most-1) {
			return true
		}
	}
	return false
}

// singleHeight is the height in the fabric of one single crochet, as the
// heights of the drawn rounds imply it, mm.
func (w *work) singleHeight() float64 {
	sum, n := 0.0, 0
	for _, c := range w.courses[w.lo : w.last+1] {
		tall, m := 0.0, 0
		for _, i := range c.order {
			if s := &c.round.Stitches[i]; !s.IsChain() {
				tall += symbols.Height(s.Counted())
				m++
			}
		}
		if tall > 0 && c.form.Height > 0 {
			sum += c.form.Height * float64(m) / tall
			n++
		}
	}
	if n == 0 {
		return 5
	}
	return sum / float64(n)
}

// layers are the rounds from the centre outwards, with the ground among them.
func (w *work) layers() []ring.Layer {
	var up []ring.Layer // from the first worked to the last
	first := w.courses[w.lo]
	if w.ground {
		g := ring.Layer{Level: first.form.Level - first.form.Height, Length: first.form.Circumference}
		if _, ends := first.onEnds(); w.lo > 0 && !ends {
			below := w.courses[w.lo-1]
			g.Level, g.Length = below.form.Level, below.form.Circumference
			g.Least = float64(len(below.order)) * leastPitch / ring.Turn
			if below.hub {
				g.Least = float64(len(first.order)) * leastFeet / ring.Turn
			}
		}
		up = append(up, g)
	}
	for _, c := range w.courses[w.lo : w.last+1] {
		l := ring.Layer{Level: c.form.Level, Rise: math.Max(leastRise, c.rise), Legs: c.legs}
		n, long := w.roomOf(c)
		l.Length, l.Least = long, n*leastPitch/ring.Turn
		if g := w.leastGap(c); g > 0 {
			l.Least = math.Max(l.Least, leastSplit/g)
		}
		if c.index > 1 && c.fringed(w.courses[c.index-1]) {
			l.Length = 0 // its loops stand out as far as they must
		}
		if w.pointed(c) {
			l.Length, l.Least = 0, 0
		}
		if len(c.order) < 3 {
			l.Least = 0
		}
		up = append(up, l)
	}
	if w.longer > 1 {
		for i := range up {
			up[i].Length /= w.longer * w.longer // which is longer, and higher
			up[i].Least /= w.longer
		}
	}
	w.fitOval(up, w.courses[w.lo:w.last+1])
	w.fitFan(up, w.courses[w.lo:w.last+1])
	if w.inwards {
		for i, j := 0, len(up)-1; i < j; i, j = i+1, j-1 {
			up[i], up[j] = up[j], up[i]
		}
		for i := len(up) - 1; i >= 0; i-- {
			up[i].Rise, up[i].Legs = leastRise, 0
			if i > 0 { // a round stands on the one outside it
				up[i].Legs = up[i-1].Legs
			}
		}
	}
	return up
}

// layer is the layer of a round; that of the ground for one that is not drawn.
func (w *work) layer(c *course) int { return w.layerAt(max(c.index, w.lo-1)) }

// layerAt counts layers from the centre for a round's index; the ground is the
// one below w.lo.
func (w *work) layerAt(index int) int {
	k, top := index-w.lo, w.last-w.lo
	if w.ground {
		k, top = k+1, top+1
	}
	k = max(k, 0)
	if w.inwards {
		return top - k
	}
	return k
}

// groundRadius is the radius of what the first round stands on.
func (w *work) groundRadius() float64 { return w.radii.Of(w.layerAt(w.lo - 1)) }

// up is 1 where rounds are worked outwards and -1 where inwards.
func (w *work) up() float64 {
	if w.inwards {
		return -1
	}
	return 1
}

// radiateAll finds the radii of all rounds' tops, evening rounds out where the legs
// of the next could not leave them otherwise.
func (w *work) radiateAll() {
	for range 2 * evenSteps {
		w.outer = 0
		for _, c := range w.courses[w.lo : w.last+1] {
			w.radiate(c)
		}
		if !w.passes() {
			return
		}
	}
}

// radiate finds the radii of one round's tops.
func (w *work) radiate(c *course) {
	if c.radius == nil {
		c.radius = make([]float64, len(c.theta))
	}
	w.stringUp(c)
	tops := w.tops(c)
	for _, i := range c.order {
		s := &c.round.Stitches[i]
		if s.Role == fabric.Join {
			continue // it follows the chains
		}
		r := w.radii.At(w.layer(c), tops[i])
		r += c.level*(w.radii.Of(w.layer(c))-r) + w.up()*c.raised*w.unit + c.strung[i].out
		if len(s.On) > 0 {
			foot := 0.0
			for _, p := range s.On {
				f := w.footRadius(c, i, p)
				foot += f / float64(len(s.On))
				w.outer = math.Max(w.outer, f)
			}
			// A symbol needs half its height at least, a leg that leans the
			// more.
			least := 0.55 * w.unit * math.Max(symbols.Height(s.Counted()), 0.5)
			rise := (r - foot) * w.up()
			switch {
			case s.Kind.Base == stitch.Slip: // a dot, close on its place
				r = foot + w.up()*math.Max(math.Min(rise, mostSlip*w.unit), leastSlip*w.unit)
			case rise < least:
				r = foot + w.up()*least
			}
		}
		c.radius[i] = math.Max(r, 0.5)
	}
	w.alike(c)
	w.dome(c)
	w.arch(c)
	for _, i := range c.order {
		switch s := &c.round.Stitches[i]; {
		case s.Role == fabric.Join:
			c.radius[i] = c.joinRadius(w.up())
		case isPicot(s):
			c.radius[i] = c.picotFoot(i) + w.up()*symbols.Height(s.Kind)*w.unit
		}
	}
	w.lift(c)
	w.standOut(c)
	w.standUp(c)
	for _, i := range c.order {
		w.outer = math.Max(w.outer, c.radius[i])
	}
	c.sky = w.skyOf(c)
	c.radiateSmall(w.radii.Of(w.layer(c)))
	for i := range c.round.Stitches {
		if s := &c.round.Stitches[i]; s.Role == fabric.Travel && len(s.On) > 0 {
			// The dot lies close on the stitch it is worked into; at the foot of
			// a space, where others fan out, closer.
			rise := 0.5
			if s.On[0].Into == stitch.Space {
				rise = 0.12
			}
			c.radius[i] = w.footRadius(c, i, s.On[0]) + w.up()*rise*w.unit
		}
	}
}

// isPicot reports whether a stitch is a picot that stands on no place of its own: on
// the edge, between the stitches that it is made between.
func isPicot(s *fabric.Stitch) bool { return s.Kind.Shape == stitch.Picot && len(s.On) == 0 }

// picotFoot is how far out the foot of a picot is: at the tops beside it.
func (c *course) picotFoot(i int) float64 {
	n := len(c.order)
	sum, m := 0.0, 0.0
	for _, step := range [...]int{1, n - 1} {
		for k, tries := (c.rank[i]+step)%n, 0; tries < n; k, tries = (k+step)%n, tries+1 {
			if !isPicot(&c.round.Stitches[c.order[k]]) {
				sum += c.radius[c.order[k]]
				m++
				break
			}
		}
	}
	if m == 0 {
		return c.radius[i]
	}
	return sum / m
}

// radiateSmall gives the stitches that take no room the radius of what they lie
// between.
func (c *course) radiateSmall(alone float64) {
	n := len(c.order)
	for i := range c.radius {
		if c.rank[i] >= 0 {
			continue
		}
		if n == 0 {
			c.radius[i] = alone
			continue
		}
		before, after := c.neighbours(i)
		c.radius[i] = (c.radius[before] + c.radius[after]) / 2
	}
	for i := range c.radius {
		if h := c.half(i); h >= 0 {
			c.radius[h] = c.radius[i]
		}
	}
}

// neighbours are the stitches with room that a stitch without lies between, in
// the order of working, over the join where need be.
func (c *course) neighbours(i int) (before, after int) {
	n := len(c.round.Stitches)
	for before = (i + n - 1) % n; c.rank[before] < 0; before = (before + n - 1) % n {
	}
	for after = (i + 1) % n; c.rank[after] < 0; after = (after + 1) % n {
	}
	return before, after
}

// footRadius is the radius of a place that stitch i of c stands on. A post is
// charted at the top of its stitch: the hook at the foot tells the rest, and no
// leg is drawn over another.
func (w *work) footRadius(c *course, i int, p fabric.Place) float64 {
	if f, ok := c.strung[i]; ok {
		return f.radius
	}
	d := w.at(p.At)
	switch {
	case p.Into == stitch.Ring, p.Into == stitch.RowEnd, d == nil, d.hub, d.loose:
		return w.groundRadius()
	case d.index > c.index || d.index == c.index && p.At.Stitch >= i:
		return w.radii.Of(w.layer(c)) // not worked yet: a pattern that cannot be
	}
	switch p.Into {
	case stitch.Space:
		return w.spaceRadius(d, p)
	case stitch.Between:
		return (w.topRadius(d, p.At.Stitch) + w.topRadius(d, d.before(p.At.Stitch))) / 2
	}
	return w.topRadius(d, p.At.Stitch)
}

// spaceRadius is how far out the middle of a space of d is.
func (w *work) spaceRadius(d *course, p fabric.Place) float64 {
	if j := d.completer(p); j >= 0 {
		return w.topRadius(d, j)
	}
	a, b := d.midChains(p.At.Stitch, p.Last.Stitch)
	return (w.topRadius(d, a) + w.topRadius(d, b)) / 2
}

// topRadius is the radius of a stitch's top, drawn or not.
func (w *work) topRadius(c *course, i int) float64 {
	if (c.index >= w.lo || w.blocks != nil) && c.radius != nil {
		return c.radius[i]
	}
	if c.index == w.lo-1 { // an edge that is not drawn is level
		return w.groundRadius()
	}
	return w.radii.At(w.layer(c), c.form.Tops[i])
}

// meanFoot is the mean radius of what a stitch stands on.
func (w *work) meanFoot(c *course, i int) float64 {
	on := c.round.Stitches[i].On
	if len(on) == 0 {
		return w.topRadius(c, i)
	}
	if c.index < w.lo { // an undrawn stitch: its own height below its top
		return w.radii.At(w.layer(c), c.form.Tops[i]-c.form.Height)
	}
	sum := 0.0
	for _, p := range on {
		sum += w.footRadius(c, i, p)
	}
	return sum / float64(len(on))
}

// midChains are the middle stitches of a run: the same one twice when their
// number is odd. A run may go on over the join.
func (c *course) midChains(first, last int) (int, int) {
	n := len(c.round.Stitches)
	if last < 0 || last >= n {
		last = first
	}
	length := last - first + 1
	if length <= 0 {
		length += n
	}
	return (first + (length-1)/2) % n, (first + length/2) % n
}
