package working

import (
	"regexp"
	"slices"
	"strings"

	"whorl/patterns"
	"whorl/patterns/fabric"
	"whorl/patterns/notation"
	"whorl/patterns/stitch"
)

// assembly is the outside of motifs that are joined to one another, as a border goes round it.
type assembly struct {
	motif    int             // the part that the motifs are
	stitches []fabric.Stitch // round the outside, with what they were worked into there
	seams    []seam          // in order
	corners  []fabric.Span   // those that no other motif meets
}

// seam is where two motifs meet on the outside: between stitch at-1 and stitch at. What stands at
// the corners that meet there is before stitches long before it, and after behind it; 0 where
// the corner lies between two stitches.
type seam struct{ at, before, after int }

// motifCorners are the corners of the last round of a motif, as spans of the spots of its course:
// spaces, stitches, or nothing where a corner lies between two stitches.
func motifCorners(c *course) []fabric.Span {
	isNumber := func(n int) bool { return n == 3 || n == 4 || n == 6 || n == 8 }
	n := len(c.spots)
	inOne := func(i, j int) bool {
		a, b := c.on(i%n), c.on((j+n)%n)
		return len(a) == 1 && len(b) == 1 && a[0] == b[0] && a[0].Into != stitch.Ring
	}
	var within, longest, centres []fabric.Span
	for k, r := range c.runs {
		if inOne(r.To, r.From-1) {
			within = append(within, r)
		}
		if c.chains[k] == c.longest {
			longest = append(longest, r)
		}
	}
	for i := range c.spots {
		if c.cornerStitch(i) {
			centres = append(centres, fabric.Span{From: i, To: i + 1})
		}
	}
	for _, l := range [][]fabric.Span{within, longest, centres} {
		if isNumber(len(l)) {
			return l
		}
	}
	// Two or four stitches in the place of a corner, which lies between them.
	first := 0
	for first < n-1 && inOne(first, first-1) {
		first++
	}
	var runs []fabric.Span
	most := 0
	for i := 0; i < n; {
		j := i + 1
		for j < n && inOne(first+i, first+j) {
			j++
		}
		runs = append(runs, fabric.Span{From: first + i, To: first + j})
		most = max(most, j-i)
		i = j
	}
	var between []fabric.Span
	for _, r := range runs {
		if m := (r.From + r.To) / 2 % n; r.To-r.From == most && most%2 == 0 {
			between = append(between, fabric.Span{From: m, To: m})
		}
	}
	slices.SortFunc(between, func(a, b fabric.Span) int { return a.From - b.From })
	if isNumber(len(between)) {
		return between
	}
	return nil
}

// visited is a stretch of the outside on one motif: so many of its sides from one on.
type visited struct{ side, sides, cell int }

// cell is where a motif lies, on a grid of squares or, with skewed axes, of hexagons.
type cell struct{ x, y int }

// beside are the motifs on the sides of one, in the order in which a round goes.
var beside = map[int][]cell{
	4: {{0, -1}, {1, 0}, {0, 1}, {-1, 0}},
	6: {{1, 0}, {0, 1}, {-1, 1}, {-1, 0}, {0, -1}, {1, -1}},
}

// cells are the motifs of a layout; nil where motifs of so many sides cannot lie so.
func cells(l patterns.Layout, sides int) (list []cell) {
	if l.Around {
		if sides != 6 {
			return nil
		}
		return append([]cell{{}}, beside[6]...)
	}
	left := 0 // of the row, in halves of a hexagon
	for y, n := range l.Rows {
		if y > 0 && sides == 6 {
			switch n - l.Rows[y-1] {
			case 1:
				left--
			case -1:
				left++
			case 0:
				left += 2*(y%2) - 1
			default:
				return nil
			}
		} else if y > 0 && n != l.Rows[0] {
			return nil
		}
		for k := range n {
			c := cell{k, y}
			if sides == 6 {
				c.x = (left + 2*k - y) / 2
			}
			list = append(list, c)
		}
	}
	return list
}

