package main

import (
	"example.com/benchbook/timing/gear"
	"example.com/benchbook/timing/ignition"
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

func disc(text string) measure.Position {
	return measure.MustReadPosition(text, measure.DegreeDisc())
}

func rad(x, u float64) measure.Reading[units.Angle] { return measure.Of(angle(x), angle(u)) }

// magneto is what was asked about an ignition, with the wheels that drive it.
type magneto struct {
	ignition.Input
	Train gear.Train `json:"train"`
}

func (m magneto) make() (any, error) {
	m.Spec.Train = m.Train
	return m.Input, nil
}

func ignitionCases(b *book) {
	drives := each(ignition.HalfSpeed(), ignition.EngineSpeed(), ignition.Drive{Ratio: gear.NewRational(1, 2), Sparks: 2}, ignition.Drive{Ratio: gear.NewRational(-1, 2), Sparks: -1})
	sound := drives[:3]
	full := units.Before(units.TDC, crankDeg(37))
	b.ask(ignition.HalfSpeed, "", []row{{}})
	b.ask(ignition.EngineSpeed, "", []row{{}})
	b.ask(ignition.Drive.Err, "drive", drives)
	b.ask(ignition.Drive.AtCrank, "drive, shaft", cross(sound, each(angle(15), angle(-2.5))))
	b.ask(ignition.Drive.AtShaft, "drive, crank", cross(sound, each(crankDeg(30), crankDeg(-4))))
	b.ask(ignition.Drive.HalfTurn, "drive", drives)
	b.ask(ignition.Drive.Period, "drive", sound)
	b.ask(ignition.Drive.Retarded, "drive, full, shaft_range", cross(drives, each(full), each(angle(15), angle(0))))
	b.ask(ignition.DriveOf, "train", each(gear.Simple(24, 48), gear.Simple(24, 31, 24), gear.Simple(24, 47), gear.Simple(18, 36).ThenChain(15, 15)))
	gap := ignition.GapRate{LowDegreesPerMM: 20, HighDegreesPerMM: 30}
	b.ask(ignition.GapShift, "from, to, rate, drive", cross([]row{{mm(0.3), mm(0.35)}, {mm(0.4), mm(0.3)}, {mm(-0.3), mm(0.3)}}, each(gap, ignition.GapRate{}), sound[:2]))

	gauges := each(ignition.Gauges{Slider: slider(), RimDiameter: mmOf(200, 0.5)}, ignition.Gauges{Slider: slider()})
	places := each(ignition.Where{Travel: mmOf(6, 0.1)}, ignition.Where{Travel: mmOf(9.5, 0.1)}, ignition.Where{Travel: mmOf(12.7, 0.1)}, ignition.Where{At: disc("37 BTDC ± 1")}, ignition.Where{Rim: mmOf(60, 1)}, ignition.Where{Travel: mmOf(90, 0.1)}, ignition.Where{})
	b.ask(ignition.Where.Locate, "where, gauges", cross(places, gauges))
	b.ask(ignition.Where.Taken, "where", places[3:])
	b.ask(ignition.ReadWhere, "text", each("38 BTDC ± 1°", "11 mm", "7/16 in before TDC", "60 mm on the rim", "", "early"))
	b.ask(ignition.TravelAt, "at, slider", cross(each(measure.At(at(-30), crankDeg(1)), measure.At(at(-37), crankDeg(1)), measure.At(at(0), crankDeg(1))), each(slider())))
	b.ask(ignition.OnRim, "by, diameter", cross(each(crankDeg(5), crankDeg(-37)), each(mm(200), mm(0))))
	b.ask(ignition.Turned, "in, speed", cross(each(units.Milliseconds(1), units.Milliseconds(0.4)), each(rpm(4000), rpm(0), rpm(-4000))))
	b.ask(ignition.SparkFor, "burning, delay, speed", cross(each(at(-10), at(-4)), each(units.Milliseconds(1)), each(rpm(1500), rpm(4000))))
	b.ask(ignition.BurnEnd, "spark, delay, distance, flame, speed", cross([]row{{at(-37), crankDeg(10), mm(60), units.MetresPerSecond(25)}, {at(-37), crankDeg(0), mm(60), units.MetresPerSecond(20)}, {at(-37), crankDeg(10), mm(60), units.MetresPerSecond(0)}}, each(rpm(4000))))

	spec := ignition.Spec{Full: ignition.Where{At: disc("37 BTDC ± 1")}, Range: rad(15, 1)}
	travel := ignition.Spec{Full: ignition.Where{Travel: mmOf(11, 0.1)}, Gauges: ignition.Gauges{Slider: slider()}, Gap: mmOf(0.3, 0.02)}
	var asks []row
	for _, read := range []string{"36 BTDC", "30 BTDC", "52 BTDC", "5 ATDC"} {
		asks = append(asks, row{magneto{ignition.Input{Spec: spec, Read: ignition.Readings{Advanced: ignition.Where{At: disc(read)}, Stroke: ignition.Compression, TDCByStop: true}}, gear.Simple(24, 48)}})
	}
	asks = append(asks,
		row{magneto{ignition.Input{Spec: travel, Read: ignition.Readings{Advanced: ignition.Where{Travel: mmOf(8, 0.1)}, Gap: mmOf(0.5, 0.02)}}, gear.Train{}}},
		row{magneto{ignition.Input{Spec: spec, Read: ignition.Readings{Advanced: ignition.Where{At: disc("37 BTDC")}, Retarded: ignition.Where{At: disc("20 BTDC")}, Stroke: ignition.Overlap}}, gear.Train{}}},
		row{magneto{ignition.Input{Spec: spec, Read: ignition.Readings{Advanced: ignition.Where{At: disc("37 BTDC")}}}, gear.Simple(24, 47)}},
		row{magneto{}})
	for i := range asks {
		asks[i] = append(asks[i], ignition.Options{})
	}
	asks = append(asks, row{magneto{ignition.Input{Spec: spec, Read: ignition.Readings{Advanced: ignition.Where{At: disc("30 BTDC")}}}, gear.Train{}}, ignition.Options{Setting: crankDeg(3), TDCError: crankDeg(0.2)}})
	b.ask(ignition.Diagnose, "input, options", asks, rel(loose))
}
