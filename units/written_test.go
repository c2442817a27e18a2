package units_test

import (
	"testing"

	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
)

// TestAsWritten reads units the way workshops and period books write them.
func TestAsWritten(t *testing.T) {
	sameAs[units.Torque](t, "90 lbf ft", "90 ft.lb", "90 lb.ft.", "90 lbs.ft", "90 ft-lbs", "90 lbft", "90 ftlbs", "90 foot pounds")
	sameAs[units.Torque](t, "9 kgf m", "9 kgm", "9 mkg", "9 mkp", "9 kg.m")
	sameAs[units.Torque](t, "90 N m", "90 N.m", "90 Nm.", "90 N·m")
	sameAs[units.Length](t, "3/8 in", "3/8 ins", "3/8 ins.", `3/8"`, "3/8in.")
	sameAs[units.Volume](t, "397 cc", "397 c.c.", "397 CC", "397cc.")
	sameAs[units.Volume](t, "24 in³", "24 cu. in.", "24 cu.ins.", "24 cubic inches")
	sameAs[units.Pressure](t, "30 psi", "30 p.s.i.", "30 lb/sq.in.", "30 lb./in.2")
	sameAs[units.Pressure](t, "30 inHg", "30 in. Hg", "30 inches Hg")
	sameAs[units.Speed](t, "70 mile/h", "70 m.p.h.", "70 miles per hour")
	sameAs[units.RotationalSpeed](t, "3000 rev/min", "3000 r.p.m.", "3000 RPM")
	sameAs[units.Temperature](t, "20 °C", "20 celsius", "20C", "20 deg. C")
	sameAs[units.Ratio](t, "7.5", "7.5:1", "7.5 : 1", "7.5 to 1")
}

func sameAs[Q units.Quantity](t *testing.T, want string, texts ...string) {
	t.Helper()
	w := units.MustParse[Q](want)
	for _, s := range texts {
		if q, err := units.Parse[Q](s); err != nil || q != w {
			t.Errorf("%q reads as %v, %v, not %v", s, q, err, w)
		}
	}
}

// TestPositionOrTravel refuses what a mechanic may mean as piston travel: in
// the books of the time 5/16 BTDC is inches.
func TestPositionOrTravel(t *testing.T) {
	for s, code := range map[string]fault.Code{
		`5/16" BTDC`: fault.UnitUnknown, "5/16 BTDC": fault.UnitMissing, "5/16 in BTDC": fault.UnitUnknown, "8 mm BTDC": fault.UnitUnknown, "30' BTDC": fault.UnitUnknown,
	} {
		_, err := units.ParsePosition(s)
		if f := fault.Faults(err); len(f) != 1 || f[0].Code != code || f[0].Value != s {
			t.Errorf("%q: %#v, not %s", s, f, code)
		}
	}
	for s, want := range map[string]units.CrankAngle{"25 B.T.D.C.": 25, "25° b.t.d.c.": 25, "12 1/2 BTDC": 12.5, "½ BTDC": 0.5, "1/2° BTDC": 0.5, "45°30' BTDC": 45.5} {
		if p, err := units.ParsePosition(s); err != nil || p.Before() != want {
			t.Errorf("%q: %v, %v", s, p, err)
		}
	}
}
