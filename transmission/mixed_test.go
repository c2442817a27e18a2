package transmission

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

// fitted is a set by free lengths in mm and rates in N/mm.
func fitted(free, rate []float64) []FittedSpring {
	f := make([]FittedSpring, len(free))
	for i := range f {
		f[i].FreeLength = measure.Of(units.Millimetres(free[i]), units.Millimetres(0.02))
		f[i].Rate = measure.Of(units.NewtonsPerMillimetre(rate[i]), units.NewtonsPerMillimetre(0.3))
	}
	return f
}

// One spring of an even set shorter by d tilts the plate as its nut out by d does:
// run-out 4 d Ro/(N Rs), the same formula that trims the nuts.
func TestOneShortSpring(t *testing.T) {
	for n := 3; n <= 8; n++ {
		c := plate(n)
		free, rate := make([]float64, n), make([]float64, n)
		for i := range free {
			free[i], rate[i] = c.Springs.FreeLength.Millimetres(), c.Springs.Rate.NewtonsPerMillimetre()
		}
		free[1] -= 0.5
		m, err := c.Mixed(fitted(free, rate), units.Turns(8), Condition{})
		if err != nil {
			t.Fatal(err)
		}
		want := 4 * 0.5 * c.Plates.Rim.Ratio(c.Nuts.Circle) / float64(n)
		if got := m.RunOut.Value().Millimetres(); math.Abs(got-want) > 1e-9 {
			t.Errorf("%d springs: run-out %v, by the formula %v", n, got, want)
		}
		if want := 0.5 / float64(n); math.Abs(m.Set.Value().Millimetres()-want) > 1e-9 {
			t.Errorf("%d springs: set %v", n, m.Set)
		}
		// a short spring pushes less, so its side rises more and the other lags
		if m.Lowest == 1 || n%2 == 0 && m.Lowest != (1+n/2)%n {
			t.Errorf("%d springs: lowest at %d", n, m.Lowest)
		}
	}
}

// The plate stands where the springs' energy is least, found here by small steps, and
// the even set in the clutch's own ledgers presses as the springs do one by one.
func TestMixedIsInBalance(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(3, 8).Draw(t, "springs")
		c := plate(n)
		free, rate := make([]float64, n), make([]float64, n)
		for i := range free {
			free[i] = c.Springs.FreeLength.Millimetres() + rapid.Float64Range(-1, 0.5).Draw(t, "length")
			rate[i] = c.Springs.Rate.NewtonsPerMillimetre() * rapid.Float64Range(0.93, 1.07).Draw(t, "rate")
		}
		turns := units.Turns(rapid.Float64Range(4, 9).Draw(t, "turns"))
		m, err := c.Mixed(fitted(free, rate), turns, Condition{})
		if err != nil {
			t.Fatal(err)
		}
		found := m.Into(Condition{})
		b, err := c.At(found, turns)
		if err != nil {
			t.Fatal(err)
		}
		clamp := 0.0
		seat := c.Springs.AtFlush.Millimetres() - turns.Turns()*c.Nuts.Pitch.Millimetres()
		for i := range free {
			clamp += rate[i] * (free[i] - seat)
			if math.Abs(m.Loads[i].Newtons()-rate[i]*(free[i]-seat)) > 1e-9 {
				t.Fatalf("spring %d pushes %v", i, m.Loads[i])
			}
		}
		if math.Abs(b.Clamp.Newtons()-clamp) > 1e-6 {
			t.Fatalf("clamp %v, one by one %v", b.Clamp, clamp)
		}
		even, err := c.At(Condition{}, turns)
		if err != nil {
			t.Fatal(err)
		}
		y := even.LiftWanted.Millimetres()
		if got := b.LiftWanted.Millimetres() - y; math.Abs(got-m.Lag.Millimetres()) > 1e-9 {
			t.Fatalf("lift wanted is %v more, the lag %v", got, m.Lag)
		}
		energy := func(p, q float64) (e float64) {
			for i := range free {
				at := 2 * math.Pi * float64(i) / float64(n)
				x := free[i] - seat + y + p*math.Cos(at) + q*math.Sin(at)
				e += rate[i] * x * x / 2
			}
			return e
		}
		p, q := 0.0, 0.0
		for step := 1.0; step > 1e-7; step /= 2 {
			for moved := true; moved; {
				moved = false
				for _, d := range [...][2]float64{{step, 0}, {-step, 0}, {0, step}, {0, -step}} {
					if energy(p+d[0], q+d[1]) < energy(p, q) {
						p, q, moved = p+d[0], q+d[1], true
					}
				}
			}
		}
		want := 2 * math.Hypot(p, q) * c.Plates.Rim.Ratio(c.Nuts.Circle)
		// energies of some 1e5 N mm are told apart to 1e-11 of that, which is 1e-4 mm of tilt
		if math.Abs(m.RunOut.Value().Millimetres()-want) > 5e-4 {
			t.Fatalf("run-out %v, by the energy %v", m.RunOut, want)
		}
		if m.OrderAfter > m.RunOut.Value() || m.FlatsAfter > m.RunOut.Value() {
			t.Fatalf("worse: %+v", m)
		}
		sum := 0
		for _, f := range m.Flats {
			sum += f
		}
		if sum != 0 {
			t.Fatalf("flats %v", m.Flats)
		}
	})
}

