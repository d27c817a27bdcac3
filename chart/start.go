package chart

import (
	"math"
	"slices"
	"strconv"

	"github.com/tdewolff/canvas"

	"whorl/chart/scene"
	"whorl/patterns/fabric"
	"whorl/patterns/stitch"
	"whorl/symbols"
)

// start draws the chain that begins a round: in the place of the first stitch
// when it counts as that; as a leg of a group that is completed at the join; or
// small, in the gap before the first stitch.
func (d *roundArtist) start(i int) *scene.Group {
	c, s := d.c, &d.c.round.Stitches[i]
	if s.Chains < 1 {
		return nil
	}
	g := d.startGroup(s)
	kind := "beg ch-" + strconv.Itoa(s.Chains)
	var an symbols.Anchors
	switch next := i + 1; {
	case s.Counts:
		g = d.group(i, d.name(s))
		g.Title = c.label() + ", beginning ch " + strconv.Itoa(s.Chains)
		if s.As.Is() {
			g.Title += " (counts as " + s.As.Name(d.o.Terms) + ")"
		}
		an = d.anchors(i)
		// Ovals are wide at the foot, where a fan or a ring is narrow.
		if an.Shared {
			// A stem, and the ovals where the fan has opened.
			an.Width *= 0.6
			an.Stem = 0.3
			if d.o.Large {
				an.Width *= 0.7 // heavier lines
			}
			if room := d.fanRoom(i, an.Base[0]); room < d.unit {
				an.Width, an.Stem = min(an.Width, 0.6*room), 0.45
			}
		} else if foot := d.meanFoot(c, i); foot < c.radius[i] && !(d.rows && d.flat) {
			an.Width *= (foot + (c.radius[i]-foot)/float64(2*s.Chains)) / c.radius[i]
		}
	case next < len(c.round.Stitches) && c.round.Stitches[next].Role == fabric.FirstHalf && len(s.On) > 0 && !d.stoodOn(s.On[0], next):
		an = d.anchors(next)
		foot, angle := d.foot(c, i, s.On[0])
		_, up := d.frame(c, angle, 1)
		an.Base, an.Rise = []canvas.Point{foot}, []canvas.Point{up}
	default:
		return nil // drawn when the others are
	}
	d.slimmedStart(i, &an)
	d.paint(g, d.slenderStart(i, s.Chains, an))
	g.Data = append(g.Data, scene.Attr{Name: "kind", Value: kind}, scene.Attr{Name: "top", Points: []canvas.Point{an.Top}},
		scene.Attr{Name: "base", Points: []canvas.Point{an.Base[0]}})
	d.extras(g, i)
	return g
}

// slenderStart is a beginning chain that is drawn more slender, and begun farther up,
// where it touches the stitches of the round below beside the one that it stands on.
func (d *roundArtist) slenderStart(i, chains int, an symbols.Anchors) symbols.Drawing {
	art := symbols.Start(chains, an, d.pen)
	if d.below == nil || art.Strokes == nil {
		return art
	}
	on := d.c.round.Stitches[i].On
	near := d.below.bySeam(nil, func(j int) bool {
		return len(on) > 0 && on[0].At == fabric.Ref{Round: d.below.c.index, Stitch: j}
	})
	free := d.whiteAbout(art, near, -1)
	for range slenderSteps {
		if free > 0 {
			break
		}
		an.Width *= 0.75
		an.Stem = max(an.Stem, 0.3) + 0.07
		try := symbols.Start(chains, an, d.pen)
		if white := d.whiteAbout(try, near, free); white > free {
			art, free = try, white
		}
	}
	return art
}

// slenderSteps is in how many steps a beginning chain is drawn more slender.
const slenderSteps = 4

// fanRoom is how far the leg of stitch i is from its nearer neighbour's top, square to
// the leg, where both stand on one foot.
func (d *roundArtist) fanRoom(i int, foot canvas.Point) float64 {
	c := d.c
	n := len(c.order)
	leg := d.top(c, i).Sub(foot)
	room := math.Inf(1)
	for _, step := range [...]int{1, n - 1} {
		j := c.order[(c.rank[i]+step)%n]
		if other, _ := d.feet(c, j); other[0] == foot && leg.Length() > 0 {
			room = math.Min(room, math.Abs(leg.Norm(1).PerpDot(d.top(c, j).Sub(foot))))
		}
	}
	return room
}

