package carburation_test

import (
	"math"
	"strings"
	"testing"

	"example.com/benchbook/carburation"
	"example.com/benchbook/refdata"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
	"pgregory.net/rapid"
)

func engineOf(cc float64) carburation.Engine {
	return carburation.Engine{Displacement: measure.Of(units.CubicCentimetres(cc), units.CubicCentimetres(1))}
}

// A 500 cc single on a bore of 30 mm: the trade starts at a number 3 slide, in
// sixteenths, and a 280 main jet, flow marked (common practice, no source). Both
// must lie in the practice range served, and nothing is fitted to the pair.
func TestFiveHundredOnThirty(t *testing.T) {
	in := carburation.Input{Engine: engineOf(500), Fitted: carburation.Fitted{
		Bore: measure.By(30*units.Millimetre, measure.Caliper()), MainJet: must(carburation.ReadJet("280 cc/min")),
		Cutaway: measure.Exact(must(carburation.CutawayOf(3, carburation.Sixteenths))),
	}}
	s := must(carburation.Start(in, carburation.Options{}))
	if s.MainJet.Standing != carburation.Inside || s.Cutaway.Standing != carburation.Inside || s.Bore.Standing != carburation.Inside || len(s.Outside) != 0 {
		t.Errorf("outside the practice range: %+v", s.Outside)
	}
	if !s.MainJet.Physics.Given() || !(s.MainJet.Physics.Low < s.MainJet.Physics.Middle && s.MainJet.Physics.Middle < s.MainJet.Physics.High) {
		t.Errorf("physics %v", s.MainJet.Physics)
	}
	t.Logf("main jet: practice %v, physics %v, agree %v %s; by bore %v", s.MainJet.Practice, s.MainJet.Physics, s.MainJet.Agree, s.MainJet.Differ, s.MainJetBore)
	// with the head told to be 0.4 m, the physics of the flow mark must say that
	// it lies lower, and by how much: sqrt(0.4/0.775)
	low := must(carburation.Start(in, carburation.Options{Head: measure.Exact(units.Metres(0.4))}))
	if r := low.MainJet.Physics.Middle.Ratio(s.MainJet.Physics.Middle); math.Abs(r-math.Sqrt(0.4/math.Sqrt(0.4*1.5))) > 1e-3 { // served to four digits
		t.Errorf("head of 0.4 m: ratio %v", r)
	}
	if low.MainJet.Differ == "" {
		t.Error("the middle of physics lies below practice, and nothing says so")
	}
	// the jet by bore knows no head
	if low.MainJetBore != s.MainJetBore {
		t.Errorf("the head moved the bore: %v, %v", low.MainJetBore, s.MainJetBore)
	}
	for _, want := range []refdata.Caution{refdata.PetrolVapour, refdata.WeakMixture, refdata.CarbonMonoxide, refdata.StartingPointsOnly} {
		found := false
		for _, c := range s.Basis.Cautions {
			found = found || c == want
		}
		if !found {
			t.Errorf("caution %s is missing", want)
		}
	}
	if len(s.Basis.Sources) == 0 || len(s.Basis.Assumed) == 0 || len(s.Basis.NotChecked) == 0 {
		t.Errorf("basis is bare: %+v", s.Basis)
	}
}

// A carburettor from another machine: an invented 397 cc single on what came off
// a far smaller one.
func TestFromAnotherMachine(t *testing.T) {
	s := must(carburation.Start(carburation.Input{Engine: engineOf(397), Fitted: carburation.Fitted{
		Bore: measure.By(22*units.Millimetre, measure.Caliper()), MainJet: must(carburation.ReadJet("flow 110")), PilotJet: must(carburation.ReadJet("25 cc/min")),
		Cutaway: measure.By(7.9*units.Millimetre, measure.Caliper()), Groove: carburation.Groove{FromTop: 1, Of: 5},
	}}, carburation.Options{}))
	var keys []string
	for _, p := range s.Outside {
		keys = append(keys, p.Key+" "+string(p.Standing))
		if p.Text == "" || !(p.Chance > 0.5) {
			t.Errorf("%+v", p)
		}
	}
	if got := strings.Join(keys, ", "); got != "bore below, main-jet below, cutaway above, needle below" {
		t.Errorf("outside: %s", got)
	}
	if s.PilotJet.Standing != carburation.Inside {
		t.Errorf("pilot %+v", s.PilotJet)
	}
	// putting one part right removes that finding and no other
	in := carburation.Input{Engine: engineOf(397), Fitted: carburation.Fitted{MainJet: must(carburation.ReadJet("220 cc/min")), Cutaway: measure.By(7.9*units.Millimetre, measure.Caliper())}}
	s = must(carburation.Start(in, carburation.Options{}))
	if len(s.Outside) != 1 || s.Outside[0].Key != "cutaway" || s.Bore.Standing != carburation.NotRead {
		t.Errorf("outside: %+v", s.Outside)
	}
}

