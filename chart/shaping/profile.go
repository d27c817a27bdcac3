package shaping

import (
	"fmt"
	"math"
	"strconv"

	"whorl/chart/scene"
	"whorl/chart/typeface"
)

// The ribbon along the profile, mm on paper.
const (
	ribbonWidth = 3.0
	tickOut     = 1.2
	numberSize  = 2.3
)

// scales are how many millimetres of the piece one millimetre of paper may
// stand for.
var scales = []float64{0.5, 0.75, 1, 1.25, 1.5, 1.75, 2, 2.25, 2.5, 2.75, 3, 3.5, 4, 5, 6, 8, 10, 12, 15, 20, 25, 30, 40, 50, 75, 100, 200, 500, 1000, 2000}

// profile draws the settled profile in a box, crown at the top.
func (s *sheet) profile(b box) {
	p := s.piece
	g := heading("profile", "Settled profile", b)
	b.y0 += 8

	// The meridian, down from the crown.
	nodes := p.meridian()
	lowest, highest, widest := p.start.z, p.start.z, p.start.r
	for _, n := range nodes {
		lowest, highest = math.Min(lowest, n.z), math.Max(highest, n.z)
		widest = math.Max(widest, n.r)
	}
	depth := highest - lowest
	stripRadius := p.strip / (2 * math.Pi)
	tall := depth + p.stripWidth
	widest = math.Max(widest, stripRadius)
	var head dummy
	if s.o.Head > 0 {
		head = newDummy(s.o.Head)
		tall, widest = math.Max(tall, head.foot), math.Max(widest, head.radius)
	}

	const side, below = ribbonWidth + tickOut + 5, 11
	const above = ribbonWidth + tickOut + 3
	w, h := b.x1-b.x0-2*side, b.y1-b.y0-above-below
	need := math.Max(2*widest/w, tall/h)
	scale := need
	for _, k := range scales {
		if k >= need {
			scale = k
			break
		}
	}
	cx, top := (b.x0+b.x1)/2, b.y0+above
	down := func(z float64) float64 { // of the part's own z
		if p.brimFirst {
			return highest - z
		}
		return z - lowest
	}
	at := func(n node, side float64) point { return point{X: cx + side*n.r/scale, Y: top + down(n.z)/scale} }

	var off []point // what the numbers keep off
	if s.o.Head > 0 {
		g.Add(drawDummy(head, cx, top, scale))
		off = head.right(cx, top, scale)
	}
	if p.strip > 0 {
		y, r := top+depth/scale, stripRadius/scale
		strip := &scene.Group{ID: "strip", Title: "The brim, worked in rows"}
		strip.Add(&scene.Path{Style: scene.Stroked(words, 0.3), D: p.stripOutline(cx, y, scale)})
		if t := stripLabel(p.stripName, cx, y, r, p.stripWidth/scale, top+head.rule/scale); t != nil {
			strip.Add(t)
		}
		g.Add(strip)
	}
	for _, sd := range []float64{1, -1} {
		s.ribbons(g, nodes, at, sd)
	}
	s.numbers(g, nodes, at, off, b)
	s.scaleBar(g, b, scale)
	s.root.Add(g)
}

// meridian is where the rounds lie, from where the part begins. The radii are
// those of the meridian that the rise was taken of: where the rounds zigzag they
// differ a little from the rounds' own.
func (p *piece) meridian() []node {
	nodes := []node{p.start}
	below, at := p.start, p.start.r
	for _, c := range p.rounds {
		f := c.form
		growth := f.R - below.r
		if rise := f.Z - below.z; rise > 0 {
			growth = rise * math.Tan(f.Angle)
		}
		at += growth
		below = node{f.R, f.Z}
		nodes = append(nodes, node{math.Max(at, 0), f.Z})
	}
	return nodes
}

// ribbons draws one side of the profile: a ribbon along every round outside of
// its meridian.
func (s *sheet) ribbons(g *scene.Group, nodes []node, at func(node, float64) point, side float64) {
	name := "right"
	if side < 0 {
		name = "left"
	}
	half := &scene.Group{ID: "profile-" + name}
	outer := s.outline(nodes, at, side)
	along := 0.0
	for i, c := range s.piece.rounds {
		k := classOf(c.strain)
		r := &scene.Group{Data: []scene.Attr{{Name: "round", Value: strconv.Itoa(c.round.Number)},
			{Name: "strain", Value: strconv.FormatFloat(cutStrain(c.form.Strain), 'f', -1, 64)}}, Title: s.roundTitle(c)}
		a, b := at(nodes[i], side), at(nodes[i+1], side)
		along = ribbon(r, classes[k], a, b, outer[i], outer[i+1], along)
		r.Add(&scene.Path{Style: scene.Stroked(ink, 0.2), D: line(b, between(b, outer[i+1], (ribbonWidth+tickOut)/ribbonWidth))})
		half.Add(r)
	}
	meridian := make([]point, len(nodes))
	for i, n := range nodes {
		meridian[i] = at(n, side)
	}
	half.Add(&scene.Path{Style: scene.Stroked(ink, 0.45), D: line(meridian...)})
	g.Add(half)
}

func cutStrain(v float64) float64 { return math.Round(1000*v) / 1000 }

