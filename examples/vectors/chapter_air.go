package main

import (
	"example.com/benchbook/carburation/air"
	"example.com/benchbook/carburation/fuel"
	"example.com/benchbook/units"
)

func metres(x float64) units.Length       { return units.Metres(x) }
func celsius(x float64) units.Temperature { return units.Celsius(x) }

func airCases(b *book) {
	heights := each(metres(-100), metres(0), metres(500), metres(1000), metres(2500), metres(11000), metres(15000), metres(90000))
	b.ask(air.Standard, "height", heights)
	b.ask(air.StandardGeometric, "height", heights)
	b.ask(air.PressureHeight, "pressure", each(units.Hectopascals(1013.25), units.Hectopascals(950), units.Hectopascals(850), units.Hectopascals(-1)), rel(1e-8))
	b.ask(air.DensityHeight, "density", each(density(1.225), density(1.15), density(1), density(0)), rel(1e-8))
	b.ask(air.Geopotential, "height", each(metres(0), metres(2000), metres(8000), metres(-1e9)))
	b.ask(air.Geometric, "height", each(metres(0), metres(2000), metres(8000), metres(1e9)))
	b.ask(air.LogLaw.At, "law, height > weather, density_ratio", cross(each(air.LogLaw{}, air.LogLaw{Pressure: units.Bars(1), Temperature: celsius(20)}), each(metres(0), metres(1500), metres(-1e7))))
	b.ask(air.ISO2533, "", []row{{}})
	winter := air.Weather{Pressure: units.Hectopascals(1020), Temperature: celsius(2), Humidity: units.Percents(80)}
	summer := air.Weather{Pressure: units.Hectopascals(1010), Temperature: celsius(28), Humidity: units.Percents(60)}
	hill := air.Weather{Pressure: units.Hectopascals(900), Temperature: celsius(12)}
	weathers := each(winter, summer, hill, air.Weather{Pressure: units.Hectopascals(1010), Temperature: celsius(28), Humidity: units.Percents(160)})
	options := each(air.Options{}, air.Options{CO2: units.Percents(0.06)})
	b.ask(air.Moist, "weather, options", cross(weathers, options))
	b.ask(air.MoistSimple, "weather", weathers)
	b.ask(air.Compare, "then, now, options", cross(each(winter), weathers, options[:1]))
	b.ask(air.PowerFactor, "rule, weather", cross(each(air.SAEJ1349, air.DIN70020, air.ISO1585, air.SAEJ607, air.Rule("none")), weathers))
	b.ask(air.Weather.At, "weather", weathers)
	b.ask(air.Atmosphere.Weather, "atmosphere", each(air.Atmosphere{Temperature: celsius(8.5), Pressure: units.Hectopascals(898.7)}, air.Atmosphere{Temperature: celsius(15), Pressure: units.Hectopascals(1013.25)}))
	temperatures := each(celsius(1), celsius(20), celsius(40), celsius(150))
	b.ask(air.SaturationOverWater, "temperature", temperatures)
	b.ask(air.SaturationCIPM, "temperature", temperatures)
	b.ask(air.SaturationOverIce, "temperature", each(celsius(-10), celsius(-1), celsius(10)))
	from := air.Site{Pressure: kpa(100), Temperature: celsius(20)}
	sites := each(air.Site{Pressure: kpa(88), Temperature: celsius(30)}, air.Site{Pressure: kpa(100), Temperature: celsius(40), VapourPressure: kpa(4)}, air.Site{})
	b.ask(air.SitePower, "power, efficiency, reference, site, options", cross([]row{{units.Kilowatts(14), units.Percents(85), from}}, sites, each(air.SiteOptions{}, air.SiteOptions{VapourWeight: 1, PressureExponent: 1, TemperatureExponent: 0.75})))
}

// named is a fuel of the table by its name.
type namedFuel string

func (n namedFuel) make() (any, error) { return fuel.Named(string(n)) }

// blend is parts of a mixture.
type blend []share

type share struct {
	Fuel  namedFuel   `json:"fuel"`
	Share units.Ratio `json:"share"`
}

func (m blend) make() (any, error) {
	var out []fuel.Part
	for _, x := range m {
		f, err := fuel.Named(string(x.Fuel))
		if err != nil {
			return nil, err
		}
		out = append(out, fuel.Part{Fuel: f, Share: x.Share})
	}
	return out, nil
}

// burning is what is left of a fuel of a formula, burnt at a lambda.
type burning struct {
	Formula fuel.Formula `json:"formula"`
	Lambda  units.Ratio  `json:"lambda"`
}

func (e burning) make() (any, error) {
	return fuel.Burn(e.Formula, e.Lambda, fuel.BurnOptions{}, fuel.Convention{})
}

