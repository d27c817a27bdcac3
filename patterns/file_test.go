package patterns

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"whorl/patterns/fault"
)

var update = flag.Bool("update", false, "write what is read now into the tables of testdata/file")

// tableCase is one case of a table in testdata/file:
//
//	== name
//	the pattern file
//	-- want --
//	the faults, or what was read
type tableCase struct {
	name, input, want string
}

const wantMark = "-- want --\n"

func readTable(t testing.TB, file string) []tableCase {
	t.Helper()
	data, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	var cases []tableCase
	for _, s := range strings.Split("\n"+string(data), "\n== ")[1:] {
		name, rest, _ := strings.Cut(s, "\n")
		input, want, ok := strings.Cut(rest+"\n", wantMark)
		if !ok && !*update {
			t.Fatalf("%s: case %q has no %s", file, name, wantMark)
		}
		cases = append(cases, tableCase{name, input, strings.TrimRight(want, "\n") + "\n"})
	}
	return cases
}

func tables(t testing.TB) []string {
	t.Helper()
	files, err := filepath.Glob("../testdata/file/*.txt")
	if err != nil || len(files) == 0 {
		t.Fatal("no tables in testdata/file")
	}
	return files
}

// TestTables reads every pattern file of the tables.
func TestTables(t *testing.T) {
	for _, file := range tables(t) {
		cases := readTable(t, file)
		var b strings.Builder
		for _, c := range cases {
			got := outcome(Read("f", []byte(c.input)))
			fmt.Fprintf(&b, "== %s\n%s%s%s\n", c.name, c.input, wantMark, got)
			if *update {
				continue
			}
			t.Run(filepath.Base(file)+"/"+c.name, func(t *testing.T) {
				if diff := cmp.Diff(c.want, got); diff != "" {
					t.Errorf("want -, got +:\n%s", diff)
				}
			})
		}
		if *update {
			if err := os.WriteFile(file, []byte(strings.TrimRight(b.String(), "\n")+"\n"), 0o644); err != nil {
				t.Fatal(err)
			}
		}
	}
}

// outcome is what Read gave, for people: the faults, or the pattern's facts
// that are not empty.
func outcome(p *Pattern, err error) string {
	if err != nil {
		return err.Error() + "\n"
	}
	var b strings.Builder
	say := func(key, value string) {
		if value != "" {
			fmt.Fprintf(&b, "%s: %s\n", key, value)
		}
	}
	say("title", p.Title)
	say("designer", p.Designer)
	say("copyright", p.Copyright)
	say("terms", p.Terms.String())
	say("sizes", strings.Join(p.Sizes, " | "))
	say("head", lengthsText(p.Head))
	say("ease", lengthsText(p.Ease))
	for _, m := range p.Measures {
		say("measure", fmt.Sprintf("%d:%d %s is %v", m.Line, m.Column, m.Name, m.Value))
	}
	for _, g := range p.Gauge {
		switch n := g.Sample; {
		case g.Over == 0:
			say("gauge", fmt.Sprintf("%d:%d no size in %q", g.Line, g.Column, g.Words))
			continue
		case n != nil:
			say("gauge", fmt.Sprintf("%d:%d %q, rounds %d-%d, %.5g mm %s", g.Line, g.Column, n.Name, n.From, n.To, g.Over, n.Way))
			continue
		case g.Instead > 0:
			say("not used", fmt.Sprintf("but line %d", g.Instead))
		}
		say("gauge", fmt.Sprintf("%d:%d %.5g %s, %.5g rounds over %.5g mm", g.Line, g.Column, g.Count, g.Of, g.Rows, g.Over))
	}
	for _, w := range p.PostWidths {
		say("post", fmt.Sprint(w, " px"))
	}
	say("hook", p.Hook)
	for _, y := range p.Yarns {
		swatch, sample := y.Swatch, y.Sample
		y.Swatch, y.Sample = nil, nil
		say("yarn", strings.TrimSuffix(fmt.Sprintf("%+v", y), " Swatch:<nil> Sample:<nil>}")+"}")
		if swatch != nil {
			say("swatch", fmt.Sprintf("%d:%d %s, %.5g × %.5g mm, took %s", swatch.Line, swatch.Column, swatch.Of, swatch.Width, swatch.Height, swatch.Used))
		}
		if sample != nil {
			say("sample", fmt.Sprintf("%d:%d %q took %s", sample.Line, sample.Column, p.Sizes[sample.Size], sample.Used))
		}
	}
	if p.Notes != "" {
		say("notes", fmt.Sprintf("%q", p.Notes))
	}
	for _, d := range p.Stitches {
		say("stitch", fmt.Sprintf("%d:%d %s%s", d.Line, d.Column, d.Name, wordsText(d.Words)))
		if s := d.Symbol; s != nil {
			say("symbol", fmt.Sprintf("%d:%d %v × %v, from %v to %v, %d:%d %s", s.Line, s.Column, s.Width, s.Height, s.Foot, s.Top, s.PathPos.Line, s.PathPos.Column, s.Path))
		}
	}
	for _, q := range p.Parts {
		way := "rounds"
		if q.Rows {
			way = "rows"
		}
		from := ""
		if q.From != "" {
			from = fmt.Sprintf(" from %d:%d %s", q.FromPos.Line, q.FromPos.Column, q.From)
		}
		say("part", fmt.Sprintf("%d:%d %q in %s%s%s", q.Line, q.Column, q.Name, way, from, wordsText(q.Text)))
	}
	for _, q := range p.Pictures {
		say("picture", fmt.Sprintf("%d:%d %s: %s of %q, rounds %d-%d, sizes %q, repeats %d, %s, width %d",
			q.Line, q.Column, q.Name, q.Draw, q.Part, q.From, q.To, q.Sizes, q.Repeats, q.Paper, q.Width)+map[bool]string{true: ", nested"}[q.Nested])
	}
	return b.String()
}

func lengthsText(l Lengths) string {
	s := make([]string, len(l))
	for i := range l {
		s[i] = fmt.Sprintf("%s (%.5g mm)", l[i], l[i].MM)
	}
	return strings.Join(s, ", ")
}

func wordsText(t Text) string {
	var b strings.Builder
	for i, l := range t.Lines {
		fmt.Fprintf(&b, "\n  %d:%d %s", t.First+i, t.Columns[i], l)
	}
	return b.String()
}

// faults are the faults of a reading, which must be a fault.List of errors
// within the file, each with its line.
func faults(t *testing.T, p *Pattern, err error) fault.List {
	t.Helper()
	if p == nil {
		t.Fatal("no pattern")
	}
	if err == nil {
		return nil
	}
	list, ok := err.(fault.List)
	if !ok || len(list) == 0 {
		t.Fatalf("not a list of faults: %#v", err)
	}
	if len(list) > maxFaults+1 {
		t.Errorf("%d faults", len(list))
	}
	for _, f := range list {
		if f.Line < 0 || f.Line > len(p.Lines) || f.Column < 0 || f.Message == "" || f.Code == "" {
			t.Errorf("fault out of place: %#v", f)
		}
		if f.Line > 0 && f.Source != p.Lines[f.Line-1] {
			t.Errorf("source %q is not line %d", f.Source, f.Line)
		}
		if f.Error() == "" {
			t.Error("fault without words")
		}
	}
	return list
}
