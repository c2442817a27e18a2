package transmission

// Limit names what bounds the turns of the spring nuts.
type Limit uint8

// The limits. Torque and contact bound the window from below, the rest from
// above.
const (
	NoLimit   Limit = iota
	Torque          // fewer turns: it slips
	Contact         // fewer turns: springs loose, or the nut off its thread
	CoilBind        // more turns: springs go solid before the plates are free
	HandForce       // more turns: heavier than the hand may be asked for
	Travel          // more turns: the lever meets the bar before the plates are free
	Thread          // more turns: the nut runs out of thread
)

// String returns the limit in words.
func (l Limit) String() string {
	switch l {
	case NoLimit:
		return "no limit"
	case Torque:
		return "torque"
	case Contact:
		return "contact"
	case CoilBind:
		return "coil bind"
	case HandForce:
		return "hand force"
	case Travel:
		return "travel"
	case Thread:
		return "thread"
	}
	return "unknown limit"
}

// MarshalText returns the words of String.
func (l Limit) MarshalText() ([]byte, error) { return []byte(l.String()), nil }
