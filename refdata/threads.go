package refdata

import (
	_ "embed" // the tables
	"errors"

	"example.com/benchbook/units"
)

// Thread is the basic geometry of one screw thread, with no allowance and no
// tolerance, and with no hand: a left-hand thread has the same figures. The
// diameters of the Whitworth form, cycle and BA threads are D, E = D - h and
// K = D - 2h with the depth h rounded as the standard rounds it; those of ISO
// and Unified threads are d, d2 and d3 for the bolt and D1 for the nut.
//
// The zero Thread is no thread.
type Thread struct {
	Name           string               `json:"name"`   // "1/4-26 cycle", "1/4 BSF", "2 BA", "M10x1.25", "10-32 UNF", "G 1/4", "1/4-26 brass", "13 SWG spoke"
	System         System               `json:"system"` //
	Size           string               `json:"size"`   // as printed: "1/4", "2", "M10x1.25", "10"
	Series         string               `json:"series,omitempty"`
	Major          units.Length         `json:"major"`            // nominal outside diameter of the bolt
	Pitch          units.Length         `json:"pitch"`            // 1 in / threads an inch where those define it
	ThreadsPerInch float64              `json:"threads_per_inch"` // 25.4 mm / pitch where the pitch defines it
	Included       units.Angle          `json:"included"`         // twice the flank angle
	Effective      units.Length         `json:"effective"`        // pitch diameter
	Minor          units.Length         `json:"minor"`            // of the bolt
	MinorInternal  units.Length         `json:"minor_internal"`   // of the nut, basic
	StressArea     Figure[units.Area]   `json:"stress_area"`      // unknown for G threads
	TappingDrill   Figure[units.Length] `json:"tapping_drill"`    // as printed in the table; fastener computes others
	MinorPrinted   Figure[units.Length] `json:"minor_printed"`    // cycle: core to three places as trade lists print it
	NutMinorPlus   Figure[units.Length] `json:"nut_minor_plus"`   // BSPP: tolerance of the nut's minor diameter, plus only
	Radius         Figure[units.Length] `json:"radius"`           // BA and cycle: crest and root radius
	ThreadOrigin   Origin               `json:"thread_origin"`    // size and pitch
	DiameterOrigin Origin               `json:"diameter_origin"`  // effective, minor
	AreaOrigin     Origin               `json:"area_origin"`      //
	DrillOrigin    Origin               `json:"drill_origin"`     //
	PrintedOrigin  Origin               `json:"printed_origin"`   // MinorPrinted
	Note           string               `json:"note,omitempty"`
}

// Depth returns the depth of the bolt's thread, half of major less minor.
func (t Thread) Depth() units.Length { return (t.Major - t.Minor).Times(0.5) }

// Sources returns every source the row rests on.
func (t Thread) Sources() []Source {
	return gather(t.ThreadOrigin, t.DiameterOrigin, t.AreaOrigin, t.DrillOrigin, t.PrintedOrigin)
}

// Threads returns all threads of all systems; the leading column is the major
// diameter.
func Threads() *Table[Thread, units.Length] { return allThreads.get(readAllThreads) }

// ThreadsOf returns the threads of one system; the leading column is the major
// diameter. The table is empty for a system that does not exist.
func ThreadsOf(s System) *Table[Thread, units.Length] {
	if s < BSW || s > Spoke {
		return readSystem(s)
	}
	return threadTables[s-1].get(func() *Table[Thread, units.Length] { return readSystem(s) })
}

var (
	//go:embed tables/threads_bsw.csv
	textBSW string
	//go:embed tables/threads_bsf.csv
	textBSF string
	//go:embed tables/threads_cycle.csv
	textCycle string
	//go:embed tables/threads_ba.csv
	textBA string
	//go:embed tables/threads_bspp.csv
	textBSPP string
	//go:embed tables/threads_metric_coarse.csv
	textMetricCoarse string
	//go:embed tables/threads_metric_fine.csv
	textMetricFine string
	//go:embed tables/threads_unc.csv
	textUNC string
	//go:embed tables/threads_unf.csv
	textUNF string
	//go:embed tables/threads_brass.csv
	textBrass string
	//go:embed tables/threads_spoke.csv
	textSpoke string
)

// threadTables are the tables of the systems, in the order of their numbers, and
// the table of all.
var (
	threadTables [Spoke]lazy[Thread, units.Length]
	allThreads   lazy[Thread, units.Length]
)

func readAllThreads() *Table[Thread, units.Length] {
	var rows []Thread
	var errs []error
	for _, s := range Systems() {
		t := ThreadsOf(s)
		rows = append(rows, t.rows...)
		errs = append(errs, t.err)
	}
	return newTable("threads", rows, errors.Join(errs...), threadNames, threadName, threadMajor)
}

// readSystem reads one system's table: its name, text and included angle.
func readSystem(s System) *Table[Thread, units.Length] {
	switch s {
	case BSW:
		return readThreads("threads_bsw", s, 55, textBSW)
	case BSF:
		return readThreads("threads_bsf", s, 55, textBSF)
	case Cycle:
		return readThreads("threads_cycle", s, 60, textCycle)
	case BA:
		return readThreads("threads_ba", s, 47.5, textBA)
	case BSPP:
		return readThreads("threads_bspp", s, 55, textBSPP)
	case MetricCoarse:
		return readThreads("threads_metric_coarse", s, 60, textMetricCoarse)
	case MetricFine:
		return readThreads("threads_metric_fine", s, 60, textMetricFine)
	case UNC:
		return readThreads("threads_unc", s, 60, textUNC)
	case UNF:
		return readThreads("threads_unf", s, 60, textUNF)
	case Brass:
		return readThreads("threads_brass", s, 55, textBrass)
	case Spoke:
		return readThreads("threads_spoke", s, 60, textSpoke)
	}
	return newTable("threads", nil, nil, threadNames, threadName, threadMajor)
}

func threadName(t *Thread) string        { return t.Name }
func threadMajor(t *Thread) units.Length { return t.Major }
