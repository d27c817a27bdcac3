package notation

import (
	"regexp"
	"slices"
	"strconv"
	"strings"
	"unicode"

	"whorl/patterns/stitch"
)

// Style is how words are printed.
type Style struct {
	Terms stitch.Terms
	// From are the terms in which advice was written, which is printed as it
	// stands but for the names of stitches.
	From stitch.Terms
	// Size is the one size that is printed, counted from 0, or -1 for all.
	Size int
	// Long writes the names of stitches out.
	Long bool
	// Row is set where the words are of a row, which is worked across and not
	// around.
	Row bool
	// Names are the designer's own stitches as she writes them, by their plain
	// names.
	Names map[string]string
	// Posts are those of them that are worked around a post.
	Posts map[string]bool
	// Sizes is how many sizes there are.
	Sizes int
	// Worked are the sizes that the words are worked in, nil for all. The
	// numbers of the others are dashes.
	Worked []bool
	// InTurn lets the first stitches of lists without brackets go into the next ones; see InTurn.
	InTurn bool

	star  bool   // inside a repeat marked with a star
	mark  string // of such a repeat, "" for *
	last  bool   // in what ends a last repeat
	deep  int    // brackets around
	falls bool   // in decreases, which may go on until so many remain
	short bool   // where "ch-3" is short for the space of it
}

// Items prints instructions as a designer would write them. Reading them gives
// the same instructions.
func (s Style) Items(items []Item) string {
	var b strings.Builder
	sentence := true // at the beginning of one
	mark := ", "     // what stands before the next instruction
	marks := s.starMarks(items)
	for i, it := range items {
		inner := s
		inner.mark = marks[i]
		text := inner.item(it)
		first := b.Len() == 0
		if j, ok := it.(*Join); ok && (i == 0 || s.last) && j.Place != nil && j.Yarn == "" && j.Place.Pick != Any {
			// A slip stitch that moves a round along, or takes a stitch's place.
			text = s.kind(stitch.Of(stitch.Slip), Loop{}) + " to " + s.place(j.Place)
			if j.With.Kind.Base > stitch.Slip && i == 0 {
				text = "join with " + s.what(&j.With) + " in " + s.place(j.Place) // a standing stitch
			}
		}
		if c, ok := it.(*Colour); ok && onlyNotes(items[:i]) {
			text = withYarn(c.Name, i+1 < len(items))
		}
		if text == "" {
			continue
		}
		own, ends := mark, false
		switch c := it.(type) {
		case *Note, *Marker:
			switch {
			case bracketed(text):
				own, ends = " ", first // "(Make 2.) Ch 32"
			case isClause(it):
				if Leads(it) && i > 0 {
					own = ". " // it begins another sentence
				} else if !sentence {
					text = uncapital(text)
				}
				if _, after := previous(items, i).(*Note); after && !capital(it.(*Note).Text) {
					sentence = false // "Work in a spiral, marking the first st"
				}
				if strings.HasPrefix(text, "to ") || strings.HasPrefix(text, "for ") {
					own = " "
				}
			case i > 0 && Leads(items[i-1]):
				text = uncapital(text) // "Using a needle, weave …"
			default:
				own, ends, text = ". ", true, capitalise(text)
			}
		case *Counts:
			if own = " "; c.Throughout && !c.Space && (c.Not || c.As.Shape == stitch.Plain) && (c.Alone || !fromHook(items[:i])) {
				// Of all beginning chains, and not of the one before.
				own, ends, text = ". ", true, capitalise(strings.Trim(text, "()"))
				if c.Of == 0 {
					text = "Beg ch " + uncapital(text)
				}
			} else if c.Of > 0 && i > 0 && onlyNotes(items[:i]) {
				own, ends, text = ". ", true, capitalise(strings.Trim(text, "()")) // no chain stands before it
			} else if c.Of == 0 && !c.Space && i > 0 && (intoHook(items[i-1]) || c.Passed > 0) {
				which := s.skipped()
				if c.Passed > 0 && !c.Not {
					which = "first " + strconv.Itoa(c.Passed) + " " + which
				}
				text = strings.NewReplacer("(counts", "("+which+" chs count", "(does", "("+which+" chs do").Replace(text)
			}
		case *FastenOff:
			own, ends = ". ", true
		case *Until:
			if own = " "; isClause(previous(items, i)) {
				own = ", " // "Rep Row 2, working in stripes, until …"
			}
		case *Ref:
			own = ". "
			if i > 0 && leadsIn(items[i-1]) {
				own = ", " // "With yarn B, rep Rnd 4"
			}
		case *Join, *NoJoin, *Turn, *FormRing:
			own = "; "
			if i == 1 && leadsIn(items[0]) || opens(items[i:]) {
				own = ", " // "With yarn B, join …"; "ch 1, turn, …"
			}
		}
		switch {
		case first:
			// Whoever prints the sentence begins it.
		case sentence && !bracketed(text):
			text = ". " + capitalise(text)
		case own == ". ":
			text = own + capitalise(text)
		default:
			text = own + text
		}
		b.WriteString(text)
		sentence, mark = ends, ", "
		if r, ok := it.(*Repeat); ok && r.Ending != nil {
			mark = "; " // what follows does not belong to the ending
		}
	}
	return b.String()
}

