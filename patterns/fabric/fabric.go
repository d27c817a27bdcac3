// Package fabric holds what has been worked: every stitch of one size of a
// pattern, in the order it is made, each with the places it stands on. A
// Fabric knows nothing of the words it came from, of lengths or of drawing.
package fabric

import "whorl/patterns/stitch"

// Fabric is one size of a pattern, worked to the last stitch.
type Fabric struct {
	Size  string // the size's name
	Index int    // its place in the pattern's list of sizes, from 0
	Parts []*Part
}

// Part is one piece: what is worked without cutting the yarn to start anew.
type Part struct {
	Name   string
	Worked Way
	// Rounds are the rounds or rows in the order they are worked. The first
	// may be a foundation (Number 0), a ring or a starting chain, or the round
	// that the part goes on from (Carried).
	Rounds []*Round
	// Seam is the row of stitches through both layers that closes the last round folded
	// flat, or joins it to another piece; nil for none. Folded flat, each stitch stands on
	// two of that round's, one of either layer. It is none of Rounds.
	Seam *Round
	// From is the part whose edge this one is picked up along, or -1.
	From int
}

// Way is how a part is worked.
type Way uint8

const (
	InRounds Way = iota
	InRows
)

// Closing is how a round ends.
type Closing uint8

const (
	// Open ends at the edge, as a row does.
	Open Closing = iota
	// Joined ends with a slip stitch in its beginning.
	Joined
	// Spiral goes on into the next round without a join.
	Spiral
)

// Round is one round or row.
type Round struct {
	Label  string // as a designer would write it: "Rnd 5", "Row 12"
	Number int    // 0 for a foundation
	Row    bool   // worked to and fro rather than round
	// Wrong is set when the worker faces the wrong side.
	Wrong bool
	// Reversed is set when the work is done in the direction opposite to the
	// part's first round: clockwise on the chart for a right-hander.
	Reversed bool
	Closing  Closing
	Colour   string // name of the yarn colour it begins with, "" when there is only one
	// Colours is set when the colour changes within the round, so that not all of
	// it is in Colour.
	Colours bool
	// Cut is set when the yarn is fastened off at its end.
	Cut bool

	Stitches []Stitch
	// Spaces are the runs of chains that can be worked under, in order.
	Spaces []Span
	// Completed is 1 + the index of the space that the stitch closing the round
	// completes, when the round is closed with a taller stitch than a slip
	// stitch: "ch 2, dc in first sc (counts as ch-5 sp)". 0: none.
	Completed int
	// Groups are the named or bracketed groups worked in one place, in order.
	Groups []Group
	// Repeats are the instances of the outermost repeat, in order.
	Repeats []Span
	// Ring is set for a foundation that is a magic ring (no chains) or a
	// joined chain.
	Ring bool
	// About is, for a Ring that is the edge of something that is no crochet, what that is:
	// "hankie"; "" for any other.
	About string
	// Carried is set for the first round of a part that goes on from another
	// part: it is that part's last round over again, and not worked anew.
	Carried bool
	// Edge is the number of row ends (of part From) along the edge that the
	// round is picked up on, 0 when it stands on a round.
	Edge int

	Line int // in the pattern file, of the words it was worked from
}

// Span is a run of stitches of one round, from From up to and not including
// To.
type Span struct{ From, To int }

// Group is a run of stitches worked as one thing: a shell, a fan, a V-stitch,
// a bracketed group in one place.
type Group struct {
	Span
	Name string // "" for a bracketed group without a name of its own
	// Like is the name of the designer's own stitch that a group without a name is
	// written out like; "" for none.
	Like string
}

// Ref names a stitch of a part: Rounds[Round].Stitches[Stitch].
type Ref struct{ Round, Stitch int }

// Place is a place in the fabric that a stitch is worked into.
type Place struct {
	Into stitch.Into
	// Part is the index of the part that the place belongs to when Into is
	// RowEnd; anywhere else a place is in the stitch's own part.
	Part int
	// At is the stitch worked into. For a Space it is the first chain of the
	// run and Last the last; for Between the stitch after the gap; for a
	// RowEnd At.Round is the row, and At.Stitch 1 or 0 along the first and the
	// second edge that a border goes along, else 0; for a Ring it is the
	// foundation (Stitch -1).
	At   Ref
	Last Ref
}

