package working

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"whorl/patterns"
	"whorl/patterns/fabric"
	"whorl/patterns/fault"
	"whorl/patterns/stitch"
)

var update = flag.Bool("update", false, "rewrite the expected results in testdata/notation")

// A file of cases is a topic. Each case begins with a line "== what it shows";
// lines "key: value" that give facts of the file (terms, sizes, stitches, notes,
// worked) may follow; then come the words, one round a line (a line "-- rounds" or
// "-- rows: Part row ends" among them begins another part, worked so, from what is named);
// and then what is expected of the last round, as the test writes it:
//
//	-> the stitches of the last round, with the places they stand on
//	!! line:column code message (the line counted from the first of the words)
//
// A stitch is written kind@place: 3 is the third stitch of the round below (in
// the direction of that round), s2 its second chain space, c4 its fourth chain,
// R the ring, e5 the fifth row end, and a place two rounds down has a ' behind
// it. A seam through both layers is the last round where there is one. f, b, F, B before a number are the front loop, the back loop, the front
// and the back post; < is the gap before the stitch. A beginning chain is
// +3, or +3=dc when it counts; a join is J. What does not count has ~ before
// it.
type testCase struct {
	title  string
	facts  []string
	words  []string
	expect []string
	line   int
}

func readCases(t *testing.T, file string) []testCase {
	data, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	var l []testCase
	for i, line := range strings.Split(string(data), "\n") {
		switch {
		case strings.HasPrefix(line, "== "):
			l = append(l, testCase{title: line[3:], line: i + 1})
		case len(l) == 0 || strings.TrimSpace(line) == "" || strings.HasPrefix(line, "#"):
		case strings.HasPrefix(line, "-> "), strings.HasPrefix(line, "!! "):
			c := &l[len(l)-1]
			c.expect = append(c.expect, line)
		default:
			c := &l[len(l)-1]
			key, _, _ := strings.Cut(line, ":")
			switch key {
			case "terms", "sizes", "worked", "gauge", "stitches", "notes":
				c.facts = append(c.facts, line)
			default:
				c.words = append(c.words, line)
			}
		}
	}
	return l
}

// pattern is the case as a pattern file, and the number of the first line of
// its words.
func (c *testCase) pattern() (string, int) {
	var b strings.Builder
	worked := "worked: rounds"
	var defs []string
	for _, f := range c.facts {
		switch {
		case strings.HasPrefix(f, "worked:"):
			worked = f
		case strings.HasPrefix(f, "stitches:"):
			defs = append(defs, strings.TrimSpace(strings.TrimPrefix(f, "stitches:")))
		default:
			fmt.Fprintln(&b, f)
		}
	}
	if len(defs) > 0 {
		fmt.Fprintln(&b, "stitches:")
		for _, d := range defs {
			fmt.Fprintln(&b, "  "+d)
		}
	}
	fmt.Fprintf(&b, "parts:\n  - name: Part\n    %s\n    text: |\n", worked)
	first := strings.Count(b.String(), "\n") + 1
	for i, w := range c.words {
		if worked, ok := strings.CutPrefix(w, "-- "); ok {
			worked, from, _ := strings.Cut(worked, ": ")
			fmt.Fprintf(&b, "  - name: More %d\n    worked: %s\n    from: %s\n    text: |\n", i, worked, from)
			continue
		}
		fmt.Fprintln(&b, "      "+w)
	}
	return b.String(), first
}

