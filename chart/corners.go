package chart

import (
	"math"

	"whorl/chart/ring"
	"whorl/patterns/fabric"
	"whorl/patterns/stitch"
)

// corners are those of a motif: the groups of stitches with a chain space among
// them, each worked into the space of the one below it.
type corners struct {
	sides int // 0: none
	from  int // the first round that has them
	// Of the last round laid: the spaces that its corners are worked into next, the round
	// that these are of, and the angles of its corners.
	spaces []fabric.Span
	laid   int
	at     []float64
}

// Motifs have at least leastSides corners and at most mostSides.
const leastSides, mostSides = 3, 8

// cornerSpaces are the chain spaces of a round that lie within a group worked into
// one space, with that space of the round below.
func (w *work) cornerSpaces(c *course) (spaces []fabric.Span, below []fabric.Ref) {
	stitches := c.round.Stitches
	n := len(stitches)
	for _, sp := range c.round.Spaces {
		if sp.To <= sp.From {
			continue
		}
		before, after := stitches[(sp.From+n-1)%n], stitches[sp.To%n]
		if len(before.On) != 1 || len(after.On) != 1 {
			continue
		}
		p := before.On[0]
		inChain := c.index == 1 && p.Into == stitch.Top && w.onRing()
		if (p.Into == stitch.Space || inChain) && p.At.Round == c.index-1 && w.key(p) == w.key(after.On[0]) {
			spaces, below = append(spaces, sp), append(below, p.At)
		}
	}
	return spaces, below
}

// onRing reports whether a part begins on a ring of chains that is no centre, as a yoke does.
func (w *work) onRing() bool {
	c := w.courses[0]
	return !c.hub && c.round.Ring && !c.round.Carried && isFoundation(c.round)
}

// findCorners finds the corners of a motif worked from a centre; none where rounds
// differ in how many they have, or where there is nothing between them.
func (w *work) findCorners() {
	w.corners = corners{}
	if !w.courses[0].hub && !w.onRing() {
		return
	}
	var last []fabric.Span
	stitches := 0 // of the last
	found := corners{}
	between := false
	for _, c := range w.courses[1:] {
		spaces, below := w.cornerSpaces(c)
		if len(spaces) == 0 {
			if found.sides > 0 {
				break // an edging
			}
			continue
		}
		if len(spaces) < leastSides || len(spaces) > mostSides || found.sides > 0 && len(spaces) != found.sides {
			return
		}
		for i := range below {
			if found.sides > 0 && last[i].From != below[i].Stitch {
				return // not in the corner below
			}
		}
		if found.sides == 0 {
			found = corners{sides: len(spaces), from: c.index}
		}
		between = between || len(c.round.Spaces) > len(spaces) || w.sideStitches(c) > 0
		last, stitches = spaces, len(c.round.Stitches)
	}
	if w.onRing() && !evenSides(last, stitches) {
		return
	}
	more := len(w.courses)-1 > found.from
	if found.sides > 0 && between && (more || found.from == 2 && w.sideStitches(w.courses[2]) > 0) {
		w.corners = found // a motif of two rounds has them in its last
	}
}

// unevenSides is how much longer the longest side of a piece with corners on a ring may be
// than the shortest: a yoke of a front, a back and two sleeves is none.
const unevenSides = 1.25

// evenSides reports whether the stitches between the corner spaces of a round of so many are
// about as many on all sides.
func evenSides(spaces []fabric.Span, stitches int) bool {
	least, most := math.Inf(1), 0.0
	for k, sp := range spaces {
		next := spaces[(k+1)%len(spaces)]
		n := float64(next.From - sp.To)
		if n < 0 {
			n += float64(stitches)
		}
		least, most = math.Min(least, n), math.Max(most, n)
	}
	return most <= unevenSides*least
}

// sideStitches is how many stitches of a round are not worked into a space of the
// round below that a corner stands in.
func (w *work) sideStitches(c *course) (n int) {
	_, below := w.cornerSpaces(c)
	corner := map[fabric.Ref]bool{}
	for _, r := range below {
		corner[r] = true
	}
	for i := range c.round.Stitches {
		if s := &c.round.Stitches[i]; s.Counts && len(s.On) == 1 && !corner[s.On[0].At] {
			n++
		}
	}
	return n
}

