package notation

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"
)

// leads tell one of several pieces from the others.
var leads = regexp.MustCompile(`(?i)^(first|second|previous|other|left|right|last|\d+(st|nd|rd|th))\b`)

func (s Style) ref(r *Ref) string {
	if r.Onward {
		return s.onward(r) + s.along(r.Along)
	}
	if r.Piece != "" && len(r.Rounds) == 0 {
		return "work as for " + r.Piece
	}
	if r.Piece != "" && len(r.Rounds) == 1 && !r.Times.Set() && !leads.MatchString(r.Piece) {
		return "work as for " + r.Piece + ", " + s.Numbers(r.Rounds)
	}
	text := "rep "
	switch {
	case r.Last.Set() && s.one(r.Last):
		text += "last " + strings.ToLower(s.Word())
	case r.Last.Set():
		text += "last " + s.Num(r.Last) + " " + strings.ToLower(s.Word()) + "s"
	case r.Called != "":
		text += r.Called
	default:
		if r.Series != "" {
			text += r.Series + " "
		}
		text += s.Numbers(r.Rounds)
	}
	if r.Piece != "" {
		text += " of " + r.Piece
	}
	if r.Times.Set() {
		text += s.timesMore(r)
	}
	if r.Change != nil {
		if capital(r.Change.Text) { // in a sentence of its own, before
			return s.Advice(r.Change.Text) + ". " + capitalise(text) + s.endingRound(r.End)
		}
		mark := ", "
		if strings.HasPrefix(r.Change.Text, "in ") || strings.HasPrefix(r.Change.Text, "but ") {
			mark = " "
		}
		return text + s.endingRound(r.End) + mark + s.Advice(r.Change.Text)
	}
	return text + s.along(r.Along) + s.endingRound(r.End) + apart(r.Apart)
}

// onward is "continue in this way, working 1 more st between increases".
func (s Style) onward(r *Ref) string {
	if r.Even {
		if r.Of.Is() {
			return "work in " + r.Of.Name(s.Terms) + " without shaping"
		}
		return "work without shaping"
	}
	text := "continue in this way"
	if r.Every {
		text += " on every " + strings.ToLower(s.Word())
	}
	if !r.Step.Set() {
		if r.Times.Set() {
			text += s.timesMore(r)
		}
		if text += s.shown(r.Shown) + s.endingRound(r.End); r.Change != nil {
			text += ", " + s.Advice(r.Change.Text)
		}
		return text
	}
	by := r.Step
	word, between := "more", "increases"
	if by.For(0) < 0 {
		word, between = "fewer", "decreases"
		by.Values = append([]int(nil), by.Values...)
		for i := range by.Values {
			by.Values[i] = -by.Values[i]
		}
	}
	st := "st"
	if !s.one(by) {
		st = "sts"
	}
	return text + ", working " + s.Num(by) + " " + word + " " + st + " between " + between
}

// timesMore is " 3 more times" behind the rounds that are repeated. After their
// numbers it is in words, or behind a comma, so that no two numbers meet.
func (s Style) timesMore(r *Ref) string {
	text := " " + s.moreTimes(r.Times)
	if n := s.Num(r.Times); len(r.Rounds) > 0 && text[1] >= '0' && text[1] <= '9' {
		for word, value := range numberWords {
			if strconv.Itoa(value) == n && value <= 12 {
				return " " + word + " more times"
			}
		}
		return "," + text
	}
	return text
}

// endingRound is ", ending with Row 3" or ", ending with a WS row".
func (s Style) endingRound(e Ending) string {
	switch {
	case e.Within:
		return ", ending last rep with " + s.Word() + " " + s.Num(e.Round)
	case e.Round.Set():
		return ", ending with " + s.Word() + " " + s.Num(e.Round)
	case e.Side == 1:
		return ", ending with a RS " + strings.ToLower(s.Word())
	case e.Side == 2:
		return ", ending with a WS " + strings.ToLower(s.Word())
	}
	return ""
}

