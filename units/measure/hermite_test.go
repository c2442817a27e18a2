package measure

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/integrate/quad"
)

// TestHermiteAgainstGonum compares nodes and weights with those of a library. The
// smallest weights, some 1e-16, are good to fewer digits in either.
func TestHermiteAgainstGonum(t *testing.T) {
	for _, n := range []int{1, 2, 3, 7, 24, 40} {
		h := newHermite(n)
		x, w := make([]float64, n), make([]float64, n)
		quad.Hermite{}.FixedLocations(x, w, math.Inf(-1), math.Inf(1))
		sum := 0.0
		for i := range x {
			if math.Abs(h.node[i]-x[i]) > 1e-13*(1+math.Abs(x[i])) || math.Abs(h.weight[i]-w[i]) > 1e-11*w[i] {
				t.Errorf("%d of %d: %v, %v; gonum %v, %v", i, n, h.node[i], h.weight[i], x[i], w[i])
			}
			sum += h.weight[i]
		}
		if math.Abs(sum-math.Sqrt(math.Pi)) > 1e-13 {
			t.Errorf("the %d weights add up to %v", n, sum)
		}
	}
}
