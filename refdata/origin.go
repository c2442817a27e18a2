package refdata

import (
	_ "embed" // the tables
	"encoding/json"
	"strings"
	"sync"
)

// Origin says what a group of columns of one row rests on: one to four sources
// and one status, that of the weakest. It is small and comparable. The zero
// Origin goes with columns the row leaves empty.
type Origin struct {
	source [4]uint8 // place in the list of sources, counted from 1
	status Status
}

// Status returns how the figures are known; zero if there are none.
func (o Origin) Status() Status { return o.status }

// Given reports whether the row has figures in this group of columns.
func (o Origin) Given() bool { return o.status != 0 }

// Sources returns the sources, the leading one first, each with the status of
// the figures that were taken from it.
func (o Origin) Sources() []Source {
	var out []Source
	for _, i := range o.source {
		if s, ok := sources().at(int(i)); ok {
			s.Status = o.status
			out = append(out, s)
		}
	}
	return out
}

// Source returns the leading source, the zero Source if there are no figures.
func (o Origin) Source() Source {
	s, _ := sources().at(int(o.source[0]))
	s.Status = o.status
	return s
}

// String returns the sources in one line.
func (o Origin) String() string {
	if !o.Given() {
		return "no figures"
	}
	var parts []string
	for _, s := range o.Sources() {
		s.Status = 0
		parts = append(parts, s.String())
	}
	return strings.Join(parts, "; ") + " [" + o.status.String() + "]"
}

// MarshalJSON writes the list of sources.
func (o Origin) MarshalJSON() ([]byte, error) { return json.Marshal(o.Sources()) }

//go:embed tables/sources.csv
var sourcesText string

// sourceList is sources.csv: key, title, edition, clause, where it was read.
type sourceList struct {
	rows  []Source
	place map[string]uint8
	err   error
}

func (l *sourceList) at(i int) (Source, bool) {
	if i < 1 || i > len(l.rows) {
		return Source{}, false
	}
	return l.rows[i-1], true
}

var sources = sync.OnceValue(func() *sourceList {
	l := &sourceList{place: map[string]uint8{}}
	s := scan(sourcesText)
	key, title, edition, clause, read := s.column("key"), s.column("title"), s.column("edition"), s.column("clause"), s.column("read")
	for s.next() {
		t := s.text(title)
		if e := s.text(edition); e != "" {
			t += ", " + e
		}
		l.rows = append(l.rows, Source{Title: t, Clause: s.text(clause), Read: s.text(read)})
		if len(l.rows) > 255 {
			s.fail("more sources than an Origin can count")
		}
		l.place[s.text(key)] = uint8(len(l.rows))
	}
	l.err = s.err()
	return l
})

// gather returns the sources of several origins, each once.
func gather(origins ...Origin) []Source {
	var out []Source
	for _, o := range origins {
		out = joined(out, o.Sources())
	}
	return out
}
