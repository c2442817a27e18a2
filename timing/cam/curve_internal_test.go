package cam

import (
	"math"
	"slices"
	"testing"

	"example.com/benchbook/units"
)

// A table at even steps is looked up by reckoning, not by search; one reading moved
// makes it uneven. The two ways answer the same.
func TestEvenTableIsReckoned(t *testing.T) {
	for _, n := range []int{8, 36, 37, 720} {
		at, y := make([]float64, n), make([]float64, n)
		for i := range n {
			at[i], y[i] = turnDegrees*float64(i)/float64(n), math.Exp(3*math.Sin(turnDegrees*float64(i)/float64(n)*math.Pi/180))
		}
		if c := newCurve(0, at, y, seconds(at, y)); c.knots != nil {
			t.Errorf("%d even readings are searched", n)
		}
		at[3] += 2e-9
		if c := newCurve(0, at, y, seconds(at, y)); c.knots == nil {
			t.Errorf("%d uneven readings are reckoned", n)
		}
	}
}

// Each slot of an uneven curve's guide names the piece that holds the slot's start,
// readings on a start among them, so that a search from there is short.
func TestGuide(t *testing.T) {
	at := []float64{0, 3, 11.25, 45, 45.5, 90, 180, 191.25, 200, 300}
	c := newCurve(0, at, make([]float64, len(at)), make([]float64, len(at)))
	if len(c.guide) != 4*len(at) {
		t.Fatal(len(c.guide))
	}
	for s, got := range c.guide {
		start := turnDegrees * float64(s) / float64(len(c.guide))
		after, _ := slices.BinarySearchFunc(at, start, func(knot, start float64) int {
			if knot <= start {
				return -1
			}
			return 1
		})
		if int(got) != after-1 {
			t.Errorf("slot from %g°: piece %d, it lies in %d", start, got, after-1)
		}
		// The slot is found again from an angle within it.
		if i := int((start + 0.1) * c.slots); i != s {
			t.Errorf("%g° falls in slot %d, not %d", start+0.1, i, s)
		}
	}
}

// The whole turn is its beginning, a reading belongs to the piece that it begins, and
// what rounds up to the whole turn is not past the end: by the jerk, which steps there.
func TestPieceAtItsEnds(t *testing.T) {
	for _, at := range [][]float64{
		{0, 45, 90, 135, 180, 225, 270, 315},
		{0, 30, 90, 135, 180, 225, 270, 315},
		{0, 40, 90, 135, 180, 225, 270, 300, 340},
	} {
		y := make([]float64, len(at))
		for i := range y {
			y[i] = float64(i * i % 7)
		}
		c := newCurve(20, at, y, seconds(at, y))
		jerk := func(x float64) float64 {
			m, err := c.Motion(units.CamDegrees(x))
			if err != nil {
				t.Fatal(err)
			}
			return m.JerkMMPerDegree3
		}
		for i, x := range at {
			if got, want := jerk(20+x), jerk(20+x+1); got != want {
				t.Errorf("at reading %d: jerk %g, just after %g", i, got, want)
			}
			if math.Abs(c.lift(x)-y[i]) > 1e-12 {
				t.Errorf("at reading %d: %g, read %g", i, c.lift(x), y[i])
			}
		}
		for _, x := range []float64{380, 740, -340} {
			if got, want := jerk(x), jerk(20); got != want {
				t.Errorf("%g°: jerk %g, a turn on %g", x, got, want)
			}
		}
		if got, want := c.motion(within(-1e-300))[3], c.motion(0)[3]; got != want {
			t.Errorf("a hair before the turn: jerk %g, at it %g", got, want)
		}
	}
	for x, want := range map[float64]float64{0: 0, 359: 359, 360: 0, -360: 0, 361: 1, -1: 359, 1081: 1, -721: 359, -1e-300: 0, math.Copysign(0, -1): 0, math.Nextafter(360, 0): math.Nextafter(360, 0), 5e-324: 5e-324} {
		if got := within(x); got != want || math.Signbit(got) {
			t.Errorf("%g° is %g° of the turn, found %g", x, want, got)
		}
	}
}

// The last angle before the turn's end is in the last piece, however the pieces are.
func TestLastAngleOfTheTurn(t *testing.T) {
	last := math.Nextafter(turnDegrees, 0)
	for n := 8; n < 400; n++ {
		at, y := make([]float64, n), make([]float64, n)
		for i := range n {
			at[i] = turnDegrees * float64(i) / float64(n)
		}
		y[0] = 1
		for range 2 {
			c := newCurve(0, at, y, seconds(at, y))
			if got := c.lift(last); math.Abs(got-1) > 1e-9 {
				t.Errorf("%d readings: %g at the end, the next turn begins with 1", n, got)
			}
			at[1] += 0.1 // uneven
		}
	}
}

// Roots of quadratics made from their roots; none where the sign does not change.
func TestQuadratic(t *testing.T) {
	for _, c := range []struct {
		a, b, c float64
		want    []float64
	}{
		{1, -5, 6, []float64{2, 3}},
		{-2, 10, -12, []float64{2, 3}},
		{3, 0, -12, []float64{-2, 2}},
		{-0.5, -2.5, 0, []float64{-5, 0}},
		{1, 7, 12, []float64{-4, -3}},
		{1, -1e8, 1, []float64{1e-8, 1e8}}, // without loss of the small one
		{0, 4, -8, []float64{2}},
		{0, 0, 5, nil},
		{1, 0, 4, nil},
		{1, -2, 1, nil}, // touches
		{2, 1, 3, nil},
	} {
		got := quadratic(c.a, c.b, c.c)
		if len(got) != len(c.want) {
			t.Errorf("%g t² + %g t + %g: %v, want %v", c.a, c.b, c.c, got, c.want)
			continue
		}
		for i := range got {
			if math.Abs(got[i]-c.want[i]) > 1e-12*(1+math.Abs(c.want[i])) {
				t.Errorf("%g t² + %g t + %g: %v, want %v", c.a, c.b, c.c, got, c.want)
			}
		}
	}
}

// Half a turn stays itself; all else comes within it either way.
func TestHalf(t *testing.T) {
	for x, want := range map[float64]float64{0: 0, 180: 180, 181: -179, 359: -1, -1: -1, -180: 180, 540: 180, 90: 90} {
		if got := half(x); got != want {
			t.Errorf("%g° is %g°, want %g°", x, got, want)
		}
	}
}
