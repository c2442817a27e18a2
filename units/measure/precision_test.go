package measure_test

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/mat"
	"pgregory.net/rapid"

	"example.com/benchbook/units/measure"
)

// drawGaussian draws a cause of n readings with one shared and two open effects.
func drawGaussian(t *rapid.T, n int) (measure.Gaussian, measure.Data) {
	figure := func(lo, hi float64, name string) []float64 {
		x := make([]float64, n)
		for i := range x {
			x[i] = rapid.Float64Range(lo, hi).Draw(t, name)
		}
		return x
	}
	effect := func(name string) measure.Effect {
		return measure.Effect{Name: name, SD: rapid.Float64Range(0.1, 20).Draw(t, name), Column: figure(-1, 1, name)}
	}
	g := measure.Gaussian{
		Mean: figure(-20, 20, "mean"), Own: figure(0.3, 3, "own"),
		Shared: []measure.Effect{effect("common")}, Free: []measure.Effect{effect("a"), effect("b")},
	}
	d := make(measure.Data, n)
	for i := range d {
		d[i] = measure.Datum{Value: rapid.Float64Range(-30, 30).Draw(t, "value"), Taken: rapid.Bool().Draw(t, "taken")}
	}
	return g, d
}

// The peer is gonum's dense Cholesky on the covariance written out.
func TestGaussianAgreesWithDenseAlgebra(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 20).Draw(t, "n")
		g, d := drawGaussian(t, n)
		var at []int
		for i, x := range d {
			if x.Taken {
				at = append(at, i)
			}
		}
		if len(at) == 0 {
			t.Skip("nothing taken")
		}
		c, q := mat.NewSymDense(len(at), nil), mat.NewVecDense(len(at), nil)
		for k, i := range at {
			q.SetVec(k, d[i].Value-g.Mean[i])
			for l, j := range at {
				v := 0.0
				if i == j {
					v = g.Own[i] * g.Own[i]
				}
				for _, e := range append(g.Shared[:1:1], g.Free...) {
					v += e.SD * e.SD * e.Column[i] * e.Column[j]
				}
				if l <= k {
					c.SetSym(k, l, v)
				}
			}
		}
		var chol mat.Cholesky
		if !chol.Factorize(c) {
			t.Fatal("not positive definite")
		}
		var w mat.VecDense
		if err := chol.SolveVecTo(&w, q); err != nil {
			t.Fatal(err)
		}
		want := -0.5 * (mat.Dot(q, &w) + chol.LogDet() + float64(len(at))*math.Log(2*math.Pi))
		// own errors of 0.3 against effects of 20 give condition numbers of some 1e5
		near := func(what string, got, want float64) {
			if !(math.Abs(got-want) <= 1e-8*(1+math.Abs(want))) {
				t.Errorf("%s %v, want %v", what, got, want)
			}
		}
		near("log likelihood", g.LogLikelihood(d), want)
		chi2, m := g.ChiSquared(d)
		near("chi squared", chi2, mat.Dot(q, &w))
		if m != len(at) {
			t.Errorf("%d readings, want %d", m, len(at))
		}

		p, ok := g.Precision(d)
		if !ok {
			t.Fatal("no precision")
		}
		res, pw := make([]float64, len(at)), make([]float64, len(at))
		for k := range res {
			res[k] = q.AtVec(k)
		}
		ll := p.Weigh(res, pw)
		near("weighed", ll, want)
		for k := range g.Free {
			v, u := g.Amount(k, d)
			pv, pu := p.Amount(k, res)
			near("amount", pv, v)
			near("its u", pu, u)
		}
		// a nudge and a widening must equal the sum done anew
		i := rapid.IntRange(0, len(at)-1).Draw(t, "nudged")
		d[at[i]].Value += 7
		if most := p.Relief(pw); p.Nudge(i, 7, pw) > most+1e-9 || p.Widen(i, 5, pw) > most+1e-9 { // rounding
			t.Errorf("nudge %v, widening %v above %v", p.Nudge(i, 7, pw), p.Widen(i, 5, pw), most)
		}
		near("nudge", ll+p.Nudge(i, 7, pw), g.LogLikelihood(d))
		v0, _ := p.Amount(0, res)
		v1, _ := g.Amount(0, d)
		near("nudged amount", v0+p.AmountNudge(0, i, 7), v1)
		d[at[i]].Value -= 7
		g.Own[at[i]] = math.Hypot(g.Own[at[i]], 5)
		near("widen", ll+p.Widen(i, 5, pw), g.LogLikelihood(d))
	})
}

func TestGaussianAllocatesNothing(t *testing.T) {
	g := measure.Gaussian{
		Mean: []float64{0, 0, 0, 0}, Own: []float64{1, 1, 1, 1},
		Free: []measure.Effect{{SD: 10, Column: []float64{1, 1, 0, 0}}},
	}
	d := measure.Data{{Value: 12, Taken: true}, {Value: 15, Taken: true}, {}, {Value: 1, Taken: true}}
	if n := testing.AllocsPerRun(100, func() { g.LogLikelihood(d); g.Amount(0, d); g.Outlook(2, d) }); n != 0 {
		t.Errorf("%v allocations, want none", n)
	}
}
