package air_test

import (
	"fmt"

	"example.com/benchbook/carburation/air"
	"example.com/benchbook/units"
)

// A height by the tape and the geopotential height that the tables go by; ISO
// 2533:1975 is the source to print beside them.
func ExampleGeopotential() {
	h, _ := air.Geopotential(units.Metres(2000))
	z, _ := air.Geometric(h)
	fmt.Printf("%.1f m, and back %.1f m\n", h.Metres(), z.Metres())
	fmt.Println(air.ISO2533().Status)
	// Output:
	// 1999.4 m, and back 2000.0 m
	// published
}

// A hot damp day against the dry standard air of the same height: what it does to
// the mixture of an engine left alone.
func ExampleAtmosphere_Weather() {
	standard, err := air.Standard(units.Metres(500))
	if err != nil {
		fmt.Println(err)
		return
	}
	day := air.Weather{Pressure: standard.Pressure, Temperature: units.Celsius(28), Humidity: units.Percents(60)}
	c, err := air.Compare(standard.Weather(), day, air.Options{})
	fmt.Printf("mixture x %.3f %v\n", c.Mixture, err)
	// Output: mixture x 0.954 <nil>
}

// The power of an engine taken from the brake to a warm day on a pass.
func ExampleWeather_At() {
	here, err1 := air.Weather{Pressure: units.Hectopascals(1013), Temperature: units.Celsius(15), Humidity: units.Percents(60)}.At()
	pass, err2 := air.Weather{Pressure: units.Hectopascals(800), Temperature: units.Celsius(20), Humidity: units.Percents(40)}.At()
	if err1 != nil || err2 != nil {
		fmt.Println(err1, err2)
		return
	}
	s, err := air.SitePower(units.BritishHorsepower(18), units.Percents(80), here, pass, air.SiteOptions{})
	fmt.Printf("%.1f bhp %v\n", s.Power.BritishHorsepower(), err)
	// Output: 13.3 bhp <nil>
}
