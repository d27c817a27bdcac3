package main

import (
	"encoding/json"
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"
	"text/tabwriter"

	"github.com/spf13/cobra"

	"whorl/geometry"
)

func sizeCommand() *cobra.Command {
	var s sizing
	var crownDown, asJSON bool
	c := &cobra.Command{
		Use:   "size",
		Short: "Work out stitch counts for head sizes from gauge, ease and multiple",
		Long: "Work out the stitch counts that come nearest to each head size, above and below, with\n" +
			"the finished circumference, the ease that it gives, the flat crown and the depth.\n\n" +
			"Heads are lengths, smallest first, or these names:\n" + headNames(),
		Example: "  whorl size --head '41 (50, 56, 60) cm' --ease '-2.5 cm' --gauge '16 hdc and 11 rounds = 10 cm' --multiple 6\n" +
			"  whorl size --head 'Baby, Child, Woman' --ease '-1 in' --gauge '14 dc and 8 rounds = 4 in' --multiple 6+1 --brim-up",
		Args: cobra.NoArgs,
		RunE: func(c *cobra.Command, _ []string) error {
			if crownDown && s.brimUp {
				return fmt.Errorf("a hat is worked --brim-up or --crown-down, not both")
			}
			if err := s.work(); err != nil {
				return err
			}
			if asJSON {
				return s.writeJSON(c.OutOrStdout())
			}
			s.table(c.OutOrStdout())
			return nil
		},
	}
	f := c.Flags()
	f.StringVar(&s.head, "head", "", "head circumferences, or names of sizes")
	f.StringVar(&s.ease, "ease", "0 cm", "added to the head, below 0 for a close fit; one, or one for each head")
	f.StringVar(&s.gauge, "gauge", "", "as in a pattern file: '16 hdc and 11 rounds = 10 cm'")
	f.StringVar(&s.multiple, "multiple", "1", "what the count must be a multiple of: '6' or '6+1'")
	f.StringVar(&s.depth, "depth", "", "depth from crown to edge; 0.4 of the head when left out")
	f.StringVar(&s.terms, "terms", "", "US (default) or UK: the terms of the gauge")
	f.BoolVar(&s.brimUp, "brim-up", false, "worked from the brim up")
	f.BoolVar(&crownDown, "crown-down", false, "worked from the crown down (default)")
	f.BoolVar(&asJSON, "json", false, "print the answer as JSON")
	return c
}

// sizing is what is asked for, as it was written, and the answers.
type sizing struct {
	head, ease, gauge, multiple, depth, terms string
	brimUp                                    bool

	unit          string // "cm" or "in", that of the answers
	counted       string // what the gauge counts: "hdc", "shell repeats"
	width, height float64
	times, plus   int
	asked         []ask
}

// ask is one head.
type ask struct {
	name       string // "" when it was given as a length
	head, ease float64
	got        *geometry.Sizing
}

// work works out the answers.
func (s *sizing) work() error {
	if s.head == "" || s.gauge == "" {
		return fmt.Errorf("sizes need a --head and a --gauge: see whorl size --help")
	}
	if err := s.readGauge(); err != nil {
		return err
	}
	if err := s.readMultiple(); err != nil {
		return err
	}
	if err := s.readHeads(); err != nil {
		return err
	}
	eases, err := s.perHead("ease", s.ease)
	if err != nil {
		return err
	}
	depths, err := s.perHead("depth", s.depth)
	if err != nil {
		return err
	}
	for i := range s.asked {
		a := &s.asked[i]
		a.ease = eases[i]
		a.got, err = geometry.Size(geometry.Ask{Head: a.head, Ease: a.ease, Width: s.width, Height: s.height,
			Multiple: s.times, Plus: s.plus, Depth: depths[i]})
		if err != nil {
			return err
		}
	}
	return nil
}

// show is a length in the unit of the answers, without the unit.
func (s *sizing) show(mm float64) string {
	if s.unit == "in" {
		return decimal(mm/25.4, 2)
	}
	return decimal(mm/10, 1)
}

