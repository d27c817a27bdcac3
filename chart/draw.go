package chart

import (
	"strconv"
	"strings"

	"github.com/tdewolff/canvas"

	"whorl/chart/scene"
	"whorl/patterns/fabric"
	"whorl/patterns/stitch"
	"whorl/symbols"
)

// Colours of the picture. Both round colours have a contrast of over 4.5:1 on
// white (WCAG 2.2, 1.4.3), and one is much lighter than the other, so that they
// are told apart in grey as well. What only leads the eye keeps 3:1 (1.4.11).
var (
	ink    = scene.RGB(0x1c1b22)
	second = scene.RGB(0xc2451e)
	grey   = scene.RGB(0x888888)
	pale   = scene.RGB(0x949494) // for what is only there to lead the eye
	words  = scene.RGB(0x4a4a4a)
	none   = scene.Colour{}
)

// artist draws a work that has been laid out.
type artist struct {
	*work
	pen    symbols.Pen
	shapes map[string]*scene.Shape
	ids    map[string]bool
	// sought are the places other than tops and spaces that drawn stitches
	// stand on.
	sought     map[fabric.Place]bool
	strung     map[int][]canvas.Point
	found      map[sign]bool // the signs of reading that have found a place
	chainW     float64       // room of the narrowest chain
	chainMost  float64       // and of the widest, in the key
	foundation []segment     // the strokes of what the first round stands on
	drawn      []*roundArtist
	crossings  int       // how often the line of numbers changes sides
	ahead      []*course // that have their number ahead of the seam
	cramped    []*course // that have a sign of the yarn off its lane
}

func newArtist(w *work) *artist {
	a := &artist{work: w, shapes: map[string]*scene.Shape{}, ids: map[string]bool{},
		sought: map[fabric.Place]bool{}, strung: w.strungOn(), found: map[sign]bool{}}
	a.pen = symbols.Pen{Line: w.o.line(w.unit), Cross: w.o.Cross}
	a.chainW = w.unit
	for _, c := range w.courses[w.lo : w.last+1] {
		for i := range c.round.Stitches {
			s := &c.round.Stitches[i]
			if s.IsChain() && c.rank[i] >= 0 {
				a.chainW = min(a.chainW, w.chainRoom(c, i))
			}
			for _, p := range s.On {
				switch {
				case p.Into == stitch.Between:
					a.sought[fabric.Place{Into: stitch.Between, At: p.At}] = true
				default:
					if d := w.at(p.At); d != nil && p.Into != stitch.Space && p.Into != stitch.RowEnd &&
						d.round.Stitches[p.At.Stitch].IsChain() {
						a.sought[fabric.Place{At: p.At}] = true
					}
				}
			}
		}
	}
	return a
}

// rounds draws every round, from the first worked to the last.
func (a *artist) rounds() []scene.Node {
	var nodes []scene.Node
	if g := a.ground(); g != nil {
		nodes = append(nodes, g)
		a.foundation = segments(g, scene.Plain, 0, nil)
	}
	var below *roundArtist
	for k, c := range a.courses[a.lo : a.last+1] {
		d := a.round(c, a.colourOf(k), below)
		if below != nil {
			below.above = d
		}
		below = d
		a.drawn = append(a.drawn, d)
	}
	for _, d := range a.drawn {
		d.breakBehind()
	}
	for _, d := range a.drawn {
		d.small()
		for i, e := range d.groups {
			if e != nil {
				if d.c.cutOf(i) == beside {
					e.Style.Stroke = &pale
				}
				d.whole.Add(e)
			}
		}
		nodes = append(nodes, d.whole)
	}
	return nodes
}

// second is the colour of every other round.
func (a *artist) second() *scene.Colour {
	if a.o.Black {
		return &ink
	}
	return &second
}

// unique is the name itself the first time, and the name with a letter after it
// when it is taken.
func (a *artist) unique(name string) string {
	n := name
	for k := 2; a.ids[n]; k++ {
		n = name + "-" + strconv.Itoa(k)
	}
	a.ids[n] = true
	return n
}

