package main

import (
	"example.com/benchbook/timing/gear"
	"example.com/benchbook/units"
)

func angle(x float64) units.Angle         { return units.Degrees(x) }
func newtonMetres(x float64) units.Torque { return units.NewtonMetres(x) }

func gearCases(b *book) {
	trainCases(b)
	driveOfGearsCases(b)
	rationalCases(b)
	adjusterCases(b)
	wheelCases(b)
	epicyclicCases(b)
}

func trainCases(b *book) {
	trains := each(gear.Simple(24, 48), gear.Simple(24, 31, 48), gear.Simple(20, 40), gear.Simple(24, 47), gear.Simple(18, 36).Then(20, 20),
		gear.Simple(19, 38).ThenChain(20, 20), gear.Simple(20, 30).ThenInternal(15, 60))
	for _, ask := range []func(gear.Train) (gear.Rational, error){gear.Train.Ratio, gear.Train.FinestStep} {
		b.ask(ask, "train", trains)
	}
	b.ask(gear.Train.RatioAt, "train, meshes", cross(trains, each(1, 2)))
	b.ask(gear.Train.ToothWorth, "train, mesh", cross(trains, each(0, 1)))
	b.ask(gear.Train.CamToothWorth, "train, mesh", cross(trains, each(0, 1)))
	b.ask(gear.Train.MarksMeet, "train", trains)
	b.ask(gear.Train.IsHalfSpeed, "train", trains)
	b.ask(gear.Train.CheckHalfSpeed, "train", trains)
	b.ask(gear.Train.Pair, "train, mesh", cross(trains[1:5], each(0, 1)))
	b.ask(gear.Train.Len, "train", trains)
	b.ask(gear.Train.Drive, "train, speed, torque, efficiency", cross(trains, each(rpm(3000)), each(newtonMetres(5)), each(0.97, 1.7)))
	b.ask(gear.Train.Err, "train", trains[:3])
	b.ask(gear.Train.Equal, "train, other", cross(trains[:3], each(gear.Simple(24, 48), gear.Simple(20, 40))))
	b.ask(gear.ParseTrain, "text", each("24:48", "24:31:48", "18:36 20:20", "0:48", "24:", ""))
	b.ask(gear.Simple, "teeth", each([]int{24, 48}, []int{24, 31, 48}))
	b.ask(gear.Train.Then, "train, teeth", cross(trains[:2], each([]int{20, 20}, []int{18, 25, 36})))
	b.ask(gear.Train.ThenChain, "train, driver, driven", cross(trains[:2], []row{{20, 20}, {15, 30}}))
	b.ask(gear.Train.ThenInternal, "train, driver, ring", cross(trains[:2], []row{{20, 60}, {15, 30}}))
	backlash := func(x, u, module float64) gear.Slack {
		return gear.Slack{Backlash: mmOf(x, u), Module: mm(module)}
	}
	b.ask(gear.Train.LostMotion, "train, slack", []row{
		{gear.Simple(24, 48), []gear.Slack{backlash(0.1, 0.02, 2)}}, {gear.Simple(24, 31, 48), []gear.Slack{backlash(0.1, 0.02, 2), backlash(0.15, 0.02, 2)}},
		{gear.Simple(24, 31, 48), []gear.Slack{backlash(0.1, 0.02, 2)}}, {gear.Simple(24, 48), []gear.Slack{backlash(-0.1, 0.02, 2)}},
	})
	b.ask(gear.Hunting, "first, second", []row{{24, 48}, {24, 47}, {18, 42}, {0, 48}})
}

func driveOfGearsCases(b *book) {
	drives := each(
		gear.Drive{{From: "crank", Driver: 24, To: "inlet", Driven: 48}, {From: "inlet", Driver: 48, To: "exhaust", Driven: 48}},
		gear.Drive{{From: "crank", Driver: 24, To: "inlet", Driven: 48}, {From: "crank", Driver: 24, To: "exhaust", Driven: 48}},
		gear.Drive{{From: "crank", Driver: 25, To: "idler", Driven: 31}, {From: "idler", Driver: 31, To: "exhaust", Driven: 50, Link: gear.Chain}},
		gear.Drive{{From: "crank", Driver: 24, To: "inlet", Driven: 48}, {From: "nothing", Driver: 24, To: "exhaust", Driven: 48}},
		gear.Drive{{From: "crank", Driver: 0, To: "inlet", Driven: 48}},
	)
	b.ask(gear.Drive.Steps, "drive", drives)
	b.ask(gear.Drive.MarksMeet, "drive", drives)
	b.ask(gear.Drive.Root, "drive", drives)
	b.ask(gear.Drive.Err, "drive", drives)
	b.ask(gear.Drive.Train, "drive, spindle", cross(drives, each("exhaust", "magneto")))
	b.ask(gear.Drive.CheckHalfSpeed, "drive, spindles", cross(drives, each([]string{"inlet", "exhaust"}, []string{"exhaust"})))
}

