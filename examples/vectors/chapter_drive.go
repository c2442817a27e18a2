package main

import (
	"example.com/benchbook/transmission/drive"
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

func mph(x float64) units.Speed { return units.MilesPerHour(x) }

func driveCases(b *book) {
	for _, s := range []string{"46/18", "46:18", "2.42", "1/0"} {
		r, err := drive.ParseRatio(s)
		b.add("transmission/drive.ParseRatio", in{"text": words(s)}, of(map[string]any{"exact": words(r.String()), "ratio": r.Float()}, err))
	}
	train := drive.Train{{Driver: 22, Driven: 48}, {Driver: 18, Driven: 46}}
	r, err := train.Ratio()
	b.add("transmission/drive.Train.Ratio", in{"train": train}, of(map[string]any{"exact": words(r.String()), "ratio": r.Float()}, err))
	for _, z := range []int{18, 46} {
		b.add("transmission/drive.PitchDiameter", in{"pitch": units.Inches(0.625), "teeth": float64(z)}, of(drive.PitchDiameter(units.Inches(0.625), z)))
	}
	b.add("transmission/drive.PitchFor", in{"diameter": mm(91.4), "teeth": 18.0}, of(drive.PitchFor(mm(91.4), 18)))
	s := drive.Sprockets{Pitch: units.Inches(0.625), Front: 18, Rear: 46}
	for _, m := range []drive.Method{drive.Series, drive.Tangent} {
		for _, centre := range []float64{560, 620} {
			b.add("transmission/drive.ChainLength", in{"sprockets": s, "centre": mm(centre), "method": words(m.String())}, of(drive.ChainLength(s, mm(centre), m)))
		}
		b.add("transmission/drive.CentreFor", in{"sprockets": s, "pitches": 106.0, "method": words(m.String())}, of(drive.CentreFor(s, 106, m)))
	}
	b.add("transmission/drive.FitChain", in{"sprockets": s, "shortest": mm(570), "longest": mm(600)}, of(drive.FitChain(s, mm(570), mm(600), drive.FitOptions{})))
	length := measure.Of(units.Inches(62.5+0.9), mm(0.5))
	b.add("transmission/drive.ChainWear", in{"length": length, "pitches": 100.0, "pitch": units.Inches(0.625)}, of(drive.ChainWear(length, 100, units.Inches(0.625), drive.WearOptions{})))
	pull := drive.PullInput{Pitch: units.Inches(0.625), Teeth: 18, Speed: rpm(2000), Power: units.Kilowatts(13), Strength: units.Kilonewtons(22), MassPerMetre: units.Kilograms(0.95)}
	b.add("transmission/drive.ChainPull", in{"pull": pull}, of(drive.ChainPull(pull)))
	b.add("transmission/drive.WearSharing", in{"pitches": 106.0, "teeth": 18.0}, of(drive.WearSharing(106, 18)))
	b.add("transmission/drive.FormOf", in{"pitch": units.Inches(0.625), "roller": mm(10.16), "teeth": 18.0}, of(drive.FormOf(units.Inches(0.625), mm(10.16), 18)))

	for _, code := range []string{"3.25-19", "3.50-19", "120/90-18", "26x2.5", "3.25/19"} {
		t, err := drive.ParseTyre(code)
		if err != nil {
			b.add("transmission/drive.ParseTyre", in{"text": words(code)}, of(nil, err))
			continue
		}
		b.add("transmission/drive.ParseTyre", in{"text": words(code)}, only(map[string]any{"diameter": t.Diameter(), "rim": t.Rim(), "width": t.Width()}))
		b.add("transmission/drive.Tyre.Rolling", in{"tyre": words(code)}, of(t.Rolling()))
	}
	line := theLine()
	args := func(more in) in {
		more["primary"], more["final"], more["box"], more["rolling"] = line.Primary, line.Final, words("2.92, 1.86, 1.31, 1"), line.Rolling
		return more
	}
	for _, gear := range []string{"1", "4"} {
		b.add("transmission/drive.Line.SpeedAt", args(in{"gear": words(gear), "engine": rpm(4500)}), of(line.SpeedAt(gear, rpm(4500))))
		b.add("transmission/drive.Line.EngineAt", args(in{"gear": words(gear), "road": mph(50)}), of(line.EngineAt(gear, mph(50))))
	}
	road := drive.Road{Mass: measure.Of(units.Kilograms(245), units.Kilograms(5)), DragArea: measure.Of(units.SquareMetres(0.55), units.SquareMetres(0.05)), Rolling: measure.Of(units.Value(0.02), units.Value(0.002)), Efficiency: measure.Of(units.Value(0.88), units.Value(0.03))}
	for _, v := range []float64{30, 60} {
		b.add("transmission/drive.RoadLoad", in{"road": road, "speed": mph(v)}, of(drive.RoadLoad(road, mph(v))))
	}
	power := measure.Of(units.Kilowatts(14), units.Kilowatts(0.7))
	b.loosely(loose, "transmission/drive.TopSpeed", in{"road": road, "power": power}, of(drive.TopSpeed(road, power)))
	b.add("transmission/drive.RollingAt", in{"pressure": units.Bars(1.6), "speed": mph(50)}, of(drive.RollingAt(units.Bars(1.6), mph(50))))
	b.add("transmission/drive.DragAreaFrom", in{"force": newtons(200), "density": units.KilogramsPerCubicMetre(1.225), "speed": mph(55)}, of(drive.DragAreaFrom(newtons(200), units.KilogramsPerCubicMetre(1.225), mph(55))))
	distance := measure.Of(units.Metres(10.2), mm(5))
	b.add("transmission/drive.RollOut", in{"distance": distance, "turns": 5.0}, of(drive.RollOut(distance, 5)))
	b.add("transmission/drive.SpeedometerDrive", in{"rolling": line.Rolling, "turns_a_mile": 1600.0}, of(drive.SpeedometerDrive(line.Rolling, 1600)))
	b.add("transmission/drive.GreatestIndicated", in{"true": mph(50), "allowance": units.KilometresPerHour(4)}, of(drive.GreatestIndicated(mph(50), units.KilometresPerHour(4))))
}

// theLine is the gearing of the invented single.
func theLine() drive.Line {
	box, _ := drive.BoxOf("2.92", "1.86", "1.31", "1")
	return drive.Line{Primary: drive.Train{{Driver: 21, Driven: 44}}, Box: box, Final: drive.Train{{Driver: 18, Driven: 42}}, Rolling: measure.Of(mm(2030), mm(15))}
}
