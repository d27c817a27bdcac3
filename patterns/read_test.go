package patterns

import (
	"bytes"
	"fmt"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"whorl/patterns/fault"
)

const small = "title: é Cap\nsizes: [A, B]\nhead: 41 (50) cm\nparts:\n  - name: Body\n    text: |\n      Rnd 1: 6 sc.\n\n      Rnd 2: 12 sc.\n"

// TestEnds reads the same file with other line ends and a byte order mark.
func TestEnds(t *testing.T) {
	want, err := Read("f", []byte(small))
	if err != nil {
		t.Fatal(err)
	}
	for name, data := range map[string]string{
		"mark":         "\ufeff" + small,
		"Windows":      strings.ReplaceAll(small, "\n", "\r\n"),
		"Windows mark": "\ufeff" + strings.ReplaceAll(small, "\n", "\r\n"),
		"old":          strings.ReplaceAll(small, "\n", "\r"),
	} {
		got, err := Read("f", []byte(data))
		if err != nil {
			t.Errorf("%s: %v", name, err)
		}
		if diff := cmp.Diff(want, got); diff != "" {
			t.Errorf("%s: %s", name, diff)
		}
	}
}

// TestPlaces checks that every line of words stands where Text says.
func TestPlaces(t *testing.T) {
	for _, file := range tables(t) {
		for _, c := range readTable(t, file) {
			p, err := Read("f", []byte(c.input))
			if err != nil {
				continue
			}
			for _, q := range p.Parts {
				checkPlaces(t, c.name, p, q.Text)
			}
			for _, d := range p.Stitches {
				checkPlaces(t, c.name, p, d.Words)
			}
		}
	}
}

func checkPlaces(t *testing.T, name string, p *Pattern, text Text) {
	t.Helper()
	unescape := strings.NewReplacer(`\"`, `"`, `''`, `'`)
	for i, words := range text.Lines {
		at := text.Pos(i, 0)
		line := []rune(p.Lines[at.Line-1])
		if !strings.HasPrefix(unescape.Replace(string(line[at.Column-1:])), words) {
			t.Errorf("%s: %q is not at %d:%d of %q", name, words, at.Line, at.Column, string(line))
		}
	}
}

// TestUnreadable reads what is not text. Each has one clear fault.
func TestUnreadable(t *testing.T) {
	for _, c := range []struct {
		name, data, want string
		pos              fault.Pos
	}{
		{"empty", "", "the file is empty", fault.Pos{}},
		{"blank", " \n\n", "the file is empty", fault.Pos{}},
		{"only a mark", "\ufeff", "the file is empty", fault.Pos{}},
		{"not UTF-8", "title: é\nhook: 5\xff\n", "this is not UTF-8 text", fault.Pos{Line: 2, Column: 8}},
		{"Latin-1", "title: \xe9\n", "this is not UTF-8 text", fault.Pos{Line: 1, Column: 8}},
		{"NUL", "title: é\x00\n", "there is a NUL character here", fault.Pos{Line: 1, Column: 9}},
		{"UTF-16", "t\x00i\x00t\x00", "there is a NUL character here", fault.Pos{Line: 1, Column: 2}},
		{"control", "title: a\x1bb\n", "there is an invisible character here (U+001B)", fault.Pos{Line: 1, Column: 9}},
		{"separator", "title: a\u2028b\n", "there is an invisible line break here (U+2028)", fault.Pos{Line: 1, Column: 9}},
		{"mark inside", "title: a\ufeffb\n", "there is an invisible character here (U+FEFF)", fault.Pos{Line: 1, Column: 9}},
		{"too large", strings.Repeat("a", MaxBytes+1), "the file is larger than 4 MB", fault.Pos{}},
		{"long line", "title: x\nnotes: " + strings.Repeat("a", MaxLine), "this line is longer than 10000 characters", fault.Pos{Line: 2}},
		{"nested", strings.Repeat("[", 9999) + "\n" + strings.Repeat("[", 9999), "the file is nested too deeply", fault.Pos{}},
	} {
		p, err := Read("f", []byte(c.data))
		list := faults(t, p, err)
		if len(list) != 1 || list[0].Message != c.want || list[0].Pos != c.pos {
			t.Errorf("%s: got %v, want %q at %v", c.name, list, c.want, c.pos)
		}
		if len(list) > 0 && strings.ContainsAny(list[0].Error(), "\x00\x1b") {
			t.Errorf("%s: the message cannot be shown: %q", c.name, list[0].Error())
		}
	}
}

