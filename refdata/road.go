package refdata

import (
	_ "embed" // the tables

	"example.com/benchbook/units"
)

// Chain is a roller chain by its number. The motor cycle series counts in eighths
// of an inch: 520 is five eighths pitch and two eighths between the plates.
type Chain struct {
	Number         string               `json:"number"` // "08B", "428"
	List           string               `json:"list"`   // "ISO 606 and BS 228", "motor cycle series"
	ImperialName   string               `json:"imperial_name"`
	Pitch          units.Length         `json:"pitch"`
	InnerWidth     units.Length         `json:"inner_width"` // between inner plates, smallest
	Roller         units.Length         `json:"roller"`      // diameter, largest
	MassPerMetre   Figure[units.Mass]   `json:"mass_per_metre"`
	Pin            Figure[units.Length] `json:"pin"`          // diameter, largest
	PlateHeight    Figure[units.Length] `json:"plate_height"` // of the inner plate, largest
	Strength       Figure[units.Force]  `json:"strength"`     // least breaking load
	SizeOrigin     Origin               `json:"size_origin"`  // pitch, width, roller, mass
	PinOrigin      Origin               `json:"pin_origin"`   // pin, plate height
	StrengthOrigin Origin               `json:"strength_origin"`
	Note           string               `json:"note,omitempty"`
}

// Sources returns every source the row rests on.
func (c Chain) Sources() []Source { return gather(c.SizeOrigin, c.PinOrigin, c.StrengthOrigin) }

// Chains returns roller chains; the leading column is the pitch.
func Chains() *Table[Chain, units.Length] { return chains.get(readChains) }

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
	//go:embed tables/roller_chain.csv
	textChains string
	//go:embed tables/tyres.csv
	textTyres string

	chains lazy[Chain, units.Length]

	tyres lazy[Tyre, units.Length]
)

func readChains() *Table[Chain, units.Length] {
	return build("roller_chain", textChains, func(s *scanner) func() Chain {
		number, list, name, note := s.must("number"), s.must("list"), s.must("imperial_name"), s.must("note")
		pitch, width, roller, mass := s.must("pitch_mm"), s.must("inner_width_mm"), s.must("roller_mm"), s.must("mass_kg_m")
		pin, plate, strength := s.must("pin_mm"), s.must("plate_height_mm"), s.must("strength_kn")
		oSize, oPin, oStrength := s.originColumns("size"), s.originColumns("pin"), s.originColumns("strength")
		return func() Chain {
			return Chain{
				Number: s.text(number), List: s.text(list), ImperialName: s.text(name),
				Pitch: needed(s, pitch, units.Millimetres), InnerWidth: needed(s, width, units.Millimetres), Roller: needed(s, roller, units.Millimetres),
				MassPerMetre: figure(s, mass, units.Kilograms), Pin: figure(s, pin, units.Millimetres), PlateHeight: figure(s, plate, units.Millimetres),
				Strength: figure(s, strength, units.Kilonewtons), SizeOrigin: s.origin(oSize), PinOrigin: s.origin(oPin), StrengthOrigin: s.origin(oStrength), Note: s.text(note),
			}
		}
	}, func(c *Chain) string { return c.Number }, func(c *Chain) []string { return []string{c.ImperialName} }, func(c *Chain) units.Length { return c.Pitch })
}

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
