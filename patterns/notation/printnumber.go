package notation

import (
	"strconv"
	"strings"
)

// Num prints a number: of one size, or 60 (72, 78) for all. One that is the same
// in all sizes that are worked stands alone.
func (s Style) Num(n Num) string {
	if s.Size >= 0 || len(n.Values) < 2 {
		return strconv.Itoa(n.For(max(s.Size, 0)))
	}
	if v, ok := s.alike(n); ok {
		return strconv.Itoa(v)
	}
	l := make([]string, len(n.Values))
	for i, v := range n.Values {
		l[i] = strconv.Itoa(v)
		if s.Worked == nil && v == 0 || s.Worked != nil && !s.Worked[i] {
			l[i] = "-"
		}
	}
	return l[0] + " (" + strings.Join(l[1:], ", ") + ")"
}

// alike is the number that holds in every size that is worked.
func (s Style) alike(n Num) (value int, ok bool) {
	value = -1
	for i, v := range n.Values {
		switch {
		case s.Worked != nil && !s.Worked[i]:
		case value >= 0 && v != value:
			return 0, false
		default:
			value = v
		}
	}
	return value, value >= 0
}

// none reports whether a number is 0 wherever it is printed, so that what it
// counts is left out.
func (s Style) none(n Num) bool { return n.Set() && s.is(n, 0) }

// one reports whether a number is 1 wherever it is printed, or not written.
func (s Style) one(n Num) bool { return !n.Set() || s.is(n, 1) }

func (s Style) is(n Num, value int) bool {
	if s.Size >= 0 || len(n.Values) == 1 {
		return n.For(max(s.Size, 0)) == value
	}
	v, ok := s.alike(n)
	return ok && v == value
}

// times is "once", "twice", "6 times".
func (s Style) times(n Num) string {
	switch {
	case s.is(n, 1):
		return "once"
	case s.is(n, 2):
		return "twice"
	}
	return s.Num(n) + " times"
}

// moreTimes is "once more", "6 more times".
func (s Style) moreTimes(n Num) string {
	switch {
	case s.is(n, 1):
		return "once more"
	case s.is(n, 2):
		return "twice more"
	}
	return s.Num(n) + " more times"
}

// plus is a number with d added.
func plus(n Num, d int) Num {
	v := make([]int, len(n.Values))
	for i := range v {
		v[i] = n.Values[i] + d
	}
	return Num{n.Span, v}
}
