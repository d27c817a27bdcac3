package main

import (
	"errors"
	"unicode/utf8"

	"github.com/tdewolff/canvas"

	"whorl/chart"
	"whorl/patterns"
	"whorl/patterns/fault"
	"whorl/patterns/notation"
	"whorl/symbols"
)

// ownSymbols are the symbols that the designer draws her own stitches by, and what is
// wrong with them.
func ownSymbols(p *patterns.Pattern) (own map[string]chart.OwnSymbol, faults fault.List) {
	for _, d := range p.Stitches {
		s := d.Symbol
		if s == nil {
			continue
		}
		point := func(xy [2]float64) canvas.Point { return canvas.Point{X: xy[0], Y: xy[1]} }
		drawn, err := symbols.NewOwn(s.Path, s.Width, s.Height, point(s.Foot), point(s.Top))
		if err != nil {
			at, length := s.PathPos, utf8.RuneCountInString(s.Path)
			if bad := (*symbols.PathError)(nil); errors.As(err, &bad) && bad.InPath {
				at.Column += bad.At
				length = 1
			}
			faults = append(faults, p.Fault(at, length, "symbol", d.Name+": "+err.Error(),
				"A path is lines as SVG has them: M4 20 V3 M1 3 H7 is a leg from 4 20 up to 4 3 and a bar across it."))
			continue
		}
		if own == nil {
			own = map[string]chart.OwnSymbol{}
		}
		own[notation.Plain(d.Name)] = chart.OwnSymbol{Name: d.Name, Own: drawn}
	}
	return own, faults
}
