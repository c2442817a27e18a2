package checks_test

import (
	"math"

	"example.com/benchbook/timing/gear"
	"example.com/benchbook/transmission/drive"
	"example.com/benchbook/units"
)

// teeth reads tooth counts of a case.
func (r *run) teeth(names ...string) []int {
	r.t.Helper()
	n := make([]int, len(names))
	for i, name := range names {
		n[i] = int(r.num(name))
	}
	return n
}

func (r *run) ratio(t gear.Train) gear.Rational {
	r.t.Helper()
	q, err := t.Ratio()
	r.ok(err)
	return q
}

var gearRunners = map[string]runner{
	"bevan-11-1a": func(r *run) {
		// The change wheel that the rest of the train leaves to be made up.
		want := gear.NewRational(int64(r.num("n_leadscrew")), int64(r.num("n_spindle")))
		rest := r.ratio(gear.Simple(r.teeth("T2", "T1")...))
		r.numbers("T4", want.Over(rest).Times(gear.NewRational(int64(r.num("T3")), 1)).Abs().Float())
	},
	"khurmi-13-1": func(r *run) {
		t := gear.Simple(r.teeth("TA", "TB")...).Then(r.teeth("TC", "TD")...).Then(r.teeth("TE", "TF")...)
		r.numbers("NF", r.num("NA")*r.ratio(t).Abs().Float())
	},
	"wentzell-11-1": func(r *run) {
		d, err := gear.Simple(r.teeth("N1", "N2")...).Then(r.teeth("N3", "N4")...).Drive(get[units.RotationalSpeed](r, "n1"), get[units.Torque](r, "T1"), 0)
		r.ok(err)
		want(r, "n4", d.Speed)
		want(r, "T4", d.Torque)
		want(r, "hp", d.Power)
	},
	"wentzell-11-2": func(r *run) {
		q := r.ratio(gear.Simple(r.teeth("NA", "NB")...).Then(r.teeth("NC", "ND_idler", "NE")...)).Float()
		r.numbers("train_value", 1/math.Abs(q))
		r.numbers("nE", r.num("nA")*math.Abs(q))
		r.numbers("TE", r.num("TA")/math.Abs(q))
		r.numbers("sign_E_vs_A", math.Copysign(1, q))
	},
	"gear-02": func(r *run) {
		pair := func(name string) drive.Pair {
			n := r.teeth(name+"_driver", name+"_driven")
			return drive.Pair{Driver: n[0], Driven: n[1]}
		}
		b, err := drive.NewLayshaft(drive.Layshaft{Constant: pair("constant"), Indirect: []drive.Mesh{
			{Name: "first", Pair: pair("first")}, {Name: "second", Pair: pair("second")}, {Name: "reverse", Pair: pair("reverse")},
		}, Direct: "top"})
		r.ok(err)
		for gear, answer := range map[string]string{"first": "i1", "second": "i2", "reverse": "iR"} {
			g, _ := b.Gear(gear)
			r.numbers(answer, g.Ratio.Float())
		}
	},
	"hunting-11x31": func(r *run) {
		n := r.teeth("z_pinion", "z_gear")
		h, err := gear.Hunting(n[1], n[0])
		r.ok(err)
		r.numbers("gear_turns", float64(h.Turns))
	},
	"bevan-10-1": func(r *run) {
		want(r, "D", gear.OfCircularPitch(get[units.Length](r, "circular_pitch")).Times(r.num("T")))
	},
	"changewheel-ident": func(r *run) {
		m := gear.OfCircularPitch(get[units.Length](r, "circular_pitch"))
		r.numbers("DP", gear.DiametralPitch(m))
		want(r, "m", m)
	},
	"mh31-dp-equivalents": func(r *run) {
		for name, dp := range map[string]float64{"10": 10, "12": 12, "14": 14, "16": 16, "20": 20} {
			m := gear.OfDiametralPitch(dp)
			if _, ok := r.Expected["m"+name]; ok {
				want(r, "m"+name, m)
			}
			if _, ok := r.Expected["p"+name]; ok {
				want(r, "p"+name, m.Times(math.Pi))
			}
		}
	},
	"wentzell-11-3": func(r *run) {
		m := gear.OfDiametralPitch(r.num("DP"))
		want(r, "D_p", m.Times(r.num("N_p")))
		want(r, "D_g", m.Times(r.num("N_g")))
		want(r, "p", m.Times(math.Pi))
		c, err := gear.Meshing{Pinion: gear.Wheel{Teeth: r.teeth("N_p")[0], Module: m}, Wheel: gear.Wheel{Teeth: r.teeth("N_g")[0], Module: m}}.Contact()
		r.ok(err)
		want(r, "centre", c.Centre)
	},
	"sarkar-4-5": func(r *run) {
		m := gear.OfCircularPitch(get[units.Length](r, "p"))
		_, w, err := gear.TeethFor(get[units.Length](r, "centre"), m, gear.NewRational(int64(r.num("N_B")), int64(r.num("N_A"))))
		r.ok(err)
		pinion, wheel := w.Pinion, w.Wheel // the book takes the larger pair
		r.numbers("T_A", float64(wheel))
		r.numbers("T_B", float64(pinion))
		want(r, "D_A", m.Times(float64(wheel)))
		want(r, "D_B", m.Times(float64(pinion)))
	},
	"bevan-10-4": func(r *run) {
		for answer, ratio := range map[string]float64{"t_rack": math.Inf(1), "t_equal": 1, "t_3to1": r.num("ratio")} {
			n, _, err := gear.LeastTeeth(get[units.Angle](r, "pressure_angle"), ratio, r.num("addendum"))
			r.ok(err)
			r.numbers(answer, float64(n))
		}
	},
	"bevan-10-5": func(r *run) {
		w := gear.Wheel{Teeth: r.teeth("T")[0], Module: units.Millimetres(1), Pressure: get[units.Angle](r, "pressure_angle")}
		a, err := gear.Meshing{Pinion: w, Wheel: w}.AddendumForArc(r.num("arc"))
		r.ok(err)
		r.numbers("addendum", a.Millimetres()/math.Pi) // in circular pitches
	},
	"sarkar-4-2": func(r *run) {
		w := gear.Wheel{Teeth: r.teeth("T")[0], Module: get[units.Length](r, "m"), Pressure: get[units.Angle](r, "pressure_angle")}
		a, err := gear.Meshing{Pinion: w, Wheel: w}.AddendumForArc(r.num("arc"))
		r.ok(err)
		want(r, "addendum", a)
	},
	"khurmi-12-3": func(r *run) {
		c, err := pairOf(r, "pressure_angle").Contact()
		r.ok(err)
		want(r, "path", c.Path)
		want(r, "arc", c.Arc)
		r.numbers("contact_ratio", c.ContactRatio)
	},
	"khurmi-12-6": func(r *run) {
		c, err := pairOf(r, "alpha").Contact()
		r.ok(err)
		want(r, "pinion_angle", c.PinionAngle)
		want(r, "wheel_angle", c.WheelAngle)
		r.numbers("slide_in", c.SlideIn)
		r.numbers("slide_out", c.SlideOut)
	},
	"khurmi-12-5": func(r *run) {
		m := pairOf(r, "alpha")
		c, err := m.Contact()
		r.ok(err)
		want(r, "pinion_angle", c.PinionAngle)
		v, err := m.SlideSpeeds(get[units.RotationalSpeed](r, "N"))
		r.ok(err)
		r.numbers("v_K", v.In.MetresPerSecond()*1e3)
		r.numbers("v_L", v.Out.MetresPerSecond()*1e3)
	},
	"khurmi-12-8": halfAddenda,
	"sarkar-4-3":  halfAddenda,
	"jindal-26-1": func(r *run) {
		for tag, teeth := range map[string]string{"p": "zp", "g": "zg"} {
			g, err := gear.Wheel{Teeth: r.teeth(teeth)[0], Module: get[units.Length](r, "mn"), Pressure: get[units.Angle](r, "alpha_n"), Helix: get[units.Angle](r, "helix")}.Geometry()
			r.ok(err)
			want(r, "tip_"+tag, g.Tip)
			want(r, "root_"+tag, g.Root)
			want(r, "mt", g.TransverseModule)
			want(r, "alpha_t", g.TransversePressure)
			want(r, "axial_pitch", g.AxialPitch)
		}
	},
	"khurmi-12-15": func(r *run) {
		d2 := get[units.Length](r, "d2")
		c, err := gear.CrossedFor(get[units.Length](r, "centre"), d2, get[units.Angle](r, "shaft_angle"), r.num("G"), r.teeth("T2")[0])
		r.ok(err)
		want(r, "alpha1", c.Helix1)
		want(r, "alpha2", c.Helix2)
		l, err := gear.Load(get[units.Torque](r, "torque2"), d2, units.Degrees(20), c.Helix2)
		r.ok(err)
		want(r, "F_a2", l.Axial)
		// the force square to the teeth is one for both; the first wheel feels
		// its part across the first spindle
		square := l.Tangential.Newtons() / math.Cos(c.Helix2.Radians())
		l, err = gear.Load(units.NewtonMetres(square*math.Cos(c.Helix1.Radians())*c.Diameter1.Metres()/2), c.Diameter1, units.Degrees(20), c.Helix1)
		r.ok(err)
		want(r, "F_a1", l.Axial)
	},
	"chordal-spur-12z": func(r *run) {
		g, err := gear.Wheel{Teeth: r.teeth("z")[0], Module: get[units.Length](r, "m"), Pressure: get[units.Angle](r, "alpha"), Shift: r.num("x")}.Geometry()
		r.ok(err)
		want(r, "s", g.Thickness)
		want(r, "theta", g.ChordAngle)
		want(r, "chord", g.Chord)
		want(r, "chordal_addendum", g.ChordalAddendum)
	},
	"chordal-helical-20z-transverse": func(r *run) {
		helix, at := get[units.Angle](r, "helix"), get[units.Angle](r, "alpha_t")
		c := math.Cos(helix.Radians())
		g, err := gear.Wheel{Teeth: r.teeth("z")[0], Module: get[units.Length](r, "m_t").Times(c), Pressure: units.Radians(math.Atan(math.Tan(at.Radians()) * c)), Helix: helix, Shift: r.num("x_t") / c}.Geometry()
		r.ok(err)
		want(r, "s_n", g.Thickness)
		r.numbers("z_v", g.VirtualTeeth)
		want(r, "theta_v", g.ChordAngle)
	},
	"rack-thickness-m3": func(r *run) {
		g, err := gear.Wheel{Teeth: 100, Module: get[units.Length](r, "m"), Pressure: get[units.Angle](r, "alpha")}.Geometry()
		r.ok(err)
		want(r, "s", g.Thickness)
	},
	"khurmi-13-4": func(r *run) {
		e := epicyclic(r, gear.Simple(r.teeth("T_A", "T_B")...))
		arm := get[units.RotationalSpeed](r, "N_arm")
		s, err := e.Last(0, arm)
		r.ok(err)
		want(r, "N_B_A_fixed", s.Last)
		s, err = e.Last(get[units.RotationalSpeed](r, "N_A_case2"), arm)
		r.ok(err)
		want(r, "N_B_case2", s.Last)
	},
	"khurmi-13-5": func(r *run) {
		n := r.teeth("T_B", "T_C", "T_D")
		reverted := n[1] + n[2] - n[0] // one centre distance, one module
		r.numbers("T_E", float64(reverted))
		s, err := epicyclic(r, gear.Simple(n[0], reverted).Then(n[2], n[1])).Last(get[units.RotationalSpeed](r, "N_B"), get[units.RotationalSpeed](r, "N_arm"))
		r.ok(err)
		want(r, "N_C", s.Last)
	},
	"khurmi-13-6": func(r *run) {
		n := r.teeth("T_sun", "T_annulus")
		p := gear.PlanetaryOf(n[0], (n[1]-n[0])/2)
		e, err := p.Epicyclic()
		r.ok(err)
		arm := get[units.RotationalSpeed](r, "N_arm")
		s, err := e.First(get[units.RotationalSpeed](r, "N_annulus"), arm)
		r.ok(err)
		want(r, "N_sun", s.First)
		planet, err := p.PlanetSpeed(s.First, arm)
		r.ok(err)
		want(r, "N_planet", planet)
	},
	"khurmi-13-7": func(r *run) {
		n := r.teeth("T_A", "T_D")
		e, err := gear.PlanetaryOf(n[0], (n[1]-n[0])/2).Epicyclic()
		r.ok(err)
		for _, c := range []string{"case1", "case2"} {
			s, err := e.Arm(units.RevolutionsPerSecond(r.num("n_A")), units.RevolutionsPerSecond(r.num("n_D_"+c)))
			r.ok(err)
			r.numbers("n_arm_"+c, s.Arm.RevolutionsPerSecond())
		}
	},
	"khurmi-13-9": func(r *run) {
		annulus := int(math.Round(get[units.Length](r, "d_annulus").Ratio(get[units.Length](r, "module"))))
		p, err := gear.PlanetaryFor(gear.NewRational(int64(r.num("ratio_sun_to_arm")), 1), annulus)
		r.ok(err)
		r.numbers("T_D", float64(p.Annulus))
		r.numbers("T_B", float64(p.Sun))
		r.numbers("T_C", float64(p.Planet))
	},
	"khurmi-13-11": func(r *run) {
		n := r.teeth("T_A", "T_B", "T_C")
		outer := gear.PlanetaryOf(n[0], n[1]).Annulus
		inner := n[0] + n[1] + n[2] // rings on the centre distance of sun and planet
		r.numbers("T_E", float64(outer))
		r.numbers("T_D", float64(inner))
		sun := units.RevolutionsPerSecond(r.num("n_A"))
		s, err := epicyclic(r, gear.Simple(n[0], n[1]).ThenInternal(n[2], inner)).Arm(sun, units.RevolutionsPerSecond(r.num("n_D")))
		r.ok(err)
		want(r, "omega_arm", s.Arm)
		s, err = epicyclic(r, gear.Simple(n[0], n[1]).ThenInternal(n[1], outer)).Last(sun, s.Arm)
		r.ok(err)
		want(r, "omega_E", s.Last)
	},
	"khurmi-13-16": func(r *run) {
		// a bevel pair over an idler turns over once, as one outside mesh does
		s, err := epicyclic(r, gear.Simple(r.teeth("T_A", "T_B")...)).Last(get[units.RotationalSpeed](r, "N_X"), get[units.RotationalSpeed](r, "N_arm"))
		r.ok(err)
		want(r, "N_Y", s.Last)
	},
	"sarkar-4-12": func(r *run) {
		n := r.teeth("T_h", "T_e", "T_b", "T_c", "T_d")
		first := units.RevolutionsPerMinute(r.num("N_v") * r.ratio(gear.Simple(n[0], n[1])).Float())
		s, err := epicyclic(r, gear.Simple(n[3]+n[4]-n[2], n[2]).Then(n[3], n[4])).Last(first, get[units.RotationalSpeed](r, "N_x_arm"))
		r.ok(err)
		want(r, "N_z", s.Last)
	},
	"bevan-11-5": func(r *run) {
		n := r.teeth("T_b", "T_c", "T_e", "T_d")
		q, err := epicyclic(r, gear.Simple(n[0], n[1]).Then(n[2], n[3])).Fixed("first", "arm", "last")
		r.ok(err)
		r.numbers("N_a_over_N_d", q.Float())
	},
	"bevan-11-8": func(r *run) {
		// A wheel of a bicycle drives the arm through a star wheel; the last wheel
		// turns once for a mile. The first is held.
		n := r.teeth("T_c", "T_d", "T_b", "T_a")
		q, err := epicyclic(r, gear.Simple(n[0], n[1]).Then(n[2], n[3])).Fixed("first", "arm", "last")
		r.ok(err)
		turns := q.Abs().Times(gear.NewRational(int64(r.num("star_turns_per_mile_factor")), 1)).Float()
		want(r, "wheel_diameter", units.Miles(1/(math.Pi*turns)))
	},
	"sarkar-4-17": func(r *run) {
		n := r.teeth("T_a", "T_b", "T_c", "T_d", "T_e")
		toD := epicyclic(r, gear.Simple(n[0], n[1]).Then(n[2], n[3]))
		toE := epicyclic(r, gear.Simple(n[0], n[1]).ThenInternal(n[2], n[4]))
		first := get[units.RotationalSpeed](r, "N_a")
		for answer, held := range map[string]units.RotationalSpeed{"N_e_1": 0, "N_e_2": get[units.RotationalSpeed](r, "N_d_case2")} {
			s, err := toD.Arm(first, held)
			r.ok(err)
			s, err = toE.Last(first, s.Arm)
			r.ok(err)
			want(r, answer, s.Last)
		}
		// The arm is free: what the two trains put on it cancels. The torques do
		// not depend on the speeds; the book's second ratio leaves out the power
		// that d takes when it turns.
		one, err := toD.Torques(units.NewtonMetre)
		r.ok(err)
		other, err := toE.Torques(units.NewtonMetre)
		r.ok(err)
		by := -one.Arm.Ratio(other.Arm)
		ratio := (one.First + other.First.Times(by)).Ratio(other.Last.Times(by))
		r.numbers("torque_ratio_1", ratio)
		r.numbers("torque_ratio_2", ratio)
	},
	"khurmi-13-23": func(r *run) {
		// Three suns and annuli in a row: Z in the held R, Y in Q, X in P. The arm
		// of the first turns Q and X, the arm of the second is the output and the
		// arm of the third.
		arm := func(sun, ring int, first, last units.RotationalSpeed) units.RotationalSpeed {
			e, err := gear.PlanetaryOf(sun, (ring-sun)/2).Epicyclic()
			r.ok(err)
			s, err := e.Arm(first, last)
			r.ok(err)
			return s.Arm
		}
		n := r.teeth("T_Z", "T_R", "T_Y", "T_Q", "T_X", "T_P")
		in := get[units.RotationalSpeed](r, "N_I")
		between := arm(n[0], n[1], in, 0)
		out := arm(n[2], n[3], in, between)
		want(r, "N_O", out)
		e, err := gear.PlanetaryOf(n[4], (n[5]-n[4])/2).Epicyclic()
		r.ok(err)
		s, err := e.Last(between, out)
		r.ok(err)
		want(r, "N_P", s.Last)
		t, err := gear.HoldTorque(get[units.Power](r, "P"), in, out, r.num("efficiency"))
		r.ok(err)
		want(r, "torque_R", t.Hold.Abs())
	},
	"khurmi-13-14": func(r *run) {
		// The layout is inferred: A carries D, which drives E; E and the sun H are
		// one, K and L are the planet, C the held annulus; the arm carries F, which
		// drives G on B. Both printed answers come out of it exactly.
		n := r.teeth("T_D", "T_E", "T_H", "T_K", "T_L", "T_F", "T_G")
		annulus := n[2] + n[3] + n[4] // one module: C reaches round H, K and L
		r.numbers("T_C", float64(annulus))
		sun := get[units.RotationalSpeed](r, "N_A").Times(r.ratio(gear.Simple(n[0], n[1])).Abs().Float())
		s, err := epicyclic(r, gear.Simple(n[2], n[3]).ThenInternal(n[4], annulus)).Arm(sun, 0)
		r.ok(err)
		want(r, "N_B", s.Arm.Times(r.ratio(gear.Simple(n[5], n[6])).Abs().Float()))
	},
}

func epicyclic(r *run, t gear.Train) gear.Epicyclic {
	r.t.Helper()
	e, err := gear.EpicyclicOf(t)
	r.ok(err)
	return e
}

// pairOf reads two spur wheels with one addendum given as a length, or none.
func pairOf(r *run, pressure string) gear.Meshing {
	m := get[units.Length](r, "m")
	w := gear.Wheel{Module: m, Pressure: get[units.Angle](r, pressure)}
	if _, ok := r.Inputs["addendum"]; ok {
		w.Addendum = get[units.Length](r, "addendum").Ratio(m)
	}
	p := w
	p.Teeth, w.Teeth = r.teeth("t")[0], r.teeth("T")[0]
	return gear.Meshing{Pinion: p, Wheel: w}
}

// halfAddenda runs addenda for half the greatest approach and recess.
func halfAddenda(r *run) {
	a, err := pairOf(r, "alpha").AddendaForPart(0.5)
	r.ok(err)
	want(r, "addendum_pinion", a.Pinion)
	want(r, "addendum_wheel", a.Wheel)
	want(r, "arc", a.Arc)
	if _, ok := r.Expected["path"]; ok {
		want(r, "path", a.Path)
	}
}
