package notation

import (
	"regexp"
	"slices"
	"strings"
)

var (
	// forAll is said before rounds for all sizes again: "Both:", "Then, for all sizes, continue as follows".
	forAll = regexp.MustCompile(`^(?:(?:now|then|next|again|and),? )*(?:(?:work|continue|resume|carry on|go on|follow)(?: on)?(?: as follows)?,? )?(?:for |with |in |on )?(?:all|both|every|everyone)(?: of)?(?: the)?(?: sizes?)?(?:,? (?:again|now|here|together|from here|as follows|continue|resume|proceed|carry on|go on))*$`)
	// sizeDone are a clause's words by which a size is finished, sizeGoes those by which it goes on.
	sizeDone = regexp.MustCompile(`^(?:(?:for|if|when) )?(?:(?:making|working) )?(?:the )?(.+?) ?[,:–—-]? (?:you )?(?:can )?(?:now )?(?:fasten off|finish off|stop here|end here|break off (?:the )?yarn|cut (?:the )?yarn)\b[^:]*$`)
	doneSize = regexp.MustCompile(`^(?:fasten off|finish off|break off|stop|end) ?(?:the yarn |yarn |here |now )?(?:for|in|if making|if working) (?:the )?([^:]+)$`)
	sizeGoes = regexp.MustCompile(`^(?:(?:for|if|when) )?(?:(?:making|working) )?(?:the )?(.+?) ?[,:–—-]? (?:you )?(?:now )?(?:do not fasten off|don't fasten off|(?:continue|go on|carry on|proceed|keep going)(?: on)?(?: (?:with|to|from) (?:(?:r|rnd|round|row) ?(\d+)|the next (?:rnd|round|row)))?(?: below| as follows| as set| as established)?)$`)
)

// sizesDone reads a line that some sizes are finished at, "Child: fasten off.", "Fasten off for S.", "For Adult
// continue with Row 6; Child, fasten off.": the rounds that follow are for the others.
func (p *parser) sizesDone() (l Label, ok bool) {
	start, end := p.i, p.lineEnd()
	if len(p.sizes) < 2 || !p.tok().first {
		return l, false
	}
	var done, on []string
	only := false // "Adult only: continue with Rnd 9."
	for p.i < end {
		from := p.i
		for p.i < end && p.tok().kind != tStop && p.tok().kind != tSemi && !(p.tok().kind == tComma && p.i > from && p.at(1).is("for", "but") && p.i+1 < end) {
			p.i++
		}
		words := strings.ToLower(p.words(from))
		words = strings.TrimSpace(strings.TrimPrefix(strings.TrimPrefix(strings.TrimPrefix(words, "and "), "then "), "but "))
		if p.i++; words == "" {
			continue
		}
		m, list := sizeGoes.FindStringSubmatch(words), &on
		if m != nil && m[2] != "" && p.upTo > 0 && atoi(m[2]) != p.upTo+1 {
			m = nil
		}
		if m == nil {
			if m, list = sizeDone.FindStringSubmatch(words), &done; m == nil {
				m = doneSize.FindStringSubmatch(words)
			}
		}
		if m == nil {
			p.i = start
			return l, false
		}
		only = only || list == &on && m[2] != "" && strings.HasSuffix(m[1], " only")
		name := strings.TrimSpace(strings.TrimSuffix(m[1], " only"))
		name = strings.TrimSuffix(strings.TrimSuffix(strings.TrimPrefix(strings.TrimPrefix(name, "size "), "sizes "), " size"), " sizes")
		sizes := p.exactSizes(name)
		if sizes == nil {
			sizes = p.sizeGroup(name)
		}
		if sizes == nil {
			p.i = start
			return l, false
		}
		*list = append(*list, sizes...)
	}
	p.i = end
	if len(done) == 0 && !only || slices.ContainsFunc(on, func(s string) bool { return slices.Contains(done, s) }) {
		p.i = start
		return l, false
	}
	for _, s := range p.sizes {
		if !slices.Contains(done, s) && (len(done) > 0 || slices.Contains(on, s)) {
			l.Only = append(l.Only, s)
		}
	}
	if len(l.Only) == 0 {
		p.i = start
		return Label{}, false
	}
	p.finished = true
	l.Text = p.words(start)
	return l, true
}

// beginsAnew reports whether a round is the first of its numbers or joins the yarn anew: sizes that were
// finished before work it too.
func beginsAnew(toks []token) bool {
	for i, t := range toks {
		if _, round := roundWord(&t); i < 3 && round && i+1 < len(toks) && max(toks[i+1].value, ordinalOf(&toks[i+1])) == 1 ||
			i == 0 && t.kind == tOrdinal && t.value == 1 || t.is("rejoin", "reattach", "attach") ||
			t.is("join", "joining") && i+2 < len(toks) && (toks[i+1].is("yarn", "new") || toks[i+2].is("yarn")) {
			return true
		}
	}
	return false
}

// atoi is the value of digits.
func atoi(digits string) (n int) {
	for _, d := range digits {
		n = n*10 + int(d-'0')
	}
	return n
}