func (d *roundArtist) startGroup(s *fabric.Stitch) *scene.Group {
	return &scene.Group{ID: d.prefix + "start", Title: d.c.label() + ", beginning ch " + strconv.Itoa(s.Chains)}
}

// stoodOn reports whether stitch i, or the half that completes it, stands on a
// place.
func (d *roundArtist) stoodOn(p fabric.Place, i int) bool {
	for _, j := range []int{i, d.c.half(i)} {
		if j < 0 {
			continue
		}
		for _, q := range d.c.round.Stitches[j].On {
			if d.key(q) == d.key(p) {
				return true
			}
		}
	}
	return false
}

// gap is the white between the last stitch of a round and the first, or between
// any two stitches that one without room lies between.
type gap struct {
	last, first   [2]canvas.Point // the legs nearest to it: foot and top
	centre, along canvas.Point    // of the chart; to the gap, where its sides say nothing
}

// flatCentre is how far below a chart its rounds have their centre where they lie
// flat, mm.
const flatCentre = 1e5

// gapAt is the gap that stitch i lies in.
func (d *roundArtist) gapAt(i int) gap {
	c := d.c
	last, first := i, i
	if len(c.order) > 0 {
		last, first = c.neighbours(i)
	}
	centre := d.centre
	if d.flat {
		centre.Y += flatCentre
	}
	if long := d.ovalLong(); long > 0 { // rounds begin in the end on the right
		if d.o.LeftHanded {
			long = -long
		}
		centre.X += long / 2
	}
	return gap{
		last:   [2]canvas.Point{d.nearestFoot(last, true), d.top(c, last)},
		first:  [2]canvas.Point{d.nearestFoot(first, false), d.top(c, first)},
		centre: centre,
		along:  d.point(c.theta[i], 1).Sub(centre),
	}
}

// sides are the points of the two legs at a share of their height.
func (g gap) sides(t float64) (a, b canvas.Point) {
	return g.last[0].Interpolate(g.last[1], t), g.first[0].Interpolate(g.first[1], t)
}

// mid is the middle of the gap, as far out as its sides are.
func (g gap) mid(t float64) canvas.Point {
	a, b := g.sides(t)
	a, b = a.Sub(g.centre), b.Sub(g.centre)
	way := a.Norm(1).Add(b.Norm(1))
	if way.Length() < 0.2 {
		way = g.along
	}
	return g.centre.Add(way.Norm((a.Length() + b.Length()) / 2))
}

// by is a point in the gap beside the first stitch: in the middle of a narrow
// gap, no farther than reach from the first stitch in a wide one.
func (g gap) by(t, reach float64) canvas.Point {
	if g.wide(t) <= 2*reach {
		return g.mid(t)
	}
	a, b := g.sides(t)
	return b.Add(a.Sub(b).Norm(reach))
}

// wide is how wide the gap is.
func (g gap) wide(t float64) float64 {
	a, b := g.sides(t)
	return b.Sub(a).Length()
}

func (g gap) tall() float64 { return max(g.mid(1).Sub(g.mid(0)).Length(), 0.1) }

// startInGap draws a beginning chain that does not count: upright in the gap
// before the first stitch, where it touches nothing.
func (d *roundArtist) startInGap(i int) *scene.Group {
	s := &d.c.round.Stitches[i]
	grp := d.startGroup(s)
	grp.Data = append(grp.Data, scene.Attr{Name: "kind", Value: "beg ch-" + strconv.Itoa(s.Chains)})
	if d.c.open {
		return d.startAtEdge(grp, i)
	}
	g := d.gapAt(i)
	near := d.nearSeam(g.mid(0.5), g.tall()+4*d.unit)
	var best symbols.Drawing
	clear := -1.0
	for _, try := range starts {
		art := symbols.Start(s.Chains, d.upright(g, i, try), d.pen)
		if art.Strokes == nil {
			continue
		}
		if free := d.whiteAbout(art, near, clear); free > clear {
			best, clear = art, free
		}
		if clear > leastWhite {
			break
		}
	}
	if clear <= leastWhite {
		best = d.aside(best, g, i, near)
	}
	d.paint(grp, best)
	return grp
}

// leastWhite is the white that small symbols keep about them, mm.
const leastWhite = 0.08

