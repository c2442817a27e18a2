package main

import (
	"example.com/benchbook/timing/gear"
	"example.com/benchbook/timing/ignition"
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

func ignitionCases(b *book) {
	for _, d := range []struct {
		name  string
		drive ignition.Drive
	}{{"half speed", ignition.HalfSpeed()}, {"engine speed", ignition.EngineSpeed()}} {
		b.add("timing/ignition.Drive.AtCrank", in{"drive": words(d.name), "shaft": units.Degrees(15)}, only(d.drive.AtCrank(units.Degrees(15))))
		b.add("timing/ignition.Drive.AtShaft", in{"drive": words(d.name), "crank": units.CrankDegrees(30)}, only(d.drive.AtShaft(units.CrankDegrees(30))))
		b.add("timing/ignition.Drive.HalfTurn", in{"drive": words(d.name)}, of(d.drive.HalfTurn()))
		b.add("timing/ignition.Drive.Period", in{"drive": words(d.name)}, only(d.drive.Period()))
		full := units.Before(units.TDC, units.CrankDegrees(37))
		b.add("timing/ignition.Drive.Retarded", in{"drive": words(d.name), "full": full, "shaft_range": units.Degrees(15)}, of(d.drive.Retarded(full, units.Degrees(15))))
		b.add("timing/ignition.GapShift", in{"drive": words(d.name), "from": mm(0.3), "to": mm(0.35), "rate": ignition.GapRate{LowDegreesPerMM: 20, HighDegreesPerMM: 30}}, of(ignition.GapShift(mm(0.3), mm(0.35), ignition.GapRate{LowDegreesPerMM: 20, HighDegreesPerMM: 30}, d.drive)))
	}
	drive, err := ignition.DriveOf(gear.Simple(24, 48))
	b.add("timing/ignition.DriveOf", in{"train": gear.Simple(24, 48)}, of(map[string]any{"period": drive.Period()}, err))
	for _, travel := range []float64{6, 9.5, 12.7} {
		w := ignition.Where{Travel: measure.Of(mm(travel), mm(0.1))}
		g := ignition.Gauges{Slider: slider()}
		b.add("timing/ignition.Where.Locate", in{"travel": w.Travel, "slider": slider()}, of(w.Locate(g)))
	}
	for _, deg := range []float64{-30, -37} {
		p := measure.At(at(deg), units.CrankDegrees(1))
		b.add("timing/ignition.TravelAt", in{"at": p, "slider": slider()}, of(ignition.TravelAt(p, slider())))
	}
	b.add("timing/ignition.OnRim", in{"by": units.CrankDegrees(5), "diameter": mm(200)}, of(ignition.OnRim(units.CrankDegrees(5), mm(200))))
	b.add("timing/ignition.Turned", in{"in": units.Milliseconds(1), "speed": rpm(4000)}, of(ignition.Turned(units.Milliseconds(1), rpm(4000))))
	b.add("timing/ignition.SparkFor", in{"burning": at(-10), "delay": units.Milliseconds(1), "speed": rpm(4000)}, of(ignition.SparkFor(at(-10), units.Milliseconds(1), rpm(4000))))
	for _, read := range []string{"36 BTDC", "30 BTDC", "52 BTDC"} {
		in1 := ignition.Input{
			Spec: ignition.Spec{Full: ignition.Where{At: measure.MustReadPosition("37 BTDC ± 1", measure.DegreeDisc())}, Range: measure.Of(units.Degrees(15), units.Degrees(1)), Train: gear.Simple(24, 48)},
			Read: ignition.Readings{Advanced: ignition.Where{At: measure.MustReadPosition(read, measure.DegreeDisc())}, Stroke: ignition.Compression, TDCByStop: true},
		}
		r, err := ignition.Diagnose(in1, ignition.Options{})
		b.loosely(loose, "timing/ignition.Diagnose", in{"input": in1, "train": gear.Simple(24, 48)}, of(leaders{r.Causes}, err))
	}
}

// leaders is of a verdict what another program can compare: the ranking.
type leaders struct {
	Causes measure.Ranking `json:"causes"`
}
