package main

import (
	"encoding/json"
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"

	"github.com/spf13/cobra"

	"whorl/geometry"
	"whorl/patterns/notation"
	"whorl/patterns/stitch"
)

func spaceCommand() *cobra.Command {
	var s spacing
	var asJSON bool
	c := &cobra.Command{
		Use:   "space",
		Short: "Spread increases, decreases or picked-up stitches evenly, in words",
		Long: "Spread the increases or decreases that lead from one stitch count to another evenly\n" +
			"over a round, or stitches to be picked up over row ends, and say it in words.\n" +
			"Counts may be given for several sizes: 60 (72, 78).",
		Example: "  whorl space --from '60 (72, 78)' --to '70 (84, 91)' --stitch hdc\n" +
			"  whorl space --from 48 --to 54 --rounds 4 --staggered\n" +
			"  whorl space --rows '62 (67)' --pick-up '60 (66)'",
		Args: cobra.NoArgs,
		RunE: func(c *cobra.Command, _ []string) error {
			if err := s.work(); err != nil {
				return err
			}
			if asJSON {
				e := json.NewEncoder(c.OutOrStdout())
				e.SetEscapeHTML(false)
				e.SetIndent("", "  ")
				return e.Encode(map[string]any{"rounds": s.lines})
			}
			s.print(c.OutOrStdout())
			return nil
		},
	}
	f := c.Flags()
	f.StringVar(&s.from, "from", "", "stitches of the round below")
	f.StringVar(&s.to, "to", "", "stitches when the round is worked")
	f.IntVar(&s.rounds, "rounds", 1, "so many rounds that gain or lose as many each")
	f.IntVar(&s.number, "number", 1, "number of the first round")
	f.BoolVar(&s.stacked, "stacked", false, "each round's changes over those of the round below (default)")
	f.BoolVar(&s.staggered, "staggered", false, "each round's changes half way between those of the round below")
	f.BoolVar(&s.centred, "centred", false, "alike to both sides of the join: half of a gap at either end")
	f.StringVar(&s.stitch, "stitch", "sc", "the stitch that is worked")
	f.StringVar(&s.terms, "terms", "", "US (default) or UK")
	f.StringVar(&s.rows, "rows", "", "row ends to pick up along")
	f.StringVar(&s.pickUp, "pick-up", "", "stitches to pick up along them")
	f.BoolVar(&asJSON, "json", false, "print the answer as JSON")
	return c
}

// spacing is what is asked for, as it was written, and the answers.
type spacing struct {
	from, to, stitch, terms, rows, pickUp string
	rounds, number                        int
	stacked, staggered, centred           bool

	lines []spaced
}

// spaced is the words of one round in one size, or in all sizes where they can
// be said at once.
type spaced struct {
	Round string `json:"round"`
	// Size counts the sizes as they were given, from 1; 0 stands for all.
	Size  int    `json:"size"`
	Words string `json:"words"`
	// Stitches are the counts when the round is worked.
	Stitches []int `json:"stitches"`
	// Each is how many plain stitches come before each change and behind the
	// last, or how many stitches are picked up in each row end.
	Each []int `json:"each,omitempty"`
}

func (s *spacing) work() error {
	switch {
	case s.rows != "" || s.pickUp != "":
		if s.rows == "" || s.pickUp == "" {
			return fmt.Errorf("to pick up stitches give both --rows and --pick-up")
		}
		if s.from != "" || s.to != "" {
			return fmt.Errorf("--rows with --pick-up, or --from with --to: not both")
		}
		return s.alongRows()
	case s.from == "" || s.to == "":
		return fmt.Errorf("give --from and --to, or --rows and --pick-up: see whorl space --help")
	case s.stacked && s.staggered:
		return fmt.Errorf("the changes are --stacked or --staggered, not both")
	case s.rounds < 1 || s.rounds > 1000:
		return fmt.Errorf("--rounds %d: give a number from 1 to 1000", s.rounds)
	}
	return s.changes()
}

