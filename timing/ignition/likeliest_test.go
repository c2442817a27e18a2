package ignition

import (
	"math"
	"testing"

	"example.com/benchbook/units/measure"
)

// The branch that the readings favour is the one whose density there, times its
// weight, is greatest; of equals the first.
func TestLikeliestBranch(t *testing.T) {
	at := func(mean, weight float64) branch {
		return branch{weight: weight, normal: measure.Gaussian{Mean: []float64{mean, 0, 0}, Own: []float64{1, 1, 1}}}
	}
	for _, c := range []struct {
		name     string
		branches []branch
		read     float64
		want     float64 // mean of the one favoured
	}{
		{"the second", []branch{at(0, 0.5), at(10, 0.5)}, 6, 10},
		{"the first", []branch{at(0, 0.5), at(10, 0.5)}, 4, 0},
		{"of equals the first", []branch{at(0, 0.5), at(10, 0.5)}, 5, 0},
		// 10 apart, the odds at 5.1 are exp(10 x 0.1) = e to one for the second.
		{"the first by weight", []branch{at(0, 0.75), at(10, 0.25)}, 5.1, 0},
		{"the second for all its weight", []branch{at(0, 0.7), at(10, 0.3)}, 5.1, 10},
	} {
		d := make(measure.Data, components)
		d[advanced] = measure.Datum{Value: c.read, Taken: true}
		q := cause{branches: c.branches}
		if got := q.likeliest(d).normal.Mean[advanced]; got != c.want {
			t.Errorf("%s: that about %v", c.name, got)
		}
		// The whole is the mean of the branches' densities.
		sum := 0.0
		for _, b := range c.branches {
			m := b.normal.Mean[advanced]
			sum += b.weight * math.Exp(-(c.read-m)*(c.read-m)/2) / math.Sqrt(2*math.Pi)
		}
		if got := q.LogLikelihood(d); math.Abs(got-math.Log(sum)) > 1e-12 {
			t.Errorf("%s: log density %v, want %v", c.name, got, math.Log(sum))
		}
	}
}
