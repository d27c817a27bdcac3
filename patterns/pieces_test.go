package patterns

import (
	"fmt"
	"strings"
	"testing"
)

// partsTold are the parts that the words of one part tell of, as a line: the name of each, what
// it is said to be, how it is worked, how many lines it has and what it is worked on.
func partsTold(t *testing.T, name, worked, lines string) string {
	t.Helper()
	text := "title: A\nsizes: [Small, Large]\nparts:\n  - name: " + name + "\n    worked: " + worked + "\n    text: |\n      " + strings.ReplaceAll(lines, "|", "\n      ") + "\n"
	p, err := Read("a.yaml", []byte(text))
	if err != nil {
		t.Fatalf("%s: %v", lines, err)
	}
	var l []string
	for _, q := range p.Parts {
		s := fmt.Sprintf("%s/%s:%d", q.Name, map[bool]string{true: "rows", false: "rounds"}[q.Rows], len(q.Text.Lines))
		if q.Piece != "" {
			s += " as " + q.Piece
		}
		if q.From != "" {
			s += " on " + q.From
		}
		l = append(l, s)
	}
	return strings.Join(l, ", ")
}

func TestPieces(t *testing.T) {
	for _, c := range []struct{ name, worked, lines, want string }{
		// alike, under headings of their own
		{"Flaps", "rows", "First flap: Skip 2 sts.|Row 1: sc|Second flap: Skip 3 sts.|Row 1: sc", "Flaps/rows:2 as First flap, Second flap/rows:2 as Second flap"},
		{"Flaps", "rows", "First ear-flap|Row 1: sc|Second ear flap|Row 1: sc", "Flaps/rows:2 as First ear-flap, Second ear flap/rows:2 as Second ear flap"},
		{"Flaps", "rows", "Join yarn.|Left strap.|Row 1: sc|Right strap.|Row 1: sc", "Flaps/rows:3 as Left strap, Right strap/rows:2 as Right strap"},
		{"Flaps", "rows", "First row: sc|Second row: sc", "Flaps/rows:2"},
		{"Flaps", "rows", "First flap: Skip 2 sts.|Row 1: sc|Second strap: Skip 3 sts.|Row 1: sc", "Flaps/rows:4"},
		{"Flaps", "rows", "Row 1: sc|First flap is done.|Second flap is the same.", "Flaps/rows:3"},
		// numbers that begin anew, or go over from rows to rounds
		{"Hat", "rows", "BRIM|Row 1: sc|Rows 2-9: sc|Seam.|BODY|Rnd 1: sc|Rnd 2: sc", "Hat/rows:4, Body/rounds:2"},
		{"Hat", "rows", "Row 1: sc|2nd row: sc|Fold in half. Turn to work along row ends.|1st round: sc", "Hat/rows:3, Hat, rounds/rounds:1"},
		{"Hat", "rows", "Row 1: sc|Ch 4, join to form ring.|Rnd 1: sc", "Hat/rows:1, Hat, rounds/rounds:2"},
		{"Hat", "rows", "Rnd 1: sc|Rnd 2: sc|EARFLAPS (make 2)|Join yarn in any st.|Row 1: sc", "Hat/rounds:2, Earflaps (make 2)/rows:2"},
		{"Hat", "rows", "Rnd 1: sc|Rnd 2: sc|Ear:|Rnd 1: sc|Tail|Rnd 1: sc", "Hat/rounds:2, Ear/rounds:1, Tail/rounds:1"},
		{"Hat", "rows", "Rnd 1: sc|Body (BLO throughout)|Rnd 1: sc", "Hat/rounds:1, Body (BLO throughout)/rounds:2"},
		{"Hat", "rows", "Foundation row: sc|Rnd 1: sc", "Hat/rows:2"},
		{"Hat", "rows", "Row 1: sc|Rnd 2: sc", "Hat/rows:2"},
		{"Hat", "rows", "Rnd 1: sc|Fasten off|Rnd 1: sc", "Hat/rows:3"},
		{"Hat", "rows", "Small|Rnd 1: sc|Large|Rnd 1: sc", "Hat/rows:4"},
		{"Hat", "rows", "Rnd 1: sc|Large only:|Rnd 1: sc", "Hat/rows:3"},
		{"Hat", "rows", "First flap|Row 1: sc|Second flap|Rnd 1: sc", "Hat/rows:2 as First flap, Second flap/rounds:1"},
		// a border
		{"Square", "rows", "Row 1: sc|Row 2: sc|Edging|Rnd 1: sc|Rnd 2: sc", "Square/rows:2, Edging/rounds:2 on Square edge"},
		{"Square", "rows", "Row 1: sc|First round: 3 sc in each corner.", "Square/rows:1, Border/rounds:1 on Square edge"},
		{"Square", "rows", "Row 1: sc|First round: sc.", "Square/rows:2"},
		{"Squares", "rows", "First square:|Row 1: sc|Edging: sc evenly round. Join.|Second square:|Row 1: sc",
			"Squares/rows:2 as First square, Edging/rounds:1 on Squares edge, Second square/rows:2 as Second square"},
		// rows along the ends of others
		{"Shawl", "rows", "Row 1: sc|Row 2: sc|Top:|Row 3: sc in each row end", "Shawl/rows:2, Top/rows:2 on Shawl row ends"},
		{"Shawl", "rows", "Row 1: sc|Row 2: sc in each row end", "Shawl/rows:2"},
		// legs and the body that joins them
		{"Bear", "rounds", "Rnd 1: sc|Rnd 2: sc|Ch 3.|Rnd 3: sc in first leg, sc in second leg", "Leg (make 2)/rounds:2, Bear/rounds:2"},
		{"Bear", "rounds", "First leg|Rnd 1: sc|Second leg|Rnd 1: sc|Body|Rnd 2: sc in first leg, sc in second leg",
			"First leg/rounds:2 as First leg, Second leg/rounds:2 as Second leg, Bear/rounds:2"},
		{"Bear", "rounds", "Rnd 1: sc in first leg, sc in second leg|Rnd 2: sc in left leg, sc in right leg", "Bear/rounds:2"},
		{"Bear", "rounds", "Leg:|Rnd 1: sc|Body:|Rnd 1: sc in first leg, sc in second leg|Rnd 2: sc in left leg, sc in right leg", "Bear/rounds:2, Body/rounds:2"},
	} {
		if got := partsTold(t, c.name, c.worked, c.lines); got != c.want {
			t.Errorf("%s: %s, want %s", c.lines, got, c.want)
		}
	}
}

