package output

import (
	"bytes"
	"cmp"
	"fmt"
	"io"
	"math"
	"slices"
	"strings"
	"unicode/utf8"

	"github.com/tdewolff/canvas"

	"whorl/chart/scene"
	"whorl/chart/typeface"
)

// SVG writes a scene as SVG 1.1. One user unit is a hundredth of a millimetre,
// so that every coordinate is a whole number: far finer than any printer, and
// short. Groups keep their names, titles and data; styles are written where they change and
// inherited below; shapes are written once and used by reference; text is
// text. Nothing is fetched from elsewhere and nothing runs. Positions are
// within 0.005 mm of the scene's.
func SVG(w io.Writer, s *scene.Scene) error {
	if err := s.Check(); err != nil {
		return err
	}
	var v svg
	v.document(s)
	_, err := w.Write(v.Bytes())
	return err
}

// svg is a document being written.
type svg struct {
	bytes.Buffer
	d []byte // for one path's data
}

func (v *svg) document(s *scene.Scene) {
	shapes, ids := inUse(&s.Root)
	width, height := units(s.Width), units(s.Height)
	v.WriteString(`<svg xmlns="http://www.w3.org/2000/svg"`)
	if len(shapes) > 0 {
		v.WriteString(` xmlns:xlink="http://www.w3.org/1999/xlink"`)
	}
	fmt.Fprintf(v, ` version="1.1" width="%smm" height="%smm" viewBox="0 0 %s %s" xml:lang="en" role="img"`, decimal(s.Width), decimal(s.Height), width, height)
	title, desc := typeface.Clean(s.Title), typeface.Clean(s.Desc)
	titleID, descID := v.labels(title, desc, ids)
	fmt.Fprintf(v, ` fill="none" stroke-width="%s" stroke-linecap="round" stroke-linejoin="round" font-family="%s">`, units(scene.Plain.Line), typeface.Families)
	if title != "" {
		v.WriteString("\n<title id=\"" + titleID + "\">")
		v.escape(title)
		v.WriteString("</title>")
	}
	if desc != "" {
		v.WriteString("\n<desc id=\"" + descID + "\">")
		v.escape(desc)
		v.WriteString("</desc>")
	}
	if len(shapes) > 0 {
		v.WriteString("\n<defs>")
		for _, shape := range shapes {
			v.WriteString("\n<path id=\"" + shape.ID + `"`)
			if shape.Solid {
				v.WriteString(` stroke="none"`)
			}
			v.data(shape.D)
		}
		v.WriteString("\n</defs>")
	}
	if s.Paper.Opaque {
		fmt.Fprintf(v, "\n<rect width=\"%s\" height=\"%s\" fill=\"%s\"/>", width, height, colour(s.Paper))
	}
	v.group(&s.Root, scene.Plain)
	v.WriteString("\n</svg>\n")
}

// labels names the title and description, which are the picture's name for a
// screen reader. The names come from the title, so that several pictures can
// stand in one web page.
func (v *svg) labels(title, desc string, taken map[string]bool) (titleID, descID string) {
	name := slug(title)
	for taken[name+"-title"] || taken[name+"-desc"] {
		name += "-"
	}
	titleID, descID = name+"-title", name+"-desc"
	var by []string
	if title != "" {
		by = append(by, titleID)
	}
	if desc != "" {
		by = append(by, descID)
	}
	if len(by) > 0 {
		v.attr("aria-labelledby", strings.Join(by, " "))
	}
	return titleID, descID
}

// slug is a text as a short name of small letters, figures and hyphens.
func slug(s string) string {
	var b strings.Builder
	for _, r := range strings.ToLower(s) {
		switch {
		case 'a' <= r && r <= 'z', '0' <= r && r <= '9' && b.Len() > 0:
			b.WriteRune(r)
		case b.Len() > 0 && !strings.HasSuffix(b.String(), "-"):
			b.WriteByte('-')
		}
		if b.Len() == 48 {
			break // long enough to tell pictures apart
		}
	}
	return cmp.Or(strings.TrimSuffix(b.String(), "-"), "picture")
}

// inUse is the shapes that a group draws, in the order of their first use, and
// the names that it has given away.
func inUse(root *scene.Group) (shapes []*scene.Shape, ids map[string]bool) {
	ids = map[string]bool{}
	var visit func(*scene.Group)
	visit = func(g *scene.Group) {
		ids[g.ID] = true
		for _, n := range g.Nodes {
			switch n := n.(type) {
			case *scene.Group:
				visit(n)
			case *scene.Use:
				if !ids[n.Shape.ID] {
					ids[n.Shape.ID] = true
					shapes = append(shapes, n.Shape)
				}
			}
		}
	}
	visit(root)
	return shapes, ids
}

