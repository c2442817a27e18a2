package transmission

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

// The closed form agrees with passing the clamp on from plate to plate, each held
// back by what its tongues keep. So far it is right to rounding; the form that counts
// the clamp of the near face for both faces, 1 - 2 mu mu_t Rm/Rt a plate, gives less.
func TestFadingPlateByPlate(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		z := rapid.IntRange(1, 20).Draw(t, "faces")
		e := rapid.Float64Range(0, 0.3).Draw(t, "e")
		clamp, sum, rough, near := 1.0, 0.0, 0.0, 1.0
		for range z {
			sum += clamp
			// by bisection: what is kept is e times the clamps of both faces
			low, high := 0.0, clamp
			for range 60 {
				if out := (low + high) / 2; clamp-out > e*(clamp+out) {
					low = out
				} else {
					high = out
				}
			}
			clamp = low
			rough += near
			near *= 1 - 2*e
		}
		got := fading(float64(z), e)
		if math.Abs(got-sum) > 1e-12*sum {
			t.Fatalf("%d faces, e %v: %v, plate by plate %v", z, e, got, sum)
		}
		if got < rough-1e-9 || got > float64(z)+1e-9 {
			t.Fatalf("%v is not between %v and %d", got, rough, z)
		}
	})
}

// About three per cent a plate at a friction of 0.12, 0.15 in the slots and a mean
// radius of 0.8 of the tongues': the arithmetic 2 x 0.12 x 0.15 x 0.8 = 2.9 %.
func TestFadingOfOnePlate(t *testing.T) {
	if lost := 1 - (fading(2, 0.12*0.15*0.8) - 1); math.Abs(lost-0.0288) > 0.0005 {
		t.Errorf("lost %v of the clamp", lost)
	}
}

// A clutch whose tongues grip needs more clamp: the window's low end rises by the
// same part as the torque falls, its travel end stays, and the budget says so.
func TestFadingMovesTheLowEnd(t *testing.T) {
	c := demo()
	was, err := c.Window(used())
	if err != nil {
		t.Fatal(err)
	}
	found := used()
	found.TongueGrip = measure.Exact(units.Value(0.3))
	is, err := c.Window(found)
	if err != nil {
		t.Fatal(err)
	}
	full, err := c.Plates.CarryFading(found.Friction.Value(), 0, 1000*units.Newton)
	if err != nil {
		t.Fatal(err)
	}
	part, err := c.Plates.CarryFading(found.Friction.Value(), units.Value(0.3), 1000*units.Newton)
	if err != nil {
		t.Fatal(err)
	}
	if k := is.ClampWanted.Ratio(was.ClampWanted) * part.Torque.Ratio(full.Torque); math.Abs(k-1) > 1e-12 {
		t.Errorf("clamp wanted goes up by other than the torque goes down: %v", k)
	}
	if is.Low <= was.Low || is.Travel != was.Travel || is.HandForce != was.HandForce {
		t.Errorf("%+v, was %+v", is, was)
	}
	plain, err := c.Plates.Carry(found.Friction.Value(), 1000*units.Newton)
	if err != nil || plain != full {
		t.Errorf("%+v, without grip %+v, %v", plain, full, err)
	}
	b, err := c.At(found, is.Low)
	if err != nil || math.Abs(b.Torque.Ratio(b.TorqueWanted)-1) > 1e-9 {
		t.Errorf("%v of %v at the low end, %v", b.Torque, b.TorqueWanted, err)
	}
}

func TestFadingFaults(t *testing.T) {
	p := demo().Plates
	p.Tongues = 3 * units.Metre
	for _, grip := range []float64{-0.1, 0.7, math.NaN(), math.Inf(1)} {
		_, err := p.CarryFading(units.Value(0.12), units.Value(grip), 0)
		paths := map[string]bool{}
		for _, f := range fault.Faults(err) {
			paths[f.Path] = true
		}
		if !paths["grip"] || !paths["clamp"] || !paths["tongues"] {
			t.Errorf("grip %v: %v", grip, err)
		}
	}
}

// How fast the carried torque falls with the grip is the slope of the closed form, by
// differences; and the spread that grip and friction give it, by the same.
func TestFadingSlope(t *testing.T) {
	for _, z := range []float64{1, 2, 5, 10, 20} {
		for _, e := range []float64{1e-7, 1e-5, 0.001, 0.0199, 0.0201, 0.05, 0.3, 0.7, 0.95} {
			h := 1e-4 * e
			want := (fading(z, e+h) - fading(z, e-h)) / (2 * h)
			if e < 1e-6 {
				want = -z * (z - 1) // the first step of the series: sum of i over the faces, twice
			}
			// a difference over 2e-4 of e: its third derivative, and rounding over 1e-4
			if got := fadingSlope(z, e); math.Abs(got-want) > 2e-4*math.Max(1, math.Abs(want)) {
				t.Errorf("%v faces, e %v: %v, by differences %v", z, e, got, want)
			}
		}
		if fading(z, 1) != 1 || fading(z, 1.5) != 1 || fading(z, 0) != z || fadingSlope(z, 1) != 0 || fadingSlope(z, 2) != 0 {
			t.Errorf("%v faces: %v at the end", z, fading(z, 1))
		}
	}
	for _, e := range []float64{1e-9, 0.001, 0.0199, 0.02, 0.0201, 0.5} {
		if got := artanh(e); math.Abs(got/math.Atanh(e)-1) > 1e-12 {
			t.Errorf("artanh %v: %v, library %v", e, got, math.Atanh(e))
		}
	}
}

// The spread of the torque by friction and grip is what first-order propagation says.
func TestSpreadOfGrippedTorque(t *testing.T) {
	c := demo()
	c.Plates = Plates{Faces: 10, Outer: 140 * units.Millimetre, Inner: 100 * units.Millimetre}
	for _, g := range []struct{ x, u float64 }{{0.2, 0.03}, {0.2, 0}, {0, 0.03}, {0, 0}} {
		found := Condition{Friction: measure.Of(units.Value(0.12), units.Value(0.005))}
		s, err := c.resolve(&found)
		if err != nil {
			t.Fatal(err)
		}
		s.v[tongueGrip], s.u[tongueGrip] = g.x, g.u
		at := func(df, dg float64) float64 {
			v := s.v
			v[friction] += df
			v[tongueGrip] += dg
			return s.carried(&v)
		}
		const h = 1e-6
		byFriction := (at(h, 0) - at(-h, 0)) / (2 * h) * 0.005
		byGrip := (at(0, h) - at(0, -h)) / (2 * h) * g.u
		if g.x == 0 { // no grip is the end of the range: from there upward
			byGrip = (at(0, h) - at(0, 0)) / h * g.u
		}
		one := at(0, 0)
		want := (byFriction*byFriction + byGrip*byGrip) / (one * one)
		if got := s.gripped(&s.v, &s.u); math.Abs(got-want) > 1e-4*want {
			t.Errorf("grip %v ± %v: %v, by differences %v", g.x, g.u, got, want)
		}
	}
}
