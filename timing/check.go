package timing

import (
	"strconv"

	"example.com/benchbook/timing/crank"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

// check tells every fault of an engine, its readings and filled options.
func (in *Input) check(opt *Options) error {
	var l fault.List
	if l.Under("engine", in.Engine.check()) && opt.check() == nil {
		if moves, err := movesOf(&in.Engine, opt); l.Under("engine.drive", err) {
			l.Under("engine", tooMany(moves))
		}
	}
	l.Under("readings", in.Readings.check())
	l.Under("", opt.check())
	return l.Err()
}

func (e *Engine) check() error {
	var l fault.List
	l.Under("", checkDrive(e))
	l.Under("check", e.Check.err())
	l.Under("inlet", e.Inlet.check(Inlet, e.Check))
	l.Under("exhaust", e.Exhaust.check(Exhaust, e.Check))
	names := map[string]bool{}
	for i, r := range e.Rivals {
		path := "rivals[" + strconv.Itoa(i) + "]"
		if r.Name == "" {
			l.Add(fault.Fault{Code: fault.Missing, Path: path + ".name", Rule: "a rival needs a name"})
		}
		key := r.Cam.String() + ":" + r.Name
		if names[key] {
			l.Add(fault.Fault{Code: fault.Conflict, Path: path + ".name", Value: r.Name, Rule: "two rivals for one place need different names"})
		}
		names[key] = true
		if r.Cam > Exhaust {
			l.Add(fault.Fault{Code: fault.UnknownName, Path: path + ".cam", Rule: "inlet or exhaust"})
			continue
		}
		l.Under(path+".lobe", r.Lobe.check(r.Cam, e.Check))
	}
	for _, f := range []struct {
		path string
		f    Fixing
	}{{"inlet_fixing", e.InletFixing}, {"exhaust_fixing", e.ExhaustFixing}} {
		if f.f > OnePiece {
			l.Add(fault.Fault{Code: fault.UnknownName, Path: f.path, Rule: "not known, pressed or one piece"})
		}
	}
	if e.Cylinder != (crank.Cylinder{}) {
		if l.Under("cylinder", e.Cylinder.Err()) {
			_, err := e.Cylinder.CompressionRatio()
			l.Under("cylinder", err)
		}
	}
	if e.Head != nil {
		l.Under("head", e.Head.check())
	}
	for c := range Cam(2) {
		if v := e.vernier(c); v != (Vernier{}) && (v.Wheel < 1 || v.Cam < 1 || v.Wheel > 400 || v.Cam > 400 || v.ways() > 1000) {
			l.Add(fault.Fault{Code: fault.OutOfRange, Path: c.String() + "_vernier", Value: strconv.Itoa(v.Wheel) + " and " + strconv.Itoa(v.Cam) + " holes", Rule: "1 to 400 holes in each ring, meeting in at most 1000 ways"})
		}
		if v := e.shim(c); v != (Shim{}) && (!(v.Each.Abs() > 0 && v.Each.Abs() <= 30*units.CrankDegree) || v.Most < 1 || v.Most > 100) {
			l.Add(fault.Fault{Code: fault.OutOfRange, Path: c.String() + "_shim", Value: v.Each.String(), Unit: "° crank", Rule: "up to 30° each, 1 to 100 shims"})
		}
	}
	if e.Keyways < 0 || e.Keyways > 24 {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "keyways", Value: strconv.Itoa(e.Keyways), Rule: "0 to 24"})
	}
	if l.Under("rocker", e.Rocker.Err()); e.Rocker.Taken() && !(e.Rocker.Value() >= 0.2 && e.Rocker.Value() <= 5) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "rocker", Value: e.Rocker.Text(), Rule: "0.2 to 5, valve lift over follower lift"})
	}
	return l.Err()
}

