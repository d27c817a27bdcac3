package fault

import (
	"strings"
	"unicode/utf8"
)

// Nearest is the known word that a written one most probably means: the one with
// the fewest letters wrong, up to a third of them. It is "" where none is near.
func Nearest(written string, known []string) string {
	w := strings.ToLower(strings.TrimSpace(written))
	n := utf8.RuneCountInString(w)
	if n == 0 || n > 60 {
		return ""
	}
	best, least := "", max(1, n/3)+1
	for _, k := range known {
		if d := distance(w, strings.ToLower(k)); d < least {
			best, least = k, d
		}
	}
	if best != "" {
		return best
	}
	for _, k := range known {
		// A word cut short or run on: "adult" for "Adult Large".
		if l := strings.ToLower(k); n >= 3 && (strings.HasPrefix(l, w) || len(l) >= 3 && strings.HasPrefix(w, l)) {
			return k
		}
	}
	return ""
}

// distance is the number of letters to put in, leave out, change or swap with
// their neighbour to make b of a (optimal string alignment distance; L. Boytsov,
// "Indexing methods for approximate dictionary searching", 2011, value from
// memory).
func distance(a, b string) int {
	s, t := []rune(a), []rune(b)
	d := make([][]int, len(s)+1)
	for i := range d {
		d[i] = make([]int, len(t)+1)
		d[i][0] = i
	}
	for j := range d[0] {
		d[0][j] = j
	}
	for i := 1; i <= len(s); i++ {
		for j := 1; j <= len(t); j++ {
			cost := 1
			if s[i-1] == t[j-1] {
				cost = 0
			}
			d[i][j] = min(d[i-1][j]+1, d[i][j-1]+1, d[i-1][j-1]+cost)
			if i > 1 && j > 1 && s[i-1] == t[j-2] && s[i-2] == t[j-1] {
				d[i][j] = min(d[i][j], d[i-2][j-2]+1)
			}
		}
	}
	return d[len(s)][len(t)]
}
