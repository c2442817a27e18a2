package transmission

import (
	"math"
	"testing"
)

// within fails unless got is want to the part rel of itself, or to abs.
func within(t *testing.T, what string, got, want, rel, abs float64) {
	t.Helper()
	if !(math.Abs(got-want) <= rel*math.Abs(want)+abs) {
		t.Errorf("%s is %.12g, want %.12g", what, got, want)
	}
}

// The table of the bell is the normal integral to the 1e-8 it says, its slope the
// density, over the whole range and to its ends, and beyond them one or nothing.
func TestBellIsTheErrorFunction(t *testing.T) {
	b := newBell()
	const steps = 20_011 // a prime, so that all places between two entries come up
	for i := range steps + 1 {
		z := -plain + 2*plain*float64(i)/steps
		z = min(z, plain)
		below, dense := b.normal(z)
		// the first term left out is h^5/120 times a derivative of 1.2 at most, h at
		// most 1/64: 1e-11; of the density h^4/24 times the same, 3e-9
		within(t, "phi", below, 0.5*math.Erfc(-z/math.Sqrt2), 0, 1e-11)
		within(t, "phi of the case", b.phi(z), 0.5*math.Erfc(-z/math.Sqrt2), 0, 1e-11)
		within(t, "density", dense, math.Exp(-z*z/2)/math.Sqrt(2*math.Pi), 0, 1e-8)
		// a sign's chance is that of the nearest entry, 1/64 off at most, where the
		// chance grows by 2.5 % of itself at the steepest (where it is about a tenth)
		told := 0.02 + 0.96*0.5*math.Erfc(-z/math.Sqrt2)
		within(t, "told", b.told(z), told, 0.025, 0)
	}
	// at an entry and half a step about it the figure is the entry's own
	for _, q := range []float64{-2, -0.5, 0, 1, 3} {
		told := 0.02 + 0.96*0.5*math.Erfc(-q/math.Sqrt2)
		for _, off := range []float64{-0.49, 0, 0.49} {
			within(t, "told about an entry", b.told(q+off/bellSteps), told, 1e-14, 0)
		}
	}
	for _, z := range []float64{math.Nextafter(plain, 7), 7, 1e300, math.Inf(1)} {
		within(t, "phi past the end", b.phi(z), 1, 0, 0)
		within(t, "told past the end", b.told(z), 0.98, 0, 1e-9)
		within(t, "phi before the start", b.phi(-z), 0, 0, 0)
		within(t, "told before the start", b.told(-z), 0.02, 0, 1e-9)
	}
	within(t, "phi of what is no figure", b.phi(math.NaN()), 0, 0, 0)
	within(t, "told of what is no figure", b.told(math.NaN()), 0.02, 0, 1e-9)
}

// fine is the integral of f between two bounds, by Simpson's rule.
func fine(low, high float64, f func(x float64) float64) float64 {
	const n = 4000
	h, sum := (high-low)/n, f(low)+f(high)
	for i := 1; i < n; i++ {
		sum += f(low+float64(i)*h) * float64(2+2*(i%2))
	}
	return sum * h / 3
}

// tail are the bounds, but no further from the nearest place to the reading than
// where the density has fallen to 1e-17 of what it is there.
func tail(low, high, nearest, u, least float64) (from, to float64) {
	far := u * min(12, 40/math.Abs(least))
	return max(low, nearest-far), min(high, nearest+far)
}

// The evidence of an amount that is evenly likely between bounds is the mean density
// of its reading over them, also where both tails are far below what a float64 holds:
// there the density is taken beside that at the nearer bound.
func TestEvenEvidenceIsTheMeanDensity(t *testing.T) {
	for _, c := range []struct{ x, u, low, high float64 }{
		{1, 0.5, 0, 3}, {-4, 1, 0, 3}, {7, 1, 0, 3}, {0, 0.2, 0, 3}, {3, 0.2, 0, 3}, {1.2, 5, 1, 1.5},
		{-3.6, 0.1, 0, 3}, {7, 0.1, 0, 3}, {-3.75, 0.1, 0, 3}, {6.75, 0.1, 0, 3}, {-30, 0.1, 0, 3}, {33, 0.1, 0, 3},
	} {
		nearest := min(max(c.x, c.low), c.high)
		least := (nearest - c.x) / c.u
		low, high := tail(c.low, c.high, nearest, c.u, least)
		sum := fine(low, high, func(a float64) float64 {
			z := (a - c.x) / c.u
			return math.Exp((least-z)*(least+z)/2) / (c.u * math.Sqrt(2*math.Pi))
		})
		want := math.Log(sum) - least*least/2 - math.Log(c.high-c.low)
		// past 37 deviations the leading term of the tail is too large by 1/37^2 of itself
		abs := 1e-9
		if math.Abs(least) > 37 {
			abs = 1.0 / 37 / 37
		}
		within(t, "log evidence", logEven(figure{c.x, c.u}, c.low, c.high), want, 1e-12, abs)
	}
	// at 37 deviations the chance itself is still a figure
	within(t, "tail at 37", logBetween(37, 50), math.Log(0.5*math.Erfc(37/math.Sqrt2)), 1e-12, 0)
	// the one form goes over into the other at 37 deviations
	a, b := logBetween(36.999999, 50), logBetween(37.000001, 50)
	within(t, "tail to either side of 37", b, a-37*2e-6, 0, 1.0/37/37)
	if a == math.Inf(-1) || a-b > 0.001 {
		t.Errorf("the tail jumps from %v to %v", a, b)
	}
}

// An amount of which a part of the chance lies below: that part, by integrating the
// density over the bounds; far outside them to the error of an exponential tail.
func TestAmountIsTheQuantile(t *testing.T) {
	for _, c := range []struct{ x, u, low, high, part float64 }{
		{1, 0.5, 0, 3, 1e-6}, {-4, 1, 0, 3, 1e-6}, {7, 1, 0, 3, 1e-6}, {1.2, 5, 1, 1.5, 1e-6}, {4, 0.4, -1, 5, 1e-6},
		{-4.9, 1, 0, 3, 1e-6}, {7.9, 1, 0, 3, 1e-6}, {-5, 1, 0, 3, 1e-6}, {8, 1, 0, 3, 1e-6},
		// past five deviations: the curve of the tail is left out, below 1/a^2 of it
		{-1.02, 0.2, 0, 3, 0.025}, {4.02, 0.2, 0, 3, 0.025}, {-30, 0.5, 0, 3, 0.0005}, {33, 0.5, 0, 3, 0.0005}, {-8, 1, 2, 3, 0.01},
		{15, 1, 2, 3, 0.01},
	} {
		nearest := min(max(c.x, c.low), c.high)
		least := (nearest - c.x) / c.u
		dense := func(a float64) float64 { z := (a - c.x) / c.u; return math.Exp((least - z) * (least + z) / 2) }
		low, high := tail(c.low, c.high, nearest, c.u, least)
		whole := fine(low, high, dense)
		for _, q := range []float64{0.05, 0.25, 0.5, 0.75, 0.95} {
			a := amount(figure{c.x, c.u}, c.low, c.high, q)
			within(t, "part below", fine(low, a, dense)/whole, q, 0, c.part)
		}
	}
	// a tail that would reach past the other bound ends there; the last of a thousand
	// parts of a tail of 5.5 deviations, 1/5.5 wide, is at 1.25
	within(t, "end of the tail above", amount(figure{-5.5, 1}, 0, 1, 0.9999), 1, 0, 0)
	within(t, "end of the tail below", amount(figure{6.5, 1}, 0, 1, 0.0001), 0, 0, 0)
}
