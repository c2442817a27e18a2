package measure_test

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/stat"
	"gonum.org/v1/gonum/stat/distuv"
	"pgregory.net/rapid"

	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// Mean and standard deviation against gonum/stat; 1e-9 of the spread of the
// figures is a thousand times the rounding of their sums.
func TestRepeatAgainstGonum(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		x := rapid.SliceOfN(rapid.Float64Range(-50, 50), 2, 30).Draw(t, "x")
		q := make([]units.Length, len(x))
		for i := range x {
			q[i] = units.Millimetres(x[i])
		}
		set, err := measure.Repeat(q...)
		if err != nil {
			t.Fatal(err)
		}
		mean, s := stat.MeanStdDev(x, nil)
		if math.Abs(set.Mean.Millimetres()-mean) > 1e-9*50 || math.Abs(set.Deviation.Millimetres()-s) > 1e-9*50 {
			t.Fatalf("%v %v, gonum %v %v", set.Mean, set.Deviation, mean, s)
		}
	})
}

// Student's factor undone by gonum's distribution: the share inside ± k is p
// again. The inverse of the beta function stops within 1e-8 of it.
func TestCoverageAgainstGonum(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := rapid.Float64Range(0.01, 0.9999).Draw(t, "p")
		nu := rapid.Float64Range(1, 1e6).Draw(t, "nu")
		k, err := measure.Coverage(p, nu)
		if err != nil {
			t.Fatal(err)
		}
		d := distuv.StudentsT{Mu: 0, Sigma: 1, Nu: nu}
		if got := 1 - 2*d.CDF(-k); math.Abs(got-p) > 1e-8 {
			t.Fatalf("k %v holds %v, not %v, at %v", k, got, p, nu)
		}
	})
	if k, _ := measure.Coverage(0.95, 0); math.Abs(k-1.959963984540054) > 1e-12 { // JCGM 100:2008 table G.2, last line: 1.96
		t.Error(k)
	}
}

// Parts of equal size and freedom have as many degrees of freedom as there are
// parts times each; more can only add.
func TestFreedom(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n, nu, u := rapid.IntRange(1, 9).Draw(t, "n"), rapid.Float64Range(1, 1e3).Draw(t, "nu"), rapid.Float64Range(1e-200, 1e200).Draw(t, "u")
		var parts []measure.Component
		for range n {
			parts = append(parts, measure.Component{U: u, Freedom: nu})
		}
		got, err := measure.Freedom(parts...)
		if err != nil || math.Abs(got/(float64(n)*nu)-1) > 1e-12 { // a few roundings
			t.Fatal(got, err)
		}
		more, err := measure.Freedom(append(parts, measure.Component{U: u})...)
		if err != nil || !(more > got) {
			t.Fatal(more, got, err)
		}
	})
}

// The line against gonum/stat, and the uncertainty of the correction against
// [measure.Propagate] of the line through independent figures at its middle.
func TestCalibrateAgainstGonum(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(3, 12).Draw(t, "n")
		about := rapid.Float64Range(-100, 100).Draw(t, "about")
		var x, b []float64
		var shown, actual []units.Force
		for i := range n {
			x = append(x, float64(10*i)+rapid.Float64Range(0, 5).Draw(t, "x"))
			b = append(b, rapid.Float64Range(-2, 2).Draw(t, "b"))
			shown = append(shown, units.Newtons(x[i]))
			actual = append(actual, units.Newtons(x[i]+b[i]))
		}
		c, err := measure.Calibrate(shown, actual, units.Newtons(about), measure.SpringBalance())
		if err != nil {
			t.Fatal(err)
		}
		alpha, beta := stat.LinearRegression(x, b, nil, false)
		// figures to 100 N with five points or so: ten digits hold
		if math.Abs(c.Offset.Value().Newtons()-alpha-beta*about) > 1e-8 || math.Abs(c.Slope.Value().Value()-beta) > 1e-10 {
			t.Fatalf("%v %v, gonum %v %v", c.Offset, c.Slope, alpha+beta*about, beta)
		}
		middle := stat.Mean(x, nil)
		at := rapid.Float64Range(-50, 200).Draw(t, "at")
		want, err := measure.Propagate[units.Force](func(v []float64) float64 { return v[0] + v[1]*(at-middle) },
			measure.Input{X: alpha + beta*middle, U: c.Scatter.Newtons() / math.Sqrt(float64(n))}, c.Slope.SI())
		if err != nil {
			t.Fatal(err)
		}
		got := c.Correction(units.Newtons(at))
		if math.Abs(got.U().Ratio(want.U())-1) > 1e-7 { // 1 - r^2 loses half the digits where r is near one
			t.Fatalf("%v, propagated %v", got.U(), want.U())
		}
	})
}

