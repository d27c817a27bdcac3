package patterns

import "strings"

// slits are what a gap is called that stitches were passed over for.
var slits = []string{"opening", "hole", "gap", "slit"}

// Slit reports whether what a part is worked from is named as a slit: "Hand thumb
// opening".
func Slit(from string) bool {
	from = strings.ToLower(from)
	for _, s := range slits {
		if strings.Contains(from, s) {
			return true
		}
	}
	return false
}

// Base is which of the parts before number i the words behind from: name, counted
// from 0, and the rest of these words: "Brim row ends", "lower edge of Sides", "top of
// the squares". It is -1 where they name none.
func (p *Pattern) Base(i int, from string) (on int, rest string) {
	return base(p.Parts[:min(i, len(p.Parts))], from)
}

func base(before []Part, from string) (on int, rest string) {
	from = strings.ToLower(from)
	on = -1
	best := 0
	for i := range before {
		name := strings.ToLower(before[i].Called())
		at := strings.Index(from, name)
		if name == "" || at < 0 {
			continue
		}
		// The longest name counts, at the beginning rather than further on.
		if worth := 2 * len(name); at == 0 && worth+1 >= best || worth >= best {
			on, best = i, worth
			if rest = from[:at] + from[at+len(name):]; at == 0 {
				best++
			}
		}
	}
	if on >= 0 {
		return on, strings.TrimSpace(rest)
	}
	// "the four upper squares" for a part called Granny square
	for i := len(before) - 1; i >= 0; i-- {
		words := strings.Fields(strings.ToLower(before[i].Called()))
		if len(words) == 0 {
			continue
		}
		last := strings.TrimSuffix(words[len(words)-1], "s")
		for _, w := range strings.Fields(from) {
			if len(last) > 3 && strings.TrimSuffix(w, "s") == last {
				return i, from
			}
		}
	}
	return -1, from
}
