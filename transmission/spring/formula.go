package spring

import (
	"math"

	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
)

// Rate returns the rate of a coil spring of round wire, k = G d⁴/(8 D³ n), for
// wire d, mean coil diameter D, n active coils and shear modulus g. It holds for
// D/d of 4 to 20, small helix angle and n of 2 or more; it is computed for D/d
// of 1.2 to 100 and n of 0.01 to 1000 (EN 13906-1, from memory; Bhandari, Design
// of Machine Elements, ex. 10.7). Errors: a figure not above zero, D/d outside.
func Rate(d, mean units.Length, active float64, g units.Pressure) (units.SpringRate, error) {
	var l fault.List
	checkCoil(&l, d, mean)
	checkActive(&l, active)
	positive(&l, "shear_modulus", g)
	if err := l.Err(); err != nil {
		return 0, err
	}
	return units.NewtonsPerMillimetre(rate(d.Millimetres(), mean.Millimetres(), active, g.Megapascals())), nil
}

// Stress returns the torsional stress at the inside of the coil,
// K · 8 F D/(π d³), K being the factor named, for load f on wire d at mean coil
// diameter D. A load of zero is allowed. Errors as for [Rate].
func Stress(f units.Force, d, mean units.Length, k Factor) (units.Pressure, error) {
	var l fault.List
	notNegative(&l, "load", f)
	checkCoil(&l, d, mean)
	checkFactor(&l, k)
	if err := l.Err(); err != nil {
		return 0, err
	}
	return units.Megapascals(k.at(mean.Ratio(d)) * torsion(f.Newtons(), d.Millimetres(), mean.Millimetres())), nil
}

// LoadAtStress returns the load at which the stress with the factor named
// reaches tau: F = π d³ tau/(8 K D). With the yield stress for tau it is the
// load to yield (Sadhu Singh, Machine Design, ex. 8.3). Errors as for [Rate].
func LoadAtStress(tau units.Pressure, d, mean units.Length, k Factor) (units.Force, error) {
	var l fault.List
	notNegative(&l, "stress", tau)
	checkCoil(&l, d, mean)
	checkFactor(&l, k)
	if err := l.Err(); err != nil {
		return 0, err
	}
	return units.Newtons(tau.Megapascals() / (k.at(mean.Ratio(d)) * torsion(1, d.Millimetres(), mean.Millimetres()))), nil
}

// SetLoss returns the load a tired spring has lost at any set length: its rate
// times what it is short of its free length when new. Wire, coil and count are
// unchanged by taking a set, so the rate is too. A spring longer than new gives
// a negative loss. Derived from statics.
func SetLoss(rate units.SpringRate, freeNew, freeNow units.Length) units.Force {
	return units.Newtons(rate.NewtonsPerMillimetre() * (freeNew - freeNow).Millimetres())
}

// millimetre and newton forms, shared by the exported ones

func rate(d, mean, n, g float64) float64 { return g * d * d * d * d / (8 * mean * mean * mean * n) }
func torsion(f, d, mean float64) float64 { return 8 * f * mean / (math.Pi * d * d * d) }

func checkCoil(l *fault.List, d, mean units.Length) {
	a, b := positive(l, "wire", d), positive(l, "mean_diameter", mean)
	if a && b {
		checkIndex(l, "mean_diameter", mean.Ratio(d))
	}
}

func checkActive(l *fault.List, n float64) {
	if !(n >= 0.01 && n <= 1000) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "active_coils", Value: number(n), Rule: "must be 0.01 to 1000"})
	}
}
