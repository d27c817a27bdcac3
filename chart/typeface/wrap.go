package typeface

import "strings"

// Wrap breaks a text at its spaces into lines that are no longer than room, in
// millimetres at the size; a single word longer than that is cut. An empty text
// has no lines.
func Wrap(s string, size float64, bold bool, room float64) []string {
	fits := func(t string) bool { return Width(t, size, bold, false) <= room }
	var lines []string
	line := ""
	for _, word := range strings.FieldsFunc(s, func(r rune) bool { return r == ' ' }) {
		if line != "" && fits(line+" "+word) {
			line += " " + word
			continue
		}
		if line != "" {
			lines = append(lines, line)
		}
		for !fits(word) && len([]rune(word)) > 1 {
			u := []rune(word)
			n := len(u) - 1
			for n > 1 && !fits(string(u[:n])) {
				n--
			}
			lines = append(lines, string(u[:n]))
			word = string(u[n:])
		}
		line = word
	}
	if line != "" {
		lines = append(lines, line)
	}
	return lines
}
