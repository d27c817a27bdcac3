package working

import (
	"fmt"
	"strings"

	"whorl/patterns/notation"
	"whorl/patterns/stitch"
)

// halt is why a round cannot be worked on: a fault that has not got its file,
// size and round yet. It is passed up as an ordinary return value; nil is all
// well.
type halt struct {
	at      notation.Span
	code    string
	message string
	help    string
	// known is set when the fault has been reported already, elsewhere.
	known bool
	// out is set when the round below ran out of places.
	out bool
}

func stopAt(at notation.Span, code, message, help string) *halt {
	return &halt{at: at, code: code, message: message, help: help}
}

// plural is "1 stitch", "5 stitches".
func plural(n int, one string) string {
	if n == 1 {
		return "1 " + one
	}
	many := one + "s"
	if strings.HasSuffix(one, "ch") {
		many = one + "es"
	}
	return fmt.Sprintf("%d %s", n, many)
}

// named is what a target is called when there are none of it.
func named(t *notation.Target, terms stitch.Terms) string {
	switch t.Sort {
	case notation.ChainSpace:
		if t.Chains > 0 {
			return fmt.Sprintf("ch-%d sps", t.Chains)
		}
		return "ch sps"
	case notation.ChainStitch:
		return "chains"
	case notation.OfKind, notation.OfShape:
		if t.Name == notation.Post {
			switch {
			case !t.Loop.Set:
				return "post sts"
			case t.Loop.Into == stitch.BackPost:
				return "back post sts"
			}
			return "front post sts"
		}
		if t.Loop.Set {
			return t.Kind.NameInto(t.Loop.Into, terms)
		}
		if t.Sort == notation.OfShape && t.Kind.Base == stitch.None {
			return "cluster"
		}
		return t.Kind.Name(terms)
	case notation.OfName:
		if t.Name == "" {
			return "groups"
		}
		return t.Name + "s"
	}
	return "stitches"
}

// listed joins words with commas and an "and".
func listed(words []string, and string) string {
	switch n := len(words); n {
	case 0:
		return ""
	case 1:
		return words[0]
	default:
		return strings.Join(words[:n-1], ", ") + " " + and + " " + words[n-1]
	}
}
