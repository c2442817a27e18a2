package cam_test

import (
	"fmt"

	"example.com/benchbook/timing/cam"
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// A hobbyist's afternoon with an invented cam: lift read every 5° of the crank from
// overlap TDC, then opening and closing at 1 mm and what they are worth.
func Example() {
	known, _ := arcCam().Curve(55 * units.CamDegree)
	var readings []cam.Sample
	for deg := units.CrankAngle(0); deg < 720*units.CrankDegree; deg += 5 * units.CrankDegree {
		lift, _ := known.Lift(deg.AtHalfSpeedCam())
		readings = append(readings, cam.CrankSample(deg, lift))
	}
	f, err := cam.Fit(readings, cam.FitOptions{Criterion: cam.KnownNoise})
	if err != nil {
		fmt.Println(err)
		return
	}
	e, _ := f.Events(1 * units.Millimetre)
	c, _ := f.Centres(1 * units.Millimetre)
	d, _ := f.Doubts(e, units.Millimetres(0.02), units.CrankDegrees(0.5).AtHalfSpeedCam())
	opens, closes := cam.Place(e.Opens), cam.Place(e.Closes)
	fmt.Println("opens", measure.At(opens, d.Opens.AtCrank()))
	fmt.Println("closes", measure.At(closes, d.Closes.AtCrank()))
	fmt.Println("centre", c.ByEvents.AtCrank().In(units.CrankDegree, 0), "after overlap, lift", c.MaxLift.In(units.Millimetre, 2))
	// Output:
	// opens 1.7° ATDC ± 0.6°
	// closes 38.3° ABDC ± 0.6°
	// centre 110° crank after overlap, lift 8.00 mm
}

func ExampleInterpolateEven() {
	lift := make([]units.Length, 72) // every 5° of the cam; a table
	for i, mm := range []float64{0, 0.1, 0.5, 1.4, 2.7, 4.2, 5.6, 6.8, 7.6, 8, 7.6, 6.8, 5.6, 4.2, 2.7, 1.4, 0.5, 0.1} {
		lift[20+i] = units.Millimetres(mm)
	}
	c, err := cam.InterpolateEven(lift)
	top, at := c.MaxLift()
	y, _ := c.Lift(units.CamDegrees(122.5))
	fmt.Println(top, at, y.In(units.Millimetre, 2), err)
	// Output: 8 mm 145° cam 3.45 mm <nil>
}

func ExampleCurve_Motion() {
	c, _ := arcCam().Curve(90 * units.CamDegree)
	m, err := c.Motion(70 * units.CamDegree)
	t, _ := m.At(units.RevolutionsPerMinute(5000))
	fmt.Println(m.Lift.In(units.Millimetre, 2), t.Velocity.In(units.MetrePerSecond, 2), t.Acceleration.In(units.MetrePerSecondSquared, 0), err)
	// Output: 6.91 mm 1.61 m/s -1159 m/s² <nil>
}

func ExampleCurve_Centres() {
	c, _ := arcCam().Curve(90 * units.CamDegree)
	m, err := c.Centres(1 * units.Millimetre)
	fmt.Printf("%.2f %.2f %.2f %.2f, mirror image within %.3f mm, %v\n", m.ByEvents.Degrees(), m.ByPeak.Degrees(), m.ByArea.Degrees(), m.ByMirror.Degrees(), m.Asymmetry.Millimetres(), err)
	// Output: 90.00 90.00 90.00 90.00, mirror image within 0.000 mm, <nil>
}

func ExampleCurve_Area() {
	c, _ := arcCam().Curve(90 * units.CamDegree)
	a, err := c.Area(1*units.Millimetre, units.RevolutionsPerMinute(4000))
	fmt.Printf("mean lift %s, %.4f mm s, %v\n", a.MeanLift.In(units.Millimetre, 2), a.LiftTimeMMSeconds, err)
	// Output: mean lift 5.46 mm, 0.0493 mm s, <nil>
}

func ExampleOverlapOf() {
	exhaust, _ := arcCam().Curve(-54 * units.CamDegree)
	inlet, _ := arcCam().Curve(54 * units.CamDegree)
	o, err := cam.OverlapOf(exhaust, inlet, units.Millimetres(0.1))
	fmt.Println(o.Crank.In(units.CrankDegree, 1), "both at", o.SplitBy.In(units.Millimetre, 2), err)
	// Output: 38.5° crank both at 1.02 mm <nil>
}

func ExampleCurve_Reversed() {
	c, _ := arcCam().Curve(55 * units.CamDegree)
	_, at := c.Reversed().MaxLift()
	fmt.Println(at.In(units.CamDegree, 1))
	// Output: 305.0° cam
}

func ExampleRocker() {
	r := cam.Rocker{CamArm: 30 * units.Millimetre, ValveArm: 36 * units.Millimetre, CamTilt: 10 * units.Degree, ValveTilt: 4 * units.Degree}
	shut, _ := r.At(0)
	open, err := r.At(8 * units.Millimetre)
	fmt.Printf("%.3f shut, %.3f at %s, %v\n", shut.Ratio, open.Ratio, open.Valve.In(units.Millimetre, 2), err)
	// Output: 1.216 shut, 1.182 at 9.59 mm, <nil>
}

func ExampleValve_ClearanceFor() {
	c, _ := arcCam().Curve(55 * units.CamDegree)
	set := cam.Valve{Cam: c, Clearance: units.Millimetres(0.10)}
	tight := set
	tight.Clearance = units.Millimetres(0.02)
	e, _ := tight.Events(units.Millimetres(0.3))
	found, why, err := set.ClearanceFor(e.Duration, units.Millimetres(0.3))
	fmt.Println(found.In(units.Millimetre, 2), why.Given(), err)
	// Output: 0.02 mm false <nil>
}

func ExampleCurve_WithFollower() {
	c, _ := arcCam().Curve(55 * units.CamDegree)
	round, why, err := c.WithFollower(cam.Flat(), cam.Radiused(30*units.Millimetre), arcCam().BaseRadius)
	flat, _ := c.Events(1 * units.Millimetre)
	foot, _ := round.Events(1 * units.Millimetre)
	fmt.Println(flat.Duration.AtCrank().In(units.CrankDegree, 0), "flat,", foot.Duration.AtCrank().In(units.CrankDegree, 0), "radiused", why.Given(), err)
	// Output: 217° crank flat, 199° crank radiused false <nil>
}

// The same cam under a flat tappet and under a lever with a radiused foot.
func ExampleSwinging() {
	c, _ := arcCam().Curve(55 * units.CamDegree)
	lever := cam.Swinging(15*units.Millimetre, cam.Lever{Pivot: 45 * units.Millimetre, Arm: 40 * units.Millimetre})
	swung, why, err := c.WithFollower(cam.Flat(), lever, arcCam().BaseRadius)
	flat, _ := c.Centres(1 * units.Millimetre)
	foot, _ := swung.Centres(1 * units.Millimetre)
	fmt.Println(flat.ByEvents.In(units.CamDegree, 1), foot.ByEvents.In(units.CamDegree, 1), foot.MaxLift.In(units.Millimetre, 2), why.Given(), err)
	// Output: 55.0° cam 54.6° cam 8.27 mm false <nil>
}

func ExampleCurve_Contact() {
	c, _ := arcCam().Curve(55 * units.CamDegree)
	shape, _ := arcCam().Shape()
	k, err := c.Contact(55*units.CamDegree, cam.Flat(), arcCam().BaseRadius)
	fmt.Println(k.Radius.In(units.Millimetre, 1), "at the nose; the foot must reach", shape.HalfWidth.In(units.Millimetre, 1), err)
	// Output: 4.0 mm at the nose; the foot must reach 12.9 mm <nil>
}

func ExampleArcCam() {
	s, err := arcCam().Shape()
	fmt.Println(s.FlankRadius.In(units.Millimetre, 1), s.FlankAngle.In(units.CamDegree, 1), err)
	// Output: 48.4 mm 22.1° cam <nil>
}

func ExampleValve_LiftOff() {
	c, _ := arcCam().Curve(55 * units.CamDegree)
	mass, _ := cam.Parts{Valve: units.Grams(90), Retainer: units.Grams(25), Spring: units.Grams(60), Follower: units.Grams(80)}.AtValve()
	off, err := cam.Valve{Cam: c}.LiftOff(cam.SpringLoad{Seated: 250 * units.Newton, Rate: units.NewtonsPerMillimetre(20), Mass: mass})
	fmt.Printf("%.0f rev/min at %s of lift, %s in the springs, %v\n", off.CrankSpeed.RevolutionsPerMinute(), off.Lift.In(units.Millimetre, 1), off.Spring.In(units.Newton, 0), err)
	// Output: 6217 rev/min at 8.0 mm of lift, 410 N in the springs, <nil>
}

func ExampleSeat() {
	s := cam.Seat{Head: 40 * units.Millimetre, Port: 35 * units.Millimetre, Stem: 8 * units.Millimetre, Width: 2 * units.Millimetre}
	o, err := s.Opening(5 * units.Millimetre)
	full, _ := s.LiftForPort()
	fmt.Println(o.Area.In(units.SquareMillimetre, 0), full.In(units.Millimetre, 1), err)
	// Output: 430 mm² 9.4 mm <nil>
}

func ExampleIdentify() {
	var known []cam.Profile
	for _, k := range []struct {
		name string
		lift float64
	}{{"touring", 7.4}, {"sports", 8.0}} {
		a := arcCam()
		a.Lift = units.Millimetres(k.lift)
		c, _ := a.Curve(0)
		known = append(known, cam.Profile{Name: k.name, Curve: c})
	}
	var readings []cam.Sample // of the second, its nose at 200°, to the nearest 0.01 mm
	for deg := 0; deg < 360; deg += 10 {
		m, _ := arcCam().At(units.CamDegrees(float64(deg - 200)))
		readings = append(readings, cam.Sample{At: units.CamDegrees(float64(deg)), Lift: units.Millimetres(float64(int(m.Lift.Millimetres()*100)) / 100)})
	}
	got, err := cam.Identify(readings, known, cam.IdentifyOptions{})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(got.Causes.Leader().Key, got.Causes.Leader().Words())
	fmt.Printf("turned by %.1f°\n", got.Matches[0].Phase.Value().Degrees())
	// Output:
	// sports as good as certain
	// turned by -160.0°
}

// Bhavikatti, Strength of Materials, example 8.15 (read in a textbook companion): 80
// MPa in a compound cylinder shrunk with 6 MPa, 155.27 MPa at its outside.
func ExampleLame() {
	bore, _ := cam.Lame(200*units.Millimetre, 300*units.Millimetre, 300*units.Millimetre, 80*units.Megapascal, 0)
	shrink, err := cam.Lame(250*units.Millimetre, 300*units.Millimetre, 300*units.Millimetre, 6*units.Megapascal, 0)
	fmt.Println((bore+shrink).In(units.Megapascal, 2), err)
	// Output: 155.27 MPa <nil>
}

func ExampleTaper_DriveUp() {
	d, err := cam.Taper{OneIn: 10}.DriveUp(units.Millimetres(0.2))
	fmt.Println(d.In(units.Millimetre, 3), err)
	// Output: 0.020 mm <nil>
}

func ExampleKeySlack() {
	a, err := cam.KeySlack(units.Millimetres(0.05), 16*units.Millimetre)
	fmt.Println(a.In(units.CamDegree, 2), a.AtCrank().In(units.CrankDegree, 2), err)
	// Output: 0.36° cam 0.72° crank <nil>
}

// Sadhu Singh, Machine Design, example 7.3 (read in a textbook companion): 20 kW at
// 320 rev/min need 111 mm of eight splines of 52 by 60 mm at 6 MPa.
func ExampleSplines() {
	s := cam.Splines{Number: 8, Inner: 52 * units.Millimetre, Outer: 60 * units.Millimetre, Length: 111 * units.Millimetre}
	t, err := s.Torque(6 * units.Megapascal)
	f, _ := s.ShiftForce(units.NewtonMetres(596.83), units.Value(0.06))
	fmt.Println(t.In(units.NewtonMetre, 0), f.In(units.Newton, 0), err)
	// Output: 597 N m 1279 N <nil>
}

// Any type with Len and XY can be drawn.
type plottable interface {
	Len() int
	XY(i int) (x, y float64)
}

func ExampleCurve_Trace() {
	c, _ := arcCam().Curve(55 * units.CamDegree)
	v, err := c.Trace(1)
	for _, p := range []plottable{c, v} {
		x, y := p.XY(90)
		fmt.Printf("%d points, %.3f at %.0f\n", p.Len(), y, x)
	}
	fmt.Println(err)
	// Output:
	// 721 points, 7.727 at 45
	// 721 points, 0.055 at 45
	// <nil>
}
