// Package stitch names the stitches of the trade: what kinds there are, how
// tall each is in chains, what each is called in US and in UK terms, and which
// part of the fabric below a stitch can be worked into. It is the vocabulary
// that every other package shares and depends on nothing.
package stitch

// Base is the plain stitch that a kind is built on, by its height. The Go
// names are the US ones; see [Kind.Name] for both sets of terms.
type Base uint8

// The plain stitches, lowest first.
const (
	None         Base = iota
	Chain             // ch
	Slip              // sl st, UK ss
	Single            // sc, UK dc
	Half              // hdc, UK htr
	Double            // dc, UK tr
	Treble            // tr, UK dtr
	DoubleTreble      // dtr, UK trtr
	TripleTreble      // trtr, UK quadtr
)

// Shape says how the loops or legs of a stitch are put together.
type Shape uint8

const (
	// Plain is one leg with one top.
	Plain Shape = iota
	// Together is several legs, each in a place of its own, closed as one
	// top: sc2tog, dc5tog.
	Together
	// Cluster is several unfinished legs in one place, closed as one top: a
	// 3-dc cluster.
	Cluster
	// Puff is several long loops drawn up in one place and closed at once.
	Puff
	// Bobble is a cluster worked so that it stands out from the fabric.
	Bobble
	// Popcorn is several finished legs in one place, gathered by drawing the
	// last loop through the first.
	Popcorn
	// Picot is a small loop of chains closed onto itself.
	Picot
)

// Manner is a set of ways in which a plain stitch can be varied.
type Manner uint8

const (
	// Extended stitches have one more chain of height: esc, ehdc, edc.
	Extended Manner = 1 << iota
	// Reverse is worked backwards: reverse sc, crab stitch.
	Reverse
	// Foundation stitches make their own chain: fsc, fhdc, fdc.
	Foundation
	// Spike stitches are drawn down into a round below the last.
	Spike
	// Crossed stitches pass in front of the one before.
	Crossed
	// Invisible decreases take up front loops only.
	Invisible
)

// Kind is a kind of stitch. The zero Kind is no stitch. Kinds are comparable
// and can be used as map keys.
type Kind struct {
	Base   Base
	Shape  Shape
	Manner Manner
	// Legs is the number of legs of a Together, Cluster, Bobble or Popcorn,
	// the number of loops pairs of a Puff and the number of chains of a
	// Picot. It is 0 for a Plain stitch.
	Legs int
}

// Of is the plain kind of a base: Of(stitch.Double) is a dc.
func Of(b Base) Kind { return Kind{Base: b} }

// Tog is n stitches of a base worked together: Tog(stitch.Double, 3) is a
// dc3tog.
func Tog(b Base, n int) Kind { return Kind{Base: b, Shape: Together, Legs: n} }

// Is reports whether k is a stitch at all.
func (k Kind) Is() bool { return k.Base != None }

// Chains is the height of a stitch in chains, as turning chains are counted:
// sl st 0, sc 1, hdc 2, dc 3, tr 4, dtr 5 (Crochet Guild of America lesson,
// 1997), one more when it is extended.
func (k Kind) Chains() int {
	n := 0
	if k.Base >= Single {
		n = int(k.Base-Single) + 1
	}
	if k.Manner&Extended != 0 {
		n++
	}
	return n
}

// Into says which part of the fabric a stitch is worked into.
type Into uint8

const (
	// Top is under both loops at the top of a stitch, the usual place.
	Top Into = iota
	// FrontLoop and BackLoop are under one loop only, as seen by the worker.
	FrontLoop
	BackLoop
	// FrontPost and BackPost are around the body of a stitch.
	FrontPost
	BackPost
	// Space is under a run of chains.
	Space
	// Ring is in the centre ring.
	Ring
	// RowEnd is in the side edge of a row.
	RowEnd
	// Between is in the gap before a stitch.
	Between
	// Underside is in the other side of a chain that has been worked into.
	Underside
	// ThirdLoop is the bar at the back of a half double, below the two loops.
	ThirdLoop
	// BackBump is in the bump at the back of a chain.
	BackBump
)
