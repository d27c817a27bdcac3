package notation

import (
	"fmt"
	"strconv"
	"strings"

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

	star bool // inside a repeat marked with a star
	last bool // in what ends a last repeat
	deep int  // brackets around
}

// Items prints instructions as a designer would write them. Reading them gives
// the same instructions.
func (s Style) Items(items []Item) string {
	var b strings.Builder
	sentence := true
	for i, it := range items {
		text := s.item(it)
		if j, ok := it.(*Join); ok && (i == 0 || s.last) && j.Place != nil && j.Yarn == "" {
			// A slip stitch that moves a round along, or takes a stitch's place.
			text = s.kind(stitch.Of(stitch.Slip), Loop{}) + " to " + s.place(j.Place)
		}
		if text == "" {
			continue
		}
		switch it.(type) {
		case *Note, *Marker:
			// Advice is a sentence of its own.
			if b.Len() > 0 && !bracketed(text) {
				text = ". " + capitalise(text)
			} else if b.Len() > 0 {
				text = " " + text
			}
			sentence = !bracketed(text)
		case *Counts:
			if b.Len() > 0 {
				text = " " + text
			}
			sentence = false
		case *FastenOff:
			if b.Len() > 0 {
				text = ". " + text
			}
			sentence = true
		case *Until:
			if b.Len() > 0 {
				text = " " + text
			}
			sentence = false
		case *Join, *NoJoin, *Turn:
			if b.Len() > 0 {
				text = separate("; ", sentence && b.Len() > 0) + caps(text, sentence)
			}
			sentence = false
		default:
			if b.Len() > 0 {
				text = separate(", ", sentence && b.Len() > 0) + caps(text, sentence && i > 0)
			}
			sentence = false
		}
		b.WriteString(text)
	}
	return b.String()
}

func separate(mark string, sentence bool) string {
	if sentence {
		return ". "
	}
	return mark
}

func caps(s string, sentence bool) string {
	if sentence {
		return capitalise(s)
	}
	return s
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
		inner := s
		inner.deep++
		text := "(" + inner.Items(it.Items) + ") " + s.places(it.Place, false)
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
		return capitalise(s.Advice(it.Text))
	case *MagicRing:
		return "make a magic ring"
	case *FormRing:
		return "join with " + s.kind(stitch.Of(stitch.Slip), Loop{}) + " to form ring"
	case *InLoops:
		text := "working in " + loopNames[it.Into] + "s only"
		if it.Into == stitch.ThirdLoop || it.Into == stitch.BackBump {
			text = "working in " + loopNames[it.Into] + "s"
		}
		if it.Round > 0 {
			text = "working in " + loopNames[it.Into] + "s of " + s.round() + " " + strconv.Itoa(it.Round)
		}
		return text
	case *In:
		return "in " + s.place(&it.Place)
	case *Counts:
		return strings.TrimSpace(s.counted(it))
	case *Ref:
		return s.ref(it)
	case *Until:
		return s.until(it)
	case *Colour:
		return "change to " + it.Name
	case *OtherSide:
		return "working along other side of chain"
	case *Note:
		return s.Advice(it.Text)
	case *Marker:
		return s.Advice(it.Text)
	}
	return ""
}

// Num prints a number: of one size, or 60 (72, 78) for all.
func (s Style) Num(n Num) string {
	if s.Size >= 0 || len(n.Values) < 2 {
		return strconv.Itoa(n.For(max(s.Size, 0)))
	}
	l := make([]string, len(n.Values))
	for i, v := range n.Values {
		l[i] = strconv.Itoa(v)
		if v == 0 {
			l[i] = "-"
		}
	}
	return l[0] + " (" + strings.Join(l[1:], ", ") + ")"
}

// none reports whether a number is 0 for the size printed, so that what it
// counts is left out.
func (s Style) none(n Num) bool {
	if s.Size >= 0 {
		return n.Set() && n.For(s.Size) == 0
	}
	for _, v := range n.Values {
		if v != 0 {
			return false
		}
	}
	return n.Set()
}

// one reports whether a number is 1 in every size printed, or not written.
func (s Style) one(n Num) bool {
	if !n.Set() {
		return true
	}
	if s.Size >= 0 {
		return n.For(s.Size) == 1
	}
	for _, v := range n.Values {
		if v != 1 {
			return false
		}
	}
	return true
}

// times is "once", "twice", "6 times".
func (s Style) times(n Num) string {
	if s.Size >= 0 || len(n.Values) == 1 {
		switch n.For(max(s.Size, 0)) {
		case 1:
			return "once"
		case 2:
			return "twice"
		}
	}
	return s.Num(n) + " times"
}

// plus is a number with d added.
func plus(n Num, d int) Num {
	v := make([]int, len(n.Values))
	for i := range v {
		v[i] = n.Values[i] + d
	}
	return Num{n.Span, v}
}

func (s Style) round() string {
	if s.Row {
		return "Row"
	}
	return "Rnd"
}

func (s Style) repeat(r *Repeat) string {
	total := r.Times
	if r.More {
		total = plus(r.Times, 1)
	}
	if r.Extent.Sort == NoExtent && s.none(total) {
		return ""
	}
	end := s.ending(r)
	star := !s.star && s.deep == 0 && (r.Extent.Sort != NoExtent || r.More || r.AtStop || r.Omit > 0 || r.Ending != nil)
	inner := s
	if star {
		inner.star = true
		body := inner.Items(r.Items)
		if r.Extent.Sort != NoExtent {
			return "*" + body + "; rep from * " + s.extent(&r.Extent) + end
		}
		if s.Size >= 0 && total.For(s.Size) == 1 && end == "" {
			return inner.Items(r.Items)
		}
		more := plus(total, -1)
		how := s.Num(more) + " more times"
		if s.one(more) {
			how = "once more"
		}
		return "*" + body + "; rep from * " + how + end
	}
	inner.deep++
	open, close := "[", "]"
	if s.deep%2 == 1 {
		open, close = "(", ")"
	}
	text := open + inner.Items(r.Items) + close + " "
	if r.Extent.Sort != NoExtent {
		return text + s.extent(&r.Extent) + end
	}
	return text + s.times(total) + end
}

