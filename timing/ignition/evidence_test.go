package ignition_test

import (
	"math"
	"testing"

	"example.com/benchbook/timing/gear"
	"example.com/benchbook/timing/ignition"
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
	"pgregory.net/rapid"
)

// normal1 is the logarithm of a normal density, of a variance.
func normal1(x, variance float64) float64 {
	return -0.5 * (x*x/variance + math.Log(2*math.Pi*variance))
}

// normal2 is the same for two that vary together.
func normal2(x, y, vx, vy, both float64) float64 {
	det := vx*vy - both*both
	return -0.5*(vy*x*x-2*both*x*y+vx*y*y)/det - math.Log(2*math.Pi*math.Sqrt(det))
}

// mixed is the logarithm of the mean of two densities.
func mixed(a, b float64) float64 { return math.Log(0.5*math.Exp(a) + 0.5*math.Exp(b)) }

// What each cause leads one to read on full advance and full retard, and on which
// stroke, written out as densities of two variables from what the documentation of
// Diagnose and of Options says. A half-speed shaft, 38° before TDC, 15 ± 1° of control.
func TestEachCauseExpects(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		x, y := rapid.Float64Range(-179, 179).Draw(t, "advanced, early"), rapid.Float64Range(-179, 179).Draw(t, "retarded, early")
		if rapid.Bool().Draw(t, "together") { // or hardly any cause explains both
			y = math.Remainder(x+rapid.Float64Range(-8, 8).Draw(t, "apart"), 360)
		}
		ux, uy := rapid.Float64Range(0.5, 3).Draw(t, "u advanced"), rapid.Float64Range(0.5, 3).Draw(t, "u retarded")
		stroke := rapid.SampledFrom([]ignition.Stroke{ignition.StrokeUnknown, ignition.Compression, ignition.Overlap}).Draw(t, "stroke")
		stop := rapid.Bool().Draw(t, "stop")
		which := rapid.IntRange(0, 2).Draw(t, "which")
		place := func(x, home, u float64) ignition.Where {
			return ignition.Where{At: measure.At(units.Before(units.TDC, units.CrankDegrees(home+x)), units.CrankDegrees(u))}
		}
		in := ignition.Input{
			Spec: ignition.Spec{
				Full:  ignition.Where{At: measure.At(units.Before(units.TDC, 38), units.CrankDegrees(0.4))},
				Range: measure.Of(15*units.Degree, 1*units.Degree), Train: gear.Simple(20, 40),
			},
			Read: ignition.Readings{Stroke: stroke, TDCByStop: stop},
		}
		if which != 1 {
			in.Read.Advanced = place(x, 38, ux)
		}
		if which != 0 {
			in.Read.Retarded = place(y, 8, uy)
		}
		r, err := ignition.Diagnose(in, ignition.Options{})
		if err != nil {
			t.Fatal(err)
		}
		tdc := 1.5
		if stop {
			tdc = 0.5
		}
		c := tdc*tdc + 1.5*1.5                               // TDC and setting move both
		vx, vy := ux*ux+0.4*0.4, uy*uy+0.4*0.4+2*2.0         // 1° of the range at the shaft is 2° of the crank
		density := func(mx, my, fx, fy, f float64) float64 { // f: what is left open in advanced, in retarded, in both
			dx, dy := math.Remainder(x-mx, 360), math.Remainder(y-my, 360)
			switch which {
			case 0:
				return normal1(dx, vx+c+f+fx)
			case 1:
				return normal1(dy, vy+c+f+fy)
			}
			return normal2(dx, dy, vx+c+f+fx, vy+c+f+fy, c+f)
		}
		// Anywhere round the circle, but by how much the two then differ.
		far := -math.Log(360)
		if which == 2 {
			far += normal1(math.Remainder(y-x, 360), vx+vy)
		}
		seen := func(overlap float64) float64 { // three strokes in a hundred are taken for the other
			switch stroke {
			case ignition.Overlap:
				return math.Log(overlap*0.97 + (1-overlap)*0.03)
			case ignition.Compression:
				return math.Log(overlap*0.03 + (1-overlap)*0.97)
			}
			return 0
		}
		// The slope of the points cam is 15° to 50° of the shaft per mm: 65 ± 35/sqrt 3
		// of the crank; a wrong gap is 0.15 mm out.
		gap := 65*65*0.15*0.15 + 35*35/3.0*0.15*0.15
		tooth := 18.0 // 360/40 of the shaft
		want := map[string]float64{
			"nothing-wrong":    density(0, 0, 0, 0, 0) + seen(0),
			"half-turn":        density(0, 0, 0, 0, 0) + seen(1),
			"slipped":          mixed(density(0, 0, 0, 0, 144)+seen(0), far+seen(0.5)),
			"timed-on-retard":  density(30, 30, 0, 0, 0) + seen(0),
			"timed-on-advance": density(-30, -30, 0, 0, 0) + seen(0),
			"wrong-rotation":   mixed(density(0, 60, 0, 0, 0), density(-60, 0, 0, 0, 0)) + seen(0),
			"control-short":    density(-15, 0, 30*30/12.0, 0, 0) + seen(0),
			"crank-as-shaft":   density(38, 38, 0, 0, 0) + seen(0),
			"shaft-as-crank":   density(-19, -19, 0, 0, 0) + seen(0),
			"gap":              density(0, 0, 0, 0, gap) + seen(0),
			"tooth-1:-2":       density(-2*tooth, -2*tooth, 0, 0, 0) + seen(0),
			"tooth-1:-1":       density(-tooth, -tooth, 0, 0, 0) + seen(0),
			"tooth-1:+1":       density(tooth, tooth, 0, 0, 0) + seen(0),
			"tooth-1:+2":       density(2*tooth, 2*tooth, 0, 0, 0) + seen(0),

			measure.SomethingElse: density(0, 0, 3600, 3600, 0) + seen(0.25),
		}
		if !stop {
			want["tdc-mark"] = density(0, 0, 0, 0, 25) + seen(0)
		}
		for key, w := range want {
			o, ok := r.Causes.Of(key)
			// The library takes a normal of 1e4° for anywhere: 2e-4 in the logarithm at
			// half a turn. The rest is rounding, and exp of less than -745 is none.
			if tol := 5e-4 + 1e-9*math.Abs(w); !ok || w > -700 && !(math.Abs(o.LogLikelihood-w) <= tol) {
				t.Fatalf("%s: %g, by hand %g", key, o.LogLikelihood, w)
			}
		}
		if len(r.Causes.Odds) != len(want) {
			t.Fatalf("%d causes, want %d", len(r.Causes.Odds), len(want))
		}
	})
}

