package writeup

import (
	"fmt"
	"math"
	"regexp"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/tdewolff/canvas"

	"whorl/chart/scene"
	"whorl/chart/typeface"
)

// texts are the texts of a group.
func texts(g *scene.Group) (l []*scene.Text) {
	for _, n := range g.Nodes {
		switch n := n.(type) {
		case *scene.Group:
			l = append(l, texts(n)...)
		case *scene.Text:
			l = append(l, n)
		}
	}
	return l
}

// box is the rectangle of a text, from the top of its capitals to its baseline.
func box(t *scene.Text) (x0, y0, x1, y1 float64) {
	w := typeface.Width(t.String, t.Size, t.Bold, t.Italic)
	x0 = t.X
	switch t.Align {
	case scene.Centre:
		x0 -= w / 2
	case scene.Right:
		x0 -= w
	}
	return x0, t.Y - typeface.CapHeight(t.Size), x0 + w, t.Y
}

// drawing is a picture of a size with a frame and a text.
func drawing(width, height float64, name string) *scene.Scene {
	s := &scene.Scene{Width: width, Height: height, Title: name}
	s.Root.Add(&scene.Group{ID: "frame", Nodes: []scene.Node{&scene.Path{D: canvas.Rectangle(width, height), Style: scene.Stroked(ink, 0.3)}}},
		&scene.Text{X: width / 2, Y: height / 2, Size: 4, Align: scene.Centre, String: name, Colour: ink})
	return s
}

// prose is a paragraph of so many words, each with the paragraph's number and its
// own: "p3.0 p3.1".
func prose(p, n int) string {
	var b strings.Builder
	for i := range n {
		fmt.Fprintf(&b, "p%d.%d%s ", p, i, strings.Repeat("x", (7*i+3*p)%9))
	}
	return strings.TrimSpace(b.String())
}

var tagged = regexp.MustCompile(`^p(\d+)\.(\d+)x*`)

// setWell reports what is not set as it should be on the pages of a document.
func setWell(t *testing.T, where string, pages []*scene.Scene, marks []scene.Bookmark) {
	t.Helper()
	lines := map[string][]int{} // of every paragraph, on each page
	word := map[string]int{}
	for i, page := range pages {
		if err := page.Check(); err != nil {
			t.Fatalf("%s, page %d: %v", where, i+1, err)
		}
		all := texts(&page.Root)
		boxes := make([][4]float64, len(all))
		for k, a := range all {
			x0, y0, x1, y1 := box(a)
			boxes[k] = [4]float64{x0, y0, x1, y1}
		}
		var last *scene.Text
		for k, a := range all {
			x0, y0, x1, y1 := boxes[k][0], boxes[k][1], boxes[k][2], boxes[k][3]
			if x0 < beside-0.1 || y0 < 8 || x1 > page.Width-beside+0.1 || y1 > page.Height-8 {
				t.Errorf("%s, page %d: %q leaves the page", where, i+1, a.String)
			}
			for n, b := range boxes[:k] {
				if x0 < b[2]-0.05 && b[0] < x1-0.05 && y0 < b[3]-0.05 && b[1] < y1-0.05 {
					t.Errorf("%s, page %d: %q lies on %q", where, i+1, a.String, all[n].String)
				}
			}
			if a.Size != footSize && (last == nil || a.Y > last.Y) {
				last = a
			}
			if m := tagged.FindStringSubmatch(a.String); m != nil {
				l := lines[m[1]]
				for len(l) <= i {
					l = append(l, 0)
				}
				l[i]++
				lines[m[1]] = l
				for _, w := range strings.Fields(a.String) {
					var p, n int
					if _, err := fmt.Sscanf(w, "p%d.%d", &p, &n); err != nil || fmt.Sprint(p) != m[1] {
						continue
					}
					if word[m[1]] != n {
						t.Errorf("%s, page %d: %q comes where word %d should", where, i+1, w, word[m[1]])
					}
					word[m[1]] = n + 1
				}
			}
		}
		if last == nil {
			t.Errorf("%s: nothing is on page %d", where, i+1)
		} else if last.Bold && (last.Size == headingSize || last.Size == underSize) {
			t.Errorf("%s, page %d: the heading %q is the last thing on it", where, i+1, last.String)
		}
		if want := fmt.Sprintf("%d of %d", i+1, len(pages)); !hasText(all, want) {
			t.Errorf("%s, page %d: %q is not on it", where, i+1, want)
		}
	}
	for p, l := range lines {
		on, alone := 0, false
		for _, n := range l {
			if n > 0 {
				on++
				alone = alone || n == 1
			}
		}
		if on > 1 && alone && len(p) < 4 { // the lead of the others is a line itself
			t.Errorf("%s: a line of paragraph %s is alone on its page: %v", where, p, l)
		}
	}
	for _, m := range marks {
		if m.Page < 0 || m.Page >= len(pages) || m.Y < 0 || m.Y > pages[m.Page].Height {
			t.Errorf("%s: the bookmark %q leads to page %d, %.0f mm", where, m.Title, m.Page+1, m.Y)
		}
	}
}

