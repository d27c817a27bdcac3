package chart

import (
	"math"

	"whorl/chart/ring"
	"whorl/patterns/fabric"
)

// layTravel puts the slip stitches that move the beginning of a round on what
// they are worked into.
func (w *work) layTravel(c *course) {
	for i := range c.round.Stitches {
		if s := &c.round.Stitches[i]; s.Role == fabric.Travel && len(s.On) > 0 {
			if a, ok := w.angle(s.On[0]); ok {
				if !c.open {
					a = above(a, c.seam-math.Pi)
				}
				c.theta[i] = a
			}
		}
	}
}

// sharesRounds reports whether stitches of several rounds stand in a place: in its front
// loop and in its back loop.
func (w *work) sharesRounds(p fabric.Place) bool {
	if w.stoodIn == nil {
		w.stoodIn = map[int]int{}
		for _, c := range w.courses {
			for i := range c.round.Stitches {
				s := &c.round.Stitches[i]
				if s.Role != fabric.Worked {
					continue
				}
				for _, p := range s.On {
					k := w.key(p)
					if was, ok := w.stoodIn[k]; ok && was != c.index {
						w.stoodIn[k] = -1
					} else if !ok {
						w.stoodIn[k] = c.index
					}
				}
			}
		}
	}
	return w.stoodIn[w.key(p)] < 0
}

// laySmall gives the stitches that take no room angles in the gaps they fall
// in. across is the gap at the seam.
func (c *course) laySmall(across float64) {
	stitches := c.round.Stitches
	rising := c.rising()
	n := len(rising)
	for k := 0; k < n; {
		if c.rank[rising[k]] >= 0 {
			k++
			continue
		}
		end := k
		for end < n && c.rank[rising[end]] < 0 {
			end++
		}
		var from, gap float64
		switch {
		case k == 0:
			from, gap = c.theta[c.order[0]]-across/2, across/2
		case end == n:
			from, gap = c.theta[rising[k-1]], across/2
		default:
			from = c.theta[rising[k-1]]
			gap = c.theta[rising[end]] - from
		}
		for j := k; j < end; j++ {
			i := rising[j]
			switch stitches[i].Role {
			case fabric.Join:
				c.theta[i] = c.seam
				if k > 0 && !c.open {
					c.theta[i] += ring.Turn
				}
			default:
				c.theta[i] = from + gap*float64(j-k+1)/float64(end-k+1)
			}
		}
		k = end
	}
	for i := range stitches {
		if stitches[i].Role == fabric.FirstHalf {
			if h := c.half(i); h >= 0 {
				c.theta[h] = c.theta[i]
			}
		}
	}
}
