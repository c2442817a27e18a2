package timing

import (
	_ "example.com/benchbook/carburation" // want `another trade`
	_ "example.com/benchbook/timing/crank"
	_ "example.com/benchbook/units"
	_ "log" // want `does not log`
)

func init() {} // want `an init function`
