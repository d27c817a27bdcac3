package output

import (
	"math"
	"strconv"

	"github.com/tdewolff/canvas"
)

// hundredths is a length in the units of an SVG, each a hundredth of a
// millimetre. Relative coordinates are differences of such whole numbers, so
// roundings never add up.
func hundredths(x float64) int { return int(math.Round(x * 100)) }

func units(x float64) string { return strconv.Itoa(hundredths(x)) }

// decimal is a number that is no coordinate, to two places at the most.
func decimal(x float64) string {
	return strconv.FormatFloat(math.Round(x*100)/100+0, 'f', -1, 64)
}

// appendPoints writes points as data: "x y;x y".
func appendPoints(b []byte, points []canvas.Point) []byte {
	for i, p := range points {
		if i > 0 {
			b = append(b, ';')
		}
		b = strconv.AppendInt(b, int64(hundredths(p.X)), 10)
		b = append(b, ' ')
		b = strconv.AppendInt(b, int64(hundredths(p.Y)), 10)
	}
	return b
}

// pathData writes the d attribute of a path, each command in whichever of its
// absolute and relative forms is the shorter.
type pathData struct {
	b, abs, rel []byte
	last        byte // the command that a further set of numbers would repeat
	x, y        int  // where the pen is
	sx, sy      int  // where the subpath began
	dot         bool // the subpath has only lines too short to show, so far
}

// appendPathData writes a path as SVG path data.
func appendPathData(b []byte, p *canvas.Path) []byte {
	w := pathData{b: b}
	d := p.Data()
	if hasOvals(d) {
		d = p.ReplaceArcs().Data()
	}
	var x, y float64
	for i := 0; i < len(d); i += commandLength(d[i]) {
		x0, y0 := x, y
		end := i + commandLength(d[i]) - 3
		x, y = d[end], d[end+1]
		switch d[i] {
		case canvas.MoveToCmd:
			w.moveTo(hundredths(x), hundredths(y))
		case canvas.LineToCmd:
			w.lineTo(hundredths(x), hundredths(y))
		case canvas.QuadToCmd:
			w.curve('Q', hundredths(d[i+1]), hundredths(d[i+2]), hundredths(x), hundredths(y))
		case canvas.CubeToCmd:
			w.curve('C', hundredths(d[i+1]), hundredths(d[i+2]), hundredths(d[i+3]), hundredths(d[i+4]), hundredths(x), hundredths(y))
		case canvas.ArcToCmd:
			w.arc(newArc(x0, y0, d[i+1], d[i+4] == 1 || d[i+4] == 3, d[i+4] >= 2, x, y))
		case canvas.CloseCmd:
			w.close()
		}
	}
	w.showDot()
	return w.b
}

// commandLength is how many numbers a command takes in a path's data: itself,
// at both ends, and its points between, the last of which is where it leads.
func commandLength(cmd float64) int {
	switch cmd {
	case canvas.QuadToCmd:
		return 6
	case canvas.CubeToCmd, canvas.ArcToCmd:
		return 8
	}
	return 4
}

// hasOvals tells whether a path has arcs of ellipses that are no circles.
func hasOvals(d []float64) bool {
	for i := 0; i < len(d); i += commandLength(d[i]) {
		if d[i] == canvas.ArcToCmd && math.Abs(d[i+1]-d[i+2]) > 1e-6*d[i+1] {
			return true
		}
	}
	return false
}

func (w *pathData) moveTo(x, y int) {
	w.showDot()
	w.command('M', nil, x, y)
	w.last-- // further pairs after M or m are lines, L or l
	w.x, w.y, w.sx, w.sy = x, y, x, y
}

func (w *pathData) lineTo(x, y int) {
	switch {
	case x == w.x && y == w.y:
		w.dot = w.dot || w.x == w.sx && w.y == w.sy && (w.last == 'L' || w.last == 'l')
		return
	case y == w.y:
		w.command('H', nil, x)
	case x == w.x:
		w.command('V', nil, y)
	default:
		w.command('L', nil, x, y)
	}
	w.x, w.y = x, y
}

func (w *pathData) curve(letter byte, to ...int) {
	x, y := to[len(to)-2], to[len(to)-1]
	w.command(letter, nil, to...)
	w.x, w.y = x, y
}

func (w *pathData) close() {
	w.showDot()
	w.b = append(w.b, 'z')
	w.last = 'z'
	w.x, w.y = w.sx, w.sy
}

// showDot gives a subpath of no length the line of no length that round caps
// make a dot of.
func (w *pathData) showDot() {
	if w.dot {
		w.dot = false
		w.b = append(w.b, "h0"...)
		w.last = 'h'
	}
}

// command writes a command given by its capital letter, the numbers that are
// the same in both its forms, and the coordinates.
func (w *pathData) command(letter byte, fixed []int, to ...int) {
	w.dot = false
	write := func(b []byte, l byte, dx, dy int) []byte {
		first := l != w.last
		if first {
			b = append(b, l)
		}
		if letter == 'V' {
			dx = dy
		}
		return appendNumbers(b, first, fixed, to, dx, dy)
	}
	w.abs = write(w.abs[:0], letter, 0, 0)
	w.rel = write(w.rel[:0], letter+'a'-'A', w.x, w.y)
	if len(w.rel) < len(w.abs) {
		w.b, w.last = append(w.b, w.rel...), letter+'a'-'A'
	} else {
		w.b, w.last = append(w.b, w.abs...), letter
	}
}

// appendNumbers writes numbers with no more between them than they need:
// nothing after a letter or before a minus.
func appendNumbers(b []byte, first bool, fixed, to []int, dx, dy int) []byte {
	put := func(n int) {
		if !first && n >= 0 {
			b = append(b, ' ')
		}
		b = strconv.AppendInt(b, int64(n), 10)
		first = false
	}
	for _, n := range fixed {
		put(n)
	}
	for i, n := range to {
		if i%2 == 0 {
			put(n - dx)
		} else {
			put(n - dy)
		}
	}
	return b
}
