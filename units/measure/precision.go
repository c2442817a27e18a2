package measure

import (
	"math"
	"slices"
)

// Precision is the spread of a [Gaussian] worked out once, for the many causes
// that differ only in what they expect: the inverse of its covariance over the
// readings taken. Its methods allocate nothing; they give NaN, which [Rank]
// refuses, for an index or a length that is none of its own.
type Precision struct {
	n       int
	at      []int
	inv     []float64 // n by n
	logNorm float64
	free    []freeRow
}

// freeRow is what gives an open amount after the readings: value = row·q.
type freeRow struct {
	row []float64
	u   float64
}

// Precision works out the spread of g over the readings that d has taken; their
// values and g.Mean are not used. ok is false if the covariance is not positive
// definite or lengths differ.
func (g Gaussian) Precision(d Data) (p Precision, ok bool) {
	var s scratch
	if len(g.Mean) != len(d) {
		g.Mean = make([]float64, len(d))
	}
	if !g.fits(d) {
		return Precision{}, false
	}
	s.take(d)
	if !g.factor(d, &s) {
		return Precision{}, false
	}
	p = Precision{n: s.m, at: slices.Clone(s.at()), inv: make([]float64, s.m*s.m)}
	p.logNorm = -0.5 * (s.logDet() + float64(s.m)*math.Log(2*math.Pi))
	for i := range s.m {
		clear(s.x())
		s.x()[i] = 1
		s.lower(s.x())
		s.upper(s.x())
		copy(p.inv[i*s.m:], s.x())
	}
	for _, e := range g.Free {
		row, variance := make([]float64, s.m), 0.0
		for i := range s.m {
			for j, k := range s.at() {
				row[i] += e.SD * e.SD * p.inv[i*s.m+j] * e.Column[k]
			}
			variance += e.SD * e.SD * row[i] * e.Column[s.at()[i]]
		}
		p.free = append(p.free, freeRow{row, math.Sqrt(max(e.SD*e.SD-variance, 0))})
	}
	return p, true
}

// Taken returns the indices in Data of the readings taken; q and w below have
// one figure for each, in this order. The caller must not change it.
func (p *Precision) Taken() []int { return p.at }

// Weigh returns the log density of residuals q, reading less expectation, and
// puts C^-1 q into w, which must be as long.
func (p *Precision) Weigh(q, w []float64) float64 {
	if len(q) != p.n || len(w) < p.n {
		return math.NaN()
	}
	chi2 := 0.0
	for i := range q {
		row := p.inv[i*p.n : i*p.n+p.n]
		v := 0.0
		for j, x := range row {
			v += x * q[j]
		}
		w[i] = v
		chi2 += v * q[i]
	}
	return p.logNorm - chi2/2
}

// has reports whether i is a reading of p and w has a figure for it.
func (p *Precision) has(i int, w []float64) bool { return i >= 0 && i < p.n && i < len(w) }

// Nudge returns by how much the log density of residuals q changes when delta is
// added to the i-th, given w = C^-1 q: - w_i delta - 1/2 (C^-1)_ii delta^2.
func (p *Precision) Nudge(i int, delta float64, w []float64) float64 {
	if !p.has(i, w) {
		return math.NaN()
	}
	return -delta * (w[i] + p.inv[i*p.n+i]*delta/2)
}

// Widen returns by how much the log density changes when the i-th reading's own
// standard uncertainty grows by sd in quadrature, given w = C^-1 q:
// 1/2 (w_i^2 sd^2/(1 + sd^2 (C^-1)_ii) - ln(1 + sd^2 (C^-1)_ii)), the rank-one
// update of inverse and determinant (Sherman and Morrison, Ann. Math. Stat. 21
// (1950) 124, from memory).
func (p *Precision) Widen(i int, sd float64, w []float64) float64 {
	if !p.has(i, w) {
		return math.NaN()
	}
	k := 1 + sd*sd*p.inv[i*p.n+i]
	return (w[i]*w[i]*sd*sd/k - math.Log(k)) / 2
}

// Amount returns the value and standard uncertainty of the k-th open amount
// after residuals q; the uncertainty does not depend on them.
func (p *Precision) Amount(k int, q []float64) (value, u float64) {
	if k < 0 || k >= len(p.free) || len(q) != p.n {
		return math.NaN(), math.NaN()
	}
	return dot(p.free[k].row, q), p.free[k].u
}

// AmountNudge returns by how much the value of Amount k changes when delta is
// added to the i-th residual.
func (p *Precision) AmountNudge(k, i int, delta float64) float64 {
	if k < 0 || k >= len(p.free) || i < 0 || i >= p.n {
		return math.NaN()
	}
	return p.free[k].row[i] * delta
}

// Relief returns the most by which the log density can rise if one reading is
// set aside, given w = C^-1 q: the greatest 1/2 w_i^2/(C^-1)_ii. No [Precision.Nudge]
// and no [Precision.Widen] exceeds it.
func (p *Precision) Relief(w []float64) float64 {
	if len(w) != p.n {
		return math.NaN()
	}
	most := 0.0
	for i, x := range w {
		most = max(most, x*x/p.inv[i*p.n+i])
	}
	return most / 2
}
