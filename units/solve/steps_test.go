package solve_test

import (
	"math"
	"math/big"
	"testing"

	"pgregory.net/rapid"

	"example.com/benchbook/units/solve"
)

// A procedure follows a search by the rules of Brent's procedure zero (Algorithms for
// Minimization without Derivatives, 1973, section 4.6) in exact arithmetic, and by
// another road: the interpolated argument comes from the polynomial in y through the
// points, written after Lagrange, and is judged by where it lies.
type procedure struct {
	best, other, last point    // the book's b, c and a
	step, before      *big.Rat // d and e
	tol               *big.Rat
	rounds            int
}

type point struct{ x, y *big.Rat }

func at(x, y float64) point { return point{rat(x), rat(y)} }

func rat(x float64) *big.Rat               { return new(big.Rat).SetFloat64(x) }
func sub(a, b *big.Rat) *big.Rat           { return new(big.Rat).Sub(a, b) }
func add(a, b *big.Rat) *big.Rat           { return new(big.Rat).Add(a, b) }
func times(a *big.Rat, k float64) *big.Rat { return new(big.Rat).Mul(a, rat(k)) }
func size(a *big.Rat) *big.Rat             { return new(big.Rat).Abs(a) }
func between(x, a, b *big.Rat) bool        { return sub(x, a).Sign()*sub(b, x).Sign() >= 0 }
func number(a *big.Rat) float64            { x, _ := a.Float64(); return x }
func isFloat(a *big.Rat) bool              { _, exact := a.Float64(); return exact }

// apart reports whether roundings on the way to a and b cannot change their order.
func apart(a, b *big.Rat) bool { return number(size(sub(a, b))) > 1e-4*number(size(b)) }

func newProcedure(a, b point, tol float64) *procedure {
	p := &procedure{best: b, last: a, tol: rat(tol)}
	p.restart()
	return p
}

// restart takes the last argument for the other end of the bracket.
func (p *procedure) restart() {
	p.other = p.last
	p.step = sub(p.best.x, p.last.x)
	p.before = p.step
}

// next returns the argument to ask next, or done. clear says that no rounding could
// have decided otherwise.
func (p *procedure) next() (x *big.Rat, done, clear bool) {
	clear = true
	less := func(a, b *big.Rat) bool {
		clear = clear && (apart(a, b) || a.Cmp(b) == 0 && isFloat(a))
		return a.Cmp(b) < 0
	}
	if less(size(p.other.y), size(p.best.y)) {
		p.last, p.best, p.other = p.best, p.other, p.best
	}
	near := add(times(size(p.best.x), 2*0x1p-52), times(p.tol, 0.5))
	half := times(sub(p.other.x, p.best.x), 0.5)
	if p.best.y.Sign() == 0 || !less(near, size(half)) {
		return p.best.x, true, clear
	}
	p.rounds++
	bisect := true
	if p.rounds <= 100 && !less(size(p.before), near) && less(size(p.best.y), size(p.last.y)) {
		x, sound := p.interpolated()
		clear = clear && sound
		if x != nil {
			// no nearer the other end than a quarter of the bracket, with half the tolerance
			// of a step to spare, and less than half the step before the last
			step := sub(x, p.best.x)
			reach := sub(times(size(half), 1.5), times(near, 0.5))
			limit := add(p.best.x, times(half, number(new(big.Rat).Quo(reach, size(half)))))
			if between(x, p.best.x, limit) && less(size(step), reach) && less(size(step), times(size(p.before), 0.5)) {
				p.before, p.step, bisect = p.step, step, false
			}
		}
	}
	if bisect {
		p.step, p.before = half, half
	}
	step := p.step
	if less(size(step), near) {
		if step = near; half.Sign() < 0 {
			step = new(big.Rat).Neg(near)
		}
	}
	return add(p.best.x, step), false, clear
}

// answer tells the procedure what the function is there.
func (p *procedure) answer(x, y float64) {
	p.last, p.best = p.best, at(x, y)
	if y > 0 == (p.other.y.Sign() > 0) {
		p.restart()
	}
}

// interpolated returns the value at y = 0 of the polynomial x(y) through the points,
// or nil if two of them have the same y. It is not sound to compare if two are nearly
// the same, where roundings grow.
func (p *procedure) interpolated() (x *big.Rat, sound bool) {
	points := []point{p.best, p.last}
	if p.other.x.Cmp(p.last.x) != 0 {
		points = append(points, p.other)
	}
	sum, sound := new(big.Rat), true
	for i, a := range points {
		term := new(big.Rat).Set(a.x)
		for j, b := range points {
			if i == j {
				continue
			}
			if a.y.Cmp(b.y) == 0 {
				return nil, true
			}
			sound = sound && apart(a.y, b.y)
			term.Mul(term, new(big.Rat).Quo(b.y, sub(b.y, a.y)))
		}
		sum.Add(sum, term)
	}
	return sum, sound
}

