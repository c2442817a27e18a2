package transmission

import (
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
)

// Window is the range of turns of the spring nuts, inward from flush, within
// which the clutch both holds and frees, and every limit that was compared.
// Low above High is an empty window: Width is then negative and Reason given.
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

	TorqueWanted units.Torque `json:"torque_wanted"` // at the clutch, margin included
	ClampWanted  units.Force  `json:"clamp_wanted"`  // all springs together, plates closed
	LiftWanted   units.Length `json:"lift_wanted"`   // of the pressure plate
	CableSpare   units.Length `json:"cable_spare"`   // pull left to stretch the cable once free play, play, nut and lift are paid; negative: no setting frees it

	Reason fault.Reason `json:"reason"` // why there is no setting, if there is none
}

// Open reports whether some setting both holds and frees.
func (w Window) Open() bool { return !w.Reason.Given() }

// Window returns the window of a clutch in the condition found.
func (c Clutch) Window(found Condition) (Window, error) {
	return Window{Reason: notComputed}, nil
}

// notComputed stands for answers that are not there yet.
var notComputed = fault.Reason{Code: "not-computed", Text: "this answer is not computed yet"}
