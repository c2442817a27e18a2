package transmission_test

import (
	"fmt"

	"example.com/benchbook/transmission"
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// One setting on paper: what it carries and what is left of the lever's pull, and
// whether any other would do. A lower demand, one central nut, corks in the plates;
// all invented.
func ExampleClutch() {
	c := bench()
	c.Springs = transmission.Springs{Count: 6, Rate: units.NewtonsPerMillimetre(18), FreeLength: 46 * units.Millimetre, Shortest: 28 * units.Millimetre, AtFlush: 44 * units.Millimetre}
	c.Nuts.Kind = transmission.Central
	c.Plates = transmission.Plates{Driving: 6, Driven: 5, Inserts: transmission.Inserts{Count: 18, Area: units.SquareMillimetres(200), Radius: 60 * units.Millimetre}}
	c.Demand = transmission.Demand{EngineTorque: 25 * units.NewtonMetre, PrimaryRatio: 2.2, HandForce: 140 * units.Newton}
	w, err := c.Window(transmission.Condition{})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("some setting does: %v, from %.1f to %.1f turns\n", w.Open(), w.Low.Turns(), w.High.Turns())
	b, err := c.At(transmission.Condition{}, 8*units.Turn)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("at 8 turns it carries", b.Torque.In(units.NewtonMetre, 0), "of", b.TorqueWanted.In(units.NewtonMetre, 0), "wanted, hand", b.HandWanted.In(units.Newton, 0))
	// Output:
	// some setting does: true, from 5.7 to 10.3 turns
	// at 8 turns it carries 95 N m of 72 N m wanted, hand 116 N
}

// What the lever ought to pull by its own figures, against what was measured with a
// rule at the nipple.
func ExamplePull() {
	c := bench()
	byLever, err := c.Lever.Pull()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("by its figures", byLever)
	a, err := transmission.Adjust(transmission.Input{
		Clutch: c,
		Found:  transmission.Condition{CablePull: measure.MustRead("18 mm", measure.Rule())},
	}, transmission.Options{})
	if err != nil {
		fmt.Println(err)
		return
	}
	var pull transmission.Pull = a.Pull
	fmt.Println("taken:", pull.Used, "- they disagree:", pull.Disagree)
	// Output:
	// by its figures 22.2 ± 0.9 mm
	// taken: 18 mm - they disagree: true
}

// A window that has closed, and what opens it again, best first. The clutch and its
// readings are invented.
func ExampleRepair() {
	c := bench()
	c.HubNut = transmission.HubNut{Pitch: units.Inches(1.0 / 20), Hand: transmission.LeftHand}
	c.Play = transmission.PlayAdjuster{Pitch: 1 * units.Millimetre}
	a, err := transmission.Adjust(transmission.Input{
		Clutch: c,
		Found: transmission.Condition{
			SpringSet:  measure.MustRead("1 mm", measure.Caliper()),
			OutOfFlat:  measure.MustRead("0.5 mm ± 0.05", measure.FeelerGauge()),
			HubNutBack: measure.MustRead("0.5 turn", transmission.NutTurns()),
		},
	}, transmission.Options{})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, r := range a.Repairs[:2] {
		var repair transmission.Repair = r
		fmt.Println(repair.Text, "- opens it:", repair.Opens)
	}
	// Output:
	// tighten the hub's retaining nut on a new lock washer - opens it: true
	// flatten or renew the bent plates - opens it: false
}

// What a kick test of a light rider leaves unproven.
func ExampleProof() {
	p, err := bench().Kick(transmission.KickTest{
		Rider:  measure.MustRead("60 kg ± 1", measure.Nominal[units.Mass](0.02)),
		Crank:  measure.MustRead("200 mm", measure.Rule()),
		Ratio:  2.5,
		Result: transmission.Held,
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	var engine transmission.Proof = p.Proven
	fmt.Println("for the engine's torque:", engine)
	// Output: for the engine's torque: not proved either way
}

// A pack whose slots are notched: the same springs press it, and it carries less.
func ExamplePlates_CarryFading() {
	p := bench().Plates
	for _, grip := range []float64{0, 0.15, 0.3} {
		c, err := p.CarryFading(units.Value(0.12), units.Value(grip), 1000*units.Newton)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("grip %.2f: %s\n", grip, c.Torque.In(units.NewtonMetre, 1))
	}
	// Output:
	// grip 0.00: 72.0 N m
	// grip 0.15: 61.4 N m
	// grip 0.30: 53.0 N m
}

// Springs read short and plates read bent, on an invented clutch: the two together
// explain what neither does alone.
func ExampleOptions() {
	in := transmission.Input{
		Clutch:  bench(),
		Setting: transmission.Setting{Nuts: measure.MustRead("8.2 turn", transmission.NutTurns())},
		Found: transmission.Condition{
			SpringSet: measure.MustRead("2.4 mm ± 0.05", measure.Caliper()),
			OutOfFlat: measure.MustRead("1.2 mm ± 0.1", measure.FeelerGauge()),
		},
		Signs: transmission.Signs{Slips: transmission.Yes, Drags: transmission.Yes},
	}
	for _, opt := range []transmission.Options{{}, {OneAtATime: true}} {
		d, err := transmission.Diagnose(in, opt)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Println(d.Findings[0].Odds+":", d.Findings[0].Text)
	}
	d, _ := transmission.Diagnose(in, transmission.Options{TwoAtOnce: 0.02})
	if o, listed := d.Causes.Of(transmission.TwoAtOnce); listed {
		fmt.Println(o.Text+":", o.Words())
	}
	// Output:
	// likely: the springs have gone short, and the plates are not flat
	// very likely: something not listed here
	// two of these at once, no two of them plainly: hardly
}

// Four springs measured one by one, two of them from another set: what that does
// to the lift, and what to do until there is a set. Readings are invented.
func ExampleClutch_Mixed() {
	c := bench()
	c.Nuts.Circle = 80 * units.Millimetre
	var springs []transmission.FittedSpring
	for _, free := range []string{"46.0 mm", "45.9 mm", "44.6 mm", "44.8 mm"} {
		springs = append(springs, transmission.FittedSpring{FreeLength: measure.MustRead(free, measure.Caliper())})
	}
	at := units.Turns(8.5)
	m, err := c.Mixed(springs, at, transmission.Condition{})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(m.Text)
	b, err := c.At(m.Into(transmission.Condition{}), at)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("as they stand:", b.Symptoms())
	// Output:
	// the plate lifts 3.12 mm out of true; put on the studs in turn, springs 1 3 2 4 leave 0.39 mm; or as they stand, nut 1 out by 3 flats, nut 2 out by 3 flats, nut 3 in by 3 flats, nut 4 in by 3 flats, which leaves 0.37 mm at this setting
	// as they stand: drags
}

// S. S. Bhavikatti, Mechanics of Solids, example 6.1: 10 kN lifted by 500 N, which
// moves 20 m for 0.8 m of the load.
func ExampleWeighed_Advantage() {
	w := transmission.Weighed{
		Effort: measure.Exact(500 * units.Newton), Load: measure.Exact(10 * units.Kilonewton),
		EffortTravel: measure.Exact(20 * units.Metre), LoadTravel: measure.Exact(units.Metres(0.8)),
	}
	a, err := w.Advantage()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(a.Force, a.Travel, a.Efficiency, a.Ideal)
	// Output:
	// 20 25 0.8 400 N
}

// A push rod loaded with weights and the lever drawn by a spring balance, invented
// readings: what the hand spends on friction before it lifts anything.
func ExampleFitEffort() {
	var trials []transmission.Weighed
	for _, t := range [][2]string{{"200 N", "24 N"}, {"600 N", "54 N"}, {"1000 N", "85 N"}} {
		trials = append(trials, transmission.Weighed{
			Load:   measure.MustRead(t[0], measure.Nominal[units.Force](0.01)),
			Effort: measure.MustRead(t[1], measure.SpringBalance()),
		})
	}
	law, err := transmission.FitEffort(trials)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("idle", law.Idle)
	effort, err := law.Effort(1300 * units.Newton)
	if err != nil {
		fmt.Println(err)
		return
	}
	load, err := law.Load(120 * units.Newton)
	if err != nil {
		fmt.Println(err)
		return
	}
	eta, err := law.Efficiency(effort, 17)
	fmt.Printf("1300 N take %s, 120 N lift %s\n", effort.In(units.Newton, 0), load.In(units.Newton, 0))
	fmt.Printf("%.0f %% of the work arrives %v\n", eta.Percents(), err)
	// Output:
	// idle 8.6 ± 1.7 N
	// 1300 N take 108 N, 120 N lift 1461 N
	// 71 % of the work arrives <nil>
}

// U. C. Jindal, Machine Design, example 22-6: faces for 47.746 N m at a mean pressure
// of 0.3 N/mm² on a ring of 75 by 125 mm. The book goes on with four.
func ExamplePlates_FacesFor() {
	p := transmission.Plates{Faces: 1, Outer: 125 * units.Millimetre, Inner: 75 * units.Millimetre}
	clamp, err := p.ClampFor(units.Megapascals(0.4))
	if err != nil {
		fmt.Println(err)
		return
	}
	n, err := p.FacesFor(units.NewtonMetres(47.746), units.Value(0.1), clamp)
	fmt.Printf("%.2f %v\n", n, err)
	// Output:
	// 4.05 <nil>
}
