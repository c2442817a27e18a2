package crank

import (
	"math"

	"example.com/benchbook/units"
)

// sane reports whether a figure is a number of a size that sums can be done with:
// within 1e12 SI units, far beyond anything on a bench.
func sane[Q units.Quantity](q Q) bool { return math.Abs(q.SI()) <= 1e12 }

// tiniest is the smallest figure, in SI units, that may be divided by: a picometre, a
// piconewton.
const tiniest = 1e-12
