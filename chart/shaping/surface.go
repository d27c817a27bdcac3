package shaping

import (
	"math"
	"sort"

	"whorl/chart/ring"
)

// space is a point in space, in millimetres of the piece: x to the right, y away
// from the viewer, up.
type space struct{ x, y, up float64 }

func (a space) minus(b space) space { return space{a.x - b.x, a.y - b.y, a.up - b.up} }

func (a space) cross(b space) space {
	return space{a.y*b.up - a.up*b.y, a.up*b.x - a.x*b.up, a.x*b.y - a.y*b.x}
}

func (a space) dot(b space) float64 { return a.x*b.x + a.y*b.y + a.up*b.up }

func (a space) length() float64 { return math.Sqrt(a.dot(a)) }

// hoop is the edge of a round in space: a circle, which waves in and out of the
// surface where it is slack.
type hoop struct {
	r, up float64
	// spine is the part of r that is taken by the chain in the middle of an
	// oval: the hoop is then a stadium as long as the circle, whose straight
	// sides are π times that.
	spine float64
	// outR and outUp is the direction out of the surface.
	outR, outUp float64
	wave
	// seams are the turns at which the stitches that it is the top of meet. An
	// edge that does not wave is straight between them.
	seams []float64
}

// wave is how far an edge leaves the surface, in so many waves a turn.
type wave struct {
	height float64
	waves  int
	// run is how far along a wave its parts end, from 0 to 1: in the middle of
	// its flanks it goes further in the same turn.
	run []float64
}

// perWave is how many straight pieces a wave is drawn in.
const perWave = 24

// at is the point of the hoop at a turn. Turns begin at the back. Along waves
// they are by the length of the edge, so that its stitches are of one width.
func (h *hoop) at(turn float64) space {
	if h.waves == 0 {
		return h.point(turn, 0)
	}
	each := ring.Turn / float64(h.waves)
	whole := math.Floor(turn / each)
	part := turn/each - whole
	k := sort.SearchFloat64s(h.run, part)
	k = max(1, min(k, len(h.run)-1))
	t := (float64(k-1) + (part-h.run[k-1])/(h.run[k]-h.run[k-1])) / float64(len(h.run)-1)
	return h.point((whole+t)*each, h.height*math.Sin(ring.Turn*t))
}

// point is the point at a turn so far out of the surface.
func (h *hoop) point(turn, out float64) space {
	r, up := h.r+h.outR*out, h.up+h.outUp*out
	if h.spine == 0 {
		sin, cos := math.Sincos(turn + math.Pi/2)
		return space{r * cos, r * sin, up}
	}
	// Along the back from right to left, around the left end, and the same
	// again along the front and around the right.
	end, side := math.Max(r-h.spine, 0), math.Pi*h.spine
	half := side + math.Pi*end
	along := (turn/ring.Turn - math.Floor(turn/ring.Turn)) * 2 * half
	front := 1.0
	if along >= half {
		along, front = along-half, -1
	}
	if along <= side {
		return space{front * (side/2 - along), front * end, up}
	}
	sin, cos := math.Sincos((along-side)/math.Max(end, 1e-9) + math.Pi/2)
	return space{front * (end*cos - side/2), front * end * sin, up}
}

// along is the edge from one turn on to another, less than a turn away.
func (h *hoop) along(from, to float64) []space {
	if h.waves > 0 {
		step := ring.Turn / float64(h.waves*perWave)
		l := []space{h.at(from)}
		for k := math.Floor(from/step) + 1; k*step < to-1e-9; k++ {
			if k*step > from+1e-9 {
				l = append(l, h.at(k*step))
			}
		}
		return append(l, h.at(to))
	}
	n := len(h.seams)
	if n < 3 {
		return []space{h.at(from), h.at(to)}
	}
	l := []space{h.straight(from)}
	for k := h.after(from); ; k++ {
		turn := h.seams[k%n]
		turn += ring.Turn * math.Ceil((from-turn)/ring.Turn)
		if turn >= to-1e-9 || k > h.after(from)+n {
			break
		}
		if turn > from+1e-9 {
			l = append(l, h.at(turn))
		}
	}
	return append(l, h.straight(to))
}

// after is the index of the seam that comes next after a turn.
func (h *hoop) after(turn float64) int {
	first := h.seams[0]
	turn -= ring.Turn * math.Floor((turn-first)/ring.Turn)
	return sort.SearchFloat64s(h.seams, turn) % len(h.seams)
}

// straight is the point of the edge at a turn, on the straight line between the
// seams to both sides.
func (h *hoop) straight(turn float64) space {
	n := len(h.seams)
	k := h.after(turn)
	before, next := h.seams[(k+n-1)%n], h.seams[k]
	before += ring.Turn * math.Floor((turn-before)/ring.Turn)
	next = before + math.Mod(next-before+2*ring.Turn, ring.Turn)
	if next-before < 1e-12 {
		return h.at(turn)
	}
	a, b, t := h.at(before), h.at(next), (turn-before)/(next-before)
	return space{a.x + t*(b.x-a.x), a.y + t*(b.y-a.y), a.up + t*(b.up-a.up)}
}

