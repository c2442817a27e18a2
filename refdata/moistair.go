package refdata

import (
	_ "embed" // the table

	"example.com/benchbook/units"
)

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
	//go:embed tables/moist_air.csv
	textMoistAir      string
	moistAirDensities lazy[MoistAir, units.Density]
)

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
