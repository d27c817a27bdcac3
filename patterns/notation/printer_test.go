package notation

import (
	"strings"
	"testing"

	"whorl/patterns/stitch"
)

// US and UK terms: Craft Yarn Council, Standards & Guidelines for Crochet and
// Knitting; skip and miss, gauge and tension, yo and yoh as in published lists.
func TestAdviceInTheOtherTerms(t *testing.T) {
	us, uk := Style{Terms: stitch.UK, From: stitch.US, Size: -1}, Style{Terms: stitch.US, From: stitch.UK, Size: -1}
	for _, c := range []struct{ us, uk string }{
		{"(first half of dc5tog made)", "(first half of tr5tog made)"},
		{"Hdc is half double crochet, FPdc goes round a post.", "Htr is half treble crochet, FPtr goes round a post."},
		{"Sl st through both layers with sl sts.", "Ss through both layers with ss."},
		{"Skip next 2 sts and check your gauge.", "Miss next 2 sts and check your tension."},
		{"Work with an even tension.", "Work with an even tension."},
		{"US dc is UK tr.", "US dc is UK tr."},
		{"yo, insert hook", "yoh, insert hook"},
	} {
		if got := us.Advice(c.us); got != c.uk {
			t.Errorf("US %q: %q, want %q", c.us, got, c.uk)
		}
		if got := uk.Advice(c.uk); got != strings.ReplaceAll(c.us, "sl sts", "sl st") {
			t.Errorf("UK %q: %q, want %q", c.uk, got, c.us)
		}
	}
}

func TestNotesInTheOtherTerms(t *testing.T) {
	uk := Style{Terms: stitch.UK, From: stitch.US, Size: 0, Sizes: 2}
	us := Style{Terms: stitch.US, From: stitch.UK, Size: -1, Sizes: 2}
	for _, c := range []struct {
		style         Style
		written, want string
	}{
		{uk, "Change color in the center.", "Change colour in the centre."},
		{us, "The 3 ch stands in for the first treble, yrh and pull.", "The 3 ch stands in for the first double crochet, yo and pull."},
		{us, "Two half trebles in a double thickness of colour.", "Two half double crochets in a double thickness of color."},
		{uk, "Sizes are given as S [M]. Numbers in brackets at the end are stitches. When a single number is given it is for all sizes.", "Numbers in brackets at the end are stitches. "},
		{us, "Sizes are given as S [M].", "Sizes are given as S [M]."},
	} {
		if got := c.style.Notes(c.written); got != c.want {
			t.Errorf("%q: %q, want %q", c.written, got, c.want)
		}
	}
}

func TestAdviceForOneSize(t *testing.T) {
	s := Style{Size: 1, Sizes: 3}
	if got, want := s.Advice("Leave a tail of 30 (35, 40) cm and 2 (3) more."), "Leave a tail of 35 cm and 2 (3) more."; got != want {
		t.Errorf("%q, want %q", got, want)
	}
}

// One canonical wording for what is written in many ways.
func TestPrintedWords(t *testing.T) {
	for _, c := range []struct{ written, printed string }{
		{"1 sc in each of the next 3 sts", "Sc in each of next 3 sts"},
		{"(sc, inc) x 6", "[Sc, inc] 6 times"},
		{"*sc in next st, 2 sc in next st; rep from * 2 times more", "*Sc in next st, 2 sc in next st; rep from * twice more"},
		{"[sc in next 2 sts, ch 1] around", "*Sc in next 2 sts, ch 1; rep from * around"},
		{"*dc in next st; rep from * to next ch-2 sp, *ch 1, dc in next st; rep from * around",
			"*Dc in next st; rep from * to next ch-2 sp, **ch 1, dc in next st; rep from ** around"},
		{"Taking care not to twist, join with sl st in first ch to form a ring", "Taking care not to twist, join with sl st to form ring"},
		{"With A, ch 3", "With yarn A, ch 3"},
		{"sk 2 sts, dc in next st", "Sk next 2 sts, dc in next st"},
		{"(dc, ch 1, dc) in same st or sp", "(Dc, ch 1, dc) in same st or sp"},
		{"sc in next st, leave remaining 10 sts unworked", "Sc in next st, leave rem 10 sts unworked"},
	} {
		text, faults := Parse([]Line{{Text: "Rnd 1: " + c.written, Line: 1, Column: 1}}, NewVocabulary(stitch.US, nil), []string{""})
		if len(faults) > 0 {
			t.Errorf("%s: %v", c.written, faults)
			continue
		}
		if got := (Style{Size: -1}).Sentence(text.Rounds[0].Items); got != c.printed {
			t.Errorf("%s:\n got %s\nwant %s", c.written, got, c.printed)
		}
	}
}

func TestAbbreviationsAreThoseUsed(t *testing.T) {
	s := Style{Terms: stitch.UK, Names: map[string]string{"cl": "cl"}}
	var l []string
	for _, a := range s.Abbreviations("Rnd 1: Ch 1, FPtr around next st, cl in ch-2 sp; ss to first tr.") {
		l = append(l, a.Short+"="+a.Long)
	}
	want := "rnd(s)=round(s); ch(s)=chain(s); FPtr=front post treble crochet; st(s)=stitch(es); sp(s)=space(s); ss=slip stitch; tr=treble crochet"
	if got := strings.Join(l, "; "); got != want {
		t.Errorf("\n got %s\nwant %s", got, want)
	}
}

func TestLongNames(t *testing.T) {
	s := Style{Terms: stitch.US, Long: true, Names: map[string]string{"v st": "V-st"}}
	if got, want := s.Spell("Rnds 2-3: Sk next ch-2 sp, V-st in next st; rep from *."), "Rounds 2-3: Skip next chain-2 space, V-st in next stitch; repeat from *."; got != want {
		t.Errorf("%q, want %q", got, want)
	}
}
