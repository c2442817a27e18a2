package measure_test

import (
	"math"
	"slices"
	"strconv"
	"testing"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/stat/distmv"
	"pgregory.net/rapid"

	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// anyGaussian draws a cause of a few readings with common effects.
func anyGaussian(t *rapid.T) (measure.Gaussian, measure.Data) {
	n := rapid.IntRange(1, 6).Draw(t, "readings")
	f := func(lo, hi float64, label string) float64 { return rapid.Float64Range(lo, hi).Draw(t, label) }
	g := measure.Gaussian{Mean: make([]float64, n), Own: make([]float64, n)}
	d := make(measure.Data, n)
	effect := func(label string) measure.Effect {
		e := measure.Effect{Name: label, SD: f(0.1, 10, label), Column: make([]float64, n)}
		for i := range e.Column {
			e.Column[i] = f(-1, 1, "column")
		}
		return e
	}
	for i := range n {
		g.Mean[i], g.Own[i] = f(-50, 50, "mean"), f(0.2, 5, "own")
		d[i] = measure.Datum{Value: g.Mean[i] + f(-20, 20, "off"), Taken: i == 0 || rapid.Bool().Draw(t, "taken")}
	}
	for range rapid.IntRange(0, 2).Draw(t, "shared") {
		g.Shared = append(g.Shared, effect("shared"))
	}
	for range rapid.IntRange(0, 2).Draw(t, "free") {
		g.Free = append(g.Free, effect("free"))
	}
	return g, d
}

// full returns the mean and covariance of the readings taken, written out.
func full(g measure.Gaussian, d measure.Data) (at []int, mean, y []float64, cov *mat.SymDense) {
	for i := range d {
		if d[i].Taken {
			at = append(at, i)
			mean, y = append(mean, g.Mean[i]), append(y, d[i].Value)
		}
	}
	cov = mat.NewSymDense(len(at), nil)
	for r, i := range at {
		for c, j := range at[:r+1] {
			v := 0.0
			if i == j {
				v = g.Own[i] * g.Own[i]
			}
			for _, e := range append(append([]measure.Effect(nil), g.Shared...), g.Free...) {
				v += e.SD * e.SD * e.Column[i] * e.Column[j]
			}
			cov.SetSym(r, c, v)
		}
	}
	return at, mean, y, cov
}

// near allows for the rounding of a six by six Cholesky factor whose condition
// number may reach some thousands.
func near(a, b float64) bool { return math.Abs(a-b) <= 1e-8*(1+math.Abs(a)+math.Abs(b)) }

// TestGaussianAgainstGonum compares the likelihood with gonum's multivariate
// normal, and what is expected of a further reading with its conditional.
func TestGaussianAgainstGonum(t *testing.T) { rapid.Check(t, checkGaussian) }

func FuzzGaussian(f *testing.F) {
	fuzzBytes(f)
	f.Fuzz(rapid.MakeFuzz(checkGaussian))
}

func checkGaussian(t *rapid.T) {
	g, d := anyGaussian(t)
	_, mean, y, cov := full(g, d)
	n, ok := distmv.NewNormal(mean, cov, nil)
	if !ok {
		t.Skip("not positive definite to gonum")
	}
	if got, want := g.LogLikelihood(d), n.LogProb(y); !near(got, want) {
		t.Errorf("likelihood %v, gonum %v", got, want)
	}
	// the further reading is one not taken: take all and condition on the rest
	for i := range d {
		if d[i].Taken {
			continue
		}
		all := append(measure.Data(nil), d...)
		all[i].Taken = true
		at, mean, y, cov := full(g, all)
		joint, ok := distmv.NewNormal(mean, cov, nil)
		if !ok {
			t.Skip("not positive definite to gonum")
		}
		var observed []int
		var values []float64
		for k, j := range at {
			if j != i {
				observed, values = append(observed, k), append(values, y[k])
			}
		}
		c, ok := joint.ConditionNormal(observed, values, nil)
		if !ok {
			t.Skip("gonum cannot condition")
		}
		var s mat.SymDense
		c.CovarianceMatrix(&s)
		look := g.Outlook(i, d)
		if m := c.Mean(nil)[0]; !near(look.Mean, m) || !near(look.SD, math.Sqrt(s.At(0, 0))) {
			t.Errorf("outlook %v ± %v, gonum %v ± %v", look.Mean, look.SD, m, math.Sqrt(s.At(0, 0)))
		}
	}
}

// TestFreeAmount compares the amount a cause leaves open with the maximum of
// its posterior, found by the normal equations of one unknown where there is
// nothing else common.
func TestFreeAmount(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g, d := anyGaussian(t)
		g.Shared = nil
		if len(g.Free) == 0 {
			t.Skip("nothing open")
		}
		g.Free = g.Free[:1]
		e := g.Free[0]
		precision, pull := 1/(e.SD*e.SD), 0.0
		for i := range d {
			if d[i].Taken {
				w := 1 / (g.Own[i] * g.Own[i])
				precision += w * e.Column[i] * e.Column[i]
				pull += w * e.Column[i] * (d[i].Value - g.Mean[i])
			}
		}
		v, u := g.Amount(0, d)
		if !near(v, pull/precision) || !near(u, 1/math.Sqrt(precision)) {
			t.Errorf("%v ± %v, want %v ± %v", v, u, pull/precision, 1/math.Sqrt(precision))
		}
	})
}

