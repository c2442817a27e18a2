package solve_test

import (
	"math"
	"testing"

	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/solve"
)

// TestWidestBracket holds that ends a finite distance apart are taken, however wide,
// within the calls promised, and that ends further apart or no tolerance are refused.
func TestWidestBracket(t *testing.T) {
	const half = math.MaxFloat64 / 2
	calls := 0
	sign := func(x float64) float64 { calls++; return math.Copysign(1, x-1e-300) }
	x, err := solve.Root(sign, -half, half, 0)
	if err != nil || math.Abs(x-1e-300) > 1e-315 || calls > 2200 {
		t.Errorf("%v, %v after %d calls", x, err, calls)
	}
	for _, c := range []struct {
		a, b, tol float64
		path      string
	}{
		{-math.MaxFloat64, math.MaxFloat64, 0, "bracket"},
		{math.Inf(-1), 1, 0, "bracket"},
		{-1, 1, math.NaN(), "tol"},
	} {
		_, err := solve.Root(sign, c.a, c.b, c.tol)
		if f, ok := err.(fault.Fault); !ok || f.Code != fault.OutOfRange || f.Path != c.path {
			t.Errorf("%v to %v, tol %v: %v", c.a, c.b, c.tol, err)
		}
	}
}
