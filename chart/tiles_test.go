package chart

import (
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
