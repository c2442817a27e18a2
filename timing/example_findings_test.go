package timing_test

import (
	"fmt"
	"math"

	"example.com/benchbook/timing"
	"example.com/benchbook/timing/crank"
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// The same readings, weighed by someone who knows this engine: its cams are
// pinned, so they do not slip; wheels are often meshed wrongly; its owner finds
// top dead centre better than most, and misreads nothing.
func ExampleOptions() {
	r, err := timing.ReadEvents("10 BTDC", "80 ABDC", "65 BBDC", "25 ATDC")
	if err != nil {
		fmt.Println(err)
		return
	}
	in := timing.Input{Engine: engine(), Readings: r}
	for _, opt := range []timing.Options{{}, {
		Priors:  timing.Priors{Wheel: 0.3, Slip: -1},
		Widths:  timing.Widths{TDCByEye: units.CrankDegrees(0.7)},
		Misread: timing.Misread{Chance: -1},
		Work:    timing.Work{Tooth: 2 * units.Hour},
	}} {
		result, err := timing.Diagnose(in, opt)
		if err != nil {
			fmt.Println(err)
			return
		}
		_, slips := result.Causes.Of("inlet-slip")
		fmt.Println(result.Explained[0].Text, "- a slip weighed:", slips)
		fmt.Println("  mended in", result.Remedies[0].Work.In(units.Hour, 0))
	}
	// Output:
	// inlet camwheel one tooth late - a slip weighed: true
	//   mended in 1 h
	// inlet camwheel one tooth late - a slip weighed: false
	//   mended in 2 h
}

// Does the leading cause explain the readings, or is it only the least bad?
func ExampleExplanation() {
	r, err := timing.ReadEvents("10 BTDC", "80 ABDC", "65 BBDC", "25 ATDC")
	if err != nil {
		fmt.Println(err)
		return
	}
	result, err := timing.Diagnose(timing.Input{Engine: engine(), Readings: r}, timing.Options{})
	if err != nil {
		fmt.Println(err)
		return
	}
	lead := result.Explained[0]
	fmt.Println(lead.Text)
	fmt.Println("inlet then truly stands", lead.Inlet, "- exhaust", lead.Exhaust)
	fmt.Printf("chi-squared %.1f of %d readings; fits: %v\n", lead.ChiSquared, lead.Readings, lead.Fits())
	// Output:
	// inlet camwheel one tooth late
	// inlet then truly stands -15° crank - exhaust 0° crank
	// chi-squared 0.0 of 4 readings; fits: true
}

// Another cam is known to fit this engine: is that what opens so early and shuts
// so late? The marks were looked at. Cam, marks and readings are invented.
func ExampleRival() {
	e := engine()
	longer, err := timing.ReadLobe("40 BTDC", "80 ABDC")
	if err != nil {
		fmt.Println(err)
		return
	}
	e.Rivals = []timing.Rival{{Name: "sports", Cam: timing.Inlet, Lobe: longer}}
	r, err := timing.ReadEvents("39 BTDC", "79 ABDC", "65 BBDC", "25 ATDC")
	if err != nil {
		fmt.Println(err)
		return
	}
	r.MarksAlign = timing.Yes
	ranking, err := timing.Causes(timing.Input{Engine: e, Readings: r}, timing.Options{})
	fmt.Println(ranking.Leader().Text, "-", ranking.Leader().Words(), err)
	// Output: inlet cam is the sports - very likely <nil>
}

// A compression test beside the events: low, and better for oil in the bore.
func ExampleCompression() {
	e := engine()
	e.Cylinder = crank.Cylinder{
		Bore:      78 * units.Millimetre,
		Slider:    crank.Slider{Stroke: 83 * units.Millimetre, Rod: 150 * units.Millimetre},
		Clearance: units.CubicCentimetres(70),
	}
	r, err := timing.ReadEvents("25 BTDC", "65 ABDC", "65 BBDC", "25 ATDC")
	if err != nil {
		fmt.Println(err)
		return
	}
	r.CompressionDry = measure.MustRead("70 psi", measure.CompressionGauge())
	r.CompressionWet = measure.MustRead("105 psi", measure.CompressionGauge())
	result, err := timing.Diagnose(timing.Input{Engine: e, Readings: r}, timing.Options{})
	if err != nil {
		fmt.Println(err)
		return
	}
	c := result.Compression
	fmt.Printf("sound: %.0f to %.0f psi\n", c.Expected.Low.PoundsForcePerSquareInch(), c.Expected.High.PoundsForcePerSquareInch())
	fmt.Println(c.States.Leader().Text, "-", c.States.Leader().Words())
	// Output:
	// sound: 90 to 116 psi
	// rings or bore leak: oil brings the pressure up - as good as certain
}

// Shims behind a helical camwheel move the cam by less than a tooth.
func ExampleShim() {
	e := engine()
	e.InletFixing, e.ExhaustFixing = timing.OnePiece, timing.OnePiece
	e.InletShim = timing.Shim{Each: units.CrankDegrees(1.5), Most: 4}
	moves, err := timing.MovesOf(e, timing.Options{})
	if err != nil {
		fmt.Println(err)
		return
	}
	plan, err := timing.NewPlan(moves, timing.Options{})
	if err != nil {
		fmt.Println(err)
		return
	}
	best := plan.Best(5*units.CrankDegree, 0)
	for _, s := range best.Steps {
		fmt.Println(s.Text, "moves it", s.Shift)
	}
	fmt.Println("leaves", best.InletLeft)
	// Output:
	// move the inlet camwheel 3 shims later moves it -4.5° crank
	// leaves 0.5° crank
}

// Which cam an event of a sheet belongs to.
func ExampleEventName_Cam() {
	for _, line := range []string{"IVO 25 BTDC", "EVC 25 ATDC"} {
		e, err := timing.ParseEvent(line)
		if err != nil {
			fmt.Println(err)
			return
		}
		var which timing.Cam = e.Name.Cam()
		fmt.Println(e.Name, "is of the", which, "cam")
	}
	// Output:
	// inlet opens is of the inlet cam
	// exhaust closes is of the exhaust cam
}

// A made-up lobe, as any lift curve may be put in place of the usual shape:
// half a cosine, 9 mm high over 150° of the camshaft about 55° after overlap.
type halfCosine struct{}

func (halfCosine) Lift(at units.CamAngle) (units.Length, error) {
	x := math.Remainder(at.Degrees()-55, 360)
	if math.Abs(x) > 75 {
		return 0, nil
	}
	return units.Millimetres(4.5 * (1 + math.Cos(x/75*math.Pi))), nil
}

// The nearest any two parts come, with a lift curve of one's own and pockets
// measured through the plug hole. The measurements are invented.
func ExampleGaps_Worst() {
	var curve timing.LiftCurve = halfCosine{}
	head := timing.Head{
		Slider: crank.Slider{Stroke: 83 * units.Millimetre, Rod: 150 * units.Millimetre},
		Inlet:  timing.Valve{ToPiston: measure.Of(5*units.Millimetre, units.Millimetres(0.1)), Tilt: 35 * units.Degree, Curve: curve},
	}
	none := measure.Exact(0 * units.CrankDegree)
	for _, early := range []units.CrankAngle{0, 15 * units.CrankDegree, 45 * units.CrankDegree} {
		g, err := head.Gaps(engine(), measure.Exact(early), none)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Println(early, "early:", g.Inlet.Gap, g.Inlet.Room, "- worst:", g.Worst())
	}
	// Output:
	// 0° crank early: 3.31 ± 0.10 mm enough - worst: enough
	// 15° crank early: 2.03 ± 0.10 mm enough - worst: enough
	// 45° crank early: -0.75 ± 0.10 mm touches - worst: touches
}
