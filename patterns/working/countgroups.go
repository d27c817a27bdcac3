package working

import (
	"fmt"
	"regexp"
	"slices"
	"strings"

	"whorl/patterns/fabric"
	"whorl/patterns/notation"
	"whorl/patterns/stitch"
)

// alike is how many shells a round has that has no name for them: three or more
// stitches in one place, all alike. Known is false for a round with unlike ones.
func alike(r *fabric.Round) (n int, known bool) {
	var first string
	end := 0
	for _, g := range r.Groups {
		if g.From < end || countIn(r.Stitches[g.From:g.To]) < 3 {
			continue // inside another
		}
		end = g.To
		var b strings.Builder
		for i := g.From; i < g.To; i++ {
			fmt.Fprint(&b, r.Stitches[i].Counted(), " ")
		}
		if n == 0 {
			first = b.String()
		}
		if b.String() != first {
			return 0, false
		}
		n++
	}
	for i := range r.Stitches {
		// One that the round begins with is split, or stands beside its chain.
		if st := &r.Stitches[i]; st.Role == fabric.Start && st.Counts && n > 0 {
			return 0, false
		}
	}
	return n, n > 0
}

// hasGroups reports whether a round has three or more stitches in one place anywhere.
func hasGroups(r *fabric.Round) bool {
	return slices.ContainsFunc(r.Groups, func(g fabric.Group) bool { return countIn(r.Stitches[g.From:g.To]) > 2 })
}

// groupsOf is how many places of a round have just so many stitches of one kind as a count says
// its groups are made of: "6 petals of 7 dc". Known is false where the round has none that are
// of this kind alone, or begins with one that is not whole.
func groupsOf(r *fabric.Round, t *notation.Target) (n int, known bool) {
	if t.Chains < 2 || !t.Kind.Is() {
		return 0, false
	}
	begins := func(st fabric.Stitch) bool { return st.Role == fabric.Start && st.Counts }
	for _, g := range r.Groups {
		have, others := 0, 0
		for i := g.From; i < g.To; i++ {
			if st := &r.Stitches[i]; st.Counts && st.Counted() == t.Kind {
				have++
			} else if st.Counts {
				others++
			}
		}
		if slices.ContainsFunc(r.Stitches[g.From:g.To], begins) {
			continue // told below with what stands in its place
		}
		if have == t.Chains && others == 0 {
			n++
		}
		known = known || have > 1 && others == 0
	}
	for i := range r.Stitches {
		if st := &r.Stitches[i]; begins(*st) && len(st.On) > 0 {
			have := 0
			for j := range r.Stitches {
				if o := &r.Stitches[j]; o.Counts && len(o.On) > 0 && o.On[0] == st.On[0] {
					have++
				}
			}
			if have != t.Chains {
				return 0, false
			}
			n++
		}
	}
	return n, known
}

// listsChains reports whether a count lists chains beside stitches: "36 sts: 30 dc, 6 ch".
func listsChains(all *notation.Stated) bool {
	return slices.ContainsFunc(all.Counts, func(c notation.StatedCount) bool { return c.Target.Sort == notation.ChainStitch })
}

// inGroups is how many of a target stand in groups that the count lists by
// name: "(12 V-sts, 4 dc)" may leave out the dc of the V-sts, "(16 shells, 16 ch-1 sps)"
// the spaces in the shells. Like takes in the groups that are written out.
func inGroups(r *fabric.Round, t *notation.Target, all *notation.Stated, like bool) int {
	if t.Sort != notation.OfKind && t.Sort != notation.ChainSpace {
		return 0
	}
	n := 0
	for i := range all.Counts {
		name := all.Counts[i].Target.Name
		v := name == "" && vWritten.MatchString(all.Counts[i].Target.Text)
		if all.Counts[i].Target.Sort != notation.OfName || name == "" && !v {
			continue
		}
		for _, g := range r.Groups {
			if v && !isV(r.Stitches[g.From:g.To]) {
				continue
			}
			if !v && g.Name != name && !begOf(g.Name, name) && (!like || g.Name != "" || g.Like != name) {
				continue
			}
			for k, sp := range r.Spaces {
				if t.Sort == notation.ChainSpace && sp.From >= g.From && sp.To <= g.To && (t.Chains == 0 || r.SpaceChains(k) == t.Chains) {
					n++
				}
			}
			for k := g.From; k < g.To && t.Sort == notation.OfKind; k++ {
				if st := &r.Stitches[k]; st.Counts && st.Counted().Base == t.Kind.Base {
					n++
				}
			}
		}
	}
	return n
}

// vWritten is what the trade calls two stitches in one place with a chain between them, where the designer
// has none of that name.
var vWritten = regexp.MustCompile(`(?i)^vs?([ -]?st(itche?|s)*s?)?$`)

// isV reports whether stitches are two of a kind with chains between them.
func isV(st []fabric.Stitch) bool {
	n := len(st)
	if n < 3 || st[0].IsChain() || st[0].Counted() != st[n-1].Counted() {
		return false
	}
	return !slices.ContainsFunc(st[1:n-1], func(s fabric.Stitch) bool { return !s.IsChain() })
}

// groupsIn is "the V-sts", the groups that a count lists by name.
func groupsIn(all *notation.Stated) string {
	var l []string
	for i := range all.Counts {
		if t := &all.Counts[i].Target; t.Sort == notation.OfName && t.Name != "" {
			l = append(l, t.Text)
		}
	}
	return "the " + listed(l, "and")
}

