package main

import (
	"example.com/benchbook/carburation"
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

func mm2(x float64) units.Area        { return units.SquareMillimetres(x) }
func density(x float64) units.Density { return units.KilogramsPerCubicMetre(x) }
func kpa(x float64) units.Pressure    { return units.Kilopascals(x) }

// carburettor is an invented one on the invented single.
func carburettor() carburation.Setup {
	length := func(x, u float64) measure.Reading[units.Length] { return measure.Of(mm(x), mm(u)) }
	main, _ := carburation.ReadJet("170 cc/min at 0.775 m")
	pilot, _ := carburation.ReadJet("25 cc/min at 0.775 m")
	return carburation.Setup{
		Engine: carburation.Engine{Displacement: measure.Of(units.CubicCentimetres(397), units.CubicCentimetres(1))},
		Carburettor: carburation.Carburettor{
			Bore: length(27, 0.02), Cutaway: length(5.5, 0.05), NeedleJet: length(2.7, 0.005),
			Needle:  carburation.Needle{Diameter: length(2.57, 0.005), TaperFrom: length(6, 0.3), Taper: measure.Of(units.Degrees(2.4), units.Degrees(0.05)), Groove: carburation.Groove{FromTop: 3, Of: 5}},
			MainJet: main, PilotJet: pilot, Screw: carburation.Screw{Kind: carburation.AirScrew},
		},
	}
}

func carburationCases(b *book) {
	for _, d := range []float64{1.1, 27} {
		b.add("carburation.CircleArea", in{"diameter": mm(d)}, only(carburation.CircleArea(mm(d))))
	}
	b.add("carburation.CircleDiameter", in{"area": mm2(573)}, of(carburation.CircleDiameter(mm2(573))))
	for _, number := range []float64{3, 3.5} {
		for name, scale := range map[string]carburation.SlideScale{"sixteenths of an inch": carburation.Sixteenths} {
			b.add("carburation.CutawayOf", in{"number": number, "scale": words(name)}, of(carburation.CutawayOf(number, scale)))
		}
	}
	choke := carburation.Choke{Area: mm2(600), Coefficient: units.Value(0.85), Pressure: units.Bars(1.013), Temperature: units.Celsius(15)}
	for _, p := range []float64{0.99, 0.963, 0.4} {
		b.add("carburation.Choke.At", in{"choke": choke, "throat": units.Bars(p)}, of(choke.At(units.Bars(p))))
	}
	b.loosely(1e-8, "carburation.Choke.For", in{"choke": choke, "flow": units.GramsPerSecond(40)}, of(choke.For(units.GramsPerSecond(40))))
	intake := carburation.Intake{Swept: units.CubicCentimetres(397), Speed: rpm(5300), Efficiency: units.Value(0.85), Air: density(1.2)}
	b.add("carburation.Intake.Flow", in{"intake": intake}, of(intake.Flow()))
	b.add("carburation.Intake.EfficiencyFrom", in{"intake": intake, "air": units.GramsPerSecond(16.5)}, of(intake.EfficiencyFrom(units.GramsPerSecond(16.5))))
	b.add("carburation.Suction", in{"flow": units.GramsPerSecond(17), "density": density(1.2), "area": mm2(570), "coefficient": units.Value(0.85)}, of(carburation.Suction(units.GramsPerSecond(17), density(1.2), mm2(570), units.Value(0.85))))
	b.add("carburation.SuctionAtSpeed", in{"speed": units.MetresPerSecond(58), "density": density(1.28), "coefficient": units.Value(0.84)}, of(carburation.SuctionAtSpeed(units.MetresPerSecond(58), density(1.28), units.Value(0.84))))
	b.add("carburation.ChokeArea", in{"flow": units.GramsPerSecond(17), "density": density(1.2), "suction": kpa(2.5), "coefficient": units.Value(0.85)}, of(carburation.ChokeArea(units.GramsPerSecond(17), density(1.2), kpa(2.5), units.Value(0.85))))
	b.add("carburation.AirSpeed", in{"flow": units.GramsPerSecond(17), "density": density(1.2), "area": mm2(570)}, of(carburation.AirSpeed(units.GramsPerSecond(17), density(1.2), mm2(570))))
	jet := carburation.Orifice{Area: mm2(0.95), Coefficient: units.Value(0.75), Lip: mm(5)}
	b.add("carburation.Orifice.Flow", in{"jet": jet, "suction": kpa(2.5), "fuel": density(745)}, of(jet.Flow(kpa(2.5), density(745))))
	b.add("carburation.Orifice.Suction", in{"jet": jet, "flow": units.GramsPerSecond(1.3), "fuel": density(745)}, of(jet.Suction(units.GramsPerSecond(1.3), density(745))))
	b.add("carburation.Orifice.Size", in{"jet": jet, "flow": units.GramsPerSecond(1.3), "suction": kpa(2.5), "fuel": density(745)}, of(jet.Size(units.GramsPerSecond(1.3), kpa(2.5), density(745))))
	b.add("carburation.Orifice.LipPressure", in{"jet": jet, "fuel": density(745)}, of(jet.LipPressure(density(745))))
	b.add("carburation.Orifice.StartingSpeed", in{"jet": jet, "fuel": density(745), "air": density(1.2), "coefficient": units.Value(1)}, of(jet.StartingSpeed(density(745), density(1.2), units.Value(1))))
	plain := carburation.PlainJet{ChokeArea: mm2(570), ChokeCoefficient: units.Value(0.85), Jet: jet, Air: density(1.2), Fuel: density(745)}
	for _, s := range []float64{0.5, 2.5, 6} {
		b.add("carburation.PlainJet.Mixture", in{"carburettor": plain, "suction": kpa(s)}, of(plain.Mixture(kpa(s))))
	}
	b.add("carburation.CleanerMixture", in{"mixture": units.Value(13), "suction": kpa(2.5), "drop": kpa(0.3)}, of(carburation.CleanerMixture(units.Value(13), kpa(2.5), kpa(0.3))))
	b.add("carburation.LevelEffect", in{"suction": kpa(2.5), "fuel": density(745), "lip": mm(6), "rise": mm(2)}, of(carburation.LevelEffect(kpa(2.5), density(745), mm(6), mm(2))))
	b.add("carburation.Expansibility", in{"beta": 0.6, "r": 0.98, "gamma": 1.4}, of(carburation.Expansibility(0.6, 0.98, 1.4)))
	b.add("carburation.ParallelBore", in{"reynolds": 4900.0, "length_over_bore": 3.0}, of(carburation.ParallelBore(4900, 3)))
	b.add("carburation.Reynolds", in{"flow": units.CubicCentimetresPerMinute(139), "bore": mm(1.09), "viscosity": units.SquareMillimetresPerSecond(0.55)}, of(carburation.Reynolds(units.CubicCentimetresPerMinute(139), mm(1.09), units.SquareMillimetresPerSecond(0.55))))
	for _, text := range []string{"130 cc/min at 0.5 m", "1.10 mm", "drill 57", "280"} {
		j, err := carburation.ReadJet(text)
		if err != nil {
			b.add("carburation.ReadJet", in{"text": words(text)}, of(nil, err))
			continue
		}
		size, err := j.Size(carburation.JetOptions{Head: measure.Exact(units.Metres(0.5))})
		b.loosely(loose, "carburation.Jet.Size", in{"jet": words(text), "head": units.Metres(0.5)}, of(size, err))
	}
	e := carburation.Emulsion{Jet: mm2(0.8), Bleed: mm2(0.3), Outlet: mm2(2.5), Head: mm(15), Rise: mm(5), Air: density(1.2), Fuel: density(745), Ambient: units.Bars(1.013)}
	b.loosely(loose, "carburation.Emulsion.Draw", in{"emulsion": e, "suction": kpa(3)}, of(e.Draw(kpa(3))))
	start, err := carburation.Start(carburation.Input{Engine: carburettor().Engine}, carburation.Options{})
	b.loosely(loose, "carburation.Start", in{"engine": carburettor().Engine}, of(map[string]any{"bore": start.Bore, "main_jet": start.MainJet}, err))
	model, err := carburation.NewModel(carburettor(), carburation.Options{})
	for _, lift := range []float64{0.25, 0.5, 1} {
		var at carburation.Operating
		if err == nil {
			at, err = model.At(units.Value(lift), rpm(4500))
		}
		b.loosely(1e-5, "carburation.Model.At", in{"setup": carburettor(), "lift": units.Value(lift), "speed": rpm(4500)}, of(at, err))
	}
}
