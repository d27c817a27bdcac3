package notation

import (
	"maps"
	"regexp"
	"slices"
	"strings"
	"sync"

	"whorl/patterns/fault"
	"whorl/patterns/stitch"
)

// Vocabulary is the words that a parser knows: the names of the trade in one
// set of terms, and the designer's own.
type Vocabulary struct {
	terms stitch.Terms
	// own are the designer's names, trade those of the trade: of one or more
	// words, spaces between them.
	own, trade map[string]phrase
	// begun are the beginnings of those of several words.
	begun, tradeBegun map[string]bool
	// yarns are the names of the yarns, as the scanner takes them apart.
	yarns []string
}

// NameYarns adds the names of the pattern's yarns, which may stand by themselves where
// a colour begins: "cocoa, ch 5". Names that are words of the trade are left out.
func (v *Vocabulary) NameYarns(names []string) {
	for _, n := range names {
		n = scanned(strings.ToLower(strings.TrimSpace(n)))
		if _, known := v.lookup(n); n != "" && !known && !slices.Contains(stitchyWords, n) && !slices.Contains(v.yarns, n) {
			v.yarns = append(v.yarns, n)
		}
	}
}

// phrase is what a name stands for.
type phrase struct {
	what What
	// foreign is set for a name of the other set of terms.
	foreign bool
}

// NewVocabulary is the vocabulary of the terms with the names of the
// designer's own stitches added; those go before the trade's.
func NewVocabulary(t stitch.Terms, names []string) *Vocabulary {
	v := &Vocabulary{terms: t, own: map[string]phrase{}, begun: map[string]bool{}}
	whole := tradeWords[stitch.US]
	if t == stitch.UK {
		whole = tradeWords[stitch.UK]
	}
	base := whole()
	v.trade, v.tradeBegun = base.own, base.begun
	for _, n := range names {
		n = Plain(n)
		w := phrase{what: What{Name: n}}
		all := spellings(n)
		for _, one := range otherNames(n) {
			all = append(all, spellings(one)...)
		}
		for _, n := range all {
			v.add(n, w)
			v.add(plural(n), w)
			if s := scanned(n); s != n {
				v.add(s, w) // C4F, which the scanner takes apart
				v.add(plural(s), w)
			}
		}
	}
	return v
}

// aboutShort are the words about what a name is shortened to: "shell (abbreviated sh)".
var aboutShort = regexp.MustCompile(`^(abbreviated( to| as)?|abbreviation|abbr|or|aka|also|called|shown as|written( as)?) | for short$`)

// otherNames are the names of a stitch with others in brackets: "V-stitch (V-st)", "Bobble (MB = make
// bobble)". There are none where it has but one name.
func otherNames(name string) (l []string) {
	long, short, ok := strings.Cut(name, "(")
	if !ok || !strings.HasSuffix(short, ")") {
		return nil
	}
	for _, one := range append([]string{long}, strings.FieldsFunc(strings.TrimSuffix(short, ")"), func(r rune) bool { return r == '=' || r == ',' })...) {
		l = append(l, aboutShort.ReplaceAllString(strings.TrimSpace(one), ""))
	}
	return l
}

// ShortName is the shortest of the names of a stitch that has others in brackets, "V-st" of "V-stitch
// (V-st)"; any other name as it stands.
func ShortName(name string) string {
	short := name
	for _, one := range otherNames(name) {
		if len(one) < len(short) {
			short = one
		}
	}
	return short
}

// scanned is a name as the scanner takes it apart, with single spaces.
func scanned(name string) string {
	toks, _ := scan([]Line{{Text: name, Line: 1, Column: 1}})
	var l []string
	for i := range toks[:len(toks)-1] {
		l = append(l, toks[i].text)
	}
	return strings.Join(l, " ")
}

// tradeWords are the words of the trade in either set of terms, made when they
// are first wanted.
var tradeWords = map[stitch.Terms]func() *Vocabulary{
	stitch.US: sync.OnceValue(func() *Vocabulary { return newTrade(stitch.US) }),
	stitch.UK: sync.OnceValue(func() *Vocabulary { return newTrade(stitch.UK) }),
}

// newTrade is the vocabulary of the trade in one set of terms.
func newTrade(t stitch.Terms) *Vocabulary {
	v := &Vocabulary{terms: t, own: map[string]phrase{}, begun: map[string]bool{}}
	own, other := baseWords(stitch.US), baseWords(stitch.UK)
	if t == stitch.UK {
		own, other = other, own
	}
	for w, b := range other {
		v.addStitch(w, b, true)
	}
	for w, b := range own {
		v.addStitch(w, b, false)
	}
	for w, n := range map[string]int{
		"inc": 1, "increase": 1, "incs": 1, "increases": 1,
		"dec": -1, "decrease": -1, "decs": -1, "decreases": -1} {
		v.add(w, phrase{what: What{Shaping: n}})
	}
	for _, w := range []string{"inv dec", "invdec", "invisible dec", "invisible decrease", "inv decrease"} {
		v.add(w, phrase{what: What{Shaping: -1, Kind: stitch.Kind{Manner: stitch.Invisible}}})
	}
	crab := What{Kind: stitch.Kind{Base: stitch.Single, Manner: stitch.Reverse}}
	for _, w := range []string{"crab st", "crab stitch", "crab", "crab sts"} {
		v.add(w, phrase{what: crab})
	}
	return v
}

