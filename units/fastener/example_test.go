package fastener_test

import (
	"fmt"

	"example.com/benchbook/units"
	"example.com/benchbook/units/fastener"
	"example.com/benchbook/units/measure"
)

// An invented bolt: 6.30 mm over the crests, and the 26 tpi leaf fits.
func ExampleIdentify() {
	pitch, err := fastener.ReadPitch("26 tpi", measure.PitchGauge())
	if err != nil {
		fmt.Println(err)
		return
	}
	id, err := fastener.Identify(fastener.Readings{
		Major: measure.MustRead("6.30 mm", measure.Caliper()),
		Pitch: pitch,
		Part:  fastener.Bolt,
	}, fastener.IdentifyOptions{})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, o := range id.Causes.Odds[:2] {
		fmt.Printf("%s %d %%, %s\n", o.Text, o.Percent, o.Words())
	}
	fmt.Println("cannot be told apart:", len(id.Alike))
	fmt.Println("next:", id.NextReadings[0].Text)
	// Output:
	// 1/4 BSF 49 %, about even
	// 1/4-26 cycle 48 %, about even
	// cannot be told apart: 3
	// next: flank angle, with a 55° and a 60° gauge held to the light
}

func ExampleParse() {
	t, err := fastener.Parse("9/16-20 cycle 60° LH")
	fmt.Println(t, t.Form(), err)
	_, err = fastener.Parse("1/2 cycle")
	fmt.Println(err)
	// Output:
	// 9/16-20 cycle 60° left-hand cycle 60° <nil>
	// 1/2 cycle: one of 1/2-26 cycle, 1/2-20 cycle 60°, 1/2-20 cycle 55°, 1/2-24 cycle
}

func ExampleParsePitch() {
	p, err := fastener.ParsePitch("20 tpi")
	fmt.Println(p, err)
	// Output: 1.27 mm <nil>
}

func ExampleReadPitch() {
	p, err := fastener.ReadPitch("26 tpi", measure.PitchGauge())
	fmt.Println(p, err)
	// Output: 0.977 ± 0.005 mm <nil>
}

func ExampleThread_Geometry() {
	// BS 84: 1/2 in, 12 threads, prints 0.4466 and 0.3932 in
	g, err := fastener.MustParse("1/2 BSW").Geometry()
	fmt.Println(g.Effective.In(units.Inch, 4), g.MinorBolt.In(units.Inch, 4), err)
	// Output: 0.4466 in 0.3932 in <nil>
}

func ExampleThread_Turn() {
	t := fastener.MustParse("9/16-20 cycle 60°")
	_, why := t.Turn(fastener.Undo)
	fmt.Println(why.Code)
	way, _ := t.WithHand(fastener.Left).Turn(fastener.Undo)
	fmt.Println(way)
	// Output:
	// hand-unknown
	// clockwise
}

func ExampleTappingDrill() {
	t := fastener.MustParse("1/4 BSF")
	d, err := fastener.TappingDrill(t, units.Percents(80), fastener.ChartDepth, fastener.MetricDrills())
	fmt.Printf("%s gives %.0f %%, %v\n", d.Choice.Drill.Name, d.Choice.Engagement.Percents(), err)
	// Output: 5.4 mm gives 76 %, <nil>
}

// Machinery's Handbook, 31st ed., p. 2155 prints 69 % for 2-56 in a hole of
// 0.0700 in.
func ExampleEngagement() {
	e, err := fastener.Engagement(fastener.MustParse("2-56 UNC"), units.Inches(0.0700), fastener.ChartDepth)
	fmt.Printf("%.0f %% %v\n", e.Percents(), err)
	// Output: 69 % <nil>
}

func ExampleTappingHole() {
	h, err := fastener.TappingHole(fastener.MustParse("3/8-26 cycle"), units.Percents(75), fastener.ChartDepth)
	fmt.Println(h.In(units.Millimetre, 2), err)
	// Output: 8.74 mm <nil>
}

func ExampleHexagons() {
	h, err := fastener.Hexagons(fastener.MustParse("1/4 BSW"), fastener.HexOptions{Era: fastener.BeforeWar})
	fmt.Println(h.Hexagons[0].Spanner, h.Hexagons[0].Flats.In(units.Inch, 3), err)
	// Output: 1/4 W, 5/16 BS 0.525 in <nil>
}

func ExampleSpannersFor() {
	set := []fastener.Spanner{{Marking: "7/16 AF", Width: units.Inches(7.0 / 16)}, {Marking: "12 mm", Width: 12 * units.Millimetre}}
	f, err := fastener.SpannersFor(measure.MustRead("0.445 in", measure.Caliper()), set, fastener.FitOptions{})
	for _, s := range f.Fits {
		fmt.Println(s.Spanner.Marking, "-", s.Grip)
	}
	fmt.Println(f.Reason, err)
	// Output:
	// 12 mm - will round the corners
	// 7/16 AF - does not go on
	// no spanner of this set is fit for these flats <nil>
}
