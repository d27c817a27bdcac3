package schematic

import (
	"math"
	"slices"

	"whorl/patterns/fabric"
)

// level is the width of a piece, in millimetres, at a depth along the fabric from
// the edge that is drawn at the top.
type level struct{ depth, width float64 }

// laidFlat is a part worked in rounds laid flat, from the crown down: at every
// depth along the fabric half as wide as it is round there.
func laidFlat(m *measured, part int) []level {
	p, form, piece := m.fabric.Parts[part], m.form.Parts[part], m.done.Pieces[part]
	var l []level
	for i, r := range p.Rounds {
		f := &form.Rounds[i]
		if r.Row || f.R <= 0 || r.Number == 0 && r.Ring {
			continue
		}
		l = append(l, level{f.Level, math.Pi * f.R})
	}
	if len(l) == 0 {
		return nil
	}
	last := l[len(l)-1].depth
	if first := last - piece.Depth; l[0].depth-first > 1e-6 {
		// What the first round grows from: the centre, or an edge like itself.
		w := l[0].width
		if piece.CrownFirst {
			w = piece.Hole / 2
		}
		l = append([]level{{first, w}}, l...)
	}
	if !piece.CrownFirst {
		for a, b := 0, len(l)-1; a < b; a, b = a+1, b-1 {
			l[a], l[b] = l[b], l[a]
		}
	}
	top := l[0].depth
	for i := range l {
		l[i].depth = math.Abs(l[i].depth - top)
	}
	return plumb(overDents(l))
}

// plumb draws the sides of a tube straight: what a stitch pattern makes the
// rounds wander by, a few hundredths of their width, is none of its shape.
func plumb(l []level) []level {
	wide := widest(l)
	first, last := -1, -1
	for i, n := range l {
		if n.width > 0.99*wide {
			if first < 0 {
				first = i
			}
			last = i
		}
	}
	for i := first; i <= last; i++ {
		if l[i].width < 0.96*wide {
			return l
		}
	}
	for i := first; i <= last; i++ {
		l[i].width = wide
	}
	return l
}

// overDents draws over the dents that single rounds of a stitch pattern make:
// the eye sees the fabric as wide as the rounds to either side.
func overDents(l []level) []level {
	out := append([]level(nil), l...)
	for i := 1; i+1 < len(l); i++ {
		a, b, c := l[i-1], l[i], l[i+1]
		if b.width < a.width && b.width < c.width && c.depth > a.depth {
			out[i].width = a.width + (c.width-a.width)*(b.depth-a.depth)/(c.depth-a.depth)
		}
	}
	return out
}

// A crown lies rounded where it is less than crownFlat of its width deep and
// leaves an opening of less than crownOpen of it. A deeper one stands like a
// cone, whose sides lie straight.
const (
	crownFlat = 0.55
	crownOpen = 0.5
)

// rounded draws a crown at the top of levels as it lies: pressed flat, its rounds
// run in arcs and not straight across, so that a half sphere, whose depth is half
// its width, lies as a half disc; any other as half an ellipse.
func rounded(l []level) (out []level, ok bool) {
	wide, open := widest(l), l[0].width
	at := 0
	for at < len(l) && l[at].width < 0.98*wide {
		at++
	}
	if at == 0 || at == len(l) || open > crownOpen*wide || l[at].depth > crownFlat*wide {
		return l, false
	}
	const steps = 24
	top := l[0].depth
	for k := range steps {
		a := math.Pi / 2 * float64(k) / steps
		out = append(out, level{top + (l[at].depth-top)*(1-math.Cos(a)), open + (l[at].width-open)*math.Sin(a)})
	}
	return append(out, l[at:]...), true
}

// flatPiece is a part worked to and fro, from the last row down to its beginning, and how
// far each of its levels lies to the right of the middle of the widest; nil where all are
// drawn about one middle.
func flatPiece(m *measured, part int) (l []level, asides []float64) {
	p, form, piece := m.fabric.Parts[part], m.form.Parts[part], m.done.Pieces[part]
	for i, r := range p.Rounds {
		f := &form.Rounds[i]
		if f.Circumference <= 0 || r.Number == 0 && len(p.Rounds) > 1 {
			continue
		}
		if len(l) == 0 && f.Level > 0 {
			l, asides = append(l, level{piece.Length, f.Circumference}), append(asides, f.Aside)
		}
		l, asides = append(l, level{piece.Length - f.Level, f.Circumference}), append(asides, f.Aside)
	}
	slices.Reverse(l)
	slices.Reverse(asides)
	return straight(plumb(overDents(l))), within(l, asides)
}