// outside is the way round the outside of motifs, from a seam on. It is nil where they are not
// all joined to one another by sides, or more than two meet at a point of it.
func outside(list []cell, sides int) (l []visited) {
	at := map[cell]int{}
	for i, c := range list {
		at[c] = i
	}
	next := func(i, side int) (int, bool) {
		d := beside[sides][side%sides]
		j, ok := at[cell{list[i].x + d.x, list[i].y + d.y}]
		return j, ok
	}
	start := visited{cell: -1}
	open := 0 // sides that lie free
	for i := range list {
		for s := range sides {
			if _, ok := next(i, s); ok {
				continue
			}
			open++
			if _, ok := next(i, s+sides-1); ok && start.cell < 0 {
				start = visited{side: s, cell: i}
			}
		}
	}
	if start.cell < 0 {
		return nil
	}
	for v := start; len(l) == 0 || v != start; {
		stretch := v
		for {
			if _, ok := next(v.cell, v.side+stretch.sides); ok {
				break
			}
			stretch.sides++
			open--
		}
		l = append(l, stretch)
		over := v.side + stretch.sides
		on, _ := next(v.cell, over)
		side := (over + sides/2 + 1) % sides
		if _, ok := next(on, side); ok {
			return nil // three of them meet here
		}
		if v = (visited{side: side, cell: on}); len(l) > 4*len(list) {
			return nil
		}
	}
	if open != 0 {
		return nil // in two pieces, or with a hole
	}
	return l
}

// assemble begins the part round the motifs of which part number on is one, where the words say
// how they are joined. It reports whether they are.
func (p *partWork) assemble(on int) bool {
	for on >= 0 && len(p.f.Parts[on].Rounds) == 0 {
		on-- // a part that tells of nothing but how they are joined
	}
	if on < 0 || p.source.Rows || p.f.Parts[on].Worked == fabric.InRows {
		return false
	}
	base := p.f.Parts[on]
	last := base.Rounds[len(base.Rounds)-1]
	if last.Row || last.Number == 0 {
		return false
	}
	layout, ok := p.p.Joined(on, p.index)
	if !ok {
		return false
	}
	c := layCourse(last, len(base.Rounds)-1, false)
	corners := motifCorners(c)
	sides := len(corners)
	if beside[sides] == nil {
		return false
	}
	way := outside(cells(layout, sides), sides)
	if p.assembles = len(way) > 0; !p.assembles || p.reading.apart {
		return false
	}
	r := *last
	r.Label, r.Carried, r.Repeats, r.Ring, r.Completed = "the edge of the joined motifs", true, nil, false, 0
	r.Closing = fabric.Joined
	r.Stitches, r.Spaces, r.Groups = nil, nil, nil
	a := &assembly{motif: on}
	n := len(c.spots)
	for k, v := range way {
		end := (v.side + v.sides) % sides
		from, to := corners[v.side].From, corners[end].To
		if to <= from {
			to += n
		}
		before := way[(k+len(way)-1)%len(way)]
		was := corners[(before.side+before.sides)%sides]
		a.seams = append(a.seams, seam{len(a.stitches), was.To - was.From, corners[v.side].To - corners[v.side].From})
		at := func(i int) int { return len(a.stitches) + (i-from+2*n)%n }
		for s := 1; s < v.sides; s++ {
			free := corners[(v.side+s)%sides]
			a.corners = append(a.corners, fabric.Span{From: at(free.From), To: at(free.From) + free.To - free.From})
		}
		for _, run := range c.runs {
			if i := at(run.From); i+run.To-run.From <= len(a.stitches)+to-from {
				r.Spaces = append(r.Spaces, fabric.Span{From: i, To: i + run.To - run.From})
			}
		}
		for _, g := range c.groups {
			if i := at(g.From); i+g.To-g.From <= len(a.stitches)+to-from {
				r.Groups = append(r.Groups, fabric.Group{Span: fabric.Span{From: i, To: i + g.To - g.From}, Name: g.name, Like: g.like})
			}
		}
		for i := from; i < to; i++ {
			st := *c.spots[i%n].st
			st.Group, st.Marked = 0, false
			a.stitches = append(a.stitches, st)
		}
	}
	first := 0
	if len(layout.Rows) > 0 && sides == 4 && len(a.corners) == 4 {
		first = a.corners[p.firstCorner(way)].From
	}
	a.begin(&r, first)
	r.Stitches = slices.Clone(a.stitches)
	for i := range r.Stitches {
		r.Stitches[i].On = nil
	}
	p.part.From, p.assembly = on, a
	p.part.Rounds = append(p.part.Rounds, &r)
	p.number, p.turned = last.Number, false
	return true
}

