package chart

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/tdewolff/canvas"

	"whorl/chart/scene"
)

// ids are the names of all the stitches of a picture.
func ids(root *scene.Group) map[string]bool {
	all := map[string]bool{}
	walkGroups(root, func(g *scene.Group) {
		if datum(g, "kind") != "" {
			all[g.ID] = true
		}
	})
	return all
}

// middles are the middles of a page's register marks, on the page.
func middles(s *scene.Scene) (l []canvas.Point) {
	for _, n := range find(&s.Root, "register").Nodes {
		b := n.(*scene.Path).D.Bounds()
		l = append(l, canvas.Point{X: (b.X0 + b.X1) / 2, Y: (b.Y0 + b.Y1) / 2})
	}
	return l
}

// A chart whose symbols are large enough and yet stand too close is drawn on several
// pages as well, on which they can be told apart.
func TestTiledWhereClose(t *testing.T) {
	c := newCloth("Mat").magic()
	for r := 1; r <= 13; r++ {
		c.rnd().rep(30, func(int) {
			if r > 1 {
				c.st(tr, r-2).inc(tr, tr)
			} else {
				c.st(tr, 1)
			}
		})
	}
	f := c.fabric()
	form := measure(t, f)
	o := Options{Title: "Mat"}
	draw := func(o Options) (*Chart, error) { return Round(f, form, o) }
	close, err := draw(o)
	if err != nil || close.Small() || close.Legible() {
		t.Fatal(err, close.Smallest, close.Findings)
	}
	pages := Tiled(close, o, draw)
	if len(pages) < 2 {
		t.Fatalf("%d pages", len(pages))
	}
	for _, p := range pages {
		if !p.Legible() || p.Smallest < 1.1*close.Smallest {
			t.Errorf("%s: symbols of %.1f mm after %.1f", p.Caption, p.Smallest, close.Smallest)
		}
	}
}

// A chart that prints too small on a page is drawn on several: every stitch whole on
// one of them, large enough, nothing cut off, and the marks of neighbours at one
// place of the chart.
func TestTiled(t *testing.T) {
	f := flat(sc, 6, 44, true)
	form := measure(t, f)
	for name, o := range map[string]Options{
		"A4": {Title: "Wide Circle", Credit: "Design: nobody"}, "Letter": {Paper: Letter, Title: strings.Repeat("A very long title ", 12)},
		"large": {Large: true, From: 1, To: 30}, "tint": {Tint: true},
	} {
		draw := func(o Options) (*Chart, error) { return Round(f, form, o) }
		small, err := draw(o)
		if err != nil || !small.Small() {
			t.Fatal(name, err, small.Smallest)
		}
		pages := Tiled(small, o, draw)
		if len(pages) < 2 {
			t.Fatalf("%s: %d pages", name, len(pages))
		}
		left := ids(&small.Scene.Root)
		width, height := o.Paper.Size()
		var at []canvas.Point
		for i, c := range pages {
			s := c.Scene
			if err := s.Check(); err != nil {
				t.Fatal(err)
			}
			if r := Audit(s); !r.Clean() {
				t.Errorf("%s, page %d: overlaps %v, texts %v, legs %v, repeats %.2f", name, i+1, r.Overlaps, r.Texts, r.Astray, r.Turn)
			}
			if c.Small() || math.Min(s.Width, s.Height) != math.Min(width, height) || math.Max(s.Width, s.Height) != math.Max(width, height) {
				t.Errorf("%s, page %d: symbols of %.2f mm on %.1f × %.1f mm", name, i+1, c.Smallest, s.Width, s.Height)
			}
			for id := range ids(&s.Root) {
				delete(left, id)
			}
			b, _ := boundsOf(&s.Root, scene.Plain)
			if b.x0 < edgeLeast || b.y0 < edgeLeast || b.x1 > s.Width-edgeLeast || b.y1 > s.Height-edgeLeast {
				t.Errorf("%s, page %d: drawn from %.1f, %.1f to %.1f, %.1f", name, i+1, b.x0, b.y0, b.x1, b.y1)
			}
			// Where the marks are in the chart, from its centre.
			centre := pointsOf(find(&s.Root, "chart"), "centre")[0]
			for _, m := range middles(s) {
				at = append(at, m.Sub(centre))
			}
		}
		if len(left) > 0 {
			t.Errorf("%s: %d stitches are on no page: %v", name, len(left), left)
		}
		for i, m := range at {
			met := false
			for k, n := range at {
				met = met || i != k && m.Sub(n).Length() < 0.02
			}
			if !met {
				t.Errorf("%s: a register mark at %v meets no other", name, m)
			}
		}
	}
	if c := draw(t, sample{"", capped(hdc, 8, 5, 4), Options{}}); Tiled(c, Options{}, nil) != nil {
		t.Error("a chart that prints large enough is drawn on several pages")
	}
}

