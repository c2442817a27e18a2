package crank

import (
	"math"

	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
)

// Cylinder is bore and slider-crank with the space above the piston.
type Cylinder struct {
	Bore      units.Length `json:"bore"`
	Slider    Slider       `json:"slider"`
	Clearance units.Volume `json:"clearance"` // above the piston at TDC, plug hole, gasket and pockets included
}

// Err returns every fault: a bore not above zero, a clearance below zero, and
// those of [Slider.Err].
func (c Cylinder) Err() error {
	var l fault.List
	if !(c.Bore > 0) || !sane(c.Bore) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "bore", Value: number(c.Bore), Unit: "mm", Rule: "must be finite and above zero"})
	}
	l.Under("slider", c.Slider.Err())
	if !(c.Clearance >= 0) || !sane(c.Clearance) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "clearance", Unit: "cm³", Rule: "must be finite and not below zero"})
	}
	return l.Err()
}

// needClearance is Err, and a clearance there must be.
func (c Cylinder) needClearance() error {
	var l fault.List
	l.Under("", c.Err())
	if c.Clearance == 0 {
		l.Add(fault.Fault{Code: fault.Missing, Path: "clearance", Unit: "cm³", Rule: "measure the space above the piston at TDC, by oil from a syringe, or take it from the compression ratio"})
	}
	return l.Err()
}

// area is the piston's in square metres.
func (c Cylinder) area() float64 { b := c.Bore.SI(); return math.Pi / 4 * b * b }

// Displacement returns the volume swept by the piston, pi/4 bore^2 stroke; with
// an offset the stroke is the true one, longer than two throws. Errors: those of
// [Cylinder.Err].
func (c Cylinder) Displacement() (units.Volume, error) {
	if err := c.Err(); err != nil {
		return 0, err
	}
	return units.CubicMetres(c.area() * c.Slider.geometry().stroke() / 1000), nil
}

// VolumeAt returns the volume above the piston at a crank position, clearance
// included. Errors: those of [Cylinder.Err]; a position not finite.
func (c Cylinder) VolumeAt(at units.CrankPosition) (units.Volume, error) {
	var l fault.List
	l.Under("", c.Err())
	x, err := c.Slider.Travel(at)
	if l.Len() == 0 {
		l.Under("", err)
	}
	if err := l.Err(); err != nil {
		return 0, err
	}
	return units.CubicMetres(c.Clearance.SI() + c.area()*x.SI()), nil
}

// CompressionRatio returns (swept + clearance)/clearance. Errors: those of
// [Cylinder.Err]; no clearance.
func (c Cylinder) CompressionRatio() (units.Ratio, error) {
	if err := c.needClearance(); err != nil {
		return 0, err
	}
	vs := c.area() * c.Slider.geometry().stroke() / 1000
	ratio := units.Value((vs + c.Clearance.SI()) / c.Clearance.SI())
	if !sane(ratio) {
		return 0, fault.Fault{Code: fault.OutOfRange, Path: "clearance", Value: c.Clearance.String(), Unit: "cc", Rule: "too small beside the swept volume to divide by"}
	}
	return ratio, nil
}

// WithRatio returns the cylinder with the clearance that gives a compression
// ratio: swept/(ratio - 1). Errors: those of [Cylinder.Err]; a ratio not above 1.
func (c Cylinder) WithRatio(ratio units.Ratio) (Cylinder, error) {
	var l fault.List
	l.Under("", c.Err())
	if !(ratio > 1) || !sane(ratio) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "ratio", Value: ratio.String(), Rule: "a compression ratio is above 1"})
	}
	if err := l.Err(); err != nil {
		return Cylinder{}, err
	}
	c.Clearance = units.CubicMetres(c.area() * c.Slider.geometry().stroke() / 1000 / (ratio.Value() - 1))
	return c, nil
}

// Trapped is what the inlet valve shuts in.
type Trapped struct {
	Volume units.Volume `json:"volume"` // above the piston as the inlet closes
	Rise   units.Length `json:"rise"`   // of the piston from BDC by then
	Ratio  units.Ratio  `json:"ratio"`  // Volume over clearance: what compression is left
	Static units.Ratio  `json:"static"` // the compression ratio of the whole stroke
}

// TrappedAt returns the compression ratio left from the closing of the inlet,
// (clearance + area x (stroke - rise from BDC))/clearance, by the exact
// slider-crank (derived). Errors: those of [Cylinder.CompressionRatio]; an inlet
// closing outside BDC to TDC on the compression stroke.
func (c Cylinder) TrappedAt(inletCloses units.CrankPosition) (Trapped, error) {
	if err := c.needClearance(); err != nil {
		return Trapped{}, err
	}
	g := c.Slider.geometry()
	th := g.theta(inletCloses)
	if from, to := g.down(), 2*math.Pi+g.lead(); !(th >= from-1e-9 && th <= to) {
		return Trapped{}, fault.Fault{Code: fault.OutOfRange, Path: "inlet.closes", Value: inletCloses.String(), Unit: "° crank", Rule: "after BDC and before the TDC that follows: count it as so many degrees ABDC"}
	}
	x := g.travel(th)
	v := c.Clearance.SI() + c.area()*x/1000
	ratio, err := c.CompressionRatio()
	if err != nil {
		return Trapped{}, err
	}
	return Trapped{
		Volume: units.CubicMetres(v), Rise: units.Millimetres(g.stroke() - x),
		Ratio: units.Value(v / c.Clearance.SI()), Static: ratio,
	}, nil
}
