package chart

import (
	"cmp"
	"strconv"

	"whorl/patterns/fabric"
	"whorl/patterns/stitch"
)

// entry is one line of the key.
type entry struct {
	short, long string
	kind        stitch.Kind
	in          stitch.Into
	sign        sign
	chains      int
	wrong       bool   // worked with the wrong side facing
	own         string // name of the designer's own symbol
	named       string // what the designer calls it
}

// sameSymbol reports whether two entries are of one symbol, whatever it is called.
func (e entry) sameSymbol(f entry) bool {
	for _, x := range []*entry{&e, &f} {
		x.short, x.long, x.named = "", "", ""
	}
	return e == f
}

// sameName reports whether two entries of one symbol are one in the key: a stitch that the
// designer gives a name of her own keeps it, but a plain stitch has its name of the trade too
// where it is worked as such.
func (e entry) sameName(f entry) bool {
	if e.named == f.named || e.short == f.short {
		return true
	}
	return (e.named == "" || f.named == "") && (e.kind.Shape != stitch.Plain || e.kind.Manner != 0)
}

// sign is what an entry shows when it is no plain stitch.
type sign uint8

const (
	ofStitch sign = iota
	ofRing
	ofStart
	ofJoin
	ofIncrease
	ofDecrease
	ofBeginning // where the chart begins
	ofDirection
	ofEdge   // what the first round stands on, where that is not drawn
	ofBeside // what lies beside a repeat
	ofMarker
	ofColour // change of it
	ofAttach
	ofCut
	ofYarn
)

// entries are exactly what is drawn, in reading order.
func (w *work) entries() []entry {
	list := w.readingEntries()
	add := func(e entry) {
		for i := range list {
			if e.sameSymbol(list[i]) && e.sameName(list[i]) {
				if list[i].named == "" {
					list[i] = e // what the designer calls it is what the words have
				}
				return
			}
		}
		list = append(list, e)
	}
	addYarn := func(s yarnSign) {
		if e, ok := w.yarnEntries(s); ok {
			add(e)
		}
	}
	t := w.o.Terms
	lo := w.first
	if c := w.courses[w.first]; c.ground() {
		lo++
	}
	if below := w.courses[max(lo-1, 0)]; lo > 0 && below.hub && lo <= 1 {
		n := 0
		for i := range below.round.Stitches {
			if below.round.Stitches[i].IsChain() {
				n++
			}
		}
		e := entry{short: "ring", long: "magic ring", sign: ofRing}
		switch {
		case n > 0 && below.round.Ring:
			e = entry{short: "ring", long: "ring of " + strconv.Itoa(n) + " chains", sign: ofRing, chains: n}
		case n > 0:
			e = entry{short: "ch " + strconv.Itoa(n), long: "chains to begin", sign: ofRing, chains: n}
		}
		add(e)
	} else if lo > w.first && below.loose {
		add(entry{short: stitch.Chain.Name(t), long: stitch.Chain.LongName(t), kind: stitch.Of(stitch.Chain)})
	} else if lo > 0 || !isFoundation(w.courses[0].round) {
		add(entry{short: "pale line", long: w.edgeName(lo), sign: ofEdge})
	}
	for _, c := range w.courses[min(lo, w.last) : w.last+1] {
		if c.hub {
			continue
		}
		yarn := w.yarnSigns(c)
		for i := range c.round.Stitches {
			s := &c.round.Stitches[i]
			for ; len(yarn) > 0 && yarn[0].stitch < i; yarn = yarn[1:] {
				addYarn(yarn[0])
			}
			if c.cutOf(i) != whole {
				continue
			}
			switch s.Role {
			case fabric.Start:
				if s.Chains < 1 {
					continue
				}
				e := entry{sign: ofStart, chains: s.Chains, kind: s.As}
				e.short = "beg ch " + strconv.Itoa(s.Chains)
				switch {
				case s.Counts && s.As.Is():
					e.long = "beginning chain, counts as " + s.As.Name(t)
				default:
					e.long = "beginning chain"
				}
				add(e)
			case fabric.Join:
				if s.Kind.Base > stitch.Slip {
					add(entry{short: s.Kind.Name(t), long: s.Kind.LongName(t), kind: s.Kind})
					continue
				}
				add(entry{short: "join", long: stitch.Slip.LongName(t) + " to join", sign: ofJoin})
			default:
				k := s.Kind
				if s.As.Is() {
					k = s.As
				} else if s.Role == fabric.LastHalf {
					continue
				}
				in := stitch.Top
				if len(s.On) > 0 {
					switch drawn := shown(s.On[0].Into, c.round); drawn {
					case stitch.FrontLoop, stitch.BackLoop, stitch.FrontPost, stitch.BackPost:
						in = drawn
					}
				}
				worked := in
				if in != stitch.Top {
					worked = s.On[0].Into
				}
				e := entry{kind: k, in: in, short: k.NameInto(worked, t), long: longName(k, worked, t)}
				if worked != in {
					e.wrong = true
					e.long += ", on the wrong side"
				}
				if own := w.o.own(s); own != nil {
					e.own, e.short = s.Own, own.Name
				}
				if d := w.o.renamed(k, worked); d != nil {
					e.short, e.named = d.Name, d.Name
				}
				if d := w.o.definition(s); d != nil {
					e.short, e.named = d.Name, d.Name
				}
				add(e)
			}
		}
		for _, s := range yarn {
			addYarn(s)
		}
	}
	if w.window > 0 {
		add(entry{short: "paler", long: "beside the repeat", sign: ofBeside})
	}
	for i, name := range w.yarns {
		add(entry{short: cmp.Or(name, "first"), long: "yarn, drawn in this " + t.Colour(), sign: ofYarn, chains: i})
	}
	return append(list, w.changeEntries()...)
}

