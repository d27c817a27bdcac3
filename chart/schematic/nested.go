package schematic

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"whorl/chart/scene"
	"whorl/chart/typeface"
)

// Measures of nested outlines and their leaders, mm on paper. A leader ends in
// an arrowhead on the outline that it names (ISO 128-22, value from memory).
const (
	innerLine   = 0.3  // width of an outline within another
	alike       = 1.0  // outlines no further apart, mm of the piece, are one
	apart       = 1.2  // further than this is clear enough
	leaderLong  = 6.0  // from what is drawn to the names
	labelMost   = 34.0 // of a line of a name
	labelPitch  = valueSize * leading
	labelApart  = 1.0
	leaderUnder = 0.5 // from a leader to its name
)

// nested is the outline of another size in a view, in millimetres of the piece,
// laid on the view's.
type nested struct {
	size    string
	outline []point
}

// nest lays the outlines of the other sizes on those of the drawn one, the
// largest.
func (s *sheet) nest() error {
	for k := range s.sizes {
		if k == s.o.Drawn {
			continue
		}
		other := &sheet{o: s.o, sizes: s.sizes}
		other.o.Drawn = k
		if err := other.choose(); err != nil {
			return err
		}
		for _, v := range s.views {
			for _, w := range other.views {
				if w.id == v.id {
					v.inner = append(v.inner, nested{s.sizes[k].fabric.Size, w.laidOn(v)})
				}
			}
		}
	}
	for _, v := range s.views {
		v.inner = append(v.inner, nested{s.drawn().fabric.Size, v.outline})
		slices.SortStableFunc(v.inner, func(a, b nested) int { return s.order(a.size) - s.order(b.size) })
		v.growAround()
		v.name()
	}
	return nil
}

// growAround makes room in the view for the outlines in it that are taller or
// wider than its own, and brings the direction of work of a round view within
// the smallest.
func (v *view) growAround() {
	low, high := point{}, point{X: v.width, Y: v.height}
	narrow := v.width
	for _, n := range v.inner {
		least, most := math.Inf(1), math.Inf(-1)
		for _, p := range n.outline {
			low.X, low.Y = math.Min(low.X, p.X), math.Min(low.Y, p.Y)
			high.X, high.Y = math.Max(high.X, p.X), math.Max(high.Y, p.Y)
			least, most = math.Min(least, p.X), math.Max(most, p.X)
		}
		narrow = math.Min(narrow, most-least)
	}
	if v.rests == atCentre {
		for i, p := range v.way {
			k := narrow / v.width
			v.way[i] = point{X: v.width/2 + k*(p.X-v.width/2), Y: v.height/2 + k*(p.Y-v.height/2)}
		}
	}
	moved := map[*point]bool{}
	move := func(l []point) {
		for i := range l {
			if p := &l[i]; !moved[p] { // outlines and edges may share points
				moved[p] = true
				p.X, p.Y = p.X-low.X, p.Y-low.Y
			}
		}
	}
	move(v.outline)
	move(v.way)
	for _, e := range v.edges {
		move(e.line)
	}
	for _, n := range v.inner {
		move(n.outline)
	}
	for i := range v.tags {
		v.tags[i].at.X, v.tags[i].at.Y = v.tags[i].at.X-low.X, v.tags[i].at.Y-low.Y
	}
	for i := range v.dims {
		d := &v.dims[i]
		along, in := -low.X, -low.Y
		switch d.side {
		case left:
			along, in = -low.Y, -low.X
		case below:
			in = high.Y - v.height
		}
		d.from, d.to = d.from+along, d.to+along
		d.off[0], d.off[1] = d.off[0]+in, d.off[1]+in
	}
	v.width, v.height = high.X-low.X, high.Y-low.Y
}

// order is the place of a size among the sizes.
func (s *sheet) order(size string) int {
	return slices.IndexFunc(s.sizes, func(m measured) bool { return m.fabric.Size == size })
}

