package main

import (
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"whorl/chart"
	"whorl/patterns/fabric"
)

// aids are the options of each reading aid, alone and together.
var aids = map[string]chart.Options{
	"changes": {Changes: true},
	"counts":  {Counts: true},
	"fives":   {Fives: true},
	"all":     {Changes: true, Counts: true, Fives: true, Tint: true, Black: true, Clear: true, LeftHanded: true},
	"large":   {Large: true, Changes: true, Counts: true, Fives: true},
}

// Reading aids find their places where they touch nothing, in every layout; what has
// no room is left out.
func TestAidsTouchNothing(t *testing.T) {
	for _, file := range hung(t) {
		t.Run(filepath.Base(file), func(t *testing.T) {
			t.Parallel()
			j, err := load(file, nil)
			if err != nil {
				t.Fatal(err)
			}
			i := slices.Index(j.pattern.Sizes, middleSize(j.pattern.Sizes))
			for k, part := range j.fabrics[i].Parts {
				layouts := []string{"rows"}
				if part.Worked == fabric.InRounds {
					layouts = []string{"round", "wedge", "panel"}
				}
				for _, layout := range layouts {
					plain, err := charts[layout](j.fabrics[i], j.forms[i], chart.Options{Part: k})
					if err != nil || plain.Small() || !chart.Audit(plain.Scene).Clean() {
						continue
					}
					for name, o := range aids {
						o.Part = k
						c, err := charts[layout](j.fabrics[i], j.forms[i], o)
						if err != nil {
							t.Fatal(err)
						}
						if r := chart.Audit(c.Scene); !r.Clean() && !c.Small() {
							t.Errorf("%s, %s, %s, aids %s: %s", strings.TrimSuffix(filepath.Base(file), ".yaml"), part.Name, layout, name, faultsOf(r))
						}
					}
				}
			}
		})
	}
}
