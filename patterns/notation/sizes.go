package notation

import (
	"slices"
	"strings"
)

// sizeGroup are the sizes that words such as "two largest", "smallest" and "all
// but largest" stand for; nil for any other words.
func (p *parser) sizeGroup(words string) []string {
	but, n, largest, known := false, 1, false, false
	for _, w := range strings.Fields(words) {
		switch {
		case w == "the" || w == "all":
		case w == "but" || w == "except":
			but = true
		case w == "largest" || w == "biggest":
			largest, known = true, true
		case w == "smallest":
			known = true
		case numberWords[w] > 0:
			n = numberWords[w]
		case len(w) == 1 && w[0] > '0' && w[0] <= '9':
			n = int(w[0] - '0')
		default:
			return nil
		}
	}
	if !known || n >= len(p.sizes) {
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
