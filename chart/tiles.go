package chart

import (
	"fmt"
	"math"
	"strings"

	"github.com/tdewolff/canvas"

	"whorl/chart/scene"
	"whorl/chart/typeface"
)

// Measures of the pages of a chart that is drawn on several, mm.
const (
	tileHead     = 14.0 // for what is said above the chart
	figureLeft   = 20.0 // beside what a figure shows, and above it: room for the marks
	figureTop    = 8.0
	figureSaid   = 18.0 // for the caption of a figure and the air about it
	leastOverlap = 12.0 // of two pages
	mostOverlap  = 45.0
	mostTiles    = 12  // pages
	mostEnlarged = 8.0 // times
	closeStep    = 1.1 // times, by which what stands too close is enlarged at a time
	markOut      = 4.5 // from what a page shows to a register mark
	markRadius   = 1.5
	tileText     = 3.3 // em
)

// Tiled draws a chart whose symbols print too small or too close on one page on as many
// as it takes, each with a part of the chart at a size that can be read. A page shows
// what lies within it whole; pages overlap by more than the largest symbol, so that
// every one is whole on one of them, and have register marks that come to lie on
// one another. draw is the layout. There are no pages where the chart can be read
// on one, or where there would be too many of them. The pages of a figure are figures,
// no higher than it may be, with a caption each.
func Tiled(small *Chart, o Options, draw func(Options) (*Chart, error)) []*Chart {
	if small.Legible() || o.Paper.post {
		return nil
	}
	big := small
	width, height := o.Paper.Size()
	for times := 1.0; !big.Legible(); {
		if big.Small() {
			times *= 1.03 * big.least / big.Smallest
		} else {
			times *= closeStep
		}
		if times > mostEnlarged {
			return nil
		}
		larger := o
		larger.Paper = Paper{width: width * times, height: height * times}
		larger.Figure *= times
		c, err := draw(larger)
		if err != nil {
			return nil
		}
		big = c
	}
	s := newTiles(big.Scene, o)
	if len(s.windows) < 2 || len(s.windows) > mostTiles {
		return nil
	}
	var l []*Chart
	for i := range s.windows {
		l = append(l, &Chart{Scene: s.page(i), Smallest: big.Smallest, least: big.least,
			Caption: fmt.Sprintf("%s, page %d of %d, %s", small.Caption, i+1, len(s.windows), s.where(i)), Reading: joining})
	}
	return l
}

// tiles are the pages that a chart is cut into.
type tiles struct {
	big           *scene.Scene
	o             Options
	width, height float64 // of a page
	left, top     float64 // where what it shows begins there
	overlap       float64
	columns, rows int
	windows       []box // of the chart, row by row
	content       []scene.Node
}

func newTiles(big *scene.Scene, o Options) *tiles {
	t := &tiles{big: big, o: o, left: margin, top: margin + tileHead}
	whole, none := box{}, true
	for _, n := range big.Root.Nodes {
		g, ok := n.(*scene.Group)
		if !ok {
			continue
		}
		switch g.ID {
		case "head", "key", "special", "foot":
			continue // they are on the first page, the chart as a whole
		}
		t.content = append(t.content, g)
		if b, ok := boundsOf(g, scene.Plain); ok {
			whole, none = whole.joined(b, none), false
		}
	}
	t.overlap = math.Min(math.Max(leastOverlap, largestStitch(t.content)+1), mostOverlap)
	best := math.MaxInt
	wide, tall := o.Paper.Size()
	papers := [][2]float64{{wide, tall}, {tall, wide}}
	if o.Figure > 0 {
		papers = [][2]float64{{wide, o.Figure}}
		t.left, t.top = figureLeft, figureTop
	}
	for _, page := range papers {
		w, h := page[0]-2*t.left, page[1]-2*t.top
		c, r := t.pieces(whole.x1-whole.x0, w), t.pieces(whole.y1-whole.y0, h)
		if c*r < best {
			best, t.columns, t.rows, t.width, t.height = c*r, c, r, page[0], page[1]
		}
	}
	if o.Figure > 0 {
		t.share(whole)
	}
	w, h := t.width-2*t.left, t.height-2*t.top
	for r := range t.rows {
		y := t.start(whole.y0, whole.y1, h, r, t.rows)
		for c := range t.columns {
			x := t.start(whole.x0, whole.x1, w, c, t.columns)
			t.windows = append(t.windows, box{x, y, x + w, y + h})
		}
	}
	return t
}

