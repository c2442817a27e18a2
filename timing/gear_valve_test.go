package timing_test

import (
	"testing"

	"example.com/benchbook/timing"
	"example.com/benchbook/timing/crank"
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// whole is the demonstration machine with everything about it known: 397 cc,
// compressed 7.5 to 1, lift 9 mm, events at 0.5 mm with 0.1 mm of clearance.
func whole(t testing.TB) timing.Engine {
	e := engine()
	e.Check = timing.Check{Lift: 0.5 * units.Millimetre, Clearance: 0.1 * units.Millimetre}
	lift := measure.Of(9*units.Millimetre, 0.05*units.Millimetre)
	e.Inlet.MaxLift, e.Exhaust.MaxLift = lift, lift
	c := crank.Cylinder{Bore: 78 * units.Millimetre, Slider: crank.Slider{Stroke: 83 * units.Millimetre, Rod: 150 * units.Millimetre}}
	var err error
	if e.Cylinder, err = c.WithRatio(7.5 * units.One); err != nil {
		t.Fatal(err)
	}
	return e
}

func lift(mm float64) measure.Reading[units.Length] {
	return measure.By(units.Millimetres(mm), measure.DialGauge())
}

func gauge(bar float64) measure.Reading[units.Pressure] {
	return measure.By(units.Bars(bar), measure.CompressionGauge())
}

func TestFaultsOfTheValveGear(t *testing.T) {
	for _, c := range []struct {
		name, want string
		engine     func(*timing.Engine)
		readings   timing.Readings
		more       func(*timing.Readings)
	}{
		{"worn inlet", "inlet-worn", nil, events("21 BTDC", "65 ABDC", "65 BBDC", "25 ATDC"), func(r *timing.Readings) {
			r.InletMaxLift, r.ExhaustMaxLift, r.InletClearance = lift(8.2), lift(9), lift(0.1)
		}},
		{"follower", "exhaust-follower", nil, events("25 BTDC", "65 ABDC", "75 BBDC", "36 ATDC"), func(r *timing.Readings) {
			r.InletMaxLift, r.ExhaustMaxLift, r.ExhaustClearance = lift(9), lift(9.05), lift(0.1)
		}},
		{"other cam", "inlet-cam:sports", func(e *timing.Engine) {
			e.Rivals = []timing.Rival{{Name: "sports", Cam: timing.Inlet, Lobe: timing.Lobe{Opens: units.Before(units.TDC, 38), Closes: units.After(units.BDC, 78), MaxLift: measure.Of(10*units.Millimetre, 0.05*units.Millimetre)}}}
		}, events("38 BTDC", "79 ABDC", "65 BBDC", "25 ATDC"), func(r *timing.Readings) { r.InletMaxLift = lift(10) }},
		{"back to front", "inlet-reversed", func(e *timing.Engine) {
			e.Inlet.KeyAngle = measure.Of(23*units.CamDegree, 1*units.CamDegree)
		}, events("67 ATDC", "157 ABDC", "65 BBDC", "25 ATDC"), func(r *timing.Readings) { // late by 4 x 23
			r.MarksAlign = timing.Yes
		}},
		{"clearance", "inlet-clearance", nil, events("8 BTDC", "49 ABDC", "65 BBDC", "25 ATDC"), func(r *timing.Readings) {
			r.InletClearance, r.InletMaxLift = lift(0.55), lift(8.55)
		}},
		{"held", "exhaust-held", nil, events("25 BTDC", "65 ABDC", "84 BBDC", "45 ATDC"), func(r *timing.Readings) {
			r.ExhaustClearance, r.CompressionDry, r.CompressionWet = lift(0), gauge(0.4), gauge(0.4)
		}},
	} {
		t.Run(c.name, func(t *testing.T) {
			e := whole(t)
			if c.engine != nil {
				c.engine(&e)
			}
			c.more(&c.readings)
			r := diagnose(t, e, c.readings, timing.Options{})
			if got := r.Causes.Leader(); got.Key != c.want {
				t.Errorf("leader %s %.3f, want %s", got.Key, got.Share, c.want)
				for _, o := range r.Causes.Odds[:5] {
					t.Logf("%s %.4f", o.Key, o.Share)
				}
			}
			if len(r.Remedies) == 0 || len(r.Explained) == 0 || !r.Explained[0].Fits() {
				t.Errorf("remedies %v, explained %+v", r.Remedies, r.Explained)
			}
		})
	}
}

// Oil that brings the pressure up speaks of rings; low, no change, and late
// inlet closing speak of timing.
func TestCompressionBesideTheEvents(t *testing.T) {
	e := whole(t)
	r := events("25 BTDC", "65 ABDC", "65 BBDC", "25 ATDC")
	r.CompressionDry, r.CompressionWet = gauge(4.5), gauge(7)
	res := diagnose(t, e, r, timing.Options{})
	if k := res.Compression.States.Leader().Key; k != "rings" {
		t.Errorf("4.5 bar dry, 7 bar wet: %s", k)
	}
	r.CompressionDry, r.CompressionWet = gauge(3), gauge(3)
	if k := diagnose(t, e, r, timing.Options{}).Compression.States.Leader().Key; k != "valves" {
		t.Errorf("3 bar dry and wet: %s", k)
	}
	// all four events two teeth late, or the mark wrong: if the cams are late the
	// inlet shuts late and the pressure is down, if the mark is wrong it is not
	late := events("5 ATDC", "95 ABDC", "35 BBDC", "55 ATDC")
	late.TDC = timing.TDCByMark
	share := func(bar float64) (tooth, mark float64) {
		if bar > 0 {
			late.CompressionDry, late.CompressionWet = gauge(bar), gauge(bar)
		}
		res := diagnose(t, e, late, timing.Options{})
		a, _ := res.Causes.Of("whole-train:-2")
		b, _ := res.Causes.Of("tdc-mark")
		return a.Share, b.Share
	}
	tooth, mark := share(0)
	in := diagnose(t, e, late, timing.Options{}).Compression
	low, high := in.AsTimed, in.Expected
	if !(low.High < high.High && low.Low < high.Low) {
		t.Errorf("late by two teeth %v, as specified %v", low, high)
	}
	t2, m2 := share((low.Low.Bars() + low.High.Bars()) / 2)
	t3, m3 := share((high.Low.Bars() + high.High.Bars()) / 2)
	if !(t2/m2 > tooth/mark && t3/m3 < tooth/mark) {
		t.Errorf("tooth to mark %v, with low pressure %v, with full pressure %v", tooth/mark, t2/m2, t3/m3)
	}
}
