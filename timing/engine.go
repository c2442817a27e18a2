package timing

import (
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// Lobe is a cam as it is meant to be: its events at one check, and what is known
// of its flanks.
type Lobe struct {
	Opens  units.CrankPosition `json:"opens"`
	Closes units.CrankPosition `json:"closes"`
	// MaxLift is the greatest lift where Check.At says. Not given: causes that
	// change it are judged by the events alone.
	MaxLift measure.Reading[units.Length] `json:"max_lift"`
	// OpeningRise and ClosingRise are the lift gained, or lost, over the one
	// crank degree at the check lift. Zero: taken from a lobe of usual shape
	// through MaxLift and the check lift, and said so in Basis.Assumed.
	OpeningRise units.Length `json:"opening_rise"`
	ClosingRise units.Length `json:"closing_rise"`
}

// Rival is another cam that is known to fit the engine.
type Rival struct {
	Name string `json:"name"`
	Cam  Cam    `json:"cam"` // whose place it would be in
	Lobe Lobe   `json:"lobe"`
}

// Fixing says how a cam is held to its wheel.
type Fixing uint8

// The fixings.
const (
	FixingUnknown Fixing = iota // taken as one that may slip
	Pressed                     // plain or taper seat: may slip, may be turned to any angle
	OnePiece                    // cannot slip
)

// Engine is how the engine is made.
type Engine struct {
	Inlet   Lobe    `json:"inlet"`
	Exhaust Lobe    `json:"exhaust"`
	Check   Check   `json:"check"` // that the events of Inlet, Exhaust and Rivals are given at
	Rivals  []Rival `json:"rivals,omitempty"`
	// InletFixing and ExhaustFixing say how each cam is held to its wheel.
	InletFixing   Fixing `json:"inlet_fixing"`
	ExhaustFixing Fixing `json:"exhaust_fixing"`
	// Keyways is the number of equally spaced keyways in the crank pinion; below
	// two there is nothing to choose.
	Keyways int `json:"keyways,omitempty"`
	// Lifter reports that an exhaust valve lifter or decompressor is fitted.
	Lifter bool `json:"lifter,omitempty"`
}
