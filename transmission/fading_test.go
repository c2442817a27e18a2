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
