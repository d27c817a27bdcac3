package notation

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"
)

// only takes the names of sizes out of "Adult and Adult Large only", from token
// start up to the current one.
func (p *parser) only(l *Label, start int) {
	text := p.words(start)
	t := strings.TrimPrefix(strings.TrimPrefix(strings.ToLower(text), "for "), "the ")
	if sizes, unknown := p.sizesButOrFrom(t); unknown != "" {
		p.noSize(l, start, text, unknown)
		return
	} else if sizes != nil {
		l.Only = append(l.Only, sizes...)
		return
	}
	if !strings.HasSuffix(t, "only") && !strings.HasPrefix(t, "size") && !strings.HasSuffix(t, " sizes") && !strings.HasSuffix(t, " size") &&
		!p.allSizes(t) {
		return
	}
	t = strings.TrimSpace(strings.TrimSuffix(t, "only"))
	for _, word := range []string{"sizes", "size"} {
		t = strings.TrimSpace(strings.TrimSuffix(strings.TrimPrefix(t, word), word))
	}
	if t == "all" || t == "both" || t == "every" {
		l.Only = append(l.Only, p.sizes...)
		return
	}
	if (t == "all other" || t == "other" || t == "remaining" || t == "all remaining" || t == "the other") && len(p.taken) > 0 {
		for _, s := range p.sizes {
			if !slices.Contains(p.taken, s) {
				l.Only = append(l.Only, s)
			}
		}
		return
	}
	if group := p.sizeGroup(t); group != nil {
		l.Only = append(l.Only, group...)
		return
	}
	t = strings.NewReplacer(" and ", ",", "&", ",", "+", ",").Replace(t)
	var names []string
	for _, name := range strings.Split(t, ",") {
		if name = strings.TrimSpace(name); p.sizeNamed(name) != "" {
			names = append(names, name) // L/XL may be one size
		} else {
			names = append(names, unitBehind(strings.Split(name, "/"))...)
		}
	}
	for _, name := range unitBehind(names) {
		name = strings.TrimPrefix(strings.TrimSpace(name), "size ")
		size := p.sizeNamed(name)
		group := p.sizesWith(strings.TrimPrefix(name, "the "))
		if n, _ := strconv.Atoi(name); size == "" && n > 0 && n <= len(p.sizes) && !strings.ContainsAny(strings.Join(p.sizes, ""), "0123456789") {
			size = p.sizes[n-1] // "Sizes 2 and 3 only"
		}
		if size != "" {
			l.Only = append(l.Only, size)
		} else {
			l.Only = append(l.Only, group...)
		}
		if size == "" && name != "" && group == nil {
			p.noSize(l, start, text, name)
		}
	}
}

// noSize reports a name that is of no size.
func (p *parser) noSize(l *Label, start int, text, name string) {
	help := "There is only one size."
	if len(p.sizes) > 0 {
		help = "The sizes are " + p.sizeNames() + "."
	}
	p.faults = append(p.faults, fail(Span{p.toks[start].pos, len([]rune(text))}, "unknown-size", fmt.Sprintf("there is no size %q", name), help))
	l.Only = append(l.Only, name)
}

// ifMaking is how the sizes are named in a sentence: "if you are making the Newborn hat".
var ifMaking = regexp.MustCompile(`^(?:if|when) (?:(?:you are|you're|youre) )?(?:making|working|crocheting) (?:the )?(?:sizes? )?(.+?)(?: sizes?)?(?: (?:hat|beanie|cap|bonnet|mitts?|mittens?|sock|socks|cowl|piece|version|one|ones|only))?$`)

