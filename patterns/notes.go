package patterns

import (
	"regexp"
	"strings"

	"whorl/patterns/fault"
	"whorl/patterns/notation"
	"whorl/patterns/stitch"
)

// definedName is what notes define: one word or two, or several with what they are shortened to,
// "crossed double crochet (cr-dc)", "4-st front cable (FC)".
const definedName = `[A-Za-z][A-Za-z0-9-]*(?: [A-Za-z0-9-]+)?(?: \([A-Za-z0-9 =,-]+\))?|(?:[0-9]+-)?[A-Za-z][A-Za-z0-9-]*(?: [A-Za-z0-9-]+){0,4} \([A-Za-z0-9 =,-]+\)`

// equation is "Shell = (2 dc, ch 2, 2 dc) in next sp." in running notes, and
// "Shell (sh): 5 dc in same st." or "V-st - (dc, ch 1, dc) in same st." at the beginning of a line
// of them.
var equation = regexp.MustCompile(`(^|[.;] +|\)\s+|[Ss]titch(?:es)?(?: used)?(?::| [-–—]) *|[Aa]bbreviations?(?: used)?: *)(` + definedName + `) *(=|:|[-–—] | [-–—]) *([^=]+?)([.;] |[.;]?$)`)

// anotherName is the beginning of a definition behind a semicolon: "inc = 2 sc in same
// st; dec = sc2tog".
var anotherName = regexp.MustCompile(`^ *(?:` + definedName + `) *[=:]`)

// announces is a heading before a definition on its line: "Special stitch. V-stitch (V-st): …".
var announces = regexp.MustCompile(`(?i)(^|[.;] )((special|pattern|unusual|other|stitch) )*(stitch(es)?|sts?|pattern|abbreviations?)( used| explained)? ?[.–—-]$`)

// defined are the special stitches that notes define on the way, as designers do
// who have no list of them. What is no definition in stitches is left alone: notes
// are prose, unless they are told to be stitches. The stitches of the list go before.
func (r *reader) defined(t Text, before []Definition, told bool) []Definition {
	known := map[string]bool{}
	for _, d := range before {
		known[notation.Plain(d.Name)] = true
	}
	trade := notation.NewVocabulary(r.p.Terms, nil)
	var list []Definition
	for i, line := range t.Lines {
		listed := -1 // where the definition before ends
		for from := 0; from < len(line); {
			m := equation.FindStringSubmatchIndex(line[from:])
			if m == nil {
				break
			}
			for end := from + m[9]; end < len(line) && line[end] == ';' && !anotherName.MatchString(line[end+1:]); end = from + m[9] {
				// "skip 3 sts, …; going back, …" goes on
				next := strings.IndexAny(line[end+1:], ";.")
				if next < 0 {
					next = len(line) - end - 1
				}
				m[9] += 1 + next
			}
			name, sign, words := line[from+m[4]:from+m[5]], line[from+m[6]:from+m[7]], line[from+m[8]:from+m[9]]
			column := func(at int) int { return t.Columns[i] + len([]rune(line[:from+at])) }
			d := Definition{Pos: fault.Pos{Line: t.First + i, Column: column(m[4])}, Name: name,
				Words: Text{Lines: []string{words}, First: t.First + i, Columns: []int{column(m[8])}}}
			if m[1] == len(line)-from && !strings.HasSuffix(line, ".") && !strings.HasSuffix(line, ";") {
				d.Words = t.goesOn(d.Words, i)
			}
			head := strings.TrimSpace(line[:from+m[4]])
			if announces.MatchString(name + ".") {
				from += m[8] // "Special stitch - V-st: …"
				listed = from
				continue
			}
			if sign != "=" && head != "" && !strings.HasSuffix(head, ":") && !announces.MatchString(head) && from+m[0] != listed {
				from += m[7] // a colon in the middle of a line is no definition
				continue
			}
			listed = from + m[9]
			from += m[9]
			if n := notation.Plain(name); !known[n] && len(list) < maxStitches && (told && onHook.MatchString(words) || r.makes(d, trade)) {
				known[n] = true
				list = append(list, d)
			}
		}
	}
	return list
}

// onHook are the words of a stitch that is told by what the hook does.
var onHook = regexp.MustCompile(`(?i)\b(yo|yoh|yrh|yarn over|yarn round|insert|draw up|pull up|pull through)\b`)

// special are the words before what a part says of its own stitches on a line: "Special stitch: puff =
// (yo, insert hook, …)".
var special = regexp.MustCompile(`(?i)^(special|unusual|pattern|new) (stitch(es)?|sts?|abbreviations?)( used)?:? `)

// equates is the beginning of a line that says what words stand for, "V-st = (dc, ch 1, dc) in
// same st", with or without a heading: "Abbreviations: RtrF = raised treble front".
var equates = regexp.MustCompile(`(?i)^(abbreviations?( used)?:? |key:? )?[a-z][a-z-]*( [a-z-]+)?( \([a-z0-9 =,-]+\))? *= *[^ ]`)

