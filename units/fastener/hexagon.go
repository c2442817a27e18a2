package fastener

import (
	"math"
	"strconv"

	"example.com/benchbook/refdata"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
)

// HexSeries is a series of hexagon sizes. It is asked for apart from the
// thread: the same bolt was made with either Whitworth series.
type HexSeries uint8

// The series. The zero value is none of them.
const (
	LargeWhitworth HexSeries = iota + 1 // the old Whitworth nuts and heads
	SmallWhitworth                      // one size down, BS 1083: BSF, and later Whitworth
	BAHexagon                           // 1.75 of the diameter
	MetricISO                           // ISO 272
	MetricOld                           // widths before ISO 272
	UnifiedBolt                         // bolt heads across flats, BS 1768
	UnifiedNut                          // nuts across flats, BS 1768
)

// String returns the series in words.
func (s HexSeries) String() string {
	switch s {
	case LargeWhitworth:
		return "large Whitworth"
	case SmallWhitworth:
		return "small Whitworth (BS)"
	case BAHexagon:
		return "BA"
	case MetricISO:
		return "metric, ISO 272"
	case MetricOld:
		return "metric before ISO 272"
	case UnifiedBolt:
		return "Unified bolt head"
	case UnifiedNut:
		return "Unified nut"
	}
	return "no series"
}

// MarshalText returns the words of String.
func (s HexSeries) MarshalText() ([]byte, error) { return []byte(s.String()), nil }

// Era is when a fastener was made, as far as that changes its hexagon. That the
// change of Whitworth hexagons fell in the war years, and that of metric ones
// about 1980, is common practice, no source.
type Era uint8

// The eras.
const (
	EraUnknown Era = iota
	BeforeWar      // up to 1939: large Whitworth hexagons on BSW bolts
	AfterWar       // from 1940: small ones on both; old metric widths
	Modern         // from about 1980: ISO 272 metric widths
)

// HexOptions change what [Hexagons] puts first.
type HexOptions struct {
	Era Era  `json:"era"` // zero: not known, every series that may be
	Nut bool `json:"nut"` // a nut, not a bolt head; only Unified ones differ
}

// Hexagon is a hexagon that goes with a thread.
type Hexagon struct {
	Series HexSeries    `json:"series"`
	Flats  units.Length `json:"flats"` // across flats, the largest a sound one has
	// FlatsMin is the smallest across flats where the standard's limit is known.
	FlatsMin refdata.Figure[units.Length] `json:"flats_min"`
	// Spanner is the marking of the spanner that fits: "1/4 W, 5/16 BS", "2 BA",
	// "13 mm", "7/16 AF".
	Spanner string           `json:"spanner"`
	Sources []refdata.Source `json:"sources"`
}

// HexagonChoice is the hexagons usual for a thread, the likeliest first.
type HexagonChoice struct {
	Thread   Thread        `json:"thread"`
	Hexagons []Hexagon     `json:"hexagons"`
	Reason   fault.Reason  `json:"reason"` // why none is known
	Basis    refdata.Basis `json:"basis"`
}

// Hexagons returns the hexagons usual for a thread in every series that has its
// size, those of the era first. Cycle threads are given the Whitworth hexagons
// of their size (common practice, no source). Pipe, brass and special threads,
// and sizes the tables lack, have a Reason. Faults: no thread, no such era.
func Hexagons(t Thread, opt HexOptions) (HexagonChoice, error) {
	var l fault.List
	if t.IsZero() {
		l.Add(noThread("thread"))
	}
	if opt.Era > Modern {
		l.Add(fault.Fault{Code: fault.UnknownName, Path: "options.era", Rule: "one of the eras of this package"})
	}
	if err := l.Err(); err != nil {
		return HexagonChoice{}, err
	}
	c := HexagonChoice{Thread: t}
	switch t.system {
	case BSW, BSF, Cycle:
		c.Hexagons = whitworthHexagons(t, opt.Era)
		if t.system == Cycle {
			c.Basis.Assumed = append(c.Basis.Assumed, refdata.Assumption{What: "hexagon of a cycle thread", Value: "the Whitworth one of the same size", Status: refdata.CommonPractice})
		}
	case BA:
		if h, ok := refdata.BAHexagons().ByName(t.name); ok {
			c.Hexagons = []Hexagon{{Series: BAHexagon, Flats: h.AcrossFlats, Spanner: t.name, Sources: h.RuleOrigin.Sources()}}
		}
	case MetricCoarse, MetricFine:
		c.Hexagons = metricHexagons(t, opt.Era)
	case UNC, UNF:
		c.Hexagons = unifiedHexagons(t, opt.Nut)
	}
	if len(c.Hexagons) == 0 {
		c.Reason = fault.Reason{Code: "hexagon-unknown", Text: "no hexagon is known for this thread: measure across the flats and use SpannersFor"}
		return c, nil
	}
	for _, h := range c.Hexagons {
		c.Basis.Sources = ownedSpanner(append(c.Basis.Sources, h.Sources...), h.Spanner)
	}
	c.Basis.NotChecked = []refdata.Unchecked{{What: "the hexagon itself", Why: "heads were made in other series, filed down and replaced", Settle: "caliper across the flats, then SpannersFor"}}
	if opt.Era == EraUnknown && len(c.Hexagons) > 1 {
		c.Basis.Assumed = append(c.Basis.Assumed, refdata.Assumption{What: "era", Value: "not known; every series that has the size is listed", Status: refdata.CommonPractice})
	}
	return c, nil
}

