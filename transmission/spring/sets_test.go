package spring_test

import (
	"math"
	"testing"

	"example.com/benchbook/transmission/spring"
	"example.com/benchbook/units"
)

// A spring with a gap is felt with the rate it has at its own deflection, and at
// the very point where it is touched.
func TestParallelRateByParts(t *testing.T) {
	disc := snapping(t)
	coil := ok(spring.NewLinear(units.NewtonsPerMillimetre(20), 40*mm, 30*mm))(t)
	p := ok(spring.NewParallel(spring.Part{Spring: coil}, spring.Part{Spring: disc, Count: 3, Gap: 1 * mm}))(t)
	for _, s := range []float64{0, 0.5, 1, 1.5, 3, 4} {
		want := 20.0
		if s >= 1 {
			r, _ := disc.RateAt(units.Millimetres(s - 1))
			want += 3 * r.NewtonsPerMillimetre()
		}
		got, in := p.RateAt(units.Millimetres(s))
		if !in {
			t.Fatalf("no rate at %g mm", s)
		}
		near(t, "rate", got.NewtonsPerMillimetre(), want, 1e-13)
	}
	// the disc is flat at 1 + 3 mm, past its hump; the coil is free to go on to 10 mm
	near(t, "travel", p.Travel().Millimetres(), 4, 1e-15)
	near(t, "limit", p.Limit().Millimetres(), 1+disc.Limit().Millimetres(), 1e-15)
	turned := ok(spring.NewParallel(spring.Part{Spring: disc, Count: 3, Gap: 1 * mm}, spring.Part{Spring: coil}))(t)
	if turned.Travel() != p.Travel() || turned.Limit() != p.Limit() {
		t.Errorf("the order of the parts counts: %v and %v", turned.Travel(), p.Travel())
	}
}

// Of two discs that snap, a column goes as far as the hump of the weaker, whichever
// stands first; of two coils, until the stiffer too is solid.
func TestSeriesEndsAtTheFirstHump(t *testing.T) {
	weak, strong := snapping(t), ok(spring.NewStack(snapping(t), 2, 1))(t)
	hump, _ := weak.Load(weak.Limit())
	for _, parts := range [][]spring.Element{{weak, strong}, {strong, weak}} {
		s := ok(spring.NewSeries(parts...))(t)
		top, in := s.Load(s.Limit())
		if !in || top != hump {
			t.Errorf("top %v, the weaker snaps at %v", top, hump)
		}
	}
	soft := ok(spring.NewLinear(units.NewtonsPerMillimetre(10), 40*mm, 35*mm))(t)
	hard := ok(spring.NewLinear(units.NewtonsPerMillimetre(30), 40*mm, 35*mm))(t)
	s := ok(spring.NewSeries(soft, hard))(t)
	near(t, "travel", s.Travel().Millimetres(), 10, 1e-14)
	top, _ := s.Load(s.Travel())
	near(t, "top", top.Newtons(), 150, 1e-14)
}

// A trace goes from free to the end of the travel in even steps, and has nothing
// beyond its ends.
func TestTraceEnds(t *testing.T) {
	coil := ok(spring.NewLinear(units.NewtonsPerMillimetre(20), 40*mm, 30*mm))(t)
	tr := ok(spring.TraceOf(coil, 5))(t)
	for i, want := range []float64{0, 2.5, 5, 7.5, 10} {
		if x, y := tr.XY(i); x != want || math.Abs(y-20*want) > 1e-12 {
			t.Errorf("point %d: %g, %g", i, x, y)
		}
	}
	for _, i := range []int{-1, 5, math.MaxInt, math.MinInt} {
		if x, y := tr.XY(i); x != 0 || y != 0 {
			t.Errorf("point %d: %g, %g", i, x, y)
		}
	}
}
