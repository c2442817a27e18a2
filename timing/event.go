package timing

import (
	"example.com/benchbook/units"
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
