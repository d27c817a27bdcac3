package notation

import (
	"regexp"

	"whorl/patterns/stitch"
)

// groupAhead reports whether "5-dc group" comes next, whose number is not how
// many.
func (p *parser) groupAhead() bool {
	at := p.i
	defer func() { p.i = at }()
	t, ok := p.target()
	return ok && (t.Sort == OfName || t.Sort == ChainSpace)
}

// targetAhead reports whether a kind of stitch or a space comes next.
func (p *parser) targetAhead() bool {
	at := p.i
	defer func() { p.i = at }()
	t, ok := p.target()
	return ok && (t.Sort == OfKind || t.Sort == ChainSpace || t.Sort == StartChain)
}

// targetOr reads a target into the place.
func (p *parser) targetOr(pl *Place) bool {
	t, ok := p.target()
	if ok {
		pl.Target = t
	}
	return ok
}

// lone reads "single dc", "lone tr": one that is in none of the groups of a round.
func (p *parser) lone() (Target, bool) {
	start := p.i
	if p.tok().is("single", "lone", "solitary", "separate") && !p.at(1).is("crochet", "crochets", "sc") {
		p.i++
		if t, ok := p.target(); ok && t.Sort == OfKind && t.Name == "" {
			t.Lone = true
			return t, true
		}
	}
	p.i = start
	return Target{}, false
}

// startChain reads "beg ch-3", "beginning ch", "turning ch", "tch", "ch-3".
func (p *parser) startChain() (Target, bool) {
	start := p.i
	named := p.eat("beg", "beginning", "turning", "starting", "first", "initial", "t")
	p.eatKind(tHyphen)
	t := Target{Sort: StartChain}
	if !named && p.eat("tch") {
		t.Text = p.words(start)
		return t, true
	}
	number, numbered := 0, false
	if p.tok().kind == tNumber && p.at(1).kind != tNumber {
		number, numbered = p.plainNumber()
		p.eatKind(tHyphen)
	}
	if !p.eat("ch", "chain", "chs", "chains") {
		p.i = start
		return Target{}, false
	}
	if !numbered {
		p.eatKind(tHyphen)
		if p.tok().kind == tNumber || numberWords[p.tok().text] > 0 {
			number, _ = p.plainNumber()
		}
	}
	if !named && number == 0 || p.spaceWord() {
		p.i = start
		return Target{}, false
	}
	t.Chains, t.Text = number, p.words(start)
	return t, true
}

// firstChain reads "first 3 ch" behind "top of": the chain that the round begins with, and
// not three chains.
func (p *parser) firstChain(pl *Place) bool {
	start := p.i
	t, ok := p.startChain()
	if !ok || t.Chains == 0 || !p.toks[start].is("first", "initial") {
		p.i = start
		return false
	}
	pl.Pick, pl.Target = First, t
	return true
}

// byNumber are the words of a chain by its number alone.
var byNumber = regexp.MustCompile(`(?i)^(ch(ain)?s?[ -]?\d+|\d+[ -]?ch(ain)?s?)$`)

// ByNumber reports whether a StartChain is told by its number alone, "ch-3": where something is
// passed over or left, that may be short for the space of it.
func (t *Target) ByNumber() bool {
	return t.Sort == StartChain && t.Chains > 0 && byNumber.MatchString(t.Text)
}

var inAll = regexp.MustCompile(`(?i)^\d+ ch(ain)? (sps|spaces|loops|lps|arches)$`)

// InAll reports whether spaces are told as "8 ch sps": behind "each of the", that may be eight
// chain spaces as well as those of eight chains.
func (t *Target) InAll() bool { return t.Sort == ChainSpace && inAll.MatchString(t.Text) }

// spaceWord reports whether the current token (after a hyphen) says space.
func (p *parser) spaceWord() bool {
	t := p.tok()
	if t.kind == tHyphen {
		t = p.at(1)
	}
	return t.is(spaceWords...)
}

