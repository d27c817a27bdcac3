package working

import (
	"strings"

	"whorl/patterns"
	"whorl/patterns/fabric"
	"whorl/patterns/notation"
	"whorl/patterns/stitch"
)

// Swatch is one line of the pattern's gauge, with the stitch that was counted.
type Swatch struct {
	patterns.Gauge
	// Kind is zero when repeats of a stitch pattern were counted, when a piece was
	// measured and when the line gives no size.
	Kind stitch.Kind
	Into stitch.Into
	// Loose is set when stitches (or rounds) were counted in a stitch pattern, In,
	// that is no stitch itself. It may be a repeat of the pattern. Kind is then the
	// stitch that was counted or, where the line does not say, what most of the
	// rounds are made of: of those that bear the name of In, when Tied is set, or
	// else of all.
	Loose, Tied bool
	// Main is the stitch that most of the pattern's rounds are made of, where the words
	// for what was counted are no stitch that is known.
	Main stitch.Kind
	// Mixed are the lines of the rounds that were counted, where these are of unlike heights, in one
	// round or in turn, so that no stitch is as tall as a round of the line; else nil.
	Mixed map[int]bool
	// lines are those of the rounds whose stitches were counted as "sts"; told is set where
	// their words tell which stitch that is, and not the working.
	lines map[int]bool
	told  bool
}

// Settle makes sure of the stitch of a line that counts only "sts", once the
// pattern has been worked: what most stitches of its rounds are, and of those that
// are as many the lower.
func (s *Swatch) Settle(fabrics []*fabric.Fabric) {
	if s.lines == nil {
		return
	}
	n := map[stitch.Base]int{}
	for _, f := range fabrics {
		if f == nil {
			continue
		}
		for _, p := range f.Parts {
			for _, r := range p.Rounds {
				for i := range r.Stitches {
					if st := &r.Stitches[i]; st.Counts && s.lines[r.Line] && !r.Carried {
						n[st.Counted().Base]++
					}
				}
			}
		}
	}
	best := stitch.None
	for b := stitch.Single; b <= stitch.TripleTreble; b++ {
		if n[b] > n[best] {
			best = b
		}
	}
	if best != stitch.None && !s.told {
		s.Kind, s.Into = stitch.Of(best), stitch.Top
	}
	if s.Mixed = nil; s.Rows > 0 {
		s.mix(fabrics)
	}
}

// mix finds whether the rounds of the longest part that were counted are of unlike heights: less
// than two in three of them are, by two in three of their stitches, of the stitch of the line.
func (s *Swatch) mix(fabrics []*fabric.Fabric) {
	longest := 3
	for _, f := range fabrics {
		if f == nil {
			continue
		}
		for _, p := range f.Parts {
			lines, rounds, alike, of, all := map[int]bool{}, 0, 0, 0, 0
			for _, r := range p.Rounds {
				if !s.lines[r.Line] || r.Carried || r.Number == 0 || r.Count() == 0 {
					continue
				}
				n := 0
				for i := range r.Stitches {
					if st := &r.Stitches[i]; st.Counts && st.Counted().Base == s.Kind.Base {
						n++
					}
				}
				lines[r.Line] = true
				rounds, of, all = rounds+1, of+n, all+r.Count()
				if 3*n >= 2*r.Count() {
					alike++
				}
			}
			if rounds <= longest {
				continue
			}
			longest = rounds
			if s.Mixed = nil; 3*alike < 2*rounds && 4*of >= all {
				s.Mixed = lines
			}
		}
		return // the sizes are worked alike
	}
}

// Swatches are the lines of the pattern's gauge, as many. A line that counts only
// "sts", or rounds, is read as the stitch that most of the pattern's rounds are
// made of, or those of the part that the line is for.
func Swatches(p *patterns.Pattern) []Swatch {
	n := naming{p: p, v: notation.NewVocabulary(p.Terms, p.StitchNames())}
	var l []Swatch
	for _, g := range p.Gauge {
		s := Swatch{Gauge: g}
		if g.Over > 0 && g.Sample == nil {
			n.find(&s)
		}
		l = append(l, s)
	}
	return l
}

// naming finds the stitches and the rounds that are named in a gauge.
type naming struct {
	p     *patterns.Pattern
	v     *notation.Vocabulary
	texts [][]*notation.Round // of each part, once one has been asked for
}

// find finds the stitch that was counted.
func (n *naming) find(s *Swatch) {
	if s.In == "" && PlainSts(s.Of) {
		if s.For == "" {
			rounds, _ := n.called("")
			s.mainly(rounds)
			return
		}
		s.In, s.Counted = s.For, s.Of // "Waffle: 15 sts"
	}
	s.Kind, s.Into, _ = n.v.Stitch(strings.TrimRight(s.Of, "."))
	if !s.Kind.Is() && s.In == "" && s.Count > 0 {
		rounds, _ := n.called("")
		s.Main, _ = mainOf(rounds)
		if postStitches(s.Of) {
			s.Kind, s.Into = s.Main, stitch.FrontPost // "17 post sts"
		}
	}
	switch {
	case s.Kind.Is():
		return
	case s.Count == 0 && s.In == "":
		s.In = s.Of // "one scallop (4 rows)"
	case s.In == "":
		return
	case !PlainSts(s.Counted):
		// "16 dc over ripple pattern" are dc, "2 fans in lace pattern" are not.
		s.Kind, s.Into, s.Loose = n.v.Stitch(s.Counted)
		return
	}
	if s.Kind, s.Into = inRib(s.In, n.v); s.Kind.Is() {
		return
	}
	s.Loose = true
	rounds, tied := n.called(s.In)
	if own, is := n.called(s.For); is {
		rounds, tied = own, true
	}
	s.mainly(rounds)
	s.Tied = tied
}

