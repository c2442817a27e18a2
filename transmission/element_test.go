package transmission

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"example.com/benchbook/units"
)

// An arm square at mid lift has the ratio of its radii there, and within 30
// degrees either side of it a ratio up to 15 % off: 1/cos 30 is 1.155 where the
// rod arm stays near square.
func TestArmOutOfSquare(t *testing.T) {
	for _, c := range []struct{ rest, want float64 }{{0, 6}, {30, 6 * math.Cos(math.Pi/6)}, {-30, 6 * math.Cos(math.Pi/6)}} {
		e := QuickThread(60*units.Millimetre, units.Millimetres(20*math.Pi), units.Degrees(c.rest))
		_, ratio := e.turn(0)
		if math.Abs(ratio-c.want) > 1e-12 {
			t.Errorf("at %v degrees: ratio %v, want %v", c.rest, ratio, c.want)
		}
	}
}

// Work in is work out: the ratio told is the slope of cable travel over rod travel,
// and travel there and back agrees.
func TestTurnIsItsOwnSlope(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := func(name string, low, high float64) float64 { return rapid.Float64Range(low, high).Draw(t, name) }
		e := ReleaseArm(units.Millimetres(f("cable", 20, 90)), units.Millimetres(f("rod", 6, 20)), units.Degrees(f("cable rest", -45, 30)), units.Degrees(f("rod rest", -45, 30)))
		if rapid.Bool().Draw(t, "ramp") {
			e = BallRamp(units.Millimetres(f("cable", 20, 90)), units.Millimetres(f("rise", 1, 6)), units.Degrees(f("over", 20, 90)), units.Degrees(f("cable rest", -45, 30)))
		}
		y := f("travel", -1, 4)
		const h = 1e-5
		up, _ := e.turn(y + h)
		down, _ := e.turn(y - h)
		at, ratio := e.turn(y)
		// central difference of figures up to a hundred: rounding over the step; a
		// corner where an arm passes 80 degrees is skipped by the tolerance's second part
		if n := (up - down) / (2 * h); math.Abs(n-ratio) > 1e-6*math.Max(1, math.Abs(n)) && math.Abs(n-ratio) > 0.01*math.Abs(n) {
			t.Fatalf("slope %v, told %v at %v", n, ratio, at)
		}
		if zero, _ := e.turn(0); math.Abs(zero) > 1e-9 {
			t.Fatalf("no rod travel takes %v mm of cable", zero)
		}
	})
}

func TestFixedLinks(t *testing.T) {
	if r := Rocker(42*units.Millimetre, 12*units.Millimetre); r.Ratio != 3.5 {
		t.Errorf("rocker of ratio %v", r.Ratio)
	}
	// a ramp of 3 mm over 45 degrees is a screw of 24 mm
	a, b := BallRamp(50*units.Millimetre, 3*units.Millimetre, 45*units.Degree, 0), QuickThread(50*units.Millimetre, 24*units.Millimetre, 0)
	if math.Abs(a.Ratio-b.Ratio) > 1e-12 || math.Abs(a.Ratio-50*2*math.Pi/24) > 1e-12 {
		t.Errorf("ramp %v, screw %v", a.Ratio, b.Ratio)
	}
}
