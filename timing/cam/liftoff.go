package cam

import (
	"math"

	"example.com/benchbook/refdata"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
)

// Parts are the moving parts between cam and valve. What there is none of stays
// zero.
type Parts struct {
	Valve    units.Mass // with its collars
	Retainer units.Mass
	Spring   units.Mass   // of both springs; a third counts
	Follower units.Mass   // with the pushrod
	Rocker   units.Mass   // whole; counted as a uniform bar over its two arms
	Ratio    units.Ratio  // of the rocker, valve over cam; default 1
	ValveArm units.Length // of the rocker, for its inertia; 0: as if half its mass stood at the valve
	CamArm   units.Length
}

// AtValve returns the mass that moves as if all were at the valve: valve + retainer
// + spring/3 + I/l^2 + follower/R^2, by equal kinetic energy (from memory; the sum
// is derived). The rocker is a bar of uniform section, I = m (a^2 - a b + b^2)/3
// about a pivot between arms a and b (from memory). Errors: a mass below zero.
func (p Parts) AtValve() (units.Mass, error) {
	var l fault.List
	for _, m := range [...]struct {
		path string
		v    units.Mass
	}{{"valve", p.Valve}, {"retainer", p.Retainer}, {"spring", p.Spring}, {"follower", p.Follower}, {"rocker", p.Rocker}} {
		positive(&l, m.path, m.v, "kg")
	}
	if p.Ratio != 0 && !(p.Ratio >= 0.05 && p.Ratio <= 20) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "ratio", Value: p.Ratio.String(), Rule: "a rocker ratio is 0.05 to 20, or left out"})
	}
	for _, a := range [...]struct {
		path string
		v    units.Length
	}{{"valve_arm", p.ValveArm}, {"cam_arm", p.CamArm}} {
		if a.v != 0 && !(a.v >= units.Micrometre && a.v <= 10*units.Metre) {
			l.Add(fault.Fault{Code: fault.OutOfRange, Path: a.path, Unit: "mm", Rule: "1 µm to 10 m, or left out"})
		}
	}
	if err := l.Err(); err != nil {
		return 0, err
	}
	r := p.Ratio.Value()
	if r == 0 {
		r = 1
	}
	rocker := p.Rocker.Times(0.5)
	if a, b := p.ValveArm.SI(), p.CamArm.SI(); a > 0 {
		rocker = p.Rocker.Times((a*a - a*b + b*b) / (3 * a * a))
	}
	return p.Valve + p.Retainer + p.Spring.Times(1.0/3) + rocker + p.Follower.Times(1/(r*r)), nil
}

// SpringLoad is what presses the valve shut.
type SpringLoad struct {
	Seated units.Force      // with the valve shut
	Rate   units.SpringRate // of all springs together
	Mass   units.Mass       // moving, at the valve: see [Parts.AtValve]
}

// LiftOff is the speed at which a follower leaves its cam.
type LiftOff struct {
	CrankSpeed   units.RotationalSpeed `json:"crank_speed"`
	At           units.CamAngle        `json:"at"`           // where it lets go first
	Lift         units.Length          `json:"lift"`         // of the valve there
	Acceleration units.Acceleration    `json:"acceleration"` // of the valve there at that speed
	Spring       units.Force           `json:"spring"`       // there
	NoAnswer     fault.Reason          `json:"no_answer,omitzero"`
	Basis        refdata.Basis         `json:"basis"`
}

// LiftOff returns the crank speed at which the spring can no longer make the parts
// follow the cam: the least over the lift of sqrt(F/(m |a|)) where the valve is
// slowed down, a its acceleration by cam radian, F = seated + rate x lift, times two
// for the crank (derived; the train taken as rigid, so the true speed is lower). The
// acceleration is the mean over 2° of the cam: a spline rings where the curvature of a
// cam steps. No answer where the cam never slows
// the valve. Errors: those of [Valve.Err]; a force, rate or mass not above zero.
func (v Valve) LiftOff(s SpringLoad) (LiftOff, error) {
	var l fault.List
	l.Under("", v.Err())
	for _, x := range [...]struct {
		path string
		ok   bool
		unit string
	}{
		{"seated", s.Seated > 0 && sane(s.Seated), "N"},
		{"rate", s.Rate >= 0 && sane(s.Rate), "N/mm"},
		{"mass", s.Mass > 0 && sane(s.Mass), "g"},
	} {
		if !x.ok {
			l.Add(fault.Fault{Code: fault.OutOfRange, Path: x.path, Unit: x.unit, Rule: "must be finite and above zero"})
		}
	}
	if err := l.Err(); err != nil {
		return LiftOff{}, err
	}
	out := LiftOff{NoAnswer: fault.Reason{Code: "never-slowed", Text: "the curve never slows the valve while it is open"}}
	best := math.Inf(1)
	const steps = 3600
	for i := range steps {
		x := turnDegrees * float64(i) / steps
		m := v.Cam.motion(x)
		lift, ratio, ok := v.Rocker.valve(m[0])
		y := lift - v.Clearance.Millimetres()
		if !ok || y <= 0 {
			continue
		}
		// y'' = R s'' + dR/ds s'^2, by cam radian.
		const d = 1e-4
		_, up, ok1 := v.Rocker.valve(m[0] + d)
		_, down, ok2 := v.Rocker.valve(m[0] - d)
		if !ok1 || !ok2 {
			continue
		}
		second := (v.Cam.motion(within(x + 1))[1] - v.Cam.motion(within(x - 1))[1]) / 2
		perRadian := (ratio*second + (up-down)/(2*d)*m[1]*m[1]) * (180 / math.Pi) * (180 / math.Pi) / 1000
		force := s.Seated.SI() + s.Rate.SI()*y/1000
		if perRadian >= 0 {
			continue
		}
		if w := math.Sqrt(force / (s.Mass.SI() * -perRadian)); w < best {
			best = w
			out = LiftOff{
				CrankSpeed: units.RadiansPerSecond(2 * w), At: units.CamDegrees(v.Cam.start + x), Lift: units.Millimetres(y),
				Acceleration: units.MetresPerSecondSquared(w * w * perRadian), Spring: units.Newtons(force),
			}
		}
	}
	out.Basis.Sources = []refdata.Source{{Title: "balance of spring force and inertia on a rigid train", Status: refdata.Derived}}
	out.Basis.NotChecked = []refdata.Unchecked{
		{What: "spring surge and bending of the train", Why: "taken as rigid", Settle: "keep well below this speed"},
	}
	out.Basis.Cautions = []refdata.Caution{refdata.SpringsUnderLoad, refdata.ValveMeetsPiston}
	return out, nil
}
