package refdata

import (
	_ "embed" // the table

	"example.com/benchbook/units"
)

// Wire is a size of the Standard Wire Gauge.
type Wire struct {
	Gauge    string       `json:"gauge"` // "7/0" (largest) to "50"
	Diameter units.Length `json:"diameter"`
	Origin   Origin       `json:"origin"`
	Note     string       `json:"note,omitempty"`
}

// Sources returns every source the row rests on.
func (w Wire) Sources() []Source { return gather(w.Origin) }

// WireGauge returns the Standard Wire Gauge (SWG); the leading column is the
// diameter. ByName takes "10" and "10 SWG".
func WireGauge() *Table[Wire, units.Length] { return wireGauge.get(readWireGauge) }

var (
	//go:embed tables/wire_swg.csv
	textWire string

	wireGauge lazy[Wire, units.Length]
)

func readWireGauge() *Table[Wire, units.Length] {
	return build("wire_swg", textWire, func(s *scanner) func() Wire {
		gauge, diameter, origin, note := s.must("swg"), s.lengthColumn("diameter"), s.originColumns(""), s.must("note")
		return func() Wire {
			return Wire{Gauge: s.text(gauge), Diameter: s.needLength(diameter), Origin: s.origin(origin), Note: s.text(note)}
		}
	}, func(w *Wire) string { return w.Gauge }, func(w *Wire) []string { return []string{w.Gauge + " SWG"} }, func(w *Wire) units.Length { return w.Diameter })
}
