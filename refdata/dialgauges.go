package refdata

import (
	_ "embed" // the table

	"example.com/benchbook/units"
)

// DialGauge is the largest error a dial gauge of one range may have.
type DialGauge struct {
	Name          string              `json:"name"` // "0.01 mm, 5 mm to 10 mm"
	Graduation    units.Length        `json:"graduation"`
	Range         Range[units.Length] `json:"range"` // above the first, up to the second
	Hysteresis    units.Length        `json:"hysteresis"`
	Repeatability units.Length        `json:"repeatability"`
	TenthTurn     units.Length        `json:"tenth_turn"` // largest error of indication over a tenth of a turn
	HalfTurn      units.Length        `json:"half_turn"`
	OneTurn       units.Length        `json:"one_turn"`
	FullRange     units.Length        `json:"full_range"`
	Origin        Origin              `json:"origin"`
	Note          string              `json:"note,omitempty"`
}

// Sources returns every source the row rests on.
func (d DialGauge) Sources() []Source { return gather(d.Origin) }

// DialGauges returns the errors allowed to dial gauges; the leading column is the
// upper end of the measuring range.
func DialGauges() *Table[DialGauge, units.Length] { return dialGauges.get(readDialGauges) }

var (
	//go:embed tables/dial_gauges.csv
	textDialGauges string
	dialGauges     lazy[DialGauge, units.Length]
)

func readDialGauges() *Table[DialGauge, units.Length] {
	return build("dial_gauges", textDialGauges, func(s *scanner) func() DialGauge {
		grad, over, to, note, origin := s.must("graduation_mm"), s.must("range_over_mm"), s.must("range_to_mm"), s.must("note"), s.originColumns("")
		hy, re, tenth, half, one, full := s.must("hysteresis_um"), s.must("repeatability_um"), s.must("tenth_turn_um"), s.must("half_turn_um"), s.must("one_turn_um"), s.must("full_range_um")
		return func() DialGauge {
			return DialGauge{
				Name:       s.text(grad) + " mm, " + s.text(over) + " mm to " + s.text(to) + " mm",
				Graduation: needed(s, grad, units.Millimetres), Range: between(s, rangeColumns{over, to}, units.Millimetres),
				Hysteresis: needed(s, hy, units.Micrometres), Repeatability: needed(s, re, units.Micrometres), TenthTurn: needed(s, tenth, units.Micrometres),
				HalfTurn: needed(s, half, units.Micrometres), OneTurn: needed(s, one, units.Micrometres), FullRange: needed(s, full, units.Micrometres),
				Origin: s.origin(origin), Note: s.text(note),
			}
		}
	}, func(d *DialGauge) string { return d.Name }, nil, func(d *DialGauge) units.Length { return d.Range.High.value })
}
