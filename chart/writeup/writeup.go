// Package writeup sets a pattern's write-up as pages: paragraphs, tables and
// pictures, with bookmarks. It also writes it as Markdown. It knows neither
// crochet nor the written language: what is said is the caller's.
//
// A document is set in two steps: its blocks become pieces that cannot be divided
// (pieces.go, table.go), and the pieces are shared out to pages (pages.go).
package writeup

import (
	"fmt"

	"whorl/chart/scene"
)

// Document is what is written, from the top to the end. Texts hold together
// where they have no-break spaces.
type Document struct {
	Title string
	// Lines stand under the title, each a paragraph of its own: whom it is by,
	// for which size.
	Lines []string
	// Author is for the document's properties.
	Author string
	// Foot stands at the foot of every page, or at the end where it is too long
	// for that.
	Foot   string
	Blocks []Block
}

// Block is a Heading, Paragraph, Terms, Table or Picture.
type Block interface{ block() }

// Heading is the name of a section, at level 1 or 2. It stays with what follows.
type Heading struct {
	Level int
	Text  string
}

// Paragraph is running text. A Lead stands in bold before it, and the lines under
// it are indented.
type Paragraph struct {
	Lead, Text string
	// Keep holds it on the page of what follows.
	Keep bool
}

// Terms are names with what they mean, set in columns where they are short.
type Terms []Term

// Term is one of them.
type Term struct{ Name, Meaning string }

// Table is rows of cells under a head. The first column is set to the left, the
// others to the right. A line break in a cell is kept.
type Table struct {
	Head []string
	Rows [][]string
}

// Picture is a drawing with its caption above it. It is set as large as it is.
// Where the page has no room left for it the text goes on, and it stands at the top
// of the next page; but right behind a heading it stays with that.
type Picture struct {
	Scene *scene.Scene
	// Alone is the same drawn larger, for where it has a page to itself; or nil.
	Alone *scene.Scene
	// Smaller is the same drawn smaller, for where a page would else stay less than
	// half full; or nil.
	Smaller *scene.Scene
	Caption string
	Note    string // under the caption, smaller
	Alt     string // says in words what is seen
	Name    string // of its file in Markdown, without the extension
}

func (Heading) block()   {}
func (Paragraph) block() {}
func (Terms) block()     {}
func (Table) block()     {}
func (Picture) block()   {}

// Room is the height in millimetres that a picture may have on a page so high,
// with a caption and note of a line each.
func Room(pageHeight float64) float64 {
	return pageHeight - top - bottom - footSize*lead - captionSize*lead - noteSize*lead - captionAir - headingSize*lead - nextAir
}

// Pages sets the document on pages of a size in millimetres. The error names a
// picture that is larger than a page.
func Pages(d *Document, width, height float64) ([]*scene.Scene, []scene.Bookmark, error) {
	s := &setter{d: d, width: width, height: height, room: width - 2*side}
	s.setFoot()
	for _, b := range d.Blocks {
		if err := s.block(b); err != nil {
			return nil, nil, err
		}
	}
	s.endFoot()
	pages := s.share()
	for i, p := range pages {
		s.furnish(p, i, len(pages))
	}
	return pages, s.marks, nil
}

// block makes pieces of a block.
func (s *setter) block(b Block) error {
	switch b := b.(type) {
	case Heading:
		s.heading(b)
	case Paragraph:
		s.paragraph(b)
	case Terms:
		s.terms(b)
	case Table:
		s.table(b)
	case Picture:
		return s.picture(b)
	default:
		return fmt.Errorf("a write-up cannot hold a %T", b)
	}
	return nil
}
