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

// patience is how many rounds may interpolate. Brent's method usually takes 10 in
// all; from here on every round halves, and the widest bracket comes down to the last
// bit in 2100.
const patience = 100

// Root returns x between a and b where f is zero or changes its sign, to within tol
// and the last three bits of x. f must have opposite signs at a and b, or be
// zero at one of them; X may be float64 or any quantity. It asks f at most 2200
// times, usually 10, and allocates nothing unless it fails. Errors:
// [fault.Conflict] if the ends do not bracket a root, [fault.OutOfRange] if f is
// not finite on the way, the ends are not a finite distance apart or tol is not a
// number, [fault.Missing] for a nil f.
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

// root asks f at both ends and then at one argument a round. Through it b is the best
// argument so far, c the end on the other side of the root, a the best before b; d is
// the step to take and e the one before it.
func root(f func(float64) float64, a, b, tol float64) (float64, error) {
	fa, fb := f(a), f(b)
	if !finite(b-a) || !finite(fa) || !finite(fb) {
		return 0, fault.Fault{Code: fault.OutOfRange, Path: "bracket", Value: number(a) + " to " + number(b), Rule: "ends, the distance between them and the function there must be finite"}
	}
	if tol != tol {
		return 0, fault.Fault{Code: fault.OutOfRange, Path: "tol", Value: number(tol), Rule: "must be a number"}
	}
	if fa == 0 {
		return a, nil
	}
	if fb == 0 {
		return b, nil
	}
	if sameSide(fa, fb) {
		return 0, fault.Fault{Code: fault.Conflict, Path: "bracket", Value: number(a) + " to " + number(b), Rule: "the function must change sign between the ends"}
	}
	c, fc := b, fb // the first round takes a instead
	var d, e float64
	for round := 0; ; round++ {
		if sameSide(fb, fc) {
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
		step := interpolate(a, b, c, fa, fb, fc)
		worth := round < patience && math.Abs(e) >= near && math.Abs(fa) > math.Abs(fb)
		inside := sameSide(step, m) && math.Abs(step) < 1.5*math.Abs(m)-near/2
		if worth && inside && math.Abs(step) < math.Abs(e)/2 {
			e, d = d, step
		} else {
			d, e = m, m // bisect
		}
		a, fa = b, fb
		move := d
		if math.Abs(d) < near {
			move = math.Copysign(near, m)
		}
		b += move
		if fb = f(b); !finite(fb) {
			return 0, fault.Fault{Code: fault.OutOfRange, Path: "function", Value: "at " + number(b), Rule: "must be finite inside the bracket"}
		}
	}
}

// interpolate returns the step from b to where the secant, or with three arguments
// the inverse parabola, is zero. It is not finite where there is none.
func interpolate(a, b, c, fa, fb, fc float64) float64 {
	s := fb / fa
	if a == c {
		return (c - b) * s / (s - 1)
	}
	r, t := fb/fc, fa/fc
	return s * ((c-b)*t*(r-t) + (b-a)*(r-1)) / ((t - 1) * (r - 1) * (s - 1))
}

// sameSide reports whether x and y, neither of them zero, have the same sign.
func sameSide(x, y float64) bool { return math.Signbit(x) == math.Signbit(y) }

const ulp = 0x1p-52

func finite(x float64) bool   { return x-x == 0 }
func number(x float64) string { return strconv.FormatFloat(x, 'g', 6, 64) }
