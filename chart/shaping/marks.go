package shaping

import (
	"math"
	"sort"

	"whorl/chart/ring"
	"whorl/patterns/fabric"
	"whorl/patterns/stitch"
)

// mark is an increase or a decrease: where on the turn it is.
type mark struct {
	turn   float64 // radians, in the direction of the first round
	less   bool    // a decrease
	change int     // stitches gained or lost
	// even is set in a round that keeps its count: there the increases and
	// decreases make the stitch pattern and not the shape.
	even bool
}

// marks are the increases and decreases of every round of the piece.
func (p *piece) marks() [][]mark {
	turns := p.turns()
	all := make([][]mark, len(p.rounds))
	for i, c := range p.rounds {
		all[i] = p.roundMarks(c, turns[c.index])
		for k := range all[i] {
			all[i][k].even = c.change == 0
		}
	}
	return all
}

// turns places every stitch of every round on the turn: over the places that it
// stands on, as the charts do.
func (p *piece) turns() [][]float64 {
	turns := make([][]float64, len(p.part.Rounds))
	for i, r := range p.part.Rounds {
		turns[i] = make([]float64, len(r.Stitches))
		widths := p.form.Rounds[i].Widths
		var items []ring.Item
		var which []int
		for j := range r.Stitches {
			if widths[j] > 0 {
				which = append(which, j)
			}
		}
		if r.Reversed {
			for a, b := 0, len(which)-1; a < b; a, b = a+1, b-1 {
				which[a], which[b] = which[b], which[a]
			}
		}
		places := map[fabric.Ref]int{}
		last, any := 0.0, false
		for _, j := range which {
			it := ring.Item{Width: widths[j], Free: true}
			if base, ok := p.base(&r.Stitches[j], turns); ok {
				if any {
					base = near(base, last)
				}
				last, any = base, true
				it.Base, it.Free = base, false
				if on := r.Stitches[j].On; len(on) == 1 {
					if places[on[0].At] == 0 {
						places[on[0].At] = len(places) + 1
					}
					it.Place = places[on[0].At]
				}
			}
			items = append(items, it)
		}
		for k, turn := range ring.Angles(items, ring.Stiffness) {
			turns[i][which[k]] = turn
		}
	}
	return turns
}

// near is an angle moved by whole turns to be within half of one of another.
func near(a, b float64) float64 { return a - ring.Turn*math.Round((a-b)/ring.Turn) }

// base is the mean of where a stitch's places are on the turn; false when it
// stands on none that has an angle.
func (p *piece) base(s *fabric.Stitch, turns [][]float64) (float64, bool) {
	sum, n, first := 0.0, 0, 0.0
	add := func(ref fabric.Ref) {
		if ref.Round < 0 || ref.Round >= len(turns) || ref.Stitch < 0 || ref.Stitch >= len(turns[ref.Round]) || p.part.Rounds[ref.Round].Ring {
			return
		}
		t := turns[ref.Round][ref.Stitch]
		if n == 0 {
			first = t
		}
		sum, n = sum+near(t, first), n+1
	}
	for _, on := range s.On {
		switch on.Into {
		case stitch.Ring, stitch.RowEnd:
		case stitch.Space:
			add(on.At)
			add(on.Last)
		default:
			add(on.At)
		}
	}
	if n == 0 {
		return 0, false
	}
	return sum / float64(n), true
}

// roundMarks are the marks of a round: a place with several stitches in it is an
// increase, several places worked together a decrease.
func (p *piece) roundMarks(c course, turns []float64) []mark {
	var l []mark
	type fan struct {
		n   int
		sum float64
		at  float64
	}
	fans := map[fabric.Ref]*fan{}
	var order []fabric.Ref
	for j := range c.round.Stitches {
		s := &c.round.Stitches[j]
		if !s.Counts || len(s.On) == 0 {
			continue
		}
		k := s.Counted()
		if k.Shape == stitch.Together && k.Legs > 1 {
			if s.Role == fabric.FirstHalf || len(s.On) > 1 && s.On[0].At != s.On[1].At {
				l = append(l, mark{turn: turns[j], less: true, change: k.Legs - 1})
			}
			continue
		}
		on := s.On[0]
		switch on.Into {
		case stitch.Space, stitch.Ring, stitch.RowEnd, stitch.Between, stitch.Underside:
			continue
		}
		f := fans[on.At]
		if f == nil {
			f = &fan{at: turns[j]}
			fans[on.At] = f
			order = append(order, on.At)
		}
		f.n++
		f.sum += near(turns[j], f.at)
	}
	for _, ref := range order {
		if f := fans[ref]; f.n > 1 {
			l = append(l, mark{turn: f.sum / float64(f.n), change: f.n - 1})
		}
	}
	sort.SliceStable(l, func(a, b int) bool { return l[a].turn < l[b].turn })
	return l
}

// joins are the pairs of marks of two rounds that belong together: each of the
// later round and what is nearest to it of its own kind in the earlier, and
// both where it lies half way between two. What is further off than marks of the
// round with more of them lie apart belongs to none.
func joins(below, above []mark) [][2]int {
	var l [][2]int
	limit := ring.Turn / float64(max(len(below), len(above), 4))
	for j, m := range above {
		best := limit
		for _, o := range below {
			if o.less == m.less {
				best = math.Min(best, math.Abs(near(m.turn, o.turn)-o.turn))
			}
		}
		for i, o := range below {
			if d := math.Abs(near(m.turn, o.turn) - o.turn); o.less == m.less && d <= math.Min(best*1.1+1e-6, limit) {
				l = append(l, [2]int{i, j})
			}
		}
	}
	return l
}
