package notation

// starMarks are the marks of the repeats among the instructions: * for the
// first that is written with a star, ** for the next.
func (s Style) starMarks(items []Item) map[int]string {
	marks := map[int]string{}
	n := 0
	for i, it := range items {
		r, ok := it.(*Repeat)
		if !ok || !s.starred(r) {
			continue
		}
		if n++; n%2 == 0 && !stops(items) {
			marks[i] = "**"
		}
	}
	return marks
}

// stops reports whether a repeat among the instructions has a ** inside it.
func stops(items []Item) bool {
	for _, it := range items {
		if r, ok := it.(*Repeat); ok && (r.AtStop || stops(r.Items)) {
			return true
		}
	}
	return false
}

// starred reports whether a repeat is written with a star: one that goes on as
// far as it can, or whose last time differs. Others are written in brackets.
func (s Style) starred(r *Repeat) bool {
	return !s.star && s.deep == 0 && (r.Extent.Sort != NoExtent || r.More || r.AtStop || r.Omit > 0 || r.Ending != nil)
}

func (s Style) repeat(r *Repeat) string {
	total := r.Times
	if r.More {
		total = plus(r.Times, 1)
	}
	if r.Extent.Sort == NoExtent && s.none(total) {
		return ""
	}
	end := s.ending(r)
	inner := s
	inner.mark = ""
	if r.Extent.Sort == NoExtent && end == "" && s.is(total, 1) && !beginsWithChain(r.Items) {
		return inner.Items(r.Items)
	}
	if s.starred(r) {
		mark := s.mark
		if mark == "" {
			mark = "*"
		}
		inner.star = true
		text := mark + inner.Items(r.Items) + "; rep from " + mark + " "
		if r.Extent.Sort != NoExtent {
			return text + s.extent(&r.Extent) + end
		}
		return text + s.moreTimes(plus(total, -1)) + end
	}
	inner.deep++
	open, close := "[", "]"
	if s.deep%2 == 1 {
		open, close = "(", ")"
	}
	text := open + inner.Items(r.Items) + close + " "
	if r.Extent.Sort != NoExtent {
		return text + s.extent(&r.Extent) + end
	}
	return text + s.times(total) + end
}

// beginsWithChain reports whether a chain comes first: at the beginning of a
// round one outside brackets would be another thing.
func beginsWithChain(items []Item) bool {
	if len(items) == 0 {
		return false
	}
	_, ok := items[0].(*Chain)
	return ok
}

// ending is how the last repeat differs.
func (s Style) ending(r *Repeat) string {
	s.last = true
	switch {
	case r.AtStop:
		return ", ending last rep at **"
	case r.Omit > 0 && r.omitsGroup() != nil:
		return ", omitting last (" + s.Items(r.omitsGroup()) + ")"
	case r.Ending != nil && r.Omit > 0:
		return ", ending last rep with " + s.Items(r.Ending) + " instead of last " + s.bare(r.Items[len(r.Items)-1])
	case r.Ending != nil:
		return ", ending last rep with " + s.Items(r.Ending)
	case r.Omit > 0 && r.Omit <= len(r.Items):
		return ", omitting last " + s.omitted(r.Items[len(r.Items)-r.Omit])
	case r.FromJoin:
		return ", beginning in same place as joining"
	}
	return ""
}

// omitsGroup are the instructions of the group that the last repeat leaves out, nil where it
// leaves out a single one.
func (r *Repeat) omitsGroup() []Item {
	switch last := r.Items[len(r.Items)-1].(type) {
	case *Group:
		if r.Omit == 1 && r.Ending == nil {
			return last.Items
		}
	case *Repeat:
		if r.Omit == 1 {
			return last.Items
		}
	}
	if r.Omit > 1 && r.Omit <= len(r.Items) && r.Ending == nil {
		return r.Items[len(r.Items)-r.Omit:]
	}
	return nil
}

// bare is the stitch or chain of an instruction, without its place.
func (s Style) bare(it Item) string {
	switch it := it.(type) {
	case *Stitches:
		return s.what(&it.What)
	case *Chain:
		return "ch " + s.Num(it.N)
	case *Group:
		return "group"
	}
	return s.item(it)
}

// omitted is an instruction that is left out, with the number of its stitches where
// there are several.
func (s Style) omitted(it Item) string {
	st, ok := it.(*Stitches)
	if !ok || st.Times.Set() || len(st.Places) > 1 {
		return s.bare(it)
	}
	n := One(st.Span)
	if st.N.Set() {
		n = st.N
	}
	if len(st.Places) == 1 && st.Places[0].Pick == Next && st.Places[0].N.Set() {
		n = n.times(st.Places[0].N)
	}
	if onlyOne(n) {
		return s.bare(it)
	}
	return s.Num(n) + " " + s.bare(it)
}

// times is a number taken so many times, for each size.
func (n Num) times(m Num) Num {
	out := n
	out.Values = nil
	for i := range max(len(n.Values), len(m.Values)) {
		out.Values = append(out.Values, n.For(i)*m.For(i))
	}
	return out
}
