package writeup

import (
	"fmt"
	"math"
	"strings"

	"whorl/chart/scene"
	"whorl/chart/typeface"
)

// Measures of the page, mm. Sizes are the letters' em.
const (
	side   = 25.0 // margins of the text
	top    = 20.0
	bottom = 22.0
	beside = 12.0 // margins that a picture keeps to

	lead        = 1.4 // from line to line, in sizes
	bodySize    = 3.7
	titleSize   = 8.4
	titleLeast  = 5.6
	lineSize    = 4.1
	noteSize    = 3.2
	footSize    = 2.8
	captionSize = 3.7
	hang        = 7.0 // indent of the lines under a lead

	headingSize = 5.2 // at level 1
	underSize   = 4.3 // at level 2
	headingAir  = 8.0 // above
	underAir    = 5.5
	nextAir     = 2.0 // above what stands right under a heading
	paragraph   = 1.9 // above
	figureAir   = 6.0
	captionAir  = 3.0 // under
)

var (
	ink   = scene.RGB(0x1c1b22)
	words = scene.RGB(0x4a4a4a)
	rule  = scene.RGB(0xb8b4ac)
)

// piece is a part of the document that is not divided.
type piece struct {
	above  float64 // air, but for the first piece of a page
	below  float64 // air, where the next piece has less above it
	height float64
	with   bool   // on one page with the next piece
	single bool   // a paragraph of one line
	floats bool   // may stand on the next page while the text goes on, unless the one before is with it
	head   *piece // comes again where this one begins a page
	alone  *piece // stands for this one where nothing else is on the page
	small  *piece // stands for this one where the page would else be less than half full
	mark   *scene.Bookmark
	draw   func(g *scene.Group, y float64)
}

// setter makes pieces of a document and pages of the pieces.
type setter struct {
	d             *Document
	width, height float64
	room          float64 // width of the text
	pieces        []*piece
	foot          []string
	level         int  // of the last heading
	headed        bool // the last piece is a heading
	pictures      int
	marks         []scene.Bookmark
}

func (s *setter) add(p *piece) {
	s.pieces = append(s.pieces, p)
	s.headed = false
}

// baseline is where the letters of a line stand whose top is at y.
func baseline(y, size float64) float64 {
	return hundredth(y + size*lead/2 + typeface.CapHeight(size)/2)
}

func hundredth(v float64) float64 { return math.Round(100*v) / 100 }

// plain is a text with its no-break spaces made plain: they have done their work
// once the lines are broken, and those who copy the text do not want them.
func plain(s string) string { return strings.ReplaceAll(s, "\u00a0", " ") }

// write sets one line of text in a group.
func write(g *scene.Group, s string, x, y, size float64, bold bool, colour scene.Colour) {
	if s != "" {
		g.Add(&scene.Text{X: hundredth(x), Y: baseline(y, size), Size: size, Bold: bold, Colour: colour, String: plain(s)})
	}
}

// title sets the title and the lines under it as the first pieces.
func (s *setter) title() (l []*piece) {
	size := titleSize
	lines := typeface.Wrap(s.d.Title, size, true, s.room)
	for len(lines) > 2 && size > titleLeast {
		size = math.Max(titleLeast, size-0.4)
		lines = typeface.Wrap(s.d.Title, size, true, s.room)
	}
	for _, t := range lines {
		l = append(l, &piece{height: size * 1.22, with: true, draw: func(g *scene.Group, y float64) {
			write(g, t, side, y, size, true, ink)
		}})
	}
	for _, t := range s.d.Lines {
		for i, part := range typeface.Wrap(t, lineSize, false, s.room) {
			p := &piece{height: lineSize * lead, with: true, draw: func(g *scene.Group, y float64) {
				write(g, part, side, y, lineSize, false, words)
			}}
			if i == 0 {
				p.above = 0.8
			}
			l = append(l, p)
		}
	}
	return append(l, &piece{above: 3, height: 1, with: true, draw: func(g *scene.Group, y float64) { s.line(g, side, s.width-side, y) }})
}

// line draws a thin level line.
func (s *setter) line(g *scene.Group, from, to, y float64) {
	g.Add(level(from, to, y, 0.3))
}

func (s *setter) heading(h Heading) {
	size, air := headingSize, headingAir
	if h.Level > 1 {
		size, air = underSize, underAir
	}
	if s.headed {
		air = nextAir
	}
	s.level = max(h.Level, 1)
	for i, t := range typeface.Wrap(h.Text, size, true, s.room) {
		p := &piece{height: size * lead, with: true, draw: func(g *scene.Group, y float64) {
			write(g, t, side, y, size, true, ink)
		}}
		if i == 0 {
			p.above = air
			p.mark = &scene.Bookmark{Title: plain(h.Text), Level: s.level}
		}
		s.add(p)
	}
	s.headed = true
}

// leadAir is the air between a lead and what follows it.
const leadAir = 1.3

