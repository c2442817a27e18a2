package transmission_test

import (
	"fmt"

	"example.com/benchbook/transmission"
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// bench is an invented clutch: four springs, ten rubbing faces.
func bench() transmission.Clutch {
	length := func(text string) measure.Reading[units.Length] { return measure.MustRead(text, measure.Caliper()) }
	angle := func(text string) measure.Reading[units.Angle] { return measure.MustRead(text, measure.Protractor()) }
	return transmission.Clutch{
		Plates:  transmission.Plates{Driving: 6, Driven: 5, Outer: 140 * units.Millimetre, Inner: 100 * units.Millimetre},
		Springs: transmission.Springs{Count: 4, Rate: units.NewtonsPerMillimetre(25), FreeLength: 46 * units.Millimetre, Shortest: 28 * units.Millimetre, AtFlush: 44 * units.Millimetre},
		Nuts:    transmission.Nuts{Pitch: units.Inches(1.0 / 20)},
		Lever:   transmission.HandLever{Finger: length("109.6 mm"), Nipple: length("38 mm"), Rest: angle("-17°"), Pulled: angle("17°")},
		Train:   []transmission.Element{{Name: "release arm", Ratio: 6, Efficiency: 0.9}},
		Demand:  transmission.Demand{EngineTorque: 28 * units.NewtonMetre, PrimaryRatio: 2.2, HandForce: 130 * units.Newton},
	}
}

// It slips and it drags. Readings of an invented clutch whose retaining nut has
// backed off half a turn.
func Example() {
	in := transmission.Input{
		Clutch:  bench(),
		Setting: transmission.Setting{Nuts: measure.MustRead("6 turn", transmission.NutTurns())},
		Found: transmission.Condition{
			Friction:   measure.MustRead("0.11 ± 0.01", measure.Nominal[units.Ratio](0.1)),
			SpringSet:  measure.MustRead("1 mm", measure.Caliper()),
			OutOfFlat:  measure.MustRead("0.5 mm ± 0.05", measure.FeelerGauge()),
			HubNutBack: measure.MustRead("0.5 turn", transmission.NutTurns()),
		},
		Signs: transmission.Signs{Slips: transmission.Yes, Drags: transmission.Yes},
	}
	a, err := transmission.Adjust(in, transmission.Options{})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("at %.0f turns: %s\n", a.Budget.Turns.Turns(), a.Budget.Symptoms())
	fmt.Printf("needs at least %.1f turns (%v), at most %.1f (%v)\n", a.Window.Low.Turns(), a.Window.LowLimit, a.Window.High.Turns(), a.Window.HighLimit)
	fmt.Println(a.Advice.Text)
	d, err := transmission.Diagnose(in, transmission.Options{})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(d.Findings[0].Odds+":", d.Findings[0].Text)
	// Output:
	// at 6 turns: slips and drags at once
	// needs at least 8.8 turns (torque), at most 3.1 (travel)
	// slips and drags: it must be tighter to hold than it may be to free, so no setting of the nuts cures it; leave the nuts alone and repair first: tighten the hub's retaining nut on a new lock washer
	// likely: the hub's retaining nut has backed off
}

// Free play first, nuts second: how far the cable adjuster may go.
func ExampleClutch_Region() {
	r, err := bench().Region(transmission.Condition{FreePlay: measure.MustRead("6 mm", measure.Rule())})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("take up at most %.0f turns, %v each\n", r.Most.Turns(), r.PerTurn)
	fmt.Printf("nuts then from %.1f to %.1f turns\n", r.Widest.Low.Turns(), r.Widest.High.Turns())
	// Output:
	// take up at most 4 turns, 1 mm each
	// nuts then from 7.2 to 10.3 turns
}

// Four readings of a dial gauge on the rim of the pressure plate, one against each
// spring nut.
func ExampleClutch_Even() {
	c := bench()
	c.Nuts.Circle = 80 * units.Millimetre
	var rim transmission.Rim
	for _, text := range []string{"0.00 mm", "0.42 mm", "0.81 mm", "0.39 mm"} {
		rim.Heights = append(rim.Heights, measure.MustRead(text, measure.DialGauge()))
	}
	t, err := c.Even(rim)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("run-out", t.RunOut, "- "+t.Text)
	fmt.Println("leaves", t.After.In(units.Millimetre, 2))
	// Output:
	// run-out 0.811 ± 0.014 mm - nut 1 out by 1 flat, nut 3 in by 1 flat
	// leaves 0.08 mm
}

// A rider stands on the kick starter against full compression and the clutch holds.
func ExampleClutch_Kick() {
	p, err := bench().Kick(transmission.KickTest{
		Rider:    measure.MustRead("75 kg ± 1", measure.Nominal[units.Mass](0.02)),
		Crank:    measure.MustRead("200 mm", measure.Rule()),
		Ratio:    1.5,
		Cranking: measure.MustRead("35 N m ± 3", measure.Nominal[units.Torque](0.1)),
		Result:   transmission.Held,
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(p.Capacity, p.Tested)
	fmt.Println(p.Verdict)
	// Output:
	// at least 77 ± 7 N m
	// the clutch was put to 77 ± 7 N m, 125 % of the engine's greatest torque there: it carries the engine; the margin is not proved either way
}

// V. B. Bhandari, Design of Machine Elements, example 11.8: five steel and four
// bronze plates, 150 and 75 mm, friction 0.1, 0.3 N/mm² at most. The source prints
// 2650.718801 N, 8 faces and 119282.346066 N mm.
func ExamplePlates_Carry() {
	p := transmission.Plates{Driving: 5, Driven: 4, Outer: 150 * units.Millimetre, Inner: 75 * units.Millimetre}
	clamp, err := p.ClampFor(units.Megapascals(0.3))
	if err != nil {
		fmt.Println(err)
		return
	}
	c, err := p.Carry(units.Value(0.1), clamp)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(clamp.In(units.Newton, 6), c.Faces, c.Torque.In(units.NewtonMillimetre, 6))
	// Output:
	// 2650.718801 N 8 119282.346066 N mm
}

// V. B. Bhandari, Design of Machine Elements, example 11.1: one face of 200 and 100
// mm, 1 N/mm² at most. The source prints 15707.963268 N.
func ExamplePlates_ClampFor() {
	p := transmission.Plates{Faces: 1, Outer: 200 * units.Millimetre, Inner: 100 * units.Millimetre}
	clamp, err := p.ClampFor(units.Megapascals(1))
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(clamp.In(units.Newton, 6))
	// Output:
	// 15707.963268 N
}

// R. S. Khurmi and J. K. Gupta, Theory of Machines, example 10.24: 25 kW at 3000
// rev/min, two faces, friction 0.255, radii 1.25 to 1, 0.1 N/mm² at most. The
// source prints radii of 120 and 96 mm.
func ExampleRingFor() {
	torque := units.NewtonMetres(25000 / units.RevolutionsPerMinute(3000).RadiansPerSecond())
	p, err := transmission.RingFor(torque, units.Value(0.255), units.Megapascals(0.1), 2, 1/1.25, transmission.UniformWear)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(p.Outer.Times(0.5).In(units.Millimetre, 0), p.Inner.Times(0.5).In(units.Millimetre, 0))
	// Output:
	// 120 mm 96 mm
}

// Lining friction from the books, dry and with oil on it.
func ExampleLiningFriction() {
	for _, condition := range []string{"dry", "oil"} {
		f, from, err := transmission.LiningFriction("moulded", condition)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Println(condition, f, "-", len(from), "sources")
	}
	// Output:
	// dry 0.35 ± 0.06 - 2 sources
	// oil 0.065 ± 0.014 - 2 sources
}

// A cable that turns a half circle on its way.
func ExampleCableEfficiency() {
	e, err := transmission.CableEfficiency(measure.MustRead("0.1 ± 0.02", measure.Nominal[units.Ratio](0.2)), measure.MustRead("180° ± 20°", measure.Protractor()))
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(e)
	// Output:
	// 0.73 ± 0.05
}

// A quick thread of 40 mm lead on a mean diameter of 18 mm.
func ExampleScrewEfficiency() {
	e, err := transmission.ScrewEfficiency(40*units.Millimetre, 18*units.Millimetre, units.Value(0.12))
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.2f\n", e.Value())
	// Output:
	// 0.78
}

// The same clutch with three release trains in turn: an arm that starts 20° before
// square, a quick thread, a ball ramp worked through a rocking lever and a rod that
// gives a little.
func ExampleElement() {
	c := bench()
	arm := transmission.ReleaseArm(60*units.Millimetre, 10*units.Millimetre, -20*units.Degree, -20*units.Degree)
	arm.Efficiency = 0.9
	thread := transmission.QuickThread(50*units.Millimetre, 52*units.Millimetre, -15*units.Degree)
	thread.Efficiency = 0.8
	ramp := transmission.BallRamp(45*units.Millimetre, 9*units.Millimetre, 60*units.Degree, -10*units.Degree)
	ramp.Efficiency = 0.85
	for _, train := range [][]transmission.Element{
		{arm},
		{thread},
		{transmission.Rocker(33*units.Millimetre, 30*units.Millimetre), ramp, transmission.PushRod(units.NewtonsPerMillimetre(15000))},
	} {
		c.Train = train
		w, err := c.Window(transmission.Condition{})
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%s: %.1f to %.1f turns\n", train[0].Name, w.Low.Turns(), w.High.Turns())
	}
	// Output:
	// release arm: 7.2 to 10.3 turns
	// quick thread: 7.2 to 8.9 turns
	// rocking lever: 7.2 to 9.1 turns
}

// Finger force over cable tension with the lever at the bar.
func ExampleHandLever_Leverage() {
	i, err := bench().Lever.Leverage()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(i)
	// Output:
	// 3.016 ± 0.016
}

// The verdict on adjusting alone: turns and flats.
func ExampleAdjust() {
	a, err := transmission.Adjust(transmission.Input{
		Clutch:  bench(),
		Setting: transmission.Setting{Nuts: measure.MustRead("6 1/2 turn", transmission.NutTurns())},
		Found:   transmission.Condition{FreePlay: measure.MustRead("5 mm", measure.Rule())},
	}, transmission.Options{})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(a.Budget.Symptoms())
	fmt.Println(a.Advice.Text)
	// Output:
	// holds without its margin
	// first take up free play by 2.50 turns of its adjuster; then turn every nut in by 2 turns and 1 flat, all alike; set every nut 8 turns and 4 flats in from flush, not under 7 turns and 2 flats nor over 10 turns and 2 flats; leave at least 2.0 mm of free play at the lever
}

// It drags, and the lever is light at first and then stiff. Invented readings.
func ExampleDiagnose() {
	in := transmission.Input{
		Clutch:  bench(),
		Found:   transmission.Condition{FreePlay: measure.MustRead("3 mm", measure.Rule()), RodPlay: measure.MustRead("0.3 mm", measure.DialGauge()), OutOfFlat: measure.MustRead("0.3 mm", measure.DialGauge()), RunOut: measure.MustRead("0.1 mm", measure.DialGauge())},
		Setting: transmission.Setting{Nuts: measure.MustRead("8.5 turn", transmission.NutTurns())},
		Signs:   transmission.Signs{Slips: transmission.No, Drags: transmission.Yes, LightThen: transmission.Yes, Lift: measure.MustRead("1 mm", measure.DialGauge())},
	}
	d, err := transmission.Diagnose(in, transmission.Options{})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(d.Findings[0].Text, "-", d.Findings[0].Odds)
	fmt.Println("suspected:", d.Suspects)
	fmt.Println("read next:", d.NextReadings[0].Text)
	// Output:
	// the hub's retaining nut has backed off - likely
	// suspected: [hub-nut washer-omitted lever-short two-at-once something-else cable-soft hub-nut+plates-worn hub-nut+springs-weak hub-nut+cable-drag hub-nut+cable-soft plates-worn+washer-omitted springs-weak+washer-omitted]
	// read next: take off the cover and try the nut with a spanner of the right hand
}

// An owner who knows that the nut has come loose before raises its weight.
func ExampleKnownCauses() {
	for _, c := range transmission.KnownCauses() {
		if c.Key == "hub-nut" {
			fmt.Printf("%s: weight %v, %.0f minutes\n", c.Text, c.Prior, c.Work.MinutesOfTime())
		}
	}
	d, err := transmission.Diagnose(transmission.Input{Clutch: bench(), Signs: transmission.Signs{Drags: transmission.Yes}},
		transmission.Options{Priors: map[string]float64{"hub-nut": 40}})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(d.Findings[0].Odds+":", d.Findings[0].Do)
	// Output:
	// the hub's retaining nut has backed off: weight 4, 60 minutes
	// possible: tighten the nut on a new lock washer, and look at key, taper and splines
}
