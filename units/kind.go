package units

import (
	"math"
	"strconv"
	"strings"

	"example.com/benchbook/units/fault"
)

//go:generate go run ./internal/gen

// kind is what the engine knows of one quantity type. The generated tables
// are its only values and nothing writes to them.
type kind struct {
	name         string
	shaft        string // the word its text must carry, or ""
	affine       bool   // its scale has a zero of its own
	example      string
	choices      string
	siNum, siDen float64 // stored = SI * siNum / siDen
	units        []unit
	index        func(symbol string) int // place in units, or -1: a switch, which is quicker than looking through
	prefer       []string                // symbols to print in, first that reads back exactly
	stored       string                  // symbol of the stored unit
	pairs        []string                // "ft>in": a second figure may follow
	ambiguous    []ambiguous
}

// unit is one way to write a unit: stored = (x + off) * num / den + post. Numerator
// and denominator stay apart so that n/64 in and its like round once.
type unit struct {
	symbol    string
	num, den  float64
	off, post float64 // of a scale with a zero of its own: the whole degrees are shifted before and after
	per       bool    // the other way up: stored = num / (den * x)
	printed   bool    // the symbol to print for this unit
	note      string  // what is said when it is used
}

type ambiguous struct{ symbol, choices string }

// FromSI returns the quantity whose value in coherent SI units is x: metres,
// radians, newtons, kelvins and so on.
func FromSI[Q Quantity](x float64) Q {
	var q Q
	k := q.kind()
	return Q(x * k.siNum / k.siDen)
}

// FromFigure returns the quantity whose value in its stored unit is x. It is
// the inverse of the Figure methods.
func FromFigure[Q Quantity](x float64) Q { return Q(x) }

// Parse reads a quantity of the wanted type. It is the generic form of
// ParseLength and its like.
func Parse[Q Quantity](s string) (Q, error) {
	var q Q
	v, _, err := parse(q.kind(), s)
	return Q(v), err
}

// ParseNoted is [Parse] that also says what it assumed, in words such as
// "lb read as pounds-force", or "" if the text needed no reading between the
// lines.
func ParseNoted[Q Quantity](s string) (Q, string, error) {
	var q Q
	v, note, err := parse(q.kind(), s)
	return Q(v), note, err
}

// MustParse is [Parse] for text fixed in a program; it panics on bad text.
func MustParse[Q Quantity](s string) Q {
	q, err := Parse[Q](s)
	if err != nil {
		panic(err)
	}
	return q
}

// Finite reports whether q is an ordinary number, neither infinite nor NaN.
func Finite[Q Quantity](q Q) bool {
	x := float64(q)
	return x-x == 0
}

// Name returns the name of q's type in words: "spring rate".
func Name[Q Quantity](q Q) string { return q.kind().name }

// Example returns text that reads as a Q: what to show beside an empty field.
func Example[Q Quantity](q Q) string { return q.kind().example }

// find returns the unit written as s, or nil.
func (k *kind) find(s string) *unit {
	if i := k.index(s); i >= 0 {
		return &k.units[i]
	}
	return nil
}

// loose finds a unit however its parts are joined or cut short: "lbf·ft", "N-m",
// "kg / m³", "ft.lb.", "r.p.m.".
func (k *kind) loose(s string) *unit {
	if strings.Contains(s, ".") { // abbreviated: "r.p.m.", "lb.", "cu. in."
		if u := k.loose(strings.ReplaceAll(s, ".", "")); u != nil {
			return u
		}
		return k.loose(strings.ReplaceAll(s, ".", " ")) // joined: "N.m", "ft.lb."
	}
	s = strings.NewReplacer("·", " ", "⋅", " ", "*", " ", "-", " ", " / ", "/").Replace(s)
	s = strings.Join(strings.Fields(s), " ")
	if u := k.find(s); u != nil {
		return u
	}
	for i := range k.units {
		if len(s) > 2 && strings.EqualFold(k.units[i].symbol, s) {
			return &k.units[i]
		}
	}
	return nil
}

// ulp is the spacing of float64 above one.
const ulp = 0x1p-52

// in prints v in the unit whose stored size is size.
func in(k *kind, v, size float64, decimals int) string {
	symbol, x := k.stored, v
	for i := range k.units {
		u := &k.units[i]
		// a constant is rounded once, the table's ratio twice or more
		if u.printed && !u.per && math.Abs(u.num/u.den-size) <= 4*ulp*math.Abs(size) {
			symbol, x = u.symbol, v*u.den/u.num
			break
		}
	}
	b := strconv.AppendFloat(nil, x, 'f', min(max(decimals, 0), 20), 64)
	return string(k.suffix(b, symbol))
}

// suffix appends a unit's symbol, spaced as the trade writes it.
func (k *kind) suffix(b []byte, symbol string) []byte {
	switch symbol {
	case "", "°", "'", "\"", "%":
	default:
		b = append(b, ' ')
	}
	b = append(b, symbol...)
	if k.shaft != "" {
		b = append(b, ' ')
		b = append(b, k.shaft...)
	}
	return b
}

// text appends v in the first preferred unit whose 15-digit text reads back to
// the same value, else in the first whose shortest text does, else in full in
// the stored unit.
func text(k *kind, b []byte, v float64) []byte {
	start := len(b)
	for _, digits := range [...]int{15, -1} {
		for _, symbol := range k.prefer {
			u := k.find(symbol)
			x := (v-u.post)*u.den/u.num - u.off
			b = strconv.AppendFloat(b[:start], x, 'g', digits, 64)
			if ax := math.Abs(x); x != 0 && (ax < 0.01 || ax >= 1e6) {
				continue
			}
			if back, err := strconv.ParseFloat(string(b[start:]), 64); err != nil || (back+u.off)*u.num/u.den+u.post != v {
				continue
			}
			// The parser works from digits, so ask it rather than the line above.
			b = k.suffix(b, symbol)
			if back, _, err := parse(k, string(b[start:])); err == nil && back == v {
				return b
			}
		}
	}
	b = strconv.AppendFloat(b[:start], v, 'g', -1, 64)
	return k.suffix(b, k.stored)
}

// checked is text that refuses a value no text can stand for.
func checked(k *kind, b []byte, v float64) ([]byte, error) {
	if v-v != 0 {
		return b, fault.Fault{Code: fault.OutOfRange, Value: strconv.FormatFloat(v, 'g', -1, 64), Unit: k.stored, Rule: k.name + " must be finite"}
	}
	if v < 0 && k.affine {
		return b, fault.Fault{Code: fault.OutOfRange, Value: strconv.FormatFloat(v, 'g', -1, 64), Unit: k.stored, Rule: k.name + " must not be below absolute zero"}
	}
	return text(k, b, v), nil
}