// TestRankShares holds shares to Bayes' rule written out, per cent to a
// hundred, and the order to the shares.
func TestRankShares(t *testing.T) { rapid.Check(t, checkRank) }

func FuzzRank(f *testing.F) {
	fuzzBytes(f)
	f.Fuzz(rapid.MakeFuzz(checkRank))
}

func checkRank(t *rapid.T) {
	n := rapid.IntRange(1, 8).Draw(t, "causes")
	causes := make([]measure.Cause, n)
	weight := make([]float64, n+1)
	total := 0.0
	one := func(i int, key string) measure.Cause {
		l := rapid.Float64Range(-30, 0).Draw(t, "log likelihood")
		p := rapid.Float64Range(0.01, 100).Draw(t, "prior")
		weight[i] = p * math.Exp(l)
		total += weight[i]
		return measure.Cause{Key: key, Prior: p, Hypothesis: measure.LogLikelihood(func(measure.Data) float64 { return l })}
	}
	for i := range causes {
		causes[i] = one(i, string(rune('a'+i)))
	}
	r, err := measure.Rank(nil, causes, one(n, "x"))
	if err != nil {
		t.Fatal(err)
	}
	percent, last := 0, 1.0
	for _, o := range r.Odds {
		i := n
		if o.Key != measure.SomethingElse {
			i = int(o.Key[0] - 'a')
		}
		if want := weight[i] / total; math.Abs(o.Share-want) > 1e-12 {
			t.Errorf("%s: %v, want %v", o.Key, o.Share, want)
		}
		if math.Abs(float64(o.Percent)-100*o.Share) >= 1 || o.Share > last {
			t.Errorf("%s: %d %% of %v after %v", o.Key, o.Percent, o.Share, last)
		}
		percent += o.Percent
		last = o.Share
	}
	if percent != 100 || len(r.Odds) != n+1 {
		t.Errorf("%d causes, %d %%", len(r.Odds), percent)
	}
}

// Suspects holds all of Within and whatever the readings do not speak against by
// three to one, and nothing else.
func TestSuspects(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 8).Draw(t, "causes")
		causes := make([]measure.Cause, n+1)
		for i := range causes {
			l := rapid.Float64Range(-8, 0).Draw(t, "log likelihood")
			causes[i] = measure.Cause{Key: string(rune('a' + i)), Prior: rapid.Float64Range(0.01, 100).Draw(t, "prior"), Hypothesis: measure.LogLikelihood(func(measure.Data) float64 { return l })}
		}
		r, err := measure.Rank(nil, causes[:n], causes[n])
		if err != nil {
			t.Fatal(err)
		}
		ratio := rapid.Float64Range(1, 100).Draw(t, "ratio")
		listed := map[string]bool{}
		last := r.Leader()
		for i, o := range r.Suspects(ratio) {
			if i == 0 && o.Key != last.Key || o.Share > last.Share {
				t.Errorf("%v stands after %v", o, last)
			}
			listed[o.Key], last = true, o
		}
		for _, o := range r.Odds {
			near := r.Leader().Share <= ratio*o.Share
			against := math.Exp(r.Leader().LogLikelihood - o.LogLikelihood)
			if want := near || against < 3; listed[o.Key] != want {
				t.Errorf("%v listed: %v; %v to 1 against it, leader %v", o, listed[o.Key], against, r.Leader())
			}
		}
	})
	if (measure.Ranking{}).Suspects(20) != nil {
		t.Error("no ranking, yet suspects")
	}
}

