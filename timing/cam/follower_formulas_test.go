package cam_test

import (
	"math"
	"testing"

	"example.com/benchbook/timing/cam"
	"example.com/benchbook/units"
)

// Contact on a cam of arcs by its circles. A foot touches a circle on the line from its
// own centre to the circle's, so the line's slope is the pressure angle and the circle's
// radius that of the surface: on the flank, on the nose, and on the base circle.
// Offset and angle count to the side the surface comes from while it lifts.
func TestContactByCircles(t *testing.T) {
	a := arcCam()
	shape, err := a.Shape()
	if err != nil {
		t.Fatal(err)
	}
	rb, rn, rf := a.BaseRadius.Millimetres(), a.NoseRadius.Millimetres(), shape.FlankRadius.Millimetres()
	alpha := a.HalfAngle.SI()
	op := rf - rb
	curve, err := a.Curve(0)
	if err != nil {
		t.Fatal(err)
	}
	for _, r := range []float64{8, 25, 300} {
		round, why, err := curve.WithFollower(cam.Flat(), cam.Radiused(mm(r)), a.BaseRadius)
		if err != nil || why.Given() {
			t.Fatal(why, err)
		}
		for _, x := range []float64{-60, -55, -52, -12, 0, 5, 12, 52, 55, 60, 120} {
			u := x * math.Pi / 180
			// The circle under the foot: its centre, in the frame of the follower's line.
			var cx, cy, radius float64
			switch {
			case math.Abs(x) > 90:
				radius = rb
			case math.Abs(x) > 30: // the flank's centre lies opposite the start of lift
				side := math.Copysign(alpha, -x)
				cx, cy, radius = -op*math.Cos(side+u), op*math.Sin(side+u), rf
			default:
				d := shape.NoseCentre.Millimetres()
				cx, cy, radius = d*math.Cos(u), -d*math.Sin(u), rn
			}
			// The foot's centre on the line x, r + radius from the circle's.
			height := cx + math.Sqrt(sq(radius+r)-cy*cy)
			got, err := round.Contact(units.CamDegrees(x), cam.Radiused(mm(r)), a.BaseRadius)
			if err != nil {
				t.Fatal(err)
			}
			pressure := math.Asin(cy / (radius + r))
			// A spline of 1,440 points: 2 µm of lift, 1e-4 of its slope, a hundredth of its bend.
			lift, _ := round.Lift(units.CamDegrees(x))
			if math.Abs(lift.Millimetres()-(height-rb-r)) > 0.002 {
				t.Errorf("radius %g at %g: lift %v, by circles %g mm", r, x, lift, height-rb-r)
			}
			if math.Abs(got.Pressure.SI()-pressure) > 1e-3 || math.Abs(got.Offset.Millimetres()-r*math.Sin(pressure)) > 1e-3*r {
				t.Errorf("radius %g at %g: %+v, by circles a pressure angle of %g° and %g mm", r, x, got, pressure*180/math.Pi, r*math.Sin(pressure))
			}
			if math.Abs(got.Radius.Millimetres()-radius) > 0.01*(radius+r) {
				t.Errorf("radius %g at %g: the surface's is %v, made with %g", r, x, got.Radius, radius)
			}
			flat, err := curve.Contact(units.CamDegrees(x), cam.Flat(), a.BaseRadius)
			// A flat foot touches where the circle is highest: straight over its centre.
			if err != nil || math.Abs(flat.Offset.Millimetres()-cy) > 0.01 || math.Abs(flat.Radius.Millimetres()-radius) > 0.01*radius || flat.Pressure != 0 {
				t.Errorf("flat at %g: %+v, by circles %g mm on %g", x, flat, cy, radius)
			}
		}
	}
}
