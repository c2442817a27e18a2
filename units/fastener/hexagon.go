package fastener

import "example.com/benchbook/units"

// HexSystem is a series of hexagon sizes.
type HexSystem uint8

// The series. The zero value leaves it open.
const (
	LargeWhitworth HexSystem = iota + 1 // the old, larger nuts and heads of Whitworth bolts
	SmallWhitworth                      // one size down: BSF, and most of both after 1939
	BAHexagon                           // 1.75 of the diameter
	MetricISO                           // ISO 272
	MetricOld                           // the widths before ISO 272
	UnifiedBolt                         // across flats, bolt heads, BS 1768
	UnifiedNut                          // across flats, nuts, BS 1768
)

// Hexagon is the size over the flats that goes with a thread.
type Hexagon struct {
	System HexSystem    `json:"system"`
	Flats  units.Length `json:"flats"`
	// Spanner is the marking of the spanner that fits: "1/4 W, 5/16 BS", "2BA", "13 mm", "7/16 AF".
	Spanner string `json:"spanner"`
}

// Hexagons returns the hexagons usual for a thread, in every series that has
// it, the likeliest first.
func Hexagons(t Thread) ([]Hexagon, error) { return nil, nil }
