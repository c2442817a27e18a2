package fuel

import (
	"math"
	"strconv"

	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
)

// Formula counts the atoms of a fuel, of one molecule or per carbon atom: only
// the proportions matter, except where a figure is said to be per molecule.
// Counts may be fractions, as in CH1.87. The zero Formula burns nothing.
type Formula struct {
	C float64 `json:"c"`
	H float64 `json:"h"`
	O float64 `json:"o,omitempty"`
	N float64 `json:"n,omitempty"`
	S float64 `json:"s,omitempty"`
}

// ParseFormula reads text such as "C8H18", "CH1.87" or "CH3OH": symbols of
// carbon, hydrogen, oxygen, nitrogen and sulphur, each with an optional count;
// one that comes twice is added. The error is a fault.Fault of code BadForm or
// OutOfRange.
func ParseFormula(text string) (Formula, error) {
	var f Formula
	bad := func(code fault.Code, rule string) (Formula, error) {
		return Formula{}, fault.Fault{Code: code, Path: "formula", Value: text, Rule: rule}
	}
	if text == "" {
		return bad(fault.BadForm, "symbols C, H, O, N, S with counts, such as C8H18")
	}
	for i := 0; i < len(text); {
		var at *float64
		switch text[i] {
		case 'C':
			at = &f.C
		case 'H':
			at = &f.H
		case 'O':
			at = &f.O
		case 'N':
			at = &f.N
		case 'S':
			at = &f.S
		default:
			return bad(fault.BadForm, "symbols C, H, O, N, S with counts, such as C8H18")
		}
		i++
		j := i
		for j < len(text) && (text[j] >= '0' && text[j] <= '9' || text[j] == '.') {
			j++
		}
		n := 1.0
		if j > i {
			v, err := strconv.ParseFloat(text[i:j], 64)
			if err != nil {
				return bad(fault.BadForm, "a count is a decimal number, such as the 1.87 of CH1.87")
			}
			n = v
		}
		*at += n
		i = j
	}
	if err := f.err(); err != nil {
		return Formula{}, err
	}
	return f, nil
}

func (f Formula) err() error {
	if !f.counted() {
		return fault.Fault{Code: fault.OutOfRange, Path: "formula", Value: f.String(), Rule: "0 to 1000 atoms of each kind"}
	}
	if !(f.C+f.H/4+f.S-f.O/2 > 0) {
		return fault.Fault{Code: fault.OutOfRange, Path: "formula", Value: f.String(), Rule: "something left to burn: c + h/4 + s above o/2"}
	}
	return nil
}

// counted reports whether every count is one that a formula may have.
func (f Formula) counted() bool {
	for _, n := range [...]float64{f.C, f.H, f.O, f.N, f.S} {
		if !(n >= 0 && n <= 1000) {
			return false
		}
	}
	return true
}

// String returns text that ParseFormula reads.
func (f Formula) String() string {
	var b []byte
	for _, p := range []struct {
		symbol byte
		n      float64
	}{{'C', f.C}, {'H', f.H}, {'O', f.O}, {'N', f.N}, {'S', f.S}} {
		if p.n == 0 {
			continue
		}
		b = append(b, p.symbol)
		if p.n != 1 {
			b = strconv.AppendFloat(b, p.n, 'f', -1, 64)
		}
	}
	return string(b)
}

// MolarMass returns the mass of the atoms counted, in grams per mole; zero where
// a count is outside 0 to 1000.
func (f Formula) MolarMass(conv Convention) float64 {
	if !f.counted() {
		return 0
	}
	m := conv.masses()
	return f.C*m.c + f.H*m.h + f.O*m.o + f.N*m.n + f.S*m.s
}

// Composition returns the shares by mass; all zero where there are no atoms, or a
// count is outside 0 to 1000.
func (f Formula) Composition(conv Convention) Composition {
	m, w := conv.masses(), f.MolarMass(conv)
	if w == 0 {
		return Composition{}
	}
	return Composition{Carbon: units.Value(f.C * m.c / w), Hydrogen: units.Value(f.H * m.h / w), Oxygen: units.Value(f.O * m.o / w),
		Nitrogen: units.Value(f.N * m.n / w), Sulphur: units.Value(f.S * m.s / w)}
}

// Composition is what a fuel is made of, by mass.
type Composition struct {
	Carbon   units.Ratio `json:"carbon"`
	Hydrogen units.Ratio `json:"hydrogen"`
	Oxygen   units.Ratio `json:"oxygen"`
	Nitrogen units.Ratio `json:"nitrogen"`
	Sulphur  units.Ratio `json:"sulphur"`
}

type namedShare struct {
	name  string
	share units.Ratio
}

func (c Composition) parts() [5]namedShare {
	return [5]namedShare{{"carbon", c.Carbon}, {"hydrogen", c.Hydrogen}, {"oxygen", c.Oxygen}, {"nitrogen", c.Nitrogen}, {"sulphur", c.Sulphur}}
}

// Formula returns the atoms in 100 grams, in moles. The shares must add up to
// 1 within 0.01; water and ash are not fuel and are left out by the caller.
// Errors: a share outside 0 to 1, a sum outside, nothing to burn.
func (c Composition) Formula(conv Convention) (Formula, error) {
	var l fault.List
	var sum float64
	for _, p := range c.parts() {
		v := p.share.Value()
		if !(v >= 0 && v <= 1) {
			l.Add(fault.Fault{Code: fault.OutOfRange, Path: p.name, Value: p.share.String(), Rule: "0 to 1, by mass"})
		}
		sum += v
	}
	if l.Len() == 0 && !(math.Abs(sum-1) <= 0.01) {
		l.Add(fault.Fault{Code: fault.Conflict, Path: "composition", Value: strconv.FormatFloat(sum, 'g', 6, 64), Rule: "shares that add up to 1 within 0.01"})
	}
	if l.Len() > 0 {
		return Formula{}, l.Err()
	}
	m := conv.masses()
	f := Formula{C: 100 * c.Carbon.Value() / m.c, H: 100 * c.Hydrogen.Value() / m.h, O: 100 * c.Oxygen.Value() / m.o,
		N: 100 * c.Nitrogen.Value() / m.n, S: 100 * c.Sulphur.Value() / m.s}
	return f, f.err()
}
