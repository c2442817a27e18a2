package cam_test

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"example.com/benchbook/timing/cam"
	"example.com/benchbook/units"
	"pgregory.net/rapid"
)

// What a fit says of itself against its curve and readings.
func TestFitReportsItself(t *testing.T) {
	s := lobe{8, 75, 100}.read(2, 0.02, rand.New(rand.NewPCG(3, 3)))
	for _, opt := range []cam.FitOptions{
		{KeepZero: true}, {}, {Criterion: cam.KnownNoise}, {Criterion: cam.KnownNoise, Noise: mm(0.02)}, {Criterion: cam.KnownNoise, Noise: mm(0.1)}, {Criterion: cam.Interpolated},
	} {
		f, err := cam.Fit(s, opt)
		if err != nil {
			t.Fatal(err)
		}
		n, squares := float64(len(s)), 0.0
		for _, p := range s {
			y, _ := f.Lift(p.At)
			squares += sq((p.Lift - f.Zero - y).Millimetres())
		}
		if rough := math.Sqrt(squares / n); math.Abs(f.Rough.Millimetres()-rough) > 1e-9 || f.Readings != len(s) || f.Filled != 0 || f.Criterion != opt.Criterion {
			t.Errorf("%+v: rough %v, the curve is %g mm off its readings", opt, f.Rough, rough)
		}
		noise := f.Noise.Millimetres()
		switch opt.Criterion {
		case cam.CrossValidated: // what is left over what is free
			if want := math.Sqrt(squares / (n - f.Parameters)); math.Abs(noise-want) > 1e-9 || math.Abs(noise-0.02) > 0.005 {
				t.Errorf("noise %g mm, by what is left %g, put in 0.02", noise, want)
			}
		case cam.KnownNoise:
			given := opt.Noise.Millimetres()
			if given == 0 {
				given = 0.01
			}
			if noise != given {
				t.Errorf("noise %g mm, given %g", noise, given)
			}
		default:
			if noise != 0 || f.Doubt != 0 || f.Parameters != n {
				t.Errorf("through every reading: %+v", f)
			}
		}
		if want := noise * math.Sqrt(f.Parameters/n); math.Abs(f.Doubt.Millimetres()-want) > 1e-12 {
			t.Errorf("doubt %v, want %g mm", f.Doubt, want)
		}
		assumed := opt.Criterion == cam.KnownNoise && opt.Noise == 0
		if (len(f.Basis.Assumed) == 1) != assumed || assumed && !strings.Contains(f.Basis.Assumed[0].Value, "0.01 mm") {
			t.Errorf("%+v: assumed %v", opt, f.Basis.Assumed)
		}
	}
}

// The noise given rules how stiff the curve is, where it was asked for and only there.
func TestNoiseGivenStiffens(t *testing.T) {
	s := lobe{8, 75, 100}.read(2, 0.02, rand.New(rand.NewPCG(3, 3)))
	free := func(o cam.FitOptions) float64 {
		f, err := cam.Fit(s, o)
		if err != nil {
			t.Fatal(err)
		}
		return f.Parameters
	}
	stiff, right, loose := free(cam.FitOptions{Criterion: cam.KnownNoise, Noise: mm(0.2)}), free(cam.FitOptions{Criterion: cam.KnownNoise, Noise: mm(0.02)}), free(cam.FitOptions{Criterion: cam.KnownNoise, Noise: mm(0.002)})
	if !(stiff < right && right < loose/2) {
		t.Errorf("free figures %g, %g, %g for ten times, once and a tenth of the noise", stiff, right, loose)
	}
	if a, b := free(cam.FitOptions{}), free(cam.FitOptions{Noise: mm(0.2)}); a != b {
		t.Errorf("cross-validation took a noise: %g and %g", a, b)
	}
	// Cross-validation leaves a thousandth free, or it would compare rounding: exact
	// readings too far apart for their lobe ask for an ever looser curve.
	f, err := cam.Fit(lobe{8, 12, 100}.read(8, 0, fixed()), cam.FitOptions{})
	if err != nil || f.Parameters > 0.999*45 {
		t.Errorf("%g free figures of 45 readings: %v", f.Parameters, err)
	}
}

