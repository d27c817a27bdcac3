package patterns

import (
	"cmp"
	"slices"
	"strings"
)

// start is where one of the pieces begins that a part tells of one behind the other, and
// what it hangs on.
type start struct {
	line, words int    // its first line, and the first behind a title that is only its name
	name, piece string // as in Part; "" where the words do not say
	rows        bool   // by the last number in it
	from        string // as in Part
	edge        string // of the piece before, that it is worked on: "edge", "row ends"; else ""
}

// pieces are the parts that a part tells of one behind the other, as designers tell of
// a brim and the body on it, of two ear flaps, of legs and the body that joins them, or
// of a square and its border; most are one.
func (p Part) pieces(sizes []string) []Part {
	starts := p.starts(sizes)
	if len(starts) == 1 {
		return []Part{p}
	}
	var list []Part
	for k, s := range starts {
		to := len(p.Text.Lines)
		if k+1 < len(starts) {
			to = starts[k+1].line
		}
		one := p
		one.Name, one.Piece, one.Rows, one.From = s.name, s.piece, s.rows, s.from
		one.Text = Text{Lines: p.Text.Lines[s.words:to], First: p.Text.First + s.words, Columns: p.Text.Columns[s.words:to]}.trimmed()
		if k > 0 {
			one.Pos = p.Text.Pos(s.line, 0)
		}
		if s.edge != "" {
			one.From, one.FromPos = list[k-1].Called()+" "+s.edge, one.Pos
		}
		list = append(list, one)
	}
	return list
}

// walk goes over the lines of a part and finds where pieces begin.
type walk struct {
	Part
	sizes    []string
	starts   []start
	title    start  // the first piece, where a title names it
	numbered bool   // a number has been told
	rows     bool   // it was one of rows
	last     int    // the last line with a label
	told     int    // lines with labels in the piece
	heads    []head // headings of like pieces, since the numbers began
	joined   bool   // a round has gone over several pieces
}

// head is the heading of one of several like pieces: "Second flap:", "Left strap".
type head struct {
	line         int
	called, noun string
}

// starts are the beginnings of the pieces, the first of them that of the part itself.
func (p Part) starts(sizes []string) []start {
	w := walk{Part: p, sizes: sizes, last: -1, starts: []start{{name: p.Name, rows: p.Rows, from: p.From}}}
	for i, line := range p.Text.Lines {
		l := trackOf(line)
		w.alike(i)
		w.anew(i, l)
		w.bordered(i, l)
		w.alongEnds(i, l)
		w.overLimbs(i, l)
		if l.is() || labelOf(line) != noLabel {
			w.told++
			w.last = i
		}
	}
	return w.starts
}

func (w *walk) now() *start { return &w.starts[len(w.starts)-1] }

// begin begins a piece, and takes back one that has nothing but this heading.
func (w *walk) begin(s start) {
	if k := len(w.starts) - 1; k > 0 && w.starts[k].line == s.line {
		w.starts = w.starts[:k]
	}
	w.starts = append(w.starts, s)
	w.told, w.last = 0, s.words-1
}

// anew begins a piece where the numbers begin anew under a title, or go over from rows to
// rounds or back: a brim in rows and the body on it. Titles that name one of the sizes
// are none. As long as there is one piece, it is worked as the file says.
func (w *walk) anew(i int, l track) {
	if l.number == "" {
		return
	}
	first, now, was := &w.starts[0], w.now(), w.rows
	w.rows = l.rows
	if !w.numbered {
		w.numbered = true
		if at, name := w.beginning(0, i); at == 0 && w.Name == "" {
			w.title = start{words: w.behindTitle(at, name), name: name}
		}
		return
	}
	at, name := w.beginning(w.last+1, i)
	if l.number != "1" || l.rows == was && (name == "" || pieceHead.MatchString(name)) {
		if len(w.starts) > 1 && now.edge == "" {
			now.rows = l.rows // one piece that goes on
		}
		return
	}
	if len(w.starts) == 1 {
		first.rows = was
	}
	if first.name == "" {
		first.name, first.words = cmp.Or(w.title.name, w.inWay(first.rows)), w.title.words
	}
	s := start{line: at, words: w.behindTitle(at, name), name: name, rows: l.rows}
	along := roundIt.MatchString(ends.ReplaceAllString(w.Text.Lines[i], ""))
	if was && !l.rows && (borderHead.MatchString(name) || name == "" && along) {
		s.edge, s.name = "edge", cmp.Or(name, "Border")
	}
	s.name = cmp.Or(s.name, w.inWay(s.rows))
	w.begin(s)
	w.heads = slices.DeleteFunc(w.heads, func(h head) bool { return h.line < s.line })
	w.joined = false
}

// beginning is the line that a piece begins with whose first label stands in line to, and
// what it is called, "" where the words do not say: its title, or else where work begins
// anew. The lines from number from on have no labels; what stands before the beginning
// belongs to the piece before.
func (w *walk) beginning(from, to int) (line int, name string) {
	for i := from; i < to; i++ {
		if l := w.Text.Lines[i]; titleLine.MatchString(l) && len(strings.Fields(l)) <= 6 && !noTitle.MatchString(l) && !namesSize(l, w.sizes) {
			name = strings.TrimSpace(strings.NewReplacer("[", "(", "]", ")", ":", "").Replace(l))
			if words, _, _ := strings.Cut(name, "("); strings.ToUpper(words) == words {
				name = words[:1] + strings.ToLower(words[1:]) + strings.TrimPrefix(name, words) // MAIN PART
			}
			return i, name
		}
	}
	for i := from; i < to; i++ {
		if m := titledWork.FindStringSubmatch(w.Text.Lines[i]); m != nil && len(strings.Fields(m[1])) <= 4 && !noTitle.MatchString(m[1]) &&
			!namesSize(m[1], w.sizes) && labelOf(w.Text.Lines[i]) == noLabel {
			return i, m[1]
		}
	}
	for i := from; i < to; i++ {
		if beginsWork.MatchString(w.Text.Lines[i]) {
			return i, ""
		}
	}
	return to, ""
}

