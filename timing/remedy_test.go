package timing_test

import (
	"strings"
	"testing"

	"example.com/benchbook/timing"
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// What puts right what no move of a tooth does, and the work it takes: that of the
// documented job, whatever hours the caller gives it.
func TestWorkOfRemedies(t *testing.T) {
	opt := timing.Options{Work: timing.Work{Tooth: units.Hours(2), RePress: units.Hours(5)}}
	straight := events("25 BTDC", "65 ABDC", "65 BBDC", "25 ATDC")
	turned := straight
	turned.Sequence, turned.MarksAlign = timing.No, timing.No
	reversed := whole(t)
	reversed.Inlet.KeyAngle = measure.Of(23*units.CamDegree, 1*units.CamDegree)
	late := events("67 ATDC", "157 ABDC", "65 BBDC", "25 ATDC")
	late.MarksAlign = timing.Yes
	unlike := engine()
	unlike.Inlet = timing.Lobe{Opens: units.Before(units.TDC, 30*units.CrankDegree), Closes: units.After(units.BDC, 70*units.CrankDegree), MaxLift: mm(10, 0.05)}
	unlike.Exhaust = timing.Lobe{Opens: units.Before(units.BDC, 50*units.CrankDegree), Closes: units.After(units.TDC, 15*units.CrankDegree), MaxLift: mm(8.5, 0.05)}
	other := events("13 BTDC", "52 ABDC", "67 BBDC", "33 ATDC")
	other.InletMaxLift, other.ExhaustMaxLift = lift(8.5), lift(10)
	held := events("25 BTDC", "65 ABDC", "84 BBDC", "45 ATDC")
	held.ExhaustClearance, held.CompressionDry, held.CompressionWet = lift(0), gauge(0.4), gauge(0.4)
	heldIn := events("44 BTDC", "85 ABDC", "65 BBDC", "25 ATDC")
	heldIn.InletClearance, heldIn.CompressionDry, heldIn.CompressionWet = lift(0), gauge(0.4), gauge(0.4)
	for _, c := range []struct {
		e      timing.Engine
		r      timing.Readings
		key    string
		hours  float64 // 0: not held here
		lifter bool
	}{
		{engine(), turned, "mesh-half-round", 2, false},
		{reversed, late, "turn-inlet-cam-over", 5, false},
		{unlike, other, "exchange-cams", 5, false},
		{whole(t), held, "free-exhaust-valve", 0, true},
		{whole(t), heldIn, "free-inlet-valve", 0, false}, // a lifter lifts the exhaust valve
	} {
		m := diagnose(t, c.e, c.r, opt).Remedies[0]
		if m.Key != c.key || c.hours > 0 && (m.Work-units.Hours(c.hours)).Seconds() > 1e-6 || c.hours > 0 && (units.Hours(c.hours)-m.Work).Seconds() > 1e-6 || strings.Contains(m.Text, "lifter") != c.lifter {
			t.Errorf("%s, %v, %q; want %s, %v h", m.Key, m.Work, m.Text, c.key, c.hours)
		}
	}
}
