package geometry

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"sort"
)

// Change is something that is spread over a round: it uses so many of its
// places and leaves so many stitches.
type Change struct{ Takes, Makes int }

// The usual changes.
var (
	Increase = Change{Takes: 1, Makes: 2}
	Decrease = Change{Takes: 2, Makes: 1}
)

// Spacing is changes spread over the places of a round.
type Spacing struct {
	Change
	// Before is how many plain places come before each change, in order, and
	// After how many are left after the last.
	Before []int
	After  int
}

// most is the largest number of places that is taken for a round.
const most = 1_000_000

// Shares divides total over n shares that are as equal as can be: none is more
// than 1 larger than another, nor is any run of neighbours more than 1 larger
// than another as long, counted round in a circle. They are symmetric about the
// first: the second is equal to the last, and so on. It is nil when n is below
// 1, total below 0, or either above a million.
func Shares(n, total int) []int {
	if n < 1 || total < 0 || n > most || total > most {
		return nil
	}
	// The shares end at the whole numbers nearest to equal steps of total/n,
	// counted from half a step before 0, so that the circle turns over about
	// the middle of the first share. Where that would put an end on a half,
	// which cannot be rounded the same way from both sides, the steps start
	// at another share's middle.
	first := -1 // in half steps
	if period := n / gcd(n, total); period%2 == 1 {
		first = period - 1
	}
	end := func(halves int) int { return ((halves+2*n)*total + n) / (2 * n) }
	s := make([]int, n)
	for i := range s {
		s[i] = end(first+2*i+2) - end(first+2*i)
	}
	return s
}

