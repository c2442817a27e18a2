package carburation_test

import (
	"math"
	"strings"
	"testing"

	"example.com/benchbook/carburation"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
	"pgregory.net/rapid"
)

func sensor(v float64) measure.Reading[units.Ratio] {
	return measure.By(units.Value(v), carburation.LambdaSensor())
}

func TestAdvise(t *testing.T) {
	clean := carburation.Seen{Runs: carburation.Right}
	for _, c := range []struct {
		name, leader, next, text string
		s                        carburation.Symptoms
	}{
		{"weak at full throttle only", "main-jet:small", "main-jet:small", "main jet with 1", carburation.Symptoms{TickOver: clean, PickUp: clean, Middle: clean, Full: carburation.Seen{Runs: carburation.Weak, Lambda: sensor(1.0)}, Fades: carburation.No}},
		{"rich at full throttle only", "main-jet:large", "main-jet:large", "% less flow", carburation.Symptoms{TickOver: clean, PickUp: clean, Middle: clean, Full: carburation.Seen{Runs: carburation.Rich, Lambda: sensor(0.76)}, Fades: carburation.No}},
		{"fades", "fuel-feed", "fuel-feed", "time 500 cc", carburation.Symptoms{TickOver: clean, PickUp: clean, Middle: clean, Full: carburation.Seen{Runs: carburation.Weak}, Fades: carburation.Yes}},
		{"flat on opening", "cutaway:high", "cutaway:high", "lower", carburation.Symptoms{TickOver: clean, PickUp: carburation.Seen{Runs: carburation.Weak}, Middle: clean, Full: clean, Fades: carburation.No}},
		{"rich in the middle", "needle:high", "needle:high", "lower the needle", carburation.Symptoms{TickOver: clean, PickUp: clean, Middle: carburation.Seen{Runs: carburation.Rich, Lambda: sensor(0.88)}, Full: clean, Fades: carburation.No}},
		{"weak at tick-over and above it", "air-leak", "air-leak", "leaks", carburation.Symptoms{TickOver: carburation.Seen{Runs: carburation.Weak, Lambda: sensor(1.05)}, PickUp: carburation.Seen{Runs: carburation.Weak, Lambda: sensor(1.02)}, Middle: clean, Full: clean, Fades: carburation.No}},
		{"rich from an eighth to the middle", "needle-jet:worn", "needle-jet:worn", "gauge pin", carburation.Symptoms{TickOver: clean, PickUp: carburation.Seen{Runs: carburation.Rich, Lambda: sensor(0.8)}, Middle: carburation.Seen{Runs: carburation.Rich, Lambda: sensor(0.92)}, Full: clean, Fades: carburation.No}},
	} {
		a := must(carburation.Advise(c.s, carburation.AdviseOptions{}))
		in := false
		for _, o := range a.Causes.LikeLeader() {
			in = in || o.Key == c.leader
		}
		if !in || a.Next.Key != c.next || !strings.Contains(a.Next.Text, c.text) {
			t.Errorf("%s: leader %+v, next %+v", c.name, a.Causes.Odds[:3], a.Next)
		}
		if len(a.NextReadings) == 0 || len(a.Basis.Cautions) == 0 {
			t.Errorf("%s: bare", c.name)
		}
	}
	a := must(carburation.Advise(carburation.Symptoms{TickOver: clean, PickUp: clean, Middle: clean, Full: carburation.Seen{Runs: carburation.Right, Lambda: sensor(0.87)}, Fades: carburation.No}, carburation.AdviseOptions{}))
	if a.NoStep.Code != "leave-alone" || a.Next.Key != "" {
		t.Errorf("all is well: %+v %+v", a.NoStep, a.Causes.Odds[:3])
	}
	a = must(carburation.Advise(carburation.Symptoms{}, carburation.AdviseOptions{}))
	if a.NoStep.Code != "nothing-seen" || len(a.NextReadings) == 0 || len(a.Basis.NotChecked) < 5 {
		t.Errorf("nothing seen: %+v", a)
	}
	_, err := carburation.Advise(carburation.Symptoms{TickOver: carburation.Seen{Runs: "bad"}, Full: carburation.Seen{Lambda: measure.Of[units.Ratio](9, 1)}, Fades: "maybe", Screw: carburation.Screw{Kind: "x"}},
		carburation.AdviseOptions{Priors: map[string]float64{"main-jet:small": -1, "gremlins": 1}})
	if n := len(fault.Faults(err)); n != 6 {
		t.Errorf("%d faults: %v", n, err)
	}
}

