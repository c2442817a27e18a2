package spring

import (
	"math"
	"slices"
	"strconv"

	"example.com/benchbook/refdata"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

// Evenness is how alike the springs of a set are.
type Evenness struct {
	Mean   measure.Reading[units.Force] `json:"mean"`
	Spread float64                      `json:"spread"`        // greatest less least load, over the mean
	Each   []OfSet                      `json:"each"`          // in the order given
	Odd    []int                        `json:"odd,omitempty"` // places, from 0, of springs that do not belong with the rest
	Even   bool                         `json:"even"`          // spread within the option and none odd
	Basis  refdata.Basis                `json:"basis"`
}

// OfSet is one spring of a set beside the others.
type OfSet struct {
	Load   measure.Reading[units.Force] `json:"load"`
	Off    float64                      `json:"off"`    // load over the median of the others, less 1
	Sigmas float64                      `json:"sigmas"` // that difference over its standard uncertainty
}

// EvenOptions sets when a set is even.
type EvenOptions struct {
	Spread float64 // greatest spread of load; zero: 0.06 (common practice, no source)
	Sigmas float64 // how far from the others a spring may read; zero: 3
}

// Even compares the springs of a set by their loads at one and the same length,
// read with one balance: its scale error moves all alike and is best left out of
// the uncertainties. A spring is odd if it differs from the median of the others by
// more than the readings allow and by more than half the spread. Lengths alone
// do not show a wrong rate. Errors: fewer than two springs, readings not taken or
// not above zero, exact readings.
func Even(loads []measure.Reading[units.Force], opt EvenOptions) (Evenness, error) {
	var l fault.List
	if opt.Spread == 0 {
		opt.Spread = 0.06
	}
	if opt.Sigmas == 0 {
		opt.Sigmas = 3
	}
	within(&l, "spread", opt.Spread, 0.001, 1)
	within(&l, "sigmas", opt.Sigmas, 0.1, 10)
	if len(loads) < 2 || len(loads) > 100 {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "loads", Value: strconv.Itoa(len(loads)), Rule: "two to a hundred springs"})
	}
	for i, r := range loads {
		at := "loads." + strconv.Itoa(i)
		if checkReading(&l, at, r, true) && r.U() == 0 {
			l.Add(fault.Fault{Code: fault.Missing, Path: at, Value: r.String(), Unit: "N", Rule: "must have an uncertainty"})
		}
	}
	if err := l.Err(); err != nil {
		return Evenness{}, err
	}
	out := Evenness{Basis: refdata.Basis{
		Sources:    []refdata.Source{refdata.Practice()},
		Assumed:    []refdata.Assumption{{What: "greatest spread of an even set", Value: number(100*opt.Spread) + " %", Status: refdata.CommonPractice}},
		NotChecked: []refdata.Unchecked{{What: "rates", Why: "loads at one length only", Settle: "load each spring at a second length"}},
		Cautions:   []refdata.Caution{refdata.SpringsUnderLoad},
	}}
	var sum, vars float64
	low, high := math.Inf(1), 0.0
	for _, r := range loads {
		f := r.Value().Newtons()
		sum, vars = sum+f, vars+square(r.U().Newtons())
		low, high = min(low, f), max(high, f)
	}
	n := float64(len(loads))
	out.Mean = measure.Of(units.Newtons(sum/n), units.Newtons(math.Sqrt(vars)/n))
	out.Spread = (high - low) / (sum / n)
	for i, r := range loads {
		f, v := r.Value().Newtons(), square(r.U().Newtons())
		// the median, so that one odd spring does not make the rest look odd; its
		// variance is π/2 times that of the mean
		rest := medianWithout(loads, i)
		u := math.Sqrt(v + math.Pi/2*(vars-v)/square(n-1))
		s := OfSet{Load: r, Off: f/rest - 1, Sigmas: (f - rest) / u}
		out.Each = append(out.Each, s)
		if math.Abs(s.Sigmas) > opt.Sigmas && math.Abs(s.Off) > opt.Spread/2 {
			out.Odd = append(out.Odd, i)
		}
	}
	out.Even = out.Spread <= opt.Spread && len(out.Odd) == 0
	return out, nil
}

func medianWithout(loads []measure.Reading[units.Force], skip int) float64 {
	f := make([]float64, 0, len(loads))
	for i, r := range loads {
		if i != skip {
			f = append(f, r.Value().Newtons())
		}
	}
	slices.Sort(f)
	k := len(f) / 2
	if len(f)%2 == 1 {
		return f[k]
	}
	return (f[k-1] + f[k]) / 2
}
