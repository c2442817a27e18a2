package cam

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/mat"
)

// ring is a drawn positive definite matrix with two neighbours on either side, and
// the same written out whole.
func ring(n int, rng *rand.Rand) (cyclic, *mat.SymDense) {
	m := cyclic{make([]float64, n), make([]float64, n), make([]float64, n)}
	for i := range n {
		m.d[i], m.e[i], m.f[i] = 4.1+2*rng.Float64(), 2*rng.Float64()-1, 2*rng.Float64()-1
	}
	return m, whole(m)
}

func whole(m cyclic) *mat.SymDense {
	n := len(m.d)
	w := mat.NewSymDense(n, nil)
	for i := range n {
		w.SetSym(i, i, m.d[i])
		w.SetSym(i, (i+1)%n, m.e[i])
		w.SetSym(i, (i+2)%n, m.f[i])
	}
	return w
}

// A ring's determinant and solution are those gonum's Cholesky finds of the matrix
// written out, also in room that held another ring before. The matrices are
// diagonally dominant, so both are good to some 1e-14.
func TestRingAgainstTheWholeMatrix(t *testing.T) {
	rng := rand.New(rand.NewPCG(4, 4))
	var f factored
	for _, n := range []int{6, 7, 8, 8, 9, 20, 400, 8} {
		m, w := ring(n, rng)
		if !f.from(m) {
			t.Fatal(n, "is not positive definite")
		}
		var chol mat.Cholesky
		if !chol.Factorize(w) {
			t.Fatal(n)
		}
		if want := chol.LogDet(); math.Abs(f.logDet-want) > 1e-12*math.Abs(want) {
			t.Errorf("%d rows: log of the determinant %.15g, the whole matrix has %.15g", n, f.logDet, want)
		}
		x := make([]float64, n)
		for i := range x {
			x[i] = rng.NormFloat64()
		}
		var want mat.VecDense
		if err := chol.SolveVecTo(&want, mat.NewVecDense(n, append([]float64(nil), x...))); err != nil {
			t.Fatal(err)
		}
		f.solve(x)
		for i := range x {
			if math.Abs(x[i]-want.AtVec(i)) > 1e-12 {
				t.Errorf("%d rows: x%d is %.15g, of the whole matrix %.15g", n, i, x[i], want.AtVec(i))
			}
		}
	}
}

// Matrices that are not positive definite are refused, and so is one that is just
// singular: by a pivot, and by the two rows set apart.
func TestRingThatIsNone(t *testing.T) {
	ones := func() cyclic {
		m := cyclic{make([]float64, 8), make([]float64, 8), make([]float64, 8)}
		for i := range m.d {
			m.d[i] = 1
		}
		return m
	}
	for name, change := range map[string]func(cyclic){
		"a negative pivot":            func(m cyclic) { m.d[3] = -1 },
		"a pivot of nought":           func(m cyclic) { m.d[3] = 0 },
		"the last pivot of nought":    func(m cyclic) { m.d[5] = 0 },
		"no number":                   func(m cyclic) { m.d[2] = math.NaN() },
		"the last two rows one":       func(m cyclic) { m.e[6] = 1 },
		"the last two rows negative":  func(m cyclic) { m.d[6], m.d[7] = -1, -1 },
		"the last two rows too close": func(m cyclic) { m.e[6] = 1.5 },
		"the last row of nought":      func(m cyclic) { m.d[7] = 0 },
	} {
		m := ones()
		change(m)
		if new(factored).from(m) {
			t.Errorf("%s was taken", name)
		}
	}
	if !new(factored).from(ones()) {
		t.Error("the unit matrix was refused")
	}
}
