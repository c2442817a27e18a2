package spring

import (
	"math"

	"example.com/benchbook/refdata"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
)

// Form is the shape of a fit of wire strength against size.
type Form uint8

// The forms, d being the wire diameter in millimetres.
const (
	Power       Form = iota + 1 // A / d^Exponent
	Logarithmic                 // A - B · lg d
)

// Law is a fit of tensile strength against wire diameter. It names itself and
// its source, since fits of the same wire differ by up to a tenth. Laws come
// from [Fits] and [Wires], or may be written out. The zero value is no law.
type Law struct {
	Name     string         `json:"name"` // "music wire ASTM A228"
	Form     Form           `json:"form"`
	A        units.Pressure `json:"a"`             // strength at 1 mm
	Exponent float64        `json:"exponent"`      // m of A/d^m, 0 to 1
	B        units.Pressure `json:"b"`             // fall per tenfold of diameter
	From     units.Length   `json:"from,omitzero"` // thinnest wire the fit is meant for; zero: not known
	To       units.Length   `json:"to,omitzero"`   // thickest wire; zero: not known
	Source   refdata.Source `json:"source"`
}

// At returns the tensile strength of wire of diameter d: A/d^m, or A - B lg d,
// d in millimetres. A diameter outside From to To is answered too, with
// inRange false: strength does not jump there, but the fit was not made for it.
// Errors: a diameter not above zero, a law without sense.
func (w Law) At(d units.Length) (strength units.Pressure, inRange bool, err error) {
	var l fault.List
	positive(&l, "wire", d)
	l.Under("law", w.check())
	if err := l.Err(); err != nil {
		return 0, false, err
	}
	s := w.at(d.Millimetres())
	if !(s > 0) || !finite(s) {
		return 0, false, fault.Fault{Code: fault.OutOfRange, Path: "wire", Value: d.String(), Unit: "mm", Rule: "too far outside the fit for a strength"}
	}
	return units.Megapascals(s), w.covers(d), nil
}

func (w Law) covers(d units.Length) bool {
	return (w.From == 0 || d >= w.From) && (w.To == 0 || d <= w.To)
}

func (w Law) at(d float64) float64 {
	if w.Form == Logarithmic {
		return w.A.Megapascals() - w.B.Megapascals()*math.Log10(d)
	}
	return w.A.Megapascals() / math.Pow(d, w.Exponent)
}

func (w Law) check() error {
	var l fault.List
	if w.Form != Power && w.Form != Logarithmic {
		l.Add(fault.Fault{Code: fault.UnknownName, Path: "form", Rule: "Power or Logarithmic"})
	}
	positive(&l, "a", w.A)
	notNegative(&l, "b", w.B)
	within(&l, "exponent", w.Exponent, 0, 1)
	notNegative(&l, "from", w.From)
	notNegative(&l, "to", w.To)
	return l.Err()
}
