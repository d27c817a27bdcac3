package symbols

import "github.com/tdewolff/canvas"

// curve is a Bézier curve: 2, 3 or 4 points, the first and last its ends.
type curve []canvas.Point

// cast is de Casteljau's construction down to its last two points.
func (c curve) cast(t float64) (a, b canvas.Point) {
	var buf [4]canvas.Point
	p := append(buf[:0], c...)
	for len(p) > 2 {
		for i := range p[1:] {
			p[i] = p[i].Interpolate(p[i+1], t)
		}
		p = p[:len(p)-1]
	}
	return p[0], p[1]
}

// at is the point at t of 0 to 1.
func (c curve) at(t float64) canvas.Point {
	a, b := c.cast(t)
	return a.Interpolate(b, t)
}

// way is the unit vector in which the curve runs at t.
func (c curve) way(t float64) canvas.Point {
	a, b := c.cast(t)
	v := b.Sub(a)
	if v.Length() < 1e-9 {
		v = c[len(c)-1].Sub(c[0])
	}
	return v.Norm(1)
}

// across is the unit vector to the right of one that leads up.
func across(way canvas.Point) canvas.Point { return canvas.Point{X: way.Y, Y: -way.X} }

// oval is an ellipse as two curves, each a half, from centre − axis to
// centre + axis and back. A cubic half is within 2 % of the true ellipse.
func oval(centre, axis canvas.Point, half float64) (curve, curve) {
	bulge := across(axis.Norm(1)).Mul(half * 4 / 3)
	from, to := centre.Sub(axis), centre.Add(axis)
	return curve{from, from.Sub(bulge), to.Sub(bulge), to},
		curve{to, to.Add(bulge), from.Add(bulge), from}
}

// split cuts a curve in two at t, by de Casteljau's construction.
func (c curve) split(t float64) (before, after curve) {
	row := append(curve(nil), c...)
	before, after = curve{row[0]}, curve{row[len(row)-1]}
	for len(row) > 1 {
		for i := range len(row) - 1 {
			row[i] = row[i].Interpolate(row[i+1], t)
		}
		row = row[:len(row)-1]
		before, after = append(before, row[0]), append(curve{row[len(row)-1]}, after...)
	}
	return before, after
}
