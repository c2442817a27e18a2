package fastener

import (
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
)

// Of returns a thread of no system: form, outside diameter and pitch are what
// they are. name may be empty. The diameter must be from 0.2 mm to 1 m and the
// pitch from 0.05 mm to half the diameter; all faults are returned together.
func Of(name string, f Form, major, pitch units.Length) (Thread, error) {
	var l fault.List
	if f < WhitworthForm || f > UnifiedForm {
		l.Add(fault.Fault{Code: fault.UnknownName, Path: "form", Rule: "one of the forms of this package"})
	}
	if !(major >= units.Millimetres(0.2) && major <= units.Metre) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "major", Value: major.String(), Unit: "mm", Rule: "0.2 mm to 1 m"})
	}
	if !(pitch >= units.Millimetres(0.05) && pitch <= major.Times(0.5)) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "pitch", Value: pitch.String(), Unit: "mm", Rule: "0.05 mm to half the outside diameter"})
	}
	if err := l.Err(); err != nil {
		return Thread{}, err
	}
	if name == "" {
		name = major.In(units.Millimetre, 2) + " by " + pitch.In(units.Millimetre, 3) + ", " + f.String()
	}
	return Thread{form: f, name: name, key: keyOf(name), major: major, pitch: pitch}, nil
}