func (c *testCase) result() []string {
	file, first := c.pattern()
	p, err := patterns.Read("case", []byte(file))
	if err != nil {
		return []string{"!! " + err.Error()}
	}
	fabrics, faults := Work(p, rule{})
	var l []string
	for _, f := range faults {
		head := "!! "
		if f.Severity == fault.Warning {
			head += "warning "
		}
		if f.Line < first {
			l = append(l, fmt.Sprintf("%s%s %s", head, f.Code, f.Message))
			continue
		}
		line := f.Line - first + 1
		for i, w := range c.words {
			if strings.HasPrefix(w, "-- ") && line > i+1 {
				line -= 3 // a new part has four lines in the file
			}
		}
		l = append(l, fmt.Sprintf("%s%d:%d %s %s", head, line, f.Column-6, f.Code, f.Message))
	}
	for _, f := range fabrics {
		part := f.Parts[len(f.Parts)-1]
		if len(part.Rounds) == 0 {
			continue
		}
		if part.Seam != nil {
			closed := *part
			closed.Rounds = append(closed.Rounds[:len(closed.Rounds):len(closed.Rounds)], part.Seam)
			part = &closed
		}
		size := ""
		if f.Size != "" {
			size = f.Size + ": "
		}
		n := len(part.Rounds) - 1
		l = append(l, fmt.Sprintf("-> %s%s: %s", size, part.Rounds[n].Label, written(part, n)))
	}
	return l
}

// rule has stitches of 10 mm each way.
type rule struct{}

func (rule) Height(stitch.Kind, stitch.Into) float64 { return 10 }
func (rule) Taller(int) float64                      { return 1 }
func (rule) Width(stitch.Kind, stitch.Into) float64  { return 10 }

// written is a round as the cases write it. Runs of alike stitches in
// neighbouring places are drawn together: sc@1-6.
func written(p *fabric.Part, n int) string {
	r := p.Rounds[n]
	var l []string
	for i := range r.Stitches {
		l = append(l, one(p, n, &r.Stitches[i]))
	}
	var out []string
	for i := 0; i < len(l); {
		j := i + 1
		for j < len(l) && l[j] == l[i] {
			j++
		}
		if j-i > 1 {
			out = append(out, fmt.Sprintf("%d*%s", j-i, l[i]))
			i = j
			continue
		}
		k, at, ok := split2(l[i])
		for j < len(l) {
			k2, at2, ok2 := split2(l[j])
			if !ok || !ok2 || k2 != k || at2 != at+j-i || j+1 < len(l) && l[j+1] == l[j] {
				break
			}
			j++
		}
		if j-i > 2 {
			out = append(out, fmt.Sprintf("%s@%d-%d", k, at, at+j-i-1))
			i = j
			continue
		}
		out = append(out, l[i])
		i++
	}
	return strings.Join(out, " ")
}

func split2(s string) (kind string, at int, ok bool) {
	k, n, found := strings.Cut(s, "@")
	if !found {
		return "", 0, false
	}
	for _, c := range n {
		if c < '0' || c > '9' {
			return "", 0, false
		}
		at = at*10 + int(c-'0')
	}
	return k, at, true
}

func one(p *fabric.Part, n int, st *fabric.Stitch) string {
	name := strings.ReplaceAll(st.Kind.Name(stitch.US), " ", "-")
	switch st.Role {
	case fabric.Start:
		name = fmt.Sprintf("+%d", st.Chains)
		if st.Counts {
			name += "=" + st.As.Name(stitch.US)
		}
	case fabric.Join:
		return "J"
	case fabric.Travel:
		name = "~" + name
	case fabric.FirstHalf:
		name = "half(" + name + "=" + st.As.Name(stitch.US) + ")"
	case fabric.LastHalf:
		name = "~half(" + name + ")"
	default:
		if st.Kind.Base == stitch.Chain && st.Kind.Shape == stitch.Plain {
			return "ch"
		}
		if !st.Counts {
			name = "~" + name
		}
	}
	var at []string
	for _, pl := range st.On {
		at = append(at, placeName(p, n, pl))
	}
	if len(at) > 0 {
		name += "@" + strings.Join(at, ",")
	}
	return name
}

