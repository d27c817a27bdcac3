package fault

import (
	"strings"
	"testing"
)

// A fault that three sizes share is said once; another at the same place takes a
// line, with what would fit.
func TestTexts(t *testing.T) {
	at := Pos{3, 1}
	one := func(size, message string) *Fault {
		return &Fault{Code: "count", Pos: at, Length: 2, Size: size, Message: message + " in size " + size, Source: "Rnd 1: sc", File: "f"}
	}
	large := one("L", "Rnd 1 leaves 2")
	large.Help = "The repeat uses 3.\nNearest counts: 6 or 9."
	other := one("L", "Rnd 1 is long")
	other.Code = "long"
	got := strings.Join(List{one("S", "Rnd 1 runs out"), one("M", "Rnd 1 runs out"), large, other}.Texts(), "\n")
	want := "f:3:1: Rnd 1 runs out in sizes S and M\n    Rnd 1: sc\n    ^^\n  Likewise: Rnd 1 leaves 2 in size L. Nearest counts: 6 or 9.\n" +
		"f:3:1: Rnd 1 is long in size L\n    Rnd 1: sc\n    ^^"
	if got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
}
