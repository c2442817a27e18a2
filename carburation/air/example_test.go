package air_test

import (
	"fmt"
	"math"

	"example.com/benchbook/carburation/air"
	"example.com/benchbook/units"
)

// The table of ISO 2533 prints 89874.6 Pa and 336.434 m/s at 1000 m.
func ExampleStandard() {
	a, err := air.Standard(units.Metres(1000))
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.1f Pa, %.3f m/s\n", a.Pressure.Pascals(), a.SoundSpeed.MetresPerSecond())
	// Output: 89874.6 Pa, 336.434 m/s
}

// The 1976 table by geometric height prints 275.15 K, 79501 Pa, 1.0066 kg/m³.
func ExampleStandardGeometric() {
	a, _ := air.StandardGeometric(units.Metres(2000))
	fmt.Printf("%.2f K, %.0f Pa, %.4f kg/m³\n", a.Temperature.Kelvins(), a.Pressure.Pascals(), a.Density.KilogramsPerCubicMetre())
	// Output: 275.15 K, 79501 Pa, 1.0066 kg/m³
}

func ExamplePressureHeight() {
	h, _ := air.PressureHeight(units.Hectopascals(898.746))
	fmt.Printf("%.0f m\n", h.Metres())
	// Output: 1000 m
}

// How high a hot low day feels to a carburettor.
func ExampleDensityHeight() {
	m, _ := air.Moist(air.Weather{Pressure: units.Hectopascals(985), Temperature: units.Celsius(30), Humidity: units.Percents(60)}, air.Options{})
	h, _ := air.DensityHeight(m.Density)
	fmt.Printf("%.0f m\n", h.Metres())
	// Output: 913 m
}

// S. V. Gupta, Mass Metrology, p. 205, prints 1.19569 kg/m³.
func ExampleMoist() {
	m, _ := air.Moist(air.Weather{Pressure: units.MillimetresOfMercury(730), Temperature: units.Celsius(10), Humidity: units.Percents(40)}, air.Options{})
	fmt.Printf("%.5f kg/m³, of it %.5f dry; in domain: %v\n", m.Density.KilogramsPerCubicMetre(), m.DryDensity.KilogramsPerCubicMetre(), m.InDomain)
	// Output: 1.19569 kg/m³, of it 1.19192 dry; in domain: false
}

func ExampleMoistSimple() {
	m, _ := air.MoistSimple(air.Weather{Pressure: units.MillimetresOfMercury(730), Temperature: units.Celsius(10), Humidity: units.Percents(40)})
	fmt.Printf("%.4f kg/m³\n", m.Density.KilogramsPerCubicMetre())
	// Output: 1.1951 kg/m³
}

// IAPWS-IF97 prints 0.353658941e-2 MPa at 300 K.
func ExampleSaturationOverWater() {
	p, _ := air.SaturationOverWater(units.Kelvins(300))
	fmt.Printf("%.9fe-2 MPa\n", p.Megapascals()*100)
	// Output: 0.353658941e-2 MPa
}

func ExampleSaturationOverIce() {
	p, _ := air.SaturationOverIce(units.Kelvins(230))
	fmt.Printf("%.5f Pa\n", p.Pascals())
	// Output: 8.94735 Pa
}

func ExampleSaturationCIPM() {
	p, _ := air.SaturationCIPM(units.Celsius(20))
	fmt.Printf("%.0f Pa\n", p.Pascals())
	// Output: 2339 Pa
}

// From a winter to a summer day with the jets left alone.
func ExampleCompare() {
	winter := air.Weather{Pressure: units.Hectopascals(1020), Temperature: units.Celsius(2), Humidity: units.Percents(80)}
	summer := air.Weather{Pressure: units.Hectopascals(1010), Temperature: units.Celsius(28), Humidity: units.Percents(60)}
	c, _ := air.Compare(winter, summer, air.Options{})
	fmt.Printf("mixture x %.3f, jet flow x %.3f, jet bore x %.3f\n", c.Mixture, c.FlowFactor, c.BoreFactor)
	// Output: mixture x 0.938, jet flow x 0.938, jet bore x 0.968
}

// M. L. Mathur and R. P. Sharma, example 11.7, prints 10.99.
func ExampleLogLaw_At() {
	_, ratio, _ := air.LogLaw{Temperature: units.Kelvins(300)}.At(units.Metres(5000))
	fmt.Printf("14 goes to %.2f\n", 14*math.Sqrt(ratio))
	// Output: 14 goes to 10.99
}

func ExamplePowerFactor() {
	w := air.Weather{Pressure: units.Hectopascals(1000), Temperature: units.Celsius(20), Humidity: units.Percents(50)}
	for _, r := range []air.Rule{air.SAEJ1349, air.DIN70020, air.ISO1585, air.SAEJ607} {
		c, _ := air.PowerFactor(r, w)
		fmt.Printf("%s %.3f\n", r, c.Factor)
	}
	// Output:
	// SAE J1349 0.992
	// DIN 70020 1.013
	// ISO 1585 0.992
	// SAE J607 1.033
}

// M. L. Mathur and R. P. Sharma, example 27.1, prints 366.8 kW.
func ExampleSitePower() {
	s, _ := air.SitePower(units.Kilowatts(500), units.Percents(85),
		air.Site{Pressure: units.Kilopascals(100), Temperature: units.Kelvins(298), VapourPressure: units.Kilopascals(0.96)},
		air.Site{Pressure: units.Kilopascals(87), Temperature: units.Kelvins(318), VapourPressure: units.Kilopascals(7.68)}, air.SiteOptions{})
	fmt.Printf("%.1f kW\n", s.Power.Kilowatts())
	// Output: 366.8 kW
}
