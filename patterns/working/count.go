package working

import (
	"fmt"
	"sort"
	"strings"

	"whorl/patterns/fabric"
	"whorl/patterns/notation"
	"whorl/patterns/stitch"
)

// compare holds the counts that a round states against what was worked. It
// reports whether they agree; with quiet set it says nothing about those that
// do not.
func (p *partWork) compare(w *roundWork, stated []*notation.Stated, quiet bool) bool {
	ok := true
	for _, s := range stated {
		for i := range s.Counts {
			c := &s.Counts[i]
			want := c.N.For(p.size)
			r := w.r
			if c.At.Set() && c.At.For(p.size) != r.Number {
				if r = p.numbered(c.At.For(p.size)); r == nil {
					continue // of a round that another size or a later line works
				}
			}
			if c.Target.Sort == notation.RowsInAll {
				ok = p.rowsInAll(w, c, quiet || !ok) && ok
				continue
			}
			if c.Target.Sort == notation.OfName && saysRowsInAll(s) {
				continue // "14 scallops, 56 rows in all" are those of all rows
			}
			if i == 0 && sumOfAll(s, p.size) {
				continue
			}
			have, what, known := tally(r, &c.Target, s, p.terms)
			if n := p.blocksIn(r, &c.Target); n >= 0 && !(known && have == want) {
				have, what, known = n, "blocks", true
			}
			if like := likeNamed(r, c.Target.Name); c.Target.Sort == notation.OfName && have < want {
				have += like // some are written out
			}
			if !known || have == want || have-inGroups(r, &c.Target, s, false) == want || have-inGroups(r, &c.Target, s, true) == want {
				continue
			}
			if c.Target.Sort == notation.OfName && w.r.Row && have+p.before(&c.Target, s) == want {
				continue // "(12 scallops)" along an edge worked sideways, one to a row
			}
			if c.Target.Sort == notation.OfName && (have+splitAtJoin(r, c.Target.Name) == want || have+w.beginsLike(c.Target.Name) == want) {
				continue // the last is completed where the round began, or the first begun by a chain
			}
			if r == w.r && w.begToldApart(c, s, have) {
				continue
			}
			if c.Target.Sort == notation.OfName && have-1 == want && begunAlone(r, c.Target.Name) {
				continue // "(7 ldc)" beside the chain that counts as a dc
			}
			if c.Target.Sort == notation.AnyStitch && p.chainsAmong && have+p.amongStitches(r) == want {
				continue
			}
			if w.loopsNamed(r, &c.Target, s, want) || c.Target.Sort == notation.AnyStitch && listsChains(s) && have+r.Chains() == want {
				continue
			}
			if c.Target.Sort == notation.ChainSpace && have < want && r == w.r && want <= have+w.joinedOn {
				continue // those of fewer chains that a slip stitch into another motif lies in
			}
			if quiet {
				ok = false
				continue
			}
			if !ok {
				continue
			}
			ok = false
			if in := inGroups(r, &c.Target, s, false); in > 0 && diff(have-in, want) < diff(have, want) {
				have, what = have-in, what+" beside "+groupsIn(s)
			}
			f := p.fault(c.N.Span, "count",
				fmt.Sprintf("%s has %s, not the %d that are stated,", r.Label, counted(have, what), want), p.countHelp(w, want, have))
			f.Message = strings.TrimSuffix(f.Message, ",")
			f.Round = w.r.Label
			p.faults = append(p.faults, f)
		}
	}
	return ok
}

// amongStitches is how many stitches the chains of a round are, which the notes count among them.
func (w *work) amongStitches(r *fabric.Round) (n int) {
	if w.chainsEach == 0 {
		return r.Chains()
	}
	for k := range r.Spaces {
		if r.SpaceChains(k) == w.chainsEach {
			n++
		}
	}
	return n
}

// saysRowsInAll reports whether a count is of all rows so far.
func saysRowsInAll(s *notation.Stated) bool {
	for i := range s.Counts {
		if s.Counts[i].Target.Sort == notation.RowsInAll {
			return true
		}
	}
	return false
}

// rowsInAll holds a stated number of rows against those worked: "56 rows in all" behind
// a repeat of rows. Behind a label it may be that of its own range.
func (p *partWork) rowsInAll(w *roundWork, c *notation.StatedCount, quiet bool) bool {
	want, have := c.N.For(p.size), w.r.Number
	if want == have || w.labelled {
		return true
	}
	if !quiet {
		word := "round"
		if w.r.Row {
			word = "row"
		}
		f := p.fault(c.N.Span, "count", fmt.Sprintf("the piece has %s so far, not the %d that are stated", plural(have, word), want),
			"Let the number of repeats and the number of "+word+"s agree.")
		f.Round = w.r.Label
		p.faults = append(p.faults, f)
	}
	return false
}

