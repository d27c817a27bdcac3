package working

import (
	"fmt"

	"whorl/patterns"
	"whorl/patterns/fault"
	"whorl/patterns/notation"
)

// toldBehind warns of a sentence that stands behind the words of a stitch, in the notes or among its
// own, and has more worked: "Shell: 5 dc in same st. Work loosely and ch 1 between shells." Whether
// that is part of the stitch or of the rounds it does not say, and neither makes it.
func (w *work) toldBehind() {
	notes, v := w.p.NoteWords, notation.NewVocabulary(w.p.Terms, nil)
	for i := range w.p.Stitches {
		d := &w.p.Stitches[i]
		last, def := len(d.Words.Lines)-1, w.definitions[notation.Plain(d.Name)]
		if last < 0 || def == nil {
			continue
		}
		for _, it := range def.items {
			if n, ok := it.(*notation.Note); ok {
				w.warnBehind(d, notation.Line{Text: n.Text, Line: n.Line, Column: n.Column}, v)
			}
		}
		at := d.Words.First + last - notes.First
		if at < 0 || at >= len(notes.Lines) {
			continue // not told in the notes
		}
		line := []rune(notes.Lines[at])
		from := d.Words.Columns[last] - notes.Columns[at] + len([]rune(d.Words.Lines[last]))
		if from < 0 || from >= len(line) {
			continue
		}
		w.warnBehind(d, notation.Line{Text: string(line[from:]), Line: notes.First + at, Column: notes.Columns[at] + from}, v)
	}
}

// warnBehind warns of the first sentence in the words behind a stitch that has more worked.
func (w *work) warnBehind(d *patterns.Definition, behind notation.Line, v *notation.Vocabulary) {
	span, ok := notation.TellsMore(behind, d.Name, v, w.p.Sizes)
	if !ok {
		return
	}
	f := w.p.Fault(span.Pos, span.Length, "unused-words", fmt.Sprintf("this is not worked: it stands behind the words of %s, and is in no round", d.Name),
		"Write it in the sentence that says how the stitch is made, or in the rounds.")
	f.Severity = fault.Warning
	w.faults = append(w.faults, f)
}
