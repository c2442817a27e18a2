// Package solve finds where a function of one quantity is zero.
//
//	task                                       use
//	root between two ends of opposite sign     Root
//	argument at which a monotone function
//	reaches a wanted value                     Inverse
//
// The method is Brent's: inverse quadratic interpolation kept inside a
// shrinking bracket (R. P. Brent, Algorithms for Minimization without
// Derivatives, 1973, chapter 4). It needs no derivative and cannot leave the
// bracket.
//
// Not covered: several roots at once, complex roots, minima, systems of
// equations; gonum/optimize serves those.
package solve

import (
	"math"
	"strconv"

	"example.com/benchbook/units/fault"
)

// most is more than enough: bisection alone reaches the last bit of a float64
// from any finite bracket in under 1100 halvings, Brent's method usually in 10.
const most = 1200

// Root returns x between a and b where f is zero, to within tol of x or the
// last bit, whichever is wider. f must have opposite signs at a and b, or be
// zero at one of them; X may be float64 or any quantity. It allocates nothing
// unless it fails. Errors: [fault.Conflict] if the ends do not bracket a root,
// [fault.OutOfRange] if f is not finite on the way, [fault.Missing] for a nil f.
func Root[X ~float64](f func(X) float64, a, b, tol X) (X, error) {
	if f == nil {
		return 0, noFunction()
	}
	x, err := root(func(x float64) float64 { return f(X(x)) }, float64(a), float64(b), math.Abs(float64(tol)))
	return X(x), err
}

// Inverse returns x between a and b where the monotone function f reaches want,
// as [Root] does for f(x) - want.
func Inverse[X ~float64](f func(X) float64, want float64, a, b, tol X) (X, error) {
	if f == nil {
		return 0, noFunction()
	}
	x, err := root(func(x float64) float64 { return f(X(x)) - want }, float64(a), float64(b), math.Abs(float64(tol)))
	return X(x), err
}

func noFunction() error {
	return fault.Fault{Code: fault.Missing, Path: "f", Rule: "give the function"}
}

func root(f func(float64) float64, a, b, tol float64) (float64, error) {
	fa, fb := f(a), f(b)
	if !finite(a) || !finite(b) || !finite(fa) || !finite(fb) {
		return 0, fault.Fault{Code: fault.OutOfRange, Path: "bracket", Value: number(a) + " to " + number(b), Rule: "ends and the function there must be finite"}
	}
	if fa == 0 {
		return a, nil
	}
	if fb == 0 {
		return b, nil
	}
	if (fa > 0) == (fb > 0) {
		return 0, fault.Fault{Code: fault.Conflict, Path: "bracket", Value: number(a) + " to " + number(b), Rule: "the function must change sign between the ends"}
	}
	c, fc := a, fa
	d := b - a
	e := d
	for range most {
		if (fb > 0) == (fc > 0) {
			c, fc = a, fa
			d = b - a
			e = d
		}
		if math.Abs(fc) < math.Abs(fb) {
			a, b, c = b, c, b
			fa, fb, fc = fb, fc, fb
		}
		near := 2*ulp*math.Abs(b) + tol/2
		m := (c - b) / 2
		if math.Abs(m) <= near || fb == 0 {
			return b, nil
		}
		if math.Abs(e) < near || math.Abs(fa) <= math.Abs(fb) {
			d, e = m, m // bisect
		} else {
			s := fb / fa
			var p, q float64
			if a == c {
				p, q = 2*m*s, 1-s // secant
			} else {
				r, t := fb/fc, fa/fc
				p = s * (2*m*t*(t-r) - (b-a)*(r-1))
				q = (t - 1) * (r - 1) * (s - 1)
			}
			if p > 0 {
				q = -q
			} else {
				p = -p
			}
			if 2*p < min(3*m*q-math.Abs(near*q), math.Abs(e*q)) {
				e, d = d, p/q
			} else {
				d, e = m, m
			}
		}
		a, fa = b, fb
		switch {
		case math.Abs(d) > near:
			b += d
		case m > 0:
			b += near
		default:
			b -= near
		}
		if fb = f(b); !finite(fb) {
			return 0, fault.Fault{Code: fault.OutOfRange, Path: "function", Value: "at " + number(b), Rule: "must be finite inside the bracket"}
		}
	}
	return b, nil
}

const ulp = 0x1p-52

func finite(x float64) bool   { return x-x == 0 }
func number(x float64) string { return strconv.FormatFloat(x, 'g', 6, 64) }
