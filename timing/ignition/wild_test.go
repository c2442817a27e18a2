package ignition_test

import (
	"math"
	"reflect"
	"testing"

	"example.com/benchbook/timing/crank"
	"example.com/benchbook/timing/gear"
	"example.com/benchbook/timing/ignition"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
	"pgregory.net/rapid"
)

// Nothing a caller passes causes a panic or a NaN.
func TestWildFigures(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		mm := func(name string) units.Length { return units.Millimetres(wild(t, name)) }
		where := func(name string) ignition.Where {
			switch rapid.IntRange(0, 4).Draw(t, name) {
			case 0:
				return ignition.Where{}
			case 1:
				return ignition.Where{Travel: measure.Of(mm("travel"), mm("u"))}
			case 2:
				return ignition.Where{Rim: measure.Of(mm("rim"), mm("u"))}
			}
			return ignition.Where{At: measure.At(units.Before(units.TDC, units.CrankDegrees(wild(t, "at"))), units.CrankDegrees(wild(t, "u")))}
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
			in.Spec.Range = measure.Of(units.Degrees(wild(t, "range")), units.Degrees(wild(t, "u")))
		}
		if rapid.Bool().Draw(t, "gap") {
			in.Spec.Gap, in.Read.Gap = measure.Of(mm("gap"), mm("u")), measure.Of(mm("gap"), mm("u"))
		}
		opt := ignition.Options{}
		if rapid.IntRange(0, 3).Draw(t, "options") == 0 {
			opt = ignition.Options{Setting: units.CrankDegrees(wild(t, "s")), TDCError: units.CrankDegrees(wild(t, "t")), GapRate: ignition.GapRate{LowDegreesPerMM: wild(t, "l"), HighDegreesPerMM: wild(t, "h")}, Priors: map[string]float64{"slipped": wild(t, "p")}}
		}
		r, err := ignition.Diagnose(in, opt)
		for i := range r.Causes.Odds { // ruled out is -Inf, and not part of the JSON
			r.Causes.Odds[i].LogLikelihood = 0
		}
		finite(t, "diagnose", err, r)
		x, err := ignition.TravelAt(measure.At(units.Before(units.TDC, units.CrankDegrees(wild(t, "at"))), 1), crank.Slider{Stroke: mm("s"), Rod: mm("r")})
		finite(t, "travel", err, x)
		rim, err := ignition.OnRim(units.CrankDegrees(wild(t, "by")), mm("d"))
		finite(t, "rim", err, rim)
		g, err := ignition.GapShift(mm("from"), mm("to"), ignition.GapRate{LowDegreesPerMM: wild(t, "l"), HighDegreesPerMM: wild(t, "h")}, in.Spec.Drive)
		finite(t, "gap", err, g)
		b, err := ignition.BurnEnd(units.Before(units.TDC, units.CrankDegrees(wild(t, "at"))), units.CrankDegrees(wild(t, "delay")), mm("d"), units.MetresPerSecond(wild(t, "f")), units.RevolutionsPerMinute(wild(t, "n")))
		finite(t, "burn", err, b)
		s, err := ignition.SparkFor(units.Before(units.TDC, 3), units.Seconds(wild(t, "t")), units.RevolutionsPerMinute(wild(t, "n")))
		finite(t, "spark", err, s)
	})
}

// wild are figures no caller should pass, among some that one might.
func wild(t *rapid.T, name string) float64 {
	return rapid.SampledFrom([]float64{math.NaN(), math.Inf(1), math.Inf(-1), 0, -1, 1e-300, 1e300, -1e300, 5e-324, 0.2, 1, 3, 8, 15, 20, 40, 60, 89, 150, 400}).Draw(t, name)
}

// finite fails on a result given without an error that holds a figure that is not a
// number.
func finite(t *rapid.T, what string, err error, results ...any) {
	if err != nil {
		for _, f := range fault.Faults(err) {
			if f.Code == "" || f.Rule == "" {
				t.Fatalf("%s: a fault without code or rule: %+v", what, f)
			}
		}
		return
	}
	var walk func(v reflect.Value, path string)
	walk = func(v reflect.Value, path string) {
		switch v.Kind() {
		case reflect.Float64:
			if x := v.Float(); x-x != 0 {
				t.Fatalf("%s: %s is %g", what, path, x)
			}
		case reflect.Struct:
			for i := range v.NumField() {
				walk(v.Field(i), path+"."+v.Type().Field(i).Name)
			}
		case reflect.Slice, reflect.Array:
			for i := range v.Len() {
				walk(v.Index(i), path+"[]")
			}
		case reflect.Pointer, reflect.Interface:
			if !v.IsNil() && v.Kind() == reflect.Interface {
				walk(v.Elem(), path)
			}
		}
	}
	for _, r := range results {
		walk(reflect.ValueOf(r), what)
	}
}
