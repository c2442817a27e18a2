package solve_test

import (
	"math"
	"testing"
	"time"

	"gonum.org/v1/gonum/optimize"

	"example.com/benchbook/units/solve"
)

var sink float64

// BenchmarkRoot solves cos x = x; the peer minimises the square with gonum's
// BFGS, which is what a general optimiser offers for the same question. To
// reach: 250 ns with the evaluations, 50 times the peer.
func BenchmarkRoot(b *testing.B) {
	f := func(x float64) float64 { return math.Cos(x) - x }
	square := optimize.Problem{
		Func: func(x []float64) float64 { return f(x[0]) * f(x[0]) },
		Grad: func(grad, x []float64) { grad[0] = 2 * f(x[0]) * (-math.Sin(x[0]) - 1) },
	}
	peer := func() {
		r, err := optimize.Minimize(square, []float64{0.5}, nil, &optimize.BFGS{})
		if err != nil {
			b.Fatal(err)
		}
		sink = r.X[0]
	}
	b.ReportAllocs()
	var peerTime time.Duration
	n, turns := 0, 0
	for b.Loop() {
		sink, _ = solve.Root(f, 0, 1, 1e-12)
		if n++; n%1024 == 0 {
			b.StopTimer()
			start := time.Now()
			for range 8 {
				peer()
			}
			peerTime += time.Since(start)
			turns += 8
			b.StartTimer()
		}
	}
	if turns > 0 {
		b.ReportMetric(peerTime.Seconds()/float64(turns)/(b.Elapsed().Seconds()/float64(n)), "x-peer")
	}
}
