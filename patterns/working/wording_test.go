package working

import (
	"strings"
	"testing"

	"whorl/patterns"
	"whorl/patterns/stitch"
)

// What an editor of patterns would mend in printed words. Each case is a pattern
// and the lines of its first part as they are to be printed.
func TestWording(t *testing.T) {
	for _, c := range []struct {
		name    string
		head    string // of the pattern file
		words   string
		terms   stitch.Terms
		size    int
		printed string
	}{
		{"a stitch of her own around a post", "stitches:\n  rtrf: raised treble front, 1 tr around the post of next st, inserting the hook from the front\nterms: UK",
			"Rnd 1: 6 tr in magic ring; join.\nRnd 2: Ch 2, *rtrf round next st; rep from * to end; join. (6 sts)", stitch.UK, -1,
			"Rnd 1: 6 tr in magic ring; join. (6 tr)\nRnd 2: Ch 2, *rtrf around next st; rep from * around; join. (6 rtrf)"},
		{"a stitch of the trade that is told by the hook", "stitches:\n  FPdc: yo, insert hook from front to back around the post of the st, complete a dc",
			"Rnd 1: 6 dc in magic ring; join.\nRnd 2: Ch 2, *FPdc around next st, dc in same st; rep from * around; join. (6 FPdc, 6 dc)", stitch.UK, -1,
			"Rnd 1: 6 tr in magic ring; join. (6 tr)\nRnd 2: Ch 2, *FPtr around next st, tr in same st; rep from * around; join. (6 FPtr, 6 tr)"},
		{"sizes in brackets behind the number", "sizes: [S, M, L]",
			"Rnd 1: 6 sc in magic ring.\nRnd 2 (S and M): Sc in each st around.\nRnd 2 (L): 2 sc in each st around.", stitch.US, -1,
			"Rnd 1: 6 sc in magic ring. (6 sc)\nRnd 2 (S and M only): Sc in each st around. (6 sc)\nRnd 2 (L only): 2 sc in each st around. (12 sc)"},
		{"what is said of a count", "", "Rnd 1: 8 sc in magic ring; join and fasten off - 8 sc, which is 2 to a side.", stitch.US, -1,
			"Rnd 1: 8 sc in magic ring; join. (8 sc, which is 2 to a side) Fasten off."},
		{"what comes of it, and a heading behind a repeat", "",
			"Rnd 1: 8 sc in magic ring; join.\nRnd 2: Ch 1, sc in each st around; join, as you will on every round. (8 sc)\nRnd 3: Repeat Round 2, so that the ribs stack up.\n\nEdging\nRnd 4: Ch 1, 2 sc in each st around; join.",
			stitch.US, -1,
			"Rnd 1: 8 sc in magic ring; join. (8 sc)\nRnd 2: Ch 1, sc in each st around; join, as you will on every round. (8 sc)\nRnd 3: Rep Rnd 2, so that the ribs stack up. (8 sc)\nEdging\nRnd 4: Ch 1, 2 sc in each st around; join. (16 sc)"},
		{"now at the beginning of advice", "", "Rnd 1: 8 sc in magic ring; join.\nNow for the rib.\nRnd 2: Ch 1, sc in each st around; join.", stitch.US, -1,
			"Rnd 1: 8 sc in magic ring; join. (8 sc)\nNow for the rib.\nRnd 2: Ch 1, sc in each st around; join. (8 sc)"},
		{"numbers do not meet", "", "Rnd 1: 8 sc in magic ring; join.\nRnd 2: Ch 1, sc in each st around; join.\nRnd 3: Rep Rnd 2.\nRep Rnds 2 and 3 4 more times.\nRep Rnds 2 and 3 14 more times.", stitch.US, -1,
			"Rnd 1: 8 sc in magic ring; join. (8 sc)\nRnd 2: Ch 1, sc in each st around; join. (8 sc)\nRnd 3: Rep Rnd 2. (8 sc)\nRep Rnds 2 and 3 four more times. (8 sc)\nRep Rnds 2 and 3, 14 more times. (8 sc)"},
		{"a yarn before a repeat", "", "Rnd 1: 8 sc in magic ring; join.\nRnd 2: Ch 1, sc in each st around; join.\nRnd 3: Using B, work as Round 2.", stitch.US, -1,
			"Rnd 1: 8 sc in magic ring; join. (8 sc)\nRnd 2: Ch 1, sc in each st around; join. (8 sc)\nRnd 3: With yarn B, rep Rnd 2. (8 sc)"},
		{"chains that count, named again", "rows: yes", "With A, ch 8.\nRow 1: Dc in 4th ch from hook (skipped 3 ch count as dc), dc in each ch across.", stitch.US, -1,
			"With yarn A, ch 8.\nRow 1: Dc in 4th ch from hook (beg ch-3 counts as dc), dc in each ch across. (6 dc)"},
	} {
		worked := "rounds"
		head := c.head
		if head == "rows: yes" {
			worked, head = "rows", ""
		}
		if !strings.Contains(head, "terms:") {
			head += "\nterms: US"
		}
		src := "title: T\n" + strings.TrimSpace(head) + "\nparts:\n  - name: P\n    worked: " + worked + "\n    text: |\n      " +
			strings.ReplaceAll(c.words, "\n", "\n      ") + "\n"
		p, err := patterns.Read("case", []byte(src))
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		done := New(p, rule{})
		w := done.Script(c.terms, c.size, false)
		if w == nil {
			t.Errorf("%s: %v", c.name, done.Faults)
			continue
		}
		if got := strings.Join(w.Parts[0].Lines, "\n"); got != c.printed {
			t.Errorf("%s:\n got %s\nwant %s", c.name, got, c.printed)
		}
	}
}