// fromHook reports whether instructions end with stitches from the hook, or
// with a chain, of which a bracket can say what it counts as.
func fromHook(items []Item) bool {
	for i := len(items) - 1; i >= 0; i-- {
		switch it := items[i].(type) {
		case *Chain:
			return true
		case *Stitches:
			return intoHook(it)
		case *Note, *Turn:
		default:
			return false
		}
	}
	return false
}

// intoHook reports whether an instruction begins in a chain counted from the hook.
func intoHook(it Item) bool {
	st, ok := it.(*Stitches)
	return ok && len(st.Places) > 0 && st.Places[0].Target.Sort == FromHook
}

// Clause reports whether advice is a part of a sentence, "being careful not to
// twist", rather than one of its own.
func (n *Note) Clause() bool {
	word, rest, _ := strings.Cut(n.Text, " ")
	switch {
	case rest == "" || n.Closes || slices.Contains(headings, strings.ToLower(word)):
		return false // "Edging", "Finishing: …", "Working through both layers, sl st …"
	case (word == "beg" || word == "start") && strings.HasPrefix(rest, "in "):
		return true // "ch 2, beg in same st, …"
	case word == "as" || word == "so" || word == "to" || word == "for" || slices.Contains([]string{"with", "using", "being"}, strings.ToLower(word)):
		return true // "as you will on every round", "so that the ribs stack up", "to level the edge", "for thumb"
	}
	return strings.HasSuffix(word, "ing") && len(word) > 4 && !strings.EqualFold(word, "bring")
}

// previous is the instruction before the one at i, nil where there is none.
func previous(items []Item, i int) Item {
	if i == 0 {
		return nil
	}
	return items[i-1]
}

// opens reports whether a turn is followed by work, as at the beginning of a row.
func opens(items []Item) bool {
	if _, turn := items[0].(*Turn); !turn {
		return false
	}
	for _, it := range items[1:] {
		switch it.(type) {
		case *Stitches, *Group, *Repeat, *Skip:
			return true
		}
	}
	return false
}

// Leads reports whether an instruction is a clause that a sentence begins with.
func Leads(it Item) bool {
	n, ok := it.(*Note)
	return ok && n.Clause() && capital(n.Text)
}

// uncapital is a sentence as it goes on behind a comma.
func uncapital(s string) string {
	if r := []rune(s); len(r) > 1 && unicode.IsUpper(r[0]) && unicode.IsLower(r[1]) {
		return string(unicode.ToLower(r[0])) + string(r[1:])
	}
	return s
}

// leadsIn reports whether an instruction belongs to the one that follows it.
func leadsIn(it Item) bool {
	_, yarn := it.(*Colour)
	return yarn || isClause(it)
}

func isClause(it Item) bool {
	n, ok := it.(*Note)
	return ok && n.Clause()
}

func onlyNotes(items []Item) bool {
	for _, it := range items {
		if _, ok := it.(*Note); !ok {
			return false
		}
	}
	return true
}