// whiteAbout is the white between a drawing and the strokes near it, mm; less than that,
// when it is under least.
func (d *roundArtist) whiteAbout(art symbols.Drawing, near []segment, least float64) float64 {
	free := math.Inf(1)
	flatten(art.Strokes, canvas.Identity, func(a, b canvas.Point) {
		stroke := segment{a: a, b: b, half: float32(d.pen.Line / 2)}
		for i := range near {
			if free <= least {
				return
			}
			n := &near[i]
			if !stroke.bounds().grown(free + 1e-3).meets(n.bounds()) {
				continue // farther off than the nearest so far
			}
			gap, _ := apart(stroke, *n)
			free = min(free, gap-float64(n.half)-d.pen.Line/2)
		}
	})
	return free
}

// aside moves a beginning chain that finds no room in its gap to the nearest white
// about it; it stays where it is when there is none within two stitches.
func (d *roundArtist) aside(art symbols.Drawing, g gap, i int, near []segment) symbols.Drawing {
	s := &d.c.round.Stitches[i]
	for _, m := range [...]manner{{0.7, 0, 1, 0.55}, {0.7, 0, 0.44, 0.4}} {
		an := d.upright(g, i, m)
		an.Width = max(an.Width, 0.5*d.unit)
		at := an
		for out := 0.1; out < 2; out += 0.1 {
			for turn := range 16 {
				move := canvas.Point{X: out * d.unit}.Rot(float64(turn)*math.Pi/8, canvas.Origin)
				at.Base = []canvas.Point{an.Base[0].Add(move)}
				at.Top = an.Top.Add(move)
				if moved := symbols.Start(s.Chains, at, d.pen); moved.Strokes != nil && d.whiteAbout(moved, near, leastWhite) > 2*leastWhite {
					return moved
				}
			}
		}
	}
	return art
}

// manner is one way to draw a beginning chain in a gap.
type manner struct {
	reach   float64 // from the first stitch, in units
	lift    float64 // off the round below, in units
	top     float64 // its upper end, as a share of the gap's height
	slender float64 // its width, as a share of what the gap has
}

// starts are the ways tried in turn: tall and full first.
var starts = func() (all []manner) {
	for _, slender := range []float64{0.7, 0.55, 0.4} {
		for _, top := range []float64{1, 0.44} {
			for _, lift := range []float64{0, 0.12, 0.25, 0.4} {
				for _, reach := range []float64{0.7, 0.55, 0.9} {
					all = append(all, manner{reach, lift, top, slender})
				}
			}
		}
	}
	return all
}()

// upright is the anchors of a beginning chain in a gap.
func (d *roundArtist) upright(g gap, i int, m manner) symbols.Anchors {
	tall := g.tall()
	top := min(m.top, (tall-0.48*d.unit-d.pen.Line)/tall) // under the dot of the join
	bottom := ((0.04+m.lift)*d.unit + d.pen.Line) / tall
	reach := m.reach * d.unit
	an := symbols.Anchors{Base: []canvas.Point{g.by(bottom, reach)}, Top: g.by(top, reach), Unit: d.unit * 0.8,
		Width: min(g.wide(bottom), g.wide(top), 2*reach) * m.slender}
	an.Along, an.Up = d.frame(d.c, d.c.theta[i], d.c.radius[i])
	if way := an.Top.Sub(an.Base[0]); way.Length() > 0.1 {
		an.Up = way.Norm(1)
	}
	if top <= bottom {
		an.Top = an.Base[0]
	}
	return an
}

// startAtEdge draws a turning chain that does not count: beside the first stitch of its
// row, as much farther off as it must be to touch nothing.
func (d *roundArtist) startAtEdge(grp *scene.Group, i int) *scene.Group {
	c, s := d.c, &d.c.round.Stitches[i]
	an := d.atEdge(i)
	foot, top := an.Base[0], an.Top
	near := d.nearSeam(top, 4*d.unit)
	away, _ := d.frame(c, c.theta[i], c.radius[i])
	art := symbols.Start(s.Chains, an, d.pen)
	for out := 0.1; out < 2 && d.whiteAbout(art, near, leastWhite) <= leastWhite; out += 0.1 {
		move := away.Mul(-out * d.unit)
		an.Base[0], an.Top = foot.Add(move), top.Add(move)
		art = symbols.Start(s.Chains, an, d.pen)
	}
	d.paint(grp, art)
	grp.Data = append(grp.Data, scene.Attr{Name: "top", Points: []canvas.Point{an.Top}})
	return grp
}

// nearSeam are the strokes at the seam that are within reach of a point.
func (d *roundArtist) nearSeam(at canvas.Point, reach float64) (near []segment) {
	for _, n := range d.atSeam() {
		if nearest(at, n).Sub(at).Length() < reach {
			near = append(near, n)
		}
	}
	return near
}

