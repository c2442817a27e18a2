package measure_test

import (
	"encoding/json"
	"fmt"
	"math"

	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// A figure with its own uncertainty, a bare one with that of the caliper.
func ExampleRead() {
	r, err := measure.Read("7.94 mm ± 0.05", measure.Caliper())
	fmt.Println(r, err)
	r, _ = measure.Read("5/16 in", measure.Caliper())
	fmt.Println(r, "by", r.Instrument())
	_, err = measure.Read("7.94", measure.Caliper())
	fmt.Println(err)
	// Output:
	// 7.94 ± 0.05 mm <nil>
	// 7.94 ± 0.02 mm by caliper
	// 7.94: say the unit of this length: mm, in, thou, m, cm, µm, ft, yd, mile, km
}

func ExampleReadPosition() {
	p, err := measure.ReadPosition("25 BTDC", measure.DegreeDisc())
	fmt.Println(p, err)
	p, _ = measure.ReadPosition("-", measure.DegreeDisc())
	fmt.Println(p)
	// Output:
	// 25° BTDC ± 1.0° <nil>
	// not taken
}

func ExampleOf() {
	fmt.Println(measure.Of(units.Millimetres(7.938), units.Millimetres(0.02)))
	// Output: 7.94 ± 0.02 mm
}

func ExampleBy() {
	fmt.Println(measure.By(units.Newtons(120), measure.SpringBalance()))
	// Output: 120 ± 4 N
}

// Exact has to be said by name: a count, a definition.
func ExampleExact() {
	r := measure.Exact(units.Value(48))
	fmt.Println(r, r.IsExact())
	// Output: 48 true
}

func ExampleAt() {
	fmt.Println(measure.At(units.Before(units.TDC, 32*units.CrankDegree), units.CrankDegrees(0.5)))
	// Output: 32° BTDC ± 0.5°
}

func ExampleAtBy() {
	fmt.Println(measure.AtBy(units.After(units.BDC, 60*units.CrankDegree), measure.DegreeDisc()))
	// Output: 60° ABDC ± 1.0°
}

// The zero Reading was not taken, which is not the same as zero.
func ExampleReading() {
	var set measure.Reading[units.Length]
	fmt.Println(set, set.Taken())
	fallback := measure.By(units.Millimetres(0), measure.Rule())
	fmt.Println(set.Or(fallback))
	b, _ := json.Marshal(measure.MustRead("5/16 in", measure.Caliper()))
	fmt.Println(string(b))
	// Output:
	// not taken false
	// 0.0 ± 0.3 mm
	// {"text":"5/16 in","value":7.9375,"unit":"mm","u":0.02}
}

func ExampleInstrument() {
	vernier := measure.Instrument[units.Length]{Name: "old vernier", U: 2 * units.Thou}
	fmt.Println(measure.By(units.Inches(0.312), vernier))
	// Output: 7.92 ± 0.05 mm
}

func ExampleNominal() {
	fmt.Println(measure.By(units.Megapascals(600), measure.Nominal[units.Pressure](0.05)))
	// Output: 6000 ± 300 bar
}

// The rate of a spring from two loads a known way apart, both read.
func ExamplePropagate() {
	load := measure.MustRead("245 N ± 5", measure.SpringBalance())
	travel := measure.MustRead("10 mm ± 0.1", measure.Caliper())
	rate, err := measure.Propagate[units.SpringRate](func(x []float64) float64 { return x[0] / x[1] }, load.SI(), travel.SI())
	fmt.Println(rate, err)
	// Output: 24.5 ± 0.6 N/mm <nil>
}

// Where the answer bends over the spread, draws tell more than slopes.
func ExampleMonteCarlo() {
	s, err := measure.MonteCarlo[units.Ratio](func(x []float64) float64 { return math.Exp(x[0]) }, 100_000, 1, measure.Input{X: 0, U: 0.4})
	fmt.Printf("%.1f to %.1f about %.1f %v\n", s.Low.Value(), s.High.Value(), s.Median.Value(), err)
	// Output: 0.5 to 2.2 about 1.0 <nil>
}

func ExampleBetween() {
	i := measure.Between(units.Bars(9.5), units.Bars(7))
	fmt.Println(i, i.Holds(8*units.Bar))
	// Output: 7 bar to 9.5 bar true
}

// A camwheel read 16 crank degrees early and an inlet 15 late: a tooth out, or
// nothing wrong? The readings are invented.
func ExampleRank() {
	readings := measure.Data{{Value: 16, Taken: true}, {Value: 15, Taken: true}}
	at := func(shift float64) measure.Gaussian {
		return measure.Gaussian{Mean: []float64{shift, shift}, Own: []float64{1, 1}, Shared: []measure.Effect{{Name: "TDC mark", SD: 1, Column: []float64{1, 1}}}}
	}
	slipped := at(0)
	slipped.Free = []measure.Effect{{Name: "slip", SD: 20, Column: []float64{1, 1}}}
	r, err := measure.Rank(readings, []measure.Cause{
		{Key: measure.NothingWrong, Text: "nothing is wrong", Prior: 10, Hypothesis: at(0)},
		{Key: "wheel:+1", Text: "camwheel one tooth early", Prior: 3, Hypothesis: at(15)},
		{Key: "slip", Text: "cam slipped on its wheel", Prior: 1, Hypothesis: slipped},
	}, measure.Cause{Text: "something else", Prior: 0.2, Hypothesis: measure.LogLikelihood(func(measure.Data) float64 { return -2 * math.Log(360) })})
	if err != nil {
		fmt.Println(err)
	}
	for _, o := range r.Odds {
		fmt.Printf("%3d %% %s: %s\n", o.Percent, o.Text, o.Words())
	}
	// Output:
	//  98 % camwheel one tooth early: as good as certain
	//   2 % cam slipped on its wheel: hardly
	//   0 % something else: hardly
	//   0 % nothing is wrong: hardly
}

// How far a cam slipped, given what was read.
func ExampleGaussian() {
	g := measure.Gaussian{Mean: []float64{0, 0}, Own: []float64{1, 1}, Free: []measure.Effect{{Name: "slip", SD: 20, Column: []float64{1, 1}}}}
	d := measure.Data{{Value: 11, Taken: true}, {Value: 13, Taken: true}}
	slip, u := g.Amount(0, d)
	chi2, n := g.ChiSquared(d)
	fmt.Printf("slip %.1f ± %.1f, chi-squared %.1f of %d readings\n", slip, u, chi2, n)
	// Output: slip 12.0 ± 0.7, chi-squared 2.4 of 2 readings
}

// Of two looks at two causes, the one that tells them apart comes first.
func ExampleNext() {
	r := measure.Ranking{Odds: []measure.Odds{{Key: "worn", Share: 0.5}, {Key: "bent", Share: 0.5}}}
	gains, err := measure.Next(r, []measure.Check{
		{Key: "listen", Text: "listen for a rattle", Work: units.Seconds(30), Outlooks: map[string]measure.Outlook{"worn": {Chances: []float64{0.6, 0.4}}, "bent": {Chances: []float64{0.5, 0.5}}}},
		{Key: "straightedge", Text: "lay a straightedge across", Work: units.MinutesOfTime(5), Outlooks: map[string]measure.Outlook{"worn": {Chances: []float64{0.02, 0.98}}, "bent": {Chances: []float64{0.95, 0.05}}}},
	})
	for _, g := range gains {
		fmt.Println(g)
	}
	fmt.Println(err)
	// Output:
	// lay a straightedge across, 5 min, 0.79 bit
	// listen for a rattle, 30 s, 0.01 bit
	// <nil>
}
