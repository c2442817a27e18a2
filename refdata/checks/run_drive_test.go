package checks_test

import (
	"fmt"
	"math"

	"example.com/benchbook/timing/gear"
	"example.com/benchbook/transmission/drive"
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// chain reads pitch and sprockets.
func chain(r *run) drive.Sprockets {
	n := r.teeth("z1", "z2")
	return drive.Sprockets{Pitch: get[units.Length](r, "p"), Front: n[0], Rear: n[1]}
}

// pulling runs speed, pull and safety of a chain under a power.
func pulling(r *run, power units.Power, speed, pull, safety string) {
	in := drive.PullInput{Pitch: get[units.Length](r, "p"), Teeth: r.teeth("z1")[0], Speed: get[units.RotationalSpeed](r, "n1"), Power: power}
	if _, ok := r.Inputs["breaking_load"]; ok {
		in.Strength = get[units.Force](r, "breaking_load")
	}
	p, err := drive.ChainPull(in)
	r.ok(err)
	if speed != "" {
		want(r, speed, p.Velocity)
	}
	if pull != "" {
		want(r, pull, p.Pull)
	}
	if safety != "" {
		r.numbers(safety, p.Safety)
	}
}

var driveRunners = map[string]runner{
	"chain-01": func(r *run) {
		z2 := r.num("z1") * r.num("n1") / r.num("n2")
		r.leave("arithmetic on the inputs alone", "z2")
		p, err := drive.PitchFor(get[units.Length](r, "D2"), int(z2))
		r.ok(err)
		want(r, "p", p)
		l, err := drive.ChainLength(drive.Sprockets{Pitch: p, Front: r.teeth("z1")[0], Rear: int(z2)}, get[units.Length](r, "C"), drive.Tangent)
		r.ok(err)
		want(r, "L", l.Length)
	},
	"chain-02": func(r *run) {
		s := chain(r)
		there, err := drive.ChainLength(s, get[units.Length](r, "C_first"), drive.Series)
		r.ok(err)
		back, err := drive.CentreFor(s, there.Pitches, drive.Series)
		r.ok(err)
		want(r, "C", back.Centre)
	},
	"chain-03": func(r *run) {
		power := get[units.Power](r, "rating").Times(r.num("tooth_factor"))
		r.leave("arithmetic on the inputs alone", "P")
		pulling(r, power, "v", "F", "FoS")
		l, err := drive.ChainLength(chain(r), get[units.Length](r, "p").Times(r.num("c_over_p")), drive.Series)
		r.ok(err)
		want(r, "L", l.Length)
	},
	"chain-04": func(r *run) {
		l, err := drive.ChainLength(chain(r), get[units.Length](r, "p").Times(r.num("c_over_p")), drive.Series)
		r.ok(err)
		want(r, "L", l.Length)
	},
	"chain-05": func(r *run) { pulling(r, get[units.Power](r, "P"), "", "", "FoS") },
	"chain-07": func(r *run) {
		power := get[units.Power](r, "rating").Times(r.num("K2"))
		r.leave("arithmetic on the inputs alone", "P")
		pulling(r, power, "", "F", "FoS")
	},
	"chain-09": func(r *run) {
		pulling(r, get[units.Power](r, "P"), "v", "", "")
		r.leave("194.70: the book divides by 63000 where 63025 is right", "F")
		r.leave("its ratio is not given", "z2")
	},
	"chain-10": func(r *run) {
		p := get[units.Length](r, "p")
		d1, err := drive.PitchDiameter(p, r.teeth("z1")[0])
		r.ok(err)
		want(r, "D1", d1)
		d2, err := drive.PitchDiameter(p, int(math.Ceil(r.num("z1")*r.num("n1")/r.num("n2"))))
		r.ok(err)
		want(r, "D2", d2)
	},
	"chain-11": pitchCircles,
	"chain-12": pitchCircles,
	"gear-04": func(r *run) {
		resistance := get[units.Force](r, "resistance") + units.Newtons(get[units.Mass](r, "mass").Kilograms()*9.81*r.num("sin_slope"))
		in := drive.PullAway{
			Torque: get[units.Torque](r, "T_engine"), Mass: get[units.Mass](r, "mass"), Resistance: resistance, Radius: get[units.Length](r, "r"), Efficiency: r.num("eta"),
			WheelsKilogramSquareMetres: r.num("I_wheels"), EngineKilogramSquareMetres: r.num("I_engine"),
		}
		best, err := drive.BestPull(in)
		r.ok(err)
		r.numbers("G", math.Round(best.Overall))
		at, err := in.Pull(r.num("omega_engine") * 0.3 / get[units.Speed](r, "v").MetresPerSecond())
		r.ok(err)
		r.numbers("a", at.Acceleration.MetresPerSecondSquared())
		box, err := drive.BoxOf(fmt.Sprint(r.num("G")))
		r.ok(err)
		line := drive.Line{Box: box, Rolling: measure.Exact(get[units.Length](r, "r").Times(2 * math.Pi))}
		n, err := line.EngineAt(box.Top().Name, get[units.Speed](r, "v"))
		r.ok(err)
		want(r, "omega_engine", n.Value())
		d, err := gear.Simple(20, 20).Drive(n.Value(), get[units.Torque](r, "T_engine"), 0)
		r.ok(err)
		want(r, "P", d.Power)
	},
	"gear-06": func(r *run) {
		box, err := drive.BoxOf(fmt.Sprint(r.num("overall_ratio")))
		r.ok(err)
		line := drive.Line{Box: box, Rolling: measure.Exact(get[units.Length](r, "wheel_diameter").Times(math.Pi))}
		v, err := line.SpeedAt(box.Top().Name, get[units.RotationalSpeed](r, "engine_speed"))
		r.ok(err)
		want(r, "v", v.Value())
	},
	"aero-01": func(r *run) {
		a, err := drive.DragAreaFrom(get[units.Force](r, "F_d"), get[units.Density](r, "rho"), get[units.Speed](r, "v"))
		r.ok(err)
		r.numbers("Cd", a.Ratio(get[units.Area](r, "A")))
	},
	"speedo-01": func(r *run) {
		var got []float64
		for _, v := range r.list("true_speed") {
			g, err := drive.GreatestIndicated(units.KilometresPerHour(v), units.KilometresPerHour(4))
			r.ok(err)
			got = append(got, g.KilometresPerHour())
		}
		r.numbers("greatest_indicated", got...)
	},
	"tyre-02": func(r *run) {
		w, a, rim := r.list("width"), r.list("aspect"), r.list("rim")
		var got []float64
		for i := range w {
			t, err := drive.ParseTyre(fmt.Sprintf("%v/%v-%v", w[i], a[i], rim[i]))
			r.ok(err)
			got = append(got, t.Diameter().Millimetres())
		}
		r.numbers("diameter", got...)
	},
}

func pitchCircles(r *run) {
	var got []float64
	for _, z := range r.list("z") {
		d, err := drive.PitchDiameter(get[units.Length](r, "p"), int(z))
		r.ok(err)
		got = append(got, d.Millimetres())
	}
	r.numbers("pcd", got...)
}
