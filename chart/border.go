package chart

import (
	"math"

	"whorl/chart/ring"
	"whorl/patterns/fabric"
	"whorl/patterns/stitch"
)

// border is what the rounds of a border are worked round: the edges of a piece worked
// in rows, or the sides of a motif. They lie on straight edges with corners.
type border struct {
	cloth   string        // the name of the piece
	corners []ring.Corner // of the cloth, mm of the fabric
	feet    map[int]float64
}

// The edges of a flat piece in the order in which a border meets them.
const (
	lastRow = iota
	firstSide
	firstRow
	secondSide
	motifSide // of a motif: each has a corner in its first place
)

// edging is a run of a border's first stitches along one edge.
type edging struct {
	side   int
	keys   []int     // of its places in order
	spaces []bool    // of each place whether it is a space
	rows   []int     // of each place that is a row end
	uses   []int     // how many stitches each place has
	widths []float64 // of the stitches in each place, mm of the fabric
	length float64   // of all of them
	// begins and ends are set where its first and last place is a corner.
	begins, ends bool
}

// findBorder finds the edges that a part's rounds are worked round; nil where they
// are none: both sides of a piece worked in rows, and its last row; or the sides of a
// motif with corners.
func (w *work) findBorder() *border {
	from := w.part.From
	if from < 0 || from >= len(w.fabric.Parts) || len(w.courses) < 2 || !w.courses[0].round.Carried {
		return nil
	}
	cloth := w.fabric.Parts[from]
	if cloth.Worked == fabric.InRounds {
		return w.aboutMotif(from)
	}
	runs := w.edgings(len(cloth.Rounds[len(cloth.Rounds)-1].Stitches))
	if len(runs) < 3 || len(runs) > 4 {
		return nil
	}
	met := map[int]bool{}
	for _, e := range runs {
		met[e.side] = true
	}
	if len(met) < len(runs) || !met[lastRow] || !met[firstSide] || !met[secondSide] {
		return nil
	}
	if len(runs) == 3 && !beginsInPoint(cloth) {
		return nil // an opening, whose sides meet in a seam
	}
	if m := runs[0].spine(); len(runs) == 3 && m > 0 {
		return newBorder(cloth.Name, aboutSpine(runs, m))
	}
	return newBorder(cloth.Name, runs)
}

// mostPoint is the part of its last row that the first row of a piece which begins in a
// point has at most.
const mostPoint = 0.5

// beginsInPoint reports whether a piece worked in rows grows from a few stitches.
func beginsInPoint(cloth *fabric.Part) bool {
	first, last := 0, 0
	for _, r := range cloth.Rounds {
		if n := r.Count(); r.Number > 0 && !r.Carried && n > 0 {
			if first == 0 {
				first = n
			}
			last = n
		}
	}
	return float64(first) <= mostPoint*float64(last)
}

// edgings are the runs of the first round's stitches along the edges, anticlockwise
// from the last row, which has so many stitches.
func (w *work) edgings(stitches int) []edging {
	c := w.courses[1]
	type use struct {
		side, key, row int
		width          float64
		space          bool
	}
	var uses []use
	for _, i := range c.rising() {
		s := &c.round.Stitches[i]
		if len(s.On) == 0 || !c.takesRoom(i) {
			if len(uses) > 0 {
				uses[len(uses)-1].width += c.form.Widths[i]
			}
			continue
		}
		p := s.On[0]
		u := use{lastRow, w.key(p), p.At.Round, c.form.Widths[i], p.Into == stitch.Space}
		switch {
		case p.Into == stitch.RowEnd && p.At.Stitch == 1:
			u.side = firstSide
		case p.Into == stitch.RowEnd:
			u.side = secondSide
		case p.At.Round != 0:
			continue
		case p.At.Stitch >= stitches:
			u.side = firstRow
		}
		uses = append(uses, u)
	}
	first := 0
	for k := range uses {
		if uses[k].side == lastRow && uses[(k+len(uses)-1)%len(uses)].side != lastRow {
			first = k
		}
	}
	var runs []edging
	for k := range uses {
		u := uses[(first+k)%len(uses)]
		if len(runs) == 0 || runs[len(runs)-1].side != u.side {
			runs = append(runs, edging{side: u.side})
		}
		e := &runs[len(runs)-1]
		if n := len(e.keys); n == 0 || e.keys[n-1] != u.key {
			e.keys, e.rows, e.uses = append(e.keys, u.key), append(e.rows, u.row), append(e.uses, 0)
			e.widths, e.spaces = append(e.widths, 0), append(e.spaces, u.space)
		}
		e.uses[len(e.uses)-1]++
		e.widths[len(e.widths)-1] += u.width
		e.length += u.width
	}
	return runs
}

