package refdata

import (
	_ "embed" // the table

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

var (
	//go:embed tables/standard_atmosphere.csv
	textAtmosphere     string
	standardAtmosphere lazy[Atmosphere, units.Length]
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
