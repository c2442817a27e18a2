// Nearest-fraction says which inch fraction a metric caliper reading is, how much
// is left over, and which drills stand on either side of it.
package main

import (
	"flag"

	"example.com/benchbook/examples/internal/slip"
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

func main() {
	text := flag.String("reading", "14.25 mm", "what the caliper showed: \"14.25 mm\", \"9/16 in ± 2 thou\"")
	finest := flag.Int("finest", 64, "finest fraction of an inch: 8, 16, 32, 64 or 128")
	slip.Flags()

	r := slip.Need(measure.Read(*text, measure.Caliper()))
	if !r.Taken() {
		slip.Refuse(slip.Missing("reading"))
	}
	near, left, err := units.NearestFraction(r.Value(), *finest)
	if err != nil {
		slip.Refuse(err)
	}
	slip.Certain("%v is %s and %s over", r, near, left.In(units.Millimetre, 3))
	slip.Certain("in decimals %s", r.Value().In(units.Inch, 4))
	switch off := max(left, -left); {
	case off < r.U().Times(2):
		slip.Say("likely", "it was made to %s: the rest is within the reading", near)
	default:
		slip.Say("unknown", "what size it was made to: %s off is more than the reading's doubt of %s", off.In(units.Millimetre, 2), r.U())
	}
}
