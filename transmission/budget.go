package transmission

import (
	"errors"

	"example.com/benchbook/units"
)

// Budget is both ledgers at one setting, and what they add up to.
type Budget struct {
	Turns units.Angle `json:"turns"` // of the spring nuts, inward from flush

	Clamp          units.Force  `json:"clamp"`           // of all springs, plates closed
	Torque         units.Torque `json:"torque"`          // the clutch can carry
	TorqueEngine   units.Torque `json:"torque_engine"`   // greatest the engine puts on it
	TorqueWanted   units.Torque `json:"torque_wanted"`   // that with its margin
	Margin         float64      `json:"margin"`          // Torque over TorqueEngine
	SpringLength   units.Length `json:"spring_length"`   // plates closed
	LiftWanted     units.Length `json:"lift_wanted"`     // for every face to be free
	LiftTravel     units.Length `json:"lift_travel"`     // that the pull gives
	LiftBind       units.Length `json:"lift_bind"`       // that the springs allow
	Lift           units.Length `json:"lift"`            // the lesser of the two, not below zero
	PullFreePlay   units.Length `json:"pull_free_play"`  // of cable, used by free play
	PullStretch    units.Length `json:"pull_stretch"`    // by the cable's and train's stretch
	PullLost       units.Length `json:"pull_lost"`       // by play in rod and train
	PullHubNut     units.Length `json:"pull_hub_nut"`    // by the hub sliding out under its slack nut
	PullLift       units.Length `json:"pull_lift"`       // by lifting the plate as far as it goes
	Pull           units.Length `json:"pull"`            // of cable, all told
	CableTension   units.Force  `json:"cable_tension"`   // at the lever, plate lifted as far as it goes
	HandForce      units.Force  `json:"hand_force"`      // at the finger line, the same
	HandForceFreed units.Force  `json:"hand_force_free"` // at the finger line, at the lift wanted

	Slips   bool `json:"slips"`    // Torque below TorqueEngine: at full torque
	NoSpare bool `json:"no_spare"` // Torque below TorqueWanted: holds now, without the margin
	Drags   bool `json:"drags"`    // Lift below LiftWanted
	Heavy   bool `json:"heavy"`    // HandForceFreed above what may be asked
	Bound   bool `json:"bound"`    // springs go solid before the lever reaches the bar
	NoPlay  bool `json:"no_play"`  // free play below the least
}

// At returns both ledgers with the spring nuts the given turns in from flush.
func (c Clutch) At(found Condition, turns units.Angle) (Budget, error) {
	return Budget{}, errors.New(notComputed.Text)
}
