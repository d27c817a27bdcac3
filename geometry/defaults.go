package geometry

import (
	"fmt"
	"strings"
)

// Default is one of the figures that stand in for what no gauge line says.
type Default struct {
	// Name is what it is overridden by; stitches in it have their US names.
	Name  string
	Value float64
	// Meaning is what the figure says, with its unit.
	Meaning string
	// Source is where it comes from.
	Source string
}

// The defaults, as indices into the table below.
const (
	stitchWidth = iota
	flatChain
	flatSlip
	flatSingle
	flatHalf
	flatDouble
	flatTreble
	flatDoubleTreble
	flatTripleTreble
	extendedShare
	chainWidth
	chainArch
	clusterWidth
	puffWidth
	bobbleWidth
	popcornWidth
	picotWidth
	postHeight
	betweenHeight
	ribHeight
	ringChains
	defaultCount
)

const (
	flatSource  = "agreed by six published teaching sources; h/w = k/2π"
	beyond      = "four more for each yarn over, carrying on from dc 12 and tr 16; no source"
	noSource    = "common practice, no source"
	flatMeaning = "increases a round that keep a circle of %s flat; its height is this over 2π stitch widths"
)

var defaults = [defaultCount]Default{
	stitchWidth:      {"stitch width", 5, "mm, when there is no gauge at all", noSource},
	flatChain:        {"flat ch", 1.5, "thickness of a chain, as for the stitches below", noSource},
	flatSlip:         {"flat sl st", 2, fmt.Sprintf(flatMeaning, "sl st"), noSource},
	flatSingle:       {"flat sc", 6, fmt.Sprintf(flatMeaning, "sc"), flatSource},
	flatHalf:         {"flat hdc", 8, fmt.Sprintf(flatMeaning, "hdc"), flatSource},
	flatDouble:       {"flat dc", 12, fmt.Sprintf(flatMeaning, "dc"), flatSource},
	flatTreble:       {"flat tr", 16, fmt.Sprintf(flatMeaning, "tr"), flatSource},
	flatDoubleTreble: {"flat dtr", 20, fmt.Sprintf(flatMeaning, "dtr"), beyond},
	flatTripleTreble: {"flat trtr", 24, fmt.Sprintf(flatMeaning, "trtr"), beyond},
	extendedShare:    {"extended", 0.5, "how far an extended stitch reaches from its own height to that of the next taller stitch", noSource},
	chainWidth:       {"chain width", 0.85, "width of a chain along the edge, in stitch widths", noSource},
	chainArch:        {"chain arch", 0.12, "rise of the middle of a run of chains, over the length of the run", noSource},
	clusterWidth:     {"cluster width", 1.15, "width of a cluster, in stitch widths", noSource},
	puffWidth:        {"puff width", 1.2, "width of a puff stitch, in stitch widths", noSource},
	bobbleWidth:      {"bobble width", 1.3, "width of a bobble, in stitch widths", noSource},
	popcornWidth:     {"popcorn width", 1.3, "width of a popcorn, in stitch widths", noSource},
	picotWidth:       {"picot width", 0.25, "width of a picot along the edge, in stitch widths", noSource},
	postHeight:       {"post height", 0.7, "rise of a round of post stitches over that of the plain stitch", noSource},
	betweenHeight:    {"between height", 0.9, "rise of a stitch worked between stitches over that of one in the tops", noSource},
	ribHeight:        {"rib height", 0.85, "rise of a row worked in one loop to and fro, which closes up as ribbing, over that of a plain row", noSource},
	ringChains:       {"ring chains", 3, "chains of a starting ring that close up on themselves; only more leave a hole", noSource},
}

// Defaults is the table of figures used where the gauge says nothing, in a
// fixed order. Each can be changed with [Gauge.Override].
func Defaults() []Default { return append([]Default(nil), defaults[:]...) }

// Override puts a value of the caller's own in place of the default of that
// name; capitals do not matter. The error says that there is no such name, or
// what the value may be.
func (g *Gauge) Override(name string, value float64) error {
	for i := range defaults {
		d := &defaults[i]
		if !strings.EqualFold(d.Name, name) {
			continue
		}
		lo, hi := d.Value/10, d.Value*10
		if i == ringChains || i == chainArch || i == extendedShare || i == picotWidth {
			lo = 0
		}
		if !(value >= lo && value <= hi) {
			return fmt.Errorf("%s cannot be %v: it is %v by default, and may be from %v to %v",
				name, value, d.Value, round3(lo), round3(hi))
		}
		g.value[i] = value
		return nil
	}
	return fmt.Errorf("there is no default called %q", name)
}
