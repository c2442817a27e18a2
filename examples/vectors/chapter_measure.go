package main

import (
	"math"

	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
	"example.com/benchbook/units/solve"
)

// formula is a function by what it computes; equation is one of one number.
type (
	formula  string
	equation string
)

var formulas = map[formula]func([]float64) float64{
	"pi/4 a^2 b": func(x []float64) float64 { return math.Pi / 4 * x[0] * x[0] * x[1] },
	"a - b":      func(x []float64) float64 { return x[0] - x[1] },
	"1/(a - b)":  func(x []float64) float64 { return 1 / (x[0] - x[1]) },
}

var equations = map[equation]func(float64) float64{
	"cos x - x": func(x float64) float64 { return math.Cos(x) - x },
	"x^3 - 2":   func(x float64) float64 { return x*x*x - 2 },
	"1/x":       func(x float64) float64 { return 1 / x },
}

func (f formula) make() (any, error)  { return formulas[f], nil }
func (e equation) make() (any, error) { return equations[e], nil }

// cause is a cause whose readings are normal.
type cause struct {
	Key      string           `json:"key"`
	Prior    float64          `json:"prior"`
	Gaussian measure.Gaussian `json:"gaussian"`
}

type causes []cause

// weighed is a ranking by what was weighed.
type weighed struct {
	Data   measure.Data `json:"data"`
	Causes causes       `json:"causes"`
	Other  cause        `json:"other"`
}

// spread is a Gaussian worked out over the readings taken.
type spread struct {
	Gaussian measure.Gaussian `json:"gaussian"`
	Data     measure.Data     `json:"data"`
}

func (c cause) build() measure.Cause {
	return measure.Cause{Key: c.Key, Prior: c.Prior, Hypothesis: c.Gaussian}
}

func (c cause) make() (any, error) { return c.build(), nil }

func (c causes) build() []measure.Cause {
	var out []measure.Cause
	for _, x := range c {
		out = append(out, x.build())
	}
	return out
}

func (c causes) make() (any, error) { return c.build(), nil }

func (w weighed) make() (any, error) {
	return measure.Rank(w.Data, w.Causes.build(), w.Other.build())
}

func (s spread) make() (any, error) {
	p, _ := s.Gaussian.Precision(s.Data)
	return p, nil
}

func data(x ...float64) measure.Data {
	var d measure.Data
	for _, v := range x {
		d = append(d, measure.Datum{Value: v, Taken: true})
	}
	return d
}

func measureCases(b *book) {
	readCases(b)
	combineCases(b)
	rankCases(b)
	b.ask(solve.Root[float64], "function, from, to, tolerance", cross([]row{{equation("cos x - x"), 0.0, 1.0}, {equation("x^3 - 2"), 0.0, 3.0}, {equation("x^3 - 2"), 2.0, 3.0}, {equation("1/x"), -1.0, 1.0}}, each(1e-14)))
	b.ask(solve.Inverse[float64], "function, want, from, to, tolerance", cross(each(equation("x^3 - 2")), []row{{6.0, 0.0, 3.0}, {25.0, 0.0, 3.0}, {-2.5, -2.0, 3.0}}, each(1e-14)))
}

