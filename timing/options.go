package timing

import "example.com/benchbook/units"

// Options change what Diagnose takes for granted. The zero value is usable.
type Options struct {
	Priors Priors `json:"priors"`
	Widths Widths `json:"widths"`
	// Trifle is the shift of an opening below which a fault counts as none:
	// default 3° crank.
	Trifle units.CrankAngle `json:"trifle"`
	// Teeth is the largest number of teeth out that is listed: default 3, at
	// most 12.
	Teeth int `json:"teeth"`
	// SingleFaults leaves out two faults at once: default both are weighed.
	SingleFaults bool `json:"single_faults"`
}

// Priors are weights before the readings; only their ratios matter. Zero means
// the default, which is common practice without a source.
type Priors struct {
	Nothing    float64 `json:"nothing"`     // nothing wrong: default 0.40
	WholeTrain float64 `json:"whole_train"` // whole train some teeth out, all numbers together: default 0.08
	Wheel      float64 `json:"wheel"`       // one camwheel some teeth out, each, all numbers together: default 0.08
	Slip       float64 `json:"slip"`        // a cam turned on its wheel, each: default 0.06
	TDC        float64 `json:"tdc"`         // mark or pointer wrong; not weighed when found by stop: default 0.06
	Clearance  float64 `json:"clearance"`   // clearance other than supposed, each cam: default 0.04
	CheckLift  float64 `json:"check_lift"`  // events found at another lift than said: default 0.02
	OtherCam   float64 `json:"other_cam"`   // another cam fitted, each place, all rivals together: default 0.04
	Exchanged  float64 `json:"exchanged"`   // inlet and exhaust cams exchanged: default 0.01
	Disc       float64 `json:"disc"`        // disc read the wrong way round: default 0.02
	Else       float64 `json:"else"`        // something else: default 0.02
}

// Widths are standard deviations of errors and of amounts a cause leaves open.
// Zero means the default.
type Widths struct {
	TDCByEye  units.CrankAngle `json:"tdc_by_eye"`  // default 1.5°
	TDCByStop units.CrankAngle `json:"tdc_by_stop"` // default 0.3°
	TDCByDial units.CrankAngle `json:"tdc_by_dial"` // default 1°
	TDCMark   units.CrankAngle `json:"tdc_mark"`    // of a wrong mark: default 8°
	Slip      units.CrankAngle `json:"slip"`        // of the narrow part of a slip: default 10°
	Clearance units.CrankAngle `json:"clearance"`   // of the event shift by a wrong clearance: default 8°
}
