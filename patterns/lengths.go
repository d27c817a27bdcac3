package patterns

import (
	"fmt"
	"math"
	"strconv"
)

// readMeasures reads a list of lengths:
//
//	lengths = list { "/" list }            the same again in another unit
//	list    = item { mark item } | item "(" item { mark item } ")" [ unit ]
//	item    = number [ unit ]
//	mark    = "," | "/"
func readMeasures(text string) ([]measure, *misread) {
	tokens, bad := scanLengths(text)
	if bad != nil {
		return nil, bad
	}
	if len(tokens) == 0 {
		return nil, &misread{0, 1, "a length is missing", unitsKnown}
	}
	first, again := splitRestated(tokens)
	list, bad := readList(first)
	if bad != nil || again == nil {
		return list, bad
	}
	other, bad := readAgain(again)
	if bad != nil {
		return nil, bad
	}
	return list, agree(list, other)
}

// readAgain reads the second statement of a list with the mark before it: a
// slash, or brackets around it.
func readAgain(tokens []token) ([]measure, *misread) {
	if tokens[0].symbol == open && tokens[len(tokens)-1].symbol == shut {
		tokens = tokens[1 : len(tokens)-1]
	} else if tokens[0].symbol == slash {
		tokens = tokens[1:]
	}
	if len(tokens) == 0 {
		return nil, &misread{0, 1, "a length is missing", unitsKnown}
	}
	return readList(tokens)
}

// splitRestated divides "41 (50, 56) cm / 16 (19½, 22) in" or "10 cm (4 in)"
// into its two statements, the second with the mark before it. There is one
// only where the units change once, from the first to another, at a slash or
// bracket that is not inside brackets.
func splitRestated(tokens []token) (first, again []token) {
	lastUnit := -1 // the last of the first unit
	for i, t := range tokens {
		if t.symbol != unit {
			continue
		}
		if lastUnit >= 0 && t.unit != tokens[lastUnit].unit {
			break
		}
		lastUnit = i
	}
	depth := 0
	for i, t := range tokens {
		switch {
		case i > lastUnit && depth == 0 && (t.symbol == slash || t.symbol == open):
			if lastUnit >= 0 && restates(tokens[i:], tokens[lastUnit].unit) {
				return tokens[:i], tokens[i:]
			}
			return tokens, nil
		case t.symbol == open:
			depth++
		case t.symbol == shut:
			depth--
		}
	}
	return tokens, nil
}

// restates reports whether tokens have a unit, and all another than that.
func restates(tokens []token, than string) bool {
	found := false
	for _, t := range tokens {
		if t.symbol == unit {
			if t.unit == than {
				return false
			}
			found = true
		}
	}
	return found
}

// agree compares the two statements of a list. Both may be rounded: a
// difference of 3 mm and 2 % is let pass (4 in = 10 cm, 16 in = 41 cm).
func agree(list, again []measure) *misread {
	if len(list) != len(again) {
		return &misread{again[0].at, again[0].length,
			fmt.Sprintf("%d lengths in %s but %d in %s", len(list), list[0].Unit, len(again), again[0].Unit),
			"Leave out one of the two: both units are given in the pictures."}
	}
	for i, a := range list {
		b := again[i]
		if math.Abs(a.MM-b.MM) > 3+0.02*math.Abs(a.MM) {
			return &misread{b.at, b.length, fmt.Sprintf("%s and %s are not the same length", a.Length, b.Length),
				"Correct one of the two or leave it out: both units are given in the pictures."}
		}
	}
	return nil
}

// String is the length in its own unit, to a hundredth: "41 cm", "19.5 in".
func (l Length) String() string {
	per := millimetres[l.Unit]
	if per == 0 {
		return strconv.FormatFloat(l.MM, 'f', -1, 64) + " mm"
	}
	return strconv.FormatFloat(math.Round(100*l.MM/per)/100, 'f', -1, 64) + " " + l.Unit
}

// listReader walks the tokens of one list.
type listReader struct {
	tokens []token
	i      int
}

func (l *listReader) is(s symbol) bool {
	return l.i < len(l.tokens) && l.tokens[l.i].symbol == s
}

// expected is the fault at the present token.
func (l *listReader) expected(message string) *misread {
	t := l.tokens[min(l.i, len(l.tokens)-1)]
	return &misread{t.at, t.length, message, unitsKnown}
}

func readList(tokens []token) ([]measure, *misread) {
	l := &listReader{tokens: tokens}
	var list []item
	var bad *misread
	behind := "" // the unit behind the brackets
	if !l.is(open) {
		if list, bad = l.items(list); bad != nil {
			return nil, bad
		}
	}
	if l.is(open) && len(list) <= 1 {
		l.i++
		if list, bad = l.items(list); bad != nil {
			return nil, bad
		}
		if !l.is(shut) {
			return nil, l.expected("the bracket is not closed")
		}
		l.i++
		if l.is(unit) {
			behind = l.tokens[l.i].unit
			l.i++
		}
	}
	if l.i < len(tokens) {
		return nil, l.expected("this does not fit into a list of lengths")
	}
	return inUnits(list, behind)
}

// item is a length as written, its unit "" where it has none.
type item struct {
	value      float64
	unit       string
	at, length int
}

// items reads lengths with marks between them.
func (l *listReader) items(list []item) ([]item, *misread) {
	for {
		if !l.is(number) {
			return nil, l.expected("a number is missing here")
		}
		n := l.tokens[l.i]
		it := item{value: n.value, at: n.at, length: n.length}
		l.i++
		if l.is(unit) {
			u := l.tokens[l.i]
			it.unit, it.length = u.unit, u.at+u.length-it.at
			l.i++
		}
		list = append(list, it)
		if !l.is(comma) && !l.is(slash) {
			return list, nil
		}
		l.i++
	}
}

// inUnits gives every item its unit: its own, the one behind the whole list,
// or the only one there is.
func inUnits(list []item, behind string) ([]measure, *misread) {
	only, mixed, bare := behind, false, false
	for _, it := range list {
		switch {
		case it.unit == "":
			bare = true
		case only == "":
			only = it.unit
		case only != it.unit:
			mixed = true
		}
	}
	first, last := list[0], list[len(list)-1]
	if only == "" {
		return nil, &misread{first.at, last.at + last.length - first.at, "the unit is missing", unitsKnown}
	}
	if mixed && bare {
		return nil, &misread{first.at, last.at + last.length - first.at, "the units are mixed",
			"Write the unit behind each number, or one unit behind the whole list."}
	}
	m := make([]measure, len(list))
	for i, it := range list {
		u := it.unit
		if u == "" {
			u = only
		}
		m[i] = measure{Length{it.value * millimetres[u], u}, it.at, it.length}
		if math.Abs(m[i].MM) > MaxLength {
			return nil, &misread{it.at, it.length,
				fmt.Sprintf("%s is longer than %g m", m[i].Length, MaxLength/1000), "Check the number and its unit."}
		}
	}
	return m, nil
}
