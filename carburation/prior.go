package carburation

import (
	"math"

	"example.com/benchbook/refdata"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

// Physics are the figures of the model that nobody can read off a carburettor.
// A reading not taken takes the default; each default is a judgement with a
// wide uncertainty, and one lambda reading at full throttle is worth more than
// all of them. Uncertainties are standard shares of the figure.
type Physics struct {
	// Suction is the suction at the needle jet over rho u²/2 of the air over it:
	// the spray tube and needle speed the air up. Default 1.3 ± 15 %.
	Suction measure.Reading[units.Ratio] `json:"suction"`
	// BoreFill is the part of the area under the slide's intake edge that the
	// air fills. Default 0.90 ± 5 %.
	BoreFill measure.Reading[units.Ratio] `json:"bore_fill"`
	// InletShare is the part of the two turns in which one cylinder draws.
	// Default 0.36 ± 10 %.
	InletShare measure.Reading[units.Ratio] `json:"inlet_share"`
	// Following is how far the suction that the fuel feels goes from that of the
	// mean air speed, 0, to that of its root mean square, 1, at full lift: the
	// inertia of the fuel column. Default 0.80, 0.45 to 0.95.
	Following measure.Reading[units.Ratio] `json:"following"`
	// Annulus is the discharge coefficient round the needle. Default 0.70 ± 11 %.
	Annulus measure.Reading[units.Ratio] `json:"annulus"`
	// Slide is the discharge coefficient under the slide. Default 0.75 ± 9 %.
	Slide measure.Reading[units.Ratio] `json:"slide"`
	// Steadying is the open area, as a share of the bore's, below which the port
	// behind the slide evens out the pulses. Default 0.35 ± 40 %.
	Steadying measure.Reading[units.Ratio] `json:"steadying"`
	// Lip is the height of the needle jet's mouth over the fuel level. Default
	// 6 mm ± 35 %.
	Lip measure.Reading[units.Length] `json:"lip"`
	// PilotSignal is the share of the depression behind the slide that reaches
	// the pilot jet at tick-over, with the screw at its usual setting. Default
	// 0.03, uncertain by a factor of 2.7: the pilot is the least known part.
	PilotSignal measure.Reading[units.Ratio] `json:"pilot_signal"`
	// Onset is the lift, as a share of the bore, at which half of the suction at
	// the needle jet has set in. Default 1/16 ± 25 %: hardly any below 1/32,
	// nearly all from 1/8 on.
	Onset measure.Reading[units.Ratio] `json:"onset"`
}

// The knobs of the model, in the order of its vectors.
const (
	kSuction = iota
	kFill
	kShare
	kFollow
	kAnnulus
	kSlide
	kSteady
	kLip
	kPilot
	kOnset
	kEta
	kMain     // factor on the main jet's effective area
	kPilotJet // factor on the pilot jet's
	kRing     // factor on the needle jet's bore
	nKnobs
)

// knobs holds a value per knob: its natural logarithm, save kFollow, which is
// ln(x/(1-x)) since it lies between 0 and 1.
type knobs [nKnobs]float64

var knobNames = [nKnobs]string{"suction", "bore_fill", "inlet_share", "following", "annulus", "slide", "steadying", "lip", "pilot_signal", "onset",
	"volumetric_efficiency", "main_jet", "pilot_jet", "needle_jet"}

// knobTexts say a knob to a reader.
var knobTexts = [nKnobs]string{"suction at the needle jet over rho u²/2", "part of the area under the slide that air fills", "part of the two turns in which a cylinder draws",
	"how far the fuel follows the pulses", "discharge coefficient round the needle", "discharge coefficient under the slide", "open share of the bore below which the port steadies the flow",
	"height of the needle jet's mouth over the fuel level", "share of the depression that reaches the pilot jet", "lift at which suction sets in, over the bore",
	"volumetric efficiency", "main jet over what it is marked", "pilot jet over what it is marked", "needle jet over what was measured"}

func priorDefaults() (mean, sd knobs) {
	ln := math.Log
	return knobs{ln(1.3), ln(0.90), ln(0.36), ln(0.8 / 0.2), ln(0.70), ln(0.75), ln(0.35), ln(0.006), ln(0.03), ln(1.0 / 16), ln(0.85), 0, 0, 0},
		knobs{0.15, 0.05, 0.10, 0.9, 0.11, 0.09, 0.40, 0.35, 1.0, 0.25, 0.08, 0, 0, 0}
}

// prior returns means and standard deviations of the knobs, noting faults and
// which defaults stood in.
func (p Physics) prior(l *fault.List) (mean, sd knobs, assumed []refdata.Assumption) {
	mean, sd = priorDefaults()
	for _, c := range []struct {
		k         int
		r         measure.Reading[units.Ratio]
		low, high units.Ratio
		text      string
	}{
		{kSuction, p.Suction, 0.2, 4, "1.3 ± 15 %"}, {kFill, p.BoreFill, 0.3, 1, "0.90 ± 5 %"}, {kShare, p.InletShare, 0.2, 0.6, "0.36 ± 10 %"},
		{kFollow, p.Following, 0.01, 0.99, "0.80, 0.45 to 0.95"}, {kAnnulus, p.Annulus, 0.2, 1, "0.70 ± 11 %"}, {kSlide, p.Slide, 0.2, 1, "0.75 ± 9 %"},
		{kSteady, p.Steadying, 0.02, 5, "0.35 ± 40 %"}, {kPilot, p.PilotSignal, 1e-4, 0.9, "0.03, a factor of 2.7 either way"}, {kOnset, p.Onset, 1e-3, 0.4, "1/16 ± 25 %"},
	} {
		path := "options.physics." + knobNames[c.k]
		if !c.r.Taken() {
			assumed = append(assumed, refdata.Assumption{What: knobTexts[c.k], Value: c.text, Status: refdata.FromMemory})
			continue
		}
		ok := l.Under(path, c.r.Err())
		positive(l, path, c.r.Value(), c.low, c.high)
		if v := c.r.Value().Value(); ok && v > 0 {
			mean[c.k], sd[c.k] = math.Log(v), c.r.U().Value()/v
			if c.k == kFollow && v < 1 {
				mean[c.k], sd[c.k] = math.Log(v/(1-v)), c.r.U().Value()/(v*(1-v))
			}
		}
	}
	if p.Lip.Taken() {
		ok := l.Under("options.physics.lip", p.Lip.Err())
		positive(l, "options.physics.lip", p.Lip.Value(), units.Millimetres(0.5), units.Millimetres(40))
		if ok && p.Lip.Value() > 0 {
			mean[kLip], sd[kLip] = math.Log(p.Lip.Value().Metres()), p.Lip.U().Ratio(p.Lip.Value())
		}
	} else {
		assumed = append(assumed, refdata.Assumption{What: knobTexts[kLip], Value: "6 mm ± 35 %", Status: refdata.FromMemory})
	}
	return mean, sd, assumed
}
