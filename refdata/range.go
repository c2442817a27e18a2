package refdata

import "example.com/benchbook/units"

// Range is a range of figures, either end of which a table may leave open. The
// zero Range is open at both ends: nothing is known.
type Range[Q units.Quantity] struct {
	Low  Figure[Q] `json:"low"`
	High Figure[Q] `json:"high"`
}

// RangeOf returns the range from low to high, both included.
func RangeOf[Q units.Quantity](low, high Q) Range[Q] { return Range[Q]{Known(low), Known(high)} }

// Given reports whether at least one end is known.
func (r Range[Q]) Given() bool { return r.Low.known || r.High.known }

// Holds reports whether q lies in the range, known ends included. An unknown end
// excludes nothing.
func (r Range[Q]) Holds(q Q) bool {
	return !(r.Low.known && q < r.Low.value) && !(r.High.known && q > r.High.value) && q == q
}

// Ends returns both ends, and whether both are known.
func (r Range[Q]) Ends() (low, high Q, ok bool) {
	return r.Low.value, r.High.value, r.Low.known && r.High.known
}

// String returns text such as "0.35 to 0.4", "0.4", "at most 40°", "unknown".
func (r Range[Q]) String() string {
	switch {
	case !r.Given():
		return "unknown"
	case !r.Low.known:
		return "at most " + r.High.String()
	case !r.High.known:
		return "at least " + r.Low.String()
	case r.Low == r.High:
		return r.Low.String()
	}
	return r.Low.String() + " to " + r.High.String()
}
