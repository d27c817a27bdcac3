package stitch

import "testing"

// Common practice, no source.
func TestHow(t *testing.T) {
	for _, c := range []struct {
		kind  Kind
		in    Into
		terms Terms
		want  string
	}{
		{Tog(Single, 2), Top, US, "[insert hook in next st, yo and pull up a loop] twice, yo and pull through all 3 loops on hook"},
		{Tog(Half, 2), Top, UK, "[yoh, insert hook in next st, yoh and pull up a loop] twice, yoh and pull through all 5 loops on hook"},
		{Tog(Double, 5), Top, US, "[yo, insert hook in next st, yo and pull up a loop, yo and pull through 2 loops] 5 times, yo and pull through all 6 loops on hook"},
		{Tog(Treble, 3), Top, US, "[yo twice, insert hook in next st, yo and pull up a loop, (yo and pull through 2 loops) twice] 3 times, yo and pull through all 4 loops on hook"},
		{Tog(DoubleTreble, 2), Top, US, "[yo 3 times, insert hook in next st, yo and pull up a loop, (yo and pull through 2 loops) 3 times] twice, yo and pull through all 3 loops on hook"},
		{Kind{Base: Double, Shape: Cluster, Legs: 3}, Space, US, "[yo, insert hook in same place, yo and pull up a loop, yo and pull through 2 loops] 3 times, yo and pull through all 4 loops on hook"},
		{Kind{Base: Double, Shape: Popcorn, Legs: 5}, Top, UK, "5 tr in same place, take the hook out, insert it in the first of them from the front, pull the loop through"},
		{Of(Double), FrontPost, US, "dc around the post of the st: hook in from the front, behind the post and out to the front"},
		{Of(Double), Top, US, ""},
		{Of(Slip), FrontPost, US, ""},
		{Kind{Base: Half, Shape: Puff, Legs: 3}, Top, US, ""},
		{Kind{Base: Double, Manner: Extended, Shape: Together, Legs: 2}, Top, US, ""},
		{Kind{}, Top, US, ""},
	} {
		if got := c.kind.How(c.in, c.terms); got != c.want {
			t.Errorf("%v: %q, want %q", c.kind, got, c.want)
		}
	}
}
