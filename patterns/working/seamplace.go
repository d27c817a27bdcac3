package working

import (
	"fmt"
	"slices"

	"whorl/patterns/fabric"
	"whorl/patterns/notation"
	"whorl/patterns/stitch"
)

// seamCorner is which side of a seam a spot lies on that is part of a corner there.
type seamCorner uint8

const (
	noSeam seamCorner = iota
	beforeSeam
	afterSeam
)

// outline is how a border goes round motifs that are joined.
type outline struct {
	apart      bool // it goes round one of them
	otherEdge  bool // it begins on the other edge of a rectangle
	ownCorners bool // the stitches at their corners are stitches beside a seam that is named
	allCorners bool // the spaces at their corners are called corners at the seams as well
}

// outlines works a part in every way in which it may go round joined motifs, and gives the one that
// comes out best.
func (w *work) outlines(f *fabric.Fabric, k, size int, best *partWork) *partWork {
	r := best.reading
	for way := 1; way < 9 && len(best.faults) > 0; way++ {
		r.outline = outline{otherEdge: way&1 > 0, ownCorners: way&2 > 0, allCorners: way&4 > 0}
		if way == 8 {
			r.outline = outline{apart: true}
		}
		if p := w.workPart(f, k, size, r); p.betterThan(best) {
			best = p
		}
	}
	return best
}

// laySeams lays a spot of its own between two motifs. The stitches at their corners there are no
// stitches to go into one by one where named is set.
func (c *course) laySeams(a *assembly, named bool) {
	moved := func(i int, end bool) int {
		n := 0
		for _, s := range a.seams {
			if s.at <= i && !(end && s.at == i) {
				n++
			}
		}
		return i + n
	}
	for _, r := range a.corners {
		for i := r.From; i < r.To; i++ {
			c.spots[i].free = true
		}
	}
	total := len(c.spots)
	spots := make([]spot, 0, total+len(a.seams))
	next := 0
	for i := range total + 1 {
		for next < len(a.seams) && a.seams[next].at == i {
			spots = append(spots, spot{ref: fabric.Ref{Round: c.index, Stitch: -2}, st: &fabric.Stitch{}, seam: true})
			next++
		}
		if i < total {
			spots = append(spots, c.spots[i])
		}
	}
	c.spots = spots
	for i := range c.runs {
		c.runs[i] = fabric.Span{From: moved(c.runs[i].From, false), To: moved(c.runs[i].To, true)}
	}
	for i := range c.groups {
		c.groups[i].Span = fabric.Span{From: moved(c.groups[i].From, false), To: moved(c.groups[i].To, true)}
	}
	c.findGroups()
	n, seen := len(spots), 0
	for i := range spots {
		if !spots[i].seam {
			continue
		}
		s := a.seams[seen]
		seen++
		for k := 1; k <= s.before; k++ {
			spots[(i-k+n)%n].corner = beforeSeam
		}
		for k := 1; k <= s.after; k++ {
			spots[(i+k)%n].corner = afterSeam
		}
	}
	for i := range spots {
		if spots[i].corner != noSeam && named {
			spots[i].counts = false
		}
	}
}

// atSeam reports whether the spot is what a target names at a seam: the seam itself, or the last
// stitch before it, or the first behind it.
func (c *course) atSeam(i int, t *notation.Target) bool {
	if t.Sort == notation.SeamPlace || c.spots[i].seam {
		return t.Sort == notation.SeamPlace && c.spots[i].seam
	}
	own := *t
	own.Seam = notation.NoSeam
	if !c.matches(i, &own) {
		return false
	}
	n := len(c.spots)
	beside := func(step int) bool {
		for k := 1; k < n; k++ {
			switch sp := &c.spots[(i+k*step+k*n)%n]; {
			case sp.seam:
				return true
			case sp.counts:
				return false
			}
		}
		return false
	}
	return t.Seam.Is(beside(1), beside(-1))
}

// cornerBy is the spots of the corner on one side of the seam at a spot, in order.
func (c *course) cornerBy(at, step int) (l []int) {
	side, n := beforeSeam, len(c.spots)
	if step > 0 {
		side = afterSeam
	}
	for k := 1; k < n; k++ {
		i := (at + k*step + k*n) % n
		if c.spots[i].corner != side || c.spots[i].seam {
			break
		}
		l = append(l, i)
	}
	if step < 0 {
		slices.Reverse(l)
	}
	return l
}

