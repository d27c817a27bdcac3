package patterns

import (
	"strings"
	"unicode/utf8"

	"whorl/patterns/fault"
)

// synonyms are words that people write for what is called otherwise here.
var synonyms = map[string]string{
	"name": "title", "heading": "title",
	"author": "designer", "by": "designer", "maker": "designer",
	"terminology": "terms", "abbreviations": "terms", "language": "terms",
	"circumference": "head", "fits": "head", "negative ease": "ease",
	"swatch": "gauge", "needle": "hook", "needles": "hook",
	"colour": "yarn", "color": "yarn", "materials": "yarn", "wool": "yarn", "thread": "yarn",
	"special stitches": "stitches", "special": "stitches", "definitions": "stitches",
	"pieces": "parts", "sections": "parts", "pattern": "parts",
	"instructions": "text", "words": "text", "directions": "text", "steps": "text",
	"direction": "worked", "method": "worked",
	"begun": "from", "start": "from", "onto": "from",
	"charts": "pictures", "images": "pictures", "figures": "pictures", "diagrams": "pictures",
	"type": "draw", "kind": "draw", "show": "draw",
	"piece": "part", "section": "part", "pixels": "width", "page": "paper", "format": "paper",
	"content": "fibre", "material": "fibre", "meterage": "length", "yardage": "length",
	"skein": "ball", "hank": "ball", "shade": "colour", "thickness": "weight",

	"circle": "round", "circular": "round", "whole": "round", "chart": "round", "rounds": "round",
	"slice": "wedge", "repeat": "wedge", "segment": "wedge", "section chart": "wedge",
	"row": "rows", "flat": "rows", "strip": "rows", "square": "panel",
	"measurements": "schematic", "outline": "schematic", "profile": "shaping", "crown": "shaping",
	"pattern text": "writeup", "write-up": "writeup", "text": "writeup", "pdf": "writeup",
}

// nearest is the known word that a written one most probably means: a synonym,
// or the one with the fewest letters wrong. It is "" where none is near.
func nearest(written string, known []string) string {
	w := strings.ToLower(strings.TrimSpace(written))
	n := utf8.RuneCountInString(w)
	if n == 0 || n > 60 {
		return ""
	}
	if s, ok := synonyms[w]; ok {
		for _, k := range known {
			if strings.EqualFold(k, s) {
				return k
			}
		}
	}
	return fault.Nearest(w, known)
}