// Role tells the stitches that make the fabric from those that begin and end
// a round.
type Role uint8

const (
	// Worked is an ordinary stitch.
	Worked Role = iota
	// Start is a chain at the beginning of a round or row that brings the
	// hook to its height. One Stitch stands for the whole of it (see Chains).
	Start
	// Join is the stitch that closes a round: a slip stitch, or a taller one
	// that completes the last space (see Round.Completed).
	Join
	// Travel is a slip stitch that moves the beginning of a round.
	Travel
	// FirstHalf and LastHalf are the two parts of a group that is begun at
	// the start of a round and completed at the join. The first counts, as
	// the whole (see As).
	FirstHalf
	LastHalf
)

// Stitch is one stitch.
type Stitch struct {
	Kind stitch.Kind
	Role Role
	// On are the places it stands on, in the order they are worked: one for
	// each leg of a Together, one for any other stitch, none for a chain. A
	// chain of role Start stands on the place at its foot.
	On []Place
	// Chains is how many chains a Start is made of; 0 for anything else.
	Chains int
	// Counts says whether it counts as a stitch of its round. Chains do only
	// when the words say so.
	Counts bool
	// As is what a Start that counts stands in for, or the whole that two
	// halves make; the zero Kind otherwise.
	As stitch.Kind
	// Own is the name of the designer's own stitch that it is, in small letters as
	// it is known by in the words; "" for any other.
	Own string
	// Colour is the name of the yarn colour it is made in, "" when there is only
	// one.
	Colour string
	// Marked is set when a stitch marker is put in it.
	Marked bool
	// Group is 1 + the index of the innermost group it belongs to; 0: none.
	Group int
	// Behind is set when it is worked behind the stitches made before it, where
	// it crosses them. Otherwise it is in front, or as its post says.
	Behind bool
	// Line and Column are where its words stand in the pattern file.
	Line, Column int
}

// Counted is the kind under which the stitch is counted: As if that is set.
func (s *Stitch) Counted() stitch.Kind {
	if s.As.Is() {
		return s.As
	}
	return s.Kind
}

// IsChain reports whether the stitch is a chain of the fabric (not one that
// begins a round).
func (s *Stitch) IsChain() bool { return s.Kind == stitch.Of(stitch.Chain) && s.Role == Worked }

// InOnePlace reports whether it is several stitches that are worked together in one place, as a bobble is by
// whatever name.
func (s *Stitch) InOnePlace() bool {
	if s.Kind.Shape != stitch.Together && s.Kind.Shape != stitch.Cluster || s.Kind.Legs < 3 || len(s.On) == 0 {
		return false
	}
	for _, on := range s.On {
		if on != s.On[0] {
			return false
		}
	}
	return true
}

// LastColour is the name of the yarn colour that the round ends with.
func (r *Round) LastColour() string {
	if n := len(r.Stitches); n > 0 && r.Stitches[n-1].Colour != "" {
		return r.Stitches[n-1].Colour
	}
	return r.Colour
}

// Count is the number of stitches that count.
func (r *Round) Count() int {
	n := 0
	for i := range r.Stitches {
		if r.Stitches[i].Counts {
			n++
		}
	}
	return n
}

// SpaceChains is the number of chains that space k (from 0) counts as: those it
// is made of, and the height of the stitch that completes it.
func (r *Round) SpaceChains(k int) int {
	n := r.Spaces[k].To - r.Spaces[k].From
	if r.Completed == k+1 {
		for i := range r.Stitches {
			if r.Stitches[i].Role == Join {
				n += r.Stitches[i].Kind.Chains()
			}
		}
	}
	return n
}

// Chains is the number of chains along the round; those that begin it are not
// among them.
func (r *Round) Chains() int {
	n := 0
	for i := range r.Stitches {
		if r.Stitches[i].IsChain() {
			n++
		}
	}
	return n
}

// At is the stitch that ref names.
func (p *Part) At(ref Ref) *Stitch { return &p.Rounds[ref.Round].Stitches[ref.Stitch] }