// pastCorner is the fault of words that go to the next seam where a corner comes first; nil where
// none does.
func (w *roundWork) pastCorner(p *notation.Place, at int) *halt {
	if at < 0 || !w.begun || !w.c.spots[at].seam {
		return nil
	}
	for i := w.pos; i < at; i++ {
		if w.c.spots[i].free && w.c.spots[i].use == unused {
			return stopAt(p.Span, "runs-out", fmt.Sprintf("%s comes to a corner before it comes to another join", w.r.Label),
				"Check how many motifs lie along this edge, or on which edge the round begins.")
		}
	}
	return nil
}

// takeSeam works into the seam at a spot: into the corners of both motifs where nothing has gone
// into the first of them, else between them.
func (w *roundWork) takeSeam(at int) []fabric.Place {
	n := len(w.c.spots)
	before, after := w.c.cornerBy(at, -1), w.c.cornerBy(at, 1)
	free := func(i int) bool { return w.c.spots[i].use == unused || w.c.spots[i].use == passed }
	w.use(at, worked)
	w.pos = at + 1
	next := w.c.spots[(at+1)%n].ref
	on := fabric.Place{Into: stitch.Between, At: next, Last: next}
	if len(before) > 0 && !slices.ContainsFunc(before, func(i int) bool { return !free(i) }) {
		for _, i := range append(slices.Clone(before), after...) {
			w.use(i, worked)
		}
		w.pos += len(after)
		first, last := w.c.spots[before[0]].ref, next
		if len(after) > 0 {
			last = w.c.spots[after[len(after)-1]].ref
		}
		if w.c.spots[before[0]].run > 0 && first.Stitch < last.Stitch {
			on = fabric.Place{Into: stitch.Space, At: first, Last: last}
		}
	}
	w.pos = min(w.pos, n)
	w.same = []fabric.Place{on}
	return w.same
}

// overSeam works stitches over the seam between two motifs, a leg on either side: "sc2tog over the
// join". A leg between the two goes into the seam itself.
func (w *roundWork) overSeam(s *notation.Stitches, legs int, p *notation.Place) *halt {
	at, _ := w.nearest([]notation.Target{{Sort: notation.SeamPlace}})
	if at < 0 {
		return w.outOf(p, 1)
	}
	n := len(w.c.spots)
	leg := func(step int) (fabric.Place, int) {
		corner := w.c.cornerBy(at, step)
		if len(corner) > 0 && w.c.spots[corner[0]].use != worked {
			for _, i := range corner {
				w.use(i, worked)
			}
			if run := w.c.spots[corner[0]].run; run > 0 {
				return w.c.space(run - 1), corner[0]
			}
			return w.c.place(corner[0], p.Into), corner[0]
		}
		for k := 1; k < n; k++ {
			if i := (at + k*step + k*n) % n; w.c.spots[i].counts {
				if w.c.spots[i].use == worked {
					break
				}
				w.use(i, worked)
				return w.c.place(i, p.Into), i
			}
		}
		return fabric.Place{}, -1
	}
	a, first := leg(-1)
	b, last := leg(1)
	if first < 0 || last < 0 || legs > 3 {
		return stopAt(p.Span, "runs-out", fmt.Sprintf("%s has no stitch left on both sides of the join for %s", w.r.Label, w.nameOf(s)),
			"Leave one before it and one behind it, or work into the join itself: sc in join.")
	}
	for i := w.pos; i < min(first, at); i++ {
		if sp := &w.c.spots[i]; sp.counts && sp.use == unused {
			w.use(i, passed)
			w.passed = append(w.passed, i)
		}
	}
	w.use(at, worked)
	on := []fabric.Place{a, b}
	if legs == 3 {
		next := w.c.spots[(at+1)%n].ref
		on = []fabric.Place{a, {Into: stitch.Between, At: next, Last: next}, b}
	}
	if w.pos = last + 1; last < at {
		w.pos = n // round the end
	}
	w.same = on[len(on)-1:]
	return w.into(s, 1, on)
}

// nextSeam is the spot of the next seam, or the number of spots where there is none.
func (w *roundWork) nextSeam() int {
	for i := w.pos; i < len(w.c.spots); i++ {
		if w.c.spots[i].seam {
			return i
		}
	}
	return len(w.c.spots)
}

