package ignition

import (
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
)

// Turned returns the crank angle run through in a time at a speed: the ignition
// delay is a time, so it takes more degrees the faster the crank turns. Errors:
// time or speed below zero.
func Turned(in units.Time, speed units.RotationalSpeed) (units.CrankAngle, error) {
	var l fault.List
	notBelow(&l, "time", in, "ms")
	notBelow(&l, "speed", speed, "rev/min")
	if err := l.Err(); err != nil {
		return 0, err
	}
	return units.FromSI[units.CrankAngle](in.SI() * speed.SI()), nil
}

// SparkFor returns where the spark must fall for burning to be under way at a
// position, given the delay as a time and the speed (Mathur & Sharma, Internal
// Combustion Engine, 8th ed., example 5.1, p. 178, read in a textbook companion).
// Errors: as [Turned]; a position not finite.
func SparkFor(burning units.CrankPosition, delay units.Time, speed units.RotationalSpeed) (units.CrankPosition, error) {
	a, err := Turned(delay, speed)
	var l fault.List
	l.Under("", err)
	if !sane(burning.After()) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "burning", Unit: "° crank", Rule: "must be finite"})
	}
	if err := l.Err(); err != nil {
		return units.CrankPosition{}, err
	}
	return units.After(burning.Datum(), burning.After()-a), nil
}

// Burn is the run of one flame.
type Burn struct {
	Took units.Time          `json:"took"` // from spark to the far wall
	Ends units.CrankPosition `json:"ends"`
}

// BurnEnd returns when a flame that starts a delay angle after the spark and
// crosses a distance at a steady speed reaches the far wall (Rajput, A Textbook of
// Internal Combustion Engines, 2nd ed., example 5.1, p. 218, read in a textbook
// companion). A plug to one side of the bore makes the distance half the bore plus
// its offset. Errors: a distance below zero; flame or crank speed not above it; a
// delay below zero.
func BurnEnd(spark units.CrankPosition, delay units.CrankAngle, distance units.Length, flame units.Speed, speed units.RotationalSpeed) (Burn, error) {
	var l fault.List
	notBelow(&l, "delay", delay, "° crank")
	notBelow(&l, "distance", distance, "mm")
	notBelow(&l, "flame", flame, "m/s")
	notBelow(&l, "speed", speed, "rev/min")
	if flame.SI() < 1e-9 || speed.SI() < 1e-9 {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "speed", Rule: "flame and crank must move"})
	}
	if !sane(spark.After()) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "spark", Unit: "° crank", Rule: "must be finite"})
	}
	if err := l.Err(); err != nil {
		return Burn{}, err
	}
	across := units.Seconds(distance.SI() / flame.SI())
	a, err := Turned(across, speed)
	if err != nil {
		return Burn{}, err
	}
	return Burn{
		Took: across + units.Seconds(delay.SI()/speed.SI()),
		Ends: units.After(spark.Datum(), spark.After()+delay+a),
	}, nil
}

func notBelow[Q units.Quantity](l *fault.List, path string, v Q, unit string) {
	if !(v >= 0) || !sane(v) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: path, Unit: unit, Rule: "must be finite and not below zero"})
	}
}