func TestStartOutsideTheTable(t *testing.T) {
	s := must(carburation.Start(carburation.Input{Engine: engineOf(60)}, carburation.Options{}))
	if !s.MainJet.NoPractice.Given() || !s.MainJet.Physics.Given() || s.MainJet.Agree {
		t.Errorf("60 cc: %+v", s.MainJet)
	}
	s = must(carburation.Start(carburation.Input{Engine: carburation.Engine{Displacement: measure.Exact(units.CubicCentimetres(500)), Tune: refdata.RacingTune}}, carburation.Options{}))
	if !s.Bore.NoPractice.Given() {
		t.Errorf("a racing tune has no figures: %+v", s.Bore)
	}
}

func TestStartFaults(t *testing.T) {
	_, err := carburation.Start(carburation.Input{Engine: carburation.Engine{Cylinders: 9, Tune: "mild", PeakSpeed: measure.Exact(units.RevolutionsPerMinute(99999))},
		Surroundings: carburation.Surroundings{Pressure: measure.Exact(units.Bars(9)), Fuel: "petrol"}, Lambda: measure.Of[units.Ratio](3, 0.1),
		Fitted: carburation.Fitted{Groove: carburation.Groove{FromTop: 7, Of: 5}, Bore: measure.Of(units.Metres(1), units.Metres(0.1))}}, carburation.Options{Head: measure.Exact(units.Metres(90))})
	paths := map[string]bool{}
	for _, f := range fault.Faults(err) {
		paths[f.Path] = true
		if f.Rule == "" || f.Code == "" {
			t.Errorf("%+v", f)
		}
	}
	for _, want := range []string{"engine.displacement", "engine.cylinders", "engine.tune", "engine.peak_speed", "surroundings.pressure", "lambda", "fitted.groove", "fitted.bore", "options.head"} {
		if !paths[want] {
			t.Errorf("no fault at %s in %v", want, err)
		}
	}
	if _, err := carburation.Start(carburation.Input{Engine: engineOf(500), Surroundings: carburation.Surroundings{Fuel: "milk"}}, carburation.Options{}); len(fault.Faults(err)) != 1 {
		t.Errorf("milk: %v", err)
	}
}

// Thin air and alcohol move the jets and nothing else, in the direction and by
// the amount of the rules they rest on.
func TestStartCorrections(t *testing.T) {
	at := func(s carburation.Surroundings) carburation.Starting {
		return must(carburation.Start(carburation.Input{Engine: engineOf(500), Surroundings: s}, carburation.Options{}))
	}
	sea := at(carburation.Surroundings{})
	// 1500 m of standard air: 84556 Pa, 5.25 °C; sqrt of density ratio 0.86373 is 0.9294
	up := at(carburation.Surroundings{Pressure: measure.Exact(units.Pascals(84556)), Temperature: measure.Exact(units.Celsius(5.25))})
	low0, _, _ := sea.MainJet.Corrected.Ends()
	low1, _, _ := up.MainJet.Corrected.Ends()
	// and the fuel is 9.75 K colder: half of 0.00121 per kelvin
	want := 0.9294 * (1 - 9.75*0.00121/2)
	if r := low1.Ratio(low0); math.Abs(r-want) > 8e-4 { // CIPM air against the standard's ideal gas, and four digits
		t.Errorf("1500 m: main jet x %v, want %v", r, want)
	}
	// the model follows the same rule within 2 %
	if r := up.MainJet.Physics.Middle.Ratio(sea.MainJet.Physics.Middle); math.Abs(r/want-1) > 0.02 {
		t.Errorf("1500 m: physics x %v", r)
	}
	if up.Bore.Corrected != sea.Bore.Corrected || up.Cutaway.Corrected != sea.Cutaway.Corrected {
		t.Error("height moved bore or slide")
	}
	e10 := at(carburation.Surroundings{Fuel: "petrol E10"})
	low1, _, _ = e10.MainJet.Corrected.Ends()
	if r := low1.Ratio(low0); math.Abs(r-1.039) > 0.002 { // 14.60/14.01 sqrt(745/750)
		t.Errorf("E10: main jet x %v, want 1.039", r)
	}
}

