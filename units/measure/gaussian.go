package measure

import (
	"math"

	"gonum.org/v1/gonum/mat"
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
	at := takenAt(d)
	if len(at) == 0 {
		return 0
	}
	chol, q, ok := g.factor(d, at)
	if !ok {
		return math.NaN()
	}
	var x mat.VecDense
	if chol.SolveVecTo(&x, q) != nil {
		return math.NaN()
	}
	return -0.5 * (mat.Dot(q, &x) + chol.LogDet() + float64(len(at))*math.Log(2*math.Pi))
}

// ChiSquared returns q' C^-1 q and the number of readings taken: how well the
// cause fits, small being well.
func (g Gaussian) ChiSquared(d Data) (chi2 float64, n int) {
	at := takenAt(d)
	if len(at) == 0 {
		return 0, 0
	}
	chol, q, ok := g.factor(d, at)
	var x mat.VecDense
	if !ok || chol.SolveVecTo(&x, q) != nil {
		return math.NaN(), len(at)
	}
	return mat.Dot(q, &x), len(at)
}

// Amount returns the value and standard uncertainty of Free[i] after the
// readings: sd^2 a' C^-1 q, and the root of sd^2 - sd^4 a' C^-1 a.
func (g Gaussian) Amount(i int, d Data) (value, u float64) {
	e := g.Free[i]
	value, variance := g.project(d, e.SD, e.Column)
	return value, math.Sqrt(max(e.SD*e.SD-variance, 0))
}

// Outlook returns what the cause expects of reading i, given the readings
// taken: the mean and standard deviation of its value with its own error.
func (g Gaussian) Outlook(i int, d Data) Outlook {
	var mean, prior, drop float64
	mean, prior = g.Mean[i], g.Own[i]*g.Own[i]
	at := takenAt(d)
	for _, e := range g.effects() {
		prior += e.SD * e.SD * e.Column[i] * e.Column[i]
	}
	if len(at) > 0 {
		chol, q, ok := g.factor(d, at)
		if !ok {
			return Outlook{Mean: math.NaN()}
		}
		cross := mat.NewVecDense(len(at), nil)
		for k, j := range at {
			for _, e := range g.effects() {
				cross.SetVec(k, cross.AtVec(k)+e.SD*e.SD*e.Column[i]*e.Column[j])
			}
		}
		var x mat.VecDense
		if chol.SolveVecTo(&x, cross) != nil {
			return Outlook{Mean: math.NaN()}
		}
		mean += mat.Dot(&x, q)
		drop = mat.Dot(&x, cross)
	}
	return Outlook{Mean: mean, SD: math.Sqrt(max(prior-drop, g.Own[i]*g.Own[i]))}
}

// project returns sd^2 a' C^-1 q and sd^4 a' C^-1 a.
func (g Gaussian) project(d Data, sd float64, column []float64) (value, variance float64) {
	at := takenAt(d)
	if len(at) == 0 {
		return 0, 0
	}
	chol, q, ok := g.factor(d, at)
	if !ok {
		return math.NaN(), math.NaN()
	}
	a := mat.NewVecDense(len(at), nil)
	for k, j := range at {
		a.SetVec(k, column[j])
	}
	var x mat.VecDense
	if chol.SolveVecTo(&x, a) != nil {
		return math.NaN(), math.NaN()
	}
	return sd * sd * mat.Dot(&x, q), sd * sd * sd * sd * mat.Dot(&x, a)
}

// factor returns the Cholesky factor of C and the residuals q.
func (g Gaussian) factor(d Data, at []int) (*mat.Cholesky, *mat.VecDense, bool) {
	n := len(d)
	if len(g.Mean) != n || len(g.Own) != n {
		return nil, nil, false
	}
	c := mat.NewSymDense(len(at), nil)
	q := mat.NewVecDense(len(at), nil)
	for k, i := range at {
		q.SetVec(k, d[i].Value-g.Mean[i])
		for l, j := range at[:k+1] {
			var v float64
			if i == j {
				v = g.Own[i] * g.Own[i]
			}
			for _, e := range g.effects() {
				if len(e.Column) != n {
					return nil, nil, false
				}
				v += e.SD * e.SD * e.Column[i] * e.Column[j]
			}
			c.SetSym(k, l, v)
		}
	}
	var chol mat.Cholesky
	if !chol.Factorize(c) {
		return nil, nil, false
	}
	return &chol, q, true
}

func (g Gaussian) effects() []Effect {
	if len(g.Free) == 0 {
		return g.Shared
	}
	return append(g.Shared[:len(g.Shared):len(g.Shared)], g.Free...)
}

func takenAt(d Data) []int {
	at := make([]int, 0, len(d))
	for i, x := range d {
		if x.Taken {
			at = append(at, i)
		}
	}
	return at
}
