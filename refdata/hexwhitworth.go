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

// WhitworthHexagons returns the hexagons of Whitworth and BSF bolts; the leading
// column is the nominal diameter of the bolt.
func WhitworthHexagons() *Table[WhitworthHexagon, units.Length] {
	return whitworthHexagons.get(readWhitworthHexagons)
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

// WhitworthSpanners returns spanners by their W and BS markings; the leading
// column is the width across flats. ByName takes either marking.
func WhitworthSpanners() *Table[WhitworthSpanner, units.Length] {
	return whitworthSpanners.get(readWhitworthSpanners)
}

var (
	//go:embed tables/hex_whitworth.csv
	textWhitworthHexagons string
	whitworthHexagons     lazy[WhitworthHexagon, units.Length]
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

var (
	//go:embed tables/spanners_whitworth.csv
	textWhitworthSpanners string
	whitworthSpanners     lazy[WhitworthSpanner, units.Length]
)

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
