package fastener

import (
	"encoding/json"
	"math"
	"reflect"
	"testing"

	"pgregory.net/rapid"

	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// finite walks a result and returns the path of the first number that is not.
func finite(v reflect.Value, path string) string {
	switch v.Kind() {
	case reflect.Float64:
		if x := v.Float(); math.IsNaN(x) || math.IsInf(x, 0) {
			return path
		}
	case reflect.Struct:
		for i := range v.NumField() {
			if p := finite(v.Field(i), path+"."+v.Type().Field(i).Name); p != "" {
				return p
			}
		}
	case reflect.Slice:
		for i := range v.Len() {
			if p := finite(v.Index(i), path+"[]"); p != "" {
				return p
			}
		}
	case reflect.Pointer:
		if !v.IsNil() {
			return finite(v.Elem(), path)
		}
	}
	return ""
}

// TestNothingPanicsOrReturnsNaN throws numbers of every kind at everything that
// takes numbers: an error, or a finite answer that is sound JSON.
func TestNothingPanicsOrReturnsNaN(t *testing.T) {
	all := append([]Thread{{}}, tables()...)
	rapid.Check(t, func(r *rapid.T) {
		odd := rapid.OneOf(
			rapid.SampledFrom([]float64{0, -1, math.NaN(), math.Inf(1), math.Inf(-1), 1e308, -1e308, 5e-324}),
			rapid.Float64Range(-5, 50), rapid.Float64(),
		)
		n := func(what string) float64 { return odd.Draw(r, what) }
		mm := func(what string) units.Length { return units.Millimetres(n(what)) }
		ratio := func(what string) units.Ratio { return units.Value(n(what) / 20) }
		th := all[rapid.IntRange(0, len(all)-1).Draw(r, "thread")].WithHand(Hand(rapid.IntRange(0, 3).Draw(r, "hand")))
		other := all[rapid.IntRange(0, len(all)-1).Draw(r, "other")]
		length := func(what string) measure.Reading[units.Length] {
			switch rapid.IntRange(0, 2).Draw(r, what+"?") {
			case 0:
				return measure.Reading[units.Length]{}
			case 1:
				return measure.Exact(mm(what))
			}
			return measure.Of(mm(what), mm(what+" u"))
		}
		check := func(what string, got any, err error) {
			if err != nil {
				return
			}
			if p := finite(reflect.ValueOf(got), what); p != "" {
				r.Fatalf("%s is not finite", p)
			}
			if _, err := json.Marshal(got); err != nil {
				r.Fatalf("%s: %v", what, err)
			}
		}
		id, err := Identify(Readings{
			Major: length("major"), Hole: length("hole"), Pitch: length("pitch"), Hand: th.hand,
			Count: Count{measure.Of(units.Value(n("pitches")), units.Value(n("pitches u"))), length("over")},
			Flank: measure.Of(units.Degrees(n("flank")), units.Degrees(n("flank u"))),
		}, IdentifyOptions{Wear: mm("wear"), Undercut: ratio("undercut")})
		check("Identify", id, err)
		g, err := th.Geometry()
		check("Geometry", g, err)
		lim, err := th.Limits(mm("engaged"))
		check("Limits", lim, err)
		c := Convention(rapid.IntRange(0, 3).Draw(r, "convention"))
		hole, err := TappingHole(th, ratio("engagement"), c)
		check("TappingHole", hole, err)
		e, err := Engagement(th, mm("hole"), c)
		check("Engagement", e, err)
		d, err := TappingDrill(th, ratio("engagement"), c, []Drill{{"a", mm("drill")}, {"b", 5}})
		check("TappingDrill", d, err)
		h, err := Hexagons(th, HexOptions{Era: Era(rapid.IntRange(0, 5).Draw(r, "era"))})
		check("Hexagons", h, err)
		f, err := SpannersFor(length("flats"), []Spanner{{"a", mm("jaw")}, {"b", 11}}, FitOptions{mm("allowance")})
		check("SpannersFor", f, err)
		j := Joint{
			Thread: th, Strength: Strength{Proof: units.Pressure(n("proof") * 1e8), Yield: 6e8, Tensile: 8e8},
			Friction:       Friction{Thread: measure.Between(ratio("mu"), ratio("mu2")), Head: measure.Between(ratio("mu3"), ratio("mu4"))},
			BearingOutside: mm("outside"), BearingHole: mm("inside"), EffectiveDiameter: mm("effective"),
		}
		q, err := TorqueFor(j, units.Newtons(n("tension")*1000))
		check("TorqueFor", q, err)
		tension, err := TensionFor(j, units.NewtonMetres(n("torque")))
		check("TensionFor", tension, err)
		tight, err := Tighten(j, TightenOptions{ratio("of proof"), ratio("of yield")})
		check("Tighten", tight, err)
		s, err := Strip(Engaged{
			Thread: th, Length: mm("length"), BoltTensile: units.Pressure(n("tensile") * 1e8), Hole: Material{"x", measure.Between(units.Pressure(n("low")*1e8), units.Pressure(n("high")*1e8)), 0},
			HoleMinor: mm("minor"), BoltEffectiveMin: mm("bolt e"), BoltMajorMin: mm("bolt d"), NutEffectiveMax: mm("nut e"),
		})
		check("Strip", s, err)
		m, err := Mate(th, other, mm("length"), MateOptions{mm("slack")})
		check("Mate", m, err)
		tw, err := TwinsOf(th, TwinOptions{Length: mm("length"), Among: []Thread{other, {}}, MateOptions: MateOptions{mm("slack")}})
		check("TwinsOf", tw, err)
		si, err := StandInsFor(th, StandInOptions{Length: mm("length"), Growth: mm("growth"), Among: []Thread{other, {}}, MateOptions: MateOptions{mm("slack")}})
		check("StandInsFor", si, err)
		sp, err := Of("", Form(rapid.IntRange(0, 6).Draw(r, "form")), mm("major"), mm("p"))
		check("Of", sp, err)
		if err == nil {
			g, err := sp.Geometry()
			check("Geometry of a special", g, err)
			lim, err := sp.Limits(0)
			check("Limits of a special", lim, err)
			m, err := Mate(sp, th, 0, MateOptions{})
			check("Mate of a special", m, err)
			tight, err := Tighten(Joint{Thread: sp, Strength: Strength{Proof: 5e8, Yield: 6e8, Tensile: 8e8}}, TightenOptions{})
			check("Tighten a special", tight, err)
			if lim.BoltMajorMin.Or(1) < 0 || g.MinorBolt < 0 || g.StressArea <= 0 {
				r.Fatalf("%v: %+v", sp, g)
			}
		}
		p, err := TPI(n("tpi"))
		check("TPI", p, err)
		u, err := UsualEngagement(th, CastIron())
		check("UsualEngagement", u, err)
	})
}

func TestThreadText(t *testing.T) {
	for th := range Threads() {
		for _, h := range []Hand{HandUnknown, Right, Left} {
			b, err := json.Marshal(th.WithHand(h))
			if err != nil {
				t.Fatal(err)
			}
			var back Thread
			if err := json.Unmarshal(b, &back); err != nil || back != th.WithHand(h) {
				t.Errorf("%v %v = %s, back %v, %v", th, h, b, back, err)
			}
		}
	}
}
