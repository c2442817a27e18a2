package units_test

import (
	"fmt"

	"example.com/benchbook/units"
)

// Text for an empty field of a form, and for the label beside it.
func ExampleName() {
	var wanted units.SpringRate
	fmt.Printf("%s, such as %s\n", units.Name(wanted), units.Example(wanted))
	// Output: spring rate, such as 25 N/mm
}

// The nearest thirty-second to an odd shim, and back to millimetres.
func ExampleFraction_Length() {
	f, over, err := units.NearestFraction(units.Millimetres(2.5), 32)
	fmt.Println(f, "=", f.Length(), "leaves", over.In(units.Thou, 1), err)
	// Output: 3/32 in = 2.38125 mm leaves 4.7 thou <nil>
}

// A place may be asked for from either side of its dead centre.
func ExampleCrankPosition_Datum() {
	closes := units.After(units.BDC, 65*units.CrankDegree)
	fmt.Println(closes.After(), "after", closes.Datum())
	fmt.Println(units.Before(units.TDC, 25*units.CrankDegree).Before(), "before", units.TDC)
	// Output:
	// 65° crank after BDC
	// 25° crank before TDC
}

// How a workshop writes what moves: speeds, and how fast they change.
func ExampleSpeed() {
	road := units.MustParse[units.Speed]("60 mph")
	engine := units.MustParse[units.RotationalSpeed]("5000 rpm")
	braking := units.MustParse[units.Acceleration]("0.5 gn")
	stop := units.Seconds(road.SI() / braking.SI())
	piston := units.FromSI[units.Speed](2 * units.Millimetres(83).SI() * engine.RevolutionsPerSecond())
	fmt.Println(road.In(units.KilometrePerHour, 1), "stops in", stop.In(units.Second, 1))
	fmt.Println("mean piston speed", piston.In(units.MetrePerSecond, 1))
	// Output:
	// 96.6 km/h stops in 5.5 s
	// mean piston speed 13.8 m/s
}

// Power from the brake, and what a spoonful of petrol holds.
func ExamplePower() {
	power := units.MustParse[units.Power]("18 bhp")
	heat := units.MustParse[units.SpecificEnergy]("43 MJ/kg")
	density := units.MustParse[units.Density]("0.74 g/cm3")
	used := units.MustParse[units.VolumeFlow]("6 L/h")
	flow := units.FromSI[units.MassFlow](used.SI() * density.SI())
	fmt.Println(power.In(units.Kilowatt, 1), "from", flow.In(units.KilogramPerHour, 2))
	fmt.Printf("%.0f %% of the heat\n", 100*power.SI()/(flow.SI()*heat.SI()))
	spoon := units.FromSI[units.Energy](units.CubicCentimetres(5).SI() * density.SI() * heat.SI())
	fmt.Println("in a spoonful", spoon.In(units.Kilojoule, 0))
	// Output:
	// 13.4 kW from 4.44 kg/h
	// 25 % of the heat
	// in a spoonful 159 kJ
}

// An oil of 100 mm²/s and 880 kg/m³ in the other viscosity.
func ExampleKinematicViscosity() {
	oil := units.MustParse[units.KinematicViscosity]("100 mm2/s")
	density := units.KilogramsPerCubicMetre(880)
	dynamic := units.FromSI[units.DynamicViscosity](oil.SI() * density.SI())
	fmt.Println(dynamic.In(units.MillipascalSecond, 0))
	// Output: 88 mPa s
}

// A difference of temperature has no zero of its own: 18 °F warmer is 10 K
// warmer, whatever it is added to.
func ExampleTemperatureDelta() {
	warmer := units.MustParse[units.TemperatureDelta]("18 °F")
	fmt.Println(warmer.In(units.Kelvin, 0))
	// Output: 10 K
}

// A seat cut at 45 and a half degrees, and a mixture of oil in per cent.
func ExampleParseAngle() {
	seat, err := units.ParseAngle("45°30'")
	fmt.Println(seat.Degrees(), err)
	oil, err := units.ParseRatio("4 %")
	fmt.Println(oil.Value(), err)
	fmt.Println(units.Percents(5) > oil)
	// Output:
	// 45.5 <nil>
	// 0.04 <nil>
	// true
}
