package measure

import "example.com/benchbook/units"

// Interval is a range of figures: a starting point of the trade, or what a
// formula gives over the range of what is not known. It says nothing of where
// in it the figure lies.
type Interval[Q units.Quantity] struct {
	Low  Q `json:"low"`
	High Q `json:"high"`
}

// Between returns the interval between two figures, in either order.
func Between[Q units.Quantity](a, b Q) Interval[Q] {
	return Interval[Q]{Low: min(a, b), High: max(a, b)}
}

// Holds reports whether q lies in the interval, ends included.
func (i Interval[Q]) Holds(q Q) bool { return q >= i.Low && q <= i.High }

// Given reports whether the interval is more than the zero value.
func (i Interval[Q]) Given() bool { return i.Low != 0 || i.High != 0 }

// String returns text such as "7.1 bar to 9.7 bar".
func (i Interval[Q]) String() string { return i.Low.String() + " to " + i.High.String() }
