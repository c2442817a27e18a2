package transmission

import (
	"example.com/benchbook/transmission/spring"
	"example.com/benchbook/units"
)

// Clutch says how a clutch and its release are made: what a drawing or the
// parts in the hand tell, and the condition it has when nothing is wrong.
type Clutch struct {
	Plates  Plates
	Springs Springs
	Nuts    Nuts
	Lever   HandLever
	Train   []Element // from the cable's lower end to the pressure plate, in order
	Play    PlayAdjuster
	HubNut  HubNut
	Demand  Demand
	New     Condition // what every reading would be with nothing wrong; what is not taken has the default its field states
}

// Springs is the set of clutch springs, all alike. A coil spring is told by Rate
// and FreeLength; a disc spring or a stack of them, whose load is not straight,
// by Law and FreeLength.
type Springs struct {
	Count      int              // for one large disc spring, 1
	Rate       units.SpringRate // of one spring; not wanted with Law
	Law        spring.Element   // load of one spring by deflection; nil is straight at Rate. Only its first rising branch is used
	FreeLength units.Length     // of a new one
	Shortest   units.Length     // least length one may be pressed to: solid length and allowance
	AtFlush    units.Length     // length with the nut flush with the stud's end, on a new pack
}

// Nuts is the adjuster that presses the springs: a nut to each spring, all
// turned alike, or one central nut for all.
type Nuts struct {
	Kind   NutKind      // default EachSpring
	Circle units.Length // diameter of the circle the spring nuts stand on, wanted only to trim the lift
	Pitch  units.Length // thread pitch: one inch over the threads per inch
	Thread units.Angle  // most turns inward from flush before the thread or cup ends; 0 is not known and sets no limit
}

// NutKind is how the springs are pressed.
type NutKind uint8

// The kinds.
const (
	EachSpring NutKind = iota // a nut to each spring: they can be trimmed one against another
	Central                   // one nut for all springs: quick, and nothing to trim
)

// String returns the kind in words.
func (k NutKind) String() string {
	switch k {
	case EachSpring:
		return "a nut to each spring"
	case Central:
		return "one central nut"
	}
	return "unknown kind of nut"
}

// PlayAdjuster is the screw that takes up free play, on the cable or on the rod.
type PlayAdjuster struct {
	Pitch units.Length // thread pitch, 0.2 to 5 mm; 0 is 1 mm, common practice, no source
	AtRod bool         // it moves the push rod, so that a turn counts at the lever times the train's ratio; else it moves the cable's outer
}

// HubNut is the nut that holds the clutch hub on its shaft.
type HubNut struct {
	Pitch units.Length // thread pitch; 0 takes 1.27 mm, 20 threads per inch
	Hand  Hand         // as seen by the one who undoes it
}

// Hand is the hand of a thread.
type Hand uint8

// The hands. An unknown hand must be found out before the nut is touched.
const (
	UnknownHand Hand = iota
	RightHand
	LeftHand
)

// String returns the hand in words.
func (h Hand) String() string {
	switch h {
	case RightHand:
		return "right-hand"
	case LeftHand:
		return "left-hand"
	}
	return "unknown hand"
}

// Demand is what the clutch must carry and what may be asked of the rider.
// A zero field takes the default stated, and results say that it did.
type Demand struct {
	EngineTorque units.Torque // greatest at the crank; needed
	PrimaryRatio float64      // engine turns to one of the clutch; needed
	Margin       float64      // torque capacity wanted over that; default 1.3 (1.25 to 1.5 is road-vehicle practice)
	HandForce    units.Force  // most at the finger line; default 200 N
	FreePlay     units.Length // least at the lever nipple with the hand off; default 2 mm
	FaceGap      units.Length // clearance wanted at each rubbing face when freed; default 0.15 mm
	Width        units.Angle  // least width of a workable window; default half a turn
}
