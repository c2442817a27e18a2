package cam

import (
	"math"
	"testing"

	"example.com/benchbook/units"
)

// Where the acceleration steps the later part counts on the way up: base circle up to and
// with the start of lift, the nose from the join on.
func TestJoinsBelongToOneSide(t *testing.T) {
	arcs, err := ArcCam{BaseRadius: 14, NoseRadius: 4, Lift: 8, HalfAngle: 68}.Shape()
	if err != nil {
		t.Fatal(err)
	}
	straight, err := TangentCam{BaseRadius: 15, Lift: 8, HalfAngle: 60, Roller: 10}.Shape()
	if err != nil {
		t.Fatal(err)
	}
	for name, c := range map[string]struct {
		s    shape
		join float64
	}{"arcs": {arcs.arc, arcs.arc.phi}, "tangents": {straight.tangent, straight.tangent.phi}} {
		if m := c.s.rise(0); m != [3]float64{} {
			t.Errorf("%s: %v at the start of lift", name, m)
		}
		if m := c.s.rise(1e-9); !(m[2] > 0) {
			t.Errorf("%s: %v just after the start of lift", name, m)
		}
		if m := c.s.rise(c.join); !(m[2] < 0) {
			t.Errorf("%s: %v at the join", name, m)
		}
		if m := c.s.rise(c.join * (1 - 1e-12)); !(m[2] > 0) {
			t.Errorf("%s: %v before the join", name, m)
		}
	}
}

// A surface whose foot's centre runs straight, so that it is hollow by the foot's own
// radius and nothing in the formula is left to divide by: as good as straight, and no
// infinity. Lift bends by b a square radian at the bottom of a dip there.
func TestContactOnAStraightPitch(t *testing.T) {
	const n, base, foot = 36, 14.0, 10.0
	c := &Curve{coef: make([][4]float64, n), inv: n / turnDegrees}
	c.startAt(0)
	h := turnDegrees / n * math.Pi / 180
	c.coef[0] = [4]float64{0, 0, (base + foot) * h * h / 2, 0}
	got, err := c.Contact(0, Radiused(foot), base)
	if err != nil || got.Radius < 1e30 || !units.Finite(got.Radius) || got.Pressure != 0 {
		t.Errorf("%+v, %v", got, err)
	}
	// A thousandth of that bend away the centre runs on a circle of a thousand times b.
	c.coef[0][2] *= 0.999
	if got, err := c.Contact(0, Radiused(foot), base); err != nil || math.Abs(got.Radius.Millimetres()-(24_000-foot)) > 1 {
		t.Errorf("%+v, %v", got, err)
	}
}

// A triangle that has fallen flat is none.
func TestFlatTriangle(t *testing.T) {
	p := pitch{a: 3, b: 4}
	for _, r := range []float64{1, 7, 0.5, 8} {
		if swing, side, ok := p.triangle(r); ok {
			t.Errorf("%g: %g and %g", r, swing, side)
		}
	}
	if swing, side, ok := p.triangle(5); !ok || math.Abs(swing-math.Pi/2) > 1e-15 || math.Abs(math.Cos(side)-0.6) > 1e-15 {
		t.Errorf("3, 4, 5: %g and %g", swing, side)
	}
}
