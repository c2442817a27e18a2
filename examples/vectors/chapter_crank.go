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
		return units.Before(units.TDC, units.CrankDegrees(-degreesAfterTDC))
	}
	return units.After(units.TDC, units.CrankDegrees(degreesAfterTDC))
}

func crankCases(b *book) {
	offset := crank.Slider{Throw: mm(41.5), Rod: mm(165), Offset: mm(6)}
	for _, s := range []crank.Slider{slider(), offset, {Stroke: mm(83), Rod: mm(140)}, {Stroke: mm(83), Rod: mm(30)}} {
		b.add("timing/crank.Slider.DeadCentres", in{"slider": s}, of(s.DeadCentres()))
		for _, deg := range []float64{-150, -37, 0, 10, 90, 135} {
			b.add("timing/crank.Slider.Travel", in{"slider": s, "at": at(deg)}, of(s.Travel(at(deg))))
		}
		for _, travel := range []float64{0.5, 8, 40, 100} {
			b.add("timing/crank.Slider.Positions", in{"slider": s, "travel": mm(travel)}, of(s.Positions(mm(travel))))
		}
		for _, deg := range []float64{-30, 45} {
			b.add("timing/crank.Slider.Motion", in{"slider": s, "at": at(deg), "speed": rpm(5200)}, of(s.Motion(at(deg), rpm(5200))))
			b.add("timing/crank.Slider.Forces", in{"slider": s, "at": at(deg), "on_piston": units.Newtons(8000)}, of(s.Forces(at(deg), units.Newtons(8000))))
			b.add("timing/crank.Slider.InertiaForce", in{"slider": s, "at": at(deg), "speed": rpm(5200), "mass": units.Grams(420)}, of(s.InertiaForce(at(deg), rpm(5200), units.Grams(420))))
		}
		b.add("timing/crank.Slider.GreatestSpeed", in{"slider": s, "speed": rpm(5200)}, of(s.GreatestSpeed(rpm(5200))))
		b.add("timing/crank.Slider.MeanSpeed", in{"slider": s, "speed": rpm(5200)}, of(s.MeanSpeed(rpm(5200))))
		b.add("timing/crank.Slider.TopDoubt", in{"slider": s, "resolution": mm(0.01)}, of(s.TopDoubt(mm(0.01))))
	}
	b.add("timing/crank.Slider.TwoTermMotion", in{"slider": slider(), "at": at(45), "speed": rpm(5200)}, of(slider().TwoTermMotion(at(45), rpm(5200))))
	b.add("timing/crank.Slider.TwoTermGreatestSpeed", in{"slider": slider(), "speed": rpm(5200)}, of(slider().TwoTermGreatestSpeed(rpm(5200))))

	c := cylinder()
	b.add("timing/crank.Cylinder.Displacement", in{"cylinder": c}, of(c.Displacement()))
	b.add("timing/crank.Cylinder.CompressionRatio", in{"cylinder": c}, of(c.CompressionRatio()))
	for _, ratio := range []float64{1, 5.5, 6.8} {
		b.add("timing/crank.Cylinder.WithRatio", in{"cylinder": crank.Cylinder{Bore: mm(78), Slider: slider()}, "ratio": units.Value(ratio)},
			of(crank.Cylinder{Bore: mm(78), Slider: slider()}.WithRatio(units.Value(ratio))))
	}
	for _, abdc := range []float64{20, 48, 70} {
		closes := units.After(units.BDC, units.CrankDegrees(abdc))
		b.add("timing/crank.Cylinder.VolumeAt", in{"cylinder": c, "at": closes}, of(c.VolumeAt(closes)))
		b.add("timing/crank.Cylinder.TrappedAt", in{"cylinder": c, "inlet_closes": closes}, of(c.TrappedAt(closes)))
		// No leak and one index: the leak is a numerical path, whose steps another
		// program need not take.
		opt := crank.CrankingOptions{
			Ambient: units.Bars(1.01325), Air: units.Celsius(20), Index: measure.Between(units.Value(1.25), units.Value(1.25)),
			Leak: measure.Between(0*units.SquareMetre, units.SquareMillimetres(0.1)), Speed: measure.Between(rpm(300), rpm(300)),
		}
		k, err := c.Cranking(closes, opt)
		b.add("timing/crank.Cylinder.Cranking", in{"cylinder": c, "inlet_closes": closes, "ambient": opt.Ambient, "air": opt.Air, "index": 1.25, "leak_low": "none", "leak_high": opt.Leak.High, "speed": rpm(300)},
			of(struct {
				Trapped  crank.Trapped  `json:"trapped"`
				Absolute units.Pressure `json:"absolute_without_leak"`
			}{k.Trapped, k.Absolute.High}, err))
	}
	b.add("timing/crank.CompressedPressure", in{"pressure": units.Bars(1), "ratio": units.Value(6.8), "index": 1.3}, of(crank.CompressedPressure(units.Bars(1), units.Value(6.8), 1.3)))
	b.add("timing/crank.CompressedTemperature", in{"temperature": units.Celsius(20), "ratio": units.Value(6.8), "index": 1.3}, of(crank.CompressedTemperature(units.Celsius(20), units.Value(6.8), 1.3)))
	b.add("timing/crank.RatioOfPressures", in{"from": units.Bars(1), "to": units.Bars(12), "index": 1.3}, of(crank.RatioOfPressures(units.Bars(1), units.Bars(12), 1.3)))
	b.add("timing/crank.RatioOfTwoPressures", in{"first": units.Bars(1.4), "at": 0.25, "second": units.Bars(3.5), "and": 0.75, "index": 1.3}, of(crank.RatioOfTwoPressures(units.Bars(1.4), 0.25, units.Bars(3.5), 0.75, 1.3)))
	b.add("timing/crank.EccentricDoubt", in{"off": mm(0.5), "pointer": mm(90)}, of(crank.EccentricDoubt(mm(0.5), mm(90))))
	for _, s := range []crank.Slider{{}, slider(), offset} {
		r := crank.StopReadings{Before: reading(at(-42)), After: reading(at(38)), Slider: s}
		b.add("timing/crank.FindTDC", in{"readings": r}, of(crank.FindTDC(r)))
	}
}

func reading(p units.CrankPosition) measure.Position { return measure.AtBy(p, measure.DegreeDisc()) }
