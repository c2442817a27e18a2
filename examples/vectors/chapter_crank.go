package main

import (
	"example.com/benchbook/timing/crank"
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// slider is that of the invented single.
func slider() crank.Slider { return crank.Slider{Stroke: mm(83), Rod: mm(165)} }

func cylinder() crank.Cylinder {
	c, _ := crank.Cylinder{Bore: mm(78), Slider: slider()}.WithRatio(units.Value(6.8))
	return c
}

func at(degreesAfterTDC float64) units.CrankPosition {
	if degreesAfterTDC < 0 {
		return units.Before(units.TDC, crankDeg(-degreesAfterTDC))
	}
	return units.After(units.TDC, crankDeg(degreesAfterTDC))
}

func afterBDC(deg float64) units.CrankPosition { return units.After(units.BDC, crankDeg(deg)) }

func crankDeg(x float64) units.CrankAngle { return units.CrankDegrees(x) }

func reading(p units.CrankPosition) measure.Position { return measure.AtBy(p, measure.DegreeDisc()) }

func crankCases(b *book) {
	offset := crank.Slider{Throw: mm(41.5), Rod: mm(165), Offset: mm(6)}
	tooShort := crank.Slider{Stroke: mm(83), Rod: mm(30)}
	all := each(slider(), offset, crank.Slider{Stroke: mm(83), Rod: mm(140)}, tooShort)
	sound := each(slider(), offset)
	run := each(rpm(800), rpm(5200))
	b.ask(crank.Slider.DeadCentres, "slider", all)
	b.ask(crank.Slider.Travel, "slider, at", cross(all, each(at(-150), at(-37), at(0), at(10), at(90), at(135))))
	b.ask(crank.Slider.Positions, "slider, travel", cross(all, each(mm(0), mm(0.5), mm(8), mm(40), mm(100))))
	b.ask(crank.Slider.Motion, "slider, at, speed", cross(all, each(at(-30), at(0), at(45)), each(rpm(5200))))
	b.ask(crank.Slider.Forces, "slider, at, on_piston", cross(all, each(at(-30), at(45)), each(newtons(8000))))
	b.ask(crank.Slider.InertiaForce, "slider, at, speed, mass", cross(all, each(at(-30), at(0), at(180)), each(rpm(5200)), each(units.Grams(420))))
	b.ask(crank.Slider.GreatestSpeed, "slider, speed", cross(all, run))
	b.ask(crank.Slider.MeanSpeed, "slider, speed", cross(all, run))
	b.ask(crank.Slider.TopDoubt, "slider, resolution", cross(all, each(mm(0.01), mm(0.1))))
	b.ask(crank.Slider.TwoTermMotion, "slider, at, speed", cross(sound, each(at(0), at(45), at(-120)), each(rpm(5200))))
	b.ask(crank.Slider.TwoTermGreatestSpeed, "slider, speed", cross(sound, run))

	c := cylinder()
	bare := crank.Cylinder{Bore: mm(78), Slider: slider()}
	cylinders := each(c, crank.Cylinder{Bore: mm(86), Slider: offset, Clearance: units.CubicCentimetres(80)}, crank.Cylinder{Slider: tooShort})
	b.ask(crank.Cylinder.Displacement, "cylinder", cylinders)
	b.ask(crank.Cylinder.CompressionRatio, "cylinder", cylinders)
	b.ask(crank.Cylinder.WithRatio, "cylinder, ratio", cross(each(bare), each(units.Value(1), units.Value(5.5), units.Value(6.8), units.Value(9))))
	closing := each(afterBDC(20), afterBDC(48), afterBDC(70), at(0))
	b.ask(crank.Cylinder.VolumeAt, "cylinder, at", cross(cylinders, closing))
	b.ask(crank.Cylinder.TrappedAt, "cylinder, inlet_closes", cross(cylinders, closing))
	// One index: of the leak only the end without one is kept, for the other is a
	// numerical path, whose steps another program need not take.
	opt := crank.CrankingOptions{
		Ambient: units.Bars(1.01325), Air: units.Celsius(20), Index: measure.Between(units.Value(1.25), units.Value(1.25)),
		Leak: measure.Between(0*units.SquareMetre, units.SquareMillimetres(0.1)), Speed: measure.Between(rpm(300), rpm(300)),
	}
	b.ask(crank.Cylinder.Cranking, "cylinder, inlet_closes, options", cross(cylinders, each(afterBDC(20), afterBDC(48), afterBDC(70)), each(opt)),
		keep("trapped", "absolute.high", "gauge.high"))
	b.ask(crank.Cylinder.Cranking, "cylinder, inlet_closes, options", cross(each(c), each(afterBDC(65)), each(crank.CrankingOptions{}, crank.CrankingOptions{Ambient: units.Hectopascals(900)})), rel(1e-4))
	b.ask(crank.CompressedPressure, "pressure, ratio, index", cross(each(units.Bars(1)), each(units.Value(5.5), units.Value(6.8)), each(1.0, 1.3)))
	b.ask(crank.CompressedTemperature, "temperature, ratio, index", cross(each(units.Celsius(20)), each(units.Value(5.5), units.Value(6.8)), each(1.0, 1.3)))
	b.ask(crank.RatioOfPressures, "from, to, index", cross(each(units.Bars(1)), each(units.Bars(12), units.Bars(1), units.Bars(0.5)), each(1.3)))
	b.ask(crank.RatioOfTwoPressures, "first, at, second, and, index", []row{
		{units.Bars(1.4), 0.25, units.Bars(3.5), 0.75, 1.3}, {units.Bars(1.3), 0.2, units.Bars(4), 0.8, 1.35}, {units.Bars(1.4), 0.25, units.Bars(1.2), 0.75, 1.3}, {units.Bars(1.4), 0.75, units.Bars(3.5), 0.25, 1.3},
	})
	testers := each(crank.LeakTester{}, crank.LeakTester{Orifice: mm(0.5), Ambient: units.Bars(0.95)}, crank.LeakTester{Orifice: mm(-1)})
	b.ask(crank.LeakTester.Hole, "tester, supply, held", cross(testers, []row{{units.Bars(6), units.Bars(5)}, {units.Bars(1), units.Bars(0.3)}, {units.Bars(6), units.Bars(7)}}), rel(1e-8))
	b.ask(crank.LeakTester.Held, "tester, supply, hole", cross(testers, []row{{units.Bars(6), mm2(0.1)}, {units.Bars(1), mm2(2)}, {units.Bars(6), mm2(-1)}}), rel(1e-8))
	b.ask(crank.Slider.Err, "slider", all)
	b.ask(crank.Cylinder.Err, "cylinder", cylinders)
	b.ask(crank.EccentricDoubt, "off, pointer", cross(each(mm(0), mm(0.5), mm(95)), each(mm(90))))
	var stops []row
	for _, s := range []crank.Slider{{}, slider(), offset} {
		stops = append(stops,
			row{crank.StopReadings{Before: reading(at(-42)), After: reading(at(38)), Slider: s}},
			row{crank.StopReadings{Before: measure.At(at(-20), crankDeg(0.5)), After: measure.At(at(20), crankDeg(0.5)), Slider: s}})
	}
	stops = append(stops, row{crank.StopReadings{Before: reading(at(-42))}})
	b.ask(crank.FindTDC, "readings", stops)
}
