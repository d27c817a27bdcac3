package working

import (
	"slices"
	"sort"
	"strings"

	"whorl/patterns/fabric"
	"whorl/patterns/notation"
	"whorl/patterns/stitch"
)

// maxKinds is how many kinds of stitch a printed count tells apart; of more it
// gives the number of stitches only.
const maxKinds = 5

// counting is how the stitches of a round are told.
type counting struct {
	groups bool // the designer's own stitches by their names
	shapes bool // "12 clusters" rather than "12 3-dc cl"
}

// count is the count of the last round of a line, size by size: "60 (72) hdc".
// It is as the trade counts, which reading it would confirm.
func (s *script) count(r *notation.Round, style notation.Style) string {
	rounds := s.lasts[r]
	if rounds == nil || len(r.Label.Numbers) > 1 && len(r.Stated) == 0 {
		return "" // "Rnds 2, 4 and 6" may each have a count of its own
	}
	ways := []counting{{true, true}, {true, false}, {false, true}, {false, false}}
	if !s.countsGroups(r) {
		ways = ways[2:]
	}
	for _, way := range ways {
		lines := s.tell(rounds, style, way)
		if len(lines) == 0 {
			return ""
		}
		if text := spoken(lines, style); len(lines) <= maxKinds && s.holds(style.Spell(text), rounds, style) {
			return text
		}
	}
	total := &told{one: "st", many: "sts", n: make([]int, len(rounds))}
	for i, round := range rounds {
		if round != nil {
			total.n[i] = round.Count()
		}
	}
	return spoken([]*told{total}, style)
}

// countsGroups reports whether the designer counts her own stitches by their
// names: in this round, or where it has no count, in others of the part.
func (s *script) countsGroups(r *notation.Round) bool {
	if len(r.Stated) > 0 {
		return s.namesGroup(r)
	}
	stated := false
	for _, text := range s.texts {
		if !slices.Contains(text.Rounds, r) {
			continue
		}
		for _, other := range text.Rounds {
			if s.namesGroup(other) {
				return true
			}
			stated = stated || len(other.Stated) > 0
		}
	}
	return !stated
}

// namesGroup reports whether a round's count names a stitch of the designer's.
func (s *script) namesGroup(r *notation.Round) bool {
	for _, stated := range r.Stated {
		for i := range stated.Counts {
			if t := &stated.Counts[i].Target; t.Sort == notation.OfName && !s.told[t.Name] {
				return true
			}
		}
	}
	return false
}

// told is one number of a count.
type told struct {
	one, many string
	n         []int // for each size
	order     int   // groups come before stitches, then picots, then spaces
}

func (t *told) most() int {
	m := 0
	for _, n := range t.n {
		m = max(m, n)
	}
	return m
}

// tell counts rounds of one label, one for each size.
func (s *script) tell(rounds []*fabric.Round, style notation.Style, way counting) []*told {
	var list []*told
	at := map[string]*told{}
	add := func(one, many string, order, size, n int) {
		t := at[one]
		if t == nil {
			t = &told{one, many, make([]int, len(rounds)), order}
			at[one] = t
			list = append(list, t)
		}
		t.n[size] += n
	}
	trade := notation.NewVocabulary(style.Terms, nil)
	for size, r := range rounds {
		if r == nil || style.Size >= 0 && size != style.Size {
			continue
		}
		inside := make([]bool, len(r.Stitches))
		for _, g := range r.Groups {
			name, post := s.groupName(g.Name), s.definitions[g.Name].aroundPost()
			if name == "" || inside[g.From] || !way.groups && !post {
				continue
			}
			order := 2 // a picot stands beside the stitches
			for i := g.From; i < g.To; i++ {
				inside[i] = true
				if r.Stitches[i].Counts {
					order = 0
				}
			}
			many := notation.Plural(name)
			if k, _, ok := trade.Stitch(name); post || ok && k.Shape == stitch.Together {
				order, many = 1, name // "40 rtrf, 40 rtrb", "12 dc, 6 dc2tog"
			}
			add(name, many, order, size, 1)
		}
		for i := range r.Stitches {
			st := &r.Stitches[i]
			switch k := st.Counted(); {
			case inside[i]:
			case k.Shape == stitch.Picot && way.shapes:
				add("picot", "picots", 2, size, 1)
			case !st.Counts:
			case way.shapes && shapeNames[k.Shape] != "":
				name := shapeNames[k.Shape]
				add(name, notation.Plural(name), 1, size, 1)
			default:
				name := kindName(st, style.Terms)
				many := name
				if style.Long {
					name = longName(st, style.Terms)
					if many = name; k.Shape != stitch.Together {
						many = notation.Plural(name)
					}
				}
				add(name, many, 1, size, 1)
			}
		}
		outside := map[int]bool{}
		for k, sp := range r.Spaces {
			outside[r.SpaceChains(k)] = outside[r.SpaceChains(k)] || !inside[sp.From]
		}
		for k := range r.Spaces {
			if n := r.SpaceChains(k); outside[n] {
				one := style.Space(n)
				add(one, one+"s", 3, size, 1)
			}
		}
	}
	list = alikeSpaces(list, rounds, style)
	sort.SliceStable(list, func(i, j int) bool {
		a, b := list[i], list[j]
		if a.order != b.order {
			return a.order < b.order
		}
		return a.order == 1 && a.most() > b.most()
	})
	return list
}

