package transmission

import (
	"encoding/json"
	"math"
	"testing"

	"pgregory.net/rapid"

	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

// Sound clutches with any readings at all, and wild ones: every verdict gives
// faults with path and rule, or figures that can be written down.
func TestAnyReadings(t *testing.T) { rapid.Check(t, checkDiagnose()) }

func FuzzDiagnose(f *testing.F) {
	fuzzBytes(f)
	f.Fuzz(rapid.MakeFuzz(checkDiagnose()))
}

func checkDiagnose() func(*rapid.T) {
	odd := []float64{0, math.NaN(), math.Inf(1), math.Inf(-1), 1e300, -1e300, 5e-324, -1}
	return func(t *rapid.T) {
		c, found := anyClutch(t)
		wild := rapid.Bool().Draw(t, "wild")
		f := func(name string, low, high float64) float64 {
			if wild && rapid.IntRange(0, 7).Draw(t, name+" odd") == 0 {
				return rapid.SampledFrom(odd).Draw(t, name)
			}
			return rapid.Float64Range(low, high).Draw(t, name)
		}
		mm := func(name string, low, high float64) measure.Reading[units.Length] {
			switch rapid.IntRange(0, 3).Draw(t, name+" kind") {
			case 0:
				return measure.Reading[units.Length]{}
			case 1:
				return measure.Exact(units.Millimetres(f(name, low, high)))
			}
			return measure.Of(units.Millimetres(f(name, low, high)), units.Millimetres(f(name+" u", 0.001, 3)))
		}
		found.SpringSet, found.Wear, found.OutOfFlat = mm("set", -5, 30), mm("wear", -5, 30), mm("flat", 0, 10)
		found.RodPlay, found.FreePlay, found.RunOut, found.CablePull = mm("rod", 0, 30), mm("play", 0, 40), mm("run-out", 0, 10), mm("pull", 1, 80)
		found.Friction = measure.Of(units.Value(f("friction", 0.02, 1)), units.Value(f("friction u", 0.001, 0.5)))
		if rapid.Bool().Draw(t, "grips") {
			found.TongueGrip = measure.Of(units.Value(f("grip", 0, 0.6)), units.Value(f("grip u", 0.001, 0.3)))
		}
		sign := func(name string) Sign { return Sign(rapid.IntRange(0, 2).Draw(t, name)) }
		in := Input{Clutch: c, Found: found, Setting: Setting{Nuts: measure.Of(units.Turns(f("turns", 0, 4)), units.Turns(f("turns u", 0.01, 2)))},
			Signs: Signs{Slips: sign("slips"), Drags: sign("drags"), Heavy: sign("heavy"), LightThen: sign("light"), Lift: mm("lift", 0, 15),
				HandForce: measure.Of(units.Newtons(f("hand", 1, 1000)), units.Newtons(f("hand u", 0.1, 50)))}}
		if rapid.Bool().Draw(t, "kick") {
			in.Signs.Kick = KickTest{Rider: measure.Of(units.Kilograms(f("rider", 20, 200)), units.Kilograms(f("rider u", 0.1, 20))), Crank: measure.Of(units.Millimetres(f("crank", 80, 400)), units.Millimetres(2)),
				Ratio: f("kick ratio", 0.3, 10), Losses: f("losses", 0.3, 1), Result: KickResult(rapid.IntRange(0, 2).Draw(t, "kicked"))}
		}
		rim := Rim{}
		for range c.Springs.Count {
			rim.Heights = append(rim.Heights, mm("height", -5, 5))
		}
		sound := func(what string, r any, err error) {
			for _, e := range fault.Faults(err) {
				if e.Path == "" || e.Rule == "" || e.Code == "" {
					t.Fatalf("%s: a fault without path, rule or code: %#v", what, e)
				}
			}
			if err == nil {
				if _, err := json.Marshal(r); err != nil {
					t.Fatalf("%s: %v", what, err)
				}
			}
		}
		a, err := Adjust(in, Options{Draws: 100})
		sound("adjust", a, err)
		d, err := Diagnose(in, Options{})
		sound("diagnose", d, err)
		if !wild && err != nil {
			t.Fatalf("sound readings refused: %v", err)
		}
		if err == nil && !d.Reason.Given() {
			sum := 0.0
			for _, o := range d.Causes.Odds {
				sum += o.Share
			}
			if math.Abs(sum-1) > 1e-9 { // two dozen shares rounded
				t.Fatalf("shares add up to %v", sum)
			}
		}
		r, err := c.Region(found)
		sound("region", r, err)
		k, err := c.Kick(in.Signs.Kick)
		sound("kick", k, err)
		c.Nuts.Circle = units.Millimetres(f("circle", 10, 500))
		e, err := c.Even(rim)
		sound("even", e, err)
		p, err := c.Plates.Carry(units.Value(f("mu", 0.02, 1)), units.Newtons(f("clamp", 1, 1e6)))
		sound("carry", p, err)
	}
}