// TestNextAgainstEntropy compares the information of a check with named
// outcomes with entropy before less mean entropy after, which it must equal,
// and bounds it by both entropies.
func TestNextAgainstEntropy(t *testing.T) { rapid.Check(t, checkNext) }

func FuzzNext(f *testing.F) {
	fuzzBytes(f)
	f.Fuzz(rapid.MakeFuzz(checkNext))
}

func checkNext(t *rapid.T) {
	n, m := rapid.IntRange(2, 5).Draw(t, "causes"), rapid.IntRange(2, 4).Draw(t, "outcomes")
	r := measure.Ranking{}
	c := measure.Check{Key: "look", Outlooks: map[string]measure.Outlook{}}
	share := normal(t, n)
	chance := make([][]float64, n)
	for i := range n {
		key := string(rune('a' + i))
		chance[i] = normal(t, m)
		r.Odds = append(r.Odds, measure.Odds{Key: key, Share: share[i]})
		c.Outlooks[key] = measure.Outlook{Chances: chance[i]}
	}
	after := 0.0
	for k := range m {
		p := 0.0
		posterior := make([]float64, n)
		for i := range n {
			posterior[i] = share[i] * chance[i][k]
			p += posterior[i]
		}
		for i := range posterior {
			posterior[i] /= p
		}
		after += p * entropy(posterior)
	}
	g, err := measure.Next(r, []measure.Check{c})
	if err != nil || len(g) != 1 || math.Abs(g[0].Bits-(entropy(share)-after)) > 1e-9 {
		t.Fatalf("%v, %v; want %v bits", g, err, entropy(share)-after)
	}
	ordered := measure.Check{Key: "look"}
	for _, o := range r.Odds {
		ordered.InOrder = append(ordered.InOrder, c.Outlooks[o.Key])
	}
	if h, err := measure.Next(r, []measure.Check{ordered}); err != nil || h[0] != g[0] {
		t.Fatalf("in order %v, %v; by key %v", h, err, g)
	}
	// causes that share their chances count as if each had its own
	shared, own := measure.Check{Key: "look"}, measure.Check{Key: "look"}
	for range r.Odds {
		p := chance[rapid.IntRange(0, n-1).Draw(t, "whose")]
		shared.InOrder = append(shared.InOrder, measure.Outlook{Chances: p})
		own.InOrder = append(own.InOrder, measure.Outlook{Chances: slices.Clone(p)})
	}
	if h, err := measure.Next(r, []measure.Check{shared, own}); err != nil || math.Abs(h[0].Bits-h[1].Bits) > 1e-12 {
		t.Fatalf("shared and own chances: %v, %v", h, err)
	}
	ordered.InOrder = ordered.InOrder[1:]
	if _, err := measure.Next(r, []measure.Check{ordered}); err == nil {
		t.Fatal("an outlook too few was passed")
	}
}

func normal(t *rapid.T, n int) []float64 {
	p := make([]float64, n)
	sum := 0.0
	for i := range p {
		p[i] = rapid.Float64Range(0.01, 1).Draw(t, "weight")
		sum += p[i]
	}
	for i := range p {
		p[i] /= sum
	}
	return p
}

func entropy(p []float64) float64 {
	h := 0.0
	for _, x := range p {
		if x > 0 {
			h -= x * math.Log2(x)
		}
	}
	return h
}

