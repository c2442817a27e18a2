package main

import (
	"math"

	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
	"example.com/benchbook/units/solve"
)

func mm(x float64) units.Length           { return units.Millimetres(x) }
func rpm(x float64) units.RotationalSpeed { return units.RevolutionsPerMinute(x) }

func unitCases(b *book) {
	for _, x := range []float64{0, 1. / 64, 5. / 16, 1, 1.375, 12} {
		b.add("units.Inches", in{"inches": x}, only(units.Inches(x)))
		b.add("units.NearestFraction", in{"length": units.Inches(x) + mm(0.05), "denominator": 64.0}, nearest(units.Inches(x)+mm(0.05)))
	}
	for _, s := range []string{"5/16 in", `1 3/8"`, "5' 11½\"", "8 thou", "12.7mm", "2 furlong"} {
		b.add("units.ParseLength", in{"text": words(s)}, of(units.ParseLength(s)))
	}
	for _, s := range []string{"45°30'", "0.25 turn"} {
		b.add("units.ParseAngle", in{"text": words(s)}, of(units.ParseAngle(s)))
	}
	for _, s := range []string{"18° crank", "9° cam"} {
		b.add("units.ParseCrankAngle", in{"text": words(s)}, of(units.ParseCrankAngle(s)))
	}
	for _, s := range []string{"25 BTDC", "40° ABDC", "TDC"} {
		b.add("units.ParsePosition", in{"text": words(s)}, of(units.ParsePosition(s)))
	}
	for _, s := range []string{"28 lb", "30 kgf", "12 cm"} {
		b.add("units.ParseForce", in{"text": words(s)}, of(units.ParseForce(s)))
	}
	for _, s := range []string{"128 psi", "1008 hPa", "29.92 inHg", "9 bar"} {
		b.add("units.ParsePressure", in{"text": words(s)}, of(units.ParsePressure(s)))
	}
	for _, s := range []string{"30 lbf ft", "2 kgf m", "41 N m"} {
		b.add("units.ParseTorque", in{"text": words(s)}, of(units.ParseTorque(s)))
	}
	for _, s := range []string{"1 pint", "397 cc", "24.2 cu in"} {
		b.add("units.ParseVolume", in{"text": words(s)}, of(units.ParseVolume(s)))
	}
	for _, s := range []string{"18 bhp", "14 kW", "20 hp"} {
		b.add("units.ParsePower", in{"text": words(s)}, of(units.ParsePower(s)))
	}
	for _, s := range []string{"50 mile/h", "100 km/h"} {
		b.add("units.ParseSpeed", in{"text": words(s)}, of(units.ParseSpeed(s)))
	}
	for _, s := range []string{"59 °F", "15 °C", "-300 °C"} {
		b.add("units.ParseTemperature", in{"text": words(s)}, of(units.ParseTemperature(s)))
	}
	for _, s := range []string{"70 mile/imp gal", "4 L/100 km", "70 mpg"} {
		b.add("units.ParseFuelConsumption", in{"text": words(s)}, of(units.ParseFuelConsumption(s)))
	}
	for _, x := range []float64{7.5, 16} {
		b.add("units.CamAngle.AtCrank", in{"cam": units.CamDegrees(x)}, only(units.CamDegrees(x).AtCrank()))
	}
	readingCases(b)
}

func readingCases(b *book) {
	for _, s := range []string{"7.94 mm ± 0.02", "7.94 mm", "5/16 in +/- 2 thou", ""} {
		r, err := measure.Read(s, measure.Caliper())
		if s == "" {
			b.add("units/measure.Reading.Taken", in{"text": words("-")}, only(r.Taken()))
			continue
		}
		b.add("units/measure.Read", in{"text": words(s), "instrument": words(measure.Caliper().Name)}, of(r, err))
	}
	for _, s := range []string{"25 BTDC", "40° ABDC ± 2°"} {
		b.add("units/measure.ReadPosition", in{"text": words(s)}, of(measure.ReadPosition(s, measure.DegreeDisc())))
	}
	bore, stroke := measure.Of(mm(78), mm(0.02)), measure.Of(mm(83), mm(0.05))
	b.add("units/measure.Propagate", in{"formula": words("pi/4 bore^2 stroke"), "bore": bore, "stroke": stroke},
		of(measure.Propagate[units.Volume](func(x []float64) float64 { return math.Pi / 4 * x[0] * x[0] * x[1] }, bore.SI(), stroke.SI())))
	tooth := func(mean float64) measure.Gaussian {
		return measure.Gaussian{Mean: []float64{mean, mean}, Own: []float64{1, 1}, Shared: []measure.Effect{{Name: "TDC", SD: 1, Column: []float64{1, 1}}}}
	}
	for _, x := range []float64{0, 4, 9} {
		ranking, err := measure.Rank(measure.Data{{Value: x, Taken: true}, {Value: x + 1, Taken: true}}, []measure.Cause{
			{Key: "as-it-should-be", Prior: 5, Hypothesis: tooth(0)}, {Key: "one-tooth", Prior: 1, Hypothesis: tooth(8)},
		}, measure.Cause{Prior: 0.5, Hypothesis: measure.Gaussian{Mean: []float64{0, 0}, Own: []float64{20, 20}}})
		b.add("units/measure.Rank", in{
			"readings": []float64{x, x + 1}, "own": 1.0, "common": 1.0,
			"as-it-should-be": in{"mean": 0.0, "prior": 5.0}, "one-tooth": in{"mean": 8.0, "prior": 1.0}, "something-else": in{"mean": 0.0, "own": 20.0, "prior": 0.5},
		}, of(ranking, err))
	}
	root, err := solve.Root(func(x units.Ratio) float64 { return math.Cos(x.SI()) - x.SI() }, 0, 1*units.One, 1e-14)
	b.add("units/solve.Root", in{"formula": words("cos x - x"), "from": 0.0, "to": 1.0}, of(root, err))
}

// words is text as an argument; text such as "25 BTDC" stays text.
type words string

func nearest(l units.Length) outcome {
	f, left, err := units.NearestFraction(l, 64)
	return of(struct {
		Fraction string       `json:"fraction"`
		Left     units.Length `json:"left"`
	}{f.String(), left}, err)
}
