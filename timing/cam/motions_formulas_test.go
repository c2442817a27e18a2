package cam_test

import (
	"math"
	"testing"

	"example.com/benchbook/timing/cam"
	"example.com/benchbook/units"
)

// Lifts of a rise of 8 mm by hand, in eighths and quarters of its angle: harmonic h/2 (1 -
// cos(pi t)), parabolic h/8 at a quarter and h/2 at half, cycloidal h (t - sin(2 pi t)/(2 pi)).
func TestRiseByHand(t *testing.T) {
	root := math.Sqrt(0.5)
	for _, c := range []struct {
		law  cam.Law
		lift []float64 // at 0, 1/4, 1/2, 3/4, 1
	}{
		{cam.Harmonic, []float64{0, 4 * (1 - root), 4, 4 * (1 + root), 8}},
		{cam.Parabolic, []float64{0, 1, 4, 7, 8}},
		{cam.Cycloidal, []float64{0, 2 - 4/math.Pi, 4, 6 + 4/math.Pi, 8}},
	} {
		r := cam.Rise{Law: c.law, Lift: 8, Over: 60}
		for i, want := range c.lift {
			if m, err := r.At(15 * units.CamAngle(i)); err != nil || math.Abs(m.Lift.Millimetres()-want) > 1e-12 {
				t.Errorf("%v at %d quarters: %v, want %g: %v", c.law, i, m.Lift, want, err)
			}
		}
	}
	// At half lift uniform acceleration has become retardation: 4 h/b².
	if m, _ := (cam.Rise{Law: cam.Parabolic, Lift: 8, Over: 60}).At(30); math.Abs(m.AccelerationMMPerDegree2+32.0/3600) > 1e-15 {
		t.Errorf("%+v at half lift", m)
	}
}

// Velocity, acceleration and jerk of each law are the differences of the one before;
// and the greatest of them are those At comes to.
func TestRiseByDifferences(t *testing.T) {
	for law := cam.Harmonic; law <= cam.Cycloidal; law++ {
		r := cam.Rise{Law: law, Lift: 8, Over: 60}
		const h = 1e-3
		v, a := 0.0, 0.0
		for x := units.CamAngle(0); x <= 60; x += 0.5 {
			m, err := r.At(x)
			if err != nil {
				t.Fatal(err)
			}
			v, a = max(v, m.VelocityMMPerDegree), max(a, m.AccelerationMMPerDegree2)
			if x == 0 || x == 60 || x == 30 && law == cam.Parabolic { // steps
				continue
			}
			b, _ := r.At(x - h)
			e, _ := r.At(x + h)
			for _, p := range [][3]float64{
				{m.VelocityMMPerDegree, b.Lift.Millimetres(), e.Lift.Millimetres()},
				{m.AccelerationMMPerDegree2, b.VelocityMMPerDegree, e.VelocityMMPerDegree},
				{m.JerkMMPerDegree3, b.AccelerationMMPerDegree2, e.AccelerationMMPerDegree2},
			} {
				// Off by the third derivative times h²/6, 1e-11 here, and rounding over h.
				if d := (p[2] - p[1]) / (2 * h); math.Abs(d-p[0]) > 1e-9 {
					t.Errorf("%v at %v: %g, by differences %g", law, x, p[0], d)
				}
			}
		}
		// 60 rev/min are 360° a second.
		g, err := r.Greatest(units.RevolutionsPerMinute(60))
		if err != nil || math.Abs(g.VelocityMMPerDegree-v) > 1e-12 || math.Abs(g.AccelerationMMPerDegree2-a) > 1e-12 {
			t.Errorf("%v: greatest %+v, found %g and %g: %v", law, g, v, a, err)
		}
		if math.Abs(g.Speed.SI()-v*0.36) > 1e-12 || math.Abs(g.InTime.SI()-a*360*0.36) > 1e-9 {
			t.Errorf("%v: %+v in time", law, g)
		}
	}
}

// A motion of 1 in everything with the crank at 60 rev/min: the cam turns 180° a second,
// so 0.18 m/s, 32.4 m/s² and 5832 m/s³.
func TestMotionInTime(t *testing.T) {
	m, err := cam.Motion{Lift: 1, VelocityMMPerDegree: 1, AccelerationMMPerDegree2: 1, JerkMMPerDegree3: 1}.At(units.RevolutionsPerMinute(60))
	if err != nil || m.Lift != 1 {
		t.Fatal(m, err)
	}
	near(t, "velocity", m.Velocity.SI(), 0.18, 1e-12)
	near(t, "acceleration", m.Acceleration.SI(), 32.4, 1e-12)
	near(t, "jerk", m.JerkMetresPerSecond3, 5832, 1e-12)
}

// The nose of a tangent cam by differences of its lift, away from its top; the start of
// lift is still the base circle, and so is the other end.
func TestLobesByDifferences(t *testing.T) {
	arcs := arcCam()
	shape, err := arcs.Shape()
	if err != nil {
		t.Fatal(err)
	}
	straight := cam.TangentCam{BaseRadius: 15, Lift: 8, HalfAngle: 60, Roller: 10}
	flank, err := straight.Shape()
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		name       string
		at         func(units.CamAngle) (cam.Motion, error)
		half, join units.CamAngle
	}{
		{"arcs", arcs.At, arcs.HalfAngle, arcs.HalfAngle - shape.FlankAngle},
		{"tangents", straight.At, straight.HalfAngle, straight.HalfAngle - flank.FlankAngle},
	} {
		const h = 1e-3
		for x := -c.half + 0.1; x < c.half; x += 0.7 {
			if math.Abs((x.Abs()-c.join).Degrees()) < 2*h || (c.half-x.Abs()).Degrees() < 2*h {
				continue // the acceleration steps there
			}
			b, _ := c.at(x - h)
			m, err := c.at(x)
			e, _ := c.at(x + h)
			if err != nil {
				t.Fatal(err)
			}
			v := (e.Lift - b.Lift).Millimetres() / (2 * h)
			a := (e.VelocityMMPerDegree - b.VelocityMMPerDegree) / (2 * h)
			// The third derivative is some 1e-4 mm/deg³ here.
			if math.Abs(v-m.VelocityMMPerDegree) > 1e-9 || math.Abs(a-m.AccelerationMMPerDegree2) > 1e-9 {
				t.Errorf("%s at %v: %+v, by differences %g and %g", c.name, x, m, v, a)
			}
		}
		for _, x := range []units.CamAngle{c.half + 1e-9, -c.half - 1e-9, 180, -180} {
			if m, err := c.at(x); err != nil || m.Lift != 0 || m.VelocityMMPerDegree != 0 || m.AccelerationMMPerDegree2 != 0 {
				t.Errorf("%s at %v, base circle: %+v, %v", c.name, x, m, err)
			}
		}
		if top, err := c.at(0); err != nil || top.VelocityMMPerDegree != 0 || math.Signbit(top.VelocityMMPerDegree) {
			t.Errorf("%s at the top: %+v, %v", c.name, top, err)
		}
		// mirrored about the nose
		up, _ := c.at(-20)
		down, _ := c.at(20)
		if up.Lift != down.Lift || up.VelocityMMPerDegree != -down.VelocityMMPerDegree || !(up.VelocityMMPerDegree > 0) || up.AccelerationMMPerDegree2 != down.AccelerationMMPerDegree2 {
			t.Errorf("%s: %+v up, %+v down", c.name, up, down)
		}
	}
}
