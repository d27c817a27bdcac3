package working

import (
	"regexp"
	"strconv"
	"strings"

	"whorl/patterns"
	"whorl/patterns/fault"
	"whorl/patterns/notation"
	"whorl/patterns/stitch"
)

// movesHook are words that tell how the hook is moved.
var movesHook = regexp.MustCompile(`\b(insert (your |the )?hook|insert in|yo|yoh|yrh|yarn (over|round|around)|remove hook|` +
	`(draw|pull)(ing)? (up )?(a |the )?(long )?(loop |yarn )?through|(draw|pull) up a (long )?loop|last (loop|lp)s? (of each |of each st |of each stitch )?on)\b`)

// letsGo are the ways of telling that the loop is dropped from the hook.
var letsGo = regexp.MustCompile(`\b((remove|withdraw) (your |the )?hook|(take|slip|draw) (your |the )?hook out|drop (the )?(working )?(loop|st|stitch)|(slip|take|slide) (the )?(working )?loop off (of )?(your |the )?hook)\b`)

// hookItems is what a definition in the movements of the hook makes: one with a name of
// the trade is what its name says, where its words say; any other is told by its movements.
// It is false for a definition in stitches, and for one that cannot be told.
// Others are those it may be told by: "worked as wheel but over 4 sts".
func hookItems(d *patterns.Definition, others []patterns.Definition, trade *notation.Vocabulary) ([]notation.Item, bool) {
	if items, ok := overFewer(d, others, trade); ok {
		return items, true
	}
	words := " " + strings.ToLower(strings.Join(d.Words.Lines, " "))
	words = letsGo.ReplaceAllString(strings.NewReplacer(" lp ", " loop ", " lps ", " loops ").Replace(words), "remove hook")
	if !movesHook.MatchString(words) {
		return nil, false
	}
	at := notation.Span{Pos: d.Pos, Length: len([]rune(d.Name))}
	told, counted := notation.ParseHook(lines(d.Words), trade, nil)
	what, named := hookNamed(d, words, trade)
	switch {
	case named && counted && what.Kind.Shape != stitch.Popcorn:
		for i, it := range told {
			if s, ok := it.(*notation.Stitches); ok {
				told[i] = &notation.Stitches{Span: at, What: toldBy(what, s), Places: s.Places}
			}
		}
		return told, true
	case !named && counted:
		bobble := calledBobble.MatchString(words) || shapeCalled(notation.Plain(d.Name)) == stitch.Bobble // "MB", which makes one
		if s, ok := told[0].(*notation.Stitches); ok && bobble && s.What.Kind.Shape == stitch.Cluster {
			s.What.Kind.Shape = stitch.Bobble
		}
		return told, true
	case !named:
		return nil, false
	}
	return []notation.Item{&notation.Stitches{Span: at, What: what}}, true
}

// calledBobble are words that say of a designer's own name, "MB", what it stands for.
var calledBobble = regexp.MustCompile(`^ (?:make |work |an? |1 )*bobble\b`)

// toldBy is a stitch with a name of the trade as the movements of the hook tell of it: with
// as many legs, and over several places where each leg goes into the next.
func toldBy(what notation.What, told *notation.Stitches) notation.What {
	k, by := &what.Kind, told.What.Kind
	switch k.Shape {
	case stitch.Cluster:
		if by.Legs > 1 {
			k.Base, k.Shape, k.Legs = by.Base, by.Shape, by.Legs
			if by.Shape == stitch.Puff {
				k.Base, k.Shape = stitch.Half, stitch.Cluster
			}
		}
	case stitch.Bobble, stitch.Puff:
		if by.Legs > 1 {
			k.Legs = by.Legs
		}
	case stitch.Plain:
		if by.Shape == stitch.Plain && by.Base >= stitch.Single {
			k.Base = by.Base // "rtrf", which is a US double crochet, in a pattern in US terms
		}
	}
	if !what.Loop.Set {
		what.Loop = told.What.Loop
	}
	return what
}