// outline is the outer edge of the ribbon: square to the meridian at every
// round.
func (s *sheet) outline(nodes []node, at func(node, float64) point, side float64) []point {
	out := make([]point, len(nodes))
	for i := range nodes {
		var nx, ny float64
		for _, j := range []int{i - 1, i} {
			if j < 0 || j+1 >= len(nodes) {
				continue
			}
			a, b := at(nodes[j], side), at(nodes[j+1], side)
			l := math.Hypot(b.X-a.X, b.Y-a.Y)
			if l < 1e-9 {
				continue
			}
			// To the left of a brim-up piece, to the right of a crown-down one:
			// away from the axis, or up.
			x, y := (b.Y-a.Y)/l, -(b.X-a.X)/l
			if side < 0 {
				x, y = -x, -y
			}
			if s.piece.brimFirst {
				x, y = -x, -y
			}
			nx, ny = nx+x, ny+y
		}
		l := math.Hypot(nx, ny)
		if l < 1e-9 {
			nx, ny, l = 0, -1, 1
		}
		p := at(nodes[i], side)
		if nodes[i].r < 1e-9 {
			nx, ny, l = 0, -1, 1 // both sides meet on the axis
		}
		out[i] = point{X: p.X + ribbonWidth*nx/l, Y: p.Y + ribbonWidth*ny/l}
	}
	return out
}

// roundTitle is a round in words.
func (s *sheet) roundTitle(c course) string {
	t := fmt.Sprintf("%s: %d stitches", c.round.Label, c.round.Count())
	switch v := math.Round(100 * c.strain); {
	case v < 0:
		t += fmt.Sprintf(", slack by %.0f %%", -v)
	case v > 0:
		t += fmt.Sprintf(", stretched by %.0f %%", v)
	}
	return t
}

// numbers puts the numbers of the rounds to their ticks on the right, as many
// as there is room for: the first, the last and those of the shaping first.
func (s *sheet) numbers(g *scene.Group, nodes []node, at func(node, float64) point, off []point, b box) {
	outer := s.outline(nodes, at, 1)
	n := len(s.piece.rounds)
	labels := &scene.Group{ID: "profile-numbers"}
	var taken []box
	edge := off // and along the ribbon's outside
	for i := 0; i+1 < len(outer); i++ {
		steps := int(math.Hypot(outer[i+1].X-outer[i].X, outer[i+1].Y-outer[i].Y)/0.8) + 1
		for k := range steps {
			edge = append(edge, between(outer[i], outer[i+1], float64(k)/float64(steps)))
		}
	}
	done := make([]bool, n)
	place := func(i int) {
		if done[i] {
			return
		}
		c := s.piece.rounds[i]
		p, q := at(nodes[i+1], 1), outer[i+1]
		t := &scene.Text{Size: numberSize, Align: scene.Centre, Colour: words, String: strconv.Itoa(c.round.Number)}
		// As far out along the tick as the number reaches back along it, or
		// further, where something is in the way.
		nx, ny := math.Abs(q.X-p.X)/ribbonWidth, math.Abs(q.Y-p.Y)/ribbonWidth
		back := nx*typeface.Width(t.String, numberSize, false, false)/2 + ny*typeface.CapHeight(numberSize)/2
		for _, further := range []float64{0, 1.2, 2.4} {
			m := between(p, q, (ribbonWidth+tickOut+0.7+back+further)/ribbonWidth)
			t.X, t.Y = hundredth(m.X), hundredth(m.Y+typeface.CapHeight(numberSize)/2)
			at := boxOf(t)
			wide := box{at.x0 - 0.4, at.y0 - 0.4, at.x1 + 0.4, at.y1 + 0.4}
			if wide.x0 < b.x0 || wide.x1 > b.x1 || !roomFor(wide, edge, taken) {
				continue
			}
			taken, done[i] = append(taken, wide), true
			labels.Add(t)
			return
		}
	}
	place(n - 1)
	place(0)
	for _, every := range []int{10, 5, 1} {
		for i := range n {
			if s.piece.rounds[i].round.Number%every == 0 {
				place(i)
			}
		}
	}
	if len(labels.Nodes) > 0 {
		g.Add(labels)
	}
}

// barLength is how many units of so many millimetres the bar is long: as many
// as make it no longer than 30 mm on paper.
func barLength(unit, scale float64) float64 {
	n := 0.01
	for _, k := range []float64{0.1, 0.5, 1, 2, 5, 10, 20, 50, 100, 200, 500, 1000, 5000} {
		if k*unit/scale <= 30 {
			n = k
		}
	}
	return n
}

// scaleBar draws the scale under the profile, in centimetres and in inches.
func (s *sheet) scaleBar(g *scene.Group, b box, scale float64) {
	bar := &scene.Group{ID: "scale", Title: "Scale"}
	x, y := b.x0, b.y1-5
	draw := func(length float64, label string) {
		l := length / scale
		bar.Add(&scene.Path{Style: scene.Stroked(ink, 0.3), D: line(point{X: x, Y: y - 1}, point{X: x, Y: y}, point{X: x + l, Y: y}, point{X: x + l, Y: y - 1})})
		bar.Add(&scene.Text{X: hundredth(x), Y: y + 3.2, Size: smallSize, Colour: words, String: label})
		x += math.Max(l, typeface.Width(label, smallSize, false, false)) + 6
	}
	cm, in := barLength(10, scale), barLength(25.4, scale)
	draw(10*cm, decimal(cm)+" cm")
	draw(25.4*in, decimal(in)+" in")
	bar.Add(&scene.Text{X: hundredth(x), Y: y + 3.2, Size: smallSize, Colour: words, String: "scale 1 : " + decimal(scale)})
	g.Add(bar)
}

func decimal(v float64) string { return strconv.FormatFloat(math.Round(1000*v)/1000, 'f', -1, 64) }
