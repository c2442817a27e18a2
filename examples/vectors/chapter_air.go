package main

import (
	"example.com/benchbook/carburation/air"
	"example.com/benchbook/carburation/fuel"
	"example.com/benchbook/units"
)

func airCases(b *book) {
	for _, h := range []float64{-100, 0, 500, 1000, 2500, 90000} {
		b.add("carburation/air.Standard", in{"height": units.Metres(h)}, of(air.Standard(units.Metres(h))))
		b.add("carburation/air.StandardGeometric", in{"height": units.Metres(h)}, of(air.StandardGeometric(units.Metres(h))))
	}
	for _, p := range []float64{1013.25, 950, 850} {
		b.loosely(1e-8, "carburation/air.PressureHeight", in{"pressure": units.Hectopascals(p)}, of(air.PressureHeight(units.Hectopascals(p))))
	}
	b.loosely(1e-8, "carburation/air.DensityHeight", in{"density": units.KilogramsPerCubicMetre(1.15)}, of(air.DensityHeight(units.KilogramsPerCubicMetre(1.15))))
	b.add("carburation/air.Geopotential", in{"height": units.Metres(2000)}, of(air.Geopotential(units.Metres(2000))))
	b.add("carburation/air.Geometric", in{"height": units.Metres(2000)}, of(air.Geometric(units.Metres(2000))))
	winter := air.Weather{Pressure: units.Hectopascals(1020), Temperature: units.Celsius(2), Humidity: units.Percents(80)}
	summer := air.Weather{Pressure: units.Hectopascals(1010), Temperature: units.Celsius(28), Humidity: units.Percents(60)}
	hill := air.Weather{Pressure: units.Hectopascals(900), Temperature: units.Celsius(12)}
	for _, w := range []air.Weather{winter, summer, hill} {
		b.add("carburation/air.Moist", in{"weather": w}, of(air.Moist(w, air.Options{})))
		b.add("carburation/air.MoistSimple", in{"weather": w}, of(air.MoistSimple(w)))
		b.add("carburation/air.Compare", in{"then": winter, "now": w}, of(air.Compare(winter, w, air.Options{})))
		for _, r := range []air.Rule{air.SAEJ1349, air.DIN70020, air.ISO1585, air.SAEJ607} {
			b.add("carburation/air.PowerFactor", in{"rule": words(r), "weather": w}, of(air.PowerFactor(r, w)))
		}
	}
	for _, t := range []float64{1, 20, 40} {
		b.add("carburation/air.SaturationOverWater", in{"temperature": units.Celsius(t)}, of(air.SaturationOverWater(units.Celsius(t))))
		b.add("carburation/air.SaturationCIPM", in{"temperature": units.Celsius(t)}, of(air.SaturationCIPM(units.Celsius(t))))
	}
	b.add("carburation/air.SaturationOverIce", in{"temperature": units.Celsius(-10)}, of(air.SaturationOverIce(units.Celsius(-10))))
	from, to := air.Site{Pressure: units.Kilopascals(100), Temperature: units.Celsius(20)}, air.Site{Pressure: units.Kilopascals(88), Temperature: units.Celsius(30)}
	b.add("carburation/air.SitePower", in{"power": units.Kilowatts(14), "efficiency": units.Percents(85), "reference": from, "site": to}, of(air.SitePower(units.Kilowatts(14), units.Percents(85), from, to, air.SiteOptions{})))
}

func fuelCases(b *book) {
	for _, text := range []string{"C8H18", "CH1.87", "CH3OH", "C2H5OH", "Xy"} {
		f, err := fuel.ParseFormula(text)
		b.add("carburation/fuel.ParseFormula", in{"text": words(text)}, of(f, err))
		if err != nil {
			continue
		}
		b.add("carburation/fuel.Stoichiometric", in{"formula": words(text)}, of(fuel.Stoichiometric(f, fuel.Convention{})))
		b.add("carburation/fuel.Formula.MolarMass", in{"formula": words(text)}, only(f.MolarMass(fuel.Convention{})))
		for _, lambda := range []float64{0.87, 1, 1.1} {
			b.add("carburation/fuel.Burn", in{"formula": words(text), "lambda": units.Value(lambda)}, of(fuel.Burn(f, units.Value(lambda), fuel.BurnOptions{}, fuel.Convention{})))
		}
		for _, co := range []float64{1, 4} {
			b.loosely(loose, "carburation/fuel.LambdaFromCO", in{"formula": words(text), "dry_co": units.Percents(co)}, of(fuel.LambdaFromCO(f, units.Percents(co), fuel.BurnOptions{}, fuel.Convention{})))
		}
	}
	petrol := fuel.Petrol()
	for f := range fuel.All() {
		b.add("carburation/fuel.JetFactor", in{"from": words(petrol.Name), "to": words(f.Name), "at": units.Celsius(15)}, of(fuel.JetFactor(petrol, f, units.Celsius(15))))
		b.add("carburation/fuel.Fuel.DensityAt", in{"fuel": words(f.Name), "at": units.Celsius(25)}, of(f.DensityAt(units.Celsius(25))))
		b.add("carburation/fuel.Fuel.HeatPerAir", in{"fuel": words(f.Name)}, only(f.HeatPerAir()))
	}
	b.add("carburation/fuel.PetroleumExpansion", in{"density_at_15": units.KilogramsPerCubicMetre(745)}, of(fuel.PetroleumExpansion(units.KilogramsPerCubicMetre(745))))
	b.add("carburation/fuel.NetFromGross", in{"gross": units.MegajoulesPerKilogram(47), "hydrogen": units.Percents(14), "latent": units.KilojoulesPerKilogram(2442)},
		of(fuel.NetFromGross(units.MegajoulesPerKilogram(47), units.Percents(14), units.KilojoulesPerKilogram(2442))))
}
