// Command wrongshaft does not compile: it gives degrees of the camshaft where
// degrees of the crankshaft are wanted.
package main

import "example.com/benchbook/units"

func main() {
	tooth := units.CamDegrees(8)
	println(units.Before(units.TDC, tooth).String())
}
