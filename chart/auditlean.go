package chart

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"github.com/tdewolff/canvas"
)

// fans looks for fans with uneven gaps.
func (a *auditor) fans(r auditRound) {
	for i := r.from; i < r.to; {
		s := &a.subjects[i]
		if len(s.bases) != 1 || len(s.tops) == 0 || !s.counted {
			i++
			continue
		}
		j := i + 1
		for j < r.to && a.subjects[j].counted && len(a.subjects[j].bases) == 1 && a.subjects[j].bases[0] == s.bases[0] && a.subjects[j].kind == s.kind {
			j++
		}
		if j-i >= 3 {
			least, most := math.Inf(1), 0.0
			for k := i + 1; k < j; k++ {
				g := a.subjects[k-1].tops[0].Sub(a.subjects[k].tops[0]).Length()
				least, most = math.Min(least, g), math.Max(most, g)
			}
			if most > 1.34*least {
				a.report.Fans = append(a.report.Fans, fmt.Sprintf("%s to %s: gaps from %.1f to %.1f mm", s.name, a.subjects[j-1].name, least, most))
			}
		}
		i = j
	}
}

// standing is what stands in one place, or one stitch on several.
type standing struct {
	from      int     // the first of the subjects
	n         float64 // how many
	foot, top canvas.Point
	bases     []canvas.Point // of the stitch
}

// leans looks for legs that lean too far.
func (a *auditor) leans(r auditRound) {
	var l []standing
	var at canvas.Point // the one place of the last; none where it has several
	one := false
	cut := false // a part of the round, whose ends lack their neighbours
	for i := r.from; i < r.to; i++ {
		s := &a.subjects[i]
		cut = cut || s.beside
		if !s.counted || s.beside || s.run || len(s.bases) == 0 || len(s.tops) == 0 || strings.HasSuffix(s.kind, "sl st") || strings.HasSuffix(s.kind, "ss") {
			continue
		}
		if one && len(s.bases) == 1 && s.bases[0] == at {
			g := &l[len(l)-1]
			g.top = g.top.Mul(g.n / (g.n + 1)).Add(s.tops[0].Mul(1 / (g.n + 1)))
			g.n++
			continue
		}
		bases := a.basesOf(r, i)
		foot := canvas.Point{}
		for _, b := range bases {
			foot = foot.Add(b.Mul(1 / float64(len(bases))))
		}
		l = append(l, standing{i, 1, foot, s.tops[0], bases})
		at, one = s.bases[0], len(bases) == 1
	}
	if !a.open && !cut && len(l) > 3 && one && a.alone(l[0]) == at {
		// A fan that the round begins and ends in, as one.
		last := l[len(l)-1]
		l = l[:len(l)-1]
		l[0].top = l[0].top.Mul(l[0].n / (l[0].n + last.n)).Add(last.top.Mul(last.n / (l[0].n + last.n)))
		l[0].n += last.n
	}
	for k, g := range l {
		if len(l) < 3 || cut && (k == 0 || k == len(l)-1) || a.crossesAny(l, k) {
			continue
		}
		before, after := max(k-1, 0), min(k+1, len(l)-1)
		if !a.open {
			before, after = (k+len(l)-1)%len(l), (k+1)%len(l)
		}
		along := a.placesLine(r, l[before], g, l[after])
		leg := g.top.Sub(g.foot)
		if along.Length() < 0.05 || leg.Length() < 0.05 {
			continue
		}
		lean := math.Asin(math.Min(math.Abs(leg.Norm(1).Dot(along.Norm(1))), 1)) * 180 / math.Pi
		if lean > MostLean {
			a.report.Leaning = append(a.report.Leaning, fmt.Sprintf("%s leans %.0f°", a.subjects[g.from].name, lean))
		}
		a.flatLegs(g, along.Norm(1))
	}
}

