package carburation

import (
	"math"

	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/solve"
)

// Emulsion is a well that fuel enters through a jet and air through a bleed,
// and that a mixture of both leaves through an outlet.
type Emulsion struct {
	Jet     units.Area   // effective: coefficient times area
	Bleed   units.Area   // effective; 0 is no bleed
	Outlet  units.Area   // effective
	Head    units.Length // of the fuel level over the jet, 0 or more
	Rise    units.Length // of the outlet over the fuel level
	Air     units.Density
	Fuel    units.Density
	Ambient units.Pressure // absolute; outside air over the float and at the bleed
}

// Emulsified is what leaves a well.
type Emulsified struct {
	Fuel    units.MassFlow `json:"fuel"`
	Bled    units.MassFlow `json:"bled"`    // air through the bleed
	Well    units.Pressure `json:"well"`    // suction in the well, below ambient
	Density units.Density  `json:"density"` // of the mixture, even
	Braked  float64        `json:"braked"`  // fuel over that without the bleed
}

// Draw returns what a suction at the outlet draws. The pressure in the well is
// that at which what enters leaves:
//
//	fuel = CAj sqrt(2 rho_f (s + rho_f g h)), air = CAb sqrt(2 rho_a s),
//	out  = CAo sqrt(2 rho_m (dp - s - rho_m g z)), rho_m the even mixture
//
// s being the suction in the well. The mixture is taken as even, which small
// passages are not (S. Arias, T. A. Shedd, J. Fluids Eng. 127 (2005) 778,
// abstract): the bleed's area is a figure to fit, not to measure. Errors: a
// field outside its range, a suction that lifts nothing.
func (e Emulsion) Draw(suction units.Pressure) (Emulsified, error) {
	var l fault.List
	small, big := units.SquareMillimetres(1e-5), units.SquareMillimetres(1e4)
	positive(&l, "jet", e.Jet, small, big)
	positive(&l, "bleed", e.Bleed, 0, big)
	positive(&l, "outlet", e.Outlet, small, big)
	positive(&l, "head", e.Head, 0, units.Millimetres(500))
	positive(&l, "rise", e.Rise, units.Millimetres(-100), units.Millimetres(100))
	positive(&l, "air", e.Air, units.KilogramsPerCubicMetre(0.1), units.KilogramsPerCubicMetre(5))
	positive(&l, "fuel", e.Fuel, units.KilogramsPerCubicMetre(400), units.KilogramsPerCubicMetre(2000))
	positive(&l, "ambient", e.Ambient, units.Kilopascals(10), units.Kilopascals(200))
	if !(suction > 0 && suction < e.Ambient.Times(0.4)) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "suction", Value: suction.String(), Unit: "Pa", Rule: "above zero, below four tenths of the ambient pressure, where air would choke"})
	}
	if l.Len() > 0 {
		return Emulsified{}, l.Err()
	}
	w := well{jet: e.Jet.SquareMetres(), bleed: e.Bleed.SquareMetres(), outlet: e.Outlet.SquareMetres(), rhoA: e.Air.KilogramsPerCubicMetre(), rhoF: e.Fuel.KilogramsPerCubicMetre()}
	w.head, w.rise = w.rhoF*standardGravity*e.Head.Metres(), standardGravity*e.Rise.Metres()
	dp := suction.Pascals()
	s, ok := w.solve(dp)
	if !ok {
		return Emulsified{}, fault.Fault{Code: fault.OutOfRange, Path: "suction", Value: suction.String(), Unit: "Pa", Rule: "enough to lift the mixture to the outlet"}
	}
	f, a, m := w.in(s)
	out := Emulsified{Fuel: units.KilogramsPerSecond(f), Bled: units.KilogramsPerSecond(a), Well: units.Pascals(s), Density: units.KilogramsPerCubicMetre(m)}
	plain := w
	plain.bleed = 0
	if s0, ok := plain.solve(dp); ok {
		if f0, _, _ := plain.in(s0); f0 > 0 {
			out.Braked = f / f0
		}
	}
	return out, nil
}

// well is an Emulsion in SI numbers.
type well struct{ jet, bleed, outlet, rhoA, rhoF, head, rise float64 }

// in returns fuel and air entering at well suction s, and their even density.
func (w well) in(s float64) (fuel, air, density float64) {
	fuel = w.jet * math.Sqrt(2*w.rhoF*math.Max(0, s+w.head))
	air = w.bleed * math.Sqrt(2*w.rhoA*math.Max(0, s))
	if fuel+air == 0 {
		return 0, 0, w.rhoF
	}
	return fuel, air, (fuel + air) / (fuel/w.rhoF + air/w.rhoA)
}

// solve returns the well suction at which in and out agree.
func (w well) solve(dp float64) (float64, bool) {
	over := func(s float64) float64 {
		f, a, m := w.in(s)
		return f + a - w.outlet*math.Sqrt(2*m*math.Max(0, dp-s-m*w.rise))
	}
	low := -w.head
	if w.bleed > 0 {
		low = 0 // the well stands open to the air through the bleed
	}
	if over(low) >= 0 {
		// more comes in by the level alone than can leave: the well brims and the
		// outlet sets the flow, which this model does not follow
		return 0, false
	}
	s, err := solve.Root(over, low, dp, 1e-12*dp)
	return s, err == nil
}
