package spring

// Ends is how the ends of a compression spring are made. The zero value is not
// said, and is taken as squared and ground, which is noted in the Basis of
// results.
type Ends uint8

// The end types of Shigley's Mechanical Engineering Design, table 10-1 (from
// memory).
const (
	EndsNotSaid   Ends = iota
	SquaredGround      // closed and ground: two dead coils, solid at Nt·d
	Squared            // closed, not ground: two dead coils, solid at (Nt + 1)·d
	Plain              // cut off, no dead coils, solid at (Nt + 1)·d
	PlainGround        // cut off and ground: one dead coil, solid at Nt·d
	endKinds      = iota
)

// Dead returns the number of coils that do not work, Nt - Na.
func (e Ends) Dead() float64 {
	switch e {
	case Plain:
		return 0
	case PlainGround:
		return 1
	}
	return 2
}

// Ground reports whether the ends are ground flat.
func (e Ends) Ground() bool { return e != Squared && e != Plain }

// String names the end type.
func (e Ends) String() string {
	switch e {
	case EndsNotSaid:
		return "ends not said"
	case SquaredGround:
		return "squared and ground"
	case Squared:
		return "squared, not ground"
	case Plain:
		return "plain"
	case PlainGround:
		return "plain, ground"
	}
	return "unknown ends"
}

// MarshalText returns the words of String.
func (e Ends) MarshalText() ([]byte, error) { return []byte(e.String()), nil }
