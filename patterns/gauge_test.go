package patterns

import (
	"fmt"
	"testing"
)

// said is what a line of gauge was read as, in a few words.
func said(g Gauge) string {
	s := ""
	switch n := g.Sample; {
	case g.Over == 0:
		return "no size"
	case n != nil:
		s = fmt.Sprintf("%q", n.Name)
		if n.To > 0 {
			what := "rounds"
			if n.Rows {
				what = "rows"
			}
			s += fmt.Sprintf(" %s %d-%d", what, n.From, n.To)
		}
		if n.Way != Unsaid {
			s += " " + string(n.Way)
		}
	default:
		s = fmt.Sprintf("%.4g %s", g.Count, g.Of)
		if g.In != "" {
			s += fmt.Sprintf(" (%s/%s)", g.Counted, g.In)
		}
		if g.Rows > 0 {
			s += fmt.Sprintf(", %.4g rounds", g.Rows)
		}
	}
	s += fmt.Sprintf(" = %.4g", g.Over)
	if g.For != "" {
		s += " for " + g.For
	}
	if g.Remark != "" {
		s += "; " + g.Remark
	}
	return s
}

// Lines of gauge as they are published.
func TestGaugeAsPublished(t *testing.T) {
	for _, c := range []struct{ line, want string }{
		// Words behind the length.
		{"16 sts and 10 rnds = 10 cm over basketweave", "16 basketweave (sts/basketweave), 10 rounds = 100"},
		{"16 sts and 10 rnds over basketweave = 10 cm", "16 basketweave (sts/basketweave), 10 rounds = 100"},
		{"16 dc and 8 rows = 10 cm over ripple pattern", "16 dc in ripple pattern (dc/ripple pattern), 8 rounds = 100"},
		{"16 dc and 8 rows = 10 cm, unblocked", "16 dc, 8 rounds = 100; unblocked"},
		{"15 dc and 10 rows (1 row dc, 1 row sc) = 10 cm", "15 dc, 10 rounds = 100; (1 row dc, 1 row sc)"},
		{"16 dc and 8 rows = 10 cm after blocking", "16 dc, 8 rounds = 100; after blocking"},
		{"16 dc and 8 rows = 10 cm (blocked)", "16 dc, 8 rounds = 100; (blocked)"},
		{"16 dc and 8 rows = 10 cm worked in the round", "16 dc, 8 rounds = 100; worked in the round"},
		{"16 dc and 8 rows = 10 cm in the round", "16 dc, 8 rounds = 100; in the round"},
		{"16 dc and 8 rows = 10 cm using 5 mm hook", "16 dc, 8 rounds = 100; using 5 mm hook"},
		{"16 dc and 8 rows = 10 cm with a 5 mm hook", "16 dc, 8 rounds = 100; with a 5 mm hook"},
		{"16 dc and 8 rows = 10 cm on a 5 mm hook", "16 dc, 8 rounds = 100; on a 5 mm hook"},
		{"16 dc and 8 rows = 10 cm, 5 mm hook", "16 dc, 8 rounds = 100; 5 mm hook"},
		{"16 dc and 8 rows = 4 in / 10 cm (5 mm hook)", "16 dc, 8 rounds = 101.6; (5 mm hook)"},
		{"16 dc and 8 rows with 5 mm hook = 10 cm", "16 dc, 8 rounds = 100; with 5 mm hook"},
		{"16 dc and 8 rows = 10 cm in main pattern", "16 dc in main pattern (dc/main pattern), 8 rounds = 100"},
		{"16 sts and 8 rows = 10 cm measured over body", "16 body (sts/body), 8 rounds = 100"},
		{"16 sts and 8 rows = 10 cm over the waffle pattern, after blocking", "16 waffle pattern (sts/waffle pattern), 8 rounds = 100; after blocking"},
		{"16 sts and 8 rows = 10 cm in moss stitch using 5 mm hook", "16 moss stitch (sts/moss stitch), 8 rounds = 100; using 5 mm hook"},
		{"16 hdc and 11 rounds = 10 cm with love", "16 hdc, 11 rounds = 100; with love"},
		{"16 sts and 8 rows = 10 cm in hdc worked in the round", "16 hdc (sts/hdc), 8 rounds = 100; worked in the round"},
		{"16 sts and 8 rows = 10 cm in hdc in the round", "16 hdc (sts/hdc), 8 rounds = 100; in the round"},
		{"16 sts and 8 rows = 10 cm in both directions", "16 sts, 8 rounds = 100; in both directions"},
		// A stitch pattern that is named.
		{"15 sts and 9 rounds in waffle stitch = 10 cm", "15 waffle stitch (sts/waffle stitch), 9 rounds = 100"},
		{"15 sts and 9 rounds worked in waffle stitch = 10 cm", "15 waffle stitch (sts/waffle stitch), 9 rounds = 100"},
		{"13 sts and 8 rounds in post stitch rib = 10 cm", "13 post stitch rib (sts/post stitch rib), 8 rounds = 100"},
		{"12 sts in linen stitch = 3 in in linen stitch", "12 linen stitch (sts/linen stitch) = 76.2"},
		// Rounds alone.
		{"11 rounds = 10 cm", "0 , 11 rounds = 100"},
		{"14 rows of sc rib = 10 cm", "0 rounds in sc rib (rounds/sc rib), 14 rounds = 100"},
		{"14 sc rows = 10 cm", "0 rounds in sc (rounds/sc), 14 rounds = 100"},
		{"8 rounds = 10 cm in hdc", "0 rounds in hdc (rounds/hdc), 8 rounds = 100"},
		{"10 rows and 16 hdc = 10 cm", "16 hdc, 10 rounds = 100"},
		{"one scallop (4 rows) = 4 cm long", "0 scallop, 4 rounds = 40; long"},
		{"one scallop (4 rows) = 4 cm wide", "1 scallop = 40; wide"},
		{"one scallop (4 rows) = 5 cm wide x 4 cm tall", "1 scallop, 5 rounds = 50"},
		// Stitches alone, and lengths.
		{"16 hdc = 4\"", "16 hdc = 101.6"},
		{"16 hdc = 4 in", "16 hdc = 101.6"},
		{"16 hdc = 10cm/4in square", "16 hdc = 100"},
		{"16 hdc = 10 x 10 cm", "16 hdc = 100"},
		{"16 hdc = 10 cm x 10 cm", "16 hdc = 100"},
		{"16 hdc and 11 rows = 10 cm by 10 cm", "16 hdc, 11 rounds = 100"},
		{"16 hdc and 12 rows = 10 x 12 cm", "16 hdc, 10 rounds = 100"},
		{"16 hdc = 10 cm square", "16 hdc = 100"},
		{"16 hdc = 4\" (10 cm)", "16 hdc = 101.6"},
		{"16 hdc = 10 cm [4 in] square in hdc", "16 hdc = 100"},
		{"16 hdc = 4 in (10 cm) in pattern", "16 hdc in pattern (hdc/pattern) = 101.6"},
		{"16 hdc per 10 cm", "16 hdc = 100"},
		{"16 hdc and 11 rows over 10 cm", "16 hdc, 11 rounds = 100"},
		{"16 hdc and 11 rows in 4 inches", "16 hdc, 11 rounds = 101.6"},
		{"16 hdc measures 10 cm", "16 hdc = 100"},
		{"16 hdc should measure about 10 cm", "16 hdc = 100"},
		{"10 cm = 16 hdc and 11 rows", "16 hdc, 11 rounds = 100"},
		{"4 x 4 in = 16 hdc x 11 rows", "16 hdc, 11 rounds = 101.6"},
		// Repeats.
		{"2 shells and 4 rows = 10 cm", "2 shells, 4 rounds = 100"},
		{"3 pattern repeats and 9 rows = 11 cm", "3 pattern repeats, 9 rounds = 110"},
		{"1 repeat = 6 cm", "1 repeat = 60"},
		{"one shell = 6 cm", "1 shell = 60"},
		{"each shell = 6 cm", "1 shell = 60"},
		{"Two shells and 4 rows = 10 cm", "2 shells, 4 rounds = 100"},
		{"one ripple (14 sts) = 8 cm wide", "14 sts = 80; in ripple wide"},
		{"One ripple of 14 sts = 8 cm", "14 sts = 80; in ripple"},
		{"Two ripples (14 sts each) = 16 cm", "28 sts = 160; in ripples"},
		{"1 pattern repeat (12 sts and 4 rows) = 7 cm", "12 sts, 4 rounds = 70; in pattern repeat"},
		{"one wave [over 16 stitches] measures 9 cm across", "16 sts = 90; in wave across"},
		{"one shell and one sc = 3 cm wide", "1 shell = 30; and one sc wide"},
		{"2 shells and 2 sc = 3 cm", "2 shells = 30; and 2 sc"},
		{"one shell (5 dc) = 3 cm", "1 shell (5 dc) = 30"},
		// Words before.
		{"In hdc: 14 sts and 10 rows = 10 cm", "14 hdc (sts/hdc), 10 rounds = 100"},
		{"In hdc, 14 sts and 10 rows = 10 cm", "14 hdc (sts/hdc), 10 rounds = 100"},
		{"Working in waffle stitch: 14 sts and 10 rows = 10 cm", "14 waffle stitch (sts/waffle stitch), 10 rounds = 100"},
		{"Gauge: 14 hdc x 11 rows = 10 cm", "14 hdc, 11 rounds = 100"},
		{"Gauge is 14 hdc x 11 rows = 10 cm", "14 hdc, 11 rounds = 100"},
		{"With 5 mm hook, 14 hdc x 11 rows = 10 cm", "14 hdc, 11 rounds = 100; With 5 mm hook"},
		{"Gauge: with 5 mm hook 14 hdc x 11 rows = 10 cm", "14 hdc, 11 rounds = 100; with 5 mm hook"},
		{"Using 4.5 mm hook: 14 hdc x 11 rows = 10 cm", "14 hdc, 11 rounds = 100; Using 4.5 mm hook"},
		{"Approx. 14 hdc and 11 rows = 10 cm", "14 hdc, 11 rounds = 100"},
		{"About 14 hdc = approximately 10 cm", "14 hdc = 100"},
		{"Brim: 16 sc and 18 rows = 10 cm", "16 sc, 18 rounds = 100 for Brim"},
		// A piece, or its first rounds.
		{"rounds 1-6 measure 11 cm across", `"" rounds 1-6 across = 110; across`},
		{"Rounds 1 to 6 should measure 11 cm across", `"" rounds 1-6 across = 110; across`},
		{"first 3 rounds = 4.5 cm across", `"" rounds 1-3 across = 45; across`},
		{"First three rounds = 4.5 cm", `"" rounds 1-3 = 45`},
		{"Rnds 1-4 = 3 in (7.5 cm) in diameter", `"" rounds 1-4 across = 76.2; in diameter`},
		{"Rnds 1–4 = 3\" diameter", `"" rounds 1-4 across = 76.2; diameter`},
		{"Crown, rnds 1-4 = 3 in diameter", `"Crown" rounds 1-4 across = 76.2; diameter`},
		{"Rnds 1-4 of motif = 3 in diameter", `"motif" rounds 1-4 across = 76.2; diameter`},
		{"After Rnd 4, circle measures 8 cm across", `"circle" rounds 1-4 across = 80; across`},
		{"4 rounds = 8 cm in diameter", `"" rounds 1-4 across = 80; in diameter`},
		{"one square = 18 cm along each side", `"square" along each side = 180; along each side`},
		{"one finished hexagon = 17 cm from flat side to flat side", `"finished hexagon" across = 170; from flat side to flat side`},
		{"motif = 10 cm square", `"motif" = 100`},
		{"each motif measures 12 cm corner to corner", `"motif" corner to corner = 120; corner to corner`},
		{"coaster = 4 in diameter", `"coaster" across = 101.6; diameter`},
		{"1 motif = 9 cm", `"motif" = 90`},
		{"first 5 rows = 2 in", `"" rows 1-5 = 50.8`},
		{"Rows 1-5 = 2 in tall", `"" rows 1-5 high = 50.8; tall`},
		{"finished cowl measures 60 cm around", `"finished cowl" around = 600; around`},
		// No size.
		{"gauge is not critical", "no size"},
		{"Gauge is not critical for this project.", "no size"},
		{"exact gauge isn't important for this project", "no size"},
		{"Gauge: not important", "no size"},
		{"5 mm hook", "no size"},
		{"the size = up to you", "no size"},
	} {
		g, bad := readGauge(c.line)
		if bad != nil {
			t.Errorf("%s: %v", c.line, bad)
		} else if got := said(g); got != c.want {
			t.Errorf("%s:\n\t%s, want\n\t%s", c.line, got, c.want)
		} else if g.Words != c.line {
			t.Errorf("%s: words %q", c.line, g.Words)
		}
	}
}

