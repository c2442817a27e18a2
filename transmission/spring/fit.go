package spring

import (
	"math"
	"strconv"

	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

// LoadReading is one load on a balance or scale at one length of the spring.
type LoadReading struct {
	Length measure.Reading[units.Length] `json:"length"`
	Load   measure.Reading[units.Force]  `json:"load"`
}

// Line is the straight line through load-length readings.
type Line struct {
	Rate      measure.Reading[units.SpringRate] `json:"rate"`
	Free      measure.Reading[units.Length]     `json:"free"`       // length where the line meets no load
	Residuals []units.Force                     `json:"residuals"`  // reading less line
	ChiSquare float64                           `json:"chi_square"` // weighted squares of the residuals
	Freedom   int                               `json:"freedom"`    // readings less two
	Bent      bool                              `json:"bent"`       // the residuals are larger than the readings' uncertainties allow, one time in a hundred by chance
	Common    float64                           `json:"common"`     // relative uncertainty of the balance's scale, taken as common to all loads
}

// FitOptions says what is common to the readings of a line.
type FitOptions struct {
	// Scale is the relative standard uncertainty of the balance's scale, which
	// is the same in every load and does not average out. Zero: 0.02 (common
	// practice). Below zero: none, for loads by known weights.
	Scale float64
}

func (o FitOptions) scale() float64 {
	if o.Scale == 0 {
		return 0.02
	}
	return max(o.Scale, 0)
}

// FitLine returns the line F = k (L0 - L) through two or more readings by least
// squares, each weighted by the inverse of u(F)² + k² u(L)², so that errors of
// length count too (the method of effective variance; J. Orear, Am. J. Phys. 50
// (1982) 912, from memory). The rate's uncertainty is that of the fit with the
// common scale error added in square; the free length has no part in the
// latter. Errors: fewer than two readings, a reading not taken or unsound, loads
// below zero, exact readings only, lengths that do not differ, a load that does
// not fall as the length grows, a scale above 0.5.
func FitLine(loads []LoadReading, opt FitOptions) (Line, error) {
	var l fault.List
	if len(loads) < 2 {
		l.Add(fault.Fault{Code: fault.Missing, Path: "loads", Value: strconv.Itoa(len(loads)), Rule: "at least two readings of load and length"})
	}
	if opt.Scale > 0.5 || !finite(opt.Scale) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "scale", Value: number(opt.Scale), Rule: "at most 0.5"})
	}
	for i, r := range loads {
		at := "loads." + strconv.Itoa(i)
		checkReading(&l, at+".length", r.Length, true)
		checkReading(&l, at+".load", r.Load, false)
	}
	if err := l.Err(); err != nil {
		return Line{}, err
	}
	n := len(loads)
	x, y := make([]float64, n), make([]float64, n)
	w := make([]float64, n)
	for i, r := range loads {
		x[i], y[i], w[i] = r.Length.Value().Millimetres(), r.Load.Value().Newtons(), 1
	}
	line := leastSquares(x, y, w)
	// The weights hold the slope: a few rounds settle it, since the slope moves
	// little with the weights.
	for range 8 {
		for i, r := range loads {
			v := square(r.Load.U().Newtons()) + square(line.k*r.Length.U().Millimetres())
			if !(v > 0) {
				return Line{}, fault.Fault{Code: fault.Missing, Path: "loads." + strconv.Itoa(i), Rule: "length or load must have an uncertainty"}
			}
			w[i] = 1 / v
		}
		line = leastSquares(x, y, w)
	}
	if !(line.k > 0) || !finite(line.k) || !finite(line.uk) {
		return Line{}, fault.Fault{Code: fault.Conflict, Path: "loads", Rule: "the lengths must differ and the load must fall as the length grows"}
	}
	out := Line{Freedom: n - 2, Common: opt.scale()}
	for i := range x {
		r := y[i] - line.k*(line.free-x[i])
		out.Residuals = append(out.Residuals, units.Newtons(r))
		out.ChiSquare += r * r * w[i]
	}
	out.Bent = out.ChiSquare > chiSquare99(out.Freedom)
	out.Rate = measure.Of(units.NewtonsPerMillimetre(line.k), units.NewtonsPerMillimetre(math.Hypot(line.uk, line.k*out.Common)))
	out.Free = measure.Of(units.Millimetres(line.free), units.Millimetres(line.ufree))
	return out, nil
}

type line struct{ k, uk, free, ufree float64 }

// leastSquares fits y = k (free - x), about the weighted middle so that the two
// parameters have independent errors there.
func leastSquares(x, y, w []float64) line {
	var sw, mx, my, sxx, sxy float64
	for i := range x {
		sw += w[i]
		mx += w[i] * x[i]
		my += w[i] * y[i]
	}
	mx, my = mx/sw, my/sw
	for i := range x {
		dx := x[i] - mx
		sxx += w[i] * dx * dx
		sxy += w[i] * dx * y[i] // my falls out: the weighted dx add up to nil
	}
	k := -sxy / sxx
	uk := 1 / math.Sqrt(sxx)
	return line{k: k, uk: uk, free: mx + my/k, ufree: math.Hypot(1/(math.Sqrt(sw)*k), my/(k*k)*uk)}
}

// chiSquare99 is the value that chi-square of n degrees exceeds one time in a
// hundred, by Wilson and Hilferty's cube (Proc. Nat. Acad. Sci. 17 (1931) 684,
// from memory), good to 1 % from two degrees up. No degree is taken as one: two
// readings leave no residuals but those of rounding.
func chiSquare99(n int) float64 {
	if n <= 1 {
		return 6.635
	}
	f := 2 / (9 * float64(n))
	c := 1 - f + 2.326348*math.Sqrt(f)
	return float64(n) * c * c * c
}

func square(x float64) float64 { return x * x }

// checkReading notes what is wrong with a reading that must be there.
func checkReading[Q units.Quantity](l *fault.List, path string, r measure.Reading[Q], above bool) bool {
	switch {
	case !r.Taken():
		l.Add(fault.Fault{Code: fault.Missing, Path: path, Unit: units.Example(r.Value()), Rule: "must be taken"})
		return false
	case r.Err() != nil:
		return l.Under(path, r.Err())
	case !(r.U().SI() <= mostSI):
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: path, Value: r.Value().String(), Unit: units.Example(r.Value()), Rule: "its uncertainty is beyond any machine"})
		return false
	case above && positive(l, path, r.Value()) && r.U() >= r.Value():
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: path, Value: r.String(), Unit: units.Example(r.Value()), Rule: "its uncertainty must be below the figure itself"})
		return false
	case above:
		return r.Value() > 0
	}
	return notNegative(l, path, r.Value())
}