// hookNamed is the stitch that the name of such a definition is in the trade, or that its
// words name. The legs are as many as the words have times or stitches. It goes round a post
// when its name or its words say so. It is false where neither tells.
func hookNamed(d *patterns.Definition, words string, trade *notation.Vocabulary) (notation.What, bool) {
	if k, ok := trade.ClusterOver(words); ok {
		return notation.What{Kind: k}, true
	}
	n := notation.Times(words)
	made := func(k stitch.Kind) (notation.What, bool) {
		return notation.What{Kind: k, Loop: postIn(words)}, true
	}
	if k, into, ok := trade.Stitch(d.Name); ok {
		if n > 1 && k.Shape != stitch.Plain && k.Shape != stitch.Together {
			k.Legs = n
		} else if of, legs := trade.Leading(words); legs > 1 && of.Base >= stitch.Half && k.Shape != stitch.Plain && k.Shape != stitch.Together {
			k.Base, k.Legs = of.Base, legs // "4 dc in same st, remove hook from loop, …"
		}
		if into != stitch.Top {
			return notation.What{Kind: k, Loop: notation.Loop{Set: true, Into: into}}, true
		}
		return made(k)
	}
	if what, ok := decreaseNamed(d.Name, words, trade); ok {
		return what, true
	}
	if k, ok := overStated(words, trade); ok {
		return made(k)
	}
	if k, legs := trade.Leading(words); k.Base >= stitch.Half && legs > 1 &&
		strings.Contains(words, "remove hook") {
		return made(stitch.Kind{Base: k.Base, Shape: stitch.Popcorn, Legs: legs})
	}
	return notation.What{}, false
}

// stated are words that leave it to the instructions over how many stitches a stitch is
// worked: "over each of the next stitches as stated", "over number of sts indicated".
var stated = regexp.MustCompile(`\bover (each of )?(the )?(next |following )?(number of |indicated |stated |given |specified )*(sts|stitches)\b`)

// overStated is the stitch that is made over as many places as the instructions say: its
// kind, with no number of legs.
func overStated(words string, trade *notation.Vocabulary) (stitch.Kind, bool) {
	told := false
	for _, w := range []string{"stated", "indicated", "specified", "given", "instructed", "directed", "number of"} {
		told = told || strings.Contains(words, w)
	}
	gathered := strings.Contains(words, "all l") || strings.Contains(words, "all the l") || strings.Contains(words, "all rem") || strings.Contains(words, "last l")
	if !told || !gathered || !stated.MatchString(words) {
		return stitch.Kind{}, false
	}
	k := trade.First(words)
	if !k.Is() && (strings.Contains(words, "through 2 l") || strings.Contains(words, "through two l")) {
		k = stitch.Of(stitch.Double)
	}
	k.Shape = stitch.Together
	return k, k.Base >= stitch.Single
}

// decreaseNamed is what the name of a decrease means in the trade, whatever the hook does
// for it: "dec", "inv dec". A decrease in the front loops is an invisible one.
func decreaseNamed(name, words string, trade *notation.Vocabulary) (notation.What, bool) {
	said := notation.Plain(name)
	switch said {
	case "dec", "decrease", "inv dec", "invdec", "invisible dec", "invisible decrease":
	default:
		return notation.What{}, false
	}
	if said = "decrease"; strings.Contains(words, "invisible") || strings.Contains(words, "front loop") {
		said = "invisible decrease"
	}
	items, faults := notation.ParseWords([]notation.Line{{Text: said, Line: 1, Column: 1}}, trade, nil)
	if len(items) != 1 || len(faults) > 0 {
		return notation.What{}, false
	}
	s, ok := items[0].(*notation.Stitches)
	if !ok {
		return notation.What{}, false
	}
	return s.What, true
}

