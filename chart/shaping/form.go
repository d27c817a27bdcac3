package shaping

import (
	"fmt"
	"math"
	"sort"
	"strconv"

	"whorl/chart/ring"
	"whorl/chart/scene"
	"whorl/geometry"
	"whorl/patterns/fabric"
)

// elevation is how far above the horizon an isometric view is taken from: the
// three axes are then foreshortened alike.
var elevation = math.Asin(1 / math.Sqrt(3))

// Form is a picture of the settled piece as a surface in isometric view, a quad
// for every stitch. What is slack lies in folds of the length that it has too
// much.
func Form(f *fabric.Fabric, form *geometry.Form, o Options) (*scene.Scene, error) {
	p, err := newPiece(f, form, o.Part)
	if err != nil {
		return nil, err
	}
	s := &sheet{o: o, piece: p, what: "Form"}
	s.width, s.height = o.Paper.Size()
	b, foot := s.frame()
	s.drawForm(b, f)
	s.root.Add(foot...)
	return s.scene(), nil
}

// quad is one stitch on the page.
type quad struct {
	corners []point
	depth   float64 // how near it is
	shade   float64 // 0 dark to 1 light
	inside  bool    // the inside of the piece is seen
	round   int     // index of the round, −1 for the strip
}

// view puts space on the page.
type view struct{ cx, cy, scale float64 }

func (v view) at(a space) point {
	sin, cos := math.Sincos(elevation)
	return point{X: v.cx + a.x/v.scale, Y: v.cy - (a.up*cos+a.y*sin)/v.scale}
}

func nearness(a space) float64 {
	sin, cos := math.Sincos(elevation)
	return a.up*sin - a.y*cos
}

// light comes over the viewer's left shoulder.
var light = space{-0.45, -0.55, 0.70}

// patch is a stitch in space: its lower edge as it is seen from outside, from
// left to right, and its upper. An edge has a corner for every seam of the
// other round that it meets.
type patch struct {
	lower, upper []space
	round        int
}

// patches are the stitches of the piece and of the strip under it.
func (p *piece) patches(f *fabric.Fabric) []patch {
	s := p.surface()
	var l []patch
	for i, seams := range s.seams {
		below, above := s.hoops[i], s.hoops[i+1]
		if !p.brimFirst {
			below, above = above, below // the outside stays in front
		}
		for k := range seams {
			from, to := seams[(k+len(seams)-1)%len(seams)], seams[k]
			if k == 0 {
				from -= ring.Turn
			}
			l = append(l, patch{below.along(from, to), above.along(from, to), i})
		}
	}
	return append(l, p.stripPatches(f, s.hoops[0].up)...)
}

// stripPatches are the stitches of the brim worked in rows, closed to a band
// under the piece.
func (p *piece) stripPatches(f *fabric.Fabric, top float64) []patch {
	if p.strip <= 0 || p.stripWidth <= 0 {
		return nil
	}
	rows, stitches := 0, 1
	for _, r := range f.Parts[p.part.From].Rounds {
		if r.Row && r.Number > 0 {
			rows++
			stitches = max(stitches, r.Count())
		}
	}
	var l []patch
	at := func(row, st int) space {
		below := p.stripWidth * float64(st) / float64(stitches)
		// Ribs: every second row lies back.
		h := hoop{r: p.stripRadius(below) * (1 - 0.012*float64(row%2)), up: top - below}
		return h.at(2 * math.Pi * float64(row%rows) / float64(rows))
	}
	for row := range rows {
		for st := range stitches {
			l = append(l, patch{[]space{at(row, st+1), at(row+1, st+1)}, []space{at(row, st), at(row+1, st)}, -1})
		}
	}
	return l
}

