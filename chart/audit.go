package chart

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"github.com/tdewolff/canvas"

	"whorl/chart/scene"
)

// Report is what an audit of a finished picture found. Everything in it is
// measured from the picture itself, its strokes and its data, and knows nothing
// of how it was laid out.
type Report struct {
	// Stitches is how many groups of symbols were looked at.
	Stitches int
	// Overlaps are strokes of two things, stitches or signs or symbols of the
	// key, that touch away from a place that the two share.
	Overlaps []Clash
	// Texts are texts with a stroke, another text or the page's edge in them.
	Texts []Clash
	// Astray are legs that do not end on the place that they are worked into,
	// and lines that are broken where nothing crosses them.
	Astray []string
	// Fans are fans of three stitches or more in one place whose gaps differ
	// by more than a third.
	Fans []string
	// Leaning are stitches whose leg leans more than MostLean from square to the line
	// of the places on both sides of it; of stitches in one place, all together, and of
	// crossed ones none.
	Leaning []string
	// Flat are the legs of two stitches worked together that lean more than MostLean from
	// square to that line, however upright the two are as one.
	Flat []string
	// Stretch is how much longer the legs of one kind are in one round than in another, on
	// the whole, where that is most: 1 for all alike.
	Stretch float64
	// Turn is the largest difference in degrees between a repeat and the one
	// before it turned by its share of the circle.
	Turn float64
}

// MostTurn is how far repeats may be from congruent, and MostLean how far a leg may lean,
// in degrees.
const (
	MostTurn = 0.1
	MostLean = 40.0
)

// Clean reports whether the picture is fit to print: nothing touches, every leg
// is on its place and repeats are congruent. An uneven fan or a leg that leans or lies flat is
// not held against it.
func (r *Report) Clean() bool {
	return len(r.Overlaps) == 0 && len(r.Texts) == 0 && len(r.Astray) == 0 && r.Turn <= MostTurn
}

// Clash is two things that touch, named by their groups, and where.
type Clash struct {
	A, B string
	At   canvas.Point
}

func (c Clash) String() string {
	return fmt.Sprintf("%s and %s at %.1f, %.1f", c.A, c.B, c.At.X, c.At.Y)
}

// What the audit lets pass, mm.
const (
	legSlack = 0.05
	// How far from a shared place strokes may lie on one another, in the
	// picture's units, and at least in mm.
	mergeReach, mergeLeast = 0.25, 0.7
	touchSlack             = 0.02
	edgeLeast              = 5.0
)

// subject is one drawn thing, as the picture has it: a stitch, or a sign or a
// symbol of the key, which has no kind and stands on nothing.
type subject struct {
	name, kind   string
	tops, bases  []canvas.Point
	counted, run bool
	beside       bool   // not part of what is shown
	behind       string // the stitches that it passes behind, its line broken
	row          string // number of its round
}

// Audit looks a picture over.
func Audit(s *scene.Scene) *Report {
	a := newAuditor()
	a.walk(&s.Root, scene.Plain)
	for i := range a.subjects {
		if a.subjects[i].kind != "" {
			a.report.Stitches++
		}
	}
	a.grid = newGrid(a.segs)
	a.overlaps(-touchSlack)
	a.legs()
	a.breaks()
	a.words(s)
	a.stretch()
	for _, r := range a.rounds {
		a.fans(r)
		a.leans(r)
		a.repeats(r)
	}
	return a.report
}

type auditor struct {
	report   *Report
	subjects []subject
	segs     []segment
	grid     *grid // of them
	first    []int // index of each subject's first segment
	texts    []*scene.Text
	rounds   []auditRound
	owner    map[canvas.Point][]int32 // subjects by their tops
	centre   canvas.Point
	unit     float64
	cross    bool
	flat     bool   // in straight rows
	blocks   bool   // in blocks that are worked from corner to corner
	open     bool   // in rows that do not close
	row      string // the round that is being walked
}

func newAuditor() *auditor {
	return &auditor{report: &Report{}, owner: map[canvas.Point][]int32{}}
}

type auditRound struct{ from, to, fold int }

