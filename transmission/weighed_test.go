package transmission

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

// A law drawn at random is found again from trials on it, and its own answers agree
// with it both ways; efficiency never passes the limit it is said to have.
func TestEffortLaw(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		slope, idle := rapid.Float64Range(0.02, 2).Draw(t, "per load"), rapid.Float64Range(0, 50).Draw(t, "idle")
		trials := make([]Weighed, rapid.IntRange(2, 8).Draw(t, "trials"))
		for i := range trials {
			load := 50 + 100*float64(i) + rapid.Float64Range(0, 50).Draw(t, "load")
			trials[i] = Weighed{Load: measure.Exact(units.Newtons(load)), Effort: measure.Of(units.Newtons(slope*load+idle), 1*units.Newton)}
		}
		law, err := FitEffort(trials)
		if err != nil {
			t.Fatal(err)
		}
		if math.Abs(law.PerLoad.Value().Value()-slope) > 1e-10 || math.Abs(law.Idle.Value().Newtons()-idle) > 1e-8 || !(law.Idle.U() > 0) {
			t.Fatalf("%+v", law)
		}
		e := units.Newtons(rapid.Float64Range(60, 500).Draw(t, "effort"))
		load, err := law.Load(e)
		if err != nil {
			t.Fatal(err)
		}
		back, err := law.Effort(load)
		if err != nil || (back-e).Abs() > 1e-6*units.Newton {
			t.Fatalf("%v lifts %v, which takes %v, %v", e, load, back, err)
		}
		eta, err := law.Efficiency(e, 6)
		if err != nil || eta.Value() > 1/(6*slope)+1e-12 {
			t.Fatalf("%v, %v", eta, err)
		}
	})
}

func TestWeighedFaults(t *testing.T) {
	n := func(x float64) measure.Reading[units.Force] { return measure.Of(units.Newtons(x), 1*units.Newton) }
	mm := func(x float64) measure.Reading[units.Length] {
		return measure.Of(units.Millimetres(x), units.Millimetres(0.1))
	}
	for _, w := range []Weighed{
		{},
		{Effort: n(100), Load: n(math.NaN()), EffortTravel: mm(20), LoadTravel: mm(4)},
		{Effort: n(100), Load: n(400), EffortTravel: mm(20), LoadTravel: mm(math.Inf(1))},
		{Effort: n(100), Load: n(900), EffortTravel: mm(20), LoadTravel: mm(4)}, // more work out than in
	} {
		if a, err := w.Advantage(); err == nil || a != (Advantage{}) {
			t.Errorf("%+v: %+v", w, a)
		}
	}
	for _, trials := range [][]Weighed{nil, {{Effort: n(1), Load: n(2)}}, {{Effort: n(10), Load: n(20)}, {Effort: n(12), Load: n(20)}}, {{Effort: n(30), Load: n(20)}, {Effort: n(12), Load: n(200)}}, {{Effort: n(math.NaN()), Load: n(20)}, {}}} {
		_, err := FitEffort(trials)
		for _, f := range fault.Faults(err) {
			if f.Path == "" || f.Rule == "" {
				t.Errorf("%#v", f)
			}
		}
		if err == nil {
			t.Errorf("%v passed", trials)
		}
	}
	if _, err := (EffortLaw{}).Load(units.Newton); err == nil {
		t.Error("a law that was not fitted lifts something")
	}
	law, err := FitEffort([]Weighed{{Effort: n(10), Load: n(20)}, {Effort: n(20), Load: n(60)}})
	if err != nil {
		t.Fatal(err)
	}
	for _, x := range []float64{-1, math.NaN(), math.Inf(1), 1e9} {
		if _, err := law.Effort(units.Newtons(x)); err == nil {
			t.Errorf("load %v passed", x)
		}
		if _, err := law.Efficiency(units.Newtons(x), x); err == nil {
			t.Errorf("effort %v passed", x)
		}
	}
	if _, err := demo().Plates.FacesFor(0, units.Value(2), units.Newtons(math.NaN())); len(fault.Faults(err)) != 3 {
		t.Error(err)
	}
}

// A line through three trials by hand: loads 100, 200, 400 N, efforts 30, 50, 120 N.
// Means 233.33 and 66.67; sums of products 46 666.7 and 14 333.3: 0.30714, and -5 N idle.
func TestEffortByHand(t *testing.T) {
	trial := func(load, effort float64) Weighed {
		return Weighed{Load: measure.Of(units.Newtons(load), units.Newtons(1)), Effort: measure.Of(units.Newtons(effort), units.Newtons(0.5))}
	}
	e, err := FitEffort([]Weighed{trial(100, 30), trial(200, 50), trial(400, 120)})
	if err != nil {
		t.Fatal(err)
	}
	printed(t, "per load", e.PerLoad.Value().Value(), "0.30714")
	printed(t, "idle, N", e.Idle.Value().Newtons(), "-5.00")
	f, err := e.Effort(units.Newtons(700))
	if err != nil {
		t.Fatal(err)
	}
	printed(t, "effort for 700 N", f.Newtons(), "210.00")
	for _, bad := range [][]Weighed{{trial(100, 30), trial(100, 31)}, {trial(100, 30)}, {trial(100, 30), trial(200, 30)}, {trial(100, 30), trial(200, 20)}} {
		if e, err := FitEffort(bad); err == nil {
			t.Errorf("%v through %v", e, bad)
		}
	}
}

// More work out than in is refused from three times the uncertainty on: 100 N over 300 mm
// lifts 310 N by 100 mm with 1.0333; known to 1 % in each force that is 1.0333 ± 0.0146.
func TestMoreWorkOutThanIn(t *testing.T) {
	for u, ok := range map[float64]bool{0.01: true, 0.008: true, 0.0075: false, 0.001: false} {
		w := Weighed{Effort: measure.Of(units.Newtons(100), units.Newtons(100*u)), Load: measure.Of(units.Newtons(310), units.Newtons(310*u)),
			EffortTravel: measure.Exact(300 * units.Millimetre), LoadTravel: measure.Exact(100 * units.Millimetre)}
		if _, err := w.Advantage(); (err == nil) != ok { // 3 x 1.0333 x u sqrt 2 = 0.0333 at u = 0.0076
			t.Errorf("known to %v: %v", u, err)
		}
	}
}
