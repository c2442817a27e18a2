package transmission

import (
	"math"
	"testing"

	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

func mm(x, u float64) measure.Reading[units.Length] {
	return measure.Of(units.Millimetres(x), units.Millimetres(u))
}

// tight reads every part as well as can be believed.
func tight(in *Input) {
	in.Found = Condition{
		Friction: measure.Of(units.Value(0.12), units.Value(0.001)), SpringSet: mm(0.3, 0.01), Wear: mm(0.2, 0.01), OutOfFlat: mm(0.3, 0.01),
		RodPlay: mm(0.3, 0.01), FreePlay: mm(3, 0.05), RunOut: mm(0.2, 0.01), CablePull: mm(22, 0.1), HubNutBack: measure.Of(units.Turns(0), units.Turns(0.01)),
		CableStiffness:  measure.Of(units.NewtonsPerMillimetre(200), units.NewtonsPerMillimetre(2)),
		CableEfficiency: measure.Of(units.Value(0.85), units.Value(0.005)), TongueGrip: measure.Of(units.Value(0), units.Value(0.01)),
	}
	in.Setting.Nuts = measure.Of(units.Turns(7), units.Turns(0.02))
}

// told are clutches with readings and signs of every kind, invented.
func told(t *testing.T) map[string]simulated {
	all := map[string]func(in *Input){
		"nothing": func(*Input) {},
		"all parts": func(in *Input) {
			in.Found = used()
			in.Found.CableStiffness = measure.Of(units.NewtonsPerMillimetre(180), units.NewtonsPerMillimetre(20))
			in.Setting.Nuts = measure.Of(units.Turns(8), units.Turns(0.1))
		},
		"parts badly read": func(in *Input) {
			in.Found = Condition{SpringSet: mm(1.2, 1), Wear: mm(1, 1), RodPlay: mm(1, 0.6), FreePlay: mm(4, 3), OutOfFlat: mm(0.4, 0.5), RunOut: mm(0.8, 0.7)}
			in.Setting.Nuts = measure.Of(units.Turns(9), units.Turns(1.5))
		},
		"signs": func(in *Input) {
			in.Signs = Signs{Slips: Yes, Drags: No, Heavy: Yes, LightThen: No}
		},
		"other signs": func(in *Input) {
			in.Signs = Signs{Slips: No, Drags: Yes, Heavy: No, LightThen: Yes}
		},
		"lift and hand": func(in *Input) {
			in.Signs = Signs{Lift: mm(1.6, 0.1), HandForce: measure.Of(units.Newtons(150), units.Newtons(6))}
		},
		"lift and hand, nuts read": func(in *Input) {
			in.Setting.Nuts = measure.Of(units.Turns(8), units.Turns(0.1))
			in.Signs = Signs{Lift: mm(1.9, 0.1), HandForce: measure.Of(units.Newtons(120), units.Newtons(6))}
		},
		"no lift": func(in *Input) {
			in.Signs = Signs{Lift: mm(0.05, 0.1), Drags: Yes}
		},
		"kick held": func(in *Input) { in.Signs = Signs{Kick: kick(), Drags: Yes} },
		"kick crept": func(in *Input) {
			in.Signs = Signs{Kick: kick(), Slips: No, Lift: mm(2, 0.1)}
			in.Signs.Kick.Result = Crept
		},
		"kick slid": func(in *Input) {
			in.Signs = Signs{Kick: kick(), HandForce: measure.Of(units.Newtons(120), units.Newtons(6))}
			in.Signs.Kick.Result = Slid
		},
		"tight, lift": func(in *Input) {
			tight(in)
			in.Signs = Signs{Lift: mm(2.5, 0.1), HandForce: measure.Of(units.Newtons(100), units.Newtons(6))}
		},
		"tight, signs": func(in *Input) {
			tight(in)
			in.Signs = Signs{Slips: Yes, Drags: Yes, Heavy: Yes, LightThen: Yes}
		},
		"tight, no signs": func(in *Input) {
			tight(in)
			in.Signs = Signs{Slips: No, Drags: No, Heavy: No, LightThen: No, Kick: kick()}
		},
		"everything": func(in *Input) {
			in.Found = used()
			in.Setting.Nuts = measure.Of(units.Turns(8), units.Turns(0.1))
			in.Signs = Signs{Slips: No, Drags: Yes, Heavy: No, LightThen: No, Lift: mm(1.3, 0.1), HandForce: measure.Of(units.Newtons(130), units.Newtons(6)), Kick: kick()}
		},
	}
	sims := map[string]simulated{}
	for name, set := range all {
		in := Input{Clutch: demo()}
		set(&in)
		s, _, err := in.resolve(Options{})
		if err != nil {
			t.Fatal(name, err)
		}
		m, _ := newModel(&s)
		sims[name] = simulated{in: in, m: m}
	}
	return sims
}

// logs are the package's log likelihoods of every single cause, and of what is not listed.
func (sim *simulated) logs(t *testing.T) (m *model, logs [causeCount]float64) {
	s, n, err := sim.in.resolve(Options{})
	if err != nil {
		t.Fatal(err)
	}
	kick, err := sim.in.looked(nil)
	if err != nil {
		t.Fatal(err)
	}
	fresh, _ := newModel(&s)
	m = &fresh
	data := sim.in.tellTo(m, n, kick)
	if _, err = m.weights(nil); err != nil {
		t.Fatal(err)
	}
	var ways [causeCount]way
	for i := range ways {
		ways[i] = m.way(data, &m.causes[i])
	}
	return m, m.alone(data, &ways)
}

// Shares of single causes, and log likelihoods of those that hold a hundredth, against
// the sum over many states. The package reckons to first order about the means, in four
// pieces of what is open, and one sign says nothing of another's effect: exact where all
// parts are well read but for what a cause leaves open, and off by some tenths of a
// natural logarithm where nothing is read and the clutch may stand anywhere.
func TestSingleCausesAgainstExact(t *testing.T) {
	allowed := map[string]struct{ share, nat float64 }{
		"nothing": {1e-9, 1e-9}, "all parts": {1e-3, 1e-3}, "parts badly read": {1e-3, 1e-3}, // closed forms
		"tight, lift": {0.01, 0.15}, "tight, signs": {0.01, 0.3}, "tight, no signs": {0.01, 0.3},
		"lift and hand, nuts read": {0.005, 0.3}, "kick slid": {0.01, 0.1}, "kick crept": {0.03, 0.4}, "kick held": {0.03, 0.4},
		"signs": {0.03, 0.8}, "other signs": {0.02, 0.6}, "lift and hand": {0.03, 1.2}, "everything": {0.06, 0.5},
		"no lift": {0.05, 20}, // the far ends of what may be are not seen to first order
	}
	pts := newPoints(2000)
	for name, sim := range told(t) {
		e := sim.evidence()
		m, logs := sim.logs(t)
		all, ours := 0.0, 0.0
		var exact [causeCount]float64
		for i := range logs {
			exact[i] = m.causes[i].prior * e.likelihood(pts, len(pts), 1, &m.causes[i])
			all += exact[i]
			ours += math.Exp(logs[i] + m.logPrior[i])
		}
		for i := range logs {
			key := name + ": " + m.causes[i].key
			within(t, key+" holds", math.Exp(logs[i]+m.logPrior[i])/ours, exact[i]/all, 0, allowed[name].share)
			if exact[i] > 0.01*all {
				within(t, key, logs[i]+m.logPrior[i], math.Log(exact[i]), 0, allowed[name].nat)
			}
		}
		usual := truth{v: m.usual, s: m.s}
		lift, hand, _, _ := usual.told(m)
		like := e.strayed() * e.seen(lift, hand, [4]float64{0.5, 0.5, 0.5, 0.5}, -1, elseLift, elseHand)
		within(t, name+": not listed", m.elseLog, math.Log(like*elsePrior), 0, 1e-9)
	}
}