// pinCorners turns a round that has been laid, and stretches its sides alike, so that its
// corners lie in line with those of the first round that has them.
func (w *work) pinCorners(c *course) {
	k := &w.corners
	n := k.sides
	if n == 0 || c.index < k.from {
		return
	}
	own, _ := w.cornerSpaces(c)
	now := make([]float64, n)
	for j := range now {
		switch {
		case len(own) == n:
			now[j] = c.middle(own[j].From, own[j].To-1)
		default:
			now[j] = w.overCorner(c, k.spaces[j], k.at[j])
		}
		if j > 0 {
			now[j] = above(now[j], now[j-1])
		}
	}
	if len(own) == n {
		k.spaces, k.laid = own, c.index
	}
	if c.index == k.from {
		w.cornerAt = now[0]
	}
	c.pin(now, w.cornerAt)
	for j := range now {
		now[j] = w.cornerAt + ring.Turn*float64(j)/float64(n)
	}
	k.at = now
	if len(own) == n && (n == leastSides || w.zigzag != nil && c.index > k.from) {
		w.narrowCorners(c)
	}
	c.fold = gcd(c.fold, n)
}

// narrowed is how much narrower the stitches of a group in a corner are drawn than they
// are, by the motif's sides (sharpCorner for three), so that their legs do not lie back
// over what they stand on.
var narrowed = map[int]float64{4: 0.7, 5: 0.85}

// A fan of an edging that stands no farther from a corner than nearCorner stitches turns it.
const nearCorner = 1.5

// squareOn sets what stands on a motif's sides square on them, and narrows what stands in
// its corners.
func (w *work) squareOn(c *course, items []ring.Item) {
	k := w.corners
	if k.sides == 0 || c.index < k.from || w.zigzag != nil {
		return
	}
	inCorner := map[int]bool{}
	add := func(at fabric.Ref) {
		inCorner[w.key(fabric.Place{Into: stitch.Space, At: at})] = true
		if at.Round == 0 {
			inCorner[w.key(fabric.Place{At: at})] = true
		}
	}
	for _, sp := range k.spaces {
		add(fabric.Ref{Round: k.laid, Stitch: sp.From})
	}
	if c.index == k.from {
		_, below := w.cornerSpaces(c)
		for _, at := range below {
			add(at)
		}
	}
	for i := range items {
		if t := &items[i]; !t.Free && (t.Place == 0 || !inCorner[t.Place]) {
			t.Base = w.square(c, t.Base)
		}
	}
	narrow, sharp := narrowed[k.sides]
	if c.index == k.from && w.courses[0].hub {
		narrow *= narrow // from a round below it has none to go by
	}
	if !sharp {
		return
	}
	each := ring.Turn / float64(k.sides)
	by := nearCorner * ring.Turn / float64(max(len(w.courses[c.index-1].order), 1))
	eachFan(items, func(from, end, stitches int) {
		first := items[from%len(items)]
		part := 1.0
		switch {
		case inCorner[first.Place]:
			part = narrow
		case c.index > k.laid+1 && stitches > 2 && math.Abs(math.Remainder(first.Base-w.cornerAt, each)) < by:
			part = (1 + 2*narrow) / 3
		}
		for i := from; i < end; i++ {
			items[i%len(items)].Width *= part
		}
	})
}

// square is where on round c a place on the side of a motif below it is that a stitch
// stands square on: as far from the middle of the side, though the side has grown. So
// the stitches that a round has more find room at its corners, and what stands on the
// sides stays even.
func (w *work) square(c *course, angle float64) float64 {
	k := w.corners
	if k.sides == 0 || c.index <= k.from {
		return angle
	}
	each := ring.Turn / float64(k.sides)
	below := w.courses[c.index-1].form.Circumference
	// A round with more stitches than lie flat ruffles, and its sides grow no more.
	flat := 1 + 2*float64(k.sides)*math.Tan(each/2)*math.Max(c.form.Height, 0)/below
	grown := math.Min(c.form.Circumference/below, flat)
	if !(grown > 1) {
		return angle
	}
	return angle - (1-1/grown)*math.Remainder(angle-w.cornerAt-each/2, each)
}

// overCorner is the middle of what a round without corners of its own has worked
// into a corner's space; at where it is nothing.
func (w *work) overCorner(c *course, sp fabric.Span, at float64) float64 {
	sum, n := 0.0, 0.0
	for _, i := range c.order {
		for _, p := range c.round.Stitches[i].On {
			if p.At.Round < c.index && p.Into == stitch.Space && p.At.Stitch == sp.From {
				sum += above(c.theta[i], at-math.Pi)
				n++
			}
		}
	}
	if n == 0 {
		return at
	}
	return sum / n
}

// pin moves a round's corners to even angles from first.
func (c *course) pin(now []float64, first float64) {
	n := len(now)
	each := ring.Turn / float64(n)
	move := func(x float64) float64 {
		x = above(x, now[0])
		j := n - 1
		for j > 0 && now[j] > x {
			j--
		}
		end := now[0] + ring.Turn
		if j+1 < n {
			end = now[j+1]
		}
		return first + each*(float64(j)+(x-now[j])/math.Max(end-now[j], 1e-9))
	}
	seam := move(c.seam)
	for i := range c.theta {
		c.theta[i] = above(move(c.theta[i]), seam-1e-9)
	}
	c.seam = seam
}