// counts reads "60 (72, 78)".
func counts(flag, written string) ([]int, error) {
	fields := strings.FieldsFunc(written, func(r rune) bool { return strings.ContainsRune(" ,()/", r) })
	l := make([]int, len(fields))
	for i, f := range fields {
		n, err := strconv.Atoi(f)
		if err != nil || n < 1 || n > 100_000 {
			return nil, fmt.Errorf("--%s: %q is no number of stitches from 1 to 100000", flag, f)
		}
		l[i] = n
	}
	if len(l) == 0 {
		return nil, fmt.Errorf("--%s: there is no number in %q", flag, written)
	}
	return l, nil
}

// pairs reads two lists of counts; a single one goes with each of the other.
func pairs(flagA, a, flagB, b string) (x, y []int, err error) {
	if x, err = counts(flagA, a); err != nil {
		return nil, nil, err
	}
	if y, err = counts(flagB, b); err != nil {
		return nil, nil, err
	}
	switch {
	case len(x) == 1 && len(y) > 1:
		x = slices.Repeat(x, len(y))
	case len(y) == 1 && len(x) > 1:
		y = slices.Repeat(y, len(x))
	case len(x) != len(y):
		return nil, nil, fmt.Errorf("--%s has %d counts and --%s has %d: give one for each size", flagA, len(x), flagB, len(y))
	}
	return x, y, nil
}

// changes spreads the changes of all rounds and sizes.
func (s *spacing) changes() error {
	froms, tos, err := pairs("from", s.from, "to", s.to)
	if err != nil {
		return err
	}
	terms, err := termsNamed(s.terms, stitch.US)
	if err != nil {
		return err
	}
	kind, _, ok := notation.NewVocabulary(terms, nil).Stitch(s.stitch)
	if !ok || kind.Shape != stitch.Plain || kind.Base <= stitch.Slip {
		return fmt.Errorf("--stitch %q is no stitch that can be increased: write sc, hdc, dc or tr, in %s terms", s.stitch, terms)
	}
	words := wording{kind.Name(terms), stitch.Tog(kind.Base, 2).Name(terms)}
	rounds := make([][]geometry.Spacing, s.rounds)
	for i := range froms {
		var below geometry.Spacing
		count := froms[i]
		for r := range rounds {
			sp, err := even(count, count+tos[i]-froms[i])
			if err != nil {
				return fmt.Errorf("from %d to %d stitches: %w", count, count+tos[i]-froms[i], err)
			}
			switch {
			case r == 0 && s.centred:
				sp = sp.Centred()
			case r > 0 && s.staggered:
				sp = sp.Staggered(below)
			case r > 0:
				sp = sp.Stacked(below)
			}
			rounds[r] = append(rounds[r], sp)
			below, count = sp, sp.Leaves()
		}
	}
	for r, sizes := range rounds {
		s.lines = append(s.lines, words.round(fmt.Sprint("Rnd ", s.number+r), sizes)...)
	}
	return nil
}

// even spreads the changes that lead from one count to another.
func even(from, to int) (geometry.Spacing, error) {
	switch {
	case to < 1:
		return geometry.Spacing{}, fmt.Errorf("no stitches are left")
	case to < from:
		return geometry.Even(from-to, from, geometry.Decrease)
	}
	return geometry.Even(to-from, from, geometry.Increase)
}

// alongRows spreads picked-up stitches along row ends.
func (s *spacing) alongRows() error {
	rows, stitches, err := pairs("rows", s.rows, "pick-up", s.pickUp)
	if err != nil {
		return err
	}
	for i := range rows {
		p, err := geometry.AlongRows(stitches[i], rows[i])
		if err != nil {
			return err
		}
		l := spaced{Round: "Pick-up", Words: pickUpWords(p, rows[i], stitches[i]), Stitches: stitches[i : i+1], Each: p.Each}
		if len(rows) > 1 {
			l.Size = i + 1
		}
		s.lines = append(s.lines, l)
	}
	return nil
}

func (s *spacing) print(out io.Writer) {
	for _, l := range s.lines {
		head := l.Round
		if l.Size > 0 {
			head += fmt.Sprintf(", size %d", l.Size)
		}
		fmt.Fprintf(out, "%s: %s\n", head, l.Words)
	}
}