// ending is how the last repeat differs.
func (s Style) ending(r *Repeat) string {
	s.last = true
	switch {
	case r.AtStop:
		return ", ending last rep at **"
	case r.Ending != nil && r.Omit > 0:
		return ", ending last rep with " + s.Items(r.Ending) + " instead of last " + s.bare(r.Items[len(r.Items)-1])
	case r.Ending != nil:
		return ", ending last rep with " + s.Items(r.Ending)
	case r.Omit > 0 && r.Omit <= len(r.Items):
		return ", omitting last " + s.bare(r.Items[len(r.Items)-r.Omit])
	}
	return ""
}

// bare is the stitch or chain of an instruction, without its place.
func (s Style) bare(it Item) string {
	switch it := it.(type) {
	case *Stitches:
		return s.what(&it.What)
	case *Chain:
		return "ch " + s.Num(it.N)
	case *Group:
		return "group"
	}
	return s.item(it)
}

func (s Style) skip(k *Skip) string {
	if s.none(k.N) {
		return ""
	}
	verb := "sk "
	if s.Terms == stitch.UK {
		verb = "miss "
	} else if s.Long {
		verb = "skip "
	}
	if k.Unworked {
		if k.Place != nil && k.Place.Pick != Each {
			return "leave " + s.place(k.Place) + " unworked"
		}
		return "leave rem sts unworked"
	}
	if k.Place != nil {
		return verb + s.place(k.Place)
	}
	return verb + s.place(&Place{Pick: Next, N: k.N, Target: k.Target})
}

func (s Style) join(j *Join) string {
	slip := s.kind(stitch.Of(stitch.Slip), Loop{})
	if j.With.Kind.Base > stitch.Slip && j.Yarn == "" && j.Place != nil {
		return s.what(&j.With) + " in " + s.place(j.Place) + " to join"
	}
	text := "join"
	if j.Yarn != "" {
		text += " " + yarnName(j.Yarn)
		if j.With.Kind.Base > stitch.Slip {
			slip = s.what(&j.With)
		}
	}
	if j.Place != nil {
		text += " with " + slip + " in " + s.place(j.Place)
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
	case c.Not:
		text = "does not count as a st"
	case c.As.Is() && c.Half:
		text = "counts as half of " + s.kind(c.As, Loop{})
	case c.As.Is():
		text = "counts as " + s.kind(c.As, Loop{})
		if c.Chains > 0 {
			text += " and ch " + strconv.Itoa(c.Chains)
		}
	}
	if c.Throughout {
		text += " here and throughout"
	}
	return " (" + text + ")"
}

func (s Style) ref(r *Ref) string {
	text := "rep "
	switch {
	case r.Last.Set() && s.one(r.Last):
		text += "last " + strings.ToLower(s.round())
	case r.Last.Set():
		text += "last " + s.Num(r.Last) + " " + strings.ToLower(s.round()) + "s"
	default:
		text += s.Numbers(r.Rounds)
	}
	if r.Times.Set() {
		text += " " + s.times(r.Times)
	}
	return text
}

// Numbers is "Rnd 3", "Rnds 3 and 4", "Rows 2-5".
func (s Style) Numbers(l []Range) string {
	var parts []string
	many := len(l) > 1
	for _, r := range l {
		if s.Size < 0 && len(r.From.Values) > 1 && len(r.To.Values) > 1 && !r.ToEnd && s.Num(r.From) != s.Num(r.To) {
			// 8-13 (10-16, 11-18)
			runs := make([]string, len(r.From.Values))
			for i := range runs {
				runs[i] = fmt.Sprintf("%d-%d", r.From.For(i), r.To.For(i))
			}
			parts, many = append(parts, runs[0]+" ("+strings.Join(runs[1:], ", ")+")"), true
			continue
		}
		from, to := s.Num(r.From), s.Num(r.To)
		switch {
		case r.ToEnd:
			parts, many = append(parts, from+"-end"), true
		case from == to:
			parts = append(parts, from)
		default:
			parts, many = append(parts, from+"-"+to), true
		}
	}
	word := s.round()
	if many {
		word += "s"
	}
	text := strings.Join(parts, ", ")
	if n := len(parts); n > 1 {
		text = strings.Join(parts[:n-1], ", ") + " and " + parts[n-1]
	}
	return word + " " + text
}

func (s Style) until(u *Until) string {
	if u.Rows.Set() {
		return "until " + s.Num(u.Rows) + " " + strings.ToLower(s.round()) + "s are complete"
	}
	l := make([]string, len(u.Length))
	for i, v := range u.Length {
		l[i] = strconv.FormatFloat(v/10, 'f', -1, 64)
	}
	text := l[0]
	switch {
	case s.Size >= 0 && len(l) > 1:
		text = l[min(s.Size, len(l)-1)]
	case len(l) > 1:
		text += " (" + strings.Join(l[1:], ", ") + ")"
	}
	return fmt.Sprintf("until piece measures %s cm", text)
}
