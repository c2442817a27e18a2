package carburation

import (
	"math"

	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

// EmptyingTime returns how long a vessel of even cross-section takes to fall
// from one head to another through a hole at its foot:
//
//	t = At/(Cd A) sqrt(2/g) (sqrt(h0) - sqrt(h1))
//
// (falling-head orifice, any hydraulics text). Errors: figures outside, a second
// head above the first.
func EmptyingTime(vessel, hole units.Area, coefficient units.Ratio, from, to units.Length) (units.Time, error) {
	var l fault.List
	positive(&l, "vessel", vessel, units.SquareMillimetres(1), units.SquareMetres(100))
	positive(&l, "hole", hole, units.SquareMillimetres(1e-4), units.SquareMetres(1))
	positive(&l, "coefficient", coefficient, 0.02, 1)
	heads(&l, from, to)
	if l.Len() > 0 {
		return 0, l.Err()
	}
	return units.Seconds(vessel.SquareMetres() / (coefficient.Value() * hole.SquareMetres()) * math.Sqrt(2/standardGravity) * (math.Sqrt(from.Metres()) - math.Sqrt(to.Metres()))), nil
}

func heads(l *fault.List, from, to units.Length) {
	positive(l, "from", from, units.Millimetres(1), units.Metres(100))
	if !(to >= 0 && to < from) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "to", Value: to.String(), Unit: "mm", Rule: "from 0, below the head it falls from"})
	}
}

// FallingHead is the test that calibrates an unknown jet at the bench: screw it
// into the foot of a straight tube, fill the tube, and time the level as it
// falls between two marks. Water does, if the jet is then judged by the same
// Reynolds number; petrol is a danger and is not needed.
type FallingHead struct {
	Vessel units.Area                    // cross-section of the tube inside
	From   measure.Reading[units.Length] // head over the jet at the first mark
	To     measure.Reading[units.Length] // and at the second
	Time   measure.Reading[units.Time]   // between them
}

// Effective returns the coefficient times the area of the jet:
// At/t sqrt(2/g) (sqrt(h0) - sqrt(h1)), with the uncertainty of the readings.
// Errors: a reading not taken or outside its range.
func (f FallingHead) Effective() (measure.Reading[units.Area], error) {
	var none measure.Reading[units.Area]
	var l fault.List
	positive(&l, "vessel", f.Vessel, units.SquareMillimetres(1), units.SquareMetres(1))
	needed(&l, "from", f.From)
	needed(&l, "to", f.To)
	needed(&l, "time", f.Time)
	if l.Len() == 0 {
		heads(&l, f.From.Value(), f.To.Value())
		positive(&l, "time", f.Time.Value(), units.Seconds(0.1), units.Hours(100))
	}
	if l.Len() > 0 {
		return none, l.Err()
	}
	at := f.Vessel.SquareMetres()
	return measure.Propagate[units.Area](func(x []float64) float64 {
		return at / x[2] * math.Sqrt(2/standardGravity) * (math.Sqrt(x[0]) - math.Sqrt(math.Max(0, x[1])))
	}, f.From.SI(), f.To.SI(), f.Time.SI())
}

// FlowAt returns what a jet of effective area passes under a head: CA sqrt(2 g h).
// The reading's uncertainty is carried. Errors: a reading or head outside.
func FlowAt(effective measure.Reading[units.Area], head measure.Reading[units.Length]) (measure.Reading[units.VolumeFlow], error) {
	var l fault.List
	needed(&l, "effective", effective)
	needed(&l, "head", head)
	if l.Len() == 0 {
		positive(&l, "effective", effective.Value(), units.SquareMillimetres(1e-4), units.SquareMillimetres(1e4))
		positive(&l, "head", head.Value(), units.Millimetres(1), units.Metres(20))
	}
	if l.Len() > 0 {
		return measure.Reading[units.VolumeFlow]{}, l.Err()
	}
	return measure.Propagate[units.VolumeFlow](func(x []float64) float64 { return x[0] * math.Sqrt(2*standardGravity*math.Max(0, x[1])) }, effective.SI(), head.SI())
}

func needed[Q units.Quantity](l *fault.List, path string, r measure.Reading[Q]) {
	if !r.Taken() {
		l.Add(fault.Fault{Code: fault.Missing, Path: path, Rule: "a reading is needed"})
		return
	}
	l.Under(path, r.Err())
}
