package working

import (
	"fmt"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"

	"whorl/patterns"
	"whorl/patterns/fabric"
	"whorl/patterns/fault"
	"whorl/patterns/stitch"
)

// One piece in the words of three designers is one fabric, stitch for stitch
// and place for place. The files are NAME-a.yaml, NAME-b.yaml and NAME-c.yaml;
// every round's counts in them were worked out by hand.
func TestSameFabricInOtherWords(t *testing.T) {
	first, _ := filepath.Glob("../../testdata/patterns/*-a.yaml")
	if len(first) == 0 {
		t.Fatal("no patterns")
	}
	for _, a := range first {
		name := strings.TrimSuffix(a, "-a.yaml")
		t.Run(filepath.Base(name), func(t *testing.T) {
			of := workFile(t, a)
			for _, x := range []string{"b", "c"} {
				other := workFile(t, name+"-"+x+".yaml")
				if of == nil || other == nil {
					continue
				}
				if d := difference(of, other); d != "" {
					t.Errorf("a and %s differ: %s", x, strings.ReplaceAll(d, "OTHER", x))
				}
			}
		})
	}
}

// The patterns of every other kind are read and worked without a fault.
func TestOtherKinds(t *testing.T) {
	files, _ := filepath.Glob("../../testdata/patterns/more/*.yaml")
	published, _ := filepath.Glob("../../testdata/patterns/published/*.yaml")
	if files = append(files, published...); len(published) == 0 {
		t.Fatal("no patterns")
	}
	for _, file := range files {
		t.Run(strings.TrimSuffix(filepath.Base(file), ".yaml"), func(t *testing.T) { workFile(t, file) })
	}
}

// workFile works a file. Its errors are the test's, and then it gives nothing.
func workFile(t *testing.T, file string) []*fabric.Fabric {
	t.Helper()
	data, err := os.ReadFile(file)
	if err != nil {
		t.Error(err)
		return nil
	}
	p, err := patterns.Read(filepath.Base(file), data)
	if err != nil {
		t.Error(err)
		return nil
	}
	fabrics, faults := Work(p, rule{})
	wrong := false
	for _, f := range faults {
		if f.Severity == fault.Error {
			t.Error(f.Error())
			wrong = true
		}
	}
	if wrong {
		return nil
	}
	return fabrics
}

// difference is the first difference between two fabrics in words, "" when
// there is none. Names, labels, groups and places in the file may differ.
func difference(a, b []*fabric.Fabric) string {
	if len(a) != len(b) {
		return fmt.Sprintf("a has %d sizes, OTHER has %d", len(a), len(b))
	}
	for i := range a {
		size := ""
		if len(a) > 1 {
			size = fmt.Sprintf("size %d (%s), ", i+1, a[i].Size)
		}
		if len(a[i].Parts) != len(b[i].Parts) {
			return fmt.Sprintf("%sa has %d parts, OTHER has %d", size, len(a[i].Parts), len(b[i].Parts))
		}
		for k := range a[i].Parts {
			if d := partDifference(a[i].Parts[k], b[i].Parts[k]); d != "" {
				return fmt.Sprintf("%spart %d, %s", size, k+1, d)
			}
		}
	}
	return ""
}

func partDifference(a, b *fabric.Part) string {
	if a.Worked != b.Worked || a.From != b.From {
		return fmt.Sprintf("a is worked %d from part %d, OTHER %d from part %d", a.Worked, a.From, b.Worked, b.From)
	}
	for n := 0; n < len(a.Rounds) && n < len(b.Rounds); n++ {
		if d := roundDifference(a, b, n); d != "" {
			return d
		}
	}
	if len(a.Rounds) != len(b.Rounds) {
		return fmt.Sprintf("a ends with %q, the %d. round worked, OTHER with %q, the %d.",
			a.Rounds[len(a.Rounds)-1].Label, len(a.Rounds), b.Rounds[len(b.Rounds)-1].Label, len(b.Rounds))
	}
	return ""
}

