package fabric

import "whorl/patterns/stitch"

// Change is an increase or a decrease: stitches of one round that stand in one
// place, or a stitch that several places are worked together in.
type Change struct {
	Stitches []int // of the round; one for a decrease
	By       int   // stitches gained, or below 0 lost
}

// Changes are the increases and decreases of a round, in the order of working.
// What is skipped, and what is worked into spaces, rings and row ends, is neither.
func (r *Round) Changes() []Change {
	var l []Change
	var last Place
	run := -1 // the index in l of the stitches in the last place
	before := -1
	for i := range r.Stitches {
		st := &r.Stitches[i]
		if st.Role == FirstHalf && st.As.Legs > 1 {
			l = append(l, Change{[]int{i}, 1 - st.As.Legs})
		} else if st.Counts && st.Kind.Shape == stitch.Together && len(st.On) > 1 && st.On[0] != st.On[1] {
			l = append(l, Change{[]int{i}, 1 - len(st.On)})
		}
		if !st.Counts || len(st.On) == 0 {
			continue
		}
		p := st.On[0]
		into := p.Into
		p.Into = stitch.Top // either loop, or the whole
		if into == stitch.Space || into == stitch.Ring || into == stitch.RowEnd || before < 0 || p != last {
			run = -1
		} else {
			if run < 0 {
				run = len(l)
				l = append(l, Change{Stitches: []int{before}})
			}
			l[run].Stitches = append(l[run].Stitches, i)
			l[run].By++
		}
		last, before = p, i
	}
	return l
}

// Increases is how many stitches the round gains by working several into one
// place, and Decreases how many it loses by working several together, as
// [Round.Changes] tells them.
func (r *Round) Increases() int {
	n := 0
	for _, c := range r.Changes() {
		n += max(c.By, 0)
	}
	return n
}

// Decreases is described at [Round.Increases].
func (r *Round) Decreases() int {
	n := 0
	for _, c := range r.Changes() {
		n -= min(c.By, 0)
	}
	return n
}
