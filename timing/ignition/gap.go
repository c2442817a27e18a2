package ignition

import (
	"example.com/benchbook/refdata"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

// GapRate is how far the ignition shaft turns while the points open by a length,
// near the place where they part. Its zero value is 15° to 50° per mm: common
// practice, wide because cams differ. Measure it: read the disc at two gaps.
type GapRate struct {
	LowDegreesPerMM  float64 `json:"low_deg_per_mm"`  // shaft degrees per millimetre
	HighDegreesPerMM float64 `json:"high_deg_per_mm"` // shaft degrees per millimetre
}

func (r GapRate) filled() GapRate {
	if r == (GapRate{}) {
		return GapRate{LowDegreesPerMM: 15, HighDegreesPerMM: 50}
	}
	return r
}

func (r GapRate) err() error {
	if r = r.filled(); !(r.LowDegreesPerMM > 0 && r.LowDegreesPerMM <= r.HighDegreesPerMM && r.HighDegreesPerMM < 1000) {
		return fault.Fault{Code: fault.OutOfRange, Path: "gap_rate", Unit: "°/mm", Rule: "two rates above zero and below 1000, low to high"}
	}
	return nil
}

// widestGap is more than any points open.
const widestGap = 5 * units.Millimetre

// GapMoved is what a change of gap does.
type GapMoved struct {
	Shaft measure.Interval[units.Angle]      `json:"shaft"` // earlier is positive
	Crank measure.Interval[units.CrankAngle] `json:"crank"`
	Basis refdata.Basis                      `json:"basis"`
}

// GapShift returns how much earlier the points open after the gap is changed: a
// wider gap opens earlier and closes later (common practice; the amount follows
// from the slope of the cam, derived). Set the gap first, then the timing.
// Errors: a gap not above zero and below 5 mm, a bad rate or drive.
func GapShift(from, to units.Length, rate GapRate, d Drive) (GapMoved, error) {
	var l fault.List
	for _, g := range [...]struct {
		path string
		v    units.Length
	}{{"from", from}, {"to", to}} {
		if !(g.v > 0 && g.v < widestGap) {
			l.Add(fault.Fault{Code: fault.OutOfRange, Path: g.path, Unit: "mm", Rule: "a points gap is above zero and below 5 mm"})
		}
	}
	l.Under("", rate.err())
	l.Under("drive", d.Err())
	if err := l.Err(); err != nil {
		return GapMoved{}, err
	}
	var b refdata.Basis
	if rate == (GapRate{}) {
		b.Assumed = []refdata.Assumption{{What: "slope of the points cam", Value: "15° to 50° of its shaft per mm", Status: refdata.CommonPractice}}
	}
	b.Sources = []refdata.Source{refdata.Practice()}
	b.Cautions = []refdata.Caution{refdata.HighTension}
	rate = rate.filled()
	mm := (to - from).Millimetres()
	low, high := units.Degrees(rate.LowDegreesPerMM*mm), units.Degrees(rate.HighDegreesPerMM*mm)
	return GapMoved{Shaft: measure.Between(low, high), Crank: measure.Between(d.AtCrank(low), d.AtCrank(high)), Basis: b}, nil
}
