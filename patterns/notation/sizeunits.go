package notation

import (
	"regexp"
	"strconv"
	"strings"
)

// sizeUnits are the units that sizes are told in, by every way they are written.
var sizeUnits = map[string]string{
	"w": "week", "wk": "week", "wks": "week", "week": "week", "weeks": "week",
	"m": "month", "mo": "month", "mos": "month", "mth": "month", "mths": "month", "mnth": "month", "mnths": "month", "month": "month", "months": "month",
	"y": "year", "yr": "year", "yrs": "year", "year": "year", "years": "year",
	"cm": "cm", "cms": "cm", "centimetre": "cm", "centimetres": "cm", "centimeter": "cm", "centimeters": "cm",
	"in": "inch", "ins": "inch", "inch": "inch", "inches": "inch", `"`: "inch", "″": "inch", "”": "inch",
}

// inUnits is an age or a length that is a size: "3 mos", "3–6 months", "6-month", "18 inches", "6 months old".
var inUnits = regexp.MustCompile(`^(?:ages? )?([0-9.¼½¾]+|[a-z]+)(?: ?(?:-|–|—|/) ?([0-9.¼½¾]+)| to ([0-9.¼½¾]+|[a-z]+))?[ -]?([a-z]+|["″”])?\.?(?: olds?)?$`)

// unitsOf is a size that is an age or a length, by its numbers and its unit, however these are
// written. The unit is "" where none is said; without numbers the words are no such size.
func unitsOf(name string) (numbers, unit string) {
	m := inUnits.FindStringSubmatch(strings.ToLower(strings.TrimSpace(name)))
	if m == nil {
		return "", ""
	}
	if unit = sizeUnits[m[4]]; unit == "" && m[4] != "" {
		return "", ""
	}
	for _, n := range m[1:4] {
		if w := numberWords[n]; w > 0 {
			n = strconv.Itoa(w)
		}
		if n == "" {
			continue
		}
		if n[0] >= 'a' && n[0] <= 'z' {
			return "", ""
		}
		numbers += n + " "
	}
	return numbers, unit
}

// sizeInUnits is the one size of the same numbers and unit as a name, the "3 mos" of "3 months"; "" for
// none. A number alone may also be the place of a size among them: where that is another, it is none.
func (p *parser) sizeInUnits(name string) (found string) {
	numbers, unit := unitsOf(name)
	if numbers == "" {
		return ""
	}
	for i, s := range p.sizes {
		n, u := unitsOf(s)
		if n != numbers || unit != "" && u != unit {
			continue
		}
		if place, _ := strconv.Atoi(strings.TrimSpace(n)); found != "" || unit == "" && place > 0 && place <= len(p.sizes) && place != i+1 {
			return ""
		}
		found = s
	}
	return found
}

// unitBehind gives each name of a list that is a number alone the unit of those behind it, the
// months of "6, 9 and 12 months".
func unitBehind(names []string) []string {
	behind := ""
	for i := len(names) - 1; i >= 0; i-- {
		numbers, unit := unitsOf(names[i])
		switch {
		case numbers == "":
			behind = ""
		case unit != "":
			behind = unit
		case behind != "":
			names[i] = strings.TrimSpace(names[i]) + " " + behind
		}
	}
	return names
}
