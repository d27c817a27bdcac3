package notation

import (
	"strings"

	"whorl/patterns/fault"
)

// stitchyWords are words that make a sentence an instruction.
var stitchyWords = []string{
	"st", "sts", "stitch", "stitches", "ch", "chs", "chain", "chains", "sk", "skip", "miss", "rep", "repeat",
	"join", "turn", "inc", "dec", "around", "across", "next", "each", "times", "ring", "twice", "sp", "sps",
	"rnd", "rnds", "row", "rows", "round", "rounds", "shell", "cluster", "cl", "fasten", "twice",
}

// stitchy reports whether the tokens from i up to j hold words of the trade
// that make an instruction.
func (p *parser) stitchy(i, j int) bool {
	for ; i < j && i < len(p.toks); i++ {
		t := &p.toks[i]
		switch t.kind {
		case tStar:
			return true
		case tWord:
			if t.is(stitchyWords...) {
				return true
			}
			if _, ok := p.vocab.phrases[t.text]; ok {
				return true
			}
			if _, ok := p.vocab.glued(t.text); ok {
				return true
			}
		}
	}
	return false
}

// madeNote reports whether the words between tokens i and j only name what has
// been made or say which side it is: (first shell made), (RS), (corner).
func (p *parser) madeNote(i, j int) bool {
	if j <= i {
		return true
	}
	last := &p.toks[j-1]
	if last.is("made", "complete", "completed", "formed", "worked", "rnd", "round", "row", "side", "only") {
		return true
	}
	return p.toks[i].is("see", "note", "mark", "do", "if", "you", "this", "these", "the", "it", "now", "optional", "be")
}

// advising are the words that a sentence of advice begins with.
var advising = []string{
	"mark", "place", "move", "note", "notes", "tip", "stuff", "weave", "sew", "leave", "check", "remember", "you",
	"your", "this", "these", "it", "pull", "tighten", "block", "steam", "attach", "insert", "try", "measure", "piece",
	"hint", "see", "make", "optional", "pin", "thread", "be", "stop", "important", "remove", "use", "hat",
	"brim", "crown", "body", "keep", "enjoy", "if", "rs", "right", "wrong", "ws", "here", "lay", "wind", "whipstitch",
	"close", "gather", "draw", "steam-block", "finishing", "edging", "nb", "they", "there", "when", "before", "hold", "fold", "seam", "line", "align", "bring", "slip-stitch", "rotate", "flip",
	"secure", "trim", "tie", "add", "finish", "overlap", "match", "whip", "embroider", "button",
}

// advice takes a sentence that is not an instruction as a note: one without
// any words of the trade, or one that begins like advice and cannot be read as
// anything else.
func (p *parser) advice(b *block) bool {
	start := p.i
	end := p.sentenceEnd()
	t := p.tok()
	if t.kind != tWord && t.kind != tQuote {
		return false
	}
	if t.is("do", "don't", "without") {
		// "do not join" and "do not turn" are read elsewhere.
		if p.at(1).is("not") && !p.at(2).is("join", "turn") || t.is("don't") && !p.at(1).is("join", "turn") {
			return p.note(b, start, end)
		}
		return false
	}
	if t.is(advising...) {
		for _, read := range []func() (Item, *fault.Fault){p.ring, p.counts, p.marker, p.until, p.refer, p.join, p.fasten} {
			it, f := read()
			p.i = start
			if it != nil || f != nil {
				return false
			}
		}
		// "Work 2 sc …", "Make 6 sc in ring" are instructions.
		if t.is("make", "close") && p.stitchy(start+1, end) {
			return false
		}
		return p.note(b, start, end)
	}
	if !p.stitchy(start, end) && end-start >= 3 && p.vagueAt(start, end) == nil {
		if it, _ := p.colour(); it != nil {
			p.i = start
			return false
		}
		p.i = start
		if it, _ := p.counts(); it != nil {
			p.i = start
			return false
		}
		p.i = start
		return p.note(b, start, end)
	}
	return false
}

func (p *parser) note(b *block, start, end int) bool {
	p.i = end
	b.add(&Note{p.from(start), p.words(start)})
	return true
}

// sentenceEnd is the token that ends the sentence: a full stop, the end, or a
// closing bracket.
func (p *parser) sentenceEnd() int {
	depth := 0
	for j := p.i; j < len(p.toks); j++ {
		switch p.toks[j].kind {
		case tOpen:
			depth++
		case tClose:
			if depth--; depth < 0 {
				return j
			}
		case tStop:
			if depth == 0 {
				return j
			}
		case tEnd:
			return j
		}
	}
	return len(p.toks) - 1
}

// clauseAdvice takes a phrase after a comma as a note when it begins with a
// word of advice: "…, pulling the loop up tight".
func (p *parser) clauseAdvice(b *block) bool {
	t := p.tok()
	if !t.is("pulling", "making", "taking", "being", "keeping", "placing", "leaving", "drawing", "tightening",
		"working", "loosely", "snugly", "tightly", "as", "adjusting", "holding", "marking", "stuffing", "weave",
		"sew", "mark", "ready", "to", "for", "seam", "leave", "pull", "close", "stuff") {
		return false
	}
	start := p.i
	for p.tok().kind != tEnd && p.tok().kind != tStop && p.tok().kind != tComma && p.tok().kind != tSemi &&
		p.tok().kind != tClose && p.tok().kind != tOpen {
		p.i++
	}
	if p.stitchy(start, p.i) && !t.is("mark", "marking", "placing", "pull", "pulling", "sew", "stuff", "leave") {
		p.i = start
		return false
	}
	b.add(&Note{p.from(start), p.words(start)})
	return true
}

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
	{"as desired", "Give a number, so that the counts can be checked."},
	{"as needed", "Give a number, so that the counts can be checked."},
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

func (p *parser) vagueAt(start, end int) *fault.Fault {
	var words []string
	for j := start; j < end; j++ {
		words = append(words, p.toks[j].text)
	}
	s := " " + strings.Join(words, " ") + " "
	for _, v := range vagueWords {
		if i := strings.Index(s, " "+v.words+" "); i >= 0 {
			at := start + strings.Count(s[:i], " ")
			n := strings.Count(v.words, " ")
			sp := Span{p.toks[at].pos, p.toks[at].length}
			if last := &p.toks[min(at+n, len(p.toks)-1)]; last.pos.Line == sp.Line {
				sp.Length = last.pos.Column + last.length - sp.Column
			}
			return fail(sp, "vague", "\""+v.words+"\" leaves the stitches to the reader, so they cannot be counted", v.help)
		}
	}
	return nil
}
