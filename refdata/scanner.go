package refdata

import (
	"errors"
	"strconv"
	"strings"

	"example.com/benchbook/units"
)

// scanner reads a table's CSV text (RFC 4180, line feeds, no line feed within a
// cell) without copying it. The text is fixed in the program, so that faults
// are the library's own: they are gathered, and a test sees that there are none.
type scanner struct {
	rest   string
	head   []string
	cells  []string
	line   int
	faults []error
	recent []recent
}

func scan(text string) *scanner {
	s := &scanner{rest: text}
	if s.next() {
		s.head = append([]string(nil), s.cells...)
	}
	return s
}

// next splits the next line into cells.
func (s *scanner) next() bool {
	if s.rest == "" {
		return false
	}
	line, rest, _ := strings.Cut(s.rest, "\n")
	s.rest = rest
	s.line++
	s.cells = s.cells[:0]
	for {
		if line != "" && line[0] == '"' {
			cell, after, ok := quoted(line[1:])
			if !ok {
				s.fail("bad quotes")
			}
			s.cells = append(s.cells, cell)
			if after == "" {
				break
			}
			line = after[1:]
			continue
		}
		i := strings.IndexByte(line, ',')
		if i < 0 {
			s.cells = append(s.cells, line)
			break
		}
		s.cells = append(s.cells, line[:i])
		line = line[i+1:]
	}
	if s.head != nil && len(s.cells) != len(s.head) {
		s.fail("wrong number of cells")
		for len(s.cells) < len(s.head) {
			s.cells = append(s.cells, "")
		}
	}
	return true
}

// quoted returns the cell up to its closing quote, and what follows it: nothing
// or a comma and more.
func quoted(line string) (cell, after string, ok bool) {
	for i := 0; i < len(line); i++ {
		if line[i] != '"' {
			continue
		}
		if i+1 < len(line) && line[i+1] == '"' {
			i++
			continue
		}
		after = line[i+1:]
		if after != "" && after[0] != ',' {
			return strings.ReplaceAll(line[:i], `""`, `"`), "", false
		}
		return strings.ReplaceAll(line[:i], `""`, `"`), after, true
	}
	return line, "", false
}

// column returns the place of a column, or -1 if the table has none so named:
// its cells then read as empty.
func (s *scanner) column(name string) int {
	for i, h := range s.head {
		if h == name {
			return i
		}
	}
	return -1
}

// must is column for one the table has to have.
func (s *scanner) must(name string) int {
	i := s.column(name)
	if i < 0 {
		s.fail("no column " + name)
	}
	return i
}

func (s *scanner) text(column int) string {
	if column < 0 {
		return ""
	}
	return s.cells[column]
}

// number returns the number in a cell and whether there is one.
func (s *scanner) number(column int) (float64, bool) {
	t := s.text(column)
	if t == "" {
		return 0, false
	}
	if x, ok := decimal(t); ok {
		return x, true
	}
	x, err := strconv.ParseFloat(t, 64)
	if err != nil {
		s.fail("not a number: " + t)
		return 0, false
	}
	return x, true
}

// decimal reads a plain decimal of up to 15 digits.
func decimal(t string) (float64, bool) {
	n, places, ok := digits(t)
	return float64(n) / powers[places], ok
}

// powers are exact in a float64, and so are whole numbers of 15 digits: their
// quotient is rounded once, so that it is what strconv.ParseFloat gives, in a
// fifth of the time.
var powers = [...]float64{1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15, 1e16}

// digits reads a plain decimal of up to 15 digits as a whole number and the
// decimal places it is to be moved by.
func digits(t string) (n int64, places int, ok bool) {
	negative := t != "" && t[0] == '-'
	if negative {
		t = t[1:]
	}
	if t == "" || t == "." || len(t) > 15 {
		return 0, 0, false
	}
	point := false
	for i := 0; i < len(t); i++ {
		c := t[i] - '0'
		switch {
		case c <= 9:
			n = n*10 + int64(c)
			if point {
				places++
			}
		case t[i] == '.' && !point:
			point = true
		default:
			return 0, 0, false
		}
	}
	if negative {
		n = -n
	}
	return n, places, true
}

// need returns the number in a cell that must have one.
func (s *scanner) need(column int) float64 {
	x, ok := s.number(column)
	if !ok {
		s.fail("a figure is missing")
	}
	return x
}

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

// originColumns are the two columns that say what a group of others rests on.
type originColumns struct{ source, status, slot int }

// recent is the origin that a pair of columns had in the row before: it is
// usually the same again.
type recent struct {
	keys, words string
	origin      Origin
}

func (s *scanner) originColumns(group string) originColumns {
	s.recent = append(s.recent, recent{})
	slot := len(s.recent) - 1
	if group == "" {
		return originColumns{s.must("source"), s.must("status"), slot}
	}
	return originColumns{s.column("source_" + group), s.column("status_" + group), slot}
}

// origin reads a pair such as "bs84-form+bsw-tool-seller", "published".
func (s *scanner) origin(c originColumns) Origin {
	keys, words := s.text(c.source), s.text(c.status)
	if keys == "" && words == "" {
		return Origin{}
	}
	last := &s.recent[c.slot]
	if last.keys == keys && last.words == words {
		return last.origin
	}
	o := Origin{status: statusNamed(words)}
	if o.status == 0 {
		s.fail("no such status: " + words)
	}
	list, n := sources(), 0
	for key := range strings.SplitSeq(keys, "+") {
		p := list.place[key]
		if p == 0 || n == len(o.source) {
			s.fail("no such source, or too many: " + key)
			continue
		}
		o.source[n] = p
		n++
	}
	*last = recent{keys, words, o}
	return o
}

func (s *scanner) fail(why string) {
	s.faults = append(s.faults, errors.New("line "+strconv.Itoa(s.line)+": "+why))
}

func (s *scanner) err() error { return errors.Join(s.faults...) }

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
