package spring

import "example.com/benchbook/units"

// Element is a spring as its surroundings feel it: what it pushes with when it
// is pressed together by s from its free length. [Helical], [Linear], [Disc],
// [Stack] and the combinations of this package are Elements. None of the
// methods allocates.
type Element interface {
	// Load returns the force at a deflection of 0 to Travel, and whether s is
	// in that range. Outside it there is no answer.
	Load(s units.Length) (units.Force, bool)
	// Deflection returns where the load is first reached on the way in, and
	// whether it is reached before Limit. It is the inverse of Load on the
	// first rising branch only, where turns of an adjuster to load is unique.
	Deflection(f units.Force) (units.Length, bool)
	// RateAt returns dF/ds at a deflection of 0 to Travel, and whether s is in
	// that range.
	RateAt(s units.Length) (units.SpringRate, bool)
	// Limit returns the deflection where the first rising branch ends: solid
	// for coils, flat or the hump of the load for discs.
	Limit() units.Length
	// Travel returns the deflection where movement ends: solid or flat.
	Travel() units.Length
}