// round draws one round on that below it, nil for none: a group, and a group for each
// stitch in it but the small ones, which are drawn last.
func (a *artist) round(c *course, colour *scene.Colour, below *roundArtist) *roundArtist {
	line := a.pen.Line
	number := strconv.Itoa(c.round.Number)
	name := "rnd"
	if a.rows {
		name = "row"
	}
	g := &scene.Group{ID: a.unique(name + number), Title: c.label(),
		Data: []scene.Attr{{Name: "round", Value: number}}}
	g.Style = scene.Style{Stroke: colour, Line: &line}
	if c.round.Colour != "" {
		g.Data = append(g.Data, scene.Attr{Name: "yarn", Value: c.round.Colour})
	}
	if c.fold > 1 && c.cuts == nil {
		g.Data = append(g.Data, scene.Attr{Name: "repeats", Value: strconv.Itoa(c.fold)})
	}
	d := &roundArtist{artist: a, c: c, colour: colour, whole: g, below: below,
		prefix: "r" + strings.TrimPrefix(g.ID, name), run: map[int]int{}}
	for k, sp := range c.round.Spaces {
		for i, n := sp.From, len(c.round.Stitches); n > 0 && i != sp.To && i < sp.From+n; i++ {
			d.run[i%n] = k + 1
		}
	}
	d.groups = make([]*scene.Group, len(c.round.Stitches))
	for i := range c.round.Stitches {
		switch g := d.inked(i, d.stitch); {
		case g == nil, c.cutOf(i) == left: // but it has been counted
		case c.cutOf(i) == beside:
			d.groups[i] = shade(g)
		default:
			d.groups[i] = g
		}
	}
	d.paintRuns()
	return d
}

// small draws what begins, moves the beginning of and closes the round, where the
// stitches of this round and its neighbours leave it room.
func (d *roundArtist) small() {
	stitches := d.c.round.Stitches
	for i := range stitches {
		if stitches[i].Role == fabric.Join && d.c.rank[i] >= 0 {
			d.groups[i] = d.inked(i, d.join)
		}
	}
	for i := range stitches {
		if s := &stitches[i]; d.groups[i] == nil && s.Role == fabric.Start && s.Chains > 0 {
			d.groups[i] = d.inked(i, d.startInGap)
		}
	}
	for i := range stitches {
		switch s := &stitches[i]; {
		case s.Role == fabric.Travel:
			d.groups[i] = d.inked(i, d.travel)
		case s.Role == fabric.Worked && s.Kind.Base == stitch.Slip && d.groups[i] != nil && len(s.On) > 0 && d.sharesRounds(s.On[0]):
			d.moveDot(d.groups[i])
		}
	}
	for i := range stitches {
		if stitches[i].Role == fabric.Join && d.groups[i] == nil {
			d.groups[i] = d.inked(i, d.join)
		}
	}
}

// shade makes a stitch one that lies beside what the chart shows: it keeps its
// places, for others to stand on, and is paler.
func shade(g *scene.Group) *scene.Group {
	var data []scene.Attr
	for _, d := range g.Data {
		switch d.Name {
		case "stitch":
			continue
		case "base":
			d.Name = "foot" // it may stand on what is not drawn
		}
		data = append(data, d)
	}
	g.Data = append(data, scene.Attr{Name: "beside", Value: "true"})
	for _, n := range g.Nodes {
		if p, ok := n.(*scene.Path); ok && p.Style.Fill != nil {
			p.Style.Fill = &pale
		}
	}
	return g
}

// roundArtist draws the stitches of one round.
type roundArtist struct {
	*artist
	c             *course
	colour        *scene.Colour
	whole         *scene.Group // the group of the round
	below, above  *roundArtist // nil where there is none
	prefix        string
	run           map[int]int // 1 + the run of chains that a chain is in
	runs          []chainRun
	drawn         map[int]bool
	stands        []stand        // of every stitch, see crosses
	groups        []*scene.Group // of every stitch, nil for those within another
	counted       int
	loose, spaces int // stitches that do not count, and runs of chains, so far
}

// stitch draws the group of stitch i, nil when it is part of an earlier one.
func (d *roundArtist) stitch(i int) *scene.Group {
	s := &d.c.round.Stitches[i]
	switch {
	case s.Role == fabric.Start:
		return d.start(i)
	case s.Role == fabric.Join, s.Role == fabric.Travel:
		return nil // drawn last
	case s.IsChain() && len(s.On) == 0 && s.Kind.Shape == stitch.Plain:
		if k := d.run[i]; k > 0 {
			return d.space(k)
		}
	}
	g := d.group(i, d.name(s))
	an := d.anchors(i)
	if s.IsChain() {
		an.Width, an.Base = d.runRoom([]int{i}), nil
	}
	var in stitch.Into
	if len(s.On) > 0 {
		in = s.On[0].Into
	}
	in = shown(in, d.c.round)
	art := symbols.Drawing{}
	places := an.Base
	an.Base = d.hookAside(i, in, an)
	if len(places) == 1 && an.Base[0] != places[0] { // a hook that reaches back to its place
		an.FootWidth = 1.6 * an.Base[0].Sub(places[0]).Length()
	}
	an.Again = d.onHook(i, in, an)
	mark := in
	if (in == stitch.FrontLoop || in == stitch.BackLoop) && d.again(i) {
		mark = stitch.Top // the place has its mark
	}
	switch own := d.o.own(s); {
	case own != nil:
		art = own.Draw(s.Kind, mark, an, d.pen)
	case s.Role == fabric.FirstHalf, s.Role == fabric.LastHalf:
		art = symbols.Half(s.Kind, mark, an, s.Role == fabric.FirstHalf, d.pen)
	default:
		art = symbols.Draw(s.Kind, mark, an, d.pen)
	}
	d.paint(g, art)
	g.Data = append(g.Data, scene.Attr{Name: "kind", Value: s.Kind.NameInto(in, d.o.Terms)},
		scene.Attr{Name: "top", Points: []canvas.Point{an.Top}})
	if len(s.On) > 0 {
		g.Data = append(g.Data, scene.Attr{Name: "base", Points: places})
	}
	d.extras(g, i)
	g.Title = d.c.label() + ", " + d.title(i)
	return g
}

