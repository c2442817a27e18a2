package transmission

import (
	"math"

	"example.com/benchbook/units/measure"
)

// spread is a state whose parts are normal and independent.
type spread struct{ mean, sd vector }

// whole returns the log likelihood of what the whole clutch does.
func (m *model) whole(d measure.Data, st *spread) float64 {
	var w workings
	w.at(m, &st.mean)
	y := w.out
	var cov [outs][outs]float64
	for p := range all {
		if st.sd[p] == 0 {
			continue
		}
		g := w.slope(p)
		for i := range g {
			g[i] *= st.sd[p]
			for j := range i + 1 {
				cov[i][j] += g[i] * g[j]
			}
		}
	}
	for i := range cov {
		for j := range i {
			cov[j][i] = cov[i][j]
		}
	}
	total := 0.0
	for i, at := range [...]int{atLift, atHand} {
		if !d[at].Taken {
			continue
		}
		variance := cov[i][i] + m.own[at]*m.own[at]
		miss := d[at].Value - y[i]
		total += -0.5 * (miss*miss/variance + math.Log(2*math.Pi*variance))
		learn(&y, &cov, i, miss/variance, 1/variance)
	}
	for i := outSlips; i < outs; i++ {
		at := atSlips + i - outSlips
		if !d[at].Taken {
			continue
		}
		if d[at].Value == crept { // the figure itself is read: at its turning point, within its spread
			variance := cov[i][i] + 1
			total += -0.5 * (y[i]*y[i]/variance + math.Log(2*math.Pi*variance))
			learn(&y, &cov, i, -y[i]/variance, 1/variance)
			continue
		}
		// chance of the answer given: misheard, or the figure past its uncertain turning point
		side := 1.0
		if d[at].Value < 0.5 {
			side = -1
		}
		s := math.Sqrt(cov[i][i] + 1)
		t := side * y[i] / s
		const sure = 1 - 2*misheard
		z := misheard + sure*phi(t)
		slope := sure * density(t) / s
		total += math.Log(z)
		a := slope / z
		learn(&y, &cov, i, side*a, a*a+slope*t/s/z)
	}
	return total
}

// learn moves mean and covariance by what output i told: a is the slope of the
// log likelihood in that output's mean, b what its curvature takes.
func learn(y *[outs]float64, cov *[outs][outs]float64, i int, a, b float64) {
	c := cov[i]
	for j := range y {
		y[j] += c[j] * a
		for k := range y {
			cov[j][k] -= c[j] * c[k] * b
		}
	}
}

func update(b, reading figure) figure {
	if b.u == 0 {
		return b
	}
	if reading.u == 0 {
		return figure{reading.x, 0}
	}
	w := b.u * b.u / (b.u*b.u + reading.u*reading.u)
	return figure{b.x + w*(reading.x-b.x), b.u * math.Sqrt(1-w)}
}

// crept stands in the data for a clutch that just slipped under a kick test.
const crept = 2
