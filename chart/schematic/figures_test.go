package schematic

import (
	"math"
	"slices"
	"testing"
)

func TestFiguresInTheOrderOfTheTrade(t *testing.T) {
	for _, c := range []struct {
		mm     []float64
		cm, in string
	}{
		{[]float64{514.2857, 540, 571}, "51.4 (54, 57.1) cm", "20¼ (21¼, 22½) in"},
		{[]float64{508}, "50.8 cm", "20 in"},
		{[]float64{254, 254.2}, "25.4 cm", "10 in"},
		{[]float64{6.35, 12.7, 19.05, 25.4}, "0.6 (1.3, 1.9, 2.5) cm", "¼ (½, ¾, 1) in"},
		{[]float64{100, 0, 120}, "10 (–, 12) cm", "4 (–, 4¾) in"},
		{[]float64{1}, "0.1 cm", "¼ in"},
		{[]float64{117.49999999999}, "11.8 cm", "4¾ in"}, // a half, but for what reckoning leaves
		{[]float64{92.0749999999}, "9.2 cm", "3¾ in"},
		{nil, " cm", " in"},
	} {
		cm, in := figures(c.mm)
		if cm != c.cm || in != c.in {
			t.Errorf("%v: %q, %q; want %q, %q", c.mm, cm, in, c.cm, c.in)
		}
	}
}

func TestCutOffAndDents(t *testing.T) {
	l := []level{{0, 0}, {10, 20}, {20, 16}, {30, 20}}
	if got := overDents(l)[2].width; got != 20 {
		t.Errorf("the dent of one round is drawn %v wide, want 20", got)
	}
	if got := widthAt(l, 5); got != 10 {
		t.Errorf("%v wide half way down the crown, want 10", got)
	}
	border := []level{{0, 650}, {10, 630}, {20, 630}}
	if got := straight(border); got[1].width != 650 || got[2].width != 650 {
		t.Errorf("the side of a cloth with a border is %v", got)
	}
	if got := straight([]level{{0, 650}, {10, 600}, {20, 550}}); got[1].width != 600 {
		t.Errorf("the side of a triangle is %v", got)
	}
	wander := []level{{0, 0}, {10, 200}, {20, 197}, {30, 199.5}, {40, 150}}
	if got := plumb(wander); got[2].width != 200 || got[3].width != 200 || got[4].width != 150 {
		t.Errorf("the side of a tube is %v", got)
	}
}

func TestNothingToDraw(t *testing.T) {
	for _, sizes := range [][]Size{nil, {{}}} {
		if _, err := Sheet(sizes, Options{}); err == nil {
			t.Errorf("%v is drawn", sizes)
		}
	}
}

// A half sphere pressed flat is a half disc; a cone keeps its sides, and so does
// a tube.
func TestRoundedCrowns(t *testing.T) {
	flat := []level{{0, 0}, {50, 157}, {100, 157}} // a flat crown, radius 50, and a tube
	got, ok := rounded(flat)
	if w := widthAt(got, 25); !ok || w < 157*0.8 || widest(got) != 157 || got[len(got)-1].depth != 100 {
		t.Errorf("%v: %v wide half way down the crown", got, w)
	}
	half := []level{{0, 0}, {50, 100}, {80, 100}}
	for _, d := range []float64{10, 25, 40} {
		// The half disc of radius 50: 2 √(50² − (50 − d)²).
		got, _ := rounded(half)
		if w, want := widthAt(got, d), 2*math.Sqrt(2500-(50-d)*(50-d)); math.Abs(w-want) > 1 {
			t.Errorf("%v wide at %v, want %v", w, d, want)
		}
	}
	for _, l := range [][]level{{{0, 0}, {100, 100}, {120, 100}}, {{0, 100}, {50, 100}}, {{0, 60}, {10, 100}, {50, 100}}} {
		if got, ok := rounded(l); ok || len(got) != len(l) {
			t.Errorf("%v is rounded", l)
		}
	}
}

// Short rows lie where they were worked and what is shaped at one edge has the other
// straight; rows that do not lie within the widest are drawn about one middle.
func TestRowsAside(t *testing.T) {
	for name, c := range map[string]struct {
		widths, asides, want []float64
	}{
		"short rows":    {[]float64{100, 60, 60, 100}, []float64{7, 27, 27, 7}, []float64{0, 20, 20, 0}},
		"one edge":      {[]float64{100, 80, 61, 40}, []float64{0, -10, -19, -30}, []float64{0, -10, -19.5, -30}},
		"both edges":    {[]float64{100, 80, 60}, []float64{0, 1, -1}, nil},
		"a slanted one": {[]float64{100, 90, 100}, []float64{0, 20, 40}, nil},
	} {
		var l []level
		for i, w := range c.widths {
			l = append(l, level{float64(10 * i), w})
		}
		if got := within(l, c.asides); !slices.Equal(got, c.want) {
			t.Errorf("%s: %v, want %v", name, got, c.want)
		}
	}
}

// The sides of a view are moved with its levels.
func TestMovedLevels(t *testing.T) {
	s := &sheet{sizes: []measured{{}}}
	one := []float64{100}
	v := s.tube("", "", []level{{0, 100}, {10, 60}, {20, 60}}, one, one, one, false)
	v.move([]float64{0, 20, 20})
	want := []point{{X: 100}, {X: 100, Y: 10}, {X: 100, Y: 20}, {X: 40, Y: 20}, {X: 40, Y: 10}, {}}
	if !slices.Equal(v.outline, want) {
		t.Errorf("%v, want %v", v.outline, want)
	}
	if foot := v.edges[2].line; foot[0].X != 40 || foot[1].X != 100 {
		t.Errorf("the foot is %v", foot)
	}
}
