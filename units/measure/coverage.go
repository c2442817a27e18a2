package measure

import (
	"math"
	"strconv"

	"gonum.org/v1/gonum/mathext"

	"example.com/benchbook/units/fault"
)

// Coverage returns the factor k by which to multiply a standard uncertainty so
// that ± k u holds a share p of the figures, 0 < p < 1: the two-sided quantile
// of Student's t (GUM, JCGM 100:2008, G.3.2). Freedom is the degrees of
// freedom behind u, 1 and up, fractions allowed; 0 stands for an uncertainty
// known without limit, and gives the normal factor, 1.96 for 95 %. With t^2 =
// freedom y/(1 - y), y is the p quantile of the beta distribution (1/2,
// freedom/2); it and its complement are each computed for themselves.
func Coverage(p, freedom float64) (float64, error) {
	var faults fault.List
	if !(p > 0 && p < 1) {
		faults.Add(fault.Fault{Code: fault.OutOfRange, Path: "p", Value: strconv.FormatFloat(p, 'g', -1, 64), Rule: "a share above 0 and below 1"})
	}
	if !(freedom == 0 || freedom >= 1 && !math.IsInf(freedom, 0)) {
		faults.Add(fault.Fault{Code: fault.OutOfRange, Path: "freedom", Value: strconv.FormatFloat(freedom, 'g', -1, 64), Rule: "1 and up, or 0 for no limit"})
	}
	if err := faults.Err(); err != nil {
		return 0, err
	}
	const beyond = 1e8 // from here Student's factor is the normal one to eight digits
	if freedom == 0 || freedom > beyond {
		return math.Sqrt2 * math.Erfinv(p), nil
	}
	y := mathext.InvRegIncBeta(0.5, freedom/2, p)
	x := mathext.InvRegIncBeta(freedom/2, 0.5, 1-p)
	k := math.Sqrt(freedom * y / x)
	if k-k != 0 {
		return 0, fault.Fault{Code: fault.OutOfRange, Path: "p", Value: strconv.FormatFloat(p, 'g', -1, 64), Rule: "too near 1 for so few degrees of freedom"}
	}
	return k, nil
}

// Component is one part of a combined uncertainty: its amount in the unit of
// the result, and the degrees of freedom behind it, 0 for known without limit.
type Component struct{ U, Freedom float64 }

// Freedom returns the effective degrees of freedom of a combined uncertainty
// by the formula of Welch and Satterthwaite, u^4 / sum(u_i^4 / freedom_i) (GUM,
// JCGM 100:2008, G.4.1), for [Coverage]; 0 stands for no limit. Parts are 0 or
// above, and not all 0.
func Freedom(parts ...Component) (float64, error) {
	var faults fault.List
	most := 0.0
	for i, c := range parts {
		if !(c.U >= 0) || math.IsInf(c.U, 0) {
			faults.Add(fault.Fault{Code: fault.OutOfRange, Path: "parts[" + strconv.Itoa(i) + "].u", Value: strconv.FormatFloat(c.U, 'g', -1, 64), Rule: "0 or above"})
		}
		if !(c.Freedom == 0 || c.Freedom >= 1 && !math.IsInf(c.Freedom, 0)) {
			faults.Add(fault.Fault{Code: fault.OutOfRange, Path: "parts[" + strconv.Itoa(i) + "].freedom", Value: strconv.FormatFloat(c.Freedom, 'g', -1, 64), Rule: "1 and up, or 0 for no limit"})
		}
		most = max(most, c.U)
	}
	if faults.Len() == 0 && most == 0 {
		faults.Add(fault.Fault{Code: fault.Missing, Path: "parts", Rule: "at least one part must be above 0"})
	}
	if err := faults.Err(); err != nil {
		return 0, err
	}
	var square, fourth float64
	for _, c := range parts {
		share := c.U / most // the fourth power must neither overflow nor vanish
		square += share * share
		if c.Freedom > 0 {
			fourth += share * share * share * share / c.Freedom
		}
	}
	if fourth == 0 || square*square/fourth > math.MaxFloat64 {
		return 0, nil
	}
	return square * square / fourth, nil
}