// checkDrive refuses a drive that does not turn both cams at exactly half speed.
func checkDrive(e *Engine) error {
	var l fault.List
	if !l.Under("", e.Drive.Err()) {
		return l.Err()
	}
	has := map[string]bool{}
	for _, m := range e.Drive {
		has[m.To] = true
	}
	spindles := []string{InletSpindle, ExhaustSpindle}
	if has[Camshaft] {
		spindles = []string{Camshaft}
		if has[InletSpindle] || has[ExhaustSpindle] {
			l.Add(fault.Fault{Code: fault.Conflict, Path: "drive", Value: Camshaft, Rule: "a drive has a camshaft, or an inlet and an exhaust spindle, not both"})
		}
	}
	for _, s := range spindles {
		if !has[s] {
			l.Add(fault.Fault{Code: fault.Missing, Path: "drive", Value: s, Rule: "no mesh drives this spindle"})
			continue
		}
		l.Under("drive", e.Drive.CheckHalfSpeed(s))
	}
	return l.Err()
}

func (c Check) err() error {
	var l fault.List
	if !(c.Lift >= 0 && c.Lift <= 20*units.Millimetre) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "lift", Value: c.Lift.String(), Unit: "mm", Rule: "0 to 20 mm"})
	}
	if !(c.Clearance >= 0 && c.Clearance <= 5*units.Millimetre) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "clearance", Value: c.Clearance.String(), Unit: "mm", Rule: "0 to 5 mm"})
	}
	if c.At > AtFollower {
		l.Add(fault.Fault{Code: fault.UnknownName, Path: "at", Rule: "at the valve or at the follower"})
	}
	return l.Err()
}

// check tells the faults of a lobe: an event far from where any engine has it, a
// duration that no cam has, a greatest lift below the check lift.
func (lobe *Lobe) check(c Cam, k Check) error {
	var l fault.List
	// 90 before to 90 after; in these bounds also lie engines of 1900
	side := func(path string, p units.CrankPosition, home units.Datum) {
		by := p.FromTDC().Degrees()
		if home == units.BDC {
			by -= 180
		}
		if by = wrap(by); !(by >= -120 && by <= 120) || !units.Finite(p.After()) {
			l.Add(fault.Fault{Code: fault.OutOfRange, Path: path, Value: p.String(), Unit: "° crank", Rule: "within 120° of " + home.String()})
		}
	}
	if lobe.Opens == (units.CrankPosition{}) && lobe.Closes == (units.CrankPosition{}) { // nobody filled it in
		return fault.Fault{Code: fault.Missing, Path: "opens", Rule: "give the events as specified, by ReadLobe or LobeOf"}
	}
	opens, closes := units.TDC, units.BDC
	if c == Exhaust {
		opens, closes = units.BDC, units.TDC
	}
	side("opens", lobe.Opens, opens)
	side("closes", lobe.Closes, closes)
	if l.Len() == 0 {
		if d := turn((lobe.Closes.FromTDC() - lobe.Opens.FromTDC()).Degrees()); !(d >= 60 && d <= 350) {
			l.Add(fault.Fault{Code: fault.OutOfRange, Path: "closes", Value: lobe.Opens.String() + " to " + lobe.Closes.String(), Unit: "° crank", Rule: "open for 60° to 350°"})
		}
	}
	if l.Under("max_lift", lobe.MaxLift.Err()); lobe.MaxLift.Taken() && !(lobe.MaxLift.Value().Millimetres() > 1.1*k.Lift.Millimetres() && lobe.MaxLift.Value() <= 30*units.Millimetre && lobe.MaxLift.Value() >= units.Millimetre) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "max_lift", Value: lobe.MaxLift.Text(), Unit: "mm", Rule: "1 mm to 30 mm, and above the check lift by a tenth"})
	}
	if l.Under("key_angle", lobe.KeyAngle.Err()); lobe.KeyAngle.Taken() && !(lobe.KeyAngle.Value().Abs() <= 360*units.CamDegree) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "key_angle", Value: lobe.KeyAngle.Text(), Unit: "° cam", Rule: "at most 360°"})
	}
	for _, r := range []struct {
		path string
		v    units.Length
	}{{"opening_rise", lobe.OpeningRise}, {"closing_rise", lobe.ClosingRise}} {
		if !(r.v >= 0 && r.v <= units.Millimetre) || r.v > 0 && r.v < units.Micrometre {
			l.Add(fault.Fault{Code: fault.OutOfRange, Path: r.path, Value: r.v.String(), Unit: "mm", Rule: "0.001 mm to 1 mm for a degree, or zero if not known"})
		}
	}
	return l.Err()
}

