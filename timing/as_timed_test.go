package timing_test

import (
	"math"
	"testing"

	"example.com/benchbook/timing"
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// With every event two teeth late of a sure dead centre, a sound cylinder shows less by
// the trapped ratios to the power 1.25, in absolute pressure.
func TestPressureAsTimed(t *testing.T) {
	e := whole(t)
	r := events("5 ATDC", "95 ABDC", "35 BBDC", "55 ATDC") // 30° late
	r.TDCLate = measure.Of(0*units.CrankDegree, 0.01*units.CrankDegree)
	res := diagnose(t, e, r, timing.Options{})
	if key := res.Causes.Leader().Key; key != "whole-train:-2" {
		t.Fatalf("leader %s", key)
	}
	ratio := func(abdc float64) float64 {
		v, err := e.Cylinder.TrappedAt(units.After(units.BDC, units.CrankDegrees(abdc)))
		if err != nil {
			t.Fatal(err)
		}
		return v.Ratio.Value()
	}
	shift := math.Pow(ratio(95)/ratio(65), 1.25)
	c := res.Compression
	const air = 1.01325
	for k, p := range [2][2]float64{{c.Expected.Low.Bars(), c.AsTimed.Low.Bars()}, {c.Expected.High.Bars(), c.AsTimed.High.Bars()}} {
		// both are rounded to 0.01 bar, and the dead centre is known to hundredths
		if want := (p[0]+air)*shift - air; !(math.Abs(p[1]-want) <= 0.02) || !(p[1] < p[0]) {
			t.Errorf("end %d: %v bar, as timed %v, want %v", k, p[0], p[1], want)
		}
	}
}
