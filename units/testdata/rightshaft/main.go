// Command rightshaft is wrongshaft with the conversion said by name.
package main

import "example.com/benchbook/units"

func main() {
	tooth := units.CamDegrees(8)
	println(units.Before(units.TDC, tooth.AtCrank()).String())
}
