package main

import (
	"example.com/benchbook/timing"
	"example.com/benchbook/timing/crank"
	"example.com/benchbook/timing/gear"
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// engine is the timing of the invented single.
func engine() timing.Engine {
	inlet, _ := timing.ReadLobe("25 BTDC", "65 ABDC")
	exhaust, _ := timing.ReadLobe("65 BBDC", "25 ATDC")
	return timing.Engine{Drive: timing.TwoCamwheels(24, 48), Inlet: inlet, Exhaust: exhaust}
}

func events(at [4]string, by timing.TDCBy) timing.Readings {
	r, _ := timing.ReadEvents(at[0], at[1], at[2], at[3])
	r.TDC = by
	return r
}

// plan is made of what can be moved on an engine.
type plan struct {
	Engine  timing.Engine  `json:"engine"`
	Options timing.Options `json:"options"`
}

func (p plan) make() (any, error) {
	moves, err := timing.MovesOf(p.Engine, p.Options)
	if err != nil {
		return nil, err
	}
	return timing.NewPlan(moves, p.Options)
}

// headWithCams is a cylinder head whose lifts are known.
type headWithCams struct {
	Head    timing.Head `json:"head"`
	Inlet   arcCurve    `json:"inlet_curve"`
	Exhaust arcCurve    `json:"exhaust_curve"`
}

func (h headWithCams) make() (any, error) {
	in, err := h.Inlet.Cam.Curve(h.Inlet.Nose)
	if err != nil {
		return nil, err
	}
	ex, err := h.Exhaust.Cam.Curve(h.Exhaust.Nose)
	h.Head.Inlet.Curve, h.Head.Exhaust.Curve = in, ex
	return h.Head, err
}

func timingCases(b *book) {
	e := engine()
	found := [][4]string{
		{"25 BTDC", "65 ABDC", "65 BBDC", "25 ATDC"},   // as specified
		{"10 BTDC", "80 ABDC", "65 BBDC", "25 ATDC"},   // inlet a tooth late
		{"34 BTDC", "56 ABDC", "50 BBDC", "40 ATDC"},   // cams off their wheels
		{"19 BTDC", "71 ABDC", "59 BBDC", "31 ATDC"},   // all late: TDC
		{"30 BTDC", "70 ABDC", "70 BBDC", "30 ATDC"},   // long: clearance
		{"10 BTDC", "-", "65 BBDC", "-"},               // two of four
		{"100 BTDC", "10 ABDC", "120 BBDC", "60 BTDC"}, // nonsense
	}
	var inputs, lobes []row
	for _, f := range found {
		inputs = append(inputs, row{timing.Input{Engine: e, Readings: events(f, timing.TDCByStop)}})
		lobes = append(lobes, row{events(f, timing.TDCByStop)})
	}
	one := e
	one.Drive, one.Keyways = timing.OneCamwheel(24, 48), 3
	one.InletFixing, one.ExhaustFixing = timing.OnePiece, timing.OnePiece
	geared := e
	geared.Drive = gear.Drive{{From: "crank", Driver: 24, To: "inlet", Driven: 48}, {From: "inlet", Driver: 48, To: "exhaust", Driven: 48}}
	lifts := events(found[1], timing.TDCByEye)
	lifts.Spark, lifts.MarksAlign, lifts.InletLiftAtTDC, lifts.ExhaustLiftAtTDC = timing.No, timing.Yes, mmOf(1.5, 0.1), mmOf(2.1, 0.1)
	inputs = append(inputs, row{timing.Input{Engine: one, Readings: events(found[2], timing.TDCByDial)}}, row{timing.Input{Engine: geared, Readings: events(found[1], timing.TDCByMark)}},
		row{timing.Input{Engine: e, Readings: lifts}}, row{timing.Input{Engine: e}}, row{timing.Input{Engine: timing.Engine{Inlet: e.Inlet}, Readings: events(found[0], timing.TDCByEye)}})
	usual := each(timing.Options{})
	all := cross(inputs, usual)
	b.ask(timing.Phases, "input, options > inlet, exhaust", all)
	b.ask(timing.LobesOf, "readings, options", cross(lobes, usual))
	b.ask(timing.Causes, "input, options", all, rel(loose))
	b.ask(timing.Diagnose, "input, options", append(cross(inputs[:3], usual), cross(inputs[7:], usual)...), rel(loose),
		keep("inlet", "exhaust", "causes", "remedies.0.key", "remedies.0.inlet_left", "remedies.0.exhaust_left", "remedies.0.steps", "turning", "no_answer", "firing"))
	b.ask(timing.Diagnose, "input, options", cross(inputs[1:2], each(timing.Options{SingleFaults: true}, timing.Options{Teeth: 1, Trifle: crankDeg(3)}, timing.Options{Misread: timing.Misread{Chance: 2}})), rel(loose), keep("causes", "no_answer"))
	b.ask(timing.ParseEvent, "text", each("IVC 65 ABDC at 0.04 in lift, clearance 8 thou", "IVO 25 BTDC", "EVO 65 BBDC at 1 mm", "EVC 25 ATDC", "inlet opens 25", ""))
	b.ask(timing.ReadEvents, "inlet_opens, inlet_closes, exhaust_opens, exhaust_closes", []row{{"25 BTDC", "65 ABDC ± 1°", "65 BBDC", "25 ATDC"}, {"25 BTDC", "-", "", "25 ATDC"}, {"25", "65 ABDC", "65 cm", "25 ATDC"}})
	b.ask(timing.ReadLobe, "opens, closes", []row{{"25 BTDC", "65 ABDC"}, {"65 BBDC", "25 ATDC"}, {"5 ATDC", "50 ABDC"}, {"25", "later"}})
	b.ask(timing.EventName.Cam, "event", each(timing.InletOpens, timing.InletCloses, timing.ExhaustOpens, timing.ExhaustCloses))
	b.ask(timing.OneCamwheel, "pinion, camwheel", []row{{24, 48}, {17, 34}})
	b.ask(timing.TwoCamwheels, "pinion, camwheel", []row{{24, 48}, {17, 34}})
	b.ask(timing.Explanation.Fits, "explanation", each(timing.Explanation{Tail: 0.4}, timing.Explanation{Tail: 0.01}, timing.Explanation{Tail: 0.002}))
	b.ask(timing.LobeOf, "curve, check > lobe, no_answer", cross(each(arcCurve{arcCam(), camDeg(55)}, arcCurve{arcCam(), camDeg(-54)}), each(mm(0.3), mm(1), mm(9), mm(-1))), rel(1e-5))
	bars := func(x float64) measure.Reading[units.Pressure] { return measure.Of(units.Bars(x), units.Bars(0.05)) }
	leaks := each(timing.LeakTest{Supply: bars(6), Held: bars(5.1)}, timing.LeakTest{Lost: ratioOf(0.4, 0.02), AtExhaust: timing.Yes}, timing.LeakTest{AtBreather: timing.Yes}, timing.LeakTest{}, timing.LeakTest{Supply: bars(6), Held: bars(7)})
	b.ask(timing.LeakTest.PartLost, "test > dry, wet", leaks)
	b.ask(timing.LeakTest.Taken, "test", leaks[1:4])
	planCases(b)
	headCases(b)
}

func planCases(b *book) {
	e := engine()
	e.Drive = timing.TwoCamwheels(25, 50)
	e.InletVernier = timing.Vernier{Wheel: 11, Cam: 12}
	e.InletFixing, e.ExhaustFixing = timing.OnePiece, timing.OnePiece
	shim := engine()
	shim.ExhaustShim, shim.Keyways = timing.Shim{Each: crankDeg(0.8), Most: 3}, 4
	shim.InletFixing, shim.ExhaustFixing = timing.OnePiece, timing.OnePiece
	engines := each(e, shim, engine(), timing.Engine{})
	b.ask(timing.MovesOf, "engine, options", cross(engines, each(timing.Options{})))
	moves, _ := timing.MovesOf(shim, timing.Options{})
	b.ask(timing.NewPlan, "moves, options", []row{{moves, timing.Options{}}, {moves[:1], timing.Options{}}, {[]timing.Move{{Key: "tooth", Cams: []timing.Cam{timing.Inlet}, Step: crankDeg(15), Most: -1}}, timing.Options{}}, {[]timing.Move{{Key: "nothing"}}, timing.Options{}}},
		seen(func(p *timing.Plan) any { return p.Best(crankDeg(9), crankDeg(-4)) }), noted("the answer is that of Plan.Best to an inlet 9° early and an exhaust 4° late"))
	off := []row{{crankDeg(-7), crankDeg(0)}, {crankDeg(4), crankDeg(4)}, {crankDeg(20), crankDeg(-15)}, {crankDeg(0), crankDeg(0)}, {crankDeg(1000), crankDeg(0)}}
	plans := each(plan{Engine: e}, plan{Engine: shim}, plan{Engine: shim, Options: timing.Options{Near: crankDeg(3)}}, plan{Engine: engine()})
	b.ask((*timing.Plan).Best, "plan, inlet, exhaust", cross(plans, off))
	b.ask((*timing.Plan).Menu, "plan, inlet, exhaust", cross(plans[:3], off[:3]))
}

func headCases(b *book) {
	degrees := func(x float64) measure.Reading[units.CrankAngle] { return measure.Of(crankDeg(x), crankDeg(1)) }
	e := engine()
	e.Inlet.MaxLift, e.Exhaust.MaxLift = mmOf(9, 0.05), mmOf(8.8, 0.05)
	head := timing.Head{
		Slider: crank.Slider{Stroke: mm(83), Rod: mm(165)}, Between: mmOf(4, 0.2),
		Inlet:   timing.Valve{ToPiston: mmOf(8, 0.2), Tilt: angle(30), Head: mm(40)},
		Exhaust: timing.Valve{ToPiston: mmOf(9, 0.2), Tilt: angle(30), Head: mm(36)},
	}
	tight := head
	tight.Inlet.ToPiston, tight.Between = mmOf(3, 0.2), measure.Reading[units.Length]{}
	shifts := []row{{e, degrees(0), degrees(0)}, {e, degrees(15), degrees(0)}, {e, degrees(-15), degrees(-15)}}
	b.ask(timing.Head.Gaps, "head, engine, inlet_early, exhaust_early", append(cross(each(head, tight), shifts), row{timing.Head{}, e, degrees(0), degrees(0)}, row{head, timing.Engine{}, degrees(0), degrees(0)}), rel(1e-4))
	cams := headWithCams{Head: head, Inlet: arcCurve{arcCam(), camDeg(55)}, Exhaust: arcCurve{arcCam(), camDeg(-54)}}
	b.ask(timing.Head.Gaps, "head, engine, inlet_early, exhaust_early", cross(each(cams), shifts), rel(1e-4))
	gap := func(r timing.Room) timing.Gap { return timing.Gap{Room: r} }
	b.ask(timing.Gaps.Worst, "gaps", each(timing.Gaps{Inlet: gap(timing.Tight), Exhaust: gap(timing.Enough)}, timing.Gaps{Inlet: gap(timing.Touches), Exhaust: gap(timing.Enough), Valves: gap(timing.Tight)}, timing.Gaps{}))
}