// shown is what is seen from the right side of a stitch worked into a loop or
// round a post: on a wrong-side round it is the other one.
func shown(in stitch.Into, r *fabric.Round) stitch.Into {
	if !r.Wrong {
		return in
	}
	switch in {
	case stitch.FrontLoop:
		return stitch.BackLoop
	case stitch.BackLoop:
		return stitch.FrontLoop
	case stitch.FrontPost:
		return stitch.BackPost
	case stitch.BackPost:
		return stitch.FrontPost
	}
	return in
}

// name is the number of a stitch within its round, as the designer counts, or a
// letter and a number for what does not count.
func (d *roundArtist) name(s *fabric.Stitch) string {
	if s.Counts {
		d.counted++
		return strconv.Itoa(d.counted)
	}
	d.loose++
	return "x" + strconv.Itoa(d.loose)
}

// group begins the group of stitch i. The number after the s is that of the
// stitch as the designer counts.
func (d *roundArtist) group(i int, name string) *scene.Group {
	g := &scene.Group{}
	if d.c.round.Stitches[i].Counts {
		g.ID = d.prefix + "s" + name
		g.Data = append(g.Data, scene.Attr{Name: "stitch", Value: name})
		if r := d.c.round; r.Stitches[i].Colour != r.Colour {
			g.Data = append(g.Data, scene.Attr{Name: "yarn", Value: r.Stitches[i].Colour})
		}
	} else {
		g.ID = d.prefix + name
	}
	return g
}

// picotWidth is how wide a picot is at least, in units.
const picotWidth = 0.9

// anchors are the points that the symbol of stitch i reaches.
func (d *roundArtist) anchors(i int) symbols.Anchors {
	c := d.c
	an := symbols.Anchors{Top: d.top(c, i), Unit: d.unit, Width: d.width(c, i), Shared: d.shares(i)}
	an.Base, an.Rise = d.feet(c, i)
	if c.round.Stitches[i].Kind.Shape == stitch.Picot {
		an.Width = max(an.Width, picotWidth*d.unit) // it stands out over its neighbours
	}
	an.Crossed = d.isCrossed(i)
	an.FootWidth = d.footWidth(i, an.Base)
	if c.round.Stitches[i].Kind.Base == stitch.Single && !(d.rows && d.flat) {
		// Its arms are half way down, where legs that spread are closer.
		if foot := d.meanFoot(c, i); foot < c.radius[i] {
			an.Width *= (foot + c.radius[i]) / 2 / c.radius[i]
		}
	}
	an.Along, an.Up = d.frame(c, c.theta[i], c.radius[i])
	an.Along, an.Up = d.tilted(c, i, an.Along, an.Up)
	an.Width = d.barRoom(i, an.Top, an.Width)
	d.slimmed(i, &an)
	return an
}

// extras adds the data of places on a stitch beside its top.
func (d *roundArtist) extras(g *scene.Group, i int) {
	at := fabric.Ref{Round: d.c.index, Stitch: i}
	if p := (fabric.Place{Into: stitch.Between, At: at}); d.sought[p] {
		a, _ := d.angle(p)
		pt := d.point(a, (d.topRadius(d.c, i)+d.topRadius(d.c, d.c.before(i)))/2)
		g.Data = append(g.Data, scene.Attr{Name: "between", Points: []canvas.Point{pt}})
	}
}

// paint adds a drawing to a group. Marks become uses of one shared shape.
func (d *roundArtist) paint(g *scene.Group, art symbols.Drawing) { d.artist.paint(g, art, d.colour) }

func (a *artist) paint(g *scene.Group, art symbols.Drawing, colour *scene.Colour) {
	if art.Strokes != nil && !art.Strokes.Empty() {
		g.Add(&scene.Path{D: art.Strokes})
	}
	if art.Solid != nil && !art.Solid.Empty() {
		g.Add(&scene.Path{D: art.Solid, Style: scene.Style{Fill: colour, Stroke: &none}})
	}
	if m := art.Mark; m != nil {
		shape, ok := a.shapes[m.Name]
		if !ok {
			shape = &scene.Shape{ID: m.Name, Solid: m.Solid, D: m.Path}
			a.shapes[m.Name] = shape
		}
		g.Add(&scene.Use{Shape: shape, X: m.At.X, Y: m.At.Y, Angle: m.Angle})
	}
}
