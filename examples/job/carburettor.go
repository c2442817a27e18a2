package job

import (
	"strings"

	"example.com/benchbook/carburation"
	"example.com/benchbook/refdata"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

func readCarburettor(s section) part {
	var in carburation.Input
	in.Fitted.Bore = reading(s, "bore", measure.Caliper())
	in.Fitted.MainJet = s.jet("main_jet")
	in.Fitted.PilotJet = s.jet("pilot_jet")
	in.Fitted.Cutaway = reading(s, "cutaway", measure.Caliper())
	if groove, ok := s.object("clip_groove"); ok {
		in.Fitted.Groove.FromTop, _ = groove.count("from_top", 1, 12)
		in.Fitted.Groove.Of, _ = groove.count("of", 1, 12)
		groove.close()
	}
	in.Surroundings.Temperature = reading(s, "air_temperature", measure.Thermometer())
	in.Surroundings.Pressure = reading(s, "air_pressure", measure.Barometer())
	in.Surroundings.Humidity = reading(s, "air_humidity", measure.Nominal[units.Ratio](0.1))
	in.Surroundings.Fuel = s.text("fuel")
	in.Lambda = reading(s, "lambda_wanted", measure.Nominal[units.Ratio](0.03))
	in.Engine.VolumetricEfficiency = reading(s, "volumetric_efficiency", measure.Nominal[units.Ratio](0.08))
	var needle *carburation.Carburettor
	if sub, ok := s.object("needle"); ok {
		needle = &carburation.Carburettor{NeedleJet: reading(sub, "jet", measure.Micrometer())}
		needle.Needle.Diameter = reading(sub, "diameter", measure.Micrometer())
		needle.Needle.Taper = reading(sub, "taper", measure.Nominal[units.Angle](0.05))
		needle.Needle.TaperFrom = reading(sub, "taper_from", measure.Caliper())
		sub.close()
	}
	opt := carburation.Options{Head: reading(s, "flow_mark_head", measure.Rule())}
	s.close()
	return func(j *job) (Section, error) { return carburettorSection(j, in, opt, needle) }
}

// jet returns the jet at key as its mark is written.
func (s section) jet(key string) carburation.Jet {
	j, err := carburation.ReadJet(s.text(key))
	s.faults.Under(under(s.path, key), err)
	return j
}

func carburettorSection(j *job, in carburation.Input, opt carburation.Options, needle *carburation.Carburettor) (Section, error) {
	s := Section{Key: "carburettor", Title: "Carburettor"}
	if j.engine.bore == 0 || j.engine.stroke == 0 {
		return s, fault.Fault{Code: fault.Missing, Rule: "needs the engine's bore and stroke in the section engine"}
	}
	swept, err := j.engine.cylinder().Displacement()
	if err != nil {
		return s, fault.Under("engine", err)
	}
	in.Engine.Displacement = measure.By(swept, measure.Nominal[units.Volume](0.005))
	in.Engine.Cylinders = j.engine.cylinders
	in.Engine.PeakSpeed = j.engine.peak
	if needle != nil {
		in.Fitted.NeedleJet, in.Fitted.Needle = needle.NeedleJet, needle.Needle
	}
	r, err := carburation.Start(in, opt)
	if err != nil {
		return s, err
	}
	mixture, err := mixtureOver(in, opt, needle)
	if err != nil {
		return s, err
	}
	s.Result = CarburettorResult{in, r, mixture}
	for _, p := range r.Outside {
		s.Findings = append(s.Findings, Finding{Key: p.Key, Text: p.Text, Sure: oddsWords(p.Chance), Percent: int(100*p.Chance + 0.5), Fault: true})
	}
	if len(r.Outside) == 0 {
		s.Findings = append(s.Findings, Finding{Key: "inside", Text: "every part that was read lies within the ranges the trade starts from"})
	}
	if n := len(mixture); n > 0 {
		full := mixture[n-1]
		s.Findings = append(s.Findings, Finding{Key: "mixture", Text: "the model, not yet set right by a lambda reading, puts full throttle at lambda " + full.Lambda.In(units.One, 2) +
			", 90 % band " + full.LambdaBand.Low.In(units.One, 2) + " to " + full.LambdaBand.High.In(units.One, 2)})
	}
	for _, d := range [][2]string{{r.Bore.Text, r.Bore.Differ}, {r.MainJet.Text, r.MainJet.Differ}, {r.Cutaway.Text, r.Cutaway.Differ}, {r.PilotJet.Text, r.PilotJet.Differ}} {
		if d[1] != "" {
			s.Findings = append(s.Findings, Finding{Key: "practice-and-physics", Text: plainly(d[0]) + ": " + strings.Replace(d[1], "they overlap", "practice and physics overlap", 1)})
		}
	}
	for _, p := range r.Outside {
		s.DoFirst = append(s.DoFirst, replace(p, r))
	}
	row(&s, "bore", in.Fitted.Bore)
	row(&s, "main jet", r.MainJet.Fitted)
	row(&s, "pilot jet", r.PilotJet.Fitted)
	row(&s, "cutaway", in.Fitted.Cutaway)
	if needle != nil {
		row(&s, "needle jet", needle.NeedleJet)
		row(&s, "needle", needle.Needle.Diameter)
		row(&s, "needle taper", needle.Needle.Taper)
	}
	row(&s, "air temperature", in.Surroundings.Temperature)
	row(&s, "air pressure", in.Surroundings.Pressure)
	s.Tables = append(s.Tables, startTable(r))
	if len(mixture) > 0 {
		s.Tables = append(s.Tables, mixtureTable(mixture))
		s.basis(mixture[0].Basis)
	}
	s.basis(r.Basis)
	return s, nil
}

// replace says what to fit in place of a part that is outside.
func replace(p carburation.Part, r carburation.Starting) string {
	switch p.Key {
	case r.Bore.Key:
		return "look for a body of " + lengths(r.Bore.Corrected) + " bore before buying jets for this one"
	case r.MainJet.Key:
		return "start the main jet at " + flows(r.MainJet.Corrected) + ", from the rich end"
	case r.PilotJet.Key:
		return "start the pilot jet at " + flows(r.PilotJet.Corrected)
	case r.Cutaway.Key:
		return "start the slide cutaway at " + lengths(r.Cutaway.Corrected)
	}
	return p.Text
}

func lengths(r refdata.Range[units.Length]) string {
	return r.Low.Or(0).In(units.Millimetre, 1) + " to " + r.High.Or(0).In(units.Millimetre, 1)
}

func flows(r refdata.Range[units.VolumeFlow]) string {
	return r.Low.Or(0).In(units.CubicCentimetrePerMinute, 0) + " to " + r.High.Or(0).In(units.CubicCentimetrePerMinute, 0)
}

func startTable(r carburation.Starting) Table {
	t := Table{Title: "Where to start", Head: []string{"part", "trade, for this air and fuel", "physics, 90 % band"}}
	lengthRow := func(p carburation.Point[units.Length]) {
		trade, physics := lengths(p.Corrected), p.NoPhysics.Text
		if p.NoPractice.Given() {
			trade = p.NoPractice.Text
		}
		if !p.NoPhysics.Given() {
			physics = lengths(refdata.RangeOf(p.Physics.Low, p.Physics.High))
		}
		t.Rows = append(t.Rows, []string{plainly(p.Text), trade, physics})
	}
	flowRow := func(p carburation.Point[units.VolumeFlow]) {
		trade, physics := flows(p.Corrected), p.NoPhysics.Text
		if p.NoPractice.Given() {
			trade = p.NoPractice.Text
		}
		if !p.NoPhysics.Given() {
			physics = flows(refdata.RangeOf(p.Physics.Low, p.Physics.High))
		}
		t.Rows = append(t.Rows, []string{plainly(p.Text), trade, physics})
	}
	lengthRow(r.Bore)
	flowRow(r.MainJet)
	lengthRow(r.Cutaway)
	t.Rows = append(t.Rows, []string{"needle clip", r.Needle.Practice, ""})
	flowRow(r.PilotJet)
	return t
}

// plainly returns a part's name without what stands after it in brackets.
func plainly(text string) string {
	name, _, _ := strings.Cut(text, " (")
	return name
}

// lifts are the openings a mixture is worked out at: the marks put on a twist
// grip, with one each side.
var lifts = [...]float64{0.125, 0.25, 0.375, 0.5, 0.75, 1}

// mixtureOver returns the mixture over the lift of the slide at three quarters
// of the speed of greatest power, nothing if the needle was not measured.
func mixtureOver(in carburation.Input, opt carburation.Options, needle *carburation.Carburettor) ([]carburation.Explained, error) {
	if needle == nil {
		return nil, nil
	}
	c := *needle
	c.Bore, c.Cutaway, c.MainJet, c.PilotJet = in.Fitted.Bore, in.Fitted.Cutaway, in.Fitted.MainJet, in.Fitted.PilotJet
	c.Needle.Groove = in.Fitted.Groove
	m, err := carburation.NewModel(carburation.Setup{Engine: in.Engine, Surroundings: in.Surroundings, Carburettor: c}, opt)
	if err != nil {
		return nil, fault.Under("needle", err)
	}
	speed := m.Setup().Engine.PeakSpeed.Value().Times(0.75)
	var all []carburation.Explained
	for _, lift := range lifts {
		at, err := m.Explain(units.Value(lift), speed)
		if err != nil {
			return nil, err
		}
		all = append(all, at)
	}
	return all, nil
}

func mixtureTable(all []carburation.Explained) Table {
	t := Table{Title: "Mixture by the model, at " + all[0].Speed.In(units.RevolutionPerMinute, 0), Head: []string{"lift", "lambda", "90 % band", "pilot's share"}}
	for _, e := range all {
		t.Rows = append(t.Rows, []string{e.Lift.In(units.One, 3), e.Lambda.In(units.One, 2),
			e.LambdaBand.Low.In(units.One, 2) + " to " + e.LambdaBand.High.In(units.One, 2), percent(e.PilotShare)})
	}
	return t
}
