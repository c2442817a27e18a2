package job

import (
	"strings"

	"example.com/benchbook/refdata"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

// readLimits reads measurements of a stripped engine. Each key is that of a
// workshop limit; what quantity it takes is the table's to say.
func readLimits(s section) part {
	in := refdata.LimitReadings{
		Lengths: map[string]measure.Reading[units.Length]{},
		Forces:  map[string]measure.Reading[units.Force]{},
		Shares:  map[string]measure.Reading[units.Ratio]{},
	}
	for l := range refdata.WorkshopLimits().All() {
		if !s.has(l.Key) {
			continue
		}
		switch {
		case l.Fit.Force.Given() || l.Renew.Force.Given():
			in.Forces[l.Key] = reading(s, l.Key, measure.SpringBalance())
		case l.Fit.Share.Given() || l.Renew.Share.Given():
			in.Shares[l.Key] = reading(s, l.Key, measure.Nominal[units.Ratio](0.05))
		default:
			in.Lengths[l.Key] = reading(s, l.Key, measure.FeelerGauge())
		}
	}
	for l := range refdata.WorkshopLimits().All() {
		s.asked[l.Key] = true // so that a slip of the pen is told its neighbour
	}
	s.close()
	return func(j *job) (Section, error) {
		if j.engine.bore > 0 {
			in.Bore = measure.By(j.engine.bore, measure.Caliper())
		}
		return limitsSection(in)
	}
}

func limitsSection(in refdata.LimitReadings) (Section, error) {
	s := Section{Key: "limits", Title: "Wear and fits"}
	r, err := refdata.CheckLimits(in)
	if err != nil {
		return s, unwrapLimits(err)
	}
	s.Result = LimitsResult{r}
	limitFindings(&s, r.Lengths)
	limitFindings(&s, r.Forces)
	limitFindings(&s, r.Shares)
	if len(s.Findings) == 0 {
		s.Findings = append(s.Findings, Finding{Key: "right", Text: "every figure read lies within its fit or its wear"})
	}
	s.basis(r.Basis)
	return s, nil
}

// limitFindings names what must be renewed or set again, and tables the rest.
func limitFindings[Q units.Quantity](s *Section, all []refdata.LimitFinding[Q]) {
	for _, f := range all {
		row(s, f.Part, f.Reading)
		switch f.Verdict {
		case refdata.Renew, refdata.AtLimit, refdata.Tight, refdata.Loose:
			s.Findings = append(s.Findings, Finding{Key: f.Key, Text: f.Text, Sure: oddsWords(f.Chance.Value()), Percent: int(100*f.Chance.Value() + 0.5), Fault: true})
			if f.Do != "" {
				s.DoFirst = append(s.DoFirst, f.Do)
			}
		case refdata.NotJudged:
			s.Findings = append(s.Findings, Finding{Key: f.Key, Text: f.Part + ": " + f.Reason.Text})
		}
	}
}

// unwrapLimits gives faults the path they have in the job file.
func unwrapLimits(err error) error {
	var l fault.List
	for _, f := range fault.Faults(err) {
		for _, field := range []string{"lengths.", "forces.", "shares."} {
			f.Path = strings.TrimPrefix(f.Path, field)
		}
		f.Path = strings.TrimSuffix(f.Path, ".reading")
		l.Add(f)
	}
	return l.Err()
}
