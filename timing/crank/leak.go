package crank

import (
	"math"

	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/solve"
)

// LeakTester is a leak-down tester: air at a steady pressure goes through its own
// orifice into the cylinder, and a gauge behind the orifice shows what the cylinder
// holds. Whoever makes the test needs the caution refdata.AirTurnsCrank.
type LeakTester struct {
	// Orifice is its diameter; default 1 mm, which testers for small engines have:
	// common practice, no source. One of half that shows four times the area.
	Orifice units.Length   `json:"orifice"`
	Ambient units.Pressure `json:"ambient"` // absolute; default 1.01325 bar
}

func (t LeakTester) filled(l *fault.List, supply units.Pressure) LeakTester {
	if t.Orifice == 0 {
		t.Orifice = units.Millimetre
	}
	if t.Ambient == 0 {
		t.Ambient = units.Atmosphere
	}
	if !(t.Orifice >= units.Millimetres(0.01) && t.Orifice <= 20*units.Millimetre) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "orifice", Value: t.Orifice.String(), Unit: "mm", Rule: "0.01 mm to 20 mm"})
	}
	if !(t.Ambient >= units.Bars(0.1) && t.Ambient <= units.Bars(10)) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "ambient", Value: t.Ambient.String(), Unit: "bar", Rule: "0.1 to 10 bar, absolute"})
	}
	if !(supply >= units.Bars(0.01) && supply <= units.Bars(100)) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "supply", Value: supply.String(), Unit: "bar", Rule: "0.01 to 100 bar above the air outside"})
	}
	return t
}

// flow is what passes a hole of unit area from one absolute pressure to another,
// but for the temperature, which is that of the room on both sides: p psi(q/p). The
// second is never above the first.
func flow(from, to float64) float64 { return from * nozzle(to/from) }

// Hole returns the area of the one sharp hole that leaks as much as the cylinder
// does, from the gauge pressures before the tester's orifice and behind it: what
// flows through one flows through the other, A_o p_s psi(p_c/p_s) = A p_c psi(p_a/p_c),
// psi the flow function of a nozzle, choked below 0.528 (compressible nozzle flow,
// from memory; the balance derived). Use it as [CrankingOptions].Leak: unlike a loss
// in per cent it does not depend on the tester. Errors: orifice, ambient or supply
// out of range; a pressure held that is not above zero, as with a valve open, or not
// below the supply.
func (t LeakTester) Hole(supply, held units.Pressure) (units.Area, error) {
	var l fault.List
	t = t.filled(&l, supply)
	if !(held >= supply.Times(1e-6) && held <= supply) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "held", Value: held.String(), Unit: "bar", Rule: "above zero and at most the supply: a cylinder that holds nothing has a valve open"})
	}
	if err := l.Err(); err != nil {
		return 0, err
	}
	a := t.Ambient.SI()
	return units.FromSI[units.Area](t.area() * flow(supply.SI()+a, held.SI()+a) / flow(held.SI()+a, a)), nil
}

// Held is the reverse of [LeakTester.Hole]: the gauge pressure a cylinder holds that
// leaks like one hole. Errors: as there; an area below zero.
func (t LeakTester) Held(supply units.Pressure, hole units.Area) (units.Pressure, error) {
	var l fault.List
	t = t.filled(&l, supply)
	if !(hole >= 0) || !sane(hole) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "hole", Value: hole.String(), Unit: "mm²", Rule: "must be finite and not below zero"})
	}
	if err := l.Err(); err != nil {
		return 0, err
	}
	a, s := t.Ambient.SI(), supply.SI()
	return solve.Root(func(p units.Pressure) float64 {
		return t.area()*flow(s+a, p.SI()+a) - hole.SI()*flow(p.SI()+a, a)
	}, 0, supply, supply.Times(1e-9))
}

func (t LeakTester) area() float64 { return math.Pi / 4 * t.Orifice.SI() * t.Orifice.SI() }
