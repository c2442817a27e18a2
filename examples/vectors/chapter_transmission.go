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
			Rest: measure.By(units.Degrees(-17), measure.Protractor()), Pulled: measure.By(units.Degrees(17), measure.Protractor()),
		},
		Train:  []transmission.Element{{Name: "release arm", Ratio: 6, Efficiency: 0.9}},
		Demand: transmission.Demand{EngineTorque: units.NewtonMetres(28), PrimaryRatio: 2.2, HandForce: newtons(130)},
	}
}

func transmissionCases(b *book) {
	c := clutch()
	for _, law := range []transmission.PressureLaw{transmission.UniformWear, transmission.UniformPressure} {
		p := c.Plates
		p.Pressure = law
		b.add("transmission.Plates.Carry", in{"plates": p, "pressure": words(law.String()), "friction": units.Value(0.12), "clamp": newtons(1400)}, of(p.Carry(units.Value(0.12), newtons(1400))))
	}
	b.add("transmission.Plates.ClampFor", in{"plates": c.Plates, "peak": megapascals(0.3)}, of(c.Plates.ClampFor(megapascals(0.3))))
	b.add("transmission.RingFor", in{"torque": units.NewtonMetres(80), "friction": units.Value(0.12), "peak": megapascals(0.3), "faces": 10.0, "inner_to_outer": 0.7, "pressure": words(transmission.UniformWear.String())},
		of(transmission.RingFor(units.NewtonMetres(80), units.Value(0.12), megapascals(0.3), 10, 0.7, transmission.UniformWear)))
	b.add("transmission.ScrewEfficiency", in{"lead": mm(24), "diameter": mm(20), "friction": units.Value(0.1)}, of(transmission.ScrewEfficiency(mm(24), mm(20), units.Value(0.1))))
	friction, bends := measure.Of(units.Value(0.1), units.Value(0.02)), measure.Of(units.Degrees(180), units.Degrees(20))
	b.add("transmission.CableEfficiency", in{"friction": friction, "bends": bends}, of(transmission.CableEfficiency(friction, bends)))
	b.add("transmission.HandLever.Pull", in{"lever": c.Lever}, of(c.Lever.Pull()))
	b.add("transmission.HandLever.Leverage", in{"lever": c.Lever}, of(c.Lever.Leverage()))
	sound := transmission.Condition{}
	poor := transmission.Condition{
		Friction: measure.Of(units.Value(0.11), units.Value(0.01)), SpringSet: measure.Of(mm(1), mm(0.2)),
		OutOfFlat: measure.Of(mm(0.5), mm(0.1)), HubNutBack: measure.Of(units.Turns(0.5), units.Turns(0.05)),
	}
	for _, found := range []transmission.Condition{sound, poor} {
		args := in{"clutch": c, "found": found}
		w, err := c.Window(found)
		b.add("transmission.Clutch.Window", args, of(map[string]any{"low": w.Low, "high": w.High, "low_limit": w.LowLimit, "high_limit": w.HighLimit, "open": w.Open(), "reason": w.Reason.Code}, err))
		for _, turns := range []float64{5, 7} {
			at, err := c.At(found, units.Turns(turns))
			b.add("transmission.Clutch.At", in{"clutch": c, "found": found, "turns": units.Turns(turns)}, of(at, err))
		}
		r, err := c.Region(found)
		b.add("transmission.Clutch.Region", args, of(map[string]any{"most": r.Most, "per_turn": r.PerTurn, "widest_low": r.Widest.Low, "widest_high": r.Widest.High}, err))
	}
	input := transmission.Input{Clutch: c, Setting: transmission.Setting{Nuts: measure.Of(units.Turns(6), units.Turns(0.1))}, Found: poor, Signs: transmission.Signs{Slips: transmission.Yes, Drags: transmission.Yes}}
	d, err := transmission.Diagnose(input, transmission.Options{})
	b.loosely(loose, "transmission.Diagnose", in{"input": input}, of(leaders{d.Causes}, err))
	a, err := transmission.Adjust(input, transmission.Options{})
	answer := map[string]any{"low": a.Window.Low, "high": a.Window.High, "reason": a.Window.Reason.Code}
	if len(a.Repairs) > 0 {
		answer["first_repair"] = a.Repairs[0].Key
	}
	b.add("transmission.Adjust", in{"input": input}, of(answer, err))
}
