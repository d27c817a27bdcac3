package symbols

import "whorl/patterns/stitch"

// Symbol is a kind of stitch and the part of the fabric it is worked into: what
// one entry of a key or of the symbol sheet shows.
type Symbol struct {
	Kind stitch.Kind
	Into stitch.Into
}

// All is every symbol known, in reading order: the plain stitches by height,
// their manners, loops and posts, then what is worked together, bundled or
// looped. Shapes of several legs are shown in the usual numbers; [Draw] takes
// any.
func All() []Symbol {
	var all []Symbol
	add := func(in stitch.Into, ks ...stitch.Kind) {
		for _, k := range ks {
			all = append(all, Symbol{k, in})
		}
	}
	each := func(bs ...stitch.Base) (ks []stitch.Kind) {
		for _, b := range bs {
			ks = append(ks, stitch.Of(b))
		}
		return ks
	}
	with := func(m stitch.Manner, bs ...stitch.Base) (ks []stitch.Kind) {
		for _, b := range bs {
			ks = append(ks, stitch.Kind{Base: b, Manner: m})
		}
		return ks
	}
	legs := func(shape stitch.Shape, b stitch.Base, ns ...int) (ks []stitch.Kind) {
		for _, n := range ns {
			ks = append(ks, stitch.Kind{Base: b, Shape: shape, Legs: n})
		}
		return ks
	}

	add(stitch.Top, each(stitch.Chain, stitch.Slip, stitch.Single, stitch.Half, stitch.Double,
		stitch.Treble, stitch.DoubleTreble, stitch.TripleTreble)...)
	add(stitch.Top, with(stitch.Extended, stitch.Single, stitch.Half, stitch.Double, stitch.Treble)...)
	add(stitch.Top, with(stitch.Reverse, stitch.Single)...)
	add(stitch.Top, with(stitch.Spike, stitch.Single, stitch.Half, stitch.Double)...)
	add(stitch.Top, with(stitch.Foundation, stitch.Single, stitch.Half, stitch.Double)...)
	for _, in := range []stitch.Into{stitch.FrontLoop, stitch.BackLoop} {
		add(in, each(stitch.Slip, stitch.Single, stitch.Half, stitch.Double, stitch.Treble, stitch.DoubleTreble, stitch.TripleTreble)...)
	}
	for _, in := range []stitch.Into{stitch.FrontPost, stitch.BackPost} {
		add(in, each(stitch.Single, stitch.Half, stitch.Double, stitch.Treble, stitch.DoubleTreble, stitch.TripleTreble)...)
	}
	for _, b := range []stitch.Base{stitch.Single, stitch.Half, stitch.Double} {
		add(stitch.Top, legs(stitch.Together, b, 2, 3, 4, 5)...)
	}
	add(stitch.Top, stitch.Kind{Base: stitch.Single, Shape: stitch.Together, Manner: stitch.Invisible, Legs: 2})
	add(stitch.Top, legs(stitch.Together, stitch.Treble, 2, 3, 4, 5)...)
	add(stitch.Top, legs(stitch.Together, stitch.DoubleTreble, 2, 3)...)
	add(stitch.Top, legs(stitch.Cluster, stitch.Half, 2, 3)...)
	add(stitch.Top, legs(stitch.Cluster, stitch.Double, 2, 3, 4, 5)...)
	add(stitch.Top, legs(stitch.Cluster, stitch.Treble, 2, 3)...)
	add(stitch.Top, legs(stitch.Puff, stitch.Half, 3, 4, 5)...)
	add(stitch.Top, legs(stitch.Bobble, stitch.Double, 3, 4, 5)...)
	add(stitch.Top, legs(stitch.Popcorn, stitch.Double, 3, 4, 5)...)
	add(stitch.Top, legs(stitch.Picot, stitch.Chain, 3, 4, 5)...)
	return all
}
