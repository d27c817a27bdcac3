package geometry

import "whorl/patterns/fabric"

// Corners is the number of corners that a motif is finished with, from 3 to 8; 0
// for a part without any. What corners are [Slacks] tells.
func Corners(part *fabric.Part) int {
	corners := 0
	for _, r := range part.Rounds {
		if k, full := cornersOf(r); k > 0 {
			corners = 0
			if full {
				corners = k
			}
		}
	}
	return corners
}
