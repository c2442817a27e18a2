package trial

import (
	"example.com/benchbook/examples/job"
	"example.com/benchbook/timing"
	"example.com/benchbook/transmission"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

// Quick is Panel with the finding, the picture, the odds and the controls only:
// what must follow the hand. It asks the trades' packages for no more than
// that, and leaves out remedies, gaps between valves and piston, and chances,
// which take most of the time. What it has is the same as in Panel.
func (t *Trial) Quick(key string, width int) (Panel, error) {
	var p Panel
	switch {
	case key == "clutch" && t.clutch != nil:
		in := t.clutchInput()
		adjust, err := transmission.Adjust(in, transmission.Options{Draws: 100}) // for the chances, which are left out
		if err != nil {
			return p, err
		}
		causes, err := transmission.Diagnose(in, transmission.Options{})
		if err != nil {
			return p, err
		}
		p.show(job.ClutchResult{Input: in, Adjust: adjust, Diagnose: causes}, width)
	case key == "timing" && t.timing != nil:
		in := t.timingInput()
		r := timing.Result{}
		var err error
		if r.Inlet, r.Exhaust, err = timing.Phases(in, timing.Options{}); err != nil {
			return p, err
		}
		if !t.timing.Verdict.NoAnswer.Given() {
			if r.Causes, err = timing.Causes(in, timing.Options{}); err != nil {
				return p, err
			}
		}
		p.show(job.TimingResult{Input: in, Verdict: r}, width)
	default:
		return p, fault.Fault{Code: fault.UnknownName, Path: key, Rule: "not a part of this job that can be moved"}
	}
	p.Key, p.Title = key, t.report.Section(key).Title
	p.Controls = t.controlsOf(key)
	return p, nil
}

// clutchInput returns what the clutch's job file comes to with the readings as
// moved.
func (t *Trial) clutchInput() transmission.Input {
	in := t.clutch.Input
	for _, s := range scales() {
		if n, moved := t.at[s.key]; moved {
			s.set(&in, s.file(t.clutch, n))
		}
	}
	sign := func(key string, to *transmission.Sign) {
		if word, moved := t.signs[key]; moved {
			*to = map[string]transmission.Sign{"yes": transmission.Yes, "no": transmission.No}[word]
		}
	}
	sign(Slips, &in.Signs.Slips)
	sign(Drags, &in.Signs.Drags)
	return in
}

// timingInput is the same for the valve timing.
func (t *Trial) timingInput() timing.Input {
	in := t.timing.Input
	r := &in.Readings
	for _, c := range []struct {
		early         int
		opens, closes *measure.Position
		atTDC         *measure.Reading[units.Length]
	}{
		{t.at[InletEarly], &r.InletOpens, &r.InletCloses, &r.InletLiftAtTDC},
		{t.at[ExhaustEarly], &r.ExhaustOpens, &r.ExhaustCloses, &r.ExhaustLiftAtTDC},
	} {
		if c.early == 0 {
			continue
		}
		for _, p := range []*measure.Position{c.opens, c.closes} {
			if p.Taken() {
				*p, _ = measure.ReadPosition(moved(*p, c.early), measure.DegreeDisc()) // our own text reads
			}
		}
		*c.atTDC = measure.Reading[units.Length]{}
	}
	return in
}
