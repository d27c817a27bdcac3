package notation

import (
	"fmt"
	"strings"

	"whorl/patterns/fault"
	"whorl/patterns/stitch"
)

// vagueWords are the phrases that leave the work to the reader, with what to
// write instead.
var vagueWords = []struct{ words, help string }{
	{"in pattern", "Write the round out, or name the round that it repeats: Rep Rnd 3."},
	{"in patt", "Write the round out, or name the round that it repeats: Rep Rnd 3."},
	{"in pat", "Write the round out, or name the round that it repeats: Rep Rnd 3."},
	{"as established", "Write the round out, or name the round that it repeats: Rep Rnd 3."},
	{"as set", "Write the round out, or name the round that it repeats: Rep Rnd 3."},
	{"in this manner", "Write the rounds out, or name those that they repeat: Rnds 5-10: Rep Rnds 3 and 4."},
	{"work even", "Write what is worked: Rnds 8-12: Hdc in each st around."},
	{"decrease evenly", "Write where the decreases fall: *sc in next 4 sts, sc2tog; rep from * around."},
	{"increase evenly", "Write where the increases fall: *sc in next 4 sts, 2 sc in next st; rep from * around."},
	{"dec evenly", "Write where the decreases fall: *sc in next 4 sts, sc2tog; rep from * around."},
	{"inc evenly", "Write where the increases fall: *sc in next 4 sts, 2 sc in next st; rep from * around."},
	{"as before", "Write out what is worked."},
	{"every other", "Name the stitches: *dc in next st, sk next st; rep from * around."},
	{"reverse shaping", "Write the rows out."},
	{"reversing shaping", "Write the rows out."},
	{"to desired length", "Give a length or a number of rows: until piece measures 38 cm."},
	{"desired length", "Give a length or a number of rows: until piece measures 38 cm."},
	{"as desired", "Give a number, so that the counts can be checked."},
	{"as needed", "Give a number, so that the counts can be checked."},
}

// evenShaping reads "inc 3 sts evenly", "increasing 6 sts evenly around",
// "decrease evenly to 48 sts": an increase or decrease spread over the round.
func (p *parser) evenShaping() (Item, *fault.Fault) {
	start := p.i
	what := What{}
	switch {
	case p.eat("inc", "increase", "increasing"):
		what.Shaping = 1
	case p.eat("dec", "decrease", "decreasing"):
		what.Shaping = -1
	default:
		return nil, nil
	}
	n, _ := p.num()
	p.eat("st", "sts", "stitch", "stitches")
	evenly := p.eat("evenly")
	for p.eat("spaced", "around", "across", "to", "over", "row", "rnd", "round", "in", "this") {
	}
	if m, ok := p.num(); ok && evenly {
		n = m
		p.eat("st", "sts", "stitches", "times")
	}
	if !evenly {
		return nil, nil
	}
	at := p.from(start)
	return &Stitches{Span: at, N: n, What: what, Places: []Place{{Span: at, Pick: Each, Extent: Extent{Sort: ToEnd}, Evenly: true}}}, nil
}

// vague is a fault if the phrase from here on leaves the work to the reader.
func (p *parser) vague() *fault.Fault {
	end := p.i
	for end < len(p.toks)-1 {
		t := &p.toks[end]
		if end > p.i && (t.kind == tComma || t.kind == tSemi || t.kind == tStop || t.kind == tOpen || t.kind == tClose) {
			break
		}
		end++
	}
	return p.vagueAt(p.i, end)
}

// joining reports whether the phrase joins a round: "Join with a ss as before".
func (p *parser) joining(start, end int) bool {
	for start > 0 && p.toks[start-1].kind == tWord && !p.toks[start].first {
		start--
	}
	for j := start; j < end; j++ {
		if p.toks[j].is("join", "joining", "close") {
			return true
		}
	}
	return false
}

