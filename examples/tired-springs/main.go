// Tired-springs says which springs of a set do not belong with the rest, all
// weighed at one length, and how stiff the wire and coils say they should be.
package main

import (
	"flag"
	"strings"

	"example.com/benchbook/examples/internal/slip"
	"example.com/benchbook/transmission/spring"
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

func main() {
	loads := flag.String("loads", "201 N, 203 N, 199 N, 178 N", "what each spring pushed with at that length, by spring balance")
	wire := flag.String("wire", "2.64 mm", "wire diameter")
	outside := flag.String("outside", "17.8 mm", "diameter over the coils")
	coils := flag.String("coils", "9.5", "all coils, ends included")
	free := flag.String("free", "46 mm", "free length of a new one")
	at := flag.String("at", "33.8 mm", "length they were weighed at")
	slip.Flags()

	var weighed []measure.Reading[units.Force]
	for text := range strings.SplitSeq(*loads, ",") {
		weighed = append(weighed, slip.Need(measure.Read(strings.TrimSpace(text), measure.SpringBalance())))
	}
	set := slip.Need(spring.Even(weighed, spring.EvenOptions{}))
	new := slip.Need(spring.NewHelical(spring.HelicalSpec{
		Wire: slip.Need(units.ParseLength(*wire)), Outside: slip.Need(units.ParseLength(*outside)), Total: slip.Need(units.ParseRatio(*coils)).Value(),
		Free: slip.Need(units.ParseLength(*free)), Ends: spring.SquaredGround,
	}))
	state := new.At(slip.Need(units.ParseLength(*at)))
	if state.Reason.Given() {
		slip.Say("unknown", "what a new one pushes with there: %v", state.Reason)
	} else {
		slip.Certain("by wire and coils a new one has %s and pushes with %s at %s", new.Rate().In(units.NewtonPerMillimetre, 1), state.Load.In(units.Newton, 0), *at)
	}
	slip.Certain("the set differs by %.0f %% from strongest to weakest", 100*set.Spread)
	for _, i := range set.Odd {
		slip.Say("likely", "spring %d, %v, does not belong with the rest: %+.0f %%", i+1, weighed[i], 100*set.Each[i].Off)
	}
	if set.Even {
		slip.Say("likely", "they are a set")
	}
	slip.Basis(set.Basis)
}
