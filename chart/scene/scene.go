// Package scene is a picture before it is written out: nested groups of paths,
// repeated shapes and text, in millimetres on paper. The same Scene is written
// as SVG, PDF and PNG, so the three are one picture.
//
// The origin is the top left corner, x to the right, y down; angles are in
// degrees, clockwise on the page, as in SVG.
package scene

import "github.com/tdewolff/canvas"

// Scene is one page or picture.
type Scene struct {
	Width, Height float64 // millimetres
	// Title and Desc say what the picture shows, for screen readers and for
	// the document's properties.
	Title, Desc string
	// Alt is the picture in a sentence or two, to stand where it cannot be
	// seen: Desc begins with it, and tells more.
	Alt string
	// Author is who the picture is by, for the document's properties; or "".
	Author string
	// Paper is painted under everything; a transparent Paper paints nothing.
	Paper Colour
	Root  Group
}

// Colour is an sRGB colour. The zero Colour is transparent; every other one is
// opaque.
type Colour struct {
	R, G, B uint8
	Opaque  bool
}

// RGB is an opaque colour from 0xRRGGBB.
func RGB(hex uint32) Colour {
	return Colour{uint8(hex >> 16), uint8(hex >> 8), uint8(hex), true}
}

// Style is how paths are painted. In a Group it is what its children inherit;
// in a Path it overrides what is inherited. Unset fields (nil) are inherited;
// what the Root inherits is Plain.
type Style struct {
	Stroke *Colour // transparent: no stroke
	Fill   *Colour // transparent: no fill; the nonzero rule says what is inside
	// Line is the stroke width in millimetres. Strokes have round caps and
	// round joins.
	Line *float64
	// Dash is the lengths of dashes and gaps in turn, in millimetres; the
	// round caps reach half a Line into each gap. Empty but not nil is an
	// unbroken line.
	Dash []float64
}

// Node is a Group, Path, Use or Text.
type Node interface{ node() }

// Attr is a datum carried by a group: in SVG the attribute
// data-Name. The name is of small letters, figures and hyphens.
type Attr struct {
	Name, Value string
	// Points are the datum where it is places of the scene, and not a Value:
	// each output writes them in its own units.
	Points []canvas.Point
}

// Group is a named group of nodes.
type Group struct {
	ID    string // unique in the scene, or ""
	Title string // in words, for screen readers and tooltips
	Data  []Attr
	Style Style
	Nodes []Node
}

// Path is a path in the scene's millimetres (y down).
type Path struct {
	Style Style
	D     *canvas.Path
}

// Shape is artwork that is drawn in many places. Its path is about the origin.
type Shape struct {
	ID string // unique in the scene
	// Solid shapes are filled with the inherited stroke colour and have no
	// stroke; others are painted in the inherited style, as a Path is.
	Solid bool
	D     *canvas.Path
}

// Same tells whether two shapes are the same artwork under the same ID.
func (s *Shape) Same(t *Shape) bool {
	return s.ID == t.ID && s.Solid == t.Solid && (s.D == t.D || s.D != nil && t.D != nil && s.D.Equals(t.D))
}

// Use draws a Shape turned by Angle about its origin and then moved to X, Y.
type Use struct {
	Shape *Shape
	X, Y  float64
	Angle float64 // degrees clockwise
}

// Align is which point of a text its position names.
type Align uint8

const (
	Left Align = iota
	Centre
	Right
)

// Text is one line of text, drawn in the sans serif family of package typeface.
type Text struct {
	X, Y   float64 // the point on the baseline that Align names
	Size   float64 // millimetres, the font's em
	Align  Align
	Bold   bool
	Italic bool
	Angle  float64 // degrees clockwise, about X, Y
	Colour Colour
	String string
}

func (*Group) node() {}
func (*Path) node()  {}
func (*Use) node()   {}
func (*Text) node()  {}

// Add appends nodes to the group.
func (g *Group) Add(n ...Node) { g.Nodes = append(g.Nodes, n...) }
