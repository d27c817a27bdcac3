package working

import (
	"os"
	"strings"
	"testing"

	"whorl/patterns"
)

// Mistakes of one digit or one word, planted in the examples and in patterns of all
// kinds: the first message
// must stand in the right line, name the right round and size, and say what
// would fit.
func TestPlantedMistakes(t *testing.T) {
	const cap, hat = "lantern-hill-cap", "bulrush-hat"
	for _, c := range []struct {
		file, line, from, to string // in the line that begins so, from becomes to
		round, size, code    string
		says                 string // in the message or the help
	}{
		{cap, "Rnd 2:", "(16 hdc)", "(17 hdc)", "Rnd 2", "Baby", "count", "not the 17"},
		{cap, "Rnd 4:", "next 2 sts", "next 3 sts", "Rnd 4", "Baby", "count", "the count is 30"},
		{cap, "Rnd 5:", "2 hdc in next st", "3 hdc in next st", "Rnd 5", "Baby", "count", "the count is 48"},
		{cap, "Rnd 1:", "8 hdc in ring", "9 hdc in ring", "Rnd 1", "Baby", "count", "9 hdc"},
		{cap, "Rnd - (9, 10, 11):", "- (4, 4, 4) times", "- (4, 5, 4) times", "Rnd 10", "Adult", "runs-out", "not 5"},
		{cap, "Rnd - (9, 10, 11):", "- (15, 17, 19) sts", "- (14, 17, 19) sts", "Rnd 9", "Child", "left-over", "4 stitches"},
		{cap, "Rnds 8", "56 (68, 76, 84) hdc", "56 (68, 67, 84) hdc", "Rnd 18", "Adult", "count", "not the 67"},
		{cap, "Rnd 9 (Adult", "next 7 sts", "next 8 sts", "Rnd 9", "Adult", "runs-out", "Nearest counts that work: 63 or 72"},
		{cap, "Rnd 3:", "join.", "jion.", "", "", "not-understood", `Did you mean "join"?`},
		{cap, "Rnd 6:", "hdc in next 4", "hcd in next 4", "", "", "not-understood", `Did you mean "hdc"?`},
		{cap, "Rnd 5:", "2 hdc in next st", "2 hcd in next st", "", "", "not-understood", `cannot work out "hcd"`},
		{cap, "Rnd 7:", "Rnd 7:", "Rnd 8:", "Rnd 8", "Baby", "round-number", "Rnd 7 is missing"},
		{cap, "Rnd 14", "in each st", "in each dtr", "Rnd 14", "Baby", "runs-out", "dtr"},
		{hat, "Row 1:", "2nd ch", "3rd ch", "Row 1", "Toddler", "count", "not the 7"},
		{hat, "Row 2:", "7 (8, 9, 9) sc", "7 (8, 8, 9) sc", "Row 2", "Adult", "count", "not the 8"},
		{hat, "Rnd 1:", "60 (66, 72, 78) sc evenly", "60 (66, 73, 78) sc evenly", "Rnd 1", "Adult", "count", "73 sc"},
		{hat, "Rnd 2:", "sk next 2 sts, sc", "sk next 3 sts, sc", "Rnd 2", "Toddler", "runs-out", "uses 7"},
		{hat, "Rnd 3:", "dc5tog over next 5 sts", "dc5tog over next 4 sts", "Rnd 3", "Toddler", "legs", "takes 5 stitches, not 4"},
		{hat, "Rnd 4:", "2 sc in next ch-2 sp, sc in next sc", "2 sc in next ch-3 sp, sc in next sc", "Rnd 4", "Toddler", "runs-out", "Rnd 3 has 20 ch-2 sps"},
		{hat, "Rnd 12", "next 4 sts", "next 5 sts", "Rnd 12", "Toddler", "runs-out", "Nearest counts that work: 56 or 63"},
		{hat, "Rnd 16", "hdc2tog; rep", "hdc3tog; rep", "Rnd 16", "Toddler", "runs-out", "uses 4"},
		{hat, "Rnd 17", "10 (11, 12, 13)", "10 (11, 12, 12)", "Rnd 20", "Adult Large", "count", "not the 12"},
		{hat, "Rnd 11", "hdc in each st", "htr in each st", "", "", "terms", "UK terms"},
		// Rows: a ripple, a scarf, a shawl, a dishcloth.
		{"ripple-a", "Row 1 (RS)", "*3 sc in next ch, sc in next 4", "*3 sc in next ch, sc in next 5", "Row 1", "Narrow", "runs-out", "1 repeat uses 13, 11 stitches are left over"},
		{"wheel-scarf-a", "Row 2", "dc9tog over next 9 sts", "dc9tog over next 8 sts", "Row 2", "", "legs", "takes 9 stitches, not 8"},
		{"published/shawl-curlew", "Row 4", "(2 dc, ch 2, 2 dc)", "(2 dc, ch 2, 3 dc)", "Row 4", "", "count", "5 dc beside the V-sts, not the 4"},
		{"published/cloth-mossrow", "Row 28", "(29 sc)", "(28 sc)", "Row 28", "", "count", "not the 28"},
		{"published/crosswind-headband", "Rows 6", "2–5", "3–5", "", "", "round-number", "would end with Row 29"},
		// Motifs: a square, a hexagon, a mandala.
		{"published/granny-border", "Rnd 2", "*(3 dc, ch 2, 3 dc)", "*(3 dc, ch 2, 4 dc)", "Rnd 2", "", "count", "the count is 27"},
		{"granny-square-c", "2nd rnd", "3 times", "2 times", "Rnd 2", "", "left-over", "3 times would make the stated count"},
		{"published/honeypot-hexagon", "Rnd 4", "next 7 tr", "next 6 tr", "Rnd 4", "", "count", "the count is 55"},
		{"published/mandala-colours", "Rnd 12", "3 sc in same sp", "4 sc in same sp", "Rnd 12", "", "count", "the count is 192"},
		// Spirals: a ball and a mouse.
		{"published/forty-round-ball", "Rnd 30", "dec, 5 sc", "dec, 6 sc", "Rnd 30", "", "runs-out", "6 repeats need 78. They come out if each uses 12."},
		{"published/pip-the-mouse", "Rnd 4:", "next 2 st", "next 3 st", "Rnd 4", "", "runs-out", "there are enough for 4 repeats, not 6"},
		// Mitts, and the thumb.
		{"published/mittens-brent", "Rnd 15", "skip next 5 (6, 7)", "skip next 4 (6, 7)", "Rnd 15", "Child", "count", "20 hdc, not the 19"},
		{"more/mitts-rushlight", "Round 14", "36, 40", "37, 40", "Rnd 14", "Medium", "count", "not the 37"},
		{"more/mitten", "Round 18", "next 8 (12)", "next 9 (12)", "Rnd 18", "Child", "runs-out", "They come out if each uses 12"},
		// Cowls, a basket, a hat in UK terms.
		{"published/cowl-ring", "Rnd 7", "next ch-1 sp", "next ch-2 sp", "Rnd 7", "", "runs-out", "60 ch-1 sps"},
		{"published/oval-basket", "Rnd 3", "3 times", "2 times", "Rnd 3", "", "left-over", "3 times would make the stated count"},
		{"published/uk-cluster", "Round 5", "1 ch, 2 dc", "1 ch, 3 dc", "Rnd 5", "Child", "count", "not the 60"},
	} {
		name := "../examples/" + c.file + ".yaml"
		if c.file != cap && c.file != hat {
			name = "../../testdata/patterns/" + c.file + ".yaml"
		}
		data, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		lines := strings.Split(string(data), "\n")
		at := -1
		for i, l := range lines {
			if strings.HasPrefix(strings.TrimSpace(l), c.line) {
				at = i
				break
			}
		}
		if at < 0 || !strings.Contains(lines[at], c.from) {
			t.Errorf("%s: no %q in the line %q", c.file, c.from, c.line)
			continue
		}
		lines[at] = strings.Replace(lines[at], c.from, c.to, 1)
		p, err := patterns.Read(c.file, []byte(strings.Join(lines, "\n")))
		if err != nil {
			t.Fatal(err)
		}
		_, faults := Work(p, rule{})
		if len(faults) == 0 {
			t.Errorf("%s: %q for %q is not noticed", c.line, c.to, c.from)
			continue
		}
		f := faults[0]
		if f.Line != at+1 || f.Code != c.code || f.Round != c.round || f.Size != c.size || !strings.Contains(f.Message+"\n"+f.Help, c.says) {
			t.Errorf("%s: %q for %q: %s, %s, line %d for %d:\n%s", c.line, c.to, c.from, f.Code, f.Round, f.Line, at+1, f.Error())
		}
	}
}
