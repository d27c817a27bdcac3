package output

import (
	"math"

	"github.com/tdewolff/canvas"
)

// arc is an arc of a circle. The pen goes from angle from, turning by turn
// (radians, clockwise on the page when positive).
type arc struct {
	cx, cy, r  float64
	from, turn float64
	x, y       float64 // its end, exactly
}

// newArc finds the circle of an arc given as SVG gives it, enlarging one that
// is too small to reach (SVG 1.1, appendix F.6.5 and F.6.6).
func newArc(x0, y0, r float64, large, sweep bool, x1, y1 float64) arc {
	hx, hy := (x0-x1)/2, (y0-y1)/2
	half := math.Hypot(hx, hy)
	f := 0.0
	if half < r {
		f = math.Sqrt(r*r/(half*half) - 1)
	} else {
		r = half
	}
	if large == sweep {
		f = -f
	}
	a := arc{r: r, x: x1, y: y1}
	a.cx, a.cy = (x0+x1)/2+f*hy, (y0+y1)/2-f*hx
	a.from = math.Atan2(y0-a.cy, x0-a.cx)
	a.turn = math.Atan2(y1-a.cy, x1-a.cx) - a.from
	if sweep && a.turn < 0 {
		a.turn += 2 * math.Pi
	} else if !sweep && a.turn > 0 {
		a.turn -= 2 * math.Pi
	}
	return a
}

// at is the point reached after a part of the turn, 0 to 1.
func (a arc) at(part float64) (x, y float64) {
	sin, cos := math.Sincos(a.from + part*a.turn)
	return a.cx + a.r*cos, a.cy + a.r*sin
}

// withoutArcs is a path whose arcs are cubic curves: those of circles in pieces of
// a twelfth of a turn at the most, which are within a millionth of the radius of
// them, where a quarter of a turn in one piece would be seen on a large circle.
func withoutArcs(p *canvas.Path) *canvas.Path {
	d := p.Data()
	if hasOvals(d) {
		return p.ReplaceArcs()
	}
	var out []float64
	for i := 0; i < len(d); i += commandLength(d[i]) {
		n := commandLength(d[i])
		if d[i] != canvas.ArcToCmd {
			out = append(out, d[i:i+n]...)
			continue
		}
		a := newArc(d[i-3], d[i-2], d[i+1], d[i+4] == 1 || d[i+4] == 3, d[i+4] >= 2, d[i+5], d[i+6])
		pieces := int(math.Ceil(math.Abs(a.turn) / (math.Pi / 6)))
		k := 4. / 3 * math.Tan(a.turn/float64(4*pieces))
		x0, y0 := d[i-3], d[i-2]
		for j := 1; j <= pieces; j++ {
			x, y := a.at(float64(j) / float64(pieces))
			if j == pieces {
				x, y = a.x, a.y
			}
			out = append(out, canvas.CubeToCmd, x0-k*(y0-a.cy), y0+k*(x0-a.cx), x+k*(y-a.cy), y-k*(x-a.cx), x, y, canvas.CubeToCmd)
			x0, y0 = x, y
		}
	}
	return canvas.NewPathFromData(out)
}

// arcError is how far, in millimetres, the middle of an arc may be moved by
// the rounding of its numbers.
const arcError = 0.008

// arc writes an arc of a circle in as few pieces as keep it in place: the
// nearer an arc comes to a half turn, the further the rounding of its ends
// and radius would move its middle.
func (w *pathData) arc(a arc) {
	for n := 1; ; n++ {
		if r, ok := w.roundedRadius(a, n); ok || n == 8 {
			w.arcs(a, n, r)
			return
		}
	}
}

// roundedRadius finds a radius in hundredths with which all of n equal pieces
// of an arc stay in place when their ends are rounded. A radius just too small
// is as good as one just right: it is enlarged to reach.
func (w *pathData) roundedRadius(a arc, n int) (int, bool) {
	for _, r := range []int{hundredths(a.r), int(a.r * 100)} {
		if r > 0 && w.staysPut(a, n, r) {
			return r, true
		}
	}
	return max(1, hundredths(a.r)), false
}

func (w *pathData) staysPut(a arc, n, r int) bool {
	large := math.Abs(a.turn)/float64(n) > math.Pi
	x, y := w.x, w.y
	for i := 1; i <= n; i++ {
		px, py := a.end(i, n)
		if px == x && py == y {
			return false
		}
		drawn := newArc(float64(x)/100, float64(y)/100, float64(r)/100, large, a.turn > 0, float64(px)/100, float64(py)/100)
		mx, my := drawn.at(0.5)
		tx, ty := a.at((float64(i) - 0.5) / float64(n))
		if math.Hypot(mx-tx, my-ty) > arcError {
			return false
		}
		x, y = px, py
	}
	return true
}

// end is the rounded end of piece i of n.
func (a arc) end(i, n int) (x, y int) {
	if i == n {
		return hundredths(a.x), hundredths(a.y)
	}
	px, py := a.at(float64(i) / float64(n))
	return hundredths(px), hundredths(py)
}

func (w *pathData) arcs(a arc, n, r int) {
	large, sweep := 0, 0
	if math.Abs(a.turn)/float64(n) > math.Pi {
		large = 1
	}
	if a.turn > 0 {
		sweep = 1
	}
	for i := 1; i <= n; i++ {
		x, y := a.end(i, n)
		if x == w.x && y == w.y {
			w.lineTo(x, y)
			continue
		}
		w.command('A', []int{r, r, 0, large, sweep}, x, y)
		w.x, w.y = x, y
	}
}
