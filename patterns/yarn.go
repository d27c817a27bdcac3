package patterns

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"

	"gopkg.in/yaml.v3"

	"whorl/patterns/fault"
)

// Yarn is what the piece is made of. Every field may be empty.
type Yarn struct {
	Name, Weight, Colour, Fibre, Ball, Length string
	// Words is the whole of it when the file gives it as one line of words.
	Words string
	// BallWeight and BallLength are a ball's, as far as Ball and Length say.
	BallWeight, BallLength Amount
	// Swatch and Sample are what was weighed to know how much it takes: at most
	// one of the two, and nil for nothing.
	Swatch *Swatch
	Sample *WeighedSize
}

// Amount is a weight or a length of yarn; the zero Amount is none.
type Amount struct {
	Value float64
	Unit  string // "g", "oz", "m" or "yd"
}

// Swatch is a swatch and what was used for it.
type Swatch struct {
	fault.Pos
	Of            string  // its sides as written: "15 × 15 cm"
	Width, Height float64 // millimetres
	Used          Amount
}

// WeighedSize is what was used for the whole of one size.
type WeighedSize struct {
	fault.Pos
	Size int // index into the sizes
	Used Amount
}

// The international yard and pound agreement, 1959 (values from memory).
const (
	gramsInOunce = 28.349523125
	metresInYard = 0.9144
)

// Grams is a weight in grams, 0 for a length.
func (a Amount) Grams() float64 {
	switch a.Unit {
	case "g":
		return a.Value
	case "oz":
		return a.Value * gramsInOunce
	}
	return 0
}

// Metres is a length in metres, 0 for a weight.
func (a Amount) Metres() float64 {
	switch a.Unit {
	case "m":
		return a.Value
	case "yd":
		return a.Value * metresInYard
	}
	return 0
}

// String is the amount as it is written: "86 g", "3.5 oz", "" for none.
func (a Amount) String() string {
	if a.Unit == "" {
		return ""
	}
	return strconv.FormatFloat(a.Value, 'f', -1, 64) + " " + a.Unit
}

var yarnKeys = keys{"name", "weight", "colour|color", "fibre|fiber", "ball", "length", "swatch", "sample"}

// yarns reads the yarn, or a list of several: each is a set of facts, or a line
// of words.
func (r *reader) yarns(e entry) []Yarn {
	if !e.given() {
		return nil
	}
	if e.value.Kind != yaml.SequenceNode {
		return []Yarn{r.yarn(e)}
	}
	var list []Yarn
	for _, n := range e.value.Content {
		list = append(list, r.yarn(entry{key: e.key, value: n}))
	}
	return list
}

// yarn reads one yarn's facts, or a line of words about it.
func (r *reader) yarn(e entry) Yarn {
	if e.value.Kind == yaml.SequenceNode {
		r.wrongType(e, "words or a set of keys", "Write it as words, or as {weight: 4, colour: Grey, ball: 100 g, length: 200 m}.")
		return Yarn{}
	}
	if e.value.Kind != yaml.MappingNode {
		return Yarn{Words: r.str(e)}
	}
	m := r.mapping(e.value, "yarn", yarnKeys)
	y := Yarn{
		Name: r.str(m["name"]), Weight: r.str(m["weight"]), Colour: r.str(m["colour"]),
		Fibre: r.str(m["fibre"]), Ball: r.str(m["ball"]), Length: r.str(m["length"]),
	}
	r.ball(&y, m)
	if m["swatch"].given() {
		y.Swatch = r.swatch(m["swatch"])
	}
	if m["sample"].given() {
		y.Sample = r.sample(m["sample"])
	}
	if m["swatch"].given() && m["sample"].given() {
		r.at(m["swatch"].key, codeYarn, "both a swatch and a sample were weighed", "Keep the sample: it tells more.")
	}
	return y
}

// ball reads how heavy and how long a ball is. Any words will do, until it
// must be known how many balls are needed.
func (r *reader) ball(y *Yarn, m map[string]entry) {
	y.BallWeight, y.BallLength = firstAmount(y.Ball), firstAmount(y.Length)
	if !m["swatch"].given() && !m["sample"].given() {
		return
	}
	if y.Ball != "" && !(y.BallWeight.Grams() > 0) {
		r.at(m["ball"].value, codeYarn, fmt.Sprintf("%s is not the weight of a ball", quote(y.Ball)), "Write it with its unit, as 100 g or 3.5 oz.")
	}
	if y.Length != "" && !(y.BallLength.Metres() > 0) {
		r.at(m["length"].value, codeYarn, fmt.Sprintf("%s is not the length of a ball", quote(y.Length)), "Write it with its unit, as 170 m or 186 yd.")
	}
}

var (
	// amountWords is an amount of yarn, and weighs what may stand before it.
	amountWords = regexp.MustCompile(`(?i)(\d*\.?\d+|\d*\s*[½¼¾])\s*(g|grams?|grammes?|gms?|oz|ounces?|m|met(?:er|re)s?|yds?|yards?)\b\.?`)
	weighs      = regexp.MustCompile(`(?i)\s*(=|:|–|—|\bweighs|\bweighed|\btakes|\btook|\bused|\buses)?\s*$`)
)

