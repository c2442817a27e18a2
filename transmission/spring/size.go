package spring

import (
	"math"

	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/solve"
)

// WireFor returns the wire diameter at which load f stresses a spring of index
// D/d to tau with the factor named: d = √(8 K F C/(π τ)) (Bhandari, Design of
// Machine Elements, ex. 10.7). Errors: a figure not above zero, an index outside
// 1.2 to 100.
func WireFor(f units.Force, index float64, tau units.Pressure, k Factor) (units.Length, error) {
	var l fault.List
	positive(&l, "load", f)
	checkIndex(&l, "index", index)
	positive(&l, "stress", tau)
	checkFactor(&l, k)
	if err := l.Err(); err != nil {
		return 0, err
	}
	return units.Millimetres(math.Sqrt(8 * k.at(index) * f.Newtons() * index / (math.Pi * tau.Megapascals()))), nil
}

// WireForLaw returns the wire diameter at which load f on mean coil diameter
// mean, with the number k as factor, stresses the wire to a given share of its
// strength by size: 8 k F D/(π d³) = share · S(d) (Wentzell, Machine Design,
// 2007, ex. 8.1). For a power law it is d^(3-m) = 8 k F D/(π share A). The size
// found may lie outside the law's range: ask [Law.At]. Errors: a figure not
// above zero, no such wire between 0.01 and 100 mm.
func WireForLaw(f units.Force, mean units.Length, k, share float64, w Law) (units.Length, error) {
	var l fault.List
	positive(&l, "load", f)
	positive(&l, "mean_diameter", mean)
	within(&l, "factor", k, 0.1, 10)
	within(&l, "share", share, 0.01, 1)
	l.Under("law", w.check())
	if err := l.Err(); err != nil {
		return 0, err
	}
	most := 100.0
	if w.Form == Logarithmic { // stop where the line is still at a tenth of its strength at 1 mm; one that does not fall goes on without end
		most = min(most, math.Pow(10, 0.9*w.A.Ratio(w.B)))
	}
	// logarithms, so that the function is smooth over five decades
	excess := func(lg float64) float64 {
		d := math.Exp(lg)
		return math.Log(k*torsion(f.Newtons(), d, mean.Millimetres())) - math.Log(share*w.at(d))
	}
	lg, err := solve.Root(excess, math.Log(0.01), math.Log(most), 1e-14)
	if err != nil {
		return 0, fault.Fault{Code: fault.OutOfRange, Path: "load", Value: f.String(), Unit: "N", Rule: "no wire from 0.01 to " + number(most) + " mm carries it at that share"}
	}
	return units.Millimetres(math.Exp(lg)), nil
}

// CoilsFor returns the number of active coils that gives a rate:
// n = G d⁴/(8 D³ k). Errors: a figure not above zero, D/d outside 1.2 to 100.
func CoilsFor(rate units.SpringRate, d, mean units.Length, g units.Pressure) (float64, error) {
	var l fault.List
	positive(&l, "rate", rate)
	checkCoil(&l, d, mean)
	positive(&l, "shear_modulus", g)
	if err := l.Err(); err != nil {
		return 0, err
	}
	w, m := d.Millimetres(), mean.Millimetres()
	return g.Megapascals() * w * w * w * w / (8 * m * m * m * rate.NewtonsPerMillimetre()), nil
}

// MeanFor returns the mean coil diameter that gives a rate:
// D = ∛(G d⁴/(8 n k)) (Sadhu Singh, Machine Design, ex. 8.8). Errors: a figure
// not above zero, an answer with D/d outside 1.2 to 100.
func MeanFor(rate units.SpringRate, d units.Length, active float64, g units.Pressure) (units.Length, error) {
	var l fault.List
	positive(&l, "rate", rate)
	positive(&l, "wire", d)
	checkActive(&l, active)
	positive(&l, "shear_modulus", g)
	if err := l.Err(); err != nil {
		return 0, err
	}
	w := d.Millimetres()
	m := math.Cbrt(g.Megapascals() * w * w * w * w / (8 * active * rate.NewtonsPerMillimetre()))
	if checkIndex(&l, "mean_diameter", m/w); l.Len() > 0 {
		return 0, l.Err()
	}
	return units.Millimetres(m), nil
}

// Clash is the movement kept back from solid.
type Clash struct {
	Share float64      // of the working deflection; 0.15 in Jindal, Machine Design, 2010, ex. 8-6
	Gap   units.Length // between neighbouring coils, nt - 1 of them; 1 mm in Bhandari ex. 10.7
}

// FreeFor returns the free length of a spring that works down by deflection and
// then has the clash allowance left: solid + deflection (1 + Share) + (nt - 1)
// Gap. Errors: a figure below zero, fewer than one coil.
func FreeFor(solid, deflection units.Length, total float64, c Clash) (units.Length, error) {
	var l fault.List
	positive(&l, "solid", solid)
	notNegative(&l, "deflection", deflection)
	within(&l, "total", total, 1, 1000)
	within(&l, "clash.share", c.Share, 0, 10)
	notNegative(&l, "clash.gap", c.Gap)
	if err := l.Err(); err != nil {
		return 0, err
	}
	return solid + deflection.Times(1+c.Share) + c.Gap.Times(total-1), nil
}
