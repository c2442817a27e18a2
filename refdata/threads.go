package refdata

import (
	_ "embed" // the tables
	"errors"
	"strconv"
	"strings"

	"example.com/benchbook/units"
)

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

// readThreads reads one system's table.
func readThreads(table string, system System, included float64, text string) *Table[Thread, units.Length] {
	s := scan(text)
	size, series, note := s.column("size"), s.column("series"), s.column("note")
	if size < 0 {
		size = s.must("designation")
	}
	major, pitch, tpi, angle := s.lengthColumn("major"), s.lengthColumn("pitch"), s.column("tpi"), s.column("included_angle_deg")
	effective, minor, minorExt, minorInt := s.lengthColumn("effective"), s.lengthColumn("minor"), s.lengthColumn("minor_ext"), s.lengthColumn("minor_int")
	if minorExt.at >= 0 {
		minor = minorExt
	} else {
		minorInt = minor
	}
	areaIn, areaMm, listed := s.column("stress_area_in2"), s.column("stress_area_mm2"), s.column("in_bs84_list")
	drill, printed, plus, radius := s.lengthColumn("tapping_drill"), s.lengthColumn("minor_printed"), s.lengthColumn("minor_int_tol_plus"), s.lengthColumn("radius")
	oThread, oDiameters, oArea := s.originColumns("thread"), s.originColumns("diameters"), s.originColumns("area")
	oDrill, oPrinted := s.originColumns("drill"), s.originColumns("minor_printed")

	rows := make([]Thread, 0, strings.Count(s.rest, "\n")+1)
	for s.next() {
		t := Thread{
			System: system, Size: s.text(size), Series: s.text(series), Note: s.text(note),
			Major: s.needLength(major), Included: units.Degrees(included),
			Effective: s.needLength(effective), Minor: s.needLength(minor), MinorInternal: s.needLength(minorInt),
			TappingDrill: s.length(drill), MinorPrinted: s.length(printed), NutMinorPlus: s.length(plus), Radius: s.length(radius),
			ThreadOrigin: s.origin(oThread), DiameterOrigin: s.origin(oDiameters), AreaOrigin: s.origin(oArea),
			DrillOrigin: s.origin(oDrill), PrintedOrigin: s.origin(oPrinted),
		}
		if n, ok := s.number(tpi); ok {
			t.ThreadsPerInch, t.Pitch = n, units.Inches(1/n)
		} else {
			t.Pitch = s.needLength(pitch)
			t.ThreadsPerInch = 25.4 / t.Pitch.Millimetres()
		}
		if a, ok := s.number(angle); ok {
			t.Included = units.Degrees(a)
		}
		if a, ok := s.number(areaIn); ok {
			t.StressArea = Known(units.SquareInches(a))
		} else if a, ok := s.number(areaMm); ok {
			t.StressArea = Known(units.SquareMillimetres(a))
		}
		if listed >= 0 {
			t.Series = "BS 84 list"
			if s.text(listed) != "yes" {
				t.Series = "older or trade size"
			}
		}
		t.Name = nameThread(&t)
		rows = append(rows, t)
	}
	return newTable(table, rows, s.err(), threadNames, threadName, threadMajor)
}

// nameThread returns the name the trade writes.
func nameThread(t *Thread) string {
	switch t.System {
	case BSW, BSF:
		return t.Size + " " + t.System.String()
	case Cycle:
		n := t.Size + "-" + tpiText(t) + " cycle"
		if t.ThreadsPerInch == 20 { // the form is an open question: both are served
			n += " " + strconv.Itoa(int(t.Included.Degrees())) + "°"
		}
		return n
	case BA:
		return t.Size + " BA"
	case BSPP:
		return "G " + t.Size
	case UNC, UNF, Brass:
		return t.Size + "-" + tpiText(t) + " " + t.System.String()
	case Spoke:
		return t.Size + " SWG spoke"
	}
	return t.Size
}

func tpiText(t *Thread) string { return strconv.FormatFloat(t.ThreadsPerInch, 'g', -1, 64) }

// threadNames returns other names a thread is asked for by.
func threadNames(t *Thread) []string {
	tpi := t.Size + "-" + tpiText(t)
	switch t.System {
	case BSW:
		return []string{tpi + " BSW", t.Size + " Whitworth", t.Size + " Whit"}
	case BSF:
		return []string{tpi + " BSF"}
	case Cycle:
		return []string{tpi + " BSC", tpi + " CEI", tpi + " cycle", t.Size + " cycle " + tpiText(t) + " tpi", t.Size + " BSC", t.Size + " CEI", t.Size + " cycle"}
	case BSPP:
		return []string{t.Size + " BSP", t.Size + " BSPP"}
	case UNC, UNF, Brass:
		return []string{t.Size + " " + t.System.String()}
	case Spoke:
		return []string{t.Size + " spoke", tpi + " spoke"}
	case MetricCoarse:
		return []string{t.Size + "x" + strconv.FormatFloat(t.Pitch.Millimetres(), 'g', -1, 64)}
	}
	return nil
}
