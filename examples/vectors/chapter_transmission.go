package main

import (
	"example.com/benchbook/transmission"
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// clutch is an invented one.
func clutch() transmission.Clutch {
	return transmission.Clutch{
		Plates:  transmission.Plates{Driving: 6, Driven: 5, Outer: mm(140), Inner: mm(100)},
		Springs: transmission.Springs{Count: 4, Rate: rate(25), FreeLength: mm(46), Shortest: mm(28), AtFlush: mm(44)},
		Nuts:    transmission.Nuts{Pitch: units.Inches(0.05)},
		Lever: transmission.HandLever{
			Finger: measure.By(mm(109.6), measure.Caliper()), Nipple: measure.By(mm(38), measure.Caliper()),
			Rest: measure.By(angle(-17), measure.Protractor()), Pulled: measure.By(angle(17), measure.Protractor()),
		},
		Train:  []transmission.Element{{Name: "release arm", Ratio: 6, Efficiency: 0.9}},
		Demand: transmission.Demand{EngineTorque: newtonMetres(28), PrimaryRatio: 2.2, HandForce: newtons(130)},
	}
}

// armed is a clutch that a bell crank works, square or not.
type armed struct {
	Clutch    transmission.Clutch `json:"clutch"`
	Cable     units.Length        `json:"arm_at_cable"`
	Rod       units.Length        `json:"arm_at_rod"`
	CableRest units.Angle         `json:"arm_cable_rest"`
	RodRest   units.Angle         `json:"arm_rod_rest"`
}

func (a armed) make() (any, error) {
	a.Clutch.Train = append(a.Clutch.Train, transmission.ReleaseArm(a.Cable, a.Rod, a.CableRest, a.RodRest))
	return a.Clutch, nil
}

// element is one link of the release by what makes it. The links that turn have
// no form of their own: a train of one is asked what it does.
func element(e transmission.Element) any {
	c := clutch()
	c.Train = []transmission.Element{e}
	at, _ := c.At(transmission.Condition{}, units.Turns(6))
	return map[string]any{"name": e.Name, "ratio": e.Ratio, "stiffness": e.Stiffness, "lift": at.Lift, "hand_force": at.HandForce}
}

func turns(x, u float64) measure.Reading[units.Angle] {
	return measure.Of(units.Turns(x), units.Turns(u))
}

func ratioOf(x, u float64) measure.Reading[units.Ratio] {
	return measure.Of(units.Value(x), units.Value(u))
}

func transmissionCases(b *book) {
	c := clutch()
	plateCases(b, c)
	releaseCases(b, c)
	clutchCases(b, c)
	kickCases(b, c)
	weighedCases(b)
}

func plateCases(b *book, c transmission.Clutch) {
	pressed := c.Plates
	pressed.Pressure = transmission.UniformPressure
	inserts := transmission.Plates{Driving: 4, Driven: 4, Inserts: transmission.Inserts{Count: 18, Area: mm2(180), Radius: mm(60)}}
	plates := each(c.Plates, pressed, inserts, transmission.Plates{Driving: 6, Driven: 5, Outer: mm(100), Inner: mm(140)})
	b.ask(transmission.Plates.Carry, "plates, friction, clamp", cross(plates, []row{{units.Value(0.12), newtons(1400)}, {units.Value(0.3), newtons(900)}, {units.Value(0), newtons(1400)}}))
	b.ask(transmission.Plates.CarryFading, "plates, friction, grip, clamp", cross(plates, []row{{one(0.12), one(0.1), newtons(1400)}, {one(0.3), one(0), newtons(900)}, {one(0.12), one(2), newtons(1400)}}))
	b.ask(transmission.Plates.ClampFor, "plates, peak", cross(plates, each(megapascals(0.3), megapascals(0.1))))
	b.ask(transmission.Plates.FacesFor, "plates, torque, friction, clamp", cross(plates, []row{{newtonMetres(80), one(0.12), newtons(1400)}, {newtonMetres(30), one(0.3), newtons(900)}, {newtonMetres(0), one(0.12), newtons(1400)}}))
	b.ask(transmission.RingFor, "torque, friction, peak, faces, inner_to_outer, pressure", cross([]row{{newtonMetres(80), units.Value(0.12), megapascals(0.3), 10, 0.7}, {newtonMetres(60), units.Value(0.3), megapascals(0.1), 4, 0.5}, {newtonMetres(80), units.Value(0.12), megapascals(0.3), 0, 1.7}},
		each(transmission.UniformWear, transmission.UniformPressure)))
	b.ask(transmission.LiningFriction, "material, condition > friction, _", []row{{"woven", "dry"}, {"moulded", "oil"}, {"cork", "oil"}, {"felt", "dry"}})
	b.ask(transmission.ScrewEfficiency, "lead, diameter, friction", []row{{mm(24), mm(20), units.Value(0.1)}, {mm(6), mm(20), units.Value(0.15)}, {mm(24), mm(0), units.Value(0.1)}})
	b.ask(transmission.CableEfficiency, "friction, bends", []row{{ratioOf(0.1, 0.02), rad(180, 20)}, {ratioOf(0.06, 0.01), rad(90, 10)}, {ratioOf(0.1, 0.02), measure.Reading[units.Angle]{}}})
}

func releaseCases(b *book, c transmission.Clutch) {
	sector := c.Lever
	sector.Sector = true
	levers := each(c.Lever, sector, transmission.HandLever{Finger: c.Lever.Finger, Nipple: c.Lever.Nipple}, transmission.HandLever{Nipple: mmOf(-4, 1)})
	b.ask(transmission.HandLever.Pull, "lever", levers)
	b.ask(transmission.HandLever.Leverage, "lever", levers)
	b.ask(transmission.NutTurns, "", []row{{}})
	worked := []manner{seen(element), noted("with lift and hand_force of the invented clutch at 6 turns, this link its whole train")}
	b.ask(transmission.ReleaseArm, "cable, rod, cable_rest, rod_rest", []row{{mm(60), mm(10), angle(0), angle(0)}, {mm(60), mm(10), angle(-20), angle(-20)}, {mm(70), mm(12), angle(-30), angle(10)}}, worked...)
	b.ask(transmission.BallRamp, "cable, rise, over, cable_rest", []row{{mm(50), mm(3), angle(40), angle(-15)}, {mm(50), mm(4), angle(30), angle(0)}}, worked...)
	b.ask(transmission.QuickThread, "cable, lead, cable_rest", []row{{mm(50), mm(40), angle(-15)}, {mm(45), mm(60), angle(0)}}, worked...)
	b.ask(transmission.PushRod, "stiffness", each(rate(40000), rate(15000)), worked...)
	b.ask(transmission.Rocker, "driven, driving", []row{{mm(40), mm(20)}, {mm(30), mm(30)}}, worked...)
}

func clutchCases(b *book, c transmission.Clutch) {
	poor := transmission.Condition{Friction: ratioOf(0.11, 0.01), SpringSet: mmOf(1, 0.2), OutOfFlat: mmOf(0.5, 0.1), HubNutBack: turns(0.5, 0.05)}
	worn := transmission.Condition{Wear: mmOf(1.5, 0.2), CableEfficiency: ratioOf(0.6, 0.05), FreePlay: mmOf(6, 0.5)}
	found := each(transmission.Condition{}, poor, worn, transmission.Condition{Friction: ratioOf(3, 0.01)})
	heavy := c
	heavy.Springs.Rate, heavy.Plates.Outer = rate(40), mm(130)
	central := c
	central.Nuts = transmission.Nuts{Kind: transmission.Central, Pitch: mm(1)}
	central.Springs.Count = 1
	central.Springs.Rate = rate(100)
	bell := armed{Clutch: c, Cable: mm(60), Rod: mm(10), CableRest: angle(-20), RodRest: angle(-20)}
	bell.Clutch.Train = nil
	clutches := each[any](c, heavy, central, bell)
	all := cross(clutches, found[:3])
	all = append(all, row{c, found[3][0]}, row{transmission.Clutch{}, transmission.Condition{}})
	b.ask(transmission.Clutch.Window, "clutch, found", all, rel(1e-7))
	b.ask(transmission.Clutch.At, "clutch, found, turns", append(cross(clutches, found[:3], each(units.Turns(5), units.Turns(7))), row{c, found[3][0], units.Turns(5)}, row{c, poor, units.Turns(-3)}), rel(1e-7))
	b.ask(transmission.Clutch.Region, "clutch, found", all, rel(1e-6))
	b.ask(transmission.Window.Open, "window", each(transmission.Window{Low: units.Turns(4), High: units.Turns(6)}, transmission.Window{Low: units.Turns(6), High: units.Turns(4)}))
	b.ask(transmission.Budget.Symptoms, "budget", each(transmission.Budget{Slips: true, Drags: true}, transmission.Budget{Heavy: true}, transmission.Budget{}), seen(func(s string) any { return s != "" }))
	b.ask(transmission.KnownCauses, "", []row{{}})
	circle := c
	circle.Nuts.Circle, circle.Plates.Rim = mm(75), mm(132)
	rims := each(
		transmission.Rim{Heights: []measure.Reading[units.Length]{mmOf(1.2, 0.02), mmOf(1.5, 0.02), mmOf(1.3, 0.02), mmOf(1, 0.02)}},
		transmission.Rim{Heights: []measure.Reading[units.Length]{mmOf(1.2, 0.02), mmOf(1.21, 0.02), mmOf(1.2, 0.02), mmOf(1.19, 0.02)}},
		transmission.Rim{Heights: []measure.Reading[units.Length]{mmOf(1.2, 0.02), {}}})
	b.ask(transmission.Clutch.Even, "clutch, rim", append(cross(each(circle), rims), row{central, rims[0][0]}))

	fitted := func(pairs ...[2]float64) []transmission.FittedSpring {
		var out []transmission.FittedSpring
		for _, p := range pairs {
			out = append(out, transmission.FittedSpring{FreeLength: mmOf(p[0], 0.1), Rate: measure.Of(rate(p[1]), rate(0.5))})
		}
		return out
	}
	mixed := []row{
		{circle, fitted([2]float64{46, 25}, [2]float64{44.5, 25}, [2]float64{46, 25}, [2]float64{45, 27}), units.Turns(6), transmission.Condition{}},
		{circle, fitted([2]float64{46, 25}, [2]float64{46, 25}, [2]float64{46, 25}, [2]float64{46, 25}), units.Turns(6), transmission.Condition{}},
		{circle, fitted([2]float64{46, 25}), units.Turns(6), transmission.Condition{}},
	}
	b.ask(transmission.Clutch.Mixed, "clutch, springs, turns, found", mixed, rel(1e-6))
	mix := transmission.Mix{Rate: measure.Of(rate(25.5), rate(0.3)), Set: mmOf(0.6, 0.05), RunOut: mmOf(0.4, 0.03)}
	b.ask(transmission.Mix.Into, "mix, found", cross(each(mix), found[:2]))

	yes, no := transmission.Yes, transmission.No
	at6 := transmission.Setting{Nuts: turns(6, 0.1)}
	inputs := each(
		transmission.Input{Clutch: c, Setting: at6, Found: poor, Signs: transmission.Signs{Slips: yes, Drags: yes}},
		transmission.Input{Clutch: c, Setting: at6, Signs: transmission.Signs{Slips: yes, Drags: no}},
		transmission.Input{Clutch: c, Setting: at6, Found: worn, Signs: transmission.Signs{Slips: no, Drags: yes, Heavy: yes, Lift: mmOf(1.2, 0.05)}},
		transmission.Input{Clutch: c, Setting: transmission.Setting{Nuts: turns(4, 0.1)}, Signs: transmission.Signs{Slips: yes, HandForce: measure.Of(newtons(90), newtons(5))}},
		transmission.Input{Clutch: heavy, Setting: at6, Signs: transmission.Signs{Heavy: yes}},
		transmission.Input{Clutch: c, Setting: at6, Found: transmission.Condition{Friction: ratioOf(3, 0.01)}},
		transmission.Input{},
	)
	hopeless := c
	hopeless.Demand.EngineTorque, hopeless.Demand.HandForce = newtonMetres(90), newtons(20)
	inputs = append(inputs, row{transmission.Input{Clutch: hopeless, Setting: at6, Signs: transmission.Signs{Slips: yes, Drags: yes}}})
	few := each(transmission.Options{Draws: 400})
	b.ask(transmission.Diagnose, "input, options", cross(inputs, few), rel(loose), keep("causes", "suspects", "reason"))
	b.ask(transmission.Adjust, "input, options", cross(inputs, few), rel(loose), keep("window", "repairs.0.key", "repairs.0.gained", "repairs.0.opens", "advice.adjust", "advice.aim", "advice.move", "advice.flats", "pull.used", "pull.disagree"))
}

func weighedCases(b *book) {
	weighed := func(effort, load, in, out float64) transmission.Weighed {
		w := transmission.Weighed{Effort: measure.Of(newtons(effort), newtons(1)), Load: measure.Of(newtons(load), newtons(5))}
		if in > 0 {
			w.EffortTravel, w.LoadTravel = mmOf(in, 0.5), mmOf(out, 0.05)
		}
		return w
	}
	b.ask(transmission.Weighed.Advantage, "trial", each(weighed(120, 1500, 60, 3), weighed(60, 48, 20, 19), weighed(60, 480, 20, 19), transmission.Weighed{}))
	b.ask(transmission.FitEffort, "trials", each([]transmission.Weighed{weighed(60, 600, 0, 0), weighed(100, 1100, 0, 0), weighed(142, 1600, 0, 0)}, []transmission.Weighed{weighed(60, 600, 0, 0), weighed(100, 1100, 0, 0)}, []transmission.Weighed{weighed(60, 600, 0, 0)}))
	laws := each(transmission.EffortLaw{PerLoad: ratioOf(0.08, 0.002), Idle: measure.Of(newtons(12), newtons(2))}, transmission.EffortLaw{PerLoad: ratioOf(0.06, 0.002), Idle: measure.Of(newtons(0.5), newtons(0.2))})
	b.ask(transmission.EffortLaw.Load, "law, effort", cross(laws, each(newtons(100), newtons(5), newtons(-1))))
	b.ask(transmission.EffortLaw.Effort, "law, load", cross(laws, each(newtons(1500), newtons(0), newtons(-1))))
	b.ask(transmission.EffortLaw.Efficiency, "law, effort, travel_ratio", cross(laws, each(newtons(100), newtons(-1)), each(20.0, 12.0)))
}

func kickCases(b *book, c transmission.Clutch) {
	test := transmission.KickTest{Rider: measure.Of(units.Kilograms(80), units.Kilograms(2)), Crank: mmOf(220, 3), Angle: rad(90, 5), Ratio: 3, Result: transmission.Held}
	slid := test
	slid.Result = transmission.Slid
	turned := test
	turned.Result, turned.Cranking = transmission.Turned, measure.Of(newtonMetres(25), newtonMetres(2))
	light := test
	light.Rider, light.Ratio = measure.Of(units.Kilograms(5), units.Kilograms(2)), 0
	b.ask(transmission.Clutch.Kick, "clutch, test", cross(each(c), each(test, slid, turned, light)), rel(loose))
}