// postStitch reads "front post stitch", "FP st", "raised st": a stitch worked round a
// post, whatever its kind.
func (p *parser) postStitch() (Target, bool) {
	start := p.i
	t := Target{Sort: OfKind, Name: Post}
	switch {
	case p.eat("front", "fp"):
		t.Loop = Loop{true, stitch.FrontPost}
	case p.eat("back", "bp"):
		t.Loop = Loop{true, stitch.BackPost}
	}
	named := p.at(-1).is("fp", "bp") && p.i > start
	p.eatKind(tHyphen)
	if !named && !p.eat("post", "raised") {
		p.i = start
		return Target{}, false
	}
	p.eatKind(tHyphen)
	if !p.eat("st", "sts", "stitch", "stitches") {
		p.i = start
		return Target{}, false
	}
	return t, true
}

// groupWords are what designers call several stitches in one place.
var groupWords = []string{"shell", "shells", "fan", "fans", "scallop", "scallops", "petal", "petals"}

// slung are what chains are called that go over stitches passed over: "28 sc in ch-24 handle".
var slung = []string{"handle", "handles", "strap", "straps", "underarm", "underarms", "buttonhole", "buttonholes", "eyelet", "eyelets"}

var spaceWords = []string{"sp", "sps", "space", "spaces", "loop", "loops", "lp", "lps", "arch", "arches", "arc", "arcs"}

// indicating are said of the place that the definition of a stitch leaves to the words it is named in.
var indicating = []string{"indicated", "designated", "stated", "given", "specified", "required", "named", "directed", "instructed", "desired", "chosen"}

