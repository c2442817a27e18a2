package measure

import "example.com/benchbook/units"

func U[Q units.Quantity](q Q) float64 { return float64(q) * 2 }
