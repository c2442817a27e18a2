package cam

import "math"

// cyclic is a symmetric matrix whose rows wrap round, with two neighbours on either
// side: d[i] at (i,i), e[i] at (i,i+1), f[i] at (i,i+2), indices modulo n >= 6.
type cyclic struct{ d, e, f []float64 }

// factored is the LDL' factor of the matrix without its last two rows, and what
// those two rows add: a bordered factorisation.
type factored struct {
	n      int
	d      []float64    // of D
	a, b   []float64    // first and second subdiagonal of L
	y      [][2]float64 // L^-1 times the two border columns
	s      [2][2]float64
	logDet float64
}

// from fills f with the factorisation of a positive definite matrix, in the room
// already there; it is false if the matrix is not one.
func (f *factored) from(m cyclic) bool {
	n := len(m.d)
	k := n - 2
	if f.n != n {
		*f = factored{n: n, d: make([]float64, k), a: make([]float64, k), b: make([]float64, k), y: make([][2]float64, k)}
	}
	f.logDet = 0
	product := 1.0 // of pivots not yet in logDet: one logarithm serves many
	for i := range k {
		di := m.d[i]
		ei, fi := 0.0, 0.0
		if i+1 < k {
			ei = m.e[i]
		}
		if i+2 < k {
			fi = m.f[i]
		}
		u := m.border(i)
		if i > 0 {
			p := f.a[i-1] * f.d[i-1]
			di -= f.a[i-1] * p
			ei -= f.b[i-1] * p
			u[0] -= f.a[i-1] * f.y[i-1][0]
			u[1] -= f.a[i-1] * f.y[i-1][1]
		}
		if i > 1 {
			di -= f.b[i-2] * f.b[i-2] * f.d[i-2]
			u[0] -= f.b[i-2] * f.y[i-2][0]
			u[1] -= f.b[i-2] * f.y[i-2][1]
		}
		if !(di > 0) {
			return false
		}
		f.d[i], f.a[i], f.b[i], f.y[i] = di, ei/di, fi/di, u
		if product *= di; product > 1e150 || product < 1e-150 {
			f.logDet += math.Log(product)
			product = 1
		}
	}
	s00, s01, s11 := m.d[n-2], m.e[n-2], m.d[n-1]
	for i := range k {
		s00 -= f.y[i][0] * f.y[i][0] / f.d[i]
		s01 -= f.y[i][0] * f.y[i][1] / f.d[i]
		s11 -= f.y[i][1] * f.y[i][1] / f.d[i]
	}
	det := s00*s11 - s01*s01
	if !(det > 0) || !(s00 > 0) {
		return false
	}
	f.s = [2][2]float64{{s11 / det, -s01 / det}, {-s01 / det, s00 / det}}
	f.logDet += math.Log(det) + math.Log(product)
	return true
}

// border is row i of the two columns set apart.
func (m cyclic) border(i int) (u [2]float64) {
	n := len(m.d)
	switch i {
	case 0:
		u[0], u[1] = m.f[n-2], m.e[n-1]
	case 1:
		u[1] = m.f[n-1]
	}
	switch i {
	case n - 4:
		u[0] += m.f[n-4]
	case n - 3:
		u[0] += m.e[n-3]
		u[1] += m.f[n-3]
	}
	return u
}

// solve overwrites x, the right-hand side, with the solution.
func (f factored) solve(x []float64) {
	k := f.n - 2
	for i := range k { // x = L^-1 x
		if i > 0 {
			x[i] -= f.a[i-1] * x[i-1]
		}
		if i > 1 {
			x[i] -= f.b[i-2] * x[i-2]
		}
	}
	r0, r1 := x[k], x[k+1]
	for i := range k {
		r0 -= f.y[i][0] * x[i] / f.d[i]
		r1 -= f.y[i][1] * x[i] / f.d[i]
	}
	z0 := f.s[0][0]*r0 + f.s[0][1]*r1
	z1 := f.s[1][0]*r0 + f.s[1][1]*r1
	x[k], x[k+1] = z0, z1
	for i := k - 1; i >= 0; i-- {
		// The last of L are zero, so it does no harm that z stands beyond them.
		x[i] = (x[i]-f.y[i][0]*z0-f.y[i][1]*z1)/f.d[i] - f.a[i]*x[i+1] - f.b[i]*x[i+2]
	}
}
