package writeup

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"whorl/chart/scene"
	"whorl/chart/typeface"
)

// placed is a piece on a page.
type placed struct {
	*piece
	y float64
}

// state is how far a page has been filled, to go back to.
type state struct{ next, placed, waiting int }

// share shares the pieces out to pages: each as full as it can be without parting
// what belongs together. Pictures that find no room go to the top of the next
// page, in their order, and the text goes on.
func (s *setter) share() (pages []*scene.Scene) {
	rest := append(s.title(), s.pieces...)
	keepLines(rest)
	order := map[*piece]int{}
	for i, p := range rest {
		order[p] = i
		if p.alone != nil {
			order[p.alone] = i
		}
		if p.small != nil {
			order[p.small] = i
		}
	}
	var waiting []*piece
	marked := map[*piece]scene.Bookmark{}
	for len(rest) > 0 || len(waiting) > 0 {
		var page []placed
		page, rest, waiting = s.fill(rest, waiting)
		if len(page) == 1 && page[0].alone != nil {
			page[0].piece = page[0].alone
		}
		made := &scene.Scene{Width: s.width, Height: s.height, Title: s.d.Title, Author: s.d.Author, Paper: scene.RGB(0xffffff)}
		for _, p := range page {
			if p.draw != nil {
				p.draw(&made.Root, p.y)
			}
			if p.mark != nil {
				m := *p.mark
				m.Page, m.Y = len(pages), hundredth(p.y-2)
				marked[p.piece] = m
			}
		}
		pages = append(pages, made)
	}
	var l []*piece
	for p := range marked {
		l = append(l, p)
	}
	slices.SortFunc(l, func(a, b *piece) int { return order[a] - order[b] })
	for _, p := range l {
		s.marks = append(s.marks, marked[p])
	}
	return pages
}

// fill fills one page with what waits for it and then with the rest, and gives
// what is left of both.
func (s *setter) fill(rest, waiting []*piece) (page []placed, _, _ []*piece) {
	y, end := top, s.height-s.bottom()
	put := func(p *piece) bool {
		air := 0.0
		if n := len(page); n > 0 {
			air = math.Max(p.above, page[n-1].below)
		}
		if y+air+p.height > end+1e-6 && len(page) > 0 {
			return false
		}
		page = append(page, placed{p, y + air})
		y += air + p.height
		return true
	}
	for len(waiting) > 0 && put(waiting[0]) {
		waiting = waiting[1:]
	}
	carried := len(page)
	if len(waiting) == 0 && len(rest) > 0 && rest[0].head != nil {
		put(rest[0].head)
	}
	best := state{next: -1}
	i := 0
	for ; i < len(rest); i++ {
		p, free := rest[i], i == 0 || !rest[i-1].with
		if free && (i > 0 || carried > 0) {
			best = state{i, len(page), len(waiting)}
		}
		if p.floats && free && len(waiting) > 0 {
			waiting = append(waiting, p)
			continue
		}
		if put(p) || p.small != nil && len(waiting) == 0 && y-top < (end-top)/2 && put(p.small) {
			continue
		}
		if !p.floats || !free {
			break
		}
		waiting = append(waiting, p)
	}
	switch {
	case i == len(rest):
	case best.next >= 0:
		i, page, waiting = best.next, page[:best.placed], waiting[:best.waiting]
	}
	return page, rest[i:], waiting
}

// bottom is the height at the foot of a page that the text keeps clear of.
func (s *setter) bottom() float64 {
	return bottom + float64(max(len(s.foot)-1, 0))*footSize*lead
}

// footLines is how many lines of foot a page has at most.
const footLines = 2

// setFoot breaks the line at the foot, which leaves room for the number of the page.
func (s *setter) setFoot() {
	s.foot = typeface.Wrap(s.d.Foot, footSize, false, s.room-24)
	if len(s.foot) > footLines {
		s.foot = nil
	}
}

// endFoot sets at the end what is too long for the foot of a page.
func (s *setter) endFoot() {
	if s.foot != nil || s.d.Foot == "" {
		return
	}
	var l []*piece
	for _, t := range typeface.Wrap(s.d.Foot, noteSize, false, s.room) {
		l = append(l, &piece{height: noteSize * lead, draw: func(g *scene.Group, y float64) {
			write(g, t, side, y, noteSize, false, words)
		}})
	}
	s.addLines(l, headingAir, false)
}

// furnish sets what stands on every page: the foot, the number of the page, and
// from the second page on the title.
func (s *setter) furnish(page *scene.Scene, i, n int) {
	y := s.height - bottom + 8
	for k, t := range s.foot {
		write(&page.Root, t, side, y-float64(len(s.foot)-1-k)*footSize*lead, footSize, false, words)
	}
	page.Root.Add(&scene.Text{X: s.width - side, Y: baseline(y, footSize), Size: footSize, Align: scene.Right, Colour: words,
		String: fmt.Sprintf("%d of %d", i+1, n)})
	if i > 0 && s.d.Title != "" {
		write(&page.Root, shortened(s.d.Title, footSize, s.room), side, top-9, footSize, false, words)
	}
}

// shortened is a text cut to a length, with dots where something is left out.
func shortened(s string, size, room float64) string {
	lines := typeface.Wrap(s, size, false, room)
	if len(lines) < 2 {
		return s
	}
	lines = typeface.Wrap(s, size, false, room-3)
	return strings.TrimRight(lines[0], " ,;:–") + " …"
}
