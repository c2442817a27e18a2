package main

import (
	"example.com/benchbook/timing"
	"example.com/benchbook/timing/gear"
	"example.com/benchbook/units"
)

func timingCases(b *book) {
	inlet, _ := timing.ReadLobe("25 BTDC", "65 ABDC")
	exhaust, _ := timing.ReadLobe("65 BBDC", "25 ATDC")
	engine := timing.Engine{Drive: timing.TwoCamwheels(24, 48), Inlet: inlet, Exhaust: exhaust}
	for _, e := range [][4]string{
		{"25 BTDC", "65 ABDC", "65 BBDC", "25 ATDC"}, // as specified
		{"10 BTDC", "80 ABDC", "65 BBDC", "25 ATDC"}, // inlet a tooth late
		{"34 BTDC", "56 ABDC", "50 BBDC", "40 ATDC"},
	} {
		r, err := timing.ReadEvents(e[0], e[1], e[2], e[3])
		if err != nil {
			b.keep("timing", err)
			return
		}
		r.TDC = timing.TDCByStop
		input := timing.Input{Engine: engine, Readings: r}
		args := in{
			"pinion": 24.0, "camwheels": 48.0, "inlet": inlet, "exhaust": exhaust, "tdc": words(r.TDC.String()),
			"inlet_opens": r.InletOpens, "inlet_closes": r.InletCloses, "exhaust_opens": r.ExhaustOpens, "exhaust_closes": r.ExhaustCloses,
		}
		in1, ex, err := timing.Phases(input, timing.Options{})
		b.add("timing.Phases", args, of(map[string]any{"inlet": in1, "exhaust": ex}, err))
		l, err := timing.LobesOf(r, timing.Options{})
		b.add("timing.LobesOf", in{"inlet_opens": r.InletOpens, "inlet_closes": r.InletCloses, "exhaust_opens": r.ExhaustOpens, "exhaust_closes": r.ExhaustCloses, "tdc": words(r.TDC.String())}, of(l, err))
		causes, err := timing.Causes(input, timing.Options{})
		b.loosely(loose, "timing.Causes", args, of(leaders{causes}, err))
		d, err := timing.Diagnose(input, timing.Options{})
		answer := map[string]any{"causes": d.Causes, "may_be_turned_by_hand": d.Turning.ByHand, "may_be_started": d.Turning.Start}
		if len(d.Remedies) > 0 {
			answer["inlet_left"], answer["exhaust_left"] = d.Remedies[0].InletLeft, d.Remedies[0].ExhaustLeft
		}
		b.loosely(loose, "timing.Diagnose", args, of(answer, err))
	}
	for _, text := range []string{"IVC 65 ABDC at 0.04 in lift, clearance 8 thou", "inlet opens 25"} {
		b.add("timing.ParseEvent", in{"text": words(text)}, event(text))
	}
	// A hole of a vernier beside a tooth: which whole number of each comes nearest.
	e := engine
	e.Drive = timing.TwoCamwheels(25, 50)
	e.InletVernier = timing.Vernier{Wheel: 11, Cam: 12}
	e.InletFixing, e.ExhaustFixing = timing.OnePiece, timing.OnePiece
	moves, err := timing.MovesOf(e, timing.Options{})
	plan, err2 := timing.NewPlan(moves, timing.Options{})
	if err != nil || err2 != nil {
		b.keep("timing.NewPlan", err)
		b.keep("timing.NewPlan", err2)
		return
	}
	for _, shift := range []float64{-7, 4, 20} {
		best := plan.Best(units.CrankDegrees(shift), 0)
		b.add("timing.Plan.Best", in{"train": gear.Simple(25, 50), "vernier_wheel": 11.0, "vernier_cam": 12.0, "inlet_early_by": units.CrankDegrees(shift)},
			only(map[string]any{"inlet_left": best.InletLeft, "exhaust_left": best.ExhaustLeft}))
	}
}

func event(text string) outcome {
	e, err := timing.ParseEvent(text)
	return of(map[string]any{"event": words(e.Name.String()), "at": e.At, "lift": e.Check.Lift, "clearance": e.Check.Clearance, "measured": words(e.Check.At.String())}, err)
}
