package refdata

import (
	_ "embed" // the tables

	"example.com/benchbook/units"
)

// GearBacklash is the backlash that AGMA recommends between coarse-pitch gears, in
// the normal plane, for a band of centre distance and diametral pitch.
type GearBacklash struct {
	Name     string              `json:"name"`
	Centre   Range[units.Length] `json:"centre"`
	DPFrom   float64             `json:"dp_from"` // diametral pitch
	DPTo     float64             `json:"dp_to"`
	Backlash Range[units.Length] `json:"backlash"`
	Origin   Origin              `json:"origin"`
	Note     string              `json:"note,omitempty"`
}

// Sources returns every source the row rests on.
func (g GearBacklash) Sources() []Source { return gather(g.Origin) }

// GearBacklashes returns recommended backlash; the leading column is the lower
// end of the band of centre distance.
func GearBacklashes() *Table[GearBacklash, units.Length] {
	return gearBacklashes.get(readGearBacklashes)
}

// LeastBacklash is the least backlash that a formula gives for a module, and for
// a centre distance if it asks for one, in the normal plane.
type LeastBacklash struct {
	Name    string               `json:"name"`
	Formula string               `json:"formula"`
	Centre  Figure[units.Length] `json:"centre"` // unknown if the rule does not ask for it
	Module  units.Length         `json:"module"`
	Least   units.Length         `json:"least"`
	Most    Figure[units.Length] `json:"most"`
	Origin  Origin               `json:"origin"`
	Note    string               `json:"note,omitempty"`
}

// Sources returns every source the row rests on.
func (l LeastBacklash) Sources() []Source { return gather(l.Origin) }

// LeastBacklashes returns least backlash by formula; the leading column is the
// backlash.
func LeastBacklashes() *Table[LeastBacklash, units.Length] {
	return leastBacklashes.get(readLeastBacklashes)
}

var (
	//go:embed tables/gear_backlash.csv
	textGearBacklash string
	gearBacklashes   lazy[GearBacklash, units.Length]
)

func readGearBacklashes() *Table[GearBacklash, units.Length] {
	return build("gear_backlash", textGearBacklash, func(s *scanner) func() GearBacklash {
		from, to, dpFrom, dpTo := s.must("centre_from_in"), s.must("centre_to_in"), s.must("dp_from"), s.must("dp_to")
		b, note, origin := s.rangeColumns("backlash", "_in"), s.must("note"), s.originColumns("")
		return func() GearBacklash {
			return GearBacklash{
				Name:   s.text(from) + " to " + s.text(to) + " in, DP " + s.text(dpFrom) + " to " + s.text(dpTo),
				Centre: Range[units.Length]{s.inches(from), s.inches(to)}, DPFrom: s.need(dpFrom), DPTo: s.need(dpTo),
				Backlash: Range[units.Length]{s.inches(b.low), s.inches(b.high)}, Origin: s.origin(origin), Note: s.text(note),
			}
		}
	}, func(g *GearBacklash) string { return g.Name }, nil, func(g *GearBacklash) units.Length { return g.Centre.Low.value })
}

var (
	//go:embed tables/gear_backlash_formula.csv
	textLeastBacklash string
	leastBacklashes   lazy[LeastBacklash, units.Length]
)

func readLeastBacklashes() *Table[LeastBacklash, units.Length] {
	return build("gear_backlash_formula", textLeastBacklash, func(s *scanner) func() LeastBacklash {
		formula, a, m, least, most, note, origin := s.must("formula"), s.must("centre_mm"), s.must("module_mm"), s.must("least_mm"), s.must("most_mm"), s.must("note"), s.originColumns("")
		return func() LeastBacklash {
			b := LeastBacklash{
				Name: s.text(formula), Formula: s.text(formula), Centre: figure(s, a, units.Millimetres), Module: needed(s, m, units.Millimetres),
				Least: needed(s, least, units.Millimetres), Most: figure(s, most, units.Millimetres), Origin: s.origin(origin), Note: s.text(note),
			}
			if b.Centre.known {
				b.Name += ", centres " + s.text(a) + " mm"
			}
			b.Name += ", module " + s.text(m) + " mm"
			return b
		}
	}, func(b *LeastBacklash) string { return b.Name }, nil, func(b *LeastBacklash) units.Length { return b.Least })
}
