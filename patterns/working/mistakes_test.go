package working

import (
	"os"
	"strings"
	"testing"

	"whorl/patterns"
)

// Mistakes of one digit or one word, planted in the examples: the first message
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
	} {
		data, err := os.ReadFile("../examples/" + c.file + ".yaml")
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
