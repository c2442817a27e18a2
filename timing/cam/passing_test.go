package cam_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"example.com/benchbook/timing/cam"
	"example.com/benchbook/units"
	"pgregory.net/rapid"
)

// hump is a table of 36 lifts, one every 10°, with a lobe in it. Invented.
func hump(t *testing.T, lobe ...float64) *cam.Curve {
	t.Helper()
	lift := make([]units.Length, 36)
	for i, y := range lobe {
		lift[10+i] = units.Millimetres(y)
	}
	c, err := cam.InterpolateEven(lift)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// A check that is a figure of the table itself is passed at that place of the table,
// going up and coming down.
func TestCheckOnAReading(t *testing.T) {
	c := hump(t, 0.2, 1, 3, 5, 6, 5, 3, 1, 0.2)
	for check, places := range map[units.Length][2]units.CamAngle{1: {110, 170}, 3: {120, 160}, 5: {130, 150}} {
		e, err := c.Events(check)
		if err != nil || e.NoAnswer.Given() {
			t.Fatal(check, e.NoAnswer, err)
		}
		if math.Abs((e.Opens-places[0]).Degrees()) > 1e-9 || math.Abs((e.Closes-places[1]).Degrees()) > 1e-9 {
			t.Errorf("%v: %v to %v, the table has it at %v", check, e.Opens, e.Closes, places)
		}
		// The table is symmetrical.
		if !(e.OpeningRise > 0) || math.Abs(e.OpeningRise.Ratio(e.ClosingRise)-1) > 1e-9 {
			t.Errorf("%v: rise %v, fall %v", check, e.OpeningRise, e.ClosingRise)
		}
	}
}

// The greatest lift is touched and not passed: on a reading, and between two.
func TestCheckAtTheTop(t *testing.T) {
	onReading, between := hump(t, 1, 3, 5, 6, 5, 3, 1), hump(t, 1, 3, 5, 5, 3, 1)
	atTheEnd, err := cam.InterpolateEven([]units.Length{6, 3, 1, 0, 0, 0, 0, 0, 0, 1, 3}) // the top on the first reading
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []*cam.Curve{onReading, between, atTheEnd} {
		top, _ := c.MaxLift()
		e, err := c.Events(top)
		if err != nil || e.NoAnswer.Code != "never-reached" {
			t.Errorf("at the top: %+v, %v", e, err)
		}
		if a, err := c.Area(top, 0); err != nil || a != (cam.Area{}) {
			t.Errorf("area over the top: %+v, %v", a, err)
		}
	}
}

// coarse draws a lobe by a handful of uneven readings, so that the nose and both
// flanks bend much within a piece; it may stand over the end of the turn.
func coarse(t *rapid.T) *cam.Curve {
	turn := rapid.Float64Range(0, 360).Draw(t, "turned by")
	var s []cam.Sample
	at := 0.0
	for i := range rapid.IntRange(10, 20).Draw(t, "readings") {
		at += rapid.Float64Range(8, 19).Draw(t, "step")
		y := 0.0
		if i > 1 && i < 8 {
			y = 8 - 0.5*sq(float64(i)-4.5) + rapid.Float64Range(0, 0.4).Draw(t, "lift")
		}
		s = append(s, cam.Sample{At: units.CamDegrees(turn + at), Lift: units.Millimetres(y)})
	}
	f, err := cam.Fit(s, cam.FitOptions{Criterion: cam.Interpolated, KeepZero: true, FillBase: 355})
	if err != nil {
		t.Skip(err)
	}
	return f.Curve
}

func sq(x float64) float64 { return x * x }

// What a scan in steps of a hundredth of a degree says of a coarse lobe: where it
// passes a check, its top, and the area above it; also with the check close below a
// top that lies between two readings.
func TestCoarseLobeByScan(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := coarse(t)
		const step = 0.02
		lift := func(x float64) float64 {
			y, err := c.Lift(units.CamDegrees(x))
			if err != nil {
				t.Fatal(err)
			}
			return y.Millimetres()
		}
		top, at := 0.0, 0.0
		for x := 0.0; x < 360; x += step {
			if y := lift(x); y > top {
				top, at = y, x
			}
		}
		most, where := c.MaxLift()
		// A parabola of 1 mm/deg² or less falls by 1e-4 mm in a hundredth of a degree.
		if d := most.Millimetres() - top; d < 0 || d > 1e-4 || math.Abs(half(where.Degrees()-at)) > step {
			t.Fatalf("top %v at %v, by scan %g at %g", most, where, top, at)
		}
		check := top - rapid.SampledFrom([]float64{0.01, 0.1, 1, 4}).Draw(t, "below")
		e, err := c.Events(units.Millimetres(check))
		if err != nil {
			t.Fatal(err)
		}
		var up, down []float64
		area, before := 0.0, lift(-step)
		for i := range int(360 / step) {
			x := float64(i) * step
			y := lift(x)
			if before < check && y >= check {
				up = append(up, x)
			}
			if before >= check && y < check {
				down = append(down, x)
			}
			if y > check {
				area += y * step
			}
			before = y
		}
		if len(up) != 1 {
			if e.NoAnswer.Code != "passed-more-than-once" {
				t.Fatalf("passed up at %v: %+v", up, e)
			}
			return
		}
		if math.Abs(half(e.Opens.Degrees()-up[0])) > step || math.Abs(half(e.Closes.Degrees()-down[0])) > step {
			t.Fatalf("%v to %v, by scan %g to %g", e.Opens, e.Closes, up[0], down[0])
		}
		if e.Opens < 0 || e.Opens >= 360 || e.Duration <= 0 || math.Abs((e.Closes-e.Opens-e.Duration).Degrees()) > 1e-9 {
			t.Fatalf("%+v", e)
		}
		for _, place := range []units.CamAngle{e.Opens, e.Closes} {
			if y := lift(place.Degrees()); math.Abs(y-check) > 1e-9 {
				t.Fatalf("lift %g at %v, check %g", y, place, check)
			}
		}
		a, err := c.Area(units.Millimetres(check), 0)
		// A step at either end may fall to the wrong side.
		if err != nil || math.Abs(a.LiftAngleMMDegrees-area) > 1.1*step*check || math.Abs(a.MeanLift.Millimetres()*e.Duration.Degrees()-a.LiftAngleMMDegrees) > 1e-9 {
			t.Fatalf("area %+v, by scan %g: %v", a, area, err)
		}
	})
}

