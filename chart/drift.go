package chart

import (
	"whorl/chart/ring"
	"whorl/patterns/stitch"
)

// noDrift moves the fans of a round that stand on the same stitch of fans like them and pass
// over their others, so that each has that stitch over its like: in grit stitch, a single and a
// double crochet in every single one, the singles stand one over another. Fans about what
// they stand on would move farther round with every round, which the fabric does not.
func (w *work) noDrift(c *course, items []ring.Item) {
	c.plumb = nil
	if c.index == 0 || c.reversed != w.courses[c.index-1].reversed || w.courses[c.index-1].hub {
		return
	}
	d := w.courses[c.index-1]
	c.plumb = map[int]bool{}
	total := 0.0
	for i := range items {
		total += items[i].Width + items[i].Before
	}
	if total <= 0 {
		return
	}
	stood := map[int]bool{}
	for i := range c.round.Stitches {
		for _, p := range c.round.Stitches[i].On {
			if p.At.Round == d.index {
				stood[p.At.Stitch] = true
			}
		}
	}
	n := len(items)
	eachFan(items, func(from, end, stitches int) {
		s := &c.round.Stitches[c.order[from%n]]
		if stitches != end-from || len(s.On) != 1 || s.On[0].At.Round != d.index || s.On[0].Into != stitch.Top {
			return // with chains between, or not on a stitch
		}
		below := d.fanOf(s.On[0].At.Stitch)
		if len(below) != stitches {
			return
		}
		at, unlike := -1, false
		for k, j := range below {
			if d.round.Stitches[j].Kind != c.round.Stitches[c.order[(from+k)%n]].Kind {
				return
			}
			unlike = unlike || d.round.Stitches[j].Kind != d.round.Stitches[below[0]].Kind
			switch {
			case j == s.On[0].At.Stitch:
				at = k
			case stood[j]:
				return // an increase in an increase
			}
		}
		if at < 0 || !unlike { // a shell of one kind stands about its place
			return
		}
		// From the middle of the fan to that stitch of it.
		aside := 0.0
		along := items[from%n].Width / 2
		for k := from; k < end; k++ {
			if k > from {
				along += (items[(k-1)%n].Width+items[k%n].Width)/2 + items[k%n].Before
			}
			aside -= along / float64(stitches)
			if k-from == at {
				aside += along
			}
		}
		for k := from; k < end; k++ {
			items[k%n].Base -= aside * ring.Turn / total
			c.plumb[c.order[k%n]] = true
		}
	})
}

// fanOf is the stitches of a round that stand in the place that a stitch of it stands in,
// next to one another and in the order of angles; none where that is no one place.
func (c *course) fanOf(i int) []int {
	n, r := len(c.order), c.rank[i]
	if r < 0 || len(c.round.Stitches[i].On) != 1 {
		return nil
	}
	place := c.round.Stitches[i].On[0]
	in := func(k int) bool {
		on := c.round.Stitches[c.order[(k+n)%n]].On
		return len(on) == 1 && on[0] == place
	}
	from, to := r, r
	for to-from < n-1 && in(from-1) {
		from--
	}
	for to-from < n-1 && in(to+1) {
		to++
	}
	var fan []int
	for k := from; k <= to; k++ {
		fan = append(fan, c.order[(k+n)%n])
	}
	return fan
}
