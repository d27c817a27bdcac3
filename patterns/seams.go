package patterns

import (
	"regexp"
	"strconv"
	"strings"
)

// Seam is a sentence of the words that joins an edge of one part to another, or to an
// edge of the same part. What the words do not say is left out.
type Seam struct {
	Part, To     int // indices of the parts; the same for a part joined to itself
	Edge, ToEdge Edge
	// From and Last are the rounds of To that it is joined to, 0 and 0 where none
	// are named.
	From, Last int
}

// Edge is an edge of a part, as the words name it.
type Edge uint8

const (
	EdgeUnsaid Edge = iota
	EdgeEnds        // the first and the last row of a strip: its short ends
	EdgeSides       // the row ends
	EdgeFirst       // the foundation, or the first round
	EdgeLast        // the last row or round
	EdgeEach        // a side of a motif
)

var (
	sews      = regexp.MustCompile(`(?i)\b(sew|sewn|sewing|stitch|attach|seam|whip ?stitch|join|mattress stitch|sl(ip)? ?st(itch)?|ss|graft|hold|fold)\b`)
	shortEnds = regexp.MustCompile(`(?i)\b(short|narrow|cast-on and last) (ends|edges|sides)\b`)
	endRow    = regexp.MustCompile(`(?i)\b(last|final) rows?\b|\band last rows\b`)
	startRow  = regexp.MustCompile(`(?i)\b(foundation|starting|beginning|commencing) (chain|ch|row|edge)\b|\bfirst (row|and last rows)\b|\brow 1\b`)
	sewOn     = regexp.MustCompile(`(?i)\b(sew|stitch|attach|seam|whip ?stitch|join)\b(.*)$`)
	ontoPart  = regexp.MustCompile(`(?i)\b(to|onto|over|at|between|along|around|inside)\b`)
	onRounds  = regexp.MustCompile(`(?i)\b(?:over|at|between|on|along)\b[^.]*?\b(?:rnds?|rounds?|r)\.? ?(\d+)(?:(?: ?(?:-|–|and|to) ?)(?:rnds?|rounds?|r)?\.? ?(\d+))?\b`)
	ordinal   = regexp.MustCompile(`(?i)\b(\d+)(?:st|nd|rd|th)(?: ?(?:-|–|and|to) ?(?:the )?(\d+)(?:st|nd|rd|th))? (?:rnd|round)s?\b`)
	clause    = regexp.MustCompile(`[.;,]|\band then\b`)
	motifs    = regexp.MustCompile(`(?i)\b(squares|hexagons|octagons|triangles|motifs|blocks|pieces)\b`)
	together  = regexp.MustCompile(`(?i)\b(together|side by side|to (each other|one another))\b`)
	joins     = regexp.MustCompile(`(?i)\b(join|joining|sew|sewn|whip ?stitch|crochet)\b`)
	yarnJoin  = regexp.MustCompile(`(?i)\bjoin(ed|ing)? (in |on )?(the |a )?(new )?(yarn|colou?r|with|[A-Z]\b)|\bto (first|top|beg|next|3rd|join)\b|; ?join`)
)

// edges are the words for edges, the first that is found in a phrase.
var edges = []struct {
	words *regexp.Regexp
	edge  Edge
}{
	{regexp.MustCompile(`(?i)\b(row ends?|(long |side )?(sides?|side edges?))\b`), EdgeSides},
	{regexp.MustCompile(`(?i)\b(last|final) (row|rnd|round)\b`), EdgeLast},
	{regexp.MustCompile(`(?i)\b(foundation|starting|beginning) (chain|ch|row|rnd|round|edge)\b|\bfirst (row|rnd|round)\b`), EdgeFirst},
	{regexp.MustCompile(`(?i)\b(short |narrow |both |two )*ends\b`), EdgeEnds},
}

func edgeIn(phrase string) Edge {
	for _, e := range edges {
		if e.words.MatchString(phrase) {
			return e.edge
		}
	}
	return EdgeUnsaid
}

// Seams are the seams that the words of the parts name, in their order; the notes are
// read for motifs that are joined to one another.
func (p *Pattern) Seams() (l []Seam) {
	add := func(s Seam) {
		for _, other := range l {
			if other == s {
				return
			}
		}
		l = append(l, s)
	}
	for k := range p.Parts {
		for _, line := range p.Parts[k].Text.Lines {
			for _, sentence := range strings.Split(line, ". ") {
				p.seamsOf(k, sentence, add)
			}
		}
	}
	for _, sentence := range strings.Split(strings.Join(strings.Fields(p.Notes), " "), ". ") {
		if motifs.MatchString(sentence) && joins.MatchString(sentence) && together.MatchString(sentence) && len(p.Parts) == 1 {
			add(Seam{Edge: EdgeEach, ToEdge: EdgeEach})
		}
	}
	return l
}

// seamsOf finds the seams of a sentence that stands in part k.
func (p *Pattern) seamsOf(k int, sentence string, add func(Seam)) {
	switch {
	case p.Parts[k].Rows && (shortEnds.MatchString(sentence) || endRow.MatchString(sentence) && startRow.MatchString(sentence)):
		if sews.MatchString(sentence) && !strings.Contains(strings.ToLower(sentence), "until") {
			add(Seam{Part: k, To: k, Edge: EdgeEnds, ToEdge: EdgeEnds})
		}
		return
	case !p.Parts[k].Rows && motifs.MatchString(sentence) && joins.MatchString(sentence) && together.MatchString(sentence):
		add(Seam{Part: k, To: k, Edge: EdgeEach, ToEdge: EdgeEach})
		return
	}
	for _, c := range clause.Split(sentence, -1) {
		if s, ok := p.sewnOn(k, c); ok {
			add(s)
		}
	}
}

// sewnOn is the seam of a clause such as "Sew to head over R4-R7" or "sew the ends of
// the strap to the sides of the bag". It names another part, or is none.
func (p *Pattern) sewnOn(k int, c string) (s Seam, ok bool) {
	m := sewOn.FindStringSubmatch(c)
	if m == nil || yarnJoin.MatchString(c) {
		return s, false
	}
	onto := ontoPart.FindStringIndex(m[2])
	if onto == nil {
		return s, false
	}
	subject, object := m[2][:onto[0]], m[2][onto[0]:]
	s.Part, s.To = k, p.partNamed(object)
	if named := p.partNamed(subject); named >= 0 {
		s.Part = named
	}
	if s.To < 0 || s.To == s.Part {
		return s, false
	}
	s.Edge, s.ToEdge = edgeIn(subject), edgeIn(object)
	r := onRounds.FindStringSubmatch(object)
	if r == nil {
		r = ordinal.FindStringSubmatch(object)
	}
	if r != nil {
		s.From, _ = strconv.Atoi(r[1])
		if s.Last = s.From; r[2] != "" {
			s.Last, _ = strconv.Atoi(r[2])
		}
	}
	return s, true
}

// partNamed is the part whose name a phrase has in it, in the singular or the plural:
// the one named first; -1 for none.
func (p *Pattern) partNamed(phrase string) int {
	best, at := -1, len(phrase)
	for k := range p.Parts {
		name := strings.ToLower(p.Parts[k].Called())
		if name == "" {
			continue
		}
		word := regexp.MustCompile(`(?i)\b` + regexp.QuoteMeta(strings.TrimSuffix(name, "s")) + `e?s?\b`)
		if i := word.FindStringIndex(phrase); i != nil && i[0] < at {
			best, at = k, i[0]
		}
	}
	return best
}