func rationalCases(b *book) {
	of := gear.NewRational
	pairs := []row{{of(15, 2), of(5, 1)}, {of(-3, 4), of(1, 6)}, {of(0, 1), of(2, 3)}, {of(2, 3), of(0, 1)}}
	for _, ask := range []func(gear.Rational, gear.Rational) gear.Rational{gear.Rational.Plus, gear.Rational.Times, gear.Rational.Over, gear.Rational.Step} {
		b.ask(ask, "rational, other", pairs)
	}
	some := each(of(15, 2), of(-3, 4), of(12, -8), of(0, 5))
	b.ask(gear.Rational.Abs, "rational", some)
	b.ask(gear.Rational.Num, "rational", some)
	b.ask(gear.Rational.Den, "rational", some)
	b.ask(gear.Rational.Float, "rational", some)
	b.ask(gear.Rational.Valid, "rational", some)
	b.ask(gear.NewRational, "numerator, denominator", []row{{int64(15), int64(2)}, {int64(12), int64(-8)}, {int64(0), int64(5)}})
	b.ask(gear.FinestStep, "steps", each([]gear.Rational{of(15, 2), of(120, 1)}, []gear.Rational{of(360, 11), of(36, 1), of(15, 2)}, []gear.Rational{of(7, 3)}))
}

func adjusterCases(b *book) {
	keyed := each(gear.Keyed{Teeth: 48, Keyways: 3}, gear.Keyed{Teeth: 48, Keyways: 4}, gear.Keyed{Teeth: 48, Keyways: 5}, gear.Keyed{Keyways: 3}, gear.Keyed{Teeth: 48})
	b.ask(gear.Keyed.Step, "wheel", keyed)
	uneven := gear.Keyed{Teeth: 48, Offsets: []gear.Rational{gear.NewRational(0, 1), gear.NewRational(121, 1), gear.NewRational(485, 2)}}
	b.ask(gear.Keyed.Settings, "wheel", append(keyed[:3:3], row{uneven}, row{gear.Keyed{}}))
	b.ask(gear.Keyed.Nearest, "wheel, want", cross(append(keyed, row{uneven}), each(angle(2), angle(-3.4))))
	verniers := each(gear.Vernier{Wheel: 11, Flange: 10}, gear.Vernier{Wheel: 12, Flange: 11}, gear.Vernier{Wheel: 12, Flange: 12}, gear.Vernier{})
	b.ask(gear.Vernier.Step, "vernier", verniers)
	b.ask(gear.Vernier.Nearest, "vernier, want", cross(verniers, each(angle(7), angle(-1.5))))
	helical := each(gear.Helical{Teeth: 48, Module: mm(2), Helix: angle(20)}, gear.Helical{Teeth: 40, Module: mm(2.5), Helix: angle(15), Hand: gear.LeftHand}, gear.Helical{Teeth: 48, Module: mm(2)})
	b.ask(gear.Helical.Shifted, "wheel, by", cross(helical, each(mm(0.5), mm(-0.2))))
	b.ask(gear.Helical.ShimFor, "wheel, turn", cross(helical, each(angle(0.25), angle(-1))))
}