// mainly sets the stitch to what the words of the rounds name most often. What was
// worked in a stitch pattern, or in stitches that the words do not name, only the
// working tells (see [Swatch.Settle]).
func (s *Swatch) mainly(rounds []*notation.Round) {
	var named int
	s.Kind, named = mainOf(rounds)
	s.told = named > 0 && !s.Loose
	s.lines = map[int]bool{}
	for _, r := range rounds {
		s.lines[r.Line] = true
	}
}

// PlainSts reports whether the words for what was counted in a gauge do not say
// which stitch: "sts", or rounds alone.
func PlainSts(of string) bool {
	switch strings.ToLower(strings.Trim(of, ".")) {
	case "st", "sts", "stitch", "stitches", "", "rounds":
		return true
	}
	return false
}

// postStitches reports whether words are "post stitches", "raised sts", of whatever
// height.
func postStitches(words string) bool {
	l := strings.Fields(strings.ToLower(strings.NewReplacer(".", "", "-", " ").Replace(words)))
	if n := len(l); n > 0 && PlainSts(l[n-1]) {
		l = l[:n-1]
	} else if n == 0 || l[n-1] != "posts" {
		return false
	}
	for _, w := range l {
		switch w {
		case "post", "posts", "raised", "relief", "front", "back", "fp", "bp", "alternating", "and", "or":
		default:
			return false
		}
	}
	return len(l) > 0
}

// inRib reads "sc", "sc rib" and "dc ribbing" as a stitch. A rib of sc or hdc is
// worked in one loop, one of taller stitches around the post (common practice, no
// source).
func inRib(words string, v *notation.Vocabulary) (stitch.Kind, stitch.Into) {
	l := strings.Fields(words)
	rib := false
	for n := len(l); n > 1; n-- {
		switch strings.ToLower(l[n-1]) {
		case "rib", "ribs", "ribbing":
			rib = true
		case "row", "rows", "round", "rounds", "fabric":
		default:
			n = 1
			continue
		}
		l = l[:n-1]
	}
	k, in, _ := v.Stitch(strings.Join(l, " "))
	switch {
	case !rib || in != stitch.Top || !k.Is():
	case k.Base <= stitch.Half:
		in = stitch.BackLoop
	default:
		in = stitch.FrontPost
	}
	return k, in
}

// called are the rounds of the parts that bear a name, or else the rounds that do
// in their labels, or else all but those of an edging.
func (n *naming) called(name string) (rounds []*notation.Round, tied bool) {
	if n.texts == nil {
		for i := range n.p.Parts {
			text, _ := notation.Parse(lines(n.p.Parts[i].Text), n.v, n.p.Sizes)
			n.texts = append(n.texts, text.Rounds)
		}
	}
	var all, labelled []*notation.Round
	for i, text := range n.texts {
		if !bears(n.p.Parts[i].Name, "border edging trim") || len(n.texts) == 1 {
			all = append(all, text...) // nobody counts a gauge in the edging
		}
		if bears(n.p.Parts[i].Name, name) {
			rounds = append(rounds, text...)
		}
		for _, r := range text {
			if bears(r.Label.Text, name) {
				labelled = append(labelled, r)
			}
		}
	}
	switch {
	case len(rounds) > 0:
		return rounds, true
	case len(labelled) > 0:
		return labelled, true
	}
	return all, false
}

// bears reports whether a word of the name, or the beginning of one, is a word of
// a text.
func bears(text, name string) bool {
	for _, w := range strings.Fields(strings.ToLower(name)) {
		switch w = strings.TrimSuffix(w, "s"); w {
		case "stitch", "stitche", "pattern", "patt", "rnd", "round", "row", "the", "and", "main":
			continue
		}
		for _, t := range strings.FieldsFunc(strings.ToLower(text), func(r rune) bool { return strings.ContainsRune(" :,;()[]-–/", r) }) {
			if len(w) > 2 && len(t) > 2 && (strings.HasPrefix(t, w) || strings.HasPrefix(w, strings.TrimSuffix(t, "s"))) {
				return true
			}
		}
	}
	return false
}

// mainOf is the kind that the words name most often, and how often.
func mainOf(rounds []*notation.Round) (stitch.Kind, int) {
	n := map[stitch.Kind]int{}
	best := stitch.Of(stitch.Single)
	for _, r := range rounds {
		count(r.Items, n)
	}
	for _, b := range []stitch.Base{stitch.Single, stitch.Half, stitch.Double, stitch.Treble} {
		if k := stitch.Of(b); n[k] > n[best] {
			best = k
		}
	}
	return best, n[best]
}

func count(items []notation.Item, n map[stitch.Kind]int) {
	for _, it := range items {
		switch it := it.(type) {
		case *notation.Stitches:
			n[stitch.Of(it.What.Kind.Base)]++
		case *notation.Group:
			count(it.Items, n)
		case *notation.Repeat:
			count(it.Items, n)
		}
	}
}
