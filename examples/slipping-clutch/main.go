// Slipping-clutch says whether any setting of the spring nuts both holds and
// frees, and what to mend if none does. The clutch is an invented one; what was
// found on it is given by flags.
package main

import (
	"flag"

	"example.com/benchbook/examples/internal/slip"
	"example.com/benchbook/transmission"
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

func clutch() transmission.Clutch {
	lever := transmission.HandLever{
		Finger: measure.By(units.Millimetres(109.6), measure.Rule()), Nipple: measure.By(units.Millimetres(38), measure.Rule()),
		Rest: measure.By(units.Degrees(-17), measure.Protractor()), Pulled: measure.By(units.Degrees(17), measure.Protractor()),
	}
	return transmission.Clutch{
		Plates:  transmission.Plates{Driving: 6, Driven: 5, Outer: units.Millimetres(140), Inner: units.Millimetres(100)},
		Springs: transmission.Springs{Count: 4, Rate: units.NewtonsPerMillimetre(25), FreeLength: units.Millimetres(46), Shortest: units.Millimetres(28), AtFlush: units.Millimetres(44)},
		Nuts:    transmission.Nuts{Pitch: units.Inches(0.05)},
		Lever:   lever,
		Train:   []transmission.Element{{Name: "release arm", Ratio: 6, Efficiency: 0.9}},
		Demand:  transmission.Demand{EngineTorque: units.NewtonMetres(28), PrimaryRatio: 2.2, HandForce: units.Newtons(130)},
	}
}

func main() {
	nuts := flag.String("nuts", "6 turns", "how far the spring nuts are in from flush")
	set := flag.String("set", "1 mm ± 0.2", "how much shorter than new the springs are")
	back := flag.String("hub-nut", "0.5 turn", "how far the hub's nut has backed off; empty if not looked at")
	flat := flag.String("out-of-flat", "0.5 mm ± 0.1", "travel that bent plates use up")
	slip.Flags()

	in := transmission.Input{Clutch: clutch(), Signs: transmission.Signs{Slips: transmission.Yes, Drags: transmission.Yes}}
	in.Setting.Nuts = slip.Need(measure.Read(*nuts, transmission.NutTurns()))
	in.Found.SpringSet = slip.Need(measure.Read(*set, measure.Rule()))
	in.Found.HubNutBack = slip.Need(measure.Read(*back, transmission.NutTurns()))
	in.Found.OutOfFlat = slip.Need(measure.Read(*flat, measure.FeelerGauge()))
	a := slip.Need(transmission.Adjust(in, transmission.Options{}))
	d := slip.Need(transmission.Diagnose(in, transmission.Options{}))
	slip.Certain("to hold, %.1f turns or more; to free, %.1f or less", a.Window.Low.Turns(), a.Window.High.Turns())
	slip.Odds(d.Causes, d.NextReadings)
	slip.Say("do", "%s", a.Advice.Text)
	slip.Basis(a.Basis)
}
