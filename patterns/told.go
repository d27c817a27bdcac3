package patterns

import (
	"regexp"
	"slices"
	"strings"

	"whorl/patterns/fault"
	"whorl/patterns/notation"
	"whorl/patterns/stitch"
)

// stitchName is the name of a stitch in running words, with or without an article, quotes and what it
// is shortened to: "a shell", `each "half shell" (hsh)`.
const stitchName = `(?:(?:an?|the|each|every|one) +)?["“‘']?([A-Za-z][A-Za-z0-9-]*(?: [A-Za-z0-9-]+){0,2}?(?: \([A-Za-z0-9 =,-]+\))?)["”’']?`

// sayings are the sentences in which notes tell what a stitch is: "A shell is 5 dc in one st",
// "V-st stands for (1 tr, 1 ch, 1 tr) in same place", "To make a bobble, work 5 tr in same st …",
// "Where it says shell, work 5 dc in one st".
var sayings = []*regexp.Regexp{
	regexp.MustCompile(`^(?:(?i:in this pattern,? |throughout,? )|[A-Z][A-Za-z ]{0,30}: )?(?i:` + stitchName + `,? +(?:is|(are)|means?|stands? for|refers? to|consists? of|represents|denotes|equals)(?: always| simply)?):? +(.+)$`),
	regexp.MustCompile(`^(?i:(?:to (?:make|work|form)|for|(?:where|when|whenever) (?:you|it|the pattern|the instructions?) (?:says?|sees?|reads?|calls? for|asks? for)) ` + stitchName + `)(?:,|:|( you)) *(.+)$`),
}

// andAnother is the beginning of another definition in the same sentence: "… and a half shell is 3
// dc in one st".
var andAnother = regexp.MustCompile(`(?i)(?:;|,? (?:and|while|whereas)|,) +(` + stitchName + `,? +(?:is|are|means?|stands? for|refers? to|consists? of) )`)

// told are the special stitches that notes, or lines among the words of the parts, tell in a
// sentence. Prose tells of much, so they are taken only where more of the words can be read with
// them, or where the name is one of the trade that leaves open how it is made ("bobble").
func (r *reader) told() (list []Definition) {
	trade := notation.NewVocabulary(r.p.Terms, nil)
	known := map[string]bool{}
	for _, d := range r.p.Stitches {
		known[notation.Plain(d.Name)] = true
	}
	var sure, maybe []Definition
	lines := map[*Text]map[int]Definition{} // of the parts, to be taken out of them
	look := func(t *Text, whole bool) {
		for i := range t.Lines {
			for _, d := range t.told(i) {
				n := notation.Plain(d.Name)
				if whole && strings.TrimRight(t.Lines[i], ". ") != strings.TrimRight(d.said, ". ") || known[n] || len(sure)+len(maybe) >= maxStitches || !onHook.MatchString(strings.Join(d.Words.Lines, " ")) && !r.makes(d.Definition, trade) {
					continue
				}
				known[n] = true
				k, _, ok := trade.Stitch(d.Name)
				if !whole && ok && k.Shape == stitch.Together && r.is(d.Definition, k, trade) {
					continue // "Dc2tog is 2 dc worked together": the trade says so too
				}
				if ok && k.Shape != stitch.Plain {
					sure = append(sure, d.Definition)
				} else {
					maybe = append(maybe, d.Definition)
				}
				if whole {
					if lines[t] == nil {
						lines[t] = map[int]Definition{}
					}
					lines[t][i] = d.Definition
				}
			}
		}
	}
	look(&r.p.NoteWords, false)
	for _, d := range r.defined(r.p.NoteWords, r.p.Stitches, true) {
		k, _, ok := trade.Stitch(d.Name)
		if ok && (k.Shape == stitch.Plain || k.Shape == stitch.Together) || len(sure)+len(maybe) >= maxStitches {
			continue // the trade says how it is made
		}
		long, short, _ := strings.Cut(d.Name, "(")
		if n := notation.Plain(d.Name); !known[n] && !known[notation.Plain(long)] && !known[notation.Plain(strings.TrimSuffix(short, ")"))] {
			if known[n] = true; ok {
				sure = append(sure, d)
			} else {
				maybe = append(maybe, d)
			}
		}
	}
	for i := range r.p.Parts {
		look(&r.p.Parts[i].Text, true)
	}
	list = append(sure, r.helpful(sure, maybe)...)
	for t, at := range lines {
		for i, d := range at {
			if slices.ContainsFunc(list, func(o Definition) bool { return o.Name == d.Name }) {
				t.Lines[i] = ""
			}
		}
	}
	return list
}