func (v *svg) group(g *scene.Group, above scene.Ink) {
	v.WriteString("\n<g")
	v.attr("id", g.ID)
	for _, a := range g.Data {
		if a.Points == nil {
			v.attr("data-"+a.Name, typeface.Clean(a.Value))
			continue
		}
		v.d = appendPoints(v.d[:0], a.Points)
		v.attr("data-"+a.Name, string(v.d))
	}
	k := above.With(g.Style)
	v.ink(k, above)
	title := typeface.Clean(g.Title)
	if title == "" && len(g.Nodes) == 0 {
		v.WriteString("/>")
		return
	}
	v.WriteByte('>')
	if title != "" {
		v.WriteString("<title>")
		v.escape(title)
		v.WriteString("</title>")
	}
	afterGroup := false
	for _, n := range g.Nodes {
		_, isGroup := n.(*scene.Group)
		if afterGroup && !isGroup {
			v.WriteByte('\n')
		}
		afterGroup = isGroup
		switch n := n.(type) {
		case *scene.Group:
			v.group(n, k)
		case *scene.Path:
			v.path(n, k)
		case *scene.Use:
			v.use(n, k)
		case *scene.Text:
			v.text(n, k)
		}
	}
	if afterGroup {
		v.WriteByte('\n')
	}
	v.WriteString("</g>")
}

// ink writes what is painted otherwise than is inherited.
func (v *svg) ink(k, above scene.Ink) {
	if k.Stroke != above.Stroke {
		v.attr("stroke", colour(k.Stroke))
	}
	if k.Fill != above.Fill {
		v.attr("fill", colour(k.Fill))
	}
	if k.Line != above.Line {
		v.attr("stroke-width", units(k.Line))
	}
	if !slices.Equal(k.Dash, above.Dash) {
		dashes := make([]string, len(k.Dash))
		for i, d := range k.Dash {
			dashes[i] = units(d)
		}
		v.attr("stroke-dasharray", cmp.Or(strings.Join(dashes, " "), "none"))
	}
}

func (v *svg) path(p *scene.Path, above scene.Ink) {
	k := above.With(p.Style)
	if p.D == nil || p.D.Empty() || !k.Fill.Opaque && !k.Strokes() {
		return
	}
	v.WriteString("<path")
	v.ink(k, above)
	v.data(p.D)
}

// data writes a path's shape, and ends its element.
func (v *svg) data(p *canvas.Path) {
	v.WriteString(` d="`)
	if p != nil {
		v.d = appendPathData(v.d[:0], p)
		v.Write(v.d)
	}
	v.WriteString(`"/>`)
}

func (v *svg) use(u *scene.Use, above scene.Ink) {
	k := shapeInk(u.Shape, above)
	if !k.Fill.Opaque && !k.Strokes() {
		return
	}
	v.WriteString(`<use xlink:href="#` + u.Shape.ID + `"`)
	// A tenth of a degree is under 0.005 mm at the edge of a symbol.
	v.place(u.X, u.Y, math.Round(10*u.Angle)/10)
	if k.Fill != above.Fill {
		v.attr("fill", colour(k.Fill))
	}
	v.WriteString("/>")
}

// place writes where something stands and how far it is turned.
func (v *svg) place(x, y, angle float64) {
	if a := decimal(math.Remainder(angle, 360)); a != "0" {
		v.attr("transform", "translate("+units(x)+" "+units(y)+")rotate("+a+")")
		return
	}
	v.attr("x", units(x))
	v.attr("y", units(y))
}

// longText is how many characters a text has before a substitute for the
// typeface might run it into what stands beside it.
const longText = 4

func (v *svg) text(t *scene.Text, above scene.Ink) {
	s := typeface.Clean(t.String)
	if s == "" || !t.Colour.Opaque || t.Size <= 0 {
		return
	}
	v.WriteString("<text")
	v.place(t.X, t.Y, t.Angle)
	v.attr("font-size", units(t.Size))
	if t.Bold {
		v.attr("font-weight", "bold")
	}
	if t.Italic {
		v.attr("font-style", "italic")
	}
	switch t.Align {
	case scene.Centre:
		v.attr("text-anchor", "middle")
	case scene.Right:
		v.attr("text-anchor", "end")
	}
	if t.Colour != above.Fill {
		v.attr("fill", colour(t.Colour))
	}
	if above.Strokes() {
		v.attr("stroke", "none")
	}
	if utf8.RuneCountInString(s) >= longText && len(typeface.Missing(s)) == 0 {
		v.attr("textLength", units(typeface.Width(s, t.Size, t.Bold, t.Italic)))
		v.attr("lengthAdjust", "spacingAndGlyphs")
	}
	v.WriteByte('>')
	v.escape(s)
	v.WriteString("</text>")
}

// attr writes an attribute, unless it is empty.
func (v *svg) attr(name, value string) {
	if value == "" {
		return
	}
	v.WriteByte(' ')
	v.WriteString(name)
	v.WriteString(`="`)
	v.escape(value)
	v.WriteByte('"')
}

// escape writes text that has been through typeface.Clean.
func (v *svg) escape(s string) {
	escaper.WriteString(v, s)
}

var escaper = strings.NewReplacer("&", "&amp;", "<", "&lt;", ">", "&gt;", `"`, "&quot;")

// colour is a colour as SVG has it, at its shortest.
func colour(c scene.Colour) string {
	if !c.Opaque {
		return "none"
	}
	s := fmt.Sprintf("#%02x%02x%02x", c.R, c.G, c.B)
	if s[1] == s[2] && s[3] == s[4] && s[5] == s[6] {
		return "#" + s[1:2] + s[3:4] + s[5:6]
	}
	return s
}
