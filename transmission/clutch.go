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
	HubNut  HubNut
	Demand  Demand
	New     Condition // what every reading would be with nothing wrong; what is not taken has the default its field states
}

// Plates is the pack.
type Plates struct {
	Driving, Driven int          // plates turning with the drum and with the hub, counted whether lined or not
	Faces           int          // rubbing faces, if counted directly; 0 takes Driving + Driven - 1, right if plates alternate and the outermost rub
	Outer, Inner    units.Length // diameters of the rubbed ring
	MeanRadius      units.Length // radius at which friction acts, if known; 0 takes it from Outer and Inner
	Pressure        PressureLaw  // how the clamp spreads over the ring; default UniformWear
	Thickness       units.Length // of one friction plate, new, to know one left out; 0 takes 3 mm
	Rim             units.Length // outer diameter of the pressure plate, for its tilt; 0 takes Outer
}

// PressureLaw is how the clamp spreads over the rubbed ring.
type PressureLaw uint8

// The laws. Bedded-in plates follow uniform wear, which gives the lower torque;
// new, flat, stiff ones uniform pressure.
const (
	UniformWear PressureLaw = iota
	UniformPressure
)

// String returns the law in words.
func (p PressureLaw) String() string {
	switch p {
	case UniformWear:
		return "uniform wear"
	case UniformPressure:
		return "uniform pressure"
	}
	return "unknown pressure law"
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
	Pitch  units.Length // thread pitch: one inch over the threads per inch
	Thread units.Angle  // most turns inward from flush before the thread or cup ends; 0 is not known and sets no limit
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
