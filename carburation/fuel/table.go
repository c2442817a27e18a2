package fuel

import (
	"iter"
	"strings"

	"example.com/benchbook/refdata"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
)

// All returns the fuels of the tables. Where a table has a range its middle is
// taken, save the density of petrol, 745 kg/m³ at 15 °C, a usual figure from
// memory within the 720 kg/m³ to 775 kg/m³ of EN 228. The air/fuel ratio is
// computed from the composition by Stoichiometric; where the table has none it
// is the table's own computed figure.
func All() iter.Seq[Fuel] {
	return func(yield func(Fuel) bool) {
		for row := range refdata.Fuels().All() {
			if !yield(fromRow(row)) {
				return
			}
		}
	}
}

// Petrol returns petrol without alcohol.
func Petrol() Fuel { f, _ := Named("petrol"); return f }

// Named returns a fuel of the tables by its name: "petrol", "petrol E5",
// "petrol E10", "petrol-benzole", "methanol", "ethanol", "benzene", "toluene",
// "iso-octane", "n-heptane". Capitals do not matter, and a hyphen stands for a
// space. The error is a fault.UnknownName whose rule lists the names.
func Named(name string) (Fuel, error) {
	want := plain(name)
	var names []string
	for row := range refdata.Fuels().All() {
		if plain(row.Name) == want {
			return fromRow(row), nil
		}
		names = append(names, row.Name)
	}
	return Fuel{}, fault.Fault{Code: fault.UnknownName, Path: "fuel", Value: name, Rule: "one of " + strings.Join(names, ", ")}
}

func plain(s string) string {
	return strings.ReplaceAll(strings.ToLower(strings.TrimSpace(s)), "-", " ")
}

func fromRow(r refdata.Fuel) Fuel {
	f := Fuel{
		Key: strings.ReplaceAll(plain(r.Name), " ", "-"), Name: r.Name, AFR: r.ComputedAFR,
		Density: middle(r.Density), DensityTemperature: r.DensityAt, HeatingValue: middle(r.HeatingValue), LatentHeat: middle(r.Latent), Viscosity: middle(r.Viscosity),
	}
	if r.Name == "petrol" {
		f.Density = units.KilogramsPerCubicMetre(745)
		f.Sources = append(f.Sources, refdata.Source{Title: "usual density of petrol, 745 kg/m³ at 15 °C", Status: refdata.FromMemory})
	}
	if c, ok := r.Carbon.Get(); ok {
		f.Composition = Composition{Carbon: c, Hydrogen: r.Hydrogen.Or(0), Oxygen: r.Oxygen.Or(0)}
		if a, err := f.Composition.Formula(Convention{}); err == nil {
			if s, err := Stoichiometric(a, Convention{}); err == nil {
				f.AFR = s.AFR
			}
		}
	}
	var source refdata.Source
	f.ExpansionPerKelvin, source = expansion(r.Name, f.Density)
	f.Sources = append(f.Sources, source)
	for _, o := range []refdata.Origin{r.CompositionOrigin, r.DensityOrigin, r.ComputedAFROrigin, r.LatentOrigin, r.HeatingOrigin, r.ViscosityOrigin} {
		for _, s := range o.Sources() {
			f.Sources = addSource(f.Sources, s)
		}
	}
	return f
}

// expansion returns the expansion of volume per kelvin near 15 °C to 25 °C.
func expansion(name string, density units.Density) (float64, refdata.Source) {
	memory := refdata.Source{Title: "densities of " + name + " at 15 °C and 25 °C", Status: refdata.FromMemory}
	switch name {
	case "iso-octane":
		return 1.21e-3, memory
	case "n-heptane":
		return 1.23e-3, memory
	case "toluene":
		return 1.08e-3, memory
	case "benzene", "petrol-benzole":
		return 1.22e-3, memory
	case "ethanol":
		return 1.08e-3, memory
	case "methanol":
		return 1.20e-3, memory
	}
	a, err := PetroleumExpansion(density)
	if err != nil {
		return 1.2e-3, memory
	}
	return a, refdata.Source{Title: "API MPMS chapter 11.1, gasoline group", Read: "public programs", Status: refdata.Published}
}

func middle[Q units.Quantity](r refdata.Range[Q]) Q {
	low, high, ok := r.Ends()
	if !ok {
		return 0
	}
	// units have no common arithmetic over Quantity: go by SI and back
	return units.FromSI[Q]((low.SI() + high.SI()) / 2)
}

func addSource(all []refdata.Source, s refdata.Source) []refdata.Source {
	for _, x := range all {
		if x == s {
			return all
		}
	}
	return append(all, s)
}
