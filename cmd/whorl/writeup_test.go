package main

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"whorl/chart"
	"whorl/chart/output"
	"whorl/chart/output/outputtest"
	"whorl/chart/schematic"
	"whorl/chart/writeup"
	"whorl/patterns"
	"whorl/patterns/working"
)

// writeUp writes the write-up of a file and gives the names of what is written.
func writeUp(t *testing.T, file string, args ...string) (names []string, errs string) {
	t.Helper()
	dir := t.TempDir()
	status, out, errs := whorl(t, "", append([]string{"draw", file, "--picture", "writeup", "-o", dir}, args...)...)
	if status != statusDone {
		t.Fatalf("%s: %s", file, errs)
	}
	return strings.Fields(out), errs
}

// oneLine is a text with every run of white space as one space.
func oneLine(s string) string { return strings.Join(strings.Fields(s), " ") }

// inOrder reports the first of the texts that does not follow those before it.
func inOrder(text string, wanted []string) (missing string) {
	for _, w := range wanted {
		_, after, ok := strings.Cut(text, w)
		if !ok {
			return w
		}
		text = after
	}
	return ""
}

// The write-up of every example: its properties and bookmarks, its fonts, the order
// of its text, and all finished measurements of check --json.
func TestWriteupsOfTheExamples(t *testing.T) {
	for _, file := range examples(t) {
		t.Run(filepath.Base(file), func(t *testing.T) {
			t.Parallel()
			name := filepath.Base(file)
			j, err := load(file, nil)
			if err != nil {
				t.Fatal(err)
			}
			names, errs := writeUp(t, file)
			if errs != "" || len(names) != 1 || !strings.HasSuffix(names[0], "-writeup.pdf") {
				t.Errorf("%s: wrote %v, said %q", name, names, errs)
			}
			pdf := names[0]
			outputtest.Run(t, "qpdf", "--check", pdf)
			if info := outputtest.Run(t, "pdfinfo", pdf); !regexp.MustCompile(`Title: +`+regexp.QuoteMeta(j.pattern.Title)+`\n`).MatchString(info) || !strings.Contains(info, "A4") {
				t.Errorf("%s: %s", name, info)
			}
			for _, f := range strings.Split(strings.TrimSpace(outputtest.Run(t, "pdffonts", pdf)), "\n")[2:] {
				if !regexp.MustCompile(`LiberationSans.* yes yes yes `).MatchString(f) {
					t.Errorf("%s: not embedded: %s", name, f)
				}
			}
			text := oneLine(outputtest.Run(t, "pdftotext", pdf, "-"))
			wanted := []string{j.pattern.Title, "by " + j.pattern.Designer, "Finished sizes", "Materials", "Hook:", "Gauge", "Abbreviations", "Notes", "Instructions"}
			for _, p := range j.pattern.Parts {
				wanted = append(wanted, p.Name, "Worked in")
				for _, label := range regexp.MustCompile(`(?m)^\s*(Rnd|Row) (\d+)[ :]`).FindAllStringSubmatch(strings.Join(p.Text.Lines, "\n"), -1) {
					wanted = append(wanted, label[1]+" "+label[2])
				}
			}
			wanted = append(wanted, "Schematic")
			if w := inOrder(text, wanted); w != "" {
				t.Errorf("%s: %q does not come where it should in:\n%s", name, w, text)
			}
			for _, s := range checked(t, file).Sizes {
				for what, mm := range s.Finished {
					if want := inCentimetres(mm) + " cm " + inInches(mm) + " in"; !strings.Contains(text, want) {
						t.Errorf("%s: %s of size %s is %s, which is not in the text", name, what, s.Name, want)
					}
				}
			}
			html := outputtest.Run(t, "pdftohtml", "-xml", "-stdout", pdf)
			_, outline, _ := strings.Cut(html, "<outline>")
			if w := inOrder(outline, []string{">Finished sizes<", ">Materials<", ">Instructions<", "<outline>", ">" + j.pattern.Parts[0].Name + "<", "</outline>", ">Schematic"}); w != "" {
				t.Errorf("%s: the outline has no %s where it should: %s", name, w, outline)
			}
		})
	}
}

