package carburation

import (
	"math"

	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/solve"
)

// Gas is the air of a choke calculation. The zero value takes R 287.05
// J/(kg K) and gamma 1.4; the fields are there to follow a textbook to its last
// digit.
type Gas struct {
	RJoulesPerKilogramKelvin  float64 // gas constant, J/(kg K), 50 to 5000; 0 takes 287.05
	Gamma                     float64 // exponent of the expansion, 1.01 to 1.7; 0 takes 1.4
	CpJoulesPerKilogramKelvin float64 // specific heat, J/(kg K), 200 to 20000; 0 takes gamma R/(gamma - 1)
}

func (g Gas) filled() Gas {
	if g.RJoulesPerKilogramKelvin == 0 {
		g.RJoulesPerKilogramKelvin = 287.05
	}
	if g.Gamma == 0 {
		g.Gamma = 1.4
	}
	if g.CpJoulesPerKilogramKelvin == 0 {
		g.CpJoulesPerKilogramKelvin = g.Gamma * g.RJoulesPerKilogramKelvin / (g.Gamma - 1)
	}
	return g
}

func (g Gas) faults(l *fault.List) {
	f := g.filled()
	if !(f.RJoulesPerKilogramKelvin > 50 && f.RJoulesPerKilogramKelvin < 5000 && f.Gamma > 1.01 && f.Gamma < 1.7 && f.CpJoulesPerKilogramKelvin > 200 && f.CpJoulesPerKilogramKelvin < 20000) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "gas", Rule: "R 50 to 5000 and cp 200 to 20000 J/(kg K), gamma 1.01 to 1.7; 0 takes the default"})
	}
}

// ChokeConstant returns sqrt(2 cp)/R, the constant of the textbook form
// m = constant x Cd A p1/sqrt(T1) sqrt(r^(2/gamma) - r^((gamma+1)/gamma)): 0.1562
// for cp 1005 and R 287, in SI: kg K^0.5/(s N). Errors: a field outside its range.
func (g Gas) ChokeConstant() (float64, error) {
	var l fault.List
	if g.faults(&l); l.Len() > 0 {
		return 0, l.Err()
	}
	g = g.filled()
	return math.Sqrt(2*g.CpJoulesPerKilogramKelvin) / g.RJoulesPerKilogramKelvin, nil
}

// CriticalRatio returns p2/p1 at which the speed of sound is reached and the
// flow chokes: (2/(gamma+1))^(gamma/(gamma-1)), 0.528 for air. Errors: a field
// outside its range.
func (g Gas) CriticalRatio() (float64, error) {
	var l fault.List
	if g.faults(&l); l.Len() > 0 {
		return 0, l.Err()
	}
	return g.critical(), nil
}

func (g Gas) critical() float64 {
	g = g.filled()
	return math.Pow(2/(g.Gamma+1), g.Gamma/(g.Gamma-1))
}

// Choke is a narrow place that air is drawn through from rest.
type Choke struct {
	Area        units.Area        // open area
	Coefficient units.Ratio       // on area, Cd: 0.8 to 0.93 in textbooks
	Pressure    units.Pressure    // upstream, absolute
	Temperature units.Temperature // upstream
	Gas         Gas
}

func (c Choke) faults(l *fault.List, area bool) {
	if area {
		positive(l, "area", c.Area, units.SquareMetres(1e-9), units.SquareMetres(1))
	}
	positive(l, "coefficient", c.Coefficient, 0.05, 1)
	positive(l, "pressure", c.Pressure, units.Kilopascals(1), units.Megapascals(10))
	positive(l, "temperature", c.Temperature, units.Kelvins(150), units.Kelvins(2000))
	c.Gas.faults(l)
}

// Throat is the air in a choke, and the figures on the way to it.
type Throat struct {
	Flow          units.MassFlow `json:"flow"`
	Pressure      units.Pressure `json:"pressure"` // absolute
	Suction       units.Pressure `json:"suction"`  // below upstream
	Speed         units.Speed    `json:"speed"`    // without friction
	Density       units.Density  `json:"density"`
	Upstream      units.Density  `json:"upstream_density"`
	Expansibility float64        `json:"expansibility"` // flow over that of a fluid of constant density
	Choked        bool           `json:"choked"`        // the speed of sound is reached
	PressureRatio float64        `json:"pressure_ratio"`
}

// At returns the flow with a given absolute pressure in the throat:
//
//	m = Cd A p1/sqrt(R T1) sqrt(2 gamma/(gamma-1) (r^(2/gamma) - r^((gamma+1)/gamma)))
//
// (J. B. Heywood, Internal Combustion Engine Fundamentals, appendix C, from
// memory; H. N. Gupta, Fundamentals of Internal Combustion Engines, 2006,
// chapter 9). Below the critical ratio the flow stays at its greatest, and
// Choked says so. Errors: a field outside its range, a throat pressure not
// between 0 and upstream.
func (c Choke) At(throat units.Pressure) (Throat, error) {
	var l fault.List
	c.faults(&l, true)
	if !(throat > 0 && throat <= c.Pressure) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "throat", Value: throat.String(), Unit: "Pa", Rule: "above zero, up to the pressure upstream"})
	}
	if l.Len() > 0 {
		return Throat{}, l.Err()
	}
	return c.at(throat.Ratio(c.Pressure)), nil
}

