package cam_test

import (
	"fmt"
	"math"
	"testing"

	"example.com/benchbook/timing/cam"
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol*math.Abs(want)) {
		t.Errorf("%s: %.7g, the source has %.7g (within %.2g)", what, got, want, tol)
	}
}

// Sarkar, Theory of Machines, 1st ed., chapter 9, illustration 2, p. 247 (read in a
// textbook companion, pi taken as 3.141): 177.6 m/s² out and 78.9 back.
func ExampleRise_Greatest() {
	out, _ := cam.Rise{Law: cam.Harmonic, Lift: 40 * units.Millimetre, Over: 60 * units.CamDegree}.Greatest(units.RevolutionsPerMinute(300))
	back, err := cam.Rise{Law: cam.Harmonic, Lift: 40 * units.Millimetre, Over: 90 * units.CamDegree}.Greatest(units.RevolutionsPerMinute(300))
	fmt.Printf("%.0f %.0f %v\n", out.InTime.SI(), back.InTime.SI(), err)
	// Output: 178 79 <nil>
}

// A printed homework table, cycloidal rise of 20 mm over 60°: 0.075117 mm at 5°,
// 1.816901 mm at 15°.
func ExampleRise_At() {
	r := cam.Rise{Law: cam.Cycloidal, Lift: 20 * units.Millimetre, Over: 60 * units.CamDegree}
	for _, at := range []units.CamAngle{5, 15, 30} {
		m, _ := r.At(at)
		fmt.Printf("%.6f %.6f %.6f\n", m.Lift.Millimetres(), m.VelocityMMPerDegree, m.AccelerationMMPerDegree2)
	}
	// Output:
	// 0.075117 0.044658 0.017453
	// 1.816901 0.333333 0.034907
	// 10.000000 0.666667 0.000000
}

// A question bank quoting a Khurmi & Gupta cam: 187.6 m/s² as the roller comes on
// to the flank (the book rounds the speed to 62.84 rad/s).
func ExampleTangentCam() {
	c := cam.TangentCam{
		BaseRadius: 30 * units.Millimetre, Lift: 17.5 * units.Millimetre, HalfAngle: 75 * units.CamDegree, Roller: 17.5 * units.Millimetre,
	}
	m, err := c.At(units.CamDegrees(-75 + 1e-9))
	a, _ := m.At(units.RevolutionsPerMinute(1200)) // the cam at 600
	fmt.Printf("%.1f %v\n", a.Acceleration.SI(), err)
	// Output: 187.5 <nil>
}

// Ugural & Fenster, Advanced Strength and Applied Elasticity, 2nd ed., example 3,
// p. 243 (read in a textbook companion): 12.3 MPa between the cylinders, 56.03 and
// -56.23 MPa at the bores, carried on from the rounded 12.3.
func ExamplePressFit_Hold() {
	steel := cam.Metal{Modulus: 200 * units.Gigapascal, Poisson: 0.3}
	g, err := cam.PressFit{
		Joint: 400 * units.Millimetre, Hub: 500 * units.Millimetre, ShaftBore: 300 * units.Millimetre, Length: 100 * units.Millimetre,
		Interference: measure.Between(units.Millimetres(0.2), units.Millimetres(0.2)), HubMetal: steel, ShaftMetal: steel,
	}.Hold()
	fmt.Println(g.Pressure.High.In(units.Megapascal, 1), g.HubHoop.High.In(units.Megapascal, 0), g.Shaft.High.In(units.Megapascal, 0), err)
	// Output: 12.3 MPa 56 MPa 56 MPa <nil>
}

// Jindal, Machine Design, 1st ed., example 22-8, p. 594 (read in a textbook
// companion): a cone of 15°, 90 mm, friction 0.3, pushed with 300 N slips at 15.648
// N m while it turns; at rest it holds less.
func ExampleTaper_Hold() {
	g, err := cam.Taper{HalfAngle: 15 * units.Degree, MeanDiameter: 90 * units.Millimetre, Friction: measure.Between[units.Ratio](0.3, 0.3)}.Hold(300 * units.Newton)
	fmt.Println(g.Turning.High.In(units.NewtonMetre, 3), g.Torque.High.In(units.NewtonMetre, 3), g.Locking, err)
	// Output: 15.648 N m 7.382 N m holds by itself <nil>
}

