package main

import "example.com/benchbook/units/measure"

// chapters returns what is asked of each package, in the order it is written.
func chapters() []func(*book) {
	return []func(*book){
		unitCases, fastenerCases, refdataCases,
		timingCases, gearCases, crankCases, camCases, ignitionCases,
		transmissionCases, springCases, driveCases,
		carburationCases, airCases, fuelCases,
		furtherCases,
	}
}

// leaders is of a verdict what another program can compare: the ranking.
type leaders struct {
	Causes measure.Ranking `json:"causes"`
}
