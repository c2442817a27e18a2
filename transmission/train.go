package transmission

import (
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// HandLever is the clutch lever on the bar.
type HandLever struct {
	Finger measure.Reading[units.Length] // pivot to the middle of the fingers' pull
	Nipple measure.Reading[units.Length] // pivot to the cable nipple
	// Rest and Pulled are the angles of the nipple's radius before (negative)
	// and past (positive) square to the cable, hand off and lever at the bar.
	// On a lever whose cable wraps a sector only their difference counts.
	Rest, Pulled measure.Reading[units.Angle]
	Sector       bool // the cable wraps a round sector, so its arm stays the same
}

// Element is one link of the release between the cable and the pressure plate:
// an arm, a rocking lever, a quick thread, a ball ramp, a push rod.
type Element struct {
	Name       string
	Ratio      float64          // travel put in over travel given out: 6 if 6 mm of cable move the rod 1 mm
	Efficiency float64          // work given out over work put in, above 0 to 1; 0 takes 1
	Stiffness  units.SpringRate // at its output; 0 is rigid
	Lost       units.Length     // motion it loses at its output before it drives
}
