package cam

import (
	"math"

	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/solve"
)

// Rocker is the lever between follower and valve, as geometry: its ratio changes as
// it swings. Arms run from the pivot to the middle of each contact; tilts are how
// far each arm stands from square to the line it pushes along, with the valve shut,
// positive when the arm has to swing up to square. The zero Rocker is none: the
// valve moves as the follower does.
type Rocker struct {
	CamArm    units.Length `json:"cam_arm"`
	ValveArm  units.Length `json:"valve_arm"`
	CamTilt   units.Angle  `json:"cam_tilt"`   // default 0
	ValveTilt units.Angle  `json:"valve_tilt"` // default 0
}

// Err returns the faults: an arm without the other, arms not above zero, tilts
// beyond 45°.
func (r Rocker) Err() error {
	var l fault.List
	if r == (Rocker{}) {
		return nil
	}
	for _, a := range [...]struct {
		path string
		v    units.Length
	}{{"cam_arm", r.CamArm}, {"valve_arm", r.ValveArm}} {
		if !(a.v >= units.Micrometre && a.v <= 10*units.Metre) {
			l.Add(fault.Fault{Code: fault.OutOfRange, Path: a.path, Unit: "mm", Rule: "a rocker needs both arms, 1 µm to 10 m"})
		}
	}
	for _, a := range [...]struct {
		path string
		v    units.Angle
	}{{"cam_tilt", r.CamTilt}, {"valve_tilt", r.ValveTilt}} {
		if !(a.v.Abs() <= 45*units.Degree) {
			l.Add(fault.Fault{Code: fault.OutOfRange, Path: a.path, Unit: "°", Rule: "within 45° of square"})
		}
	}
	return l.Err()
}

// swing is the angle turned for a movement of the cam's end in mm, radians.
// Arm p tilted by t below square: p (sin(swing - t) + sin t) = movement.
func (r Rocker) swing(move float64) (float64, bool) {
	t := r.CamTilt.SI()
	s := move/r.CamArm.Millimetres() - math.Sin(t)
	if !(math.Abs(s) < 1) {
		return 0, false
	}
	return math.Asin(s) + t, true
}

// valve is the movement of the valve's end in mm for one of the cam's end, and the
// ratio there. ok is false where the arm would swing past square to its line by a
// quarter turn.
func (r Rocker) valve(move float64) (lift, ratio float64, ok bool) {
	if r == (Rocker{}) {
		return move, 1, true
	}
	a, ok := r.swing(move)
	if !ok {
		return 0, 0, false
	}
	p, q := r.CamArm.Millimetres(), r.ValveArm.Millimetres()
	t, u := r.CamTilt.SI(), r.ValveTilt.SI()
	if !(math.Abs(a-u) < math.Pi/2) {
		return 0, 0, false
	}
	return q * (math.Sin(a-u) + math.Sin(u)), q * math.Cos(a-u) / (p * math.Cos(a-t)), true
}

// cam is the movement of the cam's end for one of the valve's, the reverse of valve.
func (r Rocker) cam(lift float64) (float64, bool) {
	if r == (Rocker{}) {
		return lift, true
	}
	u := r.ValveTilt.SI()
	s := lift/r.ValveArm.Millimetres() - math.Sin(u)
	if !(math.Abs(s) < 1) {
		return 0, false
	}
	a := math.Asin(s) + u
	t := r.CamTilt.SI()
	return r.CamArm.Millimetres() * (math.Sin(a-t) + math.Sin(t)), math.Abs(a-t) < math.Pi/2
}

// Rocked is a rocker at one place of its swing.
type Rocked struct {
	Valve units.Length `json:"valve"` // movement of the valve's end
	Ratio float64      `json:"ratio"` // valve over cam movement just there
	Swing units.Angle  `json:"swing"`
}

// At returns what a movement of the cam's end does: with the arms p and q, the swing
// a from p (sin(a - t) + sin t) = movement, the valve q (sin(a - u) + sin u), ratio
// q cos(a - u)/(p cos(a - t)); t and u the tilts (derived from the triangle; the
// contacts are taken to push along fixed lines, which ball ends and flat pads do).
// Errors: those of [Rocker.Err]; a movement the arm cannot make.
func (r Rocker) At(cam units.Length) (Rocked, error) {
	if err := r.Err(); err != nil {
		return Rocked{}, err
	}
	v, ratio, ok := r.valve(cam.Millimetres())
	if !ok || !units.Finite(cam) {
		return Rocked{}, fault.Fault{Code: fault.OutOfRange, Path: "cam", Unit: "mm", Rule: "the rocker cannot swing that far"}
	}
	out := Rocked{Valve: units.Millimetres(v), Ratio: ratio}
	if r != (Rocker{}) {
		a, _ := r.swing(cam.Millimetres())
		out.Swing = units.Radians(a)
	}
	return out, nil
}

// Valve is a valve driven by a cam through a rocker with a clearance. Its curve is
// lift at the follower.
type Valve struct {
	Cam       *Curve
	Rocker    Rocker
	Clearance units.Length // at the valve, on the base circle
}

// Err returns the faults: no curve, those of [Rocker.Err], a rocker that cannot swing
// as far as the cam lifts, a clearance below zero. A clearance beyond the lift is none:
// the valve stays shut.
func (v Valve) Err() error {
	var l fault.List
	if v.Cam == nil || len(v.Cam.coef) == 0 {
		l.Add(fault.Fault{Code: fault.Missing, Path: "cam", Rule: "a valve needs its cam's lift curve"})
	}
	l.Under("rocker", v.Rocker.Err())
	positive(&l, "clearance", v.Clearance, "mm")
	if l.Len() == 0 {
		_, y := v.Cam.peak()
		if _, _, ok := v.Rocker.valve(y); !ok {
			l.Add(fault.Fault{Code: fault.Conflict, Path: "rocker", Rule: "the rocker cannot swing as far as the cam lifts"})
		}
	}
	return l.Err()
}

