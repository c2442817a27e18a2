package carburation

import (
	"math"

	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
)

const standardGravity = 9.80665 // m/s2

// Orifice is a hole that fuel flows through, drawn up over a lip.
type Orifice struct {
	Area        units.Area
	Coefficient units.Ratio        // Cd: 0.60 to 0.75 in textbooks, 0.7 to 0.8 for a parallel jet
	Lip         units.Length       // height of the outlet above the fuel level; 0 is level with it
	Gravity     units.Acceleration // 9 to 10 m/s²; 0 takes 9.80665 m/s²
}

func (o Orifice) gravity() float64 {
	if o.Gravity == 0 {
		return standardGravity
	}
	return o.Gravity.MetresPerSecondSquared()
}

func (o Orifice) faults(l *fault.List, area bool) {
	if area {
		positive(l, "area", o.Area, units.SquareMillimetres(1e-4), units.SquareMillimetres(1e4))
	}
	positive(l, "coefficient", o.Coefficient, 0.02, 1)
	positive(l, "lip", o.Lip, units.Millimetres(-200), units.Millimetres(200))
	if g := o.gravity(); !(g > 9 && g < 10) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "gravity", Value: o.Gravity.String(), Unit: "m/s²", Rule: "9 to 10 m/s², or 0 for the default"})
	}
}

// LipPressure returns the suction that just lifts fuel to the outlet:
// rho g z, below zero where the outlet is under the level. o's Area and
// Coefficient are not used. Errors: a lip, gravity or fuel outside its range.
func (o Orifice) LipPressure(fuel units.Density) (units.Pressure, error) {
	var l fault.List
	o.Coefficient = 1
	o.faults(&l, false)
	positive(&l, "fuel", fuel, units.KilogramsPerCubicMetre(400), units.KilogramsPerCubicMetre(2000))
	if l.Len() > 0 {
		return 0, l.Err()
	}
	return o.lip(fuel), nil
}

func (o Orifice) lip(fuel units.Density) units.Pressure {
	return units.Pascals(fuel.KilogramsPerCubicMetre() * o.gravity() * o.Lip.Metres())
}

// Flow returns the fuel drawn by a suction: Cd A sqrt(2 rho (dp - rho g z)), zero
// if the suction does not lift it over the lip (H. N. Gupta, Fundamentals of
// Internal Combustion Engines, 2006, example 9.4). Errors: a field outside its
// range.
func (o Orifice) Flow(suction units.Pressure, fuel units.Density) (units.MassFlow, error) {
	var l fault.List
	o.faults(&l, true)
	positive(&l, "suction", suction, units.Pascals(0), units.Megapascals(1))
	positive(&l, "fuel", fuel, units.KilogramsPerCubicMetre(400), units.KilogramsPerCubicMetre(2000))
	if l.Len() > 0 {
		return 0, l.Err()
	}
	drive := math.Max(0, (suction - o.lip(fuel)).Pascals())
	return units.KilogramsPerSecond(o.Coefficient.Value() * o.Area.SquareMetres() * math.Sqrt(2*fuel.KilogramsPerCubicMetre()*drive)), nil
}

// Suction returns the suction that draws a flow, the inverse of Flow:
// rho g z + (m/(Cd A))²/(2 rho) (R. K. Rajput, Internal Combustion Engines,
// example 11.2). Errors: a field outside its range.
func (o Orifice) Suction(flow units.MassFlow, fuel units.Density) (units.Pressure, error) {
	var l fault.List
	o.faults(&l, true)
	positive(&l, "flow", flow, units.KilogramsPerSecond(0), units.KilogramsPerSecond(10))
	positive(&l, "fuel", fuel, units.KilogramsPerCubicMetre(400), units.KilogramsPerCubicMetre(2000))
	if l.Len() > 0 {
		return 0, l.Err()
	}
	x := flow.KilogramsPerSecond() / (o.Coefficient.Value() * o.Area.SquareMetres())
	return o.lip(fuel) + units.Pascals(x*x/(2*fuel.KilogramsPerCubicMetre())), nil
}

// Size returns the area that passes a flow at a suction, the inverse of Flow;
// o's own Area is not used. CircleDiameter gives its bore. Errors: a field
// outside its range, a suction that does not lift fuel over the lip.
func (o Orifice) Size(flow units.MassFlow, suction units.Pressure, fuel units.Density) (units.Area, error) {
	var l fault.List
	o.faults(&l, false)
	positive(&l, "flow", flow, units.KilogramsPerSecond(1e-9), units.KilogramsPerSecond(10))
	positive(&l, "fuel", fuel, units.KilogramsPerCubicMetre(400), units.KilogramsPerCubicMetre(2000))
	lip := o.lip(fuel)
	if !(suction > lip && suction.Megapascals() <= 1) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "suction", Value: suction.String(), Unit: "Pa", Rule: "above the " + lip.String() + " that lifts fuel over the lip, to 1 MPa"})
	}
	if l.Len() > 0 {
		return 0, l.Err()
	}
	return units.SquareMetres(flow.KilogramsPerSecond() / (o.Coefficient.Value() * math.Sqrt(2*fuel.KilogramsPerCubicMetre()*(suction-lip).Pascals()))), nil
}

