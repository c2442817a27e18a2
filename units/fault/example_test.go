package fault_test

import (
	"fmt"

	"example.com/benchbook/units/fault"
)

// All faults of an input come back together.
func ExampleList() {
	var l fault.List
	l.Add(fault.Fault{Code: fault.Missing, Path: "springs.count", Rule: "how many springs there are"})
	l.Add(fault.Fault{Code: fault.OutOfRange, Path: "springs.rate", Value: "-25 N/mm", Unit: "N/mm", Rule: "must be above zero"})
	fmt.Println(l.Err())
	// Output:
	// springs.count: how many springs there are
	// springs.rate: -25 N/mm: must be above zero
}

// A program takes them apart by code.
func ExampleFaults() {
	err := fault.Under("clutch", fault.Fault{Code: fault.Missing, Path: "springs.count", Rule: "how many springs there are"})
	for _, f := range fault.Faults(fmt.Errorf("sheet 3: %w", err)) {
		fmt.Println(f.Code, "at", f.Path)
	}
	// Output: missing at clutch.springs.count
}

func ExampleUnder() {
	err := fault.Fault{Code: fault.OutOfRange, Path: "bore", Value: "0 mm", Rule: "must be above zero"}
	fmt.Println(fault.Under("engine", err))
	// Output: engine.bore: 0 mm: must be above zero
}

// A reason is no error: the question was sound, and has no answer.
func ExampleReason() {
	why := fault.Reason{Code: "window-empty", Text: "every setting slips or drags"}
	if why.Given() {
		fmt.Println("no setting:", why)
	}
	// Output: no setting: every setting slips or drags
}

// A part's own check is taken over below the part's name, and the rest goes on.
func ExampleList_Under() {
	spring := func() error {
		return fault.Fault{Code: fault.OutOfRange, Path: "rate", Value: "0 N/mm", Unit: "N/mm", Rule: "must be above zero"}
	}
	var l fault.List
	if !l.Under("clutch.springs", spring()) {
		fmt.Println("the springs cannot be used")
	}
	l.Add(fault.Fault{Code: fault.Missing, Path: "clutch.lever", Rule: "the length of the lever"})
	fmt.Println(l.Err())
	// Output:
	// the springs cannot be used
	// clutch.springs.rate: 0 N/mm: must be above zero
	// clutch.lever: the length of the lever
}
