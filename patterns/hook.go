package patterns

import (
	"math"
	"regexp"
	"strconv"
	"strings"
)

// hooks are the US sizes of hooks by their diameter in millimetres.
//
// Source: two published conversion tables that agree, the Craft Yarn Council's
// among those behind them.
var hooks = []struct {
	mm float64
	us string
}{
	{2.25, "B/1"}, {2.75, "C/2"}, {3.25, "D/3"}, {3.5, "E/4"}, {3.75, "F/5"}, {4, "G/6"}, {4.5, "7"}, {5, "H/8"},
	{5.5, "I/9"}, {6, "J/10"}, {6.5, "K/10½"}, {8, "L/11"}, {9, "M/13"}, {10, "N/15"},
}

var (
	hookMM = regexp.MustCompile(`(?i)(\d+(?:[.,]\d+)?)\s*mm\b`)
	hookUS = regexp.MustCompile(`\b([B-N])\s*[-/]\s*(\d+)`)
)

// HookSizes completes the words for a hook with what they leave out: its US size
// where they give millimetres, its millimetres where they give a US size. Words
// that give both, or a size that the tables do not have, come back as they are.
func HookSizes(words string) string {
	mm, us := hookMM.FindStringSubmatch(words), hookUS.FindStringSubmatch(words)
	switch {
	case mm != nil && us == nil && !strings.Contains(strings.ToUpper(words), "US"):
		size, err := strconv.ParseFloat(strings.Replace(mm[1], ",", ".", 1), 64)
		for _, h := range hooks {
			if err == nil && math.Abs(h.mm-size) < 0.01 {
				return strings.Replace(words, mm[0], mm[0]+" (US "+h.us+")", 1)
			}
		}
	case us != nil && mm == nil:
		for _, h := range hooks {
			if strings.TrimSuffix(h.us, "½") == us[1]+"/"+us[2] {
				return words + " (" + strconv.FormatFloat(h.mm, 'f', -1, 64) + " mm)"
			}
		}
	}
	return words
}