// readingEntries are the signs that tell where and which way a chart is read.
func (w *work) readingEntries() (l []entry) {
	if !w.flat {
		long := "where the chart begins"
		if w.attaches() {
			long += ", or yarn is joined"
		}
		l = append(l, entry{short: "start", long: long, sign: ofBeginning})
	} else if w.attaches() {
		l = append(l, entry{short: "start", long: "yarn is joined", sign: ofAttach})
	}
	return append(l, entry{short: "arrow", long: "direction of work", sign: ofDirection})
}

// edgeName names what the first round that is drawn, lo, stands on.
func (w *work) edgeName(lo int) string {
	c := w.courses[lo]
	if from := w.part.From; c.round.Edge > 0 && from >= 0 {
		return "row ends of " + w.fabric.Parts[from].Name
	}
	if part, ok := c.onEnds(); ok && lo == 1 && part < len(w.fabric.Parts) {
		if from := w.part.From; part != from && from >= 0 && c.round.Row == w.courses[0].round.Row {
			return "edges of " + w.fabric.Parts[from].Name + " and its flaps"
		}
		return "edges of " + w.fabric.Parts[part].Name
	}
	if lo == 0 {
		return "edge that is worked into"
	}
	if about := w.courses[lo-1].round.About; about != "" {
		return "edge of the " + about
	}
	return w.courses[lo-1].label() + ", not drawn"
}

// longName is the full name of a kind; that of a puff says how large it is.
func longName(k stitch.Kind, in stitch.Into, t stitch.Terms) string {
	n := k.LongNameInto(in, t)
	if k.Shape == stitch.Puff {
		n += " of " + strconv.Itoa(k.Legs) + " loops"
	}
	return n
}

// changeEntries are the marks of increases and decreases, where there are any.
func (w *work) changeEntries() (l []entry) {
	if !w.o.Changes {
		return nil
	}
	var up, down bool
	for _, c := range w.courses[w.first : w.last+1] {
		for _, ch := range c.shown() {
			up, down = up || ch.By > 0, down || ch.By < 0
		}
	}
	if up {
		l = append(l, entry{short: "inc", long: "increase", sign: ofIncrease})
	}
	if down {
		l = append(l, entry{short: "dec", long: "decrease", sign: ofDecrease})
	}
	return l
}