// lookup is what a name stands for; the designer's own go before the trade's.
func (v *Vocabulary) lookup(words string) (phrase, bool) {
	if ph, ok := v.own[words]; ok {
		return ph, true
	}
	ph, ok := v.trade[words]
	return ph, ok
}

// begins reports whether a name of more words begins with these.
func (v *Vocabulary) begins(words string) bool { return v.begun[words] || v.tradeBegun[words] }

// spellings are the ways a name is written: V-st, V st, Vst, V-stitch.
func spellings(n string) []string {
	l := []string{n}
	for _, end := range []string{" stitch", " st", "st"} {
		stem, ok := strings.CutSuffix(n, end)
		if !ok || end == "st" && len(stem) > 2 || stem == "" {
			continue
		}
		l = append(l, stem+" stitch", stem+" st")
		if len(stem) <= 2 {
			l = append(l, stem+"st")
		}
		break
	}
	return l
}

// baseWords are the words for the plain stitches in one set of terms.
func baseWords(t stitch.Terms) map[string]stitch.Base {
	m := map[string]stitch.Base{
		"sl st": stitch.Slip, "slst": stitch.Slip, "sl": stitch.Slip,
		"slip st": stitch.Slip, "slip stitch": stitch.Slip, "ss": stitch.Slip,
		"sl stitch": stitch.Slip, "slipstitch": stitch.Slip,
	}
	for w := range maps.Clone(m) {
		if w != "sl" {
			m["surface "+w] = stitch.Slip // on the face of the cloth, into what is named
		}
	}
	for b := stitch.Single; b <= stitch.TripleTreble; b++ {
		m[b.Name(t)] = b
		m[b.LongName(t)] = b
		m[strings.TrimSuffix(b.LongName(t), " crochet")] = b
	}
	// "treble" and "triple" are both said, and so are the hyphens, which the
	// scanner drops.
	if t == stitch.US {
		delete(m, "single")
		delete(m, "double")
		m["triple crochet"] = stitch.Treble
		m["triple"] = stitch.Treble
		m["trc"] = stitch.Treble
		m["half dc"] = stitch.Half
		m["double treble"] = stitch.DoubleTreble
		m["double triple crochet"] = stitch.DoubleTreble
		m["triple treble"] = stitch.TripleTreble
		m["s c"], m["d c"], m["h d c"], m["half d c"] = stitch.Single, stitch.Double, stitch.Half, stitch.Half
		m["d tr"], m["tr tr"] = stitch.DoubleTreble, stitch.TripleTreble
	} else {
		delete(m, "double")
		m["half treble"] = stitch.Half
		m["half tr"] = stitch.Half
		m["double treble"] = stitch.Treble
		m["triple treble"] = stitch.DoubleTreble
		m["quadruple treble"] = stitch.TripleTreble
		m["qtr"] = stitch.TripleTreble
		// As older leaflets set them.
		m["d c"], m["h tr"], m["d tr"] = stitch.Single, stitch.Half, stitch.Treble
		m["tr tr"], m["quad tr"] = stitch.DoubleTreble, stitch.TripleTreble
	}
	return m
}

// addStitch adds a base with the prefixes that are written as one word with
// it: fpdc, edc, fsc.
func (v *Vocabulary) addStitch(w string, b stitch.Base, foreign bool) {
	put := func(name string, what What) {
		if _, have := v.own[name]; have && foreign {
			return
		}
		v.add(name, phrase{what: what, foreign: foreign})
		v.add(plural(name), phrase{what: what, foreign: foreign})
	}
	k := stitch.Of(b)
	put(w, What{Kind: k})
	if b < stitch.Single {
		return
	}
	e, f, r, s := k, k, k, k
	e.Manner, f.Manner, r.Manner, s.Manner =
		stitch.Extended, stitch.Foundation, stitch.Reverse, stitch.Spike
	short := !strings.Contains(w, " ") && len(w) <= 6
	if short {
		put("e"+w, What{Kind: e})
		put("ex"+w, What{Kind: e})
		put("f"+w, What{Kind: f})
	}
	put("ext "+w, What{Kind: e})
	put("extended "+w, What{Kind: e})
	put("foundation "+w, What{Kind: f})
	put("reverse "+w, What{Kind: r})
	put("rev "+w, What{Kind: r})
	put("spike "+w, What{Kind: s})
	if short {
		put("r"+w, What{Kind: r})
	}
	for _, post := range []struct {
		into  stitch.Into
		words []string
	}{
		{stitch.FrontPost, []string{"fp", "front post ", "fp ", "raised front ", "rf", "front raised "}},
		{stitch.BackPost, []string{"bp", "back post ", "bp ", "raised back ", "rb", "back raised "}},
	} {
		for _, p := range post.words {
			if !short && !strings.HasSuffix(p, " ") {
				continue
			}
			put(p+w, What{Kind: k, Loop: Loop{Set: true, Into: post.into}})
		}
		// The UK order: rtrf, raised treble front.
		side := map[stitch.Into]string{stitch.FrontPost: "front", stitch.BackPost: "back"}[post.into]
		for _, at := range []string{" ", " at ", " at the ", " to the ", " round the ", " on the "} {
			put("raised "+w+at+side, What{Kind: k, Loop: Loop{Set: true, Into: post.into}})
		}
		if short {
			put("r"+w+side[:1], What{Kind: k, Loop: Loop{Set: true, Into: post.into}})
			if b > stitch.Single {
				put(w+side[:1], What{Kind: k, Loop: Loop{Set: true, Into: post.into}}) // trf
			}
		}
	}
	if b == stitch.Single {
		put("spike st", What{Kind: s})
		put("spike stitch", What{Kind: s})
	}
}

