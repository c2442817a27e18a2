package measure_test

import (
	"math"
	"testing"

	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

func TestRead(t *testing.T) {
	for _, c := range []struct{ in, out string }{
		{"7.94 mm ± 0.02", "7.94 ± 0.02 mm"}, {"7.94 ± 0.02 mm", "7.94 ± 0.02 mm"}, {"5/16 in +/- 2 thou", "7.94 ± 0.05 mm"},
		{"7.94 mm", "7.94 ± 0.02 mm"}, {"", "not taken"}, {"5/16 ± 1/64 in", "7.9 ± 0.4 mm"}, {"7.94 mm ± 1 %", "7.94 ± 0.08 mm"},
	} {
		r, err := measure.Read(c.in, measure.Caliper())
		if err != nil || r.String() != c.out {
			t.Errorf("%q = %v, %v; want %s", c.in, r, err, c.out)
		}
	}
	temp, err := measure.Read("68 °F ± 2 °F", measure.Thermometer())
	if err != nil || math.Abs(float64(temp.U())-10.0/9) > 1e-12 {
		t.Errorf("68 °F ± 2 °F: u %v K, %v; want 1.11 K", float64(temp.U()), err)
	}
	shaft, err := measure.Read("16° crank ± 0.5°", measure.DegreeDisc())
	if err != nil || shaft.String() != "16.0 ± 0.5° crank" {
		t.Errorf("16° crank ± 0.5° = %v, %v", shaft, err)
	}
	pos, err := measure.ReadPosition("25 BTDC ± 1°", measure.DegreeDisc())
	if err != nil || pos.String() != "25° BTDC ± 1.0°" {
		t.Errorf("25 BTDC ± 1° = %v, %v", pos, err)
	}
	if r, err := measure.Read("20 °C ± 1 %", measure.Thermometer()); len(fault.Faults(err)) != 1 || fault.Faults(err)[0].Code != fault.UnitUnknown {
		t.Errorf("a per cent of a temperature passed: %v, %v", r, err)
	}
	for _, bad := range []string{"7.94", "7.94 mm ± 0", "7.94 mm ± -1", "7.94 mm ± x"} {
		if r, err := measure.Read(bad, measure.Caliper()); len(fault.Faults(err)) != 1 {
			t.Errorf("%q = %v, %v; want one fault", bad, r, err)
		}
	}
}

// The worked inference in this test is a plain Bayes sum: two causes expecting
// 0 and 10 with the same spread of 1, equal priors, reading 4; the ratio of
// likelihoods is exp((6^2-4^2)/2) = exp(10).
func TestRank(t *testing.T) {
	cause := func(key string, mean float64) measure.Cause {
		return measure.Cause{Key: key, Text: key, Prior: 1, Hypothesis: measure.Gaussian{Mean: []float64{mean}, Own: []float64{1}}}
	}
	other := measure.Cause{Text: "something else", Prior: 1e-9, Hypothesis: measure.Gaussian{Mean: []float64{0}, Own: []float64{30}}}
	r, err := measure.Rank(measure.Data{{Value: 4, Taken: true}}, []measure.Cause{cause("ten", 10), cause("zero", 0)}, other)
	if err != nil {
		t.Fatal(err)
	}
	got := r.Odds[0].Share / r.Odds[1].Share
	if r.Leader().Key != "zero" || math.Abs(got/math.Exp(10)-1) > 1e-9 { // rounding of exp
		t.Errorf("leader %v by %v, want zero by e^10", r.Leader().Key, got)
	}
	// with nothing read, priors stand and nothing can be told apart
	r, err = measure.Rank(measure.Data{{}}, []measure.Cause{cause("ten", 10), cause("zero", 0)}, other)
	if err != nil || len(r.LikeLeader()) != 2 {
		t.Errorf("%v %v", r, err)
	}
	// a check that separates two even causes for certain is worth one bit
	gains, err := measure.Next(r, []measure.Check{
		{Key: "vague", Outlooks: map[string]measure.Outlook{"ten": {Mean: 0, SD: 1}, "zero": {Mean: 0, SD: 1}}},
		{Key: "sharp", Outlooks: map[string]measure.Outlook{"ten": {Mean: 10, SD: 0.5}, "zero": {Mean: 0, SD: 0.5}}},
		{Key: "yes or no", Outlooks: map[string]measure.Outlook{"ten": {Chances: []float64{1, 0}}, "zero": {Chances: []float64{0.5, 0.5}}}},
	})
	if err != nil {
		t.Fatal(err)
	}
	// 0.3113 bits: 1 less the mean entropy left, 0.75 H(1/3)
	want := []float64{1, 0.31128, 0}
	for i, g := range gains {
		if math.Abs(g.Bits-want[i]) > 1e-4 { // the prior of something else, 1e-9, and quadrature
			t.Errorf("%s: %v bits, want %v", g.Key, g.Bits, want[i])
		}
	}
}

func TestPropagate(t *testing.T) {
	area, err := measure.Propagate[units.Area](func(x []float64) float64 { return x[0] * x[1] },
		measure.Of(3*units.Metre, 10*units.Millimetre).SI(), measure.Of(4*units.Metre, 10*units.Millimetre).SI())
	if err != nil || math.Abs(area.U().SquareMetres()-0.05) > 1e-12 { // sqrt(0.04^2+0.03^2)
		t.Errorf("%v %v", area, err)
	}
}