// is reports whether the words of a definition are a stitch of the trade and no more.
func (r *reader) is(d Definition, k stitch.Kind, trade *notation.Vocabulary) bool {
	items, faults := notation.ParseWords(d.Words.lines(), trade, r.p.Sizes)
	if len(faults) > 0 || len(items) != 1 {
		return false
	}
	it, ok := items[0].(*notation.Stitches)
	return ok && it.What.Kind == k && it.What.Name == "" && !it.What.Loop.Set && len(it.Places) == 0
}

// helpful are those of the stitches with which more of the words can be read.
func (r *reader) helpful(sure, maybe []Definition) []Definition {
	unread := func(l []Definition) (n int) {
		names := r.p.StitchNames()
		for _, d := range append(slices.Clone(sure), l...) {
			names = append(names, d.Name)
		}
		v := notation.NewVocabulary(r.p.Terms, names)
		for i := range r.p.Parts {
			text, faults := notation.Parse(r.p.Parts[i].Text.lines(), v, r.p.Sizes)
			n += len(faults)
			for _, round := range text.Rounds {
				if len(round.Label.Numbers) > 0 && onlyNotes(round.Items) {
					n++ // taken for advice
				}
			}
		}
		return n
	}
	if len(maybe) == 0 {
		return nil
	}
	all := unread(maybe)
	if all >= unread(nil) {
		return nil
	}
	for i := 0; i < len(maybe); {
		if slices.ContainsFunc(slices.Concat(sure, maybe), func(d Definition) bool { return begins(maybe[i].Name, d.Name) }) {
			i++ // "beg shell", which is read as a shell without it
		} else if less := slices.Delete(slices.Clone(maybe), i, i+1); unread(less) <= all {
			maybe = less
		} else {
			i++
		}
	}
	return maybe
}

// begins reports whether a name is that of another stitch with a word before it, "beginning cluster
// (beg cl)" of "cluster (cl)".
func begins(name, other string) bool {
	of := func(s string) []string {
		long, short, _ := strings.Cut(notation.Plain(s), " (")
		return []string{long, strings.TrimSuffix(short, ")")}
	}
	return slices.ContainsFunc(of(name), func(n string) bool {
		return slices.ContainsFunc(of(other), func(o string) bool { return o != "" && strings.HasSuffix(n, " "+o) })
	})
}

// onlyNotes reports whether nothing is worked in a round, as far as its words are read.
func onlyNotes(items []notation.Item) bool {
	return !slices.ContainsFunc(items, func(it notation.Item) bool {
		switch it.(type) {
		case *notation.Note, *notation.Join, *notation.Turn:
			return false
		}
		return true
	})
}

// saying is a definition with the sentence that it is told in.
type saying struct {
	Definition
	said string
}

// told are the stitches that the sentences of line i tell of.
func (t *Text) told(i int) (list []saying) {
	line := t.Lines[i]
	for from := 0; from < len(line); {
		end := from + sentenceEnd(line[from:])
		said := line[from:end]
		lead := len(said) - len(strings.TrimLeft(said, " "))
		for _, re := range sayings {
			m := re.FindStringSubmatchIndex(said[lead:])
			if m == nil {
				continue
			}
			at := from + lead
			column := func(k int) int { return t.Columns[i] + len([]rune(line[:at+k])) }
			words, name := strings.TrimRight(said[lead+m[6]:lead+m[7]], ". "), said[lead+m[2]:lead+m[3]]
			if next := andAnother.FindStringSubmatchIndex(words); next != nil {
				end = at + m[6] + next[2]
				words, said = words[:next[0]], line[from:end]
			}
			if are := m[4] >= 0 && strings.EqualFold(said[lead+m[4]:lead+m[5]], "are"); are {
				name = strings.TrimSuffix(name, "s") // "Shells are 5 dc in one st"
			}
			d := Definition{Pos: fault.Pos{Line: t.First + i, Column: column(m[2])}, Name: name,
				Words: Text{Lines: []string{words}, First: t.First + i, Columns: []int{column(m[6])}}}
			if end == len(line) && !strings.HasSuffix(line, ".") {
				d.Words = t.goesOn(d.Words, i)
			}
			list = append(list, saying{d, strings.TrimSpace(said)})
			break
		}
		from = end
	}
	return list
}

// sentenceEnd is where the first sentence of a line ends, with its full stop.
func sentenceEnd(s string) int {
	for i := 0; i < len(s); i++ {
		if s[i] == '.' && (i+1 == len(s) || s[i+1] == ' ' && !(i+2 < len(s) && s[i+2] >= 'a' && s[i+2] <= 'z')) {
			return i + 1
		}
	}
	return len(s)
}