func hasText(l []*scene.Text, s string) bool {
	for _, t := range l {
		if t.String == s {
			return true
		}
	}
	return false
}

// longLead is added to the numbers of paragraphs whose lead has lines of its own.
const longLead = 1000

// mixture is a document of everything, in amounts that follow from a number.
func mixture(n int) *Document {
	d := &Document{Title: "A Hat", Lines: []string{"by somebody"}, Foot: "© somebody"}
	k := n
	next := func(most int) int { // any numbers will do that differ
		k = (k*1103 + 12345) % 65536
		return k / 7 % most
	}
	for i := range 30 {
		switch next(9) {
		case 0:
			d.Blocks = append(d.Blocks, Heading{1, fmt.Sprintf("Section %d", i)}, Paragraph{Text: prose(i, 3+next(60))})
		case 1:
			d.Blocks = append(d.Blocks, Heading{1, fmt.Sprintf("Section %d", i)}, Heading{2, "Under it"}, Paragraph{Text: prose(100+i, 3), Keep: true},
				Paragraph{Lead: "Rnd 1:", Text: prose(i, 9)})
		case 2:
			d.Blocks = append(d.Blocks, Picture{Scene: drawing(100+float64(next(100)), 30+float64(next(180)), fmt.Sprint("picture ", i)), Caption: fmt.Sprint("Chart ", i), Note: "A note."})
		case 3:
			t := Table{Head: []string{"Size", "Around", "Deep"}}
			for r := range 1 + next(40) {
				t.Rows = append(t.Rows, []string{fmt.Sprint("Size ", r), "51 cm\n20 in", "24 cm\n9½ in"})
			}
			d.Blocks = append(d.Blocks, t)
		case 4:
			var l Terms
			for r := range next(70) {
				l = append(l, Term{fmt.Sprint("ab", r), "what it means"})
			}
			d.Blocks = append(d.Blocks, l)
		default:
			lead := []string{"", "Rnd 4:", "Rnds 11-15 (12-16, 12-17, 12-18), the sizes that go on only:", strings.Repeat("a long lead ", 16)}[next(4)]
			p := i
			if len(lead) > 100 {
				p += longLead
			}
			d.Blocks = append(d.Blocks, Paragraph{Lead: lead, Text: prose(p, next(130))})
		}
	}
	return d
}

// Documents of all kinds, on both papers: all that is in them is on the pages once
// and in order, and is set well.
func TestPagesAreSetWell(t *testing.T) {
	for n := range 24 {
		width, height := 210.0, 297.0
		if n%2 == 1 {
			width, height = 215.9, 279.4
		}
		where := fmt.Sprint("mixture ", n)
		d := mixture(n)
		pages, marks, err := Pages(d, width, height)
		if err != nil {
			t.Fatal(where, err)
		}
		setWell(t, where, pages, marks)
		all := ""
		for _, p := range pages {
			for _, l := range texts(&p.Root) {
				all += l.String + "\n"
			}
		}
		for _, b := range d.Blocks {
			switch b := b.(type) {
			case Picture:
				if strings.Count(all, b.Scene.Title+"\n") != 1 {
					t.Errorf("%s: %s is there %d times", where, b.Scene.Title, strings.Count(all, b.Scene.Title+"\n"))
				}
			case Paragraph:
				if w := strings.Fields(b.Text); len(w) > 0 && strings.Count(all, w[len(w)-1]) != 1 {
					t.Errorf("%s: the last word %q is there %d times", where, w[len(w)-1], strings.Count(all, w[len(w)-1]))
				}
			}
		}
		again, _, err := Pages(mixture(n), width, height)
		if err != nil || len(again) != len(pages) {
			t.Fatal(where, err)
		}
		for i := range pages {
			var a, b []scene.Text
			for _, x := range texts(&pages[i].Root) {
				a = append(a, *x)
			}
			for _, x := range texts(&again[i].Root) {
				b = append(b, *x)
			}
			if diff := cmp.Diff(a, b); diff != "" {
				t.Errorf("%s: page %d is another the second time:\n%s", where, i+1, diff)
			}
		}
	}
}