// share makes the windows of figures no larger than their share of the whole, in as
// many rows as take the fewest pages: two lower ones may stand on one.
func (t *tiles) share(whole box) {
	part := func(whole float64, n int) float64 { return (whole + float64(n-1)*t.overlap) / float64(n) }
	high := func(rows int) float64 {
		return math.Min(t.o.Figure, math.Ceil(part(whole.y1-whole.y0, rows)+2*t.top))
	}
	pages := func(rows int) float64 {
		on := math.Floor((t.o.Figure + figureSaid) / (high(rows) + figureSaid))
		return math.Ceil(float64(t.columns*rows) / on)
	}
	least := t.rows
	for rows := least + 1; rows <= least+2; rows++ {
		if pages(rows) < pages(t.rows) {
			t.rows = rows
		}
	}
	t.height = high(t.rows)
	if t.columns > 1 {
		t.left = math.Max(t.left, math.Floor((t.width-part(whole.x1-whole.x0, t.columns))/2))
	}
}

// pieces is how many windows of a length cover a whole length, overlapping.
func (t *tiles) pieces(whole, window float64) int {
	return max(1, int(math.Ceil((whole-t.overlap)/(window-t.overlap))))
}

// start is where window i of n begins, so that all together lie about the middle
// and overlap alike.
func (t *tiles) start(from, to, window float64, i, n int) float64 {
	if n == 1 {
		return (from + to - window) / 2
	}
	return from + (to-from-window)*float64(i)/float64(n-1)
}

// page is what window i shows, on its page.
func (t *tiles) page(i int) *scene.Scene {
	win := t.windows[i]
	name := fmt.Sprintf("page %d of %d", i+1, len(t.windows))
	s := &scene.Scene{Width: t.width, Height: t.height, Title: t.big.Title + ", " + name, Author: t.big.Author, Paper: t.big.Paper,
		Desc: t.place(i) + " of a chart that is drawn on several pages. " + t.big.Desc}
	if t.big.Alt != "" {
		s.Alt = t.place(i) + " of a chart that is drawn on several pages. " + t.big.Alt
	}
	cut := cutter{win: win, dx: t.left - win.x0, dy: t.top - win.y0, overlap: t.overlap}
	for _, n := range t.content {
		if made := cut.node(n, scene.Plain); made != nil {
			s.Root.Add(made)
		}
	}
	bases(&s.Root)
	if t.o.Figure == 0 {
		t.words(s, i, name)
	}
	t.marks(s, i)
	return s
}

// place says which part of the chart page i shows, as the beginning of a sentence.
func (t *tiles) place(i int) string { return "T" + t.where(i)[1:] }

// joining says how the pages are laid together.
const joining = "Lay the pages over one another so that the marks meet"

// where says which part of the chart page i shows.
func (t *tiles) where(i int) string {
	words := func(k, n int, first, middle, last string) string {
		switch {
		case n == 1:
			return ""
		case k == 0:
			return first
		case k == n-1:
			return last
		case n == 3:
			return middle
		}
		return fmt.Sprintf("%s %d of %d", middle, k+1, n)
	}
	up := words(i/t.columns, t.rows, "top", "middle", "bottom")
	across := words(i%t.columns, t.columns, "left", "middle", "right")
	return "the " + strings.TrimSpace(up+" "+across)
}

