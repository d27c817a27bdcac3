package working

import (
	"fmt"
	"slices"

	"whorl/patterns/fault"
	"whorl/patterns/notation"
	"whorl/patterns/stitch"
)

// checkBegun notices a beginning stitch of the designer's own that cannot stand for the one
// it begins a round of: a "beg cl" of ch 3 and 2 dc together for a cluster of 4 dc. The
// chain stands for the first of them, or for none.
func (w *work) checkBegun() {
	for i := range w.p.Stitches {
		s := &w.p.Stitches[i]
		d := w.definitions[notation.Plain(s.Name)]
		of := begun(w.definitions, notation.Plain(s.Name))
		if d == nil || of == "" {
			continue
		}
		beg, whole := plainLegs(d.items), plainLegs(w.definitions[of].items)
		if len(beg) < 2 || len(whole) == 0 || beg[0].Base != stitch.Chain || slices.Equal(beg[1:], whole) || slices.Equal(beg[1:], whole[1:]) {
			continue
		}
		f := w.p.Fault(s.Pos, len([]rune(s.Name)), "beginning", fmt.Sprintf("%s has %s beside its chain, and %s has %s", s.Name, w.runsOf(beg[1:]), of, w.runsOf(whole)),
			"The chain stands for one of the stitches or for none: the others are to be the same.")
		f.Severity = fault.Warning
		w.faults = append(w.faults, f)
	}
}

// runsOf is a run of stitches in words: "2 dc and 1 tr".
func (w *work) runsOf(l []stitch.Kind) string {
	var runs []string
	for from := 0; from < len(l); {
		to := from
		for to < len(l) && l[to] == l[from] {
			to++
		}
		runs = append(runs, fmt.Sprintf("%d %s", to-from, l[from].Name(w.p.Terms)))
		from = to
	}
	return listed(runs, "and")
}

// plainLegs are the plain stitches that a definition makes, each leg of a cluster one of
// them, with the chain that it begins with before them; nil where it holds anything else
// but chains.
func plainLegs(items []notation.Item) (l []stitch.Kind) {
	for i, it := range items {
		switch it := it.(type) {
		case *notation.Chain:
			if i == 0 {
				l = append(l, stitch.Of(stitch.Chain))
			}
		case *notation.Counts, *notation.Note:
		case *notation.Group:
			in := plainLegs(it.Items)
			if in == nil {
				return nil
			}
			if i > 0 && in[0].Base == stitch.Chain {
				in = in[1:]
			}
			l = append(l, in...)
		case *notation.Stitches:
			k := it.What.Kind
			if it.What.Name != "" || k.Base < stitch.Single || len(it.N.Values) > 1 || len(it.Places) > 1 || it.Times.Set() || it.What.Shaping != 0 ||
				len(it.Places) == 1 && it.Places[0].N.Set() && k.Shape == stitch.Plain {
				return nil
			}
			n := max(k.Legs, 1)
			if it.N.Set() {
				n *= it.N.For(0)
			}
			for range n {
				l = append(l, stitch.Of(k.Base))
			}
		default:
			return nil
		}
	}
	return l
}
