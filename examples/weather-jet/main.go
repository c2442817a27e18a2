// Weather-jet says what a change of weather or height does to a mixture that was
// right, and what jet would put it back.
package main

import (
	"flag"

	"example.com/benchbook/carburation/air"
	"example.com/benchbook/examples/internal/slip"
	"example.com/benchbook/refdata"
	"example.com/benchbook/units"
)

// day declares the flags of one day's weather.
func day(name, pressure, temperature, humidity string) func() air.Weather {
	p := flag.String(name+"-pressure", pressure, "pressure of the place itself, not reduced to sea level")
	t := flag.String(name+"-temperature", temperature, "temperature of the air")
	h := flag.String(name+"-humidity", humidity, "relative humidity")
	return func() air.Weather {
		return air.Weather{Pressure: slip.Need(units.ParsePressure(*p)), Temperature: slip.Need(units.ParseTemperature(*t)), Humidity: slip.Need(units.ParseRatio(*h))}
	}
}

func main() {
	then := day("then", "1020 hPa", "4 °C", "80 %")
	now := day("now", "905 hPa", "26 °C", "50 %")
	slip.Flags()

	change := slip.Need(air.Compare(then(), now(), air.Options{}))
	moist := slip.Need(air.Moist(now(), air.Options{}))
	height := slip.Need(air.DensityHeight(moist.Density))
	slip.Certain("the air now is %.1f %% of what it was by weight of what burns", 100*change.DryDensity)
	slip.Certain("it is as thin as the standard air at %s", height.In(units.Metre, 0))
	switch {
	case change.Mixture < 0.98:
		slip.Say("likely", "rich: air to fuel is %.1f %% of what it was, jets left alone", 100*change.Mixture)
	case change.Mixture > 1.02:
		slip.Say("likely", "weak: air to fuel is %.1f %% of what it was, jets left alone", 100*change.Mixture)
	default:
		slip.Say("likely", "no difference you would find: air to fuel is %.1f %% of what it was", 100*change.Mixture)
	}
	slip.Say("do", "for the same mixture a flow mark x %.3f, or a jet bore x %.3f", change.FlowFactor, change.BoreFactor)
	slip.Say("unknown", "whether it was right before: read the plugs or a lambda meter")
	slip.Say("care", "a jet put in for a hot day is too weak on a cold one: change it back")
	slip.Basis(refdata.Basis{Cautions: []refdata.Caution{refdata.WeakMixture, refdata.PetrolVapour, refdata.DeferToManual}})
}
