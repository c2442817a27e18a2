package main

import (
	"example.com/benchbook/carburation"
	"example.com/benchbook/refdata"
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

func mm2(x float64) units.Area        { return units.SquareMillimetres(x) }
func density(x float64) units.Density { return units.KilogramsPerCubicMetre(x) }
func kpa(x float64) units.Pressure    { return units.Kilopascals(x) }
func gps(x float64) units.MassFlow    { return units.GramsPerSecond(x) }
func mps(x float64) units.Speed       { return units.MetresPerSecond(x) }
func one(x float64) units.Ratio       { return units.Value(x) }

// The things that a jet is part of. A jet is told as it is written on it, with
// the head it was flowed under.
type (
	jet   string
	setup struct {
		carburation.Setup
		MainJet  jet `json:"main_jet"`
		PilotJet jet `json:"pilot_jet"`
	}
	model struct {
		Setup   setup               `json:"setup"`
		Options carburation.Options `json:"options"`
	}
	grid struct {
		Model  model                   `json:"model"`
		Lifts  []units.Ratio           `json:"lifts"`
		Speeds []units.RotationalSpeed `json:"speeds"`
	}
	beginning struct {
		carburation.Input
		MainJet  jet `json:"main_jet"`
		PilotJet jet `json:"pilot_jet"`
	}
	changed struct {
		carburation.Change
		MainJet jet `json:"main_jet"`
	}
	advising struct {
		Priors map[string]float64 `json:"priors"`
		Model  *model             `json:"model"`
	}
	wanting struct {
		Model   model               `json:"model"`
		Targets carburation.Targets `json:"targets"`
	}
)

func (j jet) make() (any, error) { return carburation.ReadJet(string(j)) }

func (s setup) make() (any, error) {
	main, err := carburation.ReadJet(string(s.MainJet))
	if err != nil {
		return nil, err
	}
	s.Carburettor.MainJet = main
	s.Carburettor.PilotJet, err = carburation.ReadJet(string(s.PilotJet))
	return s.Setup, err
}

func (m model) build() (carburation.Model, error) {
	s, err := m.Setup.make()
	if err != nil {
		return carburation.Model{}, err
	}
	return carburation.NewModel(s.(carburation.Setup), m.Options)
}

func (m model) make() (any, error) { return m.build() }

func (g grid) make() (any, error) {
	m, err := g.Model.build()
	if err != nil {
		return nil, err
	}
	return m.Map(g.Lifts, g.Speeds)
}

func (b beginning) make() (any, error) {
	main, err := carburation.ReadJet(string(b.MainJet))
	if err != nil {
		return nil, err
	}
	b.Fitted.MainJet = main
	b.Fitted.PilotJet, err = carburation.ReadJet(string(b.PilotJet))
	return b.Input, err
}

func (c changed) make() (any, error) {
	main, err := carburation.ReadJet(string(c.MainJet))
	c.Change.MainJet = main
	return c.Change, err
}

func (a advising) make() (any, error) {
	opt := carburation.AdviseOptions{Priors: a.Priors}
	if a.Model == nil {
		return opt, nil
	}
	m, err := a.Model.build()
	opt.Model = &m
	return opt, err
}

func (w wanting) make() (any, error) {
	m, err := w.Model.build()
	if err != nil {
		return nil, err
	}
	return m.Settings(w.Targets)
}

// carburettor is an invented one on the invented single.
func carburettor() setup {
	return setup{
		Setup: carburation.Setup{
			Engine: carburation.Engine{Displacement: measure.Of(units.CubicCentimetres(397), units.CubicCentimetres(1))},
			Carburettor: carburation.Carburettor{
				Bore: mmOf(27, 0.02), Cutaway: mmOf(5.5, 0.05), NeedleJet: mmOf(2.7, 0.005),
				Needle: carburation.Needle{Diameter: mmOf(2.57, 0.005), TaperFrom: mmOf(6, 0.3), Taper: rad(2.4, 0.05), Groove: carburation.Groove{FromTop: 3, Of: 5}},
				Screw:  carburation.Screw{Kind: carburation.AirScrew},
			},
		},
		MainJet: "170 cc/min at 0.775 m", PilotJet: "25 cc/min at 0.775 m",
	}
}

func carburationCases(b *book) {
	chokeCases(b)
	jetCases(b)
	plainCases(b)
	modelCases(b)
	startCases(b)
}

func chokeCases(b *book) {
	b.ask(carburation.CircleArea, "diameter", each(mm(1.1), mm(27)))
	b.ask(carburation.CircleDiameter, "area", each(mm2(573), mm2(0.95), mm2(-1)))
	b.ask(carburation.ChokeDiameter, "area, tube_share", cross(each(mm2(573)), each(0.0, 0.4, 1.0)))
	b.ask(carburation.CutawayOf, "number, scale", cross(each(3.0, 3.5, -1.0), each(carburation.Sixteenths, carburation.HalfMillimetres, carburation.TenthMillimetres)))
	chokes := each(carburation.Choke{Area: mm2(600), Coefficient: one(0.85), Pressure: units.Bars(1.013), Temperature: units.Celsius(15)},
		carburation.Choke{Area: mm2(450), Coefficient: one(0.8), Pressure: units.Bars(0.9), Temperature: units.Celsius(30), Gas: carburation.Gas{RJoulesPerKilogramKelvin: 287, Gamma: 1.4, CpJoulesPerKilogramKelvin: 1005}})
	b.ask(carburation.Choke.At, "choke, throat", cross(chokes, each(units.Bars(0.85), units.Bars(0.4), units.Bars(1.2))))
	b.ask(carburation.Choke.For, "choke, flow", cross(chokes, each(gps(20), gps(40), gps(4000))), rel(1e-8))
	b.ask(carburation.Choke.Size, "choke, flow, speed, on", cross(chokes, each(gps(40)), each(mps(90), mps(2000)), each(carburation.OnArea, carburation.OnVelocity)))
	gases := each(carburation.Gas{}, carburation.Gas{RJoulesPerKilogramKelvin: 287, Gamma: 1.4, CpJoulesPerKilogramKelvin: 1005}, carburation.Gas{Gamma: 0.5})
	b.ask(carburation.Gas.ChokeConstant, "gas", gases)
	b.ask(carburation.Gas.CriticalRatio, "gas", gases)
	intakes := each(carburation.Intake{Swept: units.CubicCentimetres(397), Speed: rpm(5300), Efficiency: one(0.85), Air: density(1.2)},
		carburation.Intake{Swept: units.CubicCentimetres(249), Speed: rpm(6000), Efficiency: one(0.8), Air: density(1.1), Vapour: density(3.5), Mixture: one(13)}, carburation.Intake{})
	b.ask(carburation.Intake.Flow, "intake", intakes)
	b.ask(carburation.Intake.EfficiencyFrom, "intake, air", cross(intakes, each(gps(16.5), gps(8))))
	b.ask(carburation.Suction, "flow, density, area, coefficient", cross(each(gps(17), gps(8)), each(density(1.2)), each(mm2(570), mm2(0)), each(one(0.85))))
	b.ask(carburation.SuctionAtSpeed, "speed, density, coefficient", cross(each(mps(58), mps(80)), each(density(1.28)), each(one(0.84), one(0))))
	b.ask(carburation.ChokeArea, "flow, density, suction, coefficient", cross(each(gps(17), gps(8)), each(density(1.2)), each(kpa(2.5), kpa(0)), each(one(0.85))))
	b.ask(carburation.AirSpeed, "flow, density, area", cross(each(gps(17), gps(8)), each(density(1.2)), each(mm2(570), mm2(0))))
	b.ask(carburation.Expansibility, "beta, r, gamma", []row{{0.6, 0.98, 1.4}, {0.7, 0.9, 1.4}, {0.6, 1.2, 1.4}})
}

func jetCases(b *book) {
	marks := each(jet("130 cc/min at 0.5 m"), jet("1.10 mm"), jet("bore 110"), jet("drill 57"), jet("170 cc/min"), jet("280"))
	b.ask(carburation.ReadJet, "text", each("130 cc/min at 0.5 m", "1.10 mm", "bore 110", "drill 57", "", "280", "drill 3"))
	b.ask(carburation.Jet.Size, "jet, options", cross(marks, each(carburation.JetOptions{Head: measure.Exact(units.Metres(0.5))}, carburation.JetOptions{LengthOverBore: 2, Spread: one(0.03)})), rel(loose))
	b.ask(carburation.Jet.Bore, "jet", marks)
	b.ask(carburation.Jet.Flow, "jet", marks)
	b.ask(carburation.Jet.Effective, "jet", marks)
	b.ask(carburation.Jet.Taken, "jet", each(jet("1.10 mm"), jet("")))
	b.ask(carburation.Jet.Err, "jet", each(jet("1.10 mm"), jet("9 mm")))
	b.ask(carburation.BoreJet, "bore", each(mmOf(1.1, 0.01), mmOf(0.45, 0.01)))
	flow := func(x, u float64) measure.Reading[units.VolumeFlow] {
		return measure.Of(units.CubicCentimetresPerMinute(x), units.CubicCentimetresPerMinute(u))
	}
	heads := each(measure.Of(units.Metres(0.5), mm(5)), measure.Reading[units.Length]{})
	sized := seen(func(j carburation.Jet) any {
		size, _ := j.Size(carburation.JetOptions{})
		return map[string]any{"jet": j, "effective": size.Effective}
	})
	b.ask(carburation.FlowJet, "flow, head", cross(each(flow(130, 2), flow(170, 4)), heads), sized, rel(loose))
	areas := each(measure.Of(mm2(0.72), mm2(0.01)), measure.Of(mm2(1.1), mm2(0.02)), measure.Reading[units.Area]{})
	b.ask(carburation.TimedJet, "effective", append(areas[:1:1], row{measure.Of(mm2(0.95), mm2(0.01))}))
	b.ask(carburation.FlowAt, "effective, head", cross(areas, heads))
	b.ask(carburation.LambdaSensor, "", []row{{}})
	tube := carburation.FallingHead{Vessel: mm2(500), From: mmOf(500, 1), To: mmOf(300, 1), Time: measure.Of(units.Seconds(24), units.Seconds(0.3))}
	up := tube
	up.To = mmOf(600, 1)
	b.ask(carburation.FallingHead.Effective, "tube", each(tube, up, carburation.FallingHead{}), rel(1e-8))
	b.ask(carburation.EmptyingTime, "vessel, hole, coefficient, from, to", []row{{mm2(500), mm2(0.95), one(0.75), mm(500), mm(300)}, {mm2(500), mm2(0.95), one(0.75), mm(500), mm(0)}, {mm2(500), mm2(0.95), one(0.75), mm(300), mm(500)}})
	b.ask(carburation.ParallelBore, "reynolds, length_over_bore", cross(each(500.0, 4900.0, -1.0), each(3.0, 1.0)))
	b.ask(carburation.Reynolds, "flow, bore, viscosity", cross(each(units.CubicCentimetresPerMinute(139)), each(mm(1.09), mm(0.4), mm(0)), each(units.SquareMillimetresPerSecond(0.55), units.SquareMillimetresPerSecond(1))))
	b.ask(carburation.Groove.Taken, "groove", each(carburation.Groove{FromTop: 3, Of: 5}, carburation.Groove{}))
	band := carburation.Band[units.Ratio]{Low: one(0.8), Middle: one(0.87), High: one(0.95)}
	b.ask(carburation.Band[units.Ratio].Holds, "band, value", cross(each(band), each(one(0.9), one(1))))
	b.ask(carburation.Band[units.Ratio].Given, "band", each(band, carburation.Band[units.Ratio]{}))
}

func plainCases(b *book) {
	fuel := each(density(745), density(0))
	jets := each(carburation.Orifice{Area: mm2(0.95), Coefficient: one(0.75), Lip: mm(5)}, carburation.Orifice{Area: mm2(1.2), Coefficient: one(0.65)}, carburation.Orifice{Area: mm2(-1), Coefficient: one(2)})
	b.ask(carburation.Orifice.Flow, "jet, suction, fuel", cross(jets, each(kpa(2.5), kpa(0.01)), fuel))
	b.ask(carburation.Orifice.Suction, "jet, flow, fuel", cross(jets, each(gps(1.3)), fuel))
	b.ask(carburation.Orifice.Size, "jet, flow, suction, fuel", cross(jets, each(gps(1.3)), each(kpa(2.5), kpa(0.01)), fuel))
	b.ask(carburation.Orifice.LipPressure, "jet, fuel", cross(jets, fuel))
	b.ask(carburation.Orifice.StartingSpeed, "jet, fuel, air, coefficient", cross(jets, fuel, each(density(1.2)), each(one(1))))
	plain := carburation.PlainJet{ChokeArea: mm2(570), ChokeCoefficient: one(0.85), Jet: jets[0][0].(carburation.Orifice), Air: density(1.2), Fuel: density(745)}
	wide := plain
	wide.ChokeArea, wide.Expansibility = mm2(700), 0.98
	plains := each(plain, wide, carburation.PlainJet{})
	b.ask(carburation.PlainJet.Mixture, "carburettor, suction", cross(plains, each(kpa(0.02), kpa(0.5), kpa(2.5), kpa(6))))
	b.ask(carburation.PlainJet.JetOverChoke, "carburettor, mixture", cross(plains, each(one(13), one(15), one(0))))
	b.ask(carburation.CleanerMixture, "mixture, suction, drop", cross(each(one(13)), each(kpa(2.5), kpa(0)), each(kpa(0.3), kpa(1))))
	b.ask(carburation.LevelEffect, "suction, fuel, lip, rise", cross(each(kpa(2.5), kpa(0.5)), each(density(745)), each(mm(6)), each(mm(2), mm(-2), mm(400))))
	b.ask(carburation.Float.LevelShift, "float, from, to", cross(each(carburation.Float{Area: mm2(900), Submerged: units.CubicCentimetres(8)}, carburation.Float{}), []row{{density(745), density(790)}, {density(745), density(720)}}))
	e := carburation.Emulsion{Jet: mm2(0.8), Bleed: mm2(0.3), Outlet: mm2(2.5), Head: mm(15), Rise: mm(5), Air: density(1.2), Fuel: density(745), Ambient: units.Bars(1.013)}
	closed := e
	closed.Bleed = mm2(0)
	b.ask(carburation.Emulsion.Draw, "emulsion, suction", cross(each(e, closed, carburation.Emulsion{}), each(kpa(1), kpa(3), kpa(8))), rel(loose))
	feeds := each(
		carburation.Feed{Need: units.CubicCentimetresPerMinute(120), Timed: measure.Of(units.CubicCentimetresPerMinute(300), units.CubicCentimetresPerMinute(10))},
		carburation.Feed{Need: units.CubicCentimetresPerMinute(120), Head: mmOf(150, 10), Tap: mmOf(4, 0.1), Seat: mmOf(1.2, 0.05)},
		carburation.Feed{Need: units.CubicCentimetresPerMinute(120), Head: mmOf(150, 10)},
		carburation.Feed{Need: units.CubicCentimetresPerMinute(-1)})
	b.ask(carburation.FuelFeed, "feed", feeds, rel(loose))
}

func modelCases(b *book) {
	usual := carburettor()
	hill := usual
	hill.Surroundings = carburation.Surroundings{Pressure: measure.Of(units.Hectopascals(900), units.Hectopascals(2)), Temperature: measure.Of(units.Celsius(12), units.Kelvins(1)), Fuel: "petrol E5"}
	rich := usual
	rich.MainJet, rich.Carburettor.Needle.Groove.FromTop = "230 cc/min at 0.775 m", 5
	thick := usual
	thick.Carburettor.Needle.Diameter = mmOf(3, 0.005)
	starved := usual
	starved.Carburettor.NeedleJet, starved.Carburettor.Needle.Taper = mmOf(2.62, 0.005), rad(0.4, 0.05)
	unread := usual
	unread.PilotJet = ""
	bare := setup{MainJet: "170 cc/min"}
	models := each(model{Setup: usual}, model{Setup: hill}, model{Setup: rich})
	built := []manner{rel(1e-5)}
	with := func(more ...manner) []manner { return append(built[:len(built):len(built)], more...) }
	b.ask(carburation.NewModel, "setup, options", cross(each(usual, hill, thick, bare), each(carburation.Options{}, carburation.Options{Head: measure.Of(units.Metres(0.6), mm(20))})), with(seen(func(m carburation.Model) any {
		at, _ := m.At(one(1), rpm(5300))
		return map[string]any{"at_full_lift_and_5300_rev_min": map[string]any{"lambda": at.Lambda, "air": at.Air, "main_fuel": at.MainFuel}}
	}))...)
	b.ask((*carburation.Model).At, "model, lift, speed", cross(models, []row{{one(0), rpm(1000)}, {one(0.125), rpm(2500)}, {one(0.25), rpm(4500)}, {one(0.5), rpm(4500)}, {one(1), rpm(5300)}, {one(2), rpm(-1)}}), built...)
	lifts, speeds := []units.Ratio{one(0.25), one(1)}, []units.RotationalSpeed{rpm(3000), rpm(5300)}
	b.ask((*carburation.Model).Map, "model, lifts, speeds", []row{{models[0][0], lifts, speeds}, {models[1][0], lifts[1:], speeds}, {models[0][0], []units.Ratio{one(-1)}, speeds}}, built...)
	b.ask((*carburation.Model).Bands, "model, map", []row{{models[0][0], grid{model{Setup: usual}, lifts, speeds}}, {models[1][0], grid{model{Setup: hill}, lifts[1:], speeds}}, {models[0][0], carburation.Map{Lifts: []units.Ratio{one(-1)}, Speeds: speeds}}}, built...)
	b.ask(carburation.Map.Point, "map, lift_index, speed_index", cross(each(grid{model{Setup: usual}, lifts, speeds}), []row{{0, 1}, {1, 0}, {2, 2}}), with(keep("lift", "speed", "lambda", "air"))...)
	b.ask((*carburation.Model).Explain, "model, lift, speed", cross(models[:2], []row{{one(0.25), rpm(4000)}, {one(1), rpm(5300)}, {one(2), rpm(4000)}}), with(keep("lambda", "lambda_band", "relative_u", "sensitivities"))...)
	b.ask((*carburation.Model).Settings, "model, targets", cross(append(models, row{model{Setup: starved}}, row{model{Setup: unread}}), each(carburation.Targets{}, carburation.Targets{Full: carburation.Target{Lambda: one(0.9)}}, carburation.Targets{Full: carburation.Target{Lambda: one(0.61)}, Middle: carburation.Target{Lambda: one(0.61)}, PickUp: carburation.Target{Lambda: one(1.3)}, TickOver: carburation.Target{Lambda: one(1.3)}}, carburation.Targets{Full: carburation.Target{Lambda: one(3)}})), with(rel(1e-3), keep("main_jet.before", "main_jet.flow_factor.middle", "main_jet.not_reached", "cutaway.before", "cutaway.nearest", "cutaway.not_reached", "needle.before", "needle.raise", "needle.groove", "needle.not_reached", "pilot_jet.before", "pilot_jet.flow_factor.middle", "pilot_jet.not_reached"))...)
	b.ask(carburation.Settings.Model, "settings", each(wanting{Model: model{Setup: usual}}, wanting{Model: model{Setup: rich}}), with(rel(1e-3), seen(func(m carburation.Model) any {
		at, _ := m.At(one(1), rpm(5300))
		return map[string]any{"lambda_at_full_lift_and_5300_rev_min": at.Lambda}
	}))...)
	b.ask(carburation.Model.Setup, "model", models[:2], built...)
	b.ask(carburation.Model.Basis, "model", models[:2], with(seen(func(r refdata.Basis) any {
		return map[string]any{"cautions_named": len(r.Cautions), "not_checked": len(r.NotChecked), "assumed": len(r.Assumed)}
	}))...)
	lambda := func(lift, speed, x float64) carburation.LambdaReading {
		return carburation.LambdaReading{Lift: one(lift), Speed: rpm(speed), Lambda: ratioOf(x, 0.02)}
	}
	b.ask((*carburation.Model).Calibrate, "model, readings > model, calibration", []row{
		{models[0][0], []carburation.LambdaReading{lambda(1, 5000, 0.82)}}, {models[0][0], []carburation.LambdaReading{lambda(1, 5000, 0.9), lambda(0.5, 4000, 1), lambda(0.25, 3000, 0.95)}},
		{models[0][0], []carburation.LambdaReading{}}, {models[0][0], []carburation.LambdaReading{lambda(1, 5000, 9)}}},
		with(rel(1e-3), seen(func(m carburation.Model) any {
			at, _ := m.At(one(1), rpm(5000))
			return map[string]any{"lambda_at_full_lift_and_5000_rev_min": at.Lambda}
		}), keep("model", "calibration.readings", "calibration.doubt"))...)
}

func startCases(b *book) {
	usual := carburettor()
	engine := carburation.Input{Engine: usual.Engine}
	small := carburation.Input{Engine: carburation.Engine{Displacement: measure.Of(units.CubicCentimetres(249), units.CubicCentimetres(1)), Tune: refdata.SportsTune}, Surroundings: carburation.Surroundings{Fuel: "methanol"}}
	with := engine
	with.Fitted = carburation.Fitted{Bore: mmOf(30, 0.02), Cutaway: mmOf(4.8, 0.1), Groove: carburation.Groove{FromTop: 2, Of: 5}}
	inputs := each(beginning{Input: engine}, beginning{Input: small}, beginning{Input: with, MainJet: "260 cc/min at 0.775 m", PilotJet: "25 cc/min at 0.775 m"}, beginning{MainJet: "280"}, beginning{})
	b.ask(carburation.Start, "input, options", cross(inputs, each(carburation.Options{})), rel(loose), keep("demand", "bore", "main_jet", "cutaway", "pilot_jet", "needle", "outside"))
	weak := carburation.Symptoms{Full: carburation.Seen{Runs: carburation.Weak}, Middle: carburation.Seen{Runs: carburation.Right}, Fades: carburation.No}
	rich := carburation.Symptoms{PickUp: carburation.Seen{Runs: carburation.Rich, Plug: carburation.Rich}, TickOver: carburation.Seen{Runs: carburation.Right}, Middle: carburation.Seen{Lambda: ratioOf(0.8, 0.02)}}
	fades := carburation.Symptoms{Full: carburation.Seen{Runs: carburation.Weak}, Fades: carburation.Yes}
	b.ask(carburation.Advise, "symptoms, options", append(cross(each(weak, rich, fades, carburation.Symptoms{}, carburation.Symptoms{Full: carburation.Seen{Runs: "purple", Lambda: ratioOf(7, 0.02)}}), each(advising{})), row{weak, advising{Model: &model{Setup: usual}}}), rel(1e-4))
	at := func(hpa, celsius, humidity float64, fuel string) carburation.Surroundings {
		return carburation.Surroundings{Pressure: measure.Of(units.Hectopascals(hpa), units.Hectopascals(1)), Temperature: measure.Of(units.Celsius(celsius), units.Kelvins(1)), Humidity: ratioOf(humidity, 0.05), Fuel: fuel}
	}
	b.ask(carburation.Correct, "change", each(
		changed{Change: carburation.Change{Then: at(1020, 2, 0.8, ""), Now: at(900, 25, 0.4, "")}, MainJet: "170 cc/min at 0.775 m"},
		changed{Change: carburation.Change{Then: at(1013, 15, 0.5, "petrol"), Now: at(1013, 15, 0.5, "methanol")}, MainJet: "1.10 mm"},
		changed{Change: carburation.Change{LambdaRead: ratioOf(0.95, 0.02), LambdaWanted: ratioOf(0.87, 0.01)}},
		changed{Change: carburation.Change{CleanerNow: carburation.Cleaner{Drop: measure.Of(kpa(0.3), kpa(0.05))}}},
		changed{Change: carburation.Change{LambdaRead: ratioOf(0.95, 0.02)}}), rel(loose))
}
