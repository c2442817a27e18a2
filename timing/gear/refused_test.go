package gear_test

import (
	"math"
	"testing"

	"example.com/benchbook/timing/gear"
	"example.com/benchbook/units"
)

// A pitch that is none has no module, and a wheel of no module is refused.
func TestNoPitch(t *testing.T) {
	for _, x := range []float64{0, -1, math.NaN(), math.Inf(1), math.Inf(-1), 1e300, -5e-324} {
		l := units.Millimetres(x)
		if m := gear.OfDiametralPitch(x); m != 0 && x != 1e300 {
			t.Errorf("diametral pitch %v: module %v", x, m)
		}
		if m := gear.OfCircularPitch(l); m != 0 {
			t.Errorf("circular pitch %v: module %v", l, m)
		}
		if dp := gear.DiametralPitch(l); dp != 0 {
			t.Errorf("module %v: diametral pitch %v", l, dp)
		}
		for _, m := range []units.Length{gear.OfDiametralPitch(x), gear.OfCircularPitch(l)} {
			if (gear.Wheel{Teeth: 20, Module: m}).Err() == nil {
				t.Errorf("a wheel of the module of pitch %v passes", x)
			}
		}
	}
}