// ofYarn reports whether the phrase says no more than when another yarn is taken: "joining
// new yarn as needed", "changing colours as desired".
func (p *parser) ofYarn(start, end int) bool {
	if p.evident(start, end) {
		return false
	}
	for j := start; j < end; j++ {
		if p.toks[j].is("yarn", "yarns", "ball", "colour", "color", "colours", "colors", "stripe", "stripes", "skein") {
			return true
		}
	}
	return false
}

// finishing are verbs of what is done with a piece that has been worked.
var finishing = []string{"stiffen", "starch", "block", "embellish", "decorate", "assemble", "finish", "stuff", "hang", "press", "steam", "wash", "trim", "line", "felt", "pin", "tie"}

func (p *parser) vagueAt(start, end int) *fault.Fault {
	if p.toks[start].is(finishing...) && !p.evident(start, end) {
		return nil // "Stiffen as desired"
	}
	if p.trims(start, end) || start == p.i && p.assembles() {
		return nil // "Fringe: … through every other stitch"
	}
	var words []string
	for j := start; j < end; j++ {
		words = append(words, p.toks[j].text)
	}
	s := " " + strings.Join(words, " ") + " "
	for _, v := range vagueWords {
		i := strings.Index(s, " "+v.words+" ")
		if i < 0 || strings.HasPrefix(v.words, "in ") && follows(s[i+len(v.words)+2:]) || v.words == "as before" && p.joining(start, end) || strings.HasPrefix(v.words, "as ") && p.ofYarn(start, end) ||
			strings.HasSuffix(v.words, "desired length") && (strings.Contains(s, " measures ") && strings.Contains(s, " or ") || untilAhead(s)) {
			continue
		}
		at := start + strings.Count(s[:i], " ")
		n := strings.Count(v.words, " ")
		sp := Span{p.toks[at].pos, p.toks[at].length}
		if last := &p.toks[min(at+n, len(p.toks)-1)]; last.pos.Line == sp.Line {
			sp.Length = last.pos.Column + last.length - sp.Column
		}
		return fail(sp, "vague", "\""+v.words+"\" leaves the stitches to the reader, so they cannot be counted", v.help)
	}
	return nil
}

// follows reports whether what the phrase speaks of is written out behind it: "in pattern as follows".
func follows(behind string) bool {
	for _, words := range []string{"as follows", "as folls", "as foll", "as following", "as below", "below", "thus", "as given below", "as set out below", "over the following"} {
		if strings.HasPrefix(behind, words+" ") {
			return true
		}
	}
	return false
}

// everyNth is the fault for "2 sc in every 6th st" in the phrase that cannot be read, which says
// neither what is made between nor what is done with the stitches that are left over.
func (p *parser) everyNth() *fault.Fault {
	for j := p.i; j < p.phraseEnd(); j++ {
		n := ordinalWords[p.toks[j+1].text]
		if p.toks[j+1].kind == tOrdinal {
			n = p.toks[j+1].value
		}
		if p.toks[j].is("every", "each") && n > 1 && p.toks[j+2].is("st", "sts", "stitch", "sc", "hdc", "dc", "tr", "htr") {
			span := Span{p.toks[j].pos, p.toks[j].length}
			if last := &p.toks[j+2]; last.pos.Line == span.Line {
				span.Length = last.pos.Column + last.length - span.Column
			}
			sc := stitch.Of(stitch.Single).Name(p.vocab.terms)
			between := fmt.Sprintf("%s in next %d sts", sc, n-1)
			if n == 2 {
				between = sc + " in next st"
			}
			return fail(span, "vague", fmt.Sprintf("\"%s %s %s\" leaves the stitches between to the reader, so they cannot be counted", p.toks[j].text, p.toks[j+1].raw, p.toks[j+2].text),
				fmt.Sprintf("Write out what is repeated: *%s, 2 %s in next st; rep from * around.", between, sc))
		}
	}
	return nil
}