// half brings degrees into -180 to 180.
func half(x float64) float64 { return math.Remainder(x, 360) }

// Motion's derivatives are those of the lift by differences within a piece, the jerk
// of a piece as much as the rest.
func TestMotionByDifferences(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := coarse(t)
		x := units.CamDegrees(rapid.Float64Range(-400, 400).Draw(t, "at"))
		const h = 1e-3
		before, _ := c.Motion(x - h)
		m, err := c.Motion(x)
		after, _ := c.Motion(x + h)
		if err != nil {
			t.Fatal(err)
		}
		if before.JerkMMPerDegree3 != m.JerkMMPerDegree3 || m.JerkMMPerDegree3 != after.JerkMMPerDegree3 {
			return // a reading between them
		}
		for _, p := range [][3]float64{
			{m.VelocityMMPerDegree, before.Lift.Millimetres(), after.Lift.Millimetres()},
			{m.AccelerationMMPerDegree2, before.VelocityMMPerDegree, after.VelocityMMPerDegree},
			{m.JerkMMPerDegree3, before.AccelerationMMPerDegree2, after.AccelerationMMPerDegree2},
		} {
			// The central difference of a cubic is off by jerk h²/6 in the first, and
			// rounding is 1e-15/h in all.
			if d := (p[2] - p[1]) / (2 * h); math.Abs(d-p[0]) > 1e-7*(1+math.Abs(m.JerkMMPerDegree3)) {
				t.Fatalf("%g, by differences %g", p[0], d)
			}
		}
	})
}

// fixed is the same run of chance every time, for readings without noise.
func fixed() *rand.Rand { return rand.New(rand.NewPCG(1, 1)) }
