// Package schematic draws the pieces of a pattern in outline and to scale, with
// their finished measurements in every size.
package schematic

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"whorl/chart"
	"whorl/chart/scene"
	"whorl/geometry"
	"whorl/patterns/fabric"
)

// Size is one size of the pattern, worked and measured.
type Size struct {
	Fabric *fabric.Fabric
	Form   *geometry.Form
}

// Options say what is drawn and what is written on the sheet.
type Options struct {
	Title  string // of the pattern
	Credit string // one line at the foot of the page
	Paper  chart.Paper
	// Sheet keeps the whole height of the paper; otherwise the picture is no
	// longer than it needs.
	Sheet bool
	// Part is the name of the part to draw; "" draws all of them.
	Part string
	// Drawn is the index of the size whose outlines are drawn; the figures are
	// those of all of the sizes.
	Drawn int
	// Nested draws the outlines of all sizes one in another, and Drawn is the
	// largest.
	Nested bool
	// Hat is set when the piece is made for a head.
	Hat        bool
	LeftHanded bool
	// Joints are the places where edges meet, in the order of their letters. They
	// are shown where all parts are.
	Joints []Joint
}

// Sheet is the schematic of the pieces of a pattern as one page: each outline to
// scale in one size, its dimensions in all of the sizes that are given, in
// centimetres and in inches to the nearest quarter. Circumferences and depths
// are those of [geometry.Finish].
func Sheet(sizes []Size, o Options) (*scene.Scene, error) {
	s, err := newSheet(sizes, o)
	if err != nil {
		return nil, err
	}
	return s.scene()
}

// Figure is the schematic for a page of text on the same Paper, no higher than so
// many millimetres, without title, credit and the list of measurements; and what is
// to be said of how it is drawn.
func Figure(sizes []Size, o Options, height float64) (made *scene.Scene, note string, err error) {
	s, err := newSheet(sizes, o)
	if err != nil {
		return nil, "", err
	}
	s.figure = height
	made, err = s.scene()
	return made, strings.Join(s.notes(), " "), err
}

func (s *sheet) scene() (*scene.Scene, error) {
	if err := s.page(); err != nil {
		return nil, err
	}
	return &scene.Scene{Width: s.width, Height: s.height, Title: s.name(), Alt: s.alt(), Desc: s.describe(), Author: s.o.Credit,
		Paper: scene.RGB(0xffffff), Root: s.root}, nil
}

// Measurements are the finished measurements that the schematic lists: one value
// for each size, in millimetres, 0 where a size has none.
func Measurements(sizes []Size, o Options) ([]Fact, error) {
	s, err := newSheet(sizes, o)
	if err != nil {
		return nil, err
	}
	return s.facts, nil
}

// newSheet measures the sizes and chooses what is drawn of them.
func newSheet(sizes []Size, o Options) (*sheet, error) {
	s := &sheet{o: o}
	if len(sizes) == 0 || o.Drawn < 0 || o.Drawn >= len(sizes) {
		return nil, errors.New("there is no size to draw")
	}
	for _, z := range sizes {
		if z.Fabric == nil || z.Form == nil {
			return nil, errors.New("there is no measured fabric to draw")
		}
		done, err := geometry.Finish(z.Fabric, z.Form)
		if err != nil {
			return nil, err
		}
		if len(z.Fabric.Parts) != len(sizes[0].Fabric.Parts) {
			return nil, errors.New("the sizes do not have the same parts")
		}
		s.sizes = append(s.sizes, measured{z.Fabric, z.Form, done})
	}
	if err := s.choose(); err != nil {
		return nil, err
	}
	if o.Nested && len(s.sizes) > 1 {
		if err := s.nest(); err != nil {
			return nil, err
		}
	}
	return s, nil
}

// measured is a size with its finished measurements, in millimetres.
type measured struct {
	fabric *fabric.Fabric
	form   *geometry.Form
	done   *geometry.Finished
}

// sheet is the page being made.
type sheet struct {
	o             Options
	sizes         []measured
	views         []*view
	facts         []Fact
	width, height float64
	gathered      []string // sentences on joints that find no room under the views
	figure        float64  // the greatest height of a figure, 0 for a page of its own
	root          scene.Group
}

// Fact is a measurement of the finished piece: one value for each size, in
// millimetres, 0 where a size has none.
type Fact struct {
	Name   string
	Values []float64
}

// each is a measurement of every size.
func (s *sheet) each(of func(m *measured) float64) []float64 {
	l := make([]float64, len(s.sizes))
	for i := range s.sizes {
		l[i] = of(&s.sizes[i])
	}
	return l
}

// show adds a view; one that is called like another gets a number.
func (s *sheet) show(v *view) {
	name := v.id
	for k := 2; slices.ContainsFunc(s.views, func(w *view) bool { return w.id == v.id }); k++ {
		v.id = fmt.Sprintf("%s-%d", name, k)
	}
	s.views = append(s.views, v)
}

func (s *sheet) drawn() *measured { return &s.sizes[s.o.Drawn] }

func (s *sheet) name() string {
	text := "Schematic"
	if s.o.Title != "" {
		text += " of " + s.o.Title
	}
	if s.o.Part != "" {
		text += ", " + s.o.Part
	}
	if n := s.sizeNames(); n != "" {
		text += ", " + n
	}
	return text
}

// sizeNames are the sizes in the order of the figures: "Small (Medium, Large)".
func (s *sheet) sizeNames() string {
	var l []string
	for _, z := range s.sizes {
		l = append(l, z.fabric.Size)
	}
	if len(l) == 1 {
		if l[0] == "" {
			return ""
		}
		return "size " + l[0]
	}
	return "sizes " + l[0] + " (" + strings.Join(l[1:], ", ") + ")"
}

// alt is the sheet in a few sentences, to stand in its place: what is drawn, and
// the first measurements.
func (s *sheet) alt() string {
	var titles []string
	for _, v := range s.views {
		titles = append(titles, v.title)
	}
	how := ", to scale: "
	if s.o.Nested && len(s.sizes) > 1 {
		how = ", to scale, the outlines of all sizes one in another: "
	}
	l := []string{s.name() + how + strings.Join(titles, "; ") + "."}
	for _, f := range s.facts[:min(len(s.facts), 3)] {
		cm, in := figures(f.Values)
		l = append(l, fmt.Sprintf("%s: %s, %s.", f.Name, cm, in))
	}
	return strings.Join(l, " ")
}

// describe is the sheet in words, for those who cannot see it.
func (s *sheet) describe() string {
	l := []string{s.alt()}
	for _, f := range s.facts[min(len(s.facts), 3):] {
		cm, in := figures(f.Values)
		l = append(l, fmt.Sprintf("%s: %s, %s.", f.Name, cm, in))
	}
	l = append(l, relaxed)
	for _, v := range s.views {
		l = append(l, v.notes...) // which edges meet
	}
	return strings.Join(append(l, s.gathered...), " ")
}

const relaxed = "Measured flat, relaxed."
