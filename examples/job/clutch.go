package job

import (
	"example.com/benchbook/transmission"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fastener"
	"example.com/benchbook/units/measure"
)

func readClutch(s section) part {
	var in transmission.Input
	if made, ok := s.object("made"); ok {
		in.Clutch = readClutchMade(made)
	}
	if fresh, ok := s.object("new"); ok {
		in.Clutch.New = readCondition(fresh)
		fresh.close()
	}
	if read, ok := s.object("read"); ok {
		in.Setting.Nuts = reading(read, "nuts_in", measure.Nominal[units.Angle](0.02))
		in.Found = readCondition(read)
		answer := map[string]transmission.Sign{"yes": transmission.Yes, "no": transmission.No}
		in.Signs.Slips = answer[read.choice("slips", "yes", "no")]
		in.Signs.Drags = answer[read.choice("drags", "yes", "no")]
		in.Signs.Heavy = answer[read.choice("heavy", "yes", "no")]
		in.Signs.LightThen = answer[read.choice("light_then_stiff", "yes", "no")]
		in.Signs.Lift = reading(read, "lift", measure.DialGauge())
		in.Signs.HandForce = reading(read, "hand_force", measure.SpringBalance())
		read.close()
	}
	s.close()
	return func(*job) (Section, error) { return clutchSection(in) }
}

func readClutchMade(s section) transmission.Clutch {
	var c transmission.Clutch
	c.Plates.Driving, _ = s.count("driving_plates", 1, 40)
	c.Plates.Driven, _ = s.count("driven_plates", 1, 40)
	c.Plates.Faces, _ = s.count("faces", 1, 80)
	c.Plates.Outer, _ = quantity[units.Length](s, "plate_outer")
	c.Plates.Inner, _ = quantity[units.Length](s, "plate_inner")
	c.Plates.MeanRadius, _ = quantity[units.Length](s, "mean_radius")
	c.Plates.Rim, _ = quantity[units.Length](s, "rim")
	if s.choice("pressure", "uniform wear", "uniform pressure") == "uniform pressure" {
		c.Plates.Pressure = transmission.UniformPressure
	}
	c.Springs.Count, _ = s.count("springs", 1, 24)
	c.Springs.Rate, _ = quantity[units.SpringRate](s, "spring_rate")
	c.Springs.FreeLength, _ = quantity[units.Length](s, "spring_free_length")
	c.Springs.Shortest, _ = quantity[units.Length](s, "spring_shortest")
	c.Springs.AtFlush, _ = quantity[units.Length](s, "spring_at_flush")
	c.Nuts.Pitch = s.pitch("nut_pitch")
	c.Nuts.Thread, _ = quantity[units.Angle](s, "nut_travel")
	c.Lever.Finger = reading(s, "lever_finger", measure.Rule())
	c.Lever.Nipple = reading(s, "lever_nipple", measure.Rule())
	c.Lever.Rest = reading(s, "lever_rest", measure.Protractor())
	c.Lever.Pulled = reading(s, "lever_pulled", measure.Protractor())
	c.Lever.Sector, _ = s.flag("lever_sector")
	arm := transmission.Element{Name: "release arm"}
	arm.Ratio = s.number("arm_ratio")
	arm.Efficiency = s.number("arm_efficiency")
	arm.Stiffness, _ = quantity[units.SpringRate](s, "arm_stiffness")
	arm.Lost, _ = quantity[units.Length](s, "arm_lost_motion")
	c.Train = []transmission.Element{arm}
	c.HubNut.Pitch = s.pitch("hub_nut_pitch")
	c.HubNut.Hand = map[string]transmission.Hand{"right": transmission.RightHand, "left": transmission.LeftHand}[s.choice("hub_nut_hand", "right", "left")]
	c.Demand.EngineTorque, _ = quantity[units.Torque](s, "engine_torque")
	c.Demand.PrimaryRatio = s.number("primary_ratio")
	c.Demand.Margin = s.number("margin")
	c.Demand.HandForce, _ = quantity[units.Force](s, "hand_force_limit")
	c.Demand.FreePlay, _ = quantity[units.Length](s, "free_play_least")
	c.Demand.FaceGap, _ = quantity[units.Length](s, "face_gap")
	s.close()
	return c
}

func readCondition(s section) transmission.Condition {
	return transmission.Condition{
		Friction:        reading(s, "friction", measure.Nominal[units.Ratio](0.15)),
		SpringSet:       reading(s, "spring_set", measure.Rule()),
		SpringRate:      reading(s, "spring_rate", measure.Nominal[units.SpringRate](0.05)),
		Wear:            reading(s, "wear", measure.Rule()),
		OutOfFlat:       reading(s, "out_of_flat", measure.Nominal[units.Length](0.2)),
		RodPlay:         reading(s, "rod_play", measure.FeelerGauge()),
		HubNutBack:      reading(s, "hub_nut_back", measure.Nominal[units.Angle](0.1)),
		FreePlay:        reading(s, "free_play", measure.Rule()),
		CableStiffness:  reading(s, "cable_stiffness", measure.Nominal[units.SpringRate](0.15)),
		CableEfficiency: reading(s, "cable_efficiency", measure.Nominal[units.Ratio](0.08)),
		CablePull:       reading(s, "cable_pull", measure.Rule()),
		RunOut:          reading(s, "run_out", measure.DialGauge()),
	}
}