// sharpCorner is how much narrower the groups in the sharp corners of a triangle or a star
// are drawn than they are.
const sharpCorner = 0.6

// narrowCorners draws a round's stitches in sharp corners closer to the corners, and what
// is between them farther apart.
func (w *work) narrowCorners(c *course) {
	each := ring.Turn / float64(w.corners.sides)
	from := func(a float64) float64 { return math.Remainder(a-w.cornerAt, each) }
	wide := 0.0
	_, below := w.cornerSpaces(c)
	corner := map[fabric.Ref]bool{}
	for _, r := range below {
		corner[r] = true
	}
	for _, i := range c.order {
		if on := c.round.Stitches[i].On; len(on) == 1 && on[0].Into == stitch.Space && corner[on[0].At] {
			wide = math.Max(wide, math.Abs(from(c.theta[i])))
		}
	}
	if wide <= 0 || wide >= each/2 {
		return
	}
	move := func(a float64) float64 {
		d := from(a)
		to := d * sharpCorner
		if far := math.Abs(d); far > wide {
			to = math.Copysign(wide*sharpCorner+(far-wide)*(each/2-wide*sharpCorner)/(each/2-wide), d)
		}
		return a + to - d
	}
	for i := range c.theta {
		c.theta[i] = move(c.theta[i])
	}
	c.seam = move(c.seam)
}

// outline is the shape that rounds are laid on, and how far it reaches in the
// direction in which it reaches farthest when its radius is one.
func (w *work) outline() (ring.Shape, float64) {
	circle := ring.Circle{Start: w.startAngle(), Mirrored: w.o.LeftHanded, Wave: w.zigzag}
	n := w.corners.sides
	if w.corners.from > w.last+1 {
		n = 0 // what is drawn ends before it has corners
	}
	if w.fan != nil {
		s := w.fan.shape(!w.leftwards(false))
		if p, ok := s.(ring.Polygon); ok {
			p.Full = 1e-9
			return p, 1 / math.Cos(math.Pi/float64(p.Sides))
		}
		return s, 1
	}
	if w.oval != nil && w.rows {
		return w.hairpinShape(), 1
	}
	if w.oval != nil && w.window == 0 {
		return ring.Stadium{Long: w.ovalLong(), Side: w.oval.side, Mirrored: w.o.LeftHanded}, 1
	}
	if w.zigzag != nil && n > 0 && w.radii != nil && w.corners.from <= w.last {
		circle.Round = w.radii.Of(w.layer(w.courses[max(w.corners.from-1, 1)]))
		circle.Full = w.radii.Of(w.layer(w.courses[w.corners.from]))
	}
	if n == 0 || w.window > 0 && w.zigzag != nil {
		_, crest := w.zigzag.Extent()
		return circle, math.Exp(crest)
	}
	// A side lies at the foot; of the ways to turn it there, that which moves
	// the rounds' beginnings least.
	each := ring.Turn / float64(n)
	if w.window == 0 {
		foot := -math.Pi/2 + each/2 - w.cornerAt
		circle.Start = foot + each*math.Round((circle.Start-foot)/each)
	}
	if w.zigzag != nil {
		_, crest := w.zigzag.Extent()
		return circle, math.Exp(crest)
	}
	p := ring.Polygon{Circle: circle, Sides: n, Corner: w.cornerAt}
	if w.radii != nil && w.lo <= 1 { // the centre is drawn, which is round
		p.Round = w.groundRadius()
		p.Full = w.radii.Of(w.layer(w.courses[max(w.corners.from-1, 1)]))
		if w.corners.from > 2 { // what is in the middle stays round
			for _, c := range w.courses[1 : w.corners.from-1] {
				for _, i := range c.order {
					p.Round = math.Max(p.Round, w.radii.At(w.layer(c), c.form.Tops[i]))
				}
			}
			if w.corners.from <= w.last {
				p.Full = math.Max(p.Full, (p.Round+w.radii.Of(w.layer(w.courses[w.corners.from])))/2)
			}
		}
	}
	extent, _ := p.Extent()
	return p, extent
}

// tops are the levels of a round's stitches. A motif's sides are straight:
// stitches of one kind are all as far out as they are on the whole.
func (w *work) tops(c *course) []float64 {
	if w.zigzag != nil || w.corners.sides == 0 && (w.fan == nil || w.fan.sides == 0) {
		return c.form.Tops
	}
	sum, n := map[stitch.Kind]float64{}, map[stitch.Kind]float64{}
	for _, i := range c.order {
		k := c.round.Stitches[i].Counted()
		sum[k] += c.form.Tops[i]
		n[k]++
	}
	tops := make([]float64, len(c.form.Tops))
	copy(tops, c.form.Tops)
	for _, i := range c.order {
		k := c.round.Stitches[i].Counted()
		tops[i] = sum[k] / n[k]
	}
	return tops
}
