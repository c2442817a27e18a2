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
	// very likely: the hub's retaining nut has backed off
}
