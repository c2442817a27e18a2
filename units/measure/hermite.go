package measure

import (
	"math"
	"sync"

	"example.com/benchbook/units/solve"
)

// hermite holds the nodes and weights of the rule for a weight of exp(-t^2).
type hermite struct{ node, weight []float64 }

// nodes returns the rule with 24 nodes, worked out once.
var nodes = sync.OnceValue(func() hermite { return newHermite(24) })

// newHermite works out the rule with n nodes: the zeros of the Hermite polynomial
// of degree n, which those of degree n - 1 part, each found between its neighbours;
// the weight of a node is one over the sum of squares of the orthonormal
// polynomials below degree n there (Christoffel). It is here for its size: a
// library of quadrature doubles what a small program that ranks causes links.
func newHermite(n int) hermite {
	end := math.Sqrt(2*float64(n)) + 1 // beyond every zero
	var zeros []float64
	for k := 1; k <= n; k++ {
		between := append(append([]float64{-end}, zeros...), end)
		zeros = make([]float64, k)
		for i := range (k + 1) / 2 {
			// A bracket with zeros of one degree less at its ends holds one zero, and
			// the rest are its mirror image.
			x, err := solve.Root(func(x float64) float64 { p, _ := orthonormal(k, x); return p }, between[i], between[i+1], 0)
			if err != nil || 2*i+1 == k {
				x = 0
			}
			zeros[i], zeros[k-1-i] = x, -x
		}
	}
	h := hermite{zeros, make([]float64, n)}
	for i, x := range zeros {
		_, below := orthonormal(n, x)
		h.weight[i] = 1 / below
	}
	return h
}

// orthonormal returns the Hermite polynomial of degree n, scaled so that the
// integral of its square times exp(-x^2) is one, and the sum of squares of those of
// lower degree: p_(k+1) = x sqrt(2/(k+1)) p_k - sqrt(k/(k+1)) p_(k-1).
func orthonormal(n int, x float64) (p, below float64) {
	p = 1 / math.Sqrt(math.Sqrt(math.Pi))
	before := 0.0
	for k := range n {
		below += p * p
		m := float64(k + 1)
		p, before = x*math.Sqrt(2/m)*p-math.Sqrt(float64(k)/m)*before, p
	}
	return p, below
}
