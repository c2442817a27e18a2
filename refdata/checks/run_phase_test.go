package checks_test

import (
	"example.com/benchbook/timing"
	"example.com/benchbook/timing/cam"
	"example.com/benchbook/timing/crank"
	"example.com/benchbook/timing/gear"
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// phaseRunners runs what was computed apart of teeth, keyways, holes and places.
var phaseRunners = map[string]runner{
	"vernier-50-11-12": func(r *run) {
		n := r.teeth("camwheel", "holes_wheel", "holes_flange")
		e := timing.Engine{Drive: timing.TwoCamwheels(n[0]/2, n[0]), InletVernier: timing.Vernier{Wheel: n[1], Cam: n[2]}, InletFixing: timing.OnePiece, ExhaustFixing: timing.OnePiece}
		e.Inlet, e.Exhaust = book(r)
		opt := timing.Options{Near: units.CrankDegrees(0.1)}
		moves, err := timing.MovesOf(e, opt)
		r.ok(err)
		plan, err := timing.NewPlan(moves, opt)
		r.ok(err)
		best := plan.Best(-get[units.CrankAngle](r, "wanted"), 0)
		for _, s := range best.Steps {
			answer := "holes"
			if s.Key[:len("inlet-wheel")] == "inlet-wheel" {
				answer = "teeth"
			}
			r.numbers(answer, float64(s.Count))
		}
		want(r, "left", -best.InletLeft)
		steps, err := e.Drive.Steps()
		r.ok(err)
		want(r, "tooth", steps[0].Crank)
		hole, err := gear.Vernier{Wheel: n[1], Flange: n[2]}.Step()
		r.ok(err)
		hole = hole.Times(gear.NewRational(2, 1)) // of the cam, to the crank
		r.numbers("hole", hole.Float())
		r.numbers("finest", gear.FinestStep(steps[0].CrankExact, hole).Float())
	},
	"marks-24-35-48": marks,
	"marks-20-31-40": marks,
	"keyway-24-5":    keyways,
	"keyway-40-3":    keyways,
	"compound-21-28-18-27": func(r *run) {
		n := r.teeth("pinion", "idler_in", "idler_out", "camwheel")
		t := gear.Simple(n[0], n[1]).Then(n[2], n[3])
		for i, answer := range []string{"first_mesh", "second_mesh"} {
			w, err := t.CamToothWorth(i)
			r.ok(err)
			want(r, answer, w)
		}
		step, err := t.FinestStep()
		r.ok(err)
		r.numbers("finest", step.Float())
	},
	"lost-motion-two-meshes": func(r *run) {
		n := r.teeth("pinion", "idler", "camwheel")
		mesh := gear.Slack{Backlash: measure.Exact(get[units.Length](r, "backlash_each")), Module: get[units.Length](r, "module")}
		lost, err := gear.Simple(n...).LostMotion(mesh, mesh)
		r.ok(err)
		want(r, "at_crank", lost.Value())
	},
	"stop-with-offset": func(r *run) {
		s := slider(r, "r", "l")
		s.Offset = get[units.Length](r, "offset")
		at, err := s.Positions(get[units.Length](r, "stop"))
		r.ok(err)
		want(r, "after", at.After.After())
		want(r, "before", -at.Before.After())
		want(r, "middle_after_tdc", (at.After.After() + at.Before.After()).Times(0.5))
		d, err := s.DeadCentres()
		r.ok(err)
		want(r, "stroke", d.Stroke)
	},
	"top-by-gauge": func(r *run) {
		u, err := slider(r, "r", "l").TopDoubt(get[units.Length](r, "resolution"))
		r.ok(err)
		want(r, "doubt", u)
	},
	"travel-10mm-lambda-0-22": travelToDegrees,
	"travel-10mm-lambda-0-30": travelToDegrees,
	"helical-shift": func(r *run) {
		m, helix, z := get[units.Length](r, "module"), get[units.Angle](r, "helix"), r.teeth("teeth")[0]
		g, err := gear.Wheel{Teeth: z, Module: m, Helix: helix}.Geometry()
		r.ok(err)
		want(r, "axial_pitch", g.AxialPitch)
		turn, err := gear.Helical{Teeth: z, Module: m, Helix: helix}.Shifted(get[units.Length](r, "shift"))
		r.ok(err)
		want(r, "turn", turn)
	},
	"key-slack": func(r *run) {
		a, err := cam.KeySlack(get[units.Length](r, "slack"), get[units.Length](r, "shaft"))
		r.ok(err)
		want(r, "cam", a)
		want(r, "crank", a.AtCrank())
	},
	"taper-1-in-8": func(r *run) {
		g, err := cam.Taper{OneIn: r.num("one_in"), MeanDiameter: 16 * units.Millimetre}.Hold(units.Kilonewton)
		r.ok(err)
		want(r, "half_angle", g.HalfAngle)
		want(r, "needs", g.Needs)
	},
	"base-pitch-twins": func(r *run) {
		m := get[units.Length](r, "module")
		for answer, w := range map[string]gear.Wheel{
			"dp10_20": {Module: gear.OfDiametralPitch(r.num("dp"))}, "m2_5_20": {Module: m}, "m2_5_14_5": {Module: m, Pressure: units.Degrees(14.5)},
		} {
			w.Teeth = r.teeth("teeth")[0]
			g, err := w.Geometry()
			r.ok(err)
			want(r, answer, g.BasePitch)
		}
	},
	"lobes-13-80-66-26": func(r *run) {
		l := events(r, "IO", "IC", "EO", "EC")
		want(r, "in_duration", l.InletDuration.Value())
		want(r, "ex_duration", l.ExhaustDuration.Value())
		want(r, "in_centre", l.InletCentre.Value())
		want(r, "ex_centre", l.ExhaustCentre.Value())
		want(r, "overlap", l.Overlap.Value())
		want(r, "separation", l.Separation.Value())
	},
	"inference-by-hand": func(r *run) {
		n := r.teeth("pinion", "camwheel")
		e := timing.Engine{Drive: timing.TwoCamwheels(n[0], n[1])}
		e.Inlet.Opens, e.Inlet.Closes = position(r, "book_IO"), position(r, "book_IC")
		e.Exhaust.Opens, e.Exhaust.Closes = position(r, "book_EO"), position(r, "book_EC")
		at := func(name string) measure.Position {
			return measure.At(position(r, name), get[units.CrankAngle](r, "own"))
		}
		const out = -1 // causes that the sum leaves out
		ranking, err := timing.Causes(timing.Input{Engine: e, Readings: timing.Readings{
			InletOpens: at("IO"), InletCloses: at("IC"), ExhaustOpens: at("EO"), ExhaustCloses: at("EC"),
		}}, timing.Options{
			SingleFaults: true, Teeth: 1, Trifle: units.CrankDegrees(1e-9), Misread: timing.Misread{Chance: out},
			Widths: timing.Widths{TDCByEye: get[units.CrankAngle](r, "common"), Duration: get[units.CrankAngle](r, "duration"), Slip: get[units.CrankAngle](r, "slip"), TDCWrong: 5 * units.CrankDegree, SlipAnywhere: out},
			Priors: timing.Priors{
				Wheel: 2 * r.num("prior_tooth"), Slip: r.num("prior_slip"), // a tooth either way
				UnknownCam: out, Clearance: out, CheckLift: out, Reversed: out, Follower: out, Held: out, Worn: out,
			},
		})
		r.ok(err)
		late, _ := ranking.Of("inlet-wheel:-1")
		slip, _ := ranking.Of("inlet-slip")
		r.numbers("tooth_late", late.Share)
		r.numbers("slipped", slip.Share)
	},
}

// book is any specification: the moves of an engine do not depend on it.
func book(r *run) (inlet, exhaust timing.Lobe) {
	r.t.Helper()
	inlet, err := timing.ReadLobe("25 BTDC", "65 ABDC")
	r.ok(err)
	exhaust, err = timing.ReadLobe("65 BBDC", "25 ATDC")
	r.ok(err)
	return inlet, exhaust
}

func marks(r *run) {
	n := r.teeth("pinion", "idler", "camwheel")
	all, err := gear.Simple(n...).MarksMeet()
	r.ok(err)
	r.numbers("turns_all", float64(all.Turns))
	cams, err := gear.Simple(n[0], n[2]).MarksMeet()
	r.ok(err)
	r.numbers("turns_cam", float64(cams.Turns))
}

func keyways(r *run) {
	step, err := gear.Keyed{Teeth: r.teeth("teeth")[0], Keyways: r.teeth("keyways")[0]}.Step()
	r.ok(err)
	r.numbers("step", step.Float())
}

func travelToDegrees(r *run) {
	at, err := crank.Slider{Throw: get[units.Length](r, "r"), Rod: get[units.Length](r, "l")}.Positions(get[units.Length](r, "travel"))
	r.ok(err)
	want(r, "before_tdc", -at.Before.After())
}
