// Other-fuel says what a change of fuel does to a mixture that was right, and what
// main jet would put it back.
package main

import (
	"flag"
	"strings"

	"example.com/benchbook/carburation/fuel"
	"example.com/benchbook/examples/internal/slip"
	"example.com/benchbook/refdata"
	"example.com/benchbook/units"
)

func main() {
	var names []string
	for f := range fuel.All() {
		names = append(names, f.Name)
	}
	from := flag.String("from", fuel.Petrol().Name, "the fuel it ran well on: "+strings.Join(names, ", "))
	to := flag.String("to", "petrol E10", "the fuel it is to run on")
	at := flag.String("at", "20 °C", "temperature of the fuel")
	slip.Flags()

	old, next := slip.Need(fuel.Named(*from)), slip.Need(fuel.Named(*to))
	swap := slip.Need(fuel.JetFactor(old, next, slip.Need(units.ParseTemperature(*at))))
	slip.Certain("with the jets left alone lambda becomes %.1f %% of what it was", 100*swap.Mixture)
	switch {
	case swap.Mixture > 1.015:
		slip.Say("likely", "weaker: it runs hotter, and may spit back")
	case swap.Mixture < 0.985:
		slip.Say("likely", "richer")
	default:
		slip.Say("likely", "no difference you would find")
	}
	slip.Say("do", "for the same lambda a flow mark x %.3f, or a jet bore x %.3f", swap.FlowFactor, swap.BoreFactor)
	slip.Say("unknown", "knock, and what the fuel does to old hoses, cork and tank sealer: not looked at here")
	slip.Basis(refdata.Basis{Cautions: []refdata.Caution{refdata.WeakMixture, refdata.PetrolVapour, refdata.DeferToManual}})
}
