package air_test

import (
	"math"
	"testing"

	"example.com/benchbook/carburation/air"
	"example.com/benchbook/refdata"
	"example.com/benchbook/units"
)

// The tables hold both what is printed and what another hand computed from the
// same constants: every row, to half a unit of the last place the table keeps.
func TestAgainstTables(t *testing.T) {
	n := 0
	for row := range refdata.StandardAtmosphere().All() {
		n++
		a, err := air.Standard(row.Height)
		if err != nil {
			t.Fatal(err)
		}
		for _, c := range []struct {
			what            string
			got, want, half float64
		}{
			{"temperature", a.Temperature.Kelvins(), row.Temperature.Kelvins(), 0.0005}, {"pressure", a.Pressure.Pascals(), row.Pressure.Pascals(), 0.05},
			{"density", a.Density.KilogramsPerCubicMetre(), row.Density.KilogramsPerCubicMetre(), 0.000005}, {"sound", a.SoundSpeed.MetresPerSecond(), row.Sound.MetresPerSecond(), 0.0005},
			{"viscosity", a.Viscosity.PascalSeconds(), row.Viscosity.PascalSeconds(), 0.5e-9},
		} {
			if math.Abs(c.got-c.want) > c.half*1.001 {
				t.Errorf("%s %s: %v, table %v", row.Name, c.what, c.got, c.want)
			}
		}
		// the printed column keeps one or more decimals less
		if p, ok := row.PrintedPressure.Get(); ok && math.Abs(a.Pressure.Pascals()-p.Pascals()) > 0.051 {
			t.Errorf("%s: %v Pa, printed %v", row.Name, a.Pressure.Pascals(), p.Pascals())
		}
	}
	m := 0
	for row := range refdata.MoistAirDensities().All() {
		m++
		a, err := air.Moist(air.Weather{Pressure: row.Pressure, Temperature: row.Temperature, Humidity: row.Humidity}, air.Options{})
		if err != nil {
			t.Fatal(err)
		}
		if math.Abs(a.Density.Ratio(row.Density)-1) > 1e-5 {
			t.Errorf("%s: %v, table %v", row.Name, a.Density, row.Density)
		}
		if p, ok := row.PrintedDensity.Get(); ok && math.Abs(a.Density.Ratio(p)-1) > 1e-4 {
			t.Errorf("%s: %v, printed %v", row.Name, a.Density, p)
		}
		if in := a.InDomain; in != (row.Pressure.Hectopascals() >= 600 && row.Temperature.Celsius() > 14.999 && row.Temperature.Celsius() < 27.001) {
			t.Errorf("%s: in domain %v", row.Name, in)
		}
	}
	if n < 15 || m < 80 {
		t.Errorf("%d heights, %d airs", n, m)
	}
}

// Weather a reader reads as kg/m³ stays in the band of all weather.
func TestDensityOfWeather(t *testing.T) {
	for _, w := range []air.Weather{
		{Pressure: units.Hectopascals(1050), Temperature: units.Celsius(-30)}, {Pressure: units.Hectopascals(700), Temperature: units.Celsius(40), Humidity: 1},
	} {
		m, err := air.Moist(w, air.Options{})
		if err != nil || !(m.Density.KilogramsPerCubicMetre() > 0.7 && m.Density.KilogramsPerCubicMetre() < 1.55) {
			t.Errorf("%+v: %v, %v", w, m.Density, err)
		}
	}
}