// A row lies within the widest where it stands out of it by no more than outMost of that,
// and its edge is that of the widest where it is within edgeLeast of it. Rows that all lie
// less than asideLeast of it aside are drawn about one middle, and so are those that lie to
// and fro by more than outMost of it, as the blocks of a cloth from corner to corner do.
const outMost, edgeLeast, asideLeast = 0.05, 0.03, 0.06

// within is how far levels lie aside of the widest where all lie within it, as short rows
// do and what is shaped at one edge; nil where they do not, or all lie about its middle.
func within(l []level, asides []float64) []float64 {
	wide, middle := widest(l), 0.0
	for i, n := range l {
		if n.width == wide {
			middle = asides[i]
		}
	}
	out := make([]float64, len(l))
	most, turns, way := 0.0, 0, 0.0
	for i, n := range l {
		dent := i > 0 && i+1 < len(l) && n.width < l[i-1].width && n.width < l[i+1].width && l[i+1].depth > l[i-1].depth
		if dent { // drawn over
			continue
		}
		room := (wide - n.width) / 2
		a := asides[i] - middle
		if math.Abs(a) > room+outMost*wide {
			return nil
		}
		if out[i] = a; math.Abs(a) > math.Max(room-edgeLeast*wide, room/2) {
			out[i] = math.Copysign(room, a)
		}
		most = math.Max(most, math.Abs(out[i]))
		if i > 0 {
			if step := out[i] - out[i-1]; math.Abs(step) > outMost*wide/2 {
				if step*way < 0 {
					turns++
				}
				way = step
			}
		}
	}
	if most < asideLeast*wide || turns > 2 {
		return nil
	}
	return out
}

// straight draws the sides of a piece in rows straight whose rows are all about as long
// as the longest, and differ only by what stitches of several kinds are apart.
func straight(l []level) []level {
	wide := widest(l)
	for _, n := range l {
		if n.width < 0.95*wide {
			return l
		}
	}
	for i := range l {
		l[i].width = wide
	}
	return l
}

// withStrip adds the strip that the part is picked up along below its edge: it
// is as wide as the part there, and drawn in to its own width below.
func withStrip(l []level, length, width float64) []level {
	own := length / 2
	edge := l[len(l)-1]
	more := edge.width - own
	reach := math.Min(width, 2*math.Abs(more))
	const steps = 8
	for k := 1; k <= steps && reach > 0; k++ {
		t := 1 - float64(k)/steps
		l = append(l, level{edge.depth + reach*(1-t), own + more*t*t})
	}
	return append(l, level{edge.depth + width, own})
}

// cutOff is the levels down to a depth.
func cutOff(l []level, depth float64) []level {
	for i, n := range l {
		if n.depth < depth {
			continue
		}
		if i == 0 {
			return l[:1]
		}
		a := l[i-1]
		w := n.width
		if n.depth > a.depth {
			w = a.width + (n.width-a.width)*(depth-a.depth)/(n.depth-a.depth)
		}
		return append(append([]level(nil), l[:i]...), level{depth, w})
	}
	return l
}

func widest(l []level) (w float64) {
	for _, n := range l {
		w = math.Max(w, n.width)
	}
	return w
}

// body is the part that a hat begins with, as [geometry.Finish] takes it: the
// first worked in rounds; -1 for none.
func (m *measured) body() int {
	for i, p := range m.done.Pieces {
		if !p.Rows && p.Widest > 0 {
			return i
		}
	}
	return -1
}

// strip is the part in rows that a part is picked up along, or -1.
func (m *measured) strip(part int) int {
	p := m.fabric.Parts[part]
	if p.Worked == fabric.InRounds && p.From >= 0 && p.From < len(m.done.Pieces) && m.done.Pieces[p.From].Rows {
		return p.From
	}
	return -1
}