// The zero of a gauge set wrong comes off, whatever is between nought and a great noise,
// with all that was read of the base circle; run-out is what those readings span.
func TestZeroAndRunOut(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := lobe{8, rapid.SampledFrom([]float64{50, 70}).Draw(t, "half width"), rapid.Float64Range(0, 360).Draw(t, "top")}
		zero := rapid.Float64Range(-2, 2).Draw(t, "zero")
		ripple := rapid.SampledFrom([]float64{0.01, 0.05, 0.2}).Draw(t, "ripple")
		step := rapid.SampledFrom([]float64{2, 5, 20}).Draw(t, "step")
		var s []cam.Sample
		for i := range int(360 / step) {
			x := float64(i) * step
			y := l.lift(x) + zero
			if y == zero { // as much above as below, by turns
				y += ripple * float64(1-i%2*2)
			}
			s = append(s, cam.Sample{At: units.CamDegrees(x), Lift: mm(y)})
		}
		f, err := cam.Fit(s, cam.FitOptions{Criterion: cam.Interpolated})
		if err != nil {
			t.Fatal(err)
		}
		// Readings of the flanks count too where they are within 2.5 of what the noise is
		// judged to be, 4/(0.6745 sqrt(6)) of this ripple: six of it.
		if off := math.Abs(f.Zero.Millimetres() - zero); off > ripple {
			t.Fatalf("zero %v, put in %g with a ripple of %g", f.Zero, zero, ripple)
		}
		if span := f.RunOut.Millimetres(); span < 2*ripple-1e-9 || span > 8*ripple {
			t.Fatalf("run-out %v, put in %g", f.RunOut, 2*ripple)
		}
		kept, err := cam.Fit(s, cam.FitOptions{Criterion: cam.Interpolated, KeepZero: true})
		if err != nil || kept.Zero != 0 || kept.RunOut != 0 {
			t.Fatalf("kept: %v %v %v", kept.Zero, kept.RunOut, err)
		}
	})
}

// Where the readings' turn begins does not matter: zero, run-out, what is filled and the
// curve itself move with them.
func TestFitTurnsWithItsReadings(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := lobe{8, 65, 0}
		rng := rand.New(rand.NewPCG(3, rapid.Uint64().Draw(t, "seed")))
		turn := rapid.Float64Range(0, 360).Draw(t, "turn")
		var a, b []cam.Sample
		over := rapid.SampledFrom([]float64{160, 200, 340}).Draw(t, "read over")
		for x := 100.0; x <= 100+over; x += 4 {
			y := l.lift(x-200) + 0.3 + 0.01*rng.NormFloat64()
			a = append(a, cam.Sample{At: units.CamDegrees(x), Lift: mm(y)})
			b = append(b, cam.Sample{At: units.CamDegrees(x + turn), Lift: mm(y)})
		}
		f, err1 := cam.Fit(a, cam.FitOptions{Criterion: cam.Interpolated})
		g, err2 := cam.Fit(b, cam.FitOptions{Criterion: cam.Interpolated})
		if (err1 == nil) != (err2 == nil) {
			t.Fatal(err1, err2)
		}
		if err1 != nil {
			t.Skip(err1)
		}
		if math.Abs((f.Zero-g.Zero).Millimetres()) > 1e-12 || math.Abs((f.RunOut-g.RunOut).Millimetres()) > 1e-12 || math.Abs((f.Filled-g.Filled).Degrees()) > 1e-9 {
			t.Fatalf("zero %v and %v, run-out %v and %v, filled %v and %v", f.Zero, g.Zero, f.RunOut, g.RunOut, f.Filled, g.Filled)
		}
		for x := units.CamAngle(0); x < 360; x += 7 {
			p, _ := f.Lift(x)
			q, _ := g.Lift(x + units.CamDegrees(turn))
			if math.Abs((p - q).Millimetres()) > 1e-7 {
				t.Fatalf("at %v: %v and %v", x, p, q)
			}
		}
	})
}