// atSeam are the strokes of this round's stitches and its neighbours' that lie by
// their seams.
func (d *roundArtist) atSeam() (near []segment) {
	for _, r := range d.neighbours() {
		near = r.bySeam(near, nil)
	}
	if d.below != nil && d.below.below != nil && (d.below.c.arched() || slices.ContainsFunc(d.c.round.Stitches, func(s fabric.Stitch) bool {
		return s.Role == fabric.Worked && len(s.On) > 0 && s.On[0].At.Round < d.below.c.index && s.On[0].Into != stitch.Ring && s.On[0].Into != stitch.RowEnd
	})) {
		near = d.below.below.bySeam(near, nil) // behind which this round is worked, or whose loops stand up to it
	}
	if d.below == nil {
		near = append(near, d.foundation...)
	}
	return near
}

// bySeam adds the strokes of this round's stitches that lie by the seam, without those
// that are to be left out.
func (d *roundArtist) bySeam(near []segment, without func(i int) bool) []segment {
	const reach = 16 // stitches to each side
	k := scene.Plain
	k.Stroke, k.Line = ink, d.pen.Line
	n := len(d.groups)
	for j, grp := range d.groups {
		if grp != nil && (j < reach || j >= n-reach) && (without == nil || !without(j)) {
			near = segments(grp, k, 0, near)
		}
	}
	return near
}

// join draws the slip stitch that closes the round: its dot lies in the gap at
// the seam, as near the top as the strokes beside it leave it room.
func (d *roundArtist) join(i int) *scene.Group {
	grp := &scene.Group{ID: d.unique(d.prefix + "join"), Title: d.c.label() + ", join"}
	if d.c.rank[i] >= 0 {
		return d.tallJoin(grp, i)
	}
	g := d.gapAt(i)
	radius := 0.14 * d.unit
	need := radius + d.pen.Line/2 + 0.15
	at, room := d.clearest(g, need)
	if room < radius+d.pen.Line/2 {
		if moved := d.clearNear(at, need); moved != at {
			at, room = moved, need
		}
	}
	an := symbols.Anchors{Top: at, Unit: d.unit, Width: max(2.2*(room-d.pen.Line/2-0.1), 0.3)}
	an.Along, an.Up = d.frame(d.c, d.c.theta[i], d.c.radius[i])
	d.paint(grp, symbols.Join(an, d.pen))
	grp.Data = []scene.Attr{{Name: "kind", Value: "join"}, {Name: "top", Points: []canvas.Point{d.top(d.c, i)}}}
	return grp
}

// leastUp is how far up in its gap a join is, as a share, at least.
const leastUp = 0.3

// clearest is the point in a gap, highest up and nearest its middle, that is
// at least room away from every stroke at the seam; or the one farthest away
// when none is. It tells how far.
func (d *roundArtist) clearest(g gap, room float64) (best canvas.Point, clear float64) {
	near := d.atSeam()
	clear = -1
	for t := max(1-room/g.tall(), leastUp); t >= leastUp; t -= 0.03 { // a round of slip stitches is low
		for _, side := range [...]float64{0, -0.1, 0.1, -0.2, 0.2, -0.3, 0.3} {
			a, b := g.sides(t)
			p := g.by(t, 0.55*d.unit).Add(b.Sub(a).Norm(min(g.wide(t), 2*d.unit) * side))
			free := math.Inf(1)
			for _, s := range near {
				free = min(free, nearest(p, s).Sub(p).Length())
			}
			if free > clear+1e-9 {
				best, clear = p, free
			}
			if clear >= room {
				return best, clear
			}
		}
	}
	return best, clear
}

// atEdge is the anchors of a turning chain that does not count: upright beside
// the first stitch of its row.
func (d *roundArtist) atEdge(i int) symbols.Anchors {
	c := d.c
	beside := i
	if len(c.order) > 0 {
		beside = c.order[0]
		if c.reversed {
			beside = c.order[len(c.order)-1]
		}
	}
	foot, top := d.meanFoot(c, beside), d.topRadius(c, beside)
	if top-foot < d.unit/2 {
		top = foot + d.unit/2
	}
	an := symbols.Anchors{Base: []canvas.Point{d.point(c.theta[i], foot)}, Top: d.point(c.theta[i], top), Unit: d.unit, Width: d.unit}
	an.Along, an.Up = d.frame(c, c.theta[i], top)
	return an
}
