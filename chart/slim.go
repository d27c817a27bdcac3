package chart

import (
	"maps"

	"github.com/tdewolff/canvas"

	"whorl/chart/scene"
	"whorl/patterns/fabric"
	"whorl/symbols"
)

// Strokes across a leg, and hooks at its foot, that touch what another stitch draws are drawn
// shorter, with those of the stitches in which the round comes to the same again.

const (
	slimTries = 3    // times that strokes are shortened before it must help
	slimStep  = 0.7  // of their length, that is left each time
	slimLeast = 0.15 // of it
	slimFrom  = 0.9  // units: the room that the longest of them takes
	slimFew   = 5    // stitches, of which one pair touches at most
	slimStem  = 0.3  // of a beginning chain's height
	slimAir   = 0.15 // mm of white about them, once some touch
)

// slim is the share of its room that a stitch takes, at its foot and above it.
type slim struct{ foot, top float64 }

// inked draws all rounds, with no more strokes touching than must, and tells how many do.
func (p *page) inked() (*artist, []scene.Node, int) {
	courses := p.w.courses
	for _, c := range courses {
		c.slim = map[int]slim{}
	}
	a := newArtist(p.w)
	nodes := a.rounds()
	touch := p.touching(nodes, -touchSlack)
	stitches := 0
	for _, d := range a.drawn {
		stitches += len(d.c.order)
	}
	if len(touch) > stitches/slimFew { // past mending so
		return a, nodes, len(touch)
	}
	// better draws all again; what is no better is undone.
	better := func(most int, change func()) bool {
		before := make([]map[int]slim, len(courses))
		for k, c := range courses {
			before[k] = maps.Clone(c.slim)
		}
		change()
		b := newArtist(p.w)
		again := b.rounds()
		still := p.touching(again, -touchSlack)
		if len(still) > most {
			for k, c := range courses {
				c.slim = before[k]
			}
			return false
		}
		a, nodes, touch = b, again, still
		return true
	}
	for try := 0; try < slimTries && len(touch) > 0; try++ {
		was := len(touch)
		if !better(was, func() { a.slimmer(p.touching(nodes, slimAir), slimStep) }) {
			break
		}
		if len(touch) < was {
			try = -1
		}
	}
	if len(touch) > 0 { // those that it does not help stay as they are
		better(len(touch), func() { a.slimmer(touch, 0) })
	}
	return a, nodes, len(touch)
}

// touching are the pairs of groups nearer one another than so many mm, as a reader of the
// finished picture sees them.
func (p *page) touching(nodes []scene.Node, white float64) []Clash {
	eye := newAuditor()
	eye.walk(&scene.Group{Nodes: nodes}, scene.Plain)
	eye.unit = hundredth(p.w.unit) // as it is written there
	eye.grid = newGrid(eye.segs)
	eye.overlaps(white)
	return eye.report.Overlaps
}

// slimmer gives the stitches that touch others a share of the room that they take; all of
// it again where that is 0.
func (a *artist) slimmer(touch []Clash, share float64) {
	at := map[string][]canvas.Point{}
	for _, t := range touch {
		at[t.A] = append(at[t.A], t.At)
		at[t.B] = append(at[t.B], t.At)
	}
	for _, d := range a.drawn {
		c := d.c
		fold, n := max(c.fold, 1), len(c.order)
		step := map[int]slim{}
		for i, g := range d.groups {
			s := &c.round.Stitches[i]
			slims := s.Role == fabric.Worked && !s.IsChain() || s.Role == fabric.Start && s.Counts
			if g == nil || len(at[g.ID]) == 0 || c.rank[i] < 0 || !slims {
				continue
			}
			feet, _ := d.feet(c, i)
			for k := range fold {
				j := c.order[(c.rank[i]+k*n/fold)%n]
				by, ok := step[j]
				if !ok {
					by = slim{1, 1}
				}
				for _, t := range at[g.ID] {
					if nearer(t, feet, d.top(c, i)) {
						by.foot = share
					} else {
						by.top = share
					}
				}
				step[j] = by
			}
		}
		for i, by := range step {
			was, ok := c.slim[i]
			switch {
			case share == 0:
				delete(c.slim, i)
			case ok:
				c.slim[i] = slim{max(slimLeast, was.foot*by.foot), max(slimLeast, was.top*by.top)}
			default:
				c.slim[i] = by
			}
		}
	}
}

// nearer reports whether a point is nearer one of a stitch's feet than its top.
func nearer(p canvas.Point, feet []canvas.Point, top canvas.Point) bool {
	for _, f := range feet {
		if p.Sub(f).Length() < p.Sub(top).Length() {
			return true
		}
	}
	return false
}

// slimmedStart is the room that a beginning chain takes where it is drawn slimmer: its ovals
// begin where the fan that it begins has opened.
func (d *roundArtist) slimmedStart(i int, an *symbols.Anchors) {
	if s, ok := d.c.slim[i]; ok && s.foot < 1 {
		an.Width *= s.foot
		an.Stem = max(an.Stem, slimStem)
	}
}

// slimmed is the room that a stitch takes where it is drawn slimmer.
func (d *roundArtist) slimmed(i int, an *symbols.Anchors) {
	s, ok := d.c.slim[i]
	if !ok {
		return
	}
	foot := an.FootWidth
	if foot == 0 {
		foot = an.Width
	}
	an.FootWidth = min(foot, slimFrom*d.unit) * s.foot
	an.Width = min(an.Width, slimFrom*d.unit) * s.top
}
