package timing_test

import (
	"errors"
	"fmt"

	"example.com/benchbook/timing"
	"example.com/benchbook/timing/cam"
	"example.com/benchbook/timing/crank"
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// An invented machine: a 24-tooth pinion between two 48-tooth camwheels. Somebody
// has meshed the exhaust camwheel a tooth late, and the inlet cam has slipped.
func ExampleDiagnose() {
	inlet, err1 := timing.ReadLobe("25 BTDC", "65 ABDC")
	exhaust, err2 := timing.ReadLobe("65 BBDC", "25 ATDC")
	readings, err3 := timing.ReadEvents("34 BTDC", "56 ABDC", "50 BBDC", "40 ATDC")
	engine := timing.Engine{Drive: timing.TwoCamwheels(24, 48), Inlet: inlet, Exhaust: exhaust}
	result, err4 := timing.Diagnose(timing.Input{Engine: engine, Readings: readings}, timing.Options{})
	if err := errors.Join(err1, err2, err3, err4); err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("inlet advanced by", result.Inlet.Crank, "and exhaust by", result.Exhaust.Crank)
	lead := result.Causes.Leader()
	fmt.Println(lead.Words()+":", result.Explained[0].Text)
	fmt.Println("first:", result.Remedies[0].Text)
	fmt.Println("may be started:", result.Turning.Start)
	// Output:
	// inlet advanced by 9.0 ± 1.7° crank and exhaust by -15.0 ± 1.7° crank
	// very likely: exhaust camwheel one tooth late and inlet cam turned on its wheel, 8.9 ± 0.9° crank early
	// first: turn the inlet cam on its wheel 4.5° cam (9.0° crank) later; move the exhaust camwheel one tooth earlier
	// may be started: false
}

func ExampleCauses() {
	r, _ := timing.ReadEvents("10 BTDC", "80 ABDC", "65 BBDC", "-")
	r.TDC = timing.TDCByStop
	ranking, _ := timing.Causes(timing.Input{Engine: engine(), Readings: r}, timing.Options{})
	for _, o := range ranking.Within(100) {
		fmt.Println(o.Words(), "-", o.Text)
	}
	// Output:
	// very likely - inlet camwheel one tooth late
	// unlikely - inlet cam turned on its wheel
}

func ExamplePhases() {
	r := timing.Readings{
		InletOpens:  measure.At(units.Before(units.TDC, 13*units.CrankDegree), 1*units.CrankDegree),
		InletCloses: measure.At(units.After(units.BDC, 80*units.CrankDegree), 1*units.CrankDegree),
		TDC:         timing.TDCByStop,
	}
	inlet, exhaust, _ := timing.Phases(timing.Input{Engine: engine(), Readings: r}, timing.Options{})
	fmt.Println(inlet.Crank, "is", inlet.Cam)
	fmt.Println("longer by", inlet.LongerBy, "- exhaust", exhaust.Crank)
	// Output:
	// -13.5 ± 0.8° crank is -6.8 ± 0.4° cam
	// longer by 3.0 ± 1.4° crank - exhaust not taken
}

// Opening 6° before and closing 5° after TDC overlap by 11°: West African
// Examinations Council, Auto Mechanics paper 220M, question 2.
func ExampleLobesOf() {
	lobes, _ := timing.LobesOf(events("6 BTDC", "35 ABDC", "38 BBDC", "5 ATDC"), timing.Options{})
	fmt.Println("overlap", lobes.Overlap.Value())
	fmt.Println("separation", lobes.Separation)
	// Output:
	// overlap 11° crank
	// separation 105.5 ± 0.5° cam
}

func ExampleReadEvents() {
	_, err := timing.ReadEvents("34 BTDC ± 0.5", "56 ABDX", "", "40")
	fmt.Println(err)
	// Output:
	// inlet_closes: 56 ABDX: expected degrees and a side, such as 25 BTDC, 40° ABDC or TDC
	// exhaust_closes: 40: expected degrees and a side, such as 25 BTDC, 40° ABDC or TDC
}

func ExampleReadLobe() {
	lobe, _ := timing.ReadLobe("25 BTDC", "65 ABDC")
	fmt.Println(lobe.Opens, "to", lobe.Closes)
	// Output: 25° BTDC to 65° ABDC
}

// An invented cam, 9 mm of lift over 150° of the camshaft, its centre 55° after
// overlap: with x from the centre, lift 9 (1 - (x/75)^2)^2 is 1 mm at
// 75 sqrt(1 - 1/3) = 61.24°, that is 12.5° of crank before TDC.
func ExampleLobeOf() {
	lift := make([]units.Length, 720)
	for i := range lift {
		if x := (float64(i)/2 - 55) / 75; x > -1 && x < 1 {
			lift[i] = units.Millimetres(9 * (1 - x*x) * (1 - x*x))
		} else if x := (float64(i)/2 - 360 - 55) / 75; x > -1 {
			lift[i] = units.Millimetres(9 * (1 - x*x) * (1 - x*x))
		}
	}
	curve, _ := cam.InterpolateEven(lift)
	lobe, reason, err := timing.LobeOf(curve, 1*units.Millimetre)
	fmt.Println(lobe.Opens.Before().In(units.CrankDegree, 1), lobe.Opens.Datum(), reason.Given(), err)
	fmt.Println(lobe.OpeningRise.In(units.Millimetre, 3), "a degree")
	// Output:
	// 12.5° crank TDC false <nil>
	// 0.065 mm a degree
}

func ExampleTwoCamwheels() {
	fmt.Println(timing.TwoCamwheels(24, 48).CheckHalfSpeed(timing.InletSpindle, timing.ExhaustSpindle))
	// Output: <nil>
}

func ExampleOneCamwheel() {
	steps, _ := timing.OneCamwheel(24, 48).Steps()
	fmt.Println("a tooth is", steps[0].Crank)
	// Output: a tooth is 15° crank
}

// Invented measurements: 6 mm of room under the inlet valve at TDC, its stem 35°
// from the bore. With the cam a tooth early the valve comes nearer.
func ExampleHead_Gaps() {
	e := engine()
	e.Inlet.MaxLift = measure.Of(9*units.Millimetre, 0.05*units.Millimetre)
	head := timing.Head{
		Slider: crank.Slider{Stroke: 83 * units.Millimetre, Rod: 150 * units.Millimetre},
		Inlet:  timing.Valve{ToPiston: measure.Of(6*units.Millimetre, 0.1*units.Millimetre), Tilt: 35 * units.Degree},
	}
	none := measure.Exact(0 * units.CrankDegree)
	for _, shift := range []units.CrankAngle{0, 15 * units.CrankDegree} {
		g, _ := head.Gaps(e, measure.Exact(shift), none)
		fmt.Println(g.Inlet.Gap, g.Inlet.Room, "at", g.Inlet.At)
	}
	// Output:
	// 4.75 ± 0.10 mm enough at 6.4° ATDC
	// 3.34 ± 0.10 mm enough at 7.6° ATDC
}

func ExampleParseEvent() {
	e, _ := timing.ParseEvent("IVC 65 ABDC at 0.04 in lift, clearance 8 thou")
	fmt.Println(e)
	fmt.Println(e.Check.Lift.In(units.Millimetre, 2), e.Check.At)
	_, err := timing.ParseEvent("inlet opens 25")
	fmt.Println(err != nil)
	// Output:
	// inlet closes 65° ABDC at 1.016 mm lift, clearance 0.2032 mm
	// 1.02 mm at the valve
	// true
}

// With 50 teeth and a vernier of 11 and 12 holes a tooth is worth 14.4° of crank
// and a hole 5.4545°: to move a cam 7° earlier, two teeth on and four holes back
// leave 0.018°.
func ExamplePlan_Best() {
	e := engine()
	e.Drive = timing.TwoCamwheels(25, 50)
	e.InletVernier = timing.Vernier{Wheel: 11, Cam: 12}
	e.InletFixing, e.ExhaustFixing = timing.OnePiece, timing.OnePiece
	opt := timing.Options{Near: units.CrankDegrees(0.1)}
	moves, _ := timing.MovesOf(e, opt)
	plan, _ := timing.NewPlan(moves, opt)
	best := plan.Best(-7*units.CrankDegree, 0)
	fmt.Println(best.Text)
	fmt.Println("leaves", best.InletLeft.In(units.CrankDegree, 3))
	// Output:
	// move the inlet camwheel 2 teeth earlier; move the inlet vernier 4 holes later
	// leaves -0.018° crank
}

// What can be done with teeth alone, and with more work.
func ExamplePlan_Menu() {
	moves, _ := timing.MovesOf(engine(), timing.Options{})
	plan, _ := timing.NewPlan(moves, timing.Options{})
	for _, r := range plan.Menu(-20*units.CrankDegree, 0) {
		fmt.Println(r.Work.In(units.Hour, 0), r.InletLeft, r.Text)
	}
	// Output:
	// 3 h 0° crank turn the inlet cam on its wheel 10.0° cam (20.0° crank) earlier
	// 1 h -5° crank move the inlet camwheel one tooth earlier
	// 0 h -20° crank leave the cams as they are
}

func ExampleMovesOf() {
	e := engine()
	e.Drive = timing.OneCamwheel(24, 48)
	e.Keyways = 5
	e.InletFixing = timing.OnePiece
	moves, _ := timing.MovesOf(e, timing.Options{})
	for _, m := range moves {
		fmt.Println(m.Text, "one", m.Unit, m.Step)
	}
	// Output:
	// camwheel one tooth 15° crank
	// pinion one keyway 3° crank
}
