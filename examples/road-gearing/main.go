// Road-gearing gives the road speed of each gear and the chain that goes round
// the sprockets.
package main

import (
	"flag"
	"strings"

	"example.com/benchbook/examples/internal/slip"
	"example.com/benchbook/transmission/drive"
	"example.com/benchbook/units"
)

func main() {
	primary := flag.String("primary", "21:44", "teeth of the primary drive, engine first")
	gears := flag.String("gears", "2.92 1.86 1.31 1", "ratios of the gearbox, lowest first")
	front := flag.Int("front", 18, "teeth of the gearbox sprocket")
	rear := flag.Int("rear", 42, "teeth of the wheel's sprocket")
	tyre := flag.String("tyre", "3.50-19", "tyre of the driven wheel")
	shortest := flag.String("shortest", "570 mm", "shortest centre distance of the rear chain")
	longest := flag.String("longest", "600 mm", "longest")
	at := flag.String("at", "50 mile/h", "road speed to give engine speeds for")
	slip.Flags()

	first := slip.Need(drive.ParseRatio(*primary)) // driver to driven, so its inverse is the reduction
	rolling := slip.Need(slip.Need(drive.ParseTyre(*tyre)).Rolling())
	line := drive.Line{
		Primary: drive.Train{{Driver: int(first.Num()), Driven: int(first.Den())}},
		Box:     slip.Need(drive.BoxOf(strings.Fields(*gears)...)),
		Final:   drive.Train{{Driver: *front, Driven: *rear}},
		Rolling: rolling.Reading,
	}
	table := slip.Need(line.Table(drive.TableOptions{At: slip.Need(units.ParseSpeed(*at))}))
	for _, g := range table.Gears {
		slip.Certain("gear %s: overall %.2f to 1", g.Name, g.Overall.Float())
		slip.Say("likely", "%s at 1000 rev/min, %s at %s", g.PerThousand.Value().In(units.MilePerHour, 1), g.EngineAt.Value().In(units.RevolutionPerMinute, 0), *at)
	}
	chain := drive.Sprockets{Pitch: units.Inches(0.625), Front: *front, Rear: *rear}
	fits := slip.Need(drive.FitChain(chain, slip.Need(units.ParseLength(*shortest)), slip.Need(units.ParseLength(*longest)), drive.FitOptions{}))
	for _, f := range fits.Fits {
		slip.Certain("a 5/8 in chain of %d pitches runs at %s between centres", f.Pitches, f.Centre.In(units.Millimetre, 0))
	}
	if fits.Reason.Given() {
		slip.Say("unknown", "which chain: %v", fits.Reason)
	}
	slip.Basis(table.Basis)
}
