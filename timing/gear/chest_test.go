package gear_test

import (
	"math"
	"testing"

	"example.com/benchbook/timing/gear"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
)

// A pair's marks meet after the least common multiple of its teeth, in groups of their
// common divisor; of several meshes only the turns are told. 24 and 36: 72 teeth, three
// turns of the first, twelve groups.
func TestMarksOfAPairAndOfMore(t *testing.T) {
	for _, c := range []struct {
		train gear.Train
		want  gear.Recurrence
	}{
		{gear.Simple(24, 36), gear.Recurrence{Turns: 3, Teeth: 72, Groups: 12}},
		{gear.Simple(24, 36, 48), gear.Recurrence{Turns: 6, Groups: 1}}, // 2/3 and 1/2 of a turn
		{gear.Train{}, gear.Recurrence{Turns: 1, Groups: 1}},
	} {
		if got, err := c.train.MarksMeet(); err != nil || got != c.want {
			t.Errorf("%v: %+v, %v", c.train, got, err)
		}
	}
}

// A bad wheel is told once, at its own mesh, not again for all that it drives; two
// wheels of as many teeth on a spindle are one idler.
func TestDriveTellsAWheelOnce(t *testing.T) {
	d := gear.Drive{
		{From: "crank", Driver: 24, To: "idler", Driven: 1},
		{From: "idler", Driver: 30, To: "inlet", Driven: 45},
		{From: "idler", Driver: 1, To: "exhaust", Driven: 45},
	}
	if f := fault.Faults(d.Err()); len(f) != 1 || f[0].Path != "drive[0].train[0].driven" {
		t.Errorf("%v", f)
	}
	d[0].Driven = 32
	if f := fault.Faults(d.Err()); len(f) != 1 || f[0].Path != "drive[2].train[1].driver" {
		t.Errorf("%v", f)
	}
	for driver, want := range map[int]string{32: "24:32:48", 30: "24:32, 30:48"} {
		d := gear.Drive{{From: "crank", Driver: 24, To: "idler", Driven: 32}, {From: "idler", Driver: driver, To: "inlet", Driven: 48}}
		if tr, err := d.Train("inlet"); err != nil || tr.String() != want {
			t.Errorf("%v, %v", tr, err)
		}
	}
}

// Between two settings as near, the one with the lesser shift; 40 teeth and three
// keyways go by 3°.
func TestNearestOfTwoAlike(t *testing.T) {
	k := gear.Keyed{Teeth: 40, Keyways: 3}
	for want, shift := range map[units.Angle]units.Angle{1.5: 0, -1.5: -3, 1.6: 3, 1.4: 0} {
		if s, err := k.Nearest(want); err != nil || (s.Shift-shift).Abs() > 1e-12 {
			t.Errorf("%v: %+v, %v", want, s, err)
		}
	}
}

// Uneven keyways, tried one by one with every tooth: 40 teeth of 9°, keyways at 0°,
// 100° and 215.5°, which are 1° and -0.5° of a tooth.
func TestUnevenKeyways(t *testing.T) {
	q := gear.NewRational
	k := gear.Keyed{Teeth: 40, Offsets: []gear.Rational{q(0, 1), q(100, 1), q(431, 2)}}
	all, err := k.Settings()
	if err != nil || len(all) != 3 {
		t.Fatal(all, err)
	}
	for i, want := range []gear.Setting{{Keyways: 2, Teeth: 24, Shift: -0.5, Exact: q(-1, 2)}, {}, {Keyways: 1, Teeth: 11, Shift: 1, Exact: q(1, 1)}} {
		if all[i] != want {
			t.Errorf("%+v, want %+v", all[i], want)
		}
	}
	for want := -20.0; want <= 20; want += 0.37 {
		got, err := k.Nearest(units.Degrees(want))
		best := math.Inf(1)
		for _, o := range k.Offsets {
			for n := -60; n <= 60; n++ {
				best = min(best, math.Abs(o.Float()+9*float64(n)-want))
			}
		}
		if err != nil || math.Abs(math.Abs(got.Shift.Degrees()-want)-best) > 1e-9 {
			t.Errorf("%v: %+v misses, best %v, %v", want, got, best, err)
		}
	}
}
