package measure

import (
	"math"
	"math/rand/v2"
	"slices"
	"strconv"

	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
)

// Input is a figure and its standard uncertainty in SI units.
type Input struct{ X, U float64 }

// Propagate returns f at the inputs as a reading whose uncertainty is, to first
// order, the root of the sum of squares of each input's part (GUM 5.1.2, with
// independent inputs and the slopes taken by central differences over ± u as
// GUM 5.1.3 note 2 allows). f takes and returns SI units. Inputs without
// uncertainty cost no evaluations. It is an error if f is nil or not finite near
// the inputs; use [MonteCarlo] where f bends within ± u.
//
// Where every slope is zero, as at the top of a curve, the uncertainty is that
// of the bend: the root of the sum of (f(x+u) - 2 f(x) + f(x-u))^2/2, which is
// the second term of the series for a normal input (GUM 5.1.2, note). The
// answer is exact only if no input moves it.
func Propagate[Q units.Quantity](f func(x []float64) float64, in ...Input) (Reading[Q], error) {
	if f == nil {
		return Reading[Q]{}, noFunction()
	}
	x := make([]float64, len(in))
	for i, v := range in {
		x[i] = v.X
	}
	y := f(x)
	var sum, bends float64
	for i, v := range in {
		if v.U == 0 {
			continue
		}
		x[i] = v.X + v.U
		up := f(x)
		x[i] = v.X - v.U
		down := f(x)
		x[i] = v.X
		half, bend := (up-down)/2, up-2*y+down
		sum += half * half
		bends += bend * bend / 2
	}
	if sum == 0 {
		sum = bends
	}
	u := math.Sqrt(sum)
	if y-y != 0 || u-u != 0 {
		return Reading[Q]{}, fault.Fault{Code: fault.OutOfRange, Path: "propagate", Rule: "the function is not finite within one standard uncertainty of the readings"}
	}
	if u == 0 {
		return Exact(units.FromSI[Q](y)), nil
	}
	return Of(units.FromSI[Q](y), units.FromSI[Q](u)), nil
}

func noFunction() fault.Fault {
	return fault.Fault{Code: fault.Missing, Path: "f", Rule: "give the function"}
}

// Spread is what [MonteCarlo] found: the median and the bounds that leave
// 2.5 % of the draws on either side.
type Spread[Q units.Quantity] struct {
	Median, Low, High Q
	Draws             int
}

// MonteCarlo draws every input from a normal distribution n times, n from 100
// to 1e7 and n times the inputs at most 1e8, with the given seed, and returns the
// spread of f (JCGM 101:2008 clause 7, fixed number of trials). A nil f and draws
// where f is not finite are errors.
func MonteCarlo[Q units.Quantity](f func(x []float64) float64, n int, seed uint64, in ...Input) (Spread[Q], error) {
	if n < 100 || n > 1e7 {
		return Spread[Q]{}, fault.Fault{Code: fault.OutOfRange, Path: "n", Value: strconv.Itoa(n), Rule: "100 to 10 000 000 draws"}
	}
	if len(in) > 0 && n > 1e8/len(in) {
		return Spread[Q]{}, fault.Fault{Code: fault.OutOfRange, Path: "n", Value: strconv.Itoa(n), Rule: "draws times inputs must be at most 100 000 000"}
	}
	if f == nil {
		return Spread[Q]{}, noFunction()
	}
	rng := rand.New(rand.NewPCG(seed, 0x9e3779b97f4a7c15))
	y := make([]float64, n)
	x := make([]float64, len(in))
	for i := range y {
		for j, v := range in {
			x[j] = v.X + v.U*rng.NormFloat64()
		}
		if y[i] = f(x); y[i]-y[i] != 0 {
			return Spread[Q]{}, fault.Fault{Code: fault.OutOfRange, Path: "monte carlo", Rule: "the function is not finite over the spread of the readings"}
		}
	}
	slices.Sort(y)
	at := func(p float64) Q { return units.FromSI[Q](y[int(math.Round(p*float64(n-1)))]) }
	return Spread[Q]{Median: at(0.5), Low: at(0.025), High: at(0.975), Draws: n}, nil
}