// spineAside is how far the spine of a triangle may be from the middle of its last row,
// as a share of the row.
const spineAside = 0.1

// spine is the index of the space about the middle of an edge that more is worked into
// than into any other; 0 for none.
func (e *edging) spine() int {
	most, at := 1, 0
	for k, n := range e.uses {
		switch {
		case !e.spaces[k] || n < most:
		case n == most:
			at = 0
		default:
			most, at = n, k
		}
	}
	if math.Abs(float64(at)/float64(len(e.keys)-1)-0.5) > spineAside {
		return 0
	}
	return at
}

// aboutSpine are the edges of a triangle that is worked from the middle of one of them:
// that one, of the sides of its rows, and the halves of the last row, which turns a
// corner at place m.
func aboutSpine(runs []edging, m int) []edging {
	half := func(from, to int) edging {
		e := edging{side: lastRow}
		for k := from; k < to; k++ {
			e.add(&runs[0], k)
		}
		return e
	}
	neck := edging{side: firstSide}
	for _, r := range runs[1:] {
		for k := range r.keys {
			neck.add(&r, k)
		}
	}
	return []edging{half(0, m+1), half(m+1, len(runs[0].keys)), neck}
}

// add adds place k of another edge to one.
func (e *edging) add(d *edging, k int) {
	e.keys, e.spaces, e.rows = append(e.keys, d.keys[k]), append(e.spaces, d.spaces[k]), append(e.rows, d.rows[k])
	e.uses, e.widths = append(e.uses, d.uses[k]), append(e.widths, d.widths[k])
	e.length += d.widths[k]
}

// newBorder is the border along so many edges, as long as the stitches along each of
// them.
func newBorder(cloth string, runs []edging) *border {
	b := &border{cloth: cloth, feet: map[int]float64{}}
	findCorners(runs)
	n := len(runs)
	long, around := make([]float64, n), make([]float64, n) // of edges, and of the corners before them
	for k, e := range runs {
		first, last := e.corners()
		long[k] = e.length - first - last
		around[k] += first
		around[(k+1)%n] += last
	}
	b.corners = outlined(runs, long)
	whole := 0.0
	stitches := 0
	for _, e := range runs {
		whole += e.length
		stitches += len(e.keys)
	}
	angle := 0.0
	for k := range b.corners {
		p := &b.corners[k]
		q := b.corners[(k+1)%n]
		p.Around = math.Max(around[k], 2*whole/float64(stitches))
		if k > 0 {
			angle += p.Around / 2
		}
		p.Angle = angle
		angle += p.Around/2 + math.Hypot(p.X-q.X, p.Y-q.Y)
	}
	angle += b.corners[0].Around / 2
	for k := range b.corners {
		b.corners[k].Angle *= ring.Turn / angle
		b.corners[k].Around *= ring.Turn / angle
	}
	e := b.edges(1, false)
	for k := range runs {
		from := b.corners[k].Angle + b.corners[k].Around/2
		runs[k].lay(b.feet, b.corners[k].Angle, from, from+e.Span(2*k), from+e.Span(2*k)+e.Span(2*k+1)/2)
	}
	return b
}

// outlined are the corners of a piece with edges so long, anticlockwise from the right of
// the top.
func outlined(runs []edging, long []float64) []ring.Corner {
	n := len(runs)
	if runs[0].side == motifSide {
		return regular(long)
	}
	top, bottom, slant := long[0], 0.0, (long[1]+long[n-1])/2
	if n == 4 {
		bottom = long[2]
		if math.Abs(top-bottom) < 0.2*top {
			top = (top + bottom) / 2
			bottom = top
		}
	}
	in := (top - bottom) / 2
	high := math.Max(math.Sqrt(math.Max(slant*slant-in*in, 0)), 0.3*slant)
	corners := []ring.Corner{{X: top / 2, Y: high / 2}, {X: -top / 2, Y: high / 2}, {X: -bottom / 2, Y: -high / 2}, {X: bottom / 2, Y: -high / 2}}[:n]
	if runs[1].side == lastRow { // two halves of one, with the spine at the top
		slant, in = (long[0]+long[1])/2, long[2]/2
		high = math.Max(math.Sqrt(math.Max(slant*slant-in*in, 0)), 0.3*slant)
		return []ring.Corner{{X: in, Y: -high / 2}, {Y: high / 2}, {X: -in, Y: -high / 2}}
	}
	return corners
}