// words says above the chart which page it is, with a small plan of all of them,
// and below it how the pages are joined.
func (t *tiles) words(s *scene.Scene, i int, name string) {
	head := &scene.Group{ID: "head"}
	size := t.o.enlarged(tileText)
	title, fit := fitText(t.o.Title, size*1.25, size, true, t.width-2*margin-60)
	y := margin + typeface.CapHeight(fit)
	if t.o.Title != "" {
		head.Add(&scene.Text{X: margin, Y: hundredth(y), Size: hundredth(fit), Bold: true, Colour: ink, String: title[0]})
	}
	plan := t.planStep() * float64(t.columns)
	head.Add(&scene.Text{X: hundredth(t.width - margin - plan - 2), Y: hundredth(y), Size: size, Align: scene.Right, Colour: words, String: name})
	s.Root.Add(head, t.plan(i, t.width-margin-plan, margin-1))
	foot := &scene.Group{ID: "foot"}
	how := "Print at 100 %. " + joining + "."
	if t.o.Credit != "" {
		how += " " + t.o.Credit
	}
	lines, small := fitText(how, t.o.enlarged(footSize), t.o.enlarged(footSize)*0.7, false, t.width-2*margin)
	foot.Add(&scene.Text{X: margin, Y: t.height - margin, Size: hundredth(small), Colour: words, String: lines[0]})
	s.Root.Add(foot)
}

// planStep is from one page to the next on the plan, mm: smaller where many rows of pages
// would reach down into the chart.
func (t *tiles) planStep() float64 { return math.Min(3.2, tileHead/float64(t.rows)) }

// plan is a small plan of all the pages, the i-th filled.
func (t *tiles) plan(i int, x, y float64) *scene.Group {
	step := t.planStep()
	side := hundredth(0.75 * step)
	g := &scene.Group{ID: "plan", Title: t.place(i), Style: scene.Style{Stroke: &words, Line: new(0.2)}}
	for k := range t.windows {
		left, top := hundredth(x+float64(k%t.columns)*step), hundredth(y+float64(k/t.columns)*step)
		p := &scene.Path{D: canvas.Rectangle(side, side).Translate(left, top)}
		if k == i {
			p.Style.Fill = &words
		}
		g.Add(p)
	}
	return g
}

// marks are the register marks of page i: at both ends of the middle of the strip
// that it has in common with each neighbour, outside what the page shows.
func (t *tiles) marks(s *scene.Scene, i int) {
	win := t.windows[i]
	g := &scene.Group{ID: "register", Title: "Register marks", Style: scene.Style{Stroke: &ink, Line: new(0.15)}}
	dx, dy := t.left-win.x0, t.top-win.y0
	mark := func(x, y float64) {
		x, y = x+dx, y+dy
		d := canvas.Circle(markRadius).Translate(hundredth(x), hundredth(y))
		const arm = 1.7 * markRadius
		d.MoveTo(x-arm, y)
		d.LineTo(x+arm, y)
		d.MoveTo(x, y-arm)
		d.LineTo(x, y+arm)
		g.Add(&scene.Path{D: d})
	}
	across := func(other box) {
		x := (math.Max(win.x0, other.x0) + math.Min(win.x1, other.x1)) / 2
		mark(x, win.y0-markOut)
		mark(x, win.y1+markOut)
	}
	down := func(other box) {
		y := (math.Max(win.y0, other.y0) + math.Min(win.y1, other.y1)) / 2
		mark(win.x0-markOut, y)
		mark(win.x1+markOut, y)
	}
	c, r := i%t.columns, i/t.columns
	if c > 0 {
		across(t.windows[i-1])
	}
	if c < t.columns-1 {
		across(t.windows[i+1])
	}
	if r > 0 {
		down(t.windows[i-t.columns])
	}
	if r < t.rows-1 {
		down(t.windows[i+t.columns])
	}
	s.Root.Add(g)
}
