package fuel

import (
	"example.com/benchbook/refdata"
	"example.com/benchbook/units"
)

// Fuel is a fuel or blend as a carburettor meets it. The zero Fuel is none.
type Fuel struct {
	Key                string                   `json:"key"`
	Name               string                   `json:"name"`
	Composition        Composition              `json:"composition"`
	AFR                units.Ratio              `json:"afr"` // kg of air per kg of fuel, exactly burnt
	Density            units.Density            `json:"density"`
	DensityTemperature units.Temperature        `json:"density_temperature"`  // to which Density belongs
	ExpansionPerKelvin float64                  `json:"expansion_per_kelvin"` // of volume, at DensityTemperature
	HeatingValue       units.SpecificEnergy     `json:"heating_value"`        // net: water leaves as vapour
	LatentHeat         units.SpecificEnergy     `json:"latent_heat"`          // to evaporate it
	Viscosity          units.KinematicViscosity `json:"viscosity"`            // at 20 °C; 0 if not known
	Sources            []refdata.Source         `json:"sources"`
}
