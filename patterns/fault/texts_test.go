package fault

import (
	"strings"
	"testing"
)

// A fault that three sizes share is said once; another at the same place does not
// show the line again.
func TestTexts(t *testing.T) {
	at := Pos{3, 1}
	one := func(size, message string) *Fault {
		return &Fault{Code: "count", Pos: at, Length: 2, Size: size, Message: message + " in size " + size, Source: "Rnd 1: sc", File: "f"}
	}
	got := strings.Join(List{one("S", "Rnd 1 runs out"), one("M", "Rnd 1 runs out"), one("L", "Rnd 1 leaves 2")}.Texts(), "\n")
	want := "f:3:1: Rnd 1 runs out in sizes S and M\n    Rnd 1: sc\n    ^^\nf:3:1: Rnd 1 leaves 2 in size L"
	if got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
}
