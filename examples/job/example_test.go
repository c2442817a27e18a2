package job_test

import (
	"fmt"
	"strings"

	"example.com/benchbook/examples/job"
	"example.com/benchbook/units/fault"
)

// The demonstration: an invented machine with invented readings.
func ExampleRun() {
	report, err := job.Run(job.Demo())
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("start it:", report.Start.Text)
	for _, s := range report.Sections {
		f := s.Findings[0]
		fmt.Printf("%s: %s\n", s.Key, f.Text)
	}
	// Output:
	// start it: Not yet:
	// timing: exhaust camwheel one tooth late and inlet cam turned on its wheel
	// ignition: timed as it should be
	// clutch: no setting of the spring nuts both holds and frees: slips and drags: it must be tighter to hold than it may be to free, so no setting of the nuts cures it
	// carburettor: bore 22 mm is below 24.6 to 27.9 mm
	// limits: every figure read lies within its fit or its wear
	// road: in top, overall 44/9 (4.889), expect 3260 rev/min at 50 mile/h
	// threads: stud, timing cover: 1/4-26 cycle
}

// Every fault of a job file comes back at once, with its place in the file.
func ExampleRun_faults() {
	_, err := job.Run([]byte(`{
		"schema": "benchbook/job/1",
		"threads": [{"where": "fork stud", "outside": "6.31", "pich": "26 tpi"}]
	}`))
	for _, f := range fault.Faults(err) {
		fmt.Println(f.Path, f.Code)
	}
	// Output:
	// threads[0].outside unit-missing
	// threads[0].pich unknown-name
}

// One part of the report: what to do about the clutch, and what the package's
// own result says of the window.
func ExampleReport_Section() {
	report, err := job.Run(job.Demo())
	if err != nil {
		fmt.Println(err)
		return
	}
	clutch := report.Section("clutch")
	fmt.Println("something to put right:", clutch.Faulty())
	fmt.Println(clutch.DoFirst[0])
	result := clutch.Result.(job.ClutchResult)
	fmt.Printf("the window is open: %v\n", result.Adjust.Window.Open())
	// Output:
	// something to put right: true
	// tighten the hub's retaining nut on a new lock washer: then 8.8 turns to 11.0 turns hold and free
	// the window is open: false
}

// The order of work says how each step stands.
func ExampleReport_order() {
	report, err := job.Run(job.Demo())
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, step := range report.Order[:4] {
		fmt.Printf("%s: %s\n", step.State, step.Text)
	}
	// Output:
	// put right: oil feed and return
	// in order: compression
	// in order: spark on the right stroke
	// not looked at: fuel: flow, level, freshness
}

// An empty job to fill in runs as it stands, with nothing read.
func ExampleEmpty() {
	report, err := job.Run(job.Empty())
	fmt.Println(err, report.Sections[0].Findings[0].Text)
	// Output: <nil> no valve event was read, so nothing can be said of the timing
}

func ExampleDemo() {
	fmt.Println(strings.Contains(string(job.Demo()), "invented"))
	// Output: true
}
