package job

import (
	"example.com/benchbook/timing"
	"example.com/benchbook/timing/gear"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

func readTiming(s section) part {
	var in timing.Input
	var curves []*curveRead
	table := func(s section, c timing.Cam, book bool) bool {
		r := readCurve(s, c.String()+"_curve", c, book)
		if r != nil {
			r.events = book && s.text(c.String()+"_opens") != ""
			curves = append(curves, r)
		}
		return r != nil
	}
	readTrain(s, &in.Engine)
	if spec, ok := s.object("specified"); ok {
		in.Engine.Check = check(spec)
		in.Engine.Inlet = lobe(spec, "inlet_opens", "inlet_closes", "inlet_max_lift", !table(spec, timing.Inlet, true))
		in.Engine.Exhaust = lobe(spec, "exhaust_opens", "exhaust_closes", "exhaust_max_lift", !table(spec, timing.Exhaust, true))
		spec.close()
	} else {
		s.fault("specified", fault.Missing, "", "needed: the events the cams are meant to have")
	}
	if sub, ok := s.object("head"); ok {
		in.Engine.Head = readHead(sub)
	}
	for _, sub := range s.list("other_cams") {
		rival := timing.Rival{Name: sub.text("name"), Lobe: lobe(sub, "opens", "closes", "max_lift", true)}
		if sub.choice("in_place_of", "inlet", "exhaust") == "exhaust" {
			rival.Cam = timing.Exhaust
		}
		sub.close()
		in.Engine.Rivals = append(in.Engine.Rivals, rival)
	}
	if read, ok := s.object("read"); ok {
		table(read, timing.Inlet, false)
		table(read, timing.Exhaust, false)
		in.Readings = readEvents(read)
	}
	s.close()
	return func(j *job) (Section, error) {
		in := in
		r := &in.Readings
		result, err := withCurves(&in, curves)
		if err != nil {
			return Section{Key: "timing"}, err
		}
		j.inletCloses = r.InletCloses
		if in.Engine.Head != nil {
			if j.engine.stroke == 0 || j.engine.rod == 0 {
				return Section{Key: "timing"}, fault.Fault{Code: fault.Missing, Path: "head", Rule: "needs the engine's stroke and rod in the section engine"}
			}
			in.Engine.Head.Slider = j.engine.cylinder().Slider
		}
		r.CompressionDry, r.CompressionWet, r.Leak = j.first.dry, j.first.wet, j.first.leak
		switch j.first.spark {
		case "on compression":
			r.Spark = timing.Yes
		case "on overlap":
			r.Spark = timing.No
		}
		if err := result.valves(&in); err != nil {
			return Section{Key: "timing"}, err
		}
		result.Input = in
		return timingSection(result)
	}
}

func readTrain(s section, e *timing.Engine) {
	for _, m := range s.list("train") {
		mesh := gear.Mesh{From: m.text("from"), To: m.text("to")}
		mesh.Driver, _ = m.count("driver", 2, 1000)
		mesh.Driven, _ = m.count("driven", 2, 1000)
		switch m.choice("link", "mesh", "internal mesh", "chain") {
		case "internal mesh":
			mesh.Link = gear.Internal
		case "chain":
			mesh.Link = gear.Chain
		}
		m.close()
		e.Drive = append(e.Drive, mesh)
	}
	held := map[string]timing.Fixing{"pressed": timing.Pressed, "one piece": timing.OnePiece}
	e.InletFixing = held[s.choice("inlet_cam_held", "pressed", "one piece")]
	e.ExhaustFixing = held[s.choice("exhaust_cam_held", "pressed", "one piece")]
	e.Keyways, _ = s.count("pinion_keyways", 1, 60)
	e.Rocker = reading(s, "rocker_ratio", measure.Nominal[units.Ratio](0.02))
}

// readHead reads how the valves stand to the piston and to each other.
func readHead(s section) *timing.Head {
	h := &timing.Head{Between: reading(s, "between_heads", measure.FeelerGauge())}
	for _, v := range []struct {
		name string
		to   *timing.Valve
	}{{"inlet", &h.Inlet}, {"exhaust", &h.Exhaust}} {
		v.to.ToPiston = reading(s, v.name+"_to_piston", measure.DialGauge())
		v.to.Tilt, _ = quantity[units.Angle](s, v.name+"_tilt")
		v.to.Head, _ = quantity[units.Length](s, v.name+"_head")
		v.to.Least, _ = quantity[units.Length](s, v.name+"_least")
	}
	s.close()
	if !h.Inlet.ToPiston.Taken() && !h.Exhaust.ToPiston.Taken() && !h.Between.Taken() {
		return nil // nothing was measured
	}
	return h
}

func readEvents(s section) timing.Readings {
	disc, dial := measure.DegreeDisc(), measure.DialGauge()
	r := timing.Readings{
		InletOpens:       positionOf(s, "inlet_opens", disc),
		InletCloses:      positionOf(s, "inlet_closes", disc),
		ExhaustOpens:     positionOf(s, "exhaust_opens", disc),
		ExhaustCloses:    positionOf(s, "exhaust_closes", disc),
		InletMaxLift:     reading(s, "inlet_max_lift", dial),
		ExhaustMaxLift:   reading(s, "exhaust_max_lift", dial),
		InletLiftAtTDC:   reading(s, "inlet_lift_at_tdc", dial),
		ExhaustLiftAtTDC: reading(s, "exhaust_lift_at_tdc", dial),
	}
	r.TDC = map[string]timing.TDCBy{"stop": timing.TDCByStop, "dial": timing.TDCByDial, "mark": timing.TDCByMark}[s.choice("tdc_found_by", "eye", "stop", "dial", "mark")]
	answer := map[string]timing.Seen{"yes": timing.Yes, "no": timing.No}
	r.MarksAlign = answer[s.choice("marks_align", "yes", "no")]
	r.Sequence = answer[s.choice("inlet_follows_exhaust", "yes", "no")]
	if s.has("check_lift") || s.has("at") || s.has("clearance") {
		c := check(s)
		r.Check = &c
	}
	s.close()
	return r
}

func check(s section) timing.Check {
	var c timing.Check
	c.Lift, _ = quantity[units.Length](s, "check_lift")
	c.Clearance, _ = quantity[units.Length](s, "clearance")
	if s.choice("at", "valve", "follower") == "follower" {
		c.At = timing.AtFollower
	}
	return c
}

// lobe reads a specified lobe; its events need not be there where a curve is.
func lobe(s section, opens, closes, lift string, needed bool) timing.Lobe {
	var l timing.Lobe
	if needed || s.text(opens) != "" || s.text(closes) != "" {
		l.Opens, l.Closes = s.needPlace(opens), s.needPlace(closes)
	}
	l.MaxLift = reading(s, lift, measure.DialGauge())
	return l
}

func timingSection(result TimingResult) (Section, error) {
	s := Section{Key: "timing", Title: "Valve timing"}
	in := result.Input
	r, err := timing.Diagnose(in, timing.Options{})
	if err != nil {
		return s, err
	}
	result.Verdict = r
	s.Result = result
	if r.NoAnswer.Given() {
		s.Open = true
		s.Findings = append(s.Findings, Finding{Key: r.NoAnswer.Code, Text: r.NoAnswer.Text})
	} else {
		s.Findings = ranked(r.Causes)
	}
	for _, c := range []struct {
		name  string
		phase timing.Phase
	}{{"inlet", r.Inlet}, {"exhaust", r.Exhaust}} {
		if c.phase.Crank.Taken() {
			s.Findings = append(s.Findings, Finding{Key: c.name + "-phase",
				Text: c.name + " cam " + shift(c.phase.Crank) + ", that is " + shift(c.phase.Cam)})
		}
	}
	for _, c := range []*LiftCurve{result.InletCurve, result.ExhaustCurve} {
		if c != nil {
			c.say(&s, in)
		}
	}
	if s.Faulty() {
		for _, m := range r.Remedies[:min(len(r.Remedies), 1)] {
			s.DoFirst = append(s.DoFirst, m.Text+", which leaves inlet "+side(m.InletLeft)+" and exhaust "+side(m.ExhaustLeft))
		}
	}
	s.BeforeTurning = append(s.BeforeTurning, r.Turning.Why)
	eventRows(&s, in.Readings)
	lossRow(&s, "leak-down lost", r.Compression.Lost)
	lossRow(&s, "leak-down lost wet", r.Compression.LostWet)
	for _, c := range []*LiftCurve{result.InletCurve, result.ExhaustCurve} {
		if c != nil {
			c.rows(&s)
		}
	}
	s.Tables = append(s.Tables, lobesTable(r))
	s.odds(r.Causes)
	s.settle(r.NextReadings)
	s.basis(r.Basis)
	for _, c := range []*LiftCurve{result.InletCurve, result.ExhaustCurve} {
		if c != nil {
			s.basis(c.basis())
		}
	}
	return s, nil
}

func eventRows(s *Section, r timing.Readings) {
	rowAt(s, "inlet opens", r.InletOpens)
	rowAt(s, "inlet closes", r.InletCloses)
	rowAt(s, "exhaust opens", r.ExhaustOpens)
	rowAt(s, "exhaust closes", r.ExhaustCloses)
	row(s, "inlet greatest lift", r.InletMaxLift)
	row(s, "exhaust greatest lift", r.ExhaustMaxLift)
	row(s, "inlet lift at TDC", r.InletLiftAtTDC)
	row(s, "exhaust lift at TDC", r.ExhaustLiftAtTDC)
	row(s, "compression dry", r.CompressionDry)
	row(s, "compression wet", r.CompressionWet)
}

// lossRow is a part lost, in per cent as the tester has it.
func lossRow(s *Section, what string, lost measure.Reading[units.Ratio]) {
	if lost.Taken() {
		s.Read = append(s.Read, Row{What: what, Figure: percent(lost.Value().Value()) + " ± " + percent(lost.U().Value())})
	}
}

func lobesTable(r timing.Result) Table {
	t := Table{Title: "Lobes", Head: []string{"", "specified", "read"}}
	add := func(what, book, read string) { t.Rows = append(t.Rows, []string{what, book, read}) }
	add("inlet centre after TDC", r.Book.InletCentre.String(), r.Read.InletCentre.String())
	add("exhaust centre before TDC", r.Book.ExhaustCentre.String(), r.Read.ExhaustCentre.String())
	add("inlet open for", r.Book.InletDuration.String(), r.Read.InletDuration.String())
	add("exhaust open for", r.Book.ExhaustDuration.String(), r.Read.ExhaustDuration.String())
	add("both open for", r.Book.Overlap.String(), r.Read.Overlap.String())
	return t
}

// side says a shift that is left over.
func side(a units.CrankAngle) string {
	switch {
	case a.Abs() < units.CrankDegree/2:
		return "right"
	case a < 0:
		return (-a).In(units.CrankDegree, 1) + " late"
	}
	return a.In(units.CrankDegree, 1) + " early"
}
