package carburation

import (
	"math"

	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
)

// Reynolds returns the Reynolds number of a flow through a bore on its mean
// speed: 4 Q/(pi d nu). Errors: a flow outside 0 to 1 m³/s, a bore outside
// 0.001 mm to 1 m, a viscosity outside 0.001 to 10,000 mm²/s.
func Reynolds(flow units.VolumeFlow, bore units.Length, nu units.KinematicViscosity) (float64, error) {
	var l fault.List
	positive(&l, "flow", flow, 0, units.CubicMetresPerSecond(1))
	positive(&l, "bore", bore, units.Micrometre, units.Metre)
	positive(&l, "viscosity", nu, units.SquareMillimetresPerSecond(0.001), units.SquareMillimetresPerSecond(1e4))
	if l.Len() > 0 {
		return 0, l.Err()
	}
	return 4 * flow.CubicMetresPerSecond() / (math.Pi * bore.Metres() * nu.SquareMetresPerSecond()), nil
}

// ParallelBore returns the discharge coefficient of a parallel bore with square
// edges, length over bore 1.5 to 10, Reynolds number 10 to 20000, to ±0.02:
//
//	1/Cd = 1/Cu + 20/Re (1 + 2.25 l/d) - 0.005 (l/d)/(1 + 7.5 lg(0.00015 Re)²)
//	Cu = 0.827 - 0.0085 l/d from l/d 2 on, 0.810 from 1.5 to 2
//
// (A. Lichtarowicz, R. K. Duggins, E. Markland, J. Mech. Engng Sci. 7 (1965)
// 210-219, equation 12, read in extraction notes; one copy has 0.0015
// for 0.005, the others agree). A countersunk or burred entry moves it by 5 % to
// 15 %. Errors: figures outside.
func ParallelBore(reynolds, lengthOverBore float64) (float64, error) {
	var l fault.List
	if !(reynolds >= 10 && reynolds <= 20000) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "reynolds", Value: units.Value(reynolds).String(), Rule: "10 to 20000, on the bore"})
	}
	if !(lengthOverBore >= 1.5 && lengthOverBore <= 10) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "length_over_bore", Value: units.Value(lengthOverBore).String(), Rule: "1.5 to 10; in a shorter one the stream may leave the wall"})
	}
	if l.Len() > 0 {
		return 0, l.Err()
	}
	return parallelBore(reynolds, lengthOverBore), nil
}

func parallelBore(re, ld float64) float64 {
	cu := 0.810
	if ld >= 2 {
		cu = 0.827 - 0.0085*ld
	}
	lg := math.Log10(0.00015 * re)
	return 1 / (1/cu + 20/re*(1+2.25*ld) - 0.005*ld/(1+7.5*lg*lg))
}
