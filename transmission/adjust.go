package transmission

import (
	"example.com/benchbook/refdata"
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// Input is a clutch on the bench: how it is made, how it stands, what was read
// and what it does.
type Input struct {
	Clutch  Clutch
	Setting Setting
	Found   Condition
	Signs   Signs
}

// Options tunes a verdict. The zero value is ready to use.
type Options struct {
	Draws int    // for the chance that the window is open; default 2000
	Seed  uint64 // of those draws; the same seed gives the same answer
}

// Adjustment is the verdict on adjusting.
type Adjustment struct {
	Window Window                       `json:"window"`
	Low    measure.Reading[units.Angle] `json:"low"`  // the window's ends with their uncertainty
	High   measure.Reading[units.Angle] `json:"high"` //
	Width  measure.Reading[units.Angle] `json:"width"`

	ChanceOpen     float64 `json:"chance_open"`     // that some setting both holds and frees
	ChanceWorkable float64 `json:"chance_workable"` // that the window is as wide as wanted

	Pull    Pull     `json:"pull"`
	Budget  *Budget  `json:"budget,omitempty"`  // at the setting; nil if the setting was not read
	Repairs []Repair `json:"repairs,omitempty"` // singly, best first: of a window narrower than wanted
	Pairs   []Repair `json:"pairs,omitempty"`   // in twos, if no single one opens it
	Advice  Advice   `json:"advice"`

	Basis refdata.Basis `json:"basis"`
}

// Pull is the cable pull from the lever's own figures, and as measured.
type Pull struct {
	FromLever measure.Reading[units.Length] `json:"from_lever"`
	Measured  measure.Reading[units.Length] `json:"measured"`
	Used      measure.Reading[units.Length] `json:"used"`     // the measured one if there is one
	Disagree  bool                          `json:"disagree"` // by more than twice the uncertainty of the difference
}

// Repair is one thing, or two, put back to new, and the window that leaves.
type Repair struct {
	Key    string      `json:"key"`  // "hub-nut", or "plates+free-play"
	Text   string      `json:"text"` // "tighten the hub's retaining nut"
	Window Window      `json:"window"`
	Gained units.Angle `json:"gained"` // of width
	Opens  bool        `json:"opens"`  // as wide as wanted
	Work   units.Time  `json:"work"`
}

// Advice is what to turn.
type Advice struct {
	Text  string       `json:"text"`
	Move  units.Angle  `json:"move"`  // of each spring nut, inward positive, from where it stands
	Flats float64      `json:"flats"` // the same in sixths of a turn
	Least units.Angle  `json:"least"` // not fewer turns from flush than this
	Most  units.Angle  `json:"most"`  // nor more than this
	Leave units.Length `json:"leave"` // free play to leave at the lever nipple, least
}

// Adjust returns the window with its uncertainty, both ledgers where it stands,
// the repairs that would open it, and what to turn.
func Adjust(in Input, opt Options) (Adjustment, error) {
	return Adjustment{Window: Window{Reason: notComputed}}, nil
}
