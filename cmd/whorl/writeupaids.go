package main

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"

	"whorl/chart/schematic"
	"whorl/chart/writeup"
	"whorl/geometry"
	"whorl/patterns/fabric"
	"whorl/patterns/stitch"
	"whorl/patterns/working"
)

// What a maker would otherwise have to work out with the pattern in hand.

var (
	measure  = regexp.MustCompile(`(\d[\d.½¼¾]*)( \([^()]*\))? ?(cm|inches|inch|″|")`)
	lengthIn = regexp.MustCompile(`\d[\d.½¼¾]*|[½¼¾]`)
)

// bothLengths adds the other unit to lengths in the words: "39 (42) cm" becomes
// "39 (42) cm [15¼ (16½) in]". Lengths that are given in both stay as they are.
func bothLengths(text string) string {
	if strings.Contains(text, "cm") && (strings.Contains(text, " in)") || strings.Contains(text, "inch") || strings.ContainsAny(text, "″\"")) {
		return text
	}
	return measure.ReplaceAllStringFunc(text, func(s string) string {
		m := measure.FindStringSubmatch(s)
		other := lengthIn.ReplaceAllStringFunc(m[1]+m[2], func(n string) string {
			v := fraction(n)
			if m[3] == "cm" {
				return schematic.Inches(10 * v)
			}
			return number(math.Round(2*2.54*v) / 2)
		})
		unit := "in"
		if m[3] != "cm" {
			unit = "cm"
		}
		return s + " [" + other + " " + unit + "]"
	})
}

// fraction is a number that may end in a fraction of one sign.
func fraction(s string) (v float64) {
	for sign, part := range map[string]float64{"½": 0.5, "¼": 0.25, "¾": 0.75} {
		if whole, ok := strings.CutSuffix(s, sign); ok {
			s, v = whole, part
		}
	}
	whole, _ := strconv.ParseFloat(strings.TrimSuffix(s, "."), 64)
	return whole + v
}

// toldStitches are the stitches of the trade in the words that not every maker
// knows, with how they are made, but for those that the designer tells.
func (e *edition) toldStitches() (l []working.SpecialStitch) {
	told := map[string]bool{}
	for _, s := range e.words.Stitches {
		told[strings.ToLower(s.Name)] = true
	}
	var words strings.Builder
	for _, part := range e.words.Parts {
		words.WriteString(strings.ToLower(strings.Join(part.Lines, " ")) + " ")
	}
	see := func(k stitch.Kind, in stitch.Into) {
		name := k.NameInto(in, e.j.terms)
		how := k.How(in, e.j.terms)
		if how == "" || told[strings.ToLower(name)] {
			return
		}
		told[strings.ToLower(name)] = true
		if wholeWord(words.String(), strings.ToLower(name)) {
			l = append(l, working.SpecialStitch{Name: name, Words: how})
		}
	}
	for _, i := range e.sizes() {
		for _, part := range e.j.fabrics[i].Parts {
			for _, r := range part.Rounds {
				for k := range r.Stitches {
					s := &r.Stitches[k]
					in := stitch.Top
					if len(s.On) > 0 {
						in = s.On[0].Into
					}
					see(s.Kind, in)
					see(s.As, in)
				}
			}
		}
	}
	return l
}

// wholeWord reports whether a name is in a text and neither a letter nor a figure
// stands against it.
func wholeWord(text, name string) bool {
	return regexp.MustCompile(`(^|[^a-z0-9])` + regexp.QuoteMeta(name) + `s?([^a-z0-9]|$)`).MatchString(text)
}

// inRows says how many rows or rounds part k comes to where the words go by a
// length.
func (e *edition) inRows(k int) string {
	var counts []string
	same := true
	for _, i := range e.sizes() {
		counts = append(counts, strconv.Itoa(rowsIn(e.j.fabrics[i].Parts[k])))
		same = same && counts[0] == counts[len(counts)-1]
	}
	text := counts[0]
	if !same {
		text += " (" + strings.Join(counts[1:], ", ") + ")"
	}
	what := "rounds"
	if e.words.Parts[k].Rows {
		what = "rows"
	}
	return fmt.Sprintf("At the %s that is %s %s in all.", e.gaugeName(), text, what)
}

// rowsIn is the number of rows or rounds of a part.
func rowsIn(p *fabric.Part) (n int) {
	for _, r := range p.Rounds {
		if r.Number > 0 && !r.Carried {
			n++
		}
	}
	return n
}

// pickUp says for every size how the stitches of the first round of part k are
// spread over the row ends that they are picked up along.
func (e *edition) pickUp(k int) (l []writeup.Block) {
	for _, i := range e.sizes() {
		f := e.j.fabrics[i]
		p := f.Parts[k]
		if p.From < 0 || p.From >= len(f.Parts) || f.Parts[p.From].Worked != fabric.InRows {
			return nil
		}
		rows, made := rowsIn(f.Parts[p.From]), onRowEnds(p)
		spread, err := geometry.AlongRows(made, rows)
		if made == 0 || err != nil {
			return nil
		}
		text, _, _ := strings.Cut(pickUpWords(spread, rows, made), "\n")
		if spread.Rows == rows && spread.Rows > 1 { // "72 in every 73" says nothing new
			text = strings.Replace(text, fmt.Sprintf(": %d in every %d row ends", made, rows), "", 1)
			text = strings.Replace(text, ", as ", ": ", 1)
		}
		if e.j.terms == stitch.UK {
			text = strings.ReplaceAll(text, "sk next", "miss next")
		}
		lead := "Rnd 1"
		if size := e.j.pattern.Sizes[i]; size != "" && e.size < 0 {
			lead += ", size " + size
		}
		l = append(l, writeup.Paragraph{Lead: bound(lead + ":"), Text: bound(text)})
	}
	return l
}

// onRowEnds is how many stitches of a part's first round stand on row ends.
func onRowEnds(p *fabric.Part) (n int) {
	for _, r := range p.Rounds {
		if r.Carried || r.Number != 1 {
			continue
		}
		for i := range r.Stitches {
			if s := &r.Stitches[i]; s.Counts && len(s.On) > 0 && s.On[0].Into == stitch.RowEnd {
				n++
			}
		}
		break
	}
	return n
}