func (c Choke) at(r float64) Throat {
	g := c.Gas.filled()
	p1, t1 := c.Pressure.Pascals(), c.Temperature.Kelvins()
	rho1 := p1 / (g.RJoulesPerKilogramKelvin * t1)
	out := Throat{Upstream: units.KilogramsPerCubicMetre(rho1)}
	if critical := g.critical(); r < critical {
		r, out.Choked = critical, true
	}
	s := g.speed(r, t1)
	rho2 := rho1 * math.Pow(r, 1/g.Gamma)
	out.Flow = units.KilogramsPerSecond(c.Coefficient.Value() * c.Area.SquareMetres() * rho2 * s)
	out.Pressure, out.Suction = units.Pascals(r*p1), units.Pascals((1-r)*p1)
	out.Speed, out.Density, out.PressureRatio = units.MetresPerSecond(s), units.KilogramsPerCubicMetre(rho2), r
	out.Expansibility = 1
	if r < 1 {
		out.Expansibility = rho2 * s / math.Sqrt(2*rho1*p1*(1-r))
	}
	return out
}

// speed returns sqrt(2 cp T1 (1 - r^((gamma-1)/gamma))).
func (g Gas) speed(r, t1 float64) float64 {
	return math.Sqrt(math.Max(0, 2*g.CpJoulesPerKilogramKelvin*t1*(1-math.Pow(r, (g.Gamma-1)/g.Gamma))))
}

// For returns the throat at which a choke passes a flow, the inverse of At on
// the side below the speed of sound. Errors: a field outside its range, or a
// flow above what the choke can pass, with that as the rule.
func (c Choke) For(flow units.MassFlow) (Throat, error) {
	var l fault.List
	c.faults(&l, true)
	positive(&l, "flow", flow, units.KilogramsPerSecond(0), units.KilogramsPerSecond(1e4))
	if l.Len() > 0 {
		return Throat{}, l.Err()
	}
	least := c.Gas.critical()
	most := c.at(least).Flow
	if flow > most {
		return Throat{}, fault.Fault{Code: fault.OutOfRange, Path: "flow", Value: flow.String(), Unit: "kg/s", Rule: "at most " + most.String() + ", where the air reaches the speed of sound"}
	}
	r, err := solve.Inverse(func(r float64) float64 { return c.at(r).Flow.KilogramsPerSecond() }, flow.KilogramsPerSecond(), least, 1, 1e-15)
	if err != nil {
		return Throat{}, fault.Under("flow", err)
	}
	return c.at(r), nil
}

// On says what a choke's coefficient multiplies.
type On uint8

// The two conventions of textbooks.
const (
	OnArea     On = iota // Cd: the speed given is the one without friction
	OnVelocity           // Cv: the speed given is the real one
)

// ChokeSize is the choke that a flow at a wanted speed asks for.
type ChokeSize struct {
	Throat   Throat       `json:"throat"`
	Area     units.Area   `json:"area"`
	Diameter units.Length `json:"diameter"` // of a round choke with nothing in it
}

// Size returns the choke that passes a flow with a wanted air speed in it. c's
// own Area is not used. With OnVelocity the speed is the real one and
//
//	r = (1 - (c2/Cv)²/(2 cp T1))^(gamma/(gamma-1)), A = m/(rho2 c2)
//
// with OnArea it is the one without friction and A = m/(Cd rho2 c2) (H. N.
// Gupta, examples 9.1 and 9.3; M. L. Mathur, R. P. Sharma, examples 11.1 and
// 11.2; R. K. Rajput, examples 11.6 and 11.8; H. B. Keswani, example 9.15).
// Errors: a field outside its range, a speed beyond that of sound.
func (c Choke) Size(flow units.MassFlow, speed units.Speed, on On) (ChokeSize, error) {
	var l fault.List
	c.faults(&l, false)
	positive(&l, "flow", flow, units.KilogramsPerSecond(1e-9), units.KilogramsPerSecond(1e4))
	positive(&l, "speed", speed, units.MetresPerSecond(0.1), units.MetresPerSecond(1000))
	if on > OnVelocity {
		l.Add(fault.Fault{Code: fault.UnknownName, Path: "on", Rule: "OnArea or OnVelocity"})
	}
	if l.Len() > 0 {
		return ChokeSize{}, l.Err()
	}
	g := c.Gas.filled()
	free, t1 := speed.MetresPerSecond(), c.Temperature.Kelvins()
	passes := 1.0
	if on == OnVelocity {
		free /= c.Coefficient.Value()
	} else {
		passes = c.Coefficient.Value()
	}
	left := 1 - free*free/(2*g.CpJoulesPerKilogramKelvin*t1)
	r := math.Pow(math.Max(0, left), g.Gamma/(g.Gamma-1))
	if r < g.critical() {
		return ChokeSize{}, fault.Fault{Code: fault.OutOfRange, Path: "speed", Value: speed.String(), Unit: "m/s", Rule: "below the speed of sound in the choke"}
	}
	one := c
	one.Area = units.SquareMetres(1)
	th := one.at(r)
	th.Flow = flow
	a := flow.KilogramsPerSecond() / (passes * th.Density.KilogramsPerCubicMetre() * speed.MetresPerSecond())
	return ChokeSize{Throat: th, Area: units.SquareMetres(a), Diameter: circleDiameter(units.SquareMetres(a))}, nil
}

