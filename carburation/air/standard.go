package air

import (
	"math"

	"example.com/benchbook/refdata"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
)

// Defining constants of the standard atmosphere, ISO 2533:1975 clause 2 and
// table 1, read in copies of the tables that they reproduce.
const (
	gravity     = 9.80665   // m/s2
	gasConstant = 287.05287 // J/(kg K)
	seaPressure = 101325.0  // Pa
	seaKelvins  = 288.15    // K
	gamma       = 1.4       // ratio of specific heats
	earthRadius = 6356766.0 // m, the nominal radius of ISO 2533 2.3
	sutherlandB = 1.458e-6  // kg/(m s K^1/2)
	sutherlandS = 110.4     // K
	lowest      = -2000.0   // m geopotential
	highest     = 32000.0   // m geopotential
	seaDensity  = seaPressure / (gasConstant * seaKelvins)
)

// layer is a part of the standard atmosphere in which temperature changes
// evenly with geopotential height.
type layer struct{ base, kelvins, lapse float64 } // m, K, K/m

func layers() [3]layer {
	return [3]layer{{0, seaKelvins, -0.0065}, {11000, 216.65, 0}, {20000, 216.65, 0.001}}
}

// Atmosphere is the standard atmosphere at one height.
type Atmosphere struct {
	Height           units.Length           `json:"height"`           // geopotential
	GeometricHeight  units.Length           `json:"geometric_height"` // by the tape
	Temperature      units.Temperature      `json:"temperature"`
	Pressure         units.Pressure         `json:"pressure"` // absolute
	Density          units.Density          `json:"density"`
	SoundSpeed       units.Speed            `json:"sound_speed"`
	Viscosity        units.DynamicViscosity `json:"viscosity"`
	PressureRatio    float64                `json:"pressure_ratio"`    // to sea level
	DensityRatio     float64                `json:"density_ratio"`     // to sea level
	TemperatureRatio float64                `json:"temperature_ratio"` // to sea level
}

// Weather returns the standard air as a dry day.
func (a Atmosphere) Weather() Weather {
	return Weather{Pressure: a.Pressure, Temperature: a.Temperature}
}

// ISO2533 is the source of the standard atmosphere.
func ISO2533() refdata.Source {
	return refdata.Source{Title: "ISO 2533:1975 Standard Atmosphere", Clause: "clause 2", Read: "public copies of its tables", Status: refdata.Published}
}

// Standard returns the standard atmosphere at geopotential height h, -2 km to
// 32 km: in each layer T = Tb + L (h - hb), and p = pb (T/Tb)^(-g/(R L)), or
// p = pb exp(-g (h - hb)/(R Tb)) where L is zero; density p/(R T), speed of
// sound sqrt(1.4 R T), viscosity 1.458e-6 T^1.5/(T + 110.4) (ISO 2533:1975,
// clauses 2.4 to 2.14). A real day departs by some 3 % in pressure and 10 % in
// density. The error is a fault.OutOfRange.
func Standard(h units.Length) (Atmosphere, error) {
	m := h.Metres()
	if !(m >= lowest && m <= highest) {
		return Atmosphere{}, fault.Fault{Code: fault.OutOfRange, Path: "height", Value: h.String(), Unit: "m", Rule: "-2000 m to 32000 m geopotential"}
	}
	t, p := standardAt(m)
	rho := p / (gasConstant * t)
	return Atmosphere{
		Height: h, GeometricHeight: geometric(h), Temperature: units.Kelvins(t), Pressure: units.Pascals(p), Density: units.KilogramsPerCubicMetre(rho),
		SoundSpeed: units.MetresPerSecond(math.Sqrt(gamma * gasConstant * t)), Viscosity: units.PascalSeconds(sutherlandB * t * math.Sqrt(t) / (t + sutherlandS)),
		PressureRatio: p / seaPressure, DensityRatio: rho / seaDensity, TemperatureRatio: t / seaKelvins,
	}, nil
}

// StandardGeometric is Standard at a height by the tape.
func StandardGeometric(z units.Length) (Atmosphere, error) {
	if z.Metres() <= -earthRadius || !units.Finite(z) {
		return Atmosphere{}, fault.Fault{Code: fault.OutOfRange, Path: "height", Value: z.String(), Unit: "m", Rule: "-2000 m to 32000 m geopotential"}
	}
	a, err := Standard(z.Times(earthRadius / (earthRadius + z.Metres())))
	if err != nil {
		return a, err
	}
	a.GeometricHeight = z
	return a, nil
}

