// Package working executes a pattern: it works the words of every part for
// every size, stitch by stitch on the round below, into a fabric, and counts
// as it goes. What cannot be worked is reported as faults.
package working

import (
	"fmt"
	"strings"

	"whorl/patterns"
	"whorl/patterns/fabric"
	"whorl/patterns/fault"
	"whorl/patterns/notation"
	"whorl/patterns/stitch"
)

// Ruler says how high and how wide a stitch is in millimetres, for words such as
// "until piece measures 38 cm".
type Ruler interface {
	Height(k stitch.Kind, in stitch.Into) float64
	// Taller is how many times as high as its stitches a round is that is told on a line of the file:
	// where rounds of unlike heights were counted together, as those of a gauge are.
	Taller(line int) float64
	Width(k stitch.Kind, in stitch.Into) float64
}

// Working is a pattern with what was worked of it. It can be printed back in
// words.
type Working struct {
	// Fabrics are in the order of the pattern's sizes; a part that could not be
	// worked to its end breaks off after the last round that could.
	Fabrics []*fabric.Fabric
	// Faults are sorted by their place.
	Faults fault.List
	work   *work
}

// New works every size of a pattern.
func New(p *patterns.Pattern, ruler Ruler) *Working {
	w := &work{p: p, ruler: ruler, definitions: map[string]*definition{}, unread: map[string]bool{},
		lasts: map[*notation.Round][]*fabric.Round{}, clean: map[int]reading{}, saids: map[*fabric.Round]*notation.Counts{}}
	w.parse()
	for i := range p.Sizes {
		w.fabrics = append(w.fabrics, w.size(i))
	}
	w.checkNoted()
	w.checkBegun()
	w.faults.Sort()
	return &Working{w.fabrics, w.faults, w}
}

// Work is the fabrics and the faults of a [Working].
func Work(p *patterns.Pattern, ruler Ruler) ([]*fabric.Fabric, fault.List) {
	w := New(p, ruler)
	return w.Fabrics, w.Faults
}

// work is the working of one pattern.
type work struct {
	p       *patterns.Pattern
	ruler   Ruler
	texts   []*notation.Text
	fabrics []*fabric.Fabric
	// lasts are, for each labelled line of the words, the last round worked from
	// it in each size, nil where there is none.
	lasts       map[*notation.Round][]*fabric.Round
	definitions map[string]*definition
	noted       []*notation.Counts                 // what the notes say that beginning chains count as
	chainsAmong bool                               // whether the notes count the chains along a row among its stitches
	chainsEach  int                                // of how many chains each is one, 0 for every chain
	turnedEnds  []bool                             // of the parts of the size being worked
	offEnds     []bool                             // whether their counts are off at the end
	faultyParts []bool                             // whether something is wrong in them
	clean       map[int]reading                    // in which a part has come out in a size
	saids       map[*fabric.Round]*notation.Counts // what the words say that the chains count as that rounds begin with
	unread      map[string]bool                    // definitions whose words could not be read
	faults      fault.List
}

