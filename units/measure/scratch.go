package measure

import "math"

// few is the number of readings up to which a Gaussian works on the stack; no
// bench sheet of one trade has more.
const few = 16

// scratch holds one small symmetric system: which readings were taken, the
// lower triangle of a matrix by rows, and two vectors. The arrays are reached
// through methods: slices kept in the struct would force it to the heap.
type scratch struct {
	m     int
	atBuf [few]int
	cBuf  [few * few]float64
	vBuf  [2 * few]float64
	atBig []int     // instead, for more readings than few
	big   []float64 // matrix and vectors in one
}

// take notes which readings were taken and makes room for them.
func (s *scratch) take(d Data) {
	for i, x := range d {
		if !x.Taken {
			continue
		}
		if s.m < few {
			s.atBuf[s.m] = i
		} else {
			if s.m == few {
				s.atBig = append(make([]int, 0, len(d)), s.atBuf[:]...)
			}
			s.atBig = append(s.atBig, i)
		}
		s.m++
	}
	if s.m > few {
		s.big = make([]float64, s.m*s.m+2*s.m)
	}
}

func (s *scratch) at() []int {
	if s.atBig != nil {
		return s.atBig
	}
	return s.atBuf[:s.m]
}

func (s *scratch) c() []float64 {
	if s.big != nil {
		return s.big[:s.m*s.m]
	}
	return s.cBuf[:s.m*s.m]
}

func (s *scratch) q() []float64 {
	if s.big != nil {
		return s.big[s.m*s.m : s.m*s.m+s.m]
	}
	return s.vBuf[:s.m]
}

func (s *scratch) x() []float64 {
	if s.big != nil {
		return s.big[s.m*s.m+s.m:]
	}
	return s.vBuf[few : few+s.m]
}

// cholesky replaces the lower triangle of c by its factor, and reports whether
// c was positive definite.
func (s *scratch) cholesky() bool {
	c := s.c()
	for i := range s.m {
		row := c[i*s.m : i*s.m+i+1]
		for j := range row {
			other := c[j*s.m : j*s.m+j+1]
			v := row[j]
			for k := range j {
				v -= row[k] * other[k]
			}
			if i > j {
				row[j] = v / other[j]
				continue
			}
			if !(v > 0) || math.IsInf(v, 1) {
				return false
			}
			row[j] = math.Sqrt(v)
		}
	}
	return true
}

// lower replaces b by the solution of L y = b.
func (s *scratch) lower(b []float64) {
	c := s.c()
	for i := range b {
		row := c[i*s.m:]
		v := b[i]
		for k := range i {
			v -= row[k] * b[k]
		}
		b[i] = v / row[i]
	}
}

// upper replaces b by the solution of L' y = b.
func (s *scratch) upper(b []float64) {
	c := s.c()
	for i := len(b) - 1; i >= 0; i-- {
		v := b[i]
		for k := i + 1; k < len(b); k++ {
			v -= c[k*s.m+i] * b[k]
		}
		b[i] = v / c[i*s.m+i]
	}
}

// logDet returns the logarithm of the determinant of the matrix factored.
func (s *scratch) logDet() float64 {
	c, sum := s.c(), 0.0
	for i := range s.m {
		sum += math.Log(c[i*s.m+i])
	}
	return 2 * sum
}

func dot(a, b []float64) float64 {
	sum := 0.0
	for i, x := range a {
		sum += x * b[i]
	}
	return sum
}