func readCases(b *book) {
	caliper := measure.Caliper()
	b.ask(measure.Read[units.Length], "text, instrument", cross(each("7.94 mm ± 0.02", "7.94 ± 0.02 mm", "7.94 mm", "5/16 in +/- 2 thou", "", "7.94", "7.94 mm ± -1"), each(caliper)))
	b.ask(measure.Read[units.Force], "text, instrument", cross(each("28 lb", "120 N ± 3", "12 cm"), each(measure.SpringBalance())))
	b.ask(measure.ReadPosition, "text, instrument", cross(each("25 BTDC", "40° ABDC ± 2°", "TDC ± 0.5", "", "25"), each(measure.DegreeDisc())))
	b.ask(measure.Of[units.Length], "value, u", []row{{mm(7.94), mm(0.02)}, {mm(0), mm(0.1)}})
	b.ask(measure.Exact[units.Length], "value", each(mm(7.94), mm(83)))
	b.ask(measure.By[units.Length], "value, instrument", cross(each(mm(7.94)), each(caliper, measure.PitchGauge(), measure.Nominal[units.Length](0.02))))
	b.ask(measure.Nominal[units.Length], "relative", each(0.02, 0.1))
	for _, ask := range []func() measure.Instrument[units.Length]{measure.Caliper, measure.DialGauge, measure.FeelerGauge, measure.Micrometer, measure.PitchGauge, measure.Rule} {
		b.ask(ask, "", []row{{}})
	}
	for _, ask := range []any{measure.Barometer, measure.CompressionGauge, measure.Count, measure.DegreeDisc, measure.LeakGauge, measure.Protractor, measure.SpringBalance, measure.Thermometer} {
		b.ask(ask, "", []row{{}})
	}
	some := each(mmOf(7.94, 0.02), measure.Exact(mm(83)), measure.Reading[units.Length]{})
	b.ask(measure.Reading[units.Length].Value, "reading", some)
	b.ask(measure.Reading[units.Length].U, "reading", some)
	b.ask(measure.Reading[units.Length].SI, "reading", some)
	b.ask(measure.Reading[units.Length].Taken, "reading", some)
	b.ask(measure.Reading[units.Length].IsExact, "reading", some)
	b.ask(measure.Reading[units.Length].Err, "reading", some)
	b.ask(measure.Reading[units.Length].Or, "reading, other", cross(some, each(mmOf(8, 0.1))))
	b.ask(measure.Reading[units.Length].In, "reading, unit", cross(some, each(1*units.Inch, 1*units.Metre)))
	b.ask(measure.At, "position, u", []row{{at(-25), crankDeg(1)}, {afterBDC(65), crankDeg(0.5)}})
	b.ask(measure.AtBy, "position, instrument", []row{{at(-25), measure.DegreeDisc()}, {afterBDC(65), measure.DegreeDisc()}})
	places := each(measure.At(at(-25), crankDeg(1)), measure.At(afterBDC(65), crankDeg(2)), measure.Position{})
	b.ask(measure.Position.Value, "position", places)
	b.ask(measure.Position.U, "position", places)
	b.ask(measure.Position.Taken, "position", places)
	b.ask(measure.Position.Err, "position", places)
	b.ask(measure.Between[units.Length], "first, second", []row{{mm(2), mm(5)}, {mm(5), mm(2)}})
	gap := measure.Between(mm(2), mm(5))
	b.ask(measure.Interval[units.Length].Holds, "interval, value", cross(each(gap), each(mm(2), mm(4), mm(6))))
	b.ask(measure.Interval[units.Length].Given, "interval", each(gap, measure.Interval[units.Length]{}))
}

