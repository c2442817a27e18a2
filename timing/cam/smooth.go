package cam

import (
	"math"

	"example.com/benchbook/units"
)

// spline is the least-squares problem of a periodic smoothing spline: minimise
// sum w (y - g)^2 + alpha integral g”^2. With second derivatives v at the knots,
// R v = Q g (R, Q tridiagonal and wrapping round) the solution is
// (R + alpha Q W^-1 Q) v = Q y, g = y - alpha W^-1 Q v (Reinsch 1967, here closed
// to a ring: derived). Angles are in mean spacings, so that figures stay near one.
type spline struct {
	h, y, w []float64
	r       cyclic    // R
	k       cyclic    // Q W^-1 Q
	qy      []float64 // Q y
	scale   float64   // degrees in a mean spacing
	room    cyclic    // for R + alpha Q W^-1 Q
	one     factored
	other   factored
}

func newSpline(at, y, w []float64) *spline {
	n := len(at)
	s := &spline{h: make([]float64, n), y: y, w: w, scale: turnDegrees / float64(n), qy: make([]float64, n)}
	for i := range n {
		next := turnDegrees
		if i+1 < n {
			next = at[i+1]
		}
		s.h[i] = (next - at[i]) / s.scale
	}
	zeros := func() cyclic { return cyclic{make([]float64, n), make([]float64, n), make([]float64, n)} }
	s.r, s.k, s.room = zeros(), zeros(), zeros()
	for i := range n {
		p := (i + n - 1) % n // before
		s.r.d[i] = (s.h[p] + s.h[i]) / 3
		s.r.e[i] = s.h[i] / 6
	}
	// Q is symmetric: 1/h beside the diagonal, minus both neighbours on it.
	for i := range n {
		p, q := (i+n-1)%n, (i+1)%n
		s.k.d[i] = sq(1/s.h[p])/w[p] + sq(1/s.h[p]+1/s.h[i])/w[i] + sq(1/s.h[i])/w[q]
		s.k.e[i] = -(1/s.h[p]+1/s.h[i])/s.h[i]/w[i] - (1/s.h[i]+1/s.h[q])/s.h[i]/w[q]
		s.k.f[i] = 1 / (s.h[i] * s.h[q] * w[q])
	}
	s.q(y, s.qy)
	return s
}

func sq(x float64) float64 { return x * x }

// q is Q times x: how much the slope changes at each knot.
func (s *spline) q(x, out []float64) {
	n := len(x)
	for i := range n {
		p, next := (i+n-1)%n, (i+1)%n
		out[i] = (x[next]-x[i])/s.h[i] - (x[i]-x[p])/s.h[p]
	}
}

func (s *spline) matrix(alpha float64) cyclic {
	m := s.room
	for i := range s.y {
		m.d[i] = s.r.d[i] + alpha*s.k.d[i]
		m.e[i] = s.r.e[i] + alpha*s.k.e[i]
		m.f[i] = alpha * s.k.f[i]
	}
	return m
}

// solution is the spline for one alpha.
type solution struct {
	g, v []float64 // lift and second derivative at the knots, v by mean spacing
	rss  float64   // sum w (y - g)^2
	free float64   // tr A, the equivalent number of parameters
	ok   bool
}

func (s *spline) solve(alpha float64) solution {
	n := len(s.y)
	f := &s.one
	if !f.from(s.matrix(alpha)) {
		return solution{}
	}
	out := solution{v: append([]float64(nil), s.qy...), g: make([]float64, n), ok: true}
	f.solve(out.v)
	s.q(out.v, out.g)
	for i := range n {
		r := alpha * out.g[i] / s.w[i]
		out.g[i] = s.y[i] - r
		out.rss += s.w[i] * r * r
	}
	// n - tr A = alpha d/d alpha log det(R + alpha K), by a central difference in
	// log alpha: 1e-3 either way is good to six digits.
	const step = 1e-3
	ok := s.other.from(s.matrix(alpha * math.Exp(step)))
	up := s.other.logDet
	ok = s.other.from(s.matrix(alpha*math.Exp(-step))) && ok
	out.free = float64(n) - (up-s.other.logDet)/(2*step)
	out.ok = ok
	return out
}

