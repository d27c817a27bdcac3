package main

import (
	"fmt"
	"io"
	"os"
	"path/filepath"
	"slices"

	"whorl/chart/output"
	"whorl/chart/scene"
	"whorl/chart/writeup"
	"whorl/patterns"
)

// book is a finished write-up.
type book struct {
	name     string
	doc      *writeup.Document
	pages    []*scene.Scene
	marks    []scene.Bookmark
	findings []string
}

// books are the write-ups that a picture of the file asks for: of all sizes, or an
// edition of each size that it names.
func (d *drawing) books(j *job, p patterns.Picture) (l []*book, err error) {
	names := p.Sizes
	if d.size != "" {
		names = []string{d.size}
	}
	sizes := []int{-1}
	if len(names) > 0 {
		sizes = nil
	}
	for _, name := range names {
		sizes = append(sizes, slices.Index(j.pattern.Sizes, name))
	}
	for _, i := range sizes {
		name := d.stem + "-" + p.Name
		if i >= 0 && len(j.pattern.Sizes) > 1 {
			name += "-" + fileName(j.pattern.Sizes[i])
		}
		e, err := j.writeup(p, i, name)
		if err != nil {
			return nil, err
		}
		b := &book{name: name, doc: e.doc, findings: e.findings}
		width, height := paperOf(p).Size()
		if b.pages, b.marks, err = writeup.Pages(e.doc, width, height); err != nil {
			return nil, err
		}
		l = append(l, b)
	}
	return l, nil
}

// writeBooks writes write-ups in those of the formats asked for that they have.
func (d *drawing) writeBooks(l []*book, out io.Writer) error {
	put := func(name string, write func(io.Writer) error) error {
		name = filepath.Join(d.dir, name)
		if err := writeFile(name, write); err != nil {
			return err
		}
		fmt.Fprintln(out, name)
		return nil
	}
	for _, b := range l {
		if err := os.MkdirAll(d.dir, 0o755); err != nil {
			return plainError(err)
		}
		if slices.Contains(d.formats, "pdf") {
			if err := put(b.name+".pdf", func(w io.Writer) error { return output.PDFPages(w, b.pages, b.marks...) }); err != nil {
				return err
			}
		}
		if !slices.Contains(d.formats, "md") {
			continue
		}
		// The pictures first: the text that links them is never without them.
		for _, block := range b.doc.Blocks {
			if p, ok := block.(writeup.Picture); ok {
				if err := put(p.Name+".svg", func(w io.Writer) error { return output.SVG(w, p.Scene) }); err != nil {
					return err
				}
			}
		}
		if err := put(b.name+".md", func(w io.Writer) error {
			_, err := io.WriteString(w, writeup.Markdown(b.doc))
			return err
		}); err != nil {
			return err
		}
	}
	return nil
}