// findCorners finds which edges begin or end in a corner: where more than one stitch is
// worked into the end of a row; where none is on either side of a corner, at the end of
// the rows if more is worked into it than into the one next to it.
func findCorners(runs []edging) {
	for k := range runs {
		e := &runs[k]
		n := len(e.keys) - 1
		if e.side == firstSide || e.side == secondSide || n == 0 {
			continue
		}
		e.begins, e.ends = e.uses[0] > 1, e.uses[n] > 1
		if e.side == motifSide {
			e.begins, e.ends = true, false
		}
	}
	heaped := func(e *edging, at, beside int) bool {
		return (e.side == firstSide || e.side == secondSide) && len(e.keys) > 2 && e.uses[at] >= leastHeaped && e.uses[at] > e.uses[beside]
	}
	for k := range runs {
		e, next := &runs[k], &runs[(k+1)%len(runs)]
		n := len(e.keys) - 1
		if !next.begins && !e.ends {
			e.ends = heaped(e, n, n-1)
		}
		if !next.begins && !e.ends {
			next.begins = heaped(next, 0, 1)
		}
	}
}

// leastHeaped is how many stitches in a row end at least make a corner of it.
const leastHeaped = 3

// corners are the lengths of what stands in the first and in the last place of an edge,
// where those are corners.
func (e *edging) corners() (first, last float64) {
	if e.begins {
		first = e.widths[0]
	}
	if e.ends {
		last = e.widths[len(e.keys)-1]
	}
	return first, last
}

// lay lays the places of an edge evenly between two angles; corners at those before
// and after them.
func (e *edging) lay(feet map[int]float64, before, from, to, after float64) {
	at := make([]float64, len(e.keys))
	for k := 1; k < len(at); k++ {
		step := 1.0
		if e.side == firstSide || e.side == secondSide {
			step = math.Max(1, float64(abs(e.rows[k]-e.rows[k-1])))
		}
		at[k] = at[k-1] + step
	}
	first, last := e.corners()
	start, end := at[0]-0.5, at[len(at)-1]+0.5
	if first > 0 {
		start++
	}
	if last > 0 {
		end--
	}
	for k, key := range e.keys {
		a := from + (to-from)*(at[k]-start)/math.Max(end-start, 1)
		switch {
		case k == 0 && first > 0:
			a = before
		case k == len(at)-1 && last > 0:
			a = after
		}
		if _, ok := feet[key]; !ok {
			feet[key] = a
		}
	}
}

// layBorder gives the edges' places their angles.
func (w *work) layBorder() {
	for key, a := range w.border.feet {
		w.edge[key] = a
	}
	w.courses[0].settle(w)
}

// onEdges gives the stitches of a border's round the widths at which what stands on an
// edge fills that edge, and what stands in a corner that corner.
func (b *border) onEdges(items []ring.Item) {
	e := b.edges(1, false)
	regions{2 * len(b.corners), func(a float64) int { r, _ := e.Region(a); return r }, e.Span}.fill(items)
}

// edges is the shape of a border at a scale.
func (b *border) edges(scale float64, mirrored bool) ring.Edges {
	e := ring.Edges{Corners: append([]ring.Corner(nil), b.corners...), Mirrored: mirrored}
	for k := range e.Corners {
		e.Corners[k].X *= scale
		e.Corners[k].Y *= scale
	}
	return e
}

// reachBorder finds how far out every stitch of a border is, so that all lies within
// so much to each side, and up and down.
func (w *work) reachBorder(wide, high float64) {
	w.lo, w.ground, w.inwards = w.first, true, false
	tall := w.singleHeight()
	layers := w.layers()
	for i := range layers {
		layers[i].Least, layers[i].Length = 0, 0
	}
	lay := func(scale float64) bool {
		w.radii = ring.Stack(layers, ring.Fit{Outer: 1e6, MaxScale: scale})
		w.unit = math.Max(scale*tall, 0.1)
		w.shape = w.border.edges(scale, w.o.LeftHanded)
		w.outer = 0
		w.radiateAll()
		out := 0.0
		for k := range w.border.corners { // a mitred corner may stand out farther
			x, y := w.shape.(ring.Edges).Tip(k, w.outer)
			out = math.Max(out, math.Max(math.Abs(x)-wide, math.Abs(y)-high))
		}
		return out <= 0
	}
	low, most := 0.0, w.o.enlarged(largest)/tall
	if !lay(most) {
		for range 24 {
			if mid := (low + most) / 2; lay(mid) {
				low = mid
			} else {
				most = mid
			}
		}
		lay(low)
	}
	w.openEvenly()
	w.radii.Crowded = w.shape.(ring.Edges).Stretch(0)*ring.Turn < leastPitch*float64(len(w.courses[1].order))
}

// high is half the height of the cloth at a scale.
func (b *border) high(scale float64) float64 {
	up := 0.0
	for _, p := range b.corners {
		up = math.Max(up, math.Abs(p.Y))
	}
	return up * scale
}