// parse reads the words of all parts and definitions.
func (w *work) parse() {
	trade := notation.NewVocabulary(w.p.Terms, nil)
	names := w.p.StitchNames()
	v := notation.NewVocabulary(w.p.Terms, names)
	for _, y := range w.p.Yarns {
		v.NameYarns(append(colourNames(y.Colour), y.Name))
	}
	for i := range w.p.Stitches {
		d := &w.p.Stitches[i]
		if items, ok := hookItems(d, w.p.Stitches, trade); ok {
			name := notation.Plain(d.Name)
			def := newDefinition(name, items)
			k, _, _ := trade.Stitch(d.Name)
			def.gathers = def.alias != nil && k.Shape != stitch.Together
			w.definitions[name] = def
			continue
		}
		// In its own words a name has the meaning of the trade.
		others := append(append([]string(nil), names[:i]...), names[i+1:]...)
		items, faults := notation.ParseWords(lines(d.Words), notation.NewVocabulary(w.p.Terms, others), w.p.Sizes)
		name := notation.Plain(d.Name)
		if what, ok := tradeMeaning(d, items, faults, trade); ok {
			at := notation.Span{Pos: d.Pos, Length: len([]rune(d.Name))}
			w.definitions[name] = newDefinition(name, []notation.Item{&notation.Stitches{Span: at, What: what}})
			continue
		}
		if (len(faults) > 0 || !makesStitch(items)) && movesHook.MatchString(strings.ToLower(strings.Join(d.Words.Lines, " "))) {
			w.unread[name] = true
			w.faults = append(w.faults, w.p.Fault(d.Pos, len([]rune(d.Name)), "not-understood", fmt.Sprintf("the movements of the hook do not come to how %s is made", d.Name),
				"Check the loops on the hook, of which one is left at the end; or say it as stitches and where they go, for example: 3-dc cluster in next st."))
			continue
		}
		if (len(faults) > 0 || !makesStitch(items)) && notation.NamesLoop(d.Name) {
			continue // "3rd loop: the horizontal bar on the wrong side": where a stitch goes, and none itself
		}
		w.report(faults)
		switch {
		case !makesStitch(items):
			if w.unread[name] = true; len(faults) == 0 {
				w.faults = append(w.faults, w.p.Fault(d.Pos, len([]rune(d.Name)), "not-understood", fmt.Sprintf("the words do not say how %s is made", d.Name),
					"Say it as stitches and where they go, for example: (dc, ch 1, dc) in next st."))
			}
		default:
			if k, _, ok := trade.Stitch(d.Name); ok {
				items = notation.Bundled(items, k.Shape)
			}
			w.definitions[name] = newDefinition(name, items)
		}
	}
	w.toldBehind()
	w.noted = notation.ParseNotes(lines(w.p.NoteWords), v, w.p.Sizes)
	w.chainsEach, w.chainsAmong = notation.ChainsAreStitches(w.p.NoteWords.Lines)
	w.ownSymbols()
	for i := range w.p.Parts {
		text, faults := notation.Parse(lines(w.p.Parts[i].Text), v, w.p.Sizes)
		w.report(faults)
		w.texts = append(w.texts, text)
	}
}

// ownSymbols refuses a symbol of the designer's own for what is no single stitch in
// one place.
func (w *work) ownSymbols() {
	for i := range w.p.Stitches {
		s := &w.p.Stitches[i]
		d := w.definitions[notation.Plain(s.Name)]
		if s.Symbol == nil || d == nil {
			continue
		}
		message := ""
		switch {
		case !d.single:
			message = "makes several stitches"
		case d.items[0].(*notation.Stitches).What.Kind.Shape == stitch.Together:
			message = "is worked over several places"
		default:
			continue
		}
		w.faults = append(w.faults, w.p.Fault(s.Symbol.Pos, len("symbol"), "symbol", s.Name+" "+message+", and a symbol of your own stands for one stitch in one place",
			"Leave the symbol out: it is drawn as what it is made of."))
	}
}

// report completes faults of the reading and keeps them.
func (w *work) report(l fault.List) {
	for _, f := range l {
		g := w.p.Fault(f.Pos, f.Length, f.Code, f.Message, f.Help)
		g.Severity, g.Size, g.Round = f.Severity, f.Size, f.Round
		w.faults = append(w.faults, g)
	}
}

func lines(t patterns.Text) []notation.Line {
	l := make([]notation.Line, len(t.Lines))
	for i, s := range t.Lines {
		l[i] = notation.Line{Text: s, Line: t.First + i, Column: t.Columns[i]}
	}
	return l
}

// size works one size.
func (w *work) size(i int) *fabric.Fabric {
	f := &fabric.Fabric{Size: w.p.Sizes[i], Index: i}
	var broken []bool
	w.turnedEnds, w.offEnds, w.faultyParts = nil, nil, nil
	for k := range w.p.Parts {
		p := w.partReadings(f, k, i)
		f.Parts = append(f.Parts, p.part)
		for label, r := range p.lasts {
			if w.lasts[label] == nil {
				w.lasts[label] = make([]*fabric.Round, len(w.p.Sizes))
			}
			w.lasts[label][i] = r
		}
		// A part that stands on one that broke off cannot come out; only what
		// its own words have wrong is worth saying, and that has been said.
		if from := p.part.From; from >= 0 && broken[from] {
			p.broken = true
		} else {
			w.faults = append(w.faults, p.faults...)
		}
		broken = append(broken, p.broken)
		w.offEnds = append(w.offEnds, p.cascade)
		w.faultyParts = append(w.faultyParts, p.firstWrong >= 0)
		w.turnedEnds = append(w.turnedEnds, p.turned)
	}
	return f
}