// seconds are the second derivatives by degree of the interpolating spline: R v = Q y,
// a tridiagonal system closed to a ring, solved as an open one and a correction of
// rank one (Sherman and Morrison, from memory). Its diagonal is twice what stands
// beside it, so elimination without pivoting is safe.
func seconds(at, y []float64) []float64 {
	n := len(at)
	room := make([]float64, 3*n)
	v, z, c := room[:n:n], room[n:2*n:2*n], room[2*n:]
	length := func(i int) float64 {
		if i+1 < n {
			return at[i+1] - at[i]
		}
		return turnDegrees - at[i]
	}
	last := length(n - 1)
	before, rise := last, (y[0]-y[n-1])/last // of the piece before knot i
	first := (last + length(0)) / 3          // diagonal of row 0
	link := last / 6                         // between the last row and the first
	for i := range n {
		h := length(i)
		next := y[0]
		if i+1 < n {
			next = y[i+1]
		}
		slope := (next - y[i]) / h
		diagonal, rhs, u := (before+h)/3, slope-rise, 0.0
		switch i {
		case 0:
			diagonal, u = 2*first, -first
		case n - 1:
			diagonal, u = diagonal+link*link/first, link
		}
		if i > 0 {
			e := before / 6
			diagonal -= e * c[i-1]
			rhs -= e * v[i-1]
			u -= e * z[i-1]
		}
		c[i], v[i], z[i] = h/6/diagonal, rhs/diagonal, u/diagonal
		before, rise = h, slope
	}
	for i := n - 2; i >= 0; i-- {
		v[i] -= c[i] * v[i+1]
		z[i] -= c[i] * z[i+1]
	}
	k := (v[0] - link/first*v[n-1]) / (1 + z[0] - link/first*z[n-1])
	for i := range v {
		v[i] -= k * z[i]
	}
	return v
}

// smooth draws the curve by the criterion and fills in the report.
func smooth(out *Fitted, start float64, at, y, w []float64, opt FitOptions) {
	n := float64(len(at))
	if opt.Criterion == Interpolated {
		out.Curve, out.Parameters = newCurve(start, at, y, seconds(at, y)), n
		return
	}
	s := newSpline(at, y, w)
	noise := opt.Noise.Millimetres()
	score := func(k int) float64 {
		r := s.solve(alphaAt(k))
		switch {
		case !r.ok:
			return math.Inf(1)
		case opt.Criterion == KnownNoise:
			return r.rss/(noise*noise) + 2*r.free
		}
		left := n - r.free
		if left < 1e-3*n {
			return math.Inf(1)
		}
		return n * r.rss / (left * left)
	}
	r := s.solve(alphaAt(least(score)))
	for i := range r.v {
		r.v[i] /= s.scale * s.scale
	}
	out.Curve = newCurve(start, at, r.g, r.v)
	out.Parameters = r.free
	out.Rough = units.Millimetres(math.Sqrt(r.rss / n))
	if opt.Criterion == CrossValidated {
		noise = math.Sqrt(r.rss / max(n-r.free, 1))
	}
	out.Noise = units.Millimetres(noise)
	out.Doubt = units.Millimetres(noise * math.Sqrt(r.free/n))
}

// alphaAt is the stiffness number k: sixteen of them for each factor e. Whole numbers
// make the choice, and so the curve, the same on every machine; between two of them the
// curve moves far less than its own doubt.
func alphaAt(k int) float64 { return math.Exp(float64(k) / 16) }

// least finds the stiffness of least score: the best of 16 places from 6e-6 to 1e11,
// then by steps halved until neighbours are worse. There may be other valleys.
func least(score func(k int) float64) int {
	const low, high, step = -192, 408, 40
	best, at := math.Inf(1), low
	for k := low; k <= high; k += step {
		if v := score(k); v < best {
			best, at = v, k
		}
	}
	for h := step / 2; h > 0; h /= 2 {
		for _, k := range [...]int{at - h, at + h} {
			if v := score(k); v < best {
				best, at = v, k
			}
		}
	}
	return at
}