func roundDifference(a, b *fabric.Part, n int) string {
	ra, rb := a.Rounds[n], b.Rounds[n]
	at := fmt.Sprintf("%s (in OTHER %s)", roundName(ra), roundName(rb))
	if ra.Number != rb.Number || ra.Row != rb.Row || ra.Ring != rb.Ring || ra.Carried != rb.Carried || ra.Edge != rb.Edge {
		return fmt.Sprintf("%s: number, row, ring, carried, edge: a %v, OTHER %v", at,
			[]any{ra.Number, ra.Row, ra.Ring, ra.Carried, ra.Edge}, []any{rb.Number, rb.Row, rb.Ring, rb.Carried, rb.Edge})
	}
	for i := 0; i < len(ra.Stitches) || i < len(rb.Stitches); i++ {
		if i < len(ra.Stitches) && i < len(rb.Stitches) && sameStitch(&ra.Stitches[i], &rb.Stitches[i]) {
			continue // and so are the words for them, where all before is the same
		}
		sa, sb := stitchWords(a, n, i), stitchWords(b, n, i)
		return fmt.Sprintf("%s, stitch %d:\n\ta     has %s\n\tOTHER has %s\n\ta     in whole: %s\n\tOTHER in whole: %s",
			at, i+1, sa, sb, written(a, n), written(b, n))
	}
	if !reflect.DeepEqual(spans(ra.Spaces), spans(rb.Spaces)) {
		return fmt.Sprintf("%s: chain spaces (from stitch, up to stitch): a %v, OTHER %v", at, ra.Spaces, rb.Spaces)
	}
	if ra.Closing != rb.Closing || ra.Wrong != rb.Wrong || ra.Reversed != rb.Reversed {
		return fmt.Sprintf("%s: closing, wrong side, reversed: a %v, OTHER %v", at,
			[]any{ra.Closing, ra.Wrong, ra.Reversed}, []any{rb.Closing, rb.Wrong, rb.Reversed})
	}
	return ""
}

func roundName(r *fabric.Round) string {
	if r.Label == "" {
		return "the foundation"
	}
	return r.Label
}

// spans keeps an empty list apart from none at all out of the comparison.
func spans(s []fabric.Span) []fabric.Span { return append([]fabric.Span{}, s...) }

// stitchWords is a stitch as the cases write it, with what else is compared.
func stitchWords(p *fabric.Part, n, i int) string {
	r := p.Rounds[n]
	if i >= len(r.Stitches) {
		return "nothing more"
	}
	st := &r.Stitches[i]
	s := fmt.Sprintf("%s [%s, role %d", one(p, n, st), st.Kind.Name(stitch.US), st.Role)
	if st.Counts {
		s += ", counts"
	}
	if st.As.Is() {
		s += " as " + st.As.Name(stitch.US)
	}
	if st.Chains > 0 {
		s += fmt.Sprintf(", %d chains", st.Chains)
	}
	for _, pl := range st.On {
		s += fmt.Sprintf(", on %d.%d", pl.At.Round, pl.At.Stitch)
	}
	return s + "]"
}

func sameStitch(a, b *fabric.Stitch) bool {
	if len(a.On) != len(b.On) {
		return false
	}
	for i := range a.On {
		if a.On[i] != b.On[i] {
			return false
		}
	}
	return a.Kind == b.Kind && a.Role == b.Role && a.Chains == b.Chains && a.Counts == b.Counts && a.As == b.As
}

// TestRefused works patterns with ordinary work that is not followed: they are
// refused, at the right line, and not miscounted.
func TestRefused(t *testing.T) {
	for _, c := range []struct {
		file, code string
		line       int
	}{
		{"marker", "marker", 8}, // up to a marker, of which the words do not say where it is
	} {
		file := filepath.Join("..", "..", "testdata", "patterns", "refused", c.file+".yaml")
		data, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		p, err := patterns.Read(file, data)
		if err != nil {
			t.Fatal(err)
		}
		_, faults := Work(p, rule{})
		if len(faults) == 0 || faults[0].Code != c.code || faults[0].Line != c.line {
			t.Errorf("%s: %v", c.file, faults)
		}
	}
}
