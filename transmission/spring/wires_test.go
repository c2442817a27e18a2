package spring_test

import (
	"testing"

	"example.com/benchbook/transmission/spring"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
)

// A law holds at the sizes it is meant for, both ends among them, and at any size
// where none is named.
func TestLawCoversItsEnds(t *testing.T) {
	for _, c := range []struct {
		from, to, d float64
		want        bool
	}{{1, 5, 1, true}, {1, 5, 0.99, false}, {1, 5, 5, true}, {1, 5, 5.01, false}, {0, 5, 0.01, true}, {0, 5, 5.01, false}, {1, 0, 50, true}, {1, 0, 0.99, false}, {0, 0, 3, true}} {
		w := spring.Law{Form: spring.Power, A: 2000 * mpa, Exponent: 0.15, From: units.Millimetres(c.from), To: units.Millimetres(c.to)}
		if _, in, err := w.At(units.Millimetres(c.d)); err != nil || in != c.want {
			t.Errorf("%g to %g mm at %g mm: in range %v, %v", c.from, c.to, c.d, in, err)
		}
	}
}

// Fits asked for a size are those of all that cover it.
func TestFitsOfASize(t *testing.T) {
	all := ok(spring.Fits("A228", 0))(t)
	for _, d := range []float64{0.05, 0.15, 1, 3, 6, 50} {
		want := 0
		for _, w := range all {
			if _, in, _ := w.At(units.Millimetres(d)); in {
				want++
			}
		}
		if got := ok(spring.Fits("A228", units.Millimetres(d)))(t); len(got) != want {
			t.Errorf("%g mm: %d of %d fits, want %d", d, len(got), len(all), want)
		}
	}
	_, _, err := spring.Wires("EN 10270-1 SH", 21*mm)
	if f := fault.Faults(err); len(f) != 1 || f[0].Path != "wire" || f[0].Code != fault.OutOfRange {
		t.Errorf("the fits of EN 10270-1 end at 20 mm: %v", err)
	}
}

// Music wire's moduli are split by size (Shigley's Mechanical Engineering Design,
// table 10-5: 82.7 GPa below 0.81 mm, 81.7 to 1.6, 81.0 to 3.18, 80.0 above): between
// rows the nearer is taken, at an edge that two share the first.
func TestModulusBetweenSizes(t *testing.T) {
	for d, want := range map[float64]float64{0.01: 82.7, 0.81: 82.7, 0.82: 82.7, 0.83: 81.7, 1.6: 81.7, 1.61: 81.7, 1.62: 81.0, 3.18: 81.0, 3.19: 80.0, 900: 80.0} {
		m, _, err := spring.ModulusOf("A228", units.Millimetres(d))
		if err != nil {
			t.Fatal(err)
		}
		near(t, "shear modulus", m.Shear.Gigapascals(), want, 1e-12)
	}
}