func (v *Vocabulary) add(words string, ph phrase) {
	v.own[words] = ph
	for i, c := range words {
		if c == ' ' {
			v.begun[words[:i]] = true
		}
	}
}

// Plain is a name as the vocabulary keeps it: in lower case with single spaces for hyphens and spaces.
func Plain(s string) string {
	s = strings.NewReplacer("-", " ", "‑", " ", "–", " ", "’", "'").Replace(strings.ToLower(s))
	return strings.Join(strings.Fields(spaceDigits(s)), " ")
}

// spaceDigits sets digits that stand at the end of letters apart, as the
// scanner does: ch3 is ch 3, but dc2tog stays one word.
func spaceDigits(s string) string {
	var b strings.Builder
	r := []rune(s)
	for i, c := range r {
		if i > 0 && digit(c) && letter(r[i-1]) {
			j := i
			for j < len(r) && digit(r[j]) {
				j++
			}
			if j == len(r) || !letter(r[j]) {
				b.WriteByte(' ')
			}
		}
		b.WriteRune(c)
	}
	return b.String()
}

func plural(s string) string {
	switch {
	case strings.HasSuffix(s, "ch") || strings.HasSuffix(s, "sh"):
		return s + "es"
	case strings.HasSuffix(s, "s"):
		return s + "es"
	case strings.HasSuffix(s, " st"), strings.HasSuffix(s, "y"):
		return strings.TrimSuffix(s, "y") + map[bool]string{true: "ies", false: "s"}[strings.HasSuffix(s, "y")]
	}
	return s + "s"
}

// instructing are the words besides names of stitches that are most often
// misspelt.
var instructing = []string{"next", "each", "rep", "repeat", "join", "turn", "skip", "around", "across", "ring", "magic", "same", "first", "last", "chain"}

// near is the word of the trade or of the designer's that an unknown one most
// probably means, "" for one that is known or like none.
func (v *Vocabulary) near(word string) string {
	if _, ok := v.lookup(word); ok || slices.Contains(instructing, word) || len(word) < 2 {
		return ""
	}
	var known []string
	for _, words := range []map[string]phrase{v.own, v.trade} {
		for w, ph := range words {
			if !ph.foreign && !strings.Contains(w, " ") {
				known = append(known, w)
			}
		}
	}
	slices.Sort(known)
	near := fault.Nearest(word, append(known, instructing...))
	if len(near) < len(word)-1 || len(near) > len(word)+1 {
		return ""
	}
	return near
}

// MaxLegs is the most legs that a stitch may have.
const MaxLegs = 60

// glued reads a decrease written as one word, dc2tog or fpdc2tog, or an increase, dc2inc.
// The letters before the number must be a stitch.
func (v *Vocabulary) glued(word string) (phrase, bool) {
	if name, ok := strings.CutSuffix(word, "inc"); ok {
		name = strings.TrimSuffix(name, "2")
		ph, ok := v.lookup(name)
		if !ok || ph.what.Kind.Base < stitch.Single || ph.what.Kind.Shape != stitch.Plain {
			return phrase{}, false
		}
		ph.what.Shaping = 1
		return ph, true
	}
	i := strings.IndexFunc(word, digit)
	if i <= 0 {
		return phrase{}, false
	}
	j := i
	n := 0
	for j < len(word) && digit(rune(word[j])) {
		n = min(n*10+int(word[j]-'0'), largest)
		j++
	}
	switch word[j:] {
	case "tog", "togs", "together":
	default:
		return phrase{}, false
	}
	ph, ok := v.trade[word[:i]] // whatever the designer says of the single one
	if v.trade == nil {
		ph, ok = v.own[word[:i]]
	}
	if !ok || ph.what.Kind.Base < stitch.Single || n < 2 || n > MaxLegs {
		return phrase{}, false
	}
	ph.what.Kind.Shape, ph.what.Kind.Legs = stitch.Together, n
	return ph, true
}
