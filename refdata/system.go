package refdata

// System is a family of screw threads.
type System uint8

// The systems. The zero value is none of them.
const (
	BSW          System = iota + 1 // British Standard Whitworth, BS 84: 55°
	BSF                            // British Standard Fine, BS 84: 55°
	Cycle                          // British Standard Cycle, formerly CEI, BS 811: 60°, some 55°
	BA                             // British Association, BS 93: 47.5°
	BSPP                           // G threads, ISO 228-1: 55°
	MetricCoarse                   // ISO 261: 60°
	MetricFine                     // ISO 261: 60°
	UNC                            // Unified coarse, ASME B1.1: 60°
	UNF                            // Unified fine, ASME B1.1: 60°
	Brass                          // 26 threads an inch at any diameter: 55°; common practice
	Spoke                          // cycle threads of spokes by wire gauge: 60°; from memory
)

// Systems returns all systems that have a table.
func Systems() []System {
	return []System{BSW, BSF, Cycle, BA, BSPP, MetricCoarse, MetricFine, UNC, UNF, Brass, Spoke}
}

// String returns the short name of the trade: "BSF", "cycle", "metric fine".
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
	case BSPP:
		return "BSPP"
	case MetricCoarse:
		return "metric coarse"
	case MetricFine:
		return "metric fine"
	case UNC:
		return "UNC"
	case UNF:
		return "UNF"
	case Brass:
		return "brass"
	case Spoke:
		return "spoke"
	}
	return "no system"
}

// MarshalText returns the name of String.
func (s System) MarshalText() ([]byte, error) { return []byte(s.String()), nil }
