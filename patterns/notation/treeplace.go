package notation

import (
	"slices"

	"whorl/patterns/stitch"
)

// Place says where stitches go.
type Place struct {
	Span
	Pick Pick
	// N is how many: "next 3 sts", "last 2 dc"; unset means one.
	N Num
	// Rows is how many row ends the words say there are: "in end of each of 18
	// rows"; unset when they do not.
	Rows Num
	// Nth is the ordinal of "2nd ch from hook" or "3rd ch of beg ch-3".
	Nth int
	// Target is what is worked into.
	Target Target
	// Also are further sorts of target: "each st and ch-1 sp".
	Also []Target
	// Of is the thing that the target is part of: "centre dc of next shell".
	Of *Place
	// Among is how many of them the words say there are in it, unset when not said: "2nd of 3 dc
	// of next shell"; or of the last of those that are gone into as they come: "each hdc and each of
	// the 6 chs around".
	Among Num
	// Into is the loop or post.
	Into stitch.Into
	// Free is set where that loop is said to have been left free: "each free back loop of Rnd 1".
	Free bool
	// JustBelow is set for "below" without a number.
	JustBelow bool
	// AfterSpace is set for a stitch "that follows a space".
	AfterSpace bool
	// InSpace is set for a stitch "that sits in a ch-1 sp".
	InSpace bool
	// Figure is what the space is part of, where that is no stitch but a figure of
	// several rounds: "first ch-3 lp of pineapple". It lies between its stitches, not
	// beside them.
	Figure string
	// Below is how many rounds further down the place is.
	Below int
	// Extent is how far an Each goes.
	Extent Extent
	// Both is set for "both loops", where one is the rule.
	Both bool
	// All is set for "2 dc, ch 2 and 2 dc all in next sp".
	All bool
	// Bare is set when no word such as "next" says which: "in ch-5 sp"; To
	// when the work goes up to it: "sl st to next ch-2 sp".
	Bare, To bool
	// Begins is set for a place that the first stitch of others is said to go into: the chain below has to be a stitch.
	Begins bool
	// Limb is the piece that is gone into where several are joined: "next 11 sts of
	// first leg"; "" for the round below.
	Limb string
	// OnTop is set for "first st of last row", said on the way round a flat piece.
	OnTop bool
	// Every is set for "each of next 3 sts".
	Every bool
	// Over is set for "over next 2 sts": the places of a decrease.
	Over bool
	// Evenly is set when stitches are to be spread over the places.
	Evenly bool
}

// Spread reports whether a number of stitches may be spread over all of the places: "6 sc across",
// which does not say that so many go into each.
func (pl *Place) Spread(number bool, s *Stitches) bool {
	return number && pl.Pick == Each && pl.Target.Sort == AnyStitch && pl.Target.Text == "" && len(pl.Also) == 0 && pl.Of == nil && pl.Extent.Sort == ToEnd &&
		len(s.Places) == 1 && len(s.But) == 0 && s.What.Shaping == 0
}

// OwnSide leaves it to the stitch from which side it goes round a post of an older round, where its name
// says so: "BPsc around next sc on Rnd 1".
func (s *Stitches) OwnSide() {
	if !s.What.Loop.Set || s.What.Loop.Into == stitch.Top {
		return
	}
	s.Places = slices.Clone(s.Places)
	for i := range s.Places {
		if pl := &s.Places[i]; pl.Over && pl.Below != 0 {
			pl.Into = stitch.Top
		}
	}
}

// spreadFrom makes one in each of "6 sc across ch" behind "starting in 2nd ch from hook": the
// first goes in there, and the others into the chains that follow.
func (s *Stitches) spreadFrom() {
	pl := &s.Places[0]
	if !pl.Spread(s.N.Set(), s) || slices.Min(s.N.Values) < 2 {
		return
	}
	rest := Num{Span: s.N.Span}
	for _, n := range s.N.Values {
		rest.Values = append(rest.Values, n-1)
	}
	s.N = Num{}
	*pl = Place{Span: pl.Span, Pick: Next, N: rest, Target: Target{Sort: ChainStitch, Kind: stitch.Of(stitch.Chain), Text: "ch"}}
}

// Pick is which of the targets is meant.
type Pick uint8

const (
	Next    Pick = iota // next n
	Each                // each, as far as Extent says
	Same                // the place worked into last
	First               // the first of the round
	Last                // the last of the round below
	Nth                 // the nth, of something or from the hook
	Only                // the one there is: the ring
	Centre              // the middle one of something
	Skipped             // the one that was skipped last
	Any                 // any; chosen to be the next
	Made                // the one made last, in this round
)

