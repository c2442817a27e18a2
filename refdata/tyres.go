package refdata

import (
	_ "embed" // the table

	"example.com/benchbook/units"
)

// Tyre is a motor cycle tyre by the size on its wall, with the diameter its code
// works out to. A measured roll-out is worth more than any of this: bias tyres
// roll on 3.00 to 3.10 of their diameter, by load and pressure.
type Tyre struct {
	Code             string       `json:"code"` // "3.50-19", "110/90-18", "26x3"
	Kind             string       `json:"kind"` // "imperial standard", "imperial low section", "metric", "beaded edge"
	Width            units.Length `json:"width"`
	Aspect           units.Ratio  `json:"aspect"` // height of the section over its width
	Rim              units.Length `json:"rim"`    // nominal diameter
	ComputedDiameter units.Length `json:"computed_diameter"`
	ComputedRolling  units.Length `json:"computed_rolling"` // circumference at 3.05 times the diameter
	CodeOrigin       Origin       `json:"code_origin"`
	ComputedOrigin   Origin       `json:"computed_origin"`
	Note             string       `json:"note,omitempty"`
}

// Sources returns every source the row rests on.
func (t Tyre) Sources() []Source { return gather(t.CodeOrigin, t.ComputedOrigin) }

// Tyres returns motor cycle tyres; the leading column is the diameter.
func Tyres() *Table[Tyre, units.Length] { return tyres.get(readTyres) }

var (
	//go:embed tables/tyres.csv
	textTyres string
	tyres     lazy[Tyre, units.Length]
)

func readTyres() *Table[Tyre, units.Length] {
	return build("tyres", textTyres, func(s *scanner) func() Tyre {
		code, kind, note := s.must("code"), s.must("kind"), s.must("note")
		width, aspect, rim, diameter, rolling := s.must("width_mm"), s.must("aspect"), s.must("rim_in"), s.must("computed_diameter_mm"), s.must("computed_rolling_mm")
		oCode, oComputed := s.originColumns("code"), s.originColumns("computed")
		return func() Tyre {
			return Tyre{
				Code: s.text(code), Kind: s.text(kind), Width: needed(s, width, units.Millimetres), Aspect: needed(s, aspect, units.Value), Rim: s.needInches(rim),
				ComputedDiameter: needed(s, diameter, units.Millimetres), ComputedRolling: needed(s, rolling, units.Millimetres),
				CodeOrigin: s.origin(oCode), ComputedOrigin: s.origin(oComputed), Note: s.text(note),
			}
		}
	}, func(t *Tyre) string { return t.Code }, nil, func(t *Tyre) units.Length { return t.ComputedDiameter })
}
