package trade

import "example.com/benchbook/units"

func inTest(l units.Length) float64 { return float64(l) }
