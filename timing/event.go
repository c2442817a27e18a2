package timing

import (
	"strings"

	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
)

// Cam is the inlet or the exhaust cam.
type Cam uint8

// The cams.
const (
	Inlet Cam = iota
	Exhaust
)

// String returns "inlet" or "exhaust".
func (c Cam) String() string {
	if c == Exhaust {
		return "exhaust"
	}
	return "inlet"
}

// MarshalText returns the text of String.
func (c Cam) MarshalText() ([]byte, error) { return []byte(c.String()), nil }

// EventName says which of the four valve events is meant.
type EventName uint8

// The events, in the order in which readings are kept.
const (
	InletOpens EventName = iota
	InletCloses
	ExhaustOpens
	ExhaustCloses
)

// String returns "inlet opens", "inlet closes", "exhaust opens" or "exhaust
// closes".
func (e EventName) String() string {
	return [...]string{"inlet opens", "inlet closes", "exhaust opens", "exhaust closes"}[e&3]
}

// MarshalText returns the text of String.
func (e EventName) MarshalText() ([]byte, error) { return []byte(e.String()), nil }

// Cam returns the cam the event belongs to.
func (e EventName) Cam() Cam { return Cam(e >> 1 & 1) }

// Place is where lift was measured.
type Place uint8

// The places.
const (
	AtValve    Place = iota // on the valve or its collar
	AtFollower              // on the tappet, follower or pushrod
)

// String returns "at the valve" or "at the follower".
func (p Place) String() string {
	if p == AtFollower {
		return "at the follower"
	}
	return "at the valve"
}

// MarshalText returns the text of String.
func (p Place) MarshalText() ([]byte, error) { return []byte(p.String()), nil }

// Check says how an event was or is to be found: events found at different
// checks must not be compared. The zero value is a valve leaving its seat with
// no clearance.
type Check struct {
	Lift      units.Length `json:"lift"`      // lift at which the event counts, from zero up
	At        Place        `json:"at"`        // where that lift is measured
	Clearance units.Length `json:"clearance"` // set between tappet and stem while reading, from zero up
}

// Event is a valve event of a specification: which, where, and how found. Events
// are comparable. The zero value is an inlet valve opening at TDC.
type Event struct {
	Name  EventName           `json:"name"`
	At    units.CrankPosition `json:"at"`
	Check Check               `json:"check"`
}

// String returns the check as [ParseEvent] reads it: "at 1 mm lift at the
// follower, clearance 0.3 mm"; "" for the zero value.
func (c Check) String() string {
	var b strings.Builder
	if c.Lift != 0 || c.At == AtFollower {
		b.WriteString("at " + c.Lift.String() + " lift")
	}
	if c.At == AtFollower {
		b.WriteString(" " + c.At.String())
	}
	if c.Clearance != 0 {
		if b.Len() > 0 {
			b.WriteString(", ")
		}
		b.WriteString("clearance " + c.Clearance.String())
	}
	return b.String()
}

// String returns the event as [ParseEvent] reads it: "inlet opens 25° BTDC at 1
// mm lift, clearance 0.3 mm".
func (e Event) String() string {
	s := e.Name.String() + " " + e.At.String()
	if c := e.Check.String(); strings.HasPrefix(c, "clearance") {
		return s + ", " + c
	} else if c != "" {
		return s + " " + c
	}
	return s
}

// MarshalText returns the text of String.
func (e Event) MarshalText() ([]byte, error) { return []byte(e.String()), nil }

// UnmarshalText reads what [ParseEvent] reads.
func (e *Event) UnmarshalText(b []byte) error {
	v, err := ParseEvent(string(b))
	if err == nil {
		*e = v
	}
	return err
}

const eventRule = "expected such as inlet opens 25 BTDC, or IVO 25 BTDC at 1 mm lift at the follower, clearance 0.3 mm"

// ParseEvent reads an event of a specification: which, where, and then if wanted
// how it is found. "inlet opens", "inlet closes", "exhaust opens" and "exhaust
// closes" may be written IVO, IVC, EVO and EVC; the place is what
// units.ParsePosition reads; the check lift follows "at", the clearance follows
// "clearance", in either order. The error is a fault.Fault.
func ParseEvent(s string) (Event, error) {
	var e Event
	text := strings.TrimSpace(s)
	fail := func(code fault.Code, rule string) (Event, error) {
		return Event{}, fault.Fault{Code: code, Value: text, Rule: rule}
	}
	rest, ok := "", false
	for i, names := range [4][2]string{{"inlet opens", "IVO"}, {"inlet closes", "IVC"}, {"exhaust opens", "EVO"}, {"exhaust closes", "EVC"}} {
		for _, n := range names {
			if len(text) > len(n) && strings.EqualFold(text[:len(n)], n) && text[len(n)] == ' ' {
				e.Name, rest, ok = EventName(i), strings.TrimSpace(text[len(n):]), true
			}
		}
	}
	if !ok {
		return fail(fault.UnknownName, eventRule)
	}
	cut := len(rest)
	for _, word := range [2]string{" at ", "clearance "} {
		if i := index(rest, word); i >= 0 && i < cut {
			cut = i
		}
	}
	at, err := units.ParsePosition(strings.TrimRight(rest[:cut], ", "))
	if err != nil {
		f := fault.Faults(err)[0]
		return fail(f.Code, f.Rule)
	}
	e.At = at
	rest = strings.Trim(rest[cut:], ", ")
	var lift, gap bool
	for rest != "" {
		word := ""
		switch {
		case index(rest, "at the follower") == 0:
			if e.Check.At == AtFollower {
				return fail(fault.Conflict, "where the lift is measured is said twice")
			}
			e.Check.At, rest = AtFollower, strings.TrimLeft(rest[len("at the follower"):], ", ")
			continue
		case index(rest, "at the valve") == 0:
			rest = strings.TrimLeft(rest[len("at the valve"):], ", ")
			continue
		case index(rest, "at ") == 0 && !lift:
			word, lift = "at ", true
		case index(rest, "clearance ") == 0 && !gap:
			word, gap = "clearance ", true
		default:
			return fail(fault.BadForm, eventRule)
		}
		rest = rest[len(word):]
		end := len(rest)
		for _, stop := range [3]string{",", " at ", "clearance"} {
			if i := index(rest, stop); i >= 0 && i < end {
				end = i
			}
		}
		figure := strings.TrimSpace(rest[:end])
		rest = strings.TrimLeft(rest[end:], ", ")
		if word == "at " && len(figure) > 5 && strings.EqualFold(figure[len(figure)-5:], " lift") {
			figure = figure[:len(figure)-5]
		}
		l, err := units.ParseLength(figure)
		if err != nil {
			f := fault.Faults(err)[0]
			return fail(f.Code, f.Rule)
		}
		if word == "at " {
			e.Check.Lift = l
		} else {
			e.Check.Clearance = l
		}
	}
	if err := e.Check.err(); err != nil {
		f := fault.Faults(err)[0]
		return fail(f.Code, f.Path+": "+f.Rule)
	}
	return e, nil
}

// index finds a word whatever its case. The words are ASCII, so that places in
// the folded text are those in the text only while the fold is ASCII too.
func index(s, word string) int {
	for i := 0; i+len(word) <= len(s); i++ {
		if strings.EqualFold(s[i:i+len(word)], word) {
			return i
		}
	}
	return -1
}
