package geometry

import "strings"

// Head is a head of a named size.
type Head struct {
	Name          string
	Circumference float64 // mm
	Source        string
}

const (
	council = "Craft Yarn Council, Standards & Guidelines, value from memory"
	guides  = "published hat guides"
	growth  = "WHO Child Growth Standards 2007, mean of the medians of boys and girls, values from memory"
)

var heads = []Head{
	{"Newborn", 342, growth},
	{"3 Months", 400, growth},
	{"6 Months", 427.5, growth},
	{"12 Months", 455, growth},
	{"2 Years", 477.5, growth},
	{"5 Years", 503, growth},
	{"Preemie", 12 * 25.4, council},
	{"Baby", 14 * 25.4, council},
	{"Toddler", 16 * 25.4, council},
	{"Child", 18 * 25.4, council},
	{"Woman", 20 * 25.4, council},
	{"Man", 22 * 25.4, council},
	{"Adult Small", 21 * 25.4, guides},
	{"Adult Medium", 22 * 25.4, guides},
	{"Adult Large", 23 * 25.4, guides},
}

// Heads is the table of head sizes that have a name, in a fixed order. The
// tables that they are from do not agree with one another: those by age are of
// measured children, those of the yarn trade are rounder and smaller.
func Heads() []Head { return append([]Head(nil), heads...) }

// HeadNamed is the head of that name; capitals do not matter.
func HeadNamed(name string) (Head, bool) {
	for _, h := range heads {
		if strings.EqualFold(h.Name, strings.Join(strings.Fields(name), " ")) {
			return h, true
		}
	}
	return Head{}, false
}
