package spring_test

import (
	"math"
	"testing"

	"example.com/benchbook/transmission/spring"
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// bent returns n loads ± 1 N on 400 - 10 x at lengths known exactly, pushed off the
// line by a row that is no line itself, to a chi-square as asked for.
func bent(n int, chi float64) []spring.LoadReading {
	off := make([]float64, n)
	var sum, sumx, sumxx, sumxo float64
	for i := range off {
		x := float64(i) - float64(n-1)/2
		off[i] = float64(1 - 2*(i%2))
		sum, sumx, sumxx, sumxo = sum+off[i], sumx+x, sumxx+x*x, sumxo+x*off[i]
	}
	squares := 0.0
	for i := range off {
		off[i] -= sum/float64(n) + sumxo/sumxx*(float64(i)-float64(n-1)/2)
		squares += off[i] * off[i]
	}
	out := make([]spring.LoadReading, n)
	for i := range out {
		x := 30 - 0.1*float64(i)
		out[i] = spring.LoadReading{
			Length: measure.Exact(units.Millimetres(x)),
			Load:   measure.Of(units.Newtons(400-10*x+off[i]*math.Sqrt(chi/squares)), 1*newton),
		}
	}
	return out
}

// The values that chi-square exceeds one time in a hundred, as tables print them
// (Abramowitz and Stegun, table 26.8, from memory). Wilson and Hilferty's cube is
// within 0.3 % of them from two degrees up, and one degree is as printed.
func TestBentOneTimeInAHundred(t *testing.T) {
	for _, c := range []struct {
		freedom int
		chi     float64
	}{{1, 6.635}, {2, 9.210}, {3, 11.345}, {5, 15.086}, {10, 23.209}, {30, 50.892}} {
		for share, want := range map[float64]bool{0.996: false, 1.004: true} {
			line := ok(spring.FitLine(bent(c.freedom+2, share*c.chi), spring.FitOptions{}))(t)
			near(t, "chi-square", line.ChiSquare, share*c.chi, 1e-9)
			if line.Bent != want || line.Freedom != c.freedom {
				t.Errorf("%d degrees, chi-square %g of %g: bent %v, freedom %d", c.freedom, line.ChiSquare, c.chi, line.Bent, line.Freedom)
			}
		}
	}
}

// Weights known and nothing on x: the free length and both uncertainties by the
// textbook sums, Δ = Σw Σwx² - (Σwx)² (Bevington, Data Reduction, ch. 6, from memory),
// and the balance's scale beside them.
func TestLineByTheSums(t *testing.T) {
	x, y, u := []float64{30, 32, 35, 39}, []float64{101, 79, 52, 11}, []float64{1, 2, 1, 3}
	var loads []spring.LoadReading
	var sw, sx, sy, sxx, sxy float64
	for i := range x {
		loads = append(loads, spring.LoadReading{Length: measure.Exact(units.Millimetres(x[i])), Load: measure.Of(units.Newtons(y[i]), units.Newtons(u[i]))})
		w := 1 / (u[i] * u[i])
		sw, sx, sy, sxx, sxy = sw+w, sx+w*x[i], sy+w*y[i], sxx+w*x[i]*x[i], sxy+w*x[i]*y[i]
	}
	delta := sw*sxx - sx*sx
	slope, at0 := (sw*sxy-sx*sy)/delta, (sxx*sy-sx*sxy)/delta
	varSlope, var0, cov := sw/delta, sxx/delta, -sx/delta
	free := -at0 / slope
	// free = -a/b, so u² = (u_a² + free² u_b² + 2 free cov)/b²
	ufree := math.Sqrt(var0+free*free*varSlope+2*free*cov) / -slope
	for scale, relative := range map[float64]float64{0: 0.02, -1: 0, 0.05: 0.05} {
		line := ok(spring.FitLine(loads, spring.FitOptions{Scale: scale}))(t)
		near(t, "rate", line.Rate.Value().NewtonsPerMillimetre(), -slope, 1e-11) // Δ loses a few digits
		near(t, "u of the rate", line.Rate.U().NewtonsPerMillimetre(), math.Hypot(math.Sqrt(varSlope), relative*slope), 1e-11)
		near(t, "free", line.Free.Value().Millimetres(), free, 1e-11)
		near(t, "u of the free length", line.Free.U().Millimetres(), ufree, 1e-9)
		if line.Common != relative {
			t.Errorf("scale %g: common %g", scale, line.Common)
		}
		for i, r := range line.Residuals {
			if math.Abs(r.Newtons()-(y[i]-at0-slope*x[i])) > 1e-9 {
				t.Errorf("residual %d: %v", i, r)
			}
		}
	}
}
