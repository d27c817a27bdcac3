package chart

import (
	"fmt"
	"strconv"
	"strings"
	"testing"

	"whorl/patterns/fabric"
)

// Every so many rounds have a number, the first and the last always, and none is next to the
// last.
func TestThinned(t *testing.T) {
	rounds := func(from, to int) (l []*course) {
		f := capped(sc, 6, 2, to)
		for _, r := range f.Parts[0].Rounds[from : to+1] {
			l = append(l, &course{round: r})
		}
		return l
	}
	for _, c := range []struct {
		from, to, every int
		want            string
	}{
		{1, 12, 2, "1 3 5 7 9 12"}, {4, 14, 2, "4 6 8 10 12 14"},
		{1, 17, 5, "1 5 10 15 17"}, {1, 16, 5, "1 5 10 16"}, {3, 21, 5, "3 5 10 15 21"}, {7, 20, 5, "7 10 15 20"},
	} {
		var got []string
		for _, r := range thinned(rounds(c.from, c.to), c.every) {
			got = append(got, fmt.Sprint(r.round.Number))
		}
		if s := strings.Join(got, " "); s != c.want {
			t.Errorf("%d to %d, every %d: %s, want %s", c.from, c.to, c.every, s, c.want)
		}
	}
}

// The numbers of rounds that are too low for all of them thin out.
func TestNumbersOfLowRounds(t *testing.T) {
	c := draw(t, sample{"", capped(sc, 6, 12, 30), Options{}})
	sizes := numbersOf(c)
	for n := range 43 {
		if _, set := sizes[strconv.Itoa(n)]; set && n > 1 && n%5 != 0 && n < 42 {
			t.Errorf("%d has a number", n)
		}
	}
	if len(sizes) < 8 || sizes["42"] == 0 {
		t.Errorf("numbers %v", sizes)
	}
	if r := Audit(c.Scene); len(r.Texts) > 0 {
		t.Error(r.Texts)
	}
}

// Where numbers would stand now on one side of the seam and now on the other, rounds are
// parted there until all stand in one line, if no more legs lean for it.
func TestNumbersInOneLine(t *testing.T) {
	f := capped(hdc, 8, 6, 11)
	w, err := newWork(f, measure(t, f), Options{}, fabric.InRounds)
	if err != nil {
		t.Fatal(err)
	}
	if c, missing := w.draw(); c.crossings == 0 || len(missing) > 0 {
		t.Fatalf("a chart whose numbers change sides has %d crossings and misses %d numbers", c.crossings, len(missing))
	}
	c := draw(t, sample{"", f, Options{}})
	if c.crossings > 0 || len(c.ahead) > 0 || len(numbersOf(c)) != 17 {
		t.Errorf("%d crossings, %d numbers ahead of the seam, of %d", c.crossings, len(c.ahead), len(numbersOf(c)))
	}
	if r := Audit(c.Scene); !r.Clean() || len(r.Leaning) > 0 {
		t.Errorf("overlaps %v, texts %v, leaning %v", r.Overlaps, r.Texts, r.Leaning)
	}
}
