package main

import (
	"fmt"
	"io"
	"strings"
	"text/tabwriter"

	"whorl/geometry"
	"whorl/patterns"
)

// listDefaults lists the figures that stand in for what no gauge says, each
// with what it means and where it is from; own are those that a file has
// changed.
func listDefaults(out io.Writer, own []patterns.Figure) error {
	fmt.Fprint(out, "Figures used where the gauge says nothing. A file changes them under measures:\n\n")
	t := tabwriter.NewWriter(out, 0, 0, 2, ' ', 0)
	for _, d := range geometry.Defaults() {
		value, source := d.Value, d.Source
		for _, m := range own {
			if strings.EqualFold(m.Name, d.Name) {
				value, source = m.Value, fmt.Sprintf("measures, line %d (default %v)", m.Line, d.Value)
			}
		}
		fmt.Fprintf(t, "  %s: %v\t%s\t(%s)\n", d.Name, value, d.Meaning, source)
	}
	return t.Flush()
}
