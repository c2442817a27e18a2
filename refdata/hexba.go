package refdata

import (
	_ "embed" // the table

	"example.com/benchbook/units"
)

// BAHexagon is the hexagon of a BA bolt or nut.
type BAHexagon struct {
	Name        string               `json:"name"` // "2 BA"
	AcrossFlats units.Length         `json:"across_flats"`
	BS57        Figure[units.Length] `json:"bs57"` // across flats in the inch column of BS 57
	RuleOrigin  Origin               `json:"rule_origin"`
	BS57Origin  Origin               `json:"bs57_origin"`
	Note        string               `json:"note,omitempty"`
}

// Sources returns every source the row rests on.
func (b BAHexagon) Sources() []Source { return gather(b.RuleOrigin, b.BS57Origin) }

// BAHexagons returns the hexagons of BA bolts and nuts; the leading column is the
// width across flats.
func BAHexagons() *Table[BAHexagon, units.Length] { return baHexagons.get(readBaHexagons) }

var (
	//go:embed tables/hex_ba.csv
	textBAHexagons string
	baHexagons     lazy[BAHexagon, units.Length]
)

func readBaHexagons() *Table[BAHexagon, units.Length] {
	return build("hex_ba", textBAHexagons, func(s *scanner) func() BAHexagon {
		size, width, bs57, note := s.must("size"), s.lengthColumn("across_flats"), s.lengthColumn("bs57"), s.must("note")
		oRule, oBS57 := s.originColumns("rule"), s.originColumns("bs57")
		return func() BAHexagon {
			return BAHexagon{Name: s.text(size) + " BA", AcrossFlats: s.needLength(width), BS57: s.length(bs57), RuleOrigin: s.origin(oRule), BS57Origin: s.origin(oBS57), Note: s.text(note)}
		}
	}, func(h *BAHexagon) string { return h.Name }, nil, func(h *BAHexagon) units.Length { return h.AcrossFlats })
}
