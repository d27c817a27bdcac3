package working

import (
	"slices"

	"whorl/patterns/fabric"
	"whorl/patterns/notation"
	"whorl/patterns/stitch"
)

// plainKinds are the stitches that the words of a group make, where they are plain
// ones and chains; nil for any other and for a single one.
func plainKinds(items []notation.Item) (l []stitch.Kind) {
	for _, it := range items {
		k, n := stitch.Of(stitch.Chain), 0
		switch it := it.(type) {
		case *notation.Stitches:
			if k = it.What.Kind; !k.Is() || it.Times.Set() || len(it.But) > 0 || len(it.N.Values) > 1 {
				return nil
			}
			n = max(it.N.For(0), 1)
		case *notation.Chain:
			if len(it.N.Values) > 1 {
				return nil
			}
			n = it.N.For(0)
		case *notation.Note:
		default:
			return nil
		}
		if n > maxRound {
			return nil
		}
		l = append(l, slices.Repeat([]stitch.Kind{k}, n)...)
	}
	if len(l) < 2 {
		return nil
	}
	return l
}

// writtenOut tells of the groups without a name which are like one of the designer's
// own stitches: "(2 dc, ch 2, 2 dc) in next sp" beside a shell that is just that.
func (w *roundWork) writtenOut() {
	w.besideChains()
	for i := range w.r.Groups {
		g := &w.r.Groups[i]
		if g.Name != "" {
			g.Like = begun(w.definitions, g.Name) // the beginning one is one of them
			continue
		}
		kinds, like := kindsIn(w.r.Stitches[g.From:g.To]), 0
		for name, d := range w.definitions {
			if slices.Equal(d.makes, kinds) {
				g.Like = name
				like++
			}
		}
		if like != 1 {
			g.Like = "" // which of them is not said
		}
	}
}

// besideChains makes groups of what is written out in a row, like one of the designer's own stitches:
// "dc in next ch, ch 1, dc in same ch" beside a V-st that is just that.
func (w *roundWork) besideChains() {
	st, found := w.r.Stitches, false
	for i := 0; i < len(st); i++ {
		if st[i].Group > 0 || st[i].Role != fabric.Worked || len(st[i].On) != 1 || st[i].IsChain() {
			continue
		}
		end := i + 1
		for end < len(st) && st[end].Group == 0 && st[end].Role == fabric.Worked && (st[end].IsChain() || slices.Equal(st[end].On, st[i].On)) {
			end++
		}
		for st[end-1].IsChain() {
			end--
		}
		kinds := kindsIn(st[i:end])
		for _, d := range w.definitions {
			if end-i > 2 && slices.Contains(kinds, stitch.Of(stitch.Chain)) && slices.Equal(d.makes, kinds) {
				w.r.Groups, found = append(w.r.Groups, fabric.Group{Span: fabric.Span{From: i, To: end}}), true
				for j := i; j < end; j++ {
					st[j].Group = len(w.r.Groups)
				}
				break
			}
		}
		i = end - 1
	}
	if !found {
		return
	}
	order := make([]int, len(w.r.Groups))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return w.r.Groups[a].From - w.r.Groups[b].From })
	groups, now := make([]fabric.Group, len(order)), make([]int, len(order))
	for i, k := range order {
		groups[i], now[k] = w.r.Groups[k], i
	}
	w.r.Groups = groups
	for i := range st {
		if st[i].Group > 0 {
			st[i].Group = now[st[i].Group-1] + 1
		}
	}
}

// likeNamed is how many groups of a round are written out like what the name stands
// for.
func likeNamed(r *fabric.Round, name string) int {
	n := 0
	for _, g := range r.Groups {
		if g.Name == "" && g.Like == name && name != "" {
			n++
		}
	}
	return n
}

// beginsLike is 1 when the round begins with a chain that counts and with it writes out
// what the name stands for: "ch 4 (counts as dc, ch 1), dc in same st" is a V-st.
func (w *roundWork) beginsLike(name string) int {
	d := w.definitions[name]
	if d == nil || len(d.makes) == 0 {
		return 0
	}
	at := 0
	for at < len(w.r.Stitches) && w.r.Stitches[at].Role == fabric.Travel {
		at++
	}
	end := at + len(d.makes)
	if end > len(w.r.Stitches) || w.r.Stitches[at].Role != fabric.Start || !w.r.Stitches[at].Counts {
		return 0
	}
	for i, k := range d.makes {
		if st := &w.r.Stitches[at+i]; st.Counted() != k || st.Group > 0 {
			return 0
		}
	}
	return 1
}
