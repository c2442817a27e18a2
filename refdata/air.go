package refdata

import (
	_ "embed" // the tables

	"example.com/benchbook/units"
)

// Atmosphere is the standard atmosphere at one height: what is printed, and what
// the defining constants give.
type Atmosphere struct {
	Name            string                 `json:"name"`   // "500 m"
	Height          units.Length           `json:"height"` // geopotential
	PrintedPressure Figure[units.Pressure] `json:"printed_pressure"`
	PrintedSound    Figure[units.Speed]    `json:"printed_sound"` // speed of sound
	Temperature     units.Temperature      `json:"computed_temperature"`
	Pressure        units.Pressure         `json:"computed_pressure"`
	Density         units.Density          `json:"computed_density"`
	Sound           units.Speed            `json:"computed_sound"`
	Viscosity       units.DynamicViscosity `json:"computed_viscosity"`
	PrintedOrigin   Origin                 `json:"printed_origin"`
	ComputedOrigin  Origin                 `json:"computed_origin"`
	Note            string                 `json:"note,omitempty"`
}

// Sources returns every source the row rests on.
func (a Atmosphere) Sources() []Source { return gather(a.PrintedOrigin, a.ComputedOrigin) }

// StandardAtmosphere returns the standard atmosphere from -500 m to 4000 m; the
// leading column is the geopotential height.
func StandardAtmosphere() *Table[Atmosphere, units.Length] {
	return standardAtmosphere.get(readStandardAtmosphere)
}

// MoistAir is the density of air of one temperature, pressure and humidity.
type MoistAir struct {
	Name           string                `json:"name"` // "20 °C, 101325 Pa, 50 %"
	Temperature    units.Temperature     `json:"temperature"`
	Pressure       units.Pressure        `json:"pressure"`
	Humidity       units.Ratio           `json:"humidity"`
	PrintedDensity Figure[units.Density] `json:"printed_density"`
	Density        units.Density         `json:"computed_density"`
	PrintedOrigin  Origin                `json:"printed_origin"`
	ComputedOrigin Origin                `json:"computed_origin"`
	Note           string                `json:"note,omitempty"`
}

// Sources returns every source the row rests on.
func (m MoistAir) Sources() []Source { return gather(m.PrintedOrigin, m.ComputedOrigin) }

// MoistAirDensities returns densities of moist air; the leading column is the density.
func MoistAirDensities() *Table[MoistAir, units.Density] {
	return moistAirDensities.get(readMoistAirDensities)
}

var (
	//go:embed tables/standard_atmosphere.csv
	textAtmosphere string
	//go:embed tables/moist_air.csv
	textMoistAir string

	standardAtmosphere lazy[Atmosphere, units.Length]

	moistAirDensities lazy[MoistAir, units.Density]
)

func readStandardAtmosphere() *Table[Atmosphere, units.Length] {
	return build("standard_atmosphere", textAtmosphere, func(s *scanner) func() Atmosphere {
		h, pp, pa, note := s.must("geopotential_m"), s.must("printed_p_pa"), s.must("printed_a_m_s"), s.must("note")
		t, p, rho, a, mu := s.must("computed_t_k"), s.must("computed_p_pa"), s.must("computed_rho_kg_m3"), s.must("computed_a_m_s"), s.must("computed_mu_pa_s")
		printed, computed := s.originColumns("printed"), s.originColumns("computed")
		return func() Atmosphere {
			return Atmosphere{
				Name: s.text(h) + " m", Height: needed(s, h, units.Metres), PrintedPressure: figure(s, pp, units.Pascals), PrintedSound: figure(s, pa, units.MetresPerSecond),
				Temperature: needed(s, t, units.Kelvins), Pressure: needed(s, p, units.Pascals), Density: needed(s, rho, units.KilogramsPerCubicMetre), Sound: needed(s, a, units.MetresPerSecond),
				Viscosity: needed(s, mu, units.PascalSeconds), PrintedOrigin: s.origin(printed), ComputedOrigin: s.origin(computed), Note: s.text(note),
			}
		}
	}, func(a *Atmosphere) string { return a.Name }, nil, func(a *Atmosphere) units.Length { return a.Height })
}

func readMoistAirDensities() *Table[MoistAir, units.Density] {
	return build("moist_air", textMoistAir, func(s *scanner) func() MoistAir {
		t, p, h, note := s.must("t_c"), s.must("p_pa"), s.must("humidity_pct"), s.must("note")
		pr, cr, printed, computed := s.must("printed_rho_kg_m3"), s.must("computed_rho_kg_m3"), s.originColumns("printed"), s.originColumns("computed")
		return func() MoistAir {
			return MoistAir{
				Name:        s.text(t) + " °C, " + s.text(p) + " Pa, " + s.text(h) + " %",
				Temperature: needed(s, t, units.Celsius), Pressure: needed(s, p, units.Pascals), Humidity: needed(s, h, units.Percents),
				PrintedDensity: figure(s, pr, units.KilogramsPerCubicMetre), Density: needed(s, cr, units.KilogramsPerCubicMetre),
				PrintedOrigin: s.origin(printed), ComputedOrigin: s.origin(computed), Note: s.text(note),
			}
		}
	}, func(m *MoistAir) string { return m.Name }, nil, func(m *MoistAir) units.Density { return m.Density })
}
