package main

import (
	"encoding/json"
	"io"
	"math"
	"slices"

	"whorl/chart/shaping"
	"whorl/geometry"
	"whorl/patterns"
	"whorl/patterns/fabric"
	"whorl/patterns/working"
)

// report is the JSON of "check --json". Its fields are kept from version to
// version; new ones may be added. Lengths are in millimetres.
type report struct {
	Title string       `json:"title"`
	Terms string       `json:"terms"` // "US" or "UK": the terms of the kinds
	Sizes []sizeReport `json:"sizes"`
	// Yarn is how much the sizes take, where a swatch or a sample was weighed.
	Yarn []yarnReport `json:"yarn"`
	// Cautions are what can hurt whoever wears the piece.
	Cautions []cautionReport `json:"cautions"`
	// Faults are in the order of their places in the file.
	Faults []faultReport `json:"faults"`
}

type sizeReport struct {
	Name     string             `json:"name"`
	Parts    []partReport       `json:"parts"`
	Finished map[string]float64 `json:"finished"`
	Fit      *fitReport         `json:"fit"` // null without a head or a part worked in the round
	Findings []findingReport    `json:"findings"`
}

// fitReport is the size held against its head.
type fitReport struct {
	Head      float64 `json:"head_mm"`
	Asked     float64 `json:"ease_asked_mm"`
	Ease      float64 `json:"ease_mm"`
	BrimEase  float64 `json:"brim_ease_mm"` // of the brim, unstretched
	DepthRule float64 `json:"depth_rule_mm"`
	Off       float64 `json:"off_mm"` // what was asked lies so far outside brim and widest round
	Strays    bool    `json:"strays"`
}

// findingReport is one thing to know of a run of rounds.
type findingReport struct {
	Part    string  `json:"part"`
	Code    string  `json:"code"` // "ruffle", "gather", "stretch", "dome" or "closing-dome"
	From    string  `json:"from"` // labels of the first and the last round
	To      string  `json:"to"`
	Strain  float64 `json:"strain"` // share by which the edge is slack, or stretched
	Least   int     `json:"least"`  // increases or decreases in a round
	Most    int     `json:"most"`
	Even    int     `json:"even"` // as many would lie flat
	Message string  `json:"message"`
}

type partReport struct {
	Name   string        `json:"name"`
	Worked string        `json:"worked"` // "rounds" or "rows"
	Shape  string        `json:"shape"`  // in words, "" for rows
	Rounds []roundReport `json:"rounds"`
}

// roundReport is one round. A starting chain or ring has number 0.
type roundReport struct {
	Label         string         `json:"label"`
	Number        int            `json:"number"`
	Line          int            `json:"line"`
	Stitches      int            `json:"stitches"` // that count
	Chains        int            `json:"chains"`   // those that begin the round left out
	Kinds         map[string]int `json:"kinds"`    // of the stitches that count
	Groups        map[string]int `json:"groups"`   // shells and the like, by the file's names for them
	Spaces        map[string]int `json:"spaces"`   // chain spaces, by their chains: "ch-2"
	Increases     int            `json:"increases"`
	Decreases     int            `json:"decreases"`
	Circumference float64        `json:"circumference_mm"` // of a row, its length
	Radius        float64        `json:"radius_mm"`
	Height        float64        `json:"height_mm"`
	Flatness      float64        `json:"flatness"`
	Strain        float64        `json:"strain"`
	SettledRadius float64        `json:"settled_radius_mm"`
	SettledHeight float64        `json:"settled_height_mm"` // along the axis from where the part begins
	Lean          float64        `json:"lean_rad"`          // away from the axis
}

// yarnReport is one yarn: what its figures go by, and what every size takes;
// what is not known is 0.
type yarnReport struct {
	Name  string             `json:"name"`
	Basis string             `json:"basis"`
	Sizes []yarnOfSizeReport `json:"sizes"`
}

type yarnOfSizeReport struct {
	Size   string  `json:"size"`
	Grams  float64 `json:"grams"`
	Metres float64 `json:"metres"`
	Balls  int     `json:"balls"` // whole ones
}

type cautionReport struct {
	Code    string `json:"code"` // "sleep", "cords" or "small-parts"
	Message string `json:"message"`
	Source  string `json:"source"`
}

type faultReport struct {
	Code     string `json:"code"`
	Severity string `json:"severity"` // "error" or "warning"
	File     string `json:"file"`
	Line     int    `json:"line"`
	Column   int    `json:"column"`
	Size     string `json:"size"`
	Round    string `json:"round"`
	Message  string `json:"message"`
	Help     string `json:"help"`
}

