package chart

import (
	"math"
	"sort"

	"github.com/tdewolff/canvas"
)

// aid is one small sign or number that helps to read a round, to be set in the
// white near a place.
type aid struct {
	at         canvas.Point // where it would stand best
	along, up  canvas.Point // directions of the round there
	wide, tall float64      // its box, mm
	// It may be moved so far along the round, and so far up and down, mm.
	reach, rise, fall float64
}

func (d aid) box(s spot) (canvas.Point, box) {
	p := d.at.Add(d.along.Mul(s.along)).Add(d.up.Mul(s.up))
	return p, d.about(p)
}

// about is the aid's box about a point.
func (d aid) about(p canvas.Point) box {
	return box{p.X - d.wide/2, p.Y - d.tall/2, p.X + d.wide/2, p.Y + d.tall/2}
}

func (d aid) allows(s spot) bool {
	return math.Abs(s.along) <= d.reach && s.up <= d.rise && -s.up <= d.fall
}

// moves are what aids are moved by, least first.
var moves = func() (all []spot) {
	const step, far = 0.25, 14 // steps, to each side
	for i := -far; i <= far; i++ {
		for j := -far; j <= far; j++ {
			x, y := float64(i)*step, float64(j)*step
			all = append(all, spot{x, y, math.Hypot(x, y)})
		}
	}
	sort.SliceStable(all, func(i, j int) bool { return all[i].cost < all[j].cost })
	return all
}()

// aidAir is the white that an aid keeps about it, mm.
const aidAir = 0.2

// settle finds places in the white for all of a round's aids: one move that suits
// them all, or most of them, so that they stand alike; those that it does not suit
// are moved by themselves. It is nil, and nothing is taken, where one finds none:
// a round has all of its aids or none of them.
func (f *finder) settle(aids []aid) []canvas.Point {
	free := func(d aid, s spot) bool {
		_, b := d.box(s)
		return d.allows(s) && f.free(b.grown(aidAir))
	}
	var common spot
	most := -1
	for _, s := range moves {
		n := 0
		for i, d := range aids {
			if free(d, s) {
				n++
			}
			if n+len(aids)-1-i <= most {
				break
			}
		}
		if n > most {
			common, most = s, n
		}
		if most == len(aids) {
			break
		}
	}
	before := len(f.taken)
	places := make([]canvas.Point, len(aids))
	take := func(i int, s spot) {
		p, b := aids[i].box(s)
		places[i] = canvas.Point{X: hundredth(p.X), Y: hundredth(p.Y)}
		f.taken = append(f.taken, b)
	}
	var own []int
	for i, d := range aids {
		if free(d, common) {
			take(i, common)
		} else {
			own = append(own, i)
		}
	}
	for _, i := range own {
		found := false
		for _, s := range moves {
			if found = free(aids[i], s); found {
				take(i, s)
				break
			}
		}
		if !found {
			f.taken = f.taken[:before]
			return nil
		}
	}
	return places
}
