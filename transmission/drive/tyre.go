package drive

import (
	"math"
	"strconv"
	"strings"

	"example.com/benchbook/refdata"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

// TyreKind is how a tyre's code is to be read.
type TyreKind uint8

// The kinds.
const (
	ImperialStandard TyreKind = iota + 1 // 3.25-19: section as high as it is wide
	ImperialLow                          // 4.10-18, 4.25/85-18: section lower than wide, 90 % unless marked
	MetricTyre                           // 120/90-18: width in mm, height in per cent of it
	BeadedEdge                           // 26x2.5, 700x80: outside diameter by width, in inches or millimetres
)

// String names the kind.
func (k TyreKind) String() string {
	switch k {
	case ImperialStandard:
		return "imperial standard"
	case ImperialLow:
		return "imperial low section"
	case MetricTyre:
		return "metric"
	case BeadedEdge:
		return "beaded edge"
	}
	return "no tyre"
}

// MarshalText returns the words of String.
func (k TyreKind) MarshalText() ([]byte, error) { return []byte(k.String()), nil }

// Tyre is a tyre by its size code. It is comparable; the zero value is no tyre.
type Tyre struct {
	code               string
	kind               TyreKind
	marked             bool    // aspect is in the code
	width, aspect, rim float64 // mm, ratio, mm
	diameter           float64 // mm, nominal
}

// widest and its like bound what is read as a motorcycle tyre.
const (
	leastWidth, mostWidth   = 1.5, 8.0     // in
	leastMetric, mostMetric = 40.0, 360.0  // mm
	leastRim, mostRim       = 8.0, 30.0    // in
	leastBead, mostBead     = 400.0, 900.0 // mm outside
)

// ParseTyre reads a motorcycle tyre's size as moulded on its wall:
//
//	3.25-19  3.25 x 19  3.50S18     imperial, section as high as wide
//	4.10-18  4.25/85-18             imperial low section: 90 %, or as marked
//	120/90-18  120/90 R 18  90/90H21  metric
//	26x2.5  26 x 2½  26 x 2 1/2     beaded edge: outside diameter by width, inches
//	700x80  650 x 65                the same in millimetres (from memory)
//
// A dash, x or letters (construction, speed) may part width and rim; what
// follows the size (load and speed symbols, ply, M/C, TT, TL) is passed over. An
// imperial width that is a whole number of quarter inches is taken as the
// standard section and any other as low section (sidewall markings as a tyre
// maker explains them: old imperial 100 %, low section 90 %; the split by
// quarters is common practice). Widths by letters, such as MT90, are not read: no
// source for their table was at hand. Errors: [fault.BadForm] or [fault.OutOfRange],
// the value being the text.
func ParseTyre(s string) (Tyre, error) {
	text := strings.TrimSpace(s)
	bad := func(rule string) (Tyre, error) {
		return Tyre{}, fault.Fault{Code: fault.BadForm, Path: "tyre", Value: s, Rule: rule}
	}
	if len(text) > 40 {
		return bad("too long for a tyre size")
	}
	sc := tyreScanner{rest: strings.NewReplacer("×", "x", "X", "x", "–", "-", "¼", " 1/4", "½", " 1/2", "¾", " 3/4").Replace(text)}
	first, ok := sc.figure()
	if !ok {
		if text != "" && (text[0] == 'M' || text[0] == 'm') {
			return bad("a width by letters is not read; measure it, or give the size it stands for as 130/90-16 or 5.00-16")
		}
		return bad("begin with the width: 3.25-19, 120/90-18, 26x2.5 or 700x80")
	}
	t := Tyre{code: text, aspect: 1, kind: ImperialStandard}
	if sc.skip('/') {
		a, ok := sc.figure()
		if !ok {
			return bad("a slash must be followed by the height in per cent: 120/90-18")
		}
		t.aspect, t.marked = a/100, true
	}
	by := sc.parting()
	second, ok := sc.figure()
	if by == "" || !ok || !sc.tail() {
		return bad("width and rim are parted by a dash or a letter: 3.25-19, 120/90-18")
	}
	switch {
	case by == "x" && !t.marked && first >= 20 && second < leastRim:
		t.kind, t.width, t.diameter = BeadedEdge, inches(second), inches(first)
		t.rim = t.diameter - 2*t.width
	case by == "x" && !t.marked && first >= leastBead && first <= mostBead && second >= leastMetric:
		t.kind, t.width, t.diameter = BeadedEdge, second, first
		t.rim = t.diameter - 2*t.width
	case t.marked && first >= leastMetric:
		t.kind, t.width, t.rim = MetricTyre, first, inches(second)
	case t.marked:
		t.kind, t.width, t.rim = ImperialLow, inches(first), inches(second)
	default:
		t.width, t.rim = inches(first), inches(second)
		if q := 4 * first; q != math.Trunc(q) {
			t.kind, t.aspect = ImperialLow, 0.9
		}
	}
	return t.checked(s)
}

// inches gives millimetres, of a limit as of what is held against it: the same
// product, rounded alike.
func inches(x float64) float64 { return 25.4 * x }

func (t Tyre) checked(s string) (Tyre, error) {
	out := func(rule string) (Tyre, error) {
		return Tyre{}, fault.Fault{Code: fault.OutOfRange, Path: "tyre", Value: s, Rule: rule}
	}
	low, high, say := inches(leastWidth), inches(mostWidth), "width must be 1.5 to 8 in"
	if t.kind == MetricTyre {
		low, high, say = leastMetric, mostMetric, "width must be 40 to 360 mm"
	}
	switch {
	case !(t.width >= low && t.width <= high):
		return out(say)
	case !(t.aspect >= 0.3 && t.aspect <= 1.2):
		return out("height must be 30 to 120 % of the width")
	case !(t.rim >= inches(leastRim) && t.rim <= inches(mostRim)):
		return out("rim must be 8 to 30 in")
	}
	if t.kind != BeadedEdge {
		t.diameter = t.rim + 2*t.width*t.aspect
	}
	return t, nil
}

// tyreScanner takes a size apart from the left.
type tyreScanner struct{ rest string }

func (c *tyreScanner) spaces() { c.rest = strings.TrimLeft(c.rest, " \t") }

func (c *tyreScanner) skip(b byte) bool {
	c.spaces()
	if c.rest != "" && c.rest[0] == b {
		c.rest = c.rest[1:]
		return true
	}
	return false
}

// figure reads 3.25, 18, or 2 1/2.
func (c *tyreScanner) figure() (float64, bool) {
	c.spaces()
	x, ok := c.decimal()
	if !ok {
		return 0, false
	}
	save := c.rest
	c.spaces() // after a space a fraction may follow
	if num, ok := c.decimal(); ok && c.skip('/') {
		den, ok := c.decimal()
		if ok && num < den && den <= 16 && num == math.Trunc(num) && den == math.Trunc(den) && x == math.Trunc(x) {
			return x + num/den, true
		}
	}
	c.rest = save
	return x, true
}

func (c *tyreScanner) decimal() (float64, bool) {
	n := 0
	for n < len(c.rest) && (c.rest[n] >= '0' && c.rest[n] <= '9' || c.rest[n] == '.') {
		n++
	}
	x, err := strconv.ParseFloat(c.rest[:n], 64)
	if err != nil {
		return 0, false
	}
	c.rest = c.rest[n:]
	return x, true
}

// parting reads what stands between width and rim: a dash, an x, or up to three
// letters of speed and construction such as S, H, R, VB.
func (c *tyreScanner) parting() string {
	c.spaces()
	n := 0
	for n < len(c.rest) && n < 3 && (c.rest[n] >= 'A' && c.rest[n] <= 'Z') {
		n++
	}
	letters := c.rest[:n]
	c.rest = c.rest[n:]
	switch {
	case c.skip('-'):
		return "-"
	case letters == "" && c.skip('x'):
		return "x"
	}
	return letters
}

// tail passes over load and speed symbols and the like, and reports whether that
// is all that was left.
func (c *tyreScanner) tail() bool {
	for i := range len(c.rest) {
		b := c.rest[i]
		plain := b == ' ' || b == '/' || b == '(' || b == ')' || b == '-' || b >= '0' && b <= '9' || b >= 'A' && b <= 'Z' || b >= 'a' && b <= 'z'
		if !plain || i == 0 && b != ' ' && !(b >= 'A' && b <= 'Z') {
			return false
		}
	}
	return true
}

// Code returns the text it was read from.
func (t Tyre) Code() string { return t.code }

// Kind returns how the code was read.
func (t Tyre) Kind() TyreKind { return t.kind }

// Width returns the nominal width of the section.
func (t Tyre) Width() units.Length { return units.Millimetres(t.width) }

// Aspect returns height over width, and whether the code says so; if not, it is
// the kind's usual one.
func (t Tyre) Aspect() (ratio float64, marked bool) { return t.aspect, t.marked }

// Rim returns the nominal diameter of the rim. For beaded edge it is the outside
// diameter less twice the width.
func (t Tyre) Rim() units.Length { return units.Millimetres(t.rim) }

// Diameter returns the nominal outside diameter, rim + 2 × width × aspect
// (120/90-18 is 673.2 mm: a tyre maker's sidewall guide); for beaded edge the
// code's own.
func (t Tyre) Diameter() units.Length { return units.Millimetres(t.diameter) }

// String returns the code.
func (t Tyre) String() string {
	if t.kind == 0 {
		return "no tyre"
	}
	return t.code
}

// MarshalText returns the code.
func (t Tyre) MarshalText() ([]byte, error) { return []byte(t.code), nil }

// UnmarshalText reads a code, as [ParseTyre] does; empty text is no tyre.
func (t *Tyre) UnmarshalText(b []byte) error {
	if len(b) == 0 {
		*t = Tyre{}
		return nil
	}
	p, err := ParseTyre(string(b))
	if err == nil {
		*t = p
	}
	return err
}

// Rolling is what a tyre rolls in one turn of the wheel, reckoned from its code.
type Rolling struct {
	Tyre     string                         `json:"tyre"`
	Diameter units.Length                   `json:"diameter"` // nominal
	Reading  measure.Reading[units.Length]  `json:"reading"`  // 3.05 D with its standard uncertainty, 1.5 %: for [Line]
	Range    measure.Interval[units.Length] `json:"range"`    // 3.00 × 0.98 D to 3.10 × 1.02 D
	Unloaded units.Length                   `json:"unloaded"` // π D
	Basis    refdata.Basis                  `json:"basis"`
}

// What a tyre rolls on, over its nominal diameter. Published diameters with
// turns per mile give 3.045 to 3.052 for loaded radial tyres; the band for bias
// motorcycle tyres, and the 2 % by which tyres of one code differ, are from
// memory.
const (
	rollLow, rollUsual, rollHigh = 3.00, 3.05, 3.10
	codeSpread                   = 0.02
)

// Rolling returns what the tyre rolls in one turn as a range: 3.00 to 3.10 of a
// diameter that is within 2 % of the code's, and as a reading with both taken
// as even spreads. A roll-out is better: [RollOut]. Errors: no tyre.
func (t Tyre) Rolling() (Rolling, error) {
	if t.kind == 0 {
		return Rolling{}, fault.Fault{Code: fault.Missing, Path: "tyre", Rule: "read a size with ParseTyre"}
	}
	d := t.Diameter()
	// standard deviation of an even spread is its half width over √3
	rel := math.Hypot((rollHigh-rollLow)/2/rollUsual, codeSpread) / math.Sqrt(3)
	r := Rolling{
		Tyre: t.code, Diameter: d,
		Reading:  measure.Of(d.Times(rollUsual), d.Times(rollUsual*rel)),
		Range:    measure.Between(d.Times(rollLow*(1-codeSpread)), d.Times(rollHigh*(1+codeSpread))),
		Unloaded: d.Times(math.Pi),
	}
	r.Basis = refdata.Basis{
		Sources: []refdata.Source{
			{Title: "tyre sidewall markings as a tyre maker explains them", Clause: "imperial 100 %, imperial low section 90 %, metric as marked", Status: refdata.Published},
			{Title: "diameters with turns per mile of loaded radial tyres", Clause: "3.045 to 3.052 of the diameter", Status: refdata.Published},
		},
		Assumed: []refdata.Assumption{
			{What: "rolling circumference over diameter", Value: "3.05, from 3.00 to 3.10", Status: refdata.FromMemory},
			{What: "diameter against the code's", Value: "± 2 %", Status: refdata.FromMemory},
		},
		NotChecked: []refdata.Unchecked{{What: "what this tyre rolls", Why: "reckoned from its size", Settle: "mark tyre and floor, roll some turns with the rider up, measure the floor"}},
		Cautions:   []refdata.Caution{refdata.BrakesBeforeRoad},
	}
	if !t.marked && t.kind == ImperialLow {
		r.Basis.Assumed = append(r.Basis.Assumed, refdata.Assumption{What: "height of the section", Value: "90 % of its width", Status: refdata.Published})
	}
	return r, nil
}

// RollOut returns the rolling circumference from the distance rolled in a number
// of turns, rider up and tyre at its pressure: distance over turns, with the
// distance's uncertainty over turns. Errors: a distance not taken or not above
// zero, turns outside 1 to 10 000, an answer outside 0.5 to 5 m.
func RollOut(distance measure.Reading[units.Length], turns int) (measure.Reading[units.Length], error) {
	var l fault.List
	okD, okN := checkReading(&l, "distance", distance), within(&l, "turns", float64(turns), 1, 1e4)
	if okD && okN {
		if u := distance.Value().Metres() / float64(turns); u < 0.5 || u > 5 {
			l.Add(fault.Fault{Code: fault.OutOfRange, Path: "distance", Value: distance.Value().String(), Unit: "m", Rule: "must be 0.5 to 5 m a turn"})
		}
	}
	if err := l.Err(); err != nil {
		return measure.Reading[units.Length]{}, err
	}
	n := 1 / float64(turns)
	if distance.IsExact() {
		return measure.Exact(distance.Value().Times(n)), nil
	}
	r := measure.Of(distance.Value().Times(n), distance.U().Times(n))
	l.Under("distance", r.Err()) // an uncertainty so small that a part of it is none
	if err := l.Err(); err != nil {
		return measure.Reading[units.Length]{}, err
	}
	return r, nil
}
