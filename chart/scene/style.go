package scene

// Stroked is the style of a line of a colour and a width in millimetres that
// encloses nothing, dashed where lengths are given.
func Stroked(colour Colour, width float64, dash ...float64) Style {
	s := Style{Stroke: &colour, Fill: &Colour{}, Line: &width}
	if len(dash) > 0 {
		s.Dash = dash
	}
	return s
}

// Filled is the style of an area of a colour without an outline.
func Filled(colour Colour) Style { return Style{Stroke: &Colour{}, Fill: &colour} }
