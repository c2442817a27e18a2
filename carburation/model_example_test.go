package carburation_test

import (
	"fmt"

	"example.com/benchbook/carburation"
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// bench is an invented 397 cc single as it was measured at the bench.
func bench() carburation.Setup {
	pin := measure.Instrument[units.Length]{Name: "gauge pin", U: units.Millimetres(0.005)}
	main, _ := carburation.ReadJet("190 cc/min at 0.8 m")
	pilot, _ := carburation.ReadJet("25 cc/min at 0.8 m")
	return carburation.Setup{
		Engine: carburation.Engine{Displacement: measure.MustRead("397 cc", measure.Nominal[units.Volume](0.005)), PeakSpeed: measure.MustRead("5400 ± 200 rev/min", measure.Nominal[units.RotationalSpeed](0.05))},
		Carburettor: carburation.Carburettor{
			Bore: measure.MustRead("1 1/16 in", measure.Caliper()), Cutaway: measure.MustRead("7/32 in", measure.Caliper()), NeedleJet: measure.MustRead("2.705 mm", pin),
			Needle: carburation.Needle{Diameter: measure.MustRead("2.57 mm", pin), TaperFrom: measure.MustRead("6 mm", measure.Rule()),
				Taper: measure.MustRead("2.4° ± 0.1", measure.Protractor()), Groove: carburation.Groove{FromTop: 3, Of: 5}},
			MainJet: main, PilotJet: pilot, Screw: carburation.Screw{Kind: carburation.AirScrew, Turns: measure.Of[units.Ratio](1.5, 0.1)},
		},
	}
}

// The mixture at three lifts, uncalibrated: the band is as wide as it should be.
func ExampleNewModel() {
	m, err := carburation.NewModel(bench(), carburation.Options{})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, lift := range []units.Ratio{0.25, 0.5, 1} {
		e, _ := m.Explain(lift, units.RevolutionsPerMinute(4500))
		fmt.Printf("lift %s: lambda %.2f, %.2f to %.2f; pilot's share %.2f\n", lift, e.Lambda.Value(), e.LambdaBand.Low.Value(), e.LambdaBand.High.Value(), e.PilotShare)
	}
	// Output:
	// lift 0.25: lambda 0.75, 0.56 to 1.00; pilot's share 0.20
	// lift 0.5: lambda 0.76, 0.59 to 0.97; pilot's share 0.10
	// lift 1: lambda 0.86, 0.68 to 1.08; pilot's share 0.06
}

// What one step of each part does at a third of lift.
func ExampleModel_Explain() {
	m, _ := carburation.NewModel(bench(), carburation.Options{})
	e, _ := m.Explain(0.33, units.RevolutionsPerMinute(4000))
	for _, s := range e.Sensitivities {
		fmt.Printf("%s, %s: lambda %+.1f %%\n", s.Key, s.Step, s.Effect.Percents())
	}
	// Output:
	// main-jet, 5 % more flow: lambda -1.9 %
	// needle, one groove higher: lambda -9.0 %
	// needle-jet, 0.02 mm larger, by wear or choice: lambda -3.5 %
	// cutaway, half a number (1/32 in) higher: lambda +6.1 %
	// pilot-jet, 10 % more flow: lambda -1.3 %
	// pilot-screw, half a turn out: lambda +3.6 %
	// fuel-level, 1 mm higher: lambda -0.2 %
}

// One reading at full throttle, then two more: the band closes.
func ExampleModel_Calibrate() {
	m, _ := carburation.NewModel(bench(), carburation.Options{})
	read := func(lift units.Ratio, rpm float64, lambda units.Ratio) carburation.LambdaReading {
		return carburation.LambdaReading{Lift: lift, Speed: units.RevolutionsPerMinute(rpm), Lambda: measure.By(lambda, carburation.LambdaSensor())}
	}
	show := func(m carburation.Model) {
		e, _ := m.Explain(0.75, units.RevolutionsPerMinute(4500))
		fmt.Printf("lambda at three quarters %.2f ± %.0f %%\n", e.Lambda.Value(), 100*e.RelativeU)
	}
	show(m)
	one, _, err := m.Calibrate(read(1, 5200, 0.93))
	if err != nil {
		fmt.Println(err)
		return
	}
	show(one)
	three, c, _ := one.Calibrate(read(0.5, 4000, 0.97), read(0.1875, 3200, 0.90))
	show(three)
	fmt.Printf("%d figures learnt, doubt %q\n", len(c.Learnt), c.Doubt.Code)
	// Output:
	// lambda at three quarters 0.88 ± 14 %
	// lambda at three quarters 0.96 ± 3 %
	// lambda at three quarters 1.05 ± 2 %
	// 10 figures learnt, doubt ""
}

// What to fit for the trade's mixtures, stepping from a calibrated model.
func ExampleModel_Settings() {
	m, _ := carburation.NewModel(bench(), carburation.Options{})
	m, _, _ = m.Calibrate(carburation.LambdaReading{Lift: 1, Speed: units.RevolutionsPerMinute(5200), Lambda: measure.By[units.Ratio](0.95, carburation.LambdaSensor())})
	s, err := m.Settings(carburation.Targets{})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("main jet x %.2f, %.2f to %.2f\n", s.MainJet.FlowFactor.Middle.Value(), s.MainJet.FlowFactor.Low.Value(), s.MainJet.FlowFactor.High.Value())
	fmt.Printf("slide number %v, clip in groove %s\n", s.Cutaway.Sixteenths, s.Needle.Groove)
	for _, why := range []string{s.MainJet.NotReached.Text, s.Cutaway.NotReached.Text, s.Needle.NotReached.Text, s.PilotJet.NotReached.Text} {
		if why != "" {
			fmt.Println(why)
		}
	}
	// Output:
	// main jet x 1.14, 1.09 to 1.19
	// slide number 4.5, clip in groove 1 of 5 from the top
}

// A small map of lambda over lift and speed.
func ExampleModel_Map() {
	m, _ := carburation.NewModel(bench(), carburation.Options{})
	g, err := m.Map([]units.Ratio{0.25, 0.5, 1}, []units.RotationalSpeed{units.RevolutionsPerMinute(2500), units.RevolutionsPerMinute(5000)})
	if err != nil {
		fmt.Println(err)
		return
	}
	for i, x := range g.Lifts {
		fmt.Printf("%s: %.2f %.2f\n", x, g.Point(i, 0).Lambda.Value(), g.Point(i, 1).Lambda.Value())
	}
	// Output:
	// 0.25: 0.79 0.74
	// 0.5: 0.80 0.76
	// 1: 0.93 0.85
}

// A machine that ran well at the coast goes up to 2000 m on petrol with 10 % of
// ethanol.
func ExampleCorrect() {
	jet, _ := carburation.ReadJet("230 cc/min")
	c, err := carburation.Correct(carburation.Change{
		Then:    carburation.Surroundings{Pressure: measure.MustRead("1015 hPa", measure.Barometer()), Temperature: measure.MustRead("18 °C", measure.Thermometer()), Fuel: "petrol"},
		Now:     carburation.Surroundings{Pressure: measure.MustRead("795 hPa", measure.Barometer()), Temperature: measure.MustRead("10 °C", measure.Thermometer()), Fuel: "petrol E10"},
		MainJet: jet,
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("air x %.3f, fuel x %.3f, together x %.3f: %s\n", c.Air.Flow, c.Fuel.Flow, c.Total.Flow, c.MainJet.Flow().Value().In(units.CubicCentimetrePerMinute, 0))
	// Output:
	// air x 0.897, fuel x 1.034, together x 0.928: 213 cc/min
}

// Weak at full throttle, clean elsewhere, and it does not fade.
func ExampleAdvise() {
	clean := carburation.Seen{Runs: carburation.Right}
	a, err := carburation.Advise(carburation.Symptoms{TickOver: clean, PickUp: clean, Middle: clean, Fades: carburation.No,
		Full: carburation.Seen{Runs: carburation.Weak, Lambda: measure.MustRead("0.98", carburation.LambdaSensor())}}, carburation.AdviseOptions{})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, o := range a.Causes.Within(10) {
		fmt.Printf("%d %% %s\n", o.Percent, o.Text)
	}
	fmt.Println(a.Next.Text)
	// Output:
	// 77 % main jet too small
	// fit a main jet with 12 % more flow; too rich only wastes fuel, too weak melts pistons
}

func ExampleFuelFeed() {
	v, _ := carburation.FuelFeed(carburation.Feed{Need: units.CubicCentimetresPerMinute(110), Timed: measure.MustRead("150 cc/min", measure.Nominal[units.VolumeFlow](0.05))})
	fmt.Printf("%.1f times the need, enough: %v\n", v.Reserve, v.Enough)
	// Output:
	// 1.4 times the need, enough: false
}

func ExampleFloat_LevelShift() {
	f := carburation.Float{Area: units.SquareMillimetres(900), Submerged: units.CubicCentimetres(8)}
	d, _ := f.LevelShift(units.KilogramsPerCubicMetre(745), units.KilogramsPerCubicMetre(796))
	fmt.Printf("%.1f mm lower on methanol\n", d.Millimetres())
	// Output:
	// 0.6 mm lower on methanol
}

func ExampleLevelEffect() {
	for _, pa := range []float64{150, 2500} {
		k, _ := carburation.LevelEffect(units.Pascals(pa), units.KilogramsPerCubicMetre(745), 6*units.Millimetre, 2*units.Millimetre)
		fmt.Printf("%.0f Pa: x %.3f\n", pa, k)
	}
	// Output:
	// 150 Pa: x 1.067
	// 2500 Pa: x 1.003
}

// One point of the model: who brings the fuel, and what the main jet has to say.
func ExampleModel_At() {
	m, _ := carburation.NewModel(bench(), carburation.Options{})
	o, err := m.At(0.75, units.RevolutionsPerMinute(5000))
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("air %.0f g/s, pilot's share %.2f, main jet's say %.2f\n", o.Air.GramsPerSecond(), o.PilotShare, o.JetSay)
	// Output:
	// air 16 g/s, pilot's share 0.08, main jet's say 0.85
}

func ExampleModel_Bands() {
	m, _ := carburation.NewModel(bench(), carburation.Options{})
	g, _ := m.Map([]units.Ratio{0.5, 1}, []units.RotationalSpeed{units.RevolutionsPerMinute(5000)})
	bands, err := m.Bands(g)
	if err != nil {
		fmt.Println(err)
		return
	}
	for i, b := range bands {
		fmt.Printf("lift %s: lambda %s\n", g.Points[i].Lift, b)
	}
	// Output:
	// lift 0.5: lambda 0.591 to 0.967, middle 0.756
	// lift 1: lambda 0.68 to 1.07, middle 0.853
}
