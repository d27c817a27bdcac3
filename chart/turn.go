package chart

import (
	"math"

	"whorl/chart/ring"
	"whorl/geometry"
	"whorl/patterns/fabric"
	"whorl/patterns/stitch"
)

// work is one part being laid out.
type work struct {
	o       Options
	size    string
	fabric  *fabric.Fabric
	forms   []*geometry.PartForm // of all the parts
	part    *fabric.Part
	courses []*course
	// first and last are the indices of the rounds that are drawn.
	first, last int
	total       int // stitches in the part
	// edge is the angle of each place of an edge that is no round: a row end,
	// or a chain that was not joined before it was worked into.
	edge map[int]float64
	// stoodIn is the round whose stitches stand in a place, −1 where several do.
	stoodIn map[int]int
	slipped map[fabric.Ref]bool  // stitches that slip stitches of rounds past the next are worked into; nil: not found
	on      map[fabric.Place]int // how many stitches stand in a space or on a stitch; nil: not counted
	// chains is how many chains the longest loop of every course has; nil: not counted
	chains []int

	parting
	yarns   []string // whose inks the stitches have; nil: rounds take turns
	leaders bool     // numbers that find no room by their rounds stand farther off

	corners  corners
	oval     *oval      // nil for what is none
	border   *border    // likewise
	bordered bool       // it has been looked for
	blocks   *blocks    // that it is worked in from corner to corner; nil for any other
	fan      *fan       // how rows fan out; nil for straight ones
	goesOn   int        // the number of the last row where the rest goes on alike; 0: none
	stiff    float64    // how evenly rows are spread; 0: as they are by themselves
	waves    bool       // rows lie in waves
	lies     bool       // legs are left as they lie, to measure how far they lean
	points   []point    // chains that stand outwards
	zigzag   *ring.Wave // that rounds lie in; nil for those that do not
	longer   float64    // how much longer a round is on it; 0: none
	cornerAt float64    // the angle of a corner

	inwards bool
	rows    bool // worked in rows
	flat    bool // rows or rounds that lie one above another
	panel   bool // rounds that do
	// window is how many of the fold repeats are drawn; 0: the whole round.
	window, fold int
	upright      float64 // where angle 0 stands on the page in a wedge
	layout
}

// parting is how rounds are parted at their seams to make room for their numbers.
type parting struct {
	// channels is the extra room, in mm of fabric, that each round leaves at its
	// seam for its number; nil unless numbers found no room.
	channels []float64
	seamAt   float64 // angle on the page
}

// course is one round laid out.
type course struct {
	round *fabric.Round
	form  *geometry.RoundForm
	index int
	// reversed is set when the course runs against the direction of rising
	// angles.
	reversed bool
	// open is set when its ends do not meet, as those of a row.
	open bool
	// handled is set for a round with handles, and those over it.
	handled bool
	// hidden is the first stitch of a foundation chain that stands up as the
	// turning chain of the first row and is drawn there; 0: none.
	hidden int
	cuts   []cut   // what is drawn of every stitch; nil: all
	long   float64 // of a row, mm of the fabric
	offset int     // stitches in the rounds before
	// hub is set for a foundation that is the centre itself: a ring, or a
	// chain of which one stitch holds the whole first round.
	hub bool
	// loose is set for a foundation chain that is not joined: its stitches
	// lie where they are worked into.
	loose bool

	order []int     // the stitches that take room, by rising angle
	theta []float64 // the angle of every stitch
	rank  []int     // its index in order, or -1
	seam  float64   // the angle where the round begins and ends
	fold  int       // how many times the layout repeats in a turn, at least 1

	radius []float64       // of every stitch's top, mm on paper
	level  float64         // how far its tops are evened out, 0 to 1
	raised float64         // how far its tops are raised, in units
	rise   float64         // from the round below, for its arches, mm on paper
	legs   float64         // from it, that none of its legs lies down, mm on paper
	hang   hang            // of its loops
	pitch  map[int]float64 // of chains on an arch, from one to the next, mm on paper
	sky    sky
	above  map[int]pull // how what stands on its stitches draws them, in a sparse round
	// meeting is how far apart, in heights, neighbours stand at most on the way to where they
	// are worked together, by the rank of the first.
	meeting map[int]float64
	plumb   map[int]bool    // those of fans that stand over their like
	gapped  bool            // it leaves room open over what its fans pass
	slit    bool            // it leaves an opening open, as for a thumb
	atSeam  float64         // of that room what lies before its first stitch, an angle
	rests   bool            // it has come to rest with its neighbours on an oval
	closed  map[int]float64 // how much narrower its fans are, by place
	spaced  float64         // how many times farther apart its stitches are on paper than they need; 0: not known
	domed   map[int]bool    // in wide fans that fall off to their ends
	strung  map[int]onLoop  // where stitches stand that lie along a loop
	tilt    map[int]float64 // how far those on a point or at a petal are turned; nil: none
	tipped  map[int]bool    // those that stand on the end of a point
	petals  []petalSide     // chains that stand at the sides of petals
	slim    map[int]slim    // the stitches that are drawn slimmer
}

