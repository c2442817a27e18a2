package main

// chapters returns what is asked of each package, in the order it is written.
func chapters() []func(*book) {
	return []func(*book){
		unitCases, measureCases, fastenerCases, refdataCases,
		timingCases, gearCases, crankCases, camCases, ignitionCases,
		transmissionCases, springCases, driveCases,
		carburationCases, airCases, fuelCases,
	}
}
