package fastener

import "example.com/benchbook/units"

func Depth(p units.Length) float64 { return float64(p) } // want `a cast of a Length to a number`
