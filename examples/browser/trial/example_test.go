package trial_test

import (
	"bytes"
	"fmt"
	"strings"

	"example.com/benchbook/examples/browser/trial"
	"example.com/benchbook/examples/job"
)

// What can be moved, part by part, and where it stands.
func ExampleTrial_Controls() {
	t, err := trial.Open(job.Demo())
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(strings.Join(t.Panels(), ", "))
	for _, c := range t.Controls() {
		var one trial.Control = c
		if one.Panel == "carburettor" {
			fmt.Println(one.Key+":", one.Text)
		}
	}
	// Output:
	// clutch, timing, carburettor
	// main-jet: 110 cc/min (100 %)
	// pilot-jet: 25 cc/min (100 %)
	// cutaway: 3.0 sixteenths
	// clip: 3 of 5 from the top, taken for granted
}

// A larger main jet: what the part then says whole, the file that says the same, and
// all as it was.
func ExampleTrial_Panel() {
	t, err := trial.Open(job.Demo())
	if err != nil {
		fmt.Println(err)
		return
	}
	key, err := t.Move(trial.MainJet, "150")
	if err != nil {
		fmt.Println(err)
		return
	}
	p, err := t.Panel(key, 700)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(p.Brief)
	for _, f := range p.Findings[:2] {
		fmt.Println("-", f.Text)
	}
	file, err := t.File()
	fmt.Println(bytes.Contains(file, []byte(`"main_jet": "165.0 cc/min"`)), err)
	if err := t.Back(); err != nil {
		fmt.Println(err)
		return
	}
	p, err = t.Quick(key, 700)
	fmt.Println(p.Brief, err)
	// Output:
	// Lambda by the model: 0.64 wide open, 0.63 half open, 0.33 an eighth open
	// - bore 22 mm is below 24.6 to 27.9 mm
	// - main jet, flow mark 165 cc/min is below 182 to 260 cc/min
	// true <nil>
	// Lambda by the model: 0.89 wide open, 0.79 half open, 0.36 an eighth open <nil>
}

// A part without controls, in the words of a panel, and the cautions of all parts.
func ExamplePanelOf() {
	t, err := trial.Open(job.Demo())
	if err != nil {
		fmt.Println(err)
		return
	}
	report := t.Report()
	p := trial.PanelOf(report.Section("ignition"))
	fmt.Println(p.Title+":", p.Findings[0].Text)
	fmt.Println(strings.Join(p.Dangers, ", "))
	for _, c := range trial.Cautions(report)[:1] {
		fmt.Println(c)
	}
	// Output:
	// Ignition timing: timed as it should be
	// kick back, high tension, petrol vapour
	// Wrong timing can drive a valve into the piston or into the other valve: turn by hand only, two slow full turns, plug out, and stop at any resistance.
}

// What follows the hand: the pictures, each with its finding.
func ExampleTrial_Quick() {
	t, err := trial.Open(job.Demo())
	if err != nil {
		fmt.Println(err)
		return
	}
	p, err := t.Quick("timing", 700)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, d := range p.Pictures {
		var one trial.Picture = d
		fmt.Println(one.Key+":", one.Finding)
	}
	// Output:
	// valve-lift: inlet 9.6° early, exhaust 14.5° late
	// timing-circle: inlet 9.6° early, exhaust 14.5° late
}