// paragraph sets a paragraph line by line, its first two and its last two lines
// each on one page.
func (s *setter) paragraph(b Paragraph) {
	indent, taken := 0.0, 0.0
	var leads []string
	if b.Lead != "" {
		indent = hang
		leads = typeface.Wrap(b.Lead, bodySize, true, s.room-hang)
		taken = typeface.Width(leads[len(leads)-1], bodySize, true, false) + leadAir
		if len(leads) == 1 {
			taken -= hang // it begins at the margin, the lines under it do not
		}
	}
	texts := typeface.WrapBehind(b.Text, bodySize, false, math.Max(taken, 0), s.room-indent)
	if b.Lead == "" {
		texts = typeface.Wrap(b.Text, bodySize, false, s.room)
	}
	var l []*piece
	for i, t := range leads[:max(len(leads)-1, 0)] {
		l = append(l, &piece{height: bodySize * lead, draw: func(g *scene.Group, y float64) {
			write(g, t, side+indentOf(i, hang), y, bodySize, true, ink)
		}})
	}
	lines := max(len(texts), min(len(leads), 1))
	for i := range lines {
		bold, t, x := "", "", side+indent
		if i < len(texts) {
			t = texts[i]
		}
		if i == 0 && len(leads) > 0 {
			bold = leads[len(leads)-1]
			x = side + indentOf(len(leads)-1, hang)
		}
		l = append(l, &piece{height: bodySize * lead, draw: func(g *scene.Group, y float64) {
			write(g, bold, x, y, bodySize, true, ink)
			after := x
			if bold != "" {
				after += typeface.Width(bold, bodySize, true, false) + leadAir
			}
			write(g, t, after, y, bodySize, false, ink)
		}})
	}
	s.addLines(l, paragraph, b.Keep)
}

// indentOf is the indent of line i of what hangs: none of the first.
func indentOf(i int, hang float64) float64 {
	if i == 0 {
		return 0
	}
	return hang
}

// addLines adds the lines of what is read as one, so that none is alone on a page.
func (s *setter) addLines(l []*piece, air float64, keep bool) {
	for i, p := range l {
		p.with = i == 0 && len(l) > 1 || i == len(l)-2 || keep
		if i == 0 {
			p.above = air
		}
		p.single = len(l) == 1
		s.add(p)
	}
}

// keepLines keeps a paragraph of one line from being alone on a page: one that ends a
// section is kept with what stands before it, and one right under a heading with what
// follows.
func keepLines(l []*piece) {
	begins := func(i int) bool { return i >= len(l) || l[i].floats || l[i].mark != nil }
	for i, p := range l {
		switch {
		case !p.single || i == 0 || l[i-1].floats:
		case begins(i + 1):
			l[i-1].with = true
		case l[i-1].mark != nil:
			p.with = true
		}
	}
}

// picture sets a picture under its caption.
func (s *setter) picture(b Picture) error {
	p, err := s.drawing(b, b.Scene)
	if err != nil {
		return err
	}
	if s.headed {
		p.above = nextAir
	}
	if b.Smaller != nil {
		if p.small, err = s.drawing(b, b.Smaller); err != nil {
			return err
		}
		p.small.above = p.above
	}
	if b.Alone != nil {
		if p.alone, err = s.drawing(b, b.Alone); err != nil {
			return err
		}
	}
	s.add(p)
	return nil
}

// drawing is the piece for one drawing of a picture.
func (s *setter) drawing(b Picture, drawn *scene.Scene) (*piece, error) {
	if drawn == nil {
		return nil, fmt.Errorf("the picture %q is missing", b.Caption)
	}
	caption := typeface.Wrap(b.Caption, captionSize, true, s.room)
	note := typeface.Wrap(b.Note, noteSize, false, s.room)
	under := float64(len(caption))*captionSize*lead + float64(len(note))*noteSize*lead
	if under > 0 {
		under += captionAir
	}
	p := &piece{above: figureAir, below: figureAir, height: under + drawn.Height, floats: true}
	if room := s.height - top - s.bottom(); drawn.Width > s.width || p.height > room {
		return nil, fmt.Errorf("the picture %q is %.0f × %.0f mm and has %.0f × %.0f mm on the page", b.Caption, drawn.Width, drawn.Height, s.width, room-under)
	}
	s.pictures++
	prefix := fmt.Sprintf("picture-%d-", s.pictures)
	if b.Caption != "" {
		p.mark = &scene.Bookmark{Title: plain(b.Caption), Level: s.level + 1}
	}
	p.draw = func(g *scene.Group, y float64) {
		at := y
		for _, t := range caption {
			write(g, t, side, at, captionSize, true, ink)
			at += captionSize * lead
		}
		for _, t := range note {
			write(g, t, side, at, noteSize, false, words)
			at += noteSize * lead
		}
		moved := drawn.Root.Moved(hundredth((s.width-drawn.Width)/2), hundredth(y+under), prefix)
		if moved.Title = b.Alt; b.Alt == "" {
			moved.Title = drawn.Title
		}
		g.Add(moved)
	}
	return p, nil
}
