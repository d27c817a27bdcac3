package chart

import (
	"github.com/tdewolff/canvas"

	"whorl/patterns/stitch"
	"whorl/symbols"
)

// composites are the groups of stitches that have names of their own, built from the
// plain ones as charts draw them: in one place, crossed, or one group that is begun
// at the start of a round and completed at its join.
func (a *artist) composites(terms stitch.Terms) []cell {
	double := stitch.Of(stitch.Double)
	name := double.Name(terms)
	group := func(short, long string, draw func(at canvas.Point, unit float64) []symbols.Drawing) cell {
		return cell{entry: entry{short: short, long: long}, draw: func(at canvas.Point, tall float64) []symbols.Drawing {
			unit := min(keyUnit, tall/symbols.Height(double))
			return draw(at, unit)
		}}
	}
	// leg is a double crochet about the middle of a cell, its foot and top so many
	// units to the right of it.
	leg := func(at canvas.Point, unit, foot, top, width float64) symbols.Anchors {
		half := symbols.Height(double) / 2
		return symbols.Anchors{Base: []canvas.Point{{X: at.X + foot*unit, Y: at.Y + half*unit}}, Top: canvas.Point{X: at.X + top*unit, Y: at.Y - half*unit},
			Along: canvas.Point{X: -1}, Up: canvas.Point{Y: -1}, Unit: unit, Width: width * unit, Shared: foot == 0}
	}
	stitchAt := func(an symbols.Anchors) symbols.Drawing { return symbols.Draw(double, stitch.Top, an, a.pen) }
	halves := func(first bool) func(at canvas.Point, unit float64) []symbols.Drawing {
		return func(at canvas.Point, unit float64) []symbols.Drawing {
			side := 1.0
			if first {
				side = -1
			}
			an := leg(at, unit, 0.7*side, 0, 1)
			an.Base = append(an.Base, canvas.Point{X: at.X + 1.4*side*unit, Y: an.Base[0].Y})
			an.Shared = false
			return []symbols.Drawing{symbols.Half(stitch.Tog(stitch.Double, 4), stitch.Top, an, first, a.pen)}
		}
	}
	return []cell{
		group("shell", "5 "+name+" in one place", func(at canvas.Point, unit float64) (l []symbols.Drawing) {
			for i := -2.0; i <= 2; i++ {
				l = append(l, stitchAt(leg(at, unit, 0, 0.72*i, 0.72)))
			}
			return l
		}),
		group("V-st", name+", ch 1, "+name+" in one place", func(at canvas.Point, unit float64) []symbols.Drawing {
			ch := symbols.Anchors{Top: canvas.Point{X: at.X, Y: at.Y - 0.9*unit}, Along: canvas.Point{X: -1}, Up: canvas.Point{Y: -1}, Unit: unit, Width: 0.75 * unit}
			return []symbols.Drawing{stitchAt(leg(at, unit, 0, -0.8, 0.9)), stitchAt(leg(at, unit, 0, 0.8, 0.9)), symbols.Draw(stitch.Of(stitch.Chain), stitch.Top, ch, a.pen)}
		}),
		group("crossed "+name, "2 "+name+" crossed", func(at canvas.Point, unit float64) []symbols.Drawing {
			return []symbols.Drawing{stitchAt(leg(at, unit, -0.6, 0.6, 1.2)), stitchAt(leg(at, unit, 0.6, -0.6, 1.2))}
		}),
		group("first half", "of a group completed at the join", halves(true)),
		group("last half", "completes the group at the join", halves(false)),
	}
}
