package ignition

import (
	"example.com/benchbook/refdata"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

// Deviation is one reading against what it should be.
type Deviation struct {
	Read  measure.Position                  `json:"read"`
	Want  measure.Position                  `json:"want"`
	Early measure.Reading[units.CrankAngle] `json:"early"` // within half a turn; late is negative
	Shaft units.Angle                       `json:"shaft"` // the same at the ignition shaft
}

// Remedy is one thing to do.
type Remedy struct {
	Key  string      `json:"key"`
	For  string      `json:"for"` // key of the cause it answers
	Text string      `json:"text"`
	Turn units.Angle `json:"turn"` // of the ignition shaft; positive makes the spark earlier
	// Gains is the share of belief of the cause it answers.
	Gains float64    `json:"gains"`
	Work  units.Time `json:"work"`
}

// Result is the verdict on an ignition.
type Result struct {
	Full         measure.Position `json:"full"`     // what it should be, fully advanced
	Retard       measure.Position `json:"retard"`   // what it should be, fully retarded
	Range        units.CrankAngle `json:"range"`    // between them, at the crank
	Advanced     Deviation        `json:"advanced"` // zero if not read
	Retarded     Deviation        `json:"retarded"` // zero if not read
	HalfTurn     HalfTurn         `json:"half_turn"`
	Causes       measure.Ranking  `json:"causes"`
	Remedies     []Remedy         `json:"remedies"`
	NextReadings []measure.Gain   `json:"next_readings"`
	NoAnswer     fault.Reason     `json:"no_answer,omitzero"`
	// MayKick says that a start, even on the retarded control, may throw the
	// lever back: the spark may fall more than 5° earlier there than it should,
	// or where it falls on retard is not known.
	MayKick bool          `json:"may_kick"`
	Basis   refdata.Basis `json:"basis"`
}
