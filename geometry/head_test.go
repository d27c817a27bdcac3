package geometry

import "testing"

// The heads that have a name, against the tables: WHO Child Growth Standards,
// head circumference-for-age (2007; medians of boys and girls in cm, values from
// memory); Craft Yarn Council (in, values from memory); published hat guides.
func TestHeads(t *testing.T) {
	for name, cm := range map[string][2]float64{"Newborn": {34.5, 33.9}, "3 months": {40.5, 39.5}, "6 Months": {43.3, 42.2},
		"12 MONTHS": {46.1, 44.9}, "2 years": {48.3, 47.2}, "5 Years": {50.7, 49.9}} {
		h, ok := HeadNamed(name)
		if !ok {
			t.Errorf("no %s", name)
		}
		near(t, name, h.Circumference, 5*(cm[0]+cm[1]), 1e-9)
	}
	for name, in := range map[string]float64{"Preemie": 12, "Baby": 14, "Toddler": 16, "Child": 18, "Woman": 20, "Man": 22,
		"Adult Small": 21, "adult  medium": 22, " Adult Large ": 23} {
		h, ok := HeadNamed(name)
		if !ok {
			t.Errorf("no %s", name)
		}
		near(t, name, h.Circumference/inch, in, 1e-9)
	}
	for _, name := range []string{"", "Giant", "Wo man"} {
		if h, ok := HeadNamed(name); ok {
			t.Errorf("%q is %v", name, h)
		}
	}
	for _, h := range Heads() {
		if h.Source == "" {
			t.Errorf("%s has no source", h.Name)
		}
	}
}
