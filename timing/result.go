package timing

import (
	"example.com/benchbook/refdata"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

// Lobes is where a pair of cams opens and shuts its valves. Figures that need a
// reading that was not taken are not taken either.
type Lobes struct {
	InletCentre     measure.Reading[units.CrankAngle] `json:"inlet_centre"`     // after the overlap TDC
	ExhaustCentre   measure.Reading[units.CrankAngle] `json:"exhaust_centre"`   // before the overlap TDC
	InletDuration   measure.Reading[units.CrankAngle] `json:"inlet_duration"`   // opening to closing
	ExhaustDuration measure.Reading[units.CrankAngle] `json:"exhaust_duration"` // opening to closing
	Separation      measure.Reading[units.CamAngle]   `json:"separation"`       // between the lobe centres, on the cam
	Overlap         measure.Reading[units.CrankAngle] `json:"overlap"`          // both valves open; negative: neither
}

// Phase is how far one cam is from its specification, advance positive.
type Phase struct {
	Opens    measure.Reading[units.CrankAngle] `json:"opens"`     // opening, early positive
	Closes   measure.Reading[units.CrankAngle] `json:"closes"`    // closing, early positive
	Crank    measure.Reading[units.CrankAngle] `json:"crank"`     // shift of the lobe centre
	Cam      measure.Reading[units.CamAngle]   `json:"cam"`       // the same at the camshaft
	Duration measure.Reading[units.CrankAngle] `json:"longer_by"` // duration beyond the specification's
}

// Turning says whether the engine may be turned as it stands.
type Turning struct {
	ByHand bool   `json:"by_hand"` // slowly, plug out, stopping at any resistance
	Start  bool   `json:"start"`   // may be started
	Why    string `json:"why"`
}

// Step is one thing that is moved.
type Step struct {
	Key   string           `json:"key"`
	Text  string           `json:"text"`
	Steps int              `json:"steps"` // teeth, keyways or holes, advance positive; 0 for a re-press
	Shift units.CrankAngle `json:"shift"` // what it moves the cams by, advance positive
	Cams  []Cam            `json:"cams"`
}

// Remedy is a set of moves and what they leave.
type Remedy struct {
	Key         string           `json:"key"`
	Text        string           `json:"text"`
	Steps       []Step           `json:"steps"`
	InletLeft   units.CrankAngle `json:"inlet_left"`   // advance left over
	ExhaustLeft units.CrankAngle `json:"exhaust_left"` // advance left over
	Work        units.Time       `json:"work"`
}

// Result is the verdict on the timing.
type Result struct {
	Read    Lobes `json:"read"`    // from the readings
	Book    Lobes `json:"book"`    // from the specification
	Inlet   Phase `json:"inlet"`   // of the inlet cam
	Exhaust Phase `json:"exhaust"` // of the exhaust cam
	// Causes is every cause weighed, likeliest first; empty if NoAnswer is given.
	Causes       measure.Ranking `json:"causes"`
	NextReadings []measure.Gain  `json:"next_readings"`
	Remedies     []Remedy        `json:"remedies"`
	Turning      Turning         `json:"turning"`
	NoAnswer     fault.Reason    `json:"no_answer"`
	Basis        refdata.Basis   `json:"basis"`
}
