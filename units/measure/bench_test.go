package measure_test

import (
	"testing"

	"example.com/benchbook/units/measure"
)

func BenchmarkGaussianLogLikelihood(b *testing.B) {
	g := measure.Gaussian{
		Mean: []float64{0, 0, 0, 0}, Own: []float64{1, 1, 1, 1},
		Free: []measure.Effect{{SD: 10, Column: []float64{1, 1, 0, 0}}},
	}
	d := measure.Data{{Value: 12, Taken: true}, {Value: 15, Taken: true}, {Taken: true}, {Value: 1, Taken: true}}
	for b.Loop() {
		g.LogLikelihood(d)
	}
}
