package notation

import (
	"regexp"
	"sort"
	"strconv"
	"strings"

	"whorl/patterns/stitch"
)

// named finds the names of stitches in running words of one set of terms.
type named struct {
	find  *regexp.Regexp
	bases map[string]stitch.Base
}

var namesOf = map[stitch.Terms]named{stitch.US: namesIn(stitch.US), stitch.UK: namesIn(stitch.UK)}

// namesIn takes in the abbreviations and the names in full, but none of the
// words that are said by themselves ("treble", "double"), which may be of
// either terms or of something else.
func namesIn(t stitch.Terms) named {
	bases := map[string]stitch.Base{}
	for b := stitch.Slip; b <= stitch.TripleTreble; b++ {
		bases[b.Name(t)] = b
		bases[b.LongName(t)] = b
		// "the first treble", "a half double": but "single" and "double" alone
		// may be said of other things.
		if short := strings.TrimSuffix(b.LongName(t), " crochet"); short == "treble" || strings.Contains(short, " ") && b > stitch.Slip {
			bases[short] = b
		}
	}
	bases["sl st"], bases["ss"] = stitch.Slip, stitch.Slip // either may be written in both
	names := make([]string, 0, len(bases))
	for name := range bases {
		names = append(names, regexp.QuoteMeta(name))
	}
	// The longest first, so that half double crochet is not read as double
	// crochet.
	sort.Slice(names, func(i, j int) bool {
		if len(names[i]) != len(names[j]) {
			return len(names[i]) > len(names[j])
		}
		return names[i] < names[j]
	})
	return named{regexp.MustCompile(`(?i)(\b|\b[0-9]+)(fp|bp|e|f)?(` + strings.Join(names, "|") + `)(s|[0-9]+tog)?\b`), bases}
}

var (
	bothTerms = regexp.MustCompile(`\b(US|UK|U\.S\.|U\.K\.|American|British)(\W|$)`)
	ownTerms  = regexp.MustCompile(`\b(US|UK)( crochet)? (terms|terminology|abbreviations)`)
	sizeList  = regexp.MustCompile(`(\d+(?:\.\d+)?) \((\d+(?:\.\d+)?(?:, \d+(?:\.\d+)?)*)\)`)
	skipWord  = regexp.MustCompile(`(?i)\b(sk|skip|miss)( (?:next|first|last|each|these|those|st|sts|ch|\d+)\b)`)
	slipWord  = map[stitch.Terms]*regexp.Regexp{stitch.US: regexp.MustCompile(`(?i)\bss\b`), stitch.UK: regexp.MustCompile(`(?i)\bsl sts?\b`)}
	overWord  = regexp.MustCompile(`(?i)\b(yo|yoh|yrh)\b`)
	gaugeWord = regexp.MustCompile(`(?i)\bgauge\b`)
	// Tension is the stitch gauge in UK terms, but "an even tension" is how the
	// yarn is held.
	tensionWord = regexp.MustCompile(`(?i)\b((?:your|to|for|stated|given|correct|obtain|check|match) )tension\b`)
)

// Advice is advice as it was written, with the names of stitches as they are
// printed and, for one size, with only the numbers of that size. Advice that
// speaks of both sets of terms keeps its names.
func (s Style) Advice(text string) string {
	var b strings.Builder
	for _, sentence := range sentences.FindAllString(text, -1) {
		b.WriteString(s.sentence(sentence))
	}
	return b.String()
}

// sentences are the sentences of a text, each with what follows it.
var sentences = regexp.MustCompile(`(?s)(?:[^.]|\.[^\s])+(?:\.\s+|\.?$)|\.`)

