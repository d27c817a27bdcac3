package working

import (
	"maps"
	"slices"
	"strings"
)

// begOf reports whether the name of one of the designer's stitches is that of the
// beginning of another: "beg shell" or "beginning shell (beg shell)" of "shell".
func begOf(name, of string) bool {
	for _, beg := range bothNames(name) {
		for _, whole := range bothNames(of) {
			for _, word := range begWords {
				if whole != "" && beg == word+" "+whole {
					return true
				}
			}
		}
	}
	return false
}

// begWords are words for the stitch that a round begins with.
var begWords = []string{"beg", "beginning", "starting", "initial"}

// namedBeg reports whether the name is that of the beginning of some stitch: "beg pc".
func namedBeg(name string) bool {
	for _, beg := range bothNames(name) {
		if word, _, ok := strings.Cut(strings.Replace(beg, "-", " ", 1), " "); ok && slices.Contains(begWords, word) {
			return true
		}
	}
	return false
}

// bothNames are "v-stitch" and "v-st" of "v-stitch (v-st)".
func bothNames(name string) []string {
	if long, short, ok := strings.Cut(name, "("); ok && strings.HasSuffix(short, ")") {
		return []string{strings.TrimSpace(long), strings.TrimSpace(strings.TrimSuffix(short, ")"))}
	}
	return []string{name}
}

// begun is the name of the designer's own stitch that a beginning one stands for, ""
// for none.
func begun(definitions map[string]*definition, name string) string {
	for _, of := range slices.Sorted(maps.Keys(definitions)) {
		if begOf(name, of) {
			return of
		}
	}
	return ""
}
