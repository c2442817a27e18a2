package checks_test

import (
	"fmt"

	"example.com/benchbook/refdata/checks"
	"example.com/benchbook/timing/crank"
	"example.com/benchbook/units"
)

// One case of a textbook run through this library: feed what is given, compare
// what comes out.
func Example() {
	c, _ := checks.ByID("kates-4-3")
	stroke, err := checks.Get[units.Length](c, "stroke")
	if err != nil {
		fmt.Println(err)
	}
	strokes, _ := checks.Number(c, "strokes_per_min")
	v, err := crank.Slider{Stroke: stroke, Rod: stroke.Times(2)}.MeanSpeed(units.RevolutionsPerMinute(strokes / 2))
	if err != nil {
		fmt.Println(err)
	}
	fmt.Println(c.Source.Title, "-", c.Source.Clause)
	fmt.Println(v.In(units.FootPerMinute, 0), checks.Compare(c, "mean_speed", v) == nil)
	// Output:
	// Kates, Diesel and High-Compression Gas Engines (edition not stated) - Example 3, p. 63
	// 1200 ft/min true
}

func ExampleByID() {
	c, ok := checks.ByID("ba-2")
	fmt.Println(ok, c.Topic, c.Kind, c.Expected["major"].Value, c.Expected["major"].Unit)
	// Output: true thread-form published 4.7 mm
}

// What a case of one topic looks like.
func ExampleByTopic() {
	for c := range checks.ByTopic("standard-atmosphere") {
		p, _ := checks.Get[units.Pressure](c, "p")
		fmt.Printf("%s: %.1f hPa\n", c.ID, p.Hectopascals())
	}
	// Output:
	// isa-500: 954.6 hPa
	// isa-1000: 898.7 hPa
	// isa-2000: 795.0 hPa
	// isa-2500: 746.8 hPa
	// isa-4000: 616.4 hPa
	// isa-geometric-2000: 795.0 hPa
}

func ExampleAll() {
	spread := map[checks.Kind]bool{}
	for c := range checks.All() {
		spread[c.Kind] = true
	}
	fmt.Println(spread[checks.Published], spread[checks.Computed])
	// Output: true true
}

func ExampleTopics() {
	fmt.Println(checks.Topics()[:3])
	// Output: [air-cleaner air-fuel-ratio altitude-mixture]
}

func ExampleGetPosition() {
	c, _ := checks.ByID("rajput-5-1")
	p, err := checks.GetPosition(c, "spark")
	fmt.Println(p, err)
	// Output: 20° BTDC <nil>
}

func ExampleNumbers() {
	c, _ := checks.ByID("chain-11")
	z, err := checks.Numbers(c, "z")
	fmt.Println(z, err)
	// Output: [17 25 38 57 76 114] <nil>
}

// An answer outside the tolerance is a fault that says by how much.
func ExampleCompare() {
	c, _ := checks.ByID("ba-2")
	fmt.Println(checks.Compare(c, "effective", 4.2*units.Millimetre))
	// Output: ba-2.effective: 4.2: the source has 4.215 ± 1e-09 mm
}

func ExampleCase_CompareNumbers() {
	c, _ := checks.ByID("hunting-11x31")
	fmt.Println(c.CompareNumbers("gear_turns", 11))
	// Output: <nil>
}
