package gear

import (
	"math"

	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
)

// Held are the torques on a set of gears from outside, one sense positive; they add
// up to nothing.
type Held struct {
	In   units.Torque `json:"in"`   // of what drives it
	Out  units.Torque `json:"out"`  // of the load, which pulls back
	Hold units.Torque `json:"hold"` // of whatever keeps the held member, or the casing, from turning
}

// HoldTorque returns the torques on a set of gears that takes in a power at one
// speed and gives it out at another, one member held: in P/w, out -eta P/w at its
// own speed, and the held member what is left over (Khurmi & Gupta, Theory of
// Machines, 14th ed., examples 13.22 and 13.23, read in a textbook companion). Speeds
// are signed, one sense positive. efficiency of zero means no losses. Errors: a power
// below zero, a speed of zero, figures not finite, an efficiency outside 0 to 1.
func HoldTorque(power units.Power, in, out units.RotationalSpeed, efficiency float64) (Held, error) {
	var l fault.List
	if !(power >= 0) || !sane(power) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "power", Value: power.String(), Unit: "kW", Rule: "must be finite and not below zero"})
	}
	for i, w := range [...]units.RotationalSpeed{in, out} {
		if !sane(w) || math.Abs(w.SI()) < 1e-9 { // a turn in two centuries
			l.Add(fault.Fault{Code: fault.OutOfRange, Path: [...]string{"in", "out"}[i], Value: w.String(), Unit: "rev/min", Rule: "must be finite and not zero"})
		}
	}
	if !(efficiency >= 0 && efficiency <= 1) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "efficiency", Rule: "0 (for none lost) to 1"})
	}
	if err := l.Err(); err != nil {
		return Held{}, err
	}
	if efficiency == 0 {
		efficiency = 1
	}
	h := Held{In: units.NewtonMetres(power.Watts() / in.RadiansPerSecond()), Out: units.NewtonMetres(-efficiency * power.Watts() / out.RadiansPerSecond())}
	h.Hold = -(h.In + h.Out)
	return h, nil
}