// splitAtJoin is 1 when a round begins with a part of a named group and ends with
// the rest of it in the same place: "ch 3, 2 dc in same st, … 2 dc in same st as
// beg ch-3". Whole ones may be written out.
func splitAtJoin(r *fabric.Round, name string) int {
	n, from := len(r.Stitches), 0
	for n > 0 && r.Stitches[n-1].Role == fabric.Join {
		n--
	}
	for from < n && r.Stitches[from].Role == fabric.Travel {
		from++
	}
	if from >= n || len(r.Stitches[from].On) == 0 {
		return 0
	}
	foot := r.Stitches[from].On[0]
	there := func(i int) bool { on := r.Stitches[i].On; return len(on) > 0 && on[0] == foot }
	first, last := from, n
	for first < n && there(first) {
		first++
	}
	for last > first && there(last-1) {
		last--
	}
	if last == n {
		return 0
	}
	have := countIn(r.Stitches[from:first]) + countIn(r.Stitches[last:n])
	for _, g := range r.Groups {
		if (g.Name == name || g.Name == "" && g.Like == name) && g.To <= last && g.From >= first && countIn(r.Stitches[g.From:g.To]) == have {
			return 1
		}
	}
	return 0
}

func knownGroup(r *fabric.Round, name string) bool {
	for _, g := range r.Groups {
		if g.Name == name {
			return true
		}
	}
	return false
}

// shapeNamed reports whether a kind is one of "clusters", "puffs" and so on.
func shapeNamed(k stitch.Kind, name string) bool {
	shape := shapeCalled(name)
	return shape != stitch.Plain && k.Shape == shape
}

// shapeCalled is the shape that a word such as "clusters" stands for, or what designers
// call one of their own stitches of it: "mb", "make bobble" (common practice, no source).
// It is Plain for other words.
func shapeCalled(name string) stitch.Shape {
	for _, before := range []string{"make ", "beg ", "beginning "} {
		name = strings.TrimPrefix(name, before)
	}
	name = strings.TrimSuffix(strings.TrimSuffix(name, "s"), " st")
	switch name {
	case "cluster", "cl", "clst":
		return stitch.Cluster
	case "puff", "ps", "pst":
		return stitch.Puff
	case "bobble", "mb", "bo", "bob", "bbl":
		return stitch.Bobble
	case "popcorn", "pc", "pop", "mp":
		return stitch.Popcorn
	case "picot", "p":
		return stitch.Picot
	}
	return stitch.Plain
}

// shapedAs is how many stitches of a round are called by a shape, though they are made
// otherwise: those whose name says so, "MB" of clusters; and clusters all in one place,
// which are bobbles too.
func shapedAs(r *fabric.Round, shape stitch.Shape) (n int) {
	for _, g := range r.Groups {
		if g.Name != "" && shapeCalled(g.Name) == shape {
			n++
		}
	}
	if n > 0 || shape != stitch.Bobble && shape != stitch.Cluster {
		return n
	}
	for i := range r.Stitches {
		st := &r.Stitches[i]
		if k := st.Counted(); st.Counts && (k.Shape == stitch.Bobble || k.Shape == stitch.Cluster) && !slices.ContainsFunc(st.On, func(p fabric.Place) bool { return p != st.On[0] }) {
			n++
		}
	}
	return n
}

// openPicots is how many short loops of chains stand between two stitches in one
// place, "(sc, ch 3, sc) in next st", which are called picots too.
func openPicots(r *fabric.Round) (n int) {
	for k, sp := range r.Spaces {
		if c := r.SpaceChains(k); c < 2 || c > 6 || sp.From == 0 || sp.To >= len(r.Stitches) {
			continue
		}
		a, b := r.Stitches[sp.From-1].On, r.Stitches[sp.To].On
		if len(a) == 1 && len(b) == 1 && a[0] == b[0] {
			n++
		}
	}
	return n
}

// loopsNamed reports whether a count of loops is that of the loops that the words of the round
// go into by their chains: "sc in next ch-5 loop", not of the half ones at its ends.
func (w *roundWork) loopsNamed(r *fabric.Round, t *notation.Target, all *notation.Stated, want int) bool {
	if !t.IsLoop() {
		return false
	}
	found := false
	walkPlaces(w.items, func(pl *notation.Place) {
		if pl.Target.Sort == notation.ChainSpace && pl.Target.Chains > 2 {
			n, _, _ := tally(r, &pl.Target, all, w.terms)
			found = found || n == want
		}
	})
	return found
}

// sumOfAll reports whether the first number of a count, of stitches in general, is the sum of
// those behind it, chains or their spaces among them: "(30: 24 hdc, 6 ch)". They are compared
// one by one.
func sumOfAll(s *notation.Stated, size int) bool {
	if len(s.Counts) < 3 || s.Counts[0].Target.Sort != notation.AnyStitch {
		return false
	}
	each, chains, some := 0, 0, false
	for i := range s.Counts[1:] {
		c := &s.Counts[1+i]
		n := c.N.For(size)
		each, chains = each+n, chains+n
		switch c.Target.Sort {
		case notation.OfKind, notation.OfName, notation.OfShape:
		case notation.ChainStitch:
			some = true
		case notation.ChainSpace:
			some = true
			chains += n * (max(c.Target.Chains, 1) - 1)
		default:
			return false
		}
	}
	first := s.Counts[0].N.For(size)
	return some && (first == each || first == chains)
}
