package geometry

import (
	"fmt"
	"math"

	"whorl/patterns/fabric"
	"whorl/patterns/stitch"
)

// look is how a stitch is worked, as far as its size goes.
type look struct {
	kind stitch.Kind
	in   stitch.Into
}

// size is the width along the edge and the rise of a stitch.
type size struct{ width, height float64 }

// size is the gauge's size of a stitch of the round being measured, looked up
// once a part.
func (m *measurer) size(k stitch.Kind, in stitch.Into) size {
	key := look{k, in}
	s, ok := m.sizes[key]
	if !ok {
		s = size{m.gauge.Width(k, in), m.gauge.Height(k, in)}
		m.sizes[key] = s
	}
	if m.scales != nil {
		s = size{s.width * m.scale.width, s.height * m.scale.height}
	}
	return s
}

// stitch sets the top and the width of stitch j of round i. below is the level
// of the round below, and last the index of the second half of a stitch that
// is completed at the join, or -1.
func (m *measurer) stitch(i, j, last int, below float64) error {
	r, f := m.part.Rounds[i], &m.rounds[i]
	s := &r.Stitches[j]
	if !known(s.Kind) || s.As.Is() && !known(s.As) {
		return fmt.Errorf("%s, stitch %d is no stitch that is known", r.Label, j+1)
	}
	places := s.On
	if s.Role == fabric.FirstHalf && last > j {
		// The whole stands on the places of both halves.
		places = append(places[:len(places):len(places)], r.Stitches[last].On...)
	}
	base, err := m.base(i, j, places, below)
	if err != nil {
		return err
	}

	m.inherited[i][j] = base - below

	switch {
	case s.Role == fabric.Join || s.Role == fabric.Travel:
		f.Tops[j] = base
		return nil
	case s.Role == fabric.Start && !(s.Counts && s.As.Is()):
		k := ofChains(s.Chains)
		f.Tops[j] = base + m.size(k, stitch.Top).height
		if s.Counts {
			f.Widths[j] = m.size(k, stitch.Top).width
		}
		return nil
	case s.Role == fabric.LastHalf && f.Widths[j] > 0:
		return nil // set with the first half
	case hangs(s):
		// Until its neighbours are known it is where the stitch before it is.
		f.Tops[j] = below
		if j > 0 {
			f.Tops[j] = f.Tops[j-1]
		}
		f.Widths[j] = m.size(s.Kind, stitch.Top).width
		return nil
	}

	k, in := s.Counted(), stitch.Top
	if s.Role != fabric.Start && len(s.On) > 0 {
		in = s.On[0].Into
	}
	if !r.Row && plainerInto(in) == stitch.BackLoop {
		in = stitch.Top // only rows to and fro close up as ribbing
	}
	z := m.size(k, in)
	top := base + z.height
	if plainerInto(in) == stitch.FrontPost {
		// The place is half way up a post, so the stitch is so much longer
		// than what the round gains by it.
		top += m.size(k, stitch.Top).height / 2
	}
	if k.Manner&stitch.Spike != 0 {
		top = math.Max(top, below+z.height)
	}
	f.Tops[j], f.Widths[j] = top, z.width
	if s.Role == fabric.FirstHalf && last > j {
		f.Widths[j] /= 2
		f.Tops[last], f.Widths[last] = f.Tops[j], f.Widths[j]
	}
	return nil
}

// lastHalf is the index of the part of a group that is worked at the join of
// the round, or -1.
func lastHalf(r *fabric.Round) int {
	for j := len(r.Stitches) - 1; j >= 0; j-- {
		if r.Stitches[j].Role == fabric.LastHalf {
			return j
		}
	}
	return -1
}