// partWork is the working of one part for one size.
type partWork struct {
	*work
	f       *fabric.Fabric
	index   int
	size    int
	terms   stitch.Terms
	part    *fabric.Part
	source  *patterns.Part
	reading reading
	// blocks is how many chains the blocks have of a part worked from corner to corner, 0 for
	// another, once blocksKnown is set.
	blocks      int
	blocksKnown bool
	// throughout is what beginning chains count as, by their number; 0 for
	// all.
	throughout map[int]*notation.Counts
	// onlyHere is what a round has said of its own beginning chain against that.
	onlyHere map[int]*notation.Counts
	// counted is what each beginning chain that says nothing counted as when its words were
	// first worked, and counts as when they are worked again.
	counted map[*notation.Chain]*notation.Counts
	// unsaid, mayNotSplit and mayTurn are set when a reading had to be chosen.
	unsaid          uint64
	mayNotSplit     bool
	mayTurn         bool // lists without brackets are told
	eitherList      bool // both readings of one fit
	asManySaid      bool // as many stitches go into as many places
	outOfKind       bool // words worked again name stitches that are other ones there
	edgeRows        []int
	edge, edgePart  int
	stitches, steps int
	faults          fault.List
	// doubts are words of the rounds so far that were passed over, and that no count
	// has borne out yet.
	doubts []doubtful
	// over is how many stitches rounds, by their number in the part, pass over among those that they work, where
	// no count bears them out.
	over map[int]int
	// later are rounds of lists such as "Rows 4 and 6" that have to wait.
	later []laterRound
	// rounds are the words by the number of the round worked from them.
	rounds map[int]*notation.Round
	// openEnded is set behind rows of which the words do not say how many they are, so
	// that the next may have any number.
	openEnded bool
	// extraFrom is the number that a round behind rounds without numbers may go on with; 0
	// for none.
	extraFrom int
	// lasts are the rounds worked last from each labelled line.
	lasts map[*notation.Round]*fabric.Round
	// latest are the words of the rounds worked, in order.
	latest []*notation.Round
	carry  []notation.Item
	turned bool
	// sided is set when the words have said which side a round is.
	sided bool
	// cascade is set while counts are off because of a fault that has been
	// reported.
	cascade bool
	// faulty are the words that have been found wrong; firstWrong is the number of
	// rounds before the first with an error, -1 while there is none.
	faulty     map[*notation.Round]bool
	firstWrong int
	// others is the highest number of the rounds so far that are for other sizes
	// only: there are none of those numbers in this one.
	others int
	// called is the line of the label that is being worked.
	called int
	// calling is the line of the words that call for the rounds of another piece, 0
	// while none do.
	calling int
	number  int
	// markUp is the stitch that a marker is moved up in from round to round, 0 for
	// none.
	markUp int
	// alias is the designer's name of the stitch that is being worked.
	alias string
	own   string // the designer's own stitch that is being made, where that is one stitch
	// skipTo is the round that this size goes on with, 0 when none is skipped;
	// skipToPart the heading, "" for none.
	skipTo     int
	skipToPart string
	skippedAt  notation.Span // where it was said
	// series is the word before the numbers of the rounds worked last, and
	// seriesBase the number of the round before the first of them.
	series       string
	seriesOthers map[string]int // the highest numbers for other sizes only, by the word
	seriesBase   int
	broken       bool
	loose        *fabric.Round
	opening      bool // the part is worked round a slit in another
	onChain      bool // it is worked along the other side of a starting chain
	// sideRows are the rows of part sidePart along whose ends a border goes, and
	// under how many chains of its starting chain stand at the end of the first
	// round.
	sideRows        []int
	sidePart, under int
	flaps           []flap   // the pieces of rows that the part goes round on its way round a round
	joining         *joining // of several pieces that the part goes over, nil for none
	// assembly is of the motifs that the part goes round, nil for none; assembles is set where the
	// words say how they are joined.
	assembly  *assembly
	assembles bool
}

