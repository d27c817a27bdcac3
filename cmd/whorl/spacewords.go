package main

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"whorl/geometry"
)

// wording is the stitch and the decrease, as they are written.
type wording struct{ plain, together string }

// round says one round of all sizes: in one line where the sizes differ in
// their numbers only.
func (w wording) round(label string, sizes []geometry.Spacing) []spaced {
	var all []int
	regular := true
	for _, sp := range sizes {
		all = append(all, sp.Leaves())
		regular = regular && sp.Change == sizes[0].Change && len(sp.Before) > 1 && sp.After == 0 &&
			slices.Max(sp.Before) == slices.Min(sp.Before) && (sp.Before[0] == 0) == (sizes[0].Before[0] == 0)
	}
	if regular && len(sizes) > 1 {
		var before []int
		for _, sp := range sizes {
			before = append(before, sp.Before[0])
		}
		text := "*" + w.run(sizes[0].Change, graded(before), before[0]) + "; rep from * around. (" + graded(all) + " " + w.plain + ")"
		return []spaced{{Round: label, Words: capital(text), Stitches: all}}
	}
	var lines []spaced
	for i, sp := range sizes {
		l := spaced{Round: label, Words: w.one(sp), Stitches: all[i : i+1], Each: append(slices.Clone(sp.Before), sp.After)}
		if len(sizes) > 1 {
			l.Size = i + 1
		}
		lines = append(lines, l)
	}
	return lines
}

// graded is numbers for sizes, the trade's way: "60 (72, 78)".
func graded(l []int) string {
	text := strconv.Itoa(l[0])
	rest := make([]string, len(l)-1)
	same := true
	for i, n := range l[1:] {
		rest[i] = strconv.Itoa(n)
		same = same && n == l[0]
	}
	if same {
		return text
	}
	return text + " (" + strings.Join(rest, ", ") + ")"
}

// one is the words of one round in one size.
func (w wording) one(sp geometry.Spacing) string {
	count := fmt.Sprintf(" (%d %s)", sp.Leaves(), w.plain)
	if len(sp.Before) == 0 {
		return capital(w.plain) + " in each st around." + count
	}
	var parts []string
	for _, b := range geometry.Blocks(sp.Before) {
		var runs []string
		for _, n := range b.Runs {
			runs = append(runs, w.run(sp.Change, strconv.Itoa(n), n))
		}
		text := strings.Join(runs, ", ")
		switch {
		case b.Times > 1 && len(b.Runs) == 1 && b.Runs[0] == 0 && sp.Change == geometry.Increase && b.Times < len(sp.Before):
			text = fmt.Sprintf("2 %s in each of next %d sts", w.plain, b.Times)
		case b.Times == 1:
		case b.Times*len(b.Runs) == len(sp.Before) && sp.After == 0:
			return capital("*" + text + "; rep from * around." + count)
		default:
			text = fmt.Sprintf("[%s] %d times", text, b.Times)
		}
		parts = append(parts, text)
	}
	if sp.After > 0 {
		parts = append(parts, w.plains(strconv.Itoa(sp.After), sp.After))
	}
	return capital(strings.Join(parts, ", ") + "." + count)
}

// run is plain stitches and a change behind them.
func (w wording) run(c geometry.Change, written string, n int) string {
	change := w.together
	if c == geometry.Increase {
		change = "2 " + w.plain + " in next st"
	}
	if n == 0 {
		return change
	}
	return w.plains(written, n) + ", " + change
}

func (w wording) plains(written string, n int) string {
	if written == "1" {
		return w.plain + " in next st"
	}
	return w.plain + " in next " + written + " sts"
}

// capital begins a sentence.
func capital(s string) string {
	for i, r := range s {
		if r >= 'a' && r <= 'z' {
			return s[:i] + strings.ToUpper(string(r)) + s[i+1:]
		}
		if r != '*' && r != '[' {
			break
		}
	}
	return s
}

// memorable is the longest group of row ends that is picked up along without
// counting.
const memorable = 12

// about is a number of stitches in a row end as the nearest that is easily kept
// in mind: "1 in each", "3 in every 4".
func about(each float64) string {
	best, of, least := 0.0, 1, math.Inf(1)
	for rows := 1; rows <= 5; rows++ {
		n := math.Max(1, math.Round(each*float64(rows)))
		if off := math.Abs(n/float64(rows) - each); off < least-1e-9 {
			best, of, least = n, rows, off
		}
	}
	if of == 1 {
		return fmt.Sprintf("%.0f in each", best)
	}
	return fmt.Sprintf("%.0f in every %d", best, of)
}

// pickUpWords says how stitches are picked up along row ends.
func pickUpWords(p geometry.PickUp, rows, stitches int) string {
	var b strings.Builder
	fmt.Fprintf(&b, "Pick up %d %s along %d row ends", stitches, plural(stitches, "st"), rows)
	if p.Rows == 1 {
		fmt.Fprintf(&b, ", %d in each.", p.Stitches)
	} else {
		fmt.Fprintf(&b, ": %d in every %d row ends", p.Stitches, p.Rows)
		if p.Rows > memorable {
			fmt.Fprintf(&b, " (about %s)", about(float64(stitches)/float64(rows)))
		}
		var parts []string
		for _, block := range geometry.Blocks(p.Each) {
			parts = append(parts, rowEnds(block))
		}
		if len(parts) <= 8 {
			fmt.Fprintf(&b, ", as %s", strings.Join(parts, ", "))
		}
		b.WriteString(".")
	}
	for q, name := range []string{"quarter", "halfway", "three-quarter"} {
		m := p.Markers[q]
		where := fmt.Sprintf("after row end %s", number(m.Rows))
		if m.Rows != float64(int(m.Rows)) {
			part := [...]string{"", "a quarter of the way into", "in the middle of", "three quarters of the way into"}[int(4*m.Rows)%4]
			where = fmt.Sprintf("%s row end %d", part, int(m.Rows)+1)
		}
		fmt.Fprintf(&b, "\n    Put the %s marker %s, with %d %s before it.", name, where, m.Stitches, plural(m.Stitches, "st"))
	}
	return b.String()
}

// rowEnds says a block of numbers of stitches in row ends: runs of the same
// number together.
func rowEnds(b geometry.Block) string {
	var runs []string
	for i := 0; i < len(b.Runs); {
		n := 1
		for i+n < len(b.Runs) && b.Runs[i+n] == b.Runs[i] {
			n++
		}
		if len(b.Runs) == 1 {
			n = b.Times // one number, repeated
		}
		ends := "next row end"
		if n > 1 {
			ends = fmt.Sprintf("each of next %d row ends", n)
		}
		switch b.Runs[i] {
		case 0:
			runs = append(runs, strings.Replace(fmt.Sprintf("sk %s", ends), "each of ", "", 1))
		default:
			runs = append(runs, fmt.Sprintf("%d in %s", b.Runs[i], ends))
		}
		i += n
	}
	text := strings.Join(runs, ", ")
	if b.Times > 1 && len(b.Runs) > 1 {
		return fmt.Sprintf("[%s] %d times", text, b.Times)
	}
	return text
}

func plural(n int, what string) string {
	if n == 1 {
		return what
	}
	return what + "s"
}
