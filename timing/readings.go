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

// String returns "not looked", "yes" or "no".
func (s Seen) String() string {
	switch s {
	case Yes:
		return "yes"
	case No:
		return "no"
	}
	return "not looked"
}

// MarshalText returns the text of String.
func (s Seen) MarshalText() ([]byte, error) { return []byte(s.String()), nil }

// TDCBy says how top dead centre was found before reading the disc.
type TDCBy uint8

// The ways of finding top dead centre, and the standard uncertainty each leaves
// in every reading alike; see [Widths] to change them. Except by a stop, the
// mark itself may be wrong as well.
const (
	TDCByEye  TDCBy = iota // feel or sight of the piston at rest: 1.5°
	TDCByStop              // two readings at a positive stop, halved: 0.3°
	TDCByDial              // dial gauge on the piston at its highest: 1°
	TDCByMark              // an old mark, trusted: 1.5°
)

// String returns "by eye", "by stop", "by dial" or "by mark".
func (t TDCBy) String() string {
	switch t {
	case TDCByStop:
		return "by stop"
	case TDCByDial:
		return "by dial"
	case TDCByMark:
		return "by mark"
	}
	return "by eye"
}

// MarshalText returns the text of String.
func (t TDCBy) MarshalText() ([]byte, error) { return []byte(t.String()), nil }

// Readings is what was read from the engine. Each may be left out, but without
// at least one event there is no verdict.
type Readings struct {
	InletOpens    measure.Position `json:"inlet_opens"`
	InletCloses   measure.Position `json:"inlet_closes"`
	ExhaustOpens  measure.Position `json:"exhaust_opens"`
	ExhaustCloses measure.Position `json:"exhaust_closes"`
	// Check is how the events were found. Nil: as the specification's.
	Check *Check `json:"check,omitempty"`
	TDC   TDCBy  `json:"tdc"`
	// TDCLate is how far past true TDC, as a stop shows it, the crank stood at
	// what the disc called TDC while the events were read; before it is
	// negative. Not taken as long as nobody has looked.
	TDCLate measure.Reading[units.CrankAngle] `json:"tdc_late"`
	// Lag is how much later than without lost motion the events were read, from
	// one event found forwards and backwards.
	Lag measure.Reading[units.CrankAngle] `json:"lag"`
	// InletMaxLift and ExhaustMaxLift are the greatest lifts where Check.At says.
	InletMaxLift   measure.Reading[units.Length] `json:"inlet_max_lift"`
	ExhaustMaxLift measure.Reading[units.Length] `json:"exhaust_max_lift"`
	// InletLiftAtTDC and ExhaustLiftAtTDC are the lifts at the top dead centre
	// between exhaust and inlet. They need the lobe's MaxLift.
	InletLiftAtTDC   measure.Reading[units.Length] `json:"inlet_lift_at_tdc"`
	ExhaustLiftAtTDC measure.Reading[units.Length] `json:"exhaust_lift_at_tdc"`
	// InletClearance and ExhaustClearance are what feelers find between tappet and
	// stem, cam on its base circle, where the events were read with
	// Check.Clearance supposed.
	InletClearance   measure.Reading[units.Length] `json:"inlet_clearance"`
	ExhaustClearance measure.Reading[units.Length] `json:"exhaust_clearance"`
	// InletOnWheel and ExhaustOnWheel are how far the cam has turned on its
	// wheel, measured with the wheel in the hand, advance positive.
	InletOnWheel   measure.Reading[units.CamAngle] `json:"inlet_on_wheel"`
	ExhaustOnWheel measure.Reading[units.CamAngle] `json:"exhaust_on_wheel"`
	// MarksAlign says whether the tooth marks of crank and cams come into line
	// as they should; those of an idler count for nothing unless the turns after
	// which they meet were counted.
	MarksAlign Seen `json:"marks_align"`
	// Sequence says whether the inlet valve begins to open as the exhaust valve
	// closes, within the same half turn.
	Sequence Seen `json:"sequence"`
	// Spark says whether the spark comes at the end of compression, both valves
	// shut; No is a spark at overlap.
	Spark Seen `json:"spark"`
	// MagnetoMarks says whether the marks between magneto and what drives it
	// come into line.
	MagnetoMarks Seen `json:"magneto_marks"`
	// CompressionDry and CompressionWet are gauge pressures after equal numbers
	// of kicks, throttle open, before and after a spoonful of oil in the bore.
	CompressionDry measure.Reading[units.Pressure] `json:"compression_dry"`
	CompressionWet measure.Reading[units.Pressure] `json:"compression_wet"`
	// Leak is a leak-down test: what a cylinder at rest loses, and where.
	Leak LeakTest `json:"leak,omitzero"`
}

// Input is an engine and what was read from it.
type Input struct {
	Engine   Engine   `json:"engine"`
	Readings Readings `json:"readings"`
}

// event returns one of the four positions.
func (r *Readings) event(e EventName) measure.Position {
	switch e {
	case InletOpens:
		return r.InletOpens
	case InletCloses:
		return r.InletCloses
	case ExhaustOpens:
		return r.ExhaustOpens
	}
	return r.ExhaustCloses
}
