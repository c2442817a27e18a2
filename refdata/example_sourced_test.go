package refdata_test

import (
	"fmt"

	"example.com/benchbook/refdata"
	"example.com/benchbook/units"
)

// first returns the first row of a table.
func first[Row refdata.Sourced, Q units.Quantity](t *refdata.Table[Row, Q]) Row {
	for row := range t.All() {
		return row
	}
	var none Row
	return none
}

// Whatever the row, it can say what it rests on: how many sources stand behind the
// first row of every kind of table, and the leading one of each trade's.
func ExampleSourced() {
	rests := map[string][]refdata.Source{
		"atmosphere":        first(refdata.StandardAtmosphere()).Sources(),
		"BA hexagon":        first(refdata.BAHexagons()).Sources(),
		"backlash":          first(refdata.GearBacklashes()).Sources(),
		"chain":             first(refdata.Chains()).Sources(),
		"dial gauge":        first(refdata.DialGauges()).Sources(),
		"disc spring":       first(refdata.DiscSprings()).Sources(),
		"exhaust gas":       first(refdata.ExhaustGases()).Sources(),
		"friction":          first(refdata.FrictionMaterials()).Sources(),
		"fuel":              first(refdata.Fuels()).Sources(),
		"gear module":       first(refdata.GearModules()).Sources(),
		"grade":             first(refdata.Grades()).Sources(),
		"jet coefficient":   first(refdata.JetCoefficients()).Sources(),
		"jet drill":         first(refdata.JetDrills()).Sources(),
		"least backlash":    first(refdata.LeastBacklashes()).Sources(),
		"metric drill":      first(refdata.MetricDrills()).Sources(),
		"metric hexagon":    first(refdata.MetricHexagons()).Sources(),
		"moist air":         first(refdata.MoistAirDensities()).Sources(),
		"number drill":      first(refdata.NumberDrills()).Sources(),
		"plug thread":       first(refdata.PlugThreads()).Sources(),
		"property class":    first(refdata.PropertyClasses()).Sources(),
		"slide":             first(refdata.SlideCutaways()).Sources(),
		"spring modulus":    first(refdata.SpringModuli()).Sources(),
		"spring strength":   first(refdata.SpringStrengths()).Sources(),
		"starting point":    first(refdata.StartingPoints()).Sources(),
		"thread":            first(refdata.Threads()).Sources(),
		"throttle":          first(refdata.ThrottleInfluences()).Sources(),
		"tyre":              first(refdata.Tyres()).Sources(),
		"unified hexagon":   first(refdata.UnifiedHexagons()).Sources(),
		"valve timing":      first(refdata.ValveTimings()).Sources(),
		"Whitworth hexagon": first(refdata.WhitworthHexagons()).Sources(),
		"Whitworth spanner": first(refdata.WhitworthSpanners()).Sources(),
		"wire":              first(refdata.WireGauge()).Sources(),
		"workshop limit":    first(refdata.WorkshopLimits()).Sources(),
	}
	bare := 0
	for _, sources := range rests {
		if len(sources) == 0 {
			bare++
		}
	}
	fmt.Println(len(rests), "kinds of row,", bare, "without a source")
	for _, kind := range []string{"thread", "chain", "fuel"} {
		fmt.Println(kind+":", rests[kind][0])
	}
	var row refdata.Sourced = first(refdata.Threads())
	fmt.Println(len(row.Sources()) == len(rests["thread"]))
	// Output:
	// 33 kinds of row, 0 without a source
	// thread: BSW thread geometry, threads an inch (read in a fastener dealer's page) [published]
	// chain: Standard metric roller chain, DIN 8180, DIN 8187 and BS 228, pitch, inner width, roller, mass (read in a distributor's chart) [published]
	// fuel: Mass fractions of the formula, standard atomic weights [derived]
	// true
}

// The depth of a thread, and whether the table has a figure for its drill at all.
func ExampleThread_Depth() {
	t, ok := refdata.Threads().ByName("5/16-26 cycle")
	fmt.Println(t.Depth().In(units.Millimetre, 3), ok)
	fmt.Println("table", refdata.ThreadsOf(t.System).Name(), "- area known:", t.StressArea.IsKnown(), "- source given:", t.AreaOrigin.Given())
	// Output:
	// 0.521 mm true
	// table threads_cycle - area known: true - source given: true
}

// A figure of one's own in place of the table's, and what stood in for a figure that
// was not given.
func ExampleKnown() {
	own := refdata.Range[units.Length]{High: refdata.Known(units.Millimetres(0.5))}
	fmt.Println(own, own.Given(), refdata.Range[units.Length]{}.Given())
	limit, ok := refdata.WorkshopLimits().ByName("ring-gap")
	fmt.Println(ok, limit.Fit.Given(), limit.Renew.Given())
	sheet := refdata.Basis{Assumed: []refdata.Assumption{{What: "ring gap at most", Value: own.High.String(), Status: refdata.CommonPractice}}}
	fmt.Println(sheet.Assumed[0].What, sheet.Assumed[0].Value, "-", sheet.Assumed[0].Status)
	// Output:
	// at most 0.5 mm true false
	// true true true
	// ring gap at most 0.5 mm - common practice
}
