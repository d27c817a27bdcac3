package output

import (
	"bytes"
	"fmt"
	"strings"
	"unicode/utf16"

	"whorl/chart/scene"
	"whorl/chart/typeface"
)

// The renderer's first two objects are the catalogue, which names the page
// tree, and the properties.
const (
	catalogue  = 1
	properties = 2
)

// finishPDF gives a rendered document the first page's properties, a language and
// an outline, and takes the time of day out of it, by which no two were the same: the
// renderer writes it in the properties and in every font.
func finishPDF(b []byte, pages []*scene.Scene, marks []scene.Bookmark) ([]byte, error) {
	f, err := takeApart(b)
	if err != nil {
		return nil, err
	}
	rest, ok := bytes.CutPrefix(f.body(catalogue), []byte("<</Type/Catalog"))
	if !ok {
		return nil, errPDF
	}
	outline, err := f.addOutline(marks, pages)
	if err != nil {
		return nil, err
	}
	entries := "<</Type/Catalog/Lang(en)/ViewerPreferences<</DisplayDocTitle true>>"
	if outline > 0 {
		entries += fmt.Sprintf("/Outlines %d 0 R/PageMode/UseOutlines", outline)
	}
	f.replace(catalogue, append([]byte(entries), rest...))

	s := pages[0]
	var p bytes.Buffer
	p.WriteString("<<")
	for _, entry := range []struct{ name, value string }{
		{"Title", s.Title}, {"Author", s.Author}, {"Subject", s.Desc}, {"Creator", "whorl"},
	} {
		if v := typeface.Clean(entry.value); v != "" {
			p.WriteString("/" + entry.name + pdfString(v))
		}
	}
	p.WriteString(">>")
	f.replace(properties, p.Bytes())

	if err := f.finishFonts(); err != nil {
		return nil, err
	}
	return f.whole(), nil
}

// pdfString is a text string object (ISO 32000-1, 7.9.2.2). ASCII is written
// plain; the rest as UTF-16 in hexadecimal, in which no byte needs an escape.
func pdfString(s string) string {
	units := utf16.Encode([]rune(s))
	if len(units) == len(s) {
		return "(" + pdfEscaper.Replace(s) + ")"
	}
	var b strings.Builder
	b.WriteString("<FEFF")
	for _, u := range units {
		fmt.Fprintf(&b, "%04X", u)
	}
	return b.String() + ">"
}

var pdfEscaper = strings.NewReplacer(`\`, `\\`, "(", `\(`, ")", `\)`)