// sizesFirst reads the sizes that a round is for where they stand before its
// number or before work without one: "For size Large only, Rnd 3: …", "Adult only: Rnd 7: …",
// "Adult only: Rep Rnds 3 and 4.".
func (p *parser) sizesFirst(l *Label) {
	start := p.i
	if _, round := roundWord(p.tok()); round && p.at(1).kind == tNumber {
		return
	}
	for p.tok().kind != tEnd && p.tok().kind != tStop && p.i-start < 16 && (p.i == start || !p.tok().first) {
		p.i++
		k := p.tok().kind
		if k != tColon && k != tComma && k != tDash {
			continue
		}
		_, round := roundWord(p.at(1))
		if p.at(1).kind == tOrdinal || ordinalOf(p.at(1)) > 0 {
			_, round = roundWord(p.at(2)) // "Large only: 3rd round: …"
		}
		round = round || p.at(1).is("next") && roundNext(p.at(2))
		making := k == tComma && p.toks[start].is("if", "when")
		sized := k == tComma && p.sizesAlone(start)
		skips := p.at(1).is(skipping...) || (k == tColon || making || k == tComma && (p.toks[start].is("for") || sized)) && p.skipsLater(p.i+1)
		works := (k == tColon || k == tComma && p.toks[start].is("for") || sized) && !making && !round && (p.instructs(p.i+1) || p.workAgain(p.i+1))
		if p.at(1).first || !round && !skips && !works {
			continue
		}
		faults := len(p.faults)
		if forAll.MatchString(strings.ToLower(p.words(start))) {
			l.Only = append(l.Only, p.sizes...)
		} else {
			p.only(l, start)
		}
		if len(l.Only) == 0 && skips {
			// "Preemie: skip to Rnd 9", "For Newborn size, go to Rnd 5"
			name := strings.TrimPrefix(strings.ToLower(p.words(start)), "for ")
			if m := ifMaking.FindStringSubmatch(name); m != nil {
				name = m[1]
			}
			for _, name := range unitBehind(strings.Split(strings.ReplaceAll(name, " and ", ","), ",")) {
				if s := p.sizeNamed(strings.TrimSpace(strings.TrimSuffix(strings.TrimSpace(name), "size"))); s != "" {
					l.Only = append(l.Only, s)
				}
			}
		}
		if len(l.Only) > 0 && (len(p.faults) == faults || p.toks[start].is("for", "size", "sizes")) {
			p.i++
			return
		}
		l.Only, p.faults = nil, p.faults[:faults]
		break
	}
	p.i = start
}

// skipsLater reports whether the line at token i says in its second sentence where
// to go on: "your base is done. Go on to the Sides."
func (p *parser) skipsLater(i int) bool {
	for j := i; j+1 < len(p.toks) && !p.toks[j].first && j < i+12; j++ {
		if k := p.toks[j].kind; (k == tColon || k == tDash || k == tComma || k == tSemi || p.toks[j].is("so", "and", "now")) && p.toks[j+1].is(skipping...) {
			return true
		} else if k == tStop {
			return p.toks[j+1].is(skipping...) && !p.toks[j+1].first
		}
	}
	return false
}

// skipping are words that send a size on to a later round.
var skipping = []string{"skip", "proceed", "go", "continue", "move", "jump", "hop", "head", "omit"}

// thenSkips passes over what may stand before such a word behind the work of the sizes, "Now skip to Rnd 8.",
// "You can now jump to Rnd 8.", and reports whether one comes next.
func (p *parser) thenSkips() bool {
	start := p.i
	p.eat("now", "then", "next", "and", "so", "from")
	p.eat("here")
	if p.eat("you") {
		p.eat("can", "may", "should", "will")
	}
	p.eat("now", "then", "just")
	out := p.i + 1
	if p.at(1).is("out") {
		out++
	}
	if _, round := roundWord(&p.toks[min(out, len(p.toks)-1)]); p.tok().is(skipping...) || round && p.tok().is("miss", "leave") {
		return true
	}
	p.i = start
	return false
}

