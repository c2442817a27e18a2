package checks_test

import (
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

var measureRunners = map[string]runner{
	"kalman-height": func(r *run) {
		// One unknown height with a prior, ten readings of it: a cause whose
		// height is left open.
		z := r.list("z")
		prior := r.Inputs["prior"]
		g := measure.Gaussian{Mean: make([]float64, len(z)), Own: make([]float64, len(z))}
		open := measure.Effect{Name: "height", SD: prior.U, Column: make([]float64, len(z))}
		data := make(measure.Data, len(z))
		for i := range z {
			g.Mean[i], g.Own[i], open.Column[i] = prior.Value, r.num("reading_sd"), 1
			data[i] = measure.Datum{Value: z[i], Taken: true}
		}
		g.Free = []measure.Effect{open}
		shift, _ := g.Amount(0, data)
		r.numbers("mean", prior.Value+shift)
	},
	"gum-h1": func(r *run) {
		// The length of the end gauge is ls + d - ls (dalpha theta + alpha
		// dtheta), d the mean difference seen plus its two corrections.
		ls, d0, d1, d2, theta := r.Inputs["ls"], r.Inputs["d0"], r.Inputs["d1"], r.Inputs["d2"], r.Inputs["theta_mean"]
		const root3, root2 = 1.7320508075688772, 1.4142135623730951
		f := func(x []float64) float64 {
			return x[0] + x[1] + x[2] + x[3] - x[0]*(x[5]*(x[7]+x[8])+x[4]*x[6])
		}
		in := []measure.Input{
			{X: ls.Value / 1e3, U: ls.U / 1e3}, {X: d0.Value / 1e9, U: d0.U / 1e9}, {U: d1.U / 1e9}, {U: d2.U / 1e9},
			{X: r.num("alpha_s"), U: r.num("alpha_s_half_width") / root3}, {U: r.num("d_alpha_half_width") / root3},
			{U: r.num("d_theta_half_width") / root3}, {X: theta.Value, U: theta.U}, {U: r.num("theta_cycle_amplitude") / root2},
		}
		l, err := measure.Propagate[units.Length](f, in...)
		r.ok(err)
		r.numbers("l", l.Value().Micrometres()*1e3)
		r.numbers("u_c", l.U().Micrometres()*1e3)
		only := func(keep int) float64 {
			some := append([]measure.Input(nil), in...)
			for i := range some {
				if i != keep {
					some[i].U = 0
				}
			}
			one, err := measure.Propagate[units.Length](f, some...)
			r.ok(err)
			return one.U().Micrometres() * 1e3
		}
		r.numbers("u_dtheta", only(6))
		r.numbers("u_dalpha", only(5))
	},
	"sawhney-3-34": func(r *run) {
		a, b := r.Inputs["I1"], r.Inputs["I2"]
		sum, err := measure.Propagate[units.Ratio](func(x []float64) float64 { return x[0] + x[1] }, measure.Input{X: a.Value, U: a.U}, measure.Input{X: b.Value, U: b.U})
		r.ok(err)
		r.numbers("sd", sum.U().Value())
		r.leave("a sum of limits is not offered", "limit")
	},
	"doebelin-3-2": func(r *run) {
		var in []measure.Input
		for _, name := range []string{"R", "F", "L", "t"} {
			in = append(in, measure.Input{X: r.Inputs[name].Value, U: r.Inputs[name].U})
		}
		p, err := measure.Propagate[units.Power](func(x []float64) float64 { return 2 * 3.141592653589793 * x[0] * x[1] * x[2] / x[3] }, in...)
		r.ok(err)
		// The source takes slopes at a point, the library over ± u (GUM 5.1.3
		// note 2); with u/t = 1/120 in a denominator that is 5e-5 more, far
		// outside the ten digits printed and of no account in an uncertainty.
		if rel := p.U().Watts()/r.Expected["rss"].Value - 1; rel < 4e-5 || rel > 6e-5 {
			r.t.Errorf("rss differs by %.2g, not by the 5e-5 that the finite step explains", rel)
		}
		r.leave("slopes over ± u give 22.0764, 5e-5 more", "rss")
		r.leave("a sum of limits is not offered", "absolute")
	},
}
