// Package chart lays out and draws pictures of a worked fabric: whole rounds, a
// wedge of them, a panel, rows. It takes a fabric and its form and gives a scene.
//
// A chart in the round is made in steps, each with a file of its own: where on
// the turn every stitch goes (turn.go), how far out every round lies (reach.go),
// the points that every symbol reaches (place.go), the strokes (draw.go, start.go
// for what begins and closes a round, ground.go for what the first one stands
// on), the reading aids (numbers.go, yarn.go, key.go) and the page (page.go). A wedge
// (wedge.go) is cut from the layout of the whole, and so is a panel (panel.go),
// whose rounds lie flat. A motif with corners (corners.go) lies on polygons. Rows
// (rows.go) are laid out in the same steps, with a distance along the row for an
// angle and a height for a radius; where stitches lean alike in all rows, they lie
// in waves (wave.go).
// audit.go looks a finished picture over.
//
// The groups of a chart carry data. A round has its number and, where it comes
// to the same again several times in a turn, how often (repeats). A stitch, in
// the group of its round, has its number as the designer counts (stitch), its
// kind, its yarn where that is named and not the round's, its top (where later stitches stand on it) and its base (the places it
// stands on, one for each leg); between is the place before it that a stitch
// worked between two stands on. A run of chains is one group whose first top is
// the space.
package chart

import (
	"fmt"
	"math"

	"github.com/tdewolff/canvas"

	"whorl/chart/ring"
	"whorl/chart/scene"
	"whorl/geometry"
	"whorl/patterns/fabric"
	"whorl/patterns/stitch"
)

// Options say which chart is drawn and what is written on it.
type Options struct {
	Title  string // of the pattern
	Credit string // one line at the foot of the page
	Part   int    // index of the part
	// From and To are the first and last rounds, by number; 0 0 is all of
	// them, and a To of 0 goes on to the last.
	From, To int
	// Repeats is how many repeats a wedge shows, at least 1.
	Repeats int
	Paper   Paper
	Sheet   bool // the whole sheet, however little of it rows or a wedge need
	// Figure is the greatest height, in mm, of a chart that goes on a page of text
	// of the same Paper, which says what it shows: it has no title and no credit,
	// and is no higher than it needs. 0 is a page of its own.
	Figure     float64
	Terms      stitch.Terms
	Special    []Definition         // told in words under the key
	Own        map[string]OwnSymbol // by the name that its stitches have in the fabric
	LeftHanded bool                 // mirrored, with readable text
	Cross      bool                 // single crochet as × rather than +
	Black      bool                 // every round in black, for photocopies
	Clear      bool                 // on a transparent ground
	Tint       bool                 // one repeat tinted, in a chart of whole rounds
	Changes    bool                 // increases and decreases marked
	Counts     bool                 // how many stitches a round has, at its end
	Fives      bool                 // every fifth stitch numbered
	Large      bool                 // larger symbols and text in heavier lines

	closing bool // the half of a ball that closes in
}

// Chart is a finished picture.
type Chart struct {
	Scene *scene.Scene
	// Caption says which part, size and rounds are shown, and Reading how they are
	// read: "right side shown, read counterclockwise".
	Caption, Reading string
	// Findings are what a designer should know before printing it, in words;
	// none when it is fit to print.
	Findings []string
	// Smallest is the height in millimetres of the lowest stitch symbol on
	// paper (chains and slip stitches aside), 0 when there is none.
	Smallest float64
	least    float64 // that Smallest should be
	crowded  bool    // stitches stand too close to be told apart
	touching int     // symbols that touch others
	// crossings is how often the line of the rounds' numbers changes sides, ahead are those
	// whose number stands ahead of the seam, cramped those with a sign of the yarn off its lane.
	crossings      int
	ahead, cramped []*course
}

// untidy is how many things at the seam are off their line.
func (c *Chart) untidy() int { return c.crossings + len(c.cramped) }

// smallestSymbol is the least height at which a symbol prints well, mm.
const smallestSymbol = 2.5

// hopeless is the share of the least size under which symbols are no good to anybody,
// and no room is looked for about them.
const hopeless = 0.5

