package main

import (
	"fmt"
	"io"
	"math"
	"sort"
	"strings"
	"text/tabwriter"

	"github.com/spf13/cobra"

	"whorl/chart/shaping"
	"whorl/geometry"
	"whorl/patterns"
	"whorl/patterns/fabric"
	"whorl/patterns/stitch"
	"whorl/patterns/working"
)

func checkCommand() *cobra.Command {
	var asJSON, defaults bool
	c := &cobra.Command{
		Use:   "check FILE",
		Short: "Work every size and report every round and every fault",
		Long: "Work every size of a pattern stitch by stitch, and print a table of its rounds, what\n" +
			"shape they make, the finished measurements and every fault that was found.\n" +
			"FILE may be - for standard input.\n\n" +
			"The columns: round, the length of the round's edge; radius, that of the flat circle as\n" +
			"long; height, of its stitches; flatness, the growth of the radius over the height (1 lies\n" +
			"flat, 0 is a tube, above 1 it ruffles, below -1 it gathers); lean, how far the settled\n" +
			"fabric leans from the axis (90° lies flat, 0° is a tube, below that it closes in); strain,\n" +
			"how far its edge is stretched (+) or slack (-) where it comes to rest.",
		Args: func(c *cobra.Command, args []string) error {
			if defaults && len(args) == 0 {
				return nil
			}
			return cobra.ExactArgs(1)(c, args)
		},
		RunE: func(c *cobra.Command, args []string) error {
			if len(args) == 0 {
				return listDefaults(c.OutOrStdout(), nil)
			}
			j, err := load(args[0], c.InOrStdin())
			if err != nil {
				return err
			}
			if defaults && !j.unworkable() {
				return listDefaults(c.OutOrStdout(), j.pattern.Measures)
			}
			if asJSON {
				if err := writeReport(c.OutOrStdout(), j); err != nil {
					return err
				}
			} else {
				j.table(c.OutOrStdout())
				for _, text := range j.faults.Texts() {
					fmt.Fprintln(c.ErrOrStderr(), text)
				}
				j.yarn(c.OutOrStdout())
				j.cautions(c.OutOrStdout())
				j.verdict(c.OutOrStdout())
			}
			if j.wrong() {
				return errFaults
			}
			return nil
		},
	}
	c.Flags().BoolVar(&asJSON, "json", false, "print the report as JSON")
	c.Flags().BoolVar(&defaults, "defaults", false, "list the figures used where the gauge says nothing, with their sources;\nwith FILE, as the file's measures change them")
	return c
}

// table prints the rounds of every size. Rounds that are alike in everything
// but their number share a line.
func (j *job) table(out io.Writer) {
	for i, f := range j.fabrics {
		if f.Size != "" {
			fmt.Fprintf(out, "Size %s\n", f.Size)
		}
		for k, part := range f.Parts {
			if part.Name != "" {
				fmt.Fprintf(out, "  %s\n", part.Name)
			}
			t := tabwriter.NewWriter(out, 0, 0, 2, ' ', tabwriter.AlignRight)
			fmt.Fprintln(t, "    round\tstitches\tchains\tround, cm\tradius, cm\theight, cm\tflatness\tlean\tstrain\t  kinds")
			var form *geometry.PartForm
			if j.forms[i] != nil {
				form = j.forms[i].Parts[k]
			}
			writeRounds(t, part, form, j.pattern.Terms)
			t.Flush()
			if form != nil {
				j.writeShape(out, i, k)
			}
		}
		if fit := j.fitLine(i); fit != "" {
			fmt.Fprintf(out, "  %s\n", fit)
		}
		fmt.Fprintln(out)
	}
}

// writeShape prints what shape a part makes, and its measurements.
func (j *job) writeShape(out io.Writer, size, part int) {
	worked, form := j.fabrics[size].Parts[part], j.forms[size].Parts[part]
	if shape := shaping.Shape(worked, form); shape != "" {
		fmt.Fprintf(out, "    Shape: %s\n", shape)
	}
	for _, s := range shaping.Findings(worked, form) {
		fmt.Fprintf(out, "    %s\n", s)
	}
	if s := j.pieceLine(size, part); s != "" {
		fmt.Fprintf(out, "    %s\n", s)
	}
}

