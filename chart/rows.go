package chart

import (
	"math"
	"strconv"
	"strings"

	"github.com/tdewolff/canvas"

	"whorl/chart/ring"
	"whorl/geometry"
	"whorl/patterns/fabric"
	"whorl/patterns/stitch"
)

// Rows is the chart of a part worked in rows, or of a range of its rows, from
// the bottom up. Without a range the first rows of a long piece are drawn that
// show its repeat.
func Rows(f *fabric.Fabric, form *geometry.Form, o Options) (*Chart, error) {
	w, err := newWork(f, form, o, fabric.InRows)
	if err != nil {
		return nil, err
	}
	w.rows, w.flat = true, true
	for i, c := range w.courses {
		c.open = true
		if i > 0 {
			c.reversed = w.courses[i-1].reversed != w.comesBack(c)
		}
	}
	if c := w.courses[0]; isFoundation(c.round) && len(w.courses) > 1 {
		w.hideTurningChain(c)
	}
	whole, each := w.last, 0
	if o.From <= 0 && o.To <= 0 {
		w.last, each = w.shows()
	}
	if w.last < whole {
		w.goesOn = w.courses[whole].round.Number
	}
	if lay := w.unlikeRows(); lay != nil {
		w.layRows()
		c, _ := w.fit(lay).finish()
		return c, nil
	}
	w.spread(nil)
	far, straight := w.leaning(w.layOut)
	switch f := w.findFan(far); {
	case f != nil:
		w.spread(f)
		if far, _ := w.leaning(w.layOut); f.spines > 0 && far > mostLeaning {
			w.spread(nil) // it grows at its ends, and not at what looks like its corners
			w.stiff = stiffFan
			w.layRows()
		}
	case !w.courses[0].hub && w.ripples():
		w.waves, w.stiff = true, stiffWave
		w.layRows()
		if !w.righted(straight) {
			w.waves = false
			w.spread(nil)
		}
	}
	c, _ := w.fit(w.layOut).finish()
	if w.waves && w.goesOn > 0 {
		c = w.further(c, each, whole)
	}
	return c, nil
}

// further is the chart of a ripple with as many rows of its repeat more as there were,
// so that its waves are read; the chart itself where that would be drawn smaller or more of
// its legs lean far.
func (w *work) further(c *Chart, each, whole int) *Chart {
	last := w.last
	before, _ := w.leaning(w.layOut)
	more := each * max(1, (last-w.first)/each)
	if w.last += more; w.last >= whole {
		w.last, w.goesOn = whole, 0
	}
	if after, _ := w.leaning(w.layOut); after > before+1e-9 {
		return c
	}
	if longer, _ := w.fit(w.layOut).finish(); longer.Smallest >= leastAgain*c.Smallest {
		return longer
	}
	return c
}

// leastAgain is the share of their size that symbols keep at least where more of a ripple
// is drawn.
const leastAgain = 0.9

// spread lays the rows along straight lines or, where there is one, on a fan.
func (w *work) spread(f *fan) {
	w.fan, w.flat, w.stiff = f, f == nil, 0
	if f != nil {
		w.stiff = stiffFan
	}
	w.layRows()
}

// layOut sets the rows on a page.
func (w *work) layOut(p *page) {
	if w.fan != nil {
		w.reachFan(p)
	} else {
		w.reachRows(p)
	}
}

// comesBack reports whether a row runs back over the one below it, as the order
// of its places there tells; or, where none is in it, as the work is said to be
// turned.
func (w *work) comesBack(c *course) bool {
	below := c.index - 1
	last, back := -1, 0
	for i := range c.round.Stitches {
		for _, p := range c.round.Stitches[i].On {
			if p.At.Round != below || p.Into == stitch.Ring || p.Into == stitch.RowEnd {
				continue
			}
			switch {
			case last >= 0 && p.At.Stitch < last:
				back++
			case last >= 0 && p.At.Stitch > last:
				back--
			}
			last = p.At.Stitch
		}
	}
	if back == 0 {
		return c.round.Reversed != w.courses[below].round.Reversed
	}
	return back > 0
}