func (a *auditor) walk(g *scene.Group, k scene.Ink) {
	if datum(g, "ground") != "" {
		return // all else lies on it
	}
	if c := pointsOf(g, "centre"); len(c) == 1 {
		a.centre = c[0]
		a.unit, _ = strconv.ParseFloat(strings.TrimSuffix(datum(g, "unit"), "mm"), 64)
		a.cross = datum(g, "cross") != ""
		a.flat = datum(g, "rows") == "flat"
		a.blocks = datum(g, "rows") == "blocks"
		a.open = datum(g, "rows") != ""
	}
	if r := datum(g, "round"); r != "" {
		a.row = r
	}
	from := len(a.subjects)
	if draws(g) {
		a.subject(g, k)
	}
	k = k.With(g.Style)
	for _, n := range g.Nodes {
		switch n := n.(type) {
		case *scene.Group:
			a.walk(n, k)
		case *scene.Text:
			a.texts = append(a.texts, n)
		}
	}
	if datum(g, "round") != "" {
		fold, _ := strconv.Atoi(datum(g, "repeats"))
		a.rounds = append(a.rounds, auditRound{from, len(a.subjects), fold})
	}
}

// draws reports whether a group has strokes or shapes of its own.
func draws(g *scene.Group) bool {
	for _, n := range g.Nodes {
		switch n.(type) {
		case *scene.Path, *scene.Use:
			return true
		}
	}
	return false
}

func (a *auditor) subject(g *scene.Group, k scene.Ink) {
	n := int32(len(a.subjects))
	s := subject{name: cmp.Or(g.ID, g.Title), kind: datum(g, "kind"), row: a.row}
	s.tops = append(slices.Clone(pointsOf(g, "top")), pointsOf(g, "between")...)
	s.bases = pointsOf(g, "base")
	if f := pointsOf(g, "foot"); f != nil {
		s.bases, s.beside = f, true
	}
	s.behind = datum(g, "behind")
	s.counted = datum(g, "stitch") != ""
	s.run = strings.HasSuffix(s.kind, " sp")
	for _, t := range s.tops {
		a.owner[t] = append(a.owner[t], n)
	}
	a.first = append(a.first, len(a.segs))
	k = k.With(g.Style)
	for _, node := range g.Nodes {
		if _, ok := node.(*scene.Group); !ok {
			a.segs = segments(node, k, n, a.segs)
		}
	}
	a.subjects = append(a.subjects, s)
}

func datum(g *scene.Group, name string) string {
	for _, d := range g.Data {
		if d.Name == name {
			return d.Value
		}
	}
	return ""
}

// pointsOf is the datum of a name where it is places of the picture.
func pointsOf(g *scene.Group, name string) []canvas.Point {
	for _, d := range g.Data {
		if d.Name == name {
			return d.Points
		}
	}
	return nil
}

// overlaps looks for strokes of two stitches with less than so many mm of white between
// them.
func (a *auditor) overlaps(white float64) {
	seen := map[[2]int32]bool{}
	for _, cell := range a.grid.cells {
		for i, x := range cell {
			for _, y := range cell[i+1:] {
				p, q := &a.segs[x], &a.segs[y]
				if p.owner == q.owner {
					continue
				}
				pair := [2]int32{min(p.owner, q.owner), max(p.owner, q.owner)}
				if seen[pair] {
					continue
				}
				reach := float64(p.half+q.half) + white
				if p.beyond(q, reach) {
					continue
				}
				d, at := apart(*p, *q)
				if d >= reach || a.excused(pair, d, at) {
					continue
				}
				seen[pair] = true
				a.report.Overlaps = append(a.report.Overlaps, Clash{a.subjects[pair[0]].name, a.subjects[pair[1]].name, at})
			}
		}
	}
}

// excused reports whether two stitches may touch at a point: near a place they
// share, or side by side (but not across one another) on their way out of it.
func (a *auditor) excused(pair [2]int32, d float64, at canvas.Point) bool {
	p, q := &a.subjects[pair[0]], &a.subjects[pair[1]]
	shared := false
	check := func(xs, ys []canvas.Point, fan bool) bool {
		for _, x := range xs {
			for _, y := range ys {
				if x == y {
					shared = shared || fan
					if x.Sub(at).Length() <= math.Max(mergeReach*a.unit, mergeLeast) {
						return true
					}
				}
			}
		}
		return false
	}
	if check(p.tops, q.bases, false) || check(p.bases, q.tops, false) || check(p.bases, q.bases, true) || check(p.tops, q.tops, true) {
		return true
	}
	return shared && d > 1e-3
}

// crossed reports whether two stitches are worked across one another: their places
// are in the other order than their tops, as in a cable.
func (a *auditor) crossed(p, q *subject) bool {
	if len(p.bases) == 0 || len(q.bases) == 0 || len(p.tops) == 0 || len(q.tops) == 0 || p.row != q.row {
		return false
	}
	return turnOf(a.angle(p.tops[0]), a.angle(q.tops[0]))*turnOf(a.angle(p.bases[0]), a.angle(q.bases[0])) < 0
}