func writeRounds(t io.Writer, part *fabric.Part, form *geometry.PartForm, terms stitch.Terms) {
	first, last, was := "", "", ""
	count := 0
	flush := func() {
		switch {
		case count == 0:
		case count == 1:
			fmt.Fprintf(t, "    %s\t%s\n", first, was)
		default:
			fmt.Fprintf(t, "    %s-%s\t%s\n", first, strings.TrimLeft(last, "RndRow "), was)
		}
	}
	for n, r := range part.Rounds {
		if r.Number == 0 || r.Carried {
			continue
		}
		figures := "-\t-\t-\t-\t-\t-"
		if form != nil {
			m := &form.Rounds[n]
			radius, flatness, lean, strain := "-", "-", "-", "-"
			if !r.Row {
				radius, flatness = fmt.Sprintf("%.1f", m.Radius/10), fmt.Sprintf("%.2f", m.Flatness)
				lean, strain = degrees(m.Angle), percent(m.Strain)
			}
			figures = fmt.Sprintf("%.1f\t%s\t%.2f\t%s\t%s\t%s", m.Circumference/10, radius, m.Height/10+1e-9, flatness, lean, strain)
		}
		row := fmt.Sprintf("%d\t%d\t%s\t  %s", r.Count(), r.Chains(), figures, kindsLine(r, terms))
		if row == was {
			last, count = r.Label, count+1
			continue
		}
		flush()
		first, was, count = r.Label, row, 1
	}
	flush()
	if r := part.Seam; r != nil {
		fmt.Fprintf(t, "    %s\t%d\t%d\t-\t-\t-\t-\t-\t-\t  %s\n", r.Label, r.Count(), r.Chains(), kindsLine(r, terms))
	}
}

// degrees is an angle: "90°", "−12°".
func degrees(radians float64) string { return decimal(radians*180/math.Pi, 0) + "°" }

// percent is a share with its sign: "+5 %", "0 %".
func percent(share float64) string {
	t := decimal(100*share, 0) + " %"
	if share > 0 && t != "0 %" {
		t = "+" + t
	}
	return t
}

// kindsLine is "40 hdc, 5 hdc2tog": most first.
func kindsLine(r *fabric.Round, terms stitch.Terms) string {
	kinds := working.Kinds(r, terms)
	names := make([]string, 0, len(kinds))
	for k := range kinds {
		names = append(names, k)
	}
	sort.Slice(names, func(i, j int) bool {
		a, b := names[i], names[j]
		if kinds[a] != kinds[b] {
			return kinds[a] > kinds[b]
		}
		return a < b
	})
	for i, k := range names {
		names[i] = fmt.Sprintf("%d %s", kinds[k], k)
	}
	return strings.Join(names, ", ")
}

// cautions prints what can hurt whoever wears the piece.
func (j *job) cautions(out io.Writer) {
	l := patterns.Cautions(j.pattern)
	if len(l) == 0 || len(j.fabrics) == 0 {
		return
	}
	fmt.Fprintln(out, "Cautions")
	for _, c := range l {
		fmt.Fprintf(out, "  %s\n", c.Message)
	}
	fmt.Fprintln(out)
}

// verdict is the last line of the report.
func (j *job) verdict(out io.Writer) {
	errs := 0
	for _, f := range j.faults {
		if f.Severity == "error" {
			errs++
		}
	}
	title := j.pattern.Title
	if title == "" {
		title = j.pattern.File
	}
	switch n := len(j.faults); {
	case n == 0:
		sizes := ""
		if len(j.fabrics) > 1 {
			sizes = fmt.Sprintf(" in all %d sizes", len(j.fabrics))
		}
		fmt.Fprintf(out, "%s: every round works out%s.\n", title, sizes)
	case errs == 0:
		fmt.Fprintf(out, "%s: no faults, %s.\n", title, many(n, "warning"))
	case errs < n:
		fmt.Fprintf(out, "%s: %s, %s.\n", title, many(errs, "fault"), many(n-errs, "warning"))
	default:
		fmt.Fprintf(out, "%s: %s.\n", title, many(errs, "fault"))
	}
}

func many(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return fmt.Sprintf("%d %ss", n, what)
}