// base is the mean level of places that stitch j of round i stands on: that of
// the round below when there are none.
func (m *measurer) base(i, j int, places []fabric.Place, below float64) (float64, error) {
	if len(places) == 0 {
		return below, nil
	}
	sum := 0.0
	for k := range places {
		l, ok := m.level(i, j, &places[k], below)
		if !ok {
			return 0, fmt.Errorf("%s, stitch %d stands on a place that is not there",
				m.part.Rounds[i].Label, j+1)
		}
		sum += l
	}
	return sum / float64(len(places)), nil
}

// evens is how much of what a stitch has from the rounds under it, standing out
// from their mean level, is still there for the next round: the fabric evens
// out, so that unlike columns do not grow apart for ever (common practice, no
// source).
const evens = 0.5

// level is the level of a place that stitch j of round i stands on; false when
// there is no such place or it is not worked yet.
func (m *measurer) level(i, j int, p *fabric.Place, below float64) (float64, bool) {
	l, ok := m.worn(i, j, p, below)
	if ok && p.Into != stitch.Ring && p.Into != stitch.RowEnd && p.Into != stitch.Space && p.At.Round < i {
		l -= (1 - evens) * m.inherited[p.At.Round][p.At.Stitch]
	}
	return l, ok
}

// worn is the level of a place as it was worked.
func (m *measurer) worn(i, j int, p *fabric.Place, below float64) (float64, bool) {
	switch p.Into {
	case stitch.Ring:
		return 0, true
	case stitch.RowEnd:
		if p.Part < 0 || p.Part >= m.parts {
			return 0, false
		}
		return below, true // 0 for the first round of a part
	}
	if !m.worked(i, j, p.At) || p.Into > stitch.BackBump {
		return 0, false
	}
	tops := m.rounds[p.At.Round].Tops
	top := tops[p.At.Stitch]
	switch p.Into {
	case stitch.FrontPost, stitch.BackPost:
		k := m.part.At(p.At).Counted()
		return top - m.size(k, stitch.Top).height/2, true
	case stitch.Between:
		if p.At.Stitch > 0 {
			return (top + tops[p.At.Stitch-1]) / 2, true
		}
	case stitch.Space:
		if p.Last.Round != p.At.Round || !m.worked(i, j, p.Last) {
			return 0, false
		}
		return m.mean(p.At.Round, p.At.Stitch, p.Last.Stitch, i), true
	}
	return top, true
}

// worked reports whether the stitch at ref is made before stitch j of round i.
func (m *measurer) worked(i, j int, ref fabric.Ref) bool {
	if ref.Round < 0 || ref.Stitch < 0 || ref.Round > i {
		return false
	}
	return ref.Round == i && ref.Stitch < j ||
		ref.Round < i && ref.Stitch < len(m.rounds[ref.Round].Tops)
}

// mean is the mean level of the stitches of a round from a run's first to its
// last; a run whose last comes before its first goes on over the join.
func (m *measurer) mean(round, first, last, now int) float64 {
	if round == now { // its sums are not made yet
		return (m.rounds[round].Tops[first] + m.rounds[round].Tops[last]) / 2
	}
	sums := m.sums[round]
	n, sum := last-first+1, sums[last]
	if first > 0 {
		sum -= sums[first-1]
	}
	if last < first {
		n += len(sums)
		sum += sums[len(sums)-1]
	}
	return sum / float64(n)
}

// ofChains is the stitch that so many chains at the beginning of a round are
// worked for: none of no chains, the tallest of any number beyond.
func ofChains(n int) stitch.Kind {
	if n < 1 {
		return stitch.Kind{}
	}
	return stitch.Of(min(stitch.Single+stitch.Base(min(n, 100))-1, stitch.TripleTreble))
}

// hangs reports whether a stitch hangs between its neighbours.
func hangs(s *fabric.Stitch) bool {
	return s.Role == fabric.Worked && s.Kind.Base == stitch.Chain && len(s.On) == 0
}

