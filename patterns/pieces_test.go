package patterns

import (
	"fmt"
	"strings"
	"testing"
)

// Pieces told in one part under headings of their own are parts of their own.
func TestPieces(t *testing.T) {
	for _, c := range []struct{ lines, want string }{
		{"First flap: Skip 2 sts.|Row 1: sc|Second flap: Skip 3 sts.|Row 1: sc", "Flaps/First flap:2 Second flap/Second flap:2"},
		{"First ear-flap|Row 1: sc|Second ear flap|Row 1: sc", "Flaps/First ear-flap:2 Second ear flap/Second ear flap:2"},
		{"Join yarn.|Left strap.|Row 1: sc|Right strap.|Row 1: sc", "Flaps/Left strap:3 Right strap/Right strap:2"},
		{"First row: sc|Second row: sc", "Flaps/:2"},
		{"First flap: Skip 2 sts.|Row 1: sc|Second strap: Skip 3 sts.|Row 1: sc", "Flaps/:4"},
		{"Row 1: sc|First flap is done.|Second flap is the same.", "Flaps/:3"},
	} {
		text := "title: A\nparts:\n  - name: Flaps\n    worked: rows\n    text: |\n      " + strings.ReplaceAll(c.lines, "|", "\n      ") + "\n"
		p, err := Read("a.yaml", []byte(text))
		if err != nil {
			t.Errorf("%s: %v", c.lines, err)
			continue
		}
		var l []string
		for _, q := range p.Parts {
			l = append(l, q.Name+"/"+q.Piece+":"+string(rune('0'+len(q.Text.Lines))))
		}
		if got := strings.Join(l, " "); got != c.want {
			t.Errorf("%s: %s, want %s", c.lines, got, c.want)
		}
	}
}

// Words that go over from rows to rounds, or begin anew under a title, are of several parts.
func TestTracks(t *testing.T) {
	for _, c := range []struct{ lines, want string }{
		{"BRIM|Row 1: sc|Rows 2-9: sc|Seam.|BODY|Rnd 1: sc|Rnd 2: sc", "Hat/rows:4 Body/rounds:2"},
		{"Row 1: sc|2nd row: sc|Fold in half. Turn to work along row ends.|1st round: sc", "Hat/rows:3 Hat, rounds/rounds:1"},
		{"Row 1: sc|Ch 4, join to form ring.|Rnd 1: sc", "Hat/rows:1 Hat, rounds/rounds:2"},
		{"Rnd 1: sc|Rnd 2: sc|EARFLAPS (make 2)|Join yarn in any st.|Row 1: sc", "Hat/rounds:2 Earflaps (make 2)/rows:2"},
		{"Rnd 1: sc|Rnd 2: sc|Ear:|Rnd 1: sc|Tail|Rnd 1: sc", "Hat/rounds:2 Ear/rounds:1 Tail/rounds:1"},
		{"Rnd 1: sc|Body (BLO throughout)|Rnd 1: sc", "Hat/rounds:1 Body (BLO throughout)/rounds:2"},
		{"Foundation row: sc|Rnd 1: sc", "Hat/rows:2"},
		{"Row 1: sc|Rnd 2: sc", "Hat/rows:2"},
		{"Rnd 1: sc|Fasten off|Rnd 1: sc", "Hat/rows:3"},
		{"Small|Rnd 1: sc|Large|Rnd 1: sc", "Hat/rows:4"},
		{"Rnd 1: sc|Large only:|Rnd 1: sc", "Hat/rows:3"},
	} {
		text := "title: A\nsizes: [Small, Large]\nparts:\n  - name: Hat\n    worked: rows\n    text: |\n      " + strings.ReplaceAll(c.lines, "|", "\n      ") + "\n"
		p, err := Read("a.yaml", []byte(text))
		if err != nil {
			t.Errorf("%s: %v", c.lines, err)
			continue
		}
		var l []string
		for _, q := range p.Parts {
			l = append(l, fmt.Sprintf("%s/%s:%d", q.Name, map[bool]string{true: "rows", false: "rounds"}[q.Rows], len(q.Text.Lines)))
		}
		if got := strings.Join(l, " "); got != c.want {
			t.Errorf("%s: %s, want %s", c.lines, got, c.want)
		}
	}
}

// Words without parts that begin with rows need not be said to be in rows or rounds.
func TestLooseTracks(t *testing.T) {
	p, err := Read("a.yaml", []byte("title: A\ntext: |\n  BRIM\n  Row 1: sc\n  BODY\n  Rnd 1: sc\n"))
	if err != nil || len(p.Parts) != 2 || p.Parts[0].Name != "Brim" || p.Parts[1].Name != "Body" || !p.Parts[0].Rows || p.Parts[1].Rows {
		t.Errorf("%v %+v", err, p.Parts)
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