// bookOf sets the write-up of a job: all sizes, or one.
func bookOf(t *testing.T, where string, j *job, p patterns.Picture, size int) (*edition, *book) {
	t.Helper()
	e, err := j.writeup(p, size, "x")
	if err != nil {
		t.Fatalf("%s: %v", where, err)
	}
	width, height := paperOf(p).Size()
	b := &book{doc: e.doc}
	if b.pages, b.marks, err = writeup.Pages(e.doc, width, height); err != nil {
		t.Fatalf("%s: %v", where, err)
	}
	return e, b
}

// bookSetWell reports texts on the pages that leave them or lie on one another.
func bookSetWell(t *testing.T, where string, b *book) {
	t.Helper()
	for n, s := range b.pages {
		if err := s.Check(); err != nil {
			t.Errorf("%s, page %d: %v", where, n+1, err)
		}
		all := texts(&s.Root)
		boxes := make([][4]float64, len(all))
		for i, a := range all {
			x0, y0, x1, y1 := turned(a)
			boxes[i] = [4]float64{x0, y0, x1, y1}
			if x0 < 6 || y0 < 8 || x1 > s.Width-6 || y1 > s.Height-8 {
				t.Errorf("%s, page %d: %q leaves the page", where, n+1, a.String)
			}
			for k, c := range boxes[:i] {
				if a.Angle == 0 && all[k].Angle == 0 && x0 < c[2]-0.05 && c[0] < x1-0.05 && y0 < c[3]-0.05 && c[1] < y1-0.05 {
					t.Errorf("%s, page %d: %q lies on %q", where, n+1, a.String, all[k].String)
				}
			}
		}
	}
}

// Write-ups of patterns with many sizes or one, with very long titles and names, and
// without what need not be given, on both papers and in both terms.
func TestWriteupsAreSetWell(t *testing.T) {
	long := strings.Repeat("A Name Far Too Long ", 12)
	special := "stitches:\n  " + strings.TrimSpace(strings.Repeat("Rosebud Cluster Over ", 4)) + ": (2 dc, ch 1, 2 dc) in same st\n"
	cases := map[string]string{
		"eight sizes": eightSizes,
		"long":        "title: " + long + "\ndesigner: " + long + "\ncopyright: " + long + "\nnotes: " + long + "\n" + special + eightSizes,
		"scarf":       scarfWords, "cowl": cowlWords, "square": squareWords,
		"nothing more": "parts:\n  - worked: rounds\n    text: |\n      Rnd 1: 6 sc in magic ring. (6)\n",
		"gathered":     gatherWords,
	}
	published := filepath.Join("..", "..", "testdata", "patterns")
	files := append(examples(t), filepath.Join(published, "more", "rings.yaml"), filepath.Join(published, "more", "beanie-pebble.yaml"),
		filepath.Join(published, "published", "toy-eider.yaml"))
	for i, file := range files {
		data, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		name := filepath.Base(file)
		if i >= len(examples(t)) {
			name = strings.TrimSuffix(name, ".yaml") // its charts need not be clean
		}
		cases[name] = string(data)
	}
	for name, text := range cases {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			j, err := load("-", strings.NewReader(text))
			if err != nil || j.unworkable() {
				t.Fatal(name, err, j.faults)
			}
			for _, size := range []int{-1, len(j.pattern.Sizes) - 1} {
				p := patterns.Picture{Draw: writeupDraw}
				if size >= 0 {
					p.Paper = "Letter"
					if j.terms, err = termsNamed("UK", j.terms); err != nil {
						t.Fatal(err)
					}
				}
				e, b := bookOf(t, name, j, p, size)
				bookSetWell(t, name, b)
				for _, block := range e.doc.Blocks {
					pic, ok := block.(writeup.Picture)
					if !ok || !strings.HasPrefix(pic.Caption, "Chart") || !strings.HasSuffix(name, ".yaml") {
						continue
					}
					if r := chart.Audit(pic.Scene); !r.Clean() {
						t.Errorf("%s, %s: %s", name, pic.Caption, strings.Join(auditLines(r), "; "))
					}
				}
			}
		})
	}
}

