package measure

import (
	"math"
	"strconv"

	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
)

// Repeated is one figure read several times over.
type Repeated[Q units.Quantity] struct {
	Readings      int `json:"readings"`
	Mean          Q   `json:"mean"`
	Deviation     Q   `json:"deviation"`      // s, standard deviation of one reading
	Error         Q   `json:"error"`          // s/sqrt(n), standard deviation of the mean
	MeanDeviation Q   `json:"mean_deviation"` // mean distance from the mean
	Freedom       int `json:"freedom"`        // n - 1, for [Coverage]
}

// Repeat sums up two or more readings of the same figure: their mean, the
// standard deviation of one, s^2 = sum (x - mean)^2/(n - 1), and that of the
// mean, s/sqrt(n) (GUM, JCGM 100:2008, 4.2.2 and 4.2.3). Take the part off and
// set it up anew between readings, or the scatter says too little. Errors: fewer
// than two, a figure that is not finite, a temperature (give differences).
func Repeat[Q units.Quantity](values ...Q) (Repeated[Q], error) {
	var faults fault.List
	if len(values) < 2 {
		faults.Add(fault.Fault{Code: fault.Missing, Path: "values", Value: strconv.Itoa(len(values)), Rule: "scatter takes two readings or more"})
	}
	finite("values", values, &faults)
	if err := faults.Err(); err != nil {
		return Repeated[Q]{}, err
	}
	n := float64(len(values))
	mean := 0.0
	for _, x := range values {
		mean += x.SI() / n
	}
	var squares, distance float64
	for _, x := range values {
		d := x.SI() - mean
		squares += d * d / (n - 1)
		distance += math.Abs(d) / n
	}
	s := math.Sqrt(squares)
	if s-s != 0 {
		return Repeated[Q]{}, fault.Fault{Code: fault.OutOfRange, Path: "values", Rule: "too far apart to reckon with"}
	}
	return Repeated[Q]{
		Readings: len(values), Mean: units.FromSI[Q](mean), Deviation: units.FromSI[Q](s), Error: units.FromSI[Q](s / math.Sqrt(n)),
		MeanDeviation: units.FromSI[Q](distance), Freedom: len(values) - 1,
	}, nil
}

// Reading returns the mean with the uncertainty that the scatter shows. Readings
// all alike show none, which [Reading.Err] refuses; use [Repeated.By].
func (r Repeated[Q]) Reading() Reading[Q] { return Of(r.Mean, r.Error) }

// By returns the mean with the root of the sum of squares of its scatter and of
// the instrument's own uncertainty, which repeating does not lessen (GUM 4.3.7).
func (r Repeated[Q]) By(with Instrument[Q]) Reading[Q] {
	u := math.Hypot(r.Error.SI(), with.uncertainty(r.Mean).SI())
	return Reading[Q]{value: r.Mean, u: units.FromSI[Q](u), instrument: with.Name, state: taken}
}

// finite gathers the figures of a list that cannot be reckoned with.
func finite[Q units.Quantity](path string, values []Q, faults *fault.List) {
	var zero Q
	if _, temperature := any(zero).(units.Temperature); temperature {
		faults.Add(fault.Fault{Code: fault.Conflict, Path: path, Rule: "the spread of temperatures is a difference; give them as differences from one of them"})
	}
	for i, x := range values {
		if !units.Finite(x) {
			faults.Add(fault.Fault{Code: fault.OutOfRange, Path: path + "[" + strconv.Itoa(i) + "]", Value: x.String(), Rule: "a reading must be finite"})
		}
	}
}
