package working

import (
	"regexp"

	"whorl/patterns/notation"
	"whorl/patterns/stitch"
)

// behindPetals is advice that the round is worked behind what stands out of the round below:
// "working behind the petals".
var behindPetals = regexp.MustCompile(`(?i)\b(behind|in back of|at the back of|in front of) (the |all |each of the |next |first )*[\pL-]*(petal|shell|fan|scallop|leaf|leaves|ruffle|frill|flower|rose|point|loop|cluster)`)

// worksBehind reports whether the words of the round say that it is worked behind petals.
func (w *roundWork) worksBehind() bool {
	for _, it := range w.items {
		if n, ok := it.(*notation.Note); ok && behindPetals.MatchString(n.Text) {
			return true
		}
	}
	return false
}

// betweenPetals reports whether the round, worked behind petals, goes into all of the
// stitches between them: those it leaves are of kinds that it goes into nowhere.
func (w *roundWork) betweenPetals() bool {
	if !w.worksBehind() {
		return false
	}
	into, left := map[stitch.Kind]bool{}, map[stitch.Kind]bool{}
	for i := range w.c.spots {
		if s := &w.c.spots[i]; s.counts && s.use == worked {
			into[s.st.Counted()] = true
		} else if s.counts {
			left[s.st.Counted()] = true
		}
	}
	for k := range left {
		if into[k] {
			return false
		}
	}
	return len(into) > 0
}