// standardAt returns temperature (K) and pressure (Pa) at m metres.
func standardAt(m float64) (t, p float64) {
	p = seaPressure
	all := layers()
	for i, l := range all {
		top := math.Inf(1)
		if i+1 < len(all) {
			top = all[i+1].base
		}
		t = l.kelvins + l.lapse*(math.Min(m, top)-l.base)
		p *= acrossLayer(l, t, math.Min(m, top)-l.base)
		if m <= top {
			break
		}
	}
	return t, p
}

// acrossLayer returns p/pb after a rise within a layer to temperature t.
func acrossLayer(l layer, t, rise float64) float64 {
	if l.lapse == 0 {
		return math.Exp(-gravity * rise / (gasConstant * l.kelvins))
	}
	return math.Pow(t/l.kelvins, -gravity/(gasConstant*l.lapse))
}

// PressureHeight returns the geopotential height at which standard air has
// pressure p, the inverse of Standard, closed form in each layer. The range is
// that of Standard: 127774 Pa down to 868 Pa.
func PressureHeight(p units.Pressure) (units.Length, error) {
	pa := p.Pascals()
	_, most := standardAt(lowest)
	_, least := standardAt(highest)
	if !(pa <= most && pa >= least) {
		return 0, fault.Fault{Code: fault.OutOfRange, Path: "pressure", Value: p.String(), Unit: "Pa", Rule: "868 Pa to 127774 Pa, absolute"}
	}
	pb := seaPressure
	all := layers()
	for i, l := range all {
		if i+1 < len(all) {
			_, below := standardAt(all[i+1].base)
			if pa < below {
				pb = below
				continue
			}
		}
		if l.lapse == 0 {
			return units.Metres(l.base - gasConstant*l.kelvins/gravity*math.Log(pa/pb)), nil
		}
		return units.Metres(l.base + l.kelvins/l.lapse*(math.Pow(pa/pb, -gasConstant*l.lapse/gravity)-1)), nil
	}
	return 0, nil // not reached: the last layer has no top
}

// DensityHeight returns the geopotential height at which standard air has the
// density d ("density altitude"): how high the day feels to a carburettor. The
// range is that of Standard: 1.478 kg/m³ down to 0.01323 kg/m³.
func DensityHeight(d units.Density) (units.Length, error) {
	rho := d.KilogramsPerCubicMetre()
	at := func(m float64) float64 { t, p := standardAt(m); return p / (gasConstant * t) }
	if !(rho <= at(lowest) && rho >= at(highest)) {
		return 0, fault.Fault{Code: fault.OutOfRange, Path: "density", Value: d.String(), Unit: "kg/m³", Rule: "0.01323 kg/m³ to 1.478 kg/m³"}
	}
	rhob := seaDensity
	all := layers()
	for i, l := range all {
		if i+1 < len(all) {
			if below := at(all[i+1].base); rho < below {
				rhob = below
				continue
			}
		}
		if l.lapse == 0 {
			return units.Metres(l.base - gasConstant*l.kelvins/gravity*math.Log(rho/rhob)), nil
		}
		return units.Metres(l.base + l.kelvins/l.lapse*(math.Pow(rho/rhob, 1/(-gravity/(gasConstant*l.lapse)-1))-1)), nil
	}
	return 0, nil // not reached: the last layer has no top
}

// Geopotential returns the geopotential height of a height by the tape:
// r z/(r + z), r = 6356766 m (ISO 2533:1975, 2.3). Errors: a height outside -5 km to
// 1000 km.
func Geopotential(z units.Length) (units.Length, error) {
	if err := ordinary(z); err != nil {
		return 0, err
	}
	return z.Times(earthRadius / (earthRadius + z.Metres())), nil
}

// Geometric returns the height by the tape of a geopotential height:
// r h/(r - h), r = 6356766 m (ISO 2533:1975, 2.3). Errors: a height outside -5 km to
// 1000 km.
func Geometric(h units.Length) (units.Length, error) {
	if err := ordinary(h); err != nil {
		return 0, err
	}
	return geometric(h), nil
}

func geometric(h units.Length) units.Length {
	return h.Times(earthRadius / (earthRadius - h.Metres()))
}

func ordinary(height units.Length) error {
	if !(height >= units.Kilometres(-5) && height <= units.Kilometres(1000)) {
		return fault.Fault{Code: fault.OutOfRange, Path: "height", Value: height.String(), Unit: "m", Rule: "-5 km to 1000 km"}
	}
	return nil
}
