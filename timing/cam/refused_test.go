package cam_test

import (
	"math"
	"testing"

	"example.com/benchbook/timing/cam"
	"example.com/benchbook/units"
)

// TestNoCurve asks a curve that is not there: faults, never a panic.
func TestNoCurve(t *testing.T) {
	for _, c := range []*cam.Curve{nil, {}} {
		_, e1 := c.Lift(10)
		_, e2 := c.Motion(10)
		_, e3 := c.Events(units.Millimetre)
		_, e4 := c.Area(units.Millimetre, 0)
		_, e5 := c.Centres(units.Millimetre)
		_, e6 := c.Contact(10, cam.Flat(), 15*units.Millimetre)
		_, e7 := c.Advanced(5)
		_, e8 := c.Trace(1)
		_, _, e9 := c.WithFollower(cam.Flat(), cam.Roller(9*units.Millimetre), 15*units.Millimetre)
		_, e10 := cam.OverlapOf(c, c, units.Millimetre)
		for i, err := range []error{e1, e2, e3, e4, e5, e6, e7, e8, e9, e10} {
			if err == nil {
				t.Errorf("question %d of no curve has an answer", i+1)
			}
		}
		if lift, at := c.MaxLift(); lift != 0 || at != 0 {
			t.Errorf("greatest lift %v at %v of no curve", lift, at)
		}
		c.Reversed()
		c.XY(3)
	}
}

// TestFarAngles finds the lift at angles many turns away: the same as within
// the turn, as far as a float64 still tells degrees apart, and no panic beyond.
func TestFarAngles(t *testing.T) {
	c, err := cam.ArcCam{BaseRadius: 16 * units.Millimetre, NoseRadius: 4 * units.Millimetre, Lift: 7 * units.Millimetre, HalfAngle: 60 * units.CamDegree}.Curve(100)
	if err != nil {
		t.Fatal(err)
	}
	near, _ := c.Lift(110)
	for _, turns := range []float64{-3, 5, 1e6, -1e6} {
		if far, err := c.Lift(units.CamDegrees(110 + 360*turns)); err != nil || math.Abs((far-near).Millimetres()) > 1e-6 {
			t.Errorf("%v turns on: %v, %v, not %v", turns, far, err, near)
		}
	}
	for _, x := range []float64{1e18, -1e18, 1e308, -1e308, math.MaxFloat64} {
		if _, err := c.Motion(units.CamDegrees(x)); err != nil {
			t.Errorf("%v°: %v", x, err)
		}
		if _, err := c.Lift(units.CamDegrees(x)); err != nil {
			t.Errorf("%v°: %v", x, err)
		}
	}
}

// TestNoAngle takes samples of nothing: they pass through CrankSample as they are
// and are refused where they are used.
func TestNoAngle(t *testing.T) {
	good := make([]cam.Sample, 36)
	c, err := cam.ArcCam{BaseRadius: 16 * units.Millimetre, NoseRadius: 4 * units.Millimetre, Lift: 7 * units.Millimetre, HalfAngle: 60 * units.CamDegree}.Curve(100)
	if err != nil {
		t.Fatal(err)
	}
	for i := range good {
		at := units.CrankDegrees(20 * float64(i))
		lift, _ := c.Lift(at.AtHalfSpeedCam())
		good[i] = cam.CrankSample(at, lift)
	}
	if _, err := cam.Fit(good, cam.FitOptions{}); err != nil {
		t.Fatal(err)
	}
	for _, x := range []float64{math.NaN(), math.Inf(1), 1e300} {
		for _, s := range []cam.Sample{cam.CrankSample(units.CrankDegrees(x), 0), cam.CrankSample(0, units.Millimetres(x))} {
			if _, err := cam.Fit(append([]cam.Sample{s}, good...), cam.FitOptions{}); err == nil {
				t.Errorf("%v passes Fit", s)
			}
			if _, err := cam.Identify(append([]cam.Sample{s}, good...), []cam.Profile{{Name: "own", Curve: c}}, cam.IdentifyOptions{}); err == nil {
				t.Errorf("%v passes Identify", s)
			}
		}
	}
	for _, x := range []float64{math.NaN(), math.Inf(1), 1e308} {
		if at := cam.Place(units.CamDegrees(x)).After(); !(at.Abs() <= 90*units.CrankDegree) {
			t.Errorf("Place of %v: %v", x, at)
		}
	}
}

// A cone that would run out to a point, and one that slipped under nothing.
func TestNoCone(t *testing.T) {
	cone := cam.Taper{OneIn: 8, MeanDiameter: 16 * units.Millimetre, Length: 20 * units.Millimetre}
	if b, err := cone.Bedded(0); err == nil {
		t.Errorf("no force: %+v", b)
	}
	cone.Length = 256 * units.Millimetre // sixteen off the diameter on either side of the middle
	if b, err := cone.Bedded(units.Kilonewton); err == nil {
		t.Errorf("a point: %+v", b)
	}
	cone.Length = 0
	if b, err := cone.Bedded(units.Kilonewton); err == nil {
		t.Errorf("no length: %+v", b)
	}
}