// skipsTo reads "skip to Rnd 9", "proceed to Rnd 9 of Body", "continue with Rnd 9"
// behind the sizes that it is for.
func (p *parser) skipsTo(l *Label) bool {
	start := p.i
	if len(l.Only) > 0 && !p.tok().is(skipping...) {
		// "Small: your base is done. Go on to the Sides."
		for p.tok().kind == tWord && p.i-start < 10 && (p.tok().is("increases", "increasing", "decreases", "decreasing", "stitches", "sts") || !p.stitchy(p.i, p.i+1)) {
			p.i++
		}
		switch p.tok().kind {
		case tStop, tComma, tColon, tDash, tSemi:
			p.i++
		}
		p.eat("so", "and", "then", "you", "can", "now")
		p.eat("then", "you", "now")
		p.eat("can", "now")
		if p.tok().first {
			p.i = start
			return false
		}
	}
	if p.skipsRounds(l) {
		return true
	}
	if len(l.Only) == 0 && len(p.before) > 0 && p.i == 0 && (p.thenSkips() || p.skipsLater(0)) {
		l.Only = p.before
		if p.skipsRounds(l) || p.skipsTo(l) {
			return true
		}
		l.Only = nil
	}
	if (len(l.Only) > 0 || p.tok().first && p.tok().is("skip", "proceed")) && p.eat(skipping...) {
		from := p.i
		for p.eat("on", "straight", "directly", "ahead", "now", "right", "forward", "down", "over") {
		}
		if p.eat("to", "with", "at", "from") {
			if len(l.Only) > 0 && p.i-from <= 2 && p.skipsToPart(l) {
				return true
			}
			if row, ok := roundWord(p.tok()); ok {
				p.i++
				if n, ok := p.num(); ok {
					l.SkipTo, l.Row = n, row
					for k := p.tok(); k.kind != tEnd && k.kind != tStop && !k.first; k = p.tok() {
						p.i++
					}
					p.eatKind(tStop)
					return true
				}
			}
		}
	}
	p.i = start
	return false
}

// skipsToPart reads "the Sides section" up to the end of its line behind "skip to":
// the heading that the sizes go on with.
func (p *parser) skipsToPart(l *Label) bool {
	start := p.i
	p.eat("the")
	p.eatKind(tQuote)
	from := p.i
	for p.tok().kind == tWord && !p.tok().first && p.i-from < 5 {
		// "Even Rounds" is a heading, "Round 9" and "the next round" are none.
		if _, round := roundWord(p.tok()); round && (p.i == from || p.at(1).kind == tWord && !p.at(1).first || p.at(1).kind == tNumber || p.toks[from].is("next", "last", "following", "end")) {
			p.i = start
			return false
		}
		p.i++
	}
	to := p.i
	p.eatKind(tQuote)
	if to > from+1 && p.toks[to-1].is("section", "part", "below", "instructions") {
		to--
	}
	p.eatKind(tStop)
	if to == from || !p.tok().first && p.tok().kind != tEnd {
		p.i = start
		return false
	}
	end := p.i
	p.i = to
	l.SkipToPart = p.words(from)
	p.i = end
	return true
}

// allSizes reports whether words are names of sizes and nothing else: "Small",
// "Child and Teen".
func (p *parser) allSizes(text string) bool {
	for _, name := range unitBehind(strings.FieldsFunc(strings.ReplaceAll(text, " and ", ","), func(r rune) bool { return r == ',' || r == '&' })) {
		if name = strings.TrimSpace(name); name == "" || p.sizeNamed(name) == "" {
			return false
		}
	}
	return strings.TrimSpace(text) != ""
}

