package air

import (
	"math"

	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
)

// Weather is the air of one place and hour. Its zero value is no weather at
// all and is refused.
type Weather struct {
	Pressure    units.Pressure    `json:"pressure"` // absolute, of the place: not reduced to sea level
	Temperature units.Temperature `json:"temperature"`
	Humidity    units.Ratio       `json:"humidity"` // relative, 0 to 1, over liquid water; 0 is dry air
}

// Options are the choices of this package. The zero value takes the defaults.
type Options struct {
	CO2 units.Ratio // mole fraction of carbon dioxide; 0 takes 0.0004, the reference figure of CIPM-2007
}

func (o Options) co2() float64 {
	if o.CO2 == 0 {
		return 0.0004
	}
	return o.CO2.Value()
}

func (w Weather) faults(l *fault.List) {
	if p := w.Pressure.Hectopascals(); !(p >= 200 && p <= 1200) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "pressure", Value: w.Pressure.String(), Unit: "hPa", Rule: "200 hPa to 1200 hPa, absolute"})
	}
	if t := w.Temperature.Celsius(); !(t >= -60 && t <= 60) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "temperature", Value: w.Temperature.String(), Unit: "°C", Rule: "-60 °C to 60 °C"})
	}
	if h := w.Humidity.Value(); !(h >= 0 && h <= 1) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "humidity", Value: w.Humidity.String(), Rule: "0 to 1, relative"})
	}
}

func (o Options) faults(l *fault.List) {
	if c := o.co2(); !(c >= 0 && c <= 0.02) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "options.co2", Value: o.CO2.String(), Rule: "0 to 0.02, mole fraction"})
	}
}

// MoistAir is air with its water vapour, and the figures on the way to its
// density.
type MoistAir struct {
	Density            units.Density  `json:"density"`
	DryDensity         units.Density  `json:"dry_density"`     // mass of dry air per volume: what burns fuel
	Saturation         units.Pressure `json:"saturation"`      // of vapour over liquid water
	Enhancement        float64        `json:"enhancement"`     // factor on the saturation pressure in air
	VapourFraction     float64        `json:"vapour_fraction"` // mole fraction
	VapourPressure     units.Pressure `json:"vapour_pressure"`
	Compressibility    float64        `json:"compressibility"`
	DryMassShare       float64        `json:"dry_mass_share"`      // kg of dry air per kg of moist air
	DensityUncertainty units.Density  `json:"density_uncertainty"` // standard, of the formula alone
	InDomain           bool           `json:"in_domain"`           // 600 hPa to 1100 hPa and 15 °C to 27 °C
}

// Moist returns moist air by the equation CIPM-2007 (A. Picard, R. S. Davis,
// M. Gläser, K. Fujii, Metrologia 45 (2008) 149-155):
//
//	rho = p Ma/(Z R T) (1 - xv (1 - Mv/Ma))
//	xv = h f psv/p
//
// with psv, f and Z by its equations, R = 8.314472 J/(mol K). The formula holds
// from 600 hPa to 1100 hPa and 15 °C to 27 °C, there good to 22e-6 of the
// density (the paper's figure, from memory); outside it is served with
// InDomain false and an uncertainty of 2e-4, which is judged from the two
// published figures outside the domain. Range -60 °C to 60 °C, 200 hPa to
// 1200 hPa. Errors name every field outside, and humidity that the pressure
// cannot hold.
func Moist(w Weather, opt Options) (MoistAir, error) {
	var l fault.List
	w.faults(&l)
	opt.faults(&l)
	if l.Len() > 0 {
		return MoistAir{}, l.Err()
	}
	const r, mv = 8.314472, 0.01801528 // J/(mol K), kg/mol
	p, k, t := w.Pressure.Pascals(), w.Temperature.Kelvins(), w.Temperature.Celsius()
	ma := 0.02896546 + 0.012011*(opt.co2()-0.0004) // kg/mol
	psv := saturationCIPM(k)
	f := 1.00062 + 3.14e-8*p + 5.6e-7*t*t
	xv := w.Humidity.Value() * f * psv / p
	z := 1 - p/k*(1.58123e-6-2.9331e-8*t+1.1043e-10*t*t+(5.707e-6-2.051e-8*t)*xv+(1.9898e-4-2.376e-6*t)*xv*xv) + p/k*p/k*(1.83e-11-0.765e-8*xv*xv)
	rho := p * ma / (z * r * k) * (1 - xv*(1-mv/ma))
	share := (1 - xv) * ma / ((1-xv)*ma + xv*mv)
	dry := rho * share
	in := p >= 60000 && p <= 110000 && t >= 15 && t <= 27
	u := 22e-6
	if !in {
		u = 2e-4
	}
	return MoistAir{
		Density: units.KilogramsPerCubicMetre(rho), DryDensity: units.KilogramsPerCubicMetre(dry), Saturation: units.Pascals(psv), Enhancement: f,
		VapourFraction: xv, VapourPressure: units.Pascals(xv * p), Compressibility: z, DryMassShare: share,
		DensityUncertainty: units.KilogramsPerCubicMetre(rho * u), InDomain: in,
	}, nil
}

// MoistSimple returns moist air as a mixture of ideal gases:
//
//	rho = (p - 0.378 pv)/(287.055 T), pv = h psv
//
// with psv over liquid water. It agrees with Moist to 5e-4 from 10 °C to 30 °C
// near sea level. Compressibility and Enhancement are 1. Range and errors are
// those of Moist; InDomain is never true, being that of the other equation.
func MoistSimple(w Weather) (MoistAir, error) {
	var l fault.List
	w.faults(&l)
	if l.Len() > 0 {
		return MoistAir{}, l.Err()
	}
	p, k := w.Pressure.Pascals(), w.Temperature.Kelvins()
	psv := saturationCIPM(k)
	pv := w.Humidity.Value() * psv
	rho := (p - 0.378*pv) / (287.055 * k)
	dry := (p - pv) / (287.055 * k)
	return MoistAir{
		Density: units.KilogramsPerCubicMetre(rho), DryDensity: units.KilogramsPerCubicMetre(dry), Saturation: units.Pascals(psv), Enhancement: 1,
		VapourFraction: pv / p, VapourPressure: units.Pascals(pv), Compressibility: 1, DryMassShare: dry / rho,
		DensityUncertainty: units.KilogramsPerCubicMetre(rho * 5e-4),
	}, nil
}

func saturationCIPM(k float64) float64 {
	return math.Exp(1.2378847e-5*k*k - 1.9121316e-2*k + 33.93711047 - 6343.1645/k)
}
