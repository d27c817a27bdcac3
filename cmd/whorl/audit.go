package main

import (
	"errors"
	"fmt"
	"io"
	"strings"

	"github.com/spf13/cobra"

	"whorl/chart"
)

// errUnclean says that a chart has not come out clean, which has been printed.
var errUnclean = errors.New("a chart is not clean")

// withAudit lets a command that reads a pattern file look its charts over as well.
func withAudit(c *cobra.Command) *cobra.Command {
	audit := false
	c.Flags().BoolVar(&audit, "audit", false, "draw every stitch chart as well and look for strokes that touch,\ntext over symbols, legs off their places or leaning, flat ones of decreases, and uneven fans")
	run := c.RunE
	c.RunE = func(c *cobra.Command, args []string) error {
		if !audit {
			return run(c, args)
		}
		if len(args) != 1 || args[0] == "-" {
			return errors.New("--audit needs the name of a pattern file")
		}
		if err := run(c, args); err != nil {
			return err
		}
		j, err := load(args[0], nil)
		if err != nil {
			return err
		}
		return j.audit(c.ErrOrStderr())
	}
	return c
}

// auditShown is how many faults of one sort are named; the rest are counted.
const auditShown = 5

// audit draws every stitch chart of the pattern, looks each over and prints what
// it found: an error when not all are clean.
func (j *job) audit(out io.Writer) error {
	d := drawing{stem: "audit"}
	pictures, err := d.choose(j)
	if err != nil {
		return err
	}
	for _, p := range pictures {
		if charts[p.Draw] == nil {
			continue
		}
		sheets, failed := d.sheets(j, p)
		if failed != nil {
			return fmt.Errorf("picture %s: %w", p.Name, failed)
		}
		for _, s := range sheets {
			r := chart.Audit(s.scene)
			lines := auditLines(r)
			name := strings.TrimPrefix(s.name, d.stem+"-")
			if r.Clean() {
				fmt.Fprintf(out, "picture %s: %d symbols, every leg on its place, nothing touches\n", name, r.Stitches)
			} else {
				err = errUnclean
			}
			for _, l := range append(lines, s.findings...) {
				fmt.Fprintf(out, "picture %s: %s\n", name, l)
			}
		}
	}
	return err
}

// auditLines is what is wrong with a picture, in words, and what is not as it should be
// in one that is clean all the same.
func auditLines(r *chart.Report) (lines []string) {
	add := func(what string, n int, at func(int) string) {
		for i := range min(n, auditShown) {
			lines = append(lines, what+": "+at(i))
		}
		if n > auditShown {
			lines = append(lines, fmt.Sprintf("%s: %d in all", what, n))
		}
	}
	add("strokes touch", len(r.Overlaps), func(i int) string { return r.Overlaps[i].String() })
	add("something runs through a text", len(r.Texts), func(i int) string { return r.Texts[i].String() })
	add("a leg is off its place", len(r.Astray), func(i int) string { return r.Astray[i] })
	add("a leg leans too far", len(r.Leaning), func(i int) string { return r.Leaning[i] })
	add("a leg of a decrease lies flat", len(r.Flat), func(i int) string { return r.Flat[i] })
	add("uneven gaps in a fan", len(r.Fans), func(i int) string { return r.Fans[i] })
	if r.Turn > chart.MostTurn {
		lines = append(lines, fmt.Sprintf("repeats differ by up to %.2f°", r.Turn))
	}
	return lines
}