func (r *Readings) check() error {
	var l fault.List
	for e := range EventName(4) {
		l.Under(fieldOf(e), r.event(e).Err())
	}
	if r.Check != nil {
		l.Under("check", r.Check.err())
	}
	if r.TDC > TDCByMark {
		l.Add(fault.Fault{Code: fault.UnknownName, Path: "tdc", Rule: "by eye, stop, dial or mark"})
	}
	angle := func(path string, v measure.Reading[units.CrankAngle], most units.CrankAngle) {
		if l.Under(path, v.Err()); v.Taken() && !(v.Value().Abs() <= most) {
			l.Add(fault.Fault{Code: fault.OutOfRange, Path: path, Value: v.Text(), Unit: "° crank", Rule: "at most " + most.String()})
		}
	}
	angle("tdc_late", r.TDCLate, 180*units.CrankDegree)
	angle("lag", r.Lag, 30*units.CrankDegree)
	for _, x := range []struct {
		path string
		v    measure.Reading[units.Length]
		zero bool
	}{
		{"inlet_max_lift", r.InletMaxLift, false}, {"exhaust_max_lift", r.ExhaustMaxLift, false},
		{"inlet_clearance", r.InletClearance, true}, {"exhaust_clearance", r.ExhaustClearance, true},
		{"inlet_lift_at_tdc", r.InletLiftAtTDC, true}, {"exhaust_lift_at_tdc", r.ExhaustLiftAtTDC, true},
	} {
		if l.Under(x.path, x.v.Err()); x.v.Taken() && !(x.v.Value() >= 0 && x.v.Value() <= 30*units.Millimetre && (x.zero || x.v.Value() > 0)) {
			l.Add(fault.Fault{Code: fault.OutOfRange, Path: x.path, Value: x.v.Text(), Unit: "mm", Rule: "0 to 30 mm"})
		}
	}
	for _, x := range []struct {
		path string
		v    measure.Reading[units.CamAngle]
	}{{"inlet_on_wheel", r.InletOnWheel}, {"exhaust_on_wheel", r.ExhaustOnWheel}} {
		if l.Under(x.path, x.v.Err()); x.v.Taken() && !(x.v.Value().Abs() <= 180*units.CamDegree) {
			l.Add(fault.Fault{Code: fault.OutOfRange, Path: x.path, Value: x.v.Text(), Unit: "° cam", Rule: "at most 180° either way"})
		}
	}
	for _, x := range []struct {
		path string
		v    Seen
	}{{"marks_align", r.MarksAlign}, {"sequence", r.Sequence}, {"spark", r.Spark}, {"magneto_marks", r.MagnetoMarks}} {
		if x.v > No {
			l.Add(fault.Fault{Code: fault.UnknownName, Path: x.path, Rule: "yes, no or not looked"})
		}
	}
	for _, x := range []struct {
		path string
		v    measure.Reading[units.Pressure]
	}{{"compression_dry", r.CompressionDry}, {"compression_wet", r.CompressionWet}} {
		if l.Under(x.path, x.v.Err()); x.v.Taken() && !(x.v.Value() >= 0 && x.v.Value() <= units.Bars(40)) {
			l.Add(fault.Fault{Code: fault.OutOfRange, Path: x.path, Value: x.v.Text(), Unit: "bar", Rule: "0 to 40 bar"})
		}
	}
	l.Under("leak", r.Leak.check())
	return l.Err()
}

func fieldOf(e EventName) string {
	return [...]string{"inlet_opens", "inlet_closes", "exhaust_opens", "exhaust_closes"}[e&3]
}
