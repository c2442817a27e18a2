package cam_test

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"
	"time"

	"example.com/benchbook/timing/cam"
	"example.com/benchbook/units"
	"gonum.org/v1/gonum/interp"
)

// The benchmarks stand beside gonum/interp in one run; compare them as ratios.

func evenLobe(n int) ([]units.Length, []float64, []float64) {
	l := lobe{8, 75, 180}
	lift, xs, ys := make([]units.Length, n), make([]float64, n+1), make([]float64, n+1)
	for i := range n + 1 {
		xs[i] = 360 * float64(i) / float64(n)
		ys[i] = l.lift(xs[i])
		if i < n {
			lift[i] = units.Millimetres(ys[i])
		}
	}
	return lift, xs, ys
}

func angles() []float64 {
	rng := rand.New(rand.NewPCG(1, 2))
	x := make([]float64, 4096)
	for i := range x {
		x[i] = 360 * rng.Float64()
	}
	return x
}

var sink float64

func BenchmarkLift(b *testing.B) {
	const knots = 721
	lift, xs, ys := evenLobe(knots)
	at := angles()
	b.Run("even", func(b *testing.B) {
		c, err := cam.InterpolateEven(lift)
		if err != nil {
			b.Fatal(err)
		}
		b.ReportAllocs()
		sum := 0.0
		for i := range b.N {
			y, _ := c.Lift(units.CamDegrees(at[i&4095]))
			sum += y.Millimetres()
		}
		sink = sum
	})
	b.Run("uneven", func(b *testing.B) {
		rng := rand.New(rand.NewPCG(1, 2))
		var s []cam.Sample
		for i := range knots {
			s = append(s, cam.Sample{At: units.CamDegrees((float64(i) + 0.5*rng.Float64()) * 360 / knots), Lift: lift[i]})
		}
		f, err := cam.Fit(s, cam.FitOptions{Criterion: cam.Interpolated})
		if err != nil {
			b.Fatal(err)
		}
		b.ReportAllocs()
		sum := 0.0
		for i := range b.N {
			y, _ := f.Lift(units.CamDegrees(at[i&4095]))
			sum += y.Millimetres()
		}
		sink = sum
	})
	b.Run("gonum", func(b *testing.B) {
		var p interp.NaturalCubic
		if err := p.Fit(xs, ys); err != nil {
			b.Fatal(err)
		}
		b.ReportAllocs()
		sum := 0.0
		for i := range b.N {
			sum += p.Predict(at[i&4095])
		}
		sink = sum
	})
}

// Turn about with gonum/interp in batches of 4,096 angles, so that both meet the same
// machine: the fastest batch of each, which other work on the machine does not reach,
// the median, and how many times faster the fastest is than gonum's. The figures hold
// from some hundred batches on.
func BenchmarkLiftBesideGonum(b *testing.B) {
	lift, xs, ys := evenLobe(721)
	at := angles()
	c, err := cam.InterpolateEven(lift)
	if err != nil {
		b.Fatal(err)
	}
	var p interp.NaturalCubic
	if err := p.Fit(xs, ys); err != nil {
		b.Fatal(err)
	}
	ours, theirs := make([]float64, b.N), make([]float64, b.N)
	for i := range b.N {
		start := time.Now()
		sum := 0.0
		for _, x := range at {
			y, _ := c.Lift(units.CamDegrees(x))
			sum += y.Millimetres()
		}
		middle := time.Now()
		for _, x := range at {
			sum += p.Predict(x)
		}
		end := time.Now()
		sink = sum
		ours[i], theirs[i] = float64(middle.Sub(start).Nanoseconds())/4096, float64(end.Sub(middle).Nanoseconds())/4096
	}
	slices.Sort(ours)
	slices.Sort(theirs)
	b.ReportMetric(ours[0], "ns/fastest")
	b.ReportMetric(ours[b.N/2], "ns/median")
	b.ReportMetric(theirs[0]/ours[0], "x-gonum")
}

func BenchmarkFit(b *testing.B) {
	const knots = 721
	lift, xs, ys := evenLobe(knots)
	b.Run("periodic", func(b *testing.B) {
		for range b.N {
			if _, err := cam.InterpolateEven(lift); err != nil {
				b.Fatal(err)
			}
		}
	})
	b.Run("smoothed", func(b *testing.B) {
		s := lobe{8, 75, 180}.read(360.0/knots, 0.01, rand.New(rand.NewPCG(1, 2)))
		for range b.N {
			if _, err := cam.Fit(s, cam.FitOptions{}); err != nil {
				b.Fatal(err)
			}
		}
	})
	b.Run("gonum-natural", func(b *testing.B) {
		for range b.N {
			var p interp.NaturalCubic
			if err := p.Fit(xs, ys); err != nil {
				b.Fatal(err)
			}
		}
	})
	b.Run("gonum-not-a-knot", func(b *testing.B) {
		for range b.N {
			var p interp.NotAKnotCubic
			if err := p.Fit(xs, ys); err != nil {
				b.Fatal(err)
			}
		}
	})
}

func TestLiftDoesNotAllocate(t *testing.T) {
	lift, _, _ := evenLobe(721)
	c, err := cam.InterpolateEven(lift)
	if err != nil {
		t.Fatal(err)
	}
	if n := testing.AllocsPerRun(100, func() {
		y, _ := c.Lift(123.4 * units.CamDegree)
		m, _ := c.Motion(-500.1 * units.CamDegree)
		sink += y.Millimetres() + m.JerkMMPerDegree3
	}); n != 0 {
		t.Errorf("%g allocations", n)
	}
}

// The periodic spline agrees with gonum's natural one where the ends do not
// matter: both are the cubic spline, and the ends here lie on the base circle,
// half a turn from the lobe. 1e-9 mm is rounding.
func TestAgainstGonum(t *testing.T) {
	lift, xs, ys := evenLobe(360)
	c, err := cam.InterpolateEven(lift)
	if err != nil {
		t.Fatal(err)
	}
	var p interp.NaturalCubic
	if err := p.Fit(xs, ys); err != nil {
		t.Fatal(err)
	}
	for _, x := range angles() {
		m, _ := c.Motion(units.CamDegrees(x))
		if want := p.Predict(x); math.Abs(m.Lift.Millimetres()-want) > 1e-9 {
			t.Fatalf("%v at %g, gonum %g", m.Lift, x, want)
		}
		if want := p.PredictDerivative(x); math.Abs(m.VelocityMMPerDegree-want) > 1e-9 {
			t.Fatalf("velocity %v at %g, gonum %g", m.VelocityMMPerDegree, x, want)
		}
	}
}
