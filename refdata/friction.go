package refdata

import (
	_ "embed" // the table

	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// FrictionMaterial is a clutch or brake lining in one condition, as one book has
// it: books disagree, and each keeps its row.
type FrictionMaterial struct {
	Name       string                    `json:"name"`      // "moulded, oil, tribology handbook"
	Material   string                    `json:"material"`  // "moulded"
	Condition  string                    `json:"condition"` // "dry" or "oil"
	Friction   Range[units.Ratio]        `json:"friction"`
	Kind       string                    `json:"kind,omitempty"` // "dynamic", "static and dynamic", "" if the book does not say
	Pressure   Range[units.Pressure]     `json:"pressure"`
	Hottest    Figure[units.Temperature] `json:"hottest"`    // for short times
	Continuous Figure[units.Temperature] `json:"continuous"` //
	// Power that the lining may take, in W/mm².
	WattsPerSquareMillimetre Range[units.Ratio] `json:"watts_per_square_millimetre"`
	Origin                   Origin             `json:"origin"`
	Note                     string             `json:"note,omitempty"`
}

// Sources returns every source the row rests on.
func (f FrictionMaterial) Sources() []Source { return gather(f.Origin) }

// FrictionMaterials returns clutch and brake linings; the leading column is the
// lower coefficient of friction.
func FrictionMaterials() *Table[FrictionMaterial, units.Ratio] {
	return frictionMaterials.get(readFrictionMaterials)
}

// Friction returns the coefficient of friction of a material ("moulded",
// "paper", "cork") in a condition ("dry", "oil") over all books that have it,
// their sources, and whether any has.
func Friction(material, condition string) (measure.Interval[units.Ratio], []Source, bool) {
	var all measure.Interval[units.Ratio]
	var origins []Origin
	for m := range FrictionMaterials().All() {
		if m.Material != material || m.Condition != condition {
			continue
		}
		low, high, _ := m.Friction.Ends()
		if origins == nil {
			all = measure.Between(low, high)
		}
		all = measure.Between(min(all.Low, low), max(all.High, high))
		origins = append(origins, m.Origin)
	}
	return all, gather(origins...), origins != nil
}

var (
	//go:embed tables/friction_materials.csv
	textFriction      string
	frictionMaterials lazy[FrictionMaterial, units.Ratio]
)

func readFrictionMaterials() *Table[FrictionMaterial, units.Ratio] {
	return build("friction_materials", textFriction, func(s *scanner) func() FrictionMaterial {
		material, condition, book, kind, note := s.must("material"), s.must("condition"), s.must("book"), s.must("kind"), s.must("note")
		mu, p, w := s.rangeColumns("friction", ""), s.rangeColumns("pressure", "_kpa"), s.rangeColumns("power", "_w_mm2")
		hot, cont, origin := s.must("temp_max_c"), s.must("temp_continuous_c"), s.originColumns("")
		return func() FrictionMaterial {
			return FrictionMaterial{
				Name: s.text(material) + ", " + s.text(condition) + ", " + s.text(book), Material: s.text(material), Condition: s.text(condition),
				Friction: between(s, mu, units.Value), Kind: s.text(kind), Pressure: between(s, p, units.Kilopascals),
				Hottest: figure(s, hot, units.Celsius), Continuous: figure(s, cont, units.Celsius), WattsPerSquareMillimetre: between(s, w, units.Value),
				Origin: s.origin(origin), Note: s.text(note),
			}
		}
	}, func(m *FrictionMaterial) string { return m.Name }, func(m *FrictionMaterial) []string { return []string{m.Material + ", " + m.Condition} },
		func(m *FrictionMaterial) units.Ratio { return m.Friction.Low.value })
}
