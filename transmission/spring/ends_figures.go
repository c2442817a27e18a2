package spring

import (
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
)

// Solid returns the length with all coils touching, for wire d and all coils
// total: Nt·d if the ends are ground, (Nt + 1)·d if not (Shigley table 10-1, from
// memory). Errors: d not above zero, fewer coils than the dead ones.
func (e Ends) Solid(d units.Length, total float64) (units.Length, error) {
	var l fault.List
	positive(&l, "wire", d)
	within(&l, "total", total, max(e.Dead(), 0.01), 1000)
	if err := l.Err(); err != nil {
		return 0, err
	}
	return units.Millimetres(solidLength(e, d.Millimetres(), total)), nil
}

// Pitch returns the advance of one coil unloaded, from free length, wire and
// active coils: plain (L0 - d)/Na, plain ground L0/(Na + 1), squared
// (L0 - 3d)/Na, squared and ground (L0 - 2d)/Na (Shigley table 10-1, from
// memory). Textbooks that divide by all coils get less. Errors: a figure not
// above zero, a free length that leaves nothing.
func (e Ends) Pitch(free, d units.Length, active float64) (units.Length, error) {
	var l fault.List
	ok := positive(&l, "free", free)
	ok = positive(&l, "wire", d) && ok
	checkActive(&l, active)
	p := pitch(e, free.Millimetres(), d.Millimetres(), active)
	if ok && l.Len() == 0 && !(p > 0) {
		l.Add(fault.Fault{Code: fault.Conflict, Path: "free", Value: free.String(), Unit: "mm", Rule: "shorter than the end coils"})
	}
	if err := l.Err(); err != nil {
		return 0, err
	}
	return units.Millimetres(p), nil
}

func pitch(e Ends, free, d, active float64) float64 {
	switch e {
	case Plain:
		return (free - d) / active
	case PlainGround:
		return free / (active + 1)
	case Squared:
		return (free - 3*d) / active
	}
	return (free - 2*d) / active
}
