package fastener

import "example.com/benchbook/refdata"

// System is a family of threads with one rule for size and pitch. The zero
// System is that of a thread of none, made by [Of].
type System = refdata.System

// The systems.
const (
	BSW          = refdata.BSW          // British Standard Whitworth, BS 84
	BSF          = refdata.BSF          // British Standard Fine, BS 84
	Cycle        = refdata.Cycle        // British Standard Cycle, BS 811, formerly CEI
	BA           = refdata.BA           // British Association, BS 93
	BSPP         = refdata.BSPP         // parallel pipe threads, G, ISO 228-1
	MetricCoarse = refdata.MetricCoarse // ISO 261 coarse pitches
	MetricFine   = refdata.MetricFine   // ISO 261 fine pitches
	UNC          = refdata.UNC          // Unified coarse, ASME B1.1
	UNF          = refdata.UNF          // Unified fine, ASME B1.1
	Brass        = refdata.Brass        // 26 tpi of Whitworth form at any diameter, for unions and adjusters
	Spoke        = refdata.Spoke        // cycle threads of spokes by wire gauge
)
