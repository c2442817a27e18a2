package refdata

import (
	_ "embed" // the table

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

var (
	//go:embed tables/roller_chain.csv
	textChains string
	chains     lazy[Chain, units.Length]
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