// lengths are how far along it the parts of one wave of a height end.
func (h *hoop) lengths(height float64) []float64 {
	const parts = 48
	l := make([]float64, parts+1)
	each := ring.Turn / float64(h.waves)
	last := h.point(0, 0)
	for k := 1; k <= parts; k++ {
		t := float64(k) / parts
		p := h.point(t*each, height*math.Sin(ring.Turn*t))
		l[k] = l[k-1] + p.minus(last).length()
		last = p
	}
	return l
}

// fold lays the hoop in so many waves, as high as makes it so many times as long
// as it is without them. The height is found by halving: the length grows with
// it.
func (h *hoop) fold(waves int, times float64) {
	h.waves = waves
	length := func(height float64) float64 {
		l := h.lengths(height)
		return l[len(l)-1]
	}
	want := times * length(0)
	lo, hi := 0.0, h.r
	for length(hi) < want && hi < 100*h.r {
		lo, hi = hi, 2*hi
	}
	for range 40 {
		h.height = (lo + hi) / 2
		if length(h.height) < want {
			lo = h.height
		} else {
			hi = h.height
		}
	}
	h.run = h.lengths(h.height)
	all := h.run[len(h.run)-1]
	for k := range h.run {
		h.run[k] /= all
	}
}

// surface is the piece in space: a hoop for every edge, from where the part
// begins, and for every round the turns at which its stitches meet.
type surface struct {
	hoops []hoop
	seams [][]float64
}

// The folds of slack edges.
const (
	showsSlack = fits // less is taken up by the fabric
	inWave     = 5.0  // stitches, at least, or the wave would not be seen
	reachOut   = 0.8  // how high a wave is about, in heights of a round
)

// surface lays the piece out in space, the crown up.
func (p *piece) surface() surface {
	nodes := p.meridian()
	turns := p.turns()
	s := surface{hoops: make([]hoop, len(nodes)), seams: make([][]float64, len(p.rounds))}
	up := func(z float64) float64 {
		if p.brimFirst {
			return z
		}
		return -z
	}
	for i, n := range nodes {
		s.hoops[i].r, s.hoops[i].up = n.r, up(n.z)
		if p.oval {
			s.hoops[i].spine = p.start.r
		}
	}
	for i := range s.hoops {
		s.out(i, p.brimFirst)
	}
	for i, c := range p.rounds {
		s.seams[i] = seams(p.form.Rounds[c.index].Widths, turns[c.index])
		s.hoops[i+1].seams = s.seams[i]
	}
	for from := 0; from < len(p.rounds); from++ {
		to := from
		for to < len(p.rounds) && p.rounds[to].strain < -showsSlack {
			to++
		}
		if to > from {
			s.fold(p, from, to)
			from = to
		}
	}
	return s
}

// fold lays a run of slack rounds in folds, as many in all of them, so that
// they go on from round to round. Where there are too few stitches for them
// they run together by twos.
func (s *surface) fold(p *piece, from, to int) {
	waves := 0
	for i := from; i < to; i++ {
		waves = max(waves, wavesOf(p.rounds[i], len(s.seams[i])))
	}
	for i := from; i < to; i++ {
		h, n := &s.hoops[i+1], waves
		if h.r < 1e-6 || len(s.seams[i]) < 3 {
			continue
		}
		for n > 3 && len(s.seams[i]) < 2*n {
			n /= 2
		}
		h.fold(n, 1/(1+p.rounds[i].strain))
	}
}

// wavesOf is how many folds an edge of so many stitches is likely to lie in: a
// number that can be halved.
func wavesOf(c course, stitches int) int {
	// A wave of slope m is (1 + m²/4) times as long as the circle, nearly.
	slope := 2 * math.Sqrt(1/(1+c.strain)-1)
	height := reachOut * math.Max(c.form.Height, 1)
	n := math.Min(slope*c.form.R/height, float64(stitches)/inWave)
	best := 3
	for _, k := range []int{4, 6, 8, 12, 16, 24, 32, 48, 64} {
		if math.Abs(float64(k)-n) < math.Abs(float64(best)-n) {
			best = k
		}
	}
	return best
}

// out sets the direction out of the surface at a hoop: square to the mean of
// the rounds on both sides of it.
func (s *surface) out(i int, brimFirst bool) {
	var r, up float64
	for _, j := range []int{i - 1, i} {
		if j < 0 || j+1 >= len(s.hoops) {
			continue
		}
		dr, du := s.hoops[j+1].r-s.hoops[j].r, s.hoops[j+1].up-s.hoops[j].up
		l := math.Hypot(dr, du)
		if l < 1e-9 {
			continue
		}
		// Down from the crown the surface turns its outside to the right.
		x, y := -du/l, dr/l
		if brimFirst {
			x, y = -x, -y
		}
		r, up = r+x, up+y
	}
	l := math.Hypot(r, up)
	if l < 1e-9 {
		r, up, l = 0, 1, 1
	}
	s.hoops[i].outR, s.hoops[i].outUp = r/l, up/l
}

// seams are the turns half way between the stitches of a round that take room.
func seams(widths, turns []float64) []float64 {
	var at []float64
	for j, w := range widths {
		if w > 0 {
			at = append(at, turns[j])
		}
	}
	sort.Float64s(at) // a round that was turned is in the other order
	n := len(at)
	l := make([]float64, n)
	for k := range at {
		next := at[(k+1)%n]
		if k == n-1 {
			next += ring.Turn
		}
		l[k] = (at[k] + next) / 2
	}
	return l
}
