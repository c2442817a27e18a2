package timing

import (
	"math"

	"example.com/benchbook/units"
)

// shape is one lobe as numbers: crank degrees round the overlap TDC and mm of
// lift. Lift is counted at the valve with the clearance added back, so that
// lifts found at valve and follower, and at several clearances, are on one scale.
type shape struct {
	cam                Cam
	opens, closes      float64 // at the book's check
	top                float64 // greatest lift
	half               float64 // degrees from the centre to where the lobe begins
	openRise, shutRise float64 // mm per degree at the book's check
	liftAssumed        bool    // top was not given
	riseAssumed        bool    // the rises come from the usual shape
}

// usualLift stands in for a greatest lift that was not given: common practice,
// no source; it only scales the slopes.
const usualLift = 8.0

// flatLift is the least lift at which a slope of the usual shape is believed: a
// real lobe leaves its base circle on a ramp, not at a standstill.
const flatLift = 0.1

// reach returns the lift on the common scale that a check stands for.
func (c Check) reach(rocker float64) float64 {
	if c.At == AtFollower {
		return c.Lift.Millimetres() * rocker
	}
	return c.Lift.Millimetres() + c.Clearance.Millimetres()
}

// shapeOf turns a lobe, sound or not, into numbers.
func shapeOf(c Cam, l Lobe, k Check, rocker float64) shape {
	s := shape{cam: c}
	opens, closes := l.Opens.FromTDC().Degrees(), l.Closes.FromTDC().Degrees()
	length := turn(closes - opens)
	if c == Inlet {
		s.opens = wrap(opens)
		s.closes = s.opens + length
	} else {
		s.closes = wrap(closes)
		s.opens = s.closes - length
	}
	s.top = usualLift
	if s.liftAssumed = !l.MaxLift.Taken(); !s.liftAssumed {
		peak := k
		peak.Lift = l.MaxLift.Value()
		s.top = peak.reach(rocker)
	}
	at := min(max(k.reach(rocker), 0), 0.9*s.top)
	s.half = length / 2 / math.Sqrt(1-math.Sqrt(at/s.top))
	s.openRise = s.rise(max(at, flatLift))
	s.shutRise = s.openRise
	scale := 1.0
	if k.At == AtFollower {
		scale = rocker
	}
	s.riseAssumed = true
	if l.OpeningRise > 0 {
		s.openRise, s.riseAssumed = l.OpeningRise.Millimetres()*scale, false
	}
	if l.ClosingRise > 0 {
		s.shutRise = l.ClosingRise.Millimetres() * scale
	} else if l.OpeningRise > 0 {
		s.shutRise = s.openRise
	}
	return s
}

// Of the usual shape, lift = top (1 - (x/half)^2)^2 at x degrees from the
// centre: smooth at both ends, symmetrical, a fair likeness of a plain lobe.
// Derived; common practice, no source.

// from is how many degrees from the centre the lift is reached.
func (s *shape) from(lift float64) float64 {
	return s.half * math.Sqrt(1-math.Sqrt(min(max(lift/s.top, 0), 1)))
}

// rise is the slope in mm per degree where the lift is reached.
func (s *shape) rise(lift float64) float64 {
	x := s.from(lift) / s.half
	return 4 * s.top * x * (1 - x*x) / s.half
}

// lift is the lift at a crank angle from the overlap TDC, with the cam advanced.
func (s *shape) lift(at, advance float64) float64 {
	x := (wrap2(at+advance-s.centre()) / s.half)
	if x <= -1 || x >= 1 {
		return 0
	}
	y := 1 - x*x
	return s.top * y * y
}

func (s *shape) centre() float64   { return (s.opens + s.closes) / 2 }
func (s *shape) duration() float64 { return s.closes - s.opens }

// at moves the events to another lift on the common scale, by the usual shape.
func (s *shape) at(from, to float64) (opens, closes float64) {
	if from == to {
		return s.opens, s.closes
	}
	later := s.from(from) - s.from(to)
	return s.opens + later, s.closes - later
}

// wrap brings an angle to -180 up to 180, one turn of the crank.
func wrap(x float64) float64 { return x - 360*math.Floor((x+180)/360) }

// wrap2 brings an angle to -360 up to 360, one cycle.
func wrap2(x float64) float64 { return x - 720*math.Floor((x+360)/720) }

// turn brings an angle to 0 up to 360.
func turn(x float64) float64 { return x - 360*math.Floor(x/360) }

// ratioOf is a rocker ratio, one where none was given.
func (e *Engine) ratioOf() float64 {
	if e.Rocker.Taken() {
		return e.Rocker.Value().Value()
	}
	return 1
}

// lobe returns the specification of a cam.
func (e *Engine) lobe(c Cam) *Lobe {
	if c == Exhaust {
		return &e.Exhaust
	}
	return &e.Inlet
}

func (e *Engine) fixing(c Cam) Fixing {
	if c == Exhaust {
		return e.ExhaustFixing
	}
	return e.InletFixing
}

// plain writes a pure number.
func plain(x float64) string { return units.Value(x).String() }