// laidOn is the outline of a view, laid on another as pieces of several sizes
// are: on its foot, about its middle; on its left end where it lies on its side;
// on its centre where it is seen from above.
func (v *view) laidOn(on *view) []point {
	dx, dy := (on.width-v.width)/2, on.height-v.height
	switch v.rests {
	case atStart:
		dx = 0
	case atCentre:
		dy /= 2
	}
	out := make([]point, len(v.outline))
	for i, p := range v.outline {
		out[i] = point{X: p.X + dx, Y: p.Y + dy}
	}
	return out
}

// rest is where the outlines of several sizes meet.
type rest uint8

const (
	atFoot rest = iota
	atStart
	atCentre
)

// label is the name beside a view of one size, or of several that are alike.
type label struct {
	lines   []string
	outline []point // that its leader ends on, mm of the piece
	tip     point   // there, on paper from the upper left corner of the outlines
}

func (l *label) height() float64 { return float64(len(l.lines)) * labelPitch }

// name sets the labels of the nested outlines: outlines that are no further
// apart than a millimetre share one.
func (v *view) name() {
	var outlines, points [][]point
	var names [][]string
	for _, n := range v.inner {
		on := dense(n.outline, 5)
		at := slices.IndexFunc(points, func(other []point) bool { return far(on, other) < alike && far(other, on) < alike })
		if at < 0 {
			outlines, points, names = append(outlines, n.outline), append(points, on), append(names, nil)
			at = len(outlines) - 1
		}
		names[at] = append(names[at], n.size)
	}
	for k, outline := range outlines {
		v.labels = append(v.labels, label{lines: typeface.Wrap(strings.Join(names[k], ", "), valueSize, false, labelMost), outline: outline})
	}
}

// lead finds the ends of the leaders at a scale, and sets the labels in their
// order from the top down.
func (v *view) lead(scale float64) []label {
	l := slices.Clone(v.labels)
	var lines [][]point // on paper
	for i := range l {
		lines = append(lines, dense(l[i].outline, scale))
		for k, p := range lines[i] {
			lines[i][k] = point{X: p.X / scale, Y: p.Y / scale}
		}
	}
	for k := range l {
		// From the largest at the top to the smallest at the foot.
		want := 0.5
		if n := len(l) - 1; n > 0 {
			want = 0.2 + 0.6*float64(n-k)/float64(n)
		}
		l[k].tip = tip(lines, k, want)
	}
	slices.SortStableFunc(l, func(a, b label) int { return cmp.Compare(a.tip.Y, b.tip.Y) })
	return l
}

// tip is the place on line k that a leader from the right names it at best:
// clear of the others, on the right, and near a share of its height.
func tip(lines [][]point, k int, want float64) point {
	low, high, left, right := math.Inf(1), math.Inf(-1), math.Inf(1), math.Inf(-1)
	for _, p := range lines[k] {
		low, high = math.Min(low, p.Y), math.Max(high, p.Y)
		left, right = math.Min(left, p.X), math.Max(right, p.X)
	}
	tall, wide := math.Max(high-low, 1), math.Max(right-left, 1)
	best, most := lines[k][0], math.Inf(-1)
	for _, p := range lines[k] {
		if p.X < (left+right)/2 {
			continue
		}
		clear := apart
		for j, other := range lines {
			if j != k {
				clear = math.Min(clear, near(p, other))
			}
		}
		score := 10*clear/apart - 2*math.Abs((p.Y-low)/tall-want) + 3*((p.X-left)/wide-0.5)
		if score > most+1e-9 {
			best, most = p, score
		}
	}
	return best
}

// dense is a closed outline with points no more than so many millimetres apart.
func dense(outline []point, apart float64) (l []point) {
	for i, a := range outline {
		b := outline[(i+1)%len(outline)]
		n := int(math.Hypot(b.X-a.X, b.Y-a.Y)/apart) + 1
		for k := range n {
			t := float64(k) / float64(n)
			l = append(l, point{X: a.X + t*(b.X-a.X), Y: a.Y + t*(b.Y-a.Y)})
		}
	}
	return l
}