// amount is what a match of amountWords in text says.
func amount(text string, match []int) Amount {
	figures := []rune(text[match[2]:match[3]])
	a := Amount{Unit: strings.ToLower(text[match[4]:match[5]])}
	if f := vulgar[figures[len(figures)-1]]; f > 0 {
		a.Value, figures = f, figures[:len(figures)-1]
	}
	whole, _ := strconv.ParseFloat(strings.TrimSpace(string(figures)), 64) // the pattern lets only numbers pass
	a.Value += whole
	switch a.Unit[0] {
	case 'g':
		a.Unit = "g"
	case 'o':
		a.Unit = "oz"
	case 'm':
		a.Unit = "m"
	default:
		a.Unit = "yd"
	}
	return a
}

// firstAmount is the first amount in words, such as those about a ball: "100 g
// hank"; none where there is none, or none that a ball can be.
func firstAmount(words string) Amount {
	m := amountWords.FindStringSubmatchIndex(words)
	if m == nil || decimalComma(words) {
		return Amount{}
	}
	if a := amount(words, m); a.Grams() <= maxGrams && a.Metres() <= maxMetres {
		return a
	}
	return Amount{}
}

// The most that a piece can take: a blanket in rope, a blanket in thread.
const (
	maxGrams  = 20_000
	maxMetres = 50_000
)

// used divides "15 × 15 cm = 9 g" into what was weighed and what it took; false
// with a fault where it cannot be.
func (r *reader) used(e entry, help string) (of string, a Amount, ok bool) {
	s := r.str(e)
	if s == "" {
		return "", Amount{}, false // reported
	}
	if decimalComma(s) {
		help = "Write decimals with a point: 8.5 g."
	}
	all := amountWords.FindAllStringSubmatchIndex(s, -1)
	if len(all) == 0 || all[len(all)-1][1] != len(s) || decimalComma(s) {
		r.at(e.value, codeYarn, fmt.Sprintf("%s does not end with a weight or a length of yarn", quote(s)), help)
		return "", Amount{}, false
	}
	m := all[len(all)-1]
	of, a = s[:m[0]], amount(s, m)
	if strings.HasSuffix(of, "-") || strings.HasSuffix(of, "−") || !(a.Value > 0) || a.Grams() > maxGrams || a.Metres() > maxMetres {
		r.at(e.value, codeYarn, fmt.Sprintf("%s cannot be what was used", quote(s)), "Check the number and its unit.")
		return "", Amount{}, false
	}
	return strings.TrimSpace(weighs.ReplaceAllString(of, "")), a, true
}

const swatchHelp = "Write it with both sides of the swatch, as 15 × 15 cm = 9 g."

// What a square metre of crochet can take: cobweb lace, and rope.
const (
	leastGrams, mostGrams   = 10, 10_000
	leastMetres, mostMetres = 100, 50_000
)

// swatch reads "15 × 15 cm = 9 g".
func (r *reader) swatch(e entry) *Swatch {
	of, used, ok := r.used(e, swatchHelp)
	if !ok {
		return nil
	}
	if !strings.ContainsAny(of, "xX×") {
		r.at(e.value, codeYarn, fmt.Sprintf("%s does not say how wide and how high the swatch is", quote(r.str(e))), swatchHelp)
		return nil
	}
	side, bad := readSwatch(of)
	if bad != nil {
		r.at(e.value, codeYarn, bad.message, swatchHelp)
		return nil
	}
	area := side.wide * side.high / 1e6 // square metres
	g, m := used.Grams()/area, used.Metres()/area
	if g > 0 && (g < leastGrams || g > mostGrams) || m > 0 && (m < leastMetres || m > mostMetres) {
		r.at(e.value, codeYarn, fmt.Sprintf("a swatch of %s cannot take %s of yarn", of, used), "Check the numbers and their units.")
		return nil
	}
	return &Swatch{Pos: pos(e.value), Of: of, Width: side.wide, Height: side.high, Used: used}
}

// sample reads "Adult = 86 g", or "86 g" where there is one size.
func (r *reader) sample(e entry) *WeighedSize {
	const help = "Write it with the size that was weighed, as Adult = 86 g."
	of, used, ok := r.used(e, help)
	if !ok {
		return nil
	}
	s := &WeighedSize{Pos: pos(e.value), Used: used}
	if of = strings.TrimPrefix(strings.TrimPrefix(of, "Size "), "size "); of == "" {
		if len(r.p.Sizes) > 1 {
			r.at(e.value, codeYarn, "it is not said which size was weighed", fmt.Sprintf("%s The sizes are %s.", help, listed(r.p.Sizes)))
			return nil
		}
		return s
	}
	if s.Size, ok = r.size(of, pos(e.value)); !ok {
		return nil
	}
	return s
}

var (
	makes = regexp.MustCompile(`(?i)\bmake (\d+|two|three|four|five|six)(?:\s+(?:alike|pieces))?\s*(?:[).:,;]|$)`)
	many  = map[string]int{"two": 2, "three": 3, "four": 4, "five": 5, "six": 6}
)

// Pieces is how many of part i are made: 2 for "Ear (make 2)", or where its
// words say so on a line; else 1.
func (p *Pattern) Pieces(i int) int {
	q := &p.Parts[i]
	words := append([]string{q.Name}, q.Text.Lines...)
	if len(p.Parts) == 1 {
		words = append(words, p.Notes)
	}
	for _, w := range words {
		m := makes.FindStringSubmatch(w)
		if m == nil {
			continue
		}
		n, err := strconv.Atoi(m[1])
		if err != nil {
			n = many[strings.ToLower(m[1])]
		}
		return min(max(n, 1), maxParts)
	}
	return 1
}
