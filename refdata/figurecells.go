package refdata

import "example.com/benchbook/units"

// rangeColumns are the columns name_low and name_high, with the unit between or
// after: name_low_mm or name_low.
type rangeColumns struct{ low, high int }

func (s *scanner) rangeColumns(name, unit string) rangeColumns {
	return rangeColumns{s.must(name + "_low" + unit), s.must(name + "_high" + unit)}
}

// figure reads a cell by a unit's constructor.
func figure[Q units.Quantity](s *scanner, column int, unit func(float64) Q) Figure[Q] {
	x, ok := s.number(column)
	if !ok {
		return Figure[Q]{}
	}
	return Known(unit(x))
}

// between reads a pair of cells by a unit's constructor.
func between[Q units.Quantity](s *scanner, c rangeColumns, unit func(float64) Q) Range[Q] {
	return Range[Q]{figure(s, c.low, unit), figure(s, c.high, unit)}
}

// needed reads a cell that must have a figure.
func needed[Q units.Quantity](s *scanner, column int, unit func(float64) Q) Q {
	return unit(s.need(column))
}
