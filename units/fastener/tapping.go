package fastener

import (
	"example.com/benchbook/refdata"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
)

// Convention says what "100 % of thread" means. For Whitworth, cycle and BA
// threads both are twice the basic depth; for the 60° flat forms they differ,
// 75 % by one being 90 % by the other, so it must be named.
type Convention uint8

// The conventions. The zero value is none of them.
const (
	ChartDepth  Convention = iota + 1 // 60° flat forms: 3H/4 a side, 1.299038 p in all, as the usual drill charts
	BasicHeight                       // 60° flat forms: 5H/8 a side, 1.082532 p in all, the basic height
)

// Drill is a drill of a named size.
type Drill struct {
	Name     string       `json:"name"` // "#7", "F", "17/64 in", "6.8 mm"
	Diameter units.Length `json:"diameter"`
}

// Tapping is a drill for a thread and what it gives.
type Tapping struct {
	Thread     Thread        `json:"thread"`
	Hole       units.Length  `json:"hole"` // the hole that gives exactly what was wanted
	Drill      Drill         `json:"drill"`
	Engagement units.Ratio   `json:"engagement"` // that the drill gives, a drilled hole being taken to size
	Convention Convention    `json:"convention"`
	Reason     fault.Reason  `json:"reason"` // why no drill of the set serves
	Basis      refdata.Basis `json:"basis"`
}

// TappingHole returns the hole for a wanted engagement of a thread:
// major - engagement × 2h, 2h as the convention has it.
func TappingHole(t Thread, engagement units.Ratio, c Convention) (units.Length, error) {
	return 0, fault.Fault{Code: fault.Missing, Path: "thread", Rule: "not computed yet"}
}

// Engagement returns the part of full thread depth that a hole leaves.
func Engagement(t Thread, hole units.Length, c Convention) (units.Ratio, error) {
	return 0, fault.Fault{Code: fault.Missing, Path: "thread", Rule: "not computed yet"}
}

// TappingDrill returns the drill of a set nearest to the hole wanted.
func TappingDrill(t Thread, engagement units.Ratio, c Convention, set []Drill) (Tapping, error) {
	return Tapping{Reason: fault.Reason{Code: "not-computed", Text: "not computed yet"}}, nil
}
