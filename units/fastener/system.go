package fastener

// System is a family of threads with one rule for size and pitch.
type System uint8

// The systems. The zero value is none of them.
const (
	BSW         System = iota + 1 // British Standard Whitworth, BS 84
	BSF                           // British Standard Fine, BS 84
	Cycle                         // British Standard Cycle, BS 811, once the Cycle Engineers' Institute's
	BA                            // British Association, BS 93
	MetricFine                    // ISO 261 fine pitches
	MetricCoarse                  // ISO 261 coarse pitches
	UNC                           // Unified coarse, ASME B1.1
	UNF                           // Unified fine, ASME B1.1
	Pipe                          // parallel pipe, G, ISO 228-1
	Brass                         // 26 tpi of Whitworth form at any diameter, unions and adjusters
)

// String returns the usual name: "BSF", "cycle".
func (s System) String() string {
	switch s {
	case BSW:
		return "BSW"
	case BSF:
		return "BSF"
	case Cycle:
		return "cycle"
	case BA:
		return "BA"
	case MetricFine:
		return "metric fine"
	case MetricCoarse:
		return "metric coarse"
	case UNC:
		return "UNC"
	case UNF:
		return "UNF"
	case Pipe:
		return "pipe"
	case Brass:
		return "brass"
	}
	return "no system"
}

// MarshalText returns the words of String.
func (s System) MarshalText() ([]byte, error) { return []byte(s.String()), nil }
