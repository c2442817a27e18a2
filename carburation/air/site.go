package air

import (
	"math"

	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
)

// Site is the air of a place where an engine's power is wanted, or was
// declared. The vapour pressure is relative humidity times saturation.
type Site struct {
	Pressure       units.Pressure    // absolute
	Temperature    units.Temperature //
	VapourPressure units.Pressure    // 0 is dry air
}

// At returns the Site of a Weather, with saturation by SaturationCIPM.
func (w Weather) At() (Site, error) {
	var l fault.List
	w.faults(&l)
	if l.Len() > 0 {
		return Site{}, l.Err()
	}
	return Site{w.Pressure, w.Temperature, units.Pascals(w.Humidity.Value() * saturationCIPM(w.Temperature.Kelvins()))}, nil
}

// SiteOptions are the exponents of SitePower. The zero value takes those of an
// engine that is not blown, as the worked example has them.
type SiteOptions struct {
	VapourWeight        float64 // a; 0 takes 1
	PressureExponent    float64 // m; 0 takes 1
	TemperatureExponent float64 // n; 0 takes 0.75
}

// SiteResult is the power of an engine moved to another air.
type SiteResult struct {
	IndicatedRatio float64     `json:"indicated_ratio"` // k
	PowerRatio     float64     `json:"power_ratio"`     // alpha
	Power          units.Power `json:"power"`           // brake power at the site
	FuelRatio      float64     `json:"fuel_ratio"`      // beta = k/alpha, on fuel per unit of work
}

// SitePower returns the brake power at a site from that declared at a reference
// by the method of the ratio of indicated powers in the style of ISO 3046:
//
//	k = ((p - a pv)/(pr - a pvr))^m (Tr/T)^n
//	alpha = k - 0.7 (1 - k)(1/efficiency - 1), beta = k/alpha
//
// (M. L. Mathur, R. P. Sharma, Internal Combustion Engine, 8th ed. 2010,
// example 27.1). efficiency is mechanical, above 0 to 1. Errors: figures
// outside 20 kPa to 120 kPa and 213 K to 333 K, vapour that exceeds the
// pressure, or a site at which nothing is left.
func SitePower(power units.Power, efficiency units.Ratio, reference, site Site, opt SiteOptions) (SiteResult, error) {
	if opt.VapourWeight == 0 {
		opt.VapourWeight = 1
	}
	if opt.PressureExponent == 0 {
		opt.PressureExponent = 1
	}
	if opt.TemperatureExponent == 0 {
		opt.TemperatureExponent = 0.75
	}
	var l fault.List
	if x := power.Watts(); !(x > 0 && x < 1e9) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "power", Value: power.String(), Unit: "kW", Rule: "above 0 kW"})
	}
	if x := efficiency.Value(); !(x >= 0.2 && x <= 1) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "efficiency", Value: efficiency.String(), Rule: "0.2 to 1, mechanical"})
	}
	for _, s := range []struct {
		name string
		Site
	}{{"reference", reference}, {"site", site}} {
		if x := s.Pressure.Kilopascals(); !(x >= 20 && x <= 120) {
			l.Add(fault.Fault{Code: fault.OutOfRange, Path: s.name + ".pressure", Value: s.Pressure.String(), Unit: "kPa", Rule: "20 kPa to 120 kPa, absolute"})
		}
		if x := s.Temperature.Kelvins(); !(x >= 213 && x <= 333.15) {
			l.Add(fault.Fault{Code: fault.OutOfRange, Path: s.name + ".temperature", Value: s.Temperature.String(), Unit: "°C", Rule: "-60 °C to 60 °C"})
		}
		if x := s.VapourPressure.Pascals(); !(x >= 0 && x < s.Pressure.Pascals()/2) {
			l.Add(fault.Fault{Code: fault.OutOfRange, Path: s.name + ".vapour_pressure", Value: s.VapourPressure.String(), Unit: "kPa", Rule: "0 kPa to half the pressure"})
		}
	}
	for _, x := range []float64{opt.VapourWeight, opt.PressureExponent, opt.TemperatureExponent} {
		if !(x > 0 && x <= 2) {
			l.Add(fault.Fault{Code: fault.OutOfRange, Path: "options", Rule: "weight and exponents above 0, to 2"})
		}
	}
	if l.Len() > 0 {
		return SiteResult{}, l.Err()
	}
	dry := func(s Site) float64 { return s.Pressure.Pascals() - opt.VapourWeight*s.VapourPressure.Pascals() }
	k := math.Pow(dry(site)/dry(reference), opt.PressureExponent) * math.Pow(reference.Temperature.Kelvins()/site.Temperature.Kelvins(), opt.TemperatureExponent)
	alpha := k - 0.7*(1-k)*(1/efficiency.Value()-1)
	if !(alpha > 0) {
		return SiteResult{}, fault.Fault{Code: fault.Conflict, Path: "site", Rule: "air in which the engine still overcomes its own friction"}
	}
	return SiteResult{IndicatedRatio: k, PowerRatio: alpha, Power: power.Times(alpha), FuelRatio: k / alpha}, nil
}