// butOverSeam works the exception to an each that goes over the seam between two motifs, where
// the each has come to the last stitch before one: "working sc2tog over each join".
func (w *roundWork) butOverSeam(s *notation.Stitches, i int, p *notation.Place) (bool, *halt) {
	for _, but := range s.But {
		st, ok := but.(*notation.Stitches)
		if !ok || st.What.Kind.Shape != stitch.Together && st.What.Shaping >= 0 || len(st.Places) != 1 || st.Places[0].Target.Sort != notation.SeamPlace {
			continue
		}
		at := w.nextSeam()
		if at == len(w.c.spots) {
			continue
		}
		first := at
		if l := w.c.cornerBy(at, -1); len(l) > 0 {
			first = l[0]
		} else {
			for first--; first > 0 && !w.c.spots[first].counts; first-- {
			}
		}
		if i < 0 || i < first {
			continue
		}
		return true, w.overSeam(st, max(st.What.Kind.Legs, 2), &st.Places[0])
	}
	return false, nil
}

// beginAtSeam lets the round begin at the seam between two motifs, with the corner before it.
func (w *roundWork) beginAtSeam(on []fabric.Place) {
	for i := range w.c.spots {
		if !w.c.spots[i].seam {
			continue
		}
		first := i
		if l := w.c.cornerBy(i, -1); len(l) > 0 {
			first = l[0]
		}
		w.c.begin(first)
		break
	}
	w.pos, w.same = 0, on
}

// onMotifs works stitches over the seam between two motifs, or along an edge of several. It is false
// for any others.
func (w *roundWork) onMotifs(s *notation.Stitches, n, legs int, hasN bool, p *notation.Place) (*halt, bool) {
	if legs == 1 || p.Target.Sort != notation.SeamPlace || p.Pick == notation.Each || p.Pick == notation.Same {
		return w.sideOfMotifs(s, n, hasN, p)
	}
	for range n {
		if h := w.overSeam(s, legs, p); h != nil {
			return h, true
		}
	}
	return nil, true
}

// sideOfMotifs works stitches evenly along an edge of joined motifs, up to its corner: "work 136 sc
// evenly along the short edge to the next corner". It is false for any other words.
func (w *roundWork) sideOfMotifs(s *notation.Stitches, n int, hasN bool, p *notation.Place) (*halt, bool) {
	if w.assembly == nil || w.c.index != 0 || !toCorner(p) && p.Target.Sort != notation.RowEnds {
		return nil, false
	}
	to := w.pos
	for to < len(w.c.spots) && !w.c.spots[to].free {
		to++
	}
	var free []int
	for i := w.pos; i < to; i++ {
		if w.c.spots[i].counts {
			free = append(free, i)
		}
	}
	switch {
	case len(free) == 0:
		return w.outOf(p, 1), true
	case !hasN || p.Every:
		return stopAt(p.Span, "evenly", "the words do not say how many stitches go along this edge", fmt.Sprintf("It has %s. Give a number: work %d sc evenly.", plural(len(free), "stitch"), len(free))), true
	}
	for _, i := range free {
		w.use(i, skipped)
	}
	for k := range n {
		i := free[(2*k+1)*len(free)/(2*n)]
		w.use(i, worked)
		w.same = []fabric.Place{w.c.place(i, p.Into)}
		if h := w.into(s, 1, w.same); h != nil {
			return h, true
		}
	}
	w.pos = to
	return nil, true
}

// noSeams is the fault of words that go to the join between two pieces where none are joined, or
// none on the round below; nil where there are some, or none is named.
func (w *roundWork) noSeams(items []notation.Item) (h *halt) {
	check := func(at notation.Span, t *notation.Target) {
		switch {
		case t.Sort != notation.SeamPlace && t.Seam == notation.NoSeam || h != nil || w.assembly != nil && w.c.index == 0:
		case w.assembly != nil:
			h = stopAt(at, "join", w.c.belowName()+" goes across the joins, and has none itself", "Only the first round round motifs is worked into them. Say it by stitches or corners.")
		default:
			h = stopAt(at, "join", "the words do not say how the pieces are joined that meet here",
				"Say it before this part, for example: Join the squares in 6 rows of 8.\nMotifs have four or six sides, whose corners show on their last round. Or say what goes along one of them: 2 dc in next st.")
		}
	}
	walkPlaces(items, func(pl *notation.Place) {
		check(pl.Span, &pl.Target)
		for k := range pl.Also {
			check(pl.Span, &pl.Also[k])
		}
		check(pl.Span, &pl.Extent.Target)
	})
	var skips func([]notation.Item)
	skips = func(items []notation.Item) {
		for _, it := range items {
			switch it := it.(type) {
			case *notation.Skip:
				check(it.Span, &it.Target)
			case *notation.Repeat:
				skips(it.Items)
			}
		}
	}
	skips(items)
	return h
}