// turn finds the angle of every stitch of every round, drawn or not, so that a
// range of rounds looks as it does in the whole chart.
func (w *work) turn() {
	w.edge, w.chains = map[int]float64{}, nil
	if !w.bordered {
		w.border, w.bordered = w.findBorder(), true
	}
	w.findMeeting()
	for i, c := range w.courses {
		c.order, c.above = c.order[:0], nil
		c.theta = make([]float64, len(c.round.Stitches))
		c.rank = make([]int, len(c.round.Stitches))
		if i == 0 && w.isHub(c) {
			c.hub, c.fold = true, 0
			continue
		}
		if i == 0 && len(w.courses) > 1 && isLoose(c.round) {
			c.loose = true
			w.oval = w.findOval()
			w.layLoose(c)
			continue
		}
		if i == 0 && w.border != nil {
			w.layBorder()
			continue
		}
		if i == 1 && w.border == nil {
			w.findCorners()
		}
		w.layEdge(c)
		w.lay(c)
		w.pinCorners(c)
	}
	w.comeTogether()
	w.restOval()
	w.stepAside()
	if w.border != nil {
		return
	}
	for _, c := range w.courses[1:max(w.corners.from, 1)] {
		c.fold = gcd(c.fold, w.corners.sides)
	}
	w.findPoints()
}

// key names a place, so that stitches in one place can be told; 0 for the ring.
func (w *work) key(p fabric.Place) int {
	switch p.Into {
	case stitch.Ring:
		return 0
	case stitch.RowEnd:
		return -(1 + 2*p.At.Round + p.At.Stitch + 2_000_000*p.Part)
	}
	if p.At.Round < 0 || p.At.Round >= len(w.courses) {
		return 0
	}
	k := 1 + w.courses[p.At.Round].offset + p.At.Stitch
	switch p.Into {
	case stitch.Space:
		k += w.total
	case stitch.Between:
		k += 2 * w.total
	case stitch.Underside:
		k += 3 * w.total
	}
	return k
}

// rising is the indices of the round's stitches in the order of rising angle.
func (c *course) rising() []int {
	n := len(c.round.Stitches)
	s := make([]int, n)
	for i := range s {
		s[i] = i
		if c.reversed {
			s[i] = n - 1 - i
		}
	}
	return s
}

// takesRoom reports whether a stitch has a place of its own on the turn.
func (c *course) takesRoom(i int) bool {
	s := &c.round.Stitches[i]
	switch s.Role {
	case fabric.Join:
		return s.Kind.Base > stitch.Slip && c.round.Completed > 0
	case fabric.LastHalf:
		return false
	case fabric.Start:
		return s.Counts
	}
	return c.form.Widths[i] > 0
}

// angle is where a place lies on the turn, false when that is free: in the
// centre, or not laid yet.
func (w *work) angle(p fabric.Place) (float64, bool) {
	if a, ok := w.edge[w.key(p)]; ok {
		return a, true
	}
	c := w.at(p.At)
	if c == nil || p.Into == stitch.Ring || p.Into == stitch.RowEnd || c.hub || c.fold == 0 {
		return 0, false
	}
	switch p.Into {
	case stitch.Space:
		if j := c.completer(p); j >= 0 {
			return c.theta[j], true
		}
		return c.middle(p.At.Stitch, p.Last.Stitch), true
	case stitch.Between:
		return (c.theta[p.At.Stitch] + c.theta[c.before(p.At.Stitch)] - c.wind(p.At.Stitch)) / 2, true
	}
	return c.theta[p.At.Stitch], true
}

