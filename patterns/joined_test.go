package patterns

import (
	"slices"
	"testing"
)

// How motifs are joined is found in the words, and lengths are no layouts.
func TestJoined(t *testing.T) {
	for _, c := range []struct {
		notes, from string
		rows        []int
		around      bool
	}{
		{notes: "Make 48 squares and join them in 8 rows of 6.", rows: []int{6, 6, 6, 6, 6, 6, 6, 6}},
		{notes: "Lay the squares out 3 wide and 2 long and sew them.", rows: []int{3, 3}},
		{notes: "The blanket is two squares wide by three squares long.", rows: []int{2, 2, 2}},
		{notes: "Sew the 4 squares together 2 by 2.", rows: []int{2, 2}},
		{notes: "Make 4 squares. Sew them together into one large square.", rows: []int{2, 2}},
		{notes: "Make five squares. Join all the squares into a strip.", rows: []int{5}},
		{notes: "Make 4 squares and sew them into one long strip.", rows: []int{4}},
		{notes: "Join the squares into strips of 3. Make 12 squares.", rows: []int{3, 3, 3, 3}},
		{notes: "Whipstitch the hexagons together in rows of 2, 3 and 2.", rows: []int{2, 3, 2}},
		{notes: "Arrange six hexagons around the seventh and sew.", around: true},
		{notes: "Make 7 hexagons and sew them into a flower.", around: true},
		{from: "Squares, 6 x 8", rows: []int{6, 6, 6, 6, 6, 6, 6, 6}},
		{notes: "Each square measures 13 x 13 cm before it is sewn."},
		{notes: "Join the squares; each is 5 x 5\" when laid flat."},
		{notes: "Sew the squares, which are 3.5 x 3.5 in."},
		{notes: "Join the squares as you like."},
		{notes: "Join the squares in 2 rows of 3.", from: "edge of each square"},
	} {
		p := &Pattern{Notes: c.notes, Parts: []Part{{Name: "Square"}, {Name: "Border", From: c.from}}}
		l, ok := p.Joined(0, 1)
		if ok != (len(c.rows) > 0 || c.around) || !slices.Equal(l.Rows, c.rows) || l.Around != c.around {
			t.Errorf("%q %q: %v %v", c.notes, c.from, l, ok)
		}
	}
}
