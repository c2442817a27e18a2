package timing

import (
	"math"
	"slices"

	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// leakDownKey is the key of the test in the menu.
const leakDownKey = "leak-down"

// nextLook is a reading the mechanic could take next.
type nextLook struct {
	key, text string
	minutes   float64
	row       int                                // or, below zero, the dry compression test, or
	seen      func(v *verdict, far bool) float64 // chance of a yes, or
	other     float64                            // the same if the cause is not listed; 0: even
	heard     func(v *verdict) measure.Outlook   // one of several things
}

// nextLooks lists what was not taken and could be. The times are common
// practice, no source.
func (b *bench) nextLooks() []nextLook {
	var all []nextLook
	r := b.read
	add := func(want bool, l nextLook) {
		if want {
			all = append(all, l)
		}
	}
	add(r.TDC != TDCByStop && !r.TDCLate.Taken(), nextLook{key: "tdc-by-stop", text: "find top dead centre by a positive stop", minutes: 20, row: rowStop})
	for e := range EventName(4) {
		add(r.event(e).Taken() && b.opt.Misread.Chance > 0, nextLook{key: "again-" + e.key(), text: "read again where the " + e.Cam().String() + " valve " + e.verb(), minutes: 5, seen: func(v *verdict, _ bool) float64 {
			return 1 - v.missed[e]/v.sum
		}, other: 1 - b.opt.Misread.Chance/float64(b.taken)})
		add(!r.event(e).Taken(), nextLook{key: e.key(), text: "read where the " + e.Cam().String() + " valve " + e.verb(), minutes: 10, row: int(e)})
	}
	for c := range Cam(2) {
		l, name := &b.lobes[c], c.String()
		lift, top, wheel, gap := r.InletLiftAtTDC, r.InletMaxLift, r.InletOnWheel, r.InletClearance
		if c == Exhaust {
			lift, top, wheel, gap = r.ExhaustLiftAtTDC, r.ExhaustMaxLift, r.ExhaustOnWheel, r.ExhaustClearance
		}
		at := l.lift(0, 0)
		add(!lift.Taken() && !l.liftAssumed && at > 0.3 && at < 0.8*l.top, nextLook{key: name + "-lift-at-tdc", text: "measure the " + name + " lift at top dead centre on overlap", minutes: 10, row: rowTDCLift + int(c)})
		add(!top.Taken() && !l.liftAssumed, nextLook{key: name + "-max-lift", text: "measure the greatest " + name + " lift", minutes: 10, row: rowMaxLift + int(c)})
		add(!gap.Taken(), nextLook{key: name + "-clearance", text: "check the " + name + " clearance by feelers", minutes: 10, row: rowGap + int(c)})
		add(!wheel.Taken() && b.engine.fixing(c) != OnePiece, nextLook{key: name + "-on-wheel", text: "measure the " + name + " lobe on its wheel in the hand", minutes: 150, row: rowWheel + int(c)})
	}
	add(!r.CompressionDry.Taken() && b.squeeze != nil, nextLook{key: "compression-dry", text: "take a compression reading, plug out and throttle open", minutes: 15, row: -1})
	add(!r.Leak.Taken(), nextLook{key: leakDownKey, text: "take a leak-down test at top dead centre on compression, and listen where it hisses", minutes: 25, heard: b.leakOutlook})
	add(r.MarksAlign == NotLooked, nextLook{key: "tooth-marks", text: "take the timing cover off and look whether the tooth marks come into line", minutes: 60, seen: func(v *verdict, _ bool) float64 {
		for _, a := range v.faults {
			if a.family == tooth || a.family == wholeTurn {
				return lookWrong
			}
		}
		return 1 - lookWrong
	}})
	add(r.Sequence == NotLooked, nextLook{key: "sequence", text: "see whether the inlet valve opens as the exhaust valve closes", minutes: 5, seen: func(v *verdict, far bool) float64 {
		for _, a := range v.faults {
			if a.family == wholeTurn {
				return lookWrong
			}
		}
		if far {
			return 0.5
		}
		return 1 - lookWrong
	}})
	return all
}

func (e EventName) key() string { return e.Cam().String() + "-" + e.verb() }

func (e EventName) verb() string {
	if e&1 == 0 {
		return "opens"
	}
	return "closes"
}

// next ranks the looks by what they are expected to tell of the cause.
func (b *bench) next(r measure.Ranking) ([]measure.Gain, error) {
	looks := b.nextLooks()
	checks := make([]measure.Check, len(looks))
	for i, l := range looks {
		checks[i] = measure.Check{Key: l.key, Text: l.text, Work: units.MinutesOfTime(l.minutes), Outlooks: map[string]measure.Outlook{}}
	}
	for _, o := range r.Odds {
		if o.Share < 5e-4 {
			continue // measure.Next needs those above 1e-3
		}
		if o.Key == measure.SomethingElse {
			for i, l := range looks {
				checks[i].Outlooks[o.Key] = otherOutlook(l)
			}
			continue
		}
		v := &b.verdicts[b.index[o.Key]]
		mixes := b.mixture(v)
		for i, l := range looks {
			checks[i].Outlooks[o.Key] = b.outlook(v, mixes, l)
		}
	}
	gains, err := measure.Next(r, checks)
	// what would tell less than half a hundredth of a bit is not worth a line
	return slices.DeleteFunc(gains, func(g measure.Gain) bool { return g.Bits < 0.005 }), err
}

// otherOutlook is what a cause that is not listed makes one expect: nothing in
// particular.
func otherOutlook(l nextLook) measure.Outlook {
	switch {
	case l.seen != nil:
		if l.other > 0 {
			return measure.Outlook{Chances: []float64{l.other, 1 - l.other}}
		}
		return measure.Outlook{Chances: []float64{0.5, 0.5}}
	case l.heard != nil:
		even := make([]float64, leakOutcomes)
		for k := range even {
			even[k] = 1.0 / leakOutcomes
		}
		return measure.Outlook{Chances: even}
	case l.row < 0:
		return measure.Outlook{Mean: math.Log(5 * units.Atmosphere.SI()), SD: 0.8}
	case l.row >= rowMaxLift && l.row < rowStop || l.row >= rowGap:
		return measure.Outlook{SD: 1.5}
	}
	return measure.Outlook{SD: 30}
}

// mix is one part of a verdict with its share in it.
type mix struct {
	share float64
	g     measure.Gaussian
	d     measure.Data
	far   bool
}

// mixture lists the parts of a verdict that matter.
func (b *bench) mixture(v *verdict) []mix {
	var all []mix
	var logs []float64
	top := math.Inf(-1)
	id := b.index[v.key]
	for i := range b.parts {
		p := &b.parts[i]
		if p.verdicts[3] != id {
			continue
		}
		g, _ := b.gaussian(p.mask, p.fixed)
		d := b.near(p.fixed)
		if v.misread >= 0 {
			d[v.misread].Taken = false
		}
		ll := g.LogLikelihood(d) + p.weight + p.told
		all, logs, top = append(all, mix{g: g, d: d, far: p.mask&farMask != 0}), append(logs, ll), max(top, ll)
	}
	sum := 0.0
	for i := range all {
		all[i].share = math.Exp(logs[i] - top)
		sum += all[i].share
	}
	for i := range all {
		all[i].share /= sum
	}
	return all
}

// outlook is what a verdict makes one expect of a look: a normal figure with the
// mean and spread of the mixture of its parts.
func (b *bench) outlook(v *verdict, mixes []mix, l nextLook) measure.Outlook {
	if l.seen != nil {
		yes := 0.0
		for _, m := range mixes {
			yes += m.share * l.seen(v, m.far)
		}
		yes = min(max(yes, 1e-6), 1-1e-6)
		return measure.Outlook{Chances: []float64{yes, 1 - yes}}
	}
	if l.heard != nil {
		return l.heard(v)
	}
	if l.row < 0 {
		return b.pressureOutlook(v)
	}
	var mean, square float64
	for _, m := range mixes {
		o := m.g.Outlook(l.row, m.d)
		o.SD = min(o.SD, 104) // uniform over a turn
		mean += m.share * o.Mean
		square += m.share * (o.SD*o.SD + o.Mean*o.Mean)
	}
	return measure.Outlook{Mean: mean, SD: math.Sqrt(max(square-mean*mean, 1e-6))}
}
