package units_test

import (
	"testing"

	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
)

// one returns the fault of err, which must be exactly one with a code and a rule.
func one(t *testing.T, text string, err error) {
	t.Helper()
	f := fault.Faults(err)
	if len(f) != 1 || f[0].Code == "" || f[0].Rule == "" {
		t.Errorf("%q: not one fault with code and rule: %#v", text, f)
	}
}

// FuzzParse reads any text as several quantities: it never panics, an answer
// is finite and reads back, a refusal is one fault.
func FuzzParse(f *testing.F) {
	for _, s := range []string{
		"5/16 in", `5/16"`, "1 3/8 in", "12.7mm", "8 thou", `5' 11½"`, "45°30'", "16° crank", "8° cam", "28 lb", "68 °F", "-40°C", "2 gallons", "18 hp",
		"1e-3 m", "−3 mm", "1⁄2 in", "1\u00a0mm", "12,7 mm", "1/0 in", "1e999 mm", "9999999999999999999 mm", "½", "", " ", "°", "0x1p-2 mm", "nan mm", "1 mm crank",
		"1.5 imp gal", "30 lbf·ft", "kg / m³", "1 kg/m³", "3 1/2 turns", "0.000000000000000000001 mm", "1-3/8 in", "--1 mm", "+5 mm", "5 MM", "1 in 2 in",
	} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		check(t, s, units.ParseLength)
		check(t, s, units.ParseAngle)
		check(t, s, units.ParseCrankAngle)
		check(t, s, units.ParseForce)
		check(t, s, units.ParseMass)
		check(t, s, units.ParseTemperature)
		check(t, s, units.ParseRatio)
		check(t, s, units.ParseVolume)
	})
}

func check[Q units.Quantity](t *testing.T, s string, parse func(string) (Q, error)) {
	t.Helper()
	q, err := parse(s)
	if err != nil {
		if q != 0 {
			t.Errorf("%q: an answer and a fault", s)
		}
		one(t, s, err)
		return
	}
	if !units.Finite(q) {
		t.Errorf("%q reads as %v", s, q)
	}
	if back, err := parse(q.String()); err != nil || back != q {
		t.Errorf("%q reads as %v, which reads as %v, %v", s, q, back, err)
	}
}

// FuzzPosition reads any text as a place of the crank.
func FuzzPosition(f *testing.F) {
	for _, s := range []string{"25 BTDC", "25° BTDC", "12½ ATDC", "40 deg abdc", "TDC", "bdc", "-5 BTDC", "400 BTDC", "45°30' bbdc", "25", "TDC 5", "5 crank BTDC", "5° crank BTDC", "1/0 ATDC", "ATDC", "½ btdc", "5 A TDC"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		p, err := units.ParsePosition(s)
		if err != nil {
			one(t, s, err)
			return
		}
		if by := p.After().Degrees(); !(by >= -360 && by <= 360) {
			t.Errorf("%q reads as %v", s, p)
		}
		if back, err := units.ParsePosition(p.String()); err != nil || back != p {
			t.Errorf("%q reads as %v, which reads as %v, %v", s, p, back, err)
		}
	})
}