// Numbers is "Rnd 3", "Rnds 3 and 4", "Rows 2-5".
func (s Style) Numbers(l []Range) string {
	var parts []string
	many := len(l) > 1
	for _, r := range l {
		if s.Size < 0 && len(r.From.Values) > 1 && len(r.To.Values) > 1 && !r.ToEnd && s.Num(r.From) != s.Num(r.To) {
			// 8-13 (10-16, 11-18)
			runs := make([]string, len(r.From.Values))
			for i := range runs {
				runs[i] = fmt.Sprintf("%d-%d", r.From.For(i), r.To.For(i))
			}
			parts, many = append(parts, runs[0]+" ("+strings.Join(runs[1:], ", ")+")"), true
			continue
		}
		from, to := s.Num(r.From), s.Num(r.To)
		if s.Size >= 0 && !r.ToEnd && r.To.For(s.Size) < r.From.For(s.Size) {
			continue // none in this size
		}
		switch {
		case r.ToEnd:
			parts, many = append(parts, from+"-end"), true
		case from == to:
			parts = append(parts, from)
		default:
			parts, many = append(parts, from+"-"+to), true
		}
	}
	word := s.Word()
	if many {
		word += "s"
	}
	text := strings.Join(parts, ", ")
	if n := len(parts); n > 1 {
		text = strings.Join(parts[:n-1], ", ") + " and " + parts[n-1]
	}
	return word + " " + text
}

func (s Style) until(u *Until) string {
	end := s.endingRound(u.End)
	rows := ""
	if u.Open {
		return s.Advice(u.Text) + end
	}
	switch word := strings.ToLower(s.Word()); {
	case u.Repeats:
		rows = " (" + s.Num(u.Rows) + " times more)"
	case len(u.Length) > 0 && u.More:
		rows = " (" + s.Num(u.Rows) + " more " + word + "s)"
	case len(u.Length) > 0 && u.Rows.Set():
		rows = " (" + s.Num(u.Rows) + " " + word + "s)"
	case u.More:
		return "for " + s.Num(u.Rows) + " more " + word + "s" + end + apart(u.Apart)
	case u.UpTo:
		return "until you reach " + s.Word() + " " + s.Num(u.Rows) + end
	case u.Numbered:
		return "until " + s.Word() + " " + s.Num(u.Rows) + " is complete" + end
	case u.Rows.Set():
		return "until " + s.Num(u.Rows) + " " + word + "s are complete" + end
	case u.Stitches.Set():
		return "until " + s.Num(u.Stitches) + " sts remain" + end
	}
	unit, per := "cm", 10.0
	if inches(u.Length) {
		unit, per = "in", 25.4
	}
	l := make([]string, len(u.Length))
	for i, v := range u.Length {
		l[i] = strconv.FormatFloat(math.Round(1000*v/per)/1000, 'f', -1, 64)
	}
	text := l[0]
	switch {
	case s.Size >= 0 && len(l) > 1:
		text = l[min(s.Size, len(l)-1)]
	case len(l) > 1:
		text += " (" + strings.Join(l[1:], ", ") + ")"
	}
	if u.Added {
		return "for " + text + " " + unit + end
	}
	piece := "piece"
	if u.Whole {
		piece = "whole piece"
	}
	return fmt.Sprintf("until %s measures %s %s%s%s", piece, text, unit, end, rows)
}

// inches reports whether lengths were given in inches: in eighths of them, and
// not in whole or half centimetres.
func inches(l []float64) bool {
	whole := func(v float64) bool { return math.Abs(v-math.Round(v)) < 1e-6 }
	metric := true
	for _, v := range l {
		if !whole(v / 25.4 * 8) {
			return false
		}
		metric = metric && whole(v/5)
	}
	return !metric
}

// apart is what is said of rounds that have no numbers of their own.
func apart(is bool) string {
	if is {
		return ", without numbering them"
	}
	return ""
}
