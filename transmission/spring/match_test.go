package spring_test

import (
	"encoding/json"
	"math"
	"math/rand/v2"
	"testing"

	"example.com/benchbook/transmission/spring"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

func list() []spring.Known {
	var out []spring.Known
	for _, k := range []struct {
		key                     string
		d, outside, total, free float64
	}{{"standard", 2.64, 17.8, 9.5, 46}, {"heavy", 2.9, 17.8, 9.5, 46}, {"heavy-short", 2.9, 17.8, 9, 44}, {"sidecar", 2.64, 17.8, 8, 44}, {"other", 3.25, 22, 8, 50}} {
		out = append(out, spring.Known{Key: k.key, Spec: spring.HelicalSpec{Wire: units.Millimetres(k.d), Outside: units.Millimetres(k.outside), Total: k.total, Free: units.Millimetres(k.free), Ends: spring.SquaredGround}})
	}
	return out
}

// Springs made, sunk and read as the model says: of those given a share, that
// share are true.
func TestMatchIsCalibrated(t *testing.T) {
	rng := rand.New(rand.NewPCG(5, 9))
	n := 4000
	if testing.Short() {
		n = 800
	}
	known := list()
	var claimed, right, N float64
	for range n {
		k := known[rng.IntN(len(known))]
		s := k.Spec
		d, outside, free := s.Wire.Millimetres(), s.Outside.Millimetres(), s.Free.Millimetres()
		draw := func(x, rel, u float64) measure.Reading[units.Length] {
			if rng.IntN(3) == 0 {
				return measure.Reading[units.Length]{}
			}
			return measure.Of(units.Millimetres(x+rel*rng.NormFloat64()+u*rng.NormFloat64()), units.Millimetres(u))
		}
		in := spring.Readings{
			Wire: draw(d, 0.01*d, 0.03), Outside: draw(outside, 0.01*(outside-d), 0.05), Ends: spring.SquaredGround,
			Free: draw(free-math.Abs(0.03*free*rng.NormFloat64()), 0.01*free, 0.1),
		}
		if rng.IntN(2) == 0 {
			in.Total = measure.Of(units.Value(s.Total+0.1*rng.NormFloat64()), units.Value(0.01))
		}
		m, err := spring.Match(in, known, spring.MatchOptions{})
		if err != nil {
			if fault.Faults(err)[0].Path == "readings" {
				continue
			}
			t.Fatal(err)
		}
		// "none of these" is never true here: leave its share out
		var best measure.Odds
		total := 0.0
		for _, o := range m.Causes.Odds {
			if o.Key == measure.SomethingElse {
				continue
			}
			total += o.Share
			if o.Share > best.Share {
				best = o
			}
		}
		claimed += best.Share / total
		if best.Key == k.Key {
			right++
		}
		N++
	}
	t.Logf("leader true %.1f %%, claimed %.1f %%", 100*right/N, 100*claimed/N)
	if math.Abs(right-claimed)/N > 0.02+3*math.Sqrt(0.25/N) {
		t.Errorf("leader true %.3f, claimed %.3f", right/N, claimed/N)
	}
}

// A spring sunk by 3 mm is the standard one, tired, and has lost its rate times
// 3 mm; loads alone part it from the heavy one.
func TestMatchTired(t *testing.T) {
	in := invented()
	in.Free = measure.MustRead("43 mm", measure.Caliper())
	m := ok(spring.Match(in, list(), spring.MatchOptions{}))(t)
	if lead := m.Causes.Leader(); lead.Key != "standard" || lead.Share < 0.9 || !m.Tired {
		t.Errorf("%+v, tired %v", m.Causes.Odds[:2], m.Tired)
	}
	near(t, "sunk", m.Sunk.Value().Millimetres(), 3, 1e-9)
	near(t, "lost", m.Lost.Newtons(), 3*18.9, 0.01)
	if _, err := json.Marshal(m); err != nil {
		t.Error(err)
	}
	only := spring.Readings{Loads: in.Loads}
	if lead := ok(spring.Match(only, list(), spring.MatchOptions{}))(t).Causes.Leader(); lead.Key != "standard" {
		t.Errorf("by loads: %+v", lead)
	}
}

func TestMatchRefuses(t *testing.T) {
	_, err := spring.Match(spring.Readings{}, nil, spring.MatchOptions{Wire: 2})
	if len(fault.Faults(err)) != 3 {
		t.Error(err)
	}
	twice := append(list()[:1], list()[:1]...)
	if _, err := spring.Match(invented(), twice, spring.MatchOptions{}); err == nil {
		t.Error("two springs of one key")
	}
}

func TestEven(t *testing.T) {
	read := func(n ...float64) []measure.Reading[units.Force] {
		var out []measure.Reading[units.Force]
		for _, x := range n {
			out = append(out, measure.Of(units.Newtons(x), units.Newtons(2)))
		}
		return out
	}
	if e := ok(spring.Even(read(200, 203, 199, 202, 198, 201), spring.EvenOptions{}))(t); !e.Even || len(e.Odd) != 0 {
		t.Errorf("%+v", e)
	}
	e := ok(spring.Even(read(200, 203, 199, 170, 198, 201), spring.EvenOptions{}))(t)
	if e.Even || len(e.Odd) != 1 || e.Odd[0] != 3 {
		t.Errorf("%+v", e)
	}
	if _, err := spring.Even(read(200), spring.EvenOptions{}); err == nil {
		t.Error("one spring is no set")
	}
}
