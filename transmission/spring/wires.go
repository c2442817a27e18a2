package spring

import (
	"math"
	"strings"

	"example.com/benchbook/refdata"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

// LawOf returns a row of the table of wire strengths as a law.
func LawOf(s refdata.SpringStrength) Law {
	w := Law{Name: s.Name, Form: Power, A: units.Megapascals(s.A), Exponent: s.M, Source: s.FitOrigin.Source()}
	if s.Logarithmic {
		w.Form, w.Exponent, w.B = Logarithmic, 0, units.Megapascals(s.M)
	}
	w.From, w.To = s.Wire.Low.Or(0), s.Wire.High.Or(0)
	return w
}

// Fits returns every fit in the table for a material, named in whole or in part:
// "A228", "EN 10270-1 SH", "oil-tempered". With a wire diameter above zero only
// those meant for that size are returned, which may be none; fits of one
// material differ by up to a tenth, and which to believe is the caller's choice.
// A fit whose source gives no range is returned at any size. Errors: no such
// material, a diameter below zero.
func Fits(material string, wire units.Length) ([]Law, error) {
	var l fault.List
	notNegative(&l, "wire", wire)
	var out []Law
	known := false
	for s := range refdata.SpringStrengths().All() {
		if !names(s.Material, material) {
			continue
		}
		known = true
		if w := LawOf(s); wire == 0 || w.covers(wire) {
			out = append(out, w)
		}
	}
	if !known {
		l.Add(fault.Fault{Code: fault.UnknownName, Path: "material", Value: material, Rule: "part of the name of a material in the table of spring strengths, such as A228 or EN 10270-1 SH"})
	}
	if err := l.Err(); err != nil {
		return nil, err
	}
	return out, nil
}

// Wires returns the range of tensile strength that the fits of a material give
// for wire of a diameter, with the laws it spans. Errors: as for [Fits], a
// diameter of zero, no fit for that size.
func Wires(material string, wire units.Length) (measure.Interval[units.Pressure], []Law, error) {
	var l fault.List
	positive(&l, "wire", wire)
	laws, err := Fits(material, wire)
	l.Under("", err)
	if l.Len() == 0 && len(laws) == 0 {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "wire", Value: wire.String(), Unit: "mm", Rule: "no fit of " + material + " is meant for that size"})
	}
	if err := l.Err(); err != nil {
		return measure.Interval[units.Pressure]{}, nil, err
	}
	low, high := math.Inf(1), math.Inf(-1)
	for _, w := range laws {
		s := w.at(wire.Millimetres())
		low, high = min(low, s), max(high, s)
	}
	return measure.Between(units.Megapascals(low), units.Megapascals(high)), laws, nil
}

// ModulusOf returns the elastic constants of a material, named in whole or in
// part, for a wire diameter, and where they come from. Where the table is split
// by size the row nearest to the diameter is taken; where it has no Young's
// modulus, steel's 206 GPa stands in, which only buckling uses. Errors: no such
// material, a diameter not above zero.
func ModulusOf(material string, wire units.Length) (Modulus, refdata.Source, error) {
	var l fault.List
	positive(&l, "wire", wire)
	var best refdata.SpringModulus
	off := units.Kilometres(1)
	for m := range refdata.SpringModuli().All() {
		if !names(m.Material, material) {
			continue
		}
		var away units.Length
		if low, known := m.Wire.Low.Get(); known {
			away = max(away, low-wire)
		}
		if high, known := m.Wire.High.Get(); known {
			away = max(away, wire-high)
		}
		if away < off {
			best, off = m, away
		}
	}
	if best.Name == "" {
		l.Add(fault.Fault{Code: fault.UnknownName, Path: "material", Value: material, Rule: "part of the name of a material in the table of spring moduli, such as A228 or EN 10270-1 SH"})
	}
	if err := l.Err(); err != nil {
		return Modulus{}, refdata.Source{}, err
	}
	return Modulus{best.Shear, best.Young.Or(Steel().Young)}, best.ModuliOrigin.Source(), nil
}

func names(material, part string) bool {
	return strings.TrimSpace(part) != "" && strings.Contains(strings.ToLower(material), strings.ToLower(strings.TrimSpace(part)))
}
