package fuel_test

import (
	"fmt"

	"example.com/benchbook/carburation/fuel"
	"example.com/benchbook/units"
)

// M. L. Mathur and R. P. Sharma, example 8.4, prints 15.30 for hexane with whole
// atomic masses and air of 23.1 % oxygen by mass.
func ExampleStoichiometric() {
	f, err := fuel.ParseFormula("C6H14")
	if err != nil {
		fmt.Println(err)
		return
	}
	s, _ := fuel.Stoichiometric(f, fuel.Convention{WholeMasses: true, OxygenByMass: units.Percents(23.1)})
	fmt.Printf("%.2f\n", s.AFR.Value())
	// Output: 15.30
}

// H. N. Gupta, example 3.3, prints 11.64.
func ExampleComposition_Formula() {
	conv := fuel.Convention{WholeMasses: true, OxygenByMass: units.Percents(23)}
	f, _ := fuel.Composition{Carbon: 0.86, Hydrogen: 0.05, Oxygen: 0.02, Sulphur: 0.005, Nitrogen: 0.065}.Formula(conv)
	s, _ := fuel.Stoichiometric(f, conv)
	fmt.Printf("%.2f\n", s.AFR.Value())
	// Output: 11.64
}

// H. N. Gupta, example 3.1, prints 29.171 and 27.722 kg/kmol for methanol with
// 20 % too much air.
func ExampleBurn() {
	f, _ := fuel.ParseFormula("CH3OH")
	e, _ := fuel.Burn(f, 1.2, fuel.BurnOptions{}, fuel.NitrogenPerOxygen(3.76))
	fmt.Printf("%.3f %.3f\n", e.MassBefore, e.MassAfter)
	// Output: 29.171 27.722
}

// What a workshop meter that reads 4.4 % carbon monoxide means for petrol.
func ExampleLambdaFromCO() {
	f, _ := fuel.ParseFormula("CH1.87")
	lambda, _ := fuel.LambdaFromCO(f, units.Percents(4.4), fuel.BurnOptions{}, fuel.Convention{})
	fmt.Printf("lambda %.2f\n", lambda.Value())
	// Output: lambda 0.88
}

func ExampleBlendByVolume() {
	ethanol, _ := fuel.Named("ethanol")
	b, _ := fuel.BlendByVolume(fuel.Part{Fuel: fuel.Petrol(), Share: 0.95}, fuel.Part{Fuel: ethanol, Share: 0.05})
	fmt.Printf("air/fuel %.2f, %.0f kg/m³\n", b.AFR.Value(), b.Density.KilogramsPerCubicMetre())
	// Output: air/fuel 14.30, 748 kg/m³
}

// H. N. Gupta, example 3.2, blends 40 % heptane with 60 % octane by moles.
func ExampleMixMoles() {
	f, _ := fuel.MixMoles(fuel.Portion{Formula: fuel.Formula{C: 7, H: 16}, Moles: 0.4}, fuel.Portion{Formula: fuel.Formula{C: 8, H: 18}, Moles: 0.6})
	fmt.Println(f)
	// Output: C7.6H17.2
}

// M. L. Mathur and R. P. Sharma, example 8.1, prints 43913 kJ/kg, cutting off
// the decimals.
func ExampleNetFromGross() {
	n, _ := fuel.NetFromGross(units.KilojoulesPerKilogram(46900), units.Percents(14.4), units.KilojoulesPerKilogram(2304.4))
	fmt.Printf("%.1f kJ/kg\n", n.KilojoulesPerKilogram())
	// Output: 43913.5 kJ/kg
}

func ExampleJetFactor() {
	e10, _ := fuel.Named("petrol E10")
	s, _ := fuel.JetFactor(fuel.Petrol(), e10, units.Celsius(20))
	fmt.Printf("flow x %.2f, bore x %.2f\n", s.FlowFactor, s.BoreFactor)
	// Output: flow x 1.04, bore x 1.02
}

func ExampleFuel_DensityAt() {
	d, _ := fuel.Petrol().DensityAt(units.Celsius(35))
	fmt.Printf("%.0f kg/m³\n", d.KilogramsPerCubicMetre())
	// Output: 727 kg/m³
}

func ExamplePetroleumExpansion() {
	a, _ := fuel.PetroleumExpansion(units.KilogramsPerCubicMetre(745))
	fmt.Printf("%.2f %% per 10 K\n", a*1000)
	// Output: 1.21 % per 10 K
}

func ExampleNamed() {
	f, err := fuel.Named("petrol E10")
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("air/fuel %.2f\n", f.AFR.Value())
	// Output: air/fuel 14.01
}

// The US Department of Energy's table of fuels prints 44 Btu per pound of air.
func ExampleFuel_LatentHeatPerAir() {
	f := fuel.Fuel{AFR: 9.0049, LatentHeat: units.BtusPerPound(396)}
	fmt.Printf("%.0f Btu per lb of air\n", f.LatentHeatPerAir().BtusPerPound())
	// Output: 44 Btu per lb of air
}