// Springs from two sets: the clutch drags where an even set of the same clamp frees,
// and the mixed set is suspected next to nuts that are out of true, which do the same.
func TestMixedInTheVerdicts(t *testing.T) {
	c := plate(4)
	springs := fitted([]float64{45.4, 44.9, 44.7, 45.1}, []float64{25, 25, 25, 25})
	turns := units.Turns(8.6)
	m, err := c.Mixed(springs, turns, Condition{})
	if err != nil {
		t.Fatal(err)
	}
	with, err := c.Window(m.Into(Condition{}))
	if err != nil {
		t.Fatal(err)
	}
	even, err := c.Window(Condition{SpringSet: m.Set, SpringRate: m.Rate})
	if err != nil {
		t.Fatal(err)
	}
	if with.Low != even.Low || with.High >= even.High || with.LiftWanted <= even.LiftWanted {
		t.Errorf("%+v\n%+v", with, even)
	}
	d, err := Diagnose(Input{Clutch: c, Setting: Setting{Nuts: measure.Of(turns, units.Turns(0.05))}, Found: m.Into(Condition{}), Signs: Signs{Drags: Yes}}, Options{})
	if err != nil || d.Causes.Odds[0].Key != "lift-uneven" || d.Causes.Odds[1].Key != "springs-mixed" {
		t.Errorf("%v\n%s", err, show(d))
	}
	// own readings go before what the mix says
	own := Condition{RunOut: measure.Of(2*units.Millimetre, units.Millimetre)}
	if m.Into(own).RunOut != own.RunOut || m.Into(own).SpringSet != m.Set {
		t.Error("a reading was put aside")
	}
}

// Loose springs push nothing; all loose, or springs that are none, are faults.
func TestMixedFaults(t *testing.T) {
	c := plate(4)
	m, err := c.Mixed(fitted([]float64{46, 46, 46, 30}, []float64{25, 25, 25, 25}), units.Turns(8), Condition{})
	if err != nil || m.Loads[3] != 0 || m.Loads[0] <= 0 || !units.Finite(m.RunOut.Value()) {
		t.Errorf("%+v, %v", m, err)
	}
	if _, err := c.Mixed(fitted([]float64{20, 20, 20, 20}, []float64{25, 25, 25, 25}), units.Turns(1), Condition{}); err == nil {
		t.Error("springs that do not touch were passed")
	}
	bad := fitted([]float64{math.NaN(), 46, -1}, []float64{25, 0, math.Inf(1)})
	_, err = c.Mixed(bad, units.Turns(math.NaN()), Condition{})
	paths := map[string]bool{}
	for _, f := range fault.Faults(err) {
		paths[f.Path] = true
	}
	for _, p := range []string{"springs", "springs[0].free_length", "springs[1].rate", "springs[2].free_length", "springs[2].rate", "turns"} {
		if !paths[p] {
			t.Errorf("%s is not told: %v", p, err)
		}
	}
}
