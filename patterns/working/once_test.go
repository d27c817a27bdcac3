package working

import (
	"os"
	"strings"
	"testing"

	"whorl/patterns"
)

// One mistake is one fault in each size: what follows from it is not told, and the
// fault stands in the round where the words first go wrong.
func TestOneFaultForOneCause(t *testing.T) {
	for _, c := range []struct {
		file, line, from, to string // in the line that begins so, from becomes to
		round, says          string
	}{
		{"published/bellflower-doily", "Rnd 8", "] 6 times", "] 7 times", "Rnd 8", "passes over 21 stitches of Rnd 7"},
		{"published/filet-scarf", "Row 3", "each of next 3 dc, [", "each of next 4 dc, [", "Row 3", "not the 18"},
		{"published/tidepool-hat", "Rnd 3", "Ch 3", "Ch 4", "Rnd 3", "begins with ch 4"},
		{"published/crosswind-headband", "Rows 6", "2–5", "3–5", "", "the words say 24"},
		{"published/shawl-curlew", "Row 4", "(2 dc, ch 2, 2 dc)", "(2 dc, ch 2, 3 dc)", "Row 4", "beside the V-sts"},
		{"published/mittens-brent", "Rnd 15", "ch 5 (6, 7), skip", "ch 6 (6, 7), skip", "Rnd 15", "not the 5"},
		{"published/mandala-colours", "Rnd 12", "(144 sc)", "(145 sc)", "Rnd 12", "not the 145"},
		{"published/toque-smew", "Row 2", "to last 8 sts", "to last 9 sts", "Row 2", "Row 2"},
		{"granny-square-c", "3rd rnd", "in corner sp, ch 1", "in corner sp, ch 2", "Rnd 4", "ch-1 sps"},
	} {
		data, err := os.ReadFile("../../testdata/patterns/" + c.file + ".yaml")
		if err != nil {
			t.Fatal(err)
		}
		lines := strings.Split(string(data), "\n")
		planted := false
		for i, l := range lines {
			if strings.HasPrefix(strings.TrimSpace(l), c.line) && strings.Contains(l, c.from) && !planted {
				lines[i], planted = strings.Replace(l, c.from, c.to, 1), true
			}
		}
		p, err := patterns.Read(c.file, []byte(strings.Join(lines, "\n")))
		if err != nil || !planted {
			t.Errorf("%s: no %q in the line %q: %v", c.file, c.from, c.line, err)
			continue
		}
		_, faults := Work(p, rule{})
		in := map[string]int{}
		for _, f := range faults {
			in[f.Size]++
		}
		for size, n := range in {
			if n > 1 {
				t.Errorf("%s: %d faults in size %q:\n%v", c.file, n, size, faults)
			}
		}
		if len(faults) == 0 || faults[0].Round != c.round || !strings.Contains(faults[0].Error(), c.says) {
			t.Errorf("%s: in %q, with %q:\n%v", c.file, c.round, c.says, faults)
		}
	}
}