const (
	shortPiece = 8  // rows that are all drawn
	longRepeat = 12 // rows of the longest repeat looked for
)

// shows is the last row that must be drawn for the repeat of the piece to be
// seen twice, and how many rows that repeat has; the last of all when it has none or is
// short.
func (w *work) shows() (row, each int) {
	last := w.last
	if last-w.first < shortPiece {
		return last, 1
	}
	looks := make([]string, last+1)
	for i := range looks {
		looks[i] = w.look(w.courses[i])
	}
	best, each := last, 1
	for k := 1; k <= longRepeat; k++ {
		from := last // the first row of those that come again every k rows
		for from-1-k >= 0 && looks[from-1] == looks[from-1-k] {
			from--
		}
		if last-from >= 2*k {
			if to := max(from+k-1, w.first+4); to < best {
				best, each = to, k
			}
		}
	}
	return best, each
}

// look is a row's stitches, and where each is worked: equal for rows that are
// worked alike.
func (w *work) look(c *course) string {
	var b strings.Builder
	for i := range c.round.Stitches {
		s := &c.round.Stitches[i]
		b.WriteString(s.Kind.Name(stitch.US))
		b.WriteString(strconv.Itoa(s.Chains))
		for _, p := range s.On {
			b.WriteByte(byte('a' + p.Into))
		}
	}
	return b.String()
}

// edgeRoom is how far a turning chain that takes no room of its own stands from
// the first stitch of its row, in stitches.
const edgeRoom = 0.75

// layRows finds how far along its row every stitch is, in mm of the fabric.
func (w *work) layRows() {
	w.edge = map[int]float64{}
	for i, c := range w.courses {
		c.order = c.order[:0]
		c.theta = make([]float64, len(c.round.Stitches))
		c.rank = make([]int, len(c.round.Stitches))
		if i == 0 && w.isHub(c) {
			c.hub = true
			continue
		}
		if i == 0 && w.oval != nil {
			w.layChain()
			continue
		}
		w.layRow(c)
	}
	w.stepAside()
}

// looseOver is how stiff a row is that has one stitch for each of the row below: they
// stand one over another, however wide they are.
const looseOver = 0.2

// levelUnder is how far the tops of a row are evened out under one with a stitch for each.
const levelUnder = 0.35

// skippedRoom is how much of the room of what is skipped in a valley stays free.
const skippedRoom = .25