// postIn is the post that the movements of the hook go round: the front post
// when it is put in from the front, the back post when from the back.
func postIn(words string) notation.Loop {
	before, _, post := strings.Cut(words, "post")
	front, back := strings.Index(before, "front"), strings.Index(before, "back")
	switch {
	case !post || front < 0 && back < 0:
		return notation.Loop{}
	case back < 0 || front >= 0 && front < back:
		return notation.Loop{Set: true, Into: stitch.FrontPost}
	}
	return notation.Loop{Set: true, Into: stitch.BackPost}
}

// tradeMeaning is what the name of a decrease or an increase means in the trade, when its
// definition only explains it: words that cannot be read, or of which less than all could.
// It is false when the words were read as a stitch of that sort.
func tradeMeaning(d *patterns.Definition, items []notation.Item, faults fault.List, trade *notation.Vocabulary) (notation.What, bool) {
	said, unread := notation.ParseWords([]notation.Line{{Text: notation.Plain(d.Name), Line: 1, Column: 1}}, trade, nil)
	if len(said) != 1 || len(unread) > 0 {
		return notation.What{}, false
	}
	named, ok := said[0].(*notation.Stitches)
	if !ok || len(named.Places) > 0 || named.N.Set() {
		return notation.What{}, false
	}
	words := strings.ToLower(strings.Join(d.Words.Lines, " "))
	if what, ok := togetherIn(items); ok && len(faults) == 0 {
		return what, true
	}
	if len(faults) == 0 && onlyShaping(items, named.What.Shaping) {
		return items[0].(*notation.Stitches).What, true
	}
	if isPost(named.What.Loop) {
		return named.What, !onePost(items, faults) && explainsPost(words, &named.What, trade)
	}
	switch k := named.What.Kind; {
	case k.Shape == stitch.Together, named.What.Shaping < 0:
		if len(faults) == 0 && anyTogether(items) {
			return notation.What{}, false
		}
		if named.What.Shaping < 0 && !strings.Contains(words, "tog") && !strings.Contains(words, "decrease") {
			return notation.What{}, false
		}
	case named.What.Shaping > 0:
		if len(faults) == 0 && len(items) > 0 || !strings.Contains(words, "increase") {
			return notation.What{}, false
		}
	default:
		return notation.What{}, false
	}
	if named.What.Shaping <= 0 && strings.Contains(words, "invisible") {
		named.What.Kind.Manner |= stitch.Invisible
	}
	return named.What, true
}

// onlyShaping reports whether items are an increase or a decrease, which one says, of which no stitch is
// named: "increase in next st", "decrease over next 2 sts".
func onlyShaping(items []notation.Item, which int) bool {
	if len(items) != 1 || which == 0 {
		return false
	}
	s, ok := items[0].(*notation.Stitches)
	if !ok || s.What.Shaping != which || s.What.Kind.Is() || s.What.Name != "" || s.N.Set() || s.Times.Set() || len(s.But) > 0 || len(s.Places) != 1 {
		return false
	}
	n := s.Places[0].N
	return s.Places[0].Of == nil && s.Places[0].Target.Sort == notation.AnyStitch && (!n.Set() && (which > 0 || s.Places[0].Pick == notation.Next) || len(n.Values) == 1 && n.Values[0] == 2 && which < 0)
}

// isPost reports whether a loop is a post.
func isPost(l notation.Loop) bool {
	return l.Set && (l.Into == stitch.FrontPost || l.Into == stitch.BackPost)
}

// onePost reports whether a definition was read as one stitch, as it is to be round a post.
func onePost(items []notation.Item, faults fault.List) bool {
	made := 0
	for _, it := range items {
		if _, note := it.(*notation.Note); !note {
			made++
		}
	}
	return len(faults) == 0 && made == 1
}

