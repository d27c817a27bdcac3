package notation

import (
	"regexp"
	"slices"
	"strings"
)

// sizeGroup are the sizes that words such as "two largest", "smallest" and "all
// but largest" stand for; nil for any other words.
func (p *parser) sizeGroup(words string) []string {
	but, n, largest, known := false, 1, false, false
	than, told := false, false // "two larger"; without a number, the one of two
	for _, w := range strings.Fields(words) {
		switch {
		case w == "the" || w == "all":
		case w == "but" || w == "except":
			but = true
		case w == "largest" || w == "biggest":
			largest, known = true, true
		case w == "smallest":
			known = true
		case w == "larger" || w == "bigger":
			largest, known, than = true, true, true
		case w == "smaller":
			known, than = true, true
		case numberWords[w] > 0:
			n, told = numberWords[w], true
		case len(w) == 1 && w[0] > '0' && w[0] <= '9':
			n, told = int(w[0]-'0'), true
		default:
			return nil
		}
	}
	if !known || n >= len(p.sizes) || than && !told && len(p.sizes) != 2 {
		return nil
	}
	cut := n
	if largest {
		cut = len(p.sizes) - n
	}
	if largest != but {
		return p.sizes[cut:]
	}
	return p.sizes[:cut]
}

// spread makes the numbers for the sizes that a round is for a list for all
// sizes, with none for the others.
func (p *parser) spread(values []int) []int {
	all := make([]int, len(p.sizes))
	at := 0
	for i, s := range p.sizes {
		if slices.Contains(p.forSizes, s) && at < len(values) {
			all[i] = values[at]
			at++
		}
	}
	return all
}

// butWords stand before the sizes that are left out: "all sizes except Baby".
var butWords = []string{"except", "but", "bar", "excluding", "besides", "other", "apart", "save"}

var (
	butSizes = regexp.MustCompile(`^(?:all |every |the )*(?:sizes? )?(except|but|bar|excluding|besides|other than|apart from|save|not|omit|skip|(?:do not|don't) work(?: this (?:round|rnd|row))?|not worked)(?: for| in| on)?(?: the)?(?: sizes?)? (.+?)(?: sizes?)?(?: only)?$`)
	fromSize = regexp.MustCompile(`^(?:from )?(?:sizes? )?(.+?)(?: size)? (?:and|&) (?:all )?(up|upwards?|over|above|larger|bigger|down|under|below|smaller)(?: sizes)?(?: only)?$`)
	// The names of sizes may have a dash in them themselves: "3-6 months to Toddler".
	sizeRanges = []*regexp.Regexp{
		regexp.MustCompile(`^(?:from )?(?:sizes? )?(.+?)(?: to | through )(.+?)(?: sizes?)?(?: only)?$`),
		regexp.MustCompile(`^(?:from )?(?:sizes? )?(.+?) [-–—] (.+?)(?: sizes?)?(?: only)?$`),
		regexp.MustCompile(`^(?:from )?(?:sizes? )?(.+?) ?[-–—] ?(.+?)(?: sizes?)?(?: only)?$`),
	}
)

// sizesButOrFrom are the sizes that words name by those they leave out, or by where they
// begin or end: "all sizes except Baby", "Child and up", "M to XL". Nil for other words;
// unknown is a name among them that is of no size.
func (p *parser) sizesButOrFrom(words string) (sizes []string, unknown string) {
	bare := strings.TrimSuffix(words, " only")
	if len(p.sizes) < 2 || p.sizeNamed(words) != "" || p.sizeNamed(strings.TrimPrefix(bare, "size ")) != "" {
		return nil, "" // "size 3-6m" is one
	}
	if group := p.sizeGroup(strings.TrimSuffix(strings.TrimSuffix(bare, " size"), " sizes")); group != nil {
		return group, ""
	}
	if m := butSizes.FindStringSubmatch(words); m != nil {
		left, unknown := p.namesOfSizes(m[2])
		if unknown != "" {
			if m[1] == "not" || m[1] == "omit" || m[1] == "skip" || strings.Contains(m[1], "work") {
				return nil, ""
			}
			return nil, unknown
		}
		for _, s := range p.sizes {
			if !slices.Contains(left, s) {
				sizes = append(sizes, s)
			}
		}
		return sizes, ""
	}
	at := func(name string) int { return slices.Index(p.sizes, p.sizeNamed(strings.TrimSpace(name))) }
	if m := fromSize.FindStringSubmatch(words); m != nil {
		if i := at(m[1]); i >= 0 && (m[2][0] == 'd' || m[2] == "under" || m[2] == "below" || m[2] == "smaller") {
			return p.sizes[:i+1], ""
		} else if i >= 0 {
			return p.sizes[i:], ""
		}
	}
	for _, between := range sizeRanges {
		if m := between.FindStringSubmatch(words); m != nil {
			ends := unitBehind(m[1:3])
			if i, j := at(ends[0]), at(ends[1]); i >= 0 && j > i {
				return p.sizes[i : j+1], ""
			}
		}
	}
	return nil, ""
}

// namesOfSizes are the sizes of a list of their names; unknown is the first that is of
// none.
func (p *parser) namesOfSizes(list string) (sizes []string, unknown string) {
	for _, name := range unitBehind(strings.FieldsFunc(strings.NewReplacer(" and ", ",", " or ", ",", " nor ", ",").Replace(list), func(r rune) bool { return r == ',' || r == '&' || r == '+' })) {
		name = strings.TrimPrefix(strings.TrimSpace(name), "size ")
		switch s := p.sizeNamed(name); {
		case s != "":
			sizes = append(sizes, s)
		case name != "":
			return nil, name
		}
	}
	return sizes, ""
}

// sizesWith are the sizes whose names have a word in them, but not all: "adult" of Child,
// Adult Medium and Adult Large.
func (p *parser) sizesWith(word string) (l []string) {
	for _, s := range p.sizes {
		if slices.Contains(strings.Fields(strings.ToLower(s)), strings.ToLower(strings.TrimSpace(word))) {
			l = append(l, s)
		}
	}
	if len(l) == len(p.sizes) || len(word) < 3 {
		return nil
	}
	return l
}

// digitsOf are the numbers in the name of a size, "3-6" of "3-6 months".
func digitsOf(name string) string {
	return strings.Join(strings.FieldsFunc(name, func(r rune) bool { return !digit(r) }), "-")
}
