package carburation_test

import (
	"encoding/json"
	"math"
	"testing"

	"example.com/benchbook/carburation"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
	"pgregory.net/rapid"
)

// Anything that passes the checks, however odd, gives figures or a reason: no
// NaN, no panic. What does not pass gives faults with rules.
func TestExtremes(t *testing.T) { rapid.Check(t, checkModel()) }

func FuzzModel(f *testing.F) {
	fuzzBytes(f)
	f.Fuzz(rapid.MakeFuzz(checkModel()))
}

func checkModel() func(*rapid.T) {
	fuels := []string{"", "petrol", "petrol E10", "methanol", "ethanol", "benzene", "n-heptane"}
	return func(t *rapid.T) {
		between := func(name string, a, b float64) float64 { return rapid.Float64Range(a, b).Draw(t, name) }
		length := func(name string, a, b, u float64) measure.Reading[units.Length] { return mm(between(name, a, b), u) }
		ratio := func(name string, a, b float64) measure.Reading[units.Ratio] {
			v := between(name, a, b)
			return measure.Of(units.Value(v), units.Value(0.1*v))
		}
		s := carburation.Setup{
			Engine: carburation.Engine{Displacement: measure.Of(units.CubicCentimetres(between("cc", 15, 1100)), units.CubicCentimetres(1)), Cylinders: rapid.IntRange(0, 4).Draw(t, "cylinders"),
				PeakSpeed: measure.Of(rev(between("peak", 900, 13000)), rev(100)), VolumetricEfficiency: ratio("eta", 0.25, 1.35)},
			Surroundings: carburation.Surroundings{Pressure: measure.Of(units.Hectopascals(between("pressure", 400, 1150)), units.Hectopascals(1)), Temperature: measure.Of(units.Celsius(between("temperature", -35, 55)), units.Kelvins(1)),
				Humidity: ratio("humidity", 0.01, 1), Fuel: rapid.SampledFrom(fuels).Draw(t, "fuel")},
			Carburettor: carburation.Carburettor{Bore: length("bore", 7, 62, 0.1), Cutaway: length("cutaway", 0.5, 20, 0.1), NeedleJet: length("needle jet", 1, 6, 0.01),
				Needle:  carburation.Needle{Diameter: length("needle", 0.8, 5, 0.01), Taper: measure.Of(units.Degrees(between("taper", 0.2, 10)), units.Degrees(0.1)), Groove: carburation.Groove{FromTop: rapid.IntRange(0, 6).Draw(t, "groove"), Of: 5}},
				MainJet: areaJet(between("main", 0.01, 15), 0.1), PilotJet: areaJet(between("pilot", 0.006, 3), 0.1), Screw: carburation.Screw{Kind: rapid.SampledFrom([]carburation.ScrewKind{"", "air", "fuel"}).Draw(t, "screw"), Turns: ratio("turns", 0.1, 6)}},
			Cleaner: carburation.Cleaner{Drop: measure.Of(units.Pascals(between("drop", 0, 9000)), units.Pascals(50)), Vented: rapid.Bool().Draw(t, "vented")},
		}
		if rapid.Bool().Draw(t, "bled") {
			s.Carburettor.Bleed, s.Carburettor.Outlet = measure.Of(units.SquareMillimetres(between("bleed", 0, 20)), units.SquareMillimetres(0.1)), measure.Of(units.SquareMillimetres(between("outlet", 0.1, 200)), units.SquareMillimetres(0.1))
		}
		if s.Carburettor.Needle.Groove.FromTop == 0 {
			s.Carburettor.Needle.Groove = carburation.Groove{}
		}
		if _, err := carburation.Start(carburation.Input{Engine: s.Engine, Surroundings: s.Surroundings, Fitted: carburation.Fitted{Bore: s.Carburettor.Bore, MainJet: s.Carburettor.MainJet, NeedleJet: s.Carburettor.NeedleJet, Needle: s.Carburettor.Needle}}, carburation.Options{}); err != nil {
			for _, f := range fault.Faults(err) {
				if f.Rule == "" || f.Path == "" {
					t.Fatalf("%+v", f)
				}
			}
		}
		m, err := carburation.NewModel(s, carburation.Options{})
		if err != nil {
			for _, f := range fault.Faults(err) {
				if f.Rule == "" || f.Path == "" {
					t.Fatalf("%+v", f)
				}
			}
			return
		}
		peak := s.Engine.PeakSpeed.Value()
		for _, x := range []float64{1e-6, 0.01, 0.1, 0.3, 0.7, 1} {
			for _, n := range []units.RotationalSpeed{rev(200), peak.Times(0.5), peak.Times(2)} {
				e, err := m.Explain(units.Value(x), n)
				if err != nil {
					t.Fatal(err)
				}
				if _, err := json.Marshal(e); err != nil { // refuses NaN and infinities
					t.Fatalf("lift %v, %v: %v: %+v", x, n, err, e)
				}
				for _, v := range []float64{e.Lambda.Value(), e.Air.SI(), e.MainFuel.SI(), e.PilotFuel.SI(), e.PilotShare, e.Depression.SI(), e.Pulse, e.RelativeU} {
					if math.IsNaN(v) || math.IsInf(v, 0) || v < 0 {
						t.Fatalf("lift %v, %v: %+v", x, n, e)
					}
				}
				if (e.Lambda == 0) != e.NoMixture.Given() {
					t.Fatalf("no mixture and no reason: %+v", e)
				}
			}
		}
		set, err := m.Settings(carburation.Targets{})
		if err != nil {
			for _, f := range fault.Faults(err) {
				if f.Rule == "" {
					t.Fatalf("%+v", f)
				}
			}
		} else if _, err := json.Marshal(set); err != nil {
			t.Fatalf("%v: %+v", err, set)
		}
		taught, c, err := m.Calibrate(carburation.LambdaReading{Lift: 1, Speed: peak, Lambda: measure.Of(units.Value(between("lambda", 0.5, 2)), 0.02)}, carburation.LambdaReading{Lift: 0.3, Speed: peak.Times(0.6), Lambda: measure.Of(units.Value(between("lambda 2", 0.5, 2)), 0.02)})
		if err != nil {
			return
		}
		if o, err := taught.At(0.5, peak); err != nil || math.IsNaN(o.Lambda.Value()) || math.IsNaN(c.ChiSquared) {
			t.Fatalf("taught: %+v, %v, %+v", o, err, c)
		}
	}
}
