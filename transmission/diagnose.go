package transmission

import (
	"errors"

	"example.com/benchbook/refdata"
	"example.com/benchbook/units"
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

// Signs is what the clutch does on the road and on the stand.
type Signs struct {
	Slips     Sign                          // under full torque, warm
	Drags     Sign                          // does not free with the lever at the bar, warm
	Heavy     Sign                          // heavier than it should be
	SoftThen  Sign                          // the lever is light at first, then stiff
	Lift      measure.Reading[units.Length] // of the pressure plate, lever at the bar, by dial gauge at its middle
	HandForce measure.Reading[units.Force]  // at the finger line with the lever at the bar, by spring balance
}

// Diagnosis is what is probably wrong.
type Diagnosis struct {
	Causes       measure.Ranking `json:"causes"`
	NextReadings []measure.Gain  `json:"next_readings,omitempty"`
	Basis        refdata.Basis   `json:"basis"`
}

// Diagnose ranks the causes that explain the signs and readings.
func Diagnose(in Input, opt Options) (Diagnosis, error) {
	return Diagnosis{}, errors.New("transmission: not computed yet")
}