func wheelCases(b *book) {
	wheels := each(gear.Wheel{Teeth: 24, Module: mm(2)}, gear.Wheel{Teeth: 48, Module: mm(2)}, gear.Wheel{Teeth: 40, Module: gear.OfDiametralPitch(12), Pressure: angle(14.5)},
		gear.Wheel{Teeth: 30, Module: mm(2), Helix: angle(20)}, gear.Wheel{Teeth: 18, Module: mm(2.5), Shift: 0.3}, gear.Wheel{Teeth: 2, Module: mm(-1)})
	b.ask(gear.Wheel.Geometry, "wheel", wheels)
	b.ask(gear.Wheel.Err, "wheel", wheels)
	b.ask(gear.Wheel.Span, "wheel, teeth_spanned", cross(wheels, each(3, 4, 9)))
	b.ask(gear.Wheel.OverPins, "wheel, pin", cross(wheels, each(mm(3.5), mm(9))))
	pinion, wheel := gear.Wheel{Teeth: 24, Module: mm(2)}, gear.Wheel{Teeth: 48, Module: mm(2)}
	meshings := each(gear.Meshing{Pinion: pinion, Wheel: wheel}, gear.Meshing{Pinion: pinion, Wheel: wheel, Centre: mm(72.4)},
		gear.Meshing{Pinion: gear.Wheel{Teeth: 20, Module: mm(2)}, Wheel: gear.Wheel{Teeth: 60, Module: mm(2)}, Ring: true}, gear.Meshing{Pinion: pinion, Wheel: wheel, Centre: mm(60)},
		gear.Meshing{Pinion: pinion, Wheel: gear.Wheel{Teeth: 48, Module: mm(3)}})
	b.ask(gear.Meshing.Contact, "meshing", meshings)
	b.ask(gear.Meshing.SlideSpeeds, "meshing, pinion", cross(meshings, each(rpm(3000))))
	b.ask(gear.Meshing.AddendaForPart, "meshing, part", cross(meshings[:1], each(0.5, 0.8, 1.2)))
	b.ask(gear.Meshing.AddendumForArc, "meshing, pitches", cross(meshings[:1], each(1.5, 1.75, 4.0)))
	b.ask(gear.BacklashOpened, "apart, working", cross(each(mm(0.05), mm(-0.02)), each(angle(20), angle(14.5), angle(0))))
	tilts := []row{{angle(20), angle(0)}, {angle(20), angle(15)}, {angle(90), angle(15)}}
	b.ask(gear.Normal, "circumferential, pressure, helix", cross(each(mm(0.1)), tilts))
	b.ask(gear.Circumferential, "normal, pressure, helix", cross(each(mm(0.1)), tilts))
	b.ask(gear.Load, "torque, diameter, pressure, helix", cross(each(newtonMetres(10)), each(mm(48), mm(0)), tilts))
	b.ask(gear.OfDiametralPitch, "teeth_per_inch", each(8.0, 12.0, 16.0))
	b.ask(gear.OfCircularPitch, "pitch", each(mm(6), units.Inches(0.25)))
	b.ask(gear.DiametralPitch, "module", each(mm(2), mm(2.5)))
	b.ask(gear.LeastTeeth, "pressure, ratio, addendum > teeth, exact", []row{{angle(20), 2.0, 1.0}, {angle(14.5), 3.0, 1.0}, {angle(20), 1.0, 0.8}, {angle(20), 0.0, 1.0}, {angle(95), 2.0, -1.0}})
	two := gear.NewRational(2, 1)
	b.ask(gear.TeethFor, "centre, module, ratio > below, beyond", []row{{mm(72.5), mm(2), two}, {mm(72), mm(2), two}, {mm(75), mm(2.5), gear.NewRational(3, 2)}, {mm(1), mm(2), two}})
	b.ask(gear.CrossedFor, "centre, second_diameter, shafts, ratio, second_teeth", []row{{mm(110), mm(120), angle(90), 0.5, 30}, {mm(75), mm(90), angle(60), 0.5, 40}, {mm(-1), mm(120), angle(90), 0.5, 30}})
	found := gear.Found{Teeth: 48, Tip: mmOf(99.96, 0.03), Over: 6, Span: mmOf(33.7, 0.02), SpanNext: mmOf(39.6, 0.02)}
	inch := gear.Found{Teeth: 40, Tip: mmOf(88.85, 0.05)}
	b.ask(gear.Identify, "found, options", cross(each(found, inch, gear.Found{Teeth: 24, Tip: mmOf(51.9, 0.05), Centre: mmOf(72, 0.1), MateTeeth: 48}, gear.Found{Teeth: 48}), each(gear.IdentifyOptions{})), rel(loose))
}

func epicyclicCases(b *book) {
	p := gear.PlanetaryOf(24, 18)
	planetaries := each(p, gear.PlanetaryOf(20, 20), gear.Planetary{Sun: 24, Planet: 18, Annulus: 59}, gear.Planetary{})
	b.ask(gear.PlanetaryOf, "sun, planet", []row{{24, 18}, {20, 20}})
	b.ask(gear.PlanetaryFor, "sun_per_arm, annulus", []row{{gear.NewRational(5, 1), 72}, {gear.NewRational(7, 2), 60}, {gear.NewRational(5, 1), 71}})
	b.ask(gear.HoldTorque, "power, in, out, efficiency", []row{{units.Kilowatts(4), rpm(1500), rpm(300), 0.95}, {units.Kilowatts(4), rpm(1500), rpm(-300), 0.0}, {units.Kilowatts(4), rpm(1500), rpm(0), 2.0}})
	b.ask(gear.Planetary.Err, "planetary", planetaries)
	b.ask(gear.Planetary.Assembles, "planetary, planets", cross(planetaries[:2], each(3, 4, 5)))
	b.ask(gear.Planetary.PlanetSpeed, "planetary, sun, arm", cross(planetaries, []row{{rpm(1000), rpm(200)}, {rpm(0), rpm(200)}}))
	b.ask(gear.Planetary.Epicyclic, "planetary", planetaries)
	values := each(gear.Epicyclic{Value: gear.NewRational(-2, 5)}, gear.Epicyclic{Value: gear.NewRational(1, 2)}, gear.Epicyclic{Value: gear.NewRational(0, 1)})
	b.ask(gear.EpicyclicOf, "train", each(gear.Simple(24, 18).ThenInternal(18, 60), gear.Simple(20, 30)))
	b.ask(gear.Epicyclic.Fixed, "epicyclic, held, of, per", cross(values, []row{{"last", "first", "arm"}, {"arm", "first", "last"}, {"last", "last", "ring"}}))
	b.ask(gear.Epicyclic.First, "epicyclic, last, arm", cross(values, []row{{rpm(0), rpm(200)}, {rpm(300), rpm(-100)}}))
	b.ask(gear.Epicyclic.Last, "epicyclic, first, arm", cross(values, []row{{rpm(1000), rpm(200)}, {rpm(300), rpm(0)}}))
	b.ask(gear.Epicyclic.Arm, "epicyclic, first, last", cross(values, []row{{rpm(1000), rpm(0)}, {rpm(300), rpm(200)}}))
	b.ask(gear.Epicyclic.Torques, "epicyclic, first", cross(values, each(newtonMetres(3))))
}