// The title, the foot and the names of stitches may be far too long, and nothing
// need be given.
func TestOddDocuments(t *testing.T) {
	long := strings.Repeat("A Name Far Too Long for Any Page ", 12)
	word := strings.Repeat("Donaudampfschifffahrt", 14)
	for name, d := range map[string]*Document{
		"empty":        {},
		"long title":   {Title: long, Foot: "© A", Blocks: []Block{Paragraph{Text: prose(1, 900)}}},
		"long word":    {Title: word, Lines: []string{word}, Foot: word, Blocks: []Block{Heading{1, word}, Paragraph{Lead: word, Text: word}}},
		"long foot":    {Title: "T", Foot: long, Blocks: []Block{Paragraph{Text: prose(1, 900)}}},
		"two-line":     {Title: "T", Foot: long[:180], Blocks: []Block{Paragraph{Text: prose(1, 900)}}},
		"long terms":   {Title: "T", Blocks: []Block{Terms{{long, long}, {"sc", "single crochet"}}}},
		"lead only":    {Title: "T", Blocks: []Block{Paragraph{Lead: "Rnd 1:"}, Paragraph{Lead: long}, Paragraph{}}},
		"one heading":  {Title: "T", Blocks: []Block{Heading{1, "Alone"}}},
		"wide table":   {Title: "T", Blocks: []Block{Table{Head: []string{"Size", "To fit head", "Around", "Laid flat", "Brim, relaxed", "Depth", "Left to draw closed", "Scarf, length"}, Rows: [][]string{{"Adult Extra Extra Large", "155 cm\n61¼ in", "155 cm\n61¼ in", "155 cm\n61¼ in", "155 cm\n61¼ in", "155 cm\n61¼ in", "155 cm\n61¼ in", "155 cm\n61¼ in"}}}}},
		"empty table":  {Title: "T", Blocks: []Block{Table{}}},
		"nothing said": {Title: "T", Blocks: []Block{Terms{}, Heading{2, ""}, Paragraph{Text: "x"}}},
	} {
		pages, marks, err := Pages(d, 210, 297)
		if err != nil {
			t.Fatal(name, err)
		}
		if name == "one heading" || name == "empty" {
			continue // there is nothing that the heading could stand before
		}
		setWell(t, name, pages, marks)
	}
}

// Wherever the pages end, no paragraph of one line that ends its section opens a page
// alone, and none that begins it is alone with its heading at the foot of one.
func TestLinesAreNotAlone(t *testing.T) {
	for n := range 60 {
		d := &Document{Title: "T"}
		for i := range n {
			d.Blocks = append(d.Blocks, Paragraph{Text: fmt.Sprintf("filling %d", i)})
		}
		for _, part := range []string{"Brim", "Body"} {
			d.Blocks = append(d.Blocks, Heading{2, part}, Paragraph{Text: part + " opens"}, Paragraph{Text: part + " goes on"},
				Paragraph{Text: part + " goes on still"}, Paragraph{Text: part + " ends"})
		}
		d.Blocks = append(d.Blocks, Picture{Scene: drawing(100, 120, "chart")}, Heading{1, "Last"}, Paragraph{Text: "Last opens"}, Paragraph{Text: "Last ends"})
		pages, _, err := Pages(d, 210, 297)
		if err != nil {
			t.Fatal(err)
		}
		for i, p := range pages {
			var lines []string
			for _, l := range texts(&p.Root) {
				if l.Size == bodySize || l.Size == underSize || l.Size == headingSize {
					lines = append(lines, l.String)
				}
			}
			if len(lines) == 0 {
				continue
			}
			if first := lines[0]; strings.HasSuffix(first, "ends") {
				t.Errorf("%d lines before: page %d begins with %q", n, i+1, first)
			}
			if last := lines[len(lines)-1]; strings.HasSuffix(last, "opens") {
				t.Errorf("%d lines before: page %d ends with %q", n, i+1, last)
			}
		}
	}
}