// explainsPost reports whether the words of a stitch that is named as one round a post only
// explain that: "raised treble front - work 1 tr round the stem of next st, inserting hook
// from the front". They name a post and no other stitch, and not the other side alone.
func explainsPost(words string, what *notation.What, trade *notation.Vocabulary) bool {
	side, other := "front", "back"
	if what.Loop.Into == stitch.BackPost {
		side, other = other, side
	}
	stem := false
	for _, w := range []string{"stem", "post", "raised", "relief"} {
		stem = stem || strings.Contains(words, w)
	}
	if !stem || strings.Contains(words, other) && !strings.Contains(words, side) || severalIn.MatchString(words) {
		return false
	}
	k := trade.First(words)
	return !k.Is() || k.Base == what.Kind.Base
}

// severalIn are words for more than one stitch, or for chains.
var severalIn = regexp.MustCompile(`\b([2-9]|two|three|tog|together|ch|chain)\b`)

// togetherIn is the decrease that items are, with the loop that is told behind it: "sc 2
// sts together through the front loops", or with how it is made in brackets: "decrease (sc
// 2 sts together)".
func togetherIn(items []notation.Item) (notation.What, bool) {
	if len(items) < 2 {
		return notation.What{}, false
	}
	s, ok := items[0].(*notation.Stitches)
	if !ok || s.What.Kind.Shape != stitch.Together && s.What.Shaping >= 0 || len(s.Places) > 0 || s.N.Set() {
		return notation.What{}, false
	}
	what := s.What
	for _, it := range items[1:] {
		switch it := it.(type) {
		case *notation.Note:
		case *notation.InLoops:
			what.Loop = notation.Loop{Set: true, Into: it.Into}
		case *notation.Group:
			if !anyTogether(it.Items) {
				return notation.What{}, false
			}
		default:
			return notation.What{}, false
		}
	}
	return what, true
}

// anyTogether reports whether stitches are worked together somewhere in items.
func anyTogether(items []notation.Item) bool {
	for _, it := range items {
		switch it := it.(type) {
		case *notation.Stitches:
			if it.What.Kind.Shape == stitch.Together || it.What.Shaping < 0 || it.What.Name != "" {
				return true
			}
		case *notation.Skip, *notation.Group, *notation.Repeat:
			return true // told place by place
		}
	}
	return false
}

// asAnother are words that tell a stitch by another one: "worked as wheel but over 4 sts, drawing
// through 5 loops at the end".
var asAnother = regexp.MustCompile(`^(?:worked |made |work |make )?(?:as|like) (?:for )?(?:the |a )?(.+?),? but (?:worked )?over (?:the |only |next )*(\d+) (?:sts|stitches)` +
	`(?:,? (?:and )?(?:draw|drawing|pull|pulling) through (?:all |the |last )*(\d+) (?:loops|lps)(?: on (?:the )?hook)?(?: at (?:the )?end)?)?\.?$`)

// overFewer is a stitch that is told as another one over more or fewer places, where that one is
// told by the hook, a leg in each of several. The loops that are drawn through at its end have to
// be one more than its legs.
func overFewer(d *patterns.Definition, others []patterns.Definition, trade *notation.Vocabulary) ([]notation.Item, bool) {
	told := asAnother.FindStringSubmatch(strings.ToLower(strings.Join(d.Words.Lines, " ")))
	if told == nil {
		return nil, false
	}
	legs, err := strconv.Atoi(told[2])
	if err != nil || legs < 2 || legs > notation.MaxLegs || told[3] != "" && told[3] != strconv.Itoa(legs+1) {
		return nil, false
	}
	for i := range others {
		o := &others[i]
		if notation.Plain(o.Name) != notation.Plain(told[1]) || o.Name == d.Name {
			continue
		}
		items, ok := hookItems(o, nil, trade)
		if !ok || len(items) != 1 {
			return nil, false
		}
		s, ok := items[0].(*notation.Stitches)
		if !ok || s.What.Kind.Shape != stitch.Together || len(s.Places) > 0 || s.N.Set() {
			return nil, false
		}
		what := s.What
		what.Kind.Legs = legs
		return []notation.Item{&notation.Stitches{Span: notation.Span{Pos: d.Pos, Length: len([]rune(d.Name))}, What: what}}, true
	}
	return nil, false
}
