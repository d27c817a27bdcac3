package chart

// largeText is how much larger text and the least symbols are in large print.
const largeText = 1.4

// leastLine is the width of the narrowest strokes, mm: the narrowest of ISO 128-20 (value
// from memory). Symbols so small that they need it are to be looked at, not to be printed.
const leastLine = 0.13

// line is the width of strokes on a chart whose single crochets are unit tall, mm.
func (o Options) line(unit float64) float64 {
	if o.Large {
		return hundredth(min(max(0.1*unit, 0.28), 0.48))
	}
	return hundredth(min(max(0.085*unit, min(0.2, 0.12*unit), leastLine), 0.34))
}

// enlarged is a size of text, or of what stands beside it, on this chart.
func (o Options) enlarged(size float64) float64 {
	if o.Large {
		return size * largeText
	}
	return size
}

// leastSymbol is the least height at which a symbol of this chart prints well, mm.
func (o Options) leastSymbol() float64 { return o.enlarged(smallestSymbol) }