// Round is the chart of one part worked in the round, or of a range of its
// rounds. What the rounds stand on and is not drawn itself is shown as a thin
// grey line.
func Round(f *fabric.Fabric, form *geometry.Form, o Options) (*Chart, error) {
	w, err := newWork(f, form, o, fabric.InRounds)
	if err != nil {
		return nil, err
	}
	w.turn()
	if w.oval == nil && w.border == nil {
		w.findZigzag(w.reachRound)
		w.closeFans(w.reachRound)
	}
	best, missing := w.draw()
	if len(missing) == 0 && best.untidy() == 0 || best.Small() || best.Smallest == 0 {
		return best, nil
	}
	return w.partAtSeam(best, missing), nil
}

// draw lays out and draws the work, and tells which rounds got no number.
func (w *work) draw() (*Chart, []*course) {
	w.turn()
	if w.oval != nil || w.border != nil {
		return w.fit(w.reachLong).finish()
	}
	p := newPage(w, false)
	w.reachRound(p)
	return p.finish()
}

// reachRound finds the radius of every stitch and sets whole rounds on the page.
func (w *work) reachRound(p *page) {
	w.reach(p.radius)
	w.openEvenly()
	if w.o.Figure > 0 {
		p.tighten()
	}
	if q, ok := w.shape.(ring.Polygon); ok {
		_, up := q.Extent()
		p.centre.Y = hundredth(p.centre.Y + up*w.outer)
	}
	w.place(p.centre)
}

// reachLong sets what is no circle, but longer one way than the other, at the top of the
// room that the page has.
func (w *work) reachLong(p *page) {
	wide, high := p.width/2-margin, (p.bottom-p.top)/2-aroundLong
	if w.border != nil {
		w.reachBorder(wide, high)
	} else {
		w.reachWithin(wide, high)
	}
	half := w.outer
	if w.border != nil {
		half = w.border.high(w.radii.Scale) + w.outer
	}
	p.centre = canvas.Point{X: p.width / 2, Y: hundredth(p.top + aroundLong + half)}
	p.bottom = math.Min(p.bottom, hundredth(p.centre.Y+half+aroundLong))
	w.place(p.centre)
}

// aroundLong is the room over and under what is no circle, for the arrow, mm.
const aroundLong = 5.0

// newWork picks the part and the rounds out of the fabric; the part must be
// worked in the given way.
func newWork(f *fabric.Fabric, form *geometry.Form, o Options, way fabric.Way) (*work, error) {
	if f == nil || form == nil || len(form.Parts) != len(f.Parts) {
		return nil, fmt.Errorf("there is no measured fabric to draw")
	}
	if o.Part < 0 || o.Part >= len(f.Parts) {
		return nil, fmt.Errorf("there is no part %d to draw; the pattern has %d", o.Part+1, len(f.Parts))
	}
	part := f.Parts[o.Part]
	pf := form.Parts[o.Part]
	switch {
	case part.Worked == way:
	case way == fabric.InRounds:
		return nil, fmt.Errorf("%s is worked in rows; this chart needs a part worked in the round: write draw: rows", part.Name)
	default:
		return nil, fmt.Errorf("%s is worked in the round; this chart needs a part worked in rows: write draw: round", part.Name)
	}
	if len(part.Rounds) == 0 || len(pf.Rounds) != len(part.Rounds) {
		return nil, fmt.Errorf("%s has no rounds to draw", part.Name)
	}
	w := &work{o: o, size: f.Size, fabric: f, forms: form.Parts, part: part, first: -1}
	n := 0
	for i, r := range part.Rounds {
		if len(pf.Rounds[i].Tops) != len(r.Stitches) || len(pf.Rounds[i].Widths) != len(r.Stitches) {
			return nil, fmt.Errorf("%s has not been measured", r.Label)
		}
		w.courses = append(w.courses, &course{round: r, form: &pf.Rounds[i], index: i, reversed: r.Reversed, offset: n})
		n += len(r.Stitches)
		if !r.Carried && (o.From <= 0 || r.Number >= o.From) && (o.To <= 0 || r.Number <= o.To) {
			if w.first < 0 {
				w.first = i
			}
			w.last = i
		}
	}
	w.total = n
	if w.first < 0 {
		return nil, fmt.Errorf("%s has no rounds %d to %d: they go from %d to %d", part.Name, o.From, o.To,
			part.Rounds[0].Number, part.Rounds[len(part.Rounds)-1].Number)
	}
	return w, nil
}
