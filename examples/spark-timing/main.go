// Spark-timing turns the book's piston travel before TDC into degrees, holds the
// spark that was read against it, and says what is out.
package main

import (
	"flag"

	"example.com/benchbook/examples/internal/slip"
	"example.com/benchbook/timing/crank"
	"example.com/benchbook/timing/ignition"
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

func main() {
	book := flag.String("book", "7/16 in", "piston travel before TDC at full advance, as the book has it")
	read := flag.String("read", "31 BTDC", "where the points just part on full advance, by the degree disc")
	gap := flag.String("gap", "0.42 mm", "points gap, by feeler; empty if not read")
	wanted := flag.String("book-gap", "0.30 mm", "points gap, as the book has it")
	stroke := flag.String("stroke", "83 mm", "stroke")
	rod := flag.String("rod", "165 mm", "connecting rod between centres")
	slip.Flags()

	gauges := ignition.Gauges{Slider: crank.Slider{Stroke: slip.Need(units.ParseLength(*stroke)), Rod: slip.Need(units.ParseLength(*rod))}}
	full := ignition.Where{Travel: slip.Need(measure.Read(*book, measure.Nominal[units.Length](0.01)))}
	place := slip.Need(full.Locate(gauges))
	slip.Certain("%s of travel is %v", *book, place.At)

	r := slip.Need(ignition.Diagnose(ignition.Input{
		Spec: ignition.Spec{Full: full, Gauges: gauges, Gap: slip.Need(measure.Read(*wanted, measure.Nominal[units.Length](0.1)))},
		Read: ignition.Readings{
			Advanced: ignition.Where{At: slip.Need(measure.ReadPosition(*read, measure.DegreeDisc()))},
			Gap:      slip.Need(measure.Read(*gap, measure.FeelerGauge())),
		},
	}, ignition.Options{}))
	slip.Certain("the spark is early by %v; below zero is late", r.Advanced.Early)
	if r.NoAnswer.Given() {
		slip.Say("unknown", "%v", r.NoAnswer)
	}
	slip.Odds(r.Causes, r.NextReadings)
	if len(r.Remedies) > 0 {
		slip.Say("do", "%s", r.Remedies[0].Text)
	}
	slip.Basis(r.Basis)
}
