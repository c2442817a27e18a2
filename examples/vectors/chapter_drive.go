package main

import (
	"example.com/benchbook/transmission/drive"
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

func mph(x float64) units.Speed { return units.MilesPerHour(x) }

func ratio(num, den int64) drive.Ratio {
	r, _ := drive.NewRatio(num, den)
	return r
}

func box(ratios ...string) drive.Box {
	b, _ := drive.BoxOf(ratios...)
	return b
}

// theLine is the gearing of the invented single.
func theLine() drive.Line {
	return drive.Line{Primary: drive.Train{{Driver: 21, Driven: 44}}, Box: box("2.92", "1.86", "1.31", "1"), Final: drive.Train{{Driver: 18, Driven: 42}}, Rolling: measure.Of(mm(2030), mm(15))}
}

func thePower() drive.Curve {
	c, _ := drive.NewCurve(
		drive.PowerPoint{Speed: rpm(2000), Power: units.Kilowatts(5)}, drive.PowerPoint{Speed: rpm(3500), Power: units.Kilowatts(10)},
		drive.PowerPoint{Speed: rpm(5200), Power: units.Kilowatts(14)}, drive.PowerPoint{Speed: rpm(6000), Power: units.Kilowatts(12.5)})
	return c
}

func theRoad() drive.Road {
	return drive.Road{
		Mass: measure.Of(units.Kilograms(245), units.Kilograms(5)), DragArea: measure.Of(units.SquareMetres(0.55), units.SquareMetres(0.05)),
		Rolling: ratioOf(0.02, 0.002), Efficiency: ratioOf(0.88, 0.03),
	}
}

func driveCases(b *book) {
	ratioCases(b)
	chainCases(b)
	tyreCases(b)
	boxCases(b)
	roadCases(b)
}

func ratioCases(b *book) {
	b.ask(drive.ParseRatio, "text", each("46/18", "46:18", "2.42", "1/0", "two"))
	b.ask(drive.NewRatio, "numerator, denominator", []row{{int64(46), int64(18)}, {int64(42), int64(21)}, {int64(1), int64(0)}})
	b.ask(drive.OneToOne, "", []row{{}})
	some := each(ratio(46, 18), ratio(121, 50), ratio(1, 3))
	pairs := cross(some, each(ratio(44, 21), ratio(1, 3)))
	b.ask(drive.Ratio.Times, "ratio, other", append(pairs, row{drive.Ratio{}, ratio(1, 3)}))
	b.ask(drive.Ratio.Over, "ratio, other", append(pairs, row{drive.Ratio{}, ratio(1, 3)}))
	b.ask(drive.Ratio.Compare, "ratio, other", pairs)
	b.ask(drive.Ratio.Inverse, "ratio", some)
	b.ask(drive.Ratio.Float, "ratio", some)
	b.ask(drive.Ratio.Num, "ratio", some)
	b.ask(drive.Ratio.Den, "ratio", some)
	b.ask(drive.Ratio.Given, "ratio", append(some, row{drive.Ratio{}}))
	b.ask(drive.Pair.Ratio, "pair", each(drive.Pair{Driver: 18, Driven: 46}, drive.Pair{Driver: 21, Driven: 42}, drive.Pair{Driver: 0, Driven: 46}))
	b.ask(drive.Train.Ratio, "train", each(drive.Train{{Driver: 22, Driven: 48}, {Driver: 18, Driven: 46}}, drive.Train{{Driver: 21, Driven: 44}}, drive.Train{}, drive.Train{{Driver: 22, Driven: -48}}))
}

func chainCases(b *book) {
	pitch := units.Inches(0.625)
	b.ask(drive.PitchDiameter, "pitch, teeth", cross(each(pitch, mm(12.7)), each(18, 46, 2)))
	b.ask(drive.PitchFor, "diameter, teeth", cross(each(mm(91.4), mm(0)), each(18, 46)))
	sets := each(drive.Sprockets{Pitch: pitch, Front: 18, Rear: 46}, drive.Sprockets{Pitch: units.Inches(0.5), Front: 22, Rear: 44}, drive.Sprockets{Pitch: pitch, Front: 18})
	methods := each(drive.Series, drive.Tangent)
	b.ask(drive.ChainLength, "sprockets, centre, method", cross(sets, each(mm(560), mm(620), mm(50)), methods))
	b.ask(drive.CentreFor, "sprockets, pitches, method", cross(sets, each(106.0, 110.5, 20.0), methods), rel(1e-8))
	b.ask(drive.FitChain, "sprockets, shortest, longest, options", cross(sets, []row{{mm(570), mm(600)}, {mm(583), mm(584)}, {mm(600), mm(570)}}, each(drive.FitOptions{}, drive.FitOptions{Method: drive.Tangent, Odd: true})), rel(1e-8))
	b.ask(drive.ChainWear, "length, pitches, pitch, options", cross(each(measure.Of(units.Inches(62.5), mm(0.5)), measure.Of(units.Inches(63.4), mm(0.5)), measure.Of(units.Inches(65), mm(0.5)), measure.Reading[units.Length]{}), each(100), each(pitch), each(drive.WearOptions{})))
	pull := drive.PullInput{Pitch: pitch, Teeth: 18, Speed: rpm(2000), Power: units.Kilowatts(13), Strength: units.Kilonewtons(22), MassPerMetre: units.Kilograms(0.95)}
	b.ask(drive.ChainPull, "pull", each(pull, drive.PullInput{Number: "10B", Teeth: 18, Speed: rpm(2000), Power: units.Kilowatts(13)}, drive.PullInput{Number: "08B", Pitch: units.Inches(0.5), Teeth: 22, Speed: rpm(2600), Power: units.Kilowatts(14)}, drive.PullInput{Number: "999", Teeth: 18}))
	b.ask(drive.WearSharing, "pitches, teeth", cross(each(106, 108, 107), each(18, 19, 1)))
	b.ask(drive.FormOf, "pitch, roller, teeth", cross(each(pitch), each(mm(10.16), mm(0)), each(18, 46)))
	b.ask(drive.IdentifyChain, "chain", each(
		drive.ChainReadings{Pitch: mmOf(15.96, 0.01), Width: mmOf(9.6, 0.05), Roller: mmOf(10.1, 0.05)}, drive.ChainReadings{Pitch: mmOf(12.75, 0.01), Width: mmOf(7.9, 0.1)},
		drive.ChainReadings{Pitch: mmOf(14, 0.01)}, drive.ChainReadings{}), rel(loose))
}

func tyreCases(b *book) {
	b.ask(drive.ParseTyre, "text", each("3.25-19", "3.50-19", "120/90-18", "26x2.5", "3.25/19", ""), seen(func(t drive.Tyre) any {
		return map[string]any{"diameter": t.Diameter(), "rim": t.Rim(), "width": t.Width(), "kind": t.Kind()}
	}))
	var tyres []row
	for _, code := range []string{"3.25-19", "4.00-18", "120/90-18", "26x2.5"} {
		t, _ := drive.ParseTyre(code)
		tyres = append(tyres, row{t})
	}
	b.ask(drive.Tyre.Rolling, "tyre", tyres)
	b.ask(drive.Tyre.Aspect, "tyre > ratio, marked", tyres)
	b.ask(drive.Tyre.Code, "tyre", tyres)
	b.ask(drive.Tyre.Kind, "tyre", tyres)
	for _, ask := range []func(drive.Tyre) units.Length{drive.Tyre.Diameter, drive.Tyre.Rim, drive.Tyre.Width} {
		b.ask(ask, "tyre", tyres)
	}
	b.ask(drive.Tyre.Equivalents, "tyre, share", cross(tyres[:3], each(0.02, 0.05, 0.5)))
	b.ask(drive.RollOut, "distance, turns", cross(each(measure.Of(units.Metres(10.2), mm(5)), measure.Of(units.Metres(9.9), mm(20)), measure.Reading[units.Length]{}), each(5, 0)))
	rolling := each(measure.Of(mm(2030), mm(15)), measure.Reading[units.Length]{})
	b.ask(drive.SpeedometerDrive, "rolling, turns_a_mile", cross(rolling, each(1600.0, 1000.0)))
	b.ask(drive.ReadSpeedometer, "speedometer", each(
		drive.SpeedometerInput{Rolling: measure.Of(mm(2030), mm(15)), Drive: ratio(19, 10), TurnsAMile: 1600},
		drive.SpeedometerInput{Rolling: measure.Of(mm(2030), mm(15)), Drive: ratio(5, 8), FromGearbox: drive.Train{{Driver: 18, Driven: 42}}, TurnsAKilometre: 1000},
		drive.SpeedometerInput{TurnsAMile: 1600, TurnsAKilometre: 1000}))
	b.ask(drive.GreatestIndicated, "true, allowance", cross(each(mph(50), mph(0), mph(-1)), each(units.KilometresPerHour(4))))
}

func boxCases(b *book) {
	four := theLine().Box
	boxes := each(four, box("1", "1.6", "2.6"))
	b.ask(drive.BoxOf, "ratios", each([]string{"2.92", "1.86", "1.31", "1"}, []string{"1", "2.6", "1.6"}, []string{"1", "1"}, []string{"first"}))
	b.ask(drive.NewBox, "gears", each([]drive.Gear{{Name: "1", Ratio: ratio(5, 2)}, {Name: "2", Ratio: ratio(1, 1)}}, []drive.Gear{{Name: "top", Ratio: ratio(1, 1)}, {Name: "low", Ratio: ratio(13, 4)}, {Name: "middle", Ratio: ratio(3, 2)}}, []drive.Gear{{Name: "low", Ratio: ratio(5, 2)}, {Name: "low", Ratio: ratio(2, 1)}}, []drive.Gear{}))
	shafts := drive.Layshaft{Constant: drive.Pair{Driver: 18, Driven: 30}, Indirect: []drive.Mesh{{Name: "1", Pair: drive.Pair{Driver: 16, Driven: 32}}, {Name: "2", Pair: drive.Pair{Driver: 22, Driven: 26}}}, Direct: "3"}
	b.ask(drive.NewLayshaft, "layshaft", each(shafts, drive.Layshaft{Constant: drive.Pair{Driver: 20, Driven: 28}, Indirect: []drive.Mesh{{Name: "1", Pair: drive.Pair{Driver: 14, Driven: 30}}}}, drive.Layshaft{Constant: drive.Pair{Driver: 18, Driven: 30}}))
	b.ask(drive.Box.Gear, "box, name > gear, known", cross(boxes, each("1", "4")))
	b.ask(drive.Box.Gears, "box", boxes)
	b.ask(drive.Box.Top, "box", boxes)
	count := func(turns ...float64) []measure.Reading[units.Ratio] {
		var out []measure.Reading[units.Ratio]
		for _, x := range turns {
			out = append(out, ratioOf(x, 0.05))
		}
		return out
	}
	sets := []drive.GearSet{{Key: "standard", Box: four}, {Key: "close", Box: box("2.3", "1.6", "1.2", "1")}, {Key: "trials", Box: box("3.5", "2.4", "1.5", "1"), Prior: 0.3}}
	line := theLine()
	b.ask(drive.IdentifyBox, "turns, sets", cross(each(
		drive.TurnReadings{Turns: count(14.3, 9.1, 6.4, 4.9), Primary: line.Primary, Final: line.Final}, drive.TurnReadings{Turns: count(11.2, 7.8, 5.9, 4.9), Primary: line.Primary, Final: line.Final},
		drive.TurnReadings{Turns: count(9, 6, 4), Primary: line.Primary, Final: line.Final}, drive.TurnReadings{}), each(sets)), rel(loose))

	unread := line
	unread.Rolling = measure.Reading[units.Length]{}
	lines := each(line, unread, drive.Line{Primary: drive.Train{{Driver: 21}}, Box: four})
	b.ask(drive.Line.SpeedAt, "line, gear, engine", cross(lines, each("1", "4", "5"), each(rpm(4500))))
	b.ask(drive.Line.EngineAt, "line, gear, road", cross(lines, each("1", "4", "5"), each(mph(50))))
	b.ask(drive.Line.Overall, "line, gear", cross(lines, each("1", "4", "5")))
	b.ask(drive.Line.Table, "line, options", cross(lines, each(drive.TableOptions{}, drive.TableOptions{ChangeAt: rpm(5200), At: mph(50)})))
	b.ask(drive.Line.Sawtooth, "line, change_at", cross(lines, each(rpm(5200), rpm(4500), rpm(0))), seen(drawn))
}

// drawn is a line of a drawing: its middle point.
func drawn(t drive.Trace) any {
	x, y := t.XY(t.Len() / 2)
	return map[string]any{"points": t.Len(), "middle": map[string]any{"x": x, "y": y}}
}

func roadCases(b *book) {
	line, road, curve := theLine(), theRoad(), thePower()
	hill := road
	hill.Climb, hill.Headwind, hill.Sidecar = 0.05, mph(10), true
	roads := each(road, hill, drive.Road{})
	b.ask(drive.RoadLoad, "road, speed", cross(roads, each(mph(30), mph(60), mph(-1))))
	power := each(measure.Of(units.Kilowatts(14), units.Kilowatts(0.7)), measure.Of(units.Kilowatts(3), units.Kilowatts(0.2)), measure.Reading[units.Power]{})
	b.ask(drive.TopSpeed, "road, power", cross(roads, power), rel(loose))
	b.ask(drive.RollingAt, "pressure, speed", cross(each(units.Bars(1.6), units.Bars(0)), each(mph(0), mph(50), mph(90))))
	b.ask(drive.DragAreaFrom, "force, density, speed", cross(each(newtons(200), newtons(120)), each(units.KilogramsPerCubicMetre(1.225)), each(mph(55), mph(0))))
	b.ask(drive.NewCurve, "points", each(curve.Points(), curve.Points()[:2], curve.Points()[:1], []drive.PowerPoint{}))
	weak, _ := drive.NewCurve(curve.Points()[:2]...)
	curves := each(curve, weak)
	b.ask(drive.Curve.At, "curve, speed > power, reached", cross(curves, each(rpm(2000), rpm(4300), rpm(9000))))
	b.ask(drive.Curve.Peak, "curve", curves)
	b.ask(drive.Curve.Points, "curve", curves)
	b.ask(drive.InGears, "line, curve, road", cross(each(line, drive.Line{}), curves, roads[:2]), rel(loose))
	b.ask(drive.Thrusts, "line, curve, road, steps", cross(each(line), curves, roads[:2], each(5, 1)), seen(func(t []drive.Trace) any {
		var out []any
		for _, x := range t {
			out = append(out, drawn(x))
		}
		return map[string]any{"lines": out}
	}), rel(loose))
	choice := drive.SprocketChoice{FrontLeast: 16, FrontMost: 20, RearLeast: 40, RearMost: 48}
	b.ask(drive.SprocketOptions, "wanted, rest, choice", cross(each(4.9, 5.8, 0.0), each(ratio(44, 21)), each(choice, drive.SprocketChoice{FrontLeast: 18, RearLeast: 42}, drive.SprocketChoice{FrontLeast: 20, FrontMost: 16, RearLeast: 42})))
	in1 := drive.SuitInput{Line: line, Gear: "4", Peak: measure.Of(units.Kilowatts(14), units.Kilowatts(0.7)), PeakAt: rpm(5200), Road: road, Choice: choice}
	car := in1
	car.Road.Mass, car.Road.DragArea, car.Road.Sidecar = measure.Of(units.Kilograms(390), units.Kilograms(10)), measure.Of(units.SquareMetres(0.95), units.SquareMetres(0.1)), true
	wrong := in1
	wrong.Gear, wrong.PeakAt = "7", rpm(0)
	b.ask(drive.Suit, "input, options", cross(each(in1, car, wrong), each(drive.SuitOptions{}, drive.SuitOptions{Taller: 0.05, Most: 2})), rel(loose))
	b.ask(drive.Compare, "solo, sidecar", []row{{drive.Suited{Aim: 4.9, Fastest: ratioOf(4.9, 0.1)}, drive.Suited{Aim: 5.8, Fastest: ratioOf(5.8, 0.1)}}, {drive.Suited{Aim: 4.9, Fastest: ratioOf(4.9, 0.1)}, drive.Suited{Aim: 5.1, Fastest: ratioOf(5.1, 0.1)}}, {drive.Suited{}, drive.Suited{}}})
	away := drive.PullAway{Torque: newtonMetres(28), Mass: units.Kilograms(245), Resistance: newtons(60), Radius: mm(323), Efficiency: 0.88, WheelsKilogramSquareMetres: 2, EngineKilogramSquareMetres: 0.06}
	laden := away
	laden.Mass, laden.Resistance = units.Kilograms(400), newtons(200)
	b.ask(drive.PullAway.Pull, "pull, overall", cross(each(away, laden, drive.PullAway{}), each(14.3, 5.0, 0.0)))
	b.ask(drive.BestPull, "pull", each(away, laden, drive.PullAway{}))
	run := func(from, to, seconds, u float64) drive.Coast {
		return drive.Coast{From: mph(from), To: mph(to), Time: measure.Of(units.Seconds(seconds), units.Seconds(u))}
	}
	runs := drive.CoastInput{Mass: road.Mass, Runs: []drive.Coast{run(50, 40, 6.2, 0.2), run(40, 30, 8.6, 0.2), run(30, 20, 12.2, 0.3)}}
	b.ask(drive.CoastDown, "coast, options", cross(each(runs, drive.CoastInput{Mass: road.Mass, Runs: runs.Runs[:2]}, drive.CoastInput{Mass: road.Mass, Runs: []drive.Coast{run(50, 40, 12, 0.2), run(40, 30, 8.6, 0.2), run(30, 20, 5, 0.2)}}, drive.CoastInput{Mass: road.Mass, Runs: []drive.Coast{run(20, 30, 5, 0.1)}}), each(drive.CoastOptions{}, drive.CoastOptions{Turning: 0.1})), rel(1e-4), keep("drag_area", "rolling", "freedom", "reason"))
}
