package notation

import (
	"whorl/patterns/fault"
	"whorl/patterns/stitch"
)

// Span is a stretch of words in the file: where it begins, and how many
// characters of that line it takes.
type Span struct {
	fault.Pos
	Length int
}

// Num is a number that may differ from size to size, written 60 (72, 78).
type Num struct {
	Span
	// Values has one entry for all sizes, or one for each.
	Values []int
}

// For is the number for a size (counted from 0).
func (n Num) For(size int) int {
	switch {
	case len(n.Values) == 0:
		return 0
	case len(n.Values) == 1:
		return n.Values[0]
	case size < len(n.Values):
		return n.Values[size]
	}
	return n.Values[len(n.Values)-1]
}

// Set reports whether the number was written at all.
func (n Num) Set() bool { return len(n.Values) > 0 }

// One is the number that stands where none is written.
func One(at Span) Num { return Num{Span: at, Values: []int{1}} }

// Text is the tree of one part's words.
type Text struct {
	Rounds []*Round
}

// Round is one labelled line: a round, a row, a range of them, or a
// foundation.
type Round struct {
	Span   // of the label, or of the first word when there is none
	Label  Label
	Items  []Item
	Stated []*Stated
	// Broken is set when not all of its words could be read.
	Broken bool
	// Opening is set when the words go to the edges of a slit that an earlier
	// part was left with: "first missed dc of thumb opening".
	Opening bool
}

// Label is what stands before the colon.
type Label struct {
	Row bool // "Row" rather than "Rnd"
	// Numbers are the rounds named, in order: one Range for "Rnd 5" and
	// "Rnds 5-10", several for "Rows 3, 5 and 7". There are none for a
	// foundation or a line without a label.
	Numbers []Range
	// Next is how many rounds "Next rnd" or "Next 3 rnds" speaks of; unset
	// otherwise.
	Next Num
	// Others is set for "Row 2 and every alternate row", whose other numbers are found in Numbers.
	Others bool
	// Series is set for "Dec Rnd 3", "Edging Rnd 1": a word that the numbers may
	// begin anew after.
	Series string
	// Side is 1 for (RS), 2 for (WS), 0 when not said.
	Side int
	// Called is the name of a round without a number that others may refer to: "Rib
	// Row". Next is set then.
	Called string
	// Bare is set for a number alone, "3:", which may be a round or a row.
	Bare bool
	// Unmarked is set when no sign stands between the label and the words.
	Unmarked bool
	// Foundation is set for "Foundation row", "Set-up rnd".
	Foundation bool
	// Rounds is how many rounds the label says it is: "(6 rnds)"; else unset.
	Rounds Num
	// Loop is set for "Rnd 2 (BLO)".
	Loop Loop
	// Only are the names of sizes that the round is worked for; empty for all.
	Only  []string
	Sizes bool // the label is nothing but their names: "Child only: Rep Row 2"
	// SkipTo is the round that the sizes in Only go on with: "Size S: proceed to
	// Rnd 9". Unset otherwise.
	SkipTo Num
	// SkipToPart is the heading that they go on with instead of a round: "Small:
	// go on to the Sides". "" for none.
	SkipToPart string
	Text       string // as written
}

// Range is a run of round numbers; From and To are equal for a single one.
type Range struct {
	From, To Num
	ToEnd    bool // "Rows 3-end"
}

// Item is one instruction.
type Item interface{ Where() Span }

// Loop is a word for one or both loops, or a post, that a stitch is worked in.
type Loop struct {
	Set  bool
	Into stitch.Into
}

// What is the stitch that is made.
type What struct {
	Kind stitch.Kind // zero for an increase, a decrease or a name
	Name string      // one of the designer's own stitches
	// Shaping is +1 for "inc", -1 for "dec".
	Shaping int
	Loop    Loop
	Beg     bool // "beg cl"
}