// withYarn begins with a yarn, and may go on with work.
func withYarn(name string, goesOn bool) string {
	if name[0] >= '0' && name[0] <= '9' {
		return "with yarn " + name
	}
	if goesOn && name != "new" && !strings.Contains(name, " ") && !capital(name) {
		return "with " + name + " yarn"
	}
	if name == "new" || strings.Contains(name, " ") || !capital(name) {
		return "change to " + yarnName(name)
	}
	if up := strings.ToUpper(name); up == "MC" || up == "CC" || len(name) > 2 {
		return "with " + name
	}
	return "with yarn " + name
}

func bracketed(s string) bool { return strings.HasPrefix(strings.TrimSpace(s), "(") }

func capitalise(s string) string {
	for i, r := range s {
		if r == '*' || r == '[' || r == '(' {
			continue
		}
		return s[:i] + strings.ToUpper(string(r)) + s[i+len(string(r)):]
	}
	return s
}

// Sentence is the items with a capital letter at their beginning.
func (s Style) Sentence(items []Item) string { return capitalise(s.Items(items)) }

// item prints one instruction; "" for one that comes to nothing in this size.
func (s Style) item(it Item) string {
	switch it := it.(type) {
	case *Stitches:
		return s.stitches(it)
	case *Chain:
		if s.none(it.N) {
			return ""
		}
		return "ch " + s.Num(it.N) + s.counted(it.Counts)
	case *Group:
		if s.InTurn && it.Loose {
			return s.Items(it.inTurn())
		}
		inner := s
		inner.deep++
		text := "(" + inner.Items(it.Items) + ") " + s.places(it.Place, false)
		if r, ok := it.Items[0].(*Repeat); ok && len(it.Items) == 1 && r.Extent.Sort == NoExtent && !it.Times.Set() {
			return s.repeat(r) + " " + s.places(it.Place, false) // "[3 dc, ch 2] 3 times in ring"
		}
		if it.Times.Set() {
			text += " " + s.times(it.Times)
		}
		return text
	case *Repeat:
		return s.repeat(it)
	case *Stop:
		return "**"
	case *Skip:
		return s.skip(it)
	case *Join:
		return s.join(it)
	case *Turn:
		return "turn"
	case *NoJoin:
		return "do not join"
	case *FastenOff:
		return capitalise(fastens.ReplaceAllString(s.Advice(it.Text), "Fasten off"))
	case *MagicRing:
		if it.Round != "" {
			return "join yarn to " + it.Round
		}
		return "make a magic ring"
	case *FormRing:
		return "join with " + s.kind(stitch.Of(stitch.Slip), Loop{}) + " to form ring"
	case *InLoops:
		text := "working in " + loopNames[it.Into] + "s only"
		if it.Into == stitch.ThirdLoop || it.Into == stitch.BackBump || it.Into == stitch.Top {
			text = "working in " + loopNames[it.Into] + "s"
		}
		if it.Free {
			text = strings.ReplaceAll("working in free "+loopNames[it.Into]+"s", "free s", "free loops")
		}
		if it.Round > 0 {
			text = strings.TrimSuffix(text, " only") + " of " + s.Word() + " " + strconv.Itoa(it.Round)
		}
		return text
	case *In:
		if it.Place.Pick == Skipped {
			return "working in " + s.place(&it.Place)
		}
		return "in " + s.place(&it.Place)
	case *Counts:
		if text := s.counted(it); it.Of > 0 {
			// "Beg ch-3 counts as dc throughout", without the brackets
			text = "beg ch-" + strconv.Itoa(it.Of) + " " + strings.Trim(text, " ()")
			if it.Throughout {
				return text
			}
			return "(" + text + ")" // of the one just made
		}
		return strings.TrimSpace(s.counted(it))
	case *Ref:
		return s.ref(it)
	case *Until:
		return s.until(it)
	case *Colour:
		return "change to " + yarnName(it.Name)
	case *Begin:
		return "starting in " + s.place(&it.Place)
	case *OtherSide:
		return "working along other side of chain"
	case *Note:
		text := it.Text
		if strings.HasPrefix(text, "[") && strings.HasSuffix(text, "]") {
			text = "(" + text[1:len(text)-1] + ")"
		}
		return fastens.ReplaceAllString(s.Advice(text), "Fasten off")
	case *Marker:
		return s.Advice(it.Text)
	}
	return ""
}

// Word is what a round is called at the beginning of a line: Rnd or Row.
func (s Style) Word() string {
	if s.Row {
		return "Row"
	}
	return "Rnd"
}

