package chart

import (
	"bytes"
	"fmt"
	"math/rand"
	"slices"
	"strings"
	"testing"

	"whorl/chart/output"
	"whorl/chart/scene"
	"whorl/geometry"
	"whorl/patterns/fabric"
	"whorl/patterns/stitch"
)

func svg(t testing.TB, s *scene.Scene) string {
	t.Helper()
	var b bytes.Buffer
	if err := output.SVG(&b, s); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

// A chart takes less than 250 bytes a stitch that counts.
func TestSVGSize(t *testing.T) {
	for _, s := range []sample{
		{"sc", flat(sc, 6, 10, true), Options{}},
		{"dc", flat(dc, 12, 8, true), Options{}},
		{"hat", capped(hdc, 8, 7, 8), Options{}},
		{"shells", shells(), Options{}},
	} {
		n := 0
		for _, r := range s.f.Parts[0].Rounds {
			n += r.Count()
		}
		if got := len(svg(t, draw(t, s).Scene)); got >= 250*n {
			t.Errorf("%s: %d bytes for %d stitches, %.0f each; want less than 250", s.name, got, n, float64(got)/float64(n))
		}
	}
}

func TestSameBytes(t *testing.T) {
	a := svg(t, draw(t, sample{"", shells(), Options{Title: "Marram"}}).Scene)
	b := svg(t, draw(t, sample{"", shells(), Options{Title: "Marram"}}).Scene)
	if a != b {
		t.Error("two runs differ")
	}
}

// kinds counts the groups of a drawn chart by their kind.
func kinds(g *scene.Group, count map[string]int) map[string]int {
	if k := datum(g, "kind"); k != "" {
		count[k]++
	}
	for _, n := range g.Nodes {
		if c, ok := n.(*scene.Group); ok {
			kinds(c, count)
		}
	}
	return count
}

func TestEveryStitchIsDrawn(t *testing.T) {
	f := shells()
	got := kinds(&draw(t, sample{"", f, Options{}}).Scene.Root, map[string]int{})
	want := map[string]int{}
	for _, r := range f.Parts[0].Rounds {
		for i := range r.Stitches {
			s := &r.Stitches[i]
			switch {
			case s.Role == fabric.Join:
				want["join"]++
			case s.Role == fabric.Start:
				want[fmt.Sprintf("beg ch-%d", s.Chains)]++
			case !s.IsChain():
				want[s.Kind.Name(stitch.US)]++
			}
		}
		for _, sp := range r.Spaces {
			want[fmt.Sprintf("ch-%d sp", sp.To-sp.From)]++
		}
	}
	want["edge"] = 1
	for k, n := range want {
		if got[k] != n {
			t.Errorf("%d %s drawn, want %d", got[k], k, n)
		}
	}
	if len(got) != len(want) {
		t.Errorf("drawn %v, want %v", got, want)
	}
}

func keyOf(g *scene.Group) (names []string) {
	if k := datum(g, "key"); k != "" {
		names = append(names, k)
	}
	for _, n := range g.Nodes {
		if c, ok := n.(*scene.Group); ok {
			names = append(names, keyOf(c)...)
		}
	}
	return names
}

func TestKey(t *testing.T) {
	for _, c := range []struct {
		s    sample
		want string
	}{
		{sample{"", shells(), Options{}}, "start|arrow|pale line|beg ch 1|sc|join|dc|beg ch 3|ch|dc5tog|beg ch 2|hdc|hdc2tog"},
		{sample{"", flat(sc, 6, 3, true), Options{Terms: stitch.UK}}, "start|arrow|ring|beg ch 1|dc|join"},
		{sample{"", shells(), Options{From: 2, To: 2}}, "start|arrow|pale line|beg ch 1|sc|dc|join"},
		{sample{"", turned(), Options{}}, "start|arrow|ring|beg ch 1|sc|join|BLO sc|BLO sc"},
		{sample{"", split(), Options{}}, "start|arrow|ch|beg ch 1|sc|join|dc|beg ch 2|dc5tog"},
	} {
		if got := strings.Join(keyOf(&draw(t, c.s).Scene.Root), "|"); got != c.want {
			t.Errorf("%s: key %s, want %s", c.s.f.Parts[0].Name, got, c.want)
		}
	}
}

// The key has the signs that are drawn and no others.
func TestKeySigns(t *testing.T) {
	wedge, err := Wedge(shells(), measure(t, shells()), Options{})
	if err != nil {
		t.Fatal(err)
	}
	for name, c := range map[string]*Chart{
		"round": draw(t, sample{"", shells(), Options{}}),
		"wedge": wedge,
		"rows":  rowsChart(t, ribbing(6), Options{}),
	} {
		key := keyOf(&c.Scene.Root)
		for id, short := range map[string]string{"start": "start", "direction": "arrow", "below": "pale line"} {
			drawn := find(&c.Scene.Root, id) != nil
			if id == "direction" && name == "rows" {
				drawn = true // beside every number
			}
			if got := slices.Contains(key, short); got != drawn {
				t.Errorf("%s: %s is drawn: %v, in the key: %v", name, id, drawn, got)
			}
		}
		if got := slices.Contains(key, "paler"); got != (name == "wedge") {
			t.Errorf("%s: paler stitches in the key: %v", name, got)
		}
	}
}

// A stitch of the designer's own has the name that she gives it, once.
func TestKeyNames(t *testing.T) {
	f := shells()
	for _, r := range f.Parts[0].Rounds {
		for i := range r.Stitches {
			if s := &r.Stitches[i]; s.Role == fabric.Worked && s.Kind == stitch.Tog(stitch.Double, 5) {
				s.Own = "half wheel"
			}
		}
	}
	o := Options{Special: []Definition{{Name: "Half Wheel", Words: "dc5tog over next 5 sts", Own: "half wheel", Told: true}}}
	c := draw(t, sample{"", f, o})
	key := strings.Join(keyOf(&c.Scene.Root), "|")
	if strings.Count(key, "Half Wheel") != 1 || strings.Contains(key, "dc5tog") {
		t.Errorf("key %s", key)
	}
	if find(&c.Scene.Root, "special") != nil {
		t.Error("what the key tells is told again")
	}
}

// A plain stitch that the designer works under a name of her own too is in the key under both.
func TestKeyOfBothNames(t *testing.T) {
	c := newCloth("Band").chainRing(12).rnd().st(sc, 12).rnd().st(sc, 12)
	f := c.fabric()
	f.Parts[0].Rounds[2].Stitches[3].Own = "peg"
	key := keyOf(&draw(t, sample{"", f, Options{Special: []Definition{{Name: "peg", Words: "sc in next st", Own: "peg"}}}}).Scene.Root)
	if all := "|" + strings.Join(key, "|"); strings.Count(all, "|sc") != 1 || strings.Count(all, "|peg") != 1 {
		t.Errorf("key %s", all)
	}
}

func TestTitles(t *testing.T) {
	s := svg(t, draw(t, sample{"", shells(), Options{Title: "Marram <Hat> & more"}}).Scene)
	for _, want := range []string{
		"Rnd 1, stitch 5: sc in next row end",
		"Rnd 3, stitch 2: dc5tog over the next 5 stitches",
		"Rnd 4, stitch 2: sc in next ch-2 sp",
		"Rnd 4, stitch 3: sc in same ch-2 sp",
		"Rnd 3, ch-2 sp",
		"Rnd 8, beginning ch 2",
		"Marram &lt;Hat&gt; &amp; more",
		"from the edge inwards to the centre",
	} {
		if !strings.Contains(s, want) {
			t.Errorf("no %q in the picture", want)
		}
	}
}

// A chart that cannot print well says so and is drawn all the same.
func TestFindings(t *testing.T) {
	c := draw(t, sample{"", capped(sc, 6, 16, 44), Options{}})
	if len(c.Findings) == 0 || c.Smallest >= smallestSymbol {
		t.Errorf("60 rounds on a page: smallest %.2f, findings %q", c.Smallest, c.Findings)
	}
	if c := draw(t, sample{"", capped(sc, 6, 16, 14), Options{}}); len(c.Findings) != 0 {
		t.Errorf("96 stitches by 30 rounds: %q", c.Findings)
	}
}

func TestRefusals(t *testing.T) {
	f := flat(sc, 6, 3, true)
	form := measure(t, f)
	rows := &fabric.Fabric{Parts: []*fabric.Part{{Name: "Brim", Worked: fabric.InRows, Rounds: f.Parts[0].Rounds}}}
	for name, c := range map[string]struct {
		f    *fabric.Fabric
		form *geometry.Form
		o    Options
	}{
		"no fabric":     {nil, nil, Options{}},
		"not measured":  {f, &geometry.Form{}, Options{}},
		"no such part":  {f, form, Options{Part: 1}},
		"no such round": {f, form, Options{From: 7}},
		"rows":          {rows, form, Options{}},
	} {
		if _, err := Round(c.f, c.form, c.o); err == nil {
			t.Errorf("%s: no error", name)
		}
	}
}

// Left-handed charts are the mirror image, with the same data turned round.
func TestLeftHanded(t *testing.T) {
	right := draw(t, sample{"", flat(hdc, 8, 4, true), Options{}})
	left := draw(t, sample{"", flat(hdc, 8, 4, true), Options{LeftHanded: true}})
	a, b := tops(&right.Scene.Root, nil), tops(&left.Scene.Root, nil)
	if len(a) == 0 || len(a) != len(b) {
		t.Fatalf("%d and %d places", len(a), len(b))
	}
	for i := range a {
		if d := a[i][0] + b[i][0] - 210; d > 0.011 || d < -0.011 || a[i][1] != b[i][1] {
			t.Fatalf("place %d at %v and %v", i, a[i], b[i])
		}
	}
}

func tops(g *scene.Group, out [][2]float64) [][2]float64 {
	if datum(g, "stitch") != "" {
		p := pointsOf(g, "top")[0]
		out = append(out, [2]float64{p.X, p.Y})
	}
	for _, n := range g.Nodes {
		if c, ok := n.(*scene.Group); ok {
			out = tops(c, out)
		}
	}
	return out
}

// Whatever stands on whatever, there is a finite picture and no panic.
func TestRandomFabrics(t *testing.T) {
	for seed := int64(0); seed < 100; seed++ {
		r := rand.New(rand.NewSource(seed))
		c := newCloth("Random")
		if r.Intn(2) == 0 {
			c.magic()
		} else {
			c.chainRing(2 + r.Intn(40))
		}
		for n := 1 + r.Intn(8); n > 0; n-- {
			c.turn = r.Intn(4) == 0
			c.rnd()
			if r.Intn(3) > 0 {
				c.start(r.Intn(4))
			}
			for m := 1 + r.Intn(40); m > 0; m-- {
				k := stitch.Of(stitch.Slip + stitch.Base(r.Intn(6)))
				switch r.Intn(7) {
				case 0:
					c.ch(1 + r.Intn(5))
				case 1:
					c.inc(k, k, k)
				case 2:
					c.tog(stitch.Tog(stitch.Single+stitch.Base(r.Intn(3)), 2+r.Intn(4)))
				case 3:
					c.skip(r.Intn(5))
				case 4:
					c.into(k, stitch.Into(r.Intn(5)), 1+r.Intn(3))
				default:
					c.st(k, 1+r.Intn(4))
				}
			}
			if r.Intn(2) == 0 {
				c.join()
			}
		}
		f := c.fabric()
		form, err := geometry.Measure(f, nil)
		if err != nil {
			continue
		}
		chart, err := Round(f, form, Options{Title: "Random", LeftHanded: r.Intn(2) == 0, Cross: r.Intn(2) == 0})
		if err != nil {
			t.Errorf("seed %d: %v", seed, err)
			continue
		}
		if err := chart.Scene.Check(); err != nil {
			t.Errorf("seed %d: %v", seed, err)
		}
		for _, p := range tops(&chart.Scene.Root, nil) {
			if p[0] < 10 || p[0] > 200 || p[1] < 10 || p[1] > chart.Scene.Height-10 {
				t.Errorf("seed %d: a stitch at %.1f, %.1f, off the page", seed, p[0], p[1])
				break
			}
		}
	}
}

func BenchmarkRound(b *testing.B) {
	for _, n := range []int{15, 49} { // about 1,000 and 10,000 stitches
		f := flat(hdc, 8, n, true)
		form := measure(b, f)
		stitches := 0
		for _, r := range f.Parts[0].Rounds {
			stitches += len(r.Stitches)
		}
		b.Run(fmt.Sprint(stitches), func(b *testing.B) {
			for b.Loop() {
				if _, err := Round(f, form, Options{}); err != nil {
					b.Fatal(err)
				}
			}
			b.ReportMetric(float64(stitches)*float64(b.N)/b.Elapsed().Seconds(), "stitches/s")
		})
	}
}
