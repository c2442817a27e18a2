package spring

import (
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
)

// Linear is a spring known by its rate and lengths alone, however it is made. It
// is an [Element]; the zero value is no spring and has no travel.
type Linear struct {
	k, free, solid float64 // N/mm, mm
}

// NewLinear returns a spring of the given rate, free length and least length
// (solid, or the least it is to be worked to). Errors: a rate or free length not
// above zero, a least length below zero or not below the free length.
func NewLinear(rate units.SpringRate, free, least units.Length) (Linear, error) {
	var l fault.List
	positive(&l, "rate", rate)
	ok := positive(&l, "free", free)
	if notNegative(&l, "least", least) && ok && !(least < free) {
		l.Add(fault.Fault{Code: fault.Conflict, Path: "least", Value: least.String(), Unit: "mm", Rule: "must be below the free length, " + free.String()})
	}
	if err := l.Err(); err != nil {
		return Linear{}, err
	}
	return Linear{rate.NewtonsPerMillimetre(), free.Millimetres(), least.Millimetres()}, nil
}

// Rate returns the rate.
func (e Linear) Rate() units.SpringRate { return units.NewtonsPerMillimetre(e.k) }

// Free returns the free length.
func (e Linear) Free() units.Length { return units.Millimetres(e.free) }

// Least returns the least length.
func (e Linear) Least() units.Length { return units.Millimetres(e.solid) }

// Travel returns free less least length.
func (e Linear) Travel() units.Length { return units.Millimetres(e.free - e.solid) }

// Limit returns the same as [Linear.Travel].
func (e Linear) Limit() units.Length { return e.Travel() }

// Load returns k·s for s from 0 to Travel.
func (e Linear) Load(s units.Length) (units.Force, bool) {
	x := s.Millimetres()
	if !(x >= 0 && x <= e.free-e.solid) || e.k == 0 {
		return 0, false
	}
	return units.Newtons(e.k * x), true
}

// Deflection returns F/k for loads from 0 to that at Travel.
func (e Linear) Deflection(f units.Force) (units.Length, bool) {
	if travel := e.free - e.solid; f >= 0 && f.Newtons() <= e.k*travel && e.k > 0 {
		return units.Millimetres(min(f.Newtons()/e.k, travel)), true
	}
	return 0, false
}

// RateAt returns the rate for s from 0 to Travel.
func (e Linear) RateAt(s units.Length) (units.SpringRate, bool) {
	x := s.Millimetres()
	if !(x >= 0 && x <= e.free-e.solid) || e.k == 0 {
		return 0, false
	}
	return units.NewtonsPerMillimetre(e.k), true
}