// before is how many of a target the rounds before have.
func (p *partWork) before(t *notation.Target, all *notation.Stated) int {
	sum := 0
	for _, r := range p.part.Rounds {
		if n, _, known := tally(r, t, all, p.terms); known {
			sum += n
		}
	}
	return sum
}

// numbered is the round of a number among those worked, nil when there is none.
func (p *partWork) numbered(n int) *fabric.Round {
	for _, r := range p.part.Rounds {
		if r.Number == n && !r.Carried {
			return r
		}
	}
	return nil
}

func counted(n int, what string) string {
	switch {
	case n != 1:
	case what == "stitches":
		what = "stitch"
	case strings.HasSuffix(what, "s") && !strings.HasSuffix(what, "ss"):
		what = strings.TrimSuffix(what, "s")
	}
	return fmt.Sprintf("%d %s", n, what)
}

// tally is how many of a target a round has, and what they are called. Known
// is false for things that are not counted.
func tally(r *fabric.Round, t *notation.Target, all *notation.Stated, terms stitch.Terms) (n int, what string, known bool) {
	switch t.Sort {
	case notation.AnyStitch:
		return r.Count(), "stitches", true
	case notation.OfKind:
		exact, height := 0, 0
		if t.Name == notation.Post {
			for i := range r.Stitches {
				if st := &r.Stitches[i]; st.Counts && sameKind(t, st) {
					exact++
				}
			}
			return exact, named(t, terms), true
		}
		if t.Kind == stitch.Of(stitch.Slip) {
			for i := range r.Stitches {
				if r.Stitches[i].Kind == t.Kind && r.Stitches[i].Role == fabric.Worked {
					exact++
				}
			}
			return exact, t.Kind.Name(terms), true
		}
		for i := range r.Stitches {
			st := &r.Stitches[i]
			if !st.Counts {
				continue
			}
			k := st.Counted()
			if t.Loop.Set && (len(st.On) == 0 || st.On[0].Into != t.Loop.Into) {
				continue
			}
			if !t.Loop.Set && len(st.On) > 0 && countedApart(all, k, st.On[0].Into) {
				continue
			}
			if k == t.Kind || shown(k) == t.Kind && !invisible(all) {
				exact++
			}
			if k.Base == t.Kind.Base {
				height++
			}
		}
		// "(66 hdc)" takes in the hdc2tog among them; "(66 hdc, 6 hdc2tog)"
		// does not. Either is how the trade counts.
		if t.Kind.Shape == stitch.Plain && exact != height && !apart(all, t.Kind.Base) {
			return height, t.Kind.Name(terms), true
		}
		if t.Loop.Set {
			return exact, t.Kind.NameInto(t.Loop.Into, terms), true
		}
		return exact, t.Kind.Name(terms), true
	case notation.ChainSpace:
		if t.Name == notation.Corner && t.Chains == 0 {
			// "four corners": the longest of the spaces
			longest := 0
			for k := range r.Spaces {
				switch c := r.SpaceChains(k); {
				case c > longest:
					longest, n = c, 1
				case c == longest:
					n++
				}
			}
			return n, "corners", longest > 1
		}
		for k := range r.Spaces {
			if t.Chains == 0 || r.SpaceChains(k) == t.Chains {
				n++
			}
		}
		if t.Chains == 0 {
			return n, "ch sps", true
		}
		return n, fmt.Sprintf("ch-%d sps", t.Chains), true
	case notation.ChainStitch:
		return r.Chains(), "chains", true
	case notation.OfShape:
		for i := range r.Stitches {
			k := r.Stitches[i].Counted()
			if k.Shape == t.Kind.Shape ||
				t.Kind.Shape == stitch.Cluster && k.Shape == stitch.Together && r.Stitches[i].Counts {
				n++
			}
		}
		if n == 0 && t.Kind.Shape == stitch.Picot {
			n = openPicots(r)
		}
		if n == 0 {
			n = shapedAs(r, t.Kind.Shape)
		}
		if n == 0 && t.Kind.Shape == stitch.Cluster && hasGroups(r) {
			n, known := alike(r) // "2 clusters" of 3 dc in one place
			return n, t.Text, known
		}
		return n, t.Text, true
	case notation.OfName:
		if t.Name == "" {
			if n, known := groupsOf(r, t); known {
				return n, strings.ToLower(t.Text), true
			}
			n, known := alike(r)
			return n, strings.ToLower(t.Text), known
		}
		for _, g := range r.Groups {
			if g.Name == t.Name || begOf(g.Name, t.Name) {
				n++
			}
		}
		if n == 0 {
			for i := range r.Stitches {
				if st := &r.Stitches[i]; shapeNamed(st.Kind, t.Name) || st.Own == t.Name || begOf(st.Own, t.Name) {
					n++
				}
			}
			if n == 0 && shapeCalled(t.Name) != stitch.Plain {
				n = shapedAs(r, shapeCalled(t.Name))
			}
		}
		return n, t.Text, n > 0 || knownGroup(r, t.Name) || likeNamed(r, t.Name) > 0
	}
	return 0, "", false
}

