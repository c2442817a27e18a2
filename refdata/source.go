package refdata

import "example.com/benchbook/units/fault"

// Status says how a figure is known. It never rises on the way into a table.
type Status uint8

// The statuses, best first. The zero value is none of them: a figure without a
// status is a fault.
const (
	Standard       Status = iota + 1 // printed in a standard, read there
	Published                        // printed in a book, paper or page that is named
	Derived                          // computed here from a named formula or definition
	CommonPractice                   // a fact of the trade; no source
	FromMemory                       // written from memory of a named source, not seen
)

// String returns the status in words: "common practice".
func (s Status) String() string {
	switch s {
	case Standard:
		return "standard"
	case Published:
		return "published"
	case Derived:
		return "derived"
	case CommonPractice:
		return "common practice"
	case FromMemory:
		return "from memory"
	}
	return "no status"
}

// MarshalText returns the words of String.
func (s Status) MarshalText() ([]byte, error) { return []byte(s.String()), nil }

// UnmarshalText reads the words of String. The error is a fault.UnknownName.
func (s *Status) UnmarshalText(text []byte) error {
	*s = statusNamed(string(text))
	if *s == 0 && string(text) != s.String() {
		return fault.Fault{Code: fault.UnknownName, Path: "status", Value: string(text), Rule: "standard, published, derived, common practice or from memory"}
	}
	return nil
}

// statusNamed returns the status of the words used in the tables, zero for others.
func statusNamed(words string) Status {
	for st := Standard; st <= FromMemory; st++ {
		if st.String() == words {
			return st
		}
	}
	return 0
}

// Source names where a figure or formula comes from.
type Source struct {
	Title  string `json:"title"`            // standard, book or paper with its edition
	Clause string `json:"clause,omitempty"` // clause, table, example or page
	Read   string `json:"read,omitempty"`   // where it was read, if not in the thing itself
	Status Status `json:"status"`
}

// String returns the source in one line.
func (s Source) String() string {
	t := s.Title
	if s.Clause != "" {
		t += ", " + s.Clause
	}
	if s.Read != "" {
		t += " (read in " + s.Read + ")"
	}
	if s.Status == 0 {
		return t
	}
	return t + " [" + s.Status.String() + "]"
}

// Practice returns the source of a fact of the trade that has none.
func Practice() Source { return Source{Title: "common practice, no source", Status: CommonPractice} }