// pitch returns a pitch given as a length or in threads per inch.
func (s section) pitch(key string) units.Length {
	t := s.text(key)
	if t == "" {
		return 0
	}
	p, err := fastener.ParsePitch(t)
	s.faults.Under(under(s.path, key), err)
	return p
}

// number returns a pure number given as text, zero if not there.
func (s section) number(key string) float64 {
	r, _ := quantity[units.Ratio](s, key)
	return r.Value()
}

func clutchSection(in transmission.Input) (Section, error) {
	s := Section{Key: "clutch", Title: "Clutch"}
	adjust, err := transmission.Adjust(in, transmission.Options{})
	if err != nil {
		return s, err
	}
	causes, err := transmission.Diagnose(in, transmission.Options{})
	if err != nil {
		return s, err
	}
	s.Result = ClutchResult{in, adjust, causes}
	s.Findings = append(s.Findings, windowFinding(adjust))
	if b := adjust.Budget; b != nil {
		s.Findings = append(s.Findings, Finding{Key: "now", Text: "as it stands, " + turns(b.Turns) + " in: " + b.Symptoms()})
	}
	s.Findings = append(s.Findings, ranked(causes.Causes)...)
	if adjust.Pull.Disagree {
		s.Findings = append(s.Findings, Finding{Key: "pull", Fault: true, Text: "the measured cable pull, " + adjust.Pull.Measured.String() +
			", is not what the lever's own figures give, " + adjust.Pull.FromLever.String()})
	}
	for i, r := range append(adjust.Repairs, adjust.Pairs...) {
		if i == 2 {
			break
		}
		text := r.Text + ": then " + turns(r.Window.Low) + " to " + turns(r.Window.High) + " hold and free"
		if !r.Opens {
			text = r.Text + ": still no window, it would hold from " + turns(r.Window.Low) + " on and free up to " + turns(r.Window.High)
		}
		if i > 0 {
			text = "failing that, " + text
		}
		s.DoFirst = append(s.DoFirst, text)
	}
	if adjust.Advice.Adjust || len(s.DoFirst) == 0 {
		s.DoFirst = append(s.DoFirst, adjust.Advice.Text)
	}
	clutchRows(&s, in)
	s.Tables = append(s.Tables, windowTable(adjust.Window))
	s.odds(causes.Causes)
	s.settle(causes.NextReadings)
	s.basis(adjust.Basis)
	s.basis(causes.Basis)
	return s, nil
}

func windowFinding(a transmission.Adjustment) Finding {
	w := a.Window
	if w.Reason.Given() {
		return Finding{Key: w.Reason.Code, Fault: true, Sure: oddsWords(1 - a.ChanceOpen), Percent: int(100*(1-a.ChanceOpen) + 0.5),
			Text: "no setting of the spring nuts both holds and frees: " + w.Reason.Text}
	}
	return Finding{Key: "window-open", Sure: oddsWords(a.ChanceOpen), Percent: int(100*a.ChanceOpen + 0.5),
		Text: "spring nuts " + turns(w.Low) + " to " + turns(w.High) + " in from flush hold and free; " + w.LowLimit.String() + " below, " + w.HighLimit.String() + " above"}
}

func oddsWords(p float64) string { return measure.Odds{Share: p}.Words() }

func clutchRows(s *Section, in transmission.Input) {
	row(s, "spring nuts in", in.Setting.Nuts)
	row(s, "friction", in.Found.Friction)
	row(s, "spring set", in.Found.SpringSet)
	row(s, "spring rate", in.Found.SpringRate)
	row(s, "pack wear", in.Found.Wear)
	row(s, "plates out of flat", in.Found.OutOfFlat)
	row(s, "push rod play", in.Found.RodPlay)
	row(s, "hub nut backed off", in.Found.HubNutBack)
	row(s, "free play", in.Found.FreePlay)
	row(s, "cable stiffness", in.Found.CableStiffness)
	row(s, "cable pull", in.Found.CablePull)
	row(s, "run-out", in.Found.RunOut)
	row(s, "lift", in.Signs.Lift)
	row(s, "hand force", in.Signs.HandForce)
	for _, sign := range []struct {
		what string
		is   transmission.Sign
	}{{"slips", in.Signs.Slips}, {"drags", in.Signs.Drags}, {"heavy", in.Signs.Heavy}, {"light, then stiff", in.Signs.LightThen}} {
		if sign.is != transmission.NotTried {
			s.Read = append(s.Read, Row{What: sign.what, Figure: sign.is.String()})
		}
	}
}

func windowTable(w transmission.Window) Table {
	t := Table{Title: "Limits on the spring nuts, turns in from flush", Head: []string{"limit", "bound"}}
	for _, l := range []struct {
		what string
		at   units.Angle
	}{{"at least, to hold", w.Torque}, {"at least, springs seated", w.Contact}, {"at most, travel", w.Travel}, {"at most, hand force", w.HandForce}, {"at most, coil bind", w.CoilBind}} {
		t.Rows = append(t.Rows, []string{l.what, turns(l.at)})
	}
	return t
}
