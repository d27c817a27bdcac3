package patterns

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// What is said of seams in many ways, and what is none.
func TestSeams(t *testing.T) {
	read := func(words string) *Pattern {
		text := "notes: Enjoy.\nparts:\n" +
			"  - {name: Brim, worked: rows, text: 'Row 1: 6 fsc.'}\n  - {name: Hat, worked: rounds, text: 'Rnd 1: 6 sc in ring.'}\n" +
			"  - {name: Square, worked: rounds, text: 'Rnd 1: 6 sc in ring.'}\n  - {name: Straps (make 2), worked: rows, text: 'Row 1: 6 fsc.'}\n"
		part := func(name, way string) string {
			return "  - name: " + name + "\n    worked: " + way + "\n    text: |\n      Rnd 1: 6 sc in ring.\n      " + words + "\n"
		}
		way, name := "rounds", "Ear (make 2)"
		if strings.HasPrefix(words, "ROWS ") {
			way, words = "rows", strings.TrimPrefix(words, "ROWS ")
		}
		p, err := Read("x.yaml", []byte(text+part(name, way)))
		if err != nil {
			t.Fatal(words, err)
		}
		return p
	}
	const brim, hat, square, straps, own = 0, 1, 2, 3, 4
	_, _ = brim, square
	ends := []Seam{{own, own, EdgeEnds, EdgeEnds, 0, 0}}
	for words, want := range map[string][]Seam{
		"ROWS Hold the short ends together and sl st through both to make a band.": ends,
		"ROWS Join the short ends with a row of ss to form a ring.":                ends,
		"ROWS Whipstitch the last row to the foundation chain.":                    ends,
		"ROWS Slip stitch the first and last rows together to form a tube.":        ends,
		"ROWS Seam short edges.":                                             ends,
		"ROWS Rep Row 2 until the last row is reached.":                      nil,
		"FO, leave tail. Sew to hat over R4-R7.":                             {{own, hat, EdgeUnsaid, EdgeUnsaid, 4, 7}},
		"Sew them to the hat between rounds 4 and 5.":                        {{own, hat, EdgeUnsaid, EdgeUnsaid, 4, 5}},
		"Flatten it, and sew it over the 6th–11th rounds of the hat, twice.": {{own, hat, EdgeUnsaid, EdgeUnsaid, 6, 11}},
		"Sew to back of hat at R4.":                                          {{own, hat, EdgeUnsaid, EdgeUnsaid, 4, 4}},
		"Sew the ends of the straps to the sides of the hat.":                {{straps, hat, EdgeEnds, EdgeSides, 0, 0}},
		"Sew the last round of the ear to the first round of the hat.":       {{own, hat, EdgeLast, EdgeFirst, 0, 0}},
		"Join the squares together with sl st through both loops.":           {{own, own, EdgeEach, EdgeEach, 0, 0}},
		"Make pompom and sew to top.":                                        nil,
		"Fasten off and sew in ends.":                                        nil,
		"Join yarn to the hat with a sl st.":                                 nil,
		"Sew the wide end to the back over R17.":                             nil, // which is no part
	} {
		if diff := cmp.Diff(want, read(words).Seams()); diff != "" {
			t.Errorf("%s: %s", words, diff)
		}
	}
}

// The seams of the patterns as published.
func TestSeamsOfTheCorpus(t *testing.T) {
	for file, want := range map[string]string{
		"toy-vole":           "Body–Head, Ear–Head 4-7, Arm–Body 13, Tail–Body 4, Muzzle–Head 9-13",
		"pip-the-mouse":      "", // whose head is no part of its own
		"larkspur-hexagon":   "Hexagon–Hexagon",
		"crosswind-headband": "Headband–Headband",
		"ripple-blanket":     "",
	} {
		name := filepath.Join("..", "testdata", "patterns", "published", file+".yaml")
		data, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		p, err := Read(name, data)
		if err != nil {
			t.Fatal(err)
		}
		var l []string
		for _, s := range p.Seams() {
			text := p.Parts[s.Part].Called() + "–" + p.Parts[s.To].Called()
			if s.From > 0 {
				if text += fmt.Sprint(" ", s.From); s.Last > s.From {
					text += fmt.Sprint("-", s.Last)
				}
			}
			l = append(l, text)
		}
		if got := strings.Join(l, ", "); got != want {
			t.Errorf("%s: %s, want %s", file, got, want)
		}
	}
}
