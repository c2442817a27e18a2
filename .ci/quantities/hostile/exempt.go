package main

import (
	"go/types"
	"slices"
)

// exemption is a rule of what the sweep lets pass, and why. Whatever is exempt is
// called all the same: it may not hang, and only with panics set may it panic.
type exemption struct {
	keys   []string // full names, as in reports
	also   func(key string, f *types.Func, generated bool) bool
	reason string
	panics bool // it may panic; else only figures that are no numbers pass
}

func (e exemption) covers(key string, f *types.Func, generated bool) bool {
	return slices.Contains(e.keys, key) || e.also != nil && e.also(key, f, generated)
}

// exempt is everything that passes. No parser, solver, verdict or table may stand
// here: what takes these forms and figures in is swept with them and must refuse them.
var exempt = []exemption{
	{
		reason: "the arithmetic of a quantity: what is no number goes in as such and comes out as such, as with float64",
		also: func(_ string, f *types.Func, generated bool) bool {
			r := f.Signature().Results()
			return generated && r.Len() > 0 && r.At(r.Len()-1).Type().String() != "error"
		},
		keys: []string{
			"units.FromFigure", "units.FromSI", "units.WithUncertainty", "units.WithUncertaintyIn", "(units.CamAngle).AtCrank", "(units.CrankAngle).AtHalfSpeedCam",
			"(units.CrankPosition).After", "(units.CrankPosition).Before", "(units.CrankPosition).FromTDC", "(units/measure.Reading[Q]).SI",
			"carburation.CircleArea", "transmission/spring.SetLoss",
		},
	},
	{
		reason: "text shows what is in the value, and a caller put it there",
		also: func(_ string, f *types.Func, _ bool) bool {
			return f.Name() == "String" && f.Signature().Params().Len() == 0
		},
		keys: []string{"(units/measure.Position).Text", "(units/measure.Reading[Q]).Text"},
	},
	{
		reason: "reads text fixed in a program, and is documented to panic on bad text",
		also: func(_ string, f *types.Func, _ bool) bool {
			return len(f.Name()) > 4 && f.Name()[:4] == "Must"
		},
		panics: true,
	},
	{
		reason: "puts what it is given into the form that others take, and works nothing out; they refuse it",
		keys: []string{
			"units/measure.Between", "units/measure.Nominal", "units/fastener.MaterialOf", "units/fastener.SameFriction",
			"refdata.Known", "refdata.RangeOf", "(refdata.Figure[Q]).Or",
			"timing/cam.CrankSample", "timing/cam.Radiused", "timing/cam.Roller", "timing/cam.Swinging",
			"transmission.BallRamp", "transmission.PushRod", "transmission.QuickThread", "transmission.ReleaseArm", "transmission.Rocker",
			"transmission/spring.PatentedWire", "transmission/spring.LawOf", "carburation/fuel.NitrogenPerOxygen",
		},
	},
	{
		reason: "hands back a field of a result or a table row, which the caller has overwritten himself",
		keys: []string{
			"(units/measure.Ranking).Leader", "(units/measure.Ranking).Within", "(units/measure.Ranking).LikeLeader", "(units/measure.Ranking).Suspects", "(units/measure.Ranking).Of", "(units/measure.Ranking).Holding",
			"(carburation.Map).Point", "(carburation/air.Atmosphere).Weather", "(*examples/job.LiftCurve).Earlier", "(units/fastener.Fits).Best",
			"(refdata.Thread).Depth", "(transmission/drive.Trace).XY", "(refdata.SpringStrength).Tensile", "(*units/fault.List).Err", "units/fault.Under",
		},
	},
	{
		reason: "the likelihood and what leads to it: NaN is documented, and Rank and Next refuse it",
		keys: []string{
			"(units/measure.LogLikelihood).LogLikelihood", "(units/measure.Gaussian).LogLikelihood", "(units/measure.Gaussian).ChiSquared", "(units/measure.Gaussian).Amount", "(units/measure.Gaussian).Outlook",
			"(*units/measure.Precision).Weigh", "(*units/measure.Precision).Nudge", "(*units/measure.Precision).Widen", "(*units/measure.Precision).Amount", "(*units/measure.Precision).AmountNudge", "(*units/measure.Precision).Relief",
		},
	},
	{
		reason: "the caller's own function gave the figure: a temperature below absolute zero is finite, and has no text",
		keys:   []string{"units/measure.MonteCarlo"},
	},
}