func (w *work) layRow(c *course) {
	var items []ring.Item
	natural := 0.0
	for i := range c.rank {
		c.rank[i] = -1
	}
	w.layRowEnds(c)
	for _, i := range c.rising() {
		if !c.takesRoom(i) || c.hides(i) && !w.courses[1].startsOn(i) {
			continue
		}
		item := ring.Item{Width: c.form.Widths[i], Free: true}
		if base, ok := w.stance(c, i, 0); ok {
			item.Base, item.Free = base, false
			if on := c.round.Stitches[i].On; len(on) == 1 {
				item.Place = w.key(on[0])
			}
		}
		if k := len(items) - 1; k >= 0 && w.waves && item.Place != 0 && items[k].Place != 0 {
			item.Before = skippedRoom * math.Max(0, item.Base-items[k].Base-(item.Width+items[k].Width)/2)
		}
		natural += item.Width + item.Before
		c.rank[i] = len(c.order)
		c.order = append(c.order, i)
		items = append(items, item)
	}
	if len(items) == 0 {
		c.fold = 1
		return
	}
	if w.oval != nil {
		w.onHairpin(c, items)
		return
	}
	if w.fan != nil && c.index > 1 {
		natural -= archLoops(items, w.courses[c.index-1])
	}
	scale := 1.0
	if natural > 0 {
		c.long = w.length(c)
		switch {
		case w.fan != nil:
			c.long = w.fan.span
		case c.index > 0:
			c.long = w.lengthOver(c)
		}
		scale = c.long / natural
	}
	stiffness := max(w.stiff, ring.Stiffness)
	reach, over := w.reachOver(c)
	if over && w.stiff == 0 {
		stiffness = looseOver
		c.flattenPicots(items)
	}
	x := ring.Along(items, scale, stiffness)
	n := len(x)
	fit := 1.0
	if span := x[n-1] - x[0]; span > 0 {
		fit = scale * (natural - (items[0].Width+items[n-1].Width)/2) / span
		first, last := items[0], items[n-1]
		if over && w.fan == nil {
			fit = reach / span
		} else if w.fan == nil && !first.Free && !last.Free {
			if least := (last.Base - first.Base - 2*mostDrawnIn*c.form.Height) / span; least > fit {
				c.long *= least / fit
				fit = least
			}
			// What grows faster from a centre may be going to fan out.
			most := (last.Base - first.Base + 2*mostSpread*c.form.Height) / span
			few := c.index == 0 || len(w.courses[c.index-1].order) < fewStitches
			if grows := w.courses[0].hub && w.stiff == 0; most < fit && !few && !grows {
				c.long *= most / fit
				fit = most
			}
		}
	}
	mean := 0.0
	for _, v := range x {
		mean += v / float64(n)
	}
	at := mean
	if w.fan != nil { // half a stitch from its edge
		mean, at = x[0], scale*items[0].Width/2
	}
	for k, v := range x {
		c.theta[c.order[k]] = at + (v-mean)*fit
	}
	if w.fan != nil {
		w.fan.pinSpines(w, c)
	}
	c.fold = 1
	gap := scale * natural / float64(n)
	c.laySmall(4 * edgeRoom * gap)
	w.layTravel(c)
	w.layTurning(c, edgeRoom*gap)
}

// layTurning sets a turning chain that does not count clear of the legs of its
// row's first stitch.
func (w *work) layTurning(c *course, gap float64) {
	if len(c.round.Stitches) == 0 || c.round.Stitches[0].Role != fabric.Start || c.round.Stitches[0].Counts {
		return
	}
	first, sign := c.order[0], -1.0
	if c.reversed {
		first, sign = c.order[len(c.order)-1], 1
	}
	at := c.theta[first]
	for _, p := range c.round.Stitches[first].On {
		if a, ok := w.angle(p); ok && (a-at)*sign > 0 {
			at = a
		}
	}
	c.theta[0] = at + sign*gap
}

// layRowEnds lays the row ends that a row is picked up on where the row itself
// comes to lie, and with them the stitches of another piece that it goes on over.
func (w *work) layRowEnds(c *course) {
	along, ends := 0.0, false
	sum, n := map[int]float64{}, map[int]float64{}
	for _, i := range c.rising() {
		if !c.takesRoom(i) {
			continue
		}
		for _, p := range c.round.Stitches[i].On {
			ends = ends || p.Into == stitch.RowEnd
			if p.Into == stitch.RowEnd || p.At.Round == 0 && w.courses[0].round.Carried {
				sum[w.key(p)] += along
				n[w.key(p)]++
			}
		}
		along += c.form.Widths[i]
	}
	for k := range sum {
		if ends {
			w.edge[k] = sum[k] / n[k]
		}
	}
}

// Room beside the rows for turning chains and numbers, and under them, mm.
const (
	besideRows = 15.0
	underRows  = 2.5
)

