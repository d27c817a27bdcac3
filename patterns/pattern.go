// Package patterns reads the pattern file: the facts in it (sizes, gauge,
// materials, pictures) and the words of each part, with the place of
// everything. The words themselves are read by package notation and worked by
// package working.
package patterns

import (
	"strings"

	"whorl/patterns/fault"
	"whorl/patterns/stitch"
)

// Pattern is a pattern file as it was written.
type Pattern struct {
	File     string
	Title    string
	Designer string
	// Copyright is the designer's own line, printed as it stands.
	Copyright string
	Terms     stitch.Terms
	Sizes     []string // at least one; a file without sizes has one, named ""
	Head      Lengths  // head circumference each size is made to fit
	HeadPos   fault.Pos
	Ease      Lengths // added to the head (usually negative)
	Gauge     []Gauge
	// Measures stand in for the figures that are used where no gauge says.
	Measures []Figure
	Hook     string
	Yarns    []Yarn // in the order of the file; usually one
	Notes    string
	// NoteWords are the notes with the place of every line.
	NoteWords Text
	Stitches  []Definition
	Parts     []Part
	Pictures  []Picture
	// PostWidths are the widths in pixels that every picture is drawn in for a
	// post, none where the file asks for no such set.
	PostWidths []int
	// Lines are the lines of the file, for the messages of faults.
	Lines []string
}

// StitchNames are the names of the designer's own stitches, in the order of the file.
func (p *Pattern) StitchNames() (names []string) {
	for _, d := range p.Stitches {
		names = append(names, d.Name)
	}
	return names
}

// Length is a length in millimetres with the unit it was written in.
type Length struct {
	MM   float64
	Unit string // "cm", "mm" or "in"
}

// Lengths is one length per size (a single one is given to all sizes), or
// empty when the file has none.
type Lengths []Length

// Gauge is one line of gauge, which is one of four things: stitches (or repeats
// of a stitch pattern), and perhaps rounds, over a length; rounds alone (Count is
// 0); a piece or its first rounds that was measured (Sample); or words that give
// no size at all (Over is 0).
type Gauge struct {
	fault.Pos
	Length int     // characters of the line
	Count  float64 // stitches in Over, 0 when not said
	// Of is what was counted, as written: "hdc", "fan repeats". It is "sts"
	// (or "stitches") when the line does not say which stitch. Of a gauge of
	// rounds alone it is what they were worked in.
	Of string
	// Counted and In are the two halves of Of where the stitch pattern is named
	// besides: "sts" and "waffle stitch" of "15 sts in waffle stitch". In is ""
	// otherwise.
	Counted, In string
	// For is what the line is said to be for, before a colon: "Brim".
	For  string
	Rows float64 // rounds or rows in Over, 0 when not said
	Row  bool    // rows were named, rather than rounds
	Over float64 // millimetres
	// Sample is what was measured where nothing was counted; else nil. Over is
	// how large it is.
	Sample *Sample
	// Words is the line as written, Remark what follows the length or stands
	// before the stitches and changes neither: "after blocking".
	Words, Remark string
	// Instead is the line (of the file) of another gauge of the same stitch that
	// is to be used instead of this one; 0 for none.
	Instead int
}

// Sample is a piece, or some rounds of one, that was measured: "one square = 18
// cm along each side", "rounds 1-6 measure 11 cm across".
type Sample struct {
	// Name is what the piece is called in the line, "" when only rounds are named.
	Name string
	// From and To are the first and last round or row measured, 0 and 0 for the
	// whole piece.
	From, To int
	Rows     bool // rows were named, rather than rounds
	Way      Way
}

// Way is which way a piece was measured.
type Way string

const (
	Unsaid Way = ""
	Across Way = "across"           // a diameter, from flat side to flat side, a width
	Side   Way = "along each side"  // one side of a motif with corners
	Corner Way = "corner to corner" // the longest way across a motif with corners
	Around Way = "around"           // a circumference
	High   Way = "high"             // along the direction of work
)

// Definition is one of the designer's special stitches, in words.
type Definition struct {
	fault.Pos
	Name   string
	Words  Text
	Symbol *Symbol // nil: it is drawn as what it is made of
}

// Text is words from the file. Lines[i] stands at line First+i, and its first
// character in column Columns[i]. White space before and after the words of a
// line is left out; blank lines between lines of words are kept, empty.
//
// The lines are those of the file also where YAML would fold them into one
// (words after ">", or words without "|" that run on). In quoted words an
// escaped quote (\" or ”) stands in Lines as the one character it means, so
// columns behind it on that line are one too small.
type Text struct {
	Lines   []string
	First   int
	Columns []int
}

// Pos is the place in the file of character column (from 0) of Lines[line].
func (t Text) Pos(line, column int) fault.Pos {
	return fault.Pos{Line: t.First + line, Column: t.Columns[line] + column}
}

// Part is one piece of the pattern.
type Part struct {
	fault.Pos
	Name string // "" only where the file has a single part
	Rows bool   // worked in rows rather than rounds
	// Piece is what the words call it where several pieces are told in one part: "First
	// flap"; "" for a part of one.
	Piece   string
	From    string // as written: "Brim row ends", "" when started afresh
	FromPos fault.Pos
	Text    Text
}

// Called is the name without what stands in brackets behind it: Ear for
// "Ear (make 2)".
func (p *Part) Called() string {
	name, _, _ := strings.Cut(p.Name, "(")
	return strings.TrimSpace(name)
}

// Picture is one picture asked for.
type Picture struct {
	fault.Pos
	Name     string
	Draw     string   // "round", …
	Part     string   // "" for the whole or the only part
	From, To int      // rounds, 0 0 for all
	Sizes    []string // names, empty for the default size
	Nested   bool     // a schematic with the outlines of all sizes in one another
	Repeats  int
	Paper    string // "A4", "Letter" or "": as wide as A4 and, where that suits the picture, no longer than it needs
	// Pixels is the width and the height of a picture for a post; 0 0: it is for paper.
	Pixels [2]int
	Width  int // of the PNG in pixels, 0 for the default
	// LeftHanded is set by hand: left, Cross by sc: cross, Black by colours:
	// one, Clear by ground: none and Tint by tint: repeat.
	LeftHanded, Cross, Black, Clear, Tint bool
	// Changes is set by changes: marked, Counts by counts: ends, Fives by
	// numbers: fives and Large by print: large.
	Changes, Counts, Fives, Large bool
}

// Fault is an error at a place in the pattern file, with the file's name and
// line filled in. Length is how many characters the caret line underlines.
func (p *Pattern) Fault(pos fault.Pos, length int, code, message, help string) *fault.Fault {
	f := &fault.Fault{Code: code, Severity: fault.Error, File: p.File, Pos: pos,
		Length: max(1, length), Message: message, Help: help}
	if pos.Line >= 1 && pos.Line <= len(p.Lines) {
		f.Source = p.Lines[pos.Line-1]
	}
	return f
}
