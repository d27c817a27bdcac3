package stitch

import "testing"

// US → UK: sl st → ss; sc → dc; hdc → htr; dc → tr; tr → dtr; dtr → trtr (the
// same in several published lists; Craft Yarn Council, Standards & Guidelines
// for Crochet and Knitting).
func TestTerms(t *testing.T) {
	for _, c := range []struct {
		base   Base
		us, uk string
	}{
		{Chain, "ch", "ch"}, {Slip, "sl st", "ss"}, {Single, "sc", "dc"}, {Half, "hdc", "htr"}, {Double, "dc", "tr"},
		{Treble, "tr", "dtr"}, {DoubleTreble, "dtr", "trtr"},
	} {
		if us, uk := c.base.Name(US), c.base.Name(UK); us != c.us || uk != c.uk {
			t.Errorf("%s in US, %s in UK terms; want %s, %s", us, uk, c.us, c.uk)
		}
	}
}

// Turning chains: sl st 0, sc 1, hdc 2, dc 3, tr 4, dtr 5 (Crochet Guild of
// America lesson, 1997; dummies.com, "How to crochet a turning chain").
func TestTurningChains(t *testing.T) {
	for base, want := range map[Base]int{Slip: 0, Single: 1, Half: 2, Double: 3, Treble: 4, DoubleTreble: 5} {
		if got := Of(base).Chains(); got != want {
			t.Errorf("%s: %d chains, want %d", base.Name(US), got, want)
		}
	}
}

// The abbreviations of the Craft Yarn Council list for what a kind can be.
func TestAbbreviations(t *testing.T) {
	for _, c := range []struct {
		kind Kind
		into Into
		want string
	}{
		{Of(Double), Top, "dc"},
		{Tog(Double, 2), Top, "dc2tog"},
		{Tog(Single, 2), Top, "sc2tog"},
		{Tog(Half, 2), Top, "hdc2tog"},
		{Kind{Base: Single, Manner: Extended}, Top, "esc"},
		{Kind{Base: Half, Manner: Extended}, Top, "ehdc"},
		{Kind{Base: Double, Manner: Extended}, Top, "edc"},
		{Of(Double), FrontPost, "FPdc"},
		{Of(Half), BackPost, "BPhdc"},
		{Of(Treble), FrontPost, "FPtr"},
		{Of(Single), BackLoop, "BLO sc"},
		{Kind{Base: Double, Shape: Cluster, Legs: 3}, Top, "3-dc cl"},
		{Kind{Base: Chain, Shape: Picot, Legs: 3}, Top, "ch-3 picot"},
		{Kind{Base: Single, Manner: Foundation}, Top, "fsc"},
	} {
		if got := c.kind.NameInto(c.into, US); got != c.want {
			t.Errorf("%s, want %s", got, c.want)
		}
	}
}

// No two kinds that a designer can mean share a name in one set of terms.
func TestNamesAreDistinct(t *testing.T) {
	for _, terms := range []Terms{US, UK} {
		seen := map[string]Kind{}
		for b := Chain; b <= TripleTreble; b++ {
			for _, k := range []Kind{Of(b), Tog(b, 2), Tog(b, 3), {Base: b, Shape: Cluster, Legs: 3}, {Base: b, Manner: Extended},
				{Base: b, Manner: Foundation}, {Base: b, Manner: Reverse}} {
				for _, in := range []Into{Top, FrontLoop, BackLoop, FrontPost, BackPost} {
					n := k.NameInto(in, terms)
					if o, ok := seen[n]; ok && o != k {
						t.Errorf("%s terms: %s is %v and %v", terms, n, o, k)
					}
					seen[n] = k
				}
			}
		}
	}
}
