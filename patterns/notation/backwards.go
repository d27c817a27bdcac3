package notation

import (
	"regexp"

	"whorl/patterns/stitch"
)

// toTheRight is advice that a round is worked backwards: "working from left to right". For a
// left-handed maker it says how every round goes.
var toTheRight = regexp.MustCompile(`(?i)\b(from (the )?left to (the )?right|work(ing|ed)? (left to right|backwards|in reverse))\b`)

// leftHanded is said beside such advice where it is for left-handed makers.
var leftHanded = regexp.MustCompile(`(?i)\b(left[- ]hand(ed|ers?)?|lefties|chart)\b`)

// backwards makes the single crochet of a round that is worked from left to right reverse ones.
func (r *Round) backwards() {
	for _, it := range r.Items {
		if n, ok := it.(*Note); ok && toTheRight.MatchString(n.Text) && !leftHanded.MatchString(n.Text) {
			reversed(r.Items)
			return
		}
	}
}

func reversed(items []Item) {
	for _, it := range items {
		switch it := it.(type) {
		case *Stitches:
			if it.What.Kind == stitch.Of(stitch.Single) {
				it.What.Kind.Manner |= stitch.Reverse
			}
		case *Repeat:
			reversed(it.Items)
			reversed(it.Ending)
		case *Group:
			reversed(it.Items)
		}
	}
}

// closedAs makes a bundle of the stitches before it: "4 tr in same st, closed as a popcorn".
func (b *block) closedAs() bool {
	p := b.p
	start := p.i
	if !p.defining || len(b.items) == 0 || !p.eat("closed", "close", "closing", "gathered", "gather", "joined", "finished", "drawn", "pulled", "made", "worked") {
		return false
	}
	p.eat("together", "tog")
	p.eat("as", "into", "to", "like")
	p.eat("form", "make")
	p.eat("for", "in")
	p.eat("a", "an", "one")
	w, ok := p.what()
	if !ok && p.eat("cluster", "cl") {
		w.Kind.Shape, ok = stitch.Cluster, true
	}
	s, made := b.items[len(b.items)-1].(*Stitches)
	if !ok || !made || !p.ended() || s.N.For(0) < 2 || len(s.N.Values) != 1 || s.Times.Set() || s.What.Kind.Shape != stitch.Plain || s.N.For(0) > MaxLegs {
		p.i = start
		return false
	}
	switch w.Kind.Shape {
	case stitch.Popcorn, stitch.Cluster, stitch.Bobble:
	default:
		p.i = start
		return false
	}
	s.What.Kind.Shape, s.What.Kind.Legs, s.N = w.Kind.Shape, s.N.For(0), Num{}
	return true
}

// backAlong passes over "back", "back to the edge" behind the chains of a tie, which are worked back along.
func (p *parser) backAlong() bool {
	start := p.i
	if !p.eat("back") {
		return false
	}
	if p.tok().is("to", "along", "down", "towards", "toward") {
		for n := 0; n < 5 && p.tok().kind == tWord && !p.tok().is("and", "then"); n++ {
			p.i++
		}
	}
	if p.ended() || p.tok().kind == tStop {
		return true
	}
	p.i = start
	return false
}
