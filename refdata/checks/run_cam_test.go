package checks_test

import (
	"math"

	"example.com/benchbook/timing"
	"example.com/benchbook/timing/cam"
	"example.com/benchbook/timing/gear"
	"example.com/benchbook/timing/ignition"
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
	"example.com/benchbook/units/solve"
)

// rises runs a rise and a fall by one law and compares the greatest
// acceleration, in metres or centimetres, and velocity where there is one.
func rises(law cam.Law, rise, fall string) runner {
	return func(r *run) {
		for side, tag := range map[string]string{"rise": rise, "fall": fall} {
			g, err := cam.Rise{Law: law, Lift: get[units.Length](r, "lift"), Over: get[units.CamAngle](r, side)}.Greatest(get[units.RotationalSpeed](r, "N"))
			r.ok(err)
			if r.Expected["a_"+tag].Unit == "cm/s²" {
				r.numbers("a_"+tag, g.InTime.SI()*100)
			} else {
				want(r, "a_"+tag, g.InTime)
			}
			if _, ok := r.Expected["v_"+tag]; ok {
				want(r, "v_"+tag, g.Speed)
			}
		}
	}
}

// events reads the events of a case as exact as any reading may be.
func events(r *run, io, ic, eo, ec string) timing.Lobes {
	at := func(name string) measure.Position {
		if name == "" {
			return measure.Position{}
		}
		return measure.At(position(r, name), units.CrankDegrees(1e-9))
	}
	l, err := timing.LobesOf(timing.Readings{InletOpens: at(io), InletCloses: at(ic), ExhaustOpens: at(eo), ExhaustCloses: at(ec)}, timing.Options{})
	r.ok(err)
	return l
}

