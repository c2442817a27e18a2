package cam

import (
	"math"
	"math/rand/v2"
	"testing"

	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// lobed is an invented lobe of two flanks that differ, top at an angle.
func lobed(t *testing.T, top float64) *Curve {
	t.Helper()
	const n = 180
	lift := make([]units.Length, n)
	for i := range n {
		w := 70.0
		u := half(turnDegrees*float64(i)/n - top)
		if u > 0 {
			w = 90
		}
		if math.Abs(u) < w {
			lift[i] = units.Millimetres(8 * math.Pow(math.Cos(u*math.Pi/(2*w)), 4))
		}
	}
	c, err := InterpolateEven(lift)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// readOff reads a curve n times round the turn with some noise, a zero and a phase.
func readOff(t *testing.T, c *Curve, n int, phase, zero, noise float64, rng *rand.Rand) fitter {
	t.Helper()
	f := fitter{zero: 0.03}
	for i := range n {
		x := turnDegrees * float64(i) / float64(n)
		y, err := c.Lift(units.CamDegrees(x - phase))
		if err != nil {
			t.Fatal(err)
		}
		f.at, f.y, f.w = append(f.at, x), append(f.y, y.Millimetres()+zero+noise*rng.NormFloat64()), append(f.w, float64(1+i%3))
	}
	return f
}

// The evidence for a profile against the integral it stands for: likelihood of the
// readings over every phase, as likely one as another, the gauge's zero taken out where it
// is likeliest given its own spread. The integral is a sum over a thousandth of a degree
// about where the profile lies; Laplace's form of it is good to some per cent.
func TestEvidenceByIntegral(t *testing.T) {
	rng := rand.New(rand.NewPCG(6, 6))
	for _, start := range []float64{0, 25, -40} {
		c, err := lobed(t, 0).Advanced(units.CamDegrees(-start))
		if err != nil {
			t.Fatal(err)
		}
		for _, n := range []int{12, 24, 72} {
			const phase, spread = 140.3, 0.05
			f := readOff(t, c, n, phase, 0.02, 0.03, rng)
			m, logL := f.best(c, spread)
			// No more than 24 readings count as free of each other.
			counted := math.Min(float64(n), 24)
			weights := 0.0
			for _, w := range f.w {
				weights += w
			}
			chi2 := func(p float64) (float64, float64) {
				sum := 0.0
				miss := make([]float64, n)
				for i, x := range f.at {
					y, _ := c.Lift(units.CamDegrees(x - p))
					miss[i] = f.y[i] - y.Millimetres()
					sum += f.w[i] * miss[i]
				}
				// The mean miss, drawn to nought as far as the zero's spread is worth less.
				zero := sum / weights * 0.03 * 0.03 / (0.03*0.03 + spread*spread/counted)
				squares := 0.0
				for i := range miss {
					squares += f.w[i] * (miss[i] - zero) * (miss[i] - zero)
				}
				return squares * counted / weights / (spread * spread), zero
			}
			const step = 0.01
			integral, mean, second := 0.0, 0.0, 0.0
			least, _ := chi2(phase)
			for p := phase - 6; p < phase+6; p += step {
				x2, _ := chi2(p)
				l := math.Exp(-(x2 - least) / 2)
				integral += l * step
				mean += l * step * p
				second += l * step * p * p
			}
			mean /= integral
			u := math.Sqrt(second/integral - mean*mean)
			want := math.Log(integral/turnDegrees) - least/2 - counted*math.Log(spread)
			if math.Abs(logL-want) > 0.03 {
				t.Errorf("%d readings, start %g: evidence %.4f, by integral %.4f", n, start, logL, want)
			}
			if got := m.Phase.U().Degrees(); math.Abs(got-u) > 0.05*u || math.Abs(half(m.Phase.Value().Degrees()-mean)) > 0.2*u {
				t.Errorf("%d readings, start %g: phase %v ± %g, by integral %g ± %g", n, start, m.Phase.Value(), got, mean, u)
			}
			x2, zero := chi2(m.Phase.Value().Degrees())
			if math.Abs(m.Zero.Millimetres()-zero) > 1e-9 || math.Abs(m.Misfit.Millimetres()-math.Sqrt(x2*spread*spread/counted)) > 1e-9 {
				t.Errorf("%d readings, start %g: zero %v, misfit %v, reckoned %g and %g", n, start, m.Zero, m.Misfit, zero, math.Sqrt(x2*spread*spread/counted))
			}
		}
	}
}

// How well a phase is known is how sharply chi squared bends there, by differences at one
// and two fifths of a degree that leave the fourth power out; of a faint lobe as of a plain
// one.
func TestPhaseByTheBend(t *testing.T) {
	c := lobed(t, 0)
	for _, spread := range []float64{0.05, 1, 4} {
		f := readOff(t, c, 18, 140.3, 0, 0.03, rand.New(rand.NewPCG(2, 2)))
		m, _ := f.best(c, spread)
		weights := 0.0
		for _, w := range f.w {
			weights += w
		}
		chi2 := func(p float64) float64 {
			ss, _ := f.miss(c, p, spread)
			return ss * 18 / weights / (spread * spread)
		}
		p := m.Phase.Value().Degrees()
		bend := func(h float64) float64 { return (chi2(p+h) - 2*chi2(p) + chi2(p-h)) / (h * h) / 2 }
		want := 1 / math.Sqrt((4*bend(0.2)-bend(0.4))/3)
		if got := m.Phase.U().Degrees(); math.Abs(got-want) > 1e-4*want {
			t.Errorf("spread %g: ± %g°, by the bend %g", spread, got, want)
		}
	}
}

// A profile without a lobe lies as well one way as another: its phase is spread over the
// turn, a rectangle's 360°/sqrt(12).
func TestPhaseOfNoLobe(t *testing.T) {
	c, err := InterpolateEven(make([]units.Length, 12))
	if err != nil {
		t.Fatal(err)
	}
	f := readOff(t, c, 24, 0, 0, 0.01, rand.New(rand.NewPCG(1, 1)))
	m, _ := f.best(c, 0.05)
	if got, want := m.Phase.U().Degrees(), 360/math.Sqrt(12); math.Abs(got-want) > 1e-9 {
		t.Errorf("± %g°, want %g", got, want)
	}
}

// Something else is what readings expect of a cam as far off as its spread: the mean of
// the log-likelihood over draws of that spread, here with twelve readings and seventy-two,
// of which 24 count.
func TestSomethingElseByDraws(t *testing.T) {
	rng := rand.New(rand.NewPCG(8, 8))
	for _, n := range []int{12, 72} {
		f := fitter{at: make([]float64, n)}
		const wide, trials = 0.5, 4000
		mean := 0.0
		counted := min(n, 24)
		for range trials {
			for range counted {
				z := rng.NormFloat64()
				mean += (-z*z/2 - math.Log(wide)) / trials
			}
		}
		// Its standard deviation is sqrt(counted/2/trials).
		if got := f.other(wide); math.Abs(got-mean) > 4*math.Sqrt(float64(counted)/2/trials) {
			t.Errorf("%d readings: %g, by draws %g", n, got, mean)
		}
	}
}

// What is taken for granted is said, and the prior of something else is a tenth of all
// the rest.
func TestIdentifyDefaults(t *testing.T) {
	c := lobed(t, 0)
	var readings []Sample
	for x := units.CamAngle(0); x < 360; x += 15 {
		y, _ := c.Lift(x)
		readings = append(readings, Sample{x, y})
	}
	known := []Profile{{Name: "a", Curve: c}, {Name: "b", Curve: c, Prior: 3}}
	got, err := Identify(readings, known, IdentifyOptions{})
	if err != nil {
		t.Fatal(err)
	}
	values := map[string]string{}
	for _, a := range got.Basis.Assumed {
		values[a.What] = a.Value
	}
	want := map[string]string{"error of one reading": "0.01 mm", "spread of cams of one kind": "0.04 mm", "error of the gauge's zero": "0.03 mm"}
	for what, v := range want {
		if values[what] != v || len(values) != len(want) {
			t.Errorf("%s: %q, want %q of %v", what, values[what], v, values)
		}
	}
	prior := func(got Identified, key string, want float64) {
		t.Helper()
		if o, ok := got.Causes.Of(key); !ok || math.Abs(o.Prior-want) > 1e-12 {
			t.Errorf("%s: %+v, want a prior of %g", key, o, want)
		}
	}
	prior(got, "a", 1/4.4)
	prior(got, "b", 3/4.4)
	prior(got, measure.SomethingElse, 0.4/4.4)
	// Back to front counts a quarter more.
	got, err = Identify(readings, known, IdentifyOptions{BothWays: true, Other: 2, Reading: 0.02, Make: 0.03, Zero: 0.01})
	if err != nil || len(got.Basis.Assumed) != 0 {
		t.Fatal(got.Basis.Assumed, err)
	}
	prior(got, "a", 1.0/7)
	prior(got, "b:reversed", 0.75/7)
	prior(got, measure.SomethingElse, 2.0/7)
}
