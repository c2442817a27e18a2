// Unmarked-bolt names the thread of a bolt from the box, and what to do with it:
// drill, spanner, what must never be screwed into its hole.
package main

import (
	"flag"

	"example.com/benchbook/examples/internal/slip"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fastener"
	"example.com/benchbook/units/measure"
)

func main() {
	outside := flag.String("outside", "7.88 mm", "diameter over the crests, by caliper")
	pitch := flag.String("pitch", "26 tpi", "pitch by thread gauge: \"26 tpi\" or \"1 mm\"")
	flank := flag.String("flank", "", "angle between the flanks, if it was read: \"60°\"")
	slip.Flags()

	r := fastener.Readings{
		Major: slip.Need(measure.Read(*outside, measure.Caliper())),
		Pitch: slip.Need(fastener.ReadPitch(*pitch, measure.PitchGauge())),
		Flank: slip.Need(measure.Read(*flank, measure.Protractor())),
		Part:  fastener.Bolt,
	}
	id := slip.Need(fastener.Identify(r, fastener.IdentifyOptions{}))
	slip.Odds(id.Causes, id.NextReadings)
	if id.Reason.Given() {
		slip.Say("unknown", "%v", id.Reason)
	}
	if t := id.Thread(); !t.IsZero() {
		tap := slip.Need(fastener.TappingDrill(t, units.Percents(75), fastener.ChartDepth, fastener.MetricDrills()))
		hex := slip.Need(fastener.Hexagons(t, fastener.HexOptions{}))
		slip.Say("if so", "as %v: drill %s to tap a new hole", t, tap.Choice.Drill.Name)
		for _, h := range hex.Hexagons {
			slip.Say("", "spanner %s, %s across flats (%v)", h.Spanner, h.Flats.In(units.Millimetre, 1), h.Series)
		}
	}
	slip.Basis(id.Basis)
}