func (s Style) skip(k *Skip) (text string) {
	if s.none(k.N) {
		return ""
	}
	s.short = true
	verb := "sk "
	if s.Terms == stitch.UK {
		verb = "miss "
	}
	if k.After != "" {
		defer func() { text += " after " + k.After }()
	}
	if k.FromJoin {
		defer func() { text += " after the join" }()
	}
	if k.Behind && !k.Unworked {
		defer func() { text += " behind it" }()
	}
	if k.Unworked {
		if k.Behind && k.Place != nil {
			return "leave " + s.place(k.Place) + " behind it unworked"
		}
		if k.Place != nil && k.Place.Pick != Each {
			return "leave " + s.place(k.Place) + " unworked"
		}
		if k.Place != nil && k.Place.N.Set() {
			return "leave rem " + s.Num(k.Place.N) + " sts unworked"
		}
		return "leave rem sts unworked"
	}
	if k.Place != nil && k.And != nil && k.And.And != nil {
		return verb + s.place(k.Place) + ", " + strings.TrimPrefix(s.skip(k.And), verb)
	}
	if k.Place != nil && k.And != nil {
		return verb + s.place(k.Place) + " and " + s.place(k.And.Place)
	}
	if k.Place != nil {
		return verb + s.place(k.Place)
	}
	if s.one(k.N) && k.N.Set() {
		return verb + "1 " + s.target(&k.Target, false)
	}
	return verb + s.place(&Place{Pick: Next, N: k.N, Target: k.Target})
}

func (s Style) join(j *Join) string {
	slip := s.kind(stitch.Of(stitch.Slip), Loop{})
	if j.With.Kind.Base > stitch.Slip && j.Yarn == "" && j.Place != nil && (j.Place.Pick == First || j.Place.Of != nil) {
		return s.what(&j.With) + " in " + s.place(j.Place) + " to join"
	}
	if j.Place != nil {
		pl := *j.Place
		pl.Bare = false // the chain itself, never a space
		j = &Join{Place: &pl, Yarn: j.Yarn, With: j.With, Splits: j.Splits, Underarm: j.Underarm}
	}
	text := "join"
	if j.Yarn != "" {
		text += " " + yarnName(j.Yarn)
	}
	if j.With.Kind.Base > stitch.Slip {
		slip = s.what(&j.With)
	}
	if j.Place != nil {
		text += " with " + slip + " in " + s.place(j.Place)
	}
	if j.Underarm {
		text += " at underarm"
	}
	if j.Splits != nil {
		text += ", completing the " + s.kind(j.Splits.As, Loop{})
	}
	return text
}

func yarnName(name string) string {
	if len([]rune(name)) <= 2 {
		return "yarn " + name
	}
	if name == "new" {
		return "new yarn"
	}
	return name
}

// counted is what a beginning chain counts as, in brackets with a space before.
func (s Style) counted(c *Counts) string {
	if c == nil {
		return ""
	}
	text := "counts as a st"
	switch {
	case c.As == stitch.Kind{Shape: stitch.Cluster} && !c.Half:
		text = "counts as a cluster"
	case c.Not:
		text = "does not count as a st"
	case c.Half && !c.As.Is():
		text = "counts as first leg"
	case c.Name != "" && c.Half:
		text = "counts as first leg of " + s.what(&What{Name: c.Name})
	case c.Name != "":
		text = "counts as " + s.what(&What{Name: c.Name})
	case c.Space:
		text = "counts as a " + s.Space(c.Chains)
	case c.As.Is() && c.Half:
		text = "counts as half of " + s.kind(c.As, Loop{})
	case c.As.Is():
		text = "counts as " + s.kind(c.As, Loop{})
		if c.Chains > 0 {
			text += " and ch " + strconv.Itoa(c.Chains)
		}
		if c.Base == 1 {
			text += " and 1 " + s.skipped() + " base ch"
		} else if c.Base > 1 {
			text += " and " + strconv.Itoa(c.Base) + " " + s.skipped() + " base chs"
		}
	}
	if c.Throughout {
		text += " here and throughout"
	}
	return " (" + text + ")"
}

// fastens are the words and letters for fastening off.
var fastens = regexp.MustCompile(`(?i)^(f\s*/?\s*o|finish off|bind off)\b`)