func combineCases(b *book) {
	bore, stroke := mmOf(78, 0.02).SI(), mmOf(83, 0.05).SI()
	same := measure.Input{X: 1, U: 0.1}
	b.ask(measure.Propagate[units.Volume], "formula, inputs", []row{{formula("pi/4 a^2 b"), []measure.Input{bore, stroke}}, {formula("a - b"), []measure.Input{stroke, bore}}, {formula("1/(a - b)"), []measure.Input{same, same}}}, rel(1e-7))
	b.ask(measure.BudgetOf[units.Volume], "formula, inputs", []row{{formula("pi/4 a^2 b"), []measure.Input{bore, stroke}}, {formula("a - b"), []measure.Input{stroke, bore}}, {formula("1/(a - b)"), []measure.Input{same, same}}}, rel(1e-5))
	b.ask(measure.MonteCarlo[units.Volume], "formula, draws, seed, inputs", []row{{formula("pi/4 a^2 b"), 4000, uint64(1), []measure.Input{bore, stroke}}, {formula("a - b"), 4000, uint64(2), []measure.Input{stroke, bore}}, {formula("pi/4 a^2 b"), 1, uint64(1), []measure.Input{bore, stroke}}}, rel(1e-3),
		noted("the draws of another generator agree to about a thousandth"))
	b.ask(measure.Repeat[units.Length], "values", each([]units.Length{mm(7.94), mm(7.95), mm(7.93), mm(7.94)}, []units.Length{mm(7.9), mm(8)}, []units.Length{mm(7.94)}))
	repeated, _ := measure.Repeat(mm(7.94), mm(7.95), mm(7.93), mm(7.94))
	b.ask(measure.Repeated[units.Length].By, "repeated, instrument", cross(each(repeated), each(measure.Caliper(), measure.Micrometer())))
	b.ask(measure.Repeated[units.Length].Reading, "repeated", each(repeated, measure.Repeated[units.Length]{Readings: 2, Mean: mm(7.95), Deviation: mm(0.01), Error: mm(0.007), Freedom: 1}))
	b.ask(measure.Coverage, "share, freedom", cross(each(0.95, 0.6827, 1.5), each(0.0, 1.0, 4.0, 19.5)))
	b.ask(measure.Freedom, "parts", each([]measure.Component{{U: 1, Freedom: 4}, {U: 2, Freedom: 9}}, []measure.Component{{U: 1}, {U: 2, Freedom: 9}}, []measure.Component{}))
	shown := []units.Force{newtons(50), newtons(100), newtons(150), newtons(200)}
	actual := []units.Force{newtons(51), newtons(102.2), newtons(152.8), newtons(204.1)}
	b.ask(measure.Calibrate[units.Force], "shown, actual, about, instrument", []row{{shown, actual, newtons(100), measure.SpringBalance()}, {shown, actual, newtons(0), measure.Instrument[units.Force]{}}, {shown[:2], actual[:2], newtons(0), measure.SpringBalance()}})
	c, _ := measure.Calibrate(shown, actual, newtons(100), measure.SpringBalance())
	b.ask(measure.Calibration[units.Force].Correct, "calibration, reading", cross(each(c), each(measure.Of(newtons(120), newtons(3)), measure.Reading[units.Force]{})))
	b.ask(measure.Calibration[units.Force].Correction, "calibration, shown", cross(each(c), each(newtons(120), newtons(300))))
}

