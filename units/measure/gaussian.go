package measure

import (
	"math"
)

// Effect is an error or an amount that moves several readings together: by its
// column times a normal amount of standard deviation SD and mean zero.
type Effect struct {
	Name   string
	SD     float64
	Column []float64 // one factor per reading
}

// Gaussian is a cause whose readings are normal: a mean, each reading's own
// error, and effects common to several of them. An amount the cause leaves
// open, such as how far a cam slipped, is an effect too; its evidence is then
// averaged over the amount in closed form, which is what makes "exactly one
// tooth" beat "slipped by some angle" when both fit.
//
// No method allocates for up to sixteen readings, nor takes more than 1000 that
// were taken: the answer is then that of a covariance that is not positive
// definite, NaN.
type Gaussian struct {
	Mean   []float64 // expected readings
	Own    []float64 // standard uncertainty of each reading, above zero
	Shared []Effect  // errors common to several readings
	Free   []Effect  // amounts the cause leaves open
}

// LogLikelihood returns the log density of the readings taken:
// -1/2 (q' C^-1 q + ln det C + m ln 2 pi), q = y - mean, C = diag(own^2) +
// sum sd^2 column column'. It is NaN, which [Rank] refuses, if C is not
// positive definite or lengths differ.
func (g Gaussian) LogLikelihood(d Data) float64 {
	var s scratch
	chi2, ok := g.chi2(d, &s)
	if !ok {
		return math.NaN()
	}
	return -0.5 * (chi2 + s.logDet() + float64(s.m)*math.Log(2*math.Pi))
}

// ChiSquared returns q' C^-1 q and the number of readings taken: how well the
// cause fits, small being well.
func (g Gaussian) ChiSquared(d Data) (chi2 float64, n int) {
	var s scratch
	chi2, ok := g.chi2(d, &s)
	if !ok {
		return math.NaN(), s.m
	}
	return chi2, s.m
}

func (g Gaussian) chi2(d Data, s *scratch) (float64, bool) {
	if !g.fits(d) {
		return 0, false
	}
	if s.take(d); s.m == 0 {
		return 0, true
	}
	if !g.factor(d, s) {
		return 0, false
	}
	s.lower(s.q())
	return dot(s.q(), s.q()), true
}

// Amount returns the value and standard uncertainty of Free[i] after the
// readings: sd^2 a' C^-1 q, and the root of sd^2 - sd^4 a' C^-1 a. They are NaN if
// there is no Free[i], C is not positive definite or lengths differ.
func (g Gaussian) Amount(i int, d Data) (value, u float64) {
	if i < 0 || i >= len(g.Free) || !g.fits(d) {
		return math.NaN(), math.NaN()
	}
	e := g.Free[i]
	value, variance := g.project(d, e.SD, e.Column)
	return value, math.Sqrt(max(e.SD*e.SD-variance, 0))
}

// Outlook returns what the cause expects of reading i, given the readings
// taken: the mean and standard deviation of its value with its own error. The mean
// is NaN, which [Next] refuses, if there is no reading i, C is not positive
// definite or lengths differ.
func (g Gaussian) Outlook(i int, d Data) Outlook {
	if i < 0 || i >= len(d) || !g.fits(d) {
		return Outlook{Mean: math.NaN()}
	}
	mean, prior := g.Mean[i], g.Own[i]*g.Own[i]
	for k := range len(g.Shared) + len(g.Free) {
		e := g.effect(k)
		prior += e.SD * e.SD * e.Column[i] * e.Column[i]
	}
	var s scratch
	if s.take(d); s.m == 0 {
		return Outlook{Mean: mean, SD: math.Sqrt(prior)}
	}
	if !g.factor(d, &s) {
		return Outlook{Mean: math.NaN()}
	}
	clear(s.x())
	for n, j := range s.at() {
		for k := range len(g.Shared) + len(g.Free) {
			e := g.effect(k)
			s.x()[n] += e.SD * e.SD * e.Column[i] * e.Column[j]
		}
	}
	s.lower(s.q())
	s.lower(s.x())
	mean += dot(s.x(), s.q())
	return Outlook{Mean: mean, SD: math.Sqrt(max(prior-dot(s.x(), s.x()), g.Own[i]*g.Own[i]))}
}

// project returns sd^2 a' C^-1 q and sd^4 a' C^-1 a.
func (g Gaussian) project(d Data, sd float64, column []float64) (value, variance float64) {
	var s scratch
	if s.take(d); s.m == 0 {
		return 0, 0
	}
	if !g.factor(d, &s) {
		return math.NaN(), math.NaN()
	}
	for n, j := range s.at() {
		s.x()[n] = column[j]
	}
	s.lower(s.q())
	s.lower(s.x())
	return sd * sd * dot(s.x(), s.q()), sd * sd * sd * sd * dot(s.x(), s.x())
}

// most is how many readings the square of their number still leaves room and
// time for.
const most = 1000

// fits reports whether every part has one figure for each of d, and d not more
// readings taken than the work can bear.
func (g Gaussian) fits(d Data) bool {
	n := len(d)
	if len(g.Mean) != n || len(g.Own) != n {
		return false
	}
	for i := range g.Shared {
		if len(g.Shared[i].Column) != n {
			return false
		}
	}
	for i := range g.Free {
		if len(g.Free[i].Column) != n {
			return false
		}
	}
	if n <= most {
		return true
	}
	taken := 0
	for _, x := range d {
		if x.Taken {
			taken++
		}
	}
	return taken <= most
}

// factor puts the Cholesky factor of C and the residuals into s. g must fit d.
func (g Gaussian) factor(d Data, s *scratch) bool {
	c := s.c()
	for k, i := range s.at() {
		s.q()[k] = d[i].Value - g.Mean[i]
		for l, j := range s.at()[:k+1] {
			var v float64
			if i == j {
				v = g.Own[i] * g.Own[i]
			}
			for _, e := range g.Shared {
				v += e.SD * e.SD * e.Column[i] * e.Column[j]
			}
			for _, e := range g.Free {
				v += e.SD * e.SD * e.Column[i] * e.Column[j]
			}
			c[k*s.m+l] = v
		}
	}
	return s.cholesky()
}

// effect returns the shared and free effects as one row.
func (g Gaussian) effect(k int) Effect {
	if k < len(g.Shared) {
		return g.Shared[k]
	}
	return g.Free[k-len(g.Shared)]
}
