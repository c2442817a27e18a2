package fastener

import (
	"math"

	"example.com/benchbook/units"
)

// Form is the shape of a thread's section.
type Form uint8

// The forms. The zero value is none of them.
const (
	WhitworthForm   Form = iota + 1 // 55°, rounded crest and root: BS 84, ISO 228-1
	CycleForm                       // 60°, rounded crest and root of radius p/6: BS 811
	AssociationForm                 // 47½°, rounded: BS 93
	MetricForm                      // 60°, flat crest: ISO 68-1
	UnifiedForm                     // 60°, flat crest, rounded root (UNR): ASME B1.1
)

// String returns the name with its angle: "Whitworth 55°".
func (f Form) String() string {
	switch f {
	case WhitworthForm:
		return "Whitworth 55°"
	case CycleForm:
		return "cycle 60°"
	case AssociationForm:
		return "BA 47½°"
	case MetricForm:
		return "metric 60°"
	case UnifiedForm:
		return "Unified 60°"
	}
	return "no form"
}

// MarshalText returns the words of String.
func (f Form) MarshalText() ([]byte, error) { return []byte(f.String()), nil }

// Included returns the angle between the flanks; zero for no form.
func (f Form) Included() units.Angle {
	switch f {
	case WhitworthForm:
		return 55 * units.Degree
	case CycleForm, MetricForm, UnifiedForm:
		return 60 * units.Degree
	case AssociationForm:
		return units.Degrees(47.5)
	}
	return 0
}

// tan and sec return the tangent and secant of half the included angle.
func (f Form) tan() float64 { return math.Tan(f.Included().SI() / 2) }
func (f Form) sec() float64 { return 1 / math.Cos(f.Included().SI()/2) }

// triangle returns H, the height of the sharp triangle, in pitches:
// 1/(2 tan(included/2)).
func (f Form) triangle() float64 { return 1 / (2 * f.tan()) }

// depth returns h, the basic depth of the thread, in pitches: crest to root of
// the rounded forms, 5H/8 of the 60° flat ones, whose nut it is.
func (f Form) depth() float64 {
	switch f {
	case WhitworthForm:
		return f.triangle() * 2 / 3
	case CycleForm:
		return f.triangle() - 1.0/3
	case AssociationForm:
		return 0.6
	case MetricForm, UnifiedForm:
		return f.triangle() * 5 / 8
	}
	return 0
}
