package refdata

import (
	_ "embed" // the table

	"example.com/benchbook/units"
)

// UnifiedHexagon is the hexagon of a UNC or UNF bolt and nut of one size, BS 1768.
type UnifiedHexagon struct {
	Size          string               `json:"size"`
	Bolt          units.Length         `json:"bolt"` // nominal diameter
	Head          units.Length         `json:"head"` // across flats, largest
	HeadMin       Figure[units.Length] `json:"head_min"`
	HeadCorners   Figure[units.Length] `json:"head_corners"` // largest
	HeadThickness Figure[units.Length] `json:"head_thickness"`
	Nut           units.Length         `json:"nut"` // across flats, largest
	NutMin        units.Length         `json:"nut_min"`
	NutCorners    units.Length         `json:"nut_corners"` // largest
	NutThickness  units.Length         `json:"nut_thickness"`
	HeadOrigin    Origin               `json:"head_origin"`
	NutOrigin     Origin               `json:"nut_origin"`
	Note          string               `json:"note,omitempty"`
}

// Sources returns every source the row rests on.
func (u UnifiedHexagon) Sources() []Source { return gather(u.HeadOrigin, u.NutOrigin) }

// UnifiedHexagons returns the hexagons of UNC and UNF bolts and nuts; the leading
// column is the nominal diameter of the bolt.
func UnifiedHexagons() *Table[UnifiedHexagon, units.Length] {
	return unifiedHexagons.get(readUnifiedHexagons)
}

var (
	//go:embed tables/hex_unified.csv
	textUnifiedHexagons string
	unifiedHexagons     lazy[UnifiedHexagon, units.Length]
)

func readUnifiedHexagons() *Table[UnifiedHexagon, units.Length] {
	return build("hex_unified", textUnifiedHexagons, func(s *scanner) func() UnifiedHexagon {
		size, note := s.must("size"), s.must("note")
		b, bMin, bCorners, bHead := s.lengthColumn("bolt_max"), s.lengthColumn("bolt_min"), s.lengthColumn("bolt_corners_max"), s.lengthColumn("head_max")
		n, nMin, nCorners, nThick := s.lengthColumn("nut_max"), s.lengthColumn("nut_min"), s.lengthColumn("nut_corners_max"), s.lengthColumn("nut_thickness_max")
		oBolt, oNut := s.originColumns("bolt"), s.originColumns("nut")
		return func() UnifiedHexagon {
			return UnifiedHexagon{
				Size: s.text(size), Bolt: s.inchText(size),
				Head: s.needLength(b), HeadMin: s.length(bMin), HeadCorners: s.length(bCorners), HeadThickness: s.length(bHead),
				Nut: s.needLength(n), NutMin: s.needLength(nMin), NutCorners: s.needLength(nCorners), NutThickness: s.needLength(nThick),
				HeadOrigin: s.origin(oBolt), NutOrigin: s.origin(oNut), Note: s.text(note),
			}
		}
	}, func(h *UnifiedHexagon) string { return h.Size }, nil, func(h *UnifiedHexagon) units.Length { return h.Bolt })
}
