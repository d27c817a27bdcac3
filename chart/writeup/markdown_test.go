package writeup

import "testing"

// Whatever could be taken for a mark of the format is escaped: stars of repeats
// above all.
func TestMarkdown(t *testing.T) {
	d := &Document{Title: "A <Hat> & Scarf", Lines: []string{"by somebody"}, Foot: "© somebody", Blocks: []Block{
		Heading{1, "Sizes"},
		Table{Head: []string{"Size", "Around"}, Rows: [][]string{{"S | M", "50 cm\n20 in"}}},
		Terms{{"sc", "single crochet"}, {"BLO", "back loop only"}},
		Heading{2, "Body"},
		Paragraph{Lead: "Rnd 1:", Text: "Ch\u00a01, *sc in next st, [dc, ch 1] twice; rep from * around."},
		Paragraph{Text: "14 hdc = 10 cm"},
		Paragraph{Text: "3. of all"},
		Paragraph{Text: "- no list"},
		Picture{Scene: drawing(10, 10, "x"), Name: "a hat-chart-1", Caption: "Chart 1: Body", Note: "Right side shown.", Alt: "A chart [of] stars *"},
		Picture{Scene: drawing(10, 10, "x"), Name: "b", Alt: "no caption"},
	}}
	const want = `# A \<Hat\> \& Scarf

by somebody

## Sizes

| Size | Around |
| --- | ---: |
| S \| M | 50 cm / 20 in |

- **sc:** single crochet
- **BLO:** back loop only

### Body

**Rnd 1:** Ch 1, \*sc in next st, \[dc, ch 1\] twice; rep from \* around.

14 hdc = 10 cm

3\. of all

\- no list

**Chart 1: Body**  
Right side shown.

![A chart \[of\] stars \*](a%20hat-chart-1.svg)

![no caption](b.svg)

© somebody
`
	if got := Markdown(d); got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
}