func gcd(a, b int) int {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

// Even spreads n changes over a round of m places: the gaps between them, over
// the join too, differ by 1 at most and are symmetric about the round. The
// round ends with a change, as in "*sc in next 5 sts, inc; rep from *".
func Even(n, m int, c Change) (Spacing, error) {
	s := Spacing{Change: c}
	switch {
	case c.Takes < 1 || c.Makes < 0:
		return s, errors.New("a change uses at least one stitch")
	case m < 1:
		return s, errors.New("there are no stitches to spread over")
	case m > most:
		return s, fmt.Errorf("a round has no more than %d stitches", most)
	case n < 0:
		return s, fmt.Errorf("%d changes cannot be spread", n)
	case n > m/c.Takes:
		return s, fmt.Errorf("%d changes use %d stitches each, and the round has only %d: no more than %d fit",
			n, c.Takes, m, m/c.Takes)
	case n == 0:
		s.After = m
		return s, nil
	}
	s.Before = Shares(n, m-n*c.Takes)
	return s, nil
}

// Places is the number of places of the round, and Leaves the number of
// stitches it has when it is worked.
func (s Spacing) Places() int { return s.plain() + len(s.Before)*s.Takes }
func (s Spacing) Leaves() int { return s.plain() + len(s.Before)*s.Makes }

func (s Spacing) plain() int {
	n := s.After
	for _, b := range s.Before {
		n += b
	}
	return n
}

// Centred is the spacing with half of the first gap moved behind the last
// change, so that the two sides of the join, or the two edges of a row, are
// alike.
func (s Spacing) Centred() Spacing {
	if len(s.Before) == 0 {
		return s
	}
	gap := s.Before[0] + s.After
	s.Before = slices.Clone(s.Before)
	s.After = gap / 2
	s.Before[0] = gap - s.After
	return s
}

// Stacked is the spacing turned so that its changes lie as nearly as can be
// over those of the round below, counted by their share of the round; the
// number of changes may differ.
func (s Spacing) Stacked(below Spacing) Spacing { return s.turned(below, 0) }

// Staggered is the spacing turned so that its changes lie as nearly as can be
// half way between those of the round below.
func (s Spacing) Staggered(below Spacing) Spacing { return s.turned(below, 0.5) }

// turned is the spacing turned so that the changes lie at a part of the way
// from each change below to the next: of all the ways to divide the gap at the
// join, that with the least sum of squares, and of equals the one that is
// turned least.
func (s Spacing) turned(below Spacing, part float64) Spacing {
	if len(s.Before) == 0 || len(below.Before) == 0 {
		return s
	}
	aims := below.made()
	gaps := slices.Clone(aims)
	for i := range aims {
		next := aims[(i+1)%len(aims)]
		if i+1 == len(aims) {
			next++
		}
		gaps[i] = math.Mod(aims[i]+part*(next-aims[i]), 1)
	}
	sort.Float64s(gaps)
	gap := s.Before[0] + s.After
	best, least := s, math.Inf(1)
	for after := 0; after <= gap; after++ {
		t := s
		t.Before = slices.Clone(s.Before)
		t.Before[0], t.After = gap-after, after
		cost := 0.0
		for _, x := range t.taken() {
			d := apart(gaps, x)
			cost += d * d
		}
		if cost < least-1e-12 {
			best, least = t, cost
		}
	}
	return best
}

// taken is where the middle of each change lies, as a share of the round's
// places; made the same as a share of the stitches it leaves.
func (s Spacing) taken() []float64 { return s.middles(s.Takes, s.Places()) }
func (s Spacing) made() []float64  { return s.middles(s.Makes, s.Leaves()) }

func (s Spacing) middles(each, all int) []float64 {
	x := make([]float64, len(s.Before))
	at := 0
	for i, b := range s.Before {
		at += b
		x[i] = (float64(at) + float64(each)/2) / math.Max(1, float64(all))
		at += each
	}
	return x
}

// apart is how far x is from the nearest of the sorted points of a circle of
// length 1.
func apart(points []float64, x float64) float64 {
	i := sort.SearchFloat64s(points, x)
	d := 1.0
	for _, j := range []int{i - 1, i} {
		p := points[(j+len(points))%len(points)]
		e := math.Abs(x - p)
		d = math.Min(d, math.Min(e, 1-e))
	}
	return d
}

// Block is a run of numbers that is repeated.
type Block struct {
	Times int
	Runs  []int
}

// Blocks writes a list of numbers as repeats, for saying it in few words: 5 6 5
// 6 5 is twice "5 6" and once "5". From the left, the repeat that covers most
// is taken, and the shortest of those.
func Blocks(runs []int) []Block {
	const longest = 16 // a repeat that can still be kept in mind
	var out []Block
	for i := 0; i < len(runs); {
		best := Block{1, runs[i : i+1]}
		for q := 1; q <= longest && i+2*q <= len(runs); q++ {
			times := 1
			for i+(times+1)*q <= len(runs) && slices.Equal(runs[i:i+q], runs[i+times*q:i+(times+1)*q]) {
				times++
			}
			if times > 1 && times*q > best.Times*len(best.Runs) {
				best = Block{times, runs[i : i+q]}
			}
		}
		n := best.Times * len(best.Runs)
		if last := len(out) - 1; n == 1 && last >= 0 && out[last].Times == 1 {
			out[last].Runs = runs[i-len(out[last].Runs) : i+1]
		} else {
			out = append(out, best)
		}
		i += n
	}
	return out
}

// PickUp is stitches picked up evenly along the ends of rows.
type PickUp struct {
	// Each is the number of stitches in each row end.
	Each []int
	// Stitches in every so many Rows, in lowest terms.
	Stitches, Rows int
	// Markers divide the edge in quarters.
	Markers [3]Marker
}

// Marker is a place along an edge: after so many rows (which may be a fraction:
// within a row) with so many stitches picked up before it.
type Marker struct {
	Rows     float64
	Stitches int
}

// AlongRows spreads stitches picked up along the ends of rows, so that each
// quarter of the edge has its share to the nearest stitch.
func AlongRows(stitches, rows int) (PickUp, error) {
	var p PickUp
	switch {
	case rows < 1:
		return p, errors.New("there are no row ends to pick up along")
	case stitches < 1:
		return p, errors.New("there are no stitches to pick up")
	case rows > most || stitches > most:
		return p, fmt.Errorf("an edge has no more than %d rows or stitches", most)
	}
	p.Each = make([]int, rows)
	end := func(i int) int { return (2*i*stitches + rows) / (2 * rows) }
	for i := range p.Each {
		p.Each[i] = end(i+1) - end(i)
	}
	g := gcd(stitches, rows)
	p.Stitches, p.Rows = stitches/g, rows/g
	for q := range p.Markers {
		p.Markers[q] = Marker{float64((q+1)*rows) / 4, ((q+1)*stitches + 2) / 4}
	}
	return p, nil
}
