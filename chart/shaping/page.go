package shaping

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"whorl/chart/scene"
	"whorl/chart/typeface"
	"whorl/geometry"
)

// Measures of the page, mm.
const (
	margin     = 14.0
	titleSize  = 6.0
	lineSize   = 3.2
	smallSize  = 2.7
	headSize   = 3.6
	column     = 62.0 // of the list and the words, to the right
	gutter     = 8.0
	leastRoom  = 60.0
	shareAbove = 0.48 // of the room for the profile
)

// frame sets the title, the facts and the foot, and gives the room between them.
func (s *sheet) frame() (b box, after []scene.Node) {
	room := s.width - 2*margin
	head := &scene.Group{ID: "head"}
	y := margin
	if s.o.Title != "" {
		y = paragraph(head, s.o.Title, margin, y-2, titleSize, true, ink, room)
	}
	y = paragraph(head, s.subtitle(), margin, y+0.6, lineSize, false, words, room)
	for _, f := range s.o.Facts {
		y = paragraph(head, f, margin, y+0.4, lineSize, false, words, room)
	}
	s.root.Add(head)
	bottom := s.height - margin
	if s.o.Credit != "" {
		foot := &scene.Group{ID: "foot"}
		bottom -= float64(len(typeface.Wrap(s.o.Credit, smallSize, false, room))) * smallSize * 1.3
		paragraph(foot, s.o.Credit, margin, bottom, smallSize, false, words, room)
		bottom -= 3
		after = append(after, foot)
	}
	return box{margin, y + 4, s.width - margin, bottom}, after
}

// page sets the sheet: the profile above the plan on the left, the list above
// the findings and the key on the right.
func (s *sheet) page() {
	b, foot := s.frame()
	y, bottom := b.y0, b.y1
	left := box{margin, y, s.width - margin - column - gutter, bottom}
	right := box{left.x1 + gutter, y, s.width - margin, bottom}

	middle := left.y0 + shareAbove*(left.y1-left.y0)
	plan := box{left.x0, middle + 4, left.x1, left.y1}
	s.choosePlan(plan)

	entries := s.keyEntries()
	findings := s.findings(right.x0, column, right.y1-keyHeight(entries)-right.y0-leastRoom-16)
	listBottom := right.y1 - keyHeight(entries) - findings.height - 12
	listBottom = s.list(box{right.x0, right.y0, right.x1, math.Max(listBottom, right.y0+leastRoom)})
	s.root.Add(findings.at(listBottom + 8))
	s.key(entries, right.x0, right.y1-keyHeight(entries))

	s.profile(box{left.x0, left.y0, left.x1, middle - 4})
	s.plan(plan)
	s.root.Add(foot...)
}

func (s *sheet) subtitle() string {
	p := s.piece
	text := s.what
	if p.part.Name != "" {
		text += " of the " + p.part.Name
	}
	if p.size != "" {
		text += ", size " + p.size
	}
	text += ", " + s.way()
	if p.oval && s.what == "Shaping" {
		text += "; the oval is drawn as a circle as long"
	}
	return text
}

// heading is a heading of one of the pictures on the page.
func heading(id, title string, b box) *scene.Group {
	g := &scene.Group{ID: id, Title: title}
	g.Add(&scene.Text{X: b.x0, Y: b.y0 + headSize*0.72, Size: headSize, Bold: true, Colour: ink, String: title})
	return g
}

// said is what is to be said, set but not yet placed.
type said struct {
	lines  []saying
	x      float64
	height float64
}

type saying struct {
	text string
	bold bool
	y    float64
}

// unbroken keeps figures with what they are of.
var unbroken = strings.NewReplacer(" %", "\u00a0%", "Rnd ", "Rnd\u00a0", "Rnds ", "Rnds\u00a0")

// findings sets the shape and the findings in a column, as many as there is room
// for in so many millimetres: what ruffles, gathers or is stretched first.
func (s *sheet) findings(x, room, most float64) said {
	l := said{x: x, height: headSize * 0.72}
	l.lines = append(l.lines, saying{"What the fabric does", true, l.height})
	l.height += 1.6
	var texts []string
	if shape := Shape(s.piece.part, s.piece.form); shape != "" {
		texts = append(texts, shape)
	}
	found := geometry.Findings(s.piece.part, s.piece.form.Rounds)
	rank := func(f geometry.Finding) int {
		if f.Trait < geometry.Ruffled {
			return 1
		}
		return 0
	}
	slices.SortStableFunc(found, func(a, b geometry.Finding) int { return rank(a) - rank(b) })
	for _, f := range found {
		texts = append(texts, Sentence(s.piece.part, f))
	}
	const pitch, apart = lineSize * 1.3, 1.2
	for i, t := range texts {
		lines := typeface.Wrap(unbroken.Replace(t), lineSize, false, room)
		last := i == len(texts)-1
		if need := float64(len(lines)) * pitch; l.height+need > most || !last && l.height+need+apart+pitch > most {
			lines = typeface.Wrap(fmt.Sprintf("There is more to say than fits: whorl check lists %s.", counted(len(texts)-i)), lineSize, false, room)
			last = true
		}
		for _, line := range lines {
			l.height += pitch
			l.lines = append(l.lines, saying{line, false, l.height - 0.35*lineSize})
		}
		l.height += apart
		if last {
			break
		}
	}
	return l
}

func counted(n int) string {
	if n == 1 {
		return "one finding more"
	}
	return fmt.Sprintf("%d findings more", n)
}

func (l said) at(y float64) *scene.Group {
	g := &scene.Group{ID: "findings", Title: "What the fabric does"}
	for _, s := range l.lines {
		size, colour := lineSize, words
		if s.bold {
			size, colour = headSize, ink
		}
		g.Add(&scene.Text{X: l.x, Y: y + s.y, Size: size, Bold: s.bold, Colour: colour, String: s.text})
	}
	return g
}
