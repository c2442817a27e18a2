package fuel_test

import (
	"fmt"

	"example.com/benchbook/carburation/fuel"
	"example.com/benchbook/units"
)

// Every fuel of the tables: what it gives, and how it chills, for each kilogram of
// air it burns with.
func ExampleAll() {
	for f := range fuel.All() {
		if f.Name == "ethanol" || f.Name == "methanol" {
			fmt.Printf("%s: %.1f MJ of heat, %.0f kJ to evaporate\n", f.Name, f.HeatPerAir().MegajoulesPerKilogram(), f.LatentHeatPerAir().KilojoulesPerKilogram())
		}
	}
	// Output:
	// methanol: 3.1 MJ of heat, 181 kJ to evaporate
	// ethanol: 3.0 MJ of heat, 102 kJ to evaporate
}

// A can made up by weight: nine parts of petrol to one of ethanol.
func ExampleBlendByMass() {
	ethanol, err := fuel.Named("ethanol")
	if err != nil {
		fmt.Println(err)
		return
	}
	b, err := fuel.BlendByMass(fuel.Part{Fuel: fuel.Petrol(), Share: 0.9}, fuel.Part{Fuel: ethanol, Share: 0.1})
	fmt.Printf("air/fuel %.2f %v\n", b.AFR.Value(), err)
	// Output: air/fuel 14.04 <nil>
}

// An analyst's formula as shares by mass, and a mixture of 12.8 to 1 as lambda.
func ExampleFormula() {
	f, err := fuel.ParseFormula("C8H18")
	if err != nil {
		fmt.Println(err)
		return
	}
	share := f.Composition(fuel.Convention{})
	fmt.Printf("%.1f g/mol, carbon %.1f %%\n", f.MolarMass(fuel.Convention{}), share.Carbon.Percents())
	exact, err := fuel.Stoichiometric(f, fuel.Convention{})
	lambda, _ := exact.Lambda(12.8)
	fmt.Printf("lambda %.2f %v\n", lambda.Value(), err)
	// Output:
	// 114.2 g/mol, carbon 84.1 %
	// lambda 0.85 <nil>
}

// Where a rich mixture's oxygen goes is a choice of rule, which moves the carbon
// monoxide that a meter should read.
func ExampleRich() {
	f, err := fuel.ParseFormula("CH1.87")
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, rule := range []fuel.Rich{fuel.WaterGas, fuel.NoHydrogen} {
		e, err := fuel.Burn(f, 0.87, fuel.BurnOptions{Rich: rule}, fuel.Convention{})
		fmt.Printf("%.1f %% CO and %.1f %% H2, dry %v\n", e.DryCO.Percents(), e.DryH2.Percents(), err)
	}
	// Output:
	// 4.8 % CO and 1.6 % H2, dry <nil>
	// 6.6 % CO and 0.0 % H2, dry <nil>
}

// The room that the air for a mole of fuel takes on the day.
func ExampleExhaust_AirVolume() {
	f, err := fuel.ParseFormula("C8H18")
	if err != nil {
		fmt.Println(err)
		return
	}
	e, err := fuel.Burn(f, 1, fuel.BurnOptions{}, fuel.Convention{})
	v, _ := e.AirVolume(units.Celsius(20), units.Hectopascals(1013))
	fmt.Printf("%.2f m³ %v\n", v.CubicMetres(), err)
	// Output: 1.44 m³ <nil>
}
