package stitch

import "strconv"

// Terms is the set of names that a pattern is written in. The same
// abbreviation means different stitches in the two sets: a US dc is a UK tr.
type Terms uint8

const (
	US Terms = iota
	UK
)

func (t Terms) String() string {
	if t == UK {
		return "UK"
	}
	return "US"
}

// Colour is the word as it is spelt where the terms are used.
func (t Terms) Colour() string {
	if t == UK {
		return "colour"
	}
	return "color"
}

// The names of the plain stitches (US and UK, short and long). US/UK pairs as
// in Craft Yarn Council, Standards & Guidelines for Crochet and Knitting.
var baseNames = [...]struct{ us, uk, usLong, ukLong string }{
	None:         {},
	Chain:        {"ch", "ch", "chain", "chain"},
	Slip:         {"sl st", "ss", "slip stitch", "slip stitch"},
	Single:       {"sc", "dc", "single crochet", "double crochet"},
	Half:         {"hdc", "htr", "half double crochet", "half treble crochet"},
	Double:       {"dc", "tr", "double crochet", "treble crochet"},
	Treble:       {"tr", "dtr", "treble crochet", "double treble crochet"},
	DoubleTreble: {"dtr", "trtr", "double treble crochet", "triple treble crochet"},
	TripleTreble: {"trtr", "quadtr", "triple treble crochet", "quadruple treble crochet"},
}

// Name is the abbreviation of a base in the given terms.
func (b Base) Name(t Terms) string {
	if t == UK {
		return baseNames[b].uk
	}
	return baseNames[b].us
}

// LongName is the base written out in the given terms.
func (b Base) LongName(t Terms) string {
	if t == UK {
		return baseNames[b].ukLong
	}
	return baseNames[b].usLong
}

// Name is the abbreviation of a kind in the given terms: "dc", "sc2tog",
// "3-dc cl", "esc", "ch-3 picot".
func (k Kind) Name(t Terms) string {
	n := k.Base.Name(t)
	switch {
	case k.Manner&Foundation != 0:
		n = "f" + n
	case k.Manner&Extended != 0:
		n = "e" + n
	}
	switch k.Shape {
	case Together:
		n += strconv.Itoa(k.Legs) + "tog"
	case Cluster:
		n = strconv.Itoa(k.Legs) + "-" + n + " cl"
	case Puff:
		n = "puff st"
	case Bobble:
		n = strconv.Itoa(k.Legs) + "-" + n + " bobble"
	case Popcorn:
		n = strconv.Itoa(k.Legs) + "-" + n + " popcorn"
	case Picot:
		n = "ch-" + strconv.Itoa(k.Legs) + " picot"
	}
	switch {
	case k.Manner&Reverse != 0:
		n = "rev " + n
	case k.Manner&Spike != 0:
		n = "spike " + n
	case k.Manner&Invisible != 0:
		n = "inv " + n
	}
	return n
}

// LongName is the kind written out in the given terms: "double crochet",
// "single crochet 2 together", "3 double crochet cluster".
func (k Kind) LongName(t Terms) string {
	n := k.Base.LongName(t)
	switch {
	case k.Manner&Foundation != 0:
		n = "foundation " + n
	case k.Manner&Extended != 0:
		n = "extended " + n
	}
	switch k.Shape {
	case Together:
		n += " " + strconv.Itoa(k.Legs) + " together"
	case Cluster:
		n = strconv.Itoa(k.Legs) + "-" + n + " cluster"
	case Puff:
		n = "puff stitch"
	case Bobble:
		n = strconv.Itoa(k.Legs) + "-" + n + " bobble"
	case Popcorn:
		n = strconv.Itoa(k.Legs) + "-" + n + " popcorn"
	case Picot:
		n = "chain " + strconv.Itoa(k.Legs) + " picot"
	}
	switch {
	case k.Manner&Reverse != 0:
		n = "reverse " + n
	case k.Manner&Spike != 0:
		n = "spike " + n
	case k.Manner&Invisible != 0:
		n = "invisible " + n
	case k.Manner&Crossed != 0:
		n = "crossed " + n
	}
	return n
}

// NameInto is the kind's abbreviation together with the loop or post it is
// worked into: "FPdc", "BLO sc", plain "dc" anywhere else.
func (k Kind) NameInto(in Into, t Terms) string {
	n := k.Name(t)
	switch in {
	case FrontPost:
		return "FP" + n
	case BackPost:
		return "BP" + n
	case FrontLoop:
		return "FLO " + n
	case BackLoop:
		return "BLO " + n
	case ThirdLoop:
		return "3rd loop " + n
	}
	return n
}

// LongNameInto is the written-out form of [Kind.NameInto].
func (k Kind) LongNameInto(in Into, t Terms) string {
	n := k.LongName(t)
	switch in {
	case FrontPost:
		return "front post " + n
	case BackPost:
		return "back post " + n
	case FrontLoop:
		return n + " in front loop only"
	case BackLoop:
		return n + " in back loop only"
	case ThirdLoop:
		return n + " in 3rd loop"
	}
	return n
}
