package spring

import (
	"math"
	"testing"

	"example.com/benchbook/units/measure"
)

// continuedErfc is erfc(x) e^x² by its continued fraction (Abramowitz and Stegun
// 7.1.14, from memory), for x well above 1.
func continuedErfc(x float64) float64 {
	k := 0.0
	for n := 60; n > 0; n-- {
		k = float64(n) / 2 / (x + k)
	}
	return 1 / (math.SqrtPi * (x + k))
}

// The logarithm of half of erfc to rounding as far as 25, and to one part in a
// thousand of the density, 1/(2·25²), beyond.
func TestLogErfcHalf(t *testing.T) {
	for _, x := range []float64{3, 10, 25, 25.0001, 26, 40, 1e5} {
		want := math.Log(continuedErfc(x)/2) - x*x
		tol := 1e-12 * x * x // rounding of x²
		if x > 25 {
			tol += 1e-3
		}
		if got := logErfcHalf(x); math.Abs(got-want) > tol {
			t.Errorf("ln(erfc(%g)/2) = %.12g, want %.12g", x, got, want)
		}
	}
}

// A known spring's density of each reading is a density, with the mean and spread
// it is made of; that of the free length is the curve as made, sunk by half a
// bell: by brute force over the sinking.
func TestKnownSpringIsADensity(t *testing.T) {
	e := expectation{mean: [6]float64{3, 18, 12, 30, 10, 20}, own: [6]float64{0.05, 0.1, 0.2, 0.8, 0.1, 1}, free: 46, ufree: 0.4, sink: 1.4}
	density := func(place int, x float64) float64 {
		d := make(measure.Data, 7)
		d[place] = measure.Datum{Value: x, Taken: true}
		return math.Exp(e.LogLikelihood(d))
	}
	normal := func(x, mean, sd float64) float64 {
		return math.Exp(-(x-mean)*(x-mean)/(2*sd*sd)) / math.Sqrt(2*math.Pi*sd*sd)
	}
	near := func(what string, got, want float64) {
		if math.Abs(got-want) > 1e-9*want { // the trapezoid of a bell, many steps a sigma, is exact to rounding
			t.Errorf("%s: %g, want %g", what, got, want)
		}
	}
	for i := range e.mean {
		x := e.mean[i] + 0.7*e.own[i]
		near("reading", density(i, x), normal(x, e.mean[i], e.own[i]))
	}
	for _, read := range []float64{42, 44, 45.5, 46, 46.5, 47} {
		const steps = 20000
		sum := 0.0
		for j := range steps {
			z := (float64(j) + 0.5) / steps * 9 // sinking in standard deviations
			sum += 2 * normal(z, 0, 1) * normal(read, e.free-e.sink*z, e.ufree) * 9 / steps
		}
		if got := density(6, read); math.Abs(got/sum-1) > 1e-6 { // midpoint rule over half a bell: 1/24 (9/20000)² of its slope
			t.Errorf("free length %g: %g, by brute force %g", read, got, sum)
		}
	}
	// both together are the product, and any of several the mean
	both := make(measure.Data, 7)
	both[0], both[6] = measure.Datum{Value: 3.02, Taken: true}, measure.Datum{Value: 45, Taken: true}
	near("two readings", math.Exp(e.LogLikelihood(both)), density(0, 3.02)*density(6, 45))
	wide := e.widened(3)
	near("any of two", math.Exp(mixture{e, wide}.LogLikelihood(both)), (math.Exp(e.LogLikelihood(both))+math.Exp(wide.LogLikelihood(both)))/2)
}