func placeName(p *fabric.Part, n int, pl fabric.Place) string {
	switch pl.Into {
	case stitch.Ring:
		return "R"
	case stitch.RowEnd:
		return fmt.Sprintf("e%d", pl.At.Round)
	}
	r := p.Rounds[pl.At.Round]
	s := ""
	switch pl.Into {
	case stitch.Space:
		for i, sp := range r.Spaces {
			if sp.From <= pl.At.Stitch && pl.At.Stitch < sp.To {
				s = fmt.Sprintf("s%d", i+1)
			}
		}
	default:
		s = map[stitch.Into]string{stitch.FrontLoop: "f", stitch.BackLoop: "b", stitch.FrontPost: "F", stitch.BackPost: "B",
			stitch.Between: "<", stitch.Underside: "u", stitch.BackBump: "bump", stitch.ThirdLoop: "3rd"}[pl.Into]
		count, chains := 0, 0
		for i := 0; i <= pl.At.Stitch; i++ {
			if r.Stitches[i].Counts {
				count++
			}
			if r.Stitches[i].IsChain() {
				chains++
			}
		}
		if r.Stitches[pl.At.Stitch].IsChain() {
			s += fmt.Sprintf("c%d", chains)
		} else {
			s += fmt.Sprintf("%d", count)
		}
	}
	for d := pl.At.Round; d < n-1; d++ {
		s += "'"
	}
	return s
}

func TestCases(t *testing.T) {
	files, _ := filepath.Glob("../../testdata/notation/*.txt")
	if len(files) == 0 {
		t.Fatal("no cases")
	}
	for _, file := range files {
		cases := readCases(t, file)
		if *update {
			rewrite(t, file, cases)
			continue
		}
		for _, c := range cases {
			t.Run(filepath.Base(file)+"/"+c.title, func(t *testing.T) {
				got := strings.Join(c.result(), "\n")
				if want := strings.Join(c.expect, "\n"); got != want {
					t.Errorf("%s:%d: %s\n got %s\nwant %s", filepath.Base(file), c.line, strings.Join(c.words, "\n"), got, want)
				}
			})
		}
	}
}

// rewrite puts the results in place of what is expected.
func rewrite(t *testing.T, file string, cases []testCase) {
	data, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	var out []string
	n := -1
	flush := func() {
		if n >= 0 {
			for len(out) > 0 && strings.TrimSpace(out[len(out)-1]) == "" {
				out = out[:len(out)-1]
			}
			out = append(out, cases[n].result()...)
			out = append(out, "")
		}
	}
	for _, line := range strings.Split(strings.TrimRight(string(data), "\n"), "\n") {
		if strings.HasPrefix(line, "== ") {
			flush()
			n++
		}
		if n >= 0 && (strings.HasPrefix(line, "-> ") || strings.HasPrefix(line, "!! ")) {
			continue
		}
		out = append(out, line)
	}
	flush()
	if err := os.WriteFile(file, []byte(strings.TrimRight(strings.Join(out, "\n"), "\n")+"\n"), 0o644); err != nil {
		t.Fatal(err)
	}
}

// splitCases is the words of every case in a file.
func splitCases(data string) []string {
	var l []string
	for _, c := range strings.Split("\n"+data, "\n== ")[1:] {
		var words []string
		for _, line := range strings.Split(c, "\n")[1:] {
			if key, _, ok := strings.Cut(line, ":"); !strings.HasPrefix(line, "->") && !strings.HasPrefix(line, "!!") && line != "" &&
				!(ok && (key == "terms" || key == "sizes" || key == "worked" || key == "gauge" || key == "stitches" || key == "notes")) {
				words = append(words, line)
			}
		}
		l = append(l, strings.Join(words, "\n"))
	}
	return l
}

// text is words as a pattern file holds them.
func text(words string) patterns.Text {
	t := patterns.Text{First: 1, Lines: strings.Split(words, "\n")}
	t.Columns = make([]int, len(t.Lines))
	for i := range t.Columns {
		t.Columns[i] = 1
	}
	return t
}