func diff(a, b int) int { return max(a-b, b-a) }

// apart reports whether a stated count lists decreases or bundles of a base by
// themselves, so that the plain ones are counted without them.
func apart(all *notation.Stated, b stitch.Base) bool {
	for i := range all.Counts {
		t := &all.Counts[i].Target
		if k := t.Kind; t.Sort == notation.OfKind && k.Base == b && (k.Shape != stitch.Plain || k.Manner != 0) || t.Sort == notation.OfShape {
			return true // "13 puffs, 2 hdc"
		}
	}
	return false
}

// countedApart reports whether a stated count lists stitches of a kind around a
// post by themselves.
func countedApart(all *notation.Stated, k stitch.Kind, in stitch.Into) bool {
	for i := range all.Counts {
		t := &all.Counts[i].Target
		if t.Sort == notation.OfKind && t.Kind == k && t.Loop.Set && t.Loop.Into == in {
			return true
		}
	}
	return false
}

// countHelp says what was worked, kind by kind, and which number of repeats
// would give the stated count.
func (p *partWork) countHelp(w *roundWork, want, have int) string {
	kinds := Kinds(w.r, p.terms)
	names := make([]string, 0, len(kinds))
	for k := range kinds {
		names = append(names, k)
	}
	sort.Slice(names, func(i, j int) bool {
		if kinds[names[i]] != kinds[names[j]] {
			return kinds[names[i]] > kinds[names[j]]
		}
		return names[i] < names[j]
	})
	var l []string
	for _, n := range names {
		l = append(l, fmt.Sprintf("%d %s", kinds[n], n))
	}
	if c := w.r.Chains(); c > 0 {
		l = append(l, plural(c, "chain"))
	}
	help := "Worked: " + listed(l, "and") + "."
	if w.c.below != nil && w.c.count() > 0 {
		help += fmt.Sprintf(" %s had %s.", capital(w.c.below.Label), plural(w.c.count(), "stitch"))
	}
	for _, line := range w.repeatsFor(want - have) {
		help += "\n" + line
	}
	help += fmt.Sprintf("\nIf the words are right, the count is %d.", have)
	return help
}

// repeatsFor says which repeats would make so many stitches more if they were worked
// another number of times.
func (w *roundWork) repeatsFor(more int) (l []string) {
	for _, rep := range w.repeats {
		if rep.rep.Extent.Sort == notation.NoExtent && rep.made > 0 && more != 0 && more%rep.made == 0 {
			if n := rep.times + more/rep.made; n > 0 {
				l = append(l, fmt.Sprintf("Each repeat makes %d and is worked %s: %d times would make the stated count.", rep.made, times(rep.times), n))
			}
		}
	}
	return l
}

// statedRepeats is what repeatsFor says of the first count of stitches that is stated.
func (p *partWork) statedRepeats(w *roundWork, stated []*notation.Stated) []string {
	for _, s := range stated {
		for i := range s.Counts {
			if have, _, known := tally(w.r, &s.Counts[i].Target, s, p.terms); known && !s.Counts[i].At.Set() {
				return w.repeatsFor(s.Counts[i].N.For(p.size) - have)
			}
		}
	}
	return nil
}

func capital(s string) string {
	if s == "" {
		return s
	}
	return strings.ToUpper(s[:1]) + s[1:]
}

// Kinds counts the stitches of a round that count, and its picots, by name in the
// given terms. Stitches around a post are kinds of their own; those in one loop
// are not.
func Kinds(r *fabric.Round, t stitch.Terms) map[string]int {
	m := map[string]int{}
	for i := range r.Stitches {
		st := &r.Stitches[i]
		if !st.Counts && st.Kind.Shape != stitch.Picot {
			continue
		}
		m[kindName(st, t)]++
	}
	return m
}

// kindName is the name under which a stitch is counted. A decrease is counted as
// one whether it shows or not.
func kindName(st *fabric.Stitch, t stitch.Terms) string {
	k := shown(st.Counted())
	if len(st.On) > 0 && (st.On[0].Into == stitch.FrontPost || st.On[0].Into == stitch.BackPost) {
		return k.NameInto(st.On[0].Into, t)
	}
	return k.Name(t)
}

// shown is a kind without its being invisible.
func shown(k stitch.Kind) stitch.Kind {
	k.Manner &^= stitch.Invisible
	return k
}

// invisible reports whether a count lists invisible decreases by themselves.
func invisible(all *notation.Stated) bool {
	for i := range all.Counts {
		if all.Counts[i].Target.Kind.Manner&stitch.Invisible != 0 {
			return true
		}
	}
	return false
}
