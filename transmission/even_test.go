package transmission

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

func heights(u float64, mm ...float64) Rim {
	var r Rim
	for _, x := range mm {
		r.Heights = append(r.Heights, measure.Of(units.Millimetres(x), units.Millimetres(u)))
	}
	return r
}

// A rim that is warped and does not tilt: of four readings 0.3 up, down, up, down the
// mean is nought, no tilt explains any, and the root mean square is 0.3 mm.
func TestWarpIsNoTilt(t *testing.T) {
	got, err := plate(4).Even(heights(0.01, 1.3, 0.7, 1.3, 0.7))
	if err != nil {
		t.Fatal(err)
	}
	near(t, "warp", got.Warp.Millimetres(), 0.3)
	near(t, "tilt", got.Tilt.Radians(), 0)
	if got.Reason.Code != "even-within-reading" || got.Flats[0] != 0 {
		t.Errorf("%+v", got)
	}
	// tilted as well, by 0.4 mm from first to third: 1.5, 0.7, 1.1, 0.7
	if got, err = plate(4).Even(heights(0.01, 1.5, 0.7, 1.1, 0.7)); err != nil {
		t.Fatal(err)
	}
	near(t, "warp", got.Warp.Millimetres(), 0.3)
	near(t, "tilt", got.Tilt.Radians(), 0.2/70)
	near(t, "run-out", got.RunOut.Value().Millimetres(), 0.4)
	near(t, "lag", got.Lag.Millimetres(), 0.2)
	// the one wave of four readings has a half of sum of squares 2 (1/2)² u² in each part:
	// 2 size is uncertain by 2 u/sqrt 2
	near(t, "uncertainty", got.RunOut.U().Millimetres(), 2*0.01/math.Sqrt2)
	if got.Lowest != 2 {
		t.Errorf("lowest at %d", got.Lowest)
	}
}

// Tilt is left where it is within twice the uncertainty of its half: with 0.2 mm read
// to 0.1 mm each, size 0.1 is within 2 x 0.0707; read to 0.05 it is past 2 x 0.035.
func TestTiltWithinReading(t *testing.T) {
	for u, even := range map[float64]bool{0.1: true, 0.072: true, 0.069: false, 0.05: false} {
		got, err := plate(4).Even(heights(u, 0.1, 0, -0.1, 0))
		if err != nil {
			t.Fatal(err)
		}
		if is := got.Reason.Code == "even-within-reading"; is != even {
			t.Errorf("read to %v mm: even %v", u, is)
		}
		if even {
			near(t, "run-out left", got.After.Millimetres(), 0.2)
		}
	}
}

// The lowest nut and the moves of every tilt: where the one wave, summed out here, is
// least, and each move as many sixths of a turn as told.
func TestLowestNut(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(3, 8).Draw(t, "nuts")
		mm := make([]float64, n)
		for i := range mm {
			mm[i] = rapid.Float64Range(-1, 1).Draw(t, "height")
		}
		got, err := plate(n).Even(heights(0.01, mm...))
		if err != nil {
			t.Fatal(err)
		}
		wave := func(i int) (w float64) {
			for j, h := range mm {
				w += 2 * h / float64(n) * math.Cos(2*math.Pi*float64(i-j)/float64(n))
			}
			return w
		}
		for i := range mm {
			if wave(i) < wave(got.Lowest)-1e-12 {
				t.Fatalf("nut %d is lower than %d", i, got.Lowest)
			}
			near(t, "move", got.Moves[i].Turns(), float64(got.Flats[i])/6)
		}
	})
}

// Rounded to flats that add up to nothing: none is further from its own than a flat and
// a half, the sum of squares is within a little of the best there is.
func TestWholeFlats(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(3, 6).Draw(t, "nuts")
		turns := make([]float64, n)
		mean := 0.0
		for i := range turns {
			turns[i] = rapid.Float64Range(-0.6, 0.6).Draw(t, "turns")
			mean += turns[i] / float64(n)
		}
		for i := range turns {
			turns[i] -= mean
		}
		got := make([]int, n)
		whole(turns, got)
		cost := func(flats []int) (c float64) {
			for i, f := range flats {
				d := float64(f) - turns[i]/flat
				c += d * d
			}
			return c
		}
		try, best := make([]int, n), math.Inf(1)
		var all func(i, sum int)
		all = func(i, sum int) {
			if i == n-1 {
				try[i] = -sum
				best = math.Min(best, cost(try))
				return
			}
			at := int(math.Floor(turns[i] / flat))
			for f := at - 1; f <= at+2; f++ {
				try[i] = f
				all(i+1, sum+f)
			}
		}
		all(0, 0)
		sum := 0
		for _, f := range got {
			sum += f
		}
		// nearest first and one flat at a time is the best of all: the cost is convex in
		// each nut, and the nuts meet only in their sum
		if sum != 0 || cost(got) > best+1e-9 {
			t.Fatalf("%v for %v flats: cost %v, best %v", got, turns, cost(got), best)
		}
	})
}

