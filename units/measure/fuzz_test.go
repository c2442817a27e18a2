package measure_test

import (
	"encoding/json"
	"testing"

	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

// FuzzRead reads any text as readings: no panic; an answer is sound and its
// JSON holds; a refusal is one fault.
func FuzzRead(f *testing.F) {
	for _, s := range []string{
		"7.94 mm ± 0.02", "7.94 ± 0.02 mm", "5/16 in +/- 2 thou", "7.94 mm", "", "-", "7.94 mm ± 1 %", "7.94", "± 1 mm", "7.94 mm ±", "7.94 mm ± -1", "68 °F ± 2 °F", "68 ± 2 °F",
		"25 BTDC ± 1°", "TDC ± 0.5", "16° crank ± 0.5°", "5/16 ± 1/64 in", "1 mm ± 1 mm ± 1 mm", "1e308 mm ± 1e308", "0 mm ± 5 %", "28 lb ± 1", "12 % ± 1 %", "1 mm +- 1e-320 mm",
	} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		sound(t, s, measure.Caliper())
		sound(t, s, measure.SpringBalance())
		sound(t, s, measure.Thermometer())
		sound(t, s, measure.DegreeDisc())
		sound(t, s, measure.Nominal[units.Ratio](0.02))
		p, err := measure.ReadPosition(s, measure.DegreeDisc())
		switch {
		case err != nil:
			refused(t, s, err)
		case p.Taken() && !(p.U() > 0):
			t.Errorf("%q: a position without uncertainty: %v", s, p)
		default:
			if b, err := json.Marshal(p); err != nil || !json.Valid(b) {
				t.Errorf("%q: %s, %v", s, b, err)
			}
		}
	})
}

func sound[Q units.Quantity](t *testing.T, s string, with measure.Instrument[Q]) {
	t.Helper()
	r, err := measure.Read(s, with)
	if err != nil {
		refused(t, s, err)
		return
	}
	if !r.Taken() {
		return
	}
	if r.Err() != nil || !units.Finite(r.Value()) || !(r.U() > 0) || r.IsExact() {
		t.Errorf("%q reads as %v, u %v, %v", s, r, r.U(), r.Err())
	}
	if b, err := json.Marshal(r); err != nil || !json.Valid(b) {
		t.Errorf("%q: %s, %v", s, b, err)
	}
}

func refused(t *testing.T, s string, err error) {
	t.Helper()
	if f := fault.Faults(err); len(f) != 1 || f[0].Code == "" || f[0].Rule == "" {
		t.Errorf("%q: not one fault with code and rule: %#v", s, f)
	}
}
