package notation

// SeamSide is on which side of the seam between two motifs something lies, in the order of working.
type SeamSide uint8

const (
	NoSeam     SeamSide = iota
	BeforeSeam          // "last st before the join"
	AfterSeam           // "first st after the join"
	EitherSide          // "each of the 2 joined ch-2 sps"
)

// Is reports whether a side is meant of what lies before or after a seam.
func (s SeamSide) Is(before, after bool) bool {
	return before && s != AfterSeam || after && s != BeforeSeam
}

// IsCorner reports whether a space is called one at a corner.
func (t *Target) IsCorner() bool { return t.Name == Corner || t.AtCorner }
