package refdata

import (
	_ "embed" // the tables

	"example.com/benchbook/units"
)

// WhitworthHexagon is the hexagon of a Whitworth or BSF bolt of one size. The
// large series is the old Whitworth one; the small series, one size down, is
// that of BS 1083, of BSF, and of most later Whitworth bolts.
type WhitworthHexagon struct {
	Size               string               `json:"size"`      // "1/4", of the bolt
	Bolt               units.Length         `json:"bolt"`      // nominal diameter
	Small              Figure[units.Length] `json:"small"`     // across flats, largest
	SmallMin           Figure[units.Length] `json:"small_min"` // across flats, smallest
	SmallCorners       Figure[units.Length] `json:"small_corners"`
	HeadThickness      Figure[units.Length] `json:"head_thickness"` // of the small series, largest
	NutThickness       Figure[units.Length] `json:"nut_thickness"`  // of the small series, largest
	Large              units.Length         `json:"large"`          // across flats, to three places as spanner lists have it
	LargePrinted       Figure[units.Length] `json:"large_printed"`  // to four places, from the old nut table
	SmallOrigin        Origin               `json:"small_origin"`
	LargeOrigin        Origin               `json:"large_origin"`
	LargePrintedOrigin Origin               `json:"large_printed_origin"`
	Note               string               `json:"note,omitempty"`
}

// Sources returns every source the row rests on.
func (w WhitworthHexagon) Sources() []Source {
	return gather(w.SmallOrigin, w.LargeOrigin, w.LargePrintedOrigin)
}

// WhitworthSpanner is a spanner by its markings: "5/16 W" is the size of bolt of
// the large series, "3/8 BS" that of the small series, which has the same width.
type WhitworthSpanner struct {
	W             string       `json:"w"`
	BS            string       `json:"bs,omitempty"`
	AcrossFlats   units.Length `json:"across_flats"`
	WidthOrigin   Origin       `json:"width_origin"`
	PairingOrigin Origin       `json:"pairing_origin"`
	Note          string       `json:"note,omitempty"`
}

// Sources returns every source the row rests on.
func (w WhitworthSpanner) Sources() []Source { return gather(w.WidthOrigin, w.PairingOrigin) }

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

// MetricHexagon is the hexagon of a metric bolt or nut.
type MetricHexagon struct {
	Name      string       `json:"name"` // "M10"
	Bolt      units.Length `json:"bolt"` // nominal diameter
	ISO       units.Length `json:"iso"`  // across flats, ISO 272
	Old       units.Length `json:"old"`  // across flats, DIN before ISO 272
	ISOOrigin Origin       `json:"iso_origin"`
	OldOrigin Origin       `json:"old_origin"`
	Note      string       `json:"note,omitempty"`
}

// Sources returns every source the row rests on.
func (m MetricHexagon) Sources() []Source { return gather(m.ISOOrigin, m.OldOrigin) }

// WhitworthHexagons returns the hexagons of Whitworth and BSF bolts; the leading
// column is the nominal diameter of the bolt.
func WhitworthHexagons() *Table[WhitworthHexagon, units.Length] {
	return whitworthHexagons.get(readWhitworthHexagons)
}

// WhitworthSpanners returns spanners by their W and BS markings; the leading
// column is the width across flats. ByName takes either marking.
func WhitworthSpanners() *Table[WhitworthSpanner, units.Length] {
	return whitworthSpanners.get(readWhitworthSpanners)
}

// UnifiedHexagons returns the hexagons of UNC and UNF bolts and nuts; the leading
// column is the nominal diameter of the bolt.
func UnifiedHexagons() *Table[UnifiedHexagon, units.Length] {
	return unifiedHexagons.get(readUnifiedHexagons)
}

// BAHexagons returns the hexagons of BA bolts and nuts; the leading column is the
// width across flats.
func BAHexagons() *Table[BAHexagon, units.Length] { return baHexagons.get(readBaHexagons) }

// MetricHexagons returns the hexagons of metric bolts and nuts; the leading
// column is the nominal diameter of the bolt.
func MetricHexagons() *Table[MetricHexagon, units.Length] {
	return metricHexagons.get(readMetricHexagons)
}

