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
		sum, err := measure.BudgetOf[units.Ratio](func(x []float64) float64 { return x[0] + x[1] }, measure.Input{X: a.Value, U: a.U}, measure.Input{X: b.Value, U: b.U})
		r.ok(err)
		r.numbers("sd", sum.Combined.Value())
		r.numbers("limit", sum.Limit.Value())
	},
	"sawhney-3-21": func(r *run) {
		var x []units.Ratio
		for _, v := range r.list("x") {
			x = append(x, units.Value(v))
		}
		set, err := measure.Repeat(x...)
		r.ok(err)
		s := set.Deviation.Value()
		r.numbers("mean", set.Mean.Value())
		r.numbers("s", s)
		r.numbers("var", s*s)
		r.numbers("mean_abs_dev", set.MeanDeviation.Value())
	},
	"doebelin-3-2": func(r *run) {
		// The source takes slopes at a point, as BudgetOf does.
		var in []measure.Input
		for _, name := range []string{"R", "F", "L", "t"} {
			in = append(in, measure.Input{X: r.Inputs[name].Value, U: r.Inputs[name].U})
		}
		power := func(x []float64) float64 { return 2 * 3.141592653589793 * x[0] * x[1] * x[2] / x[3] }
		b, err := measure.BudgetOf[units.Power](power, in...)
		r.ok(err)
		r.numbers("absolute", b.Limit.Watts())
		r.numbers("rss", b.Combined.Watts())
		// Propagate takes them over ± u (GUM 5.1.3 note 2); with u/t = 1/120 in
		// a denominator that is 5e-5 more, of no account in an uncertainty.
		p, err := measure.Propagate[units.Power](power, in...)
		r.ok(err)
		if rel := p.U().Watts()/r.Expected["rss"].Value - 1; rel < 4e-5 || rel > 6e-5 {
			r.t.Errorf("rss differs by %.2g, not by the 5e-5 that the finite step explains", rel)
		}
	},
	"gum-g2": func(r *run) {
		for name, p := range map[string]float64{"k95": 0.95, "k9545": 0.9545, "k99": 0.99} {
			k, err := measure.Coverage(p, r.num("nu"))
			r.ok(err)
			r.numbers(name, k)
		}
	},
	"gum-h3": func(r *run) {
		shown, b := r.list("t"), r.list("b")
		var t, actual []units.TemperatureDelta // above 0 °C
		for i := range shown {
			t, actual = append(t, units.KelvinsDelta(shown[i])), append(actual, units.KelvinsDelta(shown[i]+b[i]))
		}
		c, err := measure.Calibrate(t, actual, units.KelvinsDelta(r.num("t0")), measure.Instrument[units.TemperatureDelta]{})
		r.ok(err)
		r.numbers("intercept", c.Offset.Value().KelvinsDelta())
		r.numbers("u_int", c.Offset.U().KelvinsDelta())
		r.numbers("slope", c.Slope.Value().Value())
		r.numbers("u_slope", c.Slope.U().Value())
		r.numbers("corr", c.Correlation)
		at30 := c.Correction(units.KelvinsDelta(30))
		r.numbers("b30", at30.Value().KelvinsDelta())
		r.numbers("u_b30", at30.U().KelvinsDelta())
	},
}