// TestPropagateLinear holds the propagated uncertainty of a linear function to
// the root of the sum of squares, and of a top of a curve to be above zero.
func TestPropagateLinear(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 5).Draw(t, "inputs")
		in, k := make([]measure.Input, n), make([]float64, n)
		value, sum := 0.0, 0.0
		for i := range in {
			in[i] = measure.Input{X: rapid.Float64Range(-10, 10).Draw(t, "x"), U: rapid.Float64Range(0.01, 1).Draw(t, "u")}
			k[i] = rapid.Float64Range(0.1, 5).Draw(t, "slope")
			value += k[i] * in[i].X
			sum += k[i] * k[i] * in[i].U * in[i].U
		}
		r, err := measure.Propagate[units.Ratio](func(x []float64) float64 {
			s := 0.0
			for i := range x {
				s += k[i] * x[i]
			}
			return s
		}, in...)
		if err != nil || !near(r.Value().Value(), value) || !near(r.U().Value(), math.Sqrt(sum)) {
			t.Fatalf("%v, %v; want %v ± %v", r, err, value, math.Sqrt(sum))
		}
	})
	top, err := measure.Propagate[units.Ratio](func(x []float64) float64 { return 1 - x[0]*x[0] }, measure.Input{X: 0, U: 0.1})
	// the variance of x² of a normal x is 2 u⁴
	if want := math.Sqrt2 * 0.01; err != nil || top.IsExact() || !near(top.U().Value(), want) {
		t.Errorf("at the top of a curve: %v, exact %v, %v; want u %v", top.U(), top.IsExact(), err, want)
	}
	flat, err := measure.Propagate[units.Ratio](func(x []float64) float64 { return 3 }, measure.Input{X: 0, U: 0.1})
	if err != nil || !flat.IsExact() {
		t.Errorf("a constant: %v, %v", flat, err)
	}
}

// TestMonteCarloOfNormal compares the bounds of a sum of normals with 1.96 of
// its standard deviation. The bound's own standard error is
// sqrt(p (1-p)/n)/density = 2.7 sigma/sqrt(n), so five of those are allowed.
func TestMonteCarloOfNormal(t *testing.T) {
	n := 200_000
	if testing.Short() {
		n = 20_000
	}
	s, err := measure.MonteCarlo[units.Ratio](func(x []float64) float64 { return x[0] + 2*x[1] }, n, 7, measure.Input{X: 1, U: 3}, measure.Input{X: 2, U: 2})
	if err != nil {
		t.Fatal(err)
	}
	allowed := 5 * 2.7 * 5 / math.Sqrt(float64(n))
	for _, c := range [][2]float64{{s.Median.Value(), 5}, {s.Low.Value(), 5 - 1.959964*5}, {s.High.Value(), 5 + 1.959964*5}} {
		if math.Abs(c[0]-c[1]) > allowed {
			t.Errorf("%v, want %v ± %v", c[0], c[1], allowed)
		}
	}
	again, _ := measure.MonteCarlo[units.Ratio](func(x []float64) float64 { return x[0] + 2*x[1] }, n, 7, measure.Input{X: 1, U: 3}, measure.Input{X: 2, U: 2})
	if again != s {
		t.Error("the same seed gave another answer")
	}
}

// Holding is the smallest set that holds p: with its last cause taken away it holds
// less. A ranking of many causes, sorted another way than a short one, comes in the
// same order.
func TestHolding(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 150).Draw(t, "causes")
		causes := make([]measure.Cause, n)
		for i := range causes {
			l := float64(rapid.IntRange(-9, 0).Draw(t, "log likelihood"))
			causes[i] = measure.Cause{Key: strconv.Itoa(i), Prior: float64(rapid.IntRange(1, 4).Draw(t, "prior")),
				Hypothesis: measure.LogLikelihood(func(measure.Data) float64 { return l })}
		}
		r, err := measure.Rank(nil, causes, measure.Cause{Prior: 1, Hypothesis: causes[0].Hypothesis})
		if err != nil {
			t.Fatal(err)
		}
		for i := range r.Odds[1:] {
			if r.Odds[i].Share < r.Odds[i+1].Share {
				t.Fatalf("%v comes before %v", r.Odds[i], r.Odds[i+1])
			}
		}
		p := rapid.Float64Range(-0.5, 1.5).Draw(t, "p")
		held := r.Holding(p)
		sum := 0.0
		for i, o := range held {
			if o != r.Odds[i] {
				t.Fatalf("%v in place of %v", o, r.Odds[i])
			}
			if i > 0 && sum >= p {
				t.Fatalf("%d hold %v already", i, sum)
			}
			sum += o.Share
		}
		if len(held) == 0 || sum < p && len(held) < len(r.Odds) {
			t.Fatalf("%d hold %v of %v", len(held), sum, p)
		}
	})
	if len((measure.Ranking{}).Holding(0.9)) != 0 {
		t.Error("an empty ranking holds something")
	}
}