// A picture that finds no room stands on the next page while the text goes on; one
// that is alone there is drawn larger; and one right behind a heading stays there.
func TestPictures(t *testing.T) {
	big := drawing(180, 200, "big")
	d := &Document{Title: "T", Blocks: []Block{
		Paragraph{Text: prose(1, 200)},
		Picture{Scene: big, Caption: "Chart 1: big"},
		Picture{Scene: drawing(180, 100, "small"), Alone: drawing(180, 210, "large"), Caption: "Chart 2"},
		Paragraph{Text: prose(2, 40)},
		Heading{1, "Schematic"},
		Picture{Scene: drawing(180, 190, "schematic")},
	}}
	pages, marks, err := Pages(d, 210, 297)
	if err != nil {
		t.Fatal(err)
	}
	setWell(t, "pictures", pages, marks)
	var got []string
	for _, p := range pages {
		line := ""
		for _, l := range texts(&p.Root) {
			for _, name := range []string{"p1.0", "p2.0", "big", "small", "large", "schematic", "Schematic"} {
				if l.String == name || strings.HasPrefix(l.String, name+"x") || strings.HasPrefix(l.String, name+" ") {
					line += name + " "
				}
			}
		}
		got = append(got, strings.TrimSpace(line))
	}
	if diff := cmp.Diff([]string{"p1.0 p2.0", "big", "large", "Schematic schematic"}, got); diff != "" {
		t.Error(diff)
	}
	var titles []string
	for _, m := range marks {
		titles = append(titles, fmt.Sprintf("%d %s p%d", m.Level, m.Title, m.Page+1))
	}
	if diff := cmp.Diff([]string{"1 Chart 1: big p2", "1 Chart 2 p3", "1 Schematic p4"}, titles); diff != "" {
		t.Error(diff)
	}
	// A drawing is as large as it is, and moved as a whole.
	for _, n := range pages[1].Root.Nodes {
		g, ok := n.(*scene.Group)
		if !ok {
			continue
		}
		b := g.Nodes[0].(*scene.Group).Nodes[0].(*scene.Path).D.Bounds()
		if math.Abs(b.W()-180) > 1e-6 || math.Abs(b.H()-200) > 1e-6 || math.Abs(b.X0-15) > 0.01 {
			t.Errorf("the drawing is %v", b)
		}
	}
	for _, p := range []Picture{{Scene: drawing(180, 260, "x")}, {Scene: drawing(220, 50, "x")}, {}} {
		if _, _, err := Pages(&Document{Blocks: []Block{p}}, 210, 297); err == nil {
			t.Errorf("a picture that has no room was set")
		}
	}
	// One as high as the room that is offered has room under a heading.
	d = &Document{Title: "T", Foot: "©", Blocks: []Block{Paragraph{Text: prose(1, 300)}, Heading{1, "H"}, Picture{Scene: drawing(180, Room(297), "x"), Caption: "c", Note: "n"}}}
	pages, marks, err = Pages(d, 210, 297)
	if err != nil || len(pages) != 2 {
		t.Fatal(len(pages), err)
	}
	setWell(t, "room", pages, marks)
}

// A picture that has no room is drawn smaller where the page would stay less than half
// full, behind a heading too, and waits where it would not.
func TestSmallerPictures(t *testing.T) {
	for n, want := range map[int]string{5: "small", 12: "small", 30: "big"} {
		for _, headed := range []bool{false, true} {
			d := &Document{Title: "T"}
			for i := range n {
				d.Blocks = append(d.Blocks, Paragraph{Text: fmt.Sprintf("filling %d", i)})
			}
			if headed {
				d.Blocks = append(d.Blocks, Heading{1, "Schematic"})
			}
			d.Blocks = append(d.Blocks, Picture{Scene: drawing(180, 215, "big"), Smaller: drawing(180, 90, "small"), Caption: "Chart 1"})
			pages, marks, err := Pages(d, 210, 297)
			if err != nil {
				t.Fatal(err)
			}
			setWell(t, fmt.Sprint(n, " lines"), pages, marks)
			all := ""
			for _, p := range pages {
				for _, l := range texts(&p.Root) {
					all += l.String + "\n"
				}
			}
			pagesWanted := map[string]int{"small": 1, "big": 2}[want]
			if !strings.Contains(all, "\n"+want+"\n") || len(pages) != pagesWanted {
				t.Errorf("behind %d lines, a heading %v: %d pages, want %d with the %s one", n, headed, len(pages), pagesWanted, want)
			}
		}
	}
}

// A table that goes over to another page has its head there again.
func TestTableOverPages(t *testing.T) {
	table := Table{Head: []string{"Size", "Around"}}
	for i := range 60 {
		table.Rows = append(table.Rows, []string{fmt.Sprint(i), "50 cm\n20 in"})
	}
	pages, marks, err := Pages(&Document{Title: "T", Blocks: []Block{table}}, 210, 297)
	if err != nil || len(pages) < 2 {
		t.Fatal(len(pages), err)
	}
	setWell(t, "table", pages, marks)
	for i, p := range pages {
		if !hasText(texts(&p.Root), "Around") {
			t.Errorf("page %d has no head", i+1)
		}
	}
}

func TestWithoutEmpty(t *testing.T) {
	got := Table{Head: []string{"a", "b", "c"}, Rows: [][]string{{"1", "", "3"}, {"", "", "4"}}}.WithoutEmpty()
	if diff := cmp.Diff(Table{Head: []string{"a", "c"}, Rows: [][]string{{"1", "3"}, {"", "4"}}}, got); diff != "" {
		t.Error(diff)
	}
}
