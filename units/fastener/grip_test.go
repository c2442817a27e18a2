package fastener

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// fit is how one opening sits on flats, both in millimetres: the marked width stands a
// micrometre below the opening.
func fit(t interface{ Fatal(...any) }, open, flats, u float64) SpannerFit {
	f, err := SpannersFor(measure.Of(units.Millimetres(flats), units.Millimetres(u)), []Spanner{{"x", units.Millimetres(open - 1e-3)}}, FitOptions{units.Micrometre})
	if err != nil {
		t.Fatal(err)
	}
	return f.Fits[0]
}

// TestTurnAndArmByPythagoras: a corner stands flats/sqrt 3 from the middle; turned
// until it meets the jaw half an opening out, it lies
// sqrt(flats²/3 - opening²/4) along it, against flats/(2 sqrt 3) without play.
func TestTurnAndArmByPythagoras(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		s := rapid.Float64Range(5, 60).Draw(r, "flats")
		open := s * rapid.Float64Range(1.0001, 1.1299).Draw(r, "play")
		f := fit(r, open, s, 0.01)
		along := math.Sqrt(s*s/3 - open*open/4)
		if got, want := f.Arm.SI(), along/(s/(2*math.Sqrt(3))); math.Abs(got-want) > 1e-9 {
			r.Fatalf("%v on %v: arm %v, want %v", open, s, got, want)
		}
		// the corner stood 30° off the line across the flats and has come to atan(along/half opening)
		if got, want := f.FreeTurn.Degrees(), 30-math.Atan2(along, open/2)*180/math.Pi; math.Abs(got-want) > 1e-6 || got < 0 || got > 30 {
			r.Fatalf("%v on %v: turns %v°, want %v", open, s, got, want)
		}
		if math.Abs(f.Opening.Millimetres()-open) > 1e-9 || math.Abs(f.Play.Millimetres()-(open-s)) > 1e-9 {
			r.Fatalf("%v on %v: opening %v, play %v", open, s, f.Opening, f.Play)
		}
	})
}

// TestChanceOfGoingOn: a reading with the spread u (and 0.001 mm of its own) is below
// the opening with the chance of the normal law: a half at the opening itself, 84.13 %
// and 97.72 % one and two spreads inside (any table of it).
func TestChanceOfGoingOn(t *testing.T) {
	u := math.Hypot(0.05, 0.001)
	for k, want := range map[float64]float64{-2: 0.0228, -1: 0.1587, 0: 0.5, 1: 0.8413, 2: 0.9772} {
		if got := fit(t, 13+k*u, 13, 0.05).GoesOn.SI(); math.Abs(got-want) > 5e-5 { // four decimals
			t.Errorf("%v spreads: %v, want %v", k, got, want)
		}
	}
}

// TestDefaultOpening: 0.025 mm and 0.75 % over the marked width; 13 mm gives 13.1225.
func TestDefaultOpening(t *testing.T) {
	f, err := SpannersFor(measure.MustRead("13 mm", measure.Caliper()), []Spanner{{"13 mm", 13 * units.Millimetre}}, FitOptions{})
	if err != nil || math.Abs(f.Fits[0].Opening.Millimetres()-13.1225) > 1e-9 {
		t.Errorf("%v, %v", f.Fits, err)
	}
}

// TestGripsByPlay: 2.5 % is snug, 4 % slack, at 13 % the corners pass.
func TestGripsByPlay(t *testing.T) {
	for _, c := range []struct {
		play float64
		grip Grip
	}{{0.001, Snug}, {0.0249, Snug}, {0.0251, Slack}, {0.0399, Slack}, {0.0401, WillRound}, {0.1299, WillRound}, {0.1301, SlipsRound}, {0.5, SlipsRound}, {-0.02, TooSmall}} {
		f := fit(t, 20*(1+c.play), 20, 0.01)
		if f.Grip != c.grip {
			t.Errorf("play %v: %v, want %v", c.play, f.Grip, c.grip)
		}
		switch f.Grip {
		case SlipsRound:
			if f.Arm != 0 || f.FreeTurn != 30*units.Degree {
				t.Errorf("slips with arm %v after %v", f.Arm, f.FreeTurn)
			}
		case TooSmall:
			if f.Arm != 1 || f.FreeTurn != 0 {
				t.Errorf("does not go on with arm %v after %v", f.Arm, f.FreeTurn)
			}
		}
	}
	// an opening of exactly the width across worn corners passes them
	flats := 20.0
	passes := math.Nextafter(flats*cornerWidth, 0)
	for _, grip := range []Grip{WillRound, SlipsRound} {
		// the opening is the width and the allowance together: take the allowance for all of it
		width := passes - 2
		f, err := SpannersFor(measure.Of(units.Millimetres(flats), units.Micrometre), []Spanner{{"x", units.Millimetres(width)}}, FitOptions{2 * units.Millimetre})
		if err != nil || f.Fits[0].Opening.Millimetres() != passes || f.Fits[0].Grip != grip {
			t.Errorf("opening %v of %v: %v, %v", f.Fits[0].Opening.Millimetres(), passes, f.Fits[0].Grip, err)
		}
		passes = flats * cornerWidth
	}
}

// TestSpannersInOrderOfUse: the least play first; one that goes on only if the reading
// is a little large stands after those that surely do, unless they are ten times as
// far off; what does not go on is last.
func TestSpannersInOrderOfUse(t *testing.T) {
	flats := measure.Of(10*units.Millimetre, units.Millimetres(0.05))
	w := func(x float64) units.Length { return units.Millimetres(x - 1e-3) }
	set := []Spanner{
		{"7 under", w(9.3)}, {"slips", w(15)}, {"0.3 over", w(10.3)}, {"0.02 under", w(9.98)}, {"0.1 over", w(10.1)}, {"2 under", w(9.8)}, {"0.25 over", w(10.25)},
	}
	f, err := SpannersFor(flats, set, FitOptions{units.Micrometre})
	if err != nil {
		t.Fatal(err)
	}
	var got []string
	for _, x := range f.Fits {
		got = append(got, x.Spanner.Marking)
	}
	if want := []string{"0.1 over", "0.02 under", "0.25 over", "0.3 over", "slips", "2 under", "7 under"}; !slices.Equal(got, want) {
		t.Errorf("%q, want %q", got, want)
	}
}

// TestSpannersAcrossFlats: widths of BS 1768 in whole sixteenths of an inch, said as a
// workshop does.
func TestSpannersAcrossFlats(t *testing.T) {
	for name, want := range map[string]string{"1/4-28 UNF": "7/16 AF", "7/8-9 UNC": "1 5/16 AF", "3/4-16 UNF": "1 1/8 AF", "1-8 UNC": "1 1/2 AF", "1 1/8-7 UNC": "1 11/16 AF"} {
		h, err := Hexagons(MustParse(name), HexOptions{})
		if err != nil || len(h.Hexagons) == 0 || h.Hexagons[0].Spanner != want {
			t.Errorf("%s: %+v, %v", name, h.Hexagons, err)
		}
	}
	for n := int64(1); n <= 64; n++ {
		if got := sixteenthsMixed(int(n)); got != inSixteenths(n) {
			t.Errorf("%d/16 is %q, want %q", n, got, inSixteenths(n))
		}
	}
}
