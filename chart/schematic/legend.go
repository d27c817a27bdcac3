package schematic

import (
	"math"
	"strconv"
	"strings"

	"whorl/chart/scene"
	"whorl/chart/typeface"
)

// style is how an edge is drawn: apart from one another in one colour too.
func (k kind) style() scene.Style {
	switch k {
	case fold:
		return scene.Stroked(ink, 0.4, 4, 1.4, 0.4, 1.4)
	case seam:
		return scene.Stroked(ink, 0.7, 1.8, 1.5)
	case pickUp:
		return scene.Stroked(ink, 0.9, 0.01, 1.7)
	case draws:
		return scene.Stroked(ink, 0.35, 0.7, 0.9)
	case meets:
		return scene.Stroked(words, 0.2, 1.6, 1)
	case start:
		return scene.Stroked(work, 0.5, 1.2, 1.2)
	}
	return scene.Stroked(ink, outlined)
}

// arrow is the direction of work along a line: an open head, unlike those of
// the dimensions.
func arrow(g *scene.Group, l []point) {
	g.Add(&scene.Path{Style: scene.Stroked(work, 0.4), D: line(l...)})
	a, b := l[len(l)-2], l[len(l)-1]
	d := math.Atan2(b.Y-a.Y, b.X-a.X)
	wing := func(turn float64) point {
		return point{X: b.X - 2.4*math.Cos(d+turn), Y: b.Y - 2.4*math.Sin(d+turn)}
	}
	g.Add(&scene.Path{Style: scene.Stroked(work, 0.4), D: line(wing(0.5), b, wing(-0.5))})
}

// entry is a line of the legend.
type entry struct {
	kind kind
	way  bool
	meet bool // a letter
	text string
}

// legendEntries are what the views need explained.
func (s *sheet) legendEntries() (l []entry) {
	has := map[kind]bool{}
	way, lettered := false, false
	for _, v := range s.views {
		way = way || len(v.way) > 1
		for _, t := range v.tags {
			lettered = lettered || t.side == tagOn
		}
		for _, e := range v.edges {
			has[e.kind] = true
		}
	}
	if way {
		l = append(l, entry{way: true, text: "direction of work"})
	}
	for _, e := range []entry{{kind: pickUp, text: "stitches are picked up along this edge"}, {kind: seam, text: "ends that are joined"},
		{kind: fold, text: "fold"}, {kind: draws, text: "opening that is drawn closed"}, {kind: start, text: "chain that is worked around"}, {kind: meets, text: "edges that meet"}} {
		if has[e.kind] {
			l = append(l, e)
		}
	}
	if lettered {
		l = append(l, entry{meet: true, text: "edges with one letter meet"})
	}
	return l
}

// legend sets the entries with the last of them at y.
func (s *sheet) legend(l []entry, x, y float64) {
	g := &scene.Group{ID: "legend", Title: "Legend"}
	y -= float64(len(l)-1) * 4.6
	for _, e := range l {
		a, b := point{X: x, Y: y - 0.9}, point{X: x + 13, Y: y - 0.9}
		switch {
		case e.way:
			arrow(g, []point{a, b})
		case e.meet:
			(&tag{letter: "A", side: tagOn}).draw(g, point{X: (a.X + b.X) / 2, Y: a.Y})
		default:
			g.Add(&scene.Path{Style: e.kind.style(), D: line(a, b)})
		}
		g.Add(&scene.Text{X: hundredth(x + 16), Y: hundredth(y), Size: smallSize, Colour: words, String: e.text})
		y += 4.6
	}
	if len(l) > 0 {
		s.root.Add(g)
	}
}

// scaleBar draws the scale with its right end at x and its texts on y, in
// centimetres and in inches.
func (s *sheet) scaleBar(x, y, scale float64) {
	g := &scene.Group{ID: "scale", Title: "Scale"}
	cm, in := barLength(10, scale), barLength(25.4, scale)
	texts := []string{number(cm) + " cm", strings.Replace(number(in), "0.5", "½", 1) + " in"}
	lengths := []float64{10 * cm / scale, 25.4 * in / scale}
	wide := 0.0
	for i, t := range texts {
		wide = math.Max(wide, lengths[i]+2+typeface.Width(t, smallSize, false, false))
	}
	for i, t := range texts {
		l, at := lengths[i], y-4.6*float64(len(texts)-i)
		x0 := x - wide
		g.Add(&scene.Path{Style: scene.Stroked(ink, 0.3), D: line(point{X: x0, Y: at - 2}, point{X: x0, Y: at}, point{X: x0 + l, Y: at}, point{X: x0 + l, Y: at - 2})})
		g.Add(&scene.Text{X: hundredth(x0 + l + 2), Y: hundredth(at), Size: smallSize, Colour: words, String: t})
	}
	g.Add(&scene.Text{X: x, Y: hundredth(y), Size: smallSize, Align: scene.Right, Colour: words, String: "Scale 1 : " + number(scale) + ". " + relaxed})
	s.root.Add(g)
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

func number(v float64) string { return strconv.FormatFloat(math.Round(1000*v)/1000, 'f', -1, 64) }