// Suction returns the pressure drop of a choke by the simple form for air of
// constant density: m²/(2 rho (Cd A)²) (M. L. Mathur, R. P. Sharma, example
// 11.3; R. K. Rajput, example 11.1). It is some 5 % low at 5 kPa. Errors:
// figures that are not above zero.
func Suction(flow units.MassFlow, density units.Density, area units.Area, coefficient units.Ratio) (units.Pressure, error) {
	var l fault.List
	positive(&l, "flow", flow, units.KilogramsPerSecond(0), units.KilogramsPerSecond(1e4))
	positive(&l, "density", density, units.KilogramsPerCubicMetre(0.01), units.KilogramsPerCubicMetre(100))
	positive(&l, "area", area, units.SquareMetres(1e-9), units.SquareMetres(1))
	positive(&l, "coefficient", coefficient, 0.05, 1)
	if l.Len() > 0 {
		return 0, l.Err()
	}
	u := flow.KilogramsPerSecond() / (density.KilogramsPerCubicMetre() * area.SquareMetres() * coefficient.Value())
	return units.Pascals(density.KilogramsPerCubicMetre() * u * u / 2), nil
}

// ChokeArea returns the area that passes a flow at a suction by the simple form
// for air of constant density: m/(Cd sqrt(2 rho dp)), the inverse of Suction
// (H. N. Gupta, example 9.5). Errors: figures that are not above zero.
func ChokeArea(flow units.MassFlow, density units.Density, suction units.Pressure, coefficient units.Ratio) (units.Area, error) {
	var l fault.List
	positive(&l, "flow", flow, units.KilogramsPerSecond(1e-9), units.KilogramsPerSecond(1e4))
	positive(&l, "density", density, units.KilogramsPerCubicMetre(0.01), units.KilogramsPerCubicMetre(100))
	positive(&l, "suction", suction, units.Pascals(0.001), units.Megapascals(1))
	positive(&l, "coefficient", coefficient, 0.05, 1)
	if l.Len() > 0 {
		return 0, l.Err()
	}
	return units.SquareMetres(flow.KilogramsPerSecond() / (coefficient.Value() * math.Sqrt(2*density.KilogramsPerCubicMetre()*suction.Pascals()))), nil
}

// SuctionAtSpeed returns the suction of air at a real speed with a coefficient
// on velocity: rho (c/Cv)²/2 (H. B. Keswani, Internal Combustion Engines, 4th
// ed. 2003, example 9.10). Errors: figures outside.
func SuctionAtSpeed(speed units.Speed, density units.Density, coefficient units.Ratio) (units.Pressure, error) {
	var l fault.List
	positive(&l, "speed", speed, units.MetresPerSecond(0), units.MetresPerSecond(340))
	positive(&l, "density", density, units.KilogramsPerCubicMetre(0.01), units.KilogramsPerCubicMetre(100))
	positive(&l, "coefficient", coefficient, 0.05, 1)
	if l.Len() > 0 {
		return 0, l.Err()
	}
	c := speed.MetresPerSecond() / coefficient.Value()
	return units.Pascals(density.KilogramsPerCubicMetre() * c * c / 2), nil
}

// Expansibility returns the factor on the flow of a fluid of constant density
// through a venturi of diameter ratio beta, 0 to 0.75, at r = p2/p1, 0.75 to 1:
//
//	e² = gamma r^(2/gamma)/(gamma-1) (1-beta⁴)/(1-beta⁴ r^(2/gamma))
//	     (1-r^((gamma-1)/gamma))/(1-r)
//
// (ISO 5167-4:2003, 5.6). beta 0 draws from still air. gamma is 1.01 to 1.7; 0
// takes 1.4. Errors: figures outside.
func Expansibility(beta, r, gamma float64) (float64, error) {
	var l fault.List
	if gamma == 0 {
		gamma = 1.4
	}
	if !(beta >= 0 && beta <= 0.75) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "beta", Rule: "0 to 0.75"})
	}
	if !(r >= 0.75 && r <= 1) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "r", Rule: "0.75 to 1, pressure in the throat over that upstream"})
	}
	if !(gamma > 1.01 && gamma < 1.7) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "gamma", Rule: "1.01 to 1.7, or 0 for 1.4"})
	}
	if l.Len() > 0 {
		return 0, l.Err()
	}
	if r == 1 {
		return 1, nil
	}
	b4, x := beta*beta*beta*beta, math.Pow(r, 2/gamma)
	// expm1 keeps the last factor whole where r is close to 1
	return math.Sqrt(gamma * x / (gamma - 1) * (1 - b4) / (1 - b4*x) * -math.Expm1((gamma-1)/gamma*math.Log(r)) / (1 - r)), nil
}