// sizesBehind reads the sizes that a round is for where a dash or a comma stands
// before them: "Rnd 5 – Child and Adult sizes only: …".
func (p *parser) sizesBehind(l *Label) {
	start := p.i
	if p.tok().kind == tStar && len(l.Numbers) > 0 {
		for j := p.i + 1; j < p.i+10 && j+1 < len(p.toks); j++ {
			if p.toks[j].kind == tStar && p.toks[j+1].kind == tColon && p.sizesSaid(l, start+1, j) {
				p.i = j + 1 // "Round 3 *Teen and Adult only*: …"
			}
		}
		return
	}
	if k := p.tok().kind; len(l.Only) > 0 || k != tDash && k != tComma && (k != tWord && !(k == tNumber && p.sizesToColon()) || len(l.Numbers) == 0 || p.tok().first) {
		return
	} else if k == tWord || k == tNumber {
		for j := p.i + 1; j < p.i+8 && j < len(p.toks)-1; j++ {
			if p.toks[j].kind == tColon {
				if p.sizesSaid(l, start, j) {
					p.i = j // "Rnd 3 M/L: …"
				}
				return
			}
		}
		return
	}
	p.i++
	first := p.i
	for k := p.tok().kind; k != tColon && k != tEnd && k != tStop && k != tOpen && p.i-start < 16; k = p.tok().kind {
		p.i++
	}
	faults := len(p.faults)
	if p.tok().kind == tColon && p.i > first {
		p.only(l, first)
	}
	if len(l.Only) == 0 || len(p.faults) > faults {
		l.Only, p.faults, p.i = nil, p.faults[:faults], start
	}
}

// sizesToColon reports whether sizes come next, up to the colon or dash behind them: the "6-12 months and
// Toddler only" of "Rnd 7, 6-12 months and Toddler only:", which are no numbers of rounds.
func (p *parser) sizesToColon() bool {
	named := false
	for j := p.i; j < p.i+20 && j < len(p.toks)-1 && (j == p.i || !p.toks[j].first); j++ {
		switch t := &p.toks[j]; {
		case t.kind == tStop, t.kind == tStar, t.kind == tOpen:
			return false
		case t.kind == tColon, t.kind == tDash && p.instructs(j+1):
			var l Label
			at, faults := p.i, len(p.faults)
			p.i = j
			p.only(&l, at)
			known := len(p.faults) == faults
			p.i, p.faults = at, p.faults[:faults]
			return named && known && len(l.Only) > 0
		}
		named = named || p.toks[j].kind == tWord && !p.toks[j].is("and", "or")
	}
	return false
}

// letters are what sizes that are letters are called in full.
var letters = map[string]string{"extra small": "XS", "x-small": "XS", "xs": "XS", "small": "S", "s": "S", "medium": "M", "m": "M", "large": "L", "l": "L",
	"extra large": "XL", "x-large": "XL", "xl": "XL"}

// letterOf is a size as a letter, "" for one that is none.
func letterOf(size string) string { return letters[strings.ToLower(size)] }

// sizeNamed is the size that a name stands for: the name itself, its plural
// ("Adults only"), its first letter where no other size begins with it, or the same
// age or length. It is "" for none.
func (p *parser) sizeNamed(name string) string {
	found := ""
	if toks, _ := scan([]Line{{Text: name, Line: 1, Column: 1}}); len(toks) == 2 {
		if n := max(ordinalOf(&toks[0]), toks[0].value); n > 0 && n <= len(p.sizes) && toks[0].kind != tNumber {
			found = p.sizes[n-1] // "2nd and 3rd sizes"
		}
	}
	for _, s := range p.sizes {
		if strings.EqualFold(name, s) || letters[strings.ToLower(name)] != "" && letters[strings.ToLower(name)] == letterOf(s) {
			return s
		}
	}
	for _, s := range p.sizes {
		if digitsOf(name) != digitsOf(s) {
			continue // 3 is not 3-6m
		}
		switch {
		case strings.EqualFold(name, s+"s"), len(name) == 1 && !digit(rune(name[0])) && len(s) > 1 && strings.EqualFold(name, s[:1]):
			if found != "" {
				return ""
			}
			found = s
		}
	}
	if found == "" {
		found = p.sizeInUnits(name)
	}
	if found == "" {
		found = p.sizeInShort(name)
	}
	return found
}

