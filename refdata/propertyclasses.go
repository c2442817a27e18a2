package refdata

import (
	_ "embed" // the table

	"example.com/benchbook/units"
)

// PropertyClass is the strength of metric bolts of one class, over a range of
// diameters where the standard splits it.
type PropertyClass struct {
	Name           string               `json:"name"`  // "8.8", or "8.8 to 16 mm", "8.8 over 16 mm"
	Class          string               `json:"class"` // "8.8", as marked on the head
	Over           Figure[units.Length] `json:"over"`  // the row holds for diameters above this; unknown: no lower end
	UpTo           Figure[units.Length] `json:"up_to"` // and up to this, included; unknown: no upper end
	TensileNominal units.Pressure       `json:"tensile_nominal"`
	Tensile        units.Pressure       `json:"tensile"` // least
	YieldNominal   units.Pressure       `json:"yield_nominal"`
	Yield          units.Pressure       `json:"yield"` // least, or 0.2 % proof stress
	Proof          units.Pressure       `json:"proof"` // stress under proof load
	StrengthOrigin Origin               `json:"strength_origin"`
	ProofOrigin    Origin               `json:"proof_origin"`
	Note           string               `json:"note,omitempty"`
}

// Sources returns every source the row rests on.
func (p PropertyClass) Sources() []Source { return gather(p.StrengthOrigin, p.ProofOrigin) }

// PropertyClasses returns the property classes of ISO 898-1; the leading column
// is the stress under proof load.
func PropertyClasses() *Table[PropertyClass, units.Pressure] {
	return propertyClasses.get(readPropertyClasses)
}

// PropertyClassAt returns the row of a class, "8.8", that holds for a bolt of
// nominal diameter d, and whether there is one.
func PropertyClassAt(class string, d units.Length) (PropertyClass, bool) {
	for c := range PropertyClasses().All() {
		if c.Class == class && d > c.Over.Or(0) && (!c.UpTo.known || d <= c.UpTo.value) {
			return c, true
		}
	}
	return PropertyClass{}, false
}

var (
	//go:embed tables/property_classes.csv
	textPropertyClasses string
	propertyClasses     lazy[PropertyClass, units.Pressure]
)

func readPropertyClasses() *Table[PropertyClass, units.Pressure] {
	return build("property_classes", textPropertyClasses, func(s *scanner) func() PropertyClass {
		class, over, to, note := s.must("class"), s.lengthColumn("d_over"), s.lengthColumn("d_to"), s.must("note")
		tn, tm, yn, ym, p := s.must("tensile_nominal_mpa"), s.must("tensile_min_mpa"), s.must("yield_nominal_mpa"), s.must("yield_min_mpa"), s.must("proof_mpa")
		strength, proof := s.originColumns("strength"), s.originColumns("proof")
		return func() PropertyClass {
			c := PropertyClass{
				Name: s.text(class), Class: s.text(class), Over: s.length(over), UpTo: s.length(to),
				TensileNominal: units.Megapascals(s.need(tn)), Tensile: units.Megapascals(s.need(tm)),
				YieldNominal: units.Megapascals(s.need(yn)), Yield: units.Megapascals(s.need(ym)), Proof: units.Megapascals(s.need(p)),
				StrengthOrigin: s.origin(strength), ProofOrigin: s.origin(proof), Note: s.text(note),
			}
			if c.Over.known {
				c.Name += " over " + c.Over.String()
			}
			if c.UpTo.known {
				c.Name += " to " + c.UpTo.String()
			}
			return c
		}
	}, func(c *PropertyClass) string { return c.Name }, func(c *PropertyClass) []string { return []string{c.Class} }, func(c *PropertyClass) units.Pressure { return c.Proof })
}
