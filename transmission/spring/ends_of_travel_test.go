package spring_test

import (
	"math"
	"testing"

	"example.com/benchbook/transmission/spring"
	"example.com/benchbook/units"
	"pgregory.net/rapid"
)

// Both ends of the travel belong to it, and so does the load at Limit: whatever
// Load says there Deflection finds again.
func TestEndsOfTravelAreAnswered(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		e := anyElement(t, 2)
		if f, in := e.Load(0); !in || f != 0 {
			t.Fatalf("free: %v, answered %v", f, in)
		}
		if s, in := e.Deflection(0); !in || s != 0 {
			t.Fatalf("no load at %v, answered %v", s, in)
		}
		for _, s := range []units.Length{0, e.Travel()} {
			if _, in := e.Load(s); !in {
				t.Fatalf("no load at %v of %v", s, e.Travel())
			}
			if _, in := e.RateAt(s); !in {
				t.Fatalf("no rate at %v of %v", s, e.Travel())
			}
		}
		top, _ := e.Load(e.Limit())
		s, in := e.Deflection(top)
		if !in || s > e.Limit() {
			t.Fatalf("%v at the limit %v is reached at %v, answered %v", top, e.Limit(), s, in)
		}
		// the inverses end within 1e-13 of load or travel
		if back, _ := e.Load(s); math.Abs(back.Ratio(top)-1) > 1e-9 {
			t.Fatalf("%v comes back as %v", top, back)
		}
	})
}

// A coil has a state at every load up to that when solid, and at both its lengths,
// however free and solid length round: of some thousand coils.
func TestCoilStatesAtTheEnds(t *testing.T) {
	for i := range 4000 {
		h := ok(spring.NewHelical(spring.HelicalSpec{Wire: 2.7 * units.Millimetre, Mean: 17 * mm, Total: 8.3, Free: units.Millimetres(30 + float64(i)*0.0137), Ends: spring.SquaredGround}))(t)
		for _, s := range []spring.HelicalState{h.AtLoad(0), h.AtLoad(h.Figures().SolidLoad), h.At(h.Free()), h.At(h.Solid())} {
			if s.Reason.Given() || s.ToSolid < -1e-12*h.Free() {
				t.Fatalf("%+v", s)
			}
		}
	}
}

// A spring that was never made gives no answer, and no movement.
func TestZeroValuesAnswerNothing(t *testing.T) {
	for name, e := range map[string]spring.Element{
		"linear": spring.Linear{}, "helical": spring.Helical{}, "disc": spring.Disc{}, "stack": spring.Stack{},
		"levered": spring.Levered{}, "parallel": spring.Parallel{}, "series": spring.Series{},
	} {
		_, load := e.Load(0)
		_, deflection := e.Deflection(0)
		_, rate := e.RateAt(0)
		if load || deflection || rate || e.Travel() != 0 || e.Limit() != 0 {
			t.Errorf("%s: load %v, deflection %v, rate %v, travel %v, limit %v", name, load, deflection, rate, e.Travel(), e.Limit())
		}
	}
	for _, s := range []spring.HelicalState{spring.Helical{}.At(0), spring.Helical{}.AtLoad(0)} {
		if s.Reason.Code != "no-spring" {
			t.Errorf("%+v", s)
		}
	}
}
