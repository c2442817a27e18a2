package fastener

import (
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// Readings are what was read from an unknown thread. Any may be left out; a
// thread with neither diameter nor pitch cannot be placed.
type Readings struct {
	// Major is the outside diameter over the crests of a bolt. Worn or
	// generously cut crests read small, never large.
	Major measure.Reading[units.Length] `json:"major"`
	// Hole is the diameter over the crests of a nut or tapped hole. It reads
	// larger than the table, never smaller.
	Hole measure.Reading[units.Length] `json:"hole"`
	// Pitch is the pitch by a thread gauge; ReadPitch takes "26 tpi" or "1 mm".
	Pitch measure.Reading[units.Length] `json:"pitch"`
	// Count is the pitch by counting threads over a length.
	Count Count `json:"count"`
	// Flank is the included angle between the flanks: 55°, 60°, 47.5°.
	Flank measure.Reading[units.Angle] `json:"flank"`
	// Part is what kind of part it is on, if told.
	Part Part `json:"part"`
	// Hand is which way the thread winds, if looked at. It does not weigh in
	// the odds; it goes with the answer.
	Hand Hand `json:"hand"`
}

// Count is a number of pitches counted along a length.
type Count struct {
	Pitches measure.Reading[units.Ratio]  `json:"pitches"` // gaps, not crests; half gaps allowed
	Over    measure.Reading[units.Length] `json:"over"`
}
