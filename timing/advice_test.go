package timing_test

import (
	"testing"

	"example.com/benchbook/timing"
	"example.com/benchbook/units"
)

// What was not looked at is named, and only that.
func TestWhatIsNamedAsNotChecked(t *testing.T) {
	names := func(e timing.Engine, r timing.Readings) map[string]bool {
		all := map[string]bool{}
		for _, u := range diagnose(t, e, r, timing.Options{}).Basis.NotChecked {
			all[u.What] = true
		}
		return all
	}
	for what, settle := range map[string]func(e *timing.Engine, r *timing.Readings){
		"exhaust cam": func(_ *timing.Engine, r *timing.Readings) {
			r.ExhaustOpens, r.ExhaustCloses = disc("65 BBDC"), disc("25 ATDC")
		},
		"inlet duration":                func(_ *timing.Engine, r *timing.Readings) { r.InletCloses = disc("65 ABDC") },
		"top dead centre":               func(_ *timing.Engine, r *timing.Readings) { r.TDC = timing.TDCByStop },
		"tooth marks":                   func(_ *timing.Engine, r *timing.Readings) { r.MarksAlign = timing.Yes },
		"which turn each cam is on":     func(_ *timing.Engine, r *timing.Readings) { r.Sequence = timing.Yes },
		"stroke of the spark":           func(_ *timing.Engine, r *timing.Readings) { r.Spark = timing.Yes },
		"wear and pattern of the lobes": func(_ *timing.Engine, r *timing.Readings) { r.InletMaxLift, r.ExhaustMaxLift = lift(8), lift(8) },
		"whether rings and valves hold": func(_ *timing.Engine, r *timing.Readings) { r.CompressionDry = gauge(7) },
	} {
		e, r := engine(), timing.Readings{InletOpens: disc("25 BTDC")}
		if !names(e, r)[what] {
			t.Errorf("%q is not named", what)
		}
		settle(&e, &r)
		if names(e, r)[what] {
			t.Errorf("%q is settled, and still named", what)
		}
	}
	one := engine()
	one.Drive = timing.OneCamwheel(24, 48)
	if names(one, events("25 BTDC", "65 ABDC", "65 BBDC", "25 ATDC"))["which turn each cam is on"] {
		t.Error("lobes of one shaft cannot be on different turns")
	}
}

// The defaults that Options documents, given by name, change nothing.
func TestDefaultsByName(t *testing.T) {
	deg, mil := units.CrankDegree, units.Millimetre
	named := timing.Options{
		Priors: timing.Priors{Nothing: 0.40, WholeTrain: 0.08, Wheel: 0.08, Slip: 0.06, Keyway: 0.03, TDC: 0.06, Clearance: 0.04, CheckLift: 0.02, OtherCam: 0.03, UnknownCam: 0.02,
			Exchanged: 0.01, Disc: 0.02, WholeTurn: 0.005, Reversed: 0.005, Follower: 0.01, Held: 0.015, Worn: 0.02, Else: 0.02},
		Widths: timing.Widths{TDCByEye: 1.5 * deg, TDCByStop: 0.3 * deg, TDCByDial: 1 * deg, TDCByMark: 1.5 * deg, TDCWrong: 8 * deg, Duration: 2 * deg, Slip: 10 * deg, SlipAnywhere: 0.3,
			Clearance: 0.25 * mil, Lift: 0.4 * mil, MaxLift: 0.1 * mil, UnknownCam: 20 * deg, Follower: 12 * deg, Held: 0.4 * mil, Worn: 0.6 * mil, Else: 30 * deg},
		Misread: timing.Misread{Chance: 0.02, By: 10 * deg, Wild: 0.2},
		Trifle:  3 * deg, Teeth: 3, Near: 2 * deg,
		Work: timing.Work{Tooth: units.Hours(1), Keyway: units.Hours(1.5), Vernier: units.Hours(1), Shim: units.Hours(1), RePress: units.Hours(3)},
	}
	e, r, _ := everything()
	zero, given := diagnose(t, e, r, timing.Options{}), diagnose(t, e, r, named)
	if len(zero.Causes.Odds) != len(given.Causes.Odds) {
		t.Fatalf("%d causes, by name %d", len(zero.Causes.Odds), len(given.Causes.Odds))
	}
	for i, o := range zero.Causes.Odds {
		if given.Causes.Odds[i] != o {
			t.Errorf("%v, by name %v", o, given.Causes.Odds[i])
		}
	}
	for i, m := range zero.Remedies {
		if x := given.Remedies[i]; x.Key != m.Key || x.Work != m.Work {
			t.Errorf("%s %v, by name %s %v", m.Key, m.Work, x.Key, x.Work)
		}
	}
}
