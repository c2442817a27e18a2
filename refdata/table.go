package refdata

import (
	"encoding/json"
	"iter"
	"slices"
	"strings"
	"sync"

	"example.com/benchbook/units"
)

// Sourced is a row of a table: it can say what it rests on.
type Sourced interface {
	Sources() []Source
}

// Table is a reference table: rows in the order of the printed table, each with
// a name of its own, and one leading column of quantities that rows are looked
// up by. Rows come out as copies. A Table is safe for use by several goroutines.
type Table[Row Sourced, Q units.Quantity] struct {
	name        string
	rows        []Row
	rowsAndNone []Row // rows, and a zero row after them
	place       map[string]int32
	folded      func() map[string]int32
	lead        func(*Row) Q
	order       func() []int32
	cited       func() []Source
	err         error
}

// newTable indexes rows. names gives the row's own name first, then other names
// it is known by.
func newTable[Row Sourced, Q units.Quantity](name string, rows []Row, err error, names func(*Row) []string, key func(*Row) string, lead func(*Row) Q) *Table[Row, Q] {
	var none Row
	rowsAndNone := append(rows, none)
	rows = rowsAndNone[:len(rows)]
	t := &Table[Row, Q]{name: name, rows: rows, rowsAndNone: rowsAndNone, lead: lead, err: err, place: make(map[string]int32, len(rows))}
	for i := range rows {
		t.place[key(&rows[i])] = int32(i)
	}
	t.folded = sync.OnceValue(func() map[string]int32 {
		m := make(map[string]int32, 2*len(rows))
		for i := range rows {
			m[fold(key(&rows[i]))] = int32(i)
		}
		if names == nil {
			return m
		}
		other := map[string]int32{}
		for i := range rows {
			for _, n := range names(&rows[i]) {
				n = fold(n)
				if j, taken := other[n]; taken && j != int32(i) {
					other[n] = -1 // two rows claim it: nobody's
					continue
				}
				other[n] = int32(i)
			}
		}
		for n, i := range other {
			if _, taken := m[n]; !taken && i >= 0 {
				m[n] = i
			}
		}
		return m
	})
	t.cited = sync.OnceValue(func() []Source { return cite(rows) })
	t.order = sync.OnceValue(func() []int32 {
		o := make([]int32, len(rows))
		for i := range o {
			o[i] = int32(i)
		}
		slices.SortStableFunc(o, func(a, b int32) int {
			x, y := lead(&rows[a]), lead(&rows[b])
			switch {
			case x < y:
				return -1
			case x > y:
				return 1
			}
			return 0
		})
		return o
	})
	return t
}

// lazy is a table that is read when it is first asked for. It is sync.OnceValue
// in a form that costs nothing when the program starts.
type lazy[Row Sourced, Q units.Quantity] struct {
	once  sync.Once
	table *Table[Row, Q]
}

func (l *lazy[Row, Q]) get(read func() *Table[Row, Q]) *Table[Row, Q] {
	l.once.Do(func() { l.table = read() })
	return l.table
}

// build reads a table. row is given the scanner once, to find its columns, and
// returns what reads one line.
func build[Row Sourced, Q units.Quantity](name, text string, row func(*scanner) func() Row, key func(*Row) string, names func(*Row) []string, lead func(*Row) Q) *Table[Row, Q] {
	s := scan(text)
	read := row(s)
	rows := make([]Row, 0, strings.Count(s.rest, "\n")+1)
	for s.next() {
		rows = append(rows, read())
	}
	return newTable(name, rows, s.err(), names, key, lead)
}

// common is what is asked of every table whatever its rows.
type common interface {
	Name() string
	Len() int
	sources() []Source
	fault() error
	keys() []string
	has(name string) bool
}

func (t *Table[Row, Q]) fault() error { return t.err }

func (t *Table[Row, Q]) has(name string) bool {
	return t.find(name) < len(t.rows)
}

// keys returns the rows' own names in the order of the table.
func (t *Table[Row, Q]) keys() []string {
	out := make([]string, len(t.rows))
	for name, i := range t.place {
		out[i] = name
	}
	return out
}

func (t *Table[Row, Q]) sources() []Source { return t.cited() }

// cite returns each source of the rows once, in the order of the rows.
func cite[Row Sourced](rows []Row) []Source {
	var out []Source
	seen := map[Source]bool{}
	for i := range rows {
		for _, s := range rows[i].Sources() {
			if !seen[s] {
				seen[s] = true
				out = append(out, s)
			}
		}
	}
	return out
}

// Name returns the name of the table.
func (t *Table[Row, Q]) Name() string { return t.name }

// MarshalJSON writes {name, title, version, sha256, rows}. The table of all threads
// is made of several and has no title, version or hash of its own.
func (t *Table[Row, Q]) MarshalJSON() ([]byte, error) {
	entry := register()[t.name]
	return json.Marshal(struct {
		Name    string `json:"name"`
		Title   string `json:"title,omitempty"`
		Version string `json:"version,omitempty"`
		SHA256  string `json:"sha256,omitempty"`
		Rows    []Row  `json:"rows"`
	}{t.name, entry.title, entry.version, entry.sha256, t.rows})
}

// Len returns the number of rows.
func (t *Table[Row, Q]) Len() int { return len(t.rows) }

// All returns the rows in the order of the table. It may be started again.
func (t *Table[Row, Q]) All() iter.Seq[Row] {
	return func(yield func(Row) bool) {
		for i := range t.rows {
			if !yield(t.rows[i]) {
				return
			}
		}
	}
}

// ByName returns the row of that name, and whether there is one. The exact name
// is found at once; failing that, capitals, spaces and inch marks do not count,
// and the other names of a row serve as long as no two rows share them.
func (t *Table[Row, Q]) ByName(name string) (Row, bool) {
	i := t.find(name)
	return t.rowsAndNone[i], i < len(t.rows)
}

// find returns the place of the row of that name, or that of no row, which
// follows the last: the caller then copies one row either way.
func (t *Table[Row, Q]) find(name string) int {
	if i, ok := t.place[name]; ok {
		return int(i)
	}
	if i, ok := t.folded()[fold(name)]; ok {
		return int(i)
	}
	return len(t.rows)
}

// Between returns the rows whose leading column lies from lo to hi, both
// included, smallest first.
func (t *Table[Row, Q]) Between(lo, hi Q) iter.Seq[Row] {
	return func(yield func(Row) bool) {
		order := t.order()
		from, _ := slices.BinarySearchFunc(order, lo, func(i int32, lo Q) int {
			if t.lead(&t.rows[i]) < lo {
				return -1
			}
			return 1
		})
		for _, i := range order[from:] {
			if !(t.lead(&t.rows[i]) <= hi) || !yield(t.rows[i]) {
				return
			}
		}
	}
}

// fold is a name without capitals, spaces and marks that people leave out.
// Numbers stay apart: 1 1/4 is 1-1/4 and never 11/4.
func fold(name string) string {
	var b strings.Builder
	b.Grow(len(name))
	var last rune
	apart := false
	for _, r := range name {
		switch {
		case r == ' ' || r == '"' || r == '″' || r == '#' || r == '.' && b.Len() == 2 && b.String() == "no":
			apart = true
			continue
		case r == '×':
			r = 'x'
		case 'A' <= r && r <= 'Z':
			r += 'a' - 'A'
		}
		if apart && digit(r) && digit(last) {
			b.WriteByte('-')
		}
		b.WriteRune(r)
		last, apart = r, false
	}
	return strings.TrimPrefix(b.String(), "no")
}

func digit(r rune) bool { return '0' <= r && r <= '9' }
