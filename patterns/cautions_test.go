package patterns

import (
	"fmt"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// TestCautions reads small patterns, each with the codes of its cautions and
// what the first of them names.
func TestCautions(t *testing.T) {
	for _, c := range []struct {
		facts, words string
		want         string // codes
		says         string
	}{
		{"title: Cap\nsizes: [Woman, Man]\nhead: 54 (58) cm", "Rnd 1: 6 sc.", "", ""},
		{"title: Scarf", "Rnd 1: 6 sc.", "", ""},
		// Sizes by name.
		{"title: Cap\nsizes: [Baby, Adult]", "Rnd 1: 6 sc.", "sleep cords small-parts", "before sleep (size Baby), and follow the safety rules where it is worn or sold."},
		{"title: Mitts\nsizes: [Baby, Toddler, Adult]", "Rnd 1: 6 sc.", "cords small-parts", "add none where a baby or small child wears it (sizes Baby and Toddler), and"},
		{"title: Baby Bonnet", "Rnd 1: 6 sc.", "sleep cords small-parts", "before sleep, and"},
		{"title: Hat\nsizes: [3-6 mo, 12–18 months, 2-4 years, 8 yrs]", "Rnd 1: 6 sc.", "sleep cords small-parts", "(size 3-6 mo)"},
		{"title: Hat\nsizes: [12–18 months, 2T, 8 yrs]", "Rnd 1: 6 sc.", "cords small-parts", "(sizes 12–18 months and 2T)"},
		{"title: Hat\nsizes: [Child 8-10 years, Teen]", "Rnd 1: 6 sc.", "", ""},
		{"title: Hat\nsizes: [Babylon, Kidwelly]", "Rnd 1: 6 sc.", "", ""},
		// Sizes by head: 46.1 cm at 12 months, 50.7 cm at 60 (WHO 2007, boys'
		// medians, from memory); 20 in is a woman's (Craft Yarn Council, from
		// memory).
		{"sizes: [S, M, L]\nhead: 46 (50.5, 51) cm", "Rnd 1: 6 sc.", "sleep cords small-parts", "(size S)"},
		{"sizes: [S, M]\nhead: 46.5 (50.7) cm", "Rnd 1: 6 sc.", "cords small-parts", "(sizes S and M)"},
		{"sizes: [S, M]\nhead: 20 (22) in", "Rnd 1: 6 sc.", "", ""},
		// Words that add things, in the text, the notes, the making up.
		{"title: Hat", "Rnd 1: 6 sc.\n      Sew a pom-pom on top.", "small-parts", "The pom-poms can come off"},
		{"title: Hat", "Rnd 1: 6 sc.\n      Top with a PomPom and sew on two\n      buttons.", "small-parts", "The pom-poms and buttons can"},
		{"title: Hat\nnotes: The earflap braids are optional.", "Rnd 1: 6 sc.", "cords", "The braids can catch"},
		{"title: Bag", "Rnd 1: 6 sc.\n      Thread the drawstring through.", "cords", "The drawstrings can catch"},
		{"title: Bonnet", "Rnd 1: 6 sc.\n      Tie under the chin.", "cords", "The ties can"},
		{"title: Bonnet", "Rnd 1: 6 sc.\n      Make the first tie: ch 60.", "cords", "The ties can"},
		{"title: Hat", "Rnd 1: 6 sc.\n      Hang a tassel from each flap.", "cords small-parts", "The tassels can catch"},
		{"title: Hat\nstitches: {bsc: \"sc, sliding up a bead\"}", "Rnd 1: 6 sc.", "small-parts", "The beads can"},
		{"title: Ball", "Rnd 1: 6 sc.\n      Fix the safety eyes.", "small-parts", "The safety eyes can"},
		{"title: Cap\nsizes: [Baby]", "Rnd 1: 6 sc.\n      Add two ties and a button.", "sleep cords small-parts", "take it off before sleep (size Baby)"},
		// Words that do not.
		{"title: Bead Lane Hat", "Rnd 1: 6 sc, bead st in next st.\n      Tie off. Tie the ends together.", "", ""},
		{"title: Hat\nnotes: Corded rib and a braid stitch in ribbon yarn.", "Rnd 1: 6 sc.", "", ""},
	} {
		p, err := Read("f", fmt.Appendf(nil, "%s\nparts:\n  - name: Body\n    worked: rounds\n    text: |\n      %s\n", c.facts, c.words))
		if err != nil {
			t.Fatal(err)
		}
		var codes, messages []string
		for _, k := range Cautions(p) {
			codes, messages = append(codes, k.Code), append(messages, k.Message)
			if !strings.HasSuffix(k.Message, "follow the safety rules where it is worn or sold.") || k.Source == "" {
				t.Errorf("%s: %q defers to no rules", c.facts, k.Message)
			}
		}
		if diff := cmp.Diff(c.want, strings.Join(codes, " ")); diff != "" {
			t.Errorf("%s\n%s: %s", c.facts, c.words, diff)
		}
		if c.says != "" && (len(messages) == 0 || !strings.Contains(messages[0], c.says)) {
			t.Errorf("%s\n%s: no %q in %q", c.facts, c.words, c.says, messages)
		}
	}
}

// A part that is named a tie is one.
func TestCautionOfAPart(t *testing.T) {
	p, err := Read("f", []byte("parts:\n  - {name: Body, rounds: \"Rnd 1: 6 sc.\"}\n  - {name: Tie (make 2), rows: \"Row 1: 6 sc.\"}\n"))
	if l := Cautions(p); err != nil || len(l) != 1 || l[0].Code != "cords" {
		t.Error(l, err)
	}
}