// StartingSpeed returns the air speed at which fuel begins to flow over the
// lip: sqrt(2 g z rho_fuel/rho_air), times a coefficient that some books apply
// and others do not: pass 1 to leave it out (H. B. Keswani, Internal Combustion
// Engines, 4th ed. 2003, examples 9.9 and 9.13; M. L. Mathur, R. P. Sharma,
// example 11.8). Errors: a field outside its range.
func (o Orifice) StartingSpeed(fuel, air units.Density, coefficient units.Ratio) (units.Speed, error) {
	var l fault.List
	o.Coefficient = 1
	o.faults(&l, false)
	positive(&l, "fuel", fuel, units.KilogramsPerCubicMetre(400), units.KilogramsPerCubicMetre(2000))
	positive(&l, "air", air, units.KilogramsPerCubicMetre(0.1), units.KilogramsPerCubicMetre(5))
	positive(&l, "coefficient", coefficient, 0.05, 1)
	if o.Lip < 0 {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "lip", Value: o.Lip.String(), Unit: "mm", Rule: "level or above; below it fuel runs out by itself"})
	}
	if l.Len() > 0 {
		return 0, l.Err()
	}
	return units.MetresPerSecond(coefficient.Value() * math.Sqrt(2*o.gravity()*o.Lip.Metres()*fuel.Ratio(air))), nil
}

// PlainJet is a choke and one jet with no compensation.
type PlainJet struct {
	ChokeArea        units.Area
	ChokeCoefficient units.Ratio // on area
	Jet              Orifice
	Air              units.Density // upstream
	Fuel             units.Density
	// Expansibility corrects for the air's compression; 0 takes 1, a fluid of
	// constant density, as most textbook examples do.
	Expansibility float64
}

// Mixture returns the air/fuel ratio by mass at a suction:
//
//	AFR = (Cda Aa)/(Cdf Af) sqrt(rho_a/rho_f) e sqrt(dp/(dp - rho_f g z))
//
// It falls, richer, as suction grows, since the lip weighs less and the air is
// throttled (M. L. Mathur, R. P. Sharma, example 11.8; R. K. Rajput, example
// 11.9). Errors: a field outside its range, a suction that lifts no fuel.
func (p PlainJet) Mixture(suction units.Pressure) (units.Ratio, error) {
	var l fault.List
	positive(&l, "choke_area", p.ChokeArea, units.SquareMillimetres(1), units.SquareMetres(1))
	positive(&l, "choke_coefficient", p.ChokeCoefficient, 0.05, 1)
	positive(&l, "air", p.Air, units.KilogramsPerCubicMetre(0.1), units.KilogramsPerCubicMetre(5))
	e := p.Expansibility
	if e == 0 {
		e = 1
	}
	if !(e > 0.3 && e <= 1) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "expansibility", Rule: "0.3 to 1, or 0 for 1"})
	}
	fuel, err := p.Jet.Flow(suction, p.Fuel)
	l.Under("jet", err)
	if err == nil && !(fuel > 0) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "suction", Value: suction.String(), Unit: "Pa", Rule: "above the " + p.Jet.lip(p.Fuel).String() + " that lifts fuel over the lip"})
	}
	if l.Len() > 0 {
		return 0, l.Err()
	}
	air := e * p.ChokeCoefficient.Value() * p.ChokeArea.SquareMetres() * math.Sqrt(2*p.Air.KilogramsPerCubicMetre()*suction.Pascals())
	return units.Value(air / fuel.KilogramsPerSecond()), nil
}

// JetOverChoke returns jet diameter over choke diameter for a mixture, the lip
// left out: sqrt((Cda/Cdf) sqrt(rho_a/rho_f)/AFR). p's areas and lip are not
// used. Errors: a field outside its range.
func (p PlainJet) JetOverChoke(mixture units.Ratio) (float64, error) {
	var l fault.List
	positive(&l, "choke_coefficient", p.ChokeCoefficient, 0.05, 1)
	positive(&l, "jet.coefficient", p.Jet.Coefficient, 0.02, 1)
	positive(&l, "air", p.Air, units.KilogramsPerCubicMetre(0.1), units.KilogramsPerCubicMetre(5))
	positive(&l, "fuel", p.Fuel, units.KilogramsPerCubicMetre(400), units.KilogramsPerCubicMetre(2000))
	positive(&l, "mixture", mixture, 1, 100)
	if l.Len() > 0 {
		return 0, l.Err()
	}
	return math.Sqrt(p.ChokeCoefficient.Ratio(p.Jet.Coefficient) * math.Sqrt(p.Air.Ratio(p.Fuel)) / mixture.Value()), nil
}

// CleanerMixture returns the air/fuel ratio after an air cleaner, or its dirt,
// adds a drop in front of the choke, the float chamber open to the outside air:
// AFR sqrt(dp/(dp + drop)), richer. With the chamber vented behind the cleaner
// the ratio stays (H. N. Gupta, example 9.8; M. L. Mathur, R. P. Sharma, example
// 11.9; R. K. Rajput, example 11.5). Errors: figures outside.
func CleanerMixture(mixture units.Ratio, suction, drop units.Pressure) (units.Ratio, error) {
	var l fault.List
	positive(&l, "mixture", mixture, 1, 100)
	positive(&l, "suction", suction, units.Pascals(1), units.Kilopascals(100))
	positive(&l, "drop", drop, units.Pascals(0), units.Kilopascals(50))
	if l.Len() > 0 {
		return 0, l.Err()
	}
	return mixture.Times(math.Sqrt(suction.Ratio(suction + drop))), nil
}
