package refdata

import "example.com/benchbook/units"

// Figure is a figure that a table may not have. The zero Figure is unknown,
// which is not zero. Figures are comparable.
type Figure[Q units.Quantity] struct {
	value Q
	known bool
}

// Known returns a figure that is known.
func Known[Q units.Quantity](v Q) Figure[Q] { return Figure[Q]{v, true} }

// Get returns the figure and whether it is known.
func (f Figure[Q]) Get() (Q, bool) { return f.value, f.known }

// IsKnown reports whether there is a figure.
func (f Figure[Q]) IsKnown() bool { return f.known }

// Or returns the figure, or other if it is unknown.
func (f Figure[Q]) Or(other Q) Q {
	if f.known {
		return f.value
	}
	return other
}

// String returns the text of the quantity, or "unknown".
func (f Figure[Q]) String() string {
	if !f.known {
		return "unknown"
	}
	return f.value.String()
}

// MarshalJSON writes the quantity's {text, value, unit}; null if unknown.
func (f Figure[Q]) MarshalJSON() ([]byte, error) {
	if !f.known {
		return []byte("null"), nil
	}
	if m, ok := any(f.value).(interface{ MarshalJSON() ([]byte, error) }); ok {
		return m.MarshalJSON()
	}
	return []byte("null"), nil
}
