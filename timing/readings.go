package timing

import (
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// Seen is what was seen when something was looked at. The zero value was not
// looked at.
type Seen uint8

// What was seen.
const (
	NotLooked Seen = iota
	Yes
	No
)

// TDCBy says how top dead centre was found before reading the disc.
type TDCBy uint8

// The ways of finding top dead centre, and the standard uncertainty each leaves
// in every reading alike; see [Widths] to change them.
const (
	TDCByEye  TDCBy = iota // feel or sight of the piston at rest: 1.5°
	TDCByStop              // two readings at a positive stop, halved: 0.3°
	TDCByDial              // dial gauge on the piston at its highest: 1°
	TDCByMark              // an old mark, trusted: 1.5°, and the mark may be wrong
)

// Readings is what was read from the engine. Nothing is needed, but without at
// least one event there is no verdict.
type Readings struct {
	InletOpens    measure.Position `json:"inlet_opens"`
	InletCloses   measure.Position `json:"inlet_closes"`
	ExhaustOpens  measure.Position `json:"exhaust_opens"`
	ExhaustCloses measure.Position `json:"exhaust_closes"`
	// Check is how the events were found. Nil: as the specification's.
	Check *Check `json:"check,omitempty"`
	TDC   TDCBy  `json:"tdc"`
	// InletMaxLift and ExhaustMaxLift are the greatest lifts where Check.At says.
	InletMaxLift   measure.Reading[units.Length] `json:"inlet_max_lift"`
	ExhaustMaxLift measure.Reading[units.Length] `json:"exhaust_max_lift"`
	// InletLiftAtTDC and ExhaustLiftAtTDC are the lifts at the top dead centre
	// between exhaust and inlet.
	InletLiftAtTDC   measure.Reading[units.Length] `json:"inlet_lift_at_tdc"`
	ExhaustLiftAtTDC measure.Reading[units.Length] `json:"exhaust_lift_at_tdc"`
	// MarksAlign says whether the tooth marks of all wheels come into line
	// within the turns after which they must, counted.
	MarksAlign Seen `json:"marks_align"`
	// Sequence says whether the inlet valve begins to open as the exhaust valve
	// closes, within the same half turn.
	Sequence Seen `json:"sequence"`
	// Spark says whether the spark comes at the end of compression, both valves
	// shut; No is a spark at overlap.
	Spark Seen `json:"spark"`
	// CompressionDry and CompressionWet are gauge pressures after equal numbers
	// of kicks, throttle open, before and after a spoonful of oil in the bore.
	CompressionDry measure.Reading[units.Pressure] `json:"compression_dry"`
	CompressionWet measure.Reading[units.Pressure] `json:"compression_wet"`
}

// Input is an engine and what was read from it.
type Input struct {
	Engine   Engine   `json:"engine"`
	Readings Readings `json:"readings"`
}
