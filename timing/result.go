package timing

import (
	"example.com/benchbook/refdata"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

// Turning says whether the engine may be turned as it stands.
type Turning struct {
	ByHand bool   `json:"by_hand"` // slowly, plug out, stopping at any resistance
	Start  bool   `json:"start"`   // may be started
	Why    string `json:"why"`
}

// Explanation is what one cause makes of the readings.
type Explanation struct {
	Key  string `json:"key"`
	Text string `json:"text"` // the cause with its amounts: "exhaust camwheel one tooth late and inlet cam turned on its wheel, 9° crank early"
	// Inlet and Exhaust are how far each cam then truly stands from its place,
	// advance positive; exact for whole teeth.
	Inlet   measure.Reading[units.CrankAngle] `json:"inlet"`
	Exhaust measure.Reading[units.CrankAngle] `json:"exhaust"`
	// TDCLate is how far past true TDC the crank then stood at the disc's TDC,
	// the fault and the ordinary error together.
	TDCLate measure.Reading[units.CrankAngle] `json:"tdc_late"`
	// InletGap and ExhaustGap are clearance beyond what was supposed; not taken
	// where the cause leaves it alone.
	InletGap   measure.Reading[units.Length] `json:"inlet_gap"`
	ExhaustGap measure.Reading[units.Length] `json:"exhaust_gap"`
	// Misread is the event that must then have been misread, "" for none.
	Misread string `json:"misread,omitempty"`
	// ChiSquared is the sum of squared misfits, each over its uncertainty, over
	// Readings figures; Tail is the chance of one so large or larger if the cause
	// is right. Below 1 % the cause does not explain the readings.
	ChiSquared float64 `json:"chi_squared"`
	Readings   int     `json:"readings"`
	Tail       float64 `json:"tail"`
}

// Fits reports whether the cause explains the readings: Tail is 1 % or more.
func (e Explanation) Fits() bool { return e.Tail >= 0.01 }

// Result is the verdict on the timing.
type Result struct {
	Read    Lobes `json:"read"`    // from the readings
	Book    Lobes `json:"book"`    // from the specification
	Inlet   Phase `json:"inlet"`   // of the inlet cam
	Exhaust Phase `json:"exhaust"` // of the exhaust cam
	// Causes is every cause weighed, likeliest first, less those pairs of faults
	// that the readings rule out; empty if NoAnswer is given.
	Causes measure.Ranking `json:"causes"`
	// Explained says for the leading causes what each makes of the readings.
	Explained []Explanation `json:"explained,omitempty"`
	// Firing ranks why the spark comes where it was seen to come; empty if
	// Readings.Spark was not looked at.
	Firing measure.Ranking `json:"firing"`
	// Compression is what the compression test says beside the events.
	Compression  Compression    `json:"compression"`
	NextReadings []measure.Gain `json:"next_readings"`
	Remedies     []Remedy       `json:"remedies"`
	// Gaps are the clearances of the valves as the engine stands; nothing is
	// known in them without Engine.Head.
	Gaps     Gaps          `json:"gaps,omitzero"`
	Turning  Turning       `json:"turning"`
	NoAnswer fault.Reason  `json:"no_answer"`
	Basis    refdata.Basis `json:"basis"`
}
