package patterns

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"
)

// Caution is something that can hurt whoever wears a piece, in one sentence that
// defers to the safety rules where it is worn or sold.
type Caution struct {
	Code    string // "sleep", "cords" or "small-parts"
	Message string
	// Source is the rule behind the caution, and how it is known.
	Source string
}

// Cautions are the usual cautions that a pattern needs, none for most. Hats in
// sizes for babies have one about sleep; sizes for babies or small children,
// and words that add them, have one about cords and one about small parts. A
// size is for a baby or a small child by its name, by the age in it, by the
// title or by its head.
func Cautions(p *Pattern) []Caution {
	babies, small := p.young()
	words := stitchNames.ReplaceAllString(p.allWords(), "")
	var l []Caution
	add := func(code, source, format string, a ...any) {
		l = append(l, Caution{code, fmt.Sprintf(format, a...) + ", and follow the safety rules where it is worn or sold.", source})
	}
	if babies.any && p.isHat() {
		add("sleep", "American Academy of Pediatrics, safe-sleep recommendations 2022 (from memory)",
			"A hat can slip over the face of a sleeping baby, or make the baby too warm: take it off before sleep%s", babies.named())
	}
	switch found := added(cords, words); {
	case len(found) > 0:
		add("cords", "EN 14682 (from memory)",
			"The %s can catch, or pull tight round the neck: leave off whatever hangs or ties where a baby or small child wears it%s", listed(found), small.named())
	case small.any:
		add("cords", "EN 14682 (from memory)",
			"Cords and ties can catch, or pull tight round the neck: add none where a baby or small child wears it%s", small.named())
	}
	switch found := added(smallParts, words); {
	case len(found) > 0:
		add("small-parts", "EN 71 and 16 CFR 1501 (from memory)",
			"The %s can come off and choke a child: sew on firmly what is added, keep it off hats and toys for children under three%s", listed(found), small.named())
	case small.any:
		add("small-parts", "EN 71 and 16 CFR 1501 (from memory)",
			"Pom-poms, buttons and beads can come off and choke a child: sew on firmly what is added, keep it off hats and toys for children under three%s", small.named())
	}
	return l
}

// wearers are the sizes for wearers of an age.
type wearers struct {
	any   bool
	sizes []string
}

// named names the sizes in brackets, behind the words they are about.
func (w wearers) named() string {
	switch len(w.sizes) {
	case 0:
		return ""
	case 1:
		return " (size " + w.sizes[0] + ")"
	}
	return " (sizes " + listed(w.sizes) + ")"
}

// The largest heads that are taken for a baby's and a small child's: the
// medians of boys at 12 and at 60 months (WHO Child Growth Standards, head
// circumference-for-age, 2007; values from memory).
const (
	babyHead  = 461 // mm
	smallHead = 507
)

// young are the sizes for babies, and those for babies and small children.
func (p *Pattern) young() (babies, small wearers) {
	add := func(name string, baby bool) {
		if small.any = true; name != "" {
			small.sizes = append(small.sizes, name)
		}
		if !baby {
			return
		}
		if babies.any = true; name != "" {
			babies.sizes = append(babies.sizes, name)
		}
	}
	for i, name := range p.Sizes {
		baby, child := ageIn(name)
		if i < len(p.Head) && p.Head[i].MM > 0 {
			baby = baby || p.Head[i].MM <= babyHead
			child = child || p.Head[i].MM <= smallHead
		}
		if baby || child {
			add(name, baby)
		}
	}
	if baby, child := ageIn(p.Title); !small.any && (baby || child) {
		add("", baby)
	}
	return babies, small
}

var (
	babyWords  = regexp.MustCompile(`(?i)\b(bab(y|ies)|newborns?|preemies?|premature|preterm|infants?|nb)\b`)
	childWords = regexp.MustCompile(`(?i)\b(toddlers?|tots?|child(ren)?|kids?|boys?|girls?|preschool\w*)\b`)
	ages       = regexp.MustCompile(`(?i)\b(\d+)(\s*(?:-|–|—|to)\s*\d+)?\s*(w|wks?|weeks?|m|mos?|mths?|months?|t|y|yrs?|years?)\b`)
)

