package solve_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/solve"
)

// TestCosine solves cos x = x against the Dottie number, 0.739085133215160642
// (OEIS A003957).
func TestCosine(t *testing.T) {
	x, err := solve.Root(func(x float64) float64 { return math.Cos(x) - x }, 0, 1, 0)
	// two last bits: the function itself is only known to one of them near its zero
	if want := 0.739085133215160642; err != nil || math.Abs(x-want) > 2*0x1p-53 {
		t.Errorf("%.17g, %v; want %.17g", x, err, want)
	}
}

// TestHardRoots solves functions that mislead a secant: Wilkinson's flat ones,
// a step, a pole-like wall.
func TestHardRoots(t *testing.T) {
	for _, c := range []struct {
		name string
		f    func(float64) float64
		a, b float64
		root float64
	}{
		{"x^9", func(x float64) float64 { return math.Pow(x, 9) }, -1, 4, 0},
		{"x^19", func(x float64) float64 { return math.Pow(x, 19) }, -1, 4, 0},
		{"x exp(-1/x²)", func(x float64) float64 {
			if x == 0 {
				return 0
			}
			return x * math.Exp(-1/(x*x))
		}, -1, 4, 0},
		{"step", func(x float64) float64 { return math.Copysign(1, x-0.3) }, 0, 1, 0.3},
		{"atan", func(x float64) float64 { return math.Atan(1e6 * (x - 0.25)) }, -1e3, 1e3, 0.25},
		{"log", func(x float64) float64 { return math.Log(x) }, 1e-300, 1e300, 1},
		{"denormal", func(x float64) float64 { return x - 5e-324 }, -1, 1, 5e-324},
	} {
		calls := 0
		x, err := solve.Root(func(x float64) float64 { calls++; return c.f(x) }, c.a, c.b, 1e-9)
		// Flat functions are zero to the last bit over a whole range about the
		// root, so what is asked is a small value rather than a near argument.
		if err != nil || math.Abs(c.f(x)) > 1e-9 && math.Abs(x-c.root) > 1e-9 {
			t.Errorf("%s: %v, f %v, %v", c.name, x, c.f(x), err)
		}
		if calls > 1100 {
			t.Errorf("%s took %d calls", c.name, calls)
		}
	}
}

// TestRootOfCubics holds the root of any rising cubic to its tolerance, and to
// lie between the ends.
func TestRootOfCubics(t *testing.T) { rapid.Check(t, checkRootOfCubics) }

func FuzzRootOfCubics(f *testing.F) {
	fuzzBytes(f)
	f.Fuzz(rapid.MakeFuzz(checkRootOfCubics))
}

func checkRootOfCubics(t *rapid.T) {
	root := rapid.Float64Range(-100, 100).Draw(t, "root")
	a := rapid.Float64Range(0.001, 10).Draw(t, "cubic")
	b := rapid.Float64Range(0.001, 10).Draw(t, "linear")
	tol := rapid.SampledFrom([]float64{0, 1e-12, 1e-6, 0.1}).Draw(t, "tol")
	lo := root - rapid.Float64Range(0, 1000).Draw(t, "below")
	hi := root + rapid.Float64Range(0, 1000).Draw(t, "above")
	x, err := solve.Root(func(x float64) float64 { d := x - root; return a*d*d*d + b*d }, lo, hi, tol)
	// nearer than 1e-320 the line of slope 0.001 itself underflows to nothing
	if err != nil || math.Abs(x-root) > tol+4*0x1p-52*math.Abs(root)+1e-320 || x < lo || x > hi {
		t.Fatalf("%v, %v; want %v ± %v", x, err, root, tol)
	}
}

// TestInverse holds f(Inverse(f, y)) to y, with a quantity for the argument.
func TestInverse(t *testing.T) { rapid.Check(t, checkInverse()) }

func FuzzInverse(f *testing.F) {
	fuzzBytes(f)
	f.Fuzz(rapid.MakeFuzz(checkInverse()))
}

func checkInverse() func(*rapid.T) {
	area := func(d units.Length) float64 { return math.Pi / 4 * d.Millimetres() * d.Millimetres() }
	return func(t *rapid.T) {
		want := rapid.Float64Range(1e-3, 7000).Draw(t, "mm²")
		d, err := solve.Inverse(area, want, 0, 100*units.Millimetre, units.Micrometres(1e-6))
		if err != nil || math.Abs(area(d)/want-1) > 1e-7 {
			t.Fatalf("%v gives %v, not %v; %v", d, area(d), want, err)
		}
	}
}

func TestFaults(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	line := func(x float64) float64 { return x }
	for _, c := range []struct {
		name string
		f    func(float64) float64
		a, b float64
		code fault.Code
	}{
		{"no function", nil, -1, 1, fault.Missing},
		{"no change of sign", line, 1, 2, fault.Conflict},
		{"end not finite", line, -1, inf, fault.OutOfRange},
		{"end not a number", line, nan, 1, fault.OutOfRange},
		{"function not finite at an end", func(x float64) float64 { return 1 / x }, 0, 1, fault.OutOfRange},
		{"function not finite inside", func(x float64) float64 {
			if x > -0.5 && x < 0.9 {
				return nan
			}
			return x
		}, -1, 1, fault.OutOfRange},
	} {
		x, err := solve.Root(c.f, c.a, c.b, 1e-9)
		f := fault.Faults(err)
		if len(f) != 1 || f[0].Code != c.code || x != 0 {
			t.Errorf("%s: %v, %v", c.name, x, err)
		}
	}
	if x, err := solve.Root(line, 0, 1, 0); x != 0 || err != nil {
		t.Errorf("a root at an end: %v, %v", x, err)
	}
	if x, err := solve.Root(line, -1, 0, 0); x != 0 || err != nil {
		t.Errorf("a root at the other end: %v, %v", x, err)
	}
}

// TestSumTooLarge solves between ends of which only the sum is too large for a float64.
func TestSumTooLarge(t *testing.T) {
	x, err := solve.Root(func(x float64) float64 { return x/1e308 - 1.5 }, 1e308, 1.7e308, 0)
	if err != nil || math.Abs(x/1.5e308-1) > 8*0x1p-52 { // the root's last three bits, and the function's
		t.Errorf("%g, %v", x, err)
	}
}