var (
	//go:embed tables/hex_whitworth.csv
	textWhitworthHexagons string
	//go:embed tables/spanners_whitworth.csv
	textWhitworthSpanners string
	//go:embed tables/hex_unified.csv
	textUnifiedHexagons string
	//go:embed tables/hex_ba.csv
	textBAHexagons string
	//go:embed tables/hex_metric.csv
	textMetricHexagons string

	whitworthHexagons lazy[WhitworthHexagon, units.Length]

	whitworthSpanners lazy[WhitworthSpanner, units.Length]

	unifiedHexagons lazy[UnifiedHexagon, units.Length]

	baHexagons lazy[BAHexagon, units.Length]

	metricHexagons lazy[MetricHexagon, units.Length]
)

func readWhitworthHexagons() *Table[WhitworthHexagon, units.Length] {
	return build("hex_whitworth", textWhitworthHexagons, func(s *scanner) func() WhitworthHexagon {
		size, note := s.must("size"), s.must("note")
		small, smallMin, corners := s.lengthColumn("small_max"), s.lengthColumn("small_min"), s.lengthColumn("small_corners_max")
		head, nut, large, large4 := s.lengthColumn("head_thickness_max"), s.lengthColumn("nut_thickness_max"), s.lengthColumn("large"), s.lengthColumn("large_4place")
		oSmall, oLarge, oLarge4 := s.originColumns("small"), s.originColumns("large"), s.originColumns("large_4place")
		return func() WhitworthHexagon {
			return WhitworthHexagon{
				Size: s.text(size), Bolt: s.inchText(size), Small: s.length(small), SmallMin: s.length(smallMin), SmallCorners: s.length(corners),
				HeadThickness: s.length(head), NutThickness: s.length(nut), Large: s.needLength(large), LargePrinted: s.length(large4),
				SmallOrigin: s.origin(oSmall), LargeOrigin: s.origin(oLarge), LargePrintedOrigin: s.origin(oLarge4), Note: s.text(note),
			}
		}
	}, func(h *WhitworthHexagon) string { return h.Size }, nil, func(h *WhitworthHexagon) units.Length { return h.Bolt })
}

func readWhitworthSpanners() *Table[WhitworthSpanner, units.Length] {
	return build("spanners_whitworth", textWhitworthSpanners, func(s *scanner) func() WhitworthSpanner {
		w, bs, width, note := s.must("marking_w"), s.must("marking_bs"), s.lengthColumn("across_flats"), s.must("note")
		oWidth, oPairing := s.originColumns("width"), s.originColumns("pairing")
		return func() WhitworthSpanner {
			return WhitworthSpanner{W: s.text(w), BS: s.text(bs), AcrossFlats: s.needLength(width), WidthOrigin: s.origin(oWidth), PairingOrigin: s.origin(oPairing), Note: s.text(note)}
		}
	}, func(w *WhitworthSpanner) string { return w.W }, func(w *WhitworthSpanner) []string {
		if w.BS == "" {
			return nil
		}
		return []string{w.BS, w.BS + "F"}
	}, func(w *WhitworthSpanner) units.Length { return w.AcrossFlats })
}

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

func readBaHexagons() *Table[BAHexagon, units.Length] {
	return build("hex_ba", textBAHexagons, func(s *scanner) func() BAHexagon {
		size, width, bs57, note := s.must("size"), s.lengthColumn("across_flats"), s.lengthColumn("bs57"), s.must("note")
		oRule, oBS57 := s.originColumns("rule"), s.originColumns("bs57")
		return func() BAHexagon {
			return BAHexagon{Name: s.text(size) + " BA", AcrossFlats: s.needLength(width), BS57: s.length(bs57), RuleOrigin: s.origin(oRule), BS57Origin: s.origin(oBS57), Note: s.text(note)}
		}
	}, func(h *BAHexagon) string { return h.Name }, nil, func(h *BAHexagon) units.Length { return h.AcrossFlats })
}

func readMetricHexagons() *Table[MetricHexagon, units.Length] {
	return build("hex_metric", textMetricHexagons, func(s *scanner) func() MetricHexagon {
		name, iso, old, note := s.must("designation"), s.lengthColumn("iso272"), s.lengthColumn("old_din"), s.must("note")
		oISO, oOld := s.originColumns("iso272"), s.originColumns("old")
		return func() MetricHexagon {
			return MetricHexagon{Name: s.text(name), Bolt: s.metricText(name), ISO: s.needLength(iso), Old: s.needLength(old), ISOOrigin: s.origin(oISO), OldOrigin: s.origin(oOld), Note: s.text(note)}
		}
	}, func(h *MetricHexagon) string { return h.Name }, nil, func(h *MetricHexagon) units.Length { return h.Bolt })
}