// near is how far a point is from a closed line, and far how far the farthest
// of points is.
func near(p point, closed []point) float64 {
	least := math.Inf(1)
	for i, a := range closed {
		b := closed[(i+1)%len(closed)]
		dx, dy := b.X-a.X, b.Y-a.Y
		t := 0.0
		if d := dx*dx + dy*dy; d > 0 {
			t = math.Max(0, math.Min(1, ((p.X-a.X)*dx+(p.Y-a.Y)*dy)/d))
		}
		x, y := p.X-a.X-t*dx, p.Y-a.Y-t*dy
		least = math.Min(least, x*x+y*y)
	}
	return math.Sqrt(least)
}

func far(on, closed []point) (d float64) {
	for _, p := range on {
		d = math.Max(d, near(p, closed))
	}
	return d
}

// labelRoom is the room that labels take beside the outline, and their height.
func labelRoom(l []label) (wide, tall float64) {
	for i := range l {
		for _, t := range l[i].lines {
			wide = math.Max(wide, typeface.Width(t, valueSize, false, false))
		}
		tall += l[i].height() + labelApart
	}
	return wide, tall
}

// drawInner draws the outlines of the other sizes and the leader to each of
// all. ox, oy is the upper left corner of the outline on paper, and names the
// place where the names begin.
func (b *block) drawInner(g *scene.Group, ox, oy, names, scale float64) {
	for k, n := range b.v.inner {
		if k == len(b.v.inner)-1 {
			break // the drawn one, with its edges
		}
		l := make([]point, len(n.outline))
		for i, p := range n.outline {
			l[i] = point{X: ox + p.X/scale, Y: oy + p.Y/scale}
		}
		g.Add(&scene.Path{Style: scene.Stroked(ink, innerLine), D: polygon(l...)})
	}
	labels := b.v.lead(scale)
	at := stacked(labels, math.Max(b.h, b.labelTall))
	for i := range labels {
		l := &labels[i]
		mid := oy + at[i] + l.height()/2
		tip := point{X: ox + l.tip.X, Y: oy + l.tip.Y}
		from := point{X: names - leaderUnder, Y: mid}
		g.Add(&scene.Path{Style: scene.Stroked(words, thin), D: line(from, tip)})
		pointAt(g, from, tip)
		for k, t := range l.lines {
			g.Add(&scene.Text{X: hundredth(names + leaderUnder), Y: hundredth(oy + at[i] + labelPitch*(0.76+float64(k))), Size: valueSize, Colour: ink, String: t})
		}
	}
}

// stacked are the places of labels from the top down, each beside its tip or as
// near as the others let it, within so much height.
func stacked(labels []label, room float64) []float64 {
	at := make([]float64, len(labels))
	free := 0.0
	for i := range labels {
		h := labels[i].height()
		at[i] = math.Max(free, labels[i].tip.Y-h/2)
		free = at[i] + h + labelApart
	}
	foot := room
	for i := len(labels) - 1; i >= 0; i-- {
		at[i] = math.Max(0, math.Min(at[i], foot-labels[i].height()))
		foot = at[i] - labelApart
	}
	return at
}

// pointAt is an arrowhead at the end of a line.
func pointAt(g *scene.Group, from, tip point) {
	d := math.Hypot(tip.X-from.X, tip.Y-from.Y)
	if d < headLong {
		return
	}
	ux, uy := (from.X-tip.X)/d, (from.Y-tip.Y)/d
	wing := func(side float64) point {
		return point{X: tip.X + headLong*ux - side*headHalf*uy, Y: tip.Y + headLong*uy + side*headHalf*ux}
	}
	g.Add(&scene.Path{Style: scene.Filled(words), D: polygon(tip, wing(1), wing(-1))})
}