// TargetSort is a sort of thing that can be worked into.
type TargetSort uint8

const (
	AnyStitch    TargetSort = iota
	OfKind                  // "dc"
	OfName                  // a group: "shell"; without a Name any, of Chains stitches of Kind
	OfShape                 // "puff st", of whatever legs
	ChainSpace              // "ch-2 sp"; Target.Chains 0 for any
	ChainStitch             // "ch"
	StartChain              // "beg ch-3", "turning ch"
	FromHook                // "ch from hook"
	Ring                    // "ring"
	RowEnds                 // "row ends"; Name OneEnd for one of them, TopEdge or ChainEdge for another edge of the piece
	JoinPlace               // "same st as joining"
	Gap                     // between stitches
	Loops                   // "back bump" of a chain
	CornerStitch            // "corner sc", "centre st of corner"
	SeamPlace               // where two motifs are joined
	RowsInAll               // of a stated count: the rows or rounds worked so far
	Remark                  // of a stated count: a number that is not one of stitches there are
)

// Magic is the Name of a Ring that the words make on the way: "in magic ring".
const Magic = "magic"

// Band is the Name of a Ring that is a thing which is worked round: a hair elastic.
const Band = "band"

// MakesRing reports whether a place is a ring that is there once it has been named.
func (t *Target) MakesRing() bool { return t.Sort == Ring && (t.Name == Magic || t.Name == Band) }

// HalfLoop is the Name of a JoinPlace that is the loop which the closing stitch of the round below
// completed: "in half lp just made".
const HalfLoop = "half loop"

// Here is the Name of a Gap just where the work is: "between last st and next".
const Here = "here"

// Post is the Name of an OfKind for a stitch worked round a post, of any kind.
const Post = "post"

// Tip is the Name of a ChainStitch at the tip of a point that was worked back along.
const Tip = "tip"

// Foot is the Name of an OfKind between such points: not a stitch on their chains.
const Foot = "foot"

// Block is the Name of a ChainSpace that is the loop of a block, in a piece worked from corner to
// corner.
const Block = "block"

// Middle is the Name of a ChainSpace in the middle of a row.
const Middle = "middle"

// TopEdge and ChainEdge are the Names of the edges of a flat piece that are no row
// ends: the last row, and the underside of the starting chain.
const (
	TopEdge   = "top"
	ChainEdge = "chain"
)

// Corner is the Name of a ChainSpace at a corner. A piece without such spaces has
// its corners at the ends of its edges, and a slit between its two.
const Corner = "corner"

// EdgeLoop is the Name of a ChainSpace at the edge of a row, which the chain that the row
// below begins with makes, or chains that were passed over there.
const EdgeLoop = "edge loop"

// Pair is the Name of a Gap inside two stitches that stand by themselves.
const Pair = "pair"

// Groups is the Name of a Gap between groups of stitches that have no name.
const Groups = "groups"

// VStitch is the Name of a Gap between two V-sts that are only written out: two stitches in one
// place with chains between them.
const VStitch = "V-st"

// Target is a thing that can be worked into.
type Target struct {
	Sort     TargetSort
	Kind     stitch.Kind // of an OfKind; of RowEnds, where the rows are told by it: "each tr row"
	Name     string      // of an OfName
	Chains   int         // of a ChainSpace or StartChain, 0 for any
	Loop     Loop        // "next FPdc": how the stitch itself was worked
	At       int         // of a Gap: the nth one; 0 for the next
	Seam     SeamSide    // of a stitch or a ChainSpace: where motifs are joined, on which side of the seam
	AtCorner bool        // of a ChainSpace told by its chains: one at a corner, "corner ch-2 sp"
	Lone     bool        // of an OfKind: one that stands by itself, "next single dc" between V-sts
	Text     string      // as written
}

// Ending says with which round a repeat of rounds ends: "ending with Row 3",
// "ending with a WS row".
type Ending struct {
	Span
	Set   bool
	Round Num // unset when only the side is said
	Side  int // as in a Label
	// Within is set when the last of the repeats ends there, before its own end:
	// "ending the last repeat with Row 4".
	Within bool
}

// ExtentSort is how far a repeat or an each goes.
type ExtentSort uint8

const (
	NoExtent ExtentSort = iota
	ToEnd               // around, across, to end
	ToLast              // to last n
	ToPlace             // to next corner, to next ch-2 sp
	ToMarker
)

// Extent is how far something goes on.
type Extent struct {
	Sort   ExtentSort
	N      Num
	Target Target
	Text   string
}
