package chart

import (
	"slices"

	"whorl/chart/scene"
)

// third is the ink of a third yarn, with a contrast of over 4.5:1 on white like the
// other two.
var third = scene.RGB(0x2a5f9e)

// yarnInks are the inks of as many yarns.
var yarnInks = [...]*scene.Colour{&ink, &second, &third}

// findYarns names the yarns of the drawn rounds in the order they are taken up, where
// the yarn changes within a round and there are inks for all of them: then every stitch
// has the ink of its yarn. Otherwise rounds take turns.
func (w *work) findYarns() {
	w.yarns = nil
	within := false
	var names []string
	for _, c := range w.courses[w.first : w.last+1] {
		var of []string
		for i := range c.round.Stitches {
			if s := &c.round.Stitches[i]; s.Counts && !slices.Contains(of, s.Colour) {
				of = append(of, s.Colour)
			}
		}
		within = within || len(of) > 1
		for _, name := range of {
			if !slices.Contains(names, name) {
				names = append(names, name)
			}
		}
	}
	if within && len(names) <= len(yarnInks) && !w.o.Black {
		w.yarns = names
	}
}

// inkOf is the ink of stitch i of a course, in a chart whose inks are its yarns.
func (w *work) inkOf(c *course, i int) *scene.Colour {
	return yarnInks[max(slices.Index(w.yarns, c.round.Stitches[i].Colour), 0)]
}

// inked draws a stitch in the ink of its yarn.
func (d *roundArtist) inked(i int, draw func(i int) *scene.Group) *scene.Group {
	if d.yarns == nil {
		return draw(i)
	}
	round := d.colour
	d.colour = d.inkOf(d.c, i)
	g := draw(i)
	if g != nil && d.colour != round {
		g.Style.Stroke = d.colour
	}
	d.colour = round
	return g
}
