package trial

import (
	"slices"

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
		moved, err := t.timingInput()
		if err != nil {
			return p, err
		}
		in := moved.Input
		r := timing.Result{}
		if r.Inlet, r.Exhaust, err = timing.Phases(in, timing.Options{}); err != nil {
			return p, err
		}
		if !t.timing.Verdict.NoAnswer.Given() {
			if r.Causes, err = timing.Causes(in, timing.Options{}); err != nil {
				return p, err
			}
		}
		moved.Verdict = r
		p.show(moved, width)
	case key == "carburettor" && t.carburettor != nil: // which takes no longer whole
		s, err := t.work(key)
		if err != nil {
			return p, err
		}
		p.show(s.Result, width)
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

// timingInput is the same for the valve timing, without its verdict.
func (t *Trial) timingInput() (job.TimingResult, error) {
	all := *t.timing
	r := &all.Input.Readings
	for _, c := range []struct {
		early         int
		name          string
		opens, closes *measure.Position
		atTDC         *measure.Reading[units.Length]
		curve         **job.LiftCurve
	}{
		{t.at[InletEarly], "inlet", &r.InletOpens, &r.InletCloses, &r.InletLiftAtTDC, &all.InletCurve},
		{t.at[ExhaustEarly], "exhaust", &r.ExhaustOpens, &r.ExhaustCloses, &r.ExhaustLiftAtTDC, &all.ExhaustCurve},
	} {
		if c.early == 0 {
			continue
		}
		if *c.curve != nil {
			moved, err := (*c.curve).Earlier(units.CrankDegree.Times(float64(c.early)))
			if err != nil {
				return all, err
			}
			*c.curve = moved
		}
		for _, e := range []struct {
			what string
			to   *measure.Position
		}{{c.name + " opens", c.opens}, {c.name + " closes", c.closes}} {
			switch {
			case !e.to.Taken():
			case !standsIn(*c.curve, e.what):
				*e.to, _ = measure.ReadPosition(moved(*e.to, c.early), measure.DegreeDisc()) // our own text reads
			case e.to == c.opens:
				*e.to = (*c.curve).Opens
			default:
				*e.to = (*c.curve).Closes
			}
		}
		*c.atTDC = measure.Reading[units.Length]{}
	}
	return all, nil
}

// standsIn reports whether a reading is a lift curve's.
func standsIn(c *job.LiftCurve, what string) bool {
	return c != nil && slices.Contains(c.StandsIn, what)
}
