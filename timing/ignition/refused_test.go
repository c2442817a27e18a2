package ignition_test

import (
	"math"
	"testing"

	"example.com/benchbook/timing/gear"
	"example.com/benchbook/timing/ignition"
	"example.com/benchbook/units"
)

// What a drive with faults, or an angle that is none, comes to: zero, as documented,
// with the fault told by Err.
func TestNoDrive(t *testing.T) {
	for _, d := range []ignition.Drive{
		{Ratio: gear.NewRational(1, 0)}, {Ratio: gear.NewRational(-1, 2)}, {Ratio: gear.NewRational(1, 3)}, {Sparks: -1}, {Sparks: 65},
	} {
		if d.Err() == nil {
			t.Errorf("%+v passes", d)
		}
		if a, b, c := d.AtShaft(10), d.AtCrank(10), d.Period(); a != 0 || b != 0 || c != 0 {
			t.Errorf("%+v: %v, %v, %v", d, a, b, c)
		}
	}
	sound := ignition.HalfSpeed()
	for _, x := range []float64{math.NaN(), math.Inf(1), math.Inf(-1), 1e300} {
		if a, b := sound.AtShaft(units.CrankDegrees(x)), sound.AtCrank(units.Degrees(x)); a != 0 || b != 0 {
			t.Errorf("%v: %v, %v", x, a, b)
		}
	}
	if sound.AtShaft(10*units.CrankDegree) != 5*units.Degree || sound.AtCrank(5*units.Degree) != 10*units.CrankDegree {
		t.Error("half speed is not half speed")
	}
}