// target reads what is worked into: st, dc, shell, ch-2 sp, ch, beg ch-3.
func (p *parser) target() (Target, bool) {
	start := p.i
	done := func(t Target) (Target, bool) {
		if t.Sort == ChainSpace {
			p.eat(indicating...)
		}
		t.Text = p.words(start)
		return t, true
	}
	if p.tok().is(indicating...) && (p.at(1).is(spaceWords...) || p.defining && p.at(1).is("ch", "chain")) {
		p.i++
	}
	if p.tok().is("forehead", "sleeve", "nape", "neck", "face", "brow", "heel", "toe", "cuff", "tip", "instep", "sole", "underarm", "armhole") && p.at(1).is("st", "sts", "stitch", "stitches") {
		p.i++ // "each of the 20 forehead stitches"
	}
	if p.tok().is("underarm", "armhole", "thumb") && p.at(1).is("ch", "chs", "chain", "chains") {
		p.i++ // "in each of the 4 underarm chs"
	}
	if t, ok := p.lone(); ok {
		return done(t)
	}
	if t, ok := p.freeLoops(); ok {
		return done(t)
	}
	if p.eitherPlace() {
		return done(Target{Sort: AnyStitch})
	}
	if t, ok := p.seamTarget(); ok {
		return t, true
	}
	p.whichCorner()
	corner := p.eat("corner", "corners")
	if t, ok := p.edgeLoop(); ok {
		return done(t)
	}
	if p.tok().is("beg", "beginning") {
		// "beg chain sp": the space that it makes
		at := p.i
		p.i++
		if p.eat("ch", "chain") {
			p.eatKind(tHyphen)
			p.plainNumber()
			p.eatKind(tHyphen)
			if p.eat(spaceWords...) {
				return done(Target{Sort: ChainSpace})
			}
		}
		p.i = at
	}
	// ch-2 sp, 2-ch sp, ch sp, corner sp
	at := p.i
	n, hasN := 0, false
	if numberWords[p.tok().text] > 0 && p.at(1).kind == tHyphen && p.at(2).is("ch", "chain") ||
		p.tok().kind == tNumber && (p.at(1).is("ch", "chain") || p.at(1).kind == tHyphen && p.at(2).is("ch", "chain")) {
		n, hasN = p.plainNumber()
		p.eatKind(tHyphen)
	} else if p.tok().kind == tNumber && len(p.sizes) > 1 && p.at(1).kind == tOpen {
		// "6 (7, 8)-ch loop": as many chains as the size has
		close := p.matching(p.i + 1)
		if close > 0 && p.toks[close+1].tight(tHyphen) && p.toks[close+2].is("ch", "chain") {
			num, _ := p.num()
			if n, hasN = num.For(0), true; len(num.Values) > 1 {
				n = 0
			}
			p.eatKind(tHyphen)
		}
	}
	if p.eat("ch", "chain", "chs", "chains") {
		mark := p.i
		if !hasN {
			p.eatKind(tHyphen)
			if p.tok().kind == tNumber || numberWords[p.tok().text] > 0 {
				num, _ := p.num()
				if n, hasN = num.For(0), true; len(num.Values) > 1 {
					n = 0 // ch-6 (6, 7) sp: as many chains as the size has
				}
			}
		}
		if hasN && p.sizesOfSpace(false) {
			n = 0 // ch-8 (ch-10) sp
		}
		p.eatKind(tHyphen)
		p.eatKind(tHyphen)
		if p.eat("corner", "corners") {
			corner = true
		}
		if p.eat(spaceWords...) || hasN && p.eat(slung...) {
			if hasN && p.sizesOfSpace(true) {
				n = 0 // ch-8 sp (ch-10 sp)
			}
			return done(Target{Sort: ChainSpace, Chains: n, AtCorner: corner && hasN})
		}
		if corner && hasN {
			return done(Target{Sort: ChainSpace, Chains: n, AtCorner: true})
		}
		if hasN {
			if p.i = at; true {
				if t, ok := p.startChain(); ok {
					return t, true
				}
			}
			p.i = start
			return Target{}, false
		}
		p.i = mark
		return done(Target{Sort: ChainStitch, Kind: stitch.Of(stitch.Chain)})
	}
	p.i = at
	if p.tok().is("handle", "button", "buttonhole", "hanging") && p.at(1).is(spaceWords...) {
		p.i++ // "handle loop"
	}
	gaps := p.tok().is("gap", "gaps") && p.at(1).is("between", "before", "after", "following") && !p.gapOfHole()
	if gaps || p.tok().is("sp", "sps", "space", "spaces", "arch", "arches", "loop", "loops", "lp", "lps") {
		p.i++
		p.lastGap = false
		if gap, ok := p.gapBeside(); ok {
			return done(gap)
		}
		if p.eat("between") {
			gap, pick, next, ok := p.between()
			if p.nextGap, p.lastGap, p.eachGap = next, pick == Last, pick == Each || p.toks[start].is("sps", "spaces", "gaps"); ok {
				return done(gap)
			}
			p.i = start
			return Target{}, false
		}
		if gaps {
			p.i = start
			return Target{}, false
		}
		if corner {
			return done(Target{Sort: ChainSpace, Name: Corner})
		}
		return done(Target{Sort: ChainSpace})
	}
	if corner {
		at := p.i
		if p.eat("st", "sts", "stitch", "stitches") {
			return done(Target{Sort: CornerStitch})
		}
		if w, ok := p.what(); ok && w.Kind.Is() {
			if p.eat("st", "sts"); p.at(-2).is("corner", "corners") || p.at(-1).is("st", "sts") || !p.tok().is("group", "groups", "shell", "shells") {
				return done(Target{Sort: CornerStitch, Kind: w.Kind})
			}
		}
		p.i = at
		return done(Target{Sort: ChainSpace, Name: Corner})
	}
	if p.tok().is("foundation", "starting", "base") && p.at(1).is("ch", "chs", "chain", "chains") {
		p.i += 2
		return done(Target{Sort: ChainStitch, Name: ChainEdge, Kind: stitch.Of(stitch.Chain)})
	}
	if t, ok := p.startChain(); ok {
		return t, true
	}
	if t, ok := p.postStitch(); ok {
		return done(t)
	}
	p.eat(indicating...)
	if p.eat("st", "sts", "stitch", "stitches", "place", "places") {
		if p.eat("space", "sp") {
			return done(Target{Sort: Gap})
		}
		if p.tok().is("or") && p.at(1).is("sp", "space", "ch") {
			p.i += 2
			p.eatKind(tHyphen)
			p.eat("sp", "space")
		}
		p.eat(indicating...)
		return done(Target{Sort: AnyStitch})
	}
	if n, ok := p.plainNumber(); ok {
		p.eatKind(tHyphen)
		if w, ok := p.what(); ok && w.Kind.Is() && (p.eatKind(tHyphen) || true) && (p.eat("group", "groups", "grp", "grps", "gp", "gps") || p.eat(groupWords...)) {
			return done(Target{Sort: OfName, Name: "", Kind: w.Kind, Chains: n})
		}
		if p.i = at + 1; p.at(-1).kind == tNumber && p.eatKind(tHyphen) && p.eat("st", "stitch") && p.eat("group", "groups", "cluster", "clusters") {
			return done(Target{Sort: OfName}) // "between 3-st groups"
		}
		p.i = at
	}
	if p.eat("pair", "pairs") {
		// "between pairs of tr"
		if p.eat("of") {
			if w, ok := p.what(); ok && w.Kind.Is() {
				return done(Target{Sort: OfName, Kind: w.Kind, Chains: 2})
			}
		} else if p.at(-2).kind == tNumber || numberWords[p.at(-2).text] > 0 || p.at(-2).is("between", "the", "of", "next") {
			return done(Target{Sort: OfName}) // "between the next two pairs"
		}
		p.i = start
	}
	if p.tok().is("gap", "gaps") && p.at(1).is("between") && !p.gapOfHole() {
		// "the gap between the next two pairs"
		p.i += 2
		gap, _, next, ok := p.between()
		if p.nextGap = next; ok && gap.Name != "" {
			return done(gap)
		}
		p.i = start
	}
	if p.tok().is("gap", "gaps") && (!p.at(1).is("between", "before", "of") || p.gapOfHole()) {
		p.i++
		p.whichGap()
		return done(Target{Sort: Gap, Name: Groups}) // between the groups of a granny square
	}
	set := p.tok().is("set", "sets") && p.at(1).is("of")
	if p.eat("group", "groups", "grp", "grps", "gp", "gps") || set && p.eat("set", "sets") {
		if at := p.i; p.eat("of") {
			// "any group of 5", "next group of 3 dc"
			if n, ok := p.plainNumber(); ok && n > 1 {
				w, _ := p.what()
				if w.Kind.Is() || p.ended() {
					return done(Target{Sort: OfName, Kind: w.Kind, Chains: n})
				}
			}
			p.i = at
		}
		if set {
			p.i = start
			return Target{}, false
		}
		return done(Target{Sort: OfName})
	}
	if p.vStitch() {
		return done(Target{Sort: OfName}) // "ch-1 sp of next V-st", when it is only written out
	}
	if name, ok := p.vAlone(); ok {
		return done(Target{Sort: OfName, Name: name})
	}
	if name, ok := p.ownNumbered(); ok {
		return done(Target{Sort: OfName, Name: name})
	}
	// "next shell", "last petal": several stitches in one place, when there is no
	// stitch of that name.
	if t := p.tok(); t.is(groupWords...) {
		if _, own := p.vocab.lookup(t.text); !own {
			p.i++
			return done(Target{Sort: OfName})
		}
	}
	// "next cl", "next cluster": any cluster, when none is defined.
	if t := p.tok(); t.is("cl", "cls", "cluster", "clusters") {
		if _, own := p.vocab.lookup(t.text); !own {
			p.i++
			return done(Target{Sort: OfShape, Kind: stitch.Kind{Shape: stitch.Cluster}})
		}
	}
	if w, ok := p.what(); ok {
		switch {
		case w.Kind.Shape == stitch.Puff || w.Kind.Shape == stitch.Picot && p.toks[at].is("picot", "picots") || w.Kind.Shape == stitch.Popcorn && !digit(rune(p.toks[at].text[0])) ||
			w.Kind.Shape == stitch.Bobble && !digit(rune(p.toks[at].text[0])):
			return done(Target{Sort: OfShape, Kind: w.Kind})
		case w.Name != "":
			return done(Target{Sort: OfName, Name: w.Name})
		case w.Kind.Is():
			p.eat("sts", "st")
			return done(Target{Sort: OfKind, Kind: w.Kind, Loop: w.Loop})
		case w.Shaping > 0:
			return done(Target{Sort: OfName, Name: "inc"})
		case w.Shaping < 0:
			return done(Target{Sort: OfName, Name: "dec"})
		}
	}
	p.i = start
	return Target{}, false
}

// loopWords are what a designer calls the long chain spaces of a mesh.
var loopWords = regexp.MustCompile(`(?i)^(loops?|lps?|arch(es)?)$`)

// IsLoop reports whether a target is a loop of a mesh, by that word alone: "loop", not "ch-3 loop".
func (t *Target) IsLoop() bool {
	return t.Sort == ChainSpace && t.Chains == 0 && t.Name == "" && loopWords.MatchString(t.Text)
}