// Words without parts that begin with rows need not be said to be in rows or rounds.
func TestLoosePieces(t *testing.T) {
	p, err := Read("a.yaml", []byte("title: A\ntext: |\n  BRIM\n  Row 1: sc\n  BODY\n  Rnd 1: sc\n"))
	if err != nil || len(p.Parts) != 2 || p.Parts[0].Name != "Brim" || p.Parts[1].Name != "Body" || !p.Parts[0].Rows || p.Parts[1].Rows {
		t.Errorf("%v %+v", err, p.Parts)
	}
}

// The pieces of a part count towards the most parts that a file may have, also past it.
func TestManyPieces(t *testing.T) {
	text := "title: A\nparts:\n"
	for i := range maxParts + 1 {
		text += fmt.Sprintf("  - {name: P%d, worked: rounds, text: \"Rnd 1: sc\"}\n", i)
		if i == maxParts-2 {
			text += "  - name: Flaps\n    worked: rows\n    text: |\n      First flap\n      Row 1: sc\n      Second flap\n      Row 1: sc\n"
		}
	}
	if _, err := Read("a.yaml", []byte(text)); err == nil || !strings.Contains(err.Error(), "more than 200 parts") {
		t.Errorf("%v", err)
	}
}

func TestOwnWords(t *testing.T) {
	for from, own := range map[string]bool{"lower edge": true, "the long side": true, "row ends": true, "last round": true,
		"e": false, "s": false, "long sid": false, "Brim edge": false, " ": false} {
		if got := ownWords(from); got != own {
			t.Errorf("from: %q is %v, want %v", from, got, own)
		}
	}
}
