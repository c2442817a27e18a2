package main

import (
	"example.com/benchbook/carburation/air"
	"example.com/benchbook/carburation/fuel"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fastener"
)

// furtherCases ask what is asked less often.
func furtherCases(b *book) {
	furtherTables(b)
}

func furtherTables(b *book) {
	w, ratio, err := air.LogLaw{}.At(units.Metres(1500))
	b.add("carburation/air.LogLaw.At", in{"height": units.Metres(1500)}, of(map[string]any{"weather": w, "density_ratio": ratio}, err))
	day := air.Weather{Pressure: units.Hectopascals(1010), Temperature: units.Celsius(28), Humidity: units.Percents(60)}
	b.add("carburation/air.Weather.At", in{"weather": day}, of(day.At()))
	for f := range fuel.All() {
		b.add("carburation/fuel.Fuel.LatentHeatPerAir", in{"fuel": words(f.Name)}, only(f.LatentHeatPerAir()))
	}
	shares := fuel.Composition{Carbon: units.Percents(86), Hydrogen: units.Percents(14)}
	b.add("carburation/fuel.Composition.Formula", in{"shares": shares}, of(shares.Formula(fuel.Convention{})))
	for _, name := range []string{"1/4 BSF", "M8"} {
		t := fastener.MustParse(name)
		limits, err := t.Limits(mm(8))
		b.add("units/fastener.Thread.Limits", in{"thread": words(name), "engaged": mm(8)}, of(limits, err))
	}
	s, err := fastener.Class("8.8", fastener.MustParse("M8"))
	b.add("units/fastener.Class", in{"class": words("8.8"), "thread": words("M8")}, of(map[string]any{"proof": s.Proof, "yield": s.Yield, "tensile": s.Tensile}, err))
	s, err = fastener.Grade("5", fastener.MustParse("3/8-24 UNF"))
	b.add("units/fastener.Grade", in{"grade": words("5"), "thread": words("3/8-24 UNF")}, of(map[string]any{"proof": s.Proof, "yield": s.Yield, "tensile": s.Tensile}, err))
	size, over, err := fastener.SWG.Nearest(mm(3.2))
	b.add("units/fastener.Gauge.Nearest", in{"gauge": words(fastener.SWG.String()), "diameter": mm(3.2)}, of(map[string]any{"mark": words(size.Mark), "over": over}, err))
}