// reachRows finds the height of every stitch and sets the chart down on the
// page, at the top of the room it has; what it does not need is given back.
func (w *work) reachRows(p *page) {
	w.lo = w.first
	if c := w.courses[w.first]; c.hub && w.last > w.first {
		w.lo++
	}
	w.ground = !(w.lo == 0 && isFoundation(w.courses[0].round))
	tall := w.singleHeight()
	low, high := w.along()
	if c := w.courses[0]; c.hub {
		w.edge[0] = w.middleOf(w.courses[1])
	}
	room := p.width - 2*margin - 2*besideRows
	wave, longer := (*ring.Wave)(nil), 1.0
	if w.waves {
		wave, longer = w.wave(low, high)
	}
	scale := math.Min(w.o.enlarged(largest)/tall, room/(high-low)*longer)
	const hole = 5 // any radius will do: rows do not close
	deep, crest := wave.Extent()
	for _, c := range w.courses {
		c.legs = 0 // of an earlier layout
	}
	for range standTries {
		layers := w.layers()
		for i := range layers {
			layers[i].Least, layers[i].Length = 0, 0 // flat rows need no radius
		}
		w.radii = ring.Stack(layers, ring.Fit{Hole: hole, Outer: hole + p.bottom - p.top - 2*underRows - (crest-deep)*scale/longer, MaxScale: scale * longer})
		w.unit = math.Max(w.radii.Scale/longer*tall, 0.1)
		along := math.Min(scale, math.Max(w.radii.Scale/longer, w.leastScale()*longer)) / longer
		if wave != nil {
			for k := range wave.Heights {
				wave.Heights[k] *= along
			}
			deep, crest = wave.Extent()
		}
		w.shape = ring.Line{Scale: along, Left: w.leftwards(false), Wave: wave}
		for _, c := range w.courses[w.lo:w.last] {
			if next := w.courses[c.index+1]; next.overEach(c) {
				c.level = math.Max(c.level, levelUnder)
			}
		}
		w.radiateAll()
		if !w.overFlat() {
			break
		}
	}
	bottom := math.Inf(1)
	if w.ground {
		bottom = w.groundRadius()
	}
	for _, c := range w.courses[w.lo : w.last+1] {
		for _, r := range c.radius {
			bottom = math.Min(bottom, r)
		}
	}
	mid := w.shape.At((low+high)/2, 0)
	w.place(canvas.Point{X: hundredth(p.width/2 - mid.X), Y: hundredth(p.top + underRows + w.outer + crest)})
	p.centre = w.centre
	p.bottom = hundredth(w.centre.Y - bottom - deep + underRows + w.unit/2)
}

// along is from where to where the drawn rows reach, in mm of the fabric.
func (w *work) along() (low, high float64) {
	low, high = math.Inf(1), math.Inf(-1)
	for _, c := range w.courses[w.lo : w.last+1] {
		for _, x := range c.theta {
			low, high = math.Min(low, x), math.Max(high, x)
		}
	}
	if high <= low {
		low, high = low-1, low+1
	}
	return low, high
}

// middleOf is the middle of a course.
func (w *work) middleOf(c *course) float64 {
	if len(c.order) == 0 {
		return 0
	}
	return (c.theta[c.order[0]] + c.theta[c.order[len(c.order)-1]]) / 2
}

// leastScale is the scale along the rows at which neighbours have the least
// room.
func (w *work) leastScale() float64 {
	least := 0.0
	for _, c := range w.courses[w.lo : w.last+1] {
		if n := len(c.order); n > 1 {
			least = math.Max(least, leastPitch*float64(n-1)/(c.theta[c.order[n-1]]-c.theta[c.order[0]]))
		}
	}
	return least
}

// leftwards reports whether the rows that are worked like the first, or those
// that are worked back, run to the left: those with the right side facing do so
// for a right-hander.
func (w *work) leftwards(back bool) bool {
	wrong := 0 // rows like the first that are wrong-side rows, less others
	for _, c := range w.courses {
		if c.round.Number == 0 {
			continue
		}
		if c.round.Wrong != c.reversed {
			wrong++
		} else {
			wrong--
		}
	}
	return (wrong > 0) == (back != w.o.LeftHanded)
}