// follow solves f and holds every argument asked, and the root, to the procedure. It
// stops where rounding may decide; then it returns how many rounds it held.
func follow(t interface{ Fatalf(string, ...any) }, f func(float64) float64, a, b, tol float64) int {
	var xs, ys []float64
	x, err := solve.Root(func(x float64) float64 {
		xs, ys = append(xs, x), append(ys, f(x))
		return ys[len(ys)-1]
	}, a, b, tol)
	if err != nil || xs[0] != a || xs[1] != b {
		t.Fatalf("%v, %v", xs, err)
	}
	if ys[0] == 0 || ys[1] == 0 {
		return 0
	}
	p := newProcedure(at(a, ys[0]), at(b, ys[1]), tol)
	for k := 2; ; k++ {
		want, done, clear := p.next()
		if !clear {
			return k - 2
		}
		if done != (k == len(xs)) || done && x != number(want) {
			t.Fatalf("root %v after asking %v; want %v in round %d", x, xs, want.FloatString(17), k-2)
		}
		if done {
			return k - 2
		}
		// Some ten roundings of 1e-16, which the three differences of values no nearer than
		// apart may make 1e4 times as much each; a step is seldom that ill.
		if off := number(size(sub(want, rat(xs[k])))); off > 1e-15*math.Abs(xs[k])+1e-9*math.Abs(number(p.step)) {
			t.Fatalf("round %d of %v asks %v; want %v", k-2, xs, xs[k], want.FloatString(17))
		}
		p.answer(xs[k], ys[k])
	}
}

// scripted returns a function that is as large as the values say, in the order it is
// asked and the last of them ever after, and changes its sign at the root.
func scripted(root float64, values ...float64) func(float64) float64 {
	n := -1
	return func(x float64) float64 {
		n = min(n+1, len(values)-1)
		return math.Copysign(values[n], x-root)
	}
}

// TestSteps holds each step of searches on smooth, flat and kinked functions.
func TestSteps(t *testing.T) {
	for _, c := range []struct {
		name string
		f    func(float64) float64
		a, b float64
		tol  float64
		held int // rounds, at least
	}{
		{"cos x = x", func(x float64) float64 { return math.Cos(x) - x }, 0, 1, 1e-12, 5},
		{"exp", func(x float64) float64 { return math.Exp(x) - 2 }, -5, 5, 1e-9, 6},
		{"x³", func(x float64) float64 { return x*x*x - 2 }, 4, -1, 1e-9, 6},
		{"x^9", func(x float64) float64 { return math.Pow(x, 9) }, -1, 4, 1e-9, 40},
		{"step", func(x float64) float64 { return math.Copysign(1, x-0.3) }, 0, 1, 1e-6, 19},
		{"kink", func(x float64) float64 { return math.Max(-1, 100*(x-7)) }, 0, 8, 1e-6, 5},
		{"more rounds than interpolate", func(x float64) float64 { return x * x * x }, -1, 4, 0, 110},
		{"a bracket as wide as the tolerance", scripted(0.5, 1, 7, 1, 2), 0, 16, 1, 2},
		{"a step too near the other end by half a tolerance", scripted(2.5, 3, 1, 1, 6, 2), 0, 16, 1, 5},
		{"wide tolerance", func(x float64) float64 { return math.Expm1(x - 1) }, -3, 8, 0.5, 2},
	} {
		t.Run(c.name, func(t *testing.T) {
			if held := follow(t, c.f, c.a, c.b, c.tol); held < c.held {
				t.Errorf("only %d rounds were beyond doubt", held)
			}
		})
	}
}

// TestStepsOfCubics does so for cubics, with tolerances from none to wide.
func TestStepsOfCubics(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		root := rapid.Float64Range(-10, 10).Draw(t, "root")
		cube := rapid.Float64Range(0, 10).Draw(t, "cubic")
		line := rapid.Float64Range(0.01, 10).Draw(t, "linear")
		tol := rapid.SampledFrom([]float64{0, 1e-9, 1e-3, 0.1, 1}).Draw(t, "tol")
		lo := root - rapid.Float64Range(0.01, 30).Draw(t, "below")
		hi := root + rapid.Float64Range(0.01, 30).Draw(t, "above")
		follow(t, func(x float64) float64 { d := x - root; return (cube*d*d + line) * d }, lo, hi, tol)
	})
}

// TestStepsOnGrids does so where values and arguments are often equal or in round
// proportions, so that the rules meet their limits exactly: a function of few whole
// values that only keeps its sign.
func TestStepsOnGrids(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		values := rapid.SliceOfN(rapid.SampledFrom([]float64{1, 2, 3, 4, 5, 6}), 16, 16).Draw(t, "values")
		root := float64(rapid.IntRange(-7, 7).Draw(t, "root")) + rapid.SampledFrom([]float64{0, 0.5, 0.25}).Draw(t, "part")
		tol := rapid.SampledFrom([]float64{0x1p-6, 0x1p-4, 0.25, 1}).Draw(t, "tol")
		follow(t, scripted(root, values...), -8, 8, tol)
	})
}
