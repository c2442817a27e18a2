package refdata

import (
	_ "embed" // the table

	"example.com/benchbook/units"
)

// DiscSpring is a disc spring of DIN 2093, with the load at 75 % flat as
// remembered and as computed.
type DiscSpring struct {
	Name           string         `json:"name"`   // "A 20 x 10.2 x 1.1"
	Series         string         `json:"series"` // "A" stiff, "B", "C" soft
	Outside        units.Length   `json:"outside"`
	Inside         units.Length   `json:"inside"`
	Thickness      units.Length   `json:"thickness"`
	Cone           units.Length   `json:"cone"` // h0, free height less thickness
	Free           units.Length   `json:"free"` // l0
	Load           units.Force    `json:"load"` // at 0.75 h0, as remembered
	ComputedLoad   units.Force    `json:"computed_load"`
	ComputedII     units.Pressure `json:"computed_sigma_ii"`
	ComputedIII    units.Pressure `json:"computed_sigma_iii"`
	ComputedOM     units.Pressure `json:"computed_sigma_om"`
	SizeOrigin     Origin         `json:"size_origin"` // size and Load
	ComputedOrigin Origin         `json:"computed_origin"`
	Note           string         `json:"note,omitempty"`
}

// Sources returns every source the row rests on.
func (d DiscSpring) Sources() []Source { return gather(d.SizeOrigin, d.ComputedOrigin) }

// DiscSprings returns disc springs; the leading column is the outside diameter.
func DiscSprings() *Table[DiscSpring, units.Length] { return discSprings.get(readDiscSprings) }

var (
	//go:embed tables/disc_springs.csv
	textDiscSprings string
	discSprings     lazy[DiscSpring, units.Length]
)

func readDiscSprings() *Table[DiscSpring, units.Length] {
	return build("disc_springs", textDiscSprings, func(s *scanner) func() DiscSpring {
		series, note, de, di, t := s.must("series"), s.must("note"), s.must("de_mm"), s.must("di_mm"), s.must("t_mm")
		h0, l0, load, comp := s.must("h0_mm"), s.must("l0_mm"), s.must("load_at_75_pct_n"), s.must("computed_load_n")
		ii, iii, om := s.must("computed_sigma_ii_mpa"), s.must("computed_sigma_iii_mpa"), s.must("computed_sigma_om_mpa")
		size, computed := s.originColumns("size"), s.originColumns("computed")
		return func() DiscSpring {
			return DiscSpring{
				Name: s.text(series) + " " + s.text(de) + " x " + s.text(di) + " x " + s.text(t), Series: s.text(series),
				Outside: needed(s, de, units.Millimetres), Inside: needed(s, di, units.Millimetres), Thickness: needed(s, t, units.Millimetres),
				Cone: needed(s, h0, units.Millimetres), Free: needed(s, l0, units.Millimetres), Load: needed(s, load, units.Newtons),
				ComputedLoad: needed(s, comp, units.Newtons), ComputedII: needed(s, ii, units.Megapascals), ComputedIII: needed(s, iii, units.Megapascals), ComputedOM: needed(s, om, units.Megapascals),
				SizeOrigin: s.origin(size), ComputedOrigin: s.origin(computed), Note: s.text(note),
			}
		}
	}, func(d *DiscSpring) string { return d.Name }, nil, func(d *DiscSpring) units.Length { return d.Outside })
}
