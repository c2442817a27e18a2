package ignition_test

import (
	"testing"

	"example.com/benchbook/timing/crank"
	"example.com/benchbook/timing/gear"
	"example.com/benchbook/timing/ignition"
	"example.com/benchbook/timing/internal/wild"
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
	"pgregory.net/rapid"
)

// Nothing a caller passes causes a panic or a NaN.
func TestWildFigures(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		mm := func(name string) units.Length { return units.Millimetres(wild.Figure(t, name)) }
		where := func(name string) ignition.Where {
			switch rapid.IntRange(0, 4).Draw(t, name) {
			case 0:
				return ignition.Where{}
			case 1:
				return ignition.Where{Travel: measure.Of(mm("travel"), mm("u"))}
			case 2:
				return ignition.Where{Rim: measure.Of(mm("rim"), mm("u"))}
			}
			return ignition.Where{At: measure.At(units.Before(units.TDC, units.CrankDegrees(wild.Figure(t, "at"))), units.CrankDegrees(wild.Figure(t, "u")))}
		}
		in := ignition.Input{
			Spec: ignition.Spec{
				Full: where("full"), Static: where("static"),
				Drive:  ignition.Drive{Ratio: gear.NewRational(rapid.Int64Range(-1, 4).Draw(t, "p"), rapid.Int64Range(0, 4).Draw(t, "q")), Sparks: rapid.IntRange(-1, 4).Draw(t, "sparks")},
				Gauges: ignition.Gauges{Slider: crank.Slider{Stroke: 83, Rod: mm("rod")}, RimDiameter: measure.Of(mm("rim"), mm("u"))},
			},
			Read: ignition.Readings{Advanced: where("advanced"), Retarded: where("retarded"), Stroke: ignition.Stroke(rapid.IntRange(0, 3).Draw(t, "stroke")), TDCByStop: rapid.Bool().Draw(t, "stop")},
		}
		if rapid.Bool().Draw(t, "range") {
			in.Spec.Range = measure.Of(units.Degrees(wild.Figure(t, "range")), units.Degrees(wild.Figure(t, "u")))
		}
		if rapid.Bool().Draw(t, "gap") {
			in.Spec.Gap, in.Read.Gap = measure.Of(mm("gap"), mm("u")), measure.Of(mm("gap"), mm("u"))
		}
		opt := ignition.Options{}
		if rapid.IntRange(0, 3).Draw(t, "options") == 0 {
			opt = ignition.Options{Setting: units.CrankDegrees(wild.Figure(t, "s")), TDCError: units.CrankDegrees(wild.Figure(t, "t")), GapRate: ignition.GapRate{LowDegreesPerMM: wild.Figure(t, "l"), HighDegreesPerMM: wild.Figure(t, "h")}, Priors: map[string]float64{"slipped": wild.Figure(t, "p")}}
		}
		r, err := ignition.Diagnose(in, opt)
		for i := range r.Causes.Odds { // ruled out is -Inf, and not part of the JSON
			r.Causes.Odds[i].LogLikelihood = 0
		}
		wild.Finite(t, "diagnose", err, r)
		x, err := ignition.TravelAt(measure.At(units.Before(units.TDC, units.CrankDegrees(wild.Figure(t, "at"))), 1), crank.Slider{Stroke: mm("s"), Rod: mm("r")})
		wild.Finite(t, "travel", err, x)
		rim, err := ignition.OnRim(units.CrankDegrees(wild.Figure(t, "by")), mm("d"))
		wild.Finite(t, "rim", err, rim)
		g, err := ignition.GapShift(mm("from"), mm("to"), ignition.GapRate{LowDegreesPerMM: wild.Figure(t, "l"), HighDegreesPerMM: wild.Figure(t, "h")}, in.Spec.Drive)
		wild.Finite(t, "gap", err, g)
		b, err := ignition.BurnEnd(units.Before(units.TDC, units.CrankDegrees(wild.Figure(t, "at"))), units.CrankDegrees(wild.Figure(t, "delay")), mm("d"), units.MetresPerSecond(wild.Figure(t, "f")), units.RevolutionsPerMinute(wild.Figure(t, "n")))
		wild.Finite(t, "burn", err, b)
		s, err := ignition.SparkFor(units.Before(units.TDC, 3), units.Seconds(wild.Figure(t, "t")), units.RevolutionsPerMinute(wild.Figure(t, "n")))
		wild.Finite(t, "spark", err, s)
	})
}