// begin turns the outside so that a stitch comes first.
func (a *assembly) begin(r *fabric.Round, first int) {
	n := len(a.stitches)
	turned := func(i int) int { return (i - first + n) % n }
	a.stitches = append(slices.Clone(a.stitches[first:]), a.stitches[:first]...)
	for i := range a.seams {
		if s := &a.seams[i]; turned(s.at) == 0 {
			s.at = n // the round begins behind it
		} else {
			s.at = turned(s.at)
		}
	}
	slices.SortFunc(a.seams, func(x, y seam) int { return x.at - y.at })
	for _, l := range [][]fabric.Span{r.Spaces, a.corners} {
		for i := range l {
			l[i] = fabric.Span{From: turned(l[i].From), To: turned(l[i].From) + l[i].To - l[i].From}
		}
	}
	slices.SortFunc(r.Spaces, func(x, y fabric.Span) int { return x.From - y.From })
	whole := r.Groups[:0]
	for _, g := range r.Groups {
		if g.From, g.To = turned(g.From), turned(g.From)+g.To-g.From; g.To <= n {
			whole = append(whole, g)
		}
	}
	r.Groups = whole
	slices.SortStableFunc(r.Groups, func(x, y fabric.Group) int { return x.From - y.From })
}

// firstCorner is which of the four corners of a rectangle the border begins at: that before the
// edge its words name, else before a short one, or a long one in another reading.
func (p *partWork) firstCorner(way []visited) int {
	along := map[int]int{} // how many motifs lie on a side
	for _, v := range way {
		for s := range v.sides {
			along[(v.side+s)%4]++
		}
	}
	long := p.beginsLong() != p.reading.otherEdge
	k := 0
	for _, v := range way {
		for s := 1; s < v.sides; s++ {
			n, m := along[(v.side+s)%4], along[(v.side+s+1)%4]
			if n == m || (n > m) == long {
				return k
			}
			k++
		}
	}
	return 0
}

// edgeSaid is which edge of a rectangle words speak of.
var edgeSaid = regexp.MustCompile(`(?i)\b(long|short)(er|est)?[ -](hand )?(edge|side|end)`)

// beginsLong reports whether the words begin the border along a long edge.
func (p *partWork) beginsLong() bool {
	m := edgeSaid.FindStringSubmatch(strings.Join(p.source.Text.Lines, " "))
	return m != nil && strings.EqualFold(m[1], "long")
}

// namesSeams reports whether instructions name the joins between motifs.
func namesSeams(items []notation.Item) (names bool) {
	walkPlaces(items, func(pl *notation.Place) {
		names = names || pl.Target.Sort == notation.SeamPlace || slices.ContainsFunc(pl.Also, func(t notation.Target) bool { return t.Sort == notation.SeamPlace })
	})
	for _, it := range items {
		switch it := it.(type) {
		case *notation.Skip:
			names = names || it.Target.Sort == notation.SeamPlace
		case *notation.Repeat:
			names = names || namesSeams(it.Items)
		}
	}
	return names
}