// An edition of one size has its numbers alone, and those terms that are asked for.
func TestWriteupOfOneSize(t *testing.T) {
	file := "../../patterns/examples/bulrush-hat.yaml"
	names, _ := writeUp(t, file, "--size", "adult", "--terms", "uk", "--format", "pdf,md")
	var texts []string
	for _, name := range names {
		data, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		switch filepath.Ext(name) {
		case ".md":
			texts = append(texts, oneLine(strings.ReplaceAll(strings.ReplaceAll(string(data), `\`, ""), "**", "")))
		case ".pdf":
			texts = append(texts, oneLine(outputtest.Run(t, "pdftotext", name, "-")))
		}
	}
	if len(texts) != 2 || !strings.HasSuffix(names[0], "bulrush-hat-writeup-adult.pdf") {
		t.Fatal(names)
	}
	for _, text := range texts {
		for want, has := range map[string]bool{
			"Size Adult, in UK terms": true, "Tension": true, "14 htr and 10 rounds = 10 cm (4 in)": true, "5.5 mm (US I/9)": true, "shell: 5 tr in same st": true,
			"Rnd 3: Ch 2, tr2tog over next 2 sts": true, "until piece measures 46 cm [18 in]": true, "is 73 rows in all": true, "46 (50": false, "Toddler": false,
			"Numbers are for": false, "hdc": false, "Pick up 72 sts along 73 row ends (about 1 in each): 1 in each of next 36 row ends, miss next row end, 1 in each": true, "sk next": false,
			"tr5tog: [yoh, insert hook in next st, yoh and pull up a loop, yoh and pull through 2 loops] 5 times": true,
		} {
			if strings.Contains(text, want) != has {
				t.Errorf("%q is in the edition: %v\n%s", want, !has, text)
			}
		}
	}
}

// What can hurt the wearer is said in the editions that are for one whom it can.
func TestWriteupCautions(t *testing.T) {
	j, err := load("../../patterns/examples/bulrush-hat.yaml", nil)
	if err != nil {
		t.Fatal(err)
	}
	for size, want := range map[int]bool{-1: true, 0: true, 2: false} {
		e, _ := bookOf(t, "hat", j, patterns.Picture{Draw: writeupDraw}, size)
		if text := writeup.Markdown(e.doc); strings.Contains(text, "## Safety\n\nCords and ties") != want {
			t.Errorf("the edition of size %d has cautions: %v", size, !want)
		}
	}
}

// In Markdown every picture is there, with what it shows in words, and the rounds
// come in order.
func TestWriteupInMarkdown(t *testing.T) {
	for _, file := range examples(t) {
		names, _ := writeUp(t, file, "--format", "md")
		md, err := os.ReadFile(names[len(names)-1])
		if err != nil || filepath.Ext(names[len(names)-1]) != ".md" {
			t.Fatal(names, err)
		}
		var linked []string
		for _, m := range regexp.MustCompile(`!\[([^\n]*)\]\(([^)]+)\)`).FindAllStringSubmatch(string(md), -1) {
			if len(m[1]) < 40 {
				t.Errorf("%s: %q says too little", m[2], m[1])
			}
			linked = append(linked, m[2])
		}
		var written []string
		for _, n := range names[:len(names)-1] {
			written = append(written, filepath.Base(n))
		}
		if diff := cmp.Diff(written, linked); diff != "" || len(linked) < 2 {
			t.Errorf("%s: written and linked: %s", file, diff)
		}
		if w := inOrder(string(md), []string{"# ", "## Finished sizes", "| Size |", "## Materials", "## Instructions", "**Rnd 1:**", "**Rnd 2:**", "**Rnd 3:**", "## Schematic", "©"}); w != "" {
			t.Errorf("%s: %q does not come where it should", file, w)
		}
		if bad := regexp.MustCompile(`(?m)(^|[ (])\*[a-z]`).FindString(string(md)); bad != "" {
			t.Errorf("%s: the star of a repeat, %q, would begin emphasis", file, bad)
		}
	}
}

// What does not help who makes it is left out, and what does is there.
func TestWriteupOfTheExamplesSays(t *testing.T) {
	for file, c := range map[string]struct{ has, hasNot []string }{
		"mere-lights-cowl": {[]string{"1 of 21 repeats"}, []string{"## Shaping", "dome"}},
		"heron-reach-set":  {[]string{"(dc, ch 1, dc) in same st or sp"}, []string{" 1 rounds", " 1 rows"}},
	} {
		names, _ := writeUp(t, "../../patterns/examples/"+file+".yaml", "--format", "md")
		md := strings.ReplaceAll(fileText(t, names[len(names)-1]), `\`, "")
		for _, s := range c.has {
			if !strings.Contains(md, s) {
				t.Errorf("%s: no %q", file, s)
			}
		}
		for _, s := range c.hasNot {
			if strings.Contains(md, s) {
				t.Errorf("%s: %q is in it", file, s)
			}
		}
	}
}

// How much smaller it is than the head is what the table has, and not what was asked.
func TestWriteupEase(t *testing.T) {
	for _, c := range []struct {
		file string
		size int
		want string
	}{
		// 47 − 42.9, 50 − 47.1, 55 − 51.4 and 59 − 55.7 cm
		{"patterns/examples/bulrush-hat.yaml", -1, "It comes out 4.1 (2.9, 3.6, 3.3) cm smaller around than the head."},
		{"patterns/examples/lantern-hill-cap.yaml", 0, "It comes out 3.7 cm smaller around than the head."},
		{"patterns/examples/mere-lights-cowl.yaml", -1, ""},
		{"testdata/patterns/published/heather-vee-hat.yaml", -1, ""},
	} {
		j, err := load("../../"+c.file, nil)
		if err != nil {
			t.Fatal(err)
		}
		if got := (&edition{j: j, size: c.size}).ease(); got != c.want {
			t.Errorf("%s: %q, want %q", c.file, got, c.want)
		}
	}
	// In inches, to the quarter: 48 hdc, 10 to 4 in, are 19.2 in around.
	j, err := load("-", strings.NewReader("head: 20 in\nease: -1 in\ngauge: 10 hdc and 8 rounds = 4 in\n"+
		"parts:\n  - worked: rounds\n    text: |\n      Foundation: Ch 48; join with sl st to form a ring.\n      Rnd 1: Ch 1, hdc in each ch around; join with sl st in first hdc. (48 hdc)\n      Rnds 2-9: Ch 1, hdc in each st around; join. (48 hdc)\n"))
	if err != nil {
		t.Fatal(err)
	}
	if got, want := (&edition{j: j, size: -1}).ease(), "It comes out ¾ in smaller around than the head."; got != want {
		t.Errorf("%q, want %q", got, want)
	}
}

// A table of one size has its units at its head, and its outlines are drawn once.
func TestWriteupOfOneSizeIsNotTwice(t *testing.T) {
	names, _ := writeUp(t, "../../patterns/examples/lantern-hill-cap.yaml", "--size", "baby", "--format", "md")
	md := fileText(t, names[len(names)-1])
	if !strings.Contains(md, "| Size Baby | cm | in |") || !strings.Contains(md, "| To fit head | 41 | 16¼ |") {
		t.Error(md)
	}
	if n := strings.Count(md, "![Schematic"); n != 1 {
		t.Errorf("%d schematics", n)
	}
}

// What closes or gathers an end needs a needle.
func TestNotions(t *testing.T) {
	for words, want := range map[string]string{
		"Fasten off, close hole with yarn tail.":                 "a yarn needle",
		"Weave in ends.":                                         "a yarn needle",
		"Thread the tail through the last round and pull tight.": "a yarn needle",
		"Place a marker in first st.":                            "stitch markers",
		"Draw through all loops.":                                "",
		"Fasten off.":                                            "",
		"Stuff firmly; do not lose the marker.":                  "stitch markers; a yarn needle; stuffing",
	} {
		e := &edition{words: &working.Words{Parts: []working.PartWords{{Lines: []string{words}}}}}
		if got := strings.Join(e.notions(), "; "); got != want {
			t.Errorf("%s: %q, want %q", words, got, want)
		}
	}
}

// The same input gives the same bytes.
func TestWriteupSameBytes(t *testing.T) {
	file := "../../patterns/examples/heron-reach-set.yaml"
	first, _ := writeUp(t, file, "--format", "pdf,md")
	second, _ := writeUp(t, file, "--format", "pdf,md")
	for i := range first {
		a, err := os.ReadFile(first[i])
		if err != nil {
			t.Fatal(err)
		}
		b, err := os.ReadFile(second[i])
		if err != nil || !bytes.Equal(a, b) {
			t.Errorf("%s differs: %v", filepath.Base(first[i]), err)
		}
	}
}

// A file may ask for write-ups among its pictures, of all sizes or of some, on
// either paper.
func TestWriteupAmongPictures(t *testing.T) {
	t.Parallel()
	words := cowlWords + "pictures:\n  - {draw: writeup, paper: Letter}\n  - {name: one, draw: writeup, sizes: all}\n  - {name: flat, draw: schematic}\n"
	dir := t.TempDir()
	status, out, errs := whorl(t, words, "draw", "-", "-o", dir, "--format", "svg,pdf")
	if status != statusDone {
		t.Fatal(errs)
	}
	var names []string
	for _, n := range strings.Fields(out) {
		names = append(names, filepath.Base(n))
	}
	want := []string{"pattern-flat.svg", "pattern-flat.pdf", "pattern-writeup.pdf", "pattern-one-s.pdf", "pattern-one-l.pdf"}
	if diff := cmp.Diff(want, names); diff != "" {
		t.Error(diff)
	}
	if info := outputtest.Run(t, "pdfinfo", filepath.Join(dir, "pattern-writeup.pdf")); !strings.Contains(info, "letter") {
		t.Error(info)
	}
	for _, c := range []struct {
		args []string
		says string
	}{
		{[]string{"--picture", "writeup", "--format", "png"}, "a write-up as pdf and md"},
		{[]string{"--picture", "flat", "--format", "md"}, "nothing to write as md"},
		{[]string{"--picture", "writeup", "--terms", "DE"}, "--terms is US or UK"},
		{[]string{"--picture", "writeup", "--size", "XXL"}, `no size "XXL"`},
		{[]string{"--picture", "writeup", "--format", "doc"}, `"doc" is not a format`},
	} {
		if status, _, errs := whorl(t, words, append([]string{"draw", "-", "-o", dir}, c.args...)...); status != statusMisuse || !strings.Contains(errs, c.says) {
			t.Errorf("%v: status %d, %s", c.args, status, errs)
		}
	}
}

func TestBothLengths(t *testing.T) {
	for text, want := range map[string]string{
		"until piece measures 39 (42, 46, 50) cm.": "until piece measures 39 (42, 46, 50) cm [15¼ (16½, 18, 19¾) in].",
		"for 5 cm":                                    "for 5 cm [2 in]",
		`until piece measures 5½".`:                   `until piece measures 5½" [14 cm].`,
		"measures 4 (5) inches":                       "measures 4 (5) inches [10 (12.5) cm]",
		"measures 10 cm (4 in)":                       "measures 10 cm (4 in)",
		"2 sc in next ch-2 sp, sk 3 in all (60 (66))": "2 sc in next ch-2 sp, sk 3 in all (60 (66))",
	} {
		if got := bothLengths(text); got != want {
			t.Errorf("%q: %q, want %q", text, got, want)
		}
	}
}

func TestLabelled(t *testing.T) {
	for line, want := range map[string]string{
		"Rnd 1: Ch 1, sc.":                          "Rnd 1:",
		"Rnd 8 (Child, Adult only): Ch 1.":          "Rnd 8 (Child, Adult only):",
		"Fasten off.":                               "",
		"Ch 3; turn. Now: ch 1.":                    "",
		"*sc in next st: rep.":                      "",
		"Foundation: Ch 8 (9, 10, 10).":             "Foundation:",
		"Size Child and Adult: skip to Rnd 9 (10).": "Size Child and Adult:",
	} {
		if got, text := labelled(line); got != want || strings.TrimSpace(got+" "+text) != line {
			t.Errorf("%q: %q, %q", line, got, text)
		}
	}
}

// The pages of one write-up are those in testdata/gallery/writeup, to the byte.
func TestWriteupGallery(t *testing.T) {
	j, err := load("../../patterns/examples/mere-lights-cowl.yaml", nil)
	if err != nil {
		t.Fatal(err)
	}
	_, b := bookOf(t, "cowl", j, patterns.Picture{Draw: writeupDraw}, -1)
	gallery := filepath.Join("..", "..", "testdata", "gallery", "writeup")
	for i, page := range b.pages {
		var got bytes.Buffer
		if err := output.SVG(&got, page); err != nil {
			t.Fatal(err)
		}
		name := filepath.Join(gallery, fmt.Sprintf("mere-lights-cowl-%d.svg", i+1))
		if *update {
			if err := os.WriteFile(name, got.Bytes(), 0o644); err != nil {
				t.Fatal(err)
			}
		}
		want, err := os.ReadFile(name)
		if err != nil || !bytes.Equal(got.Bytes(), want) {
			t.Errorf("%s differs from the golden page; look at both, and run go test ./cmd/whorl -run WriteupGallery -update if the new one is right", filepath.Base(name))
		}
	}
}

// A schematic among text is no higher than its room, to a scale that fits it, and has
// neither title nor credit; what the sheet says above it is given beside it.
func TestSchematicAmongText(t *testing.T) {
	j, err := load("-", strings.NewReader("title: The Title\ncopyright: The Credit\n"+cowlWords))
	if err != nil || j.wrong() {
		t.Fatal(err, j.faults)
	}
	sizes, o := j.measured(patterns.Picture{}, nil)
	whole, err := schematic.Sheet(sizes, o)
	if err != nil {
		t.Fatal(err)
	}
	for _, height := range []float64{200, 90} {
		made, note, err := schematic.Figure(sizes, o, height)
		if err != nil {
			t.Fatal(err)
		}
		if made.Height > height || made.Height < height/2 || made.Width != whole.Width || !strings.HasPrefix(note, "Outlines to scale in size S. Laid flat,") {
			t.Errorf("in %.0f mm it is %.0f × %.0f mm, note %q", height, made.Width, made.Height, note)
		}
		for _, text := range texts(&made.Root) {
			if strings.HasPrefix(text.String, "The ") {
				t.Errorf("%q is on it", text.String)
			}
		}
	}
	if _, _, err := schematic.Figure(sizes, o, 20); err == nil {
		t.Error("a schematic was drawn where it has no room")
	}
	facts, err := schematic.Measurements(sizes, o)
	if err != nil || len(facts) != 3 {
		t.Fatal(facts, err)
	}
	all := ""
	for _, text := range texts(&whole.Root) {
		all += text.String + " "
	}
	for _, f := range facts {
		if want := f.Name + " " + inCentimetres(f.Values[0]) + " "; !strings.Contains(all, want) {
			t.Errorf("%s is not what the sheet lists: %s", want, all)
		}
	}
}

// What only the words of the special stitches abbreviate is in the list too, in its
// place and once.
func TestYarnOverIsAbbreviated(t *testing.T) {
	told := []working.SpecialStitch{{Name: "dc2tog", Words: "[yo, insert hook] twice"}}
	names := func(l writeup.Terms) (s string) {
		for _, t := range l {
			s += t.Name + " "
		}
		return s
	}
	for _, c := range []struct {
		l    writeup.Terms
		want string
	}{
		{writeup.Terms{{Name: "ch"}, {Name: "st(s)"}}, "ch st(s) yo "},
		{writeup.Terms{{Name: "ch"}, {Name: "yo"}}, "ch yo "},
	} {
		if got := names(withYarnOver(c.l, told)); got != c.want {
			t.Errorf("got %s, want %s", got, c.want)
		}
	}
	if got := names(withYarnOver(writeup.Terms{{Name: "ch"}}, nil)); got != "ch " {
		t.Errorf("got %s", got)
	}
}
