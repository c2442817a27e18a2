package job

import (
	"example.com/benchbook/timing/crank"
	"example.com/benchbook/timing/gear"
	"example.com/benchbook/timing/ignition"
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

func readIgnition(s section) part {
	var in ignition.Input
	if s.choice("shaft", "half speed", "engine speed") == "engine speed" {
		in.Spec.Drive = ignition.EngineSpeed()
	} else {
		in.Spec.Drive = ignition.HalfSpeed()
	}
	if teeth := s.counts("train", 2, 1000); len(teeth) > 0 {
		in.Spec.Train = gear.Simple(teeth...)
	}
	in.Spec.Gauges.RimDiameter = reading(s, "rim_diameter", measure.Rule())
	if spec, ok := s.object("specified"); ok {
		in.Spec.Full = spec.where("full_advance")
		in.Spec.Static = spec.where("full_retard")
		in.Spec.Range = reading(spec, "range_at_shaft", measure.Protractor())
		in.Spec.Gap = reading(spec, "points_gap", measure.FeelerGauge())
		spec.close()
	}
	if read, ok := s.object("read"); ok {
		in.Read.Advanced = read.where("full_advance")
		in.Read.Retarded = read.where("full_retard")
		in.Read.Gap = reading(read, "points_gap", measure.FeelerGauge())
		in.Read.TDCByStop = read.choice("tdc_found_by", "eye", "stop", "dial", "mark") == "stop"
		read.close()
	}
	s.close()
	return func(j *job) (Section, error) {
		in.Spec.Gauges.Slider = crank.Slider{Stroke: j.engine.stroke, Rod: j.engine.rod}
		switch j.first.spark {
		case "on compression":
			in.Read.Stroke = ignition.Compression
		case "on overlap":
			in.Read.Stroke = ignition.Overlap
		}
		return ignitionSection(in)
	}
}

// where returns the place of the spark at key: degrees, "38 BTDC"; or an object
// with piston travel or a distance along a rim.
func (s section) where(key string) ignition.Where {
	if s.node != nil && s.node.child[key] != nil && s.node.child[key].kind == isObject {
		sub, _ := s.object(key)
		w := ignition.Where{Travel: reading(sub, "travel", measure.DialGauge()), Rim: reading(sub, "rim", measure.Rule())}
		sub.close()
		return w
	}
	return ignition.Where{At: positionOf(s, key, measure.DegreeDisc())}
}

func ignitionSection(in ignition.Input) (Section, error) {
	s := Section{Key: "ignition", Title: "Ignition timing"}
	r, err := ignition.Diagnose(in, ignition.Options{})
	if err != nil {
		return s, err
	}
	s.Result = IgnitionResult{in, r}
	if r.NoAnswer.Given() {
		s.Open = true
		s.Findings = append(s.Findings, Finding{Key: r.NoAnswer.Code, Text: r.NoAnswer.Text})
	} else {
		s.Findings = ranked(r.Causes)
	}
	if r.Advanced.Early.Taken() {
		s.Findings = append(s.Findings, Finding{Key: "advanced", Text: "spark on full advance " + shift(r.Advanced.Early) + " of what it should be"})
	}
	if s.Faulty() {
		for _, m := range r.Remedies[:min(len(r.Remedies), 2)] {
			s.DoFirst = append(s.DoFirst, m.Text)
		}
	}
	if r.MayKick {
		s.BeforeTurning = append(s.BeforeTurning, "as it stands it may kick back; do not kick it over with the ignition live")
	}
	rowAt(&s, "spark, full advance", in.Read.Advanced.At)
	row(&s, "spark, full advance", in.Read.Advanced.Travel)
	row(&s, "spark, full advance", in.Read.Advanced.Rim)
	rowAt(&s, "spark, full retard", in.Read.Retarded.At)
	row(&s, "spark, full retard", in.Read.Retarded.Travel)
	row(&s, "spark, full retard", in.Read.Retarded.Rim)
	row(&s, "points gap", in.Read.Gap)
	t := Table{Title: "Where the spark should fall", Head: []string{"", "crank"}}
	t.Rows = append(t.Rows, []string{"full advance", r.Full.String()}, []string{"full retard", r.Retard.String()},
		[]string{"between them", r.Range.In(units.CrankDegree, 1)})
	s.Tables = append(s.Tables, t)
	s.odds(r.Causes)
	s.settle(r.NextReadings)
	s.basis(r.Basis)
	return s, nil
}