// behindTitle is the line behind a title that is the name and no more than that.
func (w *walk) behindTitle(line int, name string) int {
	if name == "" || titledWork.MatchString(w.Text.Lines[line]) || strings.Contains(name, "(") && !makesSeveral.MatchString(name) {
		return line
	}
	return line + 1
}

// inWay is what a piece is called that has no name of its own, beside others.
func (w *walk) inWay(rows bool) string {
	how := "rounds"
	if rows {
		how = "rows"
	}
	if w.Name == "" {
		return "Part in " + how
	}
	return w.Called() + ", " + how
}

// bordered begins the rounds that go on from the last of the rows along the edge of a
// piece: a border told in the words of the piece, whose numbers may go on: "Rnd 4: Ch 1, …,
// working along opposite side of foundation ch".
func (w *walk) bordered(i int, l track) {
	line, now := w.Text.Lines[i], w.now()
	m := borderLine.FindStringSubmatch(line)
	about := l.rounds && !l.rows && otherEdge.MatchString(line)
	if !now.rows || now.from != "" || now.edge != "" || w.told == 0 || borderHead.MatchString(line) || m == nil && !about && !roundOne.MatchString(line) {
		return
	}
	s := start{line: i, edge: "edge"}
	for at := w.last + 1; at < i; at++ {
		if h := borderHead.FindStringSubmatch(w.Text.Lines[at]); h != nil {
			s.line, s.name = at, h[1]
		}
	}
	if s.name == "" && m != nil {
		s.name = m[1]
	} else if s.name == "" && !about && !roundIt.MatchString(line) {
		return
	}
	s.name, s.words = cmp.Or(s.name, "Border"), s.line
	now.name = cmp.Or(now.name, "Main piece")
	w.begin(s)
}

// alike begins a piece at the second of headings such as "First flap" and "Second flap",
// and at each behind it. In rounds they wait for what joins them.
func (w *walk) alike(i int) {
	m := pieceHead.FindStringSubmatch(w.Text.Lines[i])
	if m == nil || trackWord(m[2]) {
		return
	}
	h := head{i, m[1] + " " + m[2], strings.ToLower(strings.NewReplacer(" ", "", "-", "").Replace(m[2]))}
	w.heads = append(w.heads, h)
	k := len(w.starts) - 1
	for w.starts[k].edge != "" {
		k-- // the border of the piece before is done
	}
	if before := &w.starts[k]; before.rows && len(w.heads) > 1 && h.noun == w.heads[0].noun {
		s := *before
		before.piece = cmp.Or(before.piece, w.heads[0].called)
		s.line, s.words, s.name, s.piece = i, i, h.called, h.called
		w.begin(s)
	}
}

// alongEnds begins a piece where a row turns the corner and goes along the ends of those
// before it: "Heading / Row 81: working along the straight edge, 2 dc in each row end".
func (w *walk) alongEnds(i int, l track) {
	now := w.now()
	if !l.is() || !now.rows || now.edge != "" || now.piece != "" || w.told < 2 || !intoEnds.MatchString(w.Text.Lines[i]) {
		return
	}
	s := start{line: i, name: "Along the edge", rows: l.rows, edge: "row ends"}
	for s.line > now.words && heading(w.Text.Lines[s.line-1]) && !trackOf(w.Text.Lines[s.line-1]).is() {
		if s.line--; w.Text.Lines[s.line] != "" {
			s.name = strings.TrimSuffix(w.Text.Lines[s.line], ":")
		}
	}
	s.words = s.line
	now.name = cmp.Or(now.name, "Piece")
	w.begin(s)
}

// overLimbs begins the body that a round joins from the pieces before it: two legs, told
// once or each under a heading of its own.
func (w *walk) overLimbs(i int, l track) {
	noun, now := joinsLimbs(w.Text.Lines[i]), w.now()
	if now.rows || now.edge != "" || !l.rounds || noun == "" || w.joined {
		return
	}
	if w.joined = true; w.told == 0 {
		return
	}
	at := i
	for at > now.words && !trackOf(w.Text.Lines[at-1]).is() && (heading(w.Text.Lines[at-1]) || goesAcross.MatchString(w.Text.Lines[at-1])) {
		at--
	}
	body := start{line: at, words: at, name: cmp.Or(now.name, "Body")}
	w.heads = slices.DeleteFunc(w.heads, func(h head) bool {
		return h.line < now.words || h.line >= at || strings.TrimSuffix(h.noun, "s") != noun
	})
	if len(w.heads) < 2 {
		now.name = capital(noun) + " (make 2)"
	} else {
		now.name, now.piece = capital(w.heads[0].called), w.heads[0].called
		for _, h := range w.heads[1:] {
			w.begin(start{line: h.line, words: h.line, name: capital(h.called), piece: h.called})
		}
	}
	w.begin(body)
}