// specialStitches takes such lines out of the words of the parts: they define stitches, and nothing
// is worked in them. A line that says anything else stays where it is.
func (r *reader) specialStitches(p *Pattern) {
	trade := notation.NewVocabulary(r.p.Terms, nil)
	for i := range p.Parts {
		t := &p.Parts[i].Text
		r.headed(p, t, trade)
		for j, line := range t.Lines {
			told := special.MatchString(line)
			if glossary(line, trade) {
				t.Lines[j] = ""
				continue
			}
			if !told && !equates.MatchString(line) {
				continue
			}
			one := Text{Lines: []string{line}, First: t.First + j, Columns: t.Columns[j : j+1]}
			list := r.defined(one, p.Stitches, told)
			if n := len(list) + glossed(line, trade); n > 0 && n == strings.Count(line, "=") {
				p.Stitches = append(p.Stitches, list...)
				t.Lines[j] = ""
			}
		}
	}
}

// glossaryWord is the heading of a list of abbreviations on a line.
var glossaryWord = regexp.MustCompile(`(?i)^(abbreviations?|abbr|abbrevs?|glossary|terms|key)( used)?\.?:? `)

// glossary reports whether a line is a list of abbreviations that says no more than they mean in
// the trade: "Abbreviations: RtrF, raised treble front; RtrB, raised treble back."
func glossary(line string, trade *notation.Vocabulary) bool {
	head := glossaryWord.FindString(line)
	if head == "" || !strings.Contains(head, ":") {
		return false
	}
	n := 0
	for _, one := range strings.FieldsFunc(line[len(head):], func(c rune) bool { return c == ';' || c == '.' }) {
		if one = strings.TrimSpace(one); one == "" {
			continue
		}
		at := regexp.MustCompile(`,|=|:| [-–—] `).FindStringIndex(one)
		if at == nil {
			return false
		}
		k, into, is := trade.Stitch(strings.TrimSpace(one[:at[0]]))
		same, loop, means := trade.Stitch(strings.TrimSpace(one[at[1]:]))
		if !is || !means || k != same || into != loop {
			return false
		}
		n++
	}
	return n > 0
}

// glossed counts the names on a line that only say again what they mean in the trade: "tr =
// treble; RtrF = raised treble front".
func glossed(line string, trade *notation.Vocabulary) (n int) {
	if at := strings.Index(line, ":"); at >= 0 {
		line = line[at+1:]
	}
	for _, one := range strings.FieldsFunc(line, func(c rune) bool { return c == ';' || c == '.' || c == ',' }) {
		name, words, ok := strings.Cut(one, "=")
		k, into, is := trade.Stitch(strings.TrimSpace(name))
		same, loop, means := trade.Stitch(strings.TrimSpace(words))
		if ok && is && means && k == same && into == loop {
			n++
		}
	}
	return n
}

// goesOn is a definition that is broken off at the end of line i with the lines that it
// goes on over, up to the end of its sentence.
func (t Text) goesOn(words Text, i int) Text {
	whole := words
	for i++; i < len(t.Lines) && t.Lines[i] != "" && !anotherName.MatchString(t.Lines[i]); i++ {
		line, ends := t.Lines[i], false
		if at := regexp.MustCompile(`[.;]( |$)`).FindStringIndex(line); at != nil {
			line, ends = line[:at[0]], true
		}
		whole.Lines, whole.Columns = append(whole.Lines, line), append(whole.Columns, t.Columns[i])
		if ends {
			return whole
		}
	}
	return words // it is no sentence
}

// makes reports whether words that notes equate with a name say how it is made:
// in stitches, with a place, a group or several legs. A glossary ("hdc = half
// double crochet") does not.
func (r *reader) makes(d Definition, trade *notation.Vocabulary) bool {
	if k, _, ok := trade.Stitch(d.Name); ok && k.Shape == stitch.Plain {
		return false
	}
	if _, ok := trade.ClusterOver(strings.ToLower(strings.Join(d.Words.Lines, " "))); ok {
		return true
	}
	var words []notation.Line
	for i, l := range d.Words.Lines {
		words = append(words, notation.Line{Text: l, Line: d.Words.First + i, Column: d.Words.Columns[i]})
	}
	items, faults := notation.ParseWords(words, trade, r.p.Sizes)
	if len(faults) > 0 || len(items) == 0 {
		return false
	}
	made := false
	for _, it := range items {
		switch it := it.(type) {
		case *notation.Stitches:
			if it.What.Shaping != 0 || it.What.Name != "" {
				return false
			}
			made = made || len(it.Places) > 0 || it.What.Kind.Shape != stitch.Plain || len(items) > 1
		case *notation.Group:
			made = true
		case *notation.Chain, *notation.Skip, *notation.Note, *notation.Repeat:
		default:
			return false
		}
	}
	return made
}
