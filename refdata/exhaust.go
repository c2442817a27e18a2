package refdata

import (
	_ "embed" // the table

	"example.com/benchbook/units"
)

// ExhaustGas is the carbon monoxide and oxygen in dry exhaust of petrol at an excess
// air ratio, at equilibrium: indicative only.
type ExhaustGas struct {
	Name   string      `json:"name"` // "0.88"
	Lambda units.Ratio `json:"lambda"`
	AFR    units.Ratio `json:"computed_afr"`
	CO     units.Ratio `json:"computed_co"` // of dry exhaust by volume
	O2     units.Ratio `json:"computed_o2"`
	Origin Origin      `json:"origin"`
	Note   string      `json:"note,omitempty"`
}

// Sources returns every source the row rests on.
func (l ExhaustGas) Sources() []Source { return gather(l.Origin) }

// ExhaustGases returns exhaust composition by excess air ratio, the leading column.
func ExhaustGases() *Table[ExhaustGas, units.Ratio] { return exhaustGases.get(readExhaustGases) }

var (
	//go:embed tables/lambda_co.csv
	textLambdaCO string
	exhaustGases lazy[ExhaustGas, units.Ratio]
)

func readExhaustGases() *Table[ExhaustGas, units.Ratio] {
	return build("lambda_co", textLambdaCO, func(s *scanner) func() ExhaustGas {
		lambda, afr, co, o2, note, origin := s.must("lambda"), s.must("computed_afr_petrol"), s.must("computed_co_dry_pct"), s.must("computed_o2_dry_pct"), s.must("note"), s.originColumns("")
		return func() ExhaustGas {
			return ExhaustGas{Name: s.text(lambda), Lambda: needed(s, lambda, units.Value), AFR: needed(s, afr, units.Value), CO: needed(s, co, units.Percents), O2: needed(s, o2, units.Percents), Origin: s.origin(origin), Note: s.text(note)}
		}
	}, func(l *ExhaustGas) string { return l.Name }, nil, func(l *ExhaustGas) units.Ratio { return l.Lambda })
}
