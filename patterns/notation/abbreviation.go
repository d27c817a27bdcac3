package notation

import (
	"slices"
	"strings"
)

// tradeShort is what abbreviations of the trade that are no stitches stand for, beside those of inFull
// (common practice, no source).
var tradeShort = map[string][]string{
	"mr": {"magic ring", "magic circle", "magic loop", "adjustable ring", "sliding ring"},
	"mc": {"magic circle", "magic ring", "main colour", "main color"},
	"cc": {"contrast colour", "contrast color", "contrasting colour", "contrasting color"},
	"fo": {"fasten off", "finish off"}, "pm": {"place marker"}, "sm": {"stitch marker", "slip marker"},
	"bl": {"back loop", "back loop only"}, "fl": {"front loop", "front loop only"},
	"blo": {"back loop", "back loops only"}, "flo": {"front loop", "front loops only"},
	"yo": {"yarn over hook"}, "yoh": {"yarn over"}, "yrh": {"yarn round hook", "yarn around hook"},
	"rs": {"right side facing"}, "ws": {"wrong side facing"}, "r": {"round", "row"}, "rd": {"round"}, "rds": {"rounds"},
	"tog": {"together"}, "foll": {"following", "follows"}, "cont": {"continue"}, "alt": {"alternate"}, "lp": {"loop"}, "lps": {"loops"},
	"patt": {"pattern"}, "beg": {"begin"}, "rem": {"remain"}, "sk": {"miss"}, "ch sp": {"chain space"}, "ch sps": {"chain spaces"},
	"lh": {"left hand"}, "rh": {"right hand"}, "nxt": {"next"}, "nx": {"next"}, "t ch": {"turning chain"}, "tch": {"turning chain"}, "tc": {"turning chain"},
}

// Abbreviates reports whether words say no more of a name than what it stands for in the trade, where
// that is no stitch: "MR: magic ring", "st(s): stitch(es)". Such a line of a list of abbreviations makes
// nothing.
func Abbreviates(name, words string) bool {
	both := strings.Contains(name, "(s)")
	short := strings.ReplaceAll(Plain(strings.ReplaceAll(name, "(s)", "")), ".", "")
	long := strings.NewReplacer("(es)", "", "(s)", "", "/", " or ").Replace(strings.ToLower(words))
	if first, rest, ok := strings.Cut(long, "("); ok && strings.HasSuffix(strings.TrimRight(rest, ". "), ")") && !strings.ContainsAny(rest, "0123456789") {
		long = first
	}
	all := append([]string{inFull[short]}, tradeShort[short]...)
	if both {
		all = append(all, inFull[short+"s"], inFull[short+"es"])
	}
	if (short == "inc" || short == "dec" || short == "cl" || short == "cls") || all[0] == "" && len(all) == 1 {
		return false // those are stitches, or no words of the trade
	}
	for _, one := range strings.Split(long, " or ") {
		one = strings.Trim(Plain(one), " .;,")
		one = strings.TrimPrefix(strings.TrimPrefix(one, "a "), "the ")
		if one == "" || !slices.Contains(all, one) {
			return false
		}
	}
	return true
}
