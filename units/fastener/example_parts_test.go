package fastener_test

import (
	"fmt"

	"example.com/benchbook/units"
	"example.com/benchbook/units/fastener"
	"example.com/benchbook/units/measure"
)

// What a thread is, from its name.
func ExampleThread() {
	t := fastener.MustParse("9/16-20 cycle 60°").WithHand(fastener.Left)
	fmt.Println(t, "- key", t.Key())
	fmt.Printf("%v, %s over the threads, %.0f to the inch, flanks at %v\n", t.System(), t.Major().In(units.Inch, 4), t.ThreadsPerInch(), t.Form().Included())
	if t.Hand() == fastener.Left {
		undo, _ := t.Turn(fastener.Undo)
		fmt.Println("left hand: undo it", undo)
	}
	// Output:
	// 9/16-20 cycle 60° left-hand - key 9/16-20-cycle-60
	// cycle, 0.5625 in over the threads, 20 to the inch, flanks at 60°
	// left hand: undo it clockwise
}

// A stud with no gauge to hand: gaps counted along a rule, diameter by caliper.
// The readings are invented.
func ExampleCount() {
	id, err := fastener.Identify(fastener.Readings{
		Major: measure.MustRead("7.9 mm", measure.Caliper()),
		Count: fastener.Count{Pitches: measure.Exact(units.Value(20)), Over: measure.MustRead("19.5 mm ± 0.2", measure.Rule())},
	}, fastener.IdentifyOptions{})
	if err != nil {
		fmt.Println(err)
		return
	}
	if id.Thread().IsZero() {
		fmt.Println(id.Reason)
	}
	for _, c := range id.Candidates[:2] {
		var likely fastener.Candidate = c
		fmt.Println(likely.Odds.Percent, "%", likely.Thread)
	}
	// Output:
	// 50 % 5/16-26 cycle
	// 49 % 5/16-26 brass
}

// How much the state of the threads does to one torque. Steel of no known grade
// gets none.
func ExampleFriction() {
	t := fastener.MustParse("M8")
	steel, err := fastener.Class("8.8", t)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(steel.Known(), fastener.Strength{}.Known())
	for _, f := range []fastener.Friction{fastener.Dry(), fastener.Oiled(), fastener.Greased()} {
		pull, err := fastener.TensionFor(fastener.Joint{Thread: t, Strength: steel, Friction: f}, 20*units.NewtonMetre)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%-8s %.0f to %.0f kN\n", f.Name, pull.Low.Kilonewtons(), pull.High.Kilonewtons())
	}
	// Output:
	// true false
	// dry      8 to 13 kN
	// oiled    12 to 21 kN
	// greased  18 to 35 kN
}

// How far a stud has to go into what: by custom, or for want of one in brass, so
// that the stud breaks before the thread strips.
func ExampleMaterial() {
	t := fastener.MustParse("3/8-26 cycle")
	for _, m := range []fastener.Material{fastener.MildSteel(), fastener.CastIron(), fastener.LightAlloy()} {
		usual, err := fastener.UsualEngagement(t, m)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%-11s %s\n", m.Name, usual.In(units.Millimetre, 1))
	}
	brass := fastener.BrassStock()
	s, err := fastener.Strip(fastener.Engaged{Thread: t, Length: t.Major(), BoltTensile: 600 * units.Megapascal, Hole: brass})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%-11s %.0f to %.0f mm\n", brass.Name, s.Least.Low.Millimetres(), s.Least.High.Millimetres())
	// Output:
	// mild steel  14.3 mm
	// cast iron   14.3 mm
	// light alloy 20.6 mm
	// brass       7 to 9 mm
}

// A bolt with a foreign nut, said in a sentence.
func ExampleMating_Text() {
	m, err := fastener.Mate(fastener.MustParse("1/4 BSF"), fastener.MustParse("1/4-26 cycle"), 8*units.Millimetre, fastener.MateOptions{})
	fmt.Println(m.Text(), err)
	// Output: a 1/4 BSF bolt in a 1/4-26 cycle nut screws in but holds weakly: flanks differ by 5.0°: they bear on a line, not a face; the bolt has 94 % of the section that belongs there <nil>
}

// Which spanner a bolt takes depends on the series its head was made to.
func ExampleHexSeries() {
	choice, err := fastener.Hexagons(fastener.MustParse("5/16 BSF"), fastener.HexOptions{})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, h := range choice.Hexagons {
		var series fastener.HexSeries = h.Series
		fmt.Printf("%v: %s across flats, spanner %s\n", series, h.Flats.In(units.Inch, 3), h.Spanner)
	}
	// Output:
	// small Whitworth (BS): 0.525 in across flats, spanner 1/4 W, 5/16 BS
	// large Whitworth: 0.600 in across flats, spanner 5/16 W, 3/8 BS
}
