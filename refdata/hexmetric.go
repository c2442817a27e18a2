package refdata

import (
	_ "embed" // the table

	"example.com/benchbook/units"
)

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

// MetricHexagons returns the hexagons of metric bolts and nuts; the leading
// column is the nominal diameter of the bolt.
func MetricHexagons() *Table[MetricHexagon, units.Length] {
	return metricHexagons.get(readMetricHexagons)
}

var (
	//go:embed tables/hex_metric.csv
	textMetricHexagons string
	metricHexagons     lazy[MetricHexagon, units.Length]
)

func readMetricHexagons() *Table[MetricHexagon, units.Length] {
	return build("hex_metric", textMetricHexagons, func(s *scanner) func() MetricHexagon {
		name, iso, old, note := s.must("designation"), s.lengthColumn("iso272"), s.lengthColumn("old_din"), s.must("note")
		oISO, oOld := s.originColumns("iso272"), s.originColumns("old")
		return func() MetricHexagon {
			return MetricHexagon{Name: s.text(name), Bolt: s.metricText(name), ISO: s.needLength(iso), Old: s.needLength(old), ISOOrigin: s.origin(oISO), OldOrigin: s.origin(oOld), Note: s.text(note)}
		}
	}, func(h *MetricHexagon) string { return h.Name }, nil, func(h *MetricHexagon) units.Length { return h.Bolt })
}
