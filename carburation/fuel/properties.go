package fuel

import (
	"math"

	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
)

// Err returns the faults in a fuel's figures, or nil.
func (f Fuel) Err() error {
	var l fault.List
	if !f.burns() {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "afr", Value: f.AFR.String(), Rule: "1 to 40 kg of air per kg of fuel"})
	}
	if d := f.Density.KilogramsPerCubicMetre(); !(d >= 400 && d <= 1300) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "density", Value: f.Density.String(), Unit: "kg/m³", Rule: "400 kg/m³ to 1300 kg/m³"})
	}
	if t := f.DensityTemperature.Celsius(); !(t >= -40 && t <= 60) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "density_temperature", Value: f.DensityTemperature.String(), Unit: "°C", Rule: "-40 °C to 60 °C"})
	}
	if x := f.ExpansionPerKelvin; !(x >= 0 && x <= 0.003) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "expansion_per_kelvin", Unit: "1/K", Rule: "0 to 0.003 per kelvin"})
	}
	if !f.heats() {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "heating_value", Value: f.HeatingValue.String(), Unit: "MJ/kg", Rule: "0 MJ/kg to 130 MJ/kg"})
	}
	if !f.chills() {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "latent_heat", Value: f.LatentHeat.String(), Unit: "kJ/kg", Rule: "0 kJ/kg to 3000 kJ/kg"})
	}
	if v := f.Viscosity.SquareMillimetresPerSecond(); !(v >= 0 && v <= 100) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "viscosity", Value: f.Viscosity.String(), Unit: "mm²/s", Rule: "0 mm²/s to 100 mm²/s"})
	}
	for _, p := range f.Composition.parts() {
		if v := p.share.Value(); !(v >= 0 && v <= 1) {
			l.Add(fault.Fault{Code: fault.OutOfRange, Path: "composition." + p.name, Value: p.share.String(), Rule: "0 to 1, by mass"})
		}
	}
	return l.Err()
}

func (f Fuel) burns() bool { return f.AFR >= 1 && f.AFR <= 40 }

func (f Fuel) heats() bool {
	v := f.HeatingValue.MegajoulesPerKilogram()
	return v >= 0 && v <= 130
}

func (f Fuel) chills() bool {
	v := f.LatentHeat.KilojoulesPerKilogram()
	return v >= 0 && v <= 3000
}

// PetroleumExpansion returns the expansion of volume per kelvin at 15 °C of a
// petrol of density rho at 15 °C, 653 kg/m³ to 770 kg/m³:
// 346.4228/rho² + 0.4388/rho (API MPMS chapter 11.1, gasoline group, constants
// read in public programs). Petrol of 745 kg/m³ gives 0.00121. The error is a
// fault.OutOfRange.
func PetroleumExpansion(density15 units.Density) (perKelvin float64, err error) {
	d := density15.KilogramsPerCubicMetre()
	if !(d >= 653 && d <= 770.3) {
		return 0, fault.Fault{Code: fault.OutOfRange, Path: "density", Value: density15.String(), Unit: "kg/m³", Rule: "653 kg/m³ to 770 kg/m³ at 15 °C"}
	}
	return 346.4228/(d*d) + 0.4388/d, nil
}

// DensityAt returns the density at a temperature of -40 °C to 60 °C:
// rho0 exp(-a dt (1 + 0.8 a dt)), a the expansion at the temperature of the
// density in the table (API MPMS chapter 11.1). Errors: those of Fuel.Err, a
// temperature outside.
func (f Fuel) DensityAt(t units.Temperature) (units.Density, error) {
	var l fault.List
	l.Under("fuel", f.Err())
	if c := t.Celsius(); !(c >= -40 && c <= 60) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "temperature", Value: t.String(), Unit: "°C", Rule: "-40 °C to 60 °C"})
	}
	if l.Len() > 0 {
		return 0, l.Err()
	}
	x := f.ExpansionPerKelvin * (t.Kelvins() - f.DensityTemperature.Kelvins())
	return f.Density.Times(math.Exp(-x * (1 + 0.8*x))), nil
}

// LatentHeatPerAir returns the heat that evaporating the fuel takes from each
// kilogram of air of an exactly burning charge: what chills it. Ethanol gives
// 44 Btu per pound of air, petrol some 10. It is zero for an AFR or a
// latent heat that Err refuses.
func (f Fuel) LatentHeatPerAir() units.SpecificEnergy {
	if !f.burns() || !f.chills() {
		return 0
	}
	return f.LatentHeat.Times(1 / f.AFR.Value())
}

// HeatPerAir returns the net heat of each kilogram of air of an exactly burning
// charge: fuels differ by far less in this than in heating value. It is zero for
// an AFR or a heating value that Err refuses.
func (f Fuel) HeatPerAir() units.SpecificEnergy {
	if !f.burns() || !f.heats() {
		return 0
	}
	return f.HeatingValue.Times(1 / f.AFR.Value())
}

// NetFromGross returns the net heating value, water leaving as vapour, from the
// gross one and the share of hydrogen by mass: gross - 9 h latent (M. L. Mathur,
// R. P. Sharma, Internal Combustion Engine, 8th ed. 2010, example 8.1). latent
// is that of water; zero takes 2442 kJ/kg (25 °C). Errors: a share outside 0 to
// 0.3, or heats that leave nothing.
func NetFromGross(gross units.SpecificEnergy, hydrogen units.Ratio, latent units.SpecificEnergy) (units.SpecificEnergy, error) {
	if latent == 0 {
		latent = units.KilojoulesPerKilogram(2442)
	}
	var l fault.List
	if h := hydrogen.Value(); !(h >= 0 && h <= 0.3) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "hydrogen", Value: hydrogen.String(), Rule: "0 to 0.3, by mass"})
	}
	if v := latent.KilojoulesPerKilogram(); !(v >= 2000 && v <= 2600) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "latent", Value: latent.String(), Unit: "kJ/kg", Rule: "2000 kJ/kg to 2600 kJ/kg, or 0 for the default"})
	}
	net := gross - latent.Times(9*hydrogen.Value())
	if !(net > 0) || !units.Finite(net) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "gross", Value: gross.String(), Unit: "MJ/kg", Rule: "more than the water takes away"})
	}
	if l.Len() > 0 {
		return 0, l.Err()
	}
	return net, nil
}

// Swap is what a change of fuel asks of every jet.
type Swap struct {
	FlowFactor float64 `json:"flow_factor"` // on a flow number, lambda kept
	BoreFactor float64 `json:"bore_factor"` // on a bore
	Mixture    float64 `json:"mixture"`     // of lambda with the jets left alone: above 1 is weaker
}

// JetFactor returns what a change of fuel asks of every jet to keep lambda, at
// a temperature of the fuel:
//
//	flow = (AFR1/AFR2) sqrt(rho1/rho2), bore = sqrt(flow)
//
// Petrol without alcohol to one with 10 % gives flow 1.04, to methanol 2.2. The
// needle jet, pilot, float seat and tap must grow alike. Errors are those of
// Fuel.DensityAt, with "from" or "to" before the path.
func JetFactor(from, to Fuel, at units.Temperature) (Swap, error) {
	var l fault.List
	a, errA := from.DensityAt(at)
	b, errB := to.DensityAt(at)
	l.Under("from", errA)
	l.Under("to", errB)
	if l.Len() > 0 {
		return Swap{}, l.Err()
	}
	x := from.AFR.Ratio(to.AFR) * math.Sqrt(a.Ratio(b))
	return Swap{FlowFactor: x, BoreFactor: math.Sqrt(x), Mixture: x}, nil
}
