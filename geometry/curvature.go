package geometry

import (
	"fmt"
	"math"
)

// HyperbolicRadius is the radius, in millimetres, of the hyperbolic plane that
// rows of a height in millimetres make when each has n+1 stitches for every n
// of the row before: height / ln((n+1)/n), for n above 0. A ruffle is the
// tighter the smaller the radius. (D. W. Henderson and D. Taimina, "Crocheting
// the hyperbolic plane", Mathematical Intelligencer 23(2), 2001, 17–28.)
func HyperbolicRadius(height, n float64) (float64, error) {
	if !(height > 0) || math.IsInf(height, 1) {
		return 0, fmt.Errorf("rows of %v mm have no height", height)
	}
	if !(n > 0) || math.IsInf(n, 1) {
		return 0, fmt.Errorf("an increase in every %v stitches cannot be worked", n)
	}
	return height / math.Log1p(1/n), nil
}
