package shaping

import (
	"whorl/chart/scene"
)

// The key, mm.
const (
	keyPitch = 4.3
	keyHead  = 4.5
	swatch   = 8.0 // the length of what is shown
)

// keyEntry is one line of the key.
type keyEntry struct {
	label string
	draw  func(g *scene.Group, x, y float64)
}

// keyEntries explain the colours and the signs that are on the sheet, and no
// others.
func (s *sheet) keyEntries() []keyEntry {
	var l []keyEntry
	used := map[int]bool{}
	for _, c := range s.piece.rounds {
		used[classOf(c.strain)] = true
	}
	for i, k := range classes {
		if !used[i] {
			continue
		}
		l = append(l, keyEntry{"round " + k.name, func(g *scene.Group, x, y float64) {
			const h = 1.4
			ribbon(g, k, point{X: x, Y: y + h}, point{X: x + swatch, Y: y + h}, point{X: x, Y: y - h}, point{X: x + swatch, Y: y - h}, 0)
		}})
	}
	shown := map[markClass]bool{}
	for _, marks := range s.marks[s.first : s.last+1] {
		for _, m := range marks {
			shown[m.class()] = true
		}
	}
	for _, k := range markClasses {
		if !shown[k] {
			continue
		}
		sign := signs[k]
		l = append(l, keyEntry{sign.name, func(g *scene.Group, x, y float64) {
			g.Add(&scene.Path{Style: sign.joint(), D: line(point{X: x + swatch/2, Y: y}, point{X: x + swatch + 1, Y: y})})
			one := &scene.Group{Style: scene.Stroked(sign.ink, sign.line)}
			one.Add(&scene.Use{Shape: sign.shape, X: hundredth(x + swatch/2), Y: hundredth(y + 0.5)})
			g.Add(one)
		}})
	}
	return l
}

func keyHeight(entries []keyEntry) float64 { return keyHead + float64(len(entries))*keyPitch }

// key draws the key.
func (s *sheet) key(entries []keyEntry, x, y float64) {
	g := &scene.Group{ID: "key", Title: "Key"}
	g.Add(&scene.Text{X: x, Y: hundredth(y + 2), Size: lineSize, Bold: true, Colour: ink, String: "Key"})
	y += keyHead
	for _, e := range entries {
		e.draw(g, x, y+keyPitch/2)
		g.Add(&scene.Text{X: x + swatch + 3, Y: hundredth(y + keyPitch/2 + smallSize*0.36), Size: smallSize, Colour: words, String: e.label})
		y += keyPitch
	}
	s.root.Add(g)
}
