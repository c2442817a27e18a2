package measure

import (
	"math"
	"strconv"

	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
)

// Calibration is the correction of an instrument along its scale: a spring
// balance hung with known weights, a gauge against a better one. Add the
// correction to what it shows.
type Calibration[Q units.Quantity] struct {
	About       Q                    `json:"about"`       // the place on the scale that Offset is for
	Offset      Reading[Q]           `json:"offset"`      // correction there
	Slope       Reading[units.Ratio] `json:"slope"`       // change of the correction along the scale
	Correlation float64              `json:"correlation"` // of offset and slope
	Scatter     Q                    `json:"scatter"`     // standard deviation of one reading about the line
	Freedom     int                  `json:"freedom"`     // points - 2, for [Coverage]
	Checked     Interval[Q]          `json:"checked"`     // the part of the scale that was checked
}

// Calibrate lays the straight line of least squares through the corrections,
// true figure less shown figure, of three or more points of a scale (GUM, JCGM
// 100:2008, annex H.3): with theta = shown - about and D = n sum theta^2 -
// (sum theta)^2,
//
//	slope     = (n sum b theta - sum b sum theta)/D        u^2 = n s^2/D
//	offset    = (sum b sum theta^2 - sum b theta sum theta)/D  u^2 = s^2 sum theta^2/D
//	s^2       = sum (b - line)^2/(n - 2)
//
// The scatter s is taken no smaller than the uncertainty of the instrument at
// the middle of the points: readings that lie on the line to the last graduation
// prove no more than that. The zero Instrument takes the scatter as it is found.
// Errors: fewer than three points, lists of two lengths, all at one place, no
// scatter at all, figures not finite, temperatures (give differences).
func Calibrate[Q units.Quantity](shown, actual []Q, about Q, with Instrument[Q]) (Calibration[Q], error) {
	var faults fault.List
	n := float64(len(shown))
	switch {
	case len(shown) != len(actual):
		faults.Add(fault.Fault{Code: fault.Conflict, Path: "actual", Value: strconv.Itoa(len(actual)), Rule: "needs one figure for each one shown"})
	case n < 3:
		faults.Add(fault.Fault{Code: fault.Missing, Path: "shown", Value: strconv.Itoa(len(shown)), Rule: "a line and its scatter take three points or more"})
	}
	finite("shown", shown, &faults)
	finite("actual", actual, &faults)
	finite("about", []Q{about}, &faults)
	if err := faults.Err(); err != nil {
		return Calibration[Q]{}, err
	}

	// About the middle of the points offset and slope do not move together,
	// and no figures of like size are subtracted.
	var middle, level float64
	for i, x := range shown {
		middle += x.SI() / n
		level += (actual[i].SI() - x.SI()) / n
	}
	var along, both float64
	low, high := shown[0], shown[0]
	for i, x := range shown {
		d := x.SI() - middle
		along += d * d
		both += d * (actual[i].SI() - x.SI() - level)
		low, high = min(low, x), max(high, x)
	}
	slope := both / along
	var squares float64
	for i, x := range shown {
		e := actual[i].SI() - x.SI() - level - slope*(x.SI()-middle)
		squares += e * e / (n - 2)
	}
	s := max(math.Sqrt(squares), with.uncertainty(units.FromSI[Q](middle)).SI())
	uSlope := s / math.Sqrt(along)
	far := about.SI() - middle
	uOffset := math.Hypot(s/math.Sqrt(n), far*uSlope)
	switch {
	case !(high > low):
		return Calibration[Q]{}, fault.Fault{Code: fault.Conflict, Path: "shown", Value: low.String(), Rule: "points at one place of the scale do not make a line"}
	case uSlope-uSlope != 0 || uOffset-uOffset != 0:
		return Calibration[Q]{}, fault.Fault{Code: fault.OutOfRange, Path: "shown", Rule: "too far apart, or too near, to reckon with"}
	case s == 0:
		return Calibration[Q]{}, fault.Fault{Code: fault.Missing, Path: "with", Rule: "the points show no scatter at all; name the instrument, for its uncertainty"}
	}
	return Calibration[Q]{
		About:       about,
		Offset:      Of(units.FromSI[Q](level+slope*far), units.FromSI[Q](uOffset)),
		Slope:       Of(units.Value(slope), units.Value(uSlope)),
		Correlation: far * uSlope / uOffset,
		Scatter:     units.FromSI[Q](s),
		Freedom:     len(shown) - 2,
		Checked:     Interval[Q]{Low: low, High: high},
	}, nil
}

// Correction returns what to add to the figure shown, with the uncertainty of
// the line there: u^2 = u_offset^2 + theta^2 u_slope^2 + 2 theta r u_offset
// u_slope. Outside Checked it is the line drawn on, and no more.
func (c Calibration[Q]) Correction(shown Q) Reading[Q] {
	theta := shown.SI() - c.About.SI()
	a, b := c.Offset.SI(), c.Slope.SI()
	// (u_offset + theta r u_slope)^2 + (1 - r^2) theta^2 u_slope^2, never below zero
	u := math.Hypot(a.U+theta*c.Correlation*b.U, theta*b.U*math.Sqrt(max(0, 1-c.Correlation*c.Correlation)))
	return Of(units.FromSI[Q](a.X+theta*b.X), units.FromSI[Q](u))
}

// Correct returns a reading put right, its own uncertainty and that of the
// correction together. A reading not taken stays so.
func (c Calibration[Q]) Correct(r Reading[Q]) Reading[Q] {
	if !r.Taken() {
		return r
	}
	add := c.Correction(r.Value())
	u := math.Hypot(r.U().SI()*(1+c.Slope.Value().Value()), add.U().SI())
	return Of(units.FromSI[Q](r.Value().SI()+add.Value().SI()), units.FromSI[Q](u))
}
