package working

import (
	"slices"

	"whorl/patterns/fabric"
	"whorl/patterns/stitch"
)

// firstGroup names the group that a round begins with when the chain that
// begins it and the stitches beside that are what a named group of the round
// is: "ch 4 (counts as dc and ch 1), dc in same st" is the first V-st of a
// round of V-sts. A group without a name takes the chain in.
func (w *roundWork) firstGroup() {
	r := w.r
	from := w.travelled()
	if from >= len(r.Stitches) || r.Stitches[from].Role != fabric.Start || !r.Stitches[from].Counts || len(r.Stitches[from].On) == 0 {
		return
	}
	for _, g := range r.Groups {
		if g.Name != "" && g.From <= from && g.To > from {
			return // it has a name: beg V-st
		}
	}
	foot, to := r.Stitches[from].On[0], from+1
	for i := to; i < len(r.Stitches); i++ {
		if st := &r.Stitches[i]; len(st.On) > 0 {
			if st.Role != fabric.Worked || st.On[0] != foot {
				break
			}
			to = i + 1
		}
	}
	if foot.Into == stitch.Ring {
		// In a ring everything stands in one place: the first group is as long as
		// the next.
		for _, g := range r.Groups {
			if n := from + g.To - g.From; g.Name != "" && n <= g.From && n < to {
				to = n
				break
			}
		}
	}
	is := kindsIn(r.Stitches[from:to])
	for _, g := range r.Groups {
		if g.Name != "" && slices.Equal(is, kindsIn(r.Stitches[g.From:g.To])) {
			w.beginGroup(from, to, g.Name)
			return
		}
	}
	// "ch 3, 4 dc in same st" is a group of five.
	for i := range r.Groups {
		if g := &r.Groups[i]; g.Name == "" && g.From == from+1 && g.To <= to {
			g.From = from
			return
		}
	}
	if foot.Into == stitch.Ring || to-from < 2 {
		return
	}
	// "ch 4, dc in same st, *(dc, ch 1, dc) in next st": a group like the others.
	for _, g := range r.Groups {
		if g.Name == "" && g.From >= to && slices.Equal(is, kindsIn(r.Stitches[g.From:g.To])) {
			w.beginGroup(from, to, "")
			return
		}
	}
}

// beginGroup makes a group of the stitches between two numbers at the beginning of the round.
func (w *roundWork) beginGroup(from, to int, name string) {
	for i := range w.r.Stitches {
		if st := &w.r.Stitches[i]; st.Group > 0 {
			st.Group++
		} else if i >= from && i < to {
			st.Group = 1
		}
	}
	w.r.Groups = slices.Insert(w.r.Groups, 0, fabric.Group{Span: fabric.Span{From: from, To: to}, Name: name})
}

// kindsIn are the kinds of a run of stitches, as they count.
func kindsIn(l []fabric.Stitch) []stitch.Kind {
	kinds := make([]stitch.Kind, len(l))
	for i := range l {
		kinds[i] = l[i].Counted()
	}
	return kinds
}

// begunAlone reports whether the first of the single stitches of a name is the chain that the round
// begins with.
func begunAlone(r *fabric.Round, name string) bool {
	return slices.ContainsFunc(r.Groups, func(g fabric.Group) bool {
		return g.Name == name && g.To == g.From+1 && r.Stitches[g.From].Role == fabric.Start
	})
}
