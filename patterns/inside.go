package patterns

import (
	"whorl/patterns/fault"
	"whorl/patterns/notation"
)

// inside are the special stitches that the words of the parts name where they are first
// made, "(dc, ch 1, dc) in next st (V-st made)", and work again by that name alone. They
// are taken only where more of the words can be read with them.
func (r *reader) inside() (list []Definition) {
	var told []notation.Defined
	names := r.p.StitchNames()
	v := notation.NewVocabulary(r.p.Terms, names)
	for i := range r.p.Parts {
		for _, d := range notation.DefinedInside(r.p.Parts[i].Text.lines(), v, r.p.Sizes) {
			known := false
			for _, n := range names {
				known = known || notation.Plain(n) == notation.Plain(d.Name)
			}
			if !known && len(told) < maxStitches {
				told = append(told, d)
				names = append(names, d.Name)
			}
		}
	}
	if len(told) == 0 {
		return nil
	}
	unread := func(v *notation.Vocabulary) (n int) {
		for i := range r.p.Parts {
			_, faults := notation.Parse(r.p.Parts[i].Text.lines(), v, r.p.Sizes)
			n += len(faults)
		}
		return n
	}
	if unread(notation.NewVocabulary(r.p.Terms, names)) >= unread(v) {
		return nil
	}
	for _, d := range told {
		list = append(list, Definition{Pos: fault.Pos{Line: d.Line, Column: d.Column}, Name: d.Name,
			Words: Text{Lines: []string{d.Words}, First: d.From.Line, Columns: []int{d.From.Column}}})
	}
	return list
}

// lines are the lines of a text with their places.
func (t Text) lines() []notation.Line {
	l := make([]notation.Line, len(t.Lines))
	for i, s := range t.Lines {
		l[i] = notation.Line{Text: s, Line: t.First + i, Column: t.Columns[i]}
	}
	return l
}
