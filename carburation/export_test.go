package carburation

import (
	"math"

	"example.com/benchbook/units/solve"
)

// Drawn returns a model whose figures are drawn from what m holds of them.
func (m Model) Drawn(normal func() float64) Model {
	root, _ := cholesky((*square)(&m.cov))
	var z knobs
	for i := range z {
		z[i] = normal()
	}
	out := m
	for i := range z {
		for j := 0; j <= i; j++ {
			out.knobs[i] += root[i][j] * z[j]
		}
	}
	out.value = out.knobs.values()
	return out
}

// MainJetFor returns the effective area that gives lambda at full lift and peak
// speed, as a factor on the jet fitted; 0 if none does.
func (m Model) MainJetFor(lambda float64) float64 {
	x, err := solve.Root(func(x float64) float64 {
		p := m.plant
		p.mainJet = p.mainJet.times(math.Exp(x))
		return p.at(p.bore, p.peak, &m.value).lambda - lambda
	}, -2, 3, 1e-9)
	if err != nil {
		return 0
	}
	return math.Exp(x)
}

// Relative is the standard uncertainty of lambda, as a share.
func (m *Model) Relative(lift, speed float64) float64 { u, _ := m.relative(lift, speed); return u }

// PortRatio and PortRatioByBrent find the pressure of the port over the one before
// it, for a slide that gives 1.1 times as much: the model's own way, and a general one.
func PortRatio() float64 { return portRatio(1, 1.1) }

func PortRatioByBrent() float64 {
	y, _ := solve.Root(func(y float64) float64 { return y - 1.1*psi(y) }, 1e-9, 1-1e-12, 1e-15)
	return y
}
