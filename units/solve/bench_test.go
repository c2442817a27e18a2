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
// BFGS, which is what a general optimiser offers for the same question, and the
// floor is as many evaluations with nothing round them. Batches of the three take
// turns, and the fastest of each counts. To reach: 250 ns above the evaluations,
// 50 times the peer.
func BenchmarkRoot(b *testing.B) {
	calls := 0
	f := func(x float64) float64 { calls++; return math.Cos(x) - x }
	square := optimize.Problem{
		Func: func(x []float64) float64 { return f(x[0]) * f(x[0]) },
		Grad: func(grad, x []float64) { grad[0] = 2 * f(x[0]) * (-math.Sin(x[0]) - 1) },
	}
	x, err := solve.Root(f, 0, 1, 1e-12)
	if err != nil || math.Abs(math.Cos(x)-x) > 1e-11 {
		b.Fatal(x, err)
	}
	evaluations := calls

	const batch, peers = 256, 8
	root, bare, peer := math.Inf(1), math.Inf(1), math.Inf(1)
	fastest := func(least *float64, n int, run func()) {
		start := time.Now()
		for range n {
			run()
		}
		*least = min(*least, float64(time.Since(start).Nanoseconds())/float64(n))
	}
	for b.Loop() {
		fastest(&root, batch, func() { sink, _ = solve.Root(f, 0, 1, 1e-12) })
		fastest(&bare, batch, func() { evaluate(f, evaluations) })
		fastest(&peer, peers, func() {
			r, err := optimize.Minimize(square, []float64{0.5}, nil, &optimize.BFGS{})
			if err != nil {
				b.Fatal(err)
			}
			sink = r.X[0]
		})
	}
	b.ReportMetric(root, "ns/root")
	b.ReportMetric(root-bare, "ns/own")
	b.ReportMetric(float64(evaluations), "evaluations/root")
	b.ReportMetric(bare/root, "evaluations-share")
	b.ReportMetric(peer/root, "x-peer")
}

// evaluate asks f as often as a root does, by the same kind of call.
//
//go:noinline
func evaluate(f func(float64) float64, n int) {
	s := 0.0
	for i := range n {
		s += f(0.7 + 0.01*float64(i))
	}
	sink = s
}

func TestRootDoesNotAllocate(t *testing.T) {
	f := func(x float64) float64 { return math.Cos(x) - x }
	if n := testing.AllocsPerRun(100, func() { sink, _ = solve.Root(f, 0, 1, 1e-12) }); n != 0 {
		t.Errorf("%g allocations", n)
	}
}