// at is the round of a stitch, nil when there is no such stitch.
func (w *work) at(r fabric.Ref) *course {
	if r.Round < 0 || r.Round >= len(w.courses) {
		return nil
	}
	c := w.courses[r.Round]
	if r.Stitch < 0 || r.Stitch >= len(c.round.Stitches) {
		return nil
	}
	return c
}

// middle is the angle half way between two stitches of a run.
func (c *course) middle(first, last int) float64 {
	if last < 0 || last >= len(c.theta) {
		last = first
	}
	a, b := c.theta[first], c.theta[last]
	if c.reversed {
		a, b = b, a
	}
	if b < a && !c.open {
		b += ring.Turn
	}
	return (a + b) / 2
}

// before is the stitch worked before stitch i that takes room, over the join
// when need be; wind is the turn to take off its angle for that.
func (c *course) before(i int) int {
	r := c.rank[i]
	if r < 0 || len(c.order) == 0 || c.open && (!c.reversed && r == 0 || c.reversed && r == len(c.order)-1) {
		return i
	}
	if c.reversed {
		return c.order[(r+1)%len(c.order)]
	}
	return c.order[(r+len(c.order)-1)%len(c.order)]
}

func (c *course) wind(i int) float64 {
	switch {
	case c.rank[i] < 0 || c.open:
		return 0
	case c.reversed && c.rank[i] == len(c.order)-1:
		return -ring.Turn
	case !c.reversed && c.rank[i] == 0:
		return ring.Turn
	}
	return 0
}

// lay finds the angles of one round.
func (w *work) lay(c *course) {
	w.findPetals(c)
	stitches := c.round.Stitches
	ref := w.seamBelow(c)
	items := make([]ring.Item, 0, len(stitches))
	anchored := false
	after := 0.0         // room at the end of the round, for a leg that leans back over it
	low := ref - math.Pi // the first foot is as near the seam below as can be
	for i := range c.rank {
		c.rank[i] = -1
	}
	for _, i := range c.rising() {
		if !c.takesRoom(i) {
			continue
		}
		item := ring.Item{Width: c.form.Widths[i], Free: true}
		if base, ok := w.stance(c, i, low); ok {
			item.Base, item.Free, anchored = base, false, true
			low = base - ring.Turn/4
			if on := stitches[i].On; len(on) == 1 && stitches[i].Role != fabric.FirstHalf {
				item.Place = w.key(on[0])
			}
		}
		if h := c.half(i); h >= 0 {
			item.Width += c.form.Widths[h]
		}
		if stitches[i].Role == fabric.Join {
			item.Width, after = c.joinRoom(i)
		}
		c.rank[i] = len(c.order)
		c.order = append(c.order, i)
		items = append(items, item)
	}
	if len(items) > 0 {
		items[0].Before += after
	}
	if w.channels != nil && len(items) > 0 {
		makeRoom(items, 0, w.channels[c.index])
	}
	w.drawTo(c, items)
	w.gatherFans(c, items)
	c.narrowPetals(items)
	w.squareOn(c, items)
	theta := w.around(c, items)
	if len(theta) == 0 {
		for i := range c.theta {
			c.theta[i] = ref
		}
		c.seam, c.fold = ref, 1
		return
	}
	across := theta[0] + ring.Turn - theta[len(theta)-1]
	if c.gapped { // the round begins and ends beside its first stitch
		across = math.Max(across-c.atSeam, across/4)
	}
	shift := 0.0
	if !anchored { // the first round of all: its seam is where the chart begins
		shift = across/2 - theta[0]
	}
	for k, i := range c.order {
		c.theta[i] = theta[k] + shift
	}
	c.seam = c.theta[c.order[0]] - across/2
	c.laySmall(across)
	w.layTravel(c)
	c.fold = w.foldOf(c)
	if w.channels != nil {
		c.fold = 1 // its repeats are turned about the room at the seam
	}
}