// A stretch of base circle that was not read is filled with zeros 5° apart or closer,
// wherever it lies; one of 20° is left as it is.
func TestUnreadStretchIsFilled(t *testing.T) {
	l := lobe{8, 60, 0}
	for _, c := range []struct {
		from, to float64 // read, about the top
		filled   float64
		zeros    int
	}{
		{-85, 85, 190, 37}, // 38 steps of 5°
		{-86, 85, 189, 37}, // 38 steps of a little less
		{-170, 169, 0, 0},  // 21° but for one
		{-170, 170, 0, 0},  // 20°
		{-169, 170, 21, 4}, // 5 steps
		{-168, 170, 22, 4}, // 5 steps
		{-157.5, 177.5, 25, 4},
		{-157, 177.5, 25.5, 5},
	} {
		for top := 0.0; top < 360; top += 22.5 {
			var s []cam.Sample
			for x := c.from; x < c.to-1e-9; x += 1 {
				s = append(s, cam.Sample{At: units.CamDegrees(top + x), Lift: mm(l.lift(x))})
			}
			s = append(s, cam.Sample{At: units.CamDegrees(top + c.to), Lift: mm(l.lift(c.to))})
			if c.filled == 0 && c.to < 170 {
				s = append(s, cam.Sample{At: units.CamDegrees(top + 180), Lift: 0})
			}
			f, err := cam.Fit(s, cam.FitOptions{Criterion: cam.Interpolated, KeepZero: true})
			if err != nil {
				t.Fatal(c, top, err)
			}
			if math.Abs(f.Filled.Degrees()-c.filled) > 1e-9 || f.Readings != len(s) || int(f.Parameters) != len(s)+c.zeros || (len(f.Basis.Assumed) > 0) != (c.filled > 0) {
				t.Errorf("read %g to %g about %g: filled %v with %g zeros, want %g° with %d", c.from, c.to, top, f.Filled, f.Parameters-float64(len(s)), c.filled, c.zeros)
			}
			for x := c.to; x < c.from+360; x += 0.7 {
				// A spline that comes from the flank rings a little into the zeros.
				if y, _ := f.Lift(units.CamDegrees(top + x)); math.Abs(y.Millimetres()) > 1e-3 {
					t.Fatalf("%v lift on the base circle that was not read, at %g of %+v", y, x, c)
				}
			}
		}
	}
}

// Stretches and lifts beside them at their limits: 20° anywhere, the longest base circle
// and the smallest lift that counts for one; and what is said just past them.
func TestUnreadStretchAtItsLimits(t *testing.T) {
	read := func(gap, before, after float64) []cam.Sample { // from 100° on, readings 10° apart or less
		var s []cam.Sample
		const n = 40
		for i := range n + 1 {
			s = append(s, cam.Sample{At: units.CamDegrees(100 + gap + (360-gap)*float64(i)/n), Lift: 3})
		}
		s[0].Lift, s[n].Lift = mm(after), mm(before)
		return s
	}
	keep := cam.FitOptions{KeepZero: true}
	longer := cam.FitOptions{KeepZero: true, FillBase: 310, Small: mm(0.5)}
	for _, c := range []struct {
		name               string
		gap, before, after float64
		opt                cam.FitOptions
		want               string // in the rule; none if it is taken
	}{
		{"20° off the base circle", 20, 5, 5, keep, ""},
		{"20° but for rounding", 20 * past, 5, 5, keep, ""},
		{"more than 20° off the base circle", 20.001, 5, 5, keep, "no stretch may be longer than 20° of the cam without a reading; if this one is base circle, the gauge must show at most 0.10 mm at both its ends"},
		{"300°", 300, 0.1, -0.1, keep, ""},
		{"more than 300°", 300.001, 0, 0, keep, ", and on it none longer than 300° cam"},
		{"300° with lift beside it", 300, 0.2, 0, keep, "; if this one is base circle, the gauge must show"},
		{"lift before it", 100, 0.1001, 0, keep, "the gauge must show at most 0.10 mm"},
		{"lift after it", 100, 0, 0.1001, keep, "the gauge must show at most 0.10 mm"},
		{"lift below nought", 100, 0, -0.1001, keep, "the gauge must show at most 0.10 mm"},
		{"310° as asked", 310, 0.5, 0.5, longer, ""},
		{"310° but for rounding", 310 * past, 0.5, 0.5, longer, ""},
		{"more than 310°", 310.001, 0, 0, longer, "none longer than 310° cam"},
		{"more lift than asked", 100, 0.501, 0, longer, "the gauge must show at most 0.50 mm"},
		{"no base circle read", 100, 3, 0, cam.FitOptions{}, "read three places on it, one of them at each end, or set the gauge to zero there and keep that zero"},
	} {
		_, err := cam.Fit(read(c.gap, c.before, c.after), c.opt)
		if c.want == "" {
			if err != nil {
				t.Errorf("%s: %v", c.name, err)
			}
			continue
		}
		if !refusedAt(err, "readings") || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: %v, want %q", c.name, err, c.want)
		}
	}
}
