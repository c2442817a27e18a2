package carburation

import "math"

// square is a matrix over the knobs.
type square [nKnobs][nKnobs]float64

// cholesky returns the lower triangle l with a = l l' of a matrix that is
// positive semi-definite; a row without variance stays zero. It reports false
// if a is not.
func cholesky(a *square) (l square, ok bool) {
	for j := range nKnobs {
		d := a[j][j]
		for k := range j {
			d -= l[j][k] * l[j][k]
		}
		if !(d > 1e-14*a[j][j]) {
			if !(d >= -1e-9*math.Max(a[j][j], 1e-12)) {
				return l, false
			}
			continue // known exactly, or bound to the knobs before it
		}
		l[j][j] = math.Sqrt(d)
		for i := j + 1; i < nKnobs; i++ {
			s := a[i][j]
			for k := range j {
				s -= l[i][k] * l[j][k]
			}
			l[i][j] = s / l[j][j]
		}
	}
	return l, true
}

// inverse returns the inverse of l l', l the triangle of a positive definite
// matrix.
func (l *square) inverse() (inv square) {
	var y square // l^-1
	for j := range nKnobs {
		y[j][j] = 1 / l[j][j]
		for i := j + 1; i < nKnobs; i++ {
			var s float64
			for k := j; k < i; k++ {
				s += l[i][k] * y[k][j]
			}
			y[i][j] = -s / l[i][i]
		}
	}
	for i := range nKnobs {
		for j := range nKnobs {
			var s float64
			for k := max(i, j); k < nKnobs; k++ {
				s += y[k][i] * y[k][j]
			}
			inv[i][j] = s
		}
	}
	return inv
}

// quadratic returns g' a g.
func (a *square) quadratic(g *knobs) float64 {
	var sum float64
	for i := range nKnobs {
		for j := range nKnobs {
			sum += g[i] * a[i][j] * g[j]
		}
	}
	return sum
}

// congruent returns l s l'.
func (l *square) congruent(s *square) (out square) {
	var t square
	for i := range nKnobs {
		for j := range nKnobs {
			for k := range nKnobs {
				t[i][j] += l[i][k] * s[k][j]
			}
		}
	}
	for i := range nKnobs {
		for j := range nKnobs {
			for k := range nKnobs {
				out[i][j] += t[i][k] * l[j][k]
			}
		}
	}
	return out
}
