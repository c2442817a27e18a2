package job

import (
	"example.com/benchbook/carburation"
	"example.com/benchbook/refdata"
	"example.com/benchbook/timing"
	"example.com/benchbook/timing/ignition"
	"example.com/benchbook/transmission"
	"example.com/benchbook/transmission/drive"
	"example.com/benchbook/units/fastener"
)

// TimingResult is the Result of the section "timing".
type TimingResult struct {
	Input   timing.Input  `json:"-"` // what stood in for readings that were not taken among it
	Verdict timing.Result `json:"verdict"`
	// InletCurve and ExhaustCurve are lift curves as read, nil where none was.
	InletCurve   *LiftCurve `json:"inlet_curve,omitempty"`
	ExhaustCurve *LiftCurve `json:"exhaust_curve,omitempty"`
	// InletBook and ExhaustBook are lift curves as specified, nil where none is.
	InletBook   *LiftCurve `json:"inlet_book,omitempty"`
	ExhaustBook *LiftCurve `json:"exhaust_book,omitempty"`
}

// IgnitionResult is the Result of the section "ignition".
type IgnitionResult struct {
	Input   ignition.Input  `json:"-"`
	Verdict ignition.Result `json:"verdict"`
}

// ClutchResult is the Result of the section "clutch".
type ClutchResult struct {
	Input    transmission.Input      `json:"-"`
	Adjust   transmission.Adjustment `json:"adjust"`
	Diagnose transmission.Diagnosis  `json:"diagnose"`
}

// CarburettorResult is the Result of the section "carburettor".
type CarburettorResult struct {
	Input carburation.Input    `json:"-"`
	Start carburation.Starting `json:"start"`
	// Mixture is the model's mixture over the lift of the slide, if the needle
	// and its jet were measured; lowest lift first.
	Mixture []carburation.Explained `json:"mixture,omitempty"`
}

// LimitsResult is the Result of the section "limits".
type LimitsResult struct {
	Report refdata.LimitReport `json:"report"`
}

// RoadResult is the Result of the section "road".
type RoadResult struct {
	Line  drive.Line         `json:"-"`
	Asked drive.TableOptions `json:"-"`
	Table drive.Table        `json:"table"`
}

// ThreadsResult is the Result of the section "threads".
type ThreadsResult struct {
	Threads []ThreadResult `json:"threads"`
}

// ThreadResult is one thread of the job.
type ThreadResult struct {
	Where          string                  `json:"where"`
	Identification fastener.Identification `json:"identification"`
}
