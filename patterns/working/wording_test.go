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
		{"chains passed over at the hook", "rows: yes", "Ch 8.\nRow 1: Hdc in 3rd ch from hook (2 skipped chs do not count) and in each ch across. (6 hdc)\nRow 2: Ch 1, turn, sc in each st across.", stitch.UK, -1,
			"Ch 8.\nRow 1: Htr in 3rd ch from hook and in each ch across (missed chs do not count as a st). (6 htr)\nRow 2: Ch 1, turn, dc in each st across. (6 dc)"},
		{"names of stitches in full, with their definitions", "stitches:\n  FPdc: front post double crochet\n  3dccl: 3-dc cluster",
			"Rnd 1: 6 dc in magic ring; join.\nRnd 2: Ch 2, *FPdc around next st, 3dccl in same st; rep from * around; join. (6 FPdc, 6 3dccl)", stitch.UK, -1,
			"Rnd 1: 6 tr in magic ring; join. (6 tr)\nRnd 2: Ch 2, *FPtr around next st, 3trcl in same st; rep from * around; join. (6 FPtr, 6 clusters)"},
		{"what is done with a needle", "", "Rnd 1: 8 sc in magic ring, do not join. Fasten off. Using your needle, weave the tail through.", stitch.US, -1,
			"Rnd 1: 8 sc in magic ring; do not join. (8 sc) Fasten off. Using your needle, weave the tail through."},
		{"what stitches are for", "", "Rnd 1: 8 sc in magic ring.\nRnd 2: Sc in next 6 sts, ch 4, sk next 2 sts for thumb.\nRnd 3: Sc in each st and ch around, sl st in next 2 sts to level the edge.", stitch.US, -1,
			"Rnd 1: 8 sc in magic ring. (8 sc)\nRnd 2: Sc in next 6 sts, ch 4, sk next 2 sts for thumb. (6 sc, 1 ch-4 sp)\nRnd 3: Sc in each st and ch around, sl st in next 2 sts to level the edge. (10 sc)"},
		{"yarns by number", "", "With yarn 1, ch 4; join with sl st to form ring.\nRnd 1: Ch 1, 8 sc in ring; join.\nLast Rnd: With yarn 2; join with sl st in first st, ch 1, sc in each st around; join.", stitch.US, -1,
			"With yarn 1, ch 4; join with sl st to form ring.\nRnd 1: Ch 1, 8 sc in ring; join. (8 sc)\nLast rnd: With yarn 2, join with sl st in first st, ch 1, sc in each st around; join. (8 sc)"},
		{"spaces that differ from size to size", "sizes: [S, M]", "Rnd 1: 8 sc in magic ring.\nRnd 2: Sc in next 6 sts, ch 4 (5), sk next 2 sts.", stitch.US, -1,
			"Rnd 1: 8 sc in magic ring. (8 sc)\nRnd 2: Sc in next 6 sts, ch 4 (5), sk next 2 sts. (6 sc, 1 ch sp)"},
		{"a heading before work, and both loops", "", "BASE\nCh 4; join with sl st to form ring.\nRnd 1: Ch 1, 8 sc in ring; join.\nRnd 2: Ch 1, working in both loops, sc in each st around; join.", stitch.US, -1,
			"BASE\nCh 4; join with sl st to form ring.\nRnd 1: Ch 1, 8 sc in ring; join. (8 sc)\nRnd 2: Ch 1, working in both loops, sc in each st around; join. (8 sc)"},
		{"advice that goes on in a clause", "", "Rnd 1: 8 sc in magic ring; do not join. Work in a continuous spiral, marking the first st of each round.\nRnd 2: [Sc in next st, 2 sc in next st] 4 times.", stitch.US, -1,
			"Rnd 1: 8 sc in magic ring; do not join. (8 sc) Work in a continuous spiral, marking the first st of each round.\nRnd 2: [Sc in next st, 2 sc in next st] 4 times. (12 sc)"},
		{"a repeat in one place, and a yarn without a capital", "", "Change to orange. Ch 4; join with sl st to form ring.\nRnd 1: Ch 3 (counts as dc), 2 dc in ring, ch 2, ((3 dc, ch 2) 3 times) in ring; join.", stitch.US, -1,
			"With orange yarn, ch 4; join with sl st to form ring.\nRnd 1: Ch 3 (counts as dc), 2 dc in ring, ch 2, [3 dc, ch 2] 3 times in ring; join. (12 dc, 4 ch-2 sps)"},
		{"clauses that begin sentences", "", "Rnd 1: 8 sc in magic ring; do not join. Fasten off. With tail, sew through front loops to close. Using the long end, sew to head.", stitch.US, -1,
			"Rnd 1: 8 sc in magic ring; do not join. (8 sc) Fasten off. With tail, sew through front loops to close. Using the long end, sew to head."},
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
