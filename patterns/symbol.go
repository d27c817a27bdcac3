package patterns

import (
	"fmt"
	"strconv"
	"strings"

	"gopkg.in/yaml.v3"

	"whorl/patterns/fault"
)

// Symbol is the designer's own drawing of a stitch: lines in a small box, in its own
// units, x to the right and y down, with two anchors in it.
type Symbol struct {
	fault.Pos             // of what stands behind symbol:
	Width, Height float64 // of the box
	Foot, Top     [2]float64
	// Path is path data as SVG has it, and PathPos where it stands.
	Path    string
	PathPos fault.Pos
}

var (
	stitchKeys = keys{"words", "symbol"}
	symbolKeys = keys{"box", "path", "foot", "top"}
)

const (
	symbolHelp = "Write it as\n  symbol: {box: 8 x 20, path: M4 20 V3 M1 3 H7, foot: 4 20, top: 4 1}"
	mostBox    = 1000 // units of a side
	mostPath   = 2000 // characters
)

// withSymbol reads a special stitch that has a symbol of the designer's own beside
// its words.
func (r *reader) withSymbol(f entry, d *Definition) (words entry) {
	m := r.mapping(f.value, "a stitch", stitchKeys)
	if e := m["symbol"]; e.given() {
		d.Symbol = r.symbol(e)
	}
	return m["words"]
}

// describes reports whether a node is a special stitch written as a set of keys.
func describes(n *yaml.Node) bool {
	if n.Kind != yaml.MappingNode {
		return false
	}
	for i := 0; i < len(n.Content); i += 2 {
		if k := strings.ToLower(strings.TrimSpace(n.Content[i].Value)); k == "words" || k == "symbol" {
			return true
		}
	}
	return false
}

// symbol reads a designer's own symbol; nil with a fault when something is missing.
func (r *reader) symbol(e entry) *Symbol {
	if e.value.Kind != yaml.MappingNode {
		r.wrongType(e, "a set of keys", symbolHelp)
		return nil
	}
	m := r.mapping(e.value, "a symbol", symbolKeys)
	s := &Symbol{Pos: pos(e.key)}
	before := len(r.faults)
	lacks := false
	for _, key := range symbolKeys {
		if !m[key].given() {
			lacks = true // told only while the list of faults has room
			r.at(e.key, codeSymbol, fmt.Sprintf("this symbol has no %s", key), symbolHelp)
		}
	}
	if lacks {
		return nil
	}
	box := r.pair(m["box"], "x")
	s.Width, s.Height = box[0], box[1]
	s.Foot, s.Top = r.pair(m["foot"], ""), r.pair(m["top"], "")
	s.Path = r.paragraphs(m["path"])
	s.PathPos = pos(m["path"].value)
	if style := m["path"].value.Style; style&(yaml.SingleQuotedStyle|yaml.DoubleQuotedStyle) != 0 {
		s.PathPos.Column++
	}
	switch {
	case len(r.faults) > before:
	case s.Width <= 0 || s.Height <= 0 || s.Width > mostBox || s.Height > mostBox:
		r.at(m["box"].value, codeSymbol, "a box of this size cannot be drawn in", fmt.Sprintf("Each side is above 0 and at most %d units.", mostBox))
	case len(s.Path) > mostPath:
		r.at(m["path"].value, codeLimit, fmt.Sprintf("this path is longer than %d characters", mostPath), "")
	case s.Foot == s.Top:
		r.at(m["top"].value, codeSymbol, "the top is where the foot is", "The foot is where the stitch stands, the top where later ones stand on it.")
	default:
		for _, key := range []string{"foot", "top"} {
			if p := r.pair(m[key], ""); p[0] < 0 || p[1] < 0 || p[0] > s.Width || p[1] > s.Height {
				r.at(m[key].value, codeSymbol, fmt.Sprintf("the %s lies outside the box", key), "x goes from 0 at the left to the box's width, y from 0 at the top down to its height.")
			}
		}
	}
	if len(r.faults) > before {
		return nil
	}
	return s
}

// pair reads two numbers: "4 20", or "8 x 20" where a word may stand between them.
func (r *reader) pair(e entry, between string) (p [2]float64) {
	s := strings.NewReplacer(",", " ", "×", " ").Replace(r.str(e))
	if between != "" {
		s = strings.ReplaceAll(s, between, " ")
	}
	fields := strings.Fields(s)
	var err error
	for i := range p {
		if len(fields) != 2 {
			break
		}
		var x float64
		if x, err = strconv.ParseFloat(fields[i], 64); err != nil || x != x || x > mostBox || x < -mostBox {
			fields = nil
		} else {
			p[i] = x
		}
	}
	if len(fields) != 2 {
		r.at(e.value, codeSymbol, fmt.Sprintf("%s must be two numbers, but this is %s", quote(e.name()), quote(r.str(e))), symbolHelp)
	}
	return p
}
