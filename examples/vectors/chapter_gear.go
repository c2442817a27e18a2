package main

import (
	"example.com/benchbook/timing/gear"
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

func gearCases(b *book) {
	for _, t := range []gear.Train{gear.Simple(24, 48), gear.Simple(24, 31, 48), gear.Simple(20, 40), gear.Simple(24, 47), gear.Simple(18, 36).Then(20, 20), gear.Simple(19, 38)} {
		args := in{"train": t}
		b.add("timing/gear.Train.Ratio", args, of(t.Ratio()))
		b.add("timing/gear.Train.ToothWorth", args, of(t.ToothWorth(0)))
		b.add("timing/gear.Train.CamToothWorth", args, of(t.CamToothWorth(t.Len()-1)))
		b.add("timing/gear.Train.FinestStep", args, of(t.FinestStep()))
		b.add("timing/gear.Train.MarksMeet", args, of(t.MarksMeet()))
		b.add("timing/gear.Train.IsHalfSpeed", args, only(t.IsHalfSpeed()))
		driven, err := t.Drive(rpm(3000), units.NewtonMetres(5), 0.97)
		b.add("timing/gear.Train.Drive", in{"train": t, "speed": rpm(3000), "torque": units.NewtonMetres(5), "efficiency": 0.97}, of(driven, err))
	}
	// A wheel of no teeth is refused.
	for _, text := range []string{"0:48", "24:"} {
		b.add("timing/gear.ParseTrain", in{"text": words(text)}, of(gear.ParseTrain(text)))
	}
	two := gear.Drive{{From: "crank", Driver: 24, To: "inlet", Driven: 48}, {From: "inlet", Driver: 48, To: "exhaust", Driven: 48}}
	b.add("timing/gear.Drive.Steps", in{"drive": two}, of(two.Steps()))
	b.add("timing/gear.Drive.MarksMeet", in{"drive": two}, of(two.MarksMeet()))
	b.add("timing/gear.Drive.Train", in{"drive": two, "spindle": "exhaust"}, of(two.Train("exhaust")))
	slack := gear.Slack{Backlash: measure.Of(mm(0.1), mm(0.02)), Module: mm(2)}
	b.add("timing/gear.Train.LostMotion", in{"train": gear.Simple(24, 48), "backlash": slack.Backlash, "module": slack.Module}, of(gear.Simple(24, 48).LostMotion(slack)))
	for _, n := range []int{48, 47} {
		b.add("timing/gear.Hunting", in{"first": 24.0, "second": float64(n)}, of(gear.Hunting(24, n)))
	}
	for _, k := range []int{3, 4, 5} {
		keyed := gear.Keyed{Teeth: 48, Keyways: k}
		b.add("timing/gear.Keyed.Step", in{"teeth": 48.0, "keyways": float64(k)}, of(keyed.Step()))
		b.add("timing/gear.Keyed.Nearest", in{"teeth": 48.0, "keyways": float64(k), "want": units.Degrees(2)}, of(keyed.Nearest(units.Degrees(2))))
	}
	v := gear.Vernier{Wheel: 11, Flange: 10}
	b.add("timing/gear.Vernier.Step", in{"wheel": 11.0, "flange": 10.0}, of(v.Step()))
	b.add("timing/gear.Vernier.Nearest", in{"wheel": 11.0, "flange": 10.0, "want": units.Degrees(7)}, of(v.Nearest(units.Degrees(7))))
	h := gear.Helical{Teeth: 48, Module: mm(2), Helix: units.Degrees(20)}
	b.add("timing/gear.Helical.Shifted", in{"wheel": h, "by": mm(0.5)}, of(h.Shifted(mm(0.5))))
	b.add("timing/gear.Helical.ShimFor", in{"wheel": h, "turn": units.Degrees(0.25)}, of(h.ShimFor(units.Degrees(0.25))))
	for _, w := range []gear.Wheel{{Teeth: 24, Module: mm(2)}, {Teeth: 48, Module: mm(2)}, {Teeth: 40, Module: gear.OfDiametralPitch(12), Pressure: units.Degrees(14.5)}, {Teeth: 30, Module: mm(2), Helix: units.Degrees(20)}} {
		b.add("timing/gear.Wheel.Geometry", in{"wheel": w}, of(w.Geometry()))
		b.add("timing/gear.Wheel.Span", in{"wheel": w, "teeth_spanned": 4.0}, of(w.Span(4)))
		if w.Helix == 0 {
			b.add("timing/gear.Wheel.OverPins", in{"wheel": w, "pin": mm(3.5)}, of(w.OverPins(mm(3.5))))
		}
	}
	m := gear.Meshing{Pinion: gear.Wheel{Teeth: 24, Module: mm(2)}, Wheel: gear.Wheel{Teeth: 48, Module: mm(2)}}
	b.add("timing/gear.Meshing.Contact", in{"meshing": m}, of(m.Contact()))
	b.add("timing/gear.Meshing.SlideSpeeds", in{"meshing": m, "pinion": rpm(3000)}, of(m.SlideSpeeds(rpm(3000))))
	b.add("timing/gear.BacklashOpened", in{"apart": mm(0.05), "working": units.Degrees(20)}, of(gear.BacklashOpened(mm(0.05), units.Degrees(20))))
	b.add("timing/gear.Normal", in{"circumferential": mm(0.1), "pressure": units.Degrees(20), "helix": units.Degrees(15)}, of(gear.Normal(mm(0.1), units.Degrees(20), units.Degrees(15))))
	b.add("timing/gear.Circumferential", in{"normal": mm(0.1), "pressure": units.Degrees(20), "helix": units.Degrees(15)}, of(gear.Circumferential(mm(0.1), units.Degrees(20), units.Degrees(15))))
	b.add("timing/gear.Load", in{"torque": units.NewtonMetres(10), "diameter": mm(48), "pressure": units.Degrees(20), "helix": 0 * units.Degree}, of(gear.Load(units.NewtonMetres(10), mm(48), units.Degrees(20), 0)))
	b.add("timing/gear.OfDiametralPitch", in{"teeth_per_inch": 12.0}, only(gear.OfDiametralPitch(12)))
	b.add("timing/gear.OfCircularPitch", in{"pitch": mm(6)}, only(gear.OfCircularPitch(mm(6))))
	b.add("timing/gear.DiametralPitch", in{"module": mm(2)}, only(gear.DiametralPitch(mm(2))))
	teeth, exact, err := gear.LeastTeeth(units.Degrees(20), 2, 1)
	b.add("timing/gear.LeastTeeth", in{"pressure": units.Degrees(20), "ratio": 2.0, "addendum": 1.0}, of(map[string]any{"teeth": teeth, "exact": exact}, err))
	e, _ := gear.PlanetaryOf(24, 18).Epicyclic()
	b.add("timing/gear.Planetary.Epicyclic", in{"sun": 24.0, "planet": 18.0}, of(gear.PlanetaryOf(24, 18).Epicyclic()))
	b.add("timing/gear.Epicyclic.Fixed", in{"value": e.Value, "held": "last", "of": "first", "per": "arm"}, of(e.Fixed("last", "first", "arm")))
	b.add("timing/gear.Epicyclic.Last", in{"value": e.Value, "first": rpm(1000), "arm": rpm(200)}, of(e.Last(rpm(1000), rpm(200))))
	b.add("timing/gear.Epicyclic.Arm", in{"value": e.Value, "first": rpm(1000), "last": rpm(0)}, of(e.Arm(rpm(1000), 0)))
	b.add("timing/gear.Epicyclic.Torques", in{"value": e.Value, "first": units.NewtonMetres(3)}, of(e.Torques(units.NewtonMetres(3))))
	f := gear.Found{Teeth: 48, Tip: measure.Of(mm(99.96), mm(0.03)), Over: 6, Span: measure.Of(mm(33.7), mm(0.02)), SpanNext: measure.Of(mm(39.6), mm(0.02))}
	b.add("timing/gear.Identify", in{"found": f}, of(gear.Identify(f, gear.IdentifyOptions{})))
}
