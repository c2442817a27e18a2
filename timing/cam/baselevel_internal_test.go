package cam

import (
	"math"
	"slices"
	"testing"

	"example.com/benchbook/units"
)

// The base circle is found among what is not: a dwell on the nose that was read more
// evenly than it, readings of a gauge that was knocked below it, a ledge as even as
// itself above it.
func TestBaseAmongOthers(t *testing.T) {
	repeat := func(n int, y func(i int) float64) (all []float64) {
		for i := range n {
			all = append(all, y(i))
		}
		return all
	}
	flat := func(y float64) func(int) float64 { return func(int) float64 { return y } }
	ramp := func(from, by float64) func(int) float64 {
		return func(i int) float64 { return from + by*float64(i) }
	}
	join := func(parts ...[]float64) (all []float64) {
		for _, p := range parts {
			all = append(all, p...)
		}
		return all
	}
	ripple := func(i int) float64 { return 0.3 + 0.02*math.Sin(2.4*float64(i)) }
	for _, c := range []struct {
		name          string
		y             []float64
		level, runOut float64
		tol           float64
	}{
		{"a dwell on the nose", join(repeat(50, ripple), repeat(4, ramp(2, 1.5)), repeat(42, flat(8)), repeat(4, ramp(6.5, -1.5))), 0.3, 0.04, 0.002},
		{"a knocked gauge", join(repeat(50, flat(0.1)), repeat(10, ramp(-1, 0.05)), repeat(40, ramp(1, 0.2))), 0.1, 0, 1e-9},
		{"evenest at the end of the lower half", join(repeat(40, ramp(-4, 0.1)), repeat(10, flat(0)), repeat(50, ramp(1, 0.2))), 0, 0, 1e-9},
		// A slope is no noise: the closest three of 36 span 2/64, so the reading 2/64 from
		// their middle counts as well, and from the middle of the four no other.
		{"a base circle that climbs", join(repeat(18, ramp(0, 1.0/64)), repeat(18, ramp(1, 1))), 1.5 / 64, 3.0 / 64, 1e-12},
		{"a ledge", join(repeat(25, flat(0)), repeat(5, ramp(0.1, 0.15)), repeat(20, flat(1)), repeat(50, ramp(1.5, 0.1))), 0, 0, 1e-9},
	} {
		level, runOut := baseLevel(c.y, math.Inf(1))
		if math.Abs(level-c.level) > c.tol || math.Abs(runOut-c.runOut) > c.tol {
			t.Errorf("%s: level %g, run-out %g, put in %g and %g", c.name, level, runOut, c.level, c.runOut)
		}
	}
}

// The zeros of a stretch that was not read divide it evenly, in the order of angle within
// the turn, one that falls on the turn's seam at its beginning. A stretch just as long as
// may stay unread, or may be filled, is.
func TestZerosDivideTheStretch(t *testing.T) {
	opt, err := FitOptions{FillBase: 100}.filled()
	if err != nil {
		t.Fatal(err)
	}
	even := func(from, to, step float64) (all []float64) {
		for x := from; x <= to; x += step {
			all = append(all, x)
		}
		return all
	}
	for _, c := range []struct {
		name   string
		read   []float64
		high   bool // the readings show lift
		at     []float64
		filled float64
	}{
		{"within the turn", append(even(0, 100, 20), even(200, 340, 20)...), false, append(even(0, 100, 20), append(even(105, 195, 5), even(200, 340, 20)...)...), 100},
		{"over the seam", even(50, 310, 20), false, append(even(0, 45, 5), append(even(50, 310, 20), even(315, 355, 5)...)...), 100},
		{"just too short to be filled", append([]float64{0, longestGap}, even(40, 340, 20)...), true, append([]float64{0, longestGap}, even(40, 340, 20)...), 0},
	} {
		y, w := make([]float64, len(c.read)), make([]float64, len(c.read))
		for i := range w {
			w[i] = 3
			if c.high {
				y[i] = 2
			}
		}
		at, b, weight, filled, err := fillBase(c.read, y, w, opt)
		if err != nil || filled != c.filled || !slices.EqualFunc(at, c.at, func(a, b float64) bool { return math.Abs(a-b) < 1e-9 }) {
			t.Errorf("%s: %v, %g° filled, want %v, %g°: %v", c.name, at, filled, c.at, c.filled, err)
			continue
		}
		for i, x := range at {
			was := slices.Contains(c.read, x)
			if want := map[bool]float64{true: 3, false: 1}[was]; weight[i] != want || !was && b[i] != 0 {
				t.Errorf("%s: %g of weight %g at %g°", c.name, b[i], weight[i], x)
			}
		}
	}
	if tooLong(100+sameAngle, opt) || !tooLong((100+sameAngle)*(1+1e-12), opt) {
		t.Error("a stretch as long as may be filled is one to the millionth of a degree")
	}
}

// Readings just 20° apart leave no stretch unread, so that all of an uneven base circle
// counts, however uneven.
func TestBaseOfReadings20Apart(t *testing.T) {
	var s []Sample
	for i := range 18 {
		y := 0.2 * float64(1-i%2*2)
		if i > 12 {
			y = 4
		}
		s = append(s, Sample{At: units.CamDegrees(20 * float64(i)), Lift: units.Millimetres(y)})
	}
	s[1].At = units.CamDegrees(longestGap)
	f, err := Fit(s, FitOptions{Criterion: Interpolated})
	if err != nil || math.Abs(f.RunOut.Millimetres()-0.4) > 1e-12 || math.Abs(f.Zero.Millimetres()-0.2/13) > 1e-12 {
		t.Errorf("run-out %v about %v: %v", f.RunOut, f.Zero, err)
	}
}
