package geometry

import (
	"errors"
	"math"

	"whorl/patterns/fabric"
	"whorl/patterns/stitch"
)

// Piece is the finished measurements of one part, in millimetres.
type Piece struct {
	// Rows is set for a piece worked to and fro, which has only a Length, in
	// the direction of work, and a Width, that of its widest row.
	Rows          bool
	Length, Width float64

	// Brim is the circumference along the edge of the wide end, unstretched,
	// and Widest the largest circumference where the piece has settled.
	Brim, Widest float64
	// Waist is the least circumference in the third of the depth nearest to the
	// brim, which a brim that flares does not change.
	Waist float64
	// FlatWidth is how wide it is laid flat: half of Widest.
	FlatWidth float64
	// Depth is from the crown (or the smaller edge) to the brim along the
	// fabric, as it is measured laid flat; Standing is its height on its own.
	Depth, Standing float64
	// Hole is the circumference of the opening left at the crown, to be drawn
	// closed: 0 when it was begun in a closed ring.
	Hole float64
	// CrownFirst is set when it was worked from the crown to the brim.
	CrownFirst bool
	// Flat is set for a piece worked from its centre, and no oval, that lies flat, and Cups for
	// one that is meant to but does not, as a mandala with too few increases.
	// Across is the diameter of a piece worked from its centre, that of its settled
	// edge where it is widest.
	Flat, Cups bool
	Across     float64
}

// Finished is the finished measurements of a fabric.
type Finished struct {
	Pieces []Piece // in the order of the parts
	// The whole, when a piece is worked in rounds: the first such piece, with
	// the strip that it is picked up along and what is worked on in rounds from
	// it. Brim is the length of the strip if there is one. All are 0 when there
	// is no piece in rounds.
	Brim, Widest, FlatWidth, Depth, Hole float64
	Waist                                float64
}

// TurnedUp is the depth when so many millimetres of the brim are turned up.
func (f *Finished) TurnedUp(by float64) float64 {
	if !(by > 0) {
		return f.Depth
	}
	return math.Max(0, f.Depth-by)
}

// Strip is the width of the brim worked in rows that the piece is picked up
// along, 0 for none.
func (f *Finished) Strip(of *fabric.Fabric) float64 {
	for i, p := range of.Parts {
		if from := p.From; p.Worked == fabric.InRounds && from >= 0 && from < len(f.Pieces) && i < len(f.Pieces) && f.Pieces[from].Rows {
			return f.Pieces[from].Width
		}
	}
	return 0
}

// Finish is the finished measurements of a fabric of that form.
func Finish(f *fabric.Fabric, form *Form) (*Finished, error) {
	if f == nil || form == nil || len(f.Parts) != len(form.Parts) {
		return nil, errors.New("the form is not that of the fabric")
	}
	out := &Finished{Pieces: make([]Piece, len(f.Parts))}
	body := -1
	for i, p := range f.Parts {
		if p == nil || form.Parts[i] == nil || len(p.Rounds) != len(form.Parts[i].Rounds) {
			return nil, errors.New("the form is not that of the fabric")
		}
		out.Pieces[i] = piece(p, form.Parts[i].Rounds)
		if body < 0 && !out.Pieces[i].Rows && out.Pieces[i].Widest > 0 {
			body = i
		}
	}
	if body < 0 {
		return out, nil
	}
	b := out.Pieces[body]
	out.Brim, out.Widest, out.FlatWidth, out.Depth, out.Hole = b.Brim, b.Widest, b.FlatWidth, b.Depth, b.Hole
	out.Waist = b.Waist
	for i, p := range f.Parts {
		q := out.Pieces[i]
		switch {
		case i == body:
		case f.Parts[body].From == i && q.Rows:
			// The strip runs along the edge: its rows are the hat's round.
			out.Brim = q.Length
			out.Depth += q.Width
		case p.From == body && !q.Rows && !goesOn(f.Parts[body], p):
		case (p.From == body || f.Parts[body].From == i) && !q.Rows:
			if out.Brim = q.Brim; p.From == body && b.CrownFirst && !q.CrownFirst {
				out.Brim = q.Hole // a band that draws the hat in ends at its edge
			}
			out.Depth += q.Depth
			out.Widest = math.Max(out.Widest, q.Widest)
			out.FlatWidth = out.Widest / 2
		}
	}
	return out, nil
}

// goesOn reports whether a part in rounds is worked on at the end of another, rather
// than round an opening in the middle of it.
func goesOn(from, p *fabric.Part) bool {
	return !roundFlaps(p) && (len(p.Rounds) == 0 || !p.Rounds[0].Carried || p.Rounds[0].Number >= from.Rounds[len(from.Rounds)-1].Number)
}

// roundFlaps reports whether a part goes round pieces of rows that stand on the round it
// goes on from, so that its first round is longer than the way round the piece.
func roundFlaps(p *fabric.Part) bool {
	if len(p.Rounds) < 2 || p.Rounds[1].Row {
		return false
	}
	for i := range p.Rounds[1].Stitches {
		if on := p.Rounds[1].Stitches[i].On; len(on) > 0 && on[0].Into == stitch.RowEnd && on[0].Part != p.From {
			return true
		}
	}
	return false
}

// piece is the measurements of one part.
func piece(p *fabric.Part, rounds []RoundForm) Piece {
	var z Piece
	first, last := -1, -1
	start := 0
	if len(p.Rounds) > 0 && isFoundation(p.Rounds[0]) {
		start = 1
	}
	for i := start; i < len(rounds); i++ {
		if !p.Rounds[i].Row {
			if first < 0 {
				first = i
			}
			last = i
		}
	}
	if first < 0 {
		z.Rows = p.Worked == fabric.InRows || len(rounds) > start
		for i := range rounds {
			z.Length = math.Max(z.Length, rounds[i].Level)
			if i >= start || len(rounds) == start {
				z.Width = math.Max(z.Width, rounds[i].Circumference)
			}
		}
		return z
	}
	for i := first; i <= last; i++ {
		z.Widest = math.Max(z.Widest, 2*math.Pi*rounds[i].R)
	}
	z.FlatWidth = z.Widest / 2

	// The edge that the piece begins at: a foundation, or its first round.
	edge := &rounds[first]
	bottom := 0.0
	if start == 1 && first == 1 {
		edge = &rounds[0]
	} else if first > 0 {
		bottom = rounds[first-1].Level
	}
	end := &rounds[last]
	z.Depth = math.Max(0, end.Level-bottom)
	z.Standing = end.Z
	foot := onEdge
	if first <= 1 {
		foot = footing(p.Rounds[first])
	}
	centre := foot == onCentre
	z.CrownFirst = foot != onEdge || edge.Circumference < end.Circumference
	if z.CrownFirst {
		z.Brim, z.Hole = end.Circumference, edge.Circumference
		if centre {
			z.Depth += edge.Radius
			if first == 0 {
				z.Depth, z.Hole = end.Level, 0
			}
		}
		if foot == onBothSides {
			z.Hole = 0
		}
	} else {
		z.Brim, z.Hole = edge.Circumference, end.Circumference
	}
	z.lie(p, rounds[:last+1], foot)
	z.Waist = z.Brim
	for i := first; i <= last; i++ {
		from := rounds[i].Level - bottom
		if z.CrownFirst {
			from = end.Level - rounds[i].Level
		}
		if from <= z.Depth/3 {
			z.Waist = math.Min(z.Waist, rounds[i].Circumference)
		}
	}
	return z
}
