package chart

import (
	"whorl/chart/ring"
	"whorl/patterns/fabric"
	"whorl/patterns/stitch"
)

// Two stitches that are worked together stand no farther apart on paper than so many
// heights of the round that they meet in, so that a leg leans by 33° at most, and those that
// they stand on, round by round, by so much farther.
const (
	meets     = 1.3
	meetsOver = 0.12
)

// findMeeting finds how far apart on paper the neighbours in every round stand at most, in
// heights, on the way to where they are worked together.
func (w *work) findMeeting() {
	for _, c := range w.courses {
		c.meeting = map[int]float64{}
		c.order, c.rank = c.order[:0], make([]int, len(c.round.Stitches))
		for _, i := range c.rising() {
			c.rank[i] = -1
			if c.takesRoom(i) {
				c.rank[i] = len(c.order)
				c.order = append(c.order, i)
			}
		}
	}
	for k := len(w.courses) - 1; k > 0; k-- {
		c, next := w.courses[k-1], w.courses[k]
		feet := make([][]fabric.Place, len(next.order)) // rising
		for r, i := range next.order {
			feet[r] = w.feetOf(c, next.round.Stitches[i].On)
			for j := 1; j < len(feet[r]); j++ {
				a, b := feet[r][j-1], feet[r][j]
				if apart := (c.form.Widths[a.At.Stitch] + c.form.Widths[b.At.Stitch]) / 2; apart*w.stretch(c) > meets*next.form.Height {
					c.keepNear(a, b, meets)
				}
			}
		}
		for r, most := range next.meeting {
			a, b := feet[r], feet[(r+1)%len(feet)]
			if len(a) > 0 && len(b) > 0 {
				c.keepNear(a[len(a)-1], b[0], most+meetsOver)
			}
		}
	}
}

// feetOf is the places of a stitch in the order of rising angle, where all are stitches of
// the round.
func (w *work) feetOf(c *course, on []fabric.Place) []fabric.Place {
	for _, p := range on {
		if w.at(p.At) != c || p.Into == stitch.Space || p.Into == stitch.Between || p.Into == stitch.RowEnd || c.rank[p.At.Stitch] < 0 {
			return nil
		}
	}
	if n := len(on); n > 1 && c.rank[on[n-1].At.Stitch] == (c.rank[on[n-2].At.Stitch]+len(c.order)-1)%len(c.order) {
		up := make([]fabric.Place, n)
		for k := range on {
			up[n-1-k] = on[k]
		}
		return up
	}
	return on
}

// keepNear notes how far apart two neighbours stand at most.
func (c *course) keepNear(a, b fabric.Place, most float64) {
	from := c.rank[a.At.Stitch]
	if len(c.order) < 4 || c.rank[b.At.Stitch] != (from+1)%len(c.order) {
		return
	}
	if was, ok := c.meeting[from]; !ok || most < was {
		c.meeting[from] = most
	}
}

// meet draws those stitches of a round closer that later rounds work together; what they
// are drawn closer by is left at their sides.
func (w *work) meet(c *course, items []ring.Item) {
	if len(c.meeting) == 0 || !w.onDisc() || c.index+1 >= len(w.courses) {
		return
	}
	tall := w.courses[c.index+1].form.Height / w.stretch(c)
	n := len(items)
	for k := range items {
		most, ok := c.meeting[k]
		a, b := &items[k], &items[(k+1)%n]
		over := (a.Width+b.Width)/2 + b.Before - most*tall
		if !ok || over <= 0 {
			continue
		}
		b.Before -= over
		items[k].Before += over / 2
		items[(k+2)%n].Before += over / 2
	}
}
