package fastener

// Part is what kind of part bears an unknown thread, if that was looked at: a
// look costs nothing and tells the thread of a union from that of a bolt.
type Part uint8

// The parts.
const (
	PartUnknown Part = iota // not told
	Bolt                    // bolt, stud, screw or nut
	Fitting                 // union, adjuster, tap, pipe end
	WheelSpoke              // spoke or nipple
)

// String returns the part in words.
func (p Part) String() string {
	switch p {
	case Bolt:
		return "bolt, stud, screw or nut"
	case Fitting:
		return "union, adjuster or tap"
	case WheelSpoke:
		return "spoke or nipple"
	}
	return "not told"
}

// MarshalText returns the words of String.
func (p Part) MarshalText() ([]byte, error) { return []byte(p.String()), nil }

// partChances are how often a thread of a system is met on a bolt, a fitting and
// a spoke: common practice put into figures, no source.
func partChances(s System) []float64 {
	switch s {
	case Brass:
		return []float64{0.05, 0.94, 0.01}
	case BSPP:
		return []float64{0.10, 0.89, 0.01}
	case Spoke:
		return []float64{0.01, 0.01, 0.98}
	}
	return []float64{0.85, 0.14, 0.01}
}