// Larger engines ask for more, everywhere, by physics.
func TestStartGrows(t *testing.T) { rapid.Check(t, checkStart) }

func FuzzStart(f *testing.F) {
	fuzzBytes(f)
	f.Fuzz(rapid.MakeFuzz(checkStart))
}

func checkStart(t *rapid.T) {
	cc := rapid.Float64Range(50, 700).Draw(t, "cc")
	bore := measure.Exact(units.Millimetres(rapid.Float64Range(20, 34).Draw(t, "bore")))
	a := must(carburation.Start(carburation.Input{Engine: engineOf(cc), Fitted: carburation.Fitted{Bore: bore}}, carburation.Options{}))
	b := must(carburation.Start(carburation.Input{Engine: engineOf(cc * 1.05), Fitted: carburation.Fitted{Bore: bore}}, carburation.Options{}))
	if !(b.Bore.Physics.Middle > a.Bore.Physics.Middle && b.Demand.Air > a.Demand.Air && b.PilotJet.Physics.Middle > a.PilotJet.Physics.Middle) {
		t.Fatalf("%v cc: %+v then %+v", cc, a, b)
	}
	// in one bore a larger engine needs a hardly larger jet, since suction
	// rises with the square of the flow: never a much smaller one
	// where suction is far above the lip; below 600 Pa the lip decides
	if a.Demand.Suction.Pascals() > 600 && a.MainJet.Physics.Given() && !(b.MainJet.Physics.Middle.Ratio(a.MainJet.Physics.Middle) > 0.97) {
		t.Fatalf("%v cc: %v then %v", cc, a.MainJet.Physics, b.MainJet.Physics)
	}
	for _, s := range []carburation.Starting{a, b} {
		// a band, or a reason why there is none: a big bore on a small engine
		if s.MainJet.Physics.Given() == s.MainJet.NoPhysics.Given() || math.IsNaN(s.MainJet.Chance) || s.MainJet.Physics.Low < 0 {
			t.Fatalf("%+v", s.MainJet)
		}
	}
}

// With needle and needle jet measured, physics speaks of slide and clip too.
func TestStartWithNeedle(t *testing.T) {
	d := demo().Carburettor
	in := carburation.Input{Engine: demo().Engine, Fitted: carburation.Fitted{Bore: d.Bore, MainJet: d.MainJet, PilotJet: d.PilotJet, Cutaway: d.Cutaway, NeedleJet: d.NeedleJet, Needle: d.Needle, Groove: d.Needle.Groove}}
	s := must(carburation.Start(in, carburation.Options{}))
	if s.Cutaway.NoPhysics.Given() == s.Cutaway.Physics.Given() {
		t.Errorf("cutaway: a band or a reason: %+v", s.Cutaway)
	}
	if !s.Cutaway.Physics.Given() || !(s.Cutaway.Physics.Low < s.Cutaway.Physics.Middle) || !s.Needle.Physics.Taken() {
		t.Errorf("cutaway %+v, needle %+v", s.Cutaway, s.Needle)
	}
	in.Fitted.NeedleJet = mm(2.5, 0.01)
	if _, err := carburation.Start(in, carburation.Options{}); len(fault.Faults(err)) != 1 || fault.Faults(err)[0].Path != "fitted.needle.diameter" {
		t.Errorf("a needle thicker than its jet: %v", err)
	}
	in.Fitted = carburation.Fitted{NeedleJet: d.NeedleJet, Needle: d.Needle}
	s = must(carburation.Start(in, carburation.Options{}))
	if s.Cutaway.NoPhysics.Code == "needle-jet-not-measured" {
		t.Errorf("unread parts are taken as served: %+v", s.Cutaway)
	}
	t.Logf("cutaway: practice %v, physics %v %s; groove %v %s", s.Cutaway.Practice, s.Cutaway.Physics, s.Cutaway.Differ, s.Needle.Physics, s.Needle.NoPhysics)
}
