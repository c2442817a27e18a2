package cam

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/mat"
)

// uneven draws readings of a lobe at uneven angles with uneven weights.
func uneven(n int, rng *rand.Rand) (at, y, w []float64) {
	for i := range n {
		x := (float64(i) + 0.8*rng.Float64()) * turnDegrees / float64(n)
		if i == 0 {
			x = 0
		}
		at, w = append(at, x), append(w, float64(1+rng.IntN(4)))
		y = append(y, 4*math.Exp(-(x-150)*(x-150)/2000)+0.05*rng.NormFloat64())
	}
	return at, y, w
}

// The second derivatives make the velocity continuous: of the cubic over each piece,
// from its lifts and second derivatives at both ends.
func TestInterpolatedVelocityIsContinuous(t *testing.T) {
	at, y, _ := uneven(23, rand.New(rand.NewPCG(2, 2)))
	v := seconds(at, y)
	n := len(at)
	for i := range n {
		p, q := (i+n-1)%n, (i+1)%n
		before, after := math.Mod(at[i]-at[p]+turnDegrees, turnDegrees), math.Mod(at[q]-at[i]+turnDegrees, turnDegrees)
		in := (y[i]-y[p])/before + before*(v[p]+2*v[i])/6
		out := (y[q]-y[i])/after - after*(2*v[i]+v[q])/6
		if math.Abs(in-out) > 1e-12 {
			t.Errorf("reading %d: velocity %g before, %g after", i, in, out)
		}
	}
}

// What Reinsch's spline is said to be: of all lifts at the knots those with the least
// sum of w (y - g)^2 + alpha times the integral of the squared second derivative. The
// integral is worked out afresh, from the interpolating spline through g; a quadratic
// has its least where the central difference along each lift vanishes.
func TestSmoothedIsTheLeast(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 2))
	at, y, w := uneven(17, rng)
	n := len(at)
	s := newSpline(at, y, w)
	for _, alpha := range []float64{1e-3, 0.3, 40} {
		r := s.solve(alpha)
		if !r.ok {
			t.Fatal(alpha)
		}
		v := seconds(at, r.g)
		cost := func(g []float64) float64 {
			bend := seconds(at, g)
			sum := 0.0
			for i := range n {
				j := (i + 1) % n
				h := math.Mod(at[j]-at[i]+turnDegrees, turnDegrees)
				a, b := bend[i], bend[j]
				// by mean spacings: lengths over the scale, second derivatives times its square
				sum += w[i]*(y[i]-g[i])*(y[i]-g[i]) + alpha*h*(a*a+a*b+b*b)/3*s.scale*s.scale*s.scale
			}
			return sum
		}
		rss := 0.0
		for i := range n {
			rss += w[i] * (y[i] - r.g[i]) * (y[i] - r.g[i])
			if math.Abs(v[i]*s.scale*s.scale-r.v[i]) > 1e-9*(1+math.Abs(r.v[i])) {
				t.Errorf("alpha %g: second derivative %g at knot %d, through the lifts %g", alpha, r.v[i], i, v[i]*s.scale*s.scale)
			}
			const d = 1e-3
			g := append([]float64(nil), r.g...)
			g[i] += d
			up := cost(g)
			g[i] -= 2 * d
			if slope := (up - cost(g)) / (2 * d); math.Abs(slope) > 1e-8 {
				t.Errorf("alpha %g: not the least, slope %g along lift %d", alpha, slope, i)
			}
		}
		if math.Abs(r.rss-rss) > 1e-12*rss {
			t.Errorf("alpha %g: sum of squares %g, of the lifts %g", alpha, r.rss, rss)
		}
		// The trace of what turns readings into lifts, a column at a time.
		free := 0.0
		for i := range n {
			unit := make([]float64, n)
			unit[i] = 1
			free += newSpline(at, unit, w).solve(alpha).g[i]
		}
		if math.Abs(r.free-free) > 1e-5*free {
			t.Errorf("alpha %g: %g free figures, by the trace %g", alpha, r.free, free)
		}
	}
}

// R and Q W^-1 Q against their definitions, written out whole.
func TestSplineMatrix(t *testing.T) {
	at, y, w := uneven(9, rand.New(rand.NewPCG(7, 7)))
	n := len(at)
	s := newSpline(at, y, w)
	q, inverse := mat.NewDense(n, n, nil), mat.NewDense(n, n, nil)
	for i := range n {
		p, next := (i+n-1)%n, (i+1)%n
		q.Set(i, p, 1/s.h[p])
		q.Set(i, next, 1/s.h[i])
		q.Set(i, i, -1/s.h[p]-1/s.h[i])
		inverse.Set(i, i, 1/w[i])
	}
	var k mat.Dense
	k.Product(q, inverse, q)
	if got := whole(s.k); !mat.EqualApprox(got, &k, 1e-12) {
		t.Errorf("Q W^-1 Q:\n%v\nwritten out\n%v", mat.Formatted(got), mat.Formatted(&k))
	}
}

// The search over stiffness comes to the bottom of any single valley, from below its
// first place to above its last; as far beyond as its halved steps of 20, 10, 5, 2 and
// 1 lead and no further; and of figures all as good it takes the least stiff.
func TestLeastOfAValley(t *testing.T) {
	for bottom := -192 - 38; bottom <= 408+38; bottom++ {
		if got := least(func(k int) float64 { return math.Abs(float64(k - bottom)) }); got != bottom {
			t.Errorf("bottom of the valley %d, found %d", bottom, got)
		}
	}
	for name, c := range map[string]struct {
		score func(int) float64
		want  int
	}{
		"down for ever": {func(k int) float64 { return -float64(k) }, 408 + 38},
		"up for ever":   {func(k int) float64 { return float64(k) }, -192 - 38},
		"flat":          {func(int) float64 { return 1 }, -192},
	} {
		if got := least(c.score); got != c.want {
			t.Errorf("%s: %d, want %d", name, got, c.want)
		}
	}
}
