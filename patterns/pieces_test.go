package patterns

import (
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

func TestOwnWords(t *testing.T) {
	for from, own := range map[string]bool{"lower edge": true, "the long side": true, "row ends": true, "last round": true,
		"e": false, "s": false, "long sid": false, "Brim edge": false, " ": false} {
		if got := ownWords(from); got != own {
			t.Errorf("from: %q is %v, want %v", from, got, own)
		}
	}
}
