package ignition

import (
	"example.com/benchbook/timing/gear"
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// Stroke is which of the two TDCs of a four-stroke cycle the spark belongs to.
type Stroke uint8

// The strokes.
const (
	StrokeUnknown Stroke = iota
	Compression          // both valves shut near the spark: right
	Overlap              // exhaust just closing, inlet just opening: a whole turn out
)

// String returns "not looked at", "compression" or "overlap".
func (s Stroke) String() string {
	switch s {
	case Compression:
		return "compression"
	case Overlap:
		return "overlap"
	}
	return "not looked at"
}

// MarshalText returns the text of String.
func (s Stroke) MarshalText() ([]byte, error) { return []byte(s.String()), nil }

// Spec is what the ignition should be and how it is made. Full or Static must be
// given.
type Spec struct {
	Full   Where `json:"full"`   // fully advanced, as the book gives it
	Static Where `json:"static"` // fully retarded, if the book gives that
	// Range is from full retard to full advance, at the ignition shaft. For
	// ignition that cannot be moved give it as exactly zero. Not taken: 12.5° ± 4°
	// is assumed, or what Full and Static leave between them.
	Range measure.Reading[units.Angle] `json:"range,omitzero"`
	Drive Drive                        `json:"drive"` // default half speed, one spark
	// Train is the wheels from crank to ignition shaft. If given, whole teeth out
	// are among the causes, and its ratio must be the drive's.
	Train  gear.Train                    `json:"-"`
	Gauges Gauges                        `json:"gauges"`       // for figures by travel or on a rim
	Gap    measure.Reading[units.Length] `json:"gap,omitzero"` // of the points, as the book gives it
}

// Readings are what was found, the engine turned forwards until the points just
// part. What is left out is averaged over and listed.
type Readings struct {
	Advanced  Where                         `json:"advanced"` // control on full advance, or weights wedged out
	Retarded  Where                         `json:"retarded"` // control on full retard, or weights at rest
	Stroke    Stroke                        `json:"stroke"`
	Gap       measure.Reading[units.Length] `json:"gap,omitzero"`
	TDCByStop bool                          `json:"tdc_by_stop"` // TDC was found by a positive stop
}

// Input is one ignition and what was read on it.
type Input struct {
	Spec Spec     `json:"spec"`
	Read Readings `json:"read"`
}

// Options are the weights of the ranking. The zero value is the default
// throughout.
type Options struct {
	// Priors replaces the weight of a cause by its key; weights are relative.
	// Defaults, common practice: see [Diagnose].
	Priors map[string]float64
	// Setting is how far from the figure a good setting may stand, one standard
	// deviation; default 1.5° of the crank.
	Setting units.CrankAngle
	// TDCError is the standard deviation of TDC; default 0.5° if it was found by a
	// stop, else 1.5°.
	TDCError units.CrankAngle
	// GapRate is the slope of the points cam; default 15° to 50° of the shaft per mm.
	GapRate GapRate
}