type (
	// Stitches makes stitches of one kind.
	Stitches struct {
		Span
		N      Num // unset when not written
		What   What
		Places []Place // empty when not said
		// Times is a number that follows: "inc 6 times"; unset when absent.
		Times Num
		// But are the Stitches and Groups that go into some of the places
		// instead: "sc in each st around, working 3 sc in each corner". Each
		// has one Place.
		But []Item
	}
	// Chain makes chains.
	Chain struct {
		Span
		N      Num
		Counts *Counts // what the words say of it; nil when nothing
		Beg    bool    // "beg ch-3"
	}
	// Group is a bracketed group worked in one place.
	Group struct {
		Span
		Items []Item
		Place []Place
		Times Num
		// Loose is set when no brackets hold it together, "3 dc, ch 2, 3 dc in next ch-2 sp", so that
		// the first of it may be meant for the stitches before; see InTurn.
		Loose bool
	}
	// Repeat is a repeated stretch.
	Repeat struct {
		Span  // of the words that say how often
		Items []Item
		// Times is how often in all, unless Extent is set.
		Times Num
		// More is set when Times leaves out the first: "5 more times".
		More   bool
		Extent Extent
		// AtStop is set for "ending last rep at **".
		AtStop bool
		// Omit is how many items at the end the last repeat leaves out.
		Omit int
		// Ending replaces what is left of the last repeat.
		Ending []Item
		Star   bool // written with a star rather than brackets
		// FromJoin is set when the first goes into the place that the round was
		// joined in: "…, beginning in the same sp as joining".
		FromJoin bool
	}
	// Stop is the ** inside a repeat.
	Stop struct{ Span }
	// Skip passes over places by name.
	Skip struct {
		Span
		N      Num
		Target Target
		// Unworked is set for "leave last 2 sts unworked".
		Unworked bool
		Behind   bool   // the place is "behind" a stitch made farther down
		Place    *Place // "skip first st"
		FromJoin bool   // the places are counted from the join: "after the centre back join"
		After    string // the piece that the places are counted from: "after first flap"
		And      *Skip  // "sk first dc and next ch"; nil for one place
	}
	// Join closes the round.
	Join struct {
		Span
		With   What    // the stitch that a new yarn is joined with
		Place  *Place  // nil when only "join" is written
		Splits *Counts // "completing the dc5tog"
		Yarn   string  // set when a new yarn is joined instead
		// Underarm is set when it is joined at the underarm: where the chains across a slit begin.
		Underarm bool
	}
	// Begin says where the round begins, without a stitch there: "starting in any ch-1
	// sp".
	Begin struct {
		Span
		Place Place
	}
	// Turn turns the work.
	Turn struct{ Span }
	// NoJoin says that the round is not joined.
	NoJoin struct{ Span }
	// FastenOff ends the yarn.
	FastenOff struct {
		Span
		Text string // as written
	}
	// MagicRing starts a ring.
	MagicRing struct {
		Span
		Round string // a thing that it is worked round instead, "hair elastic"
	}
	// FormRing closes the chains made so far into a ring.
	FormRing struct{ Span }
	// InLoops sets the loop for the rest of the round.
	InLoops struct {
		Span
		Into stitch.Into
		// Round is the number of the round whose loops are meant, 0 for the
		// round below.
		Round int
		// Free is set when they are said to have been left free: "in free back loops of Rnd 1".
		Free bool
	}
	// Counts says what the chain or group before it counts as.
	Counts struct {
		Span
		Not        bool // does not count
		As         stitch.Kind
		Name       string // of one of the designer's own stitches
		Chains     int    // of "counts as dc and ch 1"
		Space      bool   // counts as a space of so many Chains, and no stitch
		Half       bool   // "counts as first leg/half"
		Throughout bool
		Alone      bool // said in a sentence of its own, of chains that rounds begin with
		Of         int  // the number of chains spoken of, 0 when not said
		Passed     int  // of "first 3 skipped chs", 0 when not said
		Base       int  // of "and 1 missed base ch": passed over, and part of no space
		Several    int  // of "counts as 2 dc", 0 when it is one
	}
	// Ref repeats rounds that were written before.
	Ref struct {
		Span
		Rounds []Range
		// Last is how many of the latest rounds, when no number is written.
		Last Num
		// Times is how often more, unset when the label or an Until says.
		Times Num
		End   Ending
		// Onward is set when the rounds go on as those before them did, with Step
		// more stitches between the increases every time; Step is unset when the
		// words leave it to those rounds.
		Onward bool
		Step   Num
		// Even is set beside Onward when the rounds are worked without shaping, one stitch in
		// each: of the kind Of where one is named, else of the last ones.
		Even bool
		Of   stitch.Kind
		// Series is the word before the numbers of Rounds: "1st brim round"; they are of
		// that series.
		Series string
		// Called is the name of the round instead of a number: "rep Rib Row".
		Called string
		// Piece is the name of another piece whose rounds are worked: "as for first
		// flap". Rounds are then those of that piece; without them it is all.
		Piece string
		// Every is set when each of the rounds is shaped: "on every round".
		Every bool
		Along *Along // how their sides differ; nil when nothing is said of it
		// Shown is what the words of Onward say again of the rounds before, in each corner and
		// along the sides.
		Shown []Item
		// Change is what else is different; nil for nothing.
		Change *Change
		Apart  bool // they have no numbers of their own
		Kept   bool // they are gone on with: until when must be said
	}
	// Until says how long rows or rounds are gone on with.
	Until struct {
		Span
		Length []float64 // millimetres, one for all sizes or one for each
		Rows   Num       // or a number of rows
		// More is set when Rows are those still to come: "for 3 more rounds".
		More bool
		// InAll is set when the words say that they are all that the piece then has: "(42 rows in all)".
		InAll bool
		// Repeats is set when Rows are how often what is repeated is worked: "about 6 times more".
		Repeats bool
		// Numbered is set when Rows is the number of the last row: "until Row 40 is
		// complete".
		Numbered bool
		// UpTo is set when the words do not say that this row is worked as well, "until you
		// reach Row 40": it is not where its own words come next.
		UpTo bool
		// Stitches is how many stitches the last of them has: "until 4 sts remain".
		Stitches Num
		// Whole is set when the length is that of the whole piece, with the
		// parts that this one goes on from: "until hat measures 20 cm".
		Whole bool
		// Added is set when the length is still to come: "for 10 cm".
		Added bool
		// Open is set when how long is left to the reader: "until desired length". Text is
		// then what is written.
		Open  bool
		Text  string
		End   Ending
		Apart bool // as in a Ref
		Kept  bool // "Continue until …", which does not name the rounds
	}
	// In sets where the stitches that follow go when they do not say: "working
	// in ring".
	In struct {
		Span
		Place Place
	}
	// Colour changes the yarn.
	Colour struct {
		Span
		Name string
	}
	// Marker places or moves a stitch marker.
	Marker struct {
		Span
		Text string
		// Stitch is the number of the stitch of its round that has the marker.
		Stitch Num
		// Made is set when it is put in the stitch that has just been made. With
		// neither of the two the words do not say where.
		Made bool
		// Up is set when the rounds that follow have it in the same stitch.
		Up bool
	}
	// OtherSide goes on along the other side of the starting chain.
	OtherSide struct{ Span }
	// Note is advice: kept, and not worked.
	Note struct {
		Span
		Text string
		// Closes is set when it closes the piece by a seam through both layers.
		Closes bool
		// Seam is how many stitches such a seam has, unset when not said, and Of their
		// kind, where it is said.
		Seam Num
		Of   stitch.Kind
		// Heading is set when it is a line that names what follows: "Edging".
		Heading bool
		// Doubt is the fault that these words are, unless the count stated for the
		// round shows that nothing hangs on them; nil for plain advice.
		Doubt *fault.Fault
		// Joins is set for a stitch that goes into another piece, which this one is joined to on
		// the way.
		Joins bool
		// Loose is set when these are a whole sentence that stands by itself.
		Loose bool
		// Names are the rounds that it says are worked for another piece; nil for none.
		Names *Ref
		// Forms are the rounds that it says form the pattern; nil for none.
		Forms *Ref
		// ByLength is set for a chain that is told by its length: how many it has is not known.
		ByLength bool
	}
)

// Where is the span itself; it makes every node that embeds a Span an Item.
func (s Span) Where() Span { return s }

// Stated is a stated count: "(72 hdc)", "[78 sts, 13 ch-2 sps]".
type Stated struct {
	Span
	// Then is set when it is of the round after the one that the count before it is of:
	// "20 dc, then 26 dc".
	Then bool
	// Counting is what is said behind it of the chain at the beginning: "counting ch-3
	// as 1 dc"; nil for none.
	Counting *Counts
	Counts   []StatedCount
}

// StatedCount is one number of a stated count.
type StatedCount struct {
	N      Num
	Target Target
	// At is the round that the count is said to be of; unset for the round
	// it stands behind.
	At Num
}
