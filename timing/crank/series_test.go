package crank_test

import (
	"math"
	"testing"

	"example.com/benchbook/timing/crank"
	"example.com/benchbook/units"
	"pgregory.net/rapid"
)

// The two-term series differentiates too: each figure is the slope of the one before,
// it runs from nothing at TDC to the stroke at BDC, and its rod leans as the exact one
// does. Central differences at 1e-4 rad are good to about 1e-8 of the figure.
func TestSeriesDifferentiates(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := slider(t)
		s.Offset = 0
		deg := rapid.Float64Range(-180, 180).Draw(t, "angle")
		const h = 1e-4
		at := func(deg float64) crank.Motion {
			m, err := s.TwoTermMotion(atdc(deg), units.RadiansPerSecond(1))
			if err != nil {
				t.Fatal(err)
			}
			return m
		}
		m, up, down := at(deg), at(deg+h*180/math.Pi), at(deg-h*180/math.Pi)
		exact, _ := s.Motion(atdc(deg), units.RadiansPerSecond(1))
		r := s.Throw.SI()
		for _, c := range []struct {
			name      string
			got, want float64
		}{
			{"velocity", m.Velocity.SI(), (up.Travel - down.Travel).SI() / (2 * h)},
			{"acceleration", m.Acceleration.SI(), (up.Velocity - down.Velocity).SI() / (2 * h)},
			{"jerk", m.JerkMetresPerSecond3, (up.Acceleration - down.Acceleration).SI() / (2 * h)},
			{"rod acceleration", m.RodAccelerationRadiansPerSecond2 * r, (up.RodSpeed - down.RodSpeed).SI() / (2 * h) * r},
			{"rod", m.Rod.SI() * r, exact.Rod.SI() * r},
			{"top", at(0).Travel.SI(), 0},
			{"bottom", at(180).Travel.SI(), 2 * r},
		} {
			if math.Abs(c.got-c.want) > 1e-6*r {
				t.Fatalf("%s %g, want %g", c.name, c.got, c.want)
			}
		}
	})
}

// Time runs twice as fast at twice the speed: velocities go with the speed,
// accelerations with its square, jerk with its cube; travel and what it gains for
// each degree, its slope, do not. 1e-12 is rounding.
func TestMotionGoesWithSpeed(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := slider(t)
		deg := rapid.Float64Range(-180, 180).Draw(t, "angle")
		w := rapid.Float64Range(0.1, 1000).Draw(t, "speed")
		one, _ := s.Motion(atdc(deg), units.RadiansPerSecond(1))
		m, err := s.Motion(atdc(deg), units.RadiansPerSecond(w))
		if err != nil {
			t.Fatal(err)
		}
		for _, c := range []struct {
			name      string
			got, want float64
		}{
			{"travel", m.Travel.SI(), one.Travel.SI()},
			{"velocity", m.Velocity.SI(), one.Velocity.SI() * w},
			{"acceleration", m.Acceleration.SI(), one.Acceleration.SI() * w * w},
			{"jerk", m.JerkMetresPerSecond3, one.JerkMetresPerSecond3 * w * w * w},
			{"rod speed", m.RodSpeed.SI(), one.RodSpeed.SI() * w},
			{"rod acceleration", m.RodAccelerationRadiansPerSecond2, one.RodAccelerationRadiansPerSecond2 * w * w},
			{"per degree", m.PerDegree.SI(), one.Velocity.SI() * math.Pi / 180},
		} {
			if math.Abs(c.got-c.want) > 1e-12*math.Abs(c.want) {
				t.Fatalf("%s %g, want %g", c.name, c.got, c.want)
			}
		}
	})
}

// No place on the way down is faster than where the speed is said to be greatest,
// tried degree by degree, and there it is so fast; also with an offset.
func TestGreatestSpeedIsTheGreatest(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := slider(t)
		peak, err := s.GreatestSpeed(rpm(1000))
		if err != nil {
			t.Fatal(err)
		}
		there, _ := s.Motion(peak.At, rpm(1000))
		if math.Abs((there.Velocity - peak.Speed).SI()) > 1e-9*peak.Speed.SI() { // rounding
			t.Fatalf("%v at %v, said to be %v", there.Velocity, peak.At, peak.Speed)
		}
		dc, _ := s.DeadCentres()
		for deg := 0.0; deg < dc.Down.Degrees(); deg++ {
			if m, _ := s.Motion(atdc(deg), rpm(1000)); m.Velocity > peak.Speed {
				t.Fatalf("%v at %v°, greatest %v at %v", m.Velocity, deg, peak.Speed, peak.At)
			}
		}
	})
}