// hang gives the runs of chains of a round their levels: those of the
// neighbours they hang between, and a parabolic arch whose rise is a share of
// the run's length. A run at the edge of a row hangs level.
func (m *measurer) hang(i int, below float64) {
	r, f := m.part.Rounds[i], &m.rounds[i]
	n := len(r.Stitches)
	ends := func(j int) bool { return f.Widths[j] > 0 && !hangs(&r.Stitches[j]) }
	first, last := -1, -1
	for j := 0; j < n; j++ {
		if ends(j) {
			if first < 0 {
				first = j
			}
			last = j
		}
	}
	if first < 0 {
		level := below + m.size(stitch.Of(stitch.Chain), stitch.Top).height
		m.arch(i, 0, n, hook{level: level}, hook{level: level}, 0)
		return
	}
	at := func(j int) hook { return hook{f.Tops[j], m.inherited[i][j]} }
	from := first
	for j := first + 1; j <= last; j++ {
		if ends(j) {
			m.arch(i, from+1, j, at(from), at(j), m.slack(i, from, j))
			from = j
		}
	}
	if r.Closing != fabric.Open {
		m.arch(i, last+1, n+first, at(last), at(first), m.slack(i, last, first))
		return
	}
	m.arch(i, 0, first, at(first), at(first), 0)
	m.arch(i, last+1, n, at(last), at(last), 0)
}

// longRun is how many chains a run has at least that hangs level where it has no slack:
// shorter ones are drawn up by what is worked into them.
const longRun = 8

// slack is the share of its length that the run of chains between two stitches of a round
// rises by in its middle: none where it is long and no longer than what it passes over, as
// the handle of a basket.
func (m *measurer) slack(i, from, to int) float64 {
	r, rise := m.part.Rounds[i], m.gauge.value[chainArch]
	a, b := r.Stitches[from].On, r.Stitches[to].On
	if i == 0 || len(a) != 1 || len(b) != 1 || a[0].At.Round != i-1 || b[0].At.Round != i-1 {
		return rise
	}
	below, under := m.part.Rounds[i-1], m.rounds[i-1].Widths
	first, last := a[0].At.Stitch, b[0].At.Stitch
	if min(first, last) < 0 || max(first, last) >= len(under) || first == last {
		return rise
	}
	if r.Reversed != below.Reversed {
		first, last = last, first
	}
	passed := 0.0
	for j := (first + 1) % len(under); j != last; j = (j + 1) % len(under) {
		passed += under[j]
	}
	length, chains := 0.0, 0
	for j := (from + 1) % len(r.Stitches); j != to; j = (j + 1) % len(r.Stitches) {
		if hangs(&r.Stitches[j]) {
			length += m.rounds[i].Widths[j]
			chains++
		}
	}
	if chains >= longRun && length <= passed {
		return 0
	}
	return rise
}

// hook is what a run of chains hangs from at one end: the level of a stitch's top, and how
// much of that it has from the rounds under it.
type hook struct{ level, inherited float64 }

// arch sets the tops of the hanging stitches of round i among those from one index up to
// another, counted on over the join, between two hooks.
func (m *measurer) arch(i, from, to int, left, right hook, rise float64) {
	r, f := m.part.Rounds[i], &m.rounds[i]
	n := len(r.Stitches)
	length := 0.0
	for j := from; j < to; j++ {
		if hangs(&r.Stitches[j%n]) {
			length += f.Widths[j%n]
		}
	}
	if length == 0 {
		return
	}
	done := 0.0
	for j := from; j < to; j++ {
		s := &r.Stitches[j%n]
		if !hangs(s) {
			continue
		}
		w := f.Widths[j%n]
		t := (done + w/2) / length
		done += w
		f.Tops[j%n] = left.level + (right.level-left.level)*t + 4*t*(1-t)*rise*length
		m.inherited[i][j%n] = left.inherited + (right.inherited-left.inherited)*t
		if s.Kind.Shape == stitch.Picot {
			f.Tops[j%n] += m.size(s.Kind, stitch.Top).height
		}
	}
}
