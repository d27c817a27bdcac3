package working

import "whorl/patterns/notation"

// markerAt is where a round has a stitch marker: in the stitch of an index, or in
// the nth of those that count.
type markerAt struct{ index, nth int }

// marker takes in where a marker is put. Before any stitch has been made "place
// marker" means the first; words that do not say where are left as advice.
func (w *roundWork) marker(m *notation.Marker) {
	at := markerAt{index: -1}
	switch {
	case m.Stitch.Set():
		at.nth = m.Stitch.For(w.size)
	case m.Made && !w.begun:
		at.nth = 1
	case m.Made:
		at.index = len(w.r.Stitches) - 1
	case m.Up:
		at.nth = 1
	default:
		return
	}
	w.markers = append(w.markers, at)
	if m.Up {
		w.markUp = max(at.nth, 1)
	}
}

// putMarkers marks the stitches of the finished round, and the one to which an
// earlier marker is moved up.
func (w *roundWork) putMarkers() {
	if len(w.markers) == 0 && w.markUp > 0 {
		w.markers = append(w.markers, markerAt{index: -1, nth: w.markUp})
	}
	for _, at := range w.markers {
		n := 0
		for i := range w.r.Stitches {
			if w.r.Stitches[i].Counts {
				n++
			}
			if i == at.index || w.r.Stitches[i].Counts && n == at.nth {
				w.r.Stitches[i].Marked = true
				break
			}
		}
	}
}
