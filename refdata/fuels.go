package refdata

import (
	_ "embed" // the table

	"example.com/benchbook/units"
)

// Fuel is what a fuel is made of and how it burns.
type Fuel struct {
	Name              string                          `json:"name"` // "petrol", "methanol", "petrol E10"
	Formula           string                          `json:"formula"`
	Carbon            Figure[units.Ratio]             `json:"carbon"` // by mass
	Hydrogen          Figure[units.Ratio]             `json:"hydrogen"`
	Oxygen            Figure[units.Ratio]             `json:"oxygen"`
	Density           Range[units.Density]            `json:"density"`
	DensityAt         units.Temperature               `json:"density_at"`
	PrintedAFR        Range[units.Ratio]              `json:"printed_afr"`   // stoichiometric air to fuel by mass, as books have it
	ComputedAFR       units.Ratio                     `json:"computed_afr"`  // from the composition
	Latent            Range[units.SpecificEnergy]     `json:"latent"`        // heat of vaporisation
	HeatingValue      Range[units.SpecificEnergy]     `json:"heating_value"` // lower
	Viscosity         Range[units.KinematicViscosity] `json:"viscosity"`
	ViscosityAt       Figure[units.Temperature]       `json:"viscosity_at"`
	FlashPoint        Range[units.Temperature]        `json:"flash_point"`
	Flammable         Range[units.Ratio]              `json:"flammable"` // share of vapour in air by volume
	CompositionOrigin Origin                          `json:"composition_origin"`
	DensityOrigin     Origin                          `json:"density_origin"`
	PrintedAFROrigin  Origin                          `json:"printed_afr_origin"`
	ComputedAFROrigin Origin                          `json:"computed_afr_origin"`
	LatentOrigin      Origin                          `json:"latent_origin"`
	HeatingOrigin     Origin                          `json:"heating_origin"`
	ViscosityOrigin   Origin                          `json:"viscosity_origin"`
	FlashOrigin       Origin                          `json:"flash_origin"` // flash point and limits
	Note              string                          `json:"note,omitempty"`
}

// Sources returns every source the row rests on.
func (f Fuel) Sources() []Source {
	return gather(f.CompositionOrigin, f.DensityOrigin, f.PrintedAFROrigin, f.ComputedAFROrigin, f.LatentOrigin, f.HeatingOrigin, f.ViscosityOrigin, f.FlashOrigin)
}

// Fuels returns fuels; the leading column is the computed stoichiometric air-fuel
// ratio by mass.
func Fuels() *Table[Fuel, units.Ratio] { return fuels.get(readFuels) }

var (
	//go:embed tables/fuels.csv
	textFuels string
	fuels     lazy[Fuel, units.Ratio]
)

func readFuels() *Table[Fuel, units.Ratio] {
	return build("fuels", textFuels, func(s *scanner) func() Fuel {
		name, formula, note := s.must("fuel"), s.must("formula"), s.must("note")
		c, h, o := s.must("c_mass"), s.must("h_mass"), s.must("o_mass")
		density, densityAt, printed, computed := s.rangeColumns("density", "_kg_m3"), s.must("density_t_c"), s.rangeColumns("printed_afr", ""), s.must("computed_afr")
		latent, lhv := s.rangeColumns("latent", "_kj_kg"), s.rangeColumns("lhv", "_mj_kg")
		visc, viscAt, flash, limits := s.rangeColumns("viscosity", "_mm2_s"), s.must("viscosity_t_c"), s.rangeColumns("flash", "_c"), s.rangeColumns("flammable", "_pct")
		var origins [8]originColumns
		for i, g := range []string{"composition", "density", "printed_afr", "computed_afr", "latent", "lhv", "viscosity", "flash"} {
			origins[i] = s.originColumns(g)
		}
		return func() Fuel {
			return Fuel{
				Name: s.text(name), Formula: s.text(formula), Carbon: figure(s, c, units.Value), Hydrogen: figure(s, h, units.Value), Oxygen: figure(s, o, units.Value),
				Density: between(s, density, units.KilogramsPerCubicMetre), DensityAt: needed(s, densityAt, units.Celsius),
				PrintedAFR: between(s, printed, units.Value), ComputedAFR: needed(s, computed, units.Value),
				Latent: between(s, latent, units.KilojoulesPerKilogram), HeatingValue: between(s, lhv, units.MegajoulesPerKilogram),
				Viscosity: between(s, visc, units.SquareMillimetresPerSecond), ViscosityAt: figure(s, viscAt, units.Celsius),
				FlashPoint: between(s, flash, units.Celsius), Flammable: between(s, limits, units.Percents),
				CompositionOrigin: s.origin(origins[0]), DensityOrigin: s.origin(origins[1]), PrintedAFROrigin: s.origin(origins[2]), ComputedAFROrigin: s.origin(origins[3]),
				LatentOrigin: s.origin(origins[4]), HeatingOrigin: s.origin(origins[5]), ViscosityOrigin: s.origin(origins[6]), FlashOrigin: s.origin(origins[7]), Note: s.text(note),
			}
		}
	}, func(f *Fuel) string { return f.Name }, nil, func(f *Fuel) units.Ratio { return f.ComputedAFR })
}