func (w *work) workPart(f *fabric.Fabric, k, size int, r reading) *partWork {
	src := &w.p.Parts[k]
	p := &partWork{work: w, f: f, index: k, size: size, terms: w.p.Terms, source: src, reading: r,
		part:   &fabric.Part{Name: src.Name, From: -1},
		faulty: map[*notation.Round]bool{}, firstWrong: -1, throughout: map[int]*notation.Counts{}, onlyHere: map[int]*notation.Counts{}, counted: map[*notation.Chain]*notation.Counts{}, over: map[int]int{}, rounds: map[int]*notation.Round{}, seriesOthers: map[string]int{}, lasts: map[*notation.Round]*fabric.Round{}}
	if src.Rows {
		p.part.Worked = fabric.InRows
	}
	for _, c := range w.noted {
		p.throughout[c.Of] = c
	}
	p.standOn()
	if from := p.part.From; from >= 0 {
		p.cascade = w.offEnds[from] || p.opening && w.faultyParts[from]
		p.others = p.othersOf(from)
	}
	for i, round := range w.texts[k].Rounds {
		if p.broken {
			break
		}
		if p.skipToPart != "" && i > 0 && headed(w.texts[k].Rounds[i-1], p.skipToPart) {
			p.skipToPart = ""
		}
		p.rangeOf(round)
	}
	if p.skipToPart != "" && !p.broken && !w.partLater(k, p.skipToPart) {
		p.add(p.fault(p.skippedAt, "no-heading", fmt.Sprintf("there is no heading %q after this to go on from", p.skipToPart),
			"Put the heading on a line of its own, or name the round to go on with: skip to Rnd 15."), true)
	}
	if !p.broken {
		p.workLater()
	}
	if cord, _ := p.cord(p.carry); cord && !p.broken && len(p.latest) > 0 && needsPlaces(p.carry) {
		p.hang()
	} else if !p.broken && needsPlaces(p.carry) {
		// Work after the last join, without a label: one more round.
		last := w.texts[k].Rounds[len(w.texts[k].Rounds)-1]
		more := &notation.Round{Span: p.carry[0].Where(), Label: notation.Label{Row: last.Label.Row, Bare: true}}
		p.oneRound(more, more, p.number+1, true)
	}
	if len(p.later) > 0 && !p.broken {
		l := p.later[0]
		p.add(p.fault(l.text.Span, "round-number", fmt.Sprintf("the rounds before round %d of %s are missing", l.from, l.text.Label.Text),
			"Write the rounds between."), true)
	}
	if p.loose != nil {
		p.part.Rounds = append(p.part.Rounds, p.loose)
	}
	p.refuseDoubts()
	return p
}

// partLater reports whether a part of the name comes after part number k.
func (w *work) partLater(k int, name string) bool {
	for i := k + 1; i < len(w.p.Parts); i++ {
		called := strings.ToLower(w.p.Parts[i].Called())
		if called != "" && (strings.Contains(strings.ToLower(name), called) || strings.Contains(called, strings.ToLower(name))) {
			return true
		}
	}
	return false
}

// fault is a fault of this part and size.
func (p *partWork) fault(at notation.Span, code, message, help string) *fault.Fault {
	if len(p.p.Sizes) > 1 {
		message += " in size " + p.p.Sizes[p.size]
	}
	if p.called > 0 && p.called != at.Line && code != "count" {
		if help != "" {
			help += "\n"
		}
		help += fmt.Sprintf("Line %d calls for these words.", p.called)
	}
	f := p.p.Fault(at.Pos, at.Length, code, message, help)
	f.Size, f.Called = p.p.Sizes[p.size], p.called
	return f
}

// add keeps a fault; broken ends the part.
func (p *partWork) add(f *fault.Fault, broken bool) {
	p.faults = append(p.faults, f)
	p.broken = p.broken || broken
	if f.Severity == fault.Error && p.firstWrong < 0 {
		p.firstWrong = len(p.part.Rounds)
	}
}