// writeReport writes the report of a job.
func writeReport(out io.Writer, j *job) error {
	r := report{Title: j.pattern.Title, Terms: j.pattern.Terms.String(), Sizes: []sizeReport{}, Yarn: []yarnReport{}, Cautions: []cautionReport{}, Faults: []faultReport{}}
	for i, f := range j.fabrics {
		s := sizeReport{Name: f.Size, Parts: []partReport{}, Finished: map[string]float64{}, Findings: []findingReport{}}
		if fit, ok := j.fitting(i); ok {
			s.Fit = &fitReport{cut(fit.Head), cut(fit.Asked), cut(fit.Ease), cut(fit.Brim - fit.Head), cut(fit.Rule), cut(fit.Off), fit.Strays()}
		}
		form := j.forms[i]
		for k, part := range f.Parts {
			p := partReport{Name: part.Name, Worked: "rounds", Rounds: []roundReport{}}
			if part.Worked == fabric.InRows {
				p.Worked = "rows"
			}
			for n, round := range part.Rounds {
				p.Worked = map[bool]string{true: "rows", false: "rounds"}[round.Row]
				if round.Carried {
					continue
				}
				rr := countsOf(round, j.pattern)
				rr.Increases, rr.Decreases = round.Increases(), round.Decreases()
				if form != nil {
					m := &form.Parts[k].Rounds[n]
					rr.Circumference, rr.Radius, rr.Height = cut(m.Circumference), cut(m.Radius), cut(m.Height)
					rr.Flatness, rr.Strain = cut(m.Flatness), cut(m.Strain)
					rr.SettledRadius, rr.SettledHeight, rr.Lean = cut(m.R), cut(m.Z), cut(m.Angle)
				}
				p.Rounds = append(p.Rounds, rr)
			}
			if part.Seam != nil {
				p.Rounds = append(p.Rounds, countsOf(part.Seam, j.pattern))
			}
			if form != nil {
				p.Shape = shaping.Shape(part, form.Parts[k])
				s.Findings = append(s.Findings, findings(part, form.Parts[k])...)
			}
			s.Parts = append(s.Parts, p)
		}
		if form != nil {
			if done, err := geometry.Finish(f, form); err == nil {
				s.Finished = finishedReport(f, done)
			}
		}
		r.Sizes = append(r.Sizes, s)
	}
	for _, n := range j.yarnNeeds() {
		y := yarnReport{Name: n.name, Basis: n.basis}
		for _, s := range n.sizes {
			y.Sizes = append(y.Sizes, yarnOfSizeReport{s.size, cut(s.grams), cut(s.metres), s.balls})
		}
		r.Yarn = append(r.Yarn, y)
	}
	for _, c := range patterns.Cautions(j.pattern) {
		r.Cautions = append(r.Cautions, cautionReport(c))
	}
	for _, f := range j.faults {
		r.Faults = append(r.Faults, faultReport{Code: f.Code, Severity: string(f.Severity), File: f.File,
			Line: f.Line, Column: f.Column, Size: f.Size, Round: f.Round, Message: f.Message, Help: f.Help})
	}
	e := json.NewEncoder(out)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	return e.Encode(r)
}

// countsOf are the counts of a round; for a seam through both layers, which has no size of
// its own, they are all there is.
func countsOf(r *fabric.Round, p *patterns.Pattern) roundReport {
	return roundReport{Label: r.Label, Number: r.Number, Line: r.Line, Stitches: r.Count(), Chains: r.Chains(),
		Kinds: working.Kinds(r, p.Terms), Groups: working.Groups(r, p), Spaces: working.Spaces(r)}
}

// findings are the findings of a part.
func findings(part *fabric.Part, form *geometry.PartForm) []findingReport {
	var l []findingReport
	for _, f := range geometry.Findings(part, form.Rounds) {
		l = append(l, findingReport{part.Name, shaping.Codes[f.Trait], part.Rounds[f.From].Label, part.Rounds[f.To].Label,
			cut(f.Strain), f.Least, f.Most, f.Even, shaping.Sentence(part, f)})
	}
	return l
}

// finishedReport are the finished measurements of a piece as a whole: across_mm is the
// diameter of one that lies flat or cups, side_mm the side of one with corners.
func finishedReport(of *fabric.Fabric, f *geometry.Finished) map[string]float64 {
	m := map[string]float64{}
	for name, v := range map[string]float64{
		"circumference_mm": f.Widest, "brim_mm": f.Brim, "depth_mm": f.Depth, "flat_width_mm": f.FlatWidth, "hole_mm": f.Hole,
	} {
		if v > 0 {
			m[name] = cut(v)
		}
	}
	if k := slices.IndexFunc(f.Pieces, func(p geometry.Piece) bool { return !p.Rows && p.Widest > 0 }); k >= 0 {
		if p, corners := f.Pieces[k], geometry.Corners(of.Parts[k]); corners > 0 {
			m["side_mm"] = cut(geometry.PolygonSide(p.Depth, corners))
		} else if p.Flat || p.Cups {
			m["across_mm"] = cut(p.Across)
		}
	}
	if f.Widest == 0 && len(f.Pieces) > 0 && f.Pieces[0].Rows {
		m["length_mm"], m["width_mm"] = cut(f.Pieces[0].Length), cut(f.Pieces[0].Width)
	}
	return m
}

// cut rounds to four decimals, which is finer than any stitch.
func cut(v float64) float64 {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return 0
	}
	return math.Round(v*1e4) / 1e4
}
