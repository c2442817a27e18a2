package air

import (
	"math"

	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
)

// SaturationOverWater returns the pressure of saturated vapour over liquid
// water, 0 °C to 373.946 °C, by IAPWS-IF97 equation 30 (IAPWS R7-97(2012),
// region 4; constants from memory, checked against the release's printed value
// at 300 K to its last digit). The error is a fault.OutOfRange.
func SaturationOverWater(t units.Temperature) (units.Pressure, error) {
	k := t.Kelvins()
	if !(k >= 273.15 && k <= 647.096) {
		return 0, fault.Fault{Code: fault.OutOfRange, Path: "temperature", Value: t.String(), Unit: "°C", Rule: "0 °C to 373.946 °C over liquid water"}
	}
	v := k - 0.23855557567849/(k-0.65017534844798e3)
	a := v*v + 0.11670521452767e4*v - 0.72421316703206e6
	b := -0.17073846940092e2*v*v + 0.12020824702470e5*v - 0.32325550322333e7
	c := 0.14915108613530e2*v*v - 0.48232657361591e4*v + 0.40511340542057e6
	q := 2 * c / (-b + math.Sqrt(b*b-4*a*c))
	return units.Megapascals(q * q * q * q), nil
}

// SaturationOverIce returns the pressure of saturated vapour over ice, -223 °C
// to 0.01 °C:
//
//	ln(p/611.657 Pa) = (a1 v^b1 + a2 v^b2 + a3 v^b3)/v, v = T/273.16 K
//
// (IAPWS R14-08(2011), equation 6; constants from memory, checked against the
// release's value at 230 K, also from memory). The error is a fault.OutOfRange.
func SaturationOverIce(t units.Temperature) (units.Pressure, error) {
	k := t.Kelvins()
	if !(k >= 50 && k <= 273.16) {
		return 0, fault.Fault{Code: fault.OutOfRange, Path: "temperature", Value: t.String(), Unit: "°C", Rule: "-223.15 °C to 0.01 °C over ice"}
	}
	v := k / 273.16
	s := -0.212144006e2*math.Pow(v, 0.333333333e-2) + 0.273203819e2*math.Pow(v, 0.120666667e1) - 0.610598130e1*math.Pow(v, 0.170333333e1)
	return units.Pascals(611.657 * math.Exp(s/v)), nil
}

// SaturationCIPM returns the pressure of saturated vapour over liquid water by
// the equation that CIPM-2007 uses: exp(A T² + B T + C + D/T) with A =
// 1.2378847e-5, B = -1.9121316e-2, C = 33.93711047, D = -6343.1645 (Picard et
// al., Metrologia 45 (2008) 149, equation A1.1). It was made for 0 °C to 30 °C
// or so; served from -60 °C, where it stands for supercooled water, to 60 °C.
// The error is a fault.OutOfRange.
func SaturationCIPM(t units.Temperature) (units.Pressure, error) {
	if c := t.Celsius(); !(c >= -60 && c <= 60) {
		return 0, fault.Fault{Code: fault.OutOfRange, Path: "temperature", Value: t.String(), Unit: "°C", Rule: "-60 °C to 60 °C"}
	}
	return units.Pascals(saturationCIPM(t.Kelvins())), nil
}
