package typeface

import "strings"

// Wrap breaks a text at its spaces into lines that are no longer than room, in
// millimetres at the size; a single word longer than that is cut. An empty text
// has no lines. No-break spaces hold words together.
func Wrap(s string, size float64, bold bool, room float64) []string {
	return WrapBehind(s, size, bold, 0, room)
}

// WrapBehind is Wrap for a text that goes on behind another, which has taken so
// much of the room of its first line. That line is empty where no word fits.
func WrapBehind(s string, size float64, bold bool, taken, room float64) []string {
	var lines []string
	line := ""
	fits := func(t string) bool {
		free := room
		if len(lines) == 0 {
			free -= taken
		}
		return Width(t, size, bold, false) <= free
	}
	for _, word := range strings.FieldsFunc(s, func(r rune) bool { return r == ' ' }) {
		if line != "" && fits(line+" "+word) {
			line += " " + word
			continue
		}
		if line != "" || taken > 0 && len(lines) == 0 && !fits(word) {
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
