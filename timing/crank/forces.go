package crank

import (
	"math"

	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
)

// Forces are what a force on the piston does through rod and crank.
type Forces struct {
	Rod        units.Force  `json:"rod"`        // along the rod, positive when it pushes
	Side       units.Force  `json:"side"`       // of the piston on the bore
	Tangential units.Force  `json:"tangential"` // at the crankpin, turning
	Radial     units.Force  `json:"radial"`     // at the crankpin, towards the main bearing
	Torque     units.Torque `json:"torque"`     // on the crank, positive in the running sense
}

// Forces returns rod thrust, side thrust, crankpin forces and torque for a force
// on the piston, downwards positive: rod F/cos ph, side F tan ph, tangential
// F sin(th+ph)/cos ph, radial F cos(th+ph)/cos ph, torque F dx/dth (Khurmi &
// Gupta, Theory of Machines, chapter 15, example 15.7, p. 533; with an offset
// sin ph = (r sin th - e)/l, Gupta, example 13.2, p. 424; both read in textbook
// companions). Errors: those of [Slider.Err]; position or force not finite.
func (s Slider) Forces(at units.CrankPosition, onPiston units.Force) (Forces, error) {
	var l fault.List
	l.Under("", s.check(at))
	if !sane(onPiston) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "force", Unit: "N", Rule: "must be finite"})
	}
	if err := l.Err(); err != nil {
		return Forces{}, err
	}
	g := s.geometry()
	th := g.theta(at)
	p := g.slopes(th)
	f := onPiston.SI()
	tangential := f * p.x1 / g.r
	return Forces{
		Rod:        units.Newtons(f / math.Cos(p.rod)),
		Side:       units.Newtons(f * math.Tan(p.rod)),
		Tangential: units.Newtons(tangential),
		Radial:     units.Newtons(f * math.Cos(th+p.rod) / math.Cos(p.rod)),
		Torque:     units.NewtonMetres(f * p.x1 / 1000),
	}, nil
}

// InertiaForce returns the force that accelerates a reciprocating mass at a crank
// position and speed; it acts on the piston upwards while that is positive.
// m a, a exact. Errors: those of [Slider.Motion]; a mass below zero.
func (s Slider) InertiaForce(at units.CrankPosition, speed units.RotationalSpeed, mass units.Mass) (units.Force, error) {
	m, err := s.Motion(at, speed)
	var l fault.List
	l.Under("", err)
	if !(mass >= 0) || !sane(mass) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "mass", Unit: "kg", Rule: "must be finite and not below zero"})
	}
	if err := l.Err(); err != nil {
		return 0, err
	}
	return units.Newtons(mass.SI() * m.Acceleration.SI()), nil
}