// legs looks for legs whose place is nobody's, and for strokes that do not
// reach their place.
func (a *auditor) legs() {
	for i := range a.subjects {
		s := &a.subjects[i]
		if s.kind == "" || strings.HasSuffix(s.kind, "sl st") || strings.HasSuffix(s.kind, "ss") || a.cross && strings.HasSuffix(s.kind, "c") {
			continue // a dot or a × has no leg
		}
		if s.beside {
			continue
		}
		end := len(a.segs)
		if i+1 < len(a.first) {
			end = a.first[i+1]
		}
		for _, b := range s.bases {
			if len(a.owner[b]) == 0 {
				a.report.Astray = append(a.report.Astray, fmt.Sprintf("%s stands at %.2f, %.2f, where there is no place", s.name, b.X, b.Y))
			}
			d := math.Inf(1)
			for _, seg := range a.segs[a.first[i]:end] {
				d = math.Min(d, nearest(b, seg).Sub(b).Length())
			}
			if d > legSlack && !(strings.Contains(s.kind, "P") && d < 1) {
				a.report.Astray = append(a.report.Astray, fmt.Sprintf("%s ends %.2f mm off its place", s.name, d))
			}
		}
	}
}

// breaks looks for lines broken where the stitch does not cross those that it is said
// to pass behind.
func (a *auditor) breaks() {
	named := map[string]*subject{}
	for i := range a.subjects {
		named[a.subjects[i].name] = &a.subjects[i]
	}
	for i := range a.subjects {
		s := &a.subjects[i]
		for _, name := range strings.Fields(s.behind) {
			if q := named[name]; q == nil || !a.crossed(s, q) {
				a.report.Astray = append(a.report.Astray, fmt.Sprintf("%s is broken behind %s, which it does not cross", s.name, name))
			}
		}
	}
}

// words looks for texts that something runs through.
func (a *auditor) words(s *scene.Scene) {
	page := box{edgeLeast, edgeLeast, s.Width - edgeLeast, s.Height - edgeLeast}
	for i, t := range a.texts {
		b := textBox(t)
		at := canvas.Point{X: b.x0, Y: b.y0}
		if b.x0 < page.x0 || b.x1 > page.x1 || b.y0 < page.y0 || b.y1 > page.y1 {
			a.report.Texts = append(a.report.Texts, Clash{t.String, "edge of the page", at})
		}
		if !a.grid.clear(b) {
			a.report.Texts = append(a.report.Texts, Clash{t.String, "a symbol", at})
		}
		for _, u := range a.texts[:i] {
			if b.meets(textBox(u)) {
				a.report.Texts = append(a.report.Texts, Clash{t.String, u.String, at})
			}
		}
	}
	for _, seg := range a.segs {
		if p := seg.a; p.X < page.x0 || p.X > page.x1 || p.Y < page.y0 || p.Y > page.y1 {
			a.report.Texts = append(a.report.Texts, Clash{a.subjects[seg.owner].name, "edge of the page", p})
			break
		}
	}
}

// angle is a point's direction from the centre, in degrees; in rows it is how
// far along it is, in mm.
func (a *auditor) angle(p canvas.Point) float64 {
	if a.flat {
		return p.X
	}
	return math.Atan2(a.centre.Y-p.Y, p.X-a.centre.X) * 180 / math.Pi
}

// turnOf is the angle b − a within [−180, 180).
func turnOf(a, b float64) float64 { return math.Mod(math.Mod(b-a+180, 360)+360, 360) - 180 }

// repeats measures how far the repeats of a round are from congruent.
func (a *auditor) repeats(r auditRound) {
	var at, slack []float64
	for _, s := range a.subjects[r.from:r.to] {
		if (s.counted || s.run) && len(s.tops) > 0 {
			at = append(at, a.angle(s.tops[0]))
			// The data are to a hundredth of a millimetre.
			slack = append(slack, 0.01/math.Max(s.tops[0].Sub(a.centre).Length(), 0.01)*180/math.Pi)
		}
	}
	if r.fold < 2 || len(at)%r.fold != 0 || len(at) == 0 {
		return
	}
	n := len(at) / r.fold
	way := 360 / float64(r.fold)
	if len(at) > 1 && turnOf(at[0], at[n%len(at)]) < 0 && r.fold > 2 {
		way = -way
	}
	for i := range at {
		d := math.Abs(turnOf(way, turnOf(at[i], at[(i+n)%len(at)])))
		a.report.Turn = math.Max(a.report.Turn, d-slack[i])
	}
}