func same(a, b units.Length) bool { return (a - b).Abs() < units.Micrometre }

func whitworthHexagons(t Thread, era Era) []Hexagon {
	var out []Hexagon
	for h := range refdata.WhitworthHexagons().Between(t.major-units.Micrometre, t.major+units.Micrometre) {
		large := Hexagon{Series: LargeWhitworth, Flats: h.Large, Spanner: whitworthMarking(h.Large), Sources: h.LargeOrigin.Sources()}
		small, ok := h.Small.Get()
		if !ok {
			return []Hexagon{large}
		}
		s := Hexagon{Series: SmallWhitworth, Flats: small, FlatsMin: h.SmallMin, Spanner: whitworthMarking(small), Sources: h.SmallOrigin.Sources()}
		// only Whitworth bolts had the large series, and those up to the war
		if t.system == BSW && era <= BeforeWar {
			out = append(out, large, s)
		} else {
			out = append(out, s, large)
		}
	}
	return out
}

// whitworthMarking returns the markings of the spanner of a width.
func whitworthMarking(w units.Length) string {
	for s := range refdata.WhitworthSpanners().Between(w-units.Millimetres(0.2), w+units.Millimetres(0.2)) {
		return whitworthMarks(s)
	}
	return w.In(units.Inch, 3) + " across flats"
}

func metricHexagons(t Thread, era Era) []Hexagon {
	for h := range refdata.MetricHexagons().Between(t.major, t.major) {
		iso := Hexagon{Series: MetricISO, Flats: h.ISO, Spanner: trimFloat(h.ISO.Millimetres()) + " mm", Sources: h.ISOOrigin.Sources()}
		old := Hexagon{Series: MetricOld, Flats: h.Old, Spanner: trimFloat(h.Old.Millimetres()) + " mm", Sources: h.OldOrigin.Sources()}
		switch {
		case same(h.ISO, h.Old):
			return []Hexagon{iso}
		case era == BeforeWar || era == AfterWar:
			return []Hexagon{old, iso}
		}
		return []Hexagon{iso, old}
	}
	return nil
}

func unifiedHexagons(t Thread, nut bool) []Hexagon {
	for h := range refdata.UnifiedHexagons().Between(t.major-units.Micrometre, t.major+units.Micrometre) {
		b := Hexagon{Series: UnifiedBolt, Flats: h.Head, FlatsMin: h.HeadMin, Spanner: fractionAF(h.Head), Sources: h.HeadOrigin.Sources()}
		n := Hexagon{Series: UnifiedNut, Flats: h.Nut, FlatsMin: refdata.Known(h.NutMin), Spanner: fractionAF(h.Nut), Sources: h.NutOrigin.Sources()}
		switch {
		case same(h.Head, h.Nut) && nut:
			return []Hexagon{n}
		case same(h.Head, h.Nut):
			return []Hexagon{b}
		case nut:
			return []Hexagon{n, b}
		}
		return []Hexagon{b, n}
	}
	return nil
}

// fractionAF returns "7/16 AF" for a width in whole sixteenths of an inch.
func fractionAF(w units.Length) string {
	return sixteenthsMixed(int(math.Round(w.Inches()*16))) + " AF"
}

// sixteenthsMixed returns "5/16", "1", "1 5/16".
func sixteenthsMixed(n int) string {
	switch whole, rest := n/16, n%16; {
	case rest == 0:
		return strconv.Itoa(whole)
	case whole == 0:
		return fraction(rest, 16)
	default:
		return strconv.Itoa(whole) + " " + fraction(rest, 16)
	}
}
