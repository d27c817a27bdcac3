package main

import (
	"fmt"
	"regexp"
	"slices"
	"strings"

	"whorl/patterns"
	"whorl/patterns/fabric"
)

// shares tells what of the fabric is worked with each of several yarns.
type shares struct {
	// known is set when the words say it for every stitch; why says what they leave
	// open, and how the colours that they name were taken for the yarns.
	known    bool
	why, how string
	of       map[string]int // the yarn that a colour of the words is, by its index
}

// shares finds the yarns of the file in the colours that the words name. The rounds
// before any colour is named are worked with the first yarn.
func (j *job) shares() shares {
	l := j.pattern.Yarns
	s := shares{of: map[string]int{}}
	var names []string // in the order of the words
	for _, f := range j.fabrics {
		for _, p := range f.Parts {
			for _, r := range p.Rounds {
				if r.Colours && s.why == "" {
					s.why = fmt.Sprintf("the colour changes within %s", r.Label)
				}
				if r.Colour != "" && !slices.Contains(names, r.Colour) {
					names = append(names, r.Colour)
				}
			}
		}
	}
	s.of[""] = 0
	var taken []string
	for _, name := range names {
		i, byOrder := yarnCalled(l, name)
		if i < 0 {
			s.why = fmt.Sprintf("none of the yarns is called %s", name)
			return s
		}
		s.of[name] = i
		if byOrder {
			taken = append(taken, fmt.Sprintf("%s is %s", name, yarnName(&l[i])))
		}
	}
	switch {
	case len(names) == 0:
		s.why = "the words do not say what is worked with which yarn"
	case s.why == "":
		s.known = true
	}
	if s.known && len(taken) > 0 {
		s.how = " In the order of the list, " + strings.Join(taken, ", ") + "."
	}
	return s
}

// yarnCalled is the index of the yarn that the words call by a name, -1 for none:
// one that has it among its facts or, where no yarn has such a name, A, B and C or
// MC and CC in the order of the list.
func yarnCalled(l []patterns.Yarn, name string) (i int, byOrder bool) {
	for i := range l {
		if isCalled(&l[i], name) {
			return i, false
		}
	}
	at := -1
	switch upper := strings.ToUpper(name); {
	case len(upper) == 1 && upper >= "A" && upper <= "Z":
		at = int(upper[0] - 'A')
	case upper == "MC" || upper == "COLOUR" || upper == "COLOR": // the main one
		at = 0
	case upper == "CC" && len(l) == 2:
		at = 1
	}
	if at >= len(l) {
		return -1, false
	}
	return at, at >= 0
}

// isCalled reports whether a yarn has a name of the words among its facts. A letter
// is its name at the beginning of its colour, by itself, in brackets or before a
// colon: "A Chalk", "Chalk (A)", "A: Chalk".
func isCalled(y *patterns.Yarn, name string) bool {
	q := regexp.QuoteMeta(name)
	if len(name) > 2 {
		word := regexp.MustCompile(`(?i)(^|[^\pL])` + q + `([^\pL]|$)`)
		return word.MatchString(y.Colour) || word.MatchString(y.Name) || word.MatchString(y.Words)
	}
	if regexp.MustCompile(`^` + q + `([^\pL]|$)`).MatchString(y.Colour) {
		return true
	}
	letter := regexp.MustCompile(`^` + q + `$|\(` + q + `\)|^` + q + `\s*[:=–]|(?i:yarn|colou?r)\s+` + q + `([^\pL]|$)`)
	return letter.MatchString(y.Colour) || letter.MatchString(y.Name) || letter.MatchString(y.Words)
}

// with reports whether a round is worked with yarn i.
func (s *shares) with(i int, r *fabric.Round) bool { return s.of[r.Colour] == i }
