package measure_test

import (
	"testing"

	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

// TestPercentIsNoUnit asks for the figure's unit where only a share was given.
func TestPercentIsNoUnit(t *testing.T) {
	_, err := measure.Read("12.7 ± 2 %", measure.Caliper())
	if f := fault.Faults(err); len(f) != 1 || f[0].Code != fault.UnitMissing {
		t.Errorf("%#v", f)
	}
	if r, err := measure.Read("12.7 mm ± 2 %", measure.Caliper()); err != nil || (r.U()-units.Millimetres(0.254)).Abs() > units.Millimetres(1e-12) {
		t.Errorf("%v, %v", r, err)
	}
}