// Which nuts go which way, in words.
func TestTrimInWords(t *testing.T) {
	for _, c := range []struct {
		flats []int
		want  string
	}{
		{[]int{0, 0, 0}, "leave the nuts"}, {[]int{1, 0, -1}, "nut 1 in by 1 flat, nut 3 out by 1 flat"},
		{[]int{0, -8, 8}, "nut 2 out by 1 turn and 2 flats, nut 3 in by 1 turn and 2 flats"},
	} {
		if got := (&Trim{Flats: c.flats}).words(); got != c.want {
			t.Errorf("%v: %q", c.flats, got)
		}
	}
}

// Balanced, the springs' moments about both diameters are nothing, those that hang
// loose left out, whatever the springs, their order and their nuts.
func TestUnevenIsInBalance(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(3, 9).Draw(t, "springs")
		in := make([]measure.Input, 2*n)
		for i := range n {
			in[i].X = rapid.Float64Range(0.034, 0.046).Draw(t, "free")
			in[n+i].X = rapid.Float64Range(5e3, 3e4).Draw(t, "rate")
		}
		s := newUneven(in, rapid.Float64Range(0.030, 0.043).Draw(t, "seat"), 0.0018, 1.5)
		order, more := rapid.Permutation(seq(n)).Draw(t, "order"), make([]float64, n)
		for i := range more {
			more[i] = rapid.Float64Range(-5e-4, 5e-4).Draw(t, "nut")
		}
		a, b := s.balance(order, more)
		var across, along, push float64
		loose := 0
		for i, j := range order {
			x := s.free[j] - s.seat + s.lift + more[i] + a*s.cos[i] + b*s.sin[i]
			if x <= 0 {
				loose++
				continue
			}
			push += s.rate[j] * x
			across += s.rate[j] * x * s.cos[i]
			along += s.rate[j] * x * s.sin[i]
		}
		if n-loose < 3 { // the plate falls over: it stays as it was
			return
		}
		if m := math.Hypot(across, along); m > 1e-6*push {
			t.Fatalf("moment %v of %v, %d loose", m, push, loose)
		}
	})
}

func seq(n int) []int {
	s := make([]int, n)
	for i := range s {
		s[i] = i
	}
	return s
}

// Two springs only, or all that press on one line, hold no plate.
func TestSpringsOnALine(t *testing.T) {
	// of four studs the first and third press, the others are a millimetre too short
	in := []measure.Input{{X: 0.046}, {X: 0.030}, {X: 0.044}, {X: 0.030}, {X: 2e4}, {X: 2e4}, {X: 2e4}, {X: 2e4}}
	s := newUneven(in, 0.036, 0.0018, 1.5)
	if a, b := s.balance(nil, nil); a != 0 || b != 0 {
		t.Errorf("tilted by %v, %v", a, b)
	}
}

// Eight springs are still tried in every order; nine are left as they are.
func TestOrderOfSprings(t *testing.T) {
	for _, n := range []int{3, 8, 9} {
		in := make([]measure.Input, 2*n)
		for i := range n {
			in[i].X, in[n+i].X = 0.046, 2.5e4
			if i < n/2 {
				in[i].X = 0.045
			}
		}
		s := newUneven(in, 0.036, 0.0018, 1.5)
		best, after := s.order()
		if (best == nil) != (n == 9) {
			t.Errorf("%d springs: order %v", n, best)
		}
		if before := s.runOut(nil, nil); n == 8 && after > 1e-9 || n != 8 && after > before {
			t.Errorf("%d springs: %v before, %v after", n, before, after) // eight alternate evenly
		}
	}
}

// Nothing to try where all are alike: the order stays.
func TestLikeSpringsKeepTheirOrder(t *testing.T) {
	in := []measure.Input{{X: 0.046}, {X: 0.046}, {X: 0.046}, {X: 0.046}, {X: 2e4}, {X: 2e4}, {X: 2e4}, {X: 2e4}}
	s := newUneven(in, 0.036, 0.0018, 1.5)
	if best, after := s.order(); best[0] != 0 || best[1] != 1 || best[2] != 2 || best[3] != 3 || after > 1e-12 {
		t.Errorf("%v, %v", best, after)
	}
}

// A mixed set in words and figures: set, tilt of the plate over the circle, order.
func TestMixedInFigures(t *testing.T) {
	c := plate(4)
	c.Plates.Rim = c.Nuts.Circle // so that run-out is read at the springs themselves
	free, rate := []float64{46, 46, 45, 45}, []float64{25, 25, 25, 25}
	m, err := c.Mixed(fitted(free, rate), units.Turns(8), Condition{Wear: measure.Exact(units.Millimetres(0.4))})
	if err != nil {
		t.Fatal(err)
	}
	// by superposition of one short spring, 4 d/N of run-out each, at a right angle
	near(t, "run-out", m.RunOut.Value().Millimetres(), 4*1.0/4*math.Sqrt2)
	near(t, "tilt", m.Tilt.Radians(), m.RunOut.Value().Ratio(c.Nuts.Circle))
	near(t, "after in order", m.OrderAfter.Millimetres(), 0) // long and short by turns
	// pressed at 8 turns: 46 - (44 + 0.4 - 10.16) = 11.76 and 10.76 mm
	near(t, "load of a long one", m.Loads[0].Newtons(), 25*11.76)
	near(t, "load of a short one", m.Loads[3].Newtons(), 25*10.76)
	if f := fault.Faults(err); len(f) > 0 || m.Lowest != 0 && m.Lowest != 1 {
		t.Errorf("lowest %d", m.Lowest)
	}
}