// A taper of 1 in 8 on the diameter needs a friction of 0.0625 to hold.
func ExampleTaper_Locks() {
	t := cam.Taper{OneIn: 8}
	g, err := t.Locks()
	fmt.Println(g, err)
	// Output: holds by itself <nil>
}

// Wentzell, Machine Design, 1st ed., example 15.1, p. 332 (read in a textbook
// companion): 180 lbf in with a factor of 2.5 needs 0.47 in in shear, 0.56 in bearing.
func ExampleKey_LengthFor() {
	k := cam.Key{Shaft: units.Inches(0.5), Width: units.Inches(0.125), Height: units.Inches(0.125)}
	n, err := k.LengthFor(units.PoundForceInches(180*2.5), units.PoundsForcePerSquareInch(30500), units.PoundsForcePerSquareInch(51000))
	fmt.Printf("%.2f in %v\n", n.Inches(), err)
	// Output: 0.56 in <nil>
}

func TestPublishedCams(t *testing.T) {
	out, _ := cam.Rise{Law: cam.Harmonic, Lift: 40, Over: 60}.Greatest(units.RevolutionsPerMinute(300))
	near(t, "Sarkar 9.2 out, pi 3.141", out.InTime.SI(), 177.6, 1e-3)
	out, _ = cam.Rise{Law: cam.Harmonic, Lift: 40, Over: 90}.Greatest(units.RevolutionsPerMinute(300))
	near(t, "Sarkar 9.2 back", out.InTime.SI(), 78.9, 1e-3)
	up, _ := cam.Rise{Law: cam.Harmonic, Lift: 50, Over: 120}.Greatest(units.RevolutionsPerMinute(100))
	down, _ := cam.Rise{Law: cam.Harmonic, Lift: 50, Over: 60}.Greatest(units.RevolutionsPerMinute(100))
	near(t, "valve of 50 mm, speed up", up.Speed.SI(), 0.39, 0.0128)
	near(t, "valve of 50 mm, speed down, printed 0.78 is truncated", down.Speed.SI(), 0.78, 0.01)
	near(t, "valve of 50 mm, up", up.InTime.SI(), 6.17, 8.1e-4)
	near(t, "valve of 50 mm, down", down.InTime.SI(), 24.67, 2.1e-4)
	up, _ = cam.Rise{Law: cam.Parabolic, Lift: 25, Over: 120}.Greatest(units.RevolutionsPerMinute(1000))
	down, _ = cam.Rise{Law: cam.Parabolic, Lift: 25, Over: 90}.Greatest(units.RevolutionsPerMinute(1000))
	near(t, "Sarkar 9.5 out, cm/s² though the companion prints m/s²", up.InTime.SI()*100, 25000, 1e-3)
	near(t, "Sarkar 9.5 back", down.InTime.SI()*100, 44444.4, 1e-3)

	g, err := cam.Taper{HalfAngle: units.Degrees(12.5), MeanDiameter: 500, Friction: measure.Between[units.Ratio](0.2, 0.2)}.Hold(units.Newtons(3540))
	if err != nil {
		t.Fatal(err)
	}
	// 45 kW at 1000 rev/min is 429.7 N m.
	near(t, "Khurmi 10.32, torque seated by 3540 N", g.Torque.High.SI(), 45000/(1000*math.Pi/30), 1.5e-3)
	b, _ := cam.Taper{HalfAngle: units.Degrees(12.5), MeanDiameter: 500}.FaceFor(g.Normal.High, 0.1*units.Megapascal)
	near(t, "Khurmi 10.32, width", b.Millimetres(), 54.7, 2e-3)
	needs, _ := cam.Taper{HalfAngle: units.Degrees(7.5), MeanDiameter: 1}.Hold(1)
	near(t, "Tayal 6.9, the angle taken for its tangent", needs.Needs.Value(), 0.1309, 0.01)

	steel := cam.Metal{Modulus: 200 * units.Gigapascal, Poisson: 0.3}
	f, err := cam.PressFit{Joint: 400, Hub: 500, ShaftBore: 300, Length: 1, Interference: measure.Between[units.Length](0.2, 0.2), HubMetal: steel, ShaftMetal: steel}.Hold()
	if err != nil {
		t.Fatal(err)
	}
	near(t, "Ugural 3, pressure", f.Pressure.High.Megapascals(), 12.3, 4.1e-3)
	near(t, "Ugural 3, hub", f.HubHoop.High.Megapascals()*12.3/f.Pressure.High.Megapascals(), 56.03, 1e-4)
	near(t, "Ugural 3, shaft", f.Shaft.High.Megapascals()*12.3/f.Pressure.High.Megapascals(), 56.23, 1e-4)
	rim, _ := cam.Lame(200, 250, 250, 12.3*units.Megapascal, 0)
	near(t, "Ugural 3, hub rim", rim.Megapascals(), 43.73, 1.2e-4)
	rim, _ = cam.Lame(150, 200, 200, 0, 12.3*units.Megapascal)
	near(t, "Ugural 3, shaft rim", rim.Megapascals(), -43.93, 1.2e-4)
	// Joint pressure where the interference is 52.4957 µm on the radius.
	f, _ = cam.PressFit{Joint: 100, Hub: 500, Length: 1, Interference: measure.Between(units.Metres(2*5.24957318528e-05), units.Metres(2*5.24957318528e-05)), HubMetal: steel, ShaftMetal: steel}.Hold()
	near(t, "Ugural 4, pressure at rest", f.Pressure.High.Megapascals(), 100.791805, 1e-8)
	near(t, "Ugural 4, hoop at rest", f.HubHoop.High.Megapascals(), 109.191122, 1e-8)

	hoop := func(a, b, r, in, out float64) float64 {
		p, err := cam.Lame(units.Millimetres(a), units.Millimetres(b), units.Millimetres(r), units.Megapascals(in), units.Megapascals(out))
		if err != nil {
			t.Fatal(err)
		}
		return p.Megapascals()
	}
	near(t, "Bhavikatti 8.15 at 200", hoop(200, 250, 200, 0, 6)+hoop(200, 300, 200, 80, 0), 174.67, 3e-5)
	near(t, "Bhavikatti 8.15 at 250 inner", hoop(200, 250, 250, 0, 6)+hoop(200, 300, 250, 80, 0), 128.83, 4e-5)
	near(t, "Bhavikatti 8.15 at 250 outer", hoop(250, 300, 250, 6, 0)+hoop(200, 300, 250, 80, 0), 189.43, 3e-5)
	near(t, "Bhavikatti 8.15 at 300", hoop(250, 300, 300, 6, 0)+hoop(200, 300, 300, 80, 0), 155.27, 4e-5)

	// Singh 7.4: a key as strong as its shaft in shear, 50 MPa, pi d^3/16.
	k := cam.Key{Shaft: 75, Width: 20, Height: 1}
	torque := units.NewtonMetres(50e6 * math.Pi * 0.075 * 0.075 * 0.075 / 16)
	n, _ := k.LengthFor(torque, 50*units.Megapascal, 1e5*units.Megapascal)
	near(t, "Singh 7.4, length", n.Millimetres(), 110.4, 5e-4)
	k = cam.Key{Shaft: 35, Width: 10, Height: 1}
	n, _ = k.LengthFor(800*units.NewtonMetre, 46*units.Megapascal, 1e5*units.Megapascal)
	near(t, "Singh 7.10, length, rounded up to 100", n.Millimetres(), 100, 0.007)
	k = cam.Key{Shaft: 25, Width: 7, Height: 7}
	p := units.NewtonMetres(12000 / (550 * math.Pi / 30))
	n, _ = k.LengthFor(p, 80*units.Megapascal, 160*units.Megapascal)
	near(t, "Singh 7.8, length", n.Millimetres(), 29.76, 2e-4)
	shift, _ := cam.Splines{Number: 8, Inner: 52, Outer: 60, Length: 111}.ShiftForce(units.NewtonMetres(20000/(320*math.Pi/30)), units.Value(0.06))
	near(t, "Singh 7.3, shifting force", shift.SI(), 1278.9, 4e-5)
	s, _ := cam.Splines{Number: 8, Inner: 52, Outer: 60, Length: 111}.Torque(6 * units.Megapascal)
	near(t, "Singh 7.3, torque of 20 kW at 320 rev/min", s.SI(), 20000/(320*math.Pi/30), 4.5e-3)
}