// around are the angles of a round's stitches.
func (w *work) around(c *course, items []ring.Item) []float64 {
	switch {
	case w.oval != nil:
		if theta, ok := w.onStadium(c, items); ok {
			return theta
		}
		w.looseOnStadium(items)
		return ring.Angles(items, looseOnOval)
	case w.border != nil:
		w.border.onEdges(items)
	default:
		if c.handled = w.onHandles(c, items); c.handled {
			break
		}
		narrowFans(items, w.stretch(c), c.form.Height, w.filled(c))
		w.meet(c, items)
		if c.handled = overGap(items); !c.handled {
			archAround(items, c.form.Circumference/ring.Turn, w.hangs(c).share())
		}
		w.leaveOpen(c, items)
		w.leaveSlits(c, items)
		w.noDrift(c, items)
	}
	stiff, times := max(w.stiff, ring.Stiffness), w.sparse(c)
	if c.spaced > times {
		times = c.spaced
		stiff *= times * times // lace keeps its gaps
	}
	return ring.Apart(items, stiff, times)
}

// makeRoom makes room before an item; within a fan and at its sides alike, where a fan runs
// on over it.
func makeRoom(items []ring.Item, k int, room float64) {
	n := len(items)
	at := func(k int) *ring.Item { return &items[(k%n+n)%n] }
	from, to := k, k // the fan's stitches, and the chains in it
	for j := k; j > k-n && (at(j).Free || at(j).Place == items[k].Place); j-- {
		if !at(j).Free {
			from = j
		}
	}
	for j := k; j < k+n && (at(j).Free || at(j).Place == items[k].Place); j++ {
		if !at(j).Free {
			to = j
		}
	}
	if from == k || items[k].Free || items[k].Place == 0 || to-from >= n-1 {
		items[k].Before += room
		return
	}
	for j := from; j <= to+1; j++ {
		at(j).Before += room / float64(to-from+2)
	}
}

// seamBelow is the seam of the round that a round stands on.
func (w *work) seamBelow(c *course) float64 {
	if c.index == 0 || w.courses[c.index-1].hub {
		return 0
	}
	return w.courses[c.index-1].seam
}

// half is the index of the second half of a group begun with stitch i, or -1.
func (c *course) half(i int) int {
	if c.round.Stitches[i].Role != fabric.FirstHalf {
		return -1
	}
	for j := len(c.round.Stitches) - 1; j > i; j-- {
		if c.round.Stitches[j].Role == fabric.LastHalf {
			return j
		}
	}
	return -1
}

// stance is the mean angle of the places a stitch stands on, each taken on the
// turn that begins at low; false when none has an angle. The places of the
// second half of a group come before those of the first.
func (w *work) stance(c *course, i int, low float64) (float64, bool) {
	sum, n := 0.0, 0
	add := func(on []fabric.Place, low float64, reversed bool) (last float64) {
		last = low
		for k := range on {
			p := on[k]
			if reversed {
				p = on[len(on)-1-k]
			}
			if p.At.Round == c.index && p.Into != stitch.RowEnd && p.Into != stitch.Ring {
				continue
			}
			if a, ok := w.angle(p); ok {
				if !c.open {
					a = above(a, low)
					low = a - ring.Turn/4
				}
				sum += a
				n++
				last = a
			}
		}
		return last
	}
	add(c.round.Stitches[i].On, low, c.reversed)
	if h := c.half(i); h >= 0 && n > 0 {
		mean := sum / float64(n)
		add(c.round.Stitches[h].On, mean-math.Pi, c.reversed)
		if i > 0 && c.round.Stitches[i-1].Role == fabric.Start {
			add(c.round.Stitches[i-1].On, mean-math.Pi, false)
		}
	}
	if n == 0 {
		return 0, false
	}
	return sum / float64(n), true
}

// above is the angle a on the turn that begins at low.
func above(a, low float64) float64 {
	d := math.Mod(a-low, ring.Turn)
	if d < 0 {
		d += ring.Turn
	}
	return low + d
}
