package notation

// shades are the colours that yarns are called by; the words before them say which.
// Those that are a flower or a fruit as well are left out: "attach rose" sews one on.
var shades = []string{
	"white", "black", "red", "blue", "green", "yellow", "pink", "purple", "orange", "brown", "grey", "gray", "beige", "cream", "ivory", "ecru",
	"navy", "teal", "turquoise", "aqua", "lilac", "lavender", "violet", "mauve", "burgundy", "maroon", "magenta", "fuchsia", "coral", "gold",
	"silver", "tan", "taupe", "charcoal", "rust", "mustard", "khaki", "crimson", "scarlet", "indigo", "fawn", "turquoise",
}

var shaded = []string{"light", "dark", "pale", "bright", "deep", "medium", "mid", "soft", "off", "dusty", "baby", "royal", "sky", "hot", "forest", "olive",
	"lime", "mint", "sea", "navy", "rose", "duck", "egg", "antique", "very"}

// shade reads the colour that a yarn is called by: "pink", "light blue", "off-white yarn".
func (p *parser) shade() (string, bool) {
	start := p.i
	for n := 0; n < 2 && p.eat(shaded...); n++ {
		if p.tok().kind != tWord && p.tok().kind != tHyphen {
			p.i-- // "navy" by itself
			break
		}
		p.eatKind(tHyphen)
		if !p.tok().is(shades...) && !p.tok().is(shaded...) {
			p.i = start
		}
	}
	if !p.eat(shades...) {
		p.i = start
		return "", false
	}
	name := p.words(start)
	p.eat("yarn", "colour", "color", "wool", "cotton", "thread")
	return name, true
}

// yarnName reads the name that a maker gives a yarn, which begins with a capital letter:
// "Silt", "Sea Glass". What follows has to show that it is joined.
func (p *parser) yarnName() (string, bool) {
	start := p.i
	for n := 0; n < 3 && p.tok().kind == tWord && capital(p.tok().raw) && !p.stitchy(p.i, p.i+1); n++ {
		p.i++
	}
	t := p.tok()
	if p.i > start && (t.is("with", "in", "to", "at", "where") || t.kind == tComma || t.kind == tStop || t.kind == tNumber && p.beforeSeam(p.i) != nil) {
		return p.words(start), true
	}
	p.i = start
	return "", false
}
