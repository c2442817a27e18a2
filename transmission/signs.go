package transmission

import (
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

// Sign is the answer to a look or a trial.
type Sign uint8

// The answers.
const (
	NotTried Sign = iota
	No
	Yes
)

// String returns the answer in words.
func (s Sign) String() string {
	switch s {
	case NotTried:
		return "not tried"
	case No:
		return "no"
	case Yes:
		return "yes"
	}
	return "unknown answer"
}

// MarshalText returns the words of String.
func (s Sign) MarshalText() ([]byte, error) { return []byte(s.String()), nil }

// UnmarshalText reads the words of String; empty text is not tried.
func (s *Sign) UnmarshalText(b []byte) error {
	switch string(b) {
	case "", "not tried":
		*s = NotTried
	case "no":
		*s = No
	case "yes":
		*s = Yes
	default:
		return fault.Fault{Code: fault.UnknownName, Value: string(b), Rule: "must be yes, no or not tried"}
	}
	return nil
}

// Signs is what the clutch does on the road and on the stand.
type Signs struct {
	Slips     Sign                          // under full torque, warm
	Drags     Sign                          // does not free with the lever at the bar, warm
	Heavy     Sign                          // plainly heavier than a good one
	LightThen Sign                          // the lever is light over a first part of its pull, beyond the free play, then stiff
	Kick      KickTest                      // a rider's weight on the kick starter; not taken without a rider
	Lift      measure.Reading[units.Length] // of the pressure plate at its middle, lever at the bar, by dial gauge, 0 to 15 mm
	HandForce measure.Reading[units.Force]  // at the finger line with the lever at the bar, by spring balance, 1 to 1000 N
}