// sentence is one sentence of advice.
func (s Style) sentence(text string) string {
	if s.Size >= 0 && s.Sizes > 1 {
		text = sizeList.ReplaceAllStringFunc(text, func(list string) string {
			m := sizeList.FindStringSubmatch(list)
			if n := append([]string{m[1]}, strings.Split(m[2], ", ")...); len(n) == s.Sizes {
				return n[s.Size]
			}
			return list
		})
	}
	say := func(find *regexp.Regexp, word string) {
		text = find.ReplaceAllStringFunc(text, func(was string) string { return asCapital(was, word) })
	}
	if bothTerms.MatchString(text) {
		if m := ownTerms.FindAllString(text, -1); s.Terms != s.From && len(m) == 1 && len(bothTerms.FindAllString(text, -1)) == 1 && strings.HasPrefix(m[0], s.From.String()) {
			return strings.Replace(text, m[0], s.Terms.String()+strings.TrimPrefix(m[0], s.From.String()), 1)
		}
		return text
	}
	if !s.Long {
		say(slipWord[s.Terms], stitch.Slip.Name(s.Terms))
	}
	if names := namesOf[s.From]; s.Terms != s.From || s.Long {
		text = names.find.ReplaceAllStringFunc(text, func(name string) string {
			m := names.find.FindStringSubmatch(name)
			style, base := s, names.bases[strings.ToLower(m[3])]
			style.Long = s.Long || strings.TrimSuffix(base.LongName(s.From), " crochet") == strings.TrimSuffix(strings.ToLower(m[3]), " crochet") // as it was written
			if style.Long && m[1] != "" {
				m[1] += " "
			}
			return m[1] + asCapital(strings.TrimLeft(name, "0123456789"), style.said(m[2], base, m[4]))
		})
	}
	skip, over := "skip", "yo"
	if s.Terms == stitch.UK {
		skip, over = "miss", "yoh"
	}
	text = skipWord.ReplaceAllStringFunc(text, func(was string) string {
		return asCapital(was, skip+skipWord.FindStringSubmatch(was)[2])
	})
	if s.Terms != s.From {
		say(overWord, over)
		if s.Terms == stitch.UK {
			say(gaugeWord, "tension")
		} else {
			text = tensionWord.ReplaceAllString(text, "${1}gauge")
		}
	}
	return text
}

// ofSizes explains how the numbers of several sizes are written.
var ofSizes = regexp.MustCompile(`(?i)^(sizes|figures|numbers|instructions|directions|changes|when|where|if)\b.*\b(given as|written as|in (square |round )?(brackets|parentheses)|(single|one|only one) (number|figure)).*`)

// Words that are spelled otherwise where the terms are at home.
var american = strings.NewReplacer("color", "colour", "Color", "Colour", "center", "centre", "Center", "Centre")
var british = strings.NewReplacer("colour", "color", "Colour", "Color", "centred", "centered", "centre", "center", "Centre", "Center")

// Notes are running notes as [Style.Advice], in the spelling of terms that are not
// their own and, for one size, without what explains the numbers of all.
func (s Style) Notes(text string) string {
	if text = s.Advice(text); s.Size >= 0 && s.Sizes > 1 {
		text = sentences.ReplaceAllStringFunc(text, func(sentence string) string {
			if ofSizes.MatchString(sentence) && strings.Contains(strings.ToLower(sentence), "size") {
				return ""
			}
			return sentence
		})
	}
	switch {
	case s.Terms == s.From:
		return text
	case s.Terms == stitch.UK:
		return strings.NewReplacer("centreed", "centred", "centreing", "centring").Replace(american.Replace(text))
	}
	return british.Replace(text)
}

// said is a base with what stands before and behind it: FP, dc, 2tog.
func (s Style) said(before string, b stitch.Base, behind string) string {
	if !s.Long {
		if b == stitch.Slip && s.Terms == stitch.UK {
			behind = "" // ss is its own plural
		}
		return before + b.Name(s.Terms) + behind
	}
	if n, ok := strings.CutSuffix(strings.ToLower(behind), "tog"); ok {
		if _, err := strconv.Atoi(n); err == nil {
			behind = " " + n + " together"
		}
	}
	long := b.LongName(s.Terms)
	if s.Terms == stitch.UK && behind == "s" && b > stitch.Single {
		long = strings.TrimSuffix(long, " crochet") // "half trebles"
	}
	return map[string]string{"fp": "front post ", "bp": "back post ", "e": "extended ", "f": "foundation "}[strings.ToLower(before)] +
		long + behind
}

// asCapital begins said with a capital letter where was does so. The capitals
// of FPdc are no beginning.
func asCapital(was, said string) string {
	r := []rune(was)
	if len(r) > 1 && r[0] >= 'A' && r[0] <= 'Z' && r[1] >= 'a' && r[1] <= 'z' {
		return capitalise(said)
	}
	return said
}
