package working

import "regexp"

// between are what stands between the names of colours, and the letters that they are
// given: "Navy (M), Cream (C)", "Holly, Berry and Snow".
var between = regexp.MustCompile(`\s*(?:,|;|/|\band\b|&|\+|\([^)]*\)|[0-9]+)\s*`)

// colourNames are the names in the colour of a yarn.
func colourNames(colour string) []string { return between.Split(colour, -1) }