// The main jet asked for follows lambda read over lambda wanted, drawn a little
// towards what was likely before.
func TestAdviseAmount(t *testing.T) {
	for _, v := range []float64{0.95, 1.0, 1.1} {
		a := must(carburation.Advise(carburation.Symptoms{Full: carburation.Seen{Lambda: sensor(v)}, Middle: carburation.Seen{Runs: carburation.Right}, Fades: carburation.No}, carburation.AdviseOptions{}))
		found := false
		for _, s := range a.Steps {
			if s.Key == "main-jet:small" {
				found = true
				if want := v / 0.875; math.Abs(s.Factor.Middle.Value()/want-1) > 0.04 || !s.Factor.Holds(units.Value(want)) {
					t.Errorf("lambda %v: factor %v, want %v", v, s.Factor, want)
				}
			}
		}
		if !found {
			t.Errorf("lambda %v: %+v", v, a.Steps)
		}
	}
}

// The kinds of pilot screw turn opposite ways, and neither is assumed.
func TestPilotScrew(t *testing.T) {
	clean := carburation.Seen{Runs: carburation.Right}
	text := func(s carburation.Screw) string {
		a := must(carburation.Advise(carburation.Symptoms{TickOver: carburation.Seen{Runs: carburation.Weak, Lambda: sensor(0.95)}, PickUp: clean, Middle: clean, Full: clean, Fades: carburation.No, Screw: s}, carburation.AdviseOptions{}))
		for _, st := range a.Steps {
			if st.Key == "pilot:weak" {
				return st.Text
			}
		}
		return ""
	}
	for want, s := range map[string]carburation.Screw{
		"quarter turn in": {Kind: carburation.AirScrew}, "quarter turn out": {Kind: carburation.FuelScrew}, "which side": {},
		"fit a pilot jet": {Kind: carburation.AirScrew, Turns: measure.Of[units.Ratio](0.25, 0.1)},
	} {
		if got := text(s); !strings.Contains(got, want) {
			t.Errorf("%+v: %q, want %q", s, got, want)
		}
	}
}

// Whatever is seen, the shares add up and nothing is NaN.
func TestAdviseAlwaysSpeaks(t *testing.T) { rapid.Check(t, checkAdvise()) }

func FuzzAdvise(f *testing.F) {
	fuzzBytes(f)
	f.Fuzz(rapid.MakeFuzz(checkAdvise()))
}

func checkAdvise() func(*rapid.T) {
	sign := rapid.SampledFrom([]carburation.Sign{carburation.NotLooked, carburation.Weak, carburation.Right, carburation.Rich})
	m := must(carburation.NewModel(demo(), carburation.Options{}))
	return func(t *rapid.T) {
		seen := func(name string) carburation.Seen {
			s := carburation.Seen{Runs: sign.Draw(t, name), Plug: sign.Draw(t, name+" plug")}
			if rapid.Bool().Draw(t, name+" read") {
				s.Lambda = sensor(rapid.Float64Range(0.55, 1.9).Draw(t, name+" lambda"))
			}
			return s
		}
		s := carburation.Symptoms{TickOver: seen("tick-over"), PickUp: seen("pick-up"), Middle: seen("middle"), Full: seen("full"), Fades: rapid.SampledFrom([]carburation.Answer{"", "yes", "no"}).Draw(t, "fades")}
		opt := carburation.AdviseOptions{}
		if rapid.Bool().Draw(t, "with a model") {
			opt.Model = &m
		}
		a, err := carburation.Advise(s, opt)
		if err != nil {
			t.Fatal(err)
		}
		sum := 0.0
		for _, o := range a.Causes.Odds {
			sum += o.Share
		}
		if math.Abs(sum-1) > 1e-9 {
			t.Fatalf("shares add up to %v", sum)
		}
		for _, st := range a.Steps {
			if st.Text == "" || math.IsNaN(st.Steps) || math.IsNaN(st.Factor.Middle.Value()) {
				t.Fatalf("%+v", st)
			}
		}
		if (a.Next.Key == "") != a.NoStep.Given() {
			t.Fatalf("a step and a reason for none, or neither: %+v, %+v", a.Next, a.NoStep)
		}
	}
}
