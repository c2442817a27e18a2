// First-jets says where to begin with bore, main jet, slide and needle, as ranges,
// and which of the parts that are fitted lie outside.
package main

import (
	"flag"

	"example.com/benchbook/carburation"
	"example.com/benchbook/examples/internal/slip"
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

func main() {
	swept := flag.String("swept", "397 cc", "displacement of the cylinder")
	bore := flag.String("bore", "22 mm", "bore at the slide; empty if not known")
	main := flag.String("main", "110 cc/min", "main jet: \"130 cc/min\", \"1.10 mm\", \"drill 57\"; empty if not known")
	cutaway := flag.String("cutaway", "3/16 in", "height of the slide's cut; empty if not known")
	fuel := flag.String("fuel", "", "name of the fuel; petrol without alcohol if left out")
	slip.Flags()

	in := carburation.Input{
		Engine:       carburation.Engine{Displacement: slip.Need(measure.Read(*swept, measure.Nominal[units.Volume](0.005)))},
		Surroundings: carburation.Surroundings{Fuel: *fuel},
		Fitted: carburation.Fitted{
			Bore:    slip.Need(measure.Read(*bore, measure.Caliper())),
			Cutaway: slip.Need(measure.Read(*cutaway, measure.Caliper())),
		},
	}
	if *main != "" {
		in.Fitted.MainJet = slip.Need(carburation.ReadJet(*main))
	}
	s := slip.Need(carburation.Start(in, carburation.Options{}))
	slip.Say("begin", "bore %v", s.Bore.Corrected)
	slip.Say("", "main jet %v by flow mark; %v by bore", s.MainJet.Corrected, s.MainJetBore)
	slip.Say("", "cutaway %v", s.Cutaway.Corrected)
	slip.Say("", "pilot jet %v; needle in the %s", s.PilotJet.Corrected, s.Needle.Practice)
	for _, p := range s.Outside {
		slip.Say("likely", "%s: %s", measure.Odds{Share: p.Chance}.Words(), p.Text)
	}
	slip.Basis(s.Basis)
}