// sizeInShort is the one size that a word of a few letters is short for, "NB" of Newborn, "Tod" of
// Toddler: it begins as the size does, and its letters come in it in that order. It is "" for none.
func (p *parser) sizeInShort(name string) (found string) {
	if len(name) < 2 || len(name) > 4 || digit(rune(name[0])) {
		return "" // "1m" is not short for 12 mos
	}
	name = strings.ToLower(name)
	for _, s := range p.sizes {
		left, full := name, strings.ToLower(s)
		if digitsOf(name) != digitsOf(full) || !strings.HasPrefix(full, left[:1]) || len(full) <= len(name) || letterOf(s) == strings.ToUpper(s) {
			continue
		}
		for _, c := range []byte(full) {
			if left != "" && c == left[0] {
				left = left[1:]
			}
		}
		if left == "" && found != "" {
			return ""
		} else if left == "" {
			found = s
		}
	}
	return found
}

// sizeLine reads a line that says which sizes the rounds after it are for:
// "Size Large only:", "Sizes M and L only", "All sizes:".
func (p *parser) sizeLine() (Label, bool) {
	start := p.i
	if l, ok := p.sizesOnLine(); ok {
		return l, true
	}
	if l, ok := p.sizesEnd(); ok {
		return l, true
	}
	if l, ok := p.sizesDone(); ok {
		return l, true
	}
	var l Label
	all := p.eatAll("all", "sizes")
	if all && p.tok().is(butWords...) {
		all = false
		p.i = start
	}
	if !all {
		at := p.i
		p.eat("for")
		sized := p.tok().is("size", "sizes") || p.tok().is("all") && p.at(1).is("sizes")
		if p.tok().kind == tWord && p.at(1).is("sizes", "size") && p.at(2).is("only") {
			sized = true // "Toddler sizes only"
		}
		for p.tok().kind != tColon && p.tok().kind != tStop && p.tok().kind != tEnd && p.i-start < 16 && (p.i == start || !p.tok().first) {
			if p.i++; p.tok().kind == tComma && (p.at(1).is(skipping...) || p.workAgain(p.i+1)) && p.sizesAlone(start) {
				p.i = start
				return Label{}, false // "Size Small, proceed to Body."
			}
		}
		if !sized && !(p.at(-1).is("only") || p.at(-1).is("size", "sizes") && p.i > at+1) {
			p.i = start
			return Label{}, false
		}
		faults := len(p.faults)
		if p.only(&l, at); !sized && len(p.faults) > faults {
			p.i, p.faults = start, p.faults[:faults]
			return Label{}, false
		}
	}
	if !p.eatKind(tColon) {
		p.eatKind(tStop)
	}
	if !p.tok().first && p.tok().kind != tEnd || !all && len(l.Only) == 0 {
		p.i = start
		return Label{}, false
	}
	l.Text = p.words(start)
	return l, true
}

// everySize reports whether the numbers of a label give one for each of n sizes:
// "Rnd 15 (16, 17)".
func (l *Label) everySize(n int) bool {
	if n < 2 || len(l.Numbers) == 0 || len(l.Only) > 0 {
		return false
	}
	from := l.Numbers[0].From.Values
	return len(from) == n && !slices.Contains(from, 0)
}

// headsAllSizes reports whether a line ends in "(all sizes)", as a heading does behind
// rounds that were for some.
func headsAllSizes(toks []token) bool {
	for i := 1; i+3 < len(toks); i++ {
		if toks[i].kind == tOpen && toks[i+1].is("all", "every") && toks[i+2].is("sizes", "size") && toks[i+3].kind == tClose &&
			(i+4 == len(toks) || toks[i+4].first || toks[i+4].kind == tEnd || toks[i+4].kind == tColon) {
			return true
		}
	}
	return false
}
