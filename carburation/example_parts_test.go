package carburation_test

import (
	"fmt"

	"example.com/benchbook/carburation"
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// Three ways to know a jet: by a bore measured with a pin, by a mark fixed in a
// program, and by its flow in a bench test. What each is known by decides what it
// can be asked for.
func ExampleJet() {
	pin := measure.Instrument[units.Length]{Name: "gauge pin", U: units.Millimetres(0.005)}
	for _, j := range []carburation.Jet{
		carburation.BoreJet(measure.MustRead("1.10 mm", pin)),
		carburation.MustReadJet("190 cc/min at 0.8 m"),
		carburation.TimedJet(measure.Of(units.SquareMillimetres(0.553), units.SquareMillimetres(0.003))),
		{},
	} {
		fmt.Println(j.Taken(), "- bore", j.Bore(), "- flow", j.Flow(), "- area", j.Effective())
	}
	// Output:
	// true - bore 1.100 ± 0.005 mm - flow not taken - area not taken
	// true - bore not taken - flow 190 ± 4 cc/min - area not taken
	// true - bore not taken - flow not taken - area 0.553 ± 0.003 mm²
	// false - bore not taken - flow not taken - area not taken
}

// A carburettor put together from its parts: needle measured at stations, fuel
// screw, cleaner; then the setup as the model took it. All invented.
func ExampleModel() {
	pin := measure.Instrument[units.Length]{Name: "gauge pin", U: units.Millimetres(0.005)}
	setup := bench()
	setup.Carburettor = carburation.Carburettor{
		Bore: measure.MustRead("1 1/16 in", measure.Caliper()), Cutaway: measure.MustRead("7/32 in", measure.Caliper()), NeedleJet: measure.MustRead("2.705 mm", pin),
		Needle: carburation.Needle{Diameter: measure.MustRead("2.57 mm", pin), Profile: []carburation.Station{
			{Lift: 6 * units.Millimetre, Diameter: units.Millimetres(2.57)},
			{Lift: 27 * units.Millimetre, Diameter: units.Millimetres(1.7)},
		}},
		MainJet: carburation.MustReadJet("190 cc/min at 0.8 m"), PilotJet: carburation.MustReadJet("25 cc/min at 0.8 m"),
		Screw: carburation.Screw{Kind: carburation.FuelScrew, Turns: measure.Of[units.Ratio](1.5, 0.1)},
	}
	setup.Cleaner = carburation.Cleaner{Drop: measure.Of(units.Hectopascals(3), units.Hectopascals(1))}
	m, err := carburation.NewModel(setup, carburation.Options{Physics: carburation.Physics{Lip: measure.Of(5*units.Millimetre, 1*units.Millimetre)}})
	if err != nil {
		fmt.Println(err)
		return
	}
	groove := m.Setup().Carburettor.Needle.Groove
	fmt.Println("groove read:", groove.Taken(), "- engine speed", m.Setup().Engine.PeakSpeed)
	for _, a := range m.Basis().Assumed[:2] {
		fmt.Println("assumed:", a.What, a.Value)
	}
	op, err := m.At(1, units.RevolutionsPerMinute(5000))
	fmt.Printf("lambda %.2f %v\n", op.Lambda.Value(), err)
	// Output:
	// groove read: false - engine speed 5400 ± 200 rev/min
	// assumed: volumetric efficiency at that speed 0.85 ± 0.07
	// assumed: air pressure 1013.25 hPa
	// lambda 0.79 <nil>
}

// Bands of lambda over a small map, and whether a mixture lies within them.
func ExampleBand_Holds() {
	m, err := carburation.NewModel(bench(), carburation.Options{})
	if err != nil {
		fmt.Println(err)
		return
	}
	g, err := m.Map([]units.Ratio{0.5, 1}, []units.RotationalSpeed{units.RevolutionsPerMinute(4500)})
	if err != nil {
		fmt.Println(err)
		return
	}
	bands, err := m.Bands(g)
	if err != nil {
		fmt.Println(err)
		return
	}
	for i, b := range bands {
		fmt.Println(g.Lifts[i], "lift:", b.Given(), "- 0.9 within:", b.Holds(0.9), "- 1.3 within:", b.Holds(1.3))
	}
	// Output:
	// 0.5 lift: true - 0.9 within: true - 1.3 within: false
	// 1 lift: true - 0.9 within: true - 1.3 within: false
}

// A weaker mixture wanted for cruising, and the model with what that asks for put
// in.
func ExampleSettings_Model() {
	m, err := carburation.NewModel(bench(), carburation.Options{})
	if err != nil {
		fmt.Println(err)
		return
	}
	want := carburation.Target{Lift: 0.5, Speed: units.RevolutionsPerMinute(3500), Lambda: 1.0}
	s, err := m.Settings(carburation.Targets{Middle: want})
	if err != nil {
		fmt.Println(err)
		return
	}
	set := s.Model()
	before, _ := m.At(want.Lift, want.Speed)
	after, _ := set.At(want.Lift, want.Speed)
	fmt.Printf("lambda %.2f -> %.2f for %.2f\n", before.Lambda.Value(), after.Lambda.Value(), want.Lambda.Value())
	// Output: lambda 0.77 -> 0.96 for 1.00
}

// Below this much suction no fuel leaves the jet; beyond this ratio of pressures no
// more air passes the choke.
func ExampleOrifice_LipPressure() {
	lift, err := carburation.Orifice{Lip: 6 * units.Millimetre}.LipPressure(units.KilogramsPerCubicMetre(745))
	fmt.Println(lift.In(units.Pascal, 0), err)
	ratio, err := carburation.Gas{}.CriticalRatio()
	fmt.Printf("%.3f %v\n", ratio, err)
	// Output:
	// 44 Pa <nil>
	// 0.528 <nil>
}

// What the engine takes at its peak, how the fitted parts stand to the ranges, and
// where the clip goes. The machine is invented.
func ExampleStarting() {
	jet, err := carburation.ReadJet("230 cc/min")
	if err != nil {
		fmt.Println(err)
		return
	}
	s, err := carburation.Start(carburation.Input{
		Engine: carburation.Engine{Displacement: measure.MustRead("397 cc", measure.Nominal[units.Volume](0.005))},
		Fitted: carburation.Fitted{Bore: measure.MustRead("27 mm", measure.Caliper()), MainJet: jet, Groove: carburation.Groove{FromTop: 4, Of: 5}},
	}, carburation.Options{})
	if err != nil {
		fmt.Println(err)
		return
	}
	var takes carburation.Demand = s.Demand
	fmt.Println("air", takes.Air.In(units.GramPerSecond, 0), "fuel", takes.FuelVolume.In(units.CubicCentimetrePerMinute, 0))
	var jetStands carburation.Standing = s.MainJet.Standing
	fmt.Println("bore", s.Bore.Standing, "- main jet", jetStands)
	var clip carburation.NeedleStart = s.Needle
	fmt.Println("clip:", clip.Practice, "is", clip.Groove, "- fitted stands", clip.Standing)
	// Output:
	// air 17 g/s fuel 109 cc/min
	// bore inside - main jet inside
	// clip: middle groove is 3 of 5 from the top - fitted stands above
}

// The marks on the grip at which a mixture is judged.
func ExampleZone() {
	for _, z := range []carburation.Zone{carburation.TickOver, carburation.PickUp, carburation.Middle, carburation.FullBore} {
		fmt.Println(z)
	}
	// Output:
	// tick-over
	// an eighth to a quarter
	// a quarter to three quarters
	// three quarters to full
}