// basesOf are the places of a stitch, with those of what completes it at the end of its
// round, and of the chains that begin it: all of these end in its top.
func (a *auditor) basesOf(r auditRound, i int) []canvas.Point {
	s := &a.subjects[i]
	bases := s.bases
	for k := r.from; k < r.to; k++ {
		if t := &a.subjects[k]; k != i && !t.counted && len(t.bases) > 0 && len(t.tops) == 1 && t.tops[0] == s.tops[0] {
			bases = append(slices.Clip(bases), t.bases...)
		}
	}
	return bases
}

// flatLegs looks for legs of two stitches worked together that lie along the round rather
// than stand on it. The outer legs of more lie the flatter the more they are.
func (a *auditor) flatLegs(g standing, along canvas.Point) {
	if len(g.bases) != 2 {
		return
	}
	s := &a.subjects[g.from]
	for _, b := range g.bases {
		if leg := s.tops[0].Sub(b); leg.Length() > 0.05 {
			if flat := math.Asin(math.Min(math.Abs(leg.Norm(1).Dot(along)), 1)) * 180 / math.Pi; flat > MostLean {
				a.report.Flat = append(a.report.Flat, fmt.Sprintf("%s has a leg at %.0f°", s.name, flat))
			}
		}
	}
}

// farAside is how many times farther the place on one side is than that on the other, over a
// handle or an opening of chains, where it does not tell how the line of places runs.
const farAside = 5

// placesLine is the line of the places on both sides of a foot, or to the nearer of them
// where chains pass over what lies on the other side, and in a block, which is worked square
// to the next.
func (a *auditor) placesLine(r auditRound, before, at, after standing) canvas.Point {
	b, f := at.foot.Sub(before.foot), after.foot.Sub(at.foot)
	switch near, far := b.Length(), f.Length(); {
	case a.blocks && near < far:
		return b
	case a.blocks:
		return f
	case far > farAside*near && near > 0.05 && a.chained(r, at.from, after.from):
		return b
	case near > farAside*far && far > 0.05 && a.chained(r, before.from, at.from):
		return f
	}
	return b.Add(f)
}

// chained reports whether chains lie between two stitches of a round, over its join where
// need be.
func (a *auditor) chained(r auditRound, from, to int) bool {
	n := r.to - r.from
	for i := from; i != to; i = r.from + (i+1-r.from)%n {
		if a.subjects[i].run {
			return true
		}
	}
	return false
}

// alone is the one place that something stands in; none where it has several.
func (a *auditor) alone(g standing) canvas.Point {
	if s := &a.subjects[g.from]; len(s.bases) == 1 {
		return s.bases[0]
	}
	return canvas.Point{X: math.NaN()}
}

// mostCrossed is how many stitches to each side are looked at for one that crosses.
const mostCrossed = 6

// crossesAny reports whether what stands at k crosses something near it.
func (a *auditor) crossesAny(l []standing, k int) bool {
	for j := max(k-mostCrossed, 0); j < min(k+mostCrossed+1, len(l)); j++ {
		if j != k && a.crossed(&a.subjects[l[j].from], &a.subjects[l[k].from]) {
			return true
		}
	}
	return false
}

// stretch measures how unlike the legs of one kind are from round to round.
func (a *auditor) stretch() {
	least, most := map[string]float64{}, map[string]float64{}
	a.report.Stretch = 1
	for _, r := range a.rounds {
		sum, n := map[string]float64{}, map[string]float64{}
		var kinds []string
		for _, s := range a.subjects[r.from:r.to] {
			if !s.counted || s.beside || s.run || len(s.bases) != 1 || len(s.tops) == 0 || strings.HasSuffix(s.kind, "sl st") || strings.HasSuffix(s.kind, "ss") {
				continue
			}
			if n[s.kind] == 0 {
				kinds = append(kinds, s.kind)
			}
			sum[s.kind] += s.tops[0].Sub(s.bases[0]).Length()
			n[s.kind]++
		}
		for _, k := range kinds {
			mean := sum[k] / n[k]
			if least[k] == 0 || mean < least[k] {
				least[k] = mean
			}
			most[k] = math.Max(most[k], mean)
			if least[k] > 0 {
				a.report.Stretch = math.Max(a.report.Stretch, most[k]/least[k])
			}
		}
	}
}
