package working

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"

	"whorl/patterns/fabric"
	"whorl/patterns/notation"
)

// byRound is what a part is worked from where a round of another is named: "Coaster Round 3", "row 10
// of the Band".
var byRound = regexp.MustCompile(`^(?:the )?(?:of )?(?:rounds?|rnds?|rows?|r) ?(\d+)(?: of(?: the)?)?$`)

// continueFromRound begins the part on a round of another that is not its last: a line of surface
// stitches, what goes into loops left free. It reports whether one is named: behind the name of that part,
// or by all places of the first words that make anything.
func (p *partWork) continueFromRound(on int, rest string, at notation.Span) bool {
	base := p.f.Parts[on]
	if len(base.Rounds) == 0 {
		return false
	}
	said := 0
	if m := byRound.FindStringSubmatch(rest); m != nil {
		said, _ = strconv.Atoi(m[1])
	}
	named := p.firstNamedRound()
	n := said
	if n == 0 {
		n = named
	}
	if n == 0 {
		return false
	}
	i := slices.IndexFunc(base.Rounds, func(r *fabric.Round) bool { return r.Number == n && !r.Carried })
	switch {
	case i < 0 && said == 0, i == len(base.Rounds)-1 && said == 0:
		return false
	case i < 0:
		p.add(p.fault(at, "no-round", fmt.Sprintf("%s has no round %d", base.Name, n), "Name one of its rounds, or leave the number out for the last."), true)
		return true
	case said > 0 && named > 0 && named != said:
		p.add(p.fault(at, "no-round", fmt.Sprintf("the part is worked on round %d of %s, and its words go into round %d", said, base.Name, named), "Let the two agree."), true)
		return true
	}
	p.standOnRound(on, base.Rounds[i])
	return true
}

// firstNamedRound is the number of the round that all places name in the first words of the part that
// make anything, 0 where they name none or several.
func (p *partWork) firstNamedRound() int {
	for _, r := range p.texts[p.index].Rounds {
		if needsPlaces(r.Items) && !onlyPlaces(r.Items) {
			if n, ok := namedRound(r.Items, 0); ok {
				return n
			}
			return 0
		}
	}
	return 0
}