var camRunners = map[string]runner{
	"sarkar-9-2":         rises(cam.Harmonic, "out", "ret"),
	"cam-shm-valve-50mm": rises(cam.Harmonic, "up", "down"),
	"sarkar-9-5":         rises(cam.Parabolic, "out", "ret"),
	"cam-cycloidal-20mm-60deg": func(r *run) {
		rise := cam.Rise{Law: cam.Cycloidal, Lift: get[units.Length](r, "lift"), Over: get[units.CamAngle](r, "rise")}
		at := func(deg float64) cam.Motion {
			m, err := rise.At(units.CamDegrees(deg))
			r.ok(err)
			return m
		}
		want(r, "s_5", at(5).Lift)
		r.numbers("v_5", at(5).VelocityMMPerDegree)
		r.numbers("a_5", at(5).AccelerationMMPerDegree2)
		want(r, "s_15", at(15).Lift)
		r.numbers("v_15", at(15).VelocityMMPerDegree)
		r.numbers("a_15_max", at(15).AccelerationMMPerDegree2)
		want(r, "s_30", at(30).Lift)
		r.numbers("v_30_max", at(30).VelocityMMPerDegree)
	},
	"bevan-9-7": func(r *run) {
		arm := get[units.Length](r, "BC")
		for tag, names := range map[string][2]string{"25": {"OM1", "NZ1"}, "45": {"OM2", "NZ2"}} {
			// the lever's end: travel by cam radian, off the drawing, by degree
			perDegree := math.Pi / 180
			m := cam.Motion{
				VelocityMMPerDegree:      get[units.Length](r, names[0]).Millimetres() * perDegree,
				AccelerationMMPerDegree2: get[units.Length](r, names[1]).Millimetres() * perDegree * perDegree,
			}
			// the case gives the speed of the cam; the crank turns twice as fast
			end, err := m.At(get[units.RotationalSpeed](r, "N").Times(2))
			r.ok(err)
			r.numbers("w"+tag, end.Velocity.SI()/arm.Metres())
			r.numbers("alpha"+tag, end.Acceleration.SI()/arm.Metres())
		}
	},
	"khurmi-tangent-cam": func(r *run) {
		half := get[units.CamAngle](r, "half_angle")
		m, err := cam.TangentCam{BaseRadius: get[units.Length](r, "base_radius"), Lift: get[units.Length](r, "lift"), HalfAngle: half, Roller: get[units.Length](r, "roller")}.At(-half.Times(1 - 1e-9)) // just on the flank: acceleration steps there
		r.ok(err)
		// the case gives the speed of the cam; the crank turns twice as fast
		start, err := m.At(get[units.RotationalSpeed](r, "N").Times(2))
		r.ok(err)
		want(r, "a_start", start.Acceleration)
	},
	"khurmi-10-32": func(r *run) {
		t := taper(r, "half_angle", "D_mean", "mu")
		torque := torqueOf(r)
		one, err := t.Hold(units.Newtons(1000))
		r.ok(err)
		push := units.Newtons(1000 * torque.Ratio(one.Torque.Low))
		want(r, "F_seat", push)
		g, err := t.Hold(push)
		r.ok(err)
		face, err := t.FaceFor(g.Normal.Low, get[units.Pressure](r, "p"))
		r.ok(err)
		want(r, "b", face)
	},
	"khurmi-10-31": func(r *run) {
		t := taper(r, "half_angle", "D_mean", "mu")
		one, err := t.Hold(units.Newtons(1000))
		r.ok(err)
		normal := one.Normal.Low.Times(torqueOf(r).Ratio(one.Torque.Low))
		face, err := t.FaceFor(normal, get[units.Pressure](r, "p_n"))
		r.ok(err)
		want(r, "b", face)
		out := face.Times(math.Sin(get[units.Angle](r, "half_angle").Radians()) / 2)
		want(r, "r1", t.MeanDiameter.Times(0.5)+out)
		want(r, "r2", t.MeanDiameter.Times(0.5)-out)
		// the book goes on with the pressure at the small end of a worn cone
		t.Length = face.Times(math.Cos(get[units.Angle](r, "half_angle").Radians()))
		worn, err := t.Bedded(units.Newtons(1000))
		r.ok(err)
		want(r, "W", units.Newtons(1000*get[units.Pressure](r, "p_n").Ratio(worn.Pressure)))
	},
	"jindal-22-8": func(r *run) {
		g, err := taper(r, "half_angle", "D_mean", "mu").Hold(get[units.Force](r, "W"))
		r.ok(err)
		want(r, "T", g.Turning.Low)
	},
	"shigley-16-19": func(r *run) {
		d, D := get[units.Length](r, "d"), get[units.Length](r, "D")
		alpha := units.Radians(math.Atan((D - d).Times(0.5).Ratio(get[units.Length](r, "l"))))
		r.leave("arithmetic on the inputs alone", "alpha")
		f := get[units.Ratio](r, "f")
		t := cam.Taper{HalfAngle: alpha, MeanDiameter: (D + d).Times(0.5), Length: get[units.Length](r, "l"), Friction: measure.Between(f, f)}
		one, err := t.Hold(units.Newtons(1000))
		r.ok(err)
		push := units.Newtons(1000 * get[units.Torque](r, "T").Ratio(one.Turning.Low))
		want(r, "F", push)
		worn, err := t.Bedded(push)
		r.ok(err)
		want(r, "p_a", worn.Pressure)
	},
	"tayal-6-9": func(r *run) {
		g, err := cam.Taper{HalfAngle: get[units.Angle](r, "wedge_angle").Times(0.5), MeanDiameter: units.Millimetres(20), Length: units.Millimetres(20)}.Hold(units.Newtons(1))
		r.ok(err)
		want(r, "mu_req", g.Needs)
	},
	"ugural-ex3-243": func(r *run) {
		a, b, c := get[units.Length](r, "a"), get[units.Length](r, "b"), get[units.Length](r, "c")
		m := cam.Metal{Modulus: get[units.Pressure](r, "E"), Poisson: 0.3} // one material: it drops out
		d := get[units.Length](r, "delta_radial").Times(2)
		g, err := cam.PressFit{Joint: b.Times(2), Hub: c.Times(2), ShaftBore: a.Times(2), Length: b, Interference: measure.Between(d, d), HubMetal: m, ShaftMetal: m}.Hold()
		r.ok(err)
		want(r, "p", g.Pressure.Low)
		p := get[units.Pressure](r, "p") // the book goes on with its rounded figure
		hoop := func(answer string, inner, outer, at units.Length, inside, outside units.Pressure) {
			s, err := cam.Lame(inner, outer, at, inside, outside)
			r.ok(err)
			want(r, answer, s)
		}
		hoop("hoop_outer_bore", b, c, b, p, 0)
		hoop("hoop_outer_rim", b, c, c, p, 0)
		hoop("hoop_inner_bore", a, b, a, 0, p)
		hoop("hoop_inner_rim", a, b, b, 0, p)
	},
	"bhavikatti-8-15": func(r *run) {
		r1, r2, r3 := get[units.Length](r, "r1"), get[units.Length](r, "r2"), get[units.Length](r, "r3")
		shrink, fluid := get[units.Pressure](r, "p_shrink"), get[units.Pressure](r, "p_fluid")
		both := func(answer string, at, inner, outer units.Length, inside, outside units.Pressure) {
			whole, err := cam.Lame(r1, r3, at, fluid, 0)
			r.ok(err)
			part, err := cam.Lame(inner, outer, at, inside, outside)
			r.ok(err)
			want(r, answer, whole+part)
		}
		both("hoop_200", r1, r1, r2, 0, shrink)
		both("hoop_250_inner", r2, r1, r2, 0, shrink)
		both("hoop_250_outer", r2, r2, r3, shrink, 0)
		both("hoop_300", r3, r2, r3, shrink, 0)
	},
	"ugural-8-4": func(r *run) {
		d := get[units.Length](r, "delta_radial").Times(2) // the printed answer of the first part
		m := cam.Metal{Modulus: get[units.Pressure](r, "E"), Poisson: r.num("nu")}
		g, err := cam.PressFit{Joint: get[units.Length](r, "shaft_d"), Hub: get[units.Length](r, "disc_d"), Length: units.Metres(1), Interference: measure.Between(d, d), HubMetal: m, ShaftMetal: m}.Hold()
		r.ok(err)
		want(r, "p_rest", g.Pressure.Low)
		want(r, "hoop_rest", g.HubHoop.Low)
		r.leave("a spinning disc is not offered", "delta_radial")
	},
	"khurmi-10-33": func(r *run) {
		// the radius at which the face that the pressure asks for is a third of it
		torque, p := torqueOf(r), get[units.Pressure](r, "p_n")
		face := func(radius units.Length) units.Length {
			t := taper(r, "half_angle", "", "mu")
			t.MeanDiameter = radius.Times(2)
			one, err := t.Hold(units.Newtons(1000))
			r.ok(err)
			b, err := t.FaceFor(one.Normal.Low.Times(torque.Ratio(one.Torque.Low)), p)
			r.ok(err)
			return b
		}
		radius, err := solve.Root(func(x units.Length) float64 { return face(x).Ratio(x) - 1/r.num("R_over_b") }, 10*units.Millimetre, units.Metre, units.Micrometre)
		r.ok(err)
		want(r, "R", radius)
		out := face(radius).Times(math.Sin(get[units.Angle](r, "half_angle").Radians()) / 2)
		want(r, "r1", radius+out)
		want(r, "r2", radius-out)
	},
	"singh-7-4": func(r *run) {
		d := get[units.Length](r, "d")
		k := cam.Key{Shaft: d, Width: get[units.Length](r, "b_used"), Height: get[units.Length](r, "b_used")}
		tau := get[units.Pressure](r, "tau")
		shaft := units.NewtonMetres(math.Pi / 16 * math.Pow(d.Metres(), 3) * tau.Pascals()) // what the shaft carries
		keyLength(r, k, shaft, "l", tau, 1e3*units.Gigapascal)
		// the height at which the key is as long for crushing as for shear
		crush := get[units.Pressure](r, "sigma_c")
		t, err := solve.Root(func(t units.Length) float64 {
			k.Height = t
			shear, err := k.LengthFor(shaft, tau, 1e3*units.Gigapascal)
			r.ok(err)
			bearing, err := k.LengthFor(shaft, 1e3*units.Gigapascal, crush)
			r.ok(err)
			return bearing.Ratio(shear) - 1
		}, units.Millimetre, 100*units.Millimetre, units.Micrometre)
		r.ok(err)
		want(r, "t", t)
		r.leave("a proportion of the trade: a quarter of the shaft", "b")
	},
	"wentzell-15-1": func(r *run) {
		k := cam.Key{Shaft: get[units.Length](r, "D"), Width: get[units.Length](r, "b"), Height: get[units.Length](r, "b")}
		sf := 1 / r.num("SF")
		n := get[units.RotationalSpeed](r, "n")
		shaft, err := gear.HoldTorque(get[units.Power](r, "hp"), n, n, 0)
		r.ok(err)
		torque := shaft.In
		want(r, "T", torque)
		keyLength(r, k, torque, "L_shear", get[units.Pressure](r, "Ss").Times(sf), 1e3*units.Gigapascal)
		keyLength(r, k, torque, "L_bearing", 1e3*units.Gigapascal, get[units.Pressure](r, "Sc").Times(sf))
	},
	"singh-7-10": func(r *run) {
		k := cam.Key{Shaft: get[units.Length](r, "d"), Width: get[units.Length](r, "b"), Height: get[units.Length](r, "b")}
		l, err := k.LengthFor(get[units.Torque](r, "T"), get[units.Pressure](r, "tau_k"), 1e3*units.Gigapascal)
		r.ok(err)
		r.numbers("l_up", math.Ceil(l.Millimetres()))
		shaft, err := gear.Train{}.Drive(get[units.RotationalSpeed](r, "N"), get[units.Torque](r, "T"), 0)
		r.ok(err)
		want(r, "P", shaft.Power)
	},
	"singh-7-8": func(r *run) {
		k := cam.Key{Shaft: get[units.Length](r, "d"), Width: get[units.Length](r, "b"), Height: get[units.Length](r, "t")}
		torque := torqueOf(r)
		keyLength(r, k, torque, "l_shear", get[units.Pressure](r, "tau"), 1e3*units.Gigapascal)
		keyLength(r, k, torque, "l_crush", 1e3*units.Gigapascal, get[units.Pressure](r, "sigma"))
		r.leave("allowed stresses are the caller's", "tau", "sigma")
	},
	"singh-7-3": func(r *run) {
		s := cam.Splines{Number: r.teeth("n")[0], Inner: get[units.Length](r, "d"), Outer: get[units.Length](r, "D"), Length: units.Millimetres(1)}
		each, err := s.Torque(get[units.Pressure](r, "p"))
		r.ok(err)
		want(r, "l", units.Millimetres(torqueOf(r).Ratio(each)))
		f, err := s.ShiftForce(torqueOf(r), get[units.Ratio](r, "mu"))
		r.ok(err)
		want(r, "F_shift", f)
	},
	"rajput-5-1": func(r *run) {
		b, err := ignition.BurnEnd(position(r, "spark"), get[units.CrankAngle](r, "delay"), get[units.Length](r, "bore").Times(0.5)+get[units.Length](r, "plug_offset"), get[units.Speed](r, "flame_speed"), get[units.RotationalSpeed](r, "N"))
		r.ok(err)
		want(r, "time", b.Took)
		place(r, "end", b.Ends)
	},
	"mathur-5-1": func(r *run) {
		burning := position(r, "delay_end")
		first := units.RevolutionsPerMinute(2000) // only the ratio of the speeds counts
		degrees := burning.After() - position(r, "spark").After()
		delay := units.Seconds(degrees.SI() / first.RadiansPerSecond())
		at, err := ignition.SparkFor(burning, delay, first.Times(0.5))
		r.ok(err)
		place(r, "spark_full", at)
		at, err = ignition.SparkFor(burning, delay.Times(1+get[units.Ratio](r, "delay_rise").Value()), first.Times(0.5))
		r.ok(err)
		place(r, "spark_half", at)
	},
	"duration-200deg": func(r *run) {
		want(r, "duration", events(r, "IVO", "IVC", "", "").InletDuration.Value())
	},
	"vt-kansas-1935": func(r *run) {
		l := events(r, "IO", "IC", "EO_min", "EC")
		want(r, "in_duration", l.InletDuration.Value())
		want(r, "ex_duration_min", l.ExhaustDuration.Value())
		want(r, "ex_duration_max", events(r, "IO", "IC", "EO_max", "EC").ExhaustDuration.Value())
	},
	"vt-waec": func(r *run) {
		l := events(r, "IO", "IC", "EO", "EC")
		want(r, "overlap", l.Overlap.Value())
		want(r, "ex_duration", l.ExhaustDuration.Value())
		want(r, "inlet_closed_one_rev", 360*units.CrankDegree-l.InletDuration.Value())
	},
}

// place compares a place of the crank with an answer printed before or after
// its dead centre.
func place(r *run, answer string, got units.CrankPosition) {
	r.t.Helper()
	by := got.After()
	if u := r.Expected[answer].Unit; u == "° BTDC" || u == "° BBDC" {
		by = -by
	}
	r.numbers(answer, by.Degrees())
}

func taper(r *run, angle, mean, friction string) cam.Taper {
	f := get[units.Ratio](r, friction)
	t := cam.Taper{HalfAngle: get[units.Angle](r, angle), Length: units.Millimetres(50), Friction: measure.Between(f, f)}
	if mean != "" {
		t.MeanDiameter = get[units.Length](r, mean)
	}
	return t
}

// torqueOf is the torque of power P at speed N.
func torqueOf(r *run) units.Torque {
	return units.NewtonMetres(get[units.Power](r, "P").Watts() / get[units.RotationalSpeed](r, "N").RadiansPerSecond())
}

func keyLength(r *run, k cam.Key, torque units.Torque, answer string, shear, bearing units.Pressure) {
	r.t.Helper()
	l, err := k.LengthFor(torque, shear, bearing)
	r.ok(err)
	want(r, answer, l)
}
