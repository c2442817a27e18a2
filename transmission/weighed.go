package transmission

import (
	"math"

	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

// Weighed is a trial of the release, whole or in part: what the hand put in and what
// came out, by spring balance and rule. Of a whole release the effort is at the
// finger line of the lever, the load at the push rod or a weight hung in its place; of
// a cable alone, at its two ends.
type Weighed struct {
	Effort, Load             measure.Reading[units.Force]  // while it moves the way of the pull, 0.1 N to 100 kN
	EffortTravel, LoadTravel measure.Reading[units.Length] // together, from the same start, 0.01 mm to 100 m
}

// Advantage is what a release gives and what it keeps.
type Advantage struct {
	Force      measure.Reading[units.Ratio] `json:"force"`      // load over effort, the mechanical advantage
	Travel     measure.Reading[units.Ratio] `json:"travel"`     // travel of the effort over that of the load, the velocity ratio
	Efficiency measure.Reading[units.Ratio] `json:"efficiency"` // work out over work in: Force over Travel
	Ideal      units.Force                  `json:"ideal"`      // effort that would do without friction: load over Travel
}

// Advantage returns the force ratio, the travel ratio and their quotient, the
// efficiency. Of a whole clutch release that is the product of all its efficiencies,
// of a cable [Condition].CableEfficiency. Source: S. S. Bhavikatti, Mechanics of
// Solids, example 6.1. Errors: a figure that is missing or outside its range, and work
// out above work in by more than three times the uncertainty.
func (w Weighed) Advantage() (Advantage, error) {
	var l fault.List
	w.forces(&l, "")
	given(&l, "effort_travel", &w.EffortTravel, "mm", 1000, 0.01, 1e5)
	given(&l, "load_travel", &w.LoadTravel, "mm", 1000, 0.01, 1e5)
	if err := l.Err(); err != nil {
		return Advantage{}, err
	}
	in := []measure.Input{w.Effort.SI(), w.Load.SI(), w.EffortTravel.SI(), w.LoadTravel.SI()}
	ratio := func(f func(x []float64) float64) measure.Reading[units.Ratio] {
		r, err := measure.Propagate[units.Ratio](f, in...)
		l.Under("", err)
		return r
	}
	a := Advantage{
		Force:      ratio(func(x []float64) float64 { return x[1] / x[0] }),
		Travel:     ratio(func(x []float64) float64 { return x[2] / x[3] }),
		Efficiency: ratio(func(x []float64) float64 { return x[1] * x[3] / (x[0] * x[2]) }),
	}
	a.Ideal = w.Load.Value().Times(1 / a.Travel.Value().Value())
	if e := a.Efficiency; e.Value().Value()-3*e.U().Value() > 1+1e-9 {
		l.Add(fault.Fault{Code: fault.Conflict, Path: "load", Value: w.Load.Text(), Rule: "must not give more work than went in: " + e.String() + " of it came out"})
	}
	if err := l.Err(); err != nil {
		return Advantage{}, err
	}
	return a, nil
}

func (w *Weighed) forces(l *fault.List, path string) {
	given(l, path+"effort", &w.Effort, "N", 1, 0.1, 1e5)
	given(l, path+"load", &w.Load, "N", 1, 0.1, 1e5)
}

// EffortLaw is how the effort of a release goes with its load: effort = PerLoad load
// + Idle. Idle is what the hand spends with nothing to lift: a dry or kinked cable, a
// stiff lever. PerLoad is the share that leverage and friction under load set.
type EffortLaw struct {
	PerLoad measure.Reading[units.Ratio] `json:"per_load"`
	Idle    measure.Reading[units.Force] `json:"idle"`
}

// FitEffort returns the law through two trials or more at different loads, by least
// squares of the effort (the linear law of a machine: S. S. Bhavikatti, Mechanics of
// Solids, example 6.2). Travels are not wanted. Errors: fewer than two trials, loads
// that are all alike, figures missing or outside their range, and a law by which more
// load takes less effort.
func FitEffort(trials []Weighed) (EffortLaw, error) {
	var l fault.List
	n := len(trials)
	if n < 2 {
		l.Add(fault.Fault{Code: fault.Missing, Path: "trials", Value: number(float64(n)), Rule: "must be two or more, at different loads"})
	}
	in := make([]measure.Input, 2*n)
	low, high := math.Inf(1), math.Inf(-1)
	for i := range trials {
		w := &trials[i]
		w.forces(&l, "trials["+number(float64(i))+"].")
		in[i], in[n+i] = w.Load.SI(), w.Effort.SI()
		low, high = math.Min(low, in[i].X), math.Max(high, in[i].X)
	}
	if err := l.Err(); err != nil {
		return EffortLaw{}, err
	}
	if !(high > low*(1+1e-6)) {
		return EffortLaw{}, fault.Fault{Code: fault.Conflict, Path: "trials", Value: trials[0].Load.Text(), Rule: "must be at different loads for a law to show"}
	}
	line := func(x []float64) (slope, at0 float64) {
		mx, my := mean(x[:n], nil), mean(x[n:], nil)
		sxx, sxy := 0.0, 0.0
		for i := range n {
			sxx += (x[i] - mx) * (x[i] - mx)
			sxy += (x[i] - mx) * (x[n+i] - my)
		}
		return sxy / sxx, my - sxy/sxx*mx
	}
	var e EffortLaw
	var err error
	e.PerLoad, err = measure.Propagate[units.Ratio](func(x []float64) float64 { k, _ := line(x); return k }, in...)
	l.Under("trials", err)
	e.Idle, err = measure.Propagate[units.Force](func(x []float64) float64 { _, c := line(x); return c }, in...)
	l.Under("trials", err)
	if l.Len() == 0 && !(e.PerLoad.Value() > 0) {
		l.Add(fault.Fault{Code: fault.Conflict, Path: "trials", Value: e.PerLoad.String(), Rule: "must show more effort for more load"})
	}
	if err := l.Err(); err != nil {
		return EffortLaw{}, err
	}
	return e, nil
}

// Effort returns what a load of 0 to 100 kN takes. Errors: a load outside that.
func (e EffortLaw) Effort(load units.Force) (units.Force, error) {
	if err := e.within("load", load); err != nil {
		return 0, err
	}
	return load.Times(e.PerLoad.Value().Value()) + e.Idle.Value(), nil
}

// Load returns what an effort of 0 to 100 kN lifts; none if friction alone takes it.
// Errors: an effort outside that.
func (e EffortLaw) Load(effort units.Force) (units.Force, error) {
	if err := e.within("effort", effort); err != nil {
		return 0, err
	}
	return max(effort-e.Idle.Value(), 0).Times(1 / e.PerLoad.Value().Value()), nil
}

// Efficiency returns work out over work in at an effort, 0.1 N to 100 kN, with the
// travel ratio of the release, 0.01 to 10 000. It rises with the effort, to 1/(PerLoad
// times the travel ratio) at most. Errors: figures outside their range.
func (e EffortLaw) Efficiency(effort units.Force, travel float64) (units.Ratio, error) {
	var l fault.List
	l.Under("", e.within("effort", effort))
	need(&l, "effort", effort.Newtons(), "N", 0.1, 1e5)
	need(&l, "travel", travel, "", 0.01, 1e4)
	if err := l.Err(); err != nil {
		return 0, err
	}
	load, err := e.Load(effort)
	return units.Value(load.Ratio(effort) / travel), err
}

func (e EffortLaw) within(path string, f units.Force) error {
	// far wider than any release; outside, a load would be no number
	if k, idle := e.PerLoad.Value().Value(), e.Idle.Value().Newtons(); !(k >= 1e-6 && k <= 1e6 && math.Abs(idle) <= 1e6) {
		return fault.Fault{Code: fault.Missing, Path: "per_load", Rule: "is needed: fit a law first"}
	}
	if n := f.Newtons(); !(n >= 0 && n <= 1e5) {
		return outside(path, n, "N", 0, 1e5)
	}
	return nil
}
