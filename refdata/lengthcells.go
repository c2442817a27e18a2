package refdata

import (
	"strings"

	"example.com/benchbook/units"
)

// lengthColumn is a column of lengths in inches or millimetres.
type lengthColumn struct {
	at   int
	inch bool
}

func (s *scanner) lengthColumn(name string) lengthColumn {
	if i := s.column(name + "_in"); i >= 0 {
		return lengthColumn{i, true}
	}
	return lengthColumn{s.column(name + "_mm"), false}
}

func (s *scanner) length(c lengthColumn) Figure[units.Length] {
	if c.inch {
		return s.inches(c.at)
	}
	return figure(s, c.at, units.Millimetres)
}

// inches reads a decimal of inches so that it is the nearest float64 to the exact
// length, as reading the text "0.9200 in" gives it: 0.92 * 25.4 is not.
func (s *scanner) inches(column int) Figure[units.Length] {
	if n, places, ok := digits(s.text(column)); ok && n < 1e12 && n > -1e12 {
		return Known(units.Millimetres(float64(n*254) / powers[places+1]))
	}
	return figure(s, column, units.Inches)
}

func (s *scanner) needInches(column int) units.Length {
	return s.needLength(lengthColumn{column, true})
}

func (s *scanner) needLength(c lengthColumn) units.Length {
	f := s.length(c)
	if !f.known {
		s.fail("a length is missing")
	}
	return f.value
}

// inchText reads a size in inches as the trade writes it: "1/4", "1 3/8", "1.370".
func (s *scanner) inchText(column int) units.Length {
	l, err := units.ParseLength(s.text(column) + " in")
	if err != nil {
		s.faults = append(s.faults, err)
	}
	return l
}

// metricText reads the diameter in a designation such as "M10".
func (s *scanner) metricText(column int) units.Length {
	l, err := units.ParseLength(strings.TrimPrefix(s.text(column), "M") + " mm")
	if err != nil {
		s.faults = append(s.faults, err)
	}
	return l
}