// Among text the pages are figures: no higher than the room, without title, key and
// foot, and of the height of what they show where that is one row of pages; arcs are
// cut as lines are.
func TestTiledFigures(t *testing.T) {
	f := flat(sc, 6, 44, true)
	form := measure(t, f)
	o := Options{Title: "Wide Circle", Credit: "Design: nobody", Figure: 220}
	draw := func(o Options) (*Chart, error) { return Round(f, form, o) }
	small, err := draw(o)
	if err != nil || !small.Small() {
		t.Fatal(err, small.Smallest)
	}
	pages := Tiled(small, o, draw)
	if len(pages) < 4 {
		t.Fatalf("%d pages", len(pages))
	}
	left := ids(&small.Scene.Root)
	for i, c := range pages {
		s := c.Scene
		if s.Width != 210 || s.Height > 220 || c.Small() {
			t.Errorf("page %d: %.1f × %.1f mm, symbols of %.2f mm", i+1, s.Width, s.Height, c.Smallest)
		}
		if !strings.HasPrefix(c.Caption, fmt.Sprintf("%s, page %d of %d, the ", small.Caption, i+1, len(pages))) || c.Reading == "" {
			t.Errorf("page %d is called %q", i+1, c.Caption)
		}
		b, _ := boundsOf(&s.Root, scene.Plain)
		if b.x0 < 12 || b.y0 < 0 || b.x1 > s.Width-12 || b.y1 > s.Height {
			t.Errorf("page %d: drawn from %.1f, %.1f to %.1f, %.1f", i+1, b.x0, b.y0, b.x1, b.y1)
		}
		for _, text := range written(&s.Root) {
			if strings.HasPrefix(text, "Wide") || strings.HasPrefix(text, "Design") || strings.HasPrefix(text, "Print") {
				t.Errorf("page %d says %q", i+1, text)
			}
		}
		for id := range ids(&s.Root) {
			delete(left, id)
		}
	}
	if len(left) > 0 {
		t.Errorf("%d stitches are on no page: %v", len(left), left)
	}
	wide := &scene.Scene{Width: 400, Height: 90}
	d := canvas.Circle(40)
	wide.Root.Add(&scene.Group{ID: "chart", Nodes: []scene.Node{
		&scene.Path{D: d.Copy().Translate(50, 45), Style: scene.Stroked(ink, 0.3)},
		&scene.Path{D: d.Translate(350, 45), Style: scene.Stroked(ink, 0.3)},
		&scene.Path{D: canvas.Line(300, 0).Translate(50, 45), Style: scene.Stroked(ink, 0.3)}}})
	strip := newTiles(wide, o)
	for i := range strip.windows {
		s := strip.page(i)
		b, ok := boundsOf(&s.Root, scene.Plain)
		if strip.rows != 1 || !ok || s.Height > 100 || b.x1 > s.Width-12 {
			t.Errorf("strip, page %d of %d: %.1f mm high, drawn to %.1f", i+1, len(strip.windows), s.Height, b.x1)
		}
	}
}