// Several measurements in one line.
func TestGaugeClauses(t *testing.T) {
	for _, c := range []struct{ line, want string }{
		{"One ripple (14 sts) = 8 cm wide, 6 dc rounds = 10 cm", "14 sts = 80; in ripple wide | 0 rounds in dc (rounds/dc), 6 rounds = 100"},
		{"14 sts = 8 cm; 6 rounds = 10 cm", "14 sts = 80 | 0 , 6 rounds = 100"},
		{"16 sts = 10 cm and 11 rounds = 10 cm", "16 sts = 100 | 0 , 11 rounds = 100"},
		{"16 sts = 4 in (10 cm), and 11 rounds = 4 in", "16 sts = 101.6 | 0 , 11 rounds = 101.6"},
		{"16 sts and 8 rows = 4 in. 5 shells = 9 cm.", "16 sts, 8 rounds = 101.6 | 5 shells = 90"},
		{"10 cm = 16 hdc and 11 rows", "16 hdc, 11 rounds = 100"},
		{"16 hdc = 10 cm, 11 rows = many", "!"},
	} {
		got := ""
		for i, part := range (Text{Lines: []string{c.line}, First: 1, Columns: []int{1}}).joined().clauses() {
			g, bad := readGauge(part.text)
			if i > 0 {
				got += " | "
			}
			if bad != nil {
				got = "!"
				break
			}
			got += said(g)
		}
		if got != c.want {
			t.Errorf("%s:\n\t%s, want\n\t%s", c.line, got, c.want)
		}
	}
}
