// Package shaping says and draws what shape a piece takes: the shaping sheet of
// one part worked in the round. It shows the settled profile to scale on a plain dummy
// of the head, how far every round is stretched or slack, the stitches of every
// round, a plan of the increases and decreases, and what is to be said of them
// in words.
package shaping

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"whorl/chart"
	"whorl/chart/scene"
	"whorl/geometry"
	"whorl/patterns/fabric"
	"whorl/patterns/stitch"
)

// Options say which part is drawn and what is written on the sheet.
type Options struct {
	Title  string // of the pattern
	Credit string // one line at the foot of the page
	// Facts are lines under the title, such as the finished measurements.
	Facts []string
	Part  int // index of the part
	Paper chart.Paper
	// Head is the circumference of the head behind the profile, in
	// millimetres; 0 draws none.
	Head float64
}

// Sheet is the shaping sheet of one part worked in the round, as one page.
func Sheet(f *fabric.Fabric, form *geometry.Form, o Options) (*scene.Scene, error) {
	p, err := newPiece(f, form, o.Part)
	if err != nil {
		return nil, err
	}
	s := &sheet{o: o, piece: p, marks: p.marks(), what: "Shaping"}
	s.width, s.height = o.Paper.Size()
	s.page()
	return s.scene(), nil
}

// scene is the finished page.
func (s *sheet) scene() *scene.Scene {
	return &scene.Scene{Width: s.width, Height: s.height, Title: s.name(), Alt: s.alt(), Desc: s.describe(), Author: s.o.Credit,
		Paper: scene.RGB(0xffffff), Root: s.root}
}

// piece is the part that is drawn, from the crown to the brim.
type piece struct {
	size   string
	part   *fabric.Part
	form   *geometry.PartForm
	rounds []course
	// start is the edge that the first round worked grows from.
	start     node
	brimFirst bool // worked from the brim to the crown
	// oval is set when it is worked around both sides of a chain.
	oval bool
	// strip is a brim worked in rows that the part is picked up along: its
	// length and its width, and its name.
	strip, stripWidth float64
	stripName         string
}

// node is a point of the meridian, in millimetres of the piece: the distance
// from the axis, and that along it from where the part begins.
type node struct{ r, z float64 }

// course is one round, in the order of working.
type course struct {
	index int
	round *fabric.Round
	form  *geometry.RoundForm
	// change is how many stitches it gains, chains among them.
	change int
	// strain is how far its edge is stretched, above 0, or slack beyond what
	// chains and corners leave slack by themselves.
	strain float64
}

func newPiece(f *fabric.Fabric, form *geometry.Form, part int) (*piece, error) {
	if f == nil || form == nil || len(form.Parts) != len(f.Parts) {
		return nil, fmt.Errorf("there is no measured fabric to draw")
	}
	if part < 0 || part >= len(f.Parts) {
		return nil, fmt.Errorf("there is no part %d to draw; the pattern has %d", part+1, len(f.Parts))
	}
	p := &piece{size: f.Size, part: f.Parts[part], form: form.Parts[part]}
	if p.part.Worked == fabric.InRows {
		return nil, fmt.Errorf("%s is worked in rows; shaping is drawn of a part worked in the round", p.part.Name)
	}
	if p.form == nil || len(p.form.Rounds) != len(p.part.Rounds) {
		return nil, fmt.Errorf("%s has not been measured", p.part.Name)
	}
	free := geometry.Slacks(p.part, p.form.Rounds)
	for i, r := range p.part.Rounds {
		m := &p.form.Rounds[i]
		if len(m.Tops) != len(r.Stitches) || len(m.Widths) != len(r.Stitches) {
			return nil, fmt.Errorf("%s has not been measured", r.Label)
		}
		if r.Number == 0 || r.Carried || r.Row || m.Circumference <= 0 {
			continue
		}
		if len(p.rounds) == 0 && i > 0 {
			p.start = node{p.form.Rounds[i-1].R, p.form.Rounds[i-1].Z}
		}
		strain := m.Strain
		if strain < 0 {
			strain = math.Min(0, strain+free[i])
		}
		p.rounds = append(p.rounds, course{index: i, round: r, form: m, change: p.change(i), strain: strain})
	}
	if len(p.part.Rounds) > 1 {
		p.oval = slices.ContainsFunc(p.part.Rounds[1].Stitches, func(s fabric.Stitch) bool {
			return slices.ContainsFunc(s.On, func(on fabric.Place) bool { return on.Into == stitch.Underside })
		})
	}
	if len(p.rounds) == 0 {
		return nil, fmt.Errorf("%s has no rounds to draw", p.part.Name)
	}
	if first := p.rounds[0]; first.index == 0 {
		p.start = node{r: first.form.R}
		if first.form.Flatness != 0 {
			p.start.r = 0 // a ring of its own
		}
	}
	done, err := geometry.Finish(f, form)
	if err != nil {
		return nil, err
	}
	p.brimFirst = !done.Pieces[part].CrownFirst
	if from := p.part.From; from >= 0 && from < len(done.Pieces) && done.Pieces[from].Rows {
		p.strip, p.stripWidth, p.stripName = done.Pieces[from].Length, done.Pieces[from].Width, f.Parts[from].Name
	}
	return p, nil
}

// change is how many stitches round i gains over the one below.
func (p *piece) change(i int) int {
	r := p.part.Rounds[i]
	n := geometry.Places(r)
	if i > 0 && p.part.Rounds[i-1].Count() > 0 {
		return n - geometry.Places(p.part.Rounds[i-1])
	}
	if p.form.Rounds[i].Flatness > 0 {
		return n // out of a ring
	}
	return 0 // on a chain or an edge
}

// sheet is the page being made.
type sheet struct {
	o             Options
	piece         *piece
	marks         [][]mark // of every round of the piece
	first, last   int      // the rounds that the plan shows
	what          string   // "Shaping" or "Form"
	width, height float64
	root          scene.Group
}

func (s *sheet) name() string {
	l := []string{s.what}
	if s.o.Title != "" {
		l = append(l, "of "+s.o.Title)
	}
	text := strings.Join(l, " ")
	if s.piece.part.Name != "" {
		text += ", " + s.piece.part.Name
	}
	if s.piece.size != "" {
		text += ", size " + s.piece.size
	}
	return text
}

// way is how the piece is worked, in words: those of a hat when it is made for a
// head.
func (s *sheet) way() string {
	switch hat := s.o.Head > 0; {
	case hat && s.piece.brimFirst:
		return "worked from the brim up"
	case hat:
		return "worked from the crown down"
	case s.piece.brimFirst:
		return "worked towards the centre"
	}
	return "worked from the centre out"
}

// alt is the sheet in a sentence or two, to stand in its place.
func (s *sheet) alt() string {
	text := "Shaping sheet"
	if s.what == "Form" {
		text = "View of the settled form"
	}
	text += chart.Of(s.piece.part.Name, s.o.Title, s.piece.size)
	if text += ", " + s.way(); s.what != "Form" {
		text += ": its profile over the stitches of every round, and a plan of the increases and decreases"
	}
	text += "."
	if shape := Shape(s.piece.part, s.piece.form); shape != "" {
		text += " " + shape
	}
	return text
}

// describe is the sheet in words, for those who cannot see it.
func (s *sheet) describe() string {
	l := append([]string{s.alt()}, s.o.Facts...)
	return strings.Join(append(l, Findings(s.piece.part, s.piece.form)...), " ")
}
