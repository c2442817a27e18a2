package checks_test

import (
	"math"

	"example.com/benchbook/timing/gear"
	"example.com/benchbook/transmission"
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// ring reads a rubbed ring, by radii or diameters.
func ring(r *run, faces int, law transmission.PressureLaw) transmission.Plates {
	p := transmission.Plates{Faces: faces, Pressure: law}
	for name, f := range r.Inputs {
		if f.Text != "" {
			continue
		}
		switch name {
		case "r_o":
			p.Outer = get[units.Length](r, name).Times(2)
		case "r_i":
			p.Inner = get[units.Length](r, name).Times(2)
		case "d_o", "D":
			p.Outer = get[units.Length](r, name)
		case "d_i", "d":
			p.Inner = get[units.Length](r, name)
		}
	}
	return p
}

func carry(r *run, p transmission.Plates, clamp units.Force) transmission.Capacity {
	r.t.Helper()
	c, err := p.Carry(get[units.Ratio](r, "mu"), clamp)
	r.ok(err)
	return c
}

func clampFor(r *run, p transmission.Plates, pressure string) units.Force {
	r.t.Helper()
	w, err := p.ClampFor(get[units.Pressure](r, pressure))
	r.ok(err)
	return w
}

// clampOf is the clamp that carries a torque.
func clampOf(r *run, p transmission.Plates, t units.Torque) units.Force {
	one := units.Newtons(1000)
	return one.Times(t.Ratio(carry(r, p, one).Torque))
}

func atSpeed(r *run, t units.Torque) units.Power {
	return units.Watts(t.NewtonMetres() * get[units.RotationalSpeed](r, "speed").RadiansPerSecond())
}

func ofPower(r *run) units.Torque {
	r.t.Helper()
	n := get[units.RotationalSpeed](r, "speed")
	h, err := gear.HoldTorque(get[units.Power](r, "P"), n, n, 0)
	r.ok(err)
	return h.In
}

// whole runs a ring under its greatest pressure: clamp, torque, power.
func whole(faces int, law transmission.PressureLaw, pressure string) runner {
	return func(r *run) {
		p := ring(r, faces, law)
		w := clampFor(r, p, pressure)
		c := carry(r, p, w)
		for name := range r.Expected {
			switch name {
			case "W":
				want(r, name, w)
			case "T":
				want(r, name, c.Torque)
			case "P":
				want(r, name, atSpeed(r, c.Torque))
			case "interfaces":
				r.numbers(name, float64(c.Faces))
			}
		}
	}
}

var clutchRunners = map[string]runner{
	"clutch-01": func(r *run) {
		c, err := ring(r, 1, transmission.UniformWear).Carry(units.Value(0.3), get[units.Force](r, "W"))
		r.ok(err)
		want(r, "p_max", c.Peak)
		want(r, "p_min", c.Least)
		want(r, "p_av", c.Mean)
	},
	"clutch-02": whole(2, transmission.UniformWear, "p_max"),
	"clutch-06": whole(4, transmission.UniformWear, "p_max"),
	"clutch-16": whole(1, transmission.UniformWear, "p_max"),
	"clutch-17": whole(1, transmission.UniformPressure, "p"),
	"clutch-20": func(r *run) {
		n := r.teeth("steel", "bronze")
		p := ring(r, 0, transmission.UniformWear)
		p.Driving, p.Driven = n[0], n[1]
		w := clampFor(r, p, "p_max")
		want(r, "W", w)
		c := carry(r, p, w)
		r.numbers("interfaces", float64(c.Faces))
		want(r, "T", c.Torque)
		want(r, "P", atSpeed(r, c.Torque))
	},
	"clutch-03": func(r *run) {
		p, err := transmission.RingFor(ofPower(r), get[units.Ratio](r, "mu"), get[units.Pressure](r, "p_max"), r.teeth("faces")[0], 1/r.num("ratio_ro_ri"), transmission.UniformWear)
		r.ok(err)
		want(r, "r_o", p.Outer.Times(0.5))
		want(r, "r_i", p.Inner.Times(0.5))
		want(r, "W", clampFor(r, p, "p_max"))
	},
	"clutch-15": func(r *run) {
		p, err := transmission.RingFor(ofPower(r), get[units.Ratio](r, "mu"), get[units.Pressure](r, "p_max"), r.teeth("faces")[0], 1/r.num("ratio_do_di"), transmission.UniformWear)
		r.ok(err)
		want(r, "r_o", p.Outer.Times(0.5))
		want(r, "r_i", p.Inner.Times(0.5))
	},
	"clutch-11": func(r *run) {
		// The pressure given is at the mean radius; under uniform wear that at the inner
		// edge is greater by the ratio of the radii.
		k, mean := r.num("ratio_ri_ro"), get[units.Length](r, "r_m")
		outer := mean.Times(4 / (1 + k))
		p := transmission.Plates{Faces: 1, Outer: outer, Inner: outer.Times(k)}
		w, err := p.ClampFor(get[units.Pressure](r, "p_mean").Times((1 + k) / (2 * k)))
		r.ok(err)
		n, err := p.FacesFor(ofPower(r), get[units.Ratio](r, "mu"), w)
		r.ok(err)
		r.numbers("interfaces", n)
		c, err := p.Carry(get[units.Ratio](r, "mu"), w)
		r.ok(err)
		want(r, "p_max", c.Peak)
		want(r, "T", ofPower(r))
		r.leave("arithmetic on the inputs alone", "r_i", "r_o")
	},
	"clutch-12": func(r *run) {
		// even pressure; the source takes half the sum of the radii for the mean, which is
		// 0.4 % less than even pressure has it at this ratio, and rounds to a tenth of an inch
		p, err := transmission.RingFor(get[units.Torque](r, "T"), get[units.Ratio](r, "mu"), get[units.Pressure](r, "p"), 2, 1/r.num("ratio_ro_ri"), transmission.UniformPressure)
		r.ok(err)
		want(r, "d_o", p.Outer)
		want(r, "d_i", p.Inner)
	},
	"lever-01": func(r *run) {
		a, err := transmission.Weighed{
			Effort: measure.Exact(get[units.Force](r, "effort")), Load: measure.Exact(get[units.Force](r, "load")),
			EffortTravel: measure.Exact(get[units.Length](r, "effort_travel")), LoadTravel: measure.Exact(get[units.Length](r, "load_travel")),
		}.Advantage()
		r.ok(err)
		r.numbers("MA", a.Force.Value().Value())
		r.numbers("VR", a.Travel.Value().Value())
		r.numbers("efficiency", a.Efficiency.Value().Value())
		want(r, "ideal_effort", a.Ideal)
	},
	"lever-02": func(r *run) {
		trial := func(n string) transmission.Weighed {
			return transmission.Weighed{Load: measure.Exact(get[units.Force](r, "load_"+n)), Effort: measure.Exact(get[units.Force](r, "effort_"+n))}
		}
		law, err := transmission.FitEffort([]transmission.Weighed{trial("1"), trial("2")})
		r.ok(err)
		r.numbers("m", law.PerLoad.Value().Value())
		want(r, "C", law.Idle.Value())
		effort := get[units.Force](r, "effort")
		load, err := law.Load(effort)
		r.ok(err)
		want(r, "load", load)
		eta, err := law.Efficiency(effort, r.num("VR"))
		r.ok(err)
		r.numbers("efficiency", eta.Percents())
	},
	"clutch-04": func(r *run) {
		// A face a quarter of the mean radius wide: inner over outer is 7 to 9.
		// The pressure given is at the mean radius, 7/8 of that at the inner edge.
		p, err := transmission.RingFor(ofPower(r), get[units.Ratio](r, "mu"), get[units.Pressure](r, "p").Times(8.0/7), r.teeth("faces")[0], 7.0/9, transmission.UniformWear)
		r.ok(err)
		want(r, "r_o", p.Outer.Times(0.5))
		want(r, "r_i", p.Inner.Times(0.5))
		want(r, "width", (p.Outer - p.Inner).Times(0.5))
		want(r, "R", (p.Outer + p.Inner).Times(0.25))
	},
	"clutch-05": func(r *run) {
		p := transmission.Plates{Faces: r.teeth("faces")[0], Outer: get[units.Length](r, "r_o").Times(2), Inner: get[units.Length](r, "r_i").Times(2)}
		w := clampFor(r, p, "p_max")
		want(r, "compression", units.Metres(w.Newtons()/(r.num("springs")*get[units.SpringRate](r, "k").NewtonsPerMetre())))
		r.leave("the companion rounds the inner radius to 10 mm first", "r_o", "r_i")
	},
	"clutch-07": func(r *run) {
		n := r.teeth("n1", "n2")
		p := ring(r, 0, transmission.UniformWear)
		p.Driving, p.Driven = n[0], n[1]
		want(r, "p_max", carry(r, p, clampOf(r, p, ofPower(r))).Peak)
	},
	"clutch-10": func(r *run) {
		n := r.teeth("n1", "n2")
		p := ring(r, 0, transmission.UniformPressure)
		p.Driving, p.Driven = n[0], n[1]
		t := ofPower(r)
		want(r, "T", t)
		w := clampOf(r, p, t)
		want(r, "W", w)
		want(r, "p", carry(r, p, w).Mean)
	},
	"clutch-14": func(r *run) {
		c := carry(r, ring(r, 1, transmission.UniformWear), get[units.Force](r, "F"))
		want(r, "T", c.Torque)
		want(r, "P", atSpeed(r, c.Torque))
	},
	"clutch-19": func(r *run) {
		p := ring(r, 1, transmission.UniformWear)
		w := clampFor(r, p, "p_max")
		want(r, "W", w)
		each := carry(r, p, w).Torque
		r.numbers("interfaces", math.Ceil(get[units.Torque](r, "T").Ratio(each)*(1+get[units.Ratio](r, "area_allowance").Value())))
	},
	"clutch-window": func(r *run) {
		mm := func(name string) measure.Reading[units.Length] { return measure.Exact(get[units.Length](r, name)) }
		c := transmission.Clutch{
			Plates: transmission.Plates{Faces: int(r.num("interfaces")), MeanRadius: get[units.Length](r, "mean_radius")},
			Springs: transmission.Springs{Count: int(r.num("springs")), Rate: get[units.SpringRate](r, "rate"),
				FreeLength: get[units.Length](r, "free_length"), Shortest: get[units.Length](r, "least_length"), AtFlush: get[units.Length](r, "length_at_flush")},
			Nuts:   transmission.Nuts{Pitch: get[units.Length](r, "adjuster_pitch")},
			HubNut: transmission.HubNut{Pitch: get[units.Length](r, "nut_pitch")},
			// a sector of 38 mm with the leverage of the case
			Lever: transmission.HandLever{Sector: true, Nipple: measure.Exact(38 * units.Millimetre), Finger: measure.Exact(units.Millimetres(38 * r.num("hand_lever_ratio")))},
			Train: []transmission.Element{{Ratio: r.num("arm_ratio"), Efficiency: r.num("arm_efficiency")}},
			Demand: transmission.Demand{EngineTorque: get[units.Torque](r, "engine_torque"), PrimaryRatio: r.num("primary_ratio"), Margin: r.num("service_factor"),
				HandForce: get[units.Force](r, "greatest_hand_force"), FaceGap: get[units.Length](r, "gap_per_interface")},
		}
		w, err := c.Window(transmission.Condition{
			Friction: measure.Exact(units.Value(r.num("friction"))), CableEfficiency: measure.Exact(units.Value(r.num("cable_efficiency"))),
			SpringSet: mm("spring_set"), Wear: mm("stack_wear"), OutOfFlat: mm("bend"), RodPlay: mm("rod_clearance"),
			FreePlay: mm("free_play"), CablePull: mm("cable_pull"), CableStiffness: measure.Exact(get[units.SpringRate](r, "cable_stiffness")),
			HubNutBack: measure.Exact(units.Turns(r.num("nut_backed_off"))),
		})
		r.ok(err)
		r.numbers("n_low", w.Low.Turns())
		r.numbers("n_high", w.High.Turns())
	},
}
