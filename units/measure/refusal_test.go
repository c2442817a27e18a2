package measure_test

import (
	"encoding/json"
	"math"
	"testing"

	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

// TestAnyTextIsData marshals readings whose own text is nothing a person types.
func TestAnyTextIsData(t *testing.T) {
	for _, text := range []string{"\x00", "\xff\xfe", "a\"b\\c\n\t\x7f", "½ ±", "a\u2028b", "😀"} {
		b, err := json.Marshal(measure.Of(3*units.Millimetre, units.Thou).As(text))
		var back struct{ Text string }
		if err == nil {
			err = json.Unmarshal(b, &back)
		}
		want, _ := json.Marshal(text) // replaces what is no UTF-8 as this does
		var through string
		if e := json.Unmarshal(want, &through); e != nil {
			t.Fatal(e)
		}
		if err != nil || back.Text != through {
			t.Errorf("%q: %s, %v", text, b, err)
		}
	}
}

// TestNoSuchReading asks for what the readings do not have: NaN, which Rank and
// Next refuse, and never a panic.
func TestNoSuchReading(t *testing.T) {
	g := measure.Gaussian{
		Mean: []float64{1, 2}, Own: []float64{1, 1},
		Free: []measure.Effect{{SD: 1, Column: []float64{1, 1}}},
	}
	d := measure.Data{{Value: 1, Taken: true}, {Value: 2, Taken: true}}
	p, ok := g.Precision(d)
	if !ok {
		t.Fatal("no precision")
	}
	w := make([]float64, 2)
	short := g
	short.Own = short.Own[:1]
	many := measure.Gaussian{Mean: make([]float64, 2000), Own: make([]float64, 2000)}
	lots := make(measure.Data, 2000)
	for i := range lots {
		lots[i].Taken = true
	}
	first := func(a, _ float64) float64 { return a }
	for name, v := range map[string]float64{
		"amount beyond":           first(g.Amount(1, d)),
		"amount below":            first(g.Amount(-1, d)),
		"outlook beyond":          g.Outlook(2, d).Mean,
		"outlook of the uneven":   short.Outlook(1, d).Mean,
		"likelihood uneven":       short.LogLikelihood(d),
		"likelihood of thousands": many.LogLikelihood(lots),
		"no function":             measure.LogLikelihood(nil).LogLikelihood(d),
		"weigh":                   p.Weigh(w[:1], w),
		"weigh, no room":          p.Weigh(w, w[:1]),
		"nudge":                   p.Nudge(2, 1, w),
		"nudge below":             p.Nudge(-1, 1, w),
		"widen":                   p.Widen(1, 1, w[:1]),
		"amount":                  first(p.Amount(1, w)),
		"amount nudge":            p.AmountNudge(0, 2, 1),
		"relief":                  p.Relief(w[:1]),
	} {
		if !math.IsNaN(v) {
			t.Errorf("%s: %v", name, v)
		}
	}
	for _, c := range []measure.Check{
		{Work: units.Seconds(math.NaN())},
		{Work: -1 * units.Second},
		{InOrder: []measure.Outlook{{Mean: 1, SD: 1}}},
	} {
		r := measure.Ranking{Odds: []measure.Odds{{Key: "a", Share: 1}}}
		if c.InOrder != nil {
			r.Odds[0].Share = -1
		} else {
			c.InOrder = []measure.Outlook{{Mean: 1, SD: 1}}
		}
		gains, err := measure.Next(r, []measure.Check{c})
		if f := fault.Faults(err); len(gains) != 0 || len(f) != 1 || f[0].Code != fault.OutOfRange {
			t.Errorf("%+v: %v, %v", c, gains, err)
		}
	}
	_, e1 := measure.Propagate[units.Length](nil)
	_, e2 := measure.BudgetOf[units.Length](nil)
	_, e3 := measure.MonteCarlo[units.Length](nil, 100, 1)
	_, e4 := measure.MonteCarlo[units.Length](func([]float64) float64 { return 0 }, 1e7, 1, make([]measure.Input, 11)...)
	for i, err := range []error{e1, e2, e3, e4} {
		want := fault.Missing
		if i == 3 {
			want = fault.OutOfRange
		}
		if f := fault.Faults(err); len(f) != 1 || f[0].Code != want {
			t.Errorf("%d: %v", i, err)
		}
	}
}
