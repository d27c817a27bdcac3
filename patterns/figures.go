package patterns

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"gopkg.in/yaml.v3"

	"whorl/patterns/fault"
)

// Figure is a figure of the designer's own for something that no line of gauge
// says, such as how wide a chain is: see geometry.Defaults for the names.
type Figure struct {
	fault.Pos
	Name  string
	Value float64
}

const figuresHelp = "Write each on a line of its own, as: chain width: 0.8"

// figures reads the map of figures. Whether there is such a figure, and whether
// it can be that large, is not known here.
func (r *reader) figures(e entry) []Figure {
	if !r.given(e, yaml.MappingNode, "a set of names with their figures", figuresHelp) {
		return nil
	}
	var list []Figure
	for _, f := range r.entries(e.value, strings.ToLower) {
		if r.beyond(f.key, len(list), maxStitches, "figures") {
			break
		}
		s := r.str(f)
		if s == "" {
			if !f.given() {
				r.at(f.key, codeEmpty, fmt.Sprintf("%s has no figure", quote(f.name())), figuresHelp)
			}
			continue
		}
		v, err := strconv.ParseFloat(s, 64)
		if err != nil || math.IsNaN(v) || math.IsInf(v, 0) {
			r.at(f.value, codeValue, fmt.Sprintf("%s is not a number", quote(s)), figuresHelp)
			continue
		}
		list = append(list, Figure{Pos: pos(f.key), Name: strings.Join(strings.Fields(f.name()), " "), Value: v})
	}
	return list
}
