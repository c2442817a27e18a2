package fastener

import (
	"example.com/benchbook/refdata"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
)

// Strength is what a bolt's steel bears. The zero Strength is unknown: what an
// unmarked bolt has.
type Strength struct {
	Name    string           `json:"name"`    // "8.8", "SAE 5"
	Proof   units.Pressure   `json:"proof"`   // stress under proof load
	Yield   units.Pressure   `json:"yield"`   // least, or 0.2 % proof stress
	Tensile units.Pressure   `json:"tensile"` // least
	Sources []refdata.Source `json:"sources"`
}

// Known reports whether there is a strength.
func (s Strength) Known() bool { return s.Proof > 0 && s.Yield > 0 && s.Tensile > 0 }

// Class returns the strength of an ISO 898-1 property class, "8.8", at the
// thread's diameter. Faults: no thread, no such class at that diameter.
func Class(class string, t Thread) (Strength, error) {
	if t.IsZero() {
		return Strength{}, noThread("thread")
	}
	c, ok := refdata.PropertyClassAt(class, t.major)
	if !ok {
		return Strength{}, fault.Fault{Code: fault.UnknownName, Path: "class", Value: class, Rule: "a property class of ISO 898-1 that holds for " + t.name + ", such as 8.8"}
	}
	return Strength{c.Class, c.Proof, c.Yield, c.Tensile, append(c.StrengthOrigin.Sources(), c.ProofOrigin.Sources()...)}, nil
}

// Grade returns the strength of an SAE J429 grade, "5", at the thread's
// diameter. Faults: no thread, no such grade at that diameter.
func Grade(grade string, t Thread) (Strength, error) {
	if t.IsZero() {
		return Strength{}, noThread("thread")
	}
	g, ok := refdata.GradeAt(grade, t.major)
	if !ok {
		return Strength{}, fault.Fault{Code: fault.UnknownName, Path: "grade", Value: grade, Rule: "a grade of SAE J429 that holds for " + t.name + ", such as 5"}
	}
	return Strength{"SAE " + g.Grade, g.Proof, g.Yield, g.Tensile, g.Origin.Sources()}, nil
}

// check notes what is wrong with a strength that was given.
func (s Strength) check(path string, l *fault.List) {
	if s.Proof == 0 && s.Yield == 0 && s.Tensile == 0 {
		return
	}
	const most = 3e9 // Pa; music wire of a tenth of a millimetre
	if !(s.Proof > 0 && s.Yield >= s.Proof && s.Tensile >= s.Yield && s.Tensile.SI() <= most) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: path, Value: s.Name, Unit: "N/mm²", Rule: "above 0, proof stress up to yield, yield up to tensile strength, up to 3000 N/mm²"})
	}
}