// A gap read with the spark: a wrong gap moves both together, every other cause has it
// set within 0.03 mm, something else within 0.2 mm. The rate's own doubt goes with the
// gap that was read.
func TestGapAndSparkTogether(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		x, g := rapid.Float64Range(-40, 40).Draw(t, "early"), rapid.Float64Range(-0.25, 0.5).Draw(t, "gap, wide")
		low, high := rapid.Float64Range(1, 40).Draw(t, "low"), rapid.Float64Range(40, 100).Draw(t, "high")
		setting, tdc := rapid.Float64Range(0.2, 3).Draw(t, "setting"), rapid.Float64Range(0.2, 3).Draw(t, "tdc")
		const ux, ug = 0.8, 0.02
		r, err := ignition.Diagnose(ignition.Input{
			Spec: ignition.Spec{
				Full:  ignition.Where{At: measure.At(units.Before(units.TDC, 38), units.CrankDegrees(0.4))},
				Range: measure.Exact(0 * units.Degree), Gap: measure.Of(units.Millimetres(0.30), units.Millimetres(ug)),
			},
			Read: ignition.Readings{
				Advanced: ignition.Where{At: measure.At(units.Before(units.TDC, units.CrankDegrees(38+x)), units.CrankDegrees(ux))},
				Gap:      measure.Of(units.Millimetres(0.30+g), units.Millimetres(ug)),
			},
		}, ignition.Options{Setting: units.CrankDegrees(setting), TDCError: units.CrankDegrees(tdc), GapRate: ignition.GapRate{LowDegreesPerMM: low, HighDegreesPerMM: high}})
		if err != nil {
			t.Fatal(err)
		}
		v, vg := ux*ux+0.4*0.4+setting*setting+tdc*tdc, 2*ug*ug
		k, doubt := low+high, (high-low)/math.Sqrt(3) // of the crank: twice the shaft's mean, and half-width
		for key, w := range map[string]float64{
			"nothing-wrong":       normal1(x, v) + normal1(g, vg+0.03*0.03),
			"gap":                 normal2(x, g, v+k*k*0.15*0.15+doubt*doubt*g*g, vg+0.001*0.001+0.15*0.15, k*0.15*0.15),
			measure.SomethingElse: normal1(x, v+3600) + normal1(g, vg+0.2*0.2),
		} {
			if o, _ := r.Causes.Of(key); !(math.Abs(o.LogLikelihood-w) <= 1e-7*(1+math.Abs(w))) { // rounding, of a covariance that is nearly of one variable
				t.Fatalf("%s: %g, by hand %g", key, o.LogLikelihood, w)
			}
		}
	})
}
