package refdata

import (
	_ "embed" // the tables

	"example.com/benchbook/units"
)

// Drill is a drill known by a number or a letter.
type Drill struct {
	Name     string       `json:"name"` // "#7", "F"
	Diameter units.Length `json:"diameter"`
	Origin   Origin       `json:"origin"`
	Note     string       `json:"note,omitempty"`
}

// Sources returns every source the row rests on.
func (d Drill) Sources() []Source { return gather(d.Origin) }

// MetricDrill is the tapping drill of a metric coarse thread.
type MetricDrill struct {
	Thread   string       `json:"thread"` // "M6"
	Pitch    units.Length `json:"pitch"`
	Diameter units.Length `json:"diameter"`
	Origin   Origin       `json:"origin"`
	Note     string       `json:"note,omitempty"`
}

// Sources returns every source the row rests on.
func (m MetricDrill) Sources() []Source { return gather(m.Origin) }

// NumberDrills returns the number drills #1 to #97, #1 being the largest; the
// leading column is the diameter.
func NumberDrills() *Table[Drill, units.Length] { return numberDrills.get(readNumberDrills) }

// LetterDrills returns the letter drills A to Z, A being the smallest; the
// leading column is the diameter.
func LetterDrills() *Table[Drill, units.Length] { return letterDrills.get(readLetterDrills) }

// MetricDrills returns the tapping drills of ISO 2306 for metric coarse
// threads; the leading column is the diameter.
func MetricDrills() *Table[MetricDrill, units.Length] { return metricDrills.get(readMetricDrills) }

var (
	//go:embed tables/drills_number.csv
	textNumberDrills string
	//go:embed tables/drills_letter.csv
	textLetterDrills string
	//go:embed tables/drills_iso2306.csv
	textMetricDrills string

	numberDrills lazy[Drill, units.Length]
	letterDrills lazy[Drill, units.Length]
	metricDrills lazy[MetricDrill, units.Length]
)

func drillName(d *Drill) string           { return d.Name }
func drillDiameter(d *Drill) units.Length { return d.Diameter }

func readDrill(mark string) func(*scanner) func() Drill {
	return func(s *scanner) func() Drill {
		name, diameter, origin, note := s.must("drill"), s.lengthColumn("diameter"), s.originColumns(""), s.must("note")
		return func() Drill {
			return Drill{Name: mark + s.text(name), Diameter: s.needLength(diameter), Origin: s.origin(origin), Note: s.text(note)}
		}
	}
}

func readNumberDrills() *Table[Drill, units.Length] {
	return build("drills_number", textNumberDrills, readDrill("#"), drillName, nil, drillDiameter)
}

func readLetterDrills() *Table[Drill, units.Length] {
	return build("drills_letter", textLetterDrills, readDrill(""), drillName, nil, drillDiameter)
}

func readMetricDrills() *Table[MetricDrill, units.Length] {
	return build("drills_iso2306", textMetricDrills, func(s *scanner) func() MetricDrill {
		name, pitch, drill, origin, note := s.must("designation"), s.lengthColumn("pitch"), s.lengthColumn("tapping_drill"), s.originColumns(""), s.must("note")
		return func() MetricDrill {
			return MetricDrill{Thread: s.text(name), Pitch: s.needLength(pitch), Diameter: s.needLength(drill), Origin: s.origin(origin), Note: s.text(note)}
		}
	}, func(d *MetricDrill) string { return d.Thread }, nil, func(d *MetricDrill) units.Length { return d.Diameter })
}