// ageIn tells whether a name is that of a baby's size or of a small child's,
// up to seven years, which is where cords at the neck are ruled out (EN 14682,
// from memory). An age says more than a word.
func ageIn(name string) (baby, child bool) {
	if m := ages.FindStringSubmatch(name); m != nil {
		from, _ := strconv.Atoi(m[1])
		switch m[3][0] | 0x20 {
		case 'w':
			return true, true
		case 'm':
			baby = from < 12 || from == 12 && m[2] == ""
			return baby, from < 7*12
		}
		return from == 0, from < 7
	}
	baby = babyWords.MatchString(name)
	return baby, baby || childWords.MatchString(name)
}

var hatWords = regexp.MustCompile(`(?i)\b(hats?|caps?|bonnets?|beanies?|berets?|hoods?|helmets?)\b`)

// isHat reports whether the piece is worn on the head.
func (p *Pattern) isHat() bool {
	if len(p.Head) > 0 || hatWords.MatchString(p.Title) {
		return true
	}
	for _, q := range p.Parts {
		if hatWords.MatchString(q.Name) {
			return true
		}
	}
	return false
}

// allWords are all words of the pattern but its title, which may be any name,
// one passage a line.
func (p *Pattern) allWords() string {
	all := []string{strings.Join(strings.Fields(p.Notes), " ")}
	for _, d := range p.Stitches {
		all = append(all, strings.Join(d.Words.Lines, " "))
	}
	for _, q := range p.Parts {
		// A part is named for what it is: "Tie" is no verb there.
		all = append(all, "the "+q.Name, strings.Join(q.Text.Lines, " "))
	}
	return strings.Join(all, "\n")
}

// stitchNames are stitches and yarns that are called after what can be added.
var stitchNames = regexp.MustCompile(`(?i)\b(beads?|braid|button|ribbon|pom-?pom|tassel|cord)\s+(sts?|stitch(es)?|cables?|ribs?|yarns?)\b`)

// addition is a thing that can be added to a piece, and the words that tell.
type addition struct {
	name  string
	words *regexp.Regexp
}

var cords = []addition{
	{"ties", regexp.MustCompile(`(?i)\b(ties|(a|each|one|first|second|other|neck|chin|ear|earflap|back|front|make|the) tie|tie:|tied? (it |them )?(under|at|behind|round|around) (the |your )?(chin|neck|ears?|head))\b`)},
	{"cords", regexp.MustCompile(`(?i)\b(i-)?cords?\b`)},
	{"drawstrings", regexp.MustCompile(`(?i)\bdraw[ -]?(strings?|cords?)\b`)},
	{"braids", regexp.MustCompile(`(?i)\b(braids?|plaits?)\b`)},
	{"tassels", regexp.MustCompile(`(?i)\btassels?\b`)},
	{"ribbons", regexp.MustCompile(`(?i)\bribbons?\b`)},
	{"chin straps", regexp.MustCompile(`(?i)\bchin[ -]?straps?\b`)},
}

var smallParts = []addition{
	{"pom-poms", regexp.MustCompile(`(?i)\bpom[ -]?po[mn]s?\b`)},
	{"tassels", regexp.MustCompile(`(?i)\btassels?\b`)},
	{"buttons", regexp.MustCompile(`(?i)\bbutton(s|holes?|bands?)?\b`)},
	{"toggles", regexp.MustCompile(`(?i)\btoggles?\b`)},
	{"beads", regexp.MustCompile(`(?i)\bbead(s|ed)?\b`)},
	{"sequins", regexp.MustCompile(`(?i)\bsequins?\b`)},
	{"bells", regexp.MustCompile(`(?i)\bjingle bells?\b`)},
	{"safety eyes", regexp.MustCompile(`(?i)\b(safety|toy|plastic|glass) (eyes?|noses?)\b`)},
}

// added are the names of the things that the words speak of.
func added(l []addition, words string) (names []string) {
	for _, a := range l {
		if a.words.MatchString(words) {
			names = append(names, a.name)
		}
	}
	return names
}
