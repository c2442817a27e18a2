package checks_test

import (
	"math"

	"example.com/benchbook/timing/cam"
	"example.com/benchbook/timing/crank"
	"example.com/benchbook/units"
	"example.com/benchbook/units/solve"
)

// slider reads throw or stroke, and rod.
func slider(r *run, throw, rod string) crank.Slider {
	r.t.Helper()
	s := crank.Slider{Rod: get[units.Length](r, rod)}
	if throw == "stroke" {
		s.Stroke = get[units.Length](r, throw)
	} else {
		s.Throw = get[units.Length](r, throw)
	}
	return s
}

func afterTDC(r *run, name string) units.CrankPosition {
	r.t.Helper()
	return units.After(units.TDC, get[units.CrankAngle](r, name))
}

// piston is the area of the piston in square metres.
func piston(r *run) float64 {
	b := get[units.Length](r, "bore").Metres()
	return math.Pi / 4 * b * b
}

// anyRod is a cylinder whose case gives no rod, where the answer does not
// depend on it.
func anyRod(r *run) crank.Cylinder {
	s := get[units.Length](r, "stroke")
	return crank.Cylinder{Bore: get[units.Length](r, "bore"), Slider: crank.Slider{Stroke: s, Rod: s.Times(2)}}
}

var crankRunners = map[string]runner{
	"khurmi-15-3": func(r *run) {
		p, err := slider(r, "r", "l").TwoTermGreatestSpeed(get[units.RotationalSpeed](r, "N"))
		r.ok(err)
		want(r, "theta", p.At.After())
		want(r, "v_max", p.Speed)
	},
	"khurmi-15-5": func(r *run) {
		m, err := slider(r, "r", "l").TwoTermMotion(afterTDC(r, "theta"), get[units.RotationalSpeed](r, "N"))
		r.ok(err)
		want(r, "v", m.Velocity)
		want(r, "a", m.Acceleration)
		want(r, "w_rod", m.RodSpeed)
		r.numbers("alpha_rod", math.Abs(m.RodAccelerationRadiansPerSecond2))
	},
	"khurmi-15-2": func(r *run) {
		m, err := slider(r, "r", "l").Motion(afterTDC(r, "theta"), get[units.RotationalSpeed](r, "N"))
		r.ok(err)
		want(r, "v", m.Velocity)
		want(r, "a", m.Acceleration)
	},
	"gupta-16-1": func(r *run) {
		// Bore equals stroke: sought where one cylinder sweeps its part of the whole.
		one := get[units.Volume](r, "V_total").Times(1 / r.num("cylinders"))
		bore, err := solve.Root(func(b units.Length) float64 {
			v, err := crank.Cylinder{Bore: b, Slider: crank.Slider{Stroke: b, Rod: get[units.Length](r, "rod")}}.Displacement()
			r.ok(err)
			return v.Ratio(one) - 1
		}, 50*units.Millimetre, 150*units.Millimetre, units.Micrometres(0.001))
		r.ok(err)
		want(r, "bore", bore)
		c, err := crank.Cylinder{Bore: bore, Slider: crank.Slider{Stroke: bore, Rod: get[units.Length](r, "rod")}}.WithRatio(get[units.Ratio](r, "CR"))
		r.ok(err)
		want(r, "Vc", c.Clearance)
		speed := get[units.RotationalSpeed](r, "N")
		mean, err := c.Slider.MeanSpeed(speed)
		r.ok(err)
		want(r, "mean_speed", mean)
		at := position(r, "theta")
		m, err := c.Slider.Motion(at, speed)
		r.ok(err)
		want(r, "speed", m.Velocity)
		want(r, "x", m.Travel)
		v, err := c.VolumeAt(at)
		r.ok(err)
		want(r, "V", v)
	},
	"meriam-5-9": func(r *run) {
		m, err := slider(r, "r", "l").Motion(afterTDC(r, "theta"), get[units.RotationalSpeed](r, "N"))
		r.ok(err)
		want(r, "beta", m.Rod)
		want(r, "w_rod", m.RodSpeed)
	},
	"bevan-3-4": func(r *run) {
		m, err := slider(r, "r", "l").Motion(afterTDC(r, "theta"), get[units.RotationalSpeed](r, "N"))
		r.ok(err)
		r.numbers("alpha_rod", math.Abs(m.RodAccelerationRadiansPerSecond2))
		want(r, "a_crankpin", m.Crankpin)
	},
	"kates-4-3": func(r *run) {
		s := get[units.Length](r, "stroke")
		v, err := crank.Slider{Stroke: s, Rod: s.Times(2)}.MeanSpeed(units.RevolutionsPerMinute(r.num("strokes_per_min") / 2))
		r.ok(err)
		want(r, "mean_speed", v)
	},
	"khurmi-md-valve": func(r *run) {
		v, err := anyRod(r).Slider.MeanSpeed(get[units.RotationalSpeed](r, "N"))
		r.ok(err)
		want(r, "mean_speed", v)
		port, lift, err := cam.PortFor(get[units.Length](r, "bore"), v, get[units.Speed](r, "v_gas"), get[units.Angle](r, "seat"))
		r.ok(err)
		want(r, "port", port)
		want(r, "lift", lift)
	},
	"khurmi-15-6": func(r *run) {
		m, err := slider(r, "stroke", "l").TwoTermMotion(afterTDC(r, "theta"), get[units.RotationalSpeed](r, "N"))
		r.ok(err)
		want(r, "F_inertia", units.Newtons(get[units.Mass](r, "m").Kilograms()*m.Acceleration.SI()))
	},
	"khurmi-15-7": func(r *run) {
		s := slider(r, "r", "l")
		at := afterTDC(r, "theta")
		m, err := s.TwoTermMotion(at, get[units.RotationalSpeed](r, "N"))
		r.ok(err)
		onPiston := get[units.Pressure](r, "dp").Pascals()*piston(r) - get[units.Mass](r, "m").Kilograms()*m.Acceleration.SI()
		f, err := s.Forces(at, units.Newtons(onPiston))
		r.ok(err)
		want(r, "side_thrust", f.Side)
		want(r, "rod_thrust", f.Rod)
		want(r, "tangential", f.Tangential)
		r.numbers("torque", f.Torque.NewtonMetres()/1e3)
	},
	"khurmi-15-13": func(r *run) {
		stroke := get[units.Length](r, "stroke")
		s := crank.Slider{Stroke: stroke, Rod: stroke.Times(r.num("n") / 2)}
		at := afterTDC(r, "theta")
		m, err := s.TwoTermMotion(at, get[units.RotationalSpeed](r, "N"))
		r.ok(err)
		// The engine stands upright: the book adds the weight of the parts.
		onPiston := (get[units.Pressure](r, "p_at_theta")-get[units.Pressure](r, "p1")).Pascals()*piston(r) + get[units.Mass](r, "m").Kilograms()*(9.81-m.Acceleration.SI())
		f, err := s.Forces(at, units.Newtons(onPiston))
		r.ok(err)
		want(r, "crankpin_effort", f.Tangential)
		want(r, "bearing_thrust", f.Radial)
		r.numbers("torque", f.Torque.NewtonMetres()/1e3)
	},
	"bevan-12-3": func(r *run) {
		// Pressure on the head side, less what is on the crank side, where the
		// piston rod takes part of the face.
		rod := get[units.Length](r, "rod_dia").Metres()
		face := piston(r)
		onPiston := get[units.Pressure](r, "p1").Pascals()*face - get[units.Pressure](r, "p2").Pascals()*(face-math.Pi/4*rod*rod)
		// The book's lever arm is dx/dth by the two-term series, 0.7413 ft; the
		// exact one is 0.7421 ft and gives 6117 lbf ft.
		m, err := slider(r, "stroke", "l").TwoTermMotion(afterTDC(r, "theta"), units.RadiansPerSecond(1))
		r.ok(err)
		want(r, "torque", units.NewtonMetres(onPiston*m.Velocity.MetresPerSecond()))
	},
	"gupta-13-2": func(r *run) {
		s := slider(r, "stroke", "l")
		at := position(r, "theta")
		onPiston := units.Newtons(get[units.Pressure](r, "p").Pascals()*piston(r)) - get[units.Force](r, "friction")
		f, err := s.Forces(at, onPiston)
		r.ok(err)
		want(r, "rod_force", f.Rod)
		want(r, "side_thrust", f.Side)
		s.Offset = get[units.Length](r, "offset")
		// The book counts the angle from the crank parallel to the bore, the
		// library from the piston's own top.
		d, err := s.DeadCentres()
		r.ok(err)
		f, err = s.Forces(units.After(units.TDC, at.After()-d.Lead), onPiston)
		r.ok(err)
		want(r, "side_thrust_offset", f.Side)
	},
	"gupta-2-1": func(r *run) {
		c := anyRod(r)
		c.Clearance = get[units.Volume](r, "Vc")
		ratio, err := c.CompressionRatio()
		r.ok(err)
		t, err := crank.CompressedTemperature(get[units.Temperature](r, "T1"), ratio, r.num("gamma"))
		r.ok(err)
		want(r, "T2", t)
		p, err := crank.CompressedPressure(get[units.Pressure](r, "p1"), ratio, r.num("gamma"))
		r.ok(err)
		want(r, "p2", p)
	},
	"wiki-dcr-7-5": func(r *run) {
		start := get[units.Pressure](r, "p_atm")
		p, err := crank.CompressedPressure(start, get[units.Ratio](r, "DCR"), r.num("n"))
		r.ok(err)
		want(r, "p_abs", p)
		want(r, "p_gauge", p-start)
		want(r, "p_atmospheres", p)
	},
	"mathur-1-1": func(r *run) {
		v, err := anyRod(r).Displacement()
		r.ok(err)
		want(r, "capacity", v.Times(r.num("cylinders")))
	},
	"keswani-11-5": func(r *run) {
		c, err := anyRod(r).WithRatio(get[units.Ratio](r, "CR"))
		r.ok(err)
		want(r, "Vc", c.Clearance)
		// the air standard: heat comes and goes at constant volume, so what is lost
		// is the ratio of the temperatures before and after the squeeze
		before := units.Kelvins(300)
		after, err := crank.CompressedTemperature(before, get[units.Ratio](r, "CR"), 1.4)
		r.ok(err)
		r.numbers("eta_otto", 100*(1-before.SI()/after.SI()))
	},
	"rajput-3-11": func(r *run) {
		p1 := units.Bars(1)
		ratio, err := crank.RatioOfPressures(p1, p1.Times(r.num("p_ratio")), r.num("gamma"))
		r.ok(err)
		want(r, "CR", ratio)
		t, err := crank.CompressedTemperature(get[units.Temperature](r, "T1"), ratio, r.num("gamma"))
		r.ok(err)
		want(r, "T2", t)
	},
	"rajput-17-26": func(r *run) {
		ratio, err := crank.RatioOfTwoPressures(get[units.Pressure](r, "pa"), 0.25, get[units.Pressure](r, "pb"), 0.75, r.num("index"))
		r.ok(err)
		want(r, "CR", ratio)
	},
}
