package transmission

import (
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// Condition is the state of a clutch: what wears, bends, slackens, stretches or
// is oiled. In [Clutch].New it holds what the figures are with nothing wrong; in
// an [Input] what was read on this clutch. A reading not taken stands at its new
// value, and results list it as not checked.
type Condition struct {
	// Friction is the coefficient of friction of one rubbing face, 0.02 to 1.
	// Default new: 0.12 ± 0.02, an oiled clutch with bonded plates.
	Friction measure.Reading[units.Ratio]
	// SpringSet is how much shorter than new a spring is when free: 46 mm new
	// and 45 mm read are 1 mm. Default new: 0 ± 0.2 mm.
	SpringSet measure.Reading[units.Length]
	// SpringRate is the rate of one spring as weighed. Default new: the rate in
	// [Springs] ± 3 %.
	SpringRate measure.Reading[units.SpringRate]
	// Wear is how much thinner than new the whole pack is. Default new: 0 ± 0.2
	// mm.
	Wear measure.Reading[units.Length]
	// OutOfFlat is the travel that plates which are not flat use up before the
	// last one is free, added over the pack. Default new: 0.3 ± 0.1 mm.
	OutOfFlat measure.Reading[units.Length]
	// RodPlay is the play between push rod, ball and pressure plate with the
	// free play of the lever already taken up. Default new: 0.3 ± 0.1 mm.
	RodPlay measure.Reading[units.Length]
	// HubNutBack is how far the hub's retaining nut has backed off from tight.
	// Default new: 0, tight.
	HubNutBack measure.Reading[units.Angle]
	// FreePlay is how far the cable's inner moves at the lever nipple before
	// it takes up load. Default new: 3 ± 0.5 mm.
	FreePlay measure.Reading[units.Length]
	// CableStiffness is the tension at the lever that lengthens the cable, inner
	// against outer, by one unit. Default new: 100 ± 15 N/mm.
	CableStiffness measure.Reading[units.SpringRate]
	// CableEfficiency is tension at the lower end over tension at the lever.
	// Default new: 0.80 ± 0.06.
	CableEfficiency measure.Reading[units.Ratio]
	// CablePull is the whole travel of the inner at the lever, from the hand off
	// to the lever at the bar, inner measured against outer. Default new: what
	// the lever's radius and sweep give, or without those 22 ± 2 mm.
	CablePull measure.Reading[units.Length]
	// RunOut is the total reading of a dial gauge on the rim of the pressure
	// plate, lever tied back, clutch turned once. Default new: 0 ±
	// 0.05 mm.
	RunOut measure.Reading[units.Length]
	// TongueGrip is the coefficient of friction with which the plates' tongues
	// slide in the slots of drum and hub while they carry torque, 0 to 0.6. Worn
	// and notched slots grip: they keep clamp from the far plates (see
	// [Plates.CarryFading]). Default new: 0, the clamp equal at every face.
	TongueGrip measure.Reading[units.Ratio]
}

// Setting is where the adjusters stand.
type Setting struct {
	// Nuts is how far the spring nuts are turned in from flush, all alike.
	Nuts measure.Reading[units.Angle]
	// FromTouch is the same counted from where the springs first touch, in place of
	// Nuts. It is the surer count: set of the springs and wear of the pack drop out
	// of the clamp.
	FromTouch measure.Reading[units.Angle]
}

// NutTurns counts turns of a nut by its flats: u 0.05 turn, about a third of a
// flat. Common practice, no source.
func NutTurns() measure.Instrument[units.Angle] {
	return measure.Instrument[units.Angle]{Name: "turns counted by flats", U: units.Turns(0.05)}
}
