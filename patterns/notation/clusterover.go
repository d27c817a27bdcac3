package notation

import (
	"regexp"
	"strings"

	"whorl/patterns/stitch"
)

// asMany are the words of a cluster over as many stitches as are named where it is worked: "1 dc in each
// of the stitches named, leaving the last loop of each on the hook".
var asMany = regexp.MustCompile(`(?:\b(?:1 ?|one |an? )|\bwork |\bmake )([a-z][a-z. ]*?) (?:in|into|over) each (?:of )?(?:the )?` +
	`(?:(?:given|stated|required|named|indicated) )?(?:next )?(?:number of )?(?:(?:given|stated|required|named|indicated) )?(?:sts?|stitch(?:es)?|places)\b\.?` +
	`(?: (?:given|named|indicated|stated|specified|required|mentioned|called for|asked for|told))?`)

// ClusterOver is the cluster that words in small letters tell of, over as many stitches as
// are named where it is worked: it has no legs of its own. It is false for other words.
func (v *Vocabulary) ClusterOver(words string) (stitch.Kind, bool) {
	m := asMany.FindStringSubmatch(words)
	if m == nil || !strings.Contains(words, "last loop") && !strings.Contains(words, "last lp") || !numberElsewhere.MatchString(m[0]) {
		return stitch.Kind{}, false
	}
	k, into, ok := v.Stitch(strings.TrimRight(m[1], "."))
	if !ok || into != stitch.Top || k.Shape != stitch.Plain || k.Base < stitch.Single {
		return stitch.Kind{}, false
	}
	return stitch.Tog(k.Base, 0), true
}

// numberElsewhere are the words that leave the number to where the cluster is worked.
var numberElsewhere = regexp.MustCompile(`given|named|indicated|stated|specified|required|mentioned|called for|asked for|told|number of`)
