package transmission

import (
	"math"
	"testing"

	"example.com/benchbook/units"
)

// Pressure times area over the ring is the clamp, and pressure times radius too is the
// torque of a newton of friction: summed ring by ring, pressure even or falling as 1/r.
func TestPressureOverTheRing(t *testing.T) {
	const n = 20_000 // midpoint rule: 1e-9 of it
	for _, law := range []PressureLaw{UniformWear, UniformPressure} {
		p := Plates{Faces: 4, Outer: 150 * units.Millimetre, Inner: 90 * units.Millimetre, Pressure: law}
		c, err := p.Carry(units.Value(0.25), units.Newtons(1800))
		if err != nil {
			t.Fatal(err)
		}
		clamp, torque, area := 0.0, 0.0, 0.0
		const ri, ro = 0.045, 0.075
		for i := range n {
			r := ri + (ro-ri)*(float64(i)+0.5)/n
			ring := 2 * math.Pi * r * (ro - ri) / n
			pressure := c.Peak.Pascals()
			if law == UniformWear {
				pressure *= ri / r
			}
			clamp += pressure * ring
			torque += 0.25 * 4 * pressure * ring * r
			area += ring
		}
		for _, q := range []struct {
			what      string
			got, want float64
		}{
			{"clamp", clamp, 1800}, {"torque", c.Torque.NewtonMetres(), torque}, {"mean", c.Mean.Pascals(), 1800 / area},
			{"least", c.Least.Pascals(), map[PressureLaw]float64{UniformWear: c.Peak.Pascals() * ri / ro, UniformPressure: c.Peak.Pascals()}[law]},
		} {
			if math.Abs(q.got/q.want-1) > 1e-8 {
				t.Errorf("%v, %s: %v, want %v", law, q.what, q.got, q.want)
			}
		}
		// and back: the clamp for that peak, the ring for that torque, the faces for it
		if w, err := p.ClampFor(c.Peak); err != nil || math.Abs(w.Newtons()/1800-1) > 1e-12 {
			t.Errorf("%v: clamp %v, %v", law, w, err)
		}
		ring, err := RingFor(c.Torque, units.Value(0.25), c.Peak, 4, 0.6, law)
		if err != nil || math.Abs(ring.Outer.Millimetres()-150) > 1e-9 || math.Abs(ring.Inner.Millimetres()-90) > 1e-9 || ring.Pressure != law {
			t.Errorf("%v: ring %+v, %v", law, ring, err)
		}
		if z, err := p.FacesFor(c.Torque, units.Value(0.25), units.Newtons(1800)); err != nil || math.Abs(z-4) > 1e-12 {
			t.Errorf("%v: %v faces, %v", law, z, err)
		}
	}
}

// Inserts press on their own area: 20 corks of 2 cm² under 1000 N are 0.25 N/mm².
func TestPressureOnInserts(t *testing.T) {
	p := Plates{Faces: 2, Inserts: Inserts{Count: 20, Area: units.SquareMillimetres(200), Radius: 60 * units.Millimetre}}
	c, err := p.Carry(units.Value(0.2), units.Newtons(1000))
	if err != nil || math.Abs(c.Mean.Kilopascals()-250) > 1e-9 || c.Peak != c.Mean || c.Least != c.Mean {
		t.Errorf("%+v, %v", c, err)
	}
	printed(t, "torque, N m", c.Torque.NewtonMetres(), "24.0") // 0.2 x 2 x 1000 N x 0.06 m
	if w, err := p.ClampFor(units.Kilopascals(250)); err != nil || math.Abs(w.Newtons()-1000) > 1e-9 {
		t.Errorf("clamp %v, %v", w, err)
	}
	// known by its mean radius only, a pack has a torque and no pressure
	c, err = Plates{Faces: 2, MeanRadius: 60 * units.Millimetre}.Carry(units.Value(0.2), units.Newtons(1000))
	if err != nil || c.Mean != 0 || c.Peak != 0 || c.Least != 0 || math.Abs(c.Torque.NewtonMetres()-24) > 1e-9 {
		t.Errorf("%+v, %v", c, err)
	}
	if _, err := (Plates{Faces: 2, MeanRadius: 60 * units.Millimetre}).ClampFor(units.Kilopascals(100)); err == nil {
		t.Error("a clamp for a pressure on no known area")
	}
}

// Plates that alternate rub at one face fewer than there are plates; only the count of
// one kind told, or kinds two apart, is refused.
func TestFacesFromPlates(t *testing.T) {
	for _, c := range []struct{ driving, driven, faces int }{{5, 4, 8}, {4, 5, 8}, {4, 4, 7}, {1, 1, 1}, {6, 4, 0}, {4, 6, 0}, {5, 0, 0}, {0, 5, 0}, {-3, 6, 0}, {0, 0, 0}} {
		p := Plates{Driving: c.driving, Driven: c.driven, Outer: 150 * units.Millimetre, Inner: 90 * units.Millimetre}
		got, err := p.Carry(units.Value(0.2), units.Newtons(1000))
		if got.Faces != c.faces || (err == nil) != (c.faces > 0) {
			t.Errorf("%d and %d: %d faces, %v", c.driving, c.driven, got.Faces, err)
		}
	}
	// only an outer diameter of nothing is missing, and that is not told as a conflict too
	_, err := Plates{Faces: 2, Inner: 90 * units.Millimetre}.Carry(units.Value(0.2), units.Newtons(1000))
	if f := faultsOf(err); len(f) != 1 || f[0] != "outer" {
		t.Errorf("told: %v", f)
	}
}
