package transmission

import (
	"math"

	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
)

// Window is the range of turns of the spring nuts, inward from flush, within
// which the clutch both holds and frees, and every limit that was compared.
// Low above High is an empty window: Width is then negative and Reason given. An
// angle prints in degrees; w.Low.In(units.Turn, 2) prints turns.
type Window struct {
	Low       units.Angle `json:"low"`
	High      units.Angle `json:"high"`
	Width     units.Angle `json:"width"` // High - Low
	LowLimit  Limit       `json:"low_limit"`
	HighLimit Limit       `json:"high_limit"`

	// The bounds that each limit sets by itself.
	Torque    units.Angle `json:"torque"`
	Contact   units.Angle `json:"contact"`
	CoilBind  units.Angle `json:"coil_bind"`
	HandForce units.Angle `json:"hand_force"`
	Travel    units.Angle `json:"travel"`
	Thread    units.Angle `json:"thread"` // 0 if the thread's length is not known

	Touch        units.Angle  `json:"touch"`         // turns at which the springs first touch; negative if they are pressed already at flush
	TorqueWanted units.Torque `json:"torque_wanted"` // at the clutch, margin included
	ClampWanted  units.Force  `json:"clamp_wanted"`  // all springs together, plates closed
	LiftWanted   units.Length `json:"lift_wanted"`   // of the pressure plate
	CableSpare   units.Length `json:"cable_spare"`   // pull left to stretch the cable once free play, play, nut and lift are paid; negative: no setting frees it

	Reason fault.Reason `json:"reason,omitzero"` // why there is no setting, if there is none
}

// Open reports whether some setting both holds and frees.
func (w Window) Open() bool { return !w.Reason.Given() }

// Window returns the window of a clutch in the condition found, with n turns of
// every spring nut inward from flush, lengths in mm, forces in N:
//
//	spring compression      x = (free - set) - (flush - n P + wear)
//	lift wanted             y = z gap + out of flat + run-out / 2
//	torque from below       mu z Rm N k x >= margin times engine torque times primary ratio
//	contact from below      x >= 0, n >= 0
//	coil bind from above    spring length less y >= shortest; disc springs within their rising branch
//	hand force from above   N k (x + y) <= hand force times leverage, train ratio and efficiencies
//	travel from above       free play + stretch + ratio (rod play + hub nut q p + y) <= cable pull
//
// Friction theory: R. S. Khurmi and J. K. Gupta, Theory of Machines, chapter 10;
// V. B. Bhandari, Design of Machine Elements, chapter 11. The rest is statics,
// derived here; it takes the clamp as equal at every face. With [Springs].Law the
// load is that law's in place of N k x, and with an element that swings the ratio
// is that of its arms at every angle; both are then solved numerically, to
// better than a millionth of a turn. Readings not taken stand at their new values. It allocates nothing. Errors:
// every figure that is missing or outside its range, as fault.Fault.
func (c Clutch) Window(found Condition) (Window, error) {
	s, err := c.resolve(&found)
	if err != nil {
		return Window{}, err
	}
	return s.window(&s.v), nil
}

func (s *state) window(v *vector) Window {
	b := s.bounds(v)
	low, lowLimit := b.low()
	high, highLimit := b.high()
	y := s.lift(v)
	taken, _ := s.pull(v, y, 0)
	w := Window{
		Low: units.Turns(low), High: units.Turns(high), Width: units.Turns(high - low), LowLimit: lowLimit, HighLimit: highLimit,
		Torque: units.Turns(b.torque), Contact: units.Turns(b.contact), CoilBind: units.Turns(b.bind),
		HandForce: units.Turns(b.hand), Travel: units.Turns(b.travel),
		Touch:        units.Turns(-s.off(v) / s.pitch),
		TorqueWanted: units.NewtonMillimetres(s.wanted),
		ClampWanted:  units.Newtons(s.wanted / s.carried(v)),
		LiftWanted:   units.Millimetres(y),
		CableSpare:   units.Millimetres(v[cablePull] - taken),
	}
	if !math.IsInf(b.thread, 1) {
		w.Thread = units.Turns(b.thread)
	}
	if high < low {
		w.Reason = empty(lowLimit, highLimit)
	}
	return w
}

// empty says what an empty window feels like, by the limits that cross.
func empty(low, high Limit) fault.Reason {
	if low == Contact {
		switch high {
		case Travel:
			return fault.Reason{Code: "window-empty-never-frees", Text: "the pull is used up before the plates are free, even with the springs slack: it drags at every setting"}
		case CoilBind:
			return fault.Reason{Code: "window-empty-springs-too-long", Text: "the springs go solid before the plates are free, even at first touch: wrong springs, cups or studs"}
		case HandForce:
			return fault.Reason{Code: "window-empty-always-heavy", Text: "the lever is too heavy even with the springs at first touch"}
		}
		return fault.Reason{Code: "window-empty-no-contact", Text: "the nuts run out of thread before they touch the springs"}
	}
	switch high {
	case Travel:
		return fault.Reason{Code: "window-empty-travel", Text: "slips and drags: it must be tighter to hold than it may be to free, so no setting of the nuts cures it"}
	case HandForce:
		return fault.Reason{Code: "window-empty-hand-force", Text: "slips or is too heavy: the springs it needs to hold are more than the hand may be asked for"}
	case CoilBind:
		return fault.Reason{Code: "window-empty-coil-bind", Text: "slips or will not reach the bar: tight enough to hold, the springs go solid before the plates are free"}
	}
	return fault.Reason{Code: "window-empty-thread", Text: "slips with the nuts at the end of their thread: a worn pack or short springs"}
}
