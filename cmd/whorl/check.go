package main

import (
	"fmt"
	"io"
	"sort"
	"strings"
	"text/tabwriter"

	"github.com/spf13/cobra"

	"whorl/geometry"
	"whorl/patterns/fabric"
	"whorl/patterns/stitch"
	"whorl/patterns/working"
)

func checkCommand() *cobra.Command {
	var asJSON bool
	c := &cobra.Command{
		Use:   "check FILE",
		Short: "Work every size and report every round and every fault",
		Long: "Work every size of a pattern stitch by stitch, and print a table of its rounds and\n" +
			"every fault that was found. FILE may be - for standard input.",
		Args: cobra.ExactArgs(1),
		RunE: func(c *cobra.Command, args []string) error {
			j, err := load(args[0], c.InOrStdin())
			if err != nil {
				return err
			}
			if asJSON {
				if err := writeReport(c.OutOrStdout(), j); err != nil {
					return err
				}
			} else {
				j.table(c.OutOrStdout())
				for _, f := range j.faults {
					fmt.Fprintln(c.ErrOrStderr(), f.Error())
				}
				j.verdict(c.OutOrStdout())
			}
			if j.wrong() {
				return errFaults
			}
			return nil
		},
	}
	c.Flags().BoolVar(&asJSON, "json", false, "print the report as JSON")
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
			fmt.Fprintln(t, "    round\tstitches\tchains\tround, cm\tradius, cm\theight, cm\tflatness\t  kinds")
			var form *geometry.PartForm
			if j.forms[i] != nil {
				form = j.forms[i].Parts[k]
			}
			writeRounds(t, part, form, j.pattern.Terms)
			t.Flush()
		}
		fmt.Fprintln(out)
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
		figures := "-\t-\t-\t-"
		if form != nil {
			m := &form.Rounds[n]
			radius, flatness := "-", "-"
			if !r.Row {
				radius, flatness = fmt.Sprintf("%.1f", m.Radius/10), fmt.Sprintf("%.2f", m.Flatness)
			}
			figures = fmt.Sprintf("%.1f\t%s\t%.2f\t%s", m.Circumference/10, radius, m.Height/10+1e-9, flatness)
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