func (s *sizing) table(out io.Writer) {
	what := s.counted
	if s.times > 1 || s.plus != 0 {
		what += ", a multiple of " + strconv.Itoa(s.times)
		if s.plus != 0 {
			what += strings.NewReplacer("+", " + ", "-", " − ").Replace(fmt.Sprintf("%+d", s.plus))
		}
	}
	fmt.Fprintf(out, "Counts in %s; lengths in %s.\n\n", what, s.unit)
	t := tabwriter.NewWriter(out, 0, 0, 2, ' ', tabwriter.AlignRight)
	named := s.asked[0].name != ""
	first := "head"
	if named {
		first = "size\thead"
	}
	fmt.Fprintf(t, "%s\tease asked\tbelow\tround\tease\tabove\tround\tease\tnearest\tcrown diameter\tdepth\tcrown rounds\teven rounds\t\n", first)
	for _, a := range s.asked {
		if named {
			fmt.Fprintf(t, "%s\t", a.name)
		}
		fmt.Fprintf(t, "%s\t%s\t", s.show(a.head), s.show(a.ease))
		for _, f := range []geometry.Fit{a.got.Below, a.got.Above} {
			if f.Count == 0 {
				fmt.Fprint(t, "-\t-\t-\t")
				continue
			}
			fmt.Fprintf(t, "%d\t%s\t%s\t", f.Count, s.show(f.Circumference), s.show(f.Ease))
		}
		fmt.Fprintf(t, "%d\t%s\t%s\t%d\t%d\t\n", a.got.Nearest.Count, s.show(a.got.CrownDiameter), s.show(a.got.Depth),
			a.got.CrownRounds, a.got.EvenRounds)
	}
	t.Flush()
	flat := "\nA flat crown grows by %s %s a round.\n" +
		"Crown down: increase to the crown diameter in the crown rounds, then work the even rounds.\n"
	if s.brimUp {
		flat = "\nA flat crown closes by %s %s a round.\n" +
			"Brim up: work the even rounds, brim and all, then decrease over the crown rounds.\n"
	}
	fmt.Fprintf(out, flat, decimal(2*math.Pi*s.height/s.width, 1), s.counted)
}

// sizingReport is the JSON of "size --json". Its fields are kept from version
// to version; new ones may be added. Lengths are in millimetres.
type sizingReport struct {
	Counted  string       `json:"counted"`
	Width    float64      `json:"stitch_width_mm"`
	Height   float64      `json:"round_height_mm"`
	Multiple int          `json:"multiple"`
	Plus     int          `json:"plus"`
	Way      string       `json:"way"` // "crown-down" or "brim-up"
	Sizes    []headReport `json:"sizes"`
}

type headReport struct {
	Name          string       `json:"name"` // "" when the head was given as a length
	Head          float64      `json:"head_mm"`
	Ease          float64      `json:"ease_mm"`
	Below         *countReport `json:"below"` // null when no count is small enough
	Above         *countReport `json:"above"`
	Nearest       int          `json:"nearest"`
	CrownDiameter float64      `json:"crown_diameter_mm"`
	Depth         float64      `json:"depth_mm"`
	CrownRounds   int          `json:"crown_rounds"`
	EvenRounds    int          `json:"even_rounds"`
}

type countReport struct {
	Count         int     `json:"count"`
	Circumference float64 `json:"circumference_mm"`
	Ease          float64 `json:"ease_mm"`
}

func (s *sizing) writeJSON(out io.Writer) error {
	r := sizingReport{Counted: s.counted, Width: cut(s.width), Height: cut(s.height), Multiple: s.times, Plus: s.plus, Way: "crown-down"}
	if s.brimUp {
		r.Way = "brim-up"
	}
	fit := func(f geometry.Fit) *countReport {
		if f.Count == 0 {
			return nil
		}
		return &countReport{f.Count, cut(f.Circumference), cut(f.Ease)}
	}
	for _, a := range s.asked {
		r.Sizes = append(r.Sizes, headReport{a.name, cut(a.head), cut(a.ease), fit(a.got.Below), fit(a.got.Above), a.got.Nearest.Count,
			cut(a.got.CrownDiameter), cut(a.got.Depth), a.got.CrownRounds, a.got.EvenRounds})
	}
	e := json.NewEncoder(out)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	return e.Encode(r)
}
