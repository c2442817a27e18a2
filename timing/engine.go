package timing

import (
	"example.com/benchbook/timing/crank"
	"example.com/benchbook/timing/gear"
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// Lobe is a cam as it is meant to be: its events at one check, and what is known
// of its flanks.
type Lobe struct {
	Opens  units.CrankPosition `json:"opens"`
	Closes units.CrankPosition `json:"closes"`
	// MaxLift is the greatest lift where Check.At says. Not given: causes that
	// change it are judged by the events alone.
	MaxLift measure.Reading[units.Length] `json:"max_lift"`
	// KeyAngle is the angle on the cam from its key, or the mark it is fitted by,
	// to the middle of the lobe, with the sense of rotation positive. Not taken:
	// a cam on back to front may then come to lie anywhere.
	KeyAngle measure.Reading[units.CamAngle] `json:"key_angle"`
	// OpeningRise and ClosingRise are the lift gained, or lost, over the one
	// crank degree at the check lift. Zero: taken from a lobe of usual shape
	// through MaxLift and the check lift, and said so in Basis.Assumed.
	OpeningRise units.Length `json:"opening_rise,omitempty"`
	ClosingRise units.Length `json:"closing_rise,omitempty"`
}

// Rival is another cam that is known to fit the engine. Its events are given at
// the engine's Check, as they would be with it fitted right.
type Rival struct {
	Name string `json:"name"`
	Cam  Cam    `json:"cam"` // whose place it would be in
	Lobe Lobe   `json:"lobe"`
}

// Fixing says how a cam is held to its wheel.
type Fixing uint8

// The fixings.
const (
	FixingUnknown Fixing = iota // taken as one that may slip
	Pressed                     // plain or taper seat: may slip, may be turned to any angle
	OnePiece                    // cut with the wheel, or keyed: cannot slip
)

// String returns "not known", "pressed" or "one piece".
func (f Fixing) String() string {
	switch f {
	case Pressed:
		return "pressed"
	case OnePiece:
		return "one piece"
	}
	return "not known"
}

// MarshalText returns the text of String.
func (f Fixing) MarshalText() ([]byte, error) { return []byte(f.String()), nil }

// The names of spindles in Engine.Drive. A drive has either Camshaft, which
// carries both lobes, or both of the others.
const (
	InletSpindle   = "inlet"
	ExhaustSpindle = "exhaust"
	Camshaft       = "camshaft"
)

// TwoCamwheels returns the drive of a crank pinion that meshes with two equal
// camwheels, one for each cam, given by their teeth.
func TwoCamwheels(pinion, camwheel int) gear.Drive {
	return gear.Drive{
		{From: "crank", Driver: pinion, To: InletSpindle, Driven: camwheel},
		{From: "crank", Driver: pinion, To: ExhaustSpindle, Driven: camwheel},
	}
}

// OneCamwheel returns the drive of a crank pinion that meshes with one camwheel,
// whose shaft carries both lobes, given by their teeth.
func OneCamwheel(pinion, camwheel int) gear.Drive {
	return gear.Drive{{From: "crank", Driver: pinion, To: Camshaft, Driven: camwheel}}
}

// Engine is how the engine is made.
type Engine struct {
	// Drive is the wheels from the crank to the cams: [TwoCamwheels],
	// [OneCamwheel], or meshes of your own with spindles named [InletSpindle]
	// and [ExhaustSpindle], or [Camshaft]. What else it drives is left alone.
	Drive   gear.Drive `json:"drive"`
	Inlet   Lobe       `json:"inlet"`
	Exhaust Lobe       `json:"exhaust"`
	Check   Check      `json:"check"` // that the events of Inlet, Exhaust and Rivals are given at
	// Rocker is valve lift over follower lift. Not given: one.
	Rocker measure.Reading[units.Ratio] `json:"rocker"`
	Rivals []Rival                      `json:"rivals,omitempty"`
	// InletFixing and ExhaustFixing say how each cam is held to its wheel.
	InletFixing   Fixing `json:"inlet_fixing"`
	ExhaustFixing Fixing `json:"exhaust_fixing"`
	// Cylinder is bore, slider-crank and clearance volume, for what a compression
	// test should show. The zero value: not given, and only the change by oil is
	// judged.
	Cylinder crank.Cylinder `json:"cylinder,omitzero"`
	// Head is what tells how near the valves come to the piston and to each
	// other. Nil: not measured, and no move is refused for want of room.
	Head *Head `json:"head,omitempty"`
	// InletVernier and ExhaustVernier are holes or pegs between camwheel and cam.
	InletVernier   Vernier `json:"inlet_vernier"`
	ExhaustVernier Vernier `json:"exhaust_vernier"`
	// InletShim and ExhaustShim are shims behind a helical camwheel.
	InletShim   Shim `json:"inlet_shim"`
	ExhaustShim Shim `json:"exhaust_shim"`
	// Keyways is the number of equally spaced keyways in the crank pinion, at
	// most 24; below two there is nothing to choose.
	Keyways int `json:"keyways,omitempty"`
}

// Vernier is a camwheel fixed to its cam through two rings of equally spaced
// holes, one hole of each in line at a time. The zero value is none. Both counts
// are at most 400, and the rings meet in at most 1000 ways.
type Vernier struct {
	Wheel int `json:"wheel"` // holes in the wheel
	Cam   int `json:"cam"`   // holes in the cam or its flange
}

// Shim is what shims behind a helical wheel are worth. The zero value is none.
type Shim struct {
	Each units.CrankAngle `json:"each"` // shift of the cam by one shim more, advance positive
	Most int              `json:"most"` // shims that may be added or taken away, at most 100
}

// vernier returns the vernier of a cam.
func (e *Engine) vernier(c Cam) Vernier {
	if c == Exhaust {
		return e.ExhaustVernier
	}
	return e.InletVernier
}

func (e *Engine) shim(c Cam) Shim {
	if c == Exhaust {
		return e.ExhaustShim
	}
	return e.InletShim
}

// ways returns in how many ways the rings of a vernier meet in one turn: the
// least common multiple of their holes; 0 for none.
func (v Vernier) ways() int {
	if v.Wheel <= 0 || v.Cam <= 0 {
		return 0
	}
	a, b := v.Wheel, v.Cam
	for b != 0 {
		a, b = b, a%b
	}
	return v.Wheel / a * v.Cam
}