// TestManyFaults checks that messages are bounded and say so.
func TestManyFaults(t *testing.T) {
	var b bytes.Buffer
	for i := range 1000 {
		fmt.Fprintf(&b, "k%d: x\n", i)
	}
	p, err := Read("f", b.Bytes())
	list := faults(t, p, err)
	if len(list) != maxFaults+1 || !strings.Contains(list[maxFaults].Message, "more faults") {
		t.Errorf("%d faults, the last %v", len(list), list[len(list)-1])
	}
}

func TestFault(t *testing.T) {
	p, err := Read("cap.yaml", []byte(small))
	if err != nil {
		t.Fatal(err)
	}
	f := p.Fault(p.Parts[0].Text.Pos(2, 7), 5, "count", "twelve are too many", "Count again.")
	want := "cap.yaml:9:14: twelve are too many\n    Rnd 2: 12 sc.\n           ^^^^^\n  Count again."
	if diff := cmp.Diff(want, f.Error()); diff != "" {
		t.Error(diff)
	}
	if f := p.Fault(fault.Pos{Line: 99}, 0, "x", "y", ""); f.Source != "" || f.Length != 1 {
		t.Errorf("outside the file: %+v", f)
	}
}

func TestStarter(t *testing.T) {
	p, err := Read("starter.yaml", Starter())
	if err != nil {
		t.Fatal(err)
	}
	if len(p.Sizes) < 3 || len(p.Head) != len(p.Sizes) || len(p.Gauge) == 0 || len(p.Parts) == 0 || len(p.Pictures) == 0 {
		t.Errorf("the starting file shows too little: %+v", p)
	}
	Starter()[0] = 'x'
	if Starter()[0] == 'x' {
		t.Error("the starting file can be changed")
	}
}

// FuzzRead reads anything: no panic, faults that can be shown, places that are
// in the file.
func FuzzRead(f *testing.F) {
	for _, file := range tables(f) {
		for _, c := range readTable(f, file) {
			f.Add([]byte(c.input))
		}
	}
	f.Add([]byte(small))
	f.Add(Starter())
	f.Add([]byte("\ufefftitle: \xff\x00"))
	f.Fuzz(func(t *testing.T, data []byte) {
		p, err := Read("f", data)
		if faults(t, p, err) != nil {
			return
		}
		if len(p.Sizes) == 0 || len(p.Sizes) > MaxSizes || len(p.Parts) == 0 {
			t.Errorf("read without fault: %+v", p)
		}
		for _, l := range []Lengths{p.Head, p.Ease} {
			if len(l) != 0 && len(l) != len(p.Sizes) {
				t.Errorf("%d lengths for %d sizes", len(l), len(p.Sizes))
			}
		}
		for _, g := range p.Gauge {
			counted := g.Over > 0 && g.Rows >= 0 && (g.Count > 0 || g.Rows > 0) && g.Sample == nil
			sampled := g.Over > 0 && g.Sample != nil && g.Count == 0 && g.Rows == 0 && g.Sample.From <= g.Sample.To
			silent := g.Over == 0 && g.Sample == nil && g.Count == 0 && g.Rows == 0
			if !counted && !sampled && !silent {
				t.Errorf("gauge %+v", g)
			}
		}
		for _, q := range p.Parts {
			for i, l := range q.Text.Lines {
				at := q.Text.Pos(i, 0)
				if at.Line < 1 || at.Line > len(p.Lines) || at.Column < 1 || at.Column > len([]rune(p.Lines[at.Line-1]))+1 {
					t.Errorf("%q is said to be at %v", l, at)
				}
			}
		}
	})
}

// FuzzLengths reads any list of lengths.
func FuzzLengths(f *testing.F) {
	f.Add("41 (50, 56) cm / 16 (19½, 22) in")
	f.Add("5-1/2\" [1/2/3]")
	f.Fuzz(func(t *testing.T, s string) {
		list, err := ParseLengths(s)
		if (err == nil) != (len(list) > 0) {
			t.Errorf("%q: %v, %v", s, list, err)
		}
		for _, l := range list {
			if !(l.MM >= -MaxLength && l.MM <= MaxLength) || millimetres[l.Unit] == 0 {
				t.Errorf("%q: %+v", s, l)
			}
		}
	})
}

func BenchmarkRead(b *testing.B) {
	data := Starter()
	b.SetBytes(int64(len(data)))
	for b.Loop() {
		if _, err := Read("f", data); err != nil {
			b.Fatal(err)
		}
	}
}
