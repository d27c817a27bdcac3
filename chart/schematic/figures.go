package schematic

import (
	"math"
	"slices"
	"strconv"
	"strings"
)

// figures are the lengths of all sizes, in millimetres, in the order of the
// trade: "51.4 (54, 57) cm" and "20¼ (21¼, 22½) in". A figure that all of them
// share is written once; a size without one has a dash.
func figures(mm []float64) (cm, in string) {
	return inOrder(mm, Centimetres) + " cm", inOrder(mm, Inches) + " in"
}

func inOrder(mm []float64, write func(float64) string) string {
	l := make([]string, len(mm))
	for i, v := range mm {
		l[i] = "–"
		if v > 0 {
			l[i] = write(v)
		}
	}
	if len(l) == 0 {
		return ""
	}
	if first := l[0]; !slices.ContainsFunc(l, func(s string) bool { return s != first }) {
		return first
	}
	return l[0] + " (" + strings.Join(l[1:], ", ") + ")"
}

// Centimetres is a length in millimetres, in centimetres to the nearest millimetre:
// "51.4".
func Centimetres(mm float64) string {
	return strconv.FormatFloat(math.Round(settled(mm))/10, 'f', -1, 64)
}

// Inches is a length in millimetres, in inches to the nearest quarter: "20¼". Less
// than an eighth is a quarter all the same, since nothing is no length.
func Inches(mm float64) string {
	n := int(max(1, math.Round(settled(4*mm/25.4))))
	whole, part := n/4, [...]string{"", "¼", "½", "¾"}[n%4]
	if whole == 0 {
		return part
	}
	return strconv.Itoa(whole) + part
}

// settled is a figure without what reckoning leaves of it below a ten-thousandth, so
// that a half is rounded up however it has come about.
func settled(v float64) float64 { return math.Round(1e4*v) / 1e4 }