// The plan of the pages ends above what the page shows, however many rows of them there are.
func TestPlanKeepsClearOfTheChart(t *testing.T) {
	for rows := 1; rows <= mostTiles; rows++ {
		long := &scene.Scene{Width: 210, Height: 260 * float64(rows)}
		long.Root.Add(&scene.Group{ID: "chart", Nodes: []scene.Node{
			&scene.Path{D: canvas.Rectangle(150, 230*float64(rows)), Style: scene.Stroked(ink, 0.3)}}})
		strip := newTiles(long, Options{Title: "Scarf"})
		s := strip.page(len(strip.windows) - 1)
		plan := find(&s.Root, "plan")
		if len(plan.Nodes) != len(strip.windows) {
			t.Fatalf("%d pages on the plan of %d", len(plan.Nodes), len(strip.windows))
		}
		if b, _ := boundsOf(plan, scene.Plain); b.y1 > strip.top || b.x1 > s.Width-margin+0.2 {
			t.Errorf("%d rows of pages: the plan reaches to %.1f, %.1f", strip.rows, b.x1, b.y1)
		}
	}
}

// A post has the shape of its pixels, whatever is drawn, and is never trimmed.
func TestPost(t *testing.T) {
	for _, c := range []struct {
		wide, tall    int
		width, height float64
	}{{1080, 1080, 180, 180}, {1080, 1350, 180, 225}, {2160, 2700, 180, 225}, {1200, 800, 270, 180}} {
		o := Options{Title: "Cap", Paper: Post(c.wide, c.tall), Sheet: true}
		f := capped(hdc, 8, 4, 2)
		wedge, err := Wedge(f, measure(t, f), o)
		if err != nil {
			t.Fatal(err)
		}
		for _, s := range []*scene.Scene{draw(t, sample{"", f, o}).Scene, wedge.Scene, rowsChart(t, ribbing(4), o).Scene} {
			if math.Abs(s.Width-c.width) > 1e-9 || math.Abs(s.Height-c.height) > 1e-9 {
				t.Errorf("%d × %d pixels: %s is %.2f × %.2f mm", c.wide, c.tall, s.Title, s.Width, s.Height)
			}
			if r := Audit(s); !r.Clean() {
				t.Errorf("%d × %d pixels, %s: overlaps %v, texts %v, legs %v", c.wide, c.tall, s.Title, r.Overlaps, r.Texts, r.Astray)
			}
		}
	}
}

// A sign at the edge of a page is on it whole or not at all.
func TestSignsAreNotCut(t *testing.T) {
	sign := func(x float64) *scene.Group {
		return &scene.Group{ID: "number7", Nodes: []scene.Node{
			&scene.Path{D: canvas.Line(4, 0).Translate(x, 20), Style: scene.Stroked(ink, 0.3)},
			&scene.Text{X: x + 6, Y: 20, Size: 3, Align: scene.Centre, Colour: ink, String: "7"}}}
	}
	cut := cutter{win: box{0, 0, 50, 50}, overlap: 15}
	for x, whole := range map[float64]bool{20: true, 47: false, 44: false, -3: false} {
		if made := cut.node(sign(x), scene.Plain); (made != nil) != whole {
			t.Errorf("of a sign at %g the page shows %v", x, made)
		}
	}
}

// Lines of one path that go on past the page are cut each for itself, and not joined there.
func TestLinesAreCutApart(t *testing.T) {
	comb := canvas.Line(80, 0).Translate(-10, 20)
	for x := range 8 {
		comb = comb.Append(canvas.Line(0, -2).Translate(float64(10*x)-5, 20))
	}
	made, _ := (cutter{win: box{0, 0, 50, 50}}).node(&scene.Path{D: comb, Style: scene.Stroked(ink, 0.2)}, scene.Plain).(*scene.Path)
	if made == nil {
		t.Fatal("nothing is shown")
	}
	if n := len(made.D.Split()); n != 6 || math.Abs(made.D.Length()-60) > 0.01 {
		t.Errorf("%d lines, %.2f mm in all, want the edge and 5 ticks, 60 mm", n, made.D.Length())
	}
}
