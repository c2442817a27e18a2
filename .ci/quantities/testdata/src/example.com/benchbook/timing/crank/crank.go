package crank

import (
	_ "example.com/benchbook/carburation" // want `on a higher floor`
	_ "example.com/benchbook/units/measure"
)
