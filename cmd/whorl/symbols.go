package main

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"whorl/chart"
	"whorl/patterns/stitch"
)

func symbolsCommand() *cobra.Command {
	var d drawing
	var terms, paper string
	var cross bool
	c := &cobra.Command{
		Use:   "symbols",
		Short: "Draw the sheet of all symbols with their names",
		Long: "Draw a sheet of every symbol that charts are made of, in reading order, with its name\n" +
			"in US and UK terms, and print the name of every file written.",
		Args: cobra.NoArgs,
		RunE: func(c *cobra.Command, _ []string) error {
			if err := d.known(); err != nil {
				return err
			}
			t, p := stitch.US, chart.A4
			switch {
			case strings.EqualFold(terms, "UK"):
				t = stitch.UK
			case !strings.EqualFold(terms, "US"):
				return fmt.Errorf("%q are no terms that are known; there are US and UK", terms)
			}
			switch {
			case strings.EqualFold(paper, "Letter"):
				p = chart.Letter
			case !strings.EqualFold(paper, "A4"):
				return fmt.Errorf("%q is no paper that is known; there are A4 and Letter", paper)
			}
			return d.write([]sheet{{name: "symbols-" + strings.ToLower(t.String()), scene: chart.Sheet(t, p, cross)}}, c.OutOrStdout())
		},
	}
	d.flags(c)
	c.Flags().StringVar(&terms, "terms", "US", "terms of the names: US or UK")
	c.Flags().StringVar(&paper, "paper", "A4", "A4 or Letter")
	c.Flags().BoolVar(&cross, "cross", false, "draw single crochet as × rather than +")
	return c
}
