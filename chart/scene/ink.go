package scene

// Ink is a Style with nothing left to inherit: how a path is painted.
type Ink struct {
	Stroke, Fill Colour
	Line         float64   // millimetres
	Dash         []float64 // millimetres; an even number of lengths
}

// Plain is the Ink that a scene's Root inherits: neither stroke nor fill, and
// a line of a quarter of a millimetre when a stroke is asked for.
var Plain = Ink{Line: 0.25}

// With is the ink after the style's own fields have replaced the inherited.
func (k Ink) With(s Style) Ink {
	if s.Stroke != nil {
		k.Stroke = *s.Stroke
	}
	if s.Fill != nil {
		k.Fill = *s.Fill
	}
	if s.Line != nil {
		k.Line = *s.Line
	}
	if s.Dash != nil {
		k.Dash = s.Dash
		if len(k.Dash)%2 == 1 {
			// As in SVG: an odd list is gone through twice, the second time
			// with gaps for dashes.
			k.Dash = append(k.Dash[:len(k.Dash):len(k.Dash)], k.Dash...)
		}
	}
	return k
}

// Strokes tells whether the ink leaves a stroke.
func (k Ink) Strokes() bool { return k.Stroke.Opaque && k.Line > 0 }