// Where f is straight the parts add up to what Propagate says.
func TestBudgetAgreesWhereStraight(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		num := func(name string) float64 { return rapid.Float64Range(-10, 10).Draw(t, name) }
		a, b := num("a"), num("b")
		f := func(x []float64) float64 { return a*x[0] + b*x[1] + 3 }
		in := []measure.Input{{X: num("x"), U: rapid.Float64Range(0.01, 1).Draw(t, "u")}, {X: num("y"), U: rapid.Float64Range(0.01, 1).Draw(t, "v")}}
		got, err := measure.BudgetOf[units.Ratio](f, in...)
		want, err2 := measure.Propagate[units.Ratio](f, in...)
		if err != nil || err2 != nil {
			t.Fatal(err, err2)
		}
		// 1e-4 of the figure is the step; rounding of a sum near 200 over it is 1e-9
		if math.Abs(got.Combined.Value()-want.U().Value()) > 1e-8 || got.Limit < got.Combined.Times(1-1e-12) {
			t.Fatal(got, want)
		}
	})
}

// What cannot be summed up is told, all at once.
func TestRepeatFaults(t *testing.T) {
	inf := units.Millimetres(math.Inf(1))
	for name, err := range map[string]error{
		"one":          second(measure.Repeat(units.Millimetre)),
		"not finite":   second(measure.Repeat(units.Millimetre, inf)),
		"far apart":    second(measure.Repeat(units.Millimetres(1e308), units.Millimetres(-1e308))),
		"temperatures": second(measure.Repeat(units.Celsius(20), units.Celsius(21))),
		"two points":   second(measure.Calibrate([]units.Length{1, 2}, []units.Length{1, 2}, 0, measure.Rule())),
		"lengths":      second(measure.Calibrate([]units.Length{1, 2, 3}, []units.Length{1, 2}, 0, measure.Rule())),
		"one place":    second(measure.Calibrate([]units.Length{1, 1, 1}, []units.Length{1, 2, 3}, 0, measure.Rule())),
		"no scatter":   second(measure.Calibrate([]units.Length{1, 2, 3}, []units.Length{1, 2, 3}, 0, measure.Instrument[units.Length]{})),
		"p":            second(measure.Coverage(1, 5)),
		"nu":           second(measure.Coverage(0.5, 0.5)),
		"nothing":      second(measure.Freedom()),
		"negative":     second(measure.Freedom(measure.Component{U: -1})),
		"no slope":     second(measure.BudgetOf[units.Length](func(x []float64) float64 { return math.Log(x[0]) }, measure.Input{X: 0, U: 1})),
	} {
		if err == nil {
			t.Errorf("%s: accepted", name)
		}
	}
	if c, err := measure.Calibrate([]units.Length{1, 2, 3}, []units.Length{1, 2, 3}, 0, measure.Rule()); err != nil || c.Scatter != measure.Rule().U {
		t.Error("points on one line carry the instrument's uncertainty", c, err)
	}
}

func second[T any](_ T, err error) error { return err }