func rankCases(b *book) {
	off := func(mean float64) measure.Gaussian {
		return measure.Gaussian{Mean: []float64{mean, mean}, Own: []float64{1, 1}, Shared: []measure.Effect{{Name: "TDC", SD: 1, Column: []float64{1, 1}}}}
	}
	slipped := off(0)
	slipped.Free = []measure.Effect{{Name: "slip", SD: 10, Column: []float64{1, 1}}}
	wide := measure.Gaussian{Mean: []float64{0, 0}, Own: []float64{20, 20}}
	list := causes{{"as-it-should-be", 5, off(0)}, {"one-tooth", 1, off(8)}, {"other-tooth", 1, off(-8)}, {"slipped", 0.5, slipped}, {"twin", 0.2, off(8)}}
	other := cause{Prior: 0.5, Gaussian: wide}
	found := each(data(0, 1), data(4, 5), data(9, 10), data(-3, 12), measure.Data{{Value: 8, Taken: true}, {}})
	b.ask(measure.Rank, "data, causes, other", append(cross(found, each(list), each(other)), row{data(0, 1), causes{}, other}, row{data(0, 1), causes{{"bad", -1, off(0)}}, other}), rel(loose))
	var rankings []row
	for _, f := range found {
		rankings = append(rankings, row{weighed{f[0].(measure.Data), list, other}})
	}
	b.ask(measure.Ranking.Leader, "ranking", rankings, rel(loose))
	b.ask(measure.Ranking.LikeLeader, "ranking", rankings, rel(loose))
	b.ask(measure.Ranking.Of, "ranking, key > odds, known", cross(rankings[:2], each("one-tooth", "nobody")), rel(loose))
	b.ask(measure.Ranking.Suspects, "ranking, ratio", cross(rankings, each(20.0)), rel(loose))
	b.ask(measure.Ranking.Within, "ranking, ratio", cross(rankings, each(3.0, 20.0)), rel(loose))
	b.ask(measure.Ranking.Holding, "ranking, share", cross(rankings, each(0.5, 0.95)), rel(loose))
	b.ask(measure.Odds.Words, "odds", each(measure.Odds{Share: 0.99}, measure.Odds{Share: 0.9}, measure.Odds{Share: 0.6}, measure.Odds{Share: 0.3}, measure.Odds{Share: 0.05}, measure.Odds{Share: 0.001}))
	even := measure.Ranking{Odds: []measure.Odds{{Key: "a", Share: 0.5}, {Key: "b", Share: 0.4}, {Key: "c", Share: 0.1}}}
	look := measure.Check{Key: "look", Work: units.Seconds(60), Outlooks: map[string]measure.Outlook{"a": {Chances: []float64{0.9, 0.1}}, "b": {Chances: []float64{0.2, 0.8}}, "c": {Chances: []float64{0.5, 0.5}}}}
	gauge := measure.Check{Key: "gauge", Work: units.Seconds(600), Outlooks: map[string]measure.Outlook{"a": {Mean: 0, SD: 1}, "b": {Mean: 3, SD: 1}, "c": {Mean: 0, SD: 2}}}
	lacking := measure.Check{Key: "lacking", Outlooks: map[string]measure.Outlook{"a": {Mean: 0, SD: 1}}}
	b.ask(measure.Next, "ranking, checks", cross(each(even), each([]measure.Check{look, gauge}, []measure.Check{gauge}, []measure.Check{lacking})), rel(1e-4))
	gaussians := each(off(8), slipped, wide)
	b.ask(measure.Gaussian.LogLikelihood, "gaussian, data", cross(gaussians, found[1:]))
	b.ask(measure.Gaussian.ChiSquared, "gaussian, data > chi_squared, readings", cross(gaussians, found[1:]))
	b.ask(measure.Gaussian.Amount, "gaussian, index, data > value, u", cross(each(slipped), each(0), found[1:]))
	b.ask(measure.Gaussian.Outlook, "gaussian, index, data", cross(gaussians, each(1), found[3:]))
	b.ask(measure.Gaussian.Precision, "gaussian, data > precision, ok", cross(gaussians[:2], found[4:]), seen(func(p measure.Precision) any { return map[string]any{"readings": len(p.Taken())} }))
	spreads := each(spread{slipped, data(0, 0)}, spread{off(0), found[4][0].(measure.Data)})
	pair := spreads[:1]
	b.ask((*measure.Precision).Taken, "precision", spreads, seen(func(at []int) any { return map[string]any{"indices": floats(at)} }))
	b.ask((*measure.Precision).Weigh, "precision, residuals, weighed", cross(pair, []row{{[]float64{1, 2}, []float64{0, 0}}, {[]float64{-3, 4}, []float64{0, 0}}}))
	w := []float64{0.7, -0.2}
	b.ask((*measure.Precision).Nudge, "precision, index, by, weighed", cross(pair, []row{{0, 0.5, w}, {1, -2.0, w}}))
	b.ask((*measure.Precision).Widen, "precision, index, sd, weighed", cross(pair, []row{{0, 0.5, w}, {1, 2.0, w}}))
	b.ask((*measure.Precision).Relief, "precision, weighed", cross(pair, each(w, []float64{3, 1})))
	b.ask((*measure.Precision).Amount, "precision, index, residuals > value, u", cross(pair, []row{{0, []float64{1, 2}}, {0, []float64{9, 8}}}))
	b.ask((*measure.Precision).AmountNudge, "precision, index, reading, by", cross(pair, []row{{0, 0, 1.0}, {0, 1, -2.0}}))
}

func floats(in []int) []float64 {
	var out []float64
	for _, x := range in {
		out = append(out, float64(x))
	}
	return out
}
