package cam

import (
	"math"
	"testing"
)

// The base circle is found among what is not: a dwell on the nose that was read more
// evenly than it, readings of a gauge that was knocked below it, a ledge as even as
// itself above it.
func TestBaseAmongOthers(t *testing.T) {
	repeat := func(n int, y func(i int) float64) (all []float64) {
		for i := range n {
			all = append(all, y(i))
		}
		return all
	}
	flat := func(y float64) func(int) float64 { return func(int) float64 { return y } }
	ramp := func(from, by float64) func(int) float64 {
		return func(i int) float64 { return from + by*float64(i) }
	}
	join := func(parts ...[]float64) (all []float64) {
		for _, p := range parts {
			all = append(all, p...)
		}
		return all
	}
	ripple := func(i int) float64 { return 0.3 + 0.02*math.Sin(2.4*float64(i)) }
	for _, c := range []struct {
		name          string
		y             []float64
		level, runOut float64
		tol           float64
	}{
		{"a dwell on the nose", join(repeat(50, ripple), repeat(4, ramp(2, 1.5)), repeat(42, flat(8)), repeat(4, ramp(6.5, -1.5))), 0.3, 0.04, 0.002},
		{"a knocked gauge", join(repeat(50, flat(0.1)), repeat(10, ramp(-1, 0.05)), repeat(40, ramp(1, 0.2))), 0.1, 0, 1e-9},
		{"a ledge", join(repeat(25, flat(0)), repeat(5, ramp(0.1, 0.15)), repeat(20, flat(1)), repeat(50, ramp(1.5, 0.1))), 0, 0, 1e-9},
	} {
		level, runOut := baseLevel(c.y, math.Inf(1))
		if math.Abs(level-c.level) > c.tol || math.Abs(runOut-c.runOut) > c.tol {
			t.Errorf("%s: level %g, run-out %g, put in %g and %g", c.name, level, runOut, c.level, c.runOut)
		}
	}
}
