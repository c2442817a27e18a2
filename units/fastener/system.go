package fastener

import "example.com/benchbook/refdata"

// System is a family of threads with one rule for size and pitch. The first
// nine are those of [refdata.System].
type System uint8

// The systems. The zero value is none of them.
const (
	BSW          System = iota + 1 // British Standard Whitworth, BS 84
	BSF                            // British Standard Fine, BS 84
	Cycle                          // British Standard Cycle, BS 811, formerly CEI
	BA                             // British Association, BS 93
	BSPP                           // parallel pipe threads, G, ISO 228-1
	MetricCoarse                   // ISO 261 coarse pitches
	MetricFine                     // ISO 261 fine pitches
	UNC                            // Unified coarse, ASME B1.1
	UNF                            // Unified fine, ASME B1.1
	Brass                          // 26 tpi of Whitworth form at any diameter, for unions and adjusters
	Spoke                          // rolled on wheel spokes, 60°
	Special                        // of no system
)

// String returns the short name of the trade: "BSF", "cycle", "metric fine".
func (s System) String() string {
	switch s {
	case Brass:
		return "brass"
	case Spoke:
		return "spoke"
	case Special:
		return "special"
	}
	return s.table().String()
}

// table returns the system as the tables name it, zero if they have none.
func (s System) table() refdata.System {
	switch s {
	case BSW:
		return refdata.BSW
	case BSF:
		return refdata.BSF
	case Cycle:
		return refdata.Cycle
	case BA:
		return refdata.BA
	case BSPP:
		return refdata.BSPP
	case MetricCoarse:
		return refdata.MetricCoarse
	case MetricFine:
		return refdata.MetricFine
	case UNC:
		return refdata.UNC
	case UNF:
		return refdata.UNF
	}
	return 0
}

// MarshalText returns the words of String.
func (s System) MarshalText() ([]byte, error) { return []byte(s.String()), nil }