// alikeSpaces counts the chain spaces together where they are longer in one size
// than in another: "1 ch sp".
func alikeSpaces(list []*told, rounds []*fabric.Round, style notation.Style) []*told {
	all := &told{one: "ch sp", many: "ch sps", n: make([]int, len(rounds)), order: 3}
	var others []*told
	differ := false
	for _, t := range list {
		if t.order != 3 {
			others = append(others, t)
			continue
		}
		for size, r := range rounds {
			all.n[size] += t.n[size]
			differ = differ || r != nil && style.Size < 0 && t.n[size] == 0
		}
	}
	if !differ {
		return list
	}
	return append(others, all)
}

// longName is [kindName] written out.
func longName(st *fabric.Stitch, t stitch.Terms) string {
	k := shown(st.Counted())
	if len(st.On) > 0 && (st.On[0].Into == stitch.FrontPost || st.On[0].Into == stitch.BackPost) {
		return k.LongNameInto(st.On[0].Into, t)
	}
	return k.LongName(t)
}

// shapeNames are the bundles of stitches that are counted by their shape.
var shapeNames = map[stitch.Shape]string{
	stitch.Cluster: "cluster", stitch.Puff: "puff st", stitch.Bobble: "bobble", stitch.Popcorn: "popcorn",
}

// groupName is the name under which a group is counted, "" for one that is not:
// a beginning shell is a shell, and an increase is counted by its stitches.
func (s *script) groupName(name string) string {
	if whole := begun(s.definitions, name); whole != "" {
		name = whole
	}
	if name == "inc" || name == "dec" || s.told[name] {
		return ""
	}
	return s.style.Names[name]
}

// spoken is a count in words: "10 (12) shells, 10 (12) sc".
func spoken(list []*told, style notation.Style) string {
	var b strings.Builder
	for i, t := range list {
		name, n := t.many, notation.Num{Values: t.n}
		if style.Size >= 0 {
			n = notation.Num{Values: []int{t.n[style.Size]}}
		}
		if t.most() == 1 {
			name = t.one
		}
		text := style.Num(n) + " " + name
		switch {
		case i == 0:
		case text[0] == '-':
			b.WriteString(" and ") // a dash behind a comma would be one of its own
		default:
			b.WriteString(", ")
		}
		b.WriteString(text)
	}
	return b.String()
}

// holds reports whether a count that is printed is read as one, and is true.
func (s *script) holds(text string, rounds []*fabric.Round, style notation.Style) bool {
	sizes := s.p.Sizes
	if style.Size >= 0 {
		sizes, rounds = sizes[style.Size:style.Size+1], rounds[style.Size:style.Size+1]
	}
	stated := s.stated(text, sizes)
	if stated == nil {
		return false
	}
	for i := range stated.Counts {
		c := &stated.Counts[i]
		for size, r := range rounds {
			if r == nil {
				continue
			}
			have, _, known := tally(r, &c.Target, stated, style.Terms)
			if want := c.N.For(size); !known || have != want && have-inGroups(r, &c.Target, stated, false) != want && have-inGroups(r, &c.Target, stated, true) != want {
				return false
			}
		}
	}
	return true
}

// stated is what a reader makes of a count that is printed, nil where that is no count. A
// count comes again and again in a pattern, and is read once.
func (s *script) stated(text string, sizes []string) *notation.Stated {
	if stated, ok := s.read[text]; ok {
		return stated
	}
	var stated *notation.Stated
	read, faults := notation.Parse([]notation.Line{{Text: "Rnd 1: Ch 1, sl st around. (" + text + ")", Line: 1, Column: 1}}, s.counted, sizes)
	if len(faults) == 0 && len(read.Rounds) == 1 && len(read.Rounds[0].Stated) == 1 {
		stated = read.Rounds[0].Stated[0]
	}
	s.read[text] = stated
	return stated
}
