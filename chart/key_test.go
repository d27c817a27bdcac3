package chart

import (
	"strings"
	"testing"
)

// A sign that is taken out of the key does not make the key higher than the room kept for it.
func TestKeyGrowsNoHigherWithout(t *testing.T) {
	long := func(n int) entry { return entry{short: strings.Repeat("m", n)} }
	k := key{room: 130, row: 9, keySizes: Options{}.keySizes()}
	k.entries = []entry{{short: "start", sign: ofBeginning}, long(3), long(3), long(3), long(3), long(3), long(3), long(3), long(20), long(20), long(3)}
	for room := 40.0; room < 250; room++ {
		l := k
		l.entries, l.room = append([]entry(nil), k.entries...), room
		l.columns()
		rows := l.rows
		l.without(ofBeginning)
		if l.rows > rows {
			t.Errorf("%g mm wide: from %d rows to %d", room, rows, l.rows)
		}
	}
}
