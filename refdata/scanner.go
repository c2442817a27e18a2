package refdata

import (
	"errors"
	"strconv"
	"strings"
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

// need returns the number in a cell that must have one.
func (s *scanner) need(column int) float64 {
	x, ok := s.number(column)
	if !ok {
		s.fail("a figure is missing")
	}
	return x
}

func (s *scanner) fail(why string) {
	s.faults = append(s.faults, errors.New("line "+strconv.Itoa(s.line)+": "+why))
}

func (s *scanner) err() error { return errors.Join(s.faults...) }