// drawForm draws the surface into a box, as large as it goes.
func (s *sheet) drawForm(b box, f *fabric.Fabric) {
	patches := s.piece.patches(f)
	unit := view{scale: 1}
	x0, x1, y0, y1 := math.Inf(1), math.Inf(-1), math.Inf(1), math.Inf(-1)
	for _, q := range patches {
		for _, c := range append(q.lower[:len(q.lower):len(q.lower)], q.upper...) {
			p := unit.at(c)
			x0, x1 = math.Min(x0, p.X), math.Max(x1, p.X)
			y0, y1 = math.Min(y0, p.Y), math.Max(y1, p.Y)
		}
	}
	need := math.Max((x1-x0)/(b.x1-b.x0), (y1-y0)/(b.y1-b.y0-12))
	v := view{scale: need}
	// The axes are shorter by √⅔ in this view.
	axes := math.Sqrt(2.0 / 3)
	for _, k := range scales {
		if k*axes >= need {
			v.scale = k * axes
			break
		}
	}
	v.cx = (b.x0+b.x1)/2 - (x0+x1)/2/v.scale
	v.cy = (b.y0+b.y1-12)/2 - (y0+y1)/2/v.scale
	g := &scene.Group{ID: "form", Title: s.name()}
	outline, width := scene.RGB(0x6b655c), 0.1
	g.Style = scene.Style{Stroke: &outline, Line: &width}
	for _, q := range quads(patches, v) {
		paint := yarn(q)
		path := &scene.Path{Style: scene.Style{Fill: &paint}, D: polygon(q.corners...)}
		g.Add(path)
	}
	s.root.Add(g)
	s.scaleNote(b, v.scale/axes)
}

// quads puts the patches on the page, the furthest first.
func quads(patches []patch, v view) []quad {
	l := make([]quad, len(patches))
	for i, p := range patches {
		q := &l[i]
		q.round = p.round
		for _, c := range p.lower {
			q.corners = append(q.corners, v.at(c))
		}
		for k := len(p.upper) - 1; k >= 0; k-- {
			q.corners = append(q.corners, v.at(p.upper[k]))
		}
		a, b, c, d := p.lower[0], p.lower[len(p.lower)-1], p.upper[0], p.upper[len(p.upper)-1]
		q.depth = (nearness(a) + nearness(b) + nearness(c) + nearness(d)) / 4
		n := b.minus(a).cross(c.minus(a))
		m := d.minus(c).cross(d.minus(b))
		n = space{n.x + m.x, n.y + m.y, n.up + m.up}
		if size := n.length(); size > 0 {
			q.shade = n.dot(light) / size / light.length()
		}
		sin, cos := math.Sincos(elevation)
		q.inside = n.dot(space{0, -cos, sin}) < 0
		if q.inside {
			q.shade = -q.shade
		}
		q.shade = math.Max(0, math.Min(1, 0.5+0.5*q.shade))
	}
	sort.SliceStable(l, func(i, j int) bool { return l[i].depth < l[j].depth })
	return l
}

// yarn is the colour of a stitch: by its light, darker inside, every second
// round a little darker.
func yarn(q quad) scene.Colour {
	const steps = 24
	t := math.Round(q.shade*steps) / steps
	t = 0.35 + 0.65*t
	if q.inside {
		t *= 0.62
	}
	if q.round%2 == 1 {
		t *= 0.94
	}
	at := func(c float64) uint8 { return uint8(math.Round(math.Min(255, c*t))) }
	return scene.Colour{R: at(240), G: at(224), B: at(198), Opaque: true}
}

// scaleNote says the scale of the view.
func (s *sheet) scaleNote(b box, scale float64) {
	text := fmt.Sprintf("Isometric view, one field a stitch; 1 : %s along the axes", decimal(scale))
	if p := s.piece; p.strip > 0 {
		text += ", on its " + p.stripName
	}
	s.root.Add(&scene.Text{X: b.x0, Y: hundredth(b.y1 - 5.5), Size: smallSize, Colour: words, String: text + "."})
	folds := 0
	for _, c := range s.piece.rounds {
		if c.strain < -showsSlack {
			folds++
		}
	}
	if folds > 0 {
		what := " rounds are"
		if folds == 1 {
			what = " round is"
		}
		s.root.Add(&scene.Text{X: b.x0, Y: hundredth(b.y1 - 1.5), Size: smallSize, Colour: words,
			String: strconv.Itoa(folds) + what + " slack; the folds have the length that is too much."})
	}
}