func fuelCases(b *book) {
	var formulas []row
	for _, text := range []string{"C8H18", "CH1.87", "CH3OH", "C2H5OH", "H2"} {
		f, _ := fuel.ParseFormula(text)
		formulas = append(formulas, row{f})
	}
	formulas = append(formulas, row{fuel.Formula{C: -1, H: 4}})
	conventions := each(fuel.Convention{}, fuel.Convention{WholeMasses: true, OxygenByMass: units.Percents(23)})
	plain := each(fuel.BurnOptions{})
	b.ask(fuel.ParseFormula, "text", each("C8H18", "CH1.87", "CH3OH", "C2H5OH", "H2", "Xy", ""))
	b.ask(fuel.Stoichiometric, "formula, convention", cross(formulas, conventions))
	b.ask(fuel.Formula.MolarMass, "formula, convention", cross(formulas[:5], conventions))
	b.ask(fuel.Formula.Composition, "formula, convention", cross(formulas[:5], conventions[:1]))
	b.ask(fuel.Burn, "formula, lambda, options, convention", cross(formulas, each(one(0.87), one(1), one(1.1)), plain, conventions[:1]))
	b.ask(fuel.Burn, "formula, lambda, options, convention", cross(formulas[:1], each(one(0.87), one(0.1)), each(fuel.BurnOptions{Rich: fuel.NoHydrogen}, fuel.BurnOptions{WaterGasConstant: 3.8}), conventions[:1]))
	b.ask(fuel.LambdaFromCO, "formula, dry_co, options, convention", cross(formulas, each(units.Percents(1), units.Percents(4), units.Percents(90)), plain, conventions[:1]), rel(loose))
	b.ask(fuel.Stoichiometry.Lambda, "stoichiometry, afr", cross(each(fuel.Stoichiometry{AFR: one(14.7)}, fuel.Stoichiometry{}), each(one(12.5), one(14.7))))
	octane1 := fuel.Formula{C: 8, H: 18}
	b.ask(fuel.Exhaust.AirVolume, "exhaust, temperature, pressure", cross(each(burning{octane1, one(0.9)}, burning{octane1, one(1.1)}), each(celsius(15), celsius(25)), each(units.Bars(1), units.Bars(0))))
	b.ask(fuel.NitrogenPerOxygen, "nitrogen_per_oxygen", each(3.76, 3.773))
	octane, _ := fuel.ParseFormula("C8H18")
	ethanol, _ := fuel.ParseFormula("C2H5OH")
	b.ask(fuel.MixMoles, "portions", each([]fuel.Portion{{Formula: octane, Moles: 1}, {Formula: ethanol, Moles: 0.25}}, []fuel.Portion{{Formula: octane, Moles: 2}}, []fuel.Portion{}))
	b.ask(fuel.Composition.Formula, "shares, convention", cross(each(fuel.Composition{Carbon: units.Percents(86), Hydrogen: units.Percents(14)}, fuel.Composition{Carbon: units.Percents(52.2), Hydrogen: units.Percents(13.1), Oxygen: units.Percents(34.7)}, fuel.Composition{Carbon: units.Percents(190)}), conventions[:1]))

	var all []row
	for f := range fuel.All() {
		all = append(all, row{namedFuel(f.Name)})
	}
	b.ask(fuel.All, "", []row{{}})
	b.ask(fuel.Named, "name", each("petrol", "methanol", "petrol E5", "cider"))
	b.ask(fuel.Petrol, "", []row{{}})
	b.ask(fuel.JetFactor, "from, to, at", cross(each(namedFuel("petrol")), all, each(celsius(15))))
	b.ask(fuel.JetFactor, "from, to, at", cross(each(namedFuel("methanol")), all[:2], each(celsius(30), celsius(500))))
	b.ask(fuel.Fuel.DensityAt, "fuel, at", cross(all, each(celsius(0), celsius(25))))
	b.ask(fuel.Fuel.DensityAt, "fuel, at", cross(all[:1], each(celsius(900))))
	b.ask(fuel.Fuel.HeatPerAir, "fuel", all)
	b.ask(fuel.Fuel.LatentHeatPerAir, "fuel", all)
	b.ask(fuel.Fuel.Err, "fuel", each(fuel.Fuel{Name: "nothing known"}, fuel.Fuel{Name: "impossible", AFR: one(-4), Density: density(745)}))
	half := units.Percents(50)
	blends := each(blend{{"petrol", units.Percents(90)}, {"ethanol", units.Percents(10)}}, blend{{"methanol", half}, {"petrol", half}}, blend{{"petrol", half}})
	b.ask(fuel.BlendByVolume, "parts", blends)
	b.ask(fuel.BlendByMass, "parts", blends)
	b.ask(fuel.PetroleumExpansion, "density_at_15", each(density(745), density(700), density(0)))
	b.ask(fuel.NetFromGross, "gross, hydrogen, latent", cross(each(units.MegajoulesPerKilogram(47), units.MegajoulesPerKilogram(-47)), each(units.Percents(14), units.Percents(13)), each(units.KilojoulesPerKilogram(2442))))
}