// Lift returns the valve's lift at a camshaft angle: rocker(cam lift) less the
// clearance, zero while shut. Errors: those of [Valve.Err]; an angle not finite.
func (v Valve) Lift(at units.CamAngle) (units.Length, error) {
	if err := v.Err(); err != nil {
		return 0, err
	}
	y, err := v.Cam.Lift(at)
	if err != nil {
		return 0, err
	}
	lift, _, _ := v.Rocker.valve(y.Millimetres())
	return max(units.Millimetres(lift)-v.Clearance, 0), nil
}

// Events returns where the valve passes a check lift measured at the valve: the
// camshaft angles where the follower stands rocker^-1(check + clearance). A check
// of zero is where the valve leaves and meets its seat, which with no clearance is
// the base circle itself and has no answer. Rises are at the valve. Errors: those of
// [Valve.Err]; a check below zero.
func (v Valve) Events(check units.Length) (Events, error) {
	var l fault.List
	l.Under("", v.Err())
	positive(&l, "check", check, "mm")
	if err := l.Err(); err != nil {
		return Events{}, err
	}
	s, ok := v.Rocker.cam((check + v.Clearance).Millimetres())
	if !ok {
		return Events{Check: check, NoAnswer: fault.Reason{Code: "never-reached", Text: "the rocker cannot lift the valve that far"}}, nil
	}
	e, err := v.Cam.Events(units.Millimetres(s))
	if err != nil {
		return Events{}, err
	}
	e.Check = check
	if !e.NoAnswer.Given() {
		_, ratio, _ := v.Rocker.valve(s)
		e.OpeningRise, e.ClosingRise = e.OpeningRise.Times(ratio), e.ClosingRise.Times(ratio)
	}
	return e, nil
}

// Clearing is what another clearance does to a valve's events, of the camshaft.
type Clearing struct {
	Before   Events         `json:"before"`
	After    Events         `json:"after"`
	Opens    units.CamAngle `json:"opens_later"`
	Closes   units.CamAngle `json:"closes_earlier"`
	Duration units.CamAngle `json:"duration_change"`
	Centre   units.CamAngle `json:"centre_later"`
	// Linear is the change of opening by the rise alone, dc/rise: good while the
	// flank is straight, far out on a ramp.
	Linear   units.CamAngle `json:"opens_later_linear"`
	MaxLift  units.Length   `json:"max_lift"` // at the valve, after
	NoAnswer fault.Reason   `json:"no_answer,omitzero"`
}

// WithClearance returns what setting another clearance does to the events at a
// check lift: wider opens later, closes earlier, by dc over the rise of the valve
// per degree while the flank is straight; the centre stays where both flanks are
// alike (derived). Errors: those of [Valve.Events].
func (v Valve) WithClearance(clearance, check units.Length) (Clearing, error) {
	before, err := v.Events(check)
	if err != nil {
		return Clearing{}, err
	}
	w := v
	w.Clearance = clearance
	after, err := w.Events(check)
	if err != nil {
		return Clearing{}, err
	}
	out := Clearing{Before: before, After: after}
	for _, e := range [...]Events{before, after} {
		if e.NoAnswer.Given() {
			out.NoAnswer = e.NoAnswer
			return out, nil
		}
	}
	_, peak := v.Cam.peak()
	top, _, _ := v.Rocker.valve(peak)
	out.MaxLift = max(units.Millimetres(top)-clearance, 0)
	out.Opens, out.Closes = after.Opens-before.Opens, before.Closes-after.Closes
	out.Duration = after.Duration - before.Duration
	out.Centre = (out.Opens - out.Closes).Times(0.5)
	out.Linear = units.CamDegrees((clearance - v.Clearance).Ratio(before.OpeningRise))
	return out, nil
}

// ClearanceFor returns the clearance at the valve that gives a duration at a check
// lift: how tight or wide a valve must stand to explain a duration that was read.
// It is sought between 0 and the lift less the check. No answer where no clearance
// does. Errors: those of [Valve.Events]; a duration outside 0 to 360° of the cam.
func (v Valve) ClearanceFor(duration units.CamAngle, check units.Length) (units.Length, fault.Reason, error) {
	var l fault.List
	l.Under("", v.Err())
	positive(&l, "check", check, "mm")
	if !(duration > 0 && duration < 360*units.CamDegree) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "duration", Unit: "° cam", Rule: "0° to 360° of the camshaft"})
	}
	if err := l.Err(); err != nil {
		return 0, fault.Reason{}, err
	}
	_, peak := v.Cam.peak()
	top, _, _ := v.Rocker.valve(peak)
	at := func(c float64) (float64, bool) {
		w := v
		w.Clearance = units.Millimetres(c)
		e, err := w.Events(check)
		return e.Duration.Degrees(), err == nil && !e.NoAnswer.Given()
	}
	// The least clearance whose events are clear of the base circle's noise.
	lo, hi, found := 0.0, top-check.Millimetres(), false
	const steps = 200
	for i := 0; i < steps && !found; i++ {
		lo = hi * float64(i) / steps
		d, ok := at(lo)
		found = ok && d >= duration.Degrees()
	}
	none := fault.Reason{Code: "no-clearance", Text: "no clearance gives this duration with this cam"}
	if !found {
		return 0, none, nil
	}
	c, err := solve.Root(func(c float64) float64 {
		d, ok := at(c)
		if !ok {
			d = 0
		}
		return d - duration.Degrees()
	}, lo, hi, 1e-9)
	if err != nil {
		return 0, none, nil
	}
	return units.Millimetres(c), fault.Reason{}, nil
}
