package refdata

import (
	_ "embed" // the table
	"strings"

	"example.com/benchbook/units"
)

// Limit is a workshop limit: the range a part is fitted or set to, and the range
// in which it is worn out. All of them are common practice with no source, and
// the machine's own figure comes before any of them.
type Limit struct {
	Key       string     `json:"key"`  // "ring-gap", "piston-clearance:forged-alloy"
	Part      string     `json:"part"` // "piston ring end gap"
	Material  string     `json:"material,omitempty"`
	Size      string     `json:"size,omitempty"` // what the limit grows with: "bore"; "" if it does not
	Fit       LimitRange `json:"fit"`
	Renew     LimitRange `json:"renew"`                // from its near end the part may be used up, beyond its far end it is
	WearsDown bool       `json:"wears_down"`           // wear makes the figure smaller, as with a spring's load
	Signed    bool       `json:"signed"`               // the figure may be below zero
	LowMeans  string     `json:"low_means,omitempty"`  // what a figure below the fit means, and what to do
	HighMeans string     `json:"high_means,omitempty"` // the same above it
	ReadWith  string     `json:"read_with"`
	Caution   Caution    `json:"caution,omitempty"` // beside DeferToManual; "" for none
	Origin    Origin     `json:"origin"`
	Note      string     `json:"note,omitempty"`
	place     int
}

// Sources returns every source the row rests on.
func (l Limit) Sources() []Source { return gather(l.Origin) }

// WorkshopLimits returns workshop limits, status common practice; the leading
// column is the place in the table. CheckLimit checks readings against them.
func WorkshopLimits() *Table[Limit, units.Ratio] { return workshopLimits.get(readWorkshopLimits) }

// LimitRange is the range of a limit in the quantity it is read in: exactly one
// of the four is given, or none.
type LimitRange struct {
	Length  Range[units.Length] `json:"length,omitzero"`
	PerSize Range[units.Ratio]  `json:"per_size,omitzero"` // length for each unit of the size it grows with
	Force   Range[units.Force]  `json:"force,omitzero"`
	Share   Range[units.Ratio]  `json:"share,omitzero"`
}

// Given reports whether there is a range.
func (r LimitRange) Given() bool {
	return r.Length.Given() || r.PerSize.Given() || r.Force.Given() || r.Share.Given()
}

// String returns the range: "0.025 mm to 0.075 mm", "0.003 to 0.005 of the size".
func (r LimitRange) String() string {
	switch {
	case r.Length.Given():
		return r.Length.String()
	case r.PerSize.Given():
		return r.PerSize.String() + " of the size"
	case r.Force.Given():
		return r.Force.String()
	}
	return r.Share.String()
}

func (s *scanner) limitRange(c rangeColumns, unit string) LimitRange {
	switch unit {
	case "mm":
		return LimitRange{Length: between(s, c, units.Millimetres)}
	case "per size":
		return LimitRange{PerSize: between(s, c, units.Value)}
	case "n":
		return LimitRange{Force: between(s, c, units.Newtons)}
	case "share":
		return LimitRange{Share: between(s, c, units.Value)}
	}
	s.fail("no such unit: " + unit)
	return LimitRange{}
}

var (
	//go:embed tables/workshop_limits.csv
	textLimits     string
	workshopLimits lazy[Limit, units.Ratio]
)

func readWorkshopLimits() *Table[Limit, units.Ratio] {
	return build("workshop_limits", textLimits, func(s *scanner) func() Limit {
		key, part, material, size := s.must("key"), s.must("part"), s.must("material"), s.must("size")
		unit, wears, signed := s.must("unit"), s.must("wears"), s.must("signed")
		fit, renew := s.rangeColumns("fit", ""), s.rangeColumns("renew", "")
		low, high, with, caution, note, origin := s.must("low_means"), s.must("high_means"), s.must("read_with"), s.must("caution"), s.must("note"), s.originColumns("")
		place := 0
		return func() Limit {
			place++
			return Limit{
				Key: s.text(key), Part: s.text(part), Material: s.text(material), Size: s.text(size),
				Fit: s.limitRange(fit, s.text(unit)), Renew: s.limitRange(renew, s.text(unit)),
				WearsDown: s.text(wears) == "down", Signed: s.text(signed) == "yes",
				LowMeans: s.text(low), HighMeans: s.text(high), ReadWith: s.text(with), Caution: Caution(s.text(caution)),
				Origin: s.origin(origin), Note: s.text(note), place: place,
			}
		}
	}, func(l *Limit) string { return l.Key }, func(l *Limit) []string { return []string{l.Part, strings.ReplaceAll(l.Key, "-", " ")} }, func(l *Limit) units.Ratio { return units.Value(float64(l.place)) })
}
